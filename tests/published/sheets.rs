//! Plywood as it is sold: tolerances of Voluntary Product Standard PS 1-19, weights of APA form D510F (2020).

use super::inches;
use deck_core::cautions::stock;
use deck_core::geometry::Point;
use deck_core::published::{plywood_pounds, plywood_psf};
use deck_core::stock::Sheet;
use deck_core::{Area, Length, Notation, Unit};

/// PS 1-19, as read on the panel association's European pages: size +0, −1/16 in.
const SIZE_MINUS: &str = "1/16";
/// The same: squareness within 1/64 in for each foot of the longest edge.
const SQUARENESS_PER_FOOT: &str = "1/64";

/// APA form D510F (2020), Panel Design Specification, approximate weights of plywood: thickness, pounds to the square
/// foot.
const WEIGHTS: [(&str, f64); 11] = [
    ("3/8", 1.1),
    ("7/16", 1.3),
    ("15/32", 1.4),
    ("1/2", 1.5),
    ("19/32", 1.8),
    ("5/8", 1.9),
    ("23/32", 2.2),
    ("3/4", 2.3),
    ("7/8", 2.6),
    ("1", 3.0),
    ("1-1/8", 3.4),
];

fn is_off_size(length: Length, width: Length) -> bool {
    let sheet = Sheet::new("3/4 ply", inches("96"), inches("48")).measured(length, width);
    let cautions = stock(&[sheet], None, false, &Notation::new(Unit::Inch));
    cautions.iter().any(|caution| caution.id == "sheet-size")
}

#[test]
fn measured_sheets_outside_the_tolerance_are_told() {
    let (length, width, least) = (inches("96"), inches("48"), inches(SIZE_MINUS));
    let tick = Length::from_nanometres(1);
    for inside in [(length, width), (length - least, width), (length, width - least), (length - least, width - least)] {
        assert!(!is_off_size(inside.0, inside.1), "{inside:?}");
    }
    for outside in [
        (length + tick, width),
        (length, width + tick),
        (length - least - tick, width),
        (length, width - least - tick),
        (length + inches("1/4"), width - inches("1/4")),
    ] {
        assert!(is_off_size(outside.0, outside.1), "{outside:?}");
    }
}

/// A 4 × 8 whose far short edge is set over by 1/64 in to each foot of the long ones: its diagonals differ by about 1/8.
#[test]
fn squareness_of_a_sheet_shows_on_its_diagonals() {
    let over = inches(SQUARENESS_PER_FOOT) * 8;
    assert_eq!(over, inches("1/8"));
    let (length, width) = (inches("96"), inches("48"));
    let one = Point::default().distance(Point::new(length, width + over));
    let other = Point::new(length, over).distance(Point::new(Length::ZERO, width));
    assert!((one - other - inches("1/8")).abs() < inches("1/64"), "{}", (one - other).as_inches());
}

#[test]
fn weights_of_the_table() {
    for (thickness, psf) in WEIGHTS {
        assert!((plywood_psf(inches(thickness)) - psf).abs() < 1e-12, "{thickness}");
        let sheet = Area::of(inches("96"), inches("48"));
        assert!((plywood_pounds(sheet, inches(thickness)) - psf * 32.0).abs() < 0.05 + 1e-9, "{thickness}");
    }
    // Between two rows the figure lies between theirs, and thicker is never lighter.
    let steps: Vec<f64> = (24..=72).map(|count| plywood_psf(Length::inch_fraction(count, 64))).collect();
    assert!(steps.windows(2).all(|pair| pair[0] <= pair[1] + 1e-9), "{steps:?}");
}
