//! Small cases that one can verify by hand.

use super::*;
use crate::error::Kind;
use crate::length::Length;
use crate::published::{Capacity, FaceGrade, SpeciesGroup, Standing};

const SANDED: &str = "sanded plywood Group 1 A-A/A-C";
const STRESSES: Stresses = Stresses { e: 1_600_000.0, e_shear: 1_500_000.0, fb: 2_000.0, fs: 50.0 };

fn inches(text: &str) -> Length {
    format!("{text} in").parse().unwrap()
}

fn limits(panel: &StructuralPanel, spacing: &str, axis: Axis, spans: u32, options: &SpanOptions) -> SpanLimits {
    let answer = span_limits(panel, inches(spacing), axis, spans, options).unwrap();
    answer.limits().unwrap_or_else(|| panic!("{:?}", answer.no_figure())).clone()
}

fn own() -> StructuralPanel {
    StructuralPanel::OneAxis(Capacity { ei: 100_000.0, mr: 600.0, fs: 240.0 })
}

/// 20 in apart on 2 in supports: l2 = 18, l3 = 18-1/4.
#[test]
fn one_span_by_hand() {
    let found = limits(&own(), "20", Axis::Across, 1, &SpanOptions::new().support(inches("2")).deflection(200.0));
    assert!((found.deflection - 921.6 * 100_000.0 * 0.1 / 18.25_f64.powi(4)).abs() < 1e-9);
    assert!((found.bending - 96.0 * 600.0 / 400.0).abs() < 1e-9);
    assert!((found.shear - 24.0 * 240.0 / 18.0).abs() < 1e-9);
    assert_eq!(found.governing, Criterion::Deflection);
    assert_eq!((found.clear_span, found.deflection_span), (inches("18"), inches("18-1/4")));
    assert!(found.notes.iter().any(|note| note.contains("Our extension")));
    assert_eq!(found.standing, Standing::Choice);
}

#[test]
fn supports_of_any_width() {
    let span = |support: &str| {
        let found = limits(&own(), "20", Axis::Across, 3, &SpanOptions::new().support(inches(support)));
        (found.clear_span, found.deflection_span)
    };
    assert_eq!(span("3-31/64"), (inches("16-33/64"), inches("16-49/64")));
    assert_eq!(span("3-1/2"), (inches("16-1/2"), inches("17-1/8")));
    // Never over the spacing.
    assert_eq!(span("0"), (inches("20"), inches("20")));
    assert_eq!(span("1/8"), (inches("19-7/8"), inches("20")));
    // The tables' own, below and from 48 in.
    let own_support = |spacing: &str| limits(&own(), spacing, Axis::Across, 2, &SpanOptions::new()).support;
    assert_eq!((own_support("47-63/64"), own_support("48")), (inches("1-1/2"), inches("3-1/2")));
    // Bearings that differ at the two ends.
    let uneven = limits(&own(), "20", Axis::Across, 3, &SpanOptions::new().clear_span(inches("18-5/8")));
    assert_eq!((uneven.support, uneven.deflection_span), (inches("1-3/8"), inches("18-7/8")));
}

#[test]
fn service_factors_go_where_they_belong() {
    let panel = StructuralPanel::published(SANDED, "3/4");
    let dry = limits(&panel, "24", Axis::Along, 2, &SpanOptions::new());
    let wet = limits(&panel, "24", Axis::Along, 2, &SpanOptions::new().wet(true));
    assert!((wet.deflection / dry.deflection - 0.85).abs() < 1e-12);
    assert!((wet.bending / dry.bending - 0.75).abs() < 1e-12 && (wet.shear / dry.shear - 0.75).abs() < 1e-12);
    let snow = limits(&panel, "24", Axis::Along, 2, &SpanOptions::new().duration(1.15));
    assert!((snow.deflection - dry.deflection).abs() < 1e-12);
    assert!((snow.bending / dry.bending - 1.15).abs() < 1e-12 && (snow.shear / dry.shear - 1.15).abs() < 1e-12);
    let strip = limits(&panel, "24", Axis::Along, 2, &SpanOptions::new().width(inches("16")));
    assert!((strip.bending / dry.bending - 0.75).abs() < 1e-12);
    assert_eq!((strip.deflection, strip.shear), (dry.deflection, dry.shear));
    assert!(strip.source.bending.contains("from memory"));
    assert_eq!(strip.factors[0].standing, Standing::Memory);
    assert!(dry.factors.is_empty());
}

