//! The worst place of a load that may stand anywhere.

use super::check;
use super::load::PlateLoad;
use super::model::{PlateModel, Solver, posts, size};
use super::result::{PlatePeak, PlateRange};
use super::search::{Grid, Hogging, hogging, sagging};
use crate::error::Error;

/// More places than this are not tried.
const MOST_PLACES: usize = 10_000;

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
    /// Every place of an even grid that reaches all edges is tried. Deflection and sagging moments are taken at the middle
    /// of the load, with the equations of the coarser mesh. Hogging over the ends and the middle of each line support
    /// comes from its influence surface (by Maxwell's reciprocity one solution gives all places). The places found for
    /// deflection and sagging, moved to the top of a parabola through their neighbours, are solved once more with mesh
    /// lines around the load, and the worst of all is told.
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
        let problem = &self.problem;
        let middle = problem.sides().map(|side| side / 2.0);
        check::moving(problem, &PlateLoad::patch(middle, size, value))?;
        let steps = self.steps(step)?;
        let grid = [0, 1].map(|axis| places(problem.sides()[axis], size[axis], steps[axis]));
        let step = grid.each_ref().map(|side| side.1);
        let tried = grid[0].0.len().saturating_mul(grid[1].0.len());
        check::places(tried, MOST_PLACES)?;
        let grid = Grid { size, places: grid.map(|side| side.0) };
        let mut worst = PlateWorst { step, tried, ..PlateWorst::default() };
        for load_at in sagging(problem, self.coarse.as_ref().unwrap_or(&self.fine), &grid) {
            worst.add(load_at, &self.with_lines(load_at, size, value)?);
        }
        worst.add_hogging(hogging(problem, &self.fine, &grid), value);
        Ok(worst)
    }

    /// The largest steps along both sides: the caller's, or an eighth of the side, or a quarter of a bay on the average.
    fn steps(&self, step: Option<f64>) -> Result<[f64; 2], Error> {
        if let Some(step) = step {
            check::step(step)?;
            return Ok([step; 2]);
        }
        let bays = self.fine.stiffness.mesh.sides.each_ref().map(|side| side.kinks.len() - 1);
        Ok([0, 1].map(|axis| self.problem.sides()[axis] / (4 * bays[axis]).max(8) as f64))
    }

    /// Ranges under the load at one place, with mesh lines around it.
    fn with_lines(&self, at: [f64; 2], extent: [f64; 2], value: f64) -> Result<[PlateRange; 4], Error> {
        let load = [PlateLoad::patch(at, extent, value)];
        let solver =
            Solver::new(&self.problem, &posts(&self.problem, &load, size(&self.problem)), size(&self.problem), false)?;
        Ok(solver.answer(&self.problem, &load).ranges)
    }
}

impl PlateWorst {
    fn add(&mut self, load_at: [f64; 2], ranges: &[PlateRange; 4]) {
        let [deflection, x, y, _] = ranges;
        let pairs = [
            (&mut self.deflection, deflection.most, 1.0),
            (&mut self.sagging_x, x.most, 1.0),
            (&mut self.sagging_y, y.most, 1.0),
            (&mut self.hogging_x, x.least, -1.0),
            (&mut self.hogging_y, y.least, -1.0),
        ];
        for (worst, peak, sign) in pairs {
            if sign * peak.value > sign * worst.peak.value {
                *worst = PlateWorstPeak { load_at, peak };
            }
        }
    }

    fn add_hogging(&mut self, most: [Option<Hogging>; 2], force: f64) {
        for (worst, most) in [&mut self.hogging_x, &mut self.hogging_y].into_iter().zip(most) {
            if let Some(Hogging { value, section, load_at }) = most
                && value * force < worst.peak.value
            {
                *worst = PlateWorstPeak { load_at, peak: PlatePeak { at: section, value: value * force } };
            }
        }
    }
}

/// Middles of a load of a size along a side, from edge to edge, no farther apart than `step`; and their distance.
fn places(side: f64, size: f64, step: f64) -> (Vec<f64>, f64) {
    let room = (side - size).max(0.0);
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "bounded, and checked by the caller")]
    let steps = (room / step).ceil().min(1e6) as usize;
    let step = if steps > 0 { room / steps as f64 } else { 0.0 };
    ((0..=steps).map(|k| size / 2.0 + step * k as f64).collect(), step)
}
