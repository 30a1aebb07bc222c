//! Reads what people write for a length: `7' 10-1/2"`, `94.5 in`, `94 1/2`, `2400 mm`, `2.4 m`.

use super::{Length, Unit};
use crate::error::{Error, Fault, Kind};
use crate::math::round_half_even;

/// A length as it was read.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[non_exhaustive]
pub struct Reading {
    /// The length, to the nanometre.
    pub length: Length,
    /// False where what was written is not a whole number of nanometres and was rounded, half to even.
    pub exact: bool,
}

const ACCEPTED: &str =
    "A length is a figure with or without a unit, such as 94-1/2, 94.5 in, 7' 10-1/2\", 2400 mm or 2.4 m.";

/// More digits than this are no tape reading, and fewer cannot overflow the arithmetic below.
const MAX_DIGITS: usize = 24;

impl Length {
    /// Reads a length; a bare figure takes `unit`.
    ///
    /// # Errors
    /// Text that is no length, two units in one figure, NaN or infinite, beyond [`Length::LIMIT`].
    ///
    /// # Examples
    /// ```
    /// use deck_core::{Length, Unit};
    /// let a = Length::read("7' 10-1/2\"", Unit::Inch)?.length;
    /// assert_eq!(a, Length::read("94 1/2", Unit::Inch)?.length);
    /// assert_eq!(a, Length::read("2400.3 mm", Unit::Inch)?.length);
    /// assert!(!Length::read("1/3 in", Unit::Inch)?.exact);
    /// # Ok::<(), deck_core::Error>(())
    /// ```
    pub fn read(text: &str, unit: Unit) -> Result<Reading, Error> {
        read(text, Some(unit)).map_err(Error::from)
    }

    /// Reads a bare number in `unit`. The number counts as the shortest decimal that names it, so `0.1` is a tenth.
    ///
    /// # Errors
    /// NaN, infinite, or beyond [`Length::LIMIT`].
    pub fn read_number(value: f64, unit: Unit) -> Result<Reading, Error> {
        if !value.is_finite() {
            return Err(not_finite(&value.to_string()).into());
        }
        // Beyond every limit in every unit; written out it would be a line of zeros.
        if value.abs() > 1e15 {
            return Err(too_large(&format!("{value:e}")).into());
        }
        read(&value.to_string(), Some(unit)).map_err(Error::from)
    }
}

/// Reads a length that names its unit.
impl std::str::FromStr for Length {
    type Err = Error;
    fn from_str(text: &str) -> Result<Length, Error> {
        Ok(read(text, None)?.length)
    }
}

fn not_finite(text: &str) -> Fault {
    Fault::new(Kind::LengthNotFinite, text, format!("{text} is no length."), ACCEPTED)
}

fn unreadable(text: &str) -> Fault {
    let mut shown: String = text.chars().take(60).collect();
    if shown.len() < text.len() {
        shown.push('…');
    }
    Fault::new(Kind::LengthUnreadable, shown.clone(), format!("\"{shown}\" cannot be read as a length."), ACCEPTED)
}

fn read(text: &str, default: Option<Unit>) -> Result<Reading, Fault> {
    let plain = plain(text);
    let (negative, body) = match plain.strip_prefix('-') {
        Some(rest) => (true, rest.trim_start()),
        None => (false, plain.strip_prefix('+').unwrap_or(&plain).trim_start()),
    };
    if ["nan", "inf", "infinity"].contains(&body.to_ascii_lowercase().as_str()) {
        return Err(not_finite(text.trim()));
    }
    let figures = Scanner { rest: body, text }.figures()?;
    let (numerator, denominator) = in_nanometres(&figures, default, text)?;
    let nanometres = round_half_even(if negative { -numerator } else { numerator }, denominator);
    let length = i64::try_from(nanometres).map_or(Length::MAX, Length);
    if length > Length::LIMIT || length < -Length::LIMIT {
        return Err(too_large(text));
    }
    Ok(Reading { length, exact: numerator % denominator == 0 })
}

fn too_large(text: &str) -> Fault {
    Fault::new(Kind::LengthTooLarge, text.trim(), format!("{} is too large.", text.trim()), "A length lies below 1 km.")
}

/// Signs and blanks as word processors and phones write them, as plain ones.
fn plain(text: &str) -> String {
    let mut plain = String::with_capacity(text.len());
    for c in text.trim().chars() {
        match c {
            '\u{2212}' | '\u{2013}' | '\u{2011}' | '\u{2010}' => plain.push('-'),
            '\u{2044}' => plain.push('/'),
            '\u{2032}' | '\u{2019}' | '\u{2018}' => plain.push('\''),
            '\u{2033}' | '\u{201d}' | '\u{201c}' => plain.push('"'),
            '\u{bd}' => plain.push_str(" 1/2"),
            '\u{bc}' => plain.push_str(" 1/4"),
            '\u{be}' => plain.push_str(" 3/4"),
            '\u{215b}' => plain.push_str(" 1/8"),
            '\u{215c}' => plain.push_str(" 3/8"),
            '\u{215d}' => plain.push_str(" 5/8"),
            '\u{215e}' => plain.push_str(" 7/8"),
            c if c.is_whitespace() => plain.push(' '),
            c => plain.push(c),
        }
    }
    plain.trim().replace("''", "\"")
}

