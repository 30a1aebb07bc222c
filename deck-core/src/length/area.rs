//! Areas as whole square nanometres: what sheets cost where no prices are given.

use super::Unit;
use crate::error::{Error, Fault, Kind};
use crate::length::Length;
use crate::math::round_half_even;
use std::fmt;

/// An area, exact to the square nanometre.
///
/// # Examples
/// ```
/// use deck_core::{Area, Length, Unit};
/// let sheet = Area::of(Length::inches(96), Length::inches(48));
/// assert_eq!(sheet.decimal(Unit::Inch), "4608");
/// assert_eq!(sheet.decimal(Unit::Foot), "32");
/// assert_eq!(sheet.to_string(), "4608 in²");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default, Hash)]
pub struct Area(i128);

impl Area {
    /// No area.
    pub const ZERO: Area = Area(0);

    /// The area of a rectangle.
    #[must_use]
    pub fn of(length: Length, width: Length) -> Area {
        // Two i64 multiplied always fit an i128.
        Area(i128::from(length.nanometres()) * i128::from(width.nanometres()))
    }

    /// An area of that many square nanometres.
    #[must_use]
    pub const fn from_square_nanometres(count: i128) -> Area {
        Area(count)
    }

    /// The count of square nanometres.
    #[must_use]
    pub const fn square_nanometres(self) -> i128 {
        self.0
    }

    /// The figure in a squared unit as a decimal, with twice the places of a length and no trailing zeros.
    #[must_use]
    pub fn decimal(self, unit: Unit) -> String {
        let places = 2 * unit.places();
        let square = square(unit);
        let (whole, rest) = (self.0.unsigned_abs() / square, self.0.unsigned_abs() % square);
        let scale = 10_u128.pow(places);
        // `rest` is below 10^18 (a square metre), and the scale at most 10^20 (square feet, rest below 10^17).
        let part = round_half_even((rest * scale).cast_signed(), square.cast_signed()).unsigned_abs();
        let (whole, part) = (whole + part / scale, part % scale);
        let sign = if self.0 < 0 { "-" } else { "" };
        if part == 0 {
            return format!("{sign}{whole}");
        }
        let digits = format!("{part:0width$}", width = places as usize);
        format!("{sign}{whole}.{}", digits.trim_end_matches('0'))
    }

    /// The figure in a squared unit as the number that a JSON reader sees.
    #[must_use]
    pub fn number(self, unit: Unit) -> f64 {
        // A decimal of ours always parses; zero stands in for what cannot happen.
        self.decimal(unit).parse().unwrap_or(0.0)
    }

    /// True where the decimal in that unit is exactly this area.
    fn is_exact_in(self, unit: Unit) -> bool {
        let rest = self.0.unsigned_abs() % square(unit);
        (rest * 10_u128.pow(2 * unit.places())).is_multiple_of(square(unit))
    }

    /// Reads a bare number in `unit` squared, to the nearest square nanometre.
    ///
    /// The binary value of the number counts, not the shortest decimal that names it: an area that was written as a
    /// number and read back is then written as the same number again.
    ///
    /// # Errors
    /// NaN, infinite, or beyond any sheets that a shop could saw.
    pub fn read_number(value: f64, unit: Unit) -> Result<Area, Error> {
        const LARGEST: f64 = 1e18;
        if value.is_nan() || value.abs() > LARGEST {
            return Err(unreadable(&value.to_string()).into());
        }
        let (mantissa, halvings) = binary(value);
        // At most 2^53 · 10^18: inside i128. What is halved more often than 126 times is below a square nanometre.
        let scaled = mantissa * square(unit).cast_signed();
        let area = match halvings {
            ..=0 => scaled.checked_mul(1 << halvings.unsigned_abs().min(126)),
            1..=126 => Some(round_half_even(scaled, 1 << halvings)),
            _ => Some(0),
        };
        area.filter(|area| area.unsigned_abs() <= MOST).map(Area).ok_or_else(|| unreadable(&value.to_string()).into())
    }
}

/// A finite number as mantissa / 2^halvings (IEEE 754, binary64).
fn binary(value: f64) -> (i128, i32) {
    const FRACTION: u32 = 52;
    const BIAS: i32 = 1075;
    let bits = value.to_bits();
    let exponent = i32::try_from((bits >> FRACTION) & 0x7ff).unwrap_or(0);
    let fraction = i128::from(bits & ((1 << FRACTION) - 1));
    let mantissa = if exponent == 0 { fraction } else { fraction | (1 << FRACTION) };
    (if value.is_sign_negative() { -mantissa } else { mantissa }, BIAS - exponent.max(1))
}

