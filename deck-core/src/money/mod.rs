//! Money, and the hours and shares that are turned into money: exact decimals, never binary floating point.

mod figure;
mod three_point;

pub use figure::Figure;
pub use three_point::ThreePoint;

use crate::error::{Error, Fault, Kind};
use rust_decimal::Decimal;
use serde::{Deserialize, Deserializer, Serialize, Serializer, de};
use std::fmt;

/// An amount in the shop's currency, exact.
///
/// # Examples
/// ```
/// use deck_core::Money;
/// let sheet: Money = "62.10".parse()?;
/// assert_eq!((sheet * 3).to_string(), "186.30");
/// # Ok::<(), deck_core::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub struct Money(Decimal);

/// Beyond this no price of a shop lies; sums of millions of such amounts stay exact.
const LIMIT: i64 = 1_000_000_000;
/// The finest price that is read: a hundredth of a cent.
const PLACES: u32 = 4;

impl Money {
    /// Nothing.
    pub const ZERO: Money = Money(Decimal::ZERO);

    /// The amount in ten-thousandths: the whole number that the searches count with.
    pub fn ten_thousandths(self) -> i128 {
        let mut scaled = self.0;
        scaled.rescale(PLACES);
        scaled.mantissa()
    }

    /// The amount of that many ten-thousandths; what is beyond 10²⁴ is cut off.
    pub fn from_ten_thousandths(count: i128) -> Money {
        const MOST: i128 = 1_000_000_000_000_000_000_000_000;
        Money(Decimal::from_i128_with_scale(count.clamp(-MOST, MOST), PLACES).normalize())
    }

    /// The nearest number.
    pub fn number(self) -> f64 {
        // unreachable: the text of a decimal is one that a number is read from.
        self.0.normalize().to_string().parse().unwrap_or_default()
    }

    /// This amount so many times, to the cent, half a cent away from zero.
    ///
    /// # Examples
    /// ```
    /// use deck_core::{Money, money::Figure};
    /// let rate: Money = "85".parse()?;
    /// assert_eq!(rate.times(Figure::scaled(2375, 3)).to_string(), "201.88"); // 201.875
    /// # Ok::<(), deck_core::Error>(())
    /// ```
    #[must_use]
    pub fn times(self, count: Figure) -> Money {
        Money(self.0.saturating_mul(count.decimal())).to_the_cent()
    }

    /// That many hundredths of this amount, to the cent, half a cent away from zero.
    #[must_use]
    pub fn percent(self, percent: Figure) -> Money {
        let share = self.0.saturating_mul(percent.decimal());
        Money(share.checked_div(Decimal::ONE_HUNDRED).unwrap_or_default()).to_the_cent()
    }

    /// Rounded to the cent, half a cent away from zero.
    #[must_use]
    pub fn to_the_cent(self) -> Money {
        Money(self.0.round_dp_with_strategy(2, rust_decimal::RoundingStrategy::MidpointAwayFromZero))
    }

    /// Reads a bare number as the shortest decimal that names it.
    ///
    /// # Errors
    /// NaN, infinite, too large, or finer than a hundredth of a cent.
    pub fn read_number(value: f64) -> Result<Money, Error> {
        value.to_string().parse()
    }
}

impl std::str::FromStr for Money {
    type Err = Error;
    fn from_str(text: &str) -> Result<Money, Error> {
        let amount: Option<Decimal> = text.trim().parse().ok();
        match amount.map(|amount| amount.normalize()) {
            Some(amount) if amount.scale() <= PLACES && amount.abs() <= Decimal::from(LIMIT) => Ok(Money(amount)),
            _ => Err(Fault::new(
                Kind::MoneyUnreadable,
                text,
                format!("\"{}\" cannot be read as an amount of money.", text.trim()),
                "An amount is a decimal figure below a billion with at most four places, such as 62.50.",
            )
            .into()),
        }
    }
}

/// Two places, more where the amount has more.
impl fmt::Display for Money {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let mut amount = self.0.normalize();
        if amount.scale() < 2 {
            amount.rescale(2);
        }
        write!(f, "{amount}")
    }
}

impl std::ops::Add for Money {
    type Output = Money;
    fn add(self, other: Money) -> Money {
        Money(self.0.saturating_add(other.0))
    }
}

impl std::ops::Mul<i64> for Money {
    type Output = Money;
    fn mul(self, times: i64) -> Money {
        Money(self.0.saturating_mul(Decimal::from(times)))
    }
}

impl std::iter::Sum for Money {
    fn sum<I: Iterator<Item = Money>>(amounts: I) -> Money {
        amounts.fold(Money::ZERO, std::ops::Add::add)
    }
}

/// A number whose digits are those of the decimal; no arithmetic is done in floating point.
impl Serialize for Money {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        crate::length::serialize_number(self.number(), serializer)
    }
}

impl<'de> Deserialize<'de> for Money {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Money, D::Error> {
        #[derive(Deserialize)]
        #[serde(untagged)]
        enum Given {
            Number(f64),
            Text(String),
        }
        match Given::deserialize(deserializer)? {
            Given::Number(number) => Money::read_number(number),
            Given::Text(text) => text.parse(),
        }
        .map_err(de::Error::custom)
    }
}

#[cfg(feature = "schema")]
impl schemars::JsonSchema for Money {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Money".into()
    }

    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        schemars::json_schema!({
            "description": "An amount of money: a number, or a text such as \"62.50\". At most four decimal places.",
            "type": ["number", "string"]
        })
    }
}
