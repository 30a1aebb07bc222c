//! A plate made ready for loads that may stand anywhere: which place is the worst?

use super::field::{Rows, Spot, look};
use super::hermite::Row;
use super::load::PlateLoad;
use super::mesh::Mesh;
use super::model::{Solver, size};
use super::moving::{HOGGING, seen};
use super::places::{Grid, Top, Zone};
use super::result::Plate;
use super::stiffness::Corner;
use super::support::{Place, PlateSupport};
use super::{PlateProblem, PlateWorst, check};
use crate::error::Error;

/// Places that are solved in one sweep.
const LANES: usize = 8;
/// What is looked for under the load: deflection, sagging moments along `x` and along `y`.
const WANTED: usize = 3;
/// Of places that mirror each other the first stays: the others must be better by this part.
pub(super) const BETTER: f64 = 1.0 + 1e-9;
/// A moment whose share of what the plate holds is less than this part of the greatest share is not solved again.
const CLOSE: f64 = 0.85;

/// A plate made ready for loads that may stand anywhere; made once for any number of loads.
///
/// # Examples
/// A heel at the edge sinks more than one away from it:
/// ```
/// use deck_core::span::{PlateProblem, PlateSupport, Rigidity};
/// let members = [0.0, 16.0, 32.0, 48.0].map(PlateSupport::along);
/// let search = PlateProblem::new(102.0, 48.0, Rigidity::new(9_583.0, 29_583.0, 8_000.0), &members).search()?;
/// let zones = search.zones([3.0, 3.0], 200.0, None)?;
/// let inner = zones.inner.ok_or("the board is wide enough")?;
/// assert!(zones.whole.deflection.peak.value > inner.deflection.peak.value);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct PlateSearch {
    pub(super) problem: PlateProblem,
    /// The mesh on which places are compared.
    solver: Solver,
    surfaces: Vec<Surface>,
    /// True where the right half mirrors the left one.
    pub(super) mirrored: bool,
}

/// The worst of a load anywhere, and away from free edges.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct PlateZones {
    /// Wherever the load stands.
    pub whole: PlateWorst,
    /// With its own extent, at least, between it and each edge that no support holds; none where there is no such place.
    pub inner: Option<PlateWorst>,
}

/// A place where hogging is looked for, and the surface whose height at a place is the moment under a unit force there.
#[derive(Debug, Clone, PartialEq)]
struct Surface {
    axis: usize,
    at: [f64; 2],
    heights: Vec<Corner>,
}

impl PlateProblem {
    /// The plate made ready for loads that may stand anywhere.
    ///
    /// # Errors
    /// As [`PlateProblem::model`].
    pub fn search(&self) -> Result<PlateSearch, Error> {
        check::problem(self)?;
        let none = [Vec::new(), Vec::new()];
        let solver = Solver::new(self, &none, size(self), self.mesh.is_none())?;
        let surfaces = surfaces(self, &solver);
        Ok(PlateSearch { problem: self.clone(), solver, surfaces, mirrored: mirrored(self) })
    }
}

impl PlateSearch {
    /// The worst that one load does wherever it stands; arguments as of
    /// [`PlateModel::worst_place`](super::PlateModel::worst_place).
    ///
    /// # Method
    /// Every place of an even grid that reaches all edges is tried; of places that mirror each other one. Deflection and
    /// sagging moments are taken at the middle of the load, on a mesh without lines for the load. Hogging over the ends
    /// and the middle of each line support comes from its influence surface (by Maxwell's reciprocity one solution gives
    /// all places). The places found for deflection and sagging, moved to the top of a parabola through their neighbours,
    /// are solved once more with mesh lines around the load and intervals that grow away from it, and the worst of all is
    /// told; so is the place for hogging where that comes near the sagging along the same side.
    ///
    /// # Errors
    /// As [`PlateModel::worst_place`](super::PlateModel::worst_place).
    pub fn worst(&self, size: [f64; 2], value: f64, step: Option<f64>) -> Result<PlateWorst, Error> {
        self.fits(size, value)?;
        let grid = Grid::even(self, size, step)?;
        let values = self.values(&grid);
        self.find(&grid, &values, &grid.whole(), value, None)
    }

