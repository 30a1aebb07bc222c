//! How errors of sawing and setting add up from board to board.

use crate::length::Length;
use serde::{Deserialize, Serialize};

/// How far the edge of a board may lie from its place after a number of boards.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Stack {
    /// When every error is at its limit the same way.
    pub worst: Length,
    /// The root of the sum of squares of all errors.
    pub root_sum_square: Length,
}

/// The stack of `boards` boards, each sawn within ± `saw` and set within ± `set`.
///
/// # Method
/// Worst case `n (saw + set)`; root-sum-square `√n · √(saw² + set²)`. Derived here; errors are taken as independent.
///
/// # Examples
/// Six boards within 1/16 and 1/32 in:
/// ```
/// use deck_core::{seams::stack, Length};
/// let six = stack(6, "1/16 in".parse()?, "1/32 in".parse()?);
/// assert_eq!(six.worst, "9/16 in".parse()?);
/// assert_eq!((six.root_sum_square.as_inches() * 1000.0).round(), 171.0);
/// # Ok::<(), deck_core::Error>(())
/// ```
pub fn stack(boards: usize, saw: Length, set: Length) -> Stack {
    let count = i64::try_from(boards).unwrap_or(i64::MAX);
    let square = |length: Length| i128::from(length.nanometres()).pow(2);
    let sum = (square(saw) + square(set)).saturating_mul(i128::from(count));
    Stack { worst: (saw + set) * count, root_sum_square: Length::saturating(crate::math::nearest_root(sum)) }
}
