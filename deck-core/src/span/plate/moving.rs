//! The worst place of a load that may stand anywhere.

use super::field::{Rows, Spot};
use super::hermite::Row;
use super::load::PlateLoad;
use super::model::{PlateModel, Solver, posts, size};
use super::result::{PlatePeak, PlateRange};
use super::stiffness::Corner;
use super::{PlateProblem, check};
use crate::error::Error;

/// Places that are solved in one sweep.
const LANES: usize = 4;
/// More places than this are not tried.
const MOST_PLACES: usize = 10_000;
/// What is looked for: deflection, moments along `x` and `y` sagging, and both hogging.
const WANTED: usize = 5;

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
    /// largest distance between places that are tried; None: the size of an element.
    ///
    /// # Method
    /// Every place of an even grid that reaches all edges is tried with the equations of the coarser mesh: deflection
    /// and moments at the middle of the load, and the moments over each line support beside it. The best place for each
    /// of the five is solved once more, with mesh lines around the load, and the worst of all is told.
    ///
    /// # Limits
    /// Between places of the grid a value may be larger by what it changes in half a step; halve the step to see.
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
        let step = step.unwrap_or_else(|| super::model::size(problem));
        check::step(step)?;
        let grid = [0, 1].map(|axis| places(problem.sides()[axis], size[axis], step));
        let [(xs, step_x), (ys, step_y)] = grid;
        let tried = xs.len().saturating_mul(ys.len());
        check::places(tried, MOST_PLACES)?;
        let search = Search::new(problem, self.coarse.as_ref().unwrap_or(&self.fine), size, &xs, &ys);
        let best = search.best();
        let mut worst = PlateWorst { step: [step_x, step_y], tried, ..PlateWorst::default() };
        for load_at in best {
            let ranges = self.with_lines(load_at, size, value)?;
            worst.add(load_at, &ranges);
        }
        Ok(worst)
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
}

/// Middles of a load of a size along a side, from edge to edge, no farther apart than `step`; and their distance.
fn places(side: f64, size: f64, step: f64) -> (Vec<f64>, f64) {
    let room = (side - size).max(0.0);
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "bounded, and checked by the caller")]
    let steps = (room / step).ceil().min(1e6) as usize;
    let step = if steps > 0 { room / steps as f64 } else { 0.0 };
    ((0..=steps).map(|k| size / 2.0 + step * k as f64).collect(), step)
}

/// A place along one side: what the load covers, and how the answer is read in its middle.
struct Column {
    at: f64,
    covers: Row,
    middle: Rows,
}

/// The grid of places on one mesh.
struct Search<'a> {
    solver: &'a Solver,
    problem: &'a PlateProblem,
    columns: [Vec<Column>; 2],
    /// Lines of the mesh on which supports lie across `x` and across `y`: where hogging is looked for.
    lines: [Vec<Rows>; 2],
}

impl<'a> Search<'a> {
    fn new(problem: &'a PlateProblem, solver: &'a Solver, size: [f64; 2], xs: &[f64], ys: &[f64]) -> Search<'a> {
        let mesh = &solver.stiffness.mesh;
        let column = |axis: usize, at: f64| {
            let side = &mesh.sides[axis];
            let half = size[axis] / 2.0;
            let length = problem.sides()[axis];
            let covers = side.integral((at - half).max(0.0), (at + half).min(length));
            Column { at, covers, middle: Rows::new(mesh, axis, Spot { x: at, interval: side.interval(at) }) }
        };
        let columns = [xs.iter().map(|&x| column(0, x)).collect(), ys.iter().map(|&y| column(1, y)).collect()];
        let lines = [0, 1].map(|axis| {
            let side = &mesh.sides[axis];
            let inner = side.kinks.iter().copied().filter(|&kink| kink + 1 < side.lines.len());
            inner.map(|kink| Rows::new(mesh, axis, Spot { x: side.lines[kink], interval: kink })).collect()
        });
        Search { solver, problem, columns, lines }
    }

    /// The best place for each thing that is wanted, each once.
    fn best(&self) -> Vec<[f64; 2]> {
        let places: Vec<(&Column, &Column)> =
            self.columns[0].iter().flat_map(|x| self.columns[1].iter().map(move |y| (x, y))).collect();
        let mut best = [(0.0, [0.0; 2]); WANTED];
        for four in places.chunks(LANES) {
            for (place, corners) in four.iter().zip(self.solve(four)) {
                for (best, value) in best.iter_mut().zip(self.values(*place, &corners)) {
                    // A hair more, so that of places that mirror each other the first stays.
                    if value > best.0 * (1.0 + 1e-9) {
                        *best = (value, [place.0.at, place.1.at]);
                    }
                }
            }
        }
        let mut found: Vec<[f64; 2]> = Vec::with_capacity(WANTED);
        for (value, at) in best {
            if value > 0.0 && !found.contains(&at) {
                found.push(at);
            }
        }
        found
    }

    fn solve(&self, places: &[(&Column, &Column)]) -> [Vec<Corner>; LANES] {
        let mesh = &self.solver.stiffness.mesh;
        let forces: [Vec<Corner>; LANES] = std::array::from_fn(|lane| {
            let mut forces = vec![[0.0; 4]; mesh.corners()];
            if let Some((x, y)) = places.get(lane) {
                mesh.spread(&mut forces, &x.covers, &y.covers, 1.0);
            }
            forces
        });
        self.solver.stiffness.solve(forces.each_ref().map(Vec::as_slice))
    }

    /// Deflection, sagging moments and hogging moments, the latter with their sign turned.
    fn values(&self, (x, y): (&Column, &Column), corners: &[Corner]) -> [f64; WANTED] {
        let four =
            |x: &Rows, y: &Rows| super::field::look(&self.solver.stiffness.mesh, &self.problem.rigidity, corners, x, y);
        let [deflection, sagging_x, sagging_y, _] = four(&x.middle, &y.middle);
        let hogging_x = self.lines[0].iter().map(|line| -four(line, &y.middle)[1]).fold(0.0, f64::max);
        let hogging_y = self.lines[1].iter().map(|line| -four(&x.middle, line)[2]).fold(0.0, f64::max);
        [deflection, sagging_x, sagging_y, hogging_x, hogging_y]
    }
}
