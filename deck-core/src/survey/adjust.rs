//! Least squares: the places that disagree least with the readings, and how well each is checked by the others.
//!
//! # Method
//! Gauss–Newton with analytic slopes; redundancy numbers and cofactors of residuals as in W. Baarda, A testing procedure
//! for use in geodetic networks (Delft, 1968), from memory.

use super::equation::{Equation, Place, Row};
use nalgebra::{DMatrix, DVector};

/// A network of boat size is at rest within five; more means that it finds no rest.
const MOST_ITERATIONS: usize = 50;
/// In millimetres: below what lengths hold.
const AT_REST: f64 = 1e-7;
/// A pivot of less than this part of its own row is none.
const SINGULAR: f64 = 1e-9;
/// A reading with less redundancy than this is checked by no other: only an error of 130 of its own would be found.
pub(super) const UNCHECKED: f64 = 1e-3;

/// Which coordinates are unknown, and their numbers in the equations.
#[derive(Debug, Clone)]
pub(super) struct Unknowns {
    pub(super) of: Vec<[Option<usize>; 2]>,
    pub(super) count: usize,
}

/// Why there is no fit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Unfit {
    /// The readings do not hold this unknown.
    Loose(usize),
    /// They find no rest.
    Restless,
}

/// The places, and the figures that judge the readings.
#[derive(Debug, Clone)]
pub(super) struct Fit {
    pub(super) places: Vec<Place>,
    pub(super) iterations: usize,
    /// Cofactors of the unknowns: the variances and covariances, as the errors are given in full.
    pub(super) cofactor: DMatrix<f64>,
    /// Of each equation, used or not: fitted less read, in millimetres.
    pub(super) residuals: Vec<f64>,
    /// Of each equation, the part of an error in it that shows in its own residual; of one that was not used, none.
    pub(super) redundancy: Vec<Option<f64>>,
    /// Sum of squares of the used residuals over their errors.
    pub(super) statistic: f64,
    /// Slopes at the fitted places.
    pub(super) rows: Vec<Row>,
}

impl Fit {
    /// How many times its own deviation the residual is, where others check it.
    pub(super) fn standardised(&self, index: usize, sigma: f64) -> Option<f64> {
        let redundancy = (*self.redundancy.get(index)?)?;
        (redundancy > UNCHECKED)
            .then(|| self.residuals.get(index).copied().unwrap_or(0.0) / (sigma * redundancy.sqrt()))
    }

    /// The variance of a linear function of the places.
    pub(super) fn variance(&self, unknowns: &Unknowns, slopes: &[(usize, Place)]) -> f64 {
        let terms = terms(unknowns, slopes);
        let cofactor = |a: usize, b: usize| self.cofactor.get((a, b)).copied().unwrap_or(0.0);
        terms.iter().map(|&(a, s)| terms.iter().map(|&(b, t)| s * t * cofactor(a, b)).sum::<f64>()).sum()
    }
}

/// The slopes that belong to unknowns, by their numbers.
pub(super) fn terms(unknowns: &Unknowns, slopes: &[(usize, Place)]) -> Vec<(usize, f64)> {
    let mut terms = Vec::with_capacity(6);
    for &(point, slope) in slopes {
        let [x, y] = unknowns.of.get(point).copied().unwrap_or_default();
        terms.extend(x.map(|unknown| (unknown, slope[0])));
        terms.extend(y.map(|unknown| (unknown, slope[1])));
    }
    terms
}

/// Fits the places to those equations that are used.
pub(super) fn adjust(
    unknowns: &Unknowns,
    equations: &[Equation],
    used: &[bool],
    start: &[Place],
) -> Result<Fit, Unfit> {
    let mut places = start.to_vec();
    let mut iterations = 0;
    loop {
        let rows = rows(equations, &places)?;
        let normal = Normal::new(unknowns, equations, used, &rows);
        let inverse = normal.inverse()?;
        let step = &inverse * &normal.right;
        let longest = step.iter().fold(0.0_f64, |most, part| most.max(part.abs()));
        if !longest.is_finite() {
            return Err(Unfit::Restless);
        }
        if longest < AT_REST {
            return Ok(finished(unknowns, equations, used, places, (iterations, inverse, rows)));
        }
        if iterations == MOST_ITERATIONS {
            return Err(Unfit::Restless);
        }
        iterations += 1;
        advance(unknowns, equations, used, &mut places, &step);
    }
}

fn rows(equations: &[Equation], places: &[Place]) -> Result<Vec<Row>, Unfit> {
    equations.iter().map(|equation| equation.form.row(places).ok_or(Unfit::Restless)).collect()
}

/// Takes the step, or half of it and so on where the whole of it goes uphill.
fn advance(unknowns: &Unknowns, equations: &[Equation], used: &[bool], places: &mut Vec<Place>, step: &DVector<f64>) {
    const HALVINGS: usize = 12;
    let before = statistic(equations, used, places);
    let mut by = 1.0;
    for _ in 0..HALVINGS {
        let next = moved(unknowns, places, step, by);
        let after = statistic(equations, used, &next);
        // At rest the sum only trembles in its last digits.
        if after <= before * (1.0 + 1e-9) + 1e-12 {
            *places = next;
            return;
        }
        by /= 2.0;
    }
    *places = moved(unknowns, places, step, by);
}

