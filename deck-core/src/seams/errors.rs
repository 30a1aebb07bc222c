//! Errors of the tape, the saw and the hand that sets a board, and how they add up.

use crate::length::Length;
use crate::math::{chance_below, round_half_even};
use serde::{Deserialize, Serialize};

/// An error that is evenly spread from `under` below nothing to `over` above it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct Spread {
    /// How far it may lie below; not negative.
    pub under: Length,
    /// How far it may lie above; not negative.
    pub over: Length,
}

impl Spread {
    /// As far to either side.
    pub fn even(half_width: Length) -> Spread {
        Spread { under: half_width, over: half_width }
    }

    /// Only below: what is scant and never full.
    pub fn scant(most: Length) -> Spread {
        Spread { under: most, over: Length::ZERO }
    }

    /// The same error seen from the other side.
    #[must_use]
    pub fn reversed(self) -> Spread {
        Spread { under: self.over, over: self.under }
    }

    fn width(self) -> Length {
        self.under + self.over
    }
}

/// A sum of independent errors.
///
/// # Examples
/// ```
/// use deck_core::{seams::{ErrorSum, Spread}, Length};
/// let saw = Spread::even("1/16 in".parse()?);
/// let sum = ErrorSum::new().add(saw, 2);
/// assert_eq!(sum.worst(), Spread::even("1/8 in".parse()?));
/// assert_eq!(sum.chance_below("-1/16 in".parse()?), 0.125);
/// # Ok::<(), deck_core::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct ErrorSum {
    /// Each kind of error, and how many of it there are.
    kinds: Vec<(Spread, usize)>,
}

/// Chances are reckoned from so many errors at the most; no deck has as many.
const MOST_ERRORS: usize = 4096;

impl ErrorSum {
    /// No error yet.
    pub fn new() -> ErrorSum {
        ErrorSum::default()
    }

    /// With so many errors more of one kind.
    #[must_use]
    pub fn add(mut self, spread: Spread, count: usize) -> ErrorSum {
        if spread.width() > Length::ZERO && count > 0 {
            self.kinds.push((spread, count));
        }
        self
    }

    fn times(count: usize) -> i64 {
        i64::try_from(count).unwrap_or(i64::MAX)
    }

    /// The sum when every error is at its limit the same way.
    pub fn worst(&self) -> Spread {
        let sum = |side: fn(&Spread) -> Length| {
            self.kinds.iter().map(|(spread, count)| side(spread) * ErrorSum::times(*count)).sum()
        };
        Spread { under: sum(|spread| spread.under), over: sum(|spread| spread.over) }
    }

    /// The middle of the sum less and plus the root of the sum of the squares of all half-widths, rounded to the
    /// nanometre. Of errors that lie to one side only, `under` or `over` can be negative.
    pub fn root_sum_square(&self) -> Spread {
        let square = |(spread, count): &(Spread, usize)| {
            i128::from(spread.width().nanometres()).pow(2).saturating_mul(i128::from(ErrorSum::times(*count)))
        };
        // Four times the sum of squares: a width is twice a half-width.
        let squares = self.kinds.iter().map(square).fold(0_i128, i128::saturating_add);
        let root = Length::saturating(crate::math::nearest_root(round_half_even(squares, 4)));
        let worst = self.worst();
        let middle = (worst.over - worst.under) / 2;
        Spread { under: root - middle, over: root + middle }
    }

    /// The chance that the sum is less than a length, in exact steps of a common measure: the sum's distribution is
    /// that of whole numbers and of a cardinal B-spline (Irwin 1927; Hall 1927; de Boor 1972), reckoned in floating point
    /// without cancellation. Of more than 4096 errors the first so many count.
    pub fn chance_below(&self, length: Length) -> f64 {
        let each =
            self.kinds.iter().flat_map(|(spread, count)| std::iter::repeat_n(*spread, (*count).min(MOST_ERRORS)));
        let widths: Vec<i64> = each.take(MOST_ERRORS).map(|spread| spread.width().nanometres()).collect();
        if widths.is_empty() {
            return if length > Length::ZERO { 1.0 } else { 0.0 };
        }
        chance_below(&widths, (length + self.worst().under).nanometres())
    }
}
