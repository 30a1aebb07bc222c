//! The one place where reckoned figures are rounded on their way into the plan.

use crate::length::{Length, Unit};

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
        assert_eq!(given(2.5 * 20.885_434_233), 52.2136);
        assert_eq!(inches(1.0).nanometres(), 25_400_000);
        assert_eq!(inches(0.001).nanometres(), 30_000);
        assert_eq!(inches(-0.001).nanometres(), -30_000);
    }
}
