//! How errors of sawing and setting add up from board to board.

use super::errors::{ErrorSum, Spread};
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
/// Worst case `n (saw + set)`; root-sum-square `√n · √(saw² + set²)`. Derived here; errors are taken as independent. It
/// is the [`ErrorSum`] of as many errors of each kind; [`tolerance`](super::tolerance()) says it of each seam.
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
    let sum = ErrorSum::new().add(Spread::even(saw), boards).add(Spread::even(set), boards);
    Stack { worst: sum.worst().over, root_sum_square: sum.root_sum_square().over }
}
