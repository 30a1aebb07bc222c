//! Numbers that came from outside, each with where it was read and how sure of it one can be.
//!
//! One file per source. A figure that no source settles is still a figure that somebody acts on: it stands here too,
//! with its mark, and the plan lists it as assumed.

mod aluminium;
pub mod defaults;
mod labour;
mod live_loads;
mod panel_capacities;
mod panel_factors;
mod panel_ratings;
mod panel_weights;
mod screws;

pub use aluminium::{ALLOYS, ALUMINIUM_DENSITY, ALUMINIUM_EXPANSION, ALUMINIUM_MODULUS_KSI, Alloy};
pub use labour::{
    LABOUR_STEPS, LabourStep, OLD_EDGE_ROW_HALVES, OLD_FIELD_ROW_HALVES, STEEL_DENSITY, seized_minutes,
    sound_bolt_minutes, sound_screw_minutes, spinning_minutes,
};
pub use live_loads::{LIVE_PRESETS, LivePreset, NO_DECK_RULE, PresetLoad, live_preset};
pub use panel_capacities::{
    AxisRow, Capacity, PANEL_CAPACITY_EDITION, PANEL_CAPACITY_FITTED, PANEL_LEAST_SPACING_INCHES, PanelRow, Series,
    panel_series,
};
pub use panel_factors::{
    CREEP_DRY, FaceGrade, Factor, GradeFactors, LOAD_DURATIONS, SANDED_FACTORS_SOURCE, SPAN_ADJUSTMENTS,
    SpanAdjustment, SpeciesGroup, WET_STIFFNESS, WET_STRENGTH, panel_size_factor, sanded_factors,
};
pub use panel_ratings::{
    RATED_SPANS, RATED_THICKNESSES, RatedSpans, RatedThickness, THICKNESS_RANGES, ThicknessRange, rated_spans,
};
pub use panel_weights::{plywood_pounds, plywood_psf};
pub use screws::{
    METAL_EDGE_FULL, METAL_EDGE_LEAST, METAL_SPACING_LEAST, PANEL_EDGE_LEAST, PULL_OUT_SOURCE, PULL_OUT_TESTS,
    PullOutTest, SCREW_RESISTANCE_FACTOR, SCREW_SAFETY_FACTOR, SCREWS, ScrewSize, WOOD_SCREWS, WoodScrew,
};

/// Pascals to a pound on the square foot: NIST SP 811 (2008), from the pound-force and the foot.
pub const PASCALS_PER_PSF: f64 = 47.880_258_980_3;

/// Newtons to a pound-force: NIST SP 811 (2008), exact: 0.453 592 37 kg at 9.806 65 m/s².
pub const NEWTONS_PER_POUND: f64 = 4.448_221_615_260_5;

use serde::{Deserialize, Serialize};

/// How sure a figure is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Standing {
    /// Read in the source that is named.
    #[serde(rename = "V")]
    Verified,
    /// Follows from other figures.
    #[serde(rename = "D")]
    Derived,
    /// Common shop practice, with no source.
    #[serde(rename = "C")]
    CommonPractice,
    /// Recalled and not confirmed.
    #[serde(rename = "M")]
    Memory,
    /// A choice of this library that changes nothing about the boat, or the plain absence of something.
    #[serde(rename = "choice")]
    Choice,
}

/// The default of a setting, with where it comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[non_exhaustive]
pub struct Preset<T> {
    /// JSON pointer of the setting in a job.
    pub pointer: &'static str,
    /// The setting in words.
    pub setting: &'static str,
    /// The default.
    pub value: T,
    /// How sure it is.
    pub standing: Standing,
    /// True where the sources differ.
    pub differ: bool,
    /// Where it comes from.
    pub source: &'static str,
}

impl<T> Preset<T> {
    /// True where a plan that rests on it says so: it was not read or derived, or its sources differ.
    pub fn is_assumed(&self) -> bool {
        self.differ || matches!(self.standing, Standing::CommonPractice | Standing::Memory)
    }

    /// The same default where it stands on memory alone, with the reason.
    #[must_use]
    pub fn unsettled(mut self, reason: &'static str) -> Preset<T> {
        self.standing = Standing::Memory;
        self.source = reason;
        self
    }
}
