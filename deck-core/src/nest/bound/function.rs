//! Dual-feasible functions on whole numbers.
//!
//! Each function here maps 0 … `whole` to 0 … `scale` so that f(x) + f(y) ≤ f(x + y) wherever x + y ≤ `whole`, and it
//! never falls. Then, by induction over the cuts of a sheet, the sum of f(length) · g(width) over the parts of a piece
//! is at most f · g of the piece, for every piece no larger than `whole` each way.
//!
//! # Method
//! Fekete and Schepers, "A general framework for bounds for higher-dimensional orthogonal packing problems",
//! Mathematical Methods of Operations Research 60 (2004); Carlier, Clautiaux and Moukrim, "New reduction procedures and
//! lower bounds for the two-dimensional bin packing problem with fixed orientation", Computers and Operations Research
//! 34 (2007); the others as collected, with compositions, in Clautiaux, Alves and Valério de Carvalho, "A survey of
//! dual-feasible and superadditive functions", Annals of Operations Research 179 (2010). Formulas from memory; the
//! laws above are tried on every pair of small numbers.

use std::cmp::Ordering;

/// A dual-feasible function.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Function {
    /// x.
    Plain,
    /// What is longer than the rest of a short one counts as the whole, what is shorter as nothing (u of Fekete and
    /// Schepers; f0 of Carlier, Clautiaux and Moukrim).
    Threshold(i64),
    /// x rounded down to a multiple of 1/k, unless (k + 1) x is whole (u(k) of Fekete and Schepers).
    Rounded(i64),
    /// x in steps of a given size, rounded down below a half and up above it (f2 of Carlier, Clautiaux and Moukrim).
    Stepped(i64),
    /// Just under multiples of 1/k, counted from both ends (Vanderbeck's, as in the survey).
    Under(i64),
    /// Whole steps, and of a part of a step only what exceeds the rest of the whole (Burdet and Johnson's).
    Slanted(i64),
}

impl Function {
    /// The value of the whole.
    pub(super) fn scale(self, whole: i64) -> i64 {
        self.value(whole, whole)
    }

    /// The value of x, which lies in 0 … `whole`. Values stay below 2^50: lengths are below 2^41, and k is small.
    pub(super) fn value(self, x: i64, whole: i64) -> i64 {
        match self {
            Function::Plain => x,
            Function::Threshold(short) if x > whole - short => whole,
            Function::Threshold(short) => {
                if x < short {
                    0
                } else {
                    x
                }
            }
            Function::Rounded(k) => {
                let grown = (k + 1) * x;
                if grown % whole == 0 { x * k } else { grown / whole * whole }
            }
            Function::Stepped(step) => from_both_ends(x, whole, whole / step, |x| x / step),
            Function::Under(k) => from_both_ends(x, whole, k - 1, |x| ((k * x + whole - 1) / whole - 1).max(0)),
            Function::Slanted(step) => {
                let rest = whole % step;
                x / step * (step - rest) + (x % step - rest).max(0)
            }
        }
    }
}

/// Twice `lower` below a half, `one` at it, and above it twice what is missing from `one`.
fn from_both_ends(x: i64, whole: i64, one: i64, lower: impl Fn(i64) -> i64) -> i64 {
    match (2 * x).cmp(&whole) {
        Ordering::Less => 2 * lower(x),
        Ordering::Equal => one,
        Ordering::Greater => 2 * (one - lower(whole - x)),
    }
}

/// One function after another: the second works on the values of the first.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Chain(pub(super) Function, pub(super) Function);

impl Chain {
    pub(super) fn value(self, x: i64, whole: i64) -> i64 {
        self.1.value(self.0.value(x, whole), self.0.scale(whole))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const LARGEST: i64 = 26;

    fn all(whole: i64) -> Vec<Function> {
        let mut functions = vec![Function::Plain];
        functions.extend((1..=7).map(Function::Rounded));
        functions.extend((2..=9).map(Function::Under));
        functions.extend((1..=whole / 2).flat_map(|x| [Function::Threshold(x), Function::Stepped(x)]));
        functions.extend((1..=whole).map(Function::Slanted));
        functions
    }

    /// The laws that make every bound from these functions valid.
    fn obeys(value: impl Fn(i64) -> i64, whole: i64, name: &str) {
        assert_eq!(value(0), 0, "{name} of {whole}");
        for x in 0..=whole {
            for y in 0..=whole - x {
                assert!(value(x) + value(y) <= value(x + y), "{name} of {whole}: {x} and {y}");
            }
        }
    }

    #[test]
    fn no_sum_grows_beyond_its_whole() {
        for whole in 1..=LARGEST {
            for function in all(whole) {
                obeys(|x| function.value(x, whole), whole, &format!("{function:?}"));
            }
        }
    }

    #[test]
    fn nor_do_chains_of_two() {
        for whole in [7, 12, 13, 20] {
            for first in all(whole) {
                let scale = first.scale(whole);
                for second in all(scale).into_iter().filter(|_| scale > 0) {
                    let chain = Chain(first, second);
                    obeys(|x| chain.value(x, whole), whole, &format!("{chain:?}"));
                }
            }
        }
    }

    #[test]
    fn values_known_by_hand() {
        // Over half a sheet counts as one; a third counts as a half under u(2).
        assert_eq!(Function::Rounded(1).value(6, 10), 10);
        assert_eq!((Function::Rounded(2).value(5, 12), Function::Rounded(2).scale(12)), (12, 24));
        assert_eq!((Function::Stepped(3).value(7, 10), Function::Stepped(3).scale(10)), (4, 6));
    }
}