/// A figure as written: a fraction in lowest trust, and the unit that follows it.
struct Figure {
    numerator: i128,
    denominator: i128,
    unit: Option<Unit>,
}

/// Adds the figures up, as a fraction in nanometres. Two figures are feet and inches, or they are a mistake.
fn in_nanometres(figures: &[Figure], default: Option<Unit>, text: &str) -> Result<(i128, i128), Fault> {
    let scaled = |figure: &Figure, unit: Unit| {
        // At most 10^24 · 10^9: far inside i128.
        (figure.numerator * i128::from(unit.nanometres()), figure.denominator)
    };
    match figures {
        [one] => match one.unit.or(default) {
            Some(unit) => Ok(scaled(one, unit)),
            None => Err(Fault::new(
                Kind::LengthUnknownUnit,
                text.trim(),
                format!("{} has no unit.", text.trim()),
                "Here a length names its unit: in, ft, mm, cm or m.",
            )),
        },
        [feet, inches] if feet.unit == Some(Unit::Foot) && matches!(inches.unit, None | Some(Unit::Inch)) => {
            let (feet, feet_by) = scaled(feet, Unit::Foot);
            let (inches, inches_by) = scaled(inches, Unit::Inch);
            let sum = feet.checked_mul(inches_by).zip(inches.checked_mul(feet_by)).and_then(|(a, b)| a.checked_add(b));
            sum.zip(feet_by.checked_mul(inches_by)).ok_or_else(|| too_large(text))
        }
        [first, second, ..] if first.unit.is_some() && second.unit.is_some() => Err(Fault::new(
            Kind::LengthTwoUnits,
            text.trim(),
            format!("{} has two units in one figure.", text.trim()),
            "Only feet and inches go together, such as 7' 10-1/2\".",
        )),
        _ => Err(unreadable(text)),
    }
}

/// Walks over the text from left to right.
struct Scanner<'a> {
    rest: &'a str,
    text: &'a str,
}