    /// The worst that one load does anywhere, and away from free edges.
    ///
    /// `strength` is what the plate holds along `x` and `y`, moment per length: of the two moments the one that uses up
    /// clearly less of it is told as the coarse mesh has it.
    ///
    /// # Method
    /// As [`PlateSearch::worst`]. Where all supports run from edge to edge, few places along them are tried: at the edge,
    /// one extent of the load away from it, and two farther in.
    ///
    /// # Errors
    /// A size that does not fit the plate.
    pub fn zones(&self, size: [f64; 2], value: f64, strength: Option<[f64; 2]>) -> Result<PlateZones, Error> {
        self.fits(size, value)?;
        let (grid, inner) = Grid::zones(self, size)?;
        let values = self.values(&grid);
        let whole = self.find(&grid, &values, &grid.whole(), value, strength)?;
        let inner = inner.map(|zone| self.find(&grid, &values, &zone, value, strength)).transpose()?;
        Ok(PlateZones { whole, inner })
    }

    /// What a load does at one place.
    ///
    /// # Limits
    /// Where the load lies over a support, the small sagging moment under it depends on the mesh: in one case it came out
    /// twice that of a fine mesh.
    ///
    /// # Errors
    /// A load that does not lie on the plate.
    pub fn at(&self, at: [f64; 2], size: [f64; 2], value: f64) -> Result<PlateWorst, Error> {
        let Plate { deflection, moment_x, moment_y, twist, .. } = self.bent(at, size, value)?;
        Ok(PlateWorst::at(at, &[deflection, moment_x, moment_y, twist]))
    }

    /// The plate bent by one load at one place, on a mesh with lines around it and intervals that grow away from it.
    ///
    /// # Errors
    /// A load that does not lie on the plate.
    pub fn bent(&self, at: [f64; 2], size: [f64; 2], value: f64) -> Result<Plate, Error> {
        let (load, problem) = (PlateLoad::patch(at, size, value), &self.problem);
        check::loads(problem, &[load], "loads")?;
        let covers = [0, 1].map(|axis| <[f64; 2]>::from(load.stretch(axis, problem.sides()[axis])));
        let mesh = Mesh::around(problem.sides(), &problem.supports, covers, self::size(problem), problem.mesh);
        Ok(Solver::on(problem, mesh)?.answer(problem, &[load]).plate(None))
    }

    fn fits(&self, size: [f64; 2], value: f64) -> Result<(), Error> {
        let middle = self.problem.sides().map(|side| side / 2.0);
        check::moving(&self.problem, &PlateLoad::patch(middle, size, value))
    }

    pub(super) fn mesh(&self) -> &Mesh {
        &self.solver.stiffness.mesh
    }

    /// Deflection and moments under the middle of a unit load, at each place of a grid.
    fn values(&self, grid: &Grid) -> Vec<[f64; WANTED]> {
        let mesh = self.mesh();
        let covers = [0, 1].map(|axis| grid.covers(mesh, axis));
        let middles = [0, 1].map(|axis| {
            let rows = |&x: &f64| Rows::new(mesh, axis, Spot { x, interval: mesh.sides[axis].interval(x) });
            grid.places[axis].iter().map(rows).collect::<Vec<Rows>>()
        });
        let places: Vec<(usize, usize)> = grid.whole().all().collect();
        let mut values = Vec::with_capacity(places.len());
        for places in places.chunks(LANES) {
            for (&place, corners) in places.iter().zip(self.under(&covers, places)) {
                let (x, y) = (&middles[0][place.0], &middles[1][place.1]);
                let [deflection, moment_x, moment_y, _] = look(mesh, &self.problem.rigidity, &corners, x, y);
                values.push([deflection, moment_x, moment_y]);
            }
        }
        values
    }

    fn under(&self, covers: &[Vec<Row>; 2], places: &[(usize, usize)]) -> [Vec<Corner>; LANES] {
        let mesh = self.mesh();
        let forces: [Vec<Corner>; LANES] = std::array::from_fn(|lane| {
            let mut forces = vec![[0.0; 4]; mesh.corners()];
            if let Some(&(i, j)) = places.get(lane) {
                let (x, y) = (&covers[0][i], &covers[1][j]);
                mesh.spread(&mut forces, x, y, 1.0 / (x.total() * y.total()));
            }
            forces
        });
        self.solver.stiffness.solve(forces.each_ref().map(Vec::as_slice))
    }

