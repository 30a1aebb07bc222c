//! What a beam does under its loads.

use super::piece::{Bent, Piece};

/// A value and where it is reached.
#[derive(Debug, Clone, Copy, PartialEq, Default, serde::Serialize)]
pub struct Peak {
    /// Distance from the left tip of the beam.
    pub at: f64,
    /// The value there.
    pub value: f64,
}

impl Peak {
    pub(super) fn new(at: f64, value: f64) -> Peak {
        Peak { at, value }
    }
}

/// The least and the greatest value along a span, signs counted.
#[derive(Debug, Clone, Copy, PartialEq, Default, serde::Serialize)]
pub struct Range {
    /// The least: the deepest hogging moment, the largest deflection upward.
    pub least: Peak,
    /// The greatest: the largest sagging moment, the largest deflection downward.
    pub most: Peak,
}

impl Range {
    /// The one that is farther from zero; the greatest where both are as far.
    pub fn largest(&self) -> Peak {
        if self.least.value.abs() > self.most.value.abs() { self.least } else { self.most }
    }

    /// Of all peaks; the first among equals. Zero without any.
    pub(super) fn of(peaks: impl Iterator<Item = Peak>) -> Range {
        let widen = |range: Option<Range>, peak: Peak| {
            let Some(mut range) = range else { return Some(Range { least: peak, most: peak }) };
            if peak.value < range.least.value {
                range.least = peak;
            }
            if peak.value > range.most.value {
                range.most = peak;
            }
            Some(range)
        };
        peaks.fold(None, widen).unwrap_or_default()
    }

    /// With all values multiplied by a factor above zero.
    pub(super) fn scaled(mut self, factor: f64) -> Range {
        self.least.value *= factor;
        self.most.value *= factor;
        self
    }
}

/// What a support carries.
#[derive(Debug, Clone, Copy, PartialEq, Default, serde::Serialize)]
#[non_exhaustive]
pub struct BeamSupport {
    /// Distance from the left tip of the beam.
    pub at: f64,
    /// Force of the support on the beam, upward positive: below zero it must hold the beam down.
    pub reaction: f64,
    /// Moment over the support, sagging positive.
    pub moment: f64,
}

/// What happens along one span or overhang.
#[derive(Debug, Clone, Copy, PartialEq, Default, serde::Serialize)]
#[non_exhaustive]
pub struct BeamSpan {
    /// Its left end, from the left tip of the beam.
    pub from: f64,
    /// Its length.
    pub length: f64,
    /// Moments, sagging positive, both ends included.
    pub moment: Range,
    /// Shears: the force that the part to the left presses upward on the part to the right.
    pub shear: Range,
    /// Deflections, downward positive.
    pub deflection: Range,
}

/// A solved beam.
#[derive(Debug, Clone, PartialEq, Default, serde::Serialize)]
#[non_exhaustive]
pub struct Beam {
    /// The supports, from the left.
    pub supports: Vec<BeamSupport>,
    /// The spans between them, from the left.
    pub spans: Vec<BeamSpan>,
    /// The left and the right overhang, where there is one.
    pub overhangs: [Option<BeamSpan>; 2],
    /// The bending stiffness EI.
    pub stiffness: f64,
    /// All stretches, the left overhang first and the right one last, of length zero where there is none.
    #[serde(skip)]
    pub(super) bent: Vec<Bent>,
}

impl Beam {
    /// Deflection at a distance from the left tip, downward positive. None outside the beam.
    pub fn deflection_at(&self, x: f64) -> Option<f64> {
        self.piece_at(x).map(|piece| piece.sag_at(x - piece.start) / self.stiffness)
    }

    /// Slope of the deflection at a distance from the left tip, positive where it sinks to the right.
    pub fn slope_at(&self, x: f64) -> Option<f64> {
        self.piece_at(x).map(|piece| piece.slope_at(x - piece.start) / self.stiffness)
    }

    /// Moment at a distance from the left tip, sagging positive.
    pub fn moment_at(&self, x: f64) -> Option<f64> {
        self.piece_at(x).map(|piece| piece.moment_at(x - piece.start))
    }

    /// Shear at a distance from the left tip; right of the place where it jumps there.
    pub fn shear_at(&self, x: f64) -> Option<f64> {
        self.piece_at(x).map(|piece| piece.shear_at(x - piece.start))
    }

    /// The piece that holds a place: the last that starts at or before it.
    fn piece_at(&self, x: f64) -> Option<&Piece> {
        let end = self.bent.last()?.end.start;
        // Sums of lengths round differently from what a caller adds up.
        if !(x >= 0.0 && x <= end * (1.0 + super::check::SLACK)) {
            return None;
        }
        let stretch = self.bent.partition_point(|bent| bent.start() <= x);
        // The right overhang may have no length; then the last span holds the end.
        let held = self.bent.get(..stretch)?.iter().rev().find(|bent| !bent.pieces.is_empty())?;
        let piece = held.pieces.partition_point(|piece| piece.start <= x);
        held.pieces.get(piece.saturating_sub(1))
    }
}
