//! Small cases that one can verify by hand.

use super::*;
use crate::error::Kind;
use crate::length::Length;
use crate::published::Standing;

fn inches(text: &str) -> Length {
    format!("{text} in").parse().unwrap()
}

fn metal(alloy: &str, thickness: &str) -> Metal {
    Metal::published(alloy, inches(thickness)).unwrap()
}

fn joint() -> Joint {
    let screw = Screw::published("1/4-20").unwrap();
    Joint::new(screw, metal("6061-T6", "1/8"), inches("3/4"), [inches("1/2"), inches("3/8"), inches("8")])
}

/// The lower of formula and test is carried, whichever that is, and every remembered figure says so.
#[test]
fn pull_out_carries_the_lower() {
    let low = pull_out(&Screw::published("#12-14").unwrap(), &metal("6061-T6", "1/16")).unwrap();
    assert_eq!(low.carried, low.test);
    // 1.01 × 0.216 × 0.0625 × 35 000.
    assert!((low.formula.as_ref().unwrap().nominal - 477.225).abs() < 1e-9);
    assert!(low.why.contains("tests lie below"));
    let high = pull_out(&Screw::published("1/4-14").unwrap(), &metal("6061-T6", "1/8")).unwrap();
    assert_eq!(high.carried, high.formula);
    assert!(high.carried.unwrap().clause.contains("from memory"));
    let known = pull_out(&Screw::published("#10-16").unwrap(), &metal("6061-T6", "1/16")).unwrap();
    let carried = known.carried.unwrap();
    assert_eq!((carried.nominal, carried.allowable, carried.standing), (300.0, 100.0, Standing::Memory));
    assert!(carried.clause.contains("from memory"));
}

#[test]
fn between_tests_on_the_straight_line_and_beyond_them_none() {
    let screw = Screw::published("1/4-14").unwrap();
    let between = pull_out(&screw, &metal("6061-T6", "7/64")).unwrap().test.unwrap();
    assert!((between.nominal - f64::midpoint(835.0, 1450.0)).abs() < 1e-9);
    assert_eq!(between.standing, Standing::Derived);
    assert!(pull_out(&screw, &metal("6061-T6", "1/16")).unwrap().test.is_none());
    // An extrusion is tested as its alloy.
    assert!(pull_out(&screw, &metal("6061-T6 extrusion", "1/8")).unwrap().test.is_some());
    // Too thin for the formula, and not tested.
    let none = pull_out(&screw, &metal("6061-T6", "1/32")).unwrap();
    assert!(none.carried.is_none() && none.why.starts_with("No figure"));
}

/// The formula has no steps at its seams: two and four threads for spaced ones, 1/8 and 1/4 in for machine threads.
#[test]
fn the_formula_joins_up() {
    let at = |screw: &Screw, thickness: f64| {
        let metal = Metal::new("6061-T6", Length::nearest(thickness * 25_400_000.0), 35.0, 42.0);
        pull_out(screw, &metal).unwrap().formula.unwrap().nominal
    };
    let spaced = Screw::published("#10-16").unwrap();
    for (screw, seam, most) in [(&spaced, 0.125, 0.01), (&Screw::published("1/4-20").unwrap(), 0.125, 0.01)] {
        let (before, after) = (at(screw, seam - 1e-6), at(screw, seam + 1e-6));
        assert!((after / before - 1.0).abs() < most, "{before} {after}");
    }
    let (before, after) = (at(&spaced, 0.25 - 1e-6), at(&spaced, 0.25 + 1e-6));
    assert!((after / before - 1.0).abs() < 0.01, "{before} {after}");
}

#[test]
fn bearing_by_its_edge() {
    let screw = Screw::published("1/4-14").unwrap();
    let at = |edge: &str| bearing(&screw, &metal("6061-T6", "1/8"), inches(edge)).unwrap();
    assert!(at("11/32").is_none());
    let least = at("3/8").unwrap();
    assert!((least.nominal - 1.5 * 0.25 * 0.125 * 42_000.0).abs() < 1e-9);
    assert_eq!(least.standing, Standing::Verified);
    let full = at("2").unwrap();
    assert!((full.nominal / least.nominal - 4.0 / 3.0).abs() < 1e-12);
    assert!(full.standing == Standing::Memory && full.clause.contains("from memory"));
}

#[test]
fn a_joint_and_its_row() {
    let dry = hold(&joint()).unwrap();
    let weakest = dry.weakest_uplift().unwrap();
    // 690 π × 0.5 × 0.42² × 0.75.
    assert!((weakest.allowable - 690.0 * std::f64::consts::PI * 0.5 * 0.1764 * 0.75).abs() < 1e-9);
    let wet = hold(&joint().wet(true)).unwrap();
    assert!((wet.weakest_uplift().unwrap().allowable / weakest.allowable - 0.75).abs() < 1e-12);
    let row = dry.under(10, weakest.allowable * 5.0, 0.0).unwrap();
    assert!((row.uplift.unwrap() - 0.5).abs() < 1e-12);
    let strapped = hold(&joint().strap(metal("6063-T5", "1/16"))).unwrap();
    assert!(strapped.uplift.iter().all(|held| held.mode != Mode::HeadPullThrough));
    assert!(strapped.uplift.iter().any(|held| held.mode == Mode::PullOver));
    assert!(dry.distances.iter().all(|distance| distance.kept), "{:?}", dry.distances);
    let value = serde_json::to_value(&dry).unwrap();
    assert!(!value.to_string().contains("safe"));
    assert_eq!(serde_json::from_value::<Hold>(value).unwrap(), dry);
}

#[test]
fn distances_that_are_not_kept() {
    let mut close = joint();
    (close.edge_metal, close.edge_board, close.spacing) = (inches("7/16"), inches("1/4"), inches("1/2"));
    let kept: Vec<bool> = hold(&close).unwrap().distances.iter().map(|distance| distance.kept).collect();
    assert_eq!(kept, [true, false, false, false]);
}

#[test]
fn faults_name_their_fields() {
    assert!(Screw::published("#10-61").unwrap_err().first().accepted.starts_with("Did you mean \"#10-16\"?"));
    assert_eq!(Metal::published("7075", inches("1/8")).unwrap_err().first().kind, Kind::UnknownWord);
    let mut bad = joint();
    (bad.board, bad.flange.thickness, bad.screw.head) = (Length::ZERO, Length::ZERO, inches("1/8"));
    let error = hold(&bad).unwrap_err();
    let pointers: Vec<&str> = error.faults().map(|fault| fault.pointer.as_str()).collect();
    assert_eq!(pointers, ["/screw/head", "/flange/thickness", "/board"]);
    assert!(hold(&joint()).unwrap().under(0, -1.0, f64::NAN).unwrap_err().count() == 3);
    assert!(head_pull_through(inches("1/2"), inches("3/4"), Gravity::Given(9.0)).is_err());
}
