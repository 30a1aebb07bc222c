//! Factors that a panel's dry capacities are multiplied by.
//!
//! APA Technical Note Q225J (December 2024), tables 4 and 5 and its span adjustments, read in a public transcription;
//! rows from elsewhere say so.

use super::Standing;
use serde::{Deserialize, Serialize};

const Q225J: &str = "APA Technical Note Q225J (December 2024)";

/// A factor with where it comes from.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct Factor {
    /// The factor.
    pub value: f64,
    /// What it is for.
    pub name: &'static str,
    /// How sure it is.
    pub standing: Standing,
    /// Where it was read.
    pub source: &'static str,
}

const fn verified(name: &'static str, value: f64) -> Factor {
    Factor { value, name, standing: Standing::Verified, source: Q225J }
}

/// Load duration `C_D`: bending and shear only, never stiffness.
pub const LOAD_DURATIONS: [Factor; 5] = [
    verified("permanent (over 10 years)", 0.9),
    verified("normal (10 years)", 1.0),
    verified("two months, snow", 1.15),
    verified("seven days", 1.25),
    verified("wind or earthquake", 1.6),
];

/// Wet service `C_M` for EI: moisture content of 16 percent or more.
pub const WET_STIFFNESS: Factor = verified("wet service, stiffness", 0.85);

/// Wet service `C_M` for MR and Fs: moisture content of 16 percent or more.
pub const WET_STRENGTH: Factor = verified("wet service, strength", 0.75);

/// A load read off a table for one number of spans, taken to another.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct SpanAdjustment {
    /// Spans of the table.
    pub from: u32,
    /// Spans wanted.
    pub to: u32,
    /// For the deflection load.
    pub deflection: f64,
    /// For the bending load.
    pub bending: f64,
    /// For the shear load.
    pub shear: f64,
}

const fn spans(from: u32, to: u32, deflection: f64, bending: f64, shear: f64) -> SpanAdjustment {
    SpanAdjustment { from, to, deflection, bending, shear }
}

/// Span adjustments as printed (verified, Q225J): ratios of the coefficients of the load equations, rounded.
pub const SPAN_ADJUSTMENTS: [SpanAdjustment; 3] =
    [spans(2, 1, 0.42, 1.0, 1.25), spans(3, 1, 0.53, 0.8, 1.2), spans(3, 2, 1.28, 0.8, 0.96)];

/// Species group of a sanded plywood.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum SpeciesGroup {
    /// Group 1, that of the table.
    #[default]
    #[serde(rename = "1")]
    Group1,
    /// Group 2.
    #[serde(rename = "2")]
    Group2,
    /// Group 3.
    #[serde(rename = "3")]
    Group3,
    /// Group 4.
    #[serde(rename = "4")]
    Group4,
    /// Structural I.
    #[serde(rename = "Structural I")]
    StructuralI,
}

/// Grade of a sanded plywood, by its face and back.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum FaceGrade {
    /// A-A or A-C, that of the table.
    #[default]
    #[serde(rename = "A-A/A-C")]
    Sanded,
    /// Marine.
    #[serde(rename = "Marine")]
    Marine,
    /// Any other.
    #[serde(rename = "other")]
    Other,
}

/// Factors for EI, MR and Fs.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct GradeFactors {
    /// For EI.
    pub stiffness: f64,
    /// For MR.
    pub bending: f64,
    /// For Fs.
    pub shear: f64,
}

/// The source of [`sanded_factors`].
pub const SANDED_FACTORS_SOURCE: &str = "APA Technical Note Q225J (December 2024), C_C of sanded plywood";

/// What table 3 is multiplied by for a species group and a grade; `along` the supports or across them.
///
/// None: marine grade exists only with veneers of Group 1 (as such, or as Structural I).
///
/// # Method
/// Q225J (December 2024), grade and construction factor `C_C` of sanded plywood. Verified.
pub fn sanded_factors(group: SpeciesGroup, grade: FaceGrade, along: bool) -> Option<GradeFactors> {
    use FaceGrade::{Marine, Other, Sanded};
    use SpeciesGroup::{Group1, Group2, Group3, Group4, StructuralI};
    let [stiffness, bending, shear] = match (group, grade, along) {
        (Group1, Sanded, _) | (StructuralI, Marine, _) => [1.0, 1.0, 1.0],
        (Group1, Marine, false) => [1.0, 0.91, 1.29],
        (Group1, Marine, true) => [1.38, 1.15, 1.29],
        (Group1, Other, false) => [1.0, 0.83, 1.0],
        (Group1, Other, true) => [1.0, 0.82, 1.0],
        (Group2, Sanded, _) => [0.83, 0.7, 1.0],
        (Group2, Other, false) => [0.83, 0.61, 1.0],
        (Group2, Other, true) => [0.83, 0.6, 1.0],
        (Group3, Sanded, _) => [0.67, 0.7, 1.0],
        (Group3, Other, false) => [0.67, 0.61, 1.0],
        (Group3, Other, true) => [0.67, 0.6, 1.0],
        (Group4, Sanded, _) => [0.56, 0.67, 1.0],
        (Group4, Other, false) => [0.56, 0.56, 1.0],
        (Group4, Other, true) => [0.56, 0.55, 1.0],
        (StructuralI, Sanded, false) => [1.0, 1.0, 1.3],
        (StructuralI, Other, false) => [1.0, 1.1, 1.3],
        (StructuralI, Sanded | Other, true) => [1.4, 1.4, 1.4],
        (Group2 | Group3 | Group4, Marine, _) => return None,
    };
    Some(GradeFactors { stiffness, bending, shear })
}

/// Total over elastic deflection under a permanent load, dry. NDS 2018, equation 3.5-1 (`K_cr`), as public code quotes it.
pub const CREEP_DRY: Factor = Factor {
    value: 2.0,
    name: "creep, permanent load, dry: total over elastic deflection",
    standing: Standing::Verified,
    source: "NDS 2018, equation 3.5-1",
};

/// Panel size factor `C_s` for the bending strength of a board of that width in inches.
///
/// # Method
/// APA D510F (2020), from memory: 1 from 24 in of width, 0.5 up to 8 in, `(8 + w)/32` between.
///
/// # Examples
/// ```
/// use deck_core::published::panel_size_factor;
/// assert_eq!(panel_size_factor(16.0).value, 0.75);
/// ```
pub fn panel_size_factor(width_inches: f64) -> Factor {
    Factor {
        value: ((8.0 + width_inches) / 32.0).clamp(0.5, 1.0),
        name: "panel size C_s",
        standing: Standing::Memory,
        source: "APA D510F (2020), from memory",
    }
}