#[test]
fn group_and_grade_multiply_the_table() {
    let of =
        |group, grade, axis| limits(&StructuralPanel::sanded("3/4", group, grade), "16", axis, 3, &SpanOptions::new());
    let table = limits(&StructuralPanel::published(SANDED, "3/4"), "16", Axis::Along, 3, &SpanOptions::new());
    let marine = of(SpeciesGroup::Group1, FaceGrade::Marine, Axis::Along);
    assert!((marine.capacity.ei - 115_000.0 * 1.38).abs() < 1e-6);
    assert!((marine.bending / table.bending - 1.15).abs() < 1e-12);
    let fourth = of(SpeciesGroup::Group4, FaceGrade::Other, Axis::Across);
    assert!((fourth.capacity.mr - 815.0 * 0.56).abs() < 1e-9);
    let panel = StructuralPanel::sanded("3/4", SpeciesGroup::Group3, FaceGrade::Marine);
    let error = span_limits(&panel, inches("16"), Axis::Along, 3, &SpanOptions::new()).unwrap_err();
    assert_eq!((error.pointer(), error.first().kind), ("/panel/grade", Kind::Conflict));
}

#[test]
fn outside_the_table_there_is_no_figure() {
    let panel = StructuralPanel::published(SANDED, "3/4");
    let answer = span_limits(&panel, inches("26"), Axis::Along, 2, &SpanOptions::new()).unwrap();
    let reason = answer.no_figure().unwrap();
    assert!(reason.starts_with(NO_FIGURE) && reason.contains("26") && reason.contains("12"), "{reason}");
    // Closer than the table: no figure for it, and beside that the one of the least spacing.
    let close = span_limits(&panel, inches("10"), Axis::Along, 3, &SpanOptions::new()).unwrap();
    let SpanAnswer::NoFigure(none) = &close else { panic!("{close:?}") };
    let at_least = none.at_least_spacing.as_ref().unwrap();
    assert_eq!(at_least.spacing, inches("12"));
    // Thin sanded panels have no row the weak way.
    let thin = StructuralPanel::published(SANDED, "1/4");
    let answer = span_limits(&thin, inches("12"), Axis::Along, 3, &SpanOptions::new()).unwrap();
    assert!(answer.no_figure().unwrap().contains("table 3"));
    let half = StructuralPanel::own(Some(Capacity { ei: 1.0, mr: 1.0, fs: 1.0 }), None);
    assert!(span_limits(&half, inches("12"), Axis::Along, 3, &SpanOptions::new()).unwrap().limits().is_none());
}

#[test]
fn all_faults_at_once_with_their_fields() {
    let panel = StructuralPanel::published("sanded plywod Group 1 A-A/A-C", "3/4");
    let options = SpanOptions::new().deflection(f64::NAN).duration(2.0).support(inches("-1"));
    let error = span_limits(&panel, Length::ZERO, Axis::Along, 4, &options).unwrap_err();
    let pointers: Vec<&str> = error.faults().map(|fault| fault.pointer.as_str()).collect();
    assert_eq!(pointers, ["/panel/series", "/spans", "/support", "/deflection", "/duration", "/spacing"]);
    assert!(error.first().accepted.starts_with("Did you mean \"sanded plywood Group 1 A-A/A-C\"?"), "{error}");
    let rating = StructuralPanel::published(SANDED, "48/24");
    let error = span_limits(&rating, inches("16"), Axis::Along, 3, &SpanOptions::new()).unwrap_err();
    assert_eq!(error.pointer(), "/panel/rating");
    assert!(error.first().accepted.contains("\"3/4\""), "{error}");
    let bad = StructuralPanel::own(Some(Capacity { ei: 1.0, mr: -1.0, fs: f64::INFINITY }), None);
    let error = span_limits(&bad, inches("1"), Axis::Across, 3, &SpanOptions::new()).unwrap_err();
    let pointers: Vec<&str> = error.faults().map(|fault| fault.pointer.as_str()).collect();
    assert_eq!(pointers, ["/panel/across/mr", "/panel/across/fs", "/spacing"]);
}

#[test]
fn json_of_answers() {
    for (spacing, key) in [("24", "deflection"), ("26", "no_figure")] {
        let panel = StructuralPanel::published(SANDED, "3/4");
        let answer = span_limits(&panel, inches(spacing), Axis::Along, 2, &SpanOptions::new()).unwrap();
        let value = serde_json::to_value(&answer).unwrap();
        assert!(value.get(key).is_some(), "{value}");
        assert!(!value.to_string().contains("safe"), "{value}");
        assert_eq!(serde_json::from_value::<SpanAnswer>(value).unwrap(), answer);
    }
}

