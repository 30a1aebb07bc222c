//! What a job says of the manner in which boards lie.

use super::specs::settings;
use crate::arrange::ArrangementKind;
use crate::length::Length;
use serde::{Deserialize, Serialize};

settings! {
    /// In what manner the boards lie: what to compare, what to build, and what joints along the boat keep.
    ArrangeSpec {
        /// The arrangements to compare. Left out: all of them.
        #[cfg_attr(feature = "schema", schemars(length(min = 1)))]
        compare: Vec<ArrangementKind>,
        /// The one to build. Left out: the best of those compared.
        build: Build,
        /// How many members lie at the least between butts of neighbouring rows. Zero: they may meet, and so may joints
        /// of neighbouring strips.
        #[cfg_attr(feature = "schema", schemars(range(min = 0, max = 3)))]
        stagger: u32,
        /// Extent athwart of the blocks under joints.
        block_width: Length,
        /// Greatest spacing of screws into blocks. Left out: that of edge rows.
        block_spacing: Length,
        /// Whether seams are chosen by what their boards cost in the nest, and not by their count alone.
        seams_by_nest: bool,
    }
}

/// Which arrangement is built.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Build {
    /// The best of those compared.
    #[default]
    Best,
    /// Athwart, each board in one piece from side to side.
    Athwart,
    /// Athwart, each strip with a filler on alternating sides.
    FillerStrips,
    /// Athwart, each strip in two boards that butt near the centreline.
    CentreButt,
    /// In rows along the boat.
    ForeAndAft,
}

impl Build {
    /// The arrangement that is named; none for the best.
    pub fn named(self) -> Option<ArrangementKind> {
        match self {
            Build::Best => None,
            Build::Athwart => Some(ArrangementKind::Athwart),
            Build::FillerStrips => Some(ArrangementKind::FillerStrips),
            Build::CentreButt => Some(ArrangementKind::CentreButt),
            Build::ForeAndAft => Some(ArrangementKind::ForeAndAft),
        }
    }
}
