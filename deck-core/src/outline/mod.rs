//! The deck as seen from above: its outline, the openings in it, and the zones that seams keep clear of.
//!
//! ```text
//!            bow
//!      0 ┌─────────┐       x runs aft, y to starboard
//!        │  ( )    │ ── opening
//!  port  │         │  starboard
//!        │ ┌─────┐ │
//!        └─┘notch└─┘
//!           stern
//! ```

mod explicit;
mod opening;
mod parametric;
mod slot;

pub use explicit::{ArcSpec, Bulge, Corner};
pub use opening::{KeepClear, Lid, Opening, OpeningShape};
pub use parametric::{BowCorner, Notch, Parametric, Taper};
pub use slot::SlotEdge;

use crate::error::{Error, Fault, Kind};
use crate::geometry::{Bounds, Limit, Path, polygon};
use crate::length::Length;
use serde::{Deserialize, Serialize};

/// What a side of the outline is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Rim {
    /// The foremost edge, athwart.
    Bow,
    /// A radius, clip or taper between the bow and a long side.
    BowCorner,
    /// The port side.
    Port,
    /// The starboard side.
    Starboard,
    /// The aftmost edge, athwart.
    Stern,
    /// The motor notch.
    Notch,
    /// A slot that was asked for.
    Slot,
    /// A side of an outline given corner by corner.
    Rim,
}

/// A deck's outline as it was asked for: by its measures, or corner by corner.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(untagged)]
pub enum Deck {
    /// By length, beam, bow corners, taper and motor notch.
    Parametric(Parametric),
    /// Corner by corner.
    Explicit(Explicit),
    /// As the job's survey found it.
    Surveyed(Surveyed),
}

/// An outline that is taken from the job's survey.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Surveyed {
    /// Where it is taken from.
    pub from: OutlineFrom,
}

/// What a job takes its outline from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum OutlineFrom {
    /// From its survey.
    Survey,
}

/// An outline given corner by corner.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Explicit {
    /// The corners in order, either way round; the last is joined to the first.
    pub outline: Vec<Corner>,
}

/// The outline of a deck, closed and without crossings, its foremost point at station 0 and its port edge at 0.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Outline {
    path: Path<Rim>,
    bounds: Bounds,
}

impl Deck {
    /// Builds the outline; pointers are relative to the deck.
    ///
    /// # Errors
    /// Every measure that does not fit the others, an outline that crosses itself or does not start at the datum; one that is
    /// taken from a survey, which the job has and the deck has not.
    pub fn outline(&self) -> Result<Outline, Error> {
        match self {
            Deck::Parametric(measures) => Outline::new(measures.path()?),
            Deck::Surveyed(_) => {
                let message = "The outline is taken from a survey, and there is none here.";
                Err(Fault::new(Kind::SurveyWanted, "survey", message, "A job has its survey beside its deck.")
                    .within("from")
                    .into())
            }
            Deck::Explicit(Explicit { outline }) => {
                Outline::new(explicit::path(outline).map_err(|error| error.within("outline"))?)
                    .map_err(|error| error.within("outline"))
            }
        }
    }
}

/// The bounds of the closed path through corners, arcs included; none where there is no such path.
pub(crate) fn corner_bounds(corners: &[Corner]) -> Option<Bounds> {
    explicit::path(corners).ok().map(|path| path.bounds())
}

impl Outline {
    /// Checks a closed path and takes it as the outline.
    ///
    /// # Errors
    /// A path that crosses or touches itself, or that does not lie at the bow and port reference edges.
    pub fn new(path: Path<Rim>) -> Result<Outline, Error> {
        let bounds = path.bounds();
        if !polygon::is_simple(&path) {
            return Err(Fault::new(
                Kind::OutlineCrossesItself,
                "",
                "The outline crosses or touches itself.",
                "Walking from corner to corner goes once around the deck.",
            )
            .into());
        }
        if !bounds.fore.is_zero() || !bounds.port.is_zero() {
            let (x, y) = (bounds.fore, bounds.port);
            return Err(Fault::new(
                Kind::OutlineDatum,
                format!("x {x}, y {y}"),
                format!("The outline's foremost point is at x = {x} and its port edge at y = {y}."),
                "Both are measured from the datum, so both are 0.",
            )
            .into());
        }
        Ok(Outline { path, bounds })
    }

    /// The closed path, each side marked with what it is.
    pub fn path(&self) -> &Path<Rim> {
        &self.path
    }

    /// Length over all.
    pub fn length(&self) -> Length {
        self.bounds.aft
    }

    /// Greatest beam.
    pub fn beam(&self) -> Length {
        self.bounds.starboard
    }

    /// Length of deck on a line athwart, just forward or just aft of a station.
    pub fn breadth(&self, x: Length, limit: Limit) -> Length {
        self.path.breadths(x, limit).iter().map(|(port, starboard)| *starboard - *port).sum()
    }
}

#[cfg(test)]
mod tests;
