//! Which place of a moving load is the worst for what: a search on a grid.

use super::PlateProblem;
use super::field::{Rows, Spot, look};
use super::hermite::Row;
use super::mesh::Mesh;
use super::model::Solver;
use super::stiffness::Corner;
use super::support::PlateSupport;

/// Places that are solved in one sweep.
const LANES: usize = 8;
/// What is looked for under the load: deflection, sagging moments along `x` and along `y`.
const WANTED: usize = 3;
/// Of places that mirror each other the first stays: the others must be better by this part.
const BETTER: f64 = 1.0 + 1e-9;

/// The places that are tried: middles of a load of a size.
pub(super) struct Grid {
    pub(super) size: [f64; 2],
    pub(super) places: [Vec<f64>; 2],
}

impl Grid {
    /// What the load covers at each place along one side.
    fn covers(&self, mesh: &Mesh, axis: usize) -> Vec<Row> {
        let side = &mesh.sides[axis];
        let (half, last) = (self.size[axis] / 2.0, side.lines.len() - 1);
        let cover = |&at: &f64| side.integral((at - half).max(0.0), (at + half).min(side.lines[last]));
        self.places[axis].iter().map(cover).collect()
    }

    /// All places, by their numbers along both sides.
    fn all(&self) -> impl Iterator<Item = (usize, usize)> + use<> {
        let [along, across] = self.places.each_ref().map(Vec::len);
        (0..along).flat_map(move |i| (0..across).map(move |j| (i, j)))
    }

    fn at(&self, (i, j): (usize, usize)) -> [f64; 2] {
        [self.places[0][i], self.places[1][j]]
    }
}

/// The best value and its place, by numbers.
type Best = (f64, (usize, usize));

fn better(best: &mut Best, value: f64, place: (usize, usize)) {
    if value > best.0 * BETTER {
        *best = (value, place);
    }
}

/// The places where the load sinks most and where it bends the plate most right under it, each once; told between the
/// places of the grid, at the top of a parabola.
pub(super) fn sagging(problem: &PlateProblem, solver: &Solver, grid: &Grid) -> Vec<[f64; 2]> {
    let mesh = &solver.stiffness.mesh;
    let covers = [0, 1].map(|axis| grid.covers(mesh, axis));
    let middles = [0, 1].map(|axis| {
        let rows = |&x: &f64| Rows::new(mesh, axis, Spot { x, interval: mesh.sides[axis].interval(x) });
        grid.places[axis].iter().map(rows).collect::<Vec<Rows>>()
    });
    let places: Vec<(usize, usize)> = grid.all().collect();
    let mut values: Vec<[f64; WANTED]> = Vec::with_capacity(places.len());
    for places in places.chunks(LANES) {
        for (&place, corners) in places.iter().zip(solve(solver, &covers, places)) {
            let (x, y) = (&middles[0][place.0], &middles[1][place.1]);
            let [deflection, moment_x, moment_y, _] = look(mesh, &problem.rigidity, &corners, x, y);
            values.push([deflection, moment_x, moment_y]);
        }
    }
    let tops =
        (0..WANTED).filter_map(|wanted| top(grid, &values.iter().map(|values| values[wanted]).collect::<Vec<f64>>()));
    let mut found: Vec<[f64; 2]> = Vec::with_capacity(WANTED);
    for at in tops {
        if !found.iter().any(|other| same(grid, *other, at)) {
            found.push(at);
        }
    }
    found
}

/// Places nearer to each other than this part of a step are solved once.
const SAME_PLACE: f64 = 0.1;

fn same(grid: &Grid, a: [f64; 2], b: [f64; 2]) -> bool {
    let step = |axis: usize| grid.places[axis].windows(2).map(|pair| pair[1] - pair[0]).fold(0.0, f64::max);
    (0..2).all(|axis| (a[axis] - b[axis]).abs() <= SAME_PLACE * step(axis))
}

/// The place of the greatest value of the grid; between its neighbours along each side, the top of the parabola.
fn top(grid: &Grid, values: &[f64]) -> Option<[f64; 2]> {
    let mut best: Best = (0.0, (0, 0));
    let across = grid.places[1].len();
    for place in grid.all() {
        better(&mut best, values[place.0 * across + place.1], place);
    }
    let (value, (i, j)) = best;
    let vertex = |places: &[f64], index: usize, at: &dyn Fn(usize) -> usize| {
        if index == 0 || index + 1 == places.len() {
            return places[index];
        }
        let (before, after) = (values[at(index - 1)], values[at(index + 1)]);
        let shift = (before - after) / (before - 2.0 * value + after) / 2.0;
        places[index] + shift.clamp(-0.5, 0.5) * (places[index + 1] - places[index])
    };
    let x = vertex(&grid.places[0], i, &|i| i * across + j);
    let y = vertex(&grid.places[1], j, &|j| i * across + j);
    (value > 0.0 && x.is_finite() && y.is_finite()).then_some([x, y])
}

