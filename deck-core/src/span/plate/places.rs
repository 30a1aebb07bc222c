//! The places that a moving load is tried at.

use super::check;
use super::hermite::Row;
use super::mesh::Mesh;
use super::search::{BETTER, PlateSearch};
use super::support::{Place, PlateSupport};
use crate::error::Error;
use std::ops::Range;

/// More places than this are not tried.
const MOST_PLACES: usize = 10_000;
/// Steps between edges that are tried at least.
const LEAST_STEPS: usize = 8;
/// Places nearer to each other than this part of a step are one.
const SAME_PLACE: f64 = 0.1;
/// Where supports run from edge to edge: this part of the way from the first inner place to the middle is tried as well.
const FARTHER: f64 = 0.35;

/// The places that are tried: middles of a load of a size.
pub(super) struct Grid {
    pub(super) size: [f64; 2],
    pub(super) places: [Vec<f64>; 2],
    /// From one place to the next at most.
    pub(super) step: [f64; 2],
    /// Number of places, with those that a mirror shows.
    count: usize,
}

/// Some of a grid's places, by their numbers along both sides.
#[derive(Clone)]
pub(super) struct Zone([Range<usize>; 2]);

/// The greatest value of a grid, and where it is between the grid's places.
#[derive(Clone, Copy)]
pub(super) struct Top {
    pub(super) value: f64,
    pub(super) at: [f64; 2],
}

impl Zone {
    /// All places, by their numbers along both sides.
    pub(super) fn all(&self) -> impl Iterator<Item = (usize, usize)> + use<> {
        let [along, across] = self.0.clone();
        along.flat_map(move |i| across.clone().map(move |j| (i, j)))
    }
}

impl Grid {
    /// Even steps from edge to edge, no larger than `step`; None: an eighth of the side, or a quarter of a bay on the
    /// average.
    pub(super) fn even(search: &PlateSearch, size: [f64; 2], step: Option<f64>) -> Result<Grid, Error> {
        if let Some(step) = step {
            check::step(step)?;
        }
        let (sides, steps) = (search.problem.sides(), steps(search));
        Grid::new(search, size, [0, 1].map(|axis| places(sides[axis], size[axis], step.unwrap_or(steps[axis]))))
    }

    /// The places of a load anywhere, and which of them lie away from free edges.
    pub(super) fn zones(search: &PlateSearch, size: [f64; 2]) -> Result<(Grid, Option<Zone>), Error> {
        let problem = &search.problem;
        let (sides, steps) = (problem.sides(), steps(search));
        let inner = inner(&problem.supports, sides, size);
        let near = [0, 1].map(|axis| SAME_PLACE * size[axis].min(steps[axis]));
        let strip = problem.supports.iter().all(|support| matches!(support.place, Place::Along { between: None, .. }));
        let all = [0, 1].map(|axis| {
            let [from, to] = inner[axis];
            if axis == 0 && strip && from < to {
                let middle = sides[0] / 2.0;
                return vec![size[0] / 2.0, from, from + FARTHER * (middle - from), middle];
            }
            let mut all = places(sides[axis], size[axis], steps[axis]);
            all.extend([from, to].into_iter().filter(|_| from <= to));
            all.sort_by(f64::total_cmp);
            all.dedup_by(|a, b| *a - *b <= near[axis]);
            all
        });
        let grid = Grid::new(search, size, all)?;
        let within = |axis: usize| {
            let ([from, to], places) = (inner[axis], &grid.places[axis]);
            let start = places.partition_point(|place| *place < from - near[axis]);
            start..places.partition_point(|place| *place <= to + near[axis])
        };
        let zone = Zone([within(0), within(1)]);
        let some = inner.iter().all(|[from, to]| from <= to) && zone.0.iter().all(|range| !range.is_empty());
        Ok((grid, some.then_some(zone)))
    }

    /// Of a mirrored plate only the first half of the places along its length.
    fn new(search: &PlateSearch, size: [f64; 2], mut places: [Vec<f64>; 2]) -> Result<Grid, Error> {
        let count = places[0].len().saturating_mul(places[1].len());
        check::places(count, MOST_PLACES)?;
        let step = places.each_ref().map(|side| gaps(side).fold(0.0, f64::max));
        if search.mirrored {
            places[0].retain(|place| *place <= search.problem.length * (0.5 + 1e-9));
        }
        Ok(Grid { size, places, step, count })
    }

