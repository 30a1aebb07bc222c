//! The clearances that openings keep.

use crate::length::Length;
use crate::published::defaults;
use serde::{Deserialize, Serialize};

/// The clearances that openings keep, each by its name.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct OpeningRules {
    /// Least distance from a seam …
    pub from_seam: Length,
    /// … and the one that is preferred.
    pub from_seam_preferred: Length,
    /// Least distance from the deck's edge.
    pub from_edge: Length,
    /// Least distance from a flange, where the opening is not framed.
    pub from_flange: Length,
    /// Least radius of corners …
    pub corner_radius: Length,
    /// … and the one that is preferred.
    pub corner_radius_preferred: Length,
    /// Least distance from one opening to the next, in thousandths of the smaller one's smaller side.
    pub apart: i64,
}

/// The usual clearances: common practice, no source.
impl Default for OpeningRules {
    fn default() -> OpeningRules {
        OpeningRules {
            from_seam: defaults::OPENING_FROM_SEAM.value,
            from_seam_preferred: defaults::OPENING_FROM_SEAM_PREFERRED.value,
            from_edge: defaults::OPENING_FROM_EDGE.value,
            from_flange: defaults::OPENING_FROM_FLANGE.value,
            corner_radius: defaults::OPENING_RADIUS.value,
            corner_radius_preferred: defaults::OPENING_RADIUS_PREFERRED.value,
            apart: 1000,
        }
    }
}
