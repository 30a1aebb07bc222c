//! The line nearest to points, both coordinates being measured.

use crate::survey::equation::{Place, dot, minus, plus, times, turned};

/// A line through a point, and its direction of length one.
#[derive(Debug, Clone, Copy)]
pub(in crate::survey) struct FitLine {
    pub(in crate::survey) through: Place,
    pub(in crate::survey) u: Place,
}

impl FitLine {
    /// How far a point lies beside it.
    pub(in crate::survey) fn beside(&self, place: Place) -> f64 {
        dot(minus(place, self.through), turned(self.u))
    }

    /// The nearest place on it.
    pub(in crate::survey) fn foot(&self, place: Place) -> Place {
        plus(self.through, times(self.u, dot(minus(place, self.through), self.u)))
    }
}

/// Fits a line; none to fewer than two points or to points of one place.
///
/// # Method
/// Total least squares: K. Pearson, On lines and planes of closest fit to systems of points in space (1901). The larger axis of
/// the points' scatter, in closed form.
pub(in crate::survey) fn line(points: &[Place]) -> Option<FitLine> {
    if points.len() < 2 {
        return None;
    }
    let middle = middle(points);
    let (mut sxx, mut sxy, mut syy) = (0.0, 0.0, 0.0);
    for point in points {
        let [x, y] = minus(*point, middle);
        (sxx, sxy, syy) = (sxx + x * x, sxy + x * y, syy + y * y);
    }
    let (difference, cross) = (sxx - syy, 2.0 * sxy);
    let spread = (difference * difference + cross * cross).sqrt();
    // Of the two forms of the axis, the one that does not cancel.
    let axis = if difference >= 0.0 { [difference + spread, cross] } else { [cross, spread - difference] };
    let u = crate::survey::equation::unit(axis)?;
    // The way in which the points run.
    let run = minus(*points.last()?, *points.first()?);
    Some(FitLine { through: middle, u: if dot(run, u) < 0.0 { times(u, -1.0) } else { u } })
}

pub(in crate::survey) fn middle(points: &[Place]) -> Place {
    let sum = points.iter().fold([0.0, 0.0], |sum, point| plus(sum, *point));
    times(sum, 1.0 / points.len().max(1) as f64)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn points_on_a_line_give_it_back_whichever_way_it_runs() {
        for u in [[1.0, 0.0], [0.0, 1.0], [0.6, -0.8], [-0.6, 0.8], [-1.0, 0.0]] {
            let points: Vec<Place> = (0..5).map(|k| plus([3.0, 4.0], times(u, f64::from(k) * 10.0))).collect();
            let fitted = line(&points).unwrap();
            assert!(dot(fitted.u, u) > 1.0 - 1e-12);
            assert!(points.iter().all(|point| fitted.beside(*point).abs() < 1e-9));
        }
        assert!(line(&[[1.0, 1.0]]).is_none() && line(&[[1.0, 1.0], [1.0, 1.0]]).is_none());
    }
}
