//! Exact decimals that are not money: hours, minutes, percentages, pounds.

use crate::error::{Error, Fault, Kind};
use rust_decimal::{Decimal, RoundingStrategy};
use serde::{Deserialize, Deserializer, Serialize, Serializer, de};
use std::fmt;

/// A count, a time or a share, exact.
///
/// # Examples
/// ```
/// use deck_core::money::Figure;
/// let hours = Figure::read_number(0.1)? + Figure::read_number(0.2)?;
/// assert_eq!(hours, Figure::scaled(3, 1));
/// assert_eq!(hours.to_string(), "0.3");
/// # Ok::<(), deck_core::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub struct Figure(Decimal);

/// Beyond this lies no figure of a shop.
const LIMIT: i64 = 1_000_000_000_000_000;
/// The finest figure that is read.
const PLACES: u32 = 9;

impl Figure {
    /// Nothing.
    pub const ZERO: Figure = Figure(Decimal::ZERO);

    /// A whole number.
    pub fn of(count: i64) -> Figure {
        Figure(Decimal::from(count))
    }

    /// A count of tenths, hundredths and so on: `scaled(25, 1)` is 2.5. More than nine places count as nine.
    pub fn scaled(count: i64, places: u32) -> Figure {
        Figure(Decimal::new(count, places.min(PLACES)).normalize())
    }

    /// The nearest figure with so many places to a float; zero for what is no number or too large.
    pub fn nearest(value: f64, places: u32) -> Figure {
        let decimal = Decimal::from_f64_retain(value).unwrap_or_default();
        Figure(decimal).rounded(places)
    }

    /// The nearest float.
    pub fn number(self) -> f64 {
        // unreachable: the text of a decimal is one that a number is read from.
        self.0.normalize().to_string().parse().unwrap_or_default()
    }

    /// Rounded to so many places, half away from zero.
    #[must_use]
    pub fn rounded(self, places: u32) -> Figure {
        Figure(self.0.round_dp_with_strategy(places, RoundingStrategy::MidpointAwayFromZero).normalize())
    }

    /// The quotient, rounded to so many places, half away from zero; zero where `by` is zero.
    #[must_use]
    pub fn over(self, by: Figure, places: u32) -> Figure {
        Figure(self.0.checked_div(by.0).unwrap_or_default()).rounded(places)
    }

    pub(super) fn decimal(self) -> Decimal {
        self.0
    }

    /// Reads a bare number as the shortest decimal that names it.
    ///
    /// # Errors
    /// NaN, infinite, too large, or finer than nine places.
    pub fn read_number(value: f64) -> Result<Figure, Error> {
        let text = value.to_string();
        let figure: Option<Decimal> = text.parse().ok();
        match figure.map(|figure| figure.normalize()) {
            Some(figure) if figure.scale() <= PLACES && figure.abs() <= Decimal::from(LIMIT) => Ok(Figure(figure)),
            _ => Err(Fault::new(
                Kind::FigureUnreadable,
                text.clone(),
                format!("{text} cannot be taken as an exact figure."),
                "A figure has at most nine decimal places.",
            )
            .into()),
        }
    }
}

/// Without trailing zeros.
impl fmt::Display for Figure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match f.precision() {
            Some(places) => write!(f, "{:.places$}", self.0),
            None => write!(f, "{}", self.0.normalize()),
        }
    }
}

impl std::ops::Add for Figure {
    type Output = Figure;
    fn add(self, other: Figure) -> Figure {
        Figure(self.0.saturating_add(other.0))
    }
}

impl std::ops::Sub for Figure {
    type Output = Figure;
    fn sub(self, other: Figure) -> Figure {
        Figure(self.0.saturating_sub(other.0))
    }
}

impl std::ops::Mul for Figure {
    type Output = Figure;
    fn mul(self, other: Figure) -> Figure {
        Figure(self.0.saturating_mul(other.0))
    }
}

impl std::iter::Sum for Figure {
    fn sum<I: Iterator<Item = Figure>>(figures: I) -> Figure {
        figures.fold(Figure::ZERO, std::ops::Add::add)
    }
}

/// A number whose digits are those of the decimal.
impl Serialize for Figure {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        crate::length::serialize_number(self.number(), serializer)
    }
}

impl<'de> Deserialize<'de> for Figure {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Figure, D::Error> {
        Figure::read_number(f64::deserialize(deserializer)?).map_err(de::Error::custom)
    }
}

#[cfg(feature = "schema")]
impl schemars::JsonSchema for Figure {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Figure".into()
    }

    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        schemars::json_schema!({ "type": "number" })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tenths_add_up_and_halves_go_up() {
        let tenth = Figure::read_number(0.1).unwrap();
        assert_eq!((0..10).map(|_| tenth).sum::<Figure>(), Figure::of(1));
        assert_eq!(Figure::scaled(125, 3).rounded(2).to_string(), "0.13");
        assert_eq!(Figure::of(1).over(Figure::of(3), 4).to_string(), "0.3333");
        assert_eq!(Figure::of(1).over(Figure::ZERO, 4), Figure::ZERO);
        assert_eq!(format!("{:.2}", Figure::scaled(25, 1)), "2.50");
        assert_eq!(Figure::nearest(2.361_26, 2), Figure::scaled(236, 2));
        assert_eq!(Figure::nearest(f64::NAN, 2), Figure::ZERO);
    }

    #[test]
    fn what_is_no_exact_figure_is_refused() {
        for wrong in [f64::NAN, f64::INFINITY, 1e300, 1e16, 1.0 / 3.0] {
            assert_eq!(Figure::read_number(wrong).unwrap_err().first().kind, Kind::FigureUnreadable);
        }
    }
}
