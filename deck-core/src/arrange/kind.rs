//! The ways in which boards may lie.

use serde::{Deserialize, Serialize};
use std::fmt;

/// A way in which the boards of a deck lie.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum ArrangementKind {
    /// Athwart, each board in one piece from side to side.
    Athwart,
    /// Athwart, each strip with a filler on alternating sides.
    FillerStrips,
    /// Athwart, each strip in two boards that butt near the centreline.
    CentreButt,
    /// In rows along the boat.
    ForeAndAft,
}

impl ArrangementKind {
    /// Every kind, the simplest first.
    pub const ALL: [ArrangementKind; 4] = [
        ArrangementKind::Athwart,
        ArrangementKind::FillerStrips,
        ArrangementKind::CentreButt,
        ArrangementKind::ForeAndAft,
    ];
}

impl fmt::Display for ArrangementKind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            ArrangementKind::Athwart => "athwart in one piece",
            ArrangementKind::FillerStrips => "athwart with filler strips",
            ArrangementKind::CentreButt => "athwart with a butt near the centre",
            ArrangementKind::ForeAndAft => "fore and aft",
        })
    }
}
