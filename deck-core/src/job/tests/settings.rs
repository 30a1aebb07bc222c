//! What is taken where a job is silent, and what is said of it.

use super::{plain, with};
use crate::fasteners::Fastener;
use crate::job::{Assumed, Job, Paper, Settings};
use crate::length::Length;
use crate::published::{Standing, defaults};
use serde_json::{Value, json};

fn settings(job: &Value) -> Settings {
    Job::from_value(job).unwrap().check().unwrap().settings
}

fn pointers(settings: &Settings) -> Vec<&str> {
    settings.assumed.iter().map(|assumed| assumed.pointer.as_str()).collect()
}

#[test]
fn a_silent_job_assumes_every_row_that_no_source_settles_in_the_order_of_the_table() {
    let settings = settings(&plain());
    // What is said of strength is assumed only where a panel is given, and what is said of a section of the job, of old
    // holes, lids and openings only where there are some.
    let asked = [
        "/span",
        "/tolerance",
        "/narrow_flange",
        "/arrange",
        "/covering",
        "/strip_out",
        "/fastening/old_hole_clear",
        "/openings/",
        "/opening_rules/",
        "/fittings/",
        "/patch/",
    ];
    let silent = |pointer: &&str| !asked.iter().any(|part| pointer.starts_with(part));
    let rows: Vec<&str> = defaults::ALL.iter().filter(|row| row.is_assumed()).map(|row| row.pointer).collect();
    let rows: Vec<&str> = rows.into_iter().filter(silent).collect();
    assert_eq!(pointers(&settings), rows);
    // Read in one source each, and agreed on: not assumed.
    for settled in ["/fastening/edge_distance", "/fastening/edge_distance_metal", "/saw/kerf", "/fastening/length"] {
        assert!(!rows.contains(&settled), "{settled}");
    }
    let gap = &settings.assumed[0];
    assert_eq!((gap.pointer.as_str(), gap.value.as_str(), gap.mark), ("/gap", "1/8\"", Standing::Verified));
    assert!(gap.source.contains("APA E30"), "{}", gap.source);
    let written = serde_json::to_value(gap).unwrap();
    assert_eq!(written["mark"], "V");
    assert_eq!(serde_json::from_value::<Assumed>(written).unwrap(), *gap);
}

#[test]
fn what_is_given_is_not_assumed() {
    let given = with(&[("/gap", json!(0)), ("/frame/wall", json!("1/8")), ("/shop/overhang", json!(4))]);
    let settings = settings(&given);
    for pointer in ["/gap", "/frame/wall", "/shop/overhang"] {
        assert!(!pointers(&settings).contains(&pointer), "{pointer}");
    }
    assert_eq!((settings.rules.gap, settings.shop.overhang), (Length::ZERO, Length::inches(4)));
}

#[test]
fn defaults_reach_the_rooms_that_use_them() {
    let settings = settings(&plain());
    assert_eq!(settings.rules.least_flange(), Length::inch_fraction(13, 8));
    assert_eq!(settings.rules.least_bearing, Length::inch_fraction(1, 2));
    assert_eq!(settings.schedule.edge_in_metal, Length::inch_fraction(3, 8));
    assert_eq!(settings.saw.kerf, Length::inch_fraction(1, 8));
    assert_eq!((settings.shop.paper, settings.notation.denominator), (Paper::Letter, 16));
    let metric = json!({
        "schema": 1, "name": "Tern", "unit": "mm",
        "deck": { "length": 6000, "beam": 2400 },
        "frame": { "flange": 50, "measured_to": "centre", "regular": { "first": 0, "last": 6000, "spacing": 600 } },
        "stock": [{ "label": "18 mm", "length": 2440, "width": 1220, "thickness": 18 }]
    });
    assert_eq!(super::settings::settings(&metric).shop.paper, Paper::A4);
}

#[test]
fn a_screw_of_the_shops_own_does_not_inherit_the_default_screws_figures_unsaid() {
    let own = settings(&with(&[("/fastening/kind", json!("#10 pan head")), ("/fastening/diameter", json!("0.19"))]));
    let said: Vec<&str> = pointers(&own).into_iter().filter(|pointer| pointer.starts_with("/fastening")).collect();
    assert!(said.contains(&"/fastening/length") && said.contains(&"/fastening/threads_per_inch"), "{said:?}");
    let unnamed = settings(&with(&[("/fastening/diameter", json!("0.19"))]));
    assert!(pointers(&unnamed).contains(&"/fastening/kind"));
    // #10, gap 1/8: 1.445 (trade figure).
    assert_eq!(own.rules.least_flange(), "1.445 in".parse().unwrap());
    let Fastener { kind, .. } = settings(&plain()).schedule.fastener;
    assert_eq!(kind, "1/4-20 self-drilling flat head");
}

#[test]
fn a_least_above_the_default_of_what_is_preferred_lifts_it() {
    let wide = settings(&with(&[("/shop/least_bearing", json!(1)), ("/shop/least_panel_width", json!(20))]));
    assert_eq!(wide.shop.preferred_bearing, Length::inches(1));
    assert_eq!(wide.rules.preferred_width, Length::inches(20));
}

#[test]
fn rounded_lengths_are_told_and_do_not_make_another_job() {
    let job = Job::from_value(&with(&[("/gap", json!("1/3"))])).unwrap();
    let rounded: Vec<(&str, &str, i64)> =
        job.rounded().iter().map(|one| (one.pointer.as_str(), one.given.as_str(), one.taken.nanometres())).collect();
    assert_eq!(rounded, [("/gap", "\"1/3\"", 8_466_667)]);
    let again = Job::from_json(&job.to_json()).unwrap();
    assert_eq!(again, job);
    assert!(again.rounded().is_empty());
}
