//! Diagonals of a deck that is out of square, and how errors add up from board to board.
//!
//! Both are derived, with no publication: the law of the parallelogram d₁² + d₂² = 2 (L² + W²) is Euclid's, its
//! difference d₁² − d₂² = 4 s L follows from d² = (L ± s)² + W², and errors add up as independent ones do.

use super::inches;
use deck_core::geometry::Point;
use deck_core::plan::SquareCheck;
use deck_core::seams::stack;
use deck_core::{Length, Unit};
use deck_tests::boat::Boat;

/// Both diagonals of a rectangle whose starboard side is a skew ahead.
fn diagonals(length: &str, beam: &str, skew: Length) -> (Length, Length) {
    let (length, beam) = (inches(length), inches(beam));
    let at = |x: Length, y: Length| Point::new(x, y);
    let (port, starboard) =
        ([at(Length::ZERO, Length::ZERO), at(length, Length::ZERO)], [at(skew, beam), at(length + skew, beam)]);
    (port[0].distance(starboard[1]), port[1].distance(starboard[0]))
}

#[test]
fn diagonals_differ_by_two_s_l_over_d() {
    let check = SquareCheck::new(Length::ZERO, inches("288"), inches("102"));
    // 288 × 102: 1.885 s, and a difference of 1/8 is a skew of 0.066.
    let factor = 2.0 * 288.0 / check.diagonal.as_inches();
    assert!((factor - 1.885).abs() < 5e-4, "{factor}");
    assert_eq!(check.difference, inches("1/8"));
    assert!((check.skew.as_inches() - 0.066).abs() < 5e-4, "{}", check.skew.as_inches());
    for (length, beam) in [("240", "96"), ("288", "102"), ("336", "120"), ("64-3/8", "96")] {
        let check = SquareCheck::new(Length::ZERO, inches(length), inches(beam));
        let (long, short) = diagonals(length, beam, check.skew);
        // To first order; the third is s³ of a twentieth of an inch over a deck: below a micrometre.
        assert!(((long - short) - check.difference).abs() < Length::from_nanometres(1000), "{length} x {beam}");
        let square = diagonals(length, beam, Length::ZERO);
        assert_eq!((square.0, square.1), (check.diagonal, check.diagonal));
    }
}

#[test]
fn the_squares_of_the_diagonals_keep_their_sum() {
    let square = |length: Length| i128::from(length.nanometres()).pow(2);
    for skew in ["0", "1/64", "1/8", "1", "-3-1/2", "12"] {
        for (length, beam) in [("288", "102"), ("240", "96"), ("100", "100")] {
            let (one, other) = diagonals(length, beam, inches(skew));
            // The sides of a skewed deck: its length, and its slanted ends.
            let ends = inches(beam).hypotenuse(inches(skew));
            let off = square(one) + square(other) - 2 * (square(inches(length)) + square(ends));
            // Three square roots, each rounded to half a nanometre of a length below 8 m.
            assert!(off.abs() < 4 * 8_000_000_000, "{length} x {beam} skewed by {skew}: {off}");
        }
    }
}

#[test]
fn sawing_and_setting_errors_stack() {
    for boards in 1..=8_i32 {
        let stack = stack(usize::try_from(boards).unwrap(), inches("1/16"), inches("1/32"));
        assert_eq!(stack.worst, inches("3/32") * i64::from(boards));
        let root = f64::from(boards).sqrt() * 0.0699;
        assert!((stack.root_sum_square.as_inches() - root).abs() < 2e-4, "{boards}");
    }
    let six = stack(6, inches("1/16"), inches("1/32"));
    assert_eq!(six.worst.decimal_places(Unit::Inch, 4), "0.5625");
    assert_eq!(six.root_sum_square.decimal_places(Unit::Inch, 3), "0.171");
}

/// The plan's sheet carries the same figures.
#[test]
fn a_plan_tells_both() {
    let checks = Boat::plain(288, 102, 24).plan(Unit::Inch).unwrap().deck.checks;
    assert_eq!(checks.stack.unwrap(), stack(6, inches("1/16"), inches("1/32")));
    assert_eq!(checks.square.unwrap(), SquareCheck::new(Length::ZERO, inches("288"), inches("102")));
    assert_eq!((checks.length, checks.beam), (inches("288"), inches("102")));
}
