//! Small frames that can be checked by hand.

use super::*;
use crate::length::Unit;

fn inches(value: f64) -> Length {
    Length::nearest(value * 25.4e6)
}

fn notation() -> Notation {
    Notation::new(Unit::Inch)
}

/// A frame of 240 by 100 in, its diagonals 260, with stations that check both sides.
fn frame() -> Vec<Reading> {
    let distance = |a: &str, b: &str, reading: f64| Reading::distance(a, b, inches(reading));
    vec![
        distance("BP", "SP", 240.0),
        distance("BS", "SS", 240.0),
        distance("BP", "BS", 100.0),
        distance("SP", "SS", 100.0),
        distance("BP", "SS", 260.0),
        distance("BS", "SP", 260.0),
    ]
}

fn spec(readings: Vec<Reading>) -> SurveySpec {
    SurveySpec::new(readings).corners(["BP", "SP", "SS", "BS"])
}

#[test]
fn a_true_frame_comes_out_true() {
    let found = survey(&spec(frame()), &notation()).unwrap();
    let at = |name: &str| found.point(name).map(|point| (point.x.as_inches(), point.y.as_inches())).unwrap();
    assert_eq!((at("BP"), at("SP"), at("SS"), at("BS")), ((0.0, 0.0), (240.0, 0.0), (240.0, 100.0), (0.0, 100.0)));
    assert_eq!((found.freedom, found.blunders.len()), (1, 0));
    assert_eq!(found.agreement, Length::ZERO);
    assert_eq!(found.readings.iter().map(|reading| reading.redundancy).sum::<f64>().round(), 1.0);
}

#[test]
fn one_redundancy_cannot_tell_which() {
    let mut readings = frame();
    readings[5] = Reading::distance("BS", "SP", inches(258.625));
    let found = survey(&spec(readings), &notation()).unwrap();
    let blunder = &found.blunders[0];
    assert!(!blunder.told_apart && blunder.suspects.len() == 6, "{blunder:#?}");
    assert_eq!(found.freedom, 0);
    assert!(blunder.settle.is_some(), "{}", blunder.message);
}

#[test]
fn the_second_diagonal_is_named() {
    let mut readings = frame();
    readings[5] = Reading::distance("BS", "SP", inches(261.375));
    // The middles of both ends, from all corners.
    for (middle, near, far) in [("BM", ["BP", "BS"], ["SP", "SS"]), ("SM", ["SP", "SS"], ["BP", "BS"])] {
        readings.extend(near.map(|corner| Reading::distance(middle, corner, inches(50.0))));
        readings.extend(far.map(|corner| Reading::distance(middle, corner, inches(245.125))));
    }
    let found = survey(&spec(readings), &notation()).unwrap();
    assert_eq!(found.blunders.len(), 1, "{:#?}", found.summary);
    let blunder = &found.blunders[0];
    assert!(blunder.told_apart);
    assert_eq!(blunder.message, "Reading 6 (BS to SP) is 1-3/8\" too long; without it all else agrees within 1/16\".");
    assert!((found.points[3].y - inches(100.0)).abs() < inches(0.05));
}
