//! Equations whose unknowns touch only near neighbours.

/// A symmetric matrix with a band, its lower half row by row: row `i` holds columns `i - width ..= i`.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Band {
    count: usize,
    width: usize,
    cells: Vec<f64>,
}

impl Band {
    /// A matrix of zeros with `count` rows and `width` columns left of the diagonal.
    pub(super) fn new(count: usize, width: usize) -> Band {
        Band { count, width, cells: vec![0.0; count * (width + 1)] }
    }

    /// Number of rows.
    pub(super) fn count(&self) -> usize {
        self.count
    }

    /// Adds to a cell on or left of the diagonal, within the band.
    pub(super) fn add(&mut self, row: usize, column: usize, value: f64) {
        self.cells[row * self.width + self.width + column] += value;
    }

    /// The part of a row from `from` up to, not with, `to`.
    fn part(cells: &[f64], width: usize, row: usize, from: usize, to: usize) -> &[f64] {
        let shift = row * width + width;
        &cells[shift + from..shift + to]
    }

    /// Factors the matrix in place into `L Lᵀ` (Cholesky); on the diagonal stand inverses, as dividing is slow. False
    /// where it is not positive definite.
    pub(super) fn factor(&mut self) -> bool {
        for row in 0..self.count {
            if !self.factor_row(row) {
                return false;
            }
        }
        true
    }

    fn factor_row(&mut self, row: usize) -> bool {
        let width = self.width;
        let start = row.saturating_sub(width);
        // Row `i` begins at `i (width + 1)`; column `j` of it lies `j - i + width` further on.
        let (above, rest) = self.cells.split_at_mut(row * (width + 1));
        let own = &mut rest[start + width - row..=width];
        let whole = own[row - start];
        let mut column = start;
        while column < row {
            let block = BLOCK.min(row - column);
            // The other rows begin no later than this one.
            let others: [&[f64]; BLOCK] = std::array::from_fn(|k| {
                let other = column + k.min(block - 1);
                Band::part(above, width, other, start, other + 1)
            });
            let done = column - start;
            let sums = dots(&own[..done], others.map(|other| &other[..done]));
            for k in 0..block {
                let at = done + k;
                let near: f64 = own[done..at].iter().zip(&others[k][done..at]).map(|(a, b)| a * b).sum();
                own[at] = (own[at] - sums[k] - near) * others[k][at];
            }
            column += block;
        }
        let rest = whole - dot(&own[..row - start], &own[..row - start]);
        // What rounding may leave of a pivot that is zero.
        let sound = rest > whole * 1e-13;
        own[row - start] = 1.0 / rest.sqrt();
        sound
    }

    /// Solves for several right-hand sides in one sweep, in place, with the factored matrix. Rows before the first that
    /// is not zero are passed over.
    pub(super) fn solve<const LANES: usize>(&self, sides: &mut [[f64; LANES]]) {
        let first = sides.iter().position(|side| side.iter().any(|value| value.abs() > 0.0)).unwrap_or(self.count);
        for row in first..self.count {
            let start = row.saturating_sub(self.width);
            let factors = Band::part(&self.cells, self.width, row, start, row + 1);
            let mut sum = sides[row];
            for (side, &factor) in sides[start..row].iter().zip(factors) {
                subtract(&mut sum, side, factor);
            }
            sides[row] = sum.map(|value| value * factors[row - start]);
        }
        for row in (0..self.count).rev() {
            let start = row.saturating_sub(self.width);
            let factors = Band::part(&self.cells, self.width, row, start, row + 1);
            let value = sides[row].map(|value| value * factors[row - start]);
            sides[row] = value;
            for (side, &factor) in sides[start..row].iter_mut().zip(factors) {
                subtract(side, &value, factor);
            }
        }
    }
}

fn subtract<const LANES: usize>(from: &mut [f64; LANES], side: &[f64; LANES], factor: f64) {
    for (from, side) in from.iter_mut().zip(side) {
        *from -= side * factor;
    }
}

/// Columns of a row that are worked out at a time: each number of the row is then fetched once for all of them.
const BLOCK: usize = 4;

/// Products of one row with several, in two lanes each.
fn dots(a: &[f64], others: [&[f64]; BLOCK]) -> [f64; BLOCK] {
    let (a, rest) = a.as_chunks::<2>();
    let [b, c, d, e] = others.map(|other| other.as_chunks::<2>().0);
    let mut sums = [[0.0; 2]; BLOCK];
    for ((((a, b), c), d), e) in a.iter().zip(b).zip(c).zip(d).zip(e) {
        for (sum, other) in sums.iter_mut().zip([b, c, d, e]) {
            sum[0] += a[0] * other[0];
            sum[1] += a[1] * other[1];
        }
    }
    let done = 2 * a.len();
    let last = |k: usize| rest.iter().zip(&others[k][done..]).map(|(a, b)| a * b).sum::<f64>();
    std::array::from_fn(|k| sums[k][0] + sums[k][1] + last(k))
}

/// Sums in eight lanes, so that the processor need not wait for each sum.
fn dot(a: &[f64], b: &[f64]) -> f64 {
    let mut lanes = [0.0; 8];
    let (left, right) = (a.chunks_exact(8), b.chunks_exact(8));
    let rest: f64 = left.remainder().iter().zip(right.remainder()).map(|(a, b)| a * b).sum();
    for (a, b) in left.zip(right) {
        for (lane, (a, b)) in lanes.iter_mut().zip(a.iter().zip(b)) {
            *lane += a * b;
        }
    }
    lanes.iter().sum::<f64>() + rest
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The second differences of a string of `n` beads, shifted: solutions are known to the digit.
    #[test]
    fn a_string_of_beads() {
        for width in [1, 3, 12] {
            let n = 9;
            let mut band = Band::new(n, width);
            for row in 0..n {
                band.add(row, row, 2.0);
                if row > 0 {
                    band.add(row, row - 1, -1.0);
                }
            }
            assert!(band.factor());
            // -w'' = 1 gives i (n + 1 - i) / 2.
            let mut sides = vec![[1.0, 0.0, 2.0, -1.0]; n];
            band.solve(&mut sides);
            for (index, side) in sides.iter().enumerate() {
                let i = index as f64 + 1.0;
                assert!((side[0] - i * (10.0 - i) / 2.0).abs() < 1e-12 && side[1] == 0.0);
                assert!((side[2] - 2.0 * side[0]).abs() < 1e-12 && (side[3] + side[0]).abs() < 1e-12);
            }
        }
    }

    #[test]
    fn what_is_not_held_is_told() {
        let mut band = Band::new(2, 1);
        band.add(0, 0, 1.0);
        band.add(1, 0, -1.0);
        band.add(1, 1, 1.0);
        assert!(!band.factor());
    }
}
