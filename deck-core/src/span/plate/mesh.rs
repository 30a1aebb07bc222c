//! Where the lines of the mesh lie, and which unknowns the supports hold.

use super::hermite::{Row, Side};
use super::support::PlateSupport;

/// A line nearer to another than this part of the side is the same line.
pub(super) const SAME: f64 = 1e-9;

/// The mesh: its lines along both sides, and how its corners are numbered.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Mesh {
    pub(super) sides: [Side; 2],
    /// From one corner to the next along each side; corners follow each other along the side with fewer of them,
    /// which keeps the band of the equations narrow.
    strides: [usize; 2],
}

impl Mesh {
    /// Lines at both edges, at the supports and at `posts`, and between them as many more as `size` asks for, evenly.
    /// `coarser` halves the number of intervals.
    pub(super) fn new(
        sides: [f64; 2],
        supports: &[PlateSupport],
        posts: &[Vec<f64>; 2],
        size: f64,
        coarser: bool,
    ) -> Mesh {
        let side = |axis: usize| {
            let stretches = supports.iter().map(|support| (support.stretches(sides)[axis], support.normal()));
            let fixed: Vec<f64> = stretches.clone().flat_map(|(stretch, _)| stretch).collect();
            let held = stretches.filter(|(_, normal)| *normal == Some(axis)).map(|(stretch, _)| stretch[0]);
            let wished = wished(sides[axis], &fixed, &posts[axis], size);
            let kinks: Vec<f64> = held.chain(wished.iter().copied()).collect();
            side(sides[axis], fixed.into_iter().chain(wished).collect(), &kinks, size, coarser)
        };
        Mesh::of([side(0), side(1)])
    }

    /// The mesh of one small load: lines at its edges and in its middle, at both edges of the plate and at the supports;
    /// intervals grow with their distance from the load, as what it does to the plate dies away. `load` is what it covers
    /// along each side; no interval is larger than `most`.
    pub(super) fn around(
        sides: [f64; 2],
        supports: &[PlateSupport],
        load: [[f64; 2]; 2],
        size: f64,
        most: Option<f64>,
    ) -> Mesh {
        let side = |axis: usize| {
            let stretches = supports.iter().map(|support| (support.stretches(sides)[axis], support.normal()));
            let fixed: Vec<f64> = stretches.clone().flat_map(|(stretch, _)| stretch).collect();
            let held = stretches.filter(|(_, normal)| *normal == Some(axis)).map(|(stretch, _)| stretch[0]);
            let graded = Graded::new(load[axis], size, most);
            let wished = wished(sides[axis], &fixed, &load[axis], graded.within);
            let kinks: Vec<f64> = held.chain(wished.iter().copied()).collect();
            let posts = posts(sides[axis], fixed.into_iter().chain(wished).collect());
            let lines = posts.windows(2).flat_map(|pair| graded.lines(pair[0], pair[1]));
            marked(std::iter::once(0.0).chain(lines).collect(), &kinks, SAME * sides[axis])
        };
        Mesh::of([side(0), side(1)])
    }

    fn of(sides: [Side; 2]) -> Mesh {
        let counts = sides.each_ref().map(|side| side.lines.len());
        let strides = if counts[0] >= counts[1] { [counts[1], 1] } else { [1, counts[0]] };
        Mesh { sides, strides }
    }

    /// Number of corners.
    pub(super) fn corners(&self) -> usize {
        self.sides[0].lines.len() * self.sides[1].lines.len()
    }

    /// The corner at a line of each side.
    pub(super) fn corner(&self, i: usize, j: usize) -> usize {
        i * self.strides[0] + j * self.strides[1]
    }

    /// All corners as lines of both sides.
    pub(super) fn all(&self) -> impl Iterator<Item = (usize, usize)> + use<> {
        let [count, across] = [self.sides[0].lines.len(), self.sides[1].lines.len()];
        (0..count).flat_map(move |i| (0..across).map(move |j| (i, j)))
    }

    /// All elements, by the lines at which they begin.
    pub(super) fn elements(&self) -> impl Iterator<Item = (usize, usize)> + use<> {
        let [count, across] = [self.sides[0].lines.len() - 1, self.sides[1].lines.len() - 1];
        (0..count).flat_map(move |i| (0..across).map(move |j| (i, j)))
    }

    /// The four corners of an element, in the order of its unknowns.
    pub(super) fn corners_of(&self, (i, j): (usize, usize)) -> [usize; 4] {
        [self.corner(i, j), self.corner(i, j + 1), self.corner(i + 1, j), self.corner(i + 1, j + 1)]
    }

    /// The corners on a support.
    pub(super) fn on(&self, support: &PlateSupport, lengths: [f64; 2]) -> Vec<(usize, usize)> {
        let stretches = support.stretches(lengths);
        let lies = |axis: usize, line: usize| {
            let at = self.sides[axis].lines[line];
            let slack = SAME * lengths[axis];
            at >= stretches[axis][0] - slack && at <= stretches[axis][1] + slack
        };
        self.all().filter(|&(i, j)| lies(0, i) && lies(1, j)).collect()
    }

    /// `Σ along · across · unknown` over the corners that both rows touch.
    pub(super) fn sum(&self, field: &[[f64; 4]], along: &Row, across: &Row) -> f64 {
        let mut sum = 0.0;
        for (i, x) in along.weights.iter().enumerate() {
            for (j, y) in across.weights.iter().enumerate() {
                let u = &field[self.corner(along.first + i, across.first + j)];
                sum += x[0] * (y[0] * u[0] + y[1] * u[1]) + x[1] * (y[0] * u[2] + y[1] * u[3]);
            }
        }
        sum
    }

