//! Boards on their members: bearings by hand, figures against the tables and closed forms, and what follows.

use super::*;
use crate::cautions::Source;
use crate::job::Job;
use crate::length::Length;
use crate::plan::{Plan, plan};
use crate::span::{Criterion, SpanOptions, StructuralPanel, span_limits};

const SANDED: &str = r#""panel": {"series": "sanded plywood Group 1 A-A/A-C", "rating": "3/4"}"#;

/// A deck of two full boards on members 24 in apart, and what is said of strength.
fn planned(span: &str) -> Plan {
    with_frame(r#""regular": {"first": 0, "last": 96, "spacing": 24}"#, span)
}

fn with_frame(members: &str, span: &str) -> Plan {
    let job = format!(
        r#"{{"schema": 1, "name": "Span", "unit": "in", "deck": {{"length": 96, "beam": 96}},
            "frame": {{"measured_to": "centre", "flange": 2, "wall": "1/8", {members}}},
            "stock": [{{"label": "ply", "length": 96, "width": 48, "thickness": "3/4"}}],
            "gap": 0, "span": {{{span}}}}}"#
    );
    plan(&Job::from_json(&job).unwrap()).unwrap()
}

fn inch(text: &str) -> Length {
    format!("{text} in").parse().unwrap()
}

#[test]
fn without_a_rating_there_is_no_figure_and_without_a_load_no_utilisation() {
    let plan = planned("");
    assert_eq!(plan.span.no_figure.as_deref(), Some("no figure: no panel rating given"));
    assert!(plan.span.panels.is_empty() && plan.span.caution.contains("licensed engineer"));
    let plan = planned(SANDED);
    let first = &plan.span.panels[0];
    assert!(plan.span.load.is_none() && plan.span.rule.is_none() && plan.span.picture.is_none());
    assert_eq!(first.utilisations(), []);
    let names: Vec<&str> = first.points.iter().map(|check| check.name.as_str()).collect();
    assert_eq!(names, ["heel", "heel", "pedestal", "pedestal", "jack", "jack"]);
    assert!(first.spacing.is_empty() && plan.span.enough.is_empty());
}

#[test]
fn at_a_seam_only_the_flange_under_the_board_counts() {
    let plan = planned(SANDED);
    let first = &plan.span.panels[0];
    let bearings: Vec<(usize, Length, Length)> =
        first.supports.iter().map(|bearing| (bearing.member, bearing.fore, bearing.aft)).collect();
    assert_eq!(bearings, [(1, inch("0"), inch("1")), (2, inch("23"), inch("25")), (3, inch("47"), inch("48"))]);
    let bays: Vec<(Length, Length)> = first.bays.iter().map(|bay| (bay.spacing, bay.clear)).collect();
    assert_eq!(bays, [(inch("23-1/2"), inch("22")), (inch("23-1/2"), inch("22"))]);
    assert_eq!(first.overhangs, [Length::ZERO; 2]);
}

