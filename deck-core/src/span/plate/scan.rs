//! The extremes of a bent plate: looked for at the lines of the mesh and half-way between, then climbed to.

use super::field::{Field, Four, Rows, Spot, four};
use super::hermite::{Row, Side};
use super::mesh::Mesh;
use super::result::{PlatePeak, PlateRange};

/// Steps of the climb: each reaches a quarter as far as the one before, the first half an interval.
const STEPS: i32 = 3;

/// Where a mesh is looked at; the same for every load.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Scan {
    sides: [Vec<(Spot, Rows)>; 2],
}

impl Scan {
    pub(super) fn new(mesh: &Mesh) -> Scan {
        let side = |axis: usize| {
            let spots = spots(&mesh.sides[axis]);
            spots.into_iter().map(|spot| (spot, Rows::new(mesh, axis, spot))).collect()
        };
        Scan { sides: [side(0), side(1)] }
    }

    /// Ranges of deflection, moments along `x` and `y`, and twist.
    pub(super) fn ranges(&self, field: &Field) -> [PlateRange; 4] {
        let mut found: [Option<[Found; 2]>; 4] = [None; 4];
        for (x, along) in &self.sides[0] {
            let lines = Lines::new(field, along);
            for (y, across) in &self.sides[1] {
                let values = lines.four(field, across);
                let spots = [*x, *y];
                for (found, value) in found.iter_mut().zip(values) {
                    let here = Found { spots, value };
                    let [least, most] = found.get_or_insert([here; 2]);
                    if value < least.value {
                        *least = here;
                    }
                    if value > most.value {
                        *most = here;
                    }
                }
            }
        }
        let mut index = 0..4;
        found.map(|found| {
            let quantity = index.next().unwrap_or(0);
            let peak = |found: Found, sign: f64| climb(field, found, quantity, sign);
            found.map_or(PlateRange::default(), |[least, most]| PlateRange {
                least: peak(least, -1.0),
                most: peak(most, 1.0),
            })
        })
    }
}

/// All lines, those with a kink from both sides, and the middles between.
fn spots(side: &Side) -> Vec<Spot> {
    let last = side.lines.len() - 1;
    let mut spots = Vec::with_capacity(3 * last);
    for interval in 0..last {
        let (from, to) = (side.lines[interval], side.lines[interval + 1]);
        spots.push(Spot { x: from, interval });
        spots.push(Spot { x: from.midpoint(to), interval });
        if side.kinks.contains(&(interval + 1)) {
            spots.push(Spot { x: to, interval });
        }
    }
    spots
}

/// The cubics across the plate at one place along it: of deflection, slope and curvature.
struct Lines([Vec<[f64; 2]>; 3]);

impl Lines {
    fn new(field: &Field, along: &Rows) -> Lines {
        let count = field.mesh.sides[1].lines.len();
        let line = |row: &Row| {
            let at = |j: usize| {
                let terms = row.weights.iter().enumerate().map(|(i, weights)| {
                    let u = &field.corners[field.mesh.corner(row.first + i, j)];
                    [weights[0] * u[0] + weights[1] * u[2], weights[0] * u[1] + weights[1] * u[3]]
                });
                terms.fold([0.0; 2], |sum, term| [sum[0] + term[0], sum[1] + term[1]])
            };
            (0..count).map(at).collect()
        };
        Lines([line(&along.value), line(&along.slope), line(&along.bend)])
    }

    fn four(&self, field: &Field, across: &Rows) -> Four {
        let sum = |line: &[[f64; 2]], row: &Row| -> f64 {
            let terms = line[row.first..].iter().zip(&row.weights);
            terms.map(|(u, weights)| u[0] * weights[0] + u[1] * weights[1]).sum()
        };
        let [value, slope, bend] = &self.0;
        let curvatures = [sum(bend, &across.value), sum(value, &across.bend)];
        four(&field.rigidity, sum(value, &across.value), curvatures, sum(slope, &across.slope))
    }
}

/// A value and where it was seen.
#[derive(Debug, Clone, Copy)]
struct Found {
    spots: [Spot; 2],
    value: f64,
}

/// From the best of the scan to the top nearby, by parabolas along each side in turn.
fn climb(field: &Field, mut top: Found, quantity: usize, sign: f64) -> PlatePeak {
    let value = |spots: [Spot; 2]| {
        let [x, y] = [0, 1].map(|axis| Rows::new(&field.mesh, axis, spots[axis]));
        Found { spots, value: field.four(&x, &y)[quantity] }
    };
    let better = |top: &mut Found, other: Found| {
        if sign * other.value > sign * top.value {
            *top = other;
        }
    };
    for step in 0..STEPS {
        for axis in [0, 1] {
            let side = &field.mesh.sides[axis];
            let reach = side.length(top.spots[axis].interval) / 2.0 / 4_f64.powi(step);
            let moved = |by: f64| {
                let mut spots = top.spots;
                spots[axis] = move_by(side, spots[axis], by);
                value(spots)
            };
            let (before, here, after) = (moved(-reach), top.value, moved(reach));
            let bow = before.value - 2.0 * here + after.value;
            let vertex = (before.value - after.value) / bow * reach / 2.0;
            let tries = [before, after].into_iter().chain((vertex.abs() < reach).then(|| moved(vertex)));
            for other in tries.collect::<Vec<Found>>() {
                better(&mut top, other);
            }
        }
    }
    PlatePeak { at: top.spots.map(|spot| spot.x), value: top.value }
}

/// A spot moved along its side, but over no kink.
fn move_by(side: &Side, spot: Spot, by: f64) -> Spot {
    let first = side.kinks.iter().copied().rfind(|&kink| kink <= spot.interval).unwrap_or(0);
    let last = side.kinks.iter().copied().find(|&kink| kink > spot.interval).unwrap_or(side.lines.len() - 1);
    let x = (spot.x + by).clamp(side.lines[first], side.lines[last]);
    Spot { x, interval: side.interval(x).clamp(first, last - 1) }
}
