//! The bent plate: values of its piecewise cubics.

use super::hermite::Row;
use super::mesh::Mesh;
use super::result::PlateState;
use super::rigidity::Rigidity;
use super::stiffness::Corner;

/// A bent plate.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Field {
    pub(super) mesh: Mesh,
    pub(super) rigidity: Rigidity,
    pub(super) corners: Vec<Corner>,
}

/// A place along one side, and the interval that it is seen as part of.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Spot {
    pub(super) x: f64,
    pub(super) interval: usize,
}

/// The rows that answers at a spot are made of: value, slope, second derivative.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Rows {
    pub(super) value: Row,
    pub(super) slope: Row,
    pub(super) bend: Row,
}

impl Rows {
    pub(super) fn new(mesh: &Mesh, axis: usize, spot: Spot) -> Rows {
        let side = &mesh.sides[axis];
        Rows {
            value: side.at(spot.interval, spot.x, 0),
            slope: side.at(spot.interval, spot.x, 1),
            bend: side.bend(spot.interval, spot.x, 2),
        }
    }
}

/// Deflection, moments along `x` and `y`, twist: what is searched for its extremes.
pub(super) type Four = [f64; 4];

impl Field {
    pub(super) fn at(&self, at: [f64; 2]) -> Option<PlateState> {
        let spot = |axis: usize| {
            let side = &self.mesh.sides[axis];
            let inside = at[axis] >= 0.0 && at[axis] <= *side.lines.last()?;
            inside.then(|| Spot { x: at[axis], interval: side.interval(at[axis]) })
        };
        let spots = [spot(0)?, spot(1)?];
        let [x, y] = [0, 1].map(|axis| Rows::new(&self.mesh, axis, spots[axis]));
        let third = [0, 1].map(|axis| self.mesh.sides[axis].bend(spots[axis].interval, spots[axis].x, 3));
        let [deflection, moment_x, moment_y, twist] = self.four(&x, &y);
        let Rigidity { dx, dy, torsion, .. } = self.rigidity;
        let sum = |along: &Row, across: &Row| self.mesh.sum(&self.corners, along, across);
        Some(PlateState {
            deflection,
            slope: [sum(&x.slope, &y.value), sum(&x.value, &y.slope)],
            moment_x,
            moment_y,
            twist,
            shear: [
                -dx * sum(&third[0], &y.value) - torsion * sum(&x.slope, &y.bend),
                -dy * sum(&x.value, &third[1]) - torsion * sum(&x.bend, &y.slope),
            ],
        })
    }

    pub(super) fn four(&self, x: &Rows, y: &Rows) -> Four {
        look(&self.mesh, &self.rigidity, &self.corners, x, y)
    }
}

/// Deflection and moments at one place of a bent plate.
pub(super) fn look(mesh: &Mesh, rigidity: &Rigidity, corners: &[Corner], x: &Rows, y: &Rows) -> Four {
    let sum = |along: &Row, across: &Row| mesh.sum(corners, along, across);
    let curvatures = [sum(&x.bend, &y.value), sum(&x.value, &y.bend)];
    four(rigidity, sum(&x.value, &y.value), curvatures, sum(&x.slope, &y.slope))
}

/// Deflection and moments from deflection, second derivatives and the mixed one.
pub(super) fn four(rigidity: &Rigidity, value: f64, [xx, yy]: [f64; 2], xy: f64) -> Four {
    let coupling = rigidity.coupling();
    [value, -rigidity.dx * xx - coupling * yy, -rigidity.dy * yy - coupling * xx, -(rigidity.torsion - coupling) * xy]
}