    /// Adds `factor · along · across` to the unknowns' forces.
    pub(super) fn spread(&self, forces: &mut [[f64; 4]], along: &Row, across: &Row, factor: f64) {
        for (i, x) in along.weights.iter().enumerate() {
            for (j, y) in across.weights.iter().enumerate() {
                let force = &mut forces[self.corner(along.first + i, across.first + j)];
                let products = [x[0] * y[0], x[0] * y[1], x[1] * y[0], x[1] * y[1]];
                force.iter_mut().zip(products).for_each(|(force, product)| *force += factor * product);
            }
        }
    }
}

/// A wished line nearer to another than this part of an element is left out: it would make slivers.
const NEAREST: f64 = 0.1;

/// Those of the wished lines that keep clear of the fixed ones and of each other.
fn wished(length: f64, fixed: &[f64], posts: &[f64], size: f64) -> Vec<f64> {
    let mut kept: Vec<f64> = Vec::new();
    for &post in posts {
        let clear = |other: &f64| (other - post).abs() > NEAREST * size;
        if post > 0.0 && post < length && fixed.iter().chain(&kept).chain([&0.0, &length]).all(clear) {
            kept.push(post);
        }
    }
    kept
}

/// Lines that must be, in order, each once, the edges included.
fn posts(length: f64, mut posts: Vec<f64>) -> Vec<f64> {
    for at in &mut posts {
        *at = at.clamp(0.0, length);
    }
    posts.extend([0.0, length]);
    posts.sort_by(f64::total_cmp);
    posts.dedup_by(|a, b| *a - *b <= SAME * length);
    // The last post is the edge itself, not a place a rounding short of it.
    if let Some(last) = posts.last_mut() {
        *last = length;
    }
    posts
}

/// The lines along one side.
fn side(length: f64, fixed: Vec<f64>, kinks: &[f64], size: f64, coarser: bool) -> Side {
    let mut lines = vec![0.0];
    for pair in posts(length, fixed).windows(2) {
        let (from, to) = (pair[0], pair[1]);
        let count = intervals(to - from, size, coarser);
        lines.extend((1..count).map(|k| from + (to - from) * k as f64 / count as f64));
        lines.push(to);
    }
    marked(lines, kinks, SAME * length)
}

/// Lines with those of them that lie where moments have a kink.
fn marked(lines: Vec<f64>, kinks: &[f64], slack: f64) -> Side {
    let is_kink = |line: &f64| kinks.iter().any(|kink| (kink - line).abs() <= slack);
    let last = lines.len() - 1;
    let kinks = (0..=last).filter(|&index| index == 0 || index == last || is_kink(&lines[index])).collect();
    Side { lines, kinks }
}

/// How much intervals grow for each length of distance from a load. The tests hold the answers against a fine mesh.
const GROWTH: f64 = 0.8;

/// Intervals that grow with the distance from a load.
struct Graded {
    load: [f64; 2],
    /// Size of the intervals that the load covers.
    within: f64,
    most: Option<f64>,
}

impl Graded {
    /// Two intervals under the load, or more where they would be larger than `size`.
    fn new(load: [f64; 2], size: f64, most: Option<f64>) -> Graded {
        let extent = load[1] - load[0];
        Graded { load, within: extent / intervals(extent, most.unwrap_or(size).min(size), false) as f64, most }
    }

    /// The lines between two posts, with the second of them.
    fn lines(&self, from: f64, to: f64) -> Vec<f64> {
        let [before, after] = self.load;
        let middle = from.midpoint(to);
        if middle > before && middle < after {
            return evenly(from, to, self.within);
        }
        // Distances from the load of both posts, as the sizes of intervals there.
        let aft = middle > after;
        let (near, far) = if aft { (from - after, to - after) } else { (before - to, before - from) };
        let [near, far] = [near, far].map(|distance| self.within + GROWTH * distance.max(0.0));
        let count = ((far / near).ln() / GROWTH).ceil().max(1.0);
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "some dozens at most")]
        let whole = count as usize;
        let distance = |k: usize| near * ((far / near).powf(k as f64 / count) - 1.0) / GROWTH;
        let steps: Vec<f64> = (1..whole).map(distance).collect();
        let widest = to - from - steps.last().unwrap_or(&0.0);
        match self.most {
            Some(most) if widest > most => evenly(from, to, most),
            _ if aft => steps.into_iter().map(|step| from + step).chain([to]).collect(),
            _ => steps.into_iter().rev().map(|step| to - step).chain([to]).collect(),
        }
    }
}

/// Lines at even distances of `size` at most, the last with them.
fn evenly(from: f64, to: f64, size: f64) -> Vec<f64> {
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "checked against the largest mesh")]
    let count = ((to - from) / size - SAME).ceil().clamp(1.0, 1e6) as usize;
    (1..count).map(|k| from + (to - from) * k as f64 / count as f64).chain([to]).collect()
}

/// Intervals between two posts: an even number, so that every other line makes the coarser mesh.
fn intervals(length: f64, size: f64, coarser: bool) -> usize {
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "checked against the largest mesh")]
    let pairs = (length / (2.0 * size)).ceil().clamp(1.0, 1e6) as usize;
    if coarser { pairs } else { 2 * pairs }
}
