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
/// The table's row where it has one; between and beyond its rows in proportion to the nearest thickness (derived here).
///
/// # Examples
/// ```
/// use deck_core::published::plywood_psf;
/// assert_eq!(plywood_psf("3/4 in".parse()?), 2.3);
/// # Ok::<(), deck_core::Error>(())
/// ```
pub fn plywood_psf(thickness: Length) -> f64 {
    let rows =
        PLYWOOD.map(|(numerator, denominator, hundredths)| (Length::inch_fraction(numerator, denominator), hundredths));
    let nearest = rows.into_iter().min_by_key(|(row, _)| (*row - thickness).abs());
    let Some((row, hundredths)) = nearest else { return 0.0 };
    let psf = f64::from(hundredths) / 100.0;
    if row == thickness { psf } else { psf * thickness.as_inches() / row.as_inches() }
}

/// Weight of an area of plywood in pounds, rounded to a tenth.
pub fn plywood_pounds(area: Area, thickness: Length) -> f64 {
    (area.number(Unit::Foot) * plywood_psf(thickness) * 10.0).round() / 10.0
}
