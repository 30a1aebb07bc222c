//! The equations of the plate on a mesh, factored.

use super::Rigidity;
use super::band::Band;
use super::hermite::Products;
use super::mesh::Mesh;
use super::support::PlateSupport;

/// Unknowns of a corner: deflection, slope along the width, slope along the length, twist.
pub(super) type Corner = [f64; 4];

/// A mesh with its factored equations; any number of loads can be solved with it.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Stiffness {
    pub(super) mesh: Mesh,
    /// The equation of each unknown; none where a support holds it.
    equations: Vec<[Option<u32>; 4]>,
    factored: Band,
    /// For each support its share of each corner's deflection, as stiffness times that shift: what it carries is
    /// this times the answer, less the loads' own part.
    pub(super) shares: Vec<Share>,
}

/// How a support takes part.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Share {
    /// The part of each corner that is the support's own: zero off it, one half where two supports cross.
    pub(super) parts: Vec<f64>,
    /// Stiffness times a unit shift of those corners.
    pub(super) pull: Vec<Corner>,
}

impl Stiffness {
    /// None where the supports let the plate move.
    pub(super) fn new(mesh: Mesh, rigidity: &Rigidity, supports: &[PlateSupport], sides: [f64; 2]) -> Option<Self> {
        let on: Vec<Vec<(usize, usize)>> = supports.iter().map(|support| mesh.on(support, sides)).collect();
        let equations = equations(&mesh, supports, &on);
        let mut shares = shares(&mesh, &on);
        let count = equations.iter().flatten().flatten().count();
        let mut band = Band::new(count, width(&mesh, &equations));
        let mut element = Element::new(rigidity);
        for at in mesh.elements() {
            let terms = element.terms([mesh.sides[0].length(at.0), mesh.sides[1].length(at.1)]);
            let corners = mesh.corners_of(at);
            assemble(&mut band, &equations, &corners, terms);
            for share in &mut shares {
                pull(share, &corners, terms);
            }
        }
        band.factor().then_some(Stiffness { mesh, equations, factored: band, shares })
    }

    /// Number of equations.
    pub(super) fn count(&self) -> usize {
        self.factored.count()
    }

    /// Unknowns of all corners under several sets of forces.
    pub(super) fn solve<const LANES: usize>(&self, forces: [&[Corner]; LANES]) -> [Vec<Corner>; LANES] {
        let mut sides = vec![[0.0; LANES]; self.factored.count()];
        for (lane, forces) in forces.iter().enumerate() {
            for (equations, force) in self.equations.iter().zip(*forces) {
                for (equation, force) in equations.iter().zip(force) {
                    if let Some(equation) = equation {
                        sides[*equation as usize][lane] = *force;
                    }
                }
            }
        }
        self.factored.solve(&mut sides);
        let value =
            |lane: usize, equation: Option<u32>| equation.map_or(0.0, |equation| sides[equation as usize][lane]);
        std::array::from_fn(|lane| {
            self.equations.iter().map(|corner| corner.map(|equation| value(lane, equation))).collect()
        })
    }
}

/// Numbers the unknowns that no support holds, corner after corner.
fn equations(mesh: &Mesh, supports: &[PlateSupport], on: &[Vec<(usize, usize)>]) -> Vec<[Option<u32>; 4]> {
    let mut held = vec![[false; 4]; mesh.corners()];
    for (support, corners) in supports.iter().zip(on) {
        // On a line nothing moves, so the slope along it is zero as well; clamped, the slope across it and the twist.
        let holds = match (support.normal(), support.clamped) {
            (None, _) => [true, false, false, false],
            (Some(0), false) => [true, true, false, false],
            (Some(_), false) => [true, false, true, false],
            (Some(_), true) => [true; 4],
        };
        for &(i, j) in corners {
            let corner = &mut held[mesh.corner(i, j)];
            corner.iter_mut().zip(holds).for_each(|(held, holds)| *held |= holds);
        }
    }
    let mut numbers = 0..;
    held.into_iter().map(|corner| corner.map(|held| if held { None } else { numbers.next() })).collect()
}

