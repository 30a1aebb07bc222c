//! The worst place of a load that may stand anywhere.

use super::model::PlateModel;
use super::result::{PlatePeak, PlateRange};
use crate::error::Error;

/// A worst value, and where the load stands for it.
#[derive(Debug, Clone, Copy, PartialEq, Default, serde::Serialize)]
#[non_exhaustive]
pub struct PlateWorstPeak {
    /// Where the middle of the load stands.
    pub load_at: [f64; 2],
    /// The value, and where it is reached.
    pub peak: PlatePeak,
}

/// The worst that a load does wherever it stands.
#[derive(Debug, Clone, PartialEq, Default, serde::Serialize)]
#[non_exhaustive]
pub struct PlateWorst {
    /// The largest deflection.
    pub deflection: PlateWorstPeak,
    /// The largest sagging moment along `x`.
    pub sagging_x: PlateWorstPeak,
    /// The largest sagging moment along `y`.
    pub sagging_y: PlateWorstPeak,
    /// The largest hogging moment along `x`, below zero.
    pub hogging_x: PlateWorstPeak,
    /// The largest hogging moment along `y`, below zero.
    pub hogging_y: PlateWorstPeak,
    /// From one place that was tried to the next, along `x` and along `y`.
    pub step: [f64; 2],
    /// Number of places that were tried.
    pub tried: usize,
}

impl PlateModel {
    /// The worst that one load does wherever it stands: a heel, a pedestal's base, a jack's pad.
    ///
    /// `size` is what the load covers along `x` and `y`, `value` its force; it stands wholly on the plate. `step` is the
    /// largest distance between places that are tried; None: an eighth of the side or a quarter of a bay.
    ///
    /// # Method
    /// [`PlateSearch::worst`](super::PlateSearch::worst), which is what to keep for several loads.
    ///
    /// # Limits
    /// A downward force: `value` is zero or above. Between places of the grid a value may be larger by what it changes
    /// in half a step; halve the step to see.
    ///
    /// # Errors
    /// A size that does not fit the plate, a step of zero or less, a step that makes more than ten thousand places.
    ///
    /// # Examples
    /// A heel is worst at the free end of the outer bay:
    /// ```
    /// use deck_core::span::{PlateProblem, PlateSupport, Rigidity};
    /// let members = [0.0, 16.0, 32.0, 48.0].map(PlateSupport::along);
    /// let model = PlateProblem::new(102.0, 48.0, Rigidity::new(9_583.0, 29_583.0, 8_000.0), &members).model()?;
    /// let worst = model.worst_place([3.0, 3.0], 200.0, None)?;
    /// let [x, y] = worst.deflection.load_at;
    /// assert!((x == 1.5 || x == 100.5) && (y < 16.0 || y > 32.0));
    /// # Ok::<(), deck_core::Error>(())
    /// ```
    pub fn worst_place(&self, size: [f64; 2], value: f64, step: Option<f64>) -> Result<PlateWorst, Error> {
        self.problem.search()?.worst(size, value, step)
    }
}

impl PlateWorst {
    /// What a load does at its one place.
    pub(super) fn at(load_at: [f64; 2], ranges: &[PlateRange; 4]) -> PlateWorst {
        let mut worst = PlateWorst { tried: 1, ..PlateWorst::default() };
        worst.add(load_at, ranges);
        worst
    }

    /// Keeps of each what is worse.
    pub(super) fn add(&mut self, load_at: [f64; 2], ranges: &[PlateRange; 4]) {
        let [deflection, x, y, _] = ranges;
        let peaks = [deflection.most, x.most, y.most, x.least, y.least];
        for (index, peak) in peaks.into_iter().enumerate() {
            self.keep(index, PlateWorstPeak { load_at, peak });
        }
    }

    /// Keeps a value if it is worse: of deflection, sagging along `x` and `y`, hogging along `x` and `y`.
    pub(super) fn keep(&mut self, index: usize, found: PlateWorstPeak) {
        let sign = if index < HOGGING { 1.0 } else { -1.0 };
        let mut all =
            [&mut self.deflection, &mut self.sagging_x, &mut self.sagging_y, &mut self.hogging_x, &mut self.hogging_y];
        if let Some(worst) = all.get_mut(index)
            && sign * found.peak.value > sign * worst.peak.value
        {
            **worst = found;
        }
    }
}

/// Number of the first hogging moment among the five.
pub(super) const HOGGING: usize = 3;

/// A peak at a place, from a value alone.
pub(super) fn seen(load_at: [f64; 2], at: [f64; 2], value: f64) -> PlateWorstPeak {
    PlateWorstPeak { load_at, peak: PlatePeak { at, value } }
}