#[test]
fn an_overhang_is_counted_from_the_middle_of_the_last_bearing() {
    let plan = with_frame(r#""regular": {"first": 3, "last": 93, "spacing": 15}"#, SANDED);
    let (first, last) = (&plan.span.panels[0], plan.span.panels.last().unwrap());
    assert_eq!((first.overhangs[0], last.overhangs[1]), (inch("3"), inch("3")));
    assert!(first.overhangs[1].is_zero());
}

#[test]
fn the_table_is_the_rooms_own_answer_for_the_worst_bay() {
    let plan = planned(&format!(r#"{SANDED}, "load": {{"psf": 60}}"#));
    let table = plan.span.panels[0].table.as_ref().unwrap();
    let panel = StructuralPanel::published("sanded plywood Group 1 A-A/A-C", "3/4");
    let options = SpanOptions::new().wet(true).support(inch("1-1/2")).clear_span(inch("22"));
    let answer = span_limits(&panel, inch("23-1/2"), crate::span::Axis::Along, 2, &options).unwrap();
    let limits = answer.limits().unwrap();
    assert!((table.allowable_psf / limits.allowable() - 1.0).abs() < 1e-3);
    assert_eq!(table.governing, Criterion::Deflection);
    assert!((table.utilisation.unwrap() - 60.0 / limits.allowable()).abs() < 1e-3);
    assert!(table.limits.deflection.clause.contains("Q225J"));
    let dry = planned(&format!(r#"{SANDED}, "wet": false"#));
    let drier = dry.span.panels[0].table.as_ref().unwrap();
    assert!((drier.limits.deflection.value / table.limits.deflection.value - 1.0 / 0.85).abs() < 2e-3);
    assert!((drier.limits.shear.value / table.limits.shear.value - 1.0 / 0.75).abs() < 2e-3);
}

/// Two equal spans under load on one of them: 0.0961 w l² in the span, 0.125 with both; the beam formulas of the handbooks.
#[test]
fn the_beam_is_two_spans_by_hand() {
    let own = r#""panel": {"along": {"ei": 100000, "mr": 400, "fs": 200}}, "wet": false"#;
    let plan = planned(own);
    let beam = plan.span.panels[0].beam.as_ref().unwrap();
    let l = 23.5_f64;
    // Bending: over the middle with both spans loaded, w l²/8; w in lbf/in on a foot is psf/12.
    let bending = 400.0 * 8.0 * 12.0 / (l * l);
    assert!((beam.limits.bending.value / bending - 1.0).abs() < 1e-3, "{}", beam.limits.bending.value);
    assert_eq!(beam.limits.bending.place, "over M2");
    // Shear: 5/8 w l at the middle, less what stands on half of its bearing.
    let shear = 200.0 / ((0.625 * l - 1.0) / 12.0);
    assert!((beam.limits.shear.value / shear - 1.0).abs() < 1e-3, "{}", beam.limits.shear.value);
    assert!(plan.span.panels[0].differ.is_some());
}

#[test]
fn a_wide_bay_is_outside_the_table_and_said_so() {
    let wide = with_frame(
        r#""members": [{"station": 0}, {"station": 20}, {"station": 48}, {"station": 72}, {"station": 96}]"#,
        &format!(r#"{SANDED}, "load": {{"preset": "assembly"}}"#),
    );
    let first = &wide.span.panels[0];
    let reason = first.no_figure.as_ref().unwrap();
    assert!(reason.starts_with("no figure: ask a licensed engineer") && reason.ends_with("Bay M2 to M3."), "{reason}");
    assert!(first.table.is_none());
    let caution = wide.cautions.iter().find(|caution| caution.id == "no-span-figure").unwrap();
    assert_eq!((caution.source, caution.about.len()), (Source::Plan, 1));
    // 27.5 in by the middles of the bearings, and 19 in or so allowed: one blocking. Bay M1 to M2 has 19.5 in.
    let blocking: Vec<(usize, usize, Length)> =
        first.blocking.iter().map(|blocking| (blocking.fore_member, blocking.count, blocking.spacing)).collect();
    assert_eq!(blocking.last(), Some(&(2, 1, inch("13-3/4"))));
    assert!(blocking.len() <= 2);
    let limit = first.spacing.iter().find(|limit| limit.axis == first.axis).unwrap().spacing.unwrap();
    assert!((inch("18")..inch("20-1/2")).contains(&limit), "{limit}");
}

#[test]
fn what_is_over_its_limit_is_named_with_its_figures() {
    let plan = planned(&format!(
        r#"{SANDED}, "load": {{"psf": 100}}, "points": [{{"preset": "heel", "force": {{"pounds": 900}}}}]"#
    ));
    let about = |id: &str| &plan.cautions.iter().find(|caution| caution.id == id).unwrap().about;
    // Of the uniform load and the heel in two zones panel 2 names the worst alone.
    let second = about("over-limit").iter().find(|text| text.starts_with("panel 2: ")).unwrap();
    let ratios = plan.span.panels[1].utilisations();
    let worst = ratios.iter().map(|(_, ratio)| *ratio).fold(0.0, f64::max);
    assert!(ratios.iter().filter(|(_, ratio)| *ratio > 1.0).count() > 1);
    assert!(second.contains("heel") && second.ends_with(&format!(", {worst} of the limit")), "{second}");
    assert_eq!(about("weak-axis").len(), 2);
    assert!(plan.span.rule.as_ref().unwrap().contains("no rule was applied"));
    let enough = &plan.span.enough;
    assert!(enough.iter().all(|enough| enough.allowable_psf >= 100.0) && !enough.is_empty());
    let picture = plan.span.picture.as_ref().unwrap();
    assert_eq!((picture.micrometres.len(), picture.micrometres[0].len()), (17, 33));
    let most = picture.micrometres.iter().flatten().max().unwrap() * 1000;
    assert!(picture.greatest.nanometres() >= most - 10_000, "{most} {:?}", picture.greatest);
}

#[test]
fn a_board_within_its_limit_wants_no_blocking_and_is_itself_enough() {
    let plan = planned(&format!(r#"{SANDED}, "load": {{"psf": 50}}"#));
    let first = &plan.span.panels[0];
    assert!(first.table.as_ref().unwrap().utilisation.unwrap() <= 1.0);
    assert_eq!(first.blocking, []);
    let sanded = plan
        .span
        .enough
        .iter()
        .find(|enough| enough.series.starts_with("sanded") && enough.axis == crate::span::Axis::Along);
    assert_eq!(sanded.unwrap().rating, "3/4");
    assert!((sanded.unwrap().allowable_psf - first.table.as_ref().unwrap().allowable_psf).abs() < 0.02);
}

#[test]
fn twice_the_force_is_twice_the_utilisation_and_a_larger_foot_takes_more() {
    let point = |force: u32, side: u32| {
        let plan = planned(&format!(
            r#"{SANDED}, "points": [{{"name": "foot", "force": {{"pounds": {force}}}, "length": {side}, "width": {side}}}]"#
        ));
        plan.span.panels[0].points[0].clone()
    };
    let (one, two, large) = (point(100, 3), point(200, 3), point(100, 6));
    assert!((two.utilisation.unwrap() / one.utilisation.unwrap() - 2.0).abs() < 2e-3);
    assert!((two.allowable_pounds / one.allowable_pounds - 1.0).abs() < 1e-3);
    assert!(large.limits.bending.value > one.limits.bending.value);
    assert!(large.limits.shear.value > one.limits.shear.value);
}

#[test]
fn away_from_free_edges_a_heel_is_let_more_than_at_the_edge() {
    let plan = planned(&format!(r#"{SANDED}, "points": [{{"preset": "heel", "force": {{"pounds": 250}}}}]"#));
    for panel in &plan.span.panels {
        let [anywhere, inner] = &panel.points[..] else { panic!("{:?}", panel.points) };
        assert_eq!((anywhere.zone, inner.zone), (PointZone::Anywhere, PointZone::AwayFromEdges));
        assert!(inner.allowable_pounds >= anywhere.allowable_pounds);
        assert!(inner.limits.deflection.value > 1.1 * anywhere.limits.deflection.value);
        // The side edges are free: at the edge, and its own breadth of 2-1/2 in away from it.
        assert!(anywhere.limits.deflection.place.ends_with("and 1-1/4\" from port"), "{anywhere:?}");
        assert!(inner.limits.deflection.place.ends_with("and 3-3/4\" from port"), "{inner:?}");
        assert!((inner.limits.shear.value - anywhere.limits.shear.value).abs() < 1e-9);
    }
}

#[test]
fn a_load_with_a_place_is_checked_there_and_nowhere_else() {
    let at = |station: &str, from_port: &str| {
        planned(&format!(
            r#"{SANDED}, "points": [{{"preset": "heel", "force": {{"pounds": 250}},
                "at": {{"station": {station}, "from_port": {from_port}}}}}]"#
        ))
    };
    let worst = planned(&format!(r#"{SANDED}, "points": [{{"preset": "heel", "force": {{"pounds": 250}}}}]"#));
    let plan = at("12", "48");
    let [check] = &plan.span.panels[0].points[..] else { panic!("{:?}", plan.span.panels[0].points) };
    assert_eq!(check.zone, PointZone::Placed);
    assert!(plan.span.panels[1].points.is_empty() && plan.span.points[0].no_figure.is_none());
    assert!(check.limits.deflection.value >= worst.span.panels[0].points[1].limits.deflection.value);
    assert!(plan.span.picture.as_ref().is_some_and(|picture| picture.station == Some(inch("12"))));
    // Its mirror twin, and the same place of the other board, take the same.
    let near = |a: f64, b: f64| assert!((a / b - 1.0).abs() < 1e-3, "{a} {b}");
    let (left, right, other) = (at("12", "20"), at("12", "76"), at("84", "20"));
    let deflection = |panel: &PanelSpan| panel.points[0].limits.deflection.value;
    near(deflection(&left.span.panels[0]), deflection(&right.span.panels[0]));
    near(deflection(&left.span.panels[0]), deflection(&other.span.panels[1]));
    // Over a seam no board carries it whole.
    let seam = at("48", "48");
    assert!(seam.span.panels.iter().all(|panel| panel.points.is_empty()));
    assert!(seam.span.points[0].no_figure.as_ref().unwrap().starts_with("no figure: ask a licensed engineer"));
    assert!(seam.cautions.iter().any(|caution| caution.id == "no-span-figure"));
}

#[test]
fn the_beam_beside_the_table_decides_nothing() {
    // Between both figures.
    let limits = planned(SANDED).span.panels[0].clone();
    let (table, beam) = (limits.table.unwrap().allowable_psf, limits.beam.unwrap().allowable_psf);
    assert!(beam < table, "{beam} {table}");
    let plan = planned(&format!(r#"{SANDED}, "load": {{"psf": {}}}, "points": []"#, f64::midpoint(beam, table)));
    let has = |id: &str| plan.cautions.iter().any(|caution| caution.id == id);
    assert!(has("beam-beside") && !has("over-limit"));
    assert!(plan.span.panels[0].utilisations().iter().all(|(_, ratio)| *ratio <= 1.0));
}

#[test]
fn the_other_axis_is_needed_for_a_plate_and_not_for_a_beam() {
    let plan = planned(r#""panel": {"along": {"ei": 100000, "mr": 400, "fs": 200}}"#);
    let first = &plan.span.panels[0];
    assert!(first.points.is_empty() && first.beam.is_some() && first.other_way.is_none());
    assert!(first.no_points.as_ref().unwrap().contains("both axes"));
}

#[test]
fn screws_hold_what_the_room_says_and_rows_so_many_times_that() {
    let plan = planned(
        r#""fasteners": {"alloy": "6061-T6", "head": "1/2", "lift": {"pounds": 5000}, "side": {"newtons": 100}}"#,
    );
    assert_eq!(plan.span.no_figure.as_deref(), Some(NO_RATING));
    let fasteners = plan.span.fasteners.as_ref().unwrap();
    assert_eq!(fasteners.screw, "1/4-20, head 1/2\"");
    let row = &fasteners.rows[1];
    let screw = &fasteners.screws[row.screw.unwrap() - 1];
    let weakest = &screw.uplift[0];
    assert!(weakest.clause.contains("from memory"));
    assert!((row.uplift_pounds.unwrap() / (weakest.allowable * row.count as f64) - 1.0).abs() < 1e-3);
    assert!((row.lift_utilisation.unwrap() * row.uplift_pounds.unwrap() / 5000.0 - 1.0).abs() < 1e-3);
    assert!(plan.cautions.iter().any(|caution| caution.id == "row-over-limit"));
    let (formula, test) = (screw.pull_out_formula.as_ref().unwrap(), screw.pull_out_test.as_ref().unwrap());
    let carried = screw.uplift.iter().find(|held| held.mode == crate::span::hold::Mode::PullOut).unwrap();
    assert!(carried.allowable <= formula.allowable && carried.allowable <= test.allowable);
}

#[test]
fn a_plan_with_figures_comes_back_from_its_json() {
    let plan = planned(&format!(
        r#"{SANDED}, "load": {{"kpa": 2.4}}, "points": [{{"preset": "jack", "force": {{"newtons": 2000}}}}],
           "fasteners": {{"alloy": "6063-T5", "head": "0.4"}}"#
    ));
    let text = plan.to_json();
    let back = Plan::from_json(&text).unwrap();
    assert_eq!(back, plan);
    assert_eq!(back.to_json(), text);
    assert!(text.contains("\"clear_text\": \"22\\\"\""));
    assert!(!text.to_lowercase().contains("is safe"));
}

/// Bays of one board grow in steps: no limit grows with them.
#[test]
fn a_longer_bay_never_carries_more() {
    let limits = |second: u32| {
        let plan = with_frame(
            &format!(
                r#""members": [{{"station": 1}}, {{"station": {second}}}, {{"station": 47}}, {{"station": 71}}, {{"station": 95}}]"#
            ),
            r#""panel": {"across": {"ei": 300000, "mr": 700, "fs": 250}, "along": {"ei": 110000, "mr": 400, "fs": 160}},
               "points": [{"preset": "heel", "force": {"pounds": 100}}]"#,
        );
        let first = plan.span.panels[0].clone();
        let (table, beam, point) = (first.table.unwrap(), first.beam.unwrap(), first.points[0].clone());
        [table.limits, beam.limits, point.limits].map(|limits| [limits.deflection.value, limits.bending.value])
    };
    let found: Vec<_> = [24, 27, 30, 33, 36].map(limits).to_vec();
    for pair in found.windows(2) {
        for (nearer, farther) in pair[0].iter().flatten().zip(pair[1].iter().flatten()) {
            assert!(farther <= &(nearer * 1.001), "{pair:?}");
        }
    }
}

/// The same boat in inches and in exact millimetres.
#[test]
fn a_boat_and_its_metric_twin_take_the_same() {
    let job = |unit: &str, inch: f64| {
        let of = |inches: f64| (inches * inch * 1e6).round() / 1e6;
        format!(
            r#"{{"schema": 1, "name": "Twin", "unit": "{unit}", "deck": {{"length": {}, "beam": {}}},
                "frame": {{"measured_to": "centre", "flange": {}, "wall": {}, "regular": {{"first": 0, "last": {}, "spacing": {}}}}},
                "stock": [{{"label": "ply", "length": {}, "width": {}, "thickness": {}}}],
                "gap": 0, "span": {{{SANDED}, "load": {{"psf": 60}},
                    "points": [{{"preset": "heel", "force": {{"pounds": 200}}}}]}}}}"#,
            of(96.0),
            of(96.0),
            of(2.0),
            of(0.125),
            of(96.0),
            of(24.0),
            of(96.0),
            of(48.0),
            of(0.75)
        )
    };
    let [inches, metric] =
        [("in", 1.0), ("mm", 25.4)].map(|(unit, inch)| plan(&Job::from_json(&job(unit, inch)).unwrap()).unwrap().span);
    assert_eq!(inches.picture, metric.picture);
    assert_eq!(metric.load_text.as_deref(), Some("2.873 kPa"));
    assert!(
        metric.panels[0].points[0].allowable_text.ends_with(" N")
            && inches.panels[0].points[0].allowable_text.ends_with(" lb")
    );
    for (one, other) in inches.enough.iter().zip(&metric.enough) {
        assert_eq!((&one.rating, one.allowable_psf), (&other.rating, other.allowable_psf));
    }
    for (one, other) in inches.panels.iter().zip(&metric.panels) {
        assert_eq!(one.utilisations(), other.utilisations());
        assert_eq!((&one.supports, &one.bays), (&other.supports, &other.bays));
    }
}

/// The plate under a whole-width strip of load in the middle of a single bay bends as a beam: P l³/48 EI, P l/4.
#[test]
fn a_line_of_load_across_the_board_is_a_beam() {
    let plan = with_frame(
        r#""members": [{"station": 1}, {"station": 47}, {"station": 71}, {"station": 95}]"#,
        r#""panel": {"across": {"ei": 300000, "mr": 700, "fs": 250}, "along": {"ei": 110000, "mr": 400, "fs": 160}},
           "wet": false, "points": [{"name": "line", "length": 96, "width": "1/2"}]"#,
    );
    let first = &plan.span.panels[0];
    let (l, b) = (first.bays[0].spacing.as_inches(), 96.0 / 12.0);
    let sag = (l / 360.0) * 48.0 * 110_000.0 * b / (l * l * l);
    let bending = 400.0 * b * 4.0 / l;
    let limits = &first.points[0].limits;
    assert!((limits.deflection.value / sag - 1.0).abs() < 0.01, "{} {sag}", limits.deflection.value);
    assert!((limits.bending.value / bending - 1.0).abs() < 0.03, "{} {bending}", limits.bending.value);
}
