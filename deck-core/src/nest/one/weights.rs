//! Weights on copies: what is scarce counts for less, and the bound comes down.
//!
//! # Method
//! Lagrangean relaxation of the limits on copies, the weights improved by subgradient steps (Held, Wolfe and Crowder
//! 1974; for cutting one sheet Hifi 1997). Weights are hints in floating point, rounded before use; the bound that they
//! give is exact whatever they are.

use super::board::Board;
use super::table::Item;

/// Values after the weights are taken off.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Priced {
    /// Values are counted in so many parts.
    pub(super) scale: i64,
    /// The value of each kind, scaled, less its weight.
    pub(super) reduced: Vec<i64>,
    /// What all copies together would give back.
    pub(super) constant: i64,
}

impl Priced {
    /// No weights.
    pub(super) fn plain(values: &[i64], scale: i64) -> Priced {
        Priced { scale, reduced: values.iter().map(|value| value * scale).collect(), constant: 0 }
    }

    fn new(board: &Board, values: &[i64], scale: i64, weights: &[f64]) -> Priced {
        let mut priced = Priced::plain(values, scale);
        for ((reduced, weight), kind) in priced.reduced.iter_mut().zip(weights).zip(&board.kinds) {
            // A weight above the value keeps the kind out altogether; more would only loosen the bound.
            // Below zero only where all copies are used; to twice the value, so that sums stay in their range.
            let weight = whole(weight * scale as f64).clamp(-*reduced, *reduced);
            *reduced -= weight;
            priced.constant += weight * i64::from(kind.count);
        }
        priced
    }

    /// The ways in which kinds may lie, with their reduced values.
    pub(super) fn items(&self, board: &Board) -> Vec<Item> {
        board.items(&self.reduced)
    }

    /// The bound on true values, given the best of reduced ones.
    pub(super) fn bound(&self, reduced: i64) -> i64 {
        reduced.saturating_add(self.constant) / self.scale
    }

    /// What a sum of reduced values must reach for true values to be above that.
    pub(super) fn needed(&self, above: i64) -> i64 {
        (above + 1) * self.scale - self.constant
    }
}

/// Weights on their way to better ones.
#[derive(Debug, Clone)]
pub(super) struct Weights {
    each: Vec<f64>,
    /// True where every copy has to be used: weights below zero are allowed then.
    all: bool,
    /// Length of a step as a share of the way to the target.
    stride: f64,
    lowest: f64,
    since_lower: u32,
}

impl Weights {
    pub(super) fn new(kinds: usize, all: bool) -> Weights {
        Weights { each: vec![0.0; kinds], all, stride: 1.0, lowest: f64::INFINITY, since_lower: 0 }
    }

    pub(super) fn priced(&self, board: &Board, values: &[i64], scale: i64) -> Priced {
        Priced::new(board, values, scale, &self.each)
    }

    /// Moves the weights by what a best pattern under them takes too much or leaves; false where it stops paying.
    pub(super) fn improve(&mut self, board: &Board, taken: &[u32], bound: f64, target: i64) -> bool {
        /// Steps without a lower bound after which the stride is halved.
        const PATIENCE: u32 = 6;
        /// A stride below which nothing moves.
        const LEAST_STRIDE: f64 = 0.01;
        self.since_lower += 1;
        if bound < self.lowest {
            (self.lowest, self.since_lower) = (bound, 0);
        } else if self.since_lower >= PATIENCE {
            self.stride /= 2.0;
            self.since_lower = 0;
        }
        let over = |(kind, taken): (&super::board::Kind, &u32)| f64::from(*taken) - f64::from(kind.count);
        let slopes: Vec<f64> = board.kinds.iter().zip(taken).map(over).collect();
        let all = self.all;
        let moves = |(slope, weight): (&f64, &f64)| *slope > 0.0 || *weight > 0.0 || all;
        let length: f64 =
            slopes.iter().zip(&self.each).filter(|pair| moves(*pair)).map(|(slope, _)| slope * slope).sum();
        if length == 0.0 || self.stride < LEAST_STRIDE {
            return false;
        }
        let step = self.stride * (bound - target as f64).max(1.0) / length;
        for (weight, slope) in self.each.iter_mut().zip(&slopes) {
            *weight += step * slope;
            if !all {
                *weight = weight.max(0.0);
            }
        }
        true
    }
}

/// The whole number below, as far as it fits.
#[expect(clippy::cast_possible_truncation, reason = "a float beyond the range becomes the end of the range")]
fn whole(value: f64) -> i64 {
    value as i64
}
