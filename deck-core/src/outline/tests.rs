//! Outlines small enough to verify by hand.

use super::*;
use crate::geometry::Point;
use crate::length::Unit;

fn inches(text: &str) -> Length {
    Length::read(text, Unit::Inch).unwrap().length
}

fn square_inches(outline: &Outline) -> f64 {
    outline.path().area() as f64 / 25.4e6 / 25.4e6
}

fn built(measures: &Parametric) -> Outline {
    Deck::Parametric(measures.clone()).outline().unwrap()
}

#[test]
fn a_plain_deck_is_a_rectangle() {
    let deck = built(&Parametric::new(inches("240"), inches("96")));
    assert_eq!(square_inches(&deck), 240.0 * 96.0);
    assert_eq!(deck.path().sides().len(), 4);
    assert_eq!((deck.length(), deck.beam()), (inches("240"), inches("96")));
}

#[test]
fn bow_corners_and_notch_take_their_closed_forms() {
    let quarter = (4.0 - std::f64::consts::PI) / 4.0;
    let deck = Parametric::new(inches("270"), inches("102")).bow(BowCorner::Radius(inches("12")));
    assert!((square_inches(&built(&deck)) - (270.0 * 102.0 - 2.0 * 144.0 * quarter)).abs() < 1e-6);
    let clipped = Parametric::new(inches("270"), inches("102")).bow(BowCorner::Clip(inches("8")));
    assert_eq!(square_inches(&built(&clipped)), 270.0 * 102.0 - 64.0);
    let notch = Notch::new(inches("30"), inches("24")).inside_radius(inches("3")).stern_radius(inches("2"));
    let notched = built(&Parametric::new(inches("270"), inches("102")).notch(notch));
    let expected = 270.0 * 102.0 - 30.0 * 24.0 + 2.0 * 9.0 * quarter - 2.0 * 4.0 * quarter;
    assert!((square_inches(&notched) - expected).abs() < 1e-6, "{}", square_inches(&notched));
    assert_eq!(notched.breadth(inches("260"), Limit::Aft), inches("72"));
}

#[test]
fn a_taper_narrows_in_straight_lines() {
    let deck = built(&Parametric::new(inches("240"), inches("96")).taper(inches("48"), inches("72")));
    assert_eq!(square_inches(&deck), 240.0 * 96.0 - 48.0 * 12.0);
    assert_eq!(deck.breadth(inches("24"), Limit::Aft), inches("84"));
    // A radius in the obtuse corner of a taper is tangent to both sides: its centre is a radius from each.
    let round = Parametric::new(inches("240"), inches("96")).taper(inches("48"), inches("72"));
    let round = built(&round.bow(BowCorner::Radius(inches("10"))));
    let arc = round.path().sides().iter().find_map(|side| side.arc).unwrap();
    assert!((arc.centre.x - inches("10")).abs() <= Length::from_nanometres(2));
    // Distance of the centre from the line through (0, 12) and (48, 0).
    let (x, y) = (arc.centre.x.as_inches(), arc.centre.y.as_inches());
    let (x, y) = if y > 48.0 { (x, 96.0 - y) } else { (x, y) };
    let distance = (12.0 * x + 48.0 * y - 576.0) / 12.0_f64.hypot(48.0);
    assert!((distance - 10.0).abs() < 1e-6, "{distance}");
}

#[test]
fn an_outline_by_corners_is_the_same_either_way_round() {
    let corner = |x: &str, y: &str| Corner { x: inches(x), y: inches(y), arc: None };
    let rounded =
        |x: &str, y: &str| Corner { arc: Some(ArcSpec { radius: inches("12"), bulge: Bulge::Out }), ..corner(x, y) };
    let one = vec![rounded("0", "12"), corner("12", "0"), corner("100", "0"), corner("100", "50"), corner("0", "50")];
    let other = vec![rounded("12", "0"), corner("0", "12"), corner("0", "50"), corner("100", "50"), corner("100", "0")];
    let area = |outline: Vec<Corner>| square_inches(&Deck::Explicit(Explicit { outline }).outline().unwrap());
    assert_eq!(area(one.clone()), area(other));
    assert!((area(one) - (5000.0 - 144.0 * (4.0 - std::f64::consts::PI) / 4.0)).abs() < 1e-6);
}

#[test]
fn what_does_not_fit_is_named_with_its_pointer() {
    let faults = |deck: Parametric| {
        let error = Deck::Parametric(deck).outline().unwrap_err();
        error.faults().map(|fault| (fault.kind, fault.pointer.clone())).collect::<Vec<_>>()
    };
    let plain = || Parametric::new(inches("240"), inches("96"));
    assert_eq!(faults(Parametric::new(inches("-1"), inches("0"))).len(), 2);
    let wide = plain().bow(BowCorner::Radius(inches("49")));
    assert_eq!(faults(wide), [(Kind::OutlineCornerTooLarge, "/bow/radius".into())]);
    let notch = plain().notch(Notch::new(inches("96"), inches("300")));
    assert_eq!(
        faults(notch),
        [(Kind::OutlineNotchOutside, "/notch/width".into()), (Kind::OutlineNotchOutside, "/notch/depth".into())]
    );
    let round = plain().notch(Notch::new(inches("30"), inches("24")).inside_radius(inches("16")));
    assert_eq!(faults(round), [(Kind::OutlineCornerTooLarge, "/notch/inside_radius".into())]);
}

#[test]
fn a_crossing_outline_and_a_wrong_datum_are_refused() {
    let corner = |x: i64, y: i64| Corner { x: Length::inches(x), y: Length::inches(y), arc: None };
    let kind = |outline: Vec<Corner>| Deck::Explicit(Explicit { outline }).outline().unwrap_err().first().kind;
    assert_eq!(kind(vec![corner(0, 0), corner(10, 10), corner(10, 0), corner(0, 10)]), Kind::OutlineCrossesItself);
    assert_eq!(kind(vec![corner(1, 0), corner(10, 0), corner(10, 10)]), Kind::OutlineDatum);
    assert_eq!(kind(vec![corner(0, 0), corner(10, 0)]), Kind::OutlineTooFewCorners);
    let arc = Some(ArcSpec { radius: Length::inches(4), bulge: Bulge::Out });
    let small = vec![Corner { arc, ..corner(0, 0) }, corner(10, 0), corner(10, 10)];
    assert_eq!(kind(small), Kind::OutlineArcTooSmall);
    assert_eq!(Point::new(Length::ZERO, Length::ZERO), Point::default());
}
