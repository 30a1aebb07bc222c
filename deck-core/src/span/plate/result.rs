//! What a plate does under its loads.

use super::field::Field;

/// A value and where it is reached.
#[derive(Debug, Clone, Copy, PartialEq, Default, serde::Serialize)]
pub struct PlatePeak {
    /// Distances from the corner, along the length and along the width.
    pub at: [f64; 2],
    /// The value there.
    pub value: f64,
}

/// The least and the greatest value on a plate, signs counted.
#[derive(Debug, Clone, Copy, PartialEq, Default, serde::Serialize)]
pub struct PlateRange {
    /// The least: the deepest hogging moment, the largest deflection upward.
    pub least: PlatePeak,
    /// The greatest: the largest sagging moment, the largest deflection downward.
    pub most: PlatePeak,
}

impl PlateRange {
    /// The one that is farther from zero; the greatest where both are as far.
    pub fn largest(&self) -> PlatePeak {
        if self.least.value.abs() > self.most.value.abs() { self.least } else { self.most }
    }
}

/// How far the answers may be off by the mesh alone: a third of what changes from a mesh twice as coarse.
///
/// A third is right where errors fall with the square of the element's size, as under point loads and in corners of
/// supports; elsewhere they fall faster, and the true error is less.
#[derive(Debug, Clone, Copy, PartialEq, Default, serde::Serialize)]
#[non_exhaustive]
pub struct PlateError {
    /// Of the largest deflection, down or up.
    pub deflection: f64,
    /// Of the largest moment along `x`, sagging or hogging.
    pub moment_x: f64,
    /// Of the largest moment along `y`, sagging or hogging.
    pub moment_y: f64,
}

/// Everything at one place.
#[derive(Debug, Clone, Copy, PartialEq, Default, serde::Serialize)]
#[non_exhaustive]
pub struct PlateState {
    /// Deflection, downward positive.
    pub deflection: f64,
    /// Slopes along `x` and along `y`.
    pub slope: [f64; 2],
    /// Moment per length that bends along `x`, sagging positive.
    pub moment_x: f64,
    /// Moment per length that bends along `y`, sagging positive.
    pub moment_y: f64,
    /// Twisting moment per length, `-2 Dxy ∂²w/∂x∂y`.
    pub twist: f64,
    /// Shear forces per length through the thickness, on cuts across `x` and across `y`.
    pub shear: [f64; 2],
}

/// A solved plate.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
#[non_exhaustive]
pub struct Plate {
    /// Deflections, downward positive.
    pub deflection: PlateRange,
    /// Moments per length that bend along `x`, sagging positive.
    pub moment_x: PlateRange,
    /// Moments per length that bend along `y`, sagging positive.
    pub moment_y: PlateRange,
    /// Twisting moments per length.
    pub twist: PlateRange,
    /// What each support carries, upward positive, in the order of the supports: below zero it must hold the plate
    /// down. Where supports cross, what their crossing carries is shared evenly.
    pub reactions: Vec<f64>,
    /// Elements along `x` and along `y`.
    pub elements: [usize; 2],
    /// The error by the mesh, where the library chose it.
    pub error: Option<PlateError>,
    #[serde(skip)]
    pub(super) field: Field,
}

impl Plate {
    /// Deflection, slopes, moments and shears at a place. None outside the plate.
    ///
    /// On the line of a support, where moments and shears may jump, those of the greater `x` and `y` are told.
    pub fn at(&self, x: f64, y: f64) -> Option<PlateState> {
        self.field.at([x, y])
    }
}
