//! A rectangle to be sawn.

use super::result::Rectangle;
use crate::error::{Error, Fault, Faults, Kind};
use crate::length::Length;
use serde::{Deserialize, Serialize};

/// Equal rectangles to be sawn out of sheets.
///
/// # Examples
/// ```
/// use deck_core::nest::{Grain, Part};
/// let lid = Part::new("lid", "24 in".parse()?, "16 in".parse()?).count(2).grain(Grain::Length).boat("hull 7");
/// assert_eq!(lid.count, 2);
/// # Ok::<(), deck_core::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
#[non_exhaustive]
pub struct Part {
    /// What is written on it.
    pub label: String,
    /// Its length.
    pub length: Length,
    /// Its width.
    pub width: Length,
    /// How many are wanted.
    #[serde(default = "one")]
    pub count: u32,
    /// How it must lie to the grain of the sheet.
    #[serde(default)]
    pub grain: Grain,
    /// The boat that it is for, when several share an order.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub boat: Option<String>,
    /// Rectangles of waste in it, which come free when its shape is sawn: a motor notch, a bow corner, a hatch.
    ///
    /// `x` and `length` run along the part's own length, `y` and `width` along its width, from one of its corners; of a
    /// part that lies turned, `y` runs along the sheet. They do not overlap. Each is offered as stock that costs nothing
    /// and exists as often as the part is placed. Give it as wide as the shape leaves it: the nest takes one kerf off
    /// every side that does not lie on the part's own edge.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub inside: Vec<Rectangle>,
}

/// How a part must lie to the grain of its sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Grain {
    /// It may be turned.
    #[default]
    Any,
    /// Its length lies along the sheet's length.
    Length,
    /// Its length lies across the sheet's length.
    Width,
}

fn one() -> u32 {
    1
}

impl Part {
    /// One part that may be turned, for no boat in particular.
    pub fn new(label: impl Into<String>, length: Length, width: Length) -> Part {
        Part { label: label.into(), length, width, count: 1, grain: Grain::Any, boat: None, inside: Vec::new() }
    }

    /// With so many copies.
    #[must_use]
    pub fn count(mut self, count: u32) -> Part {
        self.count = count;
        self
    }

    /// With a direction of grain.
    #[must_use]
    pub fn grain(mut self, grain: Grain) -> Part {
        self.grain = grain;
        self
    }

    /// For a boat.
    #[must_use]
    pub fn boat(mut self, boat: impl Into<String>) -> Part {
        self.boat = Some(boat.into());
        self
    }

    /// With rectangles of waste in it.
    #[must_use]
    pub fn inside(mut self, inside: Vec<Rectangle>) -> Part {
        self.inside = inside;
        self
    }

    /// Checks the sizes; pointers are relative to the part.
    ///
    /// # Errors
    /// A side of zero or less, or beyond [`Length::LIMIT`]; waste that reaches out of the part, is all of it or overlaps
    /// other waste.
    pub fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::new();
        for (field, side) in [("length", self.length), ("width", self.width)] {
            let (kind, fault) = if side.is_negative() {
                (Kind::LengthNegative, "is below zero")
            } else if side.is_zero() {
                (Kind::LengthZero, "leaves nothing to saw")
            } else if side > Length::LIMIT {
                (Kind::LengthTooLarge, "is too large")
            } else {
                continue;
            };
            let message = format!("{side} {fault}.");
            faults.push(
                Fault::new(kind, side.to_string(), message, "A side is above zero and below 1 km.").within(field),
            );
        }
        if faults.is_empty() {
            faults.take(super::inside::check(self));
        }
        faults.finish()
    }

    /// What falls out of the part where it is waste: one kerf less on every side that is not on the part's own edge.
    ///
    /// Its sides may be zero or less, where the kerf eats it.
    #[must_use]
    pub fn fallen(&self, waste: &Rectangle, kerf: Length) -> Rectangle {
        let side = |start: Length, extent: Length, whole: Length| {
            let before = if start.is_zero() { Length::ZERO } else { kerf };
            let behind = if start + extent == whole { Length::ZERO } else { kerf };
            (start + before, extent - before - behind)
        };
        let (x, length) = side(waste.x, waste.length, self.length);
        let (y, width) = side(waste.y, waste.width, self.width);
        Rectangle { x, y, length, width }
    }

    /// True where its width is named first when it lies as the nest sees it: along the grain, or the longer side first.
    pub(super) fn lies_across(&self) -> bool {
        match self.grain {
            Grain::Any => self.width > self.length,
            Grain::Length => false,
            Grain::Width => true,
        }
    }

    /// Whether the part counts as turned where its sides lie like that on a sheet.
    ///
    /// A square looks alike both ways: it is said to lie as its grain asks, and otherwise not to be turned.
    pub(super) fn is_turned(&self, along: Length, across: Length) -> bool {
        let turned = self.length == across && self.width == along;
        turned && (self.length != self.width || self.grain == Grain::Width)
    }
}
