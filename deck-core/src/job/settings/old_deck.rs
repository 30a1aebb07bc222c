//! The settings of the strip-out.

use super::Resolver;
use crate::job::check::Parts;
use crate::length::Length;
use crate::money::ThreePoint;
use crate::published::{LABOUR_STEPS, LabourStep, defaults};
use crate::strip_out::OldCovering;

/// Settings of the strip-out, given or by default.
#[derive(Debug, Clone, PartialEq, Eq)]
#[non_exhaustive]
pub struct OldDeck {
    /// How the old covering is held.
    pub covering: OldCovering,
    /// Width of its strips.
    pub strip_width: Length,
    /// Hours to take it off.
    pub covering_hours: ThreePoint,
    /// Width of the old boards, fore and aft.
    pub board_width: Length,
    /// Their thickness; none: that of the new ones.
    pub thickness: Option<Length>,
    /// Water in them, in a hundred of their dry mass, least and most.
    pub soaked: (u32, u32),
    /// Minutes to lift one.
    pub board_minutes: ThreePoint,
}

impl Resolver {
    /// Nothing where the job does not speak of the old deck.
    pub(super) fn old_deck(&mut self, parts: &Parts<'_>) -> Option<OldDeck> {
        let (spec, _) = parts.strip_out?;
        let covering = spec.covering?;
        let (low, likely, high) = defaults::BOARD_MINUTES.value;
        let board_minutes = spec.board_minutes.unwrap_or_else(|| {
            self.take(None, &defaults::BOARD_MINUTES, |(low, likely, high)| format!("{low}, {likely}, {high}"));
            ThreePoint::tenths(low * 10, likely * 10, high * 10)
        });
        Some(OldDeck {
            covering,
            strip_width: self.length(spec.strip_width, &defaults::STRIP_WIDTH),
            covering_hours: spec.covering_hours.unwrap_or_else(|| planned(covering)),
            board_width: self.length(spec.board_width, &defaults::OLD_BOARD_WIDTH),
            thickness: spec.thickness,
            soaked: (
                self.count(spec.soaked_least_percent, &defaults::SOAKED_LEAST),
                self.count(spec.soaked_most_percent, &defaults::SOAKED_MOST),
            ),
            board_minutes,
        })
    }
}

/// The trade's planning figure; a covering that is only stapled takes the lower half of its range.
fn planned(covering: OldCovering) -> ThreePoint {
    let step = LABOUR_STEPS.iter().find(|step| step.task == "old-covering").map(LabourStep::hours);
    let glued = step.unwrap_or_default();
    match covering {
        OldCovering::Stapled => ThreePoint::new(glued.low, glued.low, glued.likely),
        _ => glued,
    }
}
