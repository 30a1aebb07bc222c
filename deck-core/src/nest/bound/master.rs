//! The linear programme over the patterns met so far. It only suggests what parts are worth; the bound is proven apart.
//!
//! # Method
//! Primal simplex with an explicit inverse of the basis (Dantzig 1953), as Gilmore and Gomory (Operations Research 9,
//! 1961; 13, 1965) use it: columns are added as they are found. Floating point, in a fixed order of operations, so the
//! suggestions are the same on every machine.

use super::super::effort::Steps;

/// A way to use sheets: what one of it costs, and what it adds to which rows.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Column {
    pub(super) cost: f64,
    pub(super) entries: Vec<(usize, f64)>,
}

/// Minimise cost so that every row reaches its need exactly; columns for what is over are among the columns.
#[derive(Debug, Clone)]
pub(super) struct Master {
    needs: Vec<f64>,
    columns: Vec<Column>,
    /// The column of each row's place in the basis.
    basis: Vec<usize>,
    /// Inverse of the basis, one row after another.
    inverse: Vec<f64>,
    /// Values of the columns in the basis.
    values: Vec<f64>,
    /// What one more of each row's need would cost.
    duals: Vec<f64>,
    since_inverted: usize,
    /// Entries of all columns.
    entries: u64,
}

/// Below it a figure counts as zero.
const ZERO: f64 = 1e-9;
/// Pivots after which the inverse is computed afresh.
const FRESH: usize = 200;
/// Cells of the inverse that are worked on in the time of a step.
const CELLS: u64 = 16;
/// Added to the needs in rising multiples, so that few bases are degenerate. The sums stay far below a sheet.
const NUDGE: f64 = 1e-8;

impl Master {
    /// A programme whose first basis is given by the first columns, one for each row; they must be independent and meet
    /// the needs.
    pub(super) fn new(needs: &[f64], columns: Vec<Column>) -> Master {
        let nudged = (1_u32..).zip(needs).map(|(row, need)| need + NUDGE * f64::from(row)).collect();
        let rows = needs.len();
        let entries = columns.iter().map(|column| column.entries.len() as u64).sum();
        let mut master = Master {
            entries,
            needs: nudged,
            columns,
            basis: (0..rows).collect(),
            inverse: Vec::new(),
            values: Vec::new(),
            duals: vec![0.0; rows],
            since_inverted: 0,
        };
        master.invert();
        master
    }

    pub(super) fn add(&mut self, column: Column) {
        self.entries += column.entries.len() as u64;
        self.columns.push(column);
    }

    /// Makes a column so dear that it is not used where there is another way.
    pub(super) fn forbid(&mut self, column: usize) {
        let dear = 1.0 + self.columns.iter().map(|column| column.cost).fold(0.0, f64::max);
        if let Some(column) = self.columns.get_mut(column) {
            column.cost = dear;
        }
        self.fresh_duals();
    }

    /// Pivots until no column lowers the cost, at most so many times.
    pub(super) fn solve(&mut self, most: usize, steps: &mut Steps<'_>) {
        for _ in 0..most {
            steps.spend(self.work());
            let Some((cost, column)) = self.entering().filter(|_| !steps.spent_all()) else { break };
            if !self.pivot(column, cost) {
                break;
            }
        }
    }

    /// Steps that a pivot takes, with its share of the next inversion.
    fn work(&self) -> u64 {
        let rows = self.needs.len() as u64;
        1 + (rows * rows * (1 + 2 * rows / FRESH as u64) + 2 * self.entries) / CELLS
    }

    /// What one more of each row's need would cost.
    pub(super) fn duals(&self) -> &[f64] {
        &self.duals
    }

    /// Works them out from the costs of the basis.
    fn fresh_duals(&mut self) {
        let rows = self.needs.len();
        let mut duals = vec![0.0; rows];
        for (&column, row) in self.basis.iter().zip(self.inverse.chunks(rows.max(1))) {
            let cost = self.columns.get(column).map_or(0.0, |column| column.cost);
            if cost != 0.0 {
                for (dual, cell) in duals.iter_mut().zip(row) {
                    *dual += cost * cell;
                }
            }
        }
        self.duals = duals;
    }

    pub(super) fn cost(&self) -> f64 {
        let costs = self.basis.iter().map(|&column| self.columns.get(column).map_or(0.0, |column| column.cost));
        costs.zip(&self.values).map(|(cost, value)| cost * value).sum()
    }