#[test]
fn loads_say_where_they_come_from() {
    let limits = limits(&own(), "20", Axis::Across, 1, &SpanOptions::new());
    let used = limits.under(&Load::user(limits.allowable()).unwrap());
    assert!((used.greatest() - 1.0).abs() < 1e-12);
    assert!(used.rule.contains("private pontoon boat"));
    assert!((Load::preset("weather-deck").unwrap().psf - 104.43).abs() < 0.01);
    assert!(Load::preset("assembly").unwrap().source.contains("from memory"));
    assert!(Load::preset("assembl").unwrap_err().first().accepted.contains("\"assembly\"?"));
    assert_eq!(Load::preset("person-us").unwrap_err().first().kind, Kind::UnknownWord);
    assert!(Load::user(-1.0).is_err() && Load::user(f64::NAN).is_err());
    assert!((Load::kilopascals(5.0).unwrap().psf - 104.4272).abs() < 1e-4);
}

/// One inch thick: I = 1, S = 2 and Ib/Q = 8 to the foot.
#[test]
fn a_solid_piece_is_a_rectangle() {
    let solid = Layup::even(1, inches("1"), STRESSES).section(Axis::Across).unwrap();
    assert!((solid.i - 1.0).abs() < 1e-12 && (solid.ks - 2.0).abs() < 1e-12 && (solid.ib_q - 8.0).abs() < 1e-12);
}

/// Three plies of 1/3 in, cross bands without stiffness to speak of: 26/27 and 1/27 of the rectangle.
#[test]
fn three_plies_by_hand() {
    let three = Layup::even(3, inches("3/4"), STRESSES).cross_stiffness(0.001);
    let gross = 0.421_875;
    let (across, along) = (three.section(Axis::Across).unwrap(), three.section(Axis::Along).unwrap());
    assert!((across.i / gross - (26.0 + 0.001) / 27.0).abs() < 1e-12);
    assert!((along.i / gross - (1.0 + 0.026) / 27.0).abs() < 1e-12);
    // Rolling shear across is greatest at the middle: Q = 12 (1/4 × 1/4 + 0.001 × 1/8 × 1/16).
    let q = 12.0 * (0.0625 + 0.001 / 128.0);
    assert!((across.ib_q - across.i * 12.0 / q).abs() < 1e-9);
    // The other way the outermost ply with the span is the core, 1/8 in from the middle.
    assert!((along.ks - BENDING_FACTOR_THREE_PLY * along.i / 0.125).abs() < 1e-12);
}

/// The neutral axis of an uneven lay-up lies where its own weight balances: 1 in of stiffness 3 on 1 in of stiffness 1.
#[test]
fn uneven_layups_have_their_own_neutral_axis() {
    let plies = vec![Ply::new(inches("1"), PlyGrain::With).stiffness(3.0), Ply::new(inches("1"), PlyGrain::With)];
    let section = Layup::new(plies, STRESSES).section(Axis::Across).unwrap();
    // Neutral axis at 3/4 in: 12 (3 (0.25³ + 0.75³)/3 + (1.25³ − 0.25³)/3).
    let i = 12.0 * ((0.015_625 + 0.421_875) + (1.953_125 - 0.015_625) / 3.0);
    assert!((section.i - i).abs() < 1e-12, "{section:?}");
    assert!((section.ks - BENDING_FACTOR * i / 1.25).abs() < 1e-12);
}

#[test]
fn layups_that_cannot_be() {
    let pointers = |layup: &Layup| -> Vec<String> {
        layup.section(Axis::Across).unwrap_err().faults().map(|fault| fault.pointer.clone()).collect()
    };
    assert_eq!(pointers(&Layup::new(vec![], STRESSES)), ["/plies"]);
    let thin = Layup::new(vec![Ply::new(Length::ZERO, PlyGrain::With).stiffness(f64::NAN)], STRESSES);
    assert_eq!(pointers(&thin), ["/plies/0/thickness", "/plies/0/stiffness"]);
    assert_eq!(pointers(&Layup::new(vec![Ply::new(inches("1"), PlyGrain::Square)], STRESSES)), ["/plies"]);
    let weak = Layup::even(3, inches("1"), Stresses { fb: 0.0, ..STRESSES });
    assert_eq!(pointers(&weak), ["/stresses/fb"]);
}
