//! The old covering, in strips or whole.

use super::StripOutInput;
use crate::length::{Area, Length};
use serde::{Deserialize, Serialize};

/// How the old covering is held.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum OldCovering {
    /// Glued all over: it is slit and pulled in strips.
    Glued,
    /// Stapled at the edges: it lifts whole.
    Stapled,
    /// There is none, or it is cut along the seams and lifted with the boards.
    None,
}

/// How the old covering comes off.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Strips {
    /// How it is held.
    pub held: OldCovering,
    /// How many strips; one where it lifts whole.
    pub count: u32,
    /// Width of a strip; the last takes the rest.
    pub width: Length,
    /// Length of a strip: that of the boat.
    pub length: Length,
    /// Where the knife runs, fore and aft: distances from the port edge.
    pub cuts: Vec<Length>,
    /// What it covers.
    pub area: Area,
    /// How it is done.
    pub how: String,
}

impl Strips {
    /// Strips of one width on the tape's marks, none wider than was asked; the last takes the rest.
    pub(super) fn new(input: &StripOutInput<'_>) -> Strips {
        let (beam, length) = (input.outline.beam(), input.outline.length());
        let width = match input.covering {
            OldCovering::Glued => even(beam, input.strip_width, input.grid),
            OldCovering::Stapled => beam,
            OldCovering::None => Length::ZERO,
        };
        let count = beam.steps_of(width);
        Strips {
            held: input.covering,
            count: u32::try_from(count).unwrap_or(u32::MAX),
            width,
            length: if count == 0 { Length::ZERO } else { length },
            cuts: (1..count).map(|cut| width * cut).collect(),
            area: if count == 0 { Area::ZERO } else { input.covered() },
            how: how(input.covering).into(),
        }
    }
}

/// As many strips as the widest takes, as even as the marks allow.
fn even(beam: Length, widest: Length, grid: Length) -> Length {
    let share = beam.part(1, beam.steps_of(widest).max(1));
    (grid * share.steps_of(grid)).min(widest)
}

fn how(held: OldCovering) -> &'static str {
    match held {
        OldCovering::Glued => {
            "Slit it fore and aft at the distances given, no deeper than the covering. Free the bow end of a strip with a \
             scraper, and pull it aft over its whole length, one strip after another."
        }
        OldCovering::Stapled => {
            "Draw the staples along the edges, and roll it up whole from the bow. Where it turns out to be glued, slit it in \
             strips of 12 to 16 in (30 to 40 cm)."
        }
        OldCovering::None => "Nothing to take off, or it is cut along the seams and lifted with the boards.",
    }
}

impl StripOutInput<'_> {
    /// The deck without its openings.
    pub(super) fn covered(&self) -> Area {
        let openings: i128 = self.openings.iter().map(|opening| opening.path().area()).sum();
        Area::from_square_nanometres((self.outline.path().area() - openings).max(0))
    }
}
