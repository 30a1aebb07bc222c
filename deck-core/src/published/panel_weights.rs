//! Weight of plywood by thickness.
//!
//! APA, Panel Design Specification, form D510F (2020), table of approximate weights, plywood column, in pounds to the
//! square foot. Read in a public transcription of the table. Dry sheets; soaked ones weigh more (not published there).

use crate::length::{Area, Length, Unit};

/// Numerator and denominator of the thickness in inches, and hundredths of a pound to the square foot.
const PLYWOOD: [(i64, i64, u32); 11] = [
    (3, 8, 110),
    (7, 16, 130),
    (15, 32, 140),
    (1, 2, 150),
    (19, 32, 180),
    (5, 8, 190),
    (23, 32, 220),
    (3, 4, 230),
    (7, 8, 260),
    (1, 1, 300),
    (9, 8, 340),
];

/// Weight of a plywood in pounds to the square foot.
///
/// # Method
/// The table's row where it has one; between two rows on the straight line from one to the other, and beyond the first
/// and the last in proportion to it (both derived here).
///
/// # Examples
/// ```
/// use deck_core::published::plywood_psf;
/// assert_eq!(plywood_psf("3/4 in".parse()?), 2.3);
/// # Ok::<(), deck_core::Error>(())
/// ```
pub fn plywood_psf(thickness: Length) -> f64 {
    let rows = PLYWOOD.map(|(numerator, denominator, hundredths)| {
        (Length::inch_fraction(numerator, denominator), f64::from(hundredths) / 100.0)
    });
    let below = rows.iter().rev().find(|(row, _)| *row <= thickness);
    let above = rows.iter().find(|(row, _)| *row >= thickness);
    let in_proportion = |(row, psf): &(Length, f64)| psf * thickness.as_inches() / row.as_inches();
    match (below, above) {
        (Some((thin, light)), Some((thick, heavy))) if thin < thick => {
            light + (heavy - light) * (thickness - *thin).as_inches() / (*thick - *thin).as_inches()
        }
        (Some((_, psf)), Some(_)) => *psf,
        (Some(row), None) | (None, Some(row)) => in_proportion(row),
        // unreachable: the table has rows, and each thickness has one below or above it.
        (None, None) => 0.0,
    }
}

/// Weight of an area of plywood in pounds, rounded to a tenth.
pub fn plywood_pounds(area: Area, thickness: Length) -> f64 {
    (area.number(Unit::Foot) * plywood_psf(thickness) * 10.0).round() / 10.0
}