    /// Columns in use and how often.
    pub(super) fn solution(&self) -> impl Iterator<Item = (usize, f64)> + '_ {
        self.basis.iter().copied().zip(self.values.iter().copied())
    }

    /// The column that lowers the cost most for each one of it, and by how much.
    fn entering(&self) -> Option<(f64, usize)> {
        let mut best = None;
        let mut least = -ZERO;
        for (index, column) in self.columns.iter().enumerate() {
            let cost = column.cost - dot(column, &self.duals);
            if cost < least {
                (least, best) = (cost, Some((cost, index)));
            }
        }
        best
    }

    /// Brings a column into the basis. False where nothing limits it or the inverse is lost.
    fn pivot(&mut self, entering: usize, cost: f64) -> bool {
        let rows = self.needs.len();
        let Some(column) = self.columns.get(entering) else { return false };
        let direction: Vec<f64> = self.inverse.chunks(rows.max(1)).map(|row| dot(column, row)).collect();
        let mut leaving: Option<(f64, f64, usize)> = None;
        for (row, (&slope, &value)) in direction.iter().zip(&self.values).enumerate() {
            if slope <= ZERO {
                continue;
            }
            let ratio = value.max(0.0) / slope;
            let better = leaving.is_none_or(|(least, other, _)| {
                ratio.total_cmp(&least).then(other.total_cmp(&slope)) == std::cmp::Ordering::Less
            });
            if better {
                leaving = Some((ratio, slope, row));
            }
        }
        let Some((ratio, slope, row)) = leaving else { return false };
        if let Some(place) = self.basis.get_mut(row) {
            *place = entering;
        }
        self.since_inverted += 1;
        if self.since_inverted >= FRESH {
            return self.invert();
        }
        let pivot_row: Vec<f64> = self.inverse.iter().skip(row * rows).take(rows).map(|cell| cell / slope).collect();
        for (dual, cell) in self.duals.iter_mut().zip(&pivot_row) {
            *dual += cost * cell;
        }
        for (at, (cells, &factor)) in self.inverse.chunks_mut(rows.max(1)).zip(&direction).enumerate() {
            if at == row {
                cells.copy_from_slice(&pivot_row);
            } else if factor != 0.0 {
                for (cell, pivot) in cells.iter_mut().zip(&pivot_row) {
                    *cell -= factor * pivot;
                }
            }
        }
        for (at, (value, &factor)) in self.values.iter_mut().zip(&direction).enumerate() {
            *value = if at == row { ratio } else { *value - factor * ratio };
        }
        true
    }

    /// Inverts the basis afresh by elimination with row pivots. False where it has none.
    fn invert(&mut self) -> bool {
        let rows = self.needs.len();
        self.since_inverted = 0;
        // Each line holds a row of the basis and beside it one of the identity.
        let mut lines = vec![vec![0.0; 2 * rows]; rows];
        for (place, &column) in self.basis.iter().enumerate() {
            for &(row, entry) in self.columns.get(column).map_or(&[][..], |column| &column.entries) {
                if let Some(cell) = lines.get_mut(row).and_then(|line| line.get_mut(place)) {
                    *cell += entry;
                }
            }
        }
        for (row, line) in lines.iter_mut().enumerate() {
            if let Some(cell) = line.get_mut(rows + row) {
                *cell = 1.0;
            }
        }
        for place in 0..rows {
            let size = |line: &Vec<f64>| line.get(place).map_or(0.0, |cell| cell.abs());
            let largest = (place..rows).max_by(|&one, &other| {
                let at = |row: usize| lines.get(row).map_or(0.0, size);
                at(one).total_cmp(&at(other))
            });
            let Some(largest) = largest else { return false };
            lines.swap(place, largest);
            let Some(mut line) = lines.get_mut(place).map(std::mem::take) else { return false };
            let pivot = line.get(place).copied().unwrap_or(0.0);
            if pivot.abs() < ZERO {
                return false;
            }
            for cell in &mut line {
                *cell /= pivot;
            }
            for other in lines.iter_mut().filter(|other| !other.is_empty()) {
                let factor = other.get(place).copied().unwrap_or(0.0);
                if factor != 0.0 {
                    for (cell, above) in other.iter_mut().zip(&line) {
                        *cell -= factor * above;
                    }
                }
            }
            if let Some(empty) = lines.get_mut(place) {
                *empty = line;
            }
        }
        self.inverse = lines.into_iter().flat_map(|line| line.into_iter().skip(rows)).collect();
        self.values = self
            .inverse
            .chunks(rows.max(1))
            .map(|row| row.iter().zip(&self.needs).map(|(cell, need)| cell * need).sum())
            .collect();
        self.fresh_duals();
        true
    }
}

fn dot(column: &Column, duals: &[f64]) -> f64 {
    column.entries.iter().map(|&(row, entry)| duals.get(row).map_or(0.0, |dual| dual * entry)).sum()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn column(cost: f64, entries: &[(usize, f64)]) -> Column {
        Column { cost, entries: entries.to_vec() }
    }

    #[test]
    fn a_cutting_order_known_by_hand() {
        // Rolls of 100 for 97 of 45, 610 of 36, 395 of 31, 211 of 14: Chvátal, Linear Programming (1983), chapter 13.
        // The patterns of its optimum are among these; 452.25 rolls.
        let needs = [97.0, 610.0, 395.0, 211.0];
        let mut columns: Vec<Column> =
            [2.0, 2.0, 3.0, 7.0].into_iter().enumerate().map(|(row, times)| column(1.0, &[(row, times)])).collect();
        columns.extend((0..4).map(|row| column(0.0, &[(row, -1.0)])));
        let mut master = Master::new(&needs, columns);
        master.add(column(1.0, &[(1, 2.0), (3, 2.0)]));
        master.add(column(1.0, &[(0, 2.0)]));
        master.add(column(1.0, &[(0, 1.0), (2, 1.0), (3, 1.0)]));
        master.add(column(1.0, &[(1, 1.0), (2, 2.0)]));
        master.solve(1000, &mut Steps::new(1_000_000, u64::MAX));
        assert!((master.cost() - 452.25).abs() < 1e-4, "{}", master.cost());
        let worth: f64 = master.duals().iter().zip(needs).map(|(dual, need)| dual * need).sum();
        assert!((worth - 452.25).abs() < 1e-4);
    }
}