fn square(unit: Unit) -> u128 {
    let side = u128::from(unit.nanometres().unsigned_abs());
    side * side
}

/// A million sheets of a square kilometre; what is beyond has not been sawn from sheets.
const MOST: u128 = 1_000_000_000_000_000_000_000_000_000_000;

fn unreadable(text: &str) -> Fault {
    let message = format!("\"{text}\" cannot be read as an area.");
    Fault::new(Kind::LengthUnreadable, text, message, "An area is a decimal figure, such as 4608.")
}

fn read_decimal(text: &str, unit: Unit) -> Result<Area, Error> {
    let unreadable = || unreadable(text);
    let (negative, body) = text.strip_prefix('-').map_or((false, text), |body| (true, body));
    let (whole, part) = body.split_once('.').unwrap_or((body, "0"));
    let digits = |text: &str| !text.is_empty() && text.bytes().all(|byte| byte.is_ascii_digit());
    // No area has more places than twice those of a length; further ones are below a square nanometre.
    let part = part.get(..part.len().min(20)).unwrap_or(part);
    if !digits(whole) || !digits(part) {
        return Err(unreadable().into());
    }
    let whole: u128 = whole.parse().map_err(|_| unreadable())?;
    let square = square(unit);
    if whole > MOST / square {
        return Err(unreadable().into());
    }
    let scale = 10_u128.pow(u32::try_from(part.len()).unwrap_or(20));
    let part: u128 = part.parse().map_err(|_| unreadable())?;
    // At most 10^20 · 10^18: inside i128.
    let rest = round_half_even((part * square).cast_signed(), scale.cast_signed());
    let area = (whole * square).cast_signed() + rest;
    Ok(Area(if negative { -area } else { area }))
}

/// Reads what [`Area`]'s `Display` writes: a decimal with `in²` or `mm²`.
impl std::str::FromStr for Area {
    type Err = Error;
    fn from_str(text: &str) -> Result<Area, Error> {
        let text = text.trim();
        match (text.strip_suffix("in²"), text.strip_suffix("mm²")) {
            (Some(figure), _) => read_decimal(figure.trim(), Unit::Inch),
            (_, Some(figure)) => read_decimal(figure.trim(), Unit::Millimetre),
            _ => read_decimal(text, Unit::Inch).and(Err(Fault::new(
                Kind::LengthUnknownUnit,
                text,
                format!("\"{text}\" names no unit of area."),
                "The units are in² and mm².",
            )
            .into())),
        }
    }
}

/// An area on its own names its unit: square inches where those are exact, square millimetres otherwise.
impl fmt::Display for Area {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let unit = if self.is_exact_in(Unit::Inch) { Unit::Inch } else { Unit::Millimetre };
        write!(f, "{} {}²", self.decimal(unit), unit.symbol())
    }
}

impl std::ops::Add for Area {
    type Output = Area;
    fn add(self, other: Area) -> Area {
        Area(self.0.saturating_add(other.0))
    }
}

impl std::iter::Sum for Area {
    fn sum<I: Iterator<Item = Area>>(areas: I) -> Area {
        areas.fold(Area::ZERO, std::ops::Add::add)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn decimals_in_every_unit() {
        let area = Area::of(Length::inches(1), Length::inches(1));
        assert_eq!(area.decimal(Unit::Millimetre), "645.16");
        assert_eq!(area.decimal(Unit::Metre), "0.00064516");
        let sliver = Area::of(Length::inch_fraction(1, 64), Length::inch_fraction(1, 64));
        assert_eq!(sliver.decimal(Unit::Inch), "0.000244140625");
        assert_eq!(Area::from_square_nanometres(-1).decimal(Unit::Millimetre), "-0.000000000001");
    }

    #[test]
    fn what_is_printed_is_read_back() {
        for count in [0, 1, 7, -12, 645_160_000_000_000, 2_972_897_280_000_000_123] {
            let area = Area::from_square_nanometres(count);
            assert_eq!(area.to_string().parse::<Area>().unwrap(), area, "{area}");
        }
        assert_eq!(Area::read_number(4608.0, Unit::Inch).unwrap().to_string(), "4608 in²");
        assert_eq!(Area::read_number(-0.5, Unit::Millimetre).unwrap().square_nanometres(), -500_000_000_000);
        assert_eq!(Area::read_number(1e-300, Unit::Millimetre).unwrap(), Area::ZERO);
        for wrong in [f64::NAN, f64::INFINITY, 1e30] {
            assert!(Area::read_number(wrong, Unit::Inch).is_err());
        }
        assert!("4608".parse::<Area>().is_err());
    }
}