    /// The worst of a zone of a grid.
    fn find(
        &self,
        grid: &Grid,
        values: &[[f64; WANTED]],
        zone: &Zone,
        force: f64,
        strength: Option<[f64; 2]>,
    ) -> Result<PlateWorst, Error> {
        let mut worst = PlateWorst { step: grid.step, tried: grid.tried(zone), ..PlateWorst::default() };
        let tops: [Option<Top>; WANTED] = std::array::from_fn(|wanted| {
            let values: Vec<f64> = values.iter().map(|values| values[wanted]).collect();
            grid.top(&values, zone)
        });
        let moment = |axis: usize| tops[axis + 1].map_or(0.0, |top| top.value * force);
        let minor = |axis: usize| {
            let share = |axis: usize| strength.map(|strength| moment(axis) / strength[axis]);
            share(axis).zip(share(1 - axis)).is_some_and(|(own, other)| own < CLOSE * other)
        };
        let mut solved: Vec<[f64; 2]> = Vec::with_capacity(WANTED);
        for (wanted, top) in tops.iter().enumerate() {
            let Some(top) = top else { continue };
            if wanted > 0 && minor(wanted - 1) {
                worst.keep(wanted, seen(top.at, top.at, top.value * force));
            } else {
                self.solve(grid, top.at, force, &mut solved, &mut worst)?;
            }
        }
        for (axis, hogging) in self.hogging(grid, zone).into_iter().enumerate() {
            let Some((value, at, load_at)) = hogging else { continue };
            // Where sagging along this side is far greater, hogging does not count.
            if -value * force > CLOSE * moment(axis) {
                self.solve(grid, load_at, force, &mut solved, &mut worst)?;
            }
            worst.keep(HOGGING + axis, seen(load_at, at, value * force));
        }
        Ok(worst)
    }

    /// Solves a place with mesh lines around the load, unless one beside it has been solved.
    fn solve(
        &self,
        grid: &Grid,
        at: [f64; 2],
        force: f64,
        solved: &mut Vec<[f64; 2]>,
        worst: &mut PlateWorst,
    ) -> Result<(), Error> {
        if solved.iter().any(|other| grid.same(*other, at)) {
            return Ok(());
        }
        solved.push(at);
        let Plate { deflection, moment_x, moment_y, twist, .. } = self.bent(at, grid.size, force)?;
        worst.add(at, &[deflection, moment_x, moment_y, twist]);
        Ok(())
    }

    /// The largest moments over supports that bend the plate upward, along `x` and along `y`, under a unit force: the
    /// value, where it is, and where the load stands.
    fn hogging(&self, grid: &Grid, zone: &Zone) -> [Option<Hogging>; 2] {
        let mesh = self.mesh();
        let covers = [0, 1].map(|axis| grid.covers(mesh, axis));
        let measure = |(i, j): (usize, usize)| covers[0][i].total() * covers[1][j].total();
        let mut most = [None; 2];
        for Surface { axis, at, heights } in &self.surfaces {
            for place in zone.all() {
                let moment = mesh.sum(heights, &covers[0][place.0], &covers[1][place.1]) / measure(place);
                if -moment > most[*axis].map_or(0.0, |(value, ..): Hogging| -value) * BETTER {
                    most[*axis] = Some((moment, *at, grid.at(place)));
                }
            }
        }
        most
    }
}

/// A hogging moment, where it is, and where the load stands.
type Hogging = (f64, [f64; 2], [f64; 2]);

/// True where the plate is the same seen in a mirror across its length.
fn mirrored(problem: &PlateProblem) -> bool {
    let length = problem.length;
    let same = |a: f64, b: f64| (a + b - length).abs() <= 1e-9 * length;
    problem.supports.iter().all(|support| match support.place {
        Place::Along { between, .. } => between.is_none_or(|[from, to]| same(from, to)),
        Place::Across { x, .. } => same(x, x),
        Place::Point { at } => same(at[0], at[0]),
    })
}

/// The surfaces of hogging over line supports.
fn surfaces(problem: &PlateProblem, solver: &Solver) -> Vec<Surface> {
    let mesh = &solver.stiffness.mesh;
    let sections: Vec<(usize, [Spot; 2])> =
        problem.supports.iter().flat_map(|support| sections(mesh, support, problem.sides())).collect();
    let mut surfaces = Vec::with_capacity(sections.len());
    for sections in sections.chunks(LANES) {
        for ((axis, spots), heights) in sections.iter().zip(influence(problem, solver, sections)) {
            surfaces.push(Surface { axis: *axis, at: spots.map(|spot| spot.x), heights });
        }
    }
    surfaces
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
