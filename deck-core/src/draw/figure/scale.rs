//! From the size of a thing to its size on paper.

use super::Micrometres;
use crate::length::{Length, Unit};
use crate::math::round_half_even;
use std::fmt;

/// Ratios that a folding rule in inches reads well: 1:12 is an inch to the foot, 1:24 half of one.
const INCH_RATIOS: [i64; 14] = [1, 2, 4, 6, 8, 10, 12, 16, 20, 24, 32, 40, 48, 64];
/// Ratios of metric drawings (ISO 5455, from memory, with 1:4, 1:8, 1:15, 1:25, 1:30 and 1:40 between).
const METRIC_RATIOS: [i64; 13] = [1, 2, 4, 5, 8, 10, 15, 20, 25, 30, 40, 50, 75];

/// How many times smaller than the thing the drawing is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Scale {
    ratio: i64,
}

impl Scale {
    /// One to `ratio`; a ratio below one counts as one.
    pub const fn one_to(ratio: i64) -> Scale {
        Scale { ratio: if ratio < 1 { 1 } else { ratio } }
    }

    /// The largest of the usual scales at which a thing of that width and height fits the room.
    ///
    /// Beyond the usual ones the ratio is doubled until it fits, at most to 1 to 2^40.
    pub fn fitting(size: (Length, Length), room: (Micrometres, Micrometres), unit: Unit) -> Scale {
        let usual: &[i64] = if unit.is_imperial() { &INCH_RATIOS } else { &METRIC_RATIOS };
        let largest = usual.last().copied().unwrap_or(1);
        let doubled = (1..40).map(|power| largest.saturating_mul(1 << power));
        let fits = |scale: &Scale| scale.on_paper(size.0) <= room.0 && scale.on_paper(size.1) <= room.1;
        usual.iter().copied().chain(doubled).map(Scale::one_to).find(fits).unwrap_or(Scale::one_to(1 << 40))
    }

    /// How many times smaller the drawing is.
    pub const fn ratio(self) -> i64 {
        self.ratio
    }

    /// A length on paper, rounded half to even.
    pub fn on_paper(self, length: Length) -> Micrometres {
        const NANOMETRES: i128 = 1000;
        let rounded = round_half_even(i128::from(length.nanometres()), i128::from(self.ratio) * NANOMETRES);
        // A quotient of an i64 fits one.
        i64::try_from(rounded).unwrap_or(i64::MAX)
    }
}

impl fmt::Display for Scale {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "1:{}", self.ratio)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_inch_to_the_foot() {
        assert_eq!(Scale::one_to(12).on_paper(Length::inches(12)), 25_400);
        assert_eq!(Scale::one_to(16).on_paper(Length::inches(96)), 152_400);
    }

    #[test]
    fn the_largest_that_fits_is_taken() {
        let deck = (Length::inches(102), Length::inches(288));
        let room = (190_000, 230_000);
        assert_eq!(Scale::fitting(deck, room, Unit::Inch), Scale::one_to(32));
        assert_eq!(Scale::fitting(deck, room, Unit::Millimetre), Scale::one_to(40));
        assert_eq!(Scale::fitting((Length::inches(1), Length::inches(1)), room, Unit::Inch), Scale::one_to(1));
    }

    #[test]
    fn beyond_the_list_it_is_doubled() {
        let far = (Length::LIMIT, Length::LIMIT);
        let scale = Scale::fitting(far, (100_000, 100_000), Unit::Inch);
        assert_eq!(scale.ratio(), 64 * 256);
    }
}
