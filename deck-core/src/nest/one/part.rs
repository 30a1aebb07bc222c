//! A rectangle that may be cut to fill a sheet.

use super::super::part::{Grain, Part};
use crate::length::Length;
use crate::money::Money;
use serde::{Deserialize, Serialize};

/// Equal rectangles that may be cut to fill a sheet, with a value or without.
///
/// # Examples
/// ```
/// use deck_core::nest::FillPart;
/// let shelf = FillPart::new("shelf", "24 in".parse()?, "12 in".parse()?).unlimited().value("7.50".parse()?);
/// assert_eq!(shelf.count, None);
/// # Ok::<(), deck_core::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
#[non_exhaustive]
pub struct FillPart {
    /// What is written on it.
    pub label: String,
    /// Its length.
    pub length: Length,
    /// Its width.
    pub width: Length,
    /// How many are wanted at most; none: as many as fit. One where nothing is said.
    #[serde(default = "one")]
    pub count: Option<u32>,
    /// How it must lie to the grain of the sheet.
    #[serde(default)]
    pub grain: Grain,
    /// What one copy is worth. Values are given for all parts or for none; then a part is worth its area.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub value: Option<Money>,
    /// The boat that it is for.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub boat: Option<String>,
}

#[expect(clippy::unnecessary_wraps, reason = "serde wants the type of the field")]
fn one() -> Option<u32> {
    Some(1)
}

impl FillPart {
    /// One part that may be turned, worth its area.
    pub fn new(label: impl Into<String>, length: Length, width: Length) -> FillPart {
        Part::new(label, length, width).into()
    }

    /// With so many copies at most.
    #[must_use]
    pub fn count(mut self, count: u32) -> FillPart {
        self.count = Some(count);
        self
    }

    /// With as many copies as fit.
    #[must_use]
    pub fn unlimited(mut self) -> FillPart {
        self.count = None;
        self
    }

    /// With a direction of grain.
    #[must_use]
    pub fn grain(mut self, grain: Grain) -> FillPart {
        self.grain = grain;
        self
    }

    /// With a value.
    #[must_use]
    pub fn value(mut self, value: Money) -> FillPart {
        self.value = Some(value);
        self
    }

    /// For a boat.
    #[must_use]
    pub fn boat(mut self, boat: impl Into<String>) -> FillPart {
        self.boat = Some(boat.into());
        self
    }

    /// The part as the nest sees it, with so many copies.
    pub(super) fn part(&self, count: u32) -> Part {
        let part = Part::new(&self.label, self.length, self.width).count(count).grain(self.grain);
        match &self.boat {
            Some(boat) => part.boat(boat),
            None => part,
        }
    }
}

impl From<Part> for FillPart {
    /// The same part, worth its area.
    fn from(part: Part) -> FillPart {
        let Part { label, length, width, count, grain, boat, .. } = part;
        FillPart { label, length, width, count: Some(count), grain, value: None, boat }
    }
}
