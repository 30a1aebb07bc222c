//! A plate whose equations are factored.

use super::field::Field;
use super::hermite::Row;
use super::load::{PlateLoad, PlateLoadKind};
use super::mesh::Mesh;
use super::result::{Plate, PlateError, PlatePeak, PlateRange};
use super::scan::Scan;
use super::stiffness::{Corner, Stiffness};
use super::{PlateProblem, check};
use crate::error::{Error, Fault, Kind};

/// Elements of the mesh that the library chooses, about. Twice as many halve the size by 1.4 and cost three times.
const ELEMENTS: f64 = 200.0;

/// A plate whose equations are factored, for any number of loads.
///
/// # Examples
/// One board, two loads; the equations are factored once:
/// ```
/// use deck_core::span::{PlateLoad, PlateProblem, PlateSupport, Rigidity};
/// let members = [0.0, 24.0, 48.0].map(PlateSupport::along);
/// let model = PlateProblem::new(102.0, 48.0, Rigidity::new(9_583.0, 29_583.0, 8_000.0), &members).model()?;
/// let heel = model.solve(&[PlateLoad::patch([51.0, 12.0], [3.0, 3.0], 200.0)])?;
/// let crowd = model.solve(&[PlateLoad::uniform(100.0 / 144.0)])?;
/// assert!((heel.reactions.iter().sum::<f64>() - 200.0).abs() < 1e-6);
/// assert!(crowd.moment_y.least.value < 0.0); // hogging over the middle member
/// # Ok::<(), deck_core::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct PlateModel {
    pub(super) problem: PlateProblem,
    pub(super) fine: Solver,
    /// The mesh twice as coarse, which tells the error.
    pub(super) coarse: Option<Solver>,
}

/// Factored equations, and where their answers are looked at.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Solver {
    pub(super) stiffness: Stiffness,
    pub(super) scan: Scan,
}

/// Loads that do not cover everything and still get lines of the mesh of their own; more of them would fill it.
const MOST_POSTED: usize = 4;

impl PlateModel {
    /// A model whose mesh, where the library chooses it, has lines where these loads begin and end.
    pub(super) fn new(problem: &PlateProblem, loads: &[PlateLoad]) -> Result<PlateModel, Error> {
        let size = size(problem);
        let posts = posts(problem, loads, size);
        let fine = Solver::new(problem, &posts, size, false)?;
        let coarse = problem.mesh.is_none().then(|| Solver::new(problem, &posts, size, true)).transpose()?;
        Ok(PlateModel { problem: problem.clone(), fine, coarse })
    }

    /// Deflections, moments and reactions under loads that act at once.
    ///
    /// # Errors
    /// A load that lies outside the plate or lacks its place or size, or a number that is not finite.
    pub fn solve(&self, loads: &[PlateLoad]) -> Result<Plate, Error> {
        check::loads(&self.problem, loads, "loads")?;
        let fine = self.fine.answer(&self.problem, loads);
        let coarse = self.coarse.as_ref().map(|coarse| coarse.answer(&self.problem, loads).ranges);
        let error = coarse.map(|coarse| error(&fine.ranges, &coarse));
        Ok(fine.plate(error))
    }

    /// Number of equations that were factored.
    pub fn equations(&self) -> usize {
        self.fine.stiffness.count()
    }
}

/// The largest side of an element: the caller's, or what makes about [`ELEMENTS`] of them.
pub(super) fn size(problem: &PlateProblem) -> f64 {
    problem.mesh.unwrap_or_else(|| (problem.length * problem.width / ELEMENTS).sqrt())
}

/// Lines for the loads: at the ends of what a load covers; at a point and half an element to both sides of it.
pub(super) fn posts(problem: &PlateProblem, loads: &[PlateLoad], size: f64) -> [Vec<f64>; 2] {
    let local = loads.iter().filter(|load| load.at.is_some());
    if problem.mesh.is_some() || local.clone().count() > MOST_POSTED {
        return [Vec::new(), Vec::new()];
    }
    [0, 1].map(|axis| {
        let post = |load: &PlateLoad| {
            let (from, to) = load.stretch(axis, problem.sides()[axis]);
            if to > from { vec![from, to] } else { vec![from, from - size / 2.0, from + size / 2.0] }
        };
        local.clone().flat_map(post).collect()
    })
}

