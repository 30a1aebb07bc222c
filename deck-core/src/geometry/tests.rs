//! Cases small enough to verify by hand.

use super::*;
use crate::length::Length;

fn inches(count: i64) -> Length {
    Length::inches(count)
}

fn point(x: i64, y: i64) -> Point {
    Point::new(inches(x), inches(y))
}

fn lines(corners: &[(i64, i64)]) -> Path<u8> {
    Path::new(corners.iter().map(|&(x, y)| Side { from: point(x, y), arc: None, edge: 0 }).collect())
}

/// Square inches.
fn area<T: Copy>(path: &Path<T>) -> f64 {
    path.area() as f64 / 25.4e6 / 25.4e6
}

#[test]
fn a_strip_of_a_notched_deck_falls_into_two() {
    let deck = lines(&[(0, 0), (100, 0), (100, 30), (80, 30), (80, 70), (100, 70), (100, 100), (0, 100)]);
    let parts = deck.strip(Some((inches(90), 1)), None);
    assert_eq!(parts.len(), 2);
    assert_eq!(parts.iter().map(area).sum::<f64>(), 600.0);
    assert_eq!(parts[0].bounds().starboard, inches(30));
    assert_eq!(parts[1].bounds().port, inches(70));
    // A cut right on the notch's edge: the strip forward of it keeps that edge as its own, in three pieces.
    let fore = deck.strip(None, Some((inches(80), 1)));
    assert_eq!(fore.len(), 1);
    assert_eq!(area(&fore[0]), 8000.0);
    let on_line = |side: &&Side<u8>| side.from.x == inches(80);
    let marks: Vec<u8> = fore[0].sides().iter().filter(on_line).map(|side| side.edge).collect();
    assert_eq!(marks, [0, 1, 0, 1]);
    assert_eq!(deck.strip(Some((inches(80), 1)), None).len(), 2);
}

#[test]
fn breadths_tell_both_limits_at_a_step() {
    let deck = lines(&[(0, 0), (100, 0), (100, 30), (80, 30), (80, 70), (100, 70), (100, 100), (0, 100)]);
    assert_eq!(deck.breadths(inches(80), Limit::Fore), [(inches(0), inches(100))]);
    assert_eq!(deck.breadths(inches(80), Limit::Aft), [(inches(0), inches(30)), (inches(70), inches(100))]);
    assert_eq!(deck.breadths(inches(0), Limit::Fore), []);
    assert_eq!(deck.breadths(inches(0), Limit::Aft), [(inches(0), inches(100))]);
}

#[test]
fn arcs_are_cut_as_arcs() {
    let disc = Path::circle(point(10, 10), inches(10));
    let bounds = disc.bounds();
    assert_eq!(
        (bounds.fore, bounds.aft, bounds.port, bounds.starboard),
        (inches(0), inches(20), inches(0), inches(20))
    );
    assert!((area(&disc) - std::f64::consts::PI * 100.0).abs() < 1e-6);
    // 6-8-10: the chord at x = 4 is 16 long.
    assert_eq!(disc.breadths(inches(4), Limit::Aft), [(inches(2), inches(18))]);
    let halves = (disc.strip(None, Some((inches(4), ()))), disc.strip(Some((inches(4), ())), None));
    assert_eq!((halves.0.len(), halves.1.len()), (1, 1));
    assert!((area(&halves.0[0]) + area(&halves.1[0]) - area(&disc)).abs() < 1e-6);
    assert!(halves.0[0].sides().iter().any(|side| side.arc.is_some_and(|arc| arc.radius == inches(10))));
    // Circular segment of height 4: r² acos(6/10) − 6 · 8.
    assert!((area(&halves.0[0]) - (100.0 * 0.6_f64.acos() - 48.0)).abs() < 1e-6);
}

#[test]
fn a_rounded_rectangle_has_the_area_of_its_closed_form() {
    let lid = Path::rectangle(point(5, 5), point(29, 53), inches(2));
    assert!((area(&lid) - (24.0 * 48.0 - (4.0 - std::f64::consts::PI) * 4.0)).abs() < 1e-6);
    assert_eq!(lid.sides().len(), 8);
    assert!((lid.perimeter().as_inches() - (2.0 * (20.0 + 44.0) + 4.0 * std::f64::consts::PI)).abs() < 1e-6);
    assert_eq!(Path::rectangle(point(0, 0), point(2, 2), inches(1)).sides().len(), 4);
    assert_eq!(Path::rectangle(point(0, 0), point(2, 2), inches(0)).sides().len(), 4);
}

#[test]
fn an_arc_through_two_points_finds_its_centre() {
    let arc = Arc::through(point(0, 12), point(12, 0), inches(12), Turn::Left).unwrap();
    assert_eq!(arc.centre, point(12, 12));
    let bay = Arc::through(point(0, 12), point(12, 0), inches(12), Turn::Right).unwrap();
    assert_eq!(bay.centre, point(0, 0));
    assert!(Arc::through(point(0, 0), point(12, 0), inches(5), Turn::Left).is_none());
}

#[test]
fn distance_is_kept_from_corners_sides_and_arcs() {
    let square = lines(&[(0, 0), (100, 0), (100, 100), (0, 100)]);
    assert_eq!(square.near(inches(50), inches(3)), [(inches(-3), inches(3)), (inches(97), inches(103))]);
    // Right beside the bow edge all of the line is too near.
    assert_eq!(square.near(inches(2), inches(3)).len(), 1);
    // At the very distance, none of it is.
    assert_eq!(square.near(inches(3), inches(3)), [(inches(-3), inches(3)), (inches(97), inches(103))]);
    assert_eq!(square.near(inches(97), inches(3)), [(inches(-3), inches(3)), (inches(97), inches(103))]);
    assert_eq!(square.near(inches(-3), inches(3)), []);
    let disc = Path::circle(point(10, 10), inches(10));
    // Between the circles of radius 9 and 11 at x = 10.
    assert_eq!(disc.near(inches(10), inches(1)), [(inches(-1), inches(1)), (inches(19), inches(21))]);
    assert_eq!(disc.near(inches(22), inches(1)), []);
}

#[test]
fn geo_is_asked_on_a_grid_it_keeps() {
    let bow_tie = lines(&[(0, 0), (10, 10), (10, 0), (0, 10)]);
    assert!(!polygon::is_simple(&bow_tie));
    let square = lines(&[(0, 0), (10, 0), (10, 10), (0, 10)]);
    assert!(polygon::is_simple(&square));
    assert!(polygon::contains(&square, &Path::circle(point(5, 5), inches(5))));
    assert!(!polygon::contains(&square, &Path::circle(point(5, 6), inches(5))));
    assert!(polygon::overlap(&square, &Path::circle(point(12, 5), inches(3))));
    assert!(!polygon::overlap(&square, &lines(&[(10, 0), (20, 0), (20, 10), (10, 10)])));
}

#[test]
fn a_path_is_turned_so_that_its_inside_is_on_the_left() {
    let clockwise = lines(&[(0, 0), (0, 10), (10, 10), (10, 0)]);
    assert!(clockwise.doubled_area() > 0);
}
