//! Writes lengths for people: trade fractions, feet and inches, decimals, millimetres.

use super::{Length, Unit};
use crate::math::{greatest_divisor, round_half_even};
use std::fmt;

impl Length {
    /// The figure in a unit as a decimal, without the unit: as many places as tell nanometres apart, no trailing zeros.
    ///
    /// # Examples
    /// ```
    /// use deck_core::{Length, Unit};
    /// let board: Length = "47-15/16 in".parse()?;
    /// assert_eq!(board.decimal(Unit::Inch), "47.9375");
    /// assert_eq!(board.decimal(Unit::Millimetre), "1217.6125");
    /// # Ok::<(), deck_core::Error>(())
    /// ```
    pub fn decimal(self, unit: Unit) -> String {
        self.decimal_places(unit, unit.places())
    }

    /// The figure in a unit, rounded half to even to at most so many decimal places (up to 10).
    pub fn decimal_places(self, unit: Unit, places: u32) -> String {
        let scale = 10_i128.pow(places.min(10));
        // At most 10^19 · 10^10: far inside i128.
        let scaled = round_half_even(i128::from(self.nanometres()) * scale, i128::from(unit.nanometres()));
        let sign = if scaled < 0 { "-" } else { "" };
        let (whole, part) = (scaled.abs() / scale, scaled.abs() % scale);
        if part == 0 {
            return format!("{sign}{whole}");
        }
        let digits = format!("{part:0width$}", width = places.min(10) as usize);
        format!("{sign}{whole}.{}", digits.trim_end_matches('0'))
    }

    /// True where the decimal in that unit is exactly this length.
    pub fn is_exact_in(self, unit: Unit) -> bool {
        let scale = 10_i128.pow(unit.places());
        (i128::from(self.nanometres()) * scale) % i128::from(unit.nanometres()) == 0
    }

    /// The figure in a unit as the number that a JSON reader sees: the decimal above, nothing more.
    pub fn number(self, unit: Unit) -> f64 {
        // unreachable: a decimal of ours always parses; zero stands in for what cannot happen.
        self.decimal(unit).parse().unwrap_or(0.0)
    }

    /// The nearest trade fraction of an inch; see [`Fraction`].
    pub fn fraction(self, denominator: u32) -> Fraction {
        Fraction::nearest(self, denominator)
    }
}

/// Inches in whole and a fraction, in lowest terms.
///
/// # Examples
/// ```
/// use deck_core::Length;
/// let board: Length = "1217 mm".parse()?;
/// let sixteenths = board.fraction(16);
/// assert_eq!(sixteenths.to_string(), "47-15/16\"");
/// assert!(!sixteenths.exact);
/// # Ok::<(), deck_core::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[non_exhaustive]
pub struct Fraction {
    /// True below zero.
    pub negative: bool,
    /// Whole inches, without sign.
    pub whole: i64,
    /// Numerator of what is left; zero where nothing is.
    pub numerator: i64,
    /// Denominator in lowest terms.
    pub denominator: i64,
    /// True where nothing was rounded.
    pub exact: bool,
}

impl Fraction {
    fn nearest(length: Length, denominator: u32) -> Fraction {
        let parts = i128::from(denominator.max(1));
        let inch = i128::from(Unit::Inch.nanometres());
        let scaled = i128::from(length.nanometres()) * parts;
        let count = round_half_even(scaled, inch);
        let (whole, rest) = (count.abs() / parts, count.abs() % parts);
        let divisor = greatest_divisor(rest, parts).max(1);
        // All four fit: `whole` is below 10^12 and the others not above the denominator.
        let small = |value: i128| i64::try_from(value).unwrap_or(i64::MAX);
        Fraction {
            negative: count < 0,
            whole: small(whole),
            numerator: small(rest / divisor),
            denominator: small(parts / divisor),
            exact: count * inch == scaled,
        }
    }
}

impl fmt::Display for Fraction {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.negative {
            write!(f, "-")?;
        }
        match (self.whole, self.numerator) {
            (whole, 0) => write!(f, "{whole}\""),
            (0, above) => write!(f, "{above}/{}\"", self.denominator),
            (whole, above) => write!(f, "{whole}-{above}/{}\"", self.denominator),
        }
    }
}

