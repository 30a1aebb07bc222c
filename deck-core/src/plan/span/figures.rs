//! The one place where reckoned figures are rounded on their way into the plan.

use crate::length::{Length, Unit};
use crate::published::{NEWTONS_PER_POUND, PASCALS_PER_PSF};

/// Reckoned lengths are whole hundredths of a millimetre.
const GRAIN: i64 = 10_000;

/// Four significant digits, halves as the shortest decimals have them: nobody knows a board's strength better.
pub(super) fn significant(value: f64) -> f64 {
    format!("{value:.3e}").parse().unwrap_or(value)
}

/// Six significant digits: a load that was given in other units comes back as it was given.
pub(super) fn given(value: f64) -> f64 {
    format!("{value:.5e}").parse().unwrap_or(value)
}

/// A load spread evenly, in the job's system of units.
pub(super) fn pressure(unit: Unit, psf: f64) -> String {
    if unit.is_imperial() {
        format!("{} psf", significant(psf))
    } else {
        format!("{} kPa", significant(psf * PASCALS_PER_PSF / 1000.0))
    }
}

/// A force, in the job's system of units.
pub(super) fn force(unit: Unit, pounds: f64) -> String {
    if unit.is_imperial() {
        format!("{} lb", significant(pounds))
    } else {
        format!("{} N", significant(pounds * NEWTONS_PER_POUND))
    }
}

/// A length of so many inches.
pub(super) fn inches(value: f64) -> Length {
    let exact = Length::nearest(value * Unit::Inch.nanometres() as f64).nanometres();
    Length::from_nanometres((exact + GRAIN / 2).div_euclid(GRAIN) * GRAIN)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn four_digits_and_a_hundredth_of_a_millimetre() {
        assert_eq!([54.3249, 0.000_123_456, 123_456.0, 0.0].map(significant), [54.32, 0.000_123_5, 123_500.0, 0.0]);
        assert_eq!(pressure(Unit::Millimetre, 60.0), "2.873 kPa");
        assert_eq!(pressure(Unit::Inch, 54.3249), "54.32 psf");
        assert_eq!(force(Unit::Millimetre, 100.0), "444.8 N");
        assert_eq!(given(2.5 * 20.885_434_233), 52.2136);
        assert_eq!(inches(1.0).nanometres(), 25_400_000);
        assert_eq!(inches(0.001).nanometres(), 30_000);
        assert_eq!(inches(-0.001).nanometres(), -30_000);
    }
}
