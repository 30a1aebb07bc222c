//! An exact simplex for small linear programmes with several objectives in order of weight.
//!
//! All figures are whole numbers, so the optimum is a fraction that nothing has rounded: ties are ties.
//!
//! # Method
//! Tableau simplex from the slack basis with fraction-free pivots: every entry is kept as an integer over one common
//! denominator, the last pivot (Edmonds 1967; Bareiss 1968). A column may enter when its vector of reduced costs is
//! below zero in the order of the objectives; Bland's least-index rule (1977) then ends, because vectors under that
//! order are an ordered field's costs.

/// Minimise the objectives, in order, over `x ≥ 0` with every row `a · x ≤ b`, where each `b` is zero or more.
#[derive(Debug, Clone)]
pub(crate) struct Programme {
    variables: usize,
    rows: Vec<(Vec<i128>, i128)>,
    objectives: Vec<Vec<i128>>,
}

/// Where the optimum lies: numerators over one common denominator above zero.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Optimum {
    /// The variables.
    pub(crate) numerators: Vec<i128>,
    /// Their common denominator.
    pub(crate) denominator: i128,
}

/// More pivots than this a programme of some thirty rows never takes; the limit only guards against the unforeseen.
const MOST_PIVOTS: usize = 10_000;

impl Programme {
    pub(crate) fn new(variables: usize) -> Programme {
        Programme { variables, rows: Vec::new(), objectives: Vec::new() }
    }

    /// Adds `Σ factor · x ≤ bound`; a bound below zero is taken as zero.
    pub(crate) fn row(&mut self, terms: &[(usize, i128)], bound: i128) {
        let row = dense(self.variables, terms);
        self.rows.push((row, bound.max(0)));
    }

    /// Adds the next objective, less weighty than all before it.
    pub(crate) fn minimise(&mut self, terms: &[(usize, i128)]) {
        let row = dense(self.variables, terms);
        self.objectives.push(row);
    }

    /// The optimum, or `None` where the figures outgrow 128 bits or an objective has no least value.
    pub(crate) fn solve(&self) -> Option<Optimum> {
        let mut tableau = Tableau::new(self);
        for _ in 0..MOST_PIVOTS {
            let Some(column) = tableau.entering() else { return Some(tableau.optimum(self.variables)) };
            let row = tableau.leaving(column)?;
            tableau.pivot(row, column)?;
        }
        None
    }
}

fn dense(variables: usize, terms: &[(usize, i128)]) -> Vec<i128> {
    let mut row = vec![0; variables];
    for &(variable, factor) in terms {
        row[variable] += factor;
    }
    row
}

struct Tableau {
    /// Constraint rows, then objective rows; the last column is the right-hand side.
    cells: Vec<Vec<i128>>,
    basis: Vec<usize>,
    denominator: i128,
    columns: usize,
}

impl Tableau {
    fn new(programme: &Programme) -> Tableau {
        let (variables, rows) = (programme.variables, programme.rows.len());
        let columns = variables + rows;
        let mut cells = Vec::with_capacity(rows + programme.objectives.len());
        for (index, (row, bound)) in programme.rows.iter().enumerate() {
            let mut cell = row.clone();
            cell.resize(columns, 0);
            cell[variables + index] = 1;
            cell.push(*bound);
            cells.push(cell);
        }
        for objective in &programme.objectives {
            let mut cell = objective.clone();
            cell.resize(columns + 1, 0);
            cells.push(cell);
        }
        Tableau { cells, basis: (variables..columns).collect(), denominator: 1, columns }
    }

    /// The first column whose reduced costs are below zero in the order of the objectives.
    fn entering(&self) -> Option<usize> {
        let objectives = &self.cells[self.basis.len()..];
        (0..self.columns).find(|&column| {
            objectives.iter().map(|objective| objective[column]).find(|cost| *cost != 0).is_some_and(|cost| cost < 0)
        })
    }

    /// The row that limits the column most, the least basis index among equals.
    fn leaving(&self, column: usize) -> Option<usize> {
        let mut best: Option<usize> = None;
        for (row, cells) in self.cells[..self.basis.len()].iter().enumerate() {
            if cells[column] <= 0 {
                continue;
            }
            let better = match best {
                None => true,
                Some(other) => {
                    let others = &self.cells[other];
                    let ours = cells[self.columns].checked_mul(others[column])?;
                    let theirs = others[self.columns].checked_mul(cells[column])?;
                    ours < theirs || (ours == theirs && self.basis[row] < self.basis[other])
                }
            };
            if better {
                best = Some(row);
            }
        }
        best
    }

    fn pivot(&mut self, row: usize, column: usize) -> Option<()> {
        let pivot_row = self.cells[row].clone();
        let pivot = pivot_row[column];
        for (index, cells) in self.cells.iter_mut().enumerate() {
            if index == row {
                continue;
            }
            let factor = cells[column];
            for (cell, &above) in cells.iter_mut().zip(&pivot_row) {
                let product = cell.checked_mul(pivot)?.checked_sub(factor.checked_mul(above)?)?;
                // Exact: the determinant identity of fraction-free elimination.
                *cell = product / self.denominator;
            }
        }
        self.denominator = pivot;
        self.basis[row] = column;
        Some(())
    }

    fn optimum(&self, variables: usize) -> Optimum {
        let mut numerators = vec![0; variables];
        for (row, &column) in self.basis.iter().enumerate() {
            if column < variables {
                numerators[column] = self.cells[row][self.columns];
            }
        }
        Optimum { numerators, denominator: self.denominator }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn solve(programme: &Programme) -> Vec<f64> {
        let optimum = programme.solve().unwrap();
        optimum.numerators.iter().map(|&n| n as f64 / optimum.denominator as f64).collect()
    }

    #[test]
    fn a_textbook_programme() {
        // Dantzig's example as printed in Chvátal, Linear Programming (1983), section 2: maximum 13 at (2, 0, 1).
        let mut programme = Programme::new(3);
        programme.row(&[(0, 2), (1, 3), (2, 1)], 5);
        programme.row(&[(0, 4), (1, 1), (2, 2)], 11);
        programme.row(&[(0, 3), (1, 4), (2, 2)], 8);
        programme.minimise(&[(0, -5), (1, -4), (2, -3)]);
        assert_eq!(solve(&programme), [2.0, 0.0, 1.0]);
    }

    #[test]
    fn the_second_objective_breaks_the_ties_of_the_first() {
        let mut programme = Programme::new(2);
        programme.row(&[(0, 2), (1, 2)], 3);
        programme.minimise(&[(0, -1), (1, -1)]);
        let mut other = programme.clone();
        programme.minimise(&[(0, 1)]);
        other.minimise(&[(1, 1)]);
        assert_eq!(solve(&programme), [0.0, 1.5]);
        assert_eq!(solve(&other), [1.5, 0.0]);
    }

    #[test]
    fn no_least_value_is_told() {
        let mut programme = Programme::new(1);
        programme.minimise(&[(0, -1)]);
        assert!(programme.solve().is_none());
    }
}