/// How a shop writes lengths on paper.
///
/// Imperial units are written in fractions of an inch, metric ones in decimals to a tenth of a millimetre. What had to
/// be rounded carries a ≈ and its decimal beside it.
///
/// # Examples
/// ```
/// use deck_core::{Length, Notation, Unit};
/// let tape = Notation::new(Unit::Inch);
/// assert_eq!(tape.text("94.5 in".parse()?), "94-1/2\"");
/// assert_eq!(tape.feet(true).text("94.5 in".parse()?), "7' 10-1/2\"");
/// assert_eq!(tape.text("1217 mm".parse()?), "≈47-15/16\" (47.913)");
/// assert_eq!(Notation::new(Unit::Millimetre).text("94.5 in".parse()?), "2400.3 mm");
/// # Ok::<(), deck_core::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[non_exhaustive]
pub struct Notation {
    /// The unit; inches and feet are both written in fractions.
    pub unit: Unit,
    /// Finest fraction of an inch: 2, 4, 8, 16, 32 or 64.
    pub denominator: u32,
    /// Write 12 inches and more in feet and inches.
    pub feet: bool,
}

impl Notation {
    /// Sixteenths, without feet unless the unit is the foot.
    pub fn new(unit: Unit) -> Notation {
        Notation { unit, denominator: 16, feet: unit == Unit::Foot }
    }

    /// With another finest fraction.
    #[must_use]
    pub fn denominator(mut self, denominator: u32) -> Notation {
        self.denominator = denominator;
        self
    }

    /// With or without feet.
    #[must_use]
    pub fn feet(mut self, feet: bool) -> Notation {
        self.feet = feet;
        self
    }

    /// The length that is written: the nearest fraction of an inch, or tenth of a millimetre.
    ///
    /// Running dimensions are rounded by this once, from the datum; chained ones are differences of rounded ones, so
    /// that a printed chain adds up to the printed total.
    pub fn round(&self, length: Length) -> Length {
        let (step, parts) = if self.unit.is_imperial() {
            (Unit::Inch.nanometres(), i64::from(self.denominator.max(1)))
        } else {
            (Unit::Millimetre.nanometres(), 10)
        };
        let scaled = i128::from(length.nanometres()) * i128::from(parts);
        let count = round_half_even(scaled, i128::from(step));
        Length::saturating(round_half_even(count * i128::from(step), i128::from(parts)))
    }

    /// The length in words of the shop, with ≈ and a decimal beside it where it was rounded.
    pub fn text(&self, length: Length) -> String {
        let figure = self.figure(length);
        if self.round(length).is_zero() && !length.is_zero() {
            // Rounded away: the decimal alone.
            let unit = self.unit_of_decimals();
            return format!("≈{} {}", length.decimal_places(unit, 3), unit.symbol());
        }
        if self.round(length) == length {
            figure
        } else {
            format!("≈{figure} ({})", length.decimal_places(self.unit_of_decimals(), 3))
        }
    }

    /// The rounded length alone, for the ends of a dimension line.
    pub fn figure(&self, length: Length) -> String {
        if !self.unit.is_imperial() {
            let places = match self.unit {
                Unit::Metre => 4,
                Unit::Centimetre => 2,
                _ => 1,
            };
            return format!("{} {}", length.decimal_places(self.unit, places), self.unit.symbol());
        }
        let fraction = length.fraction(self.denominator);
        if !self.feet || fraction.whole < 12 {
            return fraction.to_string();
        }
        let feet = fraction.whole / 12;
        let sign = if fraction.negative { "-" } else { "" };
        let inches = Fraction { whole: fraction.whole % 12, negative: false, ..fraction };
        format!("{sign}{feet}' {inches}")
    }

    fn unit_of_decimals(&self) -> Unit {
        if self.unit == Unit::Foot { Unit::Inch } else { self.unit }
    }
}

/// Decimal places of lengths in messages: finer than any tape reads.
const MESSAGE_PLACES: u32 = 4;

/// Within a document a length is written in its unit, for messages, with ≈ where it had to be rounded. On its own it
/// names its unit and is exact: inches where those are short, millimetres otherwise.
impl fmt::Display for Length {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Some(unit) = super::json::document_unit() else { return write!(f, "{}", self.exact_text()) };
        let figure = self.decimal_places(unit, MESSAGE_PLACES);
        let sign = if figure == self.decimal(unit) { "" } else { "≈" };
        write!(f, "{sign}{figure} {}", unit.symbol())
    }
}

impl Length {
    /// Text that reads back as the same length.
    pub(super) fn exact_text(self) -> String {
        let inches = self.decimal(Unit::Inch);
        if self.is_exact_in(Unit::Inch) && inches.len() <= 12 {
            format!("{inches} in")
        } else {
            format!("{} mm", self.decimal(Unit::Millimetre))
        }
    }
}