/// The answer on one mesh.
pub(super) struct Answer {
    field: Field,
    pub(super) ranges: [PlateRange; 4],
    reactions: Vec<f64>,
}

impl Answer {
    pub(super) fn plate(self, error: Option<PlateError>) -> Plate {
        let [deflection, moment_x, moment_y, twist] = self.ranges;
        let elements = self.field.mesh.sides.each_ref().map(|side| side.lines.len() - 1);
        let Answer { reactions, field, .. } = self;
        Plate { deflection, moment_x, moment_y, twist, reactions, elements, error, field }
    }
}

impl Solver {
    pub(super) fn new(
        problem: &PlateProblem,
        posts: &[Vec<f64>; 2],
        size: f64,
        coarser: bool,
    ) -> Result<Solver, Error> {
        Solver::on(problem, Mesh::new(problem.sides(), &problem.supports, posts, size, coarser))
    }

    /// The equations on a mesh.
    pub(super) fn on(problem: &PlateProblem, mesh: Mesh) -> Result<Solver, Error> {
        check::mesh(problem, &mesh)?;
        let scan = Scan::new(&mesh);
        let stiffness = Stiffness::new(mesh, &problem.rigidity, &problem.supports, problem.sides());
        let stiffness = stiffness.ok_or_else(|| {
            let message = "The plate's sides, rigidities or supports differ too much in size to be solved.";
            Fault::new(Kind::OutOfRange, "", message, "Bring them nearer to each other.").within("supports")
        })?;
        Ok(Solver { stiffness, scan })
    }

    pub(super) fn answer(&self, problem: &PlateProblem, loads: &[PlateLoad]) -> Answer {
        let forces = self.forces(problem, loads);
        let [corners] = self.stiffness.solve([&forces]);
        let reactions = self.reactions(&corners, &forces);
        let field = Field { mesh: self.stiffness.mesh.clone(), rigidity: problem.rigidity, corners };
        Answer { ranges: self.scan.ranges(&field), field, reactions }
    }

    /// The loads as forces on the unknowns of the corners.
    pub(super) fn forces(&self, problem: &PlateProblem, loads: &[PlateLoad]) -> Vec<Corner> {
        let mesh = &self.stiffness.mesh;
        let mut forces = vec![[0.0; 4]; mesh.corners()];
        for load in loads {
            let [x, y] = [0, 1].map(|axis| row(mesh, load, axis, problem.sides()[axis]));
            mesh.spread(&mut forces, &x, &y, load.intensity());
        }
        forces
    }

    /// What each support carries: loads less what the bent plate hands on to its corners.
    fn reactions(&self, corners: &[Corner], forces: &[Corner]) -> Vec<f64> {
        let reaction = |share: &super::stiffness::Share| -> f64 {
            let own: f64 = share.parts.iter().zip(forces).map(|(part, force)| part * force[0]).sum();
            let pull = share
                .pull
                .iter()
                .zip(corners)
                .map(|(pull, corner)| -> f64 { pull.iter().zip(corner).map(|(pull, u)| pull * u).sum() });
            own - pull.sum::<f64>()
        };
        self.stiffness.shares.iter().map(reaction).collect()
    }
}

/// What a load covers along one side, as weights of the unknowns.
fn row(mesh: &Mesh, load: &PlateLoad, axis: usize, length: f64) -> Row {
    let side = &mesh.sides[axis];
    let (from, to) = load.stretch(axis, length);
    let (from, to) = (from.clamp(0.0, length), to.clamp(0.0, length));
    let crosses = load.kind == PlateLoadKind::Point || (load.kind == PlateLoadKind::Line && from >= to);
    if crosses { side.at(side.interval(from), from, 0) } else { side.integral(from, to) }
}

fn error(fine: &[PlateRange; 4], coarse: &[PlateRange; 4]) -> PlateError {
    let change = |index: usize| {
        let (fine, coarse) = (&fine[index], &coarse[index]);
        let change = |fine: &PlatePeak, coarse: &PlatePeak| (fine.value - coarse.value).abs() / 3.0;
        change(&fine.least, &coarse.least).max(change(&fine.most, &coarse.most))
    };
    PlateError { deflection: change(0), moment_x: change(1), moment_y: change(2) }
}
