//! What a job says of errors: how far off measuring, sawing and setting may be.

use super::specs::settings;
use crate::length::Length;
use crate::seams::Spread;
use serde::Serialize;

settings! {
    /// How far off things may be, for what that leaves of the bearing at each seam. Each error is evenly spread. Left out
    /// altogether: nothing is said of it.
    ToleranceSpec {
        /// Of the reading of a member's station.
        measuring: ErrorSpec,
        /// Whether each bay was measured from the member before it, so that errors of readings add up. Left out: all
        /// were read off one tape from the bow.
        chained: bool,
        /// Of a sawn board's width.
        sawing: ErrorSpec,
        /// Of a board's place against the one before it.
        setting: ErrorSpec,
        /// How much a sheet may be scant of its size as sold; it is never over. Of a measured sheet nothing.
        sheet: Length,
        /// Whether, of layouts that cost the same in boards and rips, the one is taken that keeps most above the least
        /// bearing at worst. Left out: no.
        by_margin: bool,
    }
}

/// An error: a length, as far to either side, or how far below and how far above.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(untagged)]
pub enum ErrorSpec {
    /// Half the width of an even spread.
    Even(Length),
    /// More to one side than to the other.
    Uneven(UnevenError),
}

/// An error that goes further to one side than to the other.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct UnevenError {
    /// How far below, as a length that is not negative.
    pub under: Length,
    /// How far above.
    pub over: Length,
}

impl ErrorSpec {
    /// The error as the seams take it.
    pub fn spread(self) -> Spread {
        match self {
            ErrorSpec::Even(half) => Spread::even(half),
            ErrorSpec::Uneven(UnevenError { under, over }) => Spread { under, over },
        }
    }
}