fn moved(unknowns: &Unknowns, places: &[Place], step: &DVector<f64>, by: f64) -> Vec<Place> {
    let part = |unknown: Option<usize>| unknown.and_then(|unknown| step.get(unknown)).map_or(0.0, |part| part * by);
    places.iter().zip(&unknowns.of).map(|(place, of)| [place[0] + part(of[0]), place[1] + part(of[1])]).collect()
}

fn statistic(equations: &[Equation], used: &[bool], places: &[Place]) -> f64 {
    let square = |equation: &Equation| {
        let value = equation.form.row(places).map_or(f64::INFINITY, |row| row.value);
        ((value - equation.value) / equation.sigma).powi(2)
    };
    equations.iter().zip(used).filter(|(_, used)| **used).map(|(equation, _)| square(equation)).sum()
}

/// Normal equations. Each row names six unknowns at most, so they are summed entry by entry, in one order everywhere.
struct Normal {
    matrix: DMatrix<f64>,
    right: DVector<f64>,
}

impl Normal {
    fn new(unknowns: &Unknowns, equations: &[Equation], used: &[bool], rows: &[Row]) -> Normal {
        let count = unknowns.count;
        let (mut matrix, mut right) = (DMatrix::zeros(count, count), DVector::zeros(count));
        for ((equation, row), _) in equations.iter().zip(rows).zip(used).filter(|(_, used)| **used) {
            let weight = 1.0 / (equation.sigma * equation.sigma);
            let terms = terms(unknowns, &row.slopes);
            for &(a, slope) in &terms {
                if let Some(entry) = right.get_mut(a) {
                    *entry += weight * slope * (equation.value - row.value);
                }
                for &(b, other) in &terms {
                    if let Some(entry) = matrix.get_mut((a, b)) {
                        *entry += weight * slope * other;
                    }
                }
            }
        }
        Normal { matrix, right }
    }

    fn inverse(&self) -> Result<DMatrix<f64>, Unfit> {
        let count = self.matrix.nrows();
        let diagonal = |at: usize| self.matrix.get((at, at)).copied().unwrap_or(0.0);
        // Rows are brought to a diagonal of one, so that a pivot tells how much of it others leave.
        if let Some(loose) = (0..count).find(|&at| diagonal(at) <= 0.0) {
            return Err(Unfit::Loose(loose));
        }
        let scale = DVector::from_iterator(count, (0..count).map(|at| 1.0 / diagonal(at).sqrt()));
        let at = |vector: &DVector<f64>, index: usize| vector.get(index).copied().unwrap_or(0.0);
        let scaled = self.matrix.map_with_location(|row, column, entry| entry * at(&scale, row) * at(&scale, column));
        let loosest = |factor: &DMatrix<f64>| {
            let pivots = (0..count).map(|at| (at, factor.get((at, at)).copied().unwrap_or(0.0)));
            pivots.min_by(|one, other| one.1.total_cmp(&other.1)).unwrap_or((0, 1.0))
        };
        let Some(cholesky) = scaled.clone().cholesky() else { return Err(Unfit::Loose(first_loose(&scaled))) };
        let (unknown, pivot) = loosest(cholesky.l_dirty());
        if pivot * pivot < SINGULAR {
            return Err(Unfit::Loose(unknown));
        }
        let inverse = cholesky.inverse();
        Ok(inverse.map_with_location(|row, column, entry| entry * at(&scale, row) * at(&scale, column)))
    }
}

/// The first unknown at which the leading part of the matrix is no longer definite.
fn first_loose(matrix: &DMatrix<f64>) -> usize {
    let count = matrix.nrows();
    (1..=count)
        .find(|&size| matrix.view((0, 0), (size, size)).into_owned().cholesky().is_none())
        .map_or(0, |size| size - 1)
}

fn finished(
    unknowns: &Unknowns,
    equations: &[Equation],
    used: &[bool],
    places: Vec<Place>,
    (iterations, cofactor, rows): (usize, DMatrix<f64>, Vec<Row>),
) -> Fit {
    let residuals: Vec<f64> = equations.iter().zip(&rows).map(|(equation, row)| row.value - equation.value).collect();
    let statistic = statistic(equations, used, &places);
    let mut fit = Fit { places, iterations, cofactor, residuals, redundancy: Vec::new(), statistic, rows };
    let redundancy = |((equation, row), used): ((&Equation, &Row), &bool)| {
        // The part that does not show is never below none or above all, but for rounding.
        let shown = 1.0 - fit.variance(unknowns, &row.slopes) / (equation.sigma * equation.sigma);
        used.then(|| shown.clamp(0.0, 1.0))
    };
    fit.redundancy = equations.iter().zip(&fit.rows).zip(used).map(redundancy).collect();
    fit
}
