//! Lengths as whole nanometres, so that stations, widths, gaps and kerfs add up with no drift.
//!
//! One 64th of an inch is 396 875 nm and a millimetre is 1 000 000 nm: both are whole, so a boat measured in trade
//! fractions and one measured in millimetres are both exact. Reading is in `parse`, printing in `print`, the JSON form
//! in `json`.

mod area;
mod json;
mod parse;
mod print;
mod unit;

pub use area::Area;
pub(crate) use json::serialize_number;
pub use json::{JsonForm, with_json_form};
pub use parse::Reading;
pub use print::{Fraction, Notation};
pub use unit::Unit;

use std::ops::{Add, AddAssign, Div, Mul, Neg, Sub, SubAssign};

/// A length, exact to the nanometre.
///
/// What is read from outside lies within ±[`Length::LIMIT`] (one kilometre); millions of such lengths can be added
/// before `i64` ends. The operators saturate at the ends of `i64`, so nothing wraps and nothing panics; where a sum of
/// unknown size is wanted, [`checked_add`](Length::checked_add) and [`checked_mul`](Length::checked_mul) tell.
///
/// # Examples
/// ```
/// use deck_core::{Length, Unit};
/// let board: Length = "47-15/16 in".parse()?;
/// let gap: Length = "1/16 in".parse()?;
/// assert_eq!((board + gap) * 6, "24 ft".parse::<Length>()?);
/// assert_eq!(board.nanometres(), 1_217_612_500);
/// # Ok::<(), deck_core::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default, Hash)]
pub struct Length(i64);

impl Length {
    /// No length.
    pub const ZERO: Length = Length(0);
    /// The largest length that is read from outside: 1 km.
    pub const LIMIT: Length = Length(1_000_000_000_000);
    /// The largest length there is; the operators stop here.
    pub const MAX: Length = Length(i64::MAX);

    /// A length of that many nanometres.
    pub const fn from_nanometres(nanometres: i64) -> Length {
        Length(nanometres)
    }

    /// A whole number of some unit; saturates.
    pub const fn of(count: i64, unit: Unit) -> Length {
        Length(count.saturating_mul(unit.nanometres()))
    }

    /// Whole inches; saturates.
    pub const fn inches(count: i64) -> Length {
        Length::of(count, Unit::Inch)
    }

    /// A fraction of an inch, rounded half to even where it is not a whole number of nanometres.
    ///
    /// `denominator` of zero or less counts as one.
    pub fn inch_fraction(numerator: i64, denominator: i64) -> Length {
        let product = i128::from(numerator) * i128::from(Unit::Inch.nanometres());
        Length::saturating(crate::math::round_half_even(product, i128::from(denominator.max(1))))
    }

    /// The nearest length to a figure in nanometres, as comes out of a square root; saturates, and NaN is zero.
    pub fn nearest(nanometres: f64) -> Length {
        // `as` saturates and takes NaN to zero: the one place where floating point comes back to lengths.
        #[allow(clippy::cast_possible_truncation)]
        Length(nanometres.round_ties_even() as i64)
    }

    pub(crate) fn saturating(nanometres: i128) -> Length {
        Length(i64::try_from(nanometres).unwrap_or(if nanometres < 0 { i64::MIN } else { i64::MAX }))
    }

    /// The count of nanometres.
    pub const fn nanometres(self) -> i64 {
        self.0
    }

    /// The figure in a unit, as near as floating point comes. For drawing and for ratios, never for sums.
    pub fn in_unit(self, unit: Unit) -> f64 {
        self.0 as f64 / unit.nanometres() as f64
    }

    /// The figure in inches, as near as floating point comes.
    pub fn as_inches(self) -> f64 {
        self.in_unit(Unit::Inch)
    }

    /// True below zero.
    pub const fn is_negative(self) -> bool {
        self.0 < 0
    }

    /// True at zero.
    pub const fn is_zero(self) -> bool {
        self.0 == 0
    }

    pub(crate) fn is_zero_ref(&self) -> bool {
        self.is_zero()
    }

    /// Without its sign.
    #[must_use]
    pub const fn abs(self) -> Length {
        Length(self.0.saturating_abs())
    }

    /// The middle between this and another, rounded down to the nanometre.
    #[must_use]
    pub fn midpoint(self, other: Length) -> Length {
        Length::saturating((i128::from(self.0) + i128::from(other.0)).div_euclid(2))
    }

    /// The sum, or `None` where it does not fit.
    pub fn checked_add(self, other: Length) -> Option<Length> {
        self.0.checked_add(other.0).map(Length)
    }

    /// The difference, or `None` where it does not fit.
    pub fn checked_sub(self, other: Length) -> Option<Length> {
        self.0.checked_sub(other.0).map(Length)
    }

    /// The multiple, or `None` where it does not fit.
    pub fn checked_mul(self, times: i64) -> Option<Length> {
        self.0.checked_mul(times).map(Length)
    }

    /// How many whole `step`s it takes to cover this length: the quotient rounded up. Zero for a step of zero or less.
    pub fn steps_of(self, step: Length) -> i64 {
        if step.0 <= 0 || self.0 <= 0 {
            return 0;
        }
        // Neither side is zero or negative, so this is the quotient rounded up; it cannot overflow.
        (self.0 - 1) / step.0 + 1
    }

    /// The part `numerator/denominator` of this length, rounded half to even. A denominator of zero or less counts as one.
    #[must_use]
    pub fn part(self, numerator: i64, denominator: i64) -> Length {
        let product = i128::from(self.0) * i128::from(numerator);
        Length::saturating(crate::math::round_half_even(product, i128::from(denominator.max(1))))
    }

    /// The length of the hypotenuse over two legs, rounded to the nearest nanometre.
    #[must_use]
    pub fn hypotenuse(self, other: Length) -> Length {
        let (a, b) = (i128::from(self.0), i128::from(other.0));
        Length::saturating(crate::math::nearest_root(a * a + b * b))
    }
}

impl Add for Length {
    type Output = Length;
    fn add(self, other: Length) -> Length {
        Length(self.0.saturating_add(other.0))
    }
}

impl Sub for Length {
    type Output = Length;
    fn sub(self, other: Length) -> Length {
        Length(self.0.saturating_sub(other.0))
    }
}

impl Neg for Length {
    type Output = Length;
    fn neg(self) -> Length {
        Length(self.0.saturating_neg())
    }
}

impl Mul<i64> for Length {
    type Output = Length;
    fn mul(self, times: i64) -> Length {
        Length(self.0.saturating_mul(times))
    }
}

/// Halves, thirds and so on, rounded half to even; dividing by zero or less divides by one.
impl Div<i64> for Length {
    type Output = Length;
    fn div(self, by: i64) -> Length {
        self.part(1, by)
    }
}

impl AddAssign for Length {
    fn add_assign(&mut self, other: Length) {
        *self = *self + other;
    }
}

impl SubAssign for Length {
    fn sub_assign(&mut self, other: Length) {
        *self = *self - other;
    }
}

impl std::iter::Sum for Length {
    fn sum<I: Iterator<Item = Length>>(lengths: I) -> Length {
        lengths.fold(Length::ZERO, Add::add)
    }
}