/// How far apart the equations of one element lie at most.
fn width(mesh: &Mesh, equations: &[[Option<u32>; 4]]) -> usize {
    let spread = |at| {
        let numbers = mesh.corners_of(at).into_iter().flat_map(|corner| equations[corner]).flatten();
        let (least, most) = numbers.fold((u32::MAX, 0), |(least, most), number| (least.min(number), most.max(number)));
        most.saturating_sub(least) as usize
    };
    mesh.elements().map(spread).max().unwrap_or(0)
}

fn shares(mesh: &Mesh, on: &[Vec<(usize, usize)>]) -> Vec<Share> {
    let mut holders = vec![0_u32; mesh.corners()];
    for &(i, j) in on.iter().flatten() {
        holders[mesh.corner(i, j)] += 1;
    }
    let share = |corners: &Vec<(usize, usize)>| {
        let mut parts = vec![0.0; mesh.corners()];
        for corner in corners.iter().map(|&(i, j)| mesh.corner(i, j)) {
            parts[corner] = 1.0 / f64::from(holders[corner]);
        }
        Share { parts, pull: vec![[0.0; 4]; mesh.corners()] }
    };
    on.iter().map(share).collect()
}

/// Sixteen unknowns of an element: four corners of four.
type Terms = [[f64; 16]; 16];

/// Element stiffness, kept while elements have the same size.
struct Element<'a> {
    rigidity: &'a Rigidity,
    size: [f64; 2],
    terms: Terms,
}

impl Element<'_> {
    fn new(rigidity: &Rigidity) -> Element<'_> {
        Element { rigidity, size: [0.0; 2], terms: [[0.0; 16]; 16] }
    }

    fn terms(&mut self, size: [f64; 2]) -> &Terms {
        let same = |axis: usize| (self.size[axis] - size[axis]).abs() <= 1e-12 * size[axis];
        if !(same(0) && same(1)) {
            self.size = size;
            self.terms = terms(self.rigidity, &Products::new(size[0]), &Products::new(size[1]));
        }
        &self.terms
    }
}

/// Bogner, Fox and Schmit's element: every product of a cubic along with a cubic across.
fn terms(rigidity: &Rigidity, x: &Products, y: &Products) -> Terms {
    let Rigidity { dx, dy, .. } = *rigidity;
    let (coupling, twist) = (rigidity.coupling(), 2.0 * (rigidity.torsion - rigidity.coupling()));
    // The unknown of a cubic along and one across: corner 0, 1 begin the interval along, 2, 3 end it; corner 1, 3 end the
    // one across.
    let unknown = |along: usize, across: usize| 8 * (along / 2) + 4 * (across / 2) + 2 * (along % 2) + across % 2;
    let mut terms = [[0.0; 16]; 16];
    for a in 0..4 {
        for c in 0..4 {
            let (bends, plain) = (dx * x.bends[a][c], dy * x.plain[a][c]);
            let (mixed, turned) = (coupling * x.mixed[a][c], coupling * x.mixed[c][a]);
            let slopes = twist * x.slopes[a][c];
            for b in 0..4 {
                for d in 0..4 {
                    terms[unknown(a, b)][unknown(c, d)] = bends * y.plain[b][d]
                        + plain * y.bends[b][d]
                        + mixed * y.mixed[d][b]
                        + turned * y.mixed[b][d]
                        + slopes * y.slopes[b][d];
                }
            }
        }
    }
    terms
}

fn assemble(band: &mut Band, equations: &[[Option<u32>; 4]], corners: &[usize; 4], terms: &Terms) {
    let mut numbers = [None; 16];
    for (four, &corner) in numbers.chunks_exact_mut(4).zip(corners) {
        four.copy_from_slice(&equations[corner]);
    }
    for (row, terms) in numbers.iter().zip(terms) {
        let Some(row) = row else { continue };
        for (column, term) in numbers.iter().zip(terms) {
            if let Some(column) = column
                && column <= row
            {
                band.add(*row as usize, *column as usize, *term);
            }
        }
    }
}

/// Adds an element's part of stiffness times the unit shift of a support.
fn pull(share: &mut Share, corners: &[usize; 4], terms: &Terms) {
    for (index, corner) in corners.iter().enumerate() {
        let part = share.parts[*corner];
        if part == 0.0 {
            continue;
        }
        for (four, corner) in terms[4 * index].chunks_exact(4).zip(corners) {
            share.pull[*corner].iter_mut().zip(four).for_each(|(pull, term)| *pull += part * term);
        }
    }
}