impl Scanner<'_> {
    fn figures(mut self) -> Result<Vec<Figure>, Fault> {
        let mut figures = Vec::new();
        while !self.rest.is_empty() {
            if figures.len() == 3 {
                return Err(unreadable(self.text));
            }
            figures.push(self.figure()?);
            self.skip_blanks();
            // A dash may stand between feet and inches, as in 7'-10".
            if let Some(after) = self.rest.strip_prefix('-') {
                self.rest = after.trim_start();
                if self.rest.is_empty() {
                    return Err(unreadable(self.text));
                }
            }
        }
        if figures.is_empty() { Err(unreadable(self.text)) } else { Ok(figures) }
    }

    /// `94`, `94.5`, `1/2`, `94 1/2` or `94-1/2`, then a unit or none.
    fn figure(&mut self) -> Result<Figure, Fault> {
        let (mut numerator, mut denominator, whole) = self.decimal()?;
        let before_fraction = self.rest;
        if let Some(below) = self.slash()? {
            if !whole {
                return Err(unreadable(self.text));
            }
            denominator = below;
        } else if whole {
            let after_dash = before_fraction.trim_start();
            self.rest = after_dash.strip_prefix('-').unwrap_or(after_dash).trim_start();
            match self.fraction()? {
                Some((above, below)) => {
                    // At most 10^24 · 10^6 + 10^24: far inside i128.
                    numerator = numerator * below + above;
                    denominator = below;
                }
                None => self.rest = before_fraction,
            }
        }
        Ok(Figure { numerator, denominator, unit: self.unit()? })
    }

    /// Digits with or without a point; the third value tells whether they are whole.
    fn decimal(&mut self) -> Result<(i128, i128, bool), Fault> {
        self.skip_blanks();
        let end = self.rest.find(|c: char| !c.is_ascii_digit() && c != '.').unwrap_or(self.rest.len());
        let (digits, rest) = self.rest.split_at(end);
        let (before, after) = digits.split_once('.').unwrap_or((digits, ""));
        let count = before.len() + after.len();
        if count == 0 || after.contains('.') {
            return Err(unreadable(self.text));
        }
        if count > MAX_DIGITS {
            return Err(too_large(self.text));
        }
        self.rest = rest;
        let mut numerator = 0;
        for digit in before.bytes().chain(after.bytes()) {
            numerator = numerator * 10 + i128::from(digit - b'0');
        }
        let denominator = after.bytes().fold(1, |ten, _| ten * 10);
        Ok((numerator, denominator, !digits.contains('.')))
    }

    /// The denominator after a slash, where there is a slash.
    fn slash(&mut self) -> Result<Option<i128>, Fault> {
        let Some(after) = self.rest.trim_start().strip_prefix('/') else { return Ok(None) };
        self.rest = after;
        let (below, _, whole) = self.decimal()?;
        if !whole || below == 0 || below > 1_000_000 {
            return Err(unreadable(self.text));
        }
        Ok(Some(below))
    }

    /// A fraction such as `1/2`, or nothing where the text goes on otherwise.
    fn fraction(&mut self) -> Result<Option<(i128, i128)>, Fault> {
        if !self.rest.starts_with(|c: char| c.is_ascii_digit()) {
            return Ok(None);
        }
        let (above, _, whole) = self.decimal()?;
        match self.slash()? {
            Some(below) if whole => Ok(Some((above, below))),
            _ => Ok(None),
        }
    }

    fn unit(&mut self) -> Result<Option<Unit>, Fault> {
        self.skip_blanks();
        let mark = self.rest.starts_with(['\'', '"']);
        let end =
            if mark { 1 } else { self.rest.find(|c: char| !c.is_alphabetic() && c != '.').unwrap_or(self.rest.len()) };
        let (word, rest) = self.rest.split_at(end);
        if word.is_empty() {
            // Whatever is left must be the start of another figure.
            return if self.rest.is_empty() || self.rest.starts_with(|c: char| c.is_ascii_digit() || "-.".contains(c)) {
                Ok(None)
            } else {
                Err(unreadable(self.text))
            };
        }
        match Unit::from_word(word) {
            Some(unit) => {
                self.rest = rest;
                Ok(Some(unit))
            }
            None => Err(Fault::new(
                Kind::LengthUnknownUnit,
                self.text.trim(),
                format!("\"{word}\" is no unit of length."),
                "The units are in (\"), ft ('), mm, cm and m.",
            )),
        }
    }

    fn skip_blanks(&mut self) {
        self.rest = self.rest.trim_start();
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn nanometres(text: &str) -> i64 {
        Length::read(text, Unit::Inch).unwrap().length.nanometres()
    }

    #[test]
    fn one_length_written_in_many_ways() {
        for text in [
            "94.5",
            "94 1/2",
            "94-1/2",
            "94 1/2\"",
            "94.5in",
            "94-1/2 in.",
            "7' 10-1/2\"",
            "7'10 1/2",
            "7 ft 10.5 in",
            "7'-10-1/2\"",
            "94½",
            "94 ½ inches",
            "7′ 10½″",
            "2400.3 mm",
            "240.03 cm",
            "2.4003 m",
            " 189/2 ",
            "+94.5",
            "7.875 ft",
            "94\u{a0}1/2",
            "7 feet 10 1/2 inches",
            "94 – 1/2",
        ] {
            assert_eq!(nanometres(text), 2_400_300_000, "{text}");
        }
        assert_eq!(nanometres("-1/64"), -396_875);
        assert_eq!(nanometres("0"), 0);
    }

    #[test]
    fn what_is_not_whole_is_rounded_half_to_even_and_said() {
        let third = Length::read("1/3 in", Unit::Inch).unwrap();
        assert_eq!((third.length.nanometres(), third.exact), (8_466_667, false));
        assert_eq!(Length::read("0.0000005 mm", Unit::Inch).unwrap().length.nanometres(), 0);
        assert_eq!(Length::read("0.0000015 mm", Unit::Inch).unwrap().length.nanometres(), 2);
        assert!(Length::read_number(0.1, Unit::Inch).unwrap().exact);
    }

    #[test]
    fn rubbish_is_told_by_kind() {
        let kind = |text: &str| Length::read(text, Unit::Inch).unwrap_err().first().kind;
        for text in ["", "abc in", "1//2", "1/0", "1.2.3", "3 1/2 1/4", "'", "1/2.5", "5 -", "1e5", "2,4", "7'7'7'7'"] {
            assert!(Length::read(text, Unit::Inch).is_err(), "{text}");
        }
        assert_eq!(kind("7' 10 mm"), Kind::LengthTwoUnits);
        assert_eq!(kind("10 in 3 mm"), Kind::LengthTwoUnits);
        assert_eq!(kind("4 furlongs"), Kind::LengthUnknownUnit);
        assert_eq!(kind("NaN"), Kind::LengthNotFinite);
        assert_eq!(kind("-inf"), Kind::LengthNotFinite);
        assert_eq!(kind("2 m 99999999999999999999999999"), Kind::LengthTooLarge);
        assert_eq!(kind("1001 m"), Kind::LengthTooLarge);
        assert_eq!(kind("hello"), Kind::LengthUnreadable);
        assert_eq!("12".parse::<Length>().unwrap_err().first().kind, Kind::LengthUnknownUnit);
        assert_eq!(Length::read_number(f64::NAN, Unit::Inch).unwrap_err().first().kind, Kind::LengthNotFinite);
        assert_eq!(Length::read_number(1e300, Unit::Inch).unwrap_err().first().kind, Kind::LengthTooLarge);
    }
}
