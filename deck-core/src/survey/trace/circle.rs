//! The circle nearest to points.

use super::line::middle;
use crate::survey::equation::{Place, minus, plus, size, times};
use nalgebra::{Matrix3, Vector3};

/// A circle.
#[derive(Debug, Clone, Copy)]
pub(in crate::survey) struct FitCircle {
    pub(in crate::survey) centre: Place,
    pub(in crate::survey) radius: f64,
}

impl FitCircle {
    /// How far outside it a point lies.
    pub(in crate::survey) fn outside(&self, place: Place) -> f64 {
        size(minus(place, self.centre)) - self.radius
    }

    /// The nearest place on it.
    pub(in crate::survey) fn foot(&self, place: Place) -> Place {
        let way = minus(place, self.centre);
        let length = size(way);
        if length < 1e-9 { place } else { plus(self.centre, times(way, self.radius / length)) }
    }

    fn sum_of_squares(&self, points: &[Place]) -> f64 {
        points.iter().map(|point| self.outside(*point).powi(2)).sum()
    }
}

/// Steps of the geometric fit; from an algebraic start a few are enough.
const MOST_STEPS: usize = 60;

/// Fits a circle; none to fewer than three points, or where they lie on a line.
///
/// # Method
/// Start: G. Taubin, Estimation of planar curves, surfaces, and nonplanar space curves defined by implicit equations (IEEE PAMI
/// 13, 1991), in the Newton form of N. Chernov, Circular and Linear Regression (2010), from memory. Then Gauss–Newton on the
/// distances from the circle: W. Gander, G. Golub and R. Strebel, Least-squares fitting of circles and ellipses (BIT 34, 1994).
pub(in crate::survey) fn circle(points: &[Place]) -> Option<FitCircle> {
    let mut circle = algebraic(points)?;
    let mut before = circle.sum_of_squares(points);
    for _ in 0..MOST_STEPS {
        let step = step(&circle, points)?;
        let (next, after) = downhill(&circle, step, points, before)?;
        let moved = size(minus(next.centre, circle.centre)).max((next.radius - circle.radius).abs());
        (circle, before) = (next, after);
        if moved <= 1e-12 * circle.radius.max(1.0) {
            break;
        }
    }
    Some(circle)
}

/// The longest of the step and its halves that does not go uphill; the circle itself where none does.
fn downhill(circle: &FitCircle, step: Vector3<f64>, points: &[Place], before: f64) -> Option<(FitCircle, f64)> {
    let mut by = 1.0;
    for _ in 0..30 {
        let centre = plus(circle.centre, [step.x * by, step.y * by]);
        let next = FitCircle { centre, radius: circle.radius + step.z * by };
        let after = next.sum_of_squares(points);
        if !after.is_finite() {
            return None;
        }
        if after <= before && next.radius > 0.0 {
            return Some((next, after));
        }
        by /= 2.0;
    }
    Some((*circle, before))
}

fn step(circle: &FitCircle, points: &[Place]) -> Option<Vector3<f64>> {
    let (mut normal, mut right) = (Matrix3::zeros(), Vector3::zeros());
    for point in points {
        let way = minus(*point, circle.centre);
        let length = size(way);
        if length < 1e-12 {
            continue;
        }
        let slopes = Vector3::new(-way[0] / length, -way[1] / length, -1.0);
        normal += slopes * slopes.transpose();
        right -= slopes * (length - circle.radius);
    }
    normal.cholesky().map(|factor| factor.solve(&right))
}

fn algebraic(points: &[Place]) -> Option<FitCircle> {
    if points.len() < 3 {
        return None;
    }
    let middle = middle(points);
    let count = points.len() as f64;
    let [mut mxx, mut myy, mut mxy, mut mxz, mut myz, mut mzz] = [0.0; 6];
    for point in points {
        let [x, y] = minus(*point, middle);
        let z = x * x + y * y;
        (mxx, myy, mxy) = (mxx + x * x / count, myy + y * y / count, mxy + x * y / count);
        (mxz, myz, mzz) = (mxz + x * z / count, myz + y * z / count, mzz + z * z / count);
    }
    let (mz, cov) = (mxx + myy, mxx * myy - mxy * mxy);
    if mz <= 0.0 || cov <= 1e-14 * mz * mz {
        return None;
    }
    let var = mzz - mz * mz;
    let a3 = 4.0 * mz;
    let a2 = -3.0 * mz * mz - mzz;
    let a1 = var * mz + 4.0 * cov * mz - mxz * mxz - myz * myz;
    let a0 = mxz * (mxz * myy - myz * mxy) + myz * (myz * mxx - mxz * mxy) - var * cov;
    let root = newton(|x| (a0 + x * (a1 + x * (a2 + x * a3)), a1 + x * (2.0 * a2 + 3.0 * a3 * x)));
    let det = 2.0 * (root * root - root * mz + cov);
    if det.abs() < 1e-300 {
        return None;
    }
    let centre = [(mxz * (myy - root) - myz * mxy) / det, (myz * (mxx - root) - mxz * mxy) / det];
    let radius = (centre[0] * centre[0] + centre[1] * centre[1] + mz).sqrt();
    radius.is_finite().then(|| FitCircle { centre: plus(middle, centre), radius })
}

/// The least root above zero, from zero.
fn newton(polynomial: impl Fn(f64) -> (f64, f64)) -> f64 {
    let (mut x, mut size) = (0.0, f64::INFINITY);
    for _ in 0..100 {
        let (value, slope) = polynomial(x);
        let next = x - value / slope;
        if value.abs() >= size || !next.is_finite() || next < 0.0 {
            break;
        }
        size = value.abs();
        x = next;
    }
    x
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn points_on_a_circle_give_it_back() {
        let points: Vec<Place> =
            (0..7).map(|k| f64::from(k) * 0.2).map(|t| [100.0 + 50.0 * t.cos(), -20.0 + 50.0 * t.sin()]).collect();
        let fitted = circle(&points).unwrap();
        assert!((fitted.radius - 50.0).abs() < 1e-9 && size(minus(fitted.centre, [100.0, -20.0])) < 1e-8);
        assert!(circle(&[[0.0, 0.0], [1.0, 1.0], [2.0, 2.0]]).is_none());
        assert!(circle(&points[..2]).is_none());
    }
}