    /// What the load covers at each place along one side.
    pub(super) fn covers(&self, mesh: &Mesh, axis: usize) -> Vec<Row> {
        let side = &mesh.sides[axis];
        let (half, last) = (self.size[axis] / 2.0, side.lines.len() - 1);
        let cover = |&at: &f64| side.integral((at - half).max(0.0), (at + half).min(side.lines[last]));
        self.places[axis].iter().map(cover).collect()
    }

    pub(super) fn whole(&self) -> Zone {
        Zone(self.places.each_ref().map(|side| 0..side.len()))
    }

    /// How many places of a zone are known.
    pub(super) fn tried(&self, zone: &Zone) -> usize {
        let [along, across] = zone.0.each_ref().map(Range::len);
        if along == self.places[0].len() && across == self.places[1].len() { self.count } else { along * across }
    }

    pub(super) fn at(&self, (i, j): (usize, usize)) -> [f64; 2] {
        [self.places[0][i], self.places[1][j]]
    }

    /// True for two places so near to each other that one of them is solved.
    pub(super) fn same(&self, a: [f64; 2], b: [f64; 2]) -> bool {
        let near = |axis: usize| SAME_PLACE * gaps(&self.places[axis]).fold(f64::INFINITY, f64::min);
        (0..2).all(|axis| (a[axis] - b[axis]).abs() <= near(axis))
    }

    /// The greatest value of a zone; between its neighbours along each side, the place at the top of the parabola.
    pub(super) fn top(&self, values: &[f64], zone: &Zone) -> Option<Top> {
        let across = self.places[1].len();
        let mut best = (0.0, (0, 0));
        for place in zone.all() {
            let value = values[place.0 * across + place.1];
            if value > best.0 * BETTER {
                best = (value, place);
            }
        }
        let (value, (i, j)) = best;
        let x = vertex(&self.places[0], &zone.0[0], i, |i| values[i * across + j]);
        let y = vertex(&self.places[1], &zone.0[1], j, |j| values[i * across + j]);
        (value > 0.0).then_some(Top { value, at: [x, y] })
    }
}

fn gaps(places: &[f64]) -> impl Iterator<Item = f64> {
    places.windows(2).map(|pair| pair[1] - pair[0])
}

/// The top of the parabola through a place and its neighbours, half-way to either of them at most.
fn vertex(places: &[f64], zone: &Range<usize>, index: usize, value: impl Fn(usize) -> f64) -> f64 {
    let here = places[index];
    if index == zone.start || index + 1 >= zone.end {
        return here;
    }
    let (before, after) = (places[index - 1], places[index + 1]);
    let rise = (value(index) - value(index - 1)) / (here - before);
    let fall = (value(index + 1) - value(index)) / (after - here);
    let bow = (fall - rise) / (after - before);
    let top = before.midpoint(here) - rise / (2.0 * bow);
    if top.is_finite() { top.clamp(before.midpoint(here), here.midpoint(after)) } else { here }
}

/// The largest steps along both sides.
fn steps(search: &PlateSearch) -> [f64; 2] {
    let bays = search.mesh().sides.each_ref().map(|side| side.kinks.len() - 1);
    [0, 1].map(|axis| search.problem.sides()[axis] / (4 * bays[axis]).max(LEAST_STEPS) as f64)
}

/// Middles of a load of a size along a side, from edge to edge, no farther apart than `step`.
fn places(side: f64, size: f64, step: f64) -> Vec<f64> {
    let room = (side - size).max(0.0);
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "bounded, and checked by the caller")]
    let steps = (room / step).ceil().min(1e5) as usize;
    let step = if steps > 0 { room / steps as f64 } else { 0.0 };
    (0..=steps).map(|k| size / 2.0 + step * k as f64).collect()
}

/// Between which middles a load keeps its own extent away from edges that no support holds, along each side.
fn inner(supports: &[PlateSupport], sides: [f64; 2], size: [f64; 2]) -> [[f64; 2]; 2] {
    [0, 1].map(|axis| {
        let held = |edge: f64| {
            let lies = |support: &PlateSupport| (support.stretches(sides)[axis][0] - edge).abs() <= 1e-9 * sides[axis];
            supports.iter().any(|support| support.normal() == Some(axis) && lies(support))
        };
        let keeps = |edge: f64| if held(edge) { size[axis] / 2.0 } else { 1.5 * size[axis] };
        [keeps(0.0), sides[axis] - keeps(sides[axis])]
    })
}