fn solve(solver: &Solver, covers: &[Vec<Row>; 2], places: &[(usize, usize)]) -> [Vec<Corner>; LANES] {
    let mesh = &solver.stiffness.mesh;
    let forces: [Vec<Corner>; LANES] = std::array::from_fn(|lane| {
        let mut forces = vec![[0.0; 4]; mesh.corners()];
        if let Some(&(i, j)) = places.get(lane) {
            mesh.spread(&mut forces, &covers[0][i], &covers[1][j], 1.0);
        }
        forces
    });
    solver.stiffness.solve(forces.each_ref().map(Vec::as_slice))
}

/// A hogging moment under a unit force: the section where it is, and where the load stands.
#[derive(Debug, Clone, Copy)]
pub(super) struct Hogging {
    pub(super) value: f64,
    pub(super) section: [f64; 2],
    pub(super) load_at: [f64; 2],
}

/// The largest moments over supports that bend the plate upward, along `x` and along `y`.
pub(super) fn hogging(problem: &PlateProblem, solver: &Solver, grid: &Grid) -> [Option<Hogging>; 2] {
    let mesh = &solver.stiffness.mesh;
    let covers = [0, 1].map(|axis| grid.covers(mesh, axis));
    let measure = |(i, j): (usize, usize)| covers[0][i].total() * covers[1][j].total();
    let sections: Vec<(usize, [Spot; 2])> =
        problem.supports.iter().flat_map(|support| sections(mesh, support, problem.sides())).collect();
    let mut most: [Option<Hogging>; 2] = [None; 2];
    for sections in sections.chunks(LANES) {
        for ((axis, spots), surface) in sections.iter().zip(influence(problem, solver, sections)) {
            let mut best = (0.0, (0, 0));
            for place in grid.all() {
                let moment = mesh.sum(&surface, &covers[0][place.0], &covers[1][place.1]);
                better(&mut best, -moment / measure(place), place);
            }
            let so_far = most[*axis].map_or(0.0, |hogging| -hogging.value);
            if best.0 > so_far * BETTER {
                let section = spots.map(|spot| spot.x);
                most[*axis] = Some(Hogging { value: -best.0, section, load_at: grid.at(best.1) });
            }
        }
    }
    most
}

/// Where hogging is looked for: the ends and the middle of a line support, unless it is a free-turning edge.
fn sections(mesh: &Mesh, support: &PlateSupport, lengths: [f64; 2]) -> Vec<(usize, [Spot; 2])> {
    let Some(axis) = support.normal() else { return Vec::new() };
    let stretches = support.stretches(lengths);
    let spot = |axis: usize, x: f64| {
        let x = x.clamp(0.0, lengths[axis]);
        Spot { x, interval: mesh.sides[axis].interval(x) }
    };
    let line = spot(axis, stretches[axis][0]);
    let inside = line.x > 0.0 && line.x < lengths[axis];
    let [from, to] = stretches[1 - axis];
    let places = if inside || support.clamped { vec![from, from.midpoint(to), to] } else { Vec::new() };
    let section = |at: f64| {
        let other = spot(1 - axis, at);
        (axis, if axis == 0 { [line, other] } else { [other, line] })
    };
    places.into_iter().map(section).collect()
}

/// For each section the surface whose height at a place is the section's moment under a unit force there.
fn influence(problem: &PlateProblem, solver: &Solver, sections: &[(usize, [Spot; 2])]) -> [Vec<Corner>; LANES] {
    let mesh = &solver.stiffness.mesh;
    let (rigidity, coupling) = (&problem.rigidity, problem.rigidity.coupling());
    let forces: [Vec<Corner>; LANES] = std::array::from_fn(|lane| {
        let mut forces = vec![[0.0; 4]; mesh.corners()];
        if let Some((axis, spots)) = sections.get(lane) {
            let [x, y] = [0, 1].map(|axis| Rows::new(mesh, axis, spots[axis]));
            let (xx, yy) = if *axis == 0 { (rigidity.dx, coupling) } else { (coupling, rigidity.dy) };
            mesh.spread(&mut forces, &x.bend, &y.value, -xx);
            mesh.spread(&mut forces, &x.value, &y.bend, -yy);
        }
        forces
    });
    solver.stiffness.solve(forces.each_ref().map(Vec::as_slice))
}
