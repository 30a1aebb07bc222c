//! What a job says of strength: each bad value is told once, where it stands; what is left out takes its default.

use super::{refused, with};
use crate::error::Kind;
use crate::job::{Job, LoadSpec, PanelSpec, PointPreset, PointSpec, SpanSpec};
use crate::span::StructuralPanel;
use serde_json::{Value, json};

const SANDED: &str = "sanded plywood Group 1 A-A/A-C";

fn panel() -> Value {
    json!({ "series": SANDED, "rating": "3/4" })
}

/// The kind and pointer of each fault of a job with that section.
fn faults(span: Value) -> Vec<(Kind, String)> {
    let error = refused(&with(&[("/span", span)]));
    error.faults().map(|fault| (fault.kind, fault.pointer.clone())).collect()
}

#[test]
fn every_bad_value_is_told_once_where_it_stands() {
    let ei = json!({ "ei": 1e5, "mr": 400, "fs": 200 });
    let stresses = json!({ "e": 1.6e6, "e_shear": 1.5e6, "fb": 1900, "fs": 72 });
    let ply = json!({ "thickness": "1/8", "grain": "with" });
    let hold = |more: Value| {
        let mut hold = json!({ "alloy": "6061-T6", "head": "1/2" });
        hold.as_object_mut().unwrap().extend(more.as_object().unwrap().clone());
        json!({ "fasteners": hold })
    };
    let cases: Vec<(Value, Kind, &str)> = vec![
        (json!({ "panle": panel() }), Kind::UnknownField, "/panle"),
        (json!({ "panel": {} }), Kind::MissingField, "/panel/series"),
        (json!({ "panel": { "series": SANDED } }), Kind::MissingField, "/panel/rating"),
        (json!({ "panel": { "series": "plywood", "rating": "3/4" } }), Kind::UnknownWord, "/panel/series"),
        (json!({ "panel": { "series": SANDED, "rating": "9/4" } }), Kind::UnknownWord, "/panel/rating"),
        (json!({ "panel": { "series": SANDED, "rating": "3/4", "group": "9" } }), Kind::UnknownWord, "/panel/group"),
        (
            json!({ "panel": { "series": SANDED, "rating": "3/4", "group": "4", "grade": "Marine" } }),
            Kind::Conflict,
            "/panel/grade",
        ),
        (json!({ "panel": { "series": SANDED, "rating": "3/4", "along": ei } }), Kind::Conflict, "/panel/along"),
        (json!({ "panel": { "along": { "ei": 1, "mr": 1 } } }), Kind::MissingField, "/panel/along/fs"),
        (json!({ "panel": { "across": { "ei": -1, "mr": 1, "fs": 1 } } }), Kind::OutOfRange, "/panel/across/ei"),
        (json!({ "panel": { "plies": [ply] } }), Kind::MissingField, "/panel/stresses"),
        (json!({ "panel": { "plies": [], "stresses": stresses } }), Kind::EmptyList, "/panel/plies"),
        (json!({ "panel": { "plies": [ply], "stresses": stresses } }), Kind::Conflict, "/panel/plies"),
        (
            json!({ "panel": { "plies": [{ "thickness": 0, "grain": "with" }], "stresses": stresses } }),
            Kind::LengthZero,
            "/panel/plies/0/thickness",
        ),
        (json!({ "wet": "yes" }), Kind::WrongType, "/wet"),
        (json!({ "duration": 2 }), Kind::OutOfRange, "/duration"),
        (json!({ "deflection": 0 }), Kind::OutOfRange, "/deflection"),
        (json!({ "load": {} }), Kind::MissingField, "/load/psf"),
        (json!({ "load": { "psf": 0 } }), Kind::OutOfRange, "/load/psf"),
        (json!({ "load": { "psf": 60, "kpa": 3 } }), Kind::Conflict, "/load/kpa"),
        (json!({ "load": { "kpa": -3 } }), Kind::OutOfRange, "/load/kpa"),
        (json!({ "load": { "preset": "assembley" } }), Kind::UnknownWord, "/load/preset"),
        (json!({ "load": { "preset": "person-us" } }), Kind::UnknownWord, "/load/preset"),
        (json!({ "points": [{ "preset": "anvil" }] }), Kind::UnknownWord, "/points/0/preset"),
        (json!({ "points": [{ "name": "keg", "length": 4 }] }), Kind::MissingField, "/points/0/width"),
        (json!({ "points": [{ "preset": "heel", "length": 0 }] }), Kind::LengthZero, "/points/0/length"),
        (json!({ "points": [{ "preset": "heel" }, { "preset": "heel" }] }), Kind::DuplicateName, "/points/1/name"),
        (json!({ "points": [7, { "preset": "jack", "width": -1 }] }), Kind::WrongType, "/points/0"),
        (json!({ "points": [{ "preset": "heel", "force": {} }] }), Kind::MissingField, "/points/0/force/pounds"),
        (
            json!({ "points": [{ "preset": "heel", "force": { "newtons": 0 } }] }),
            Kind::OutOfRange,
            "/points/0/force/newtons",
        ),
        (
            json!({ "points": [{ "preset": "heel", "at": { "station": 9 } }] }),
            Kind::MissingField,
            "/points/0/at/from_port",
        ),
        (
            json!({ "points": [{ "preset": "heel", "at": { "station": 9, "from_port": -1 } }] }),
            Kind::Conflict,
            "/points/0/at/from_port",
        ),
        (
            json!({ "points": [{ "preset": "heel", "at": { "station": "900 ft", "from_port": 4 } }] }),
            Kind::Conflict,
            "/points/0/at/station",
        ),
        (
            json!({ "points": [{ "preset": "heel", "at": { "station": 9, "port": 4, "from_port": 1 } }] }),
            Kind::UnknownField,
            "/points/0/at/port",
        ),
        (json!({ "fasteners": { "head": 1 } }), Kind::MissingField, "/fasteners/alloy"),
        (json!({ "fasteners": { "alloy": "6061-T6" } }), Kind::MissingField, "/fasteners/head"),
        (json!({ "fasteners": { "alloy": "tin", "head": 1 } }), Kind::UnknownWord, "/fasteners/alloy"),
        (json!({ "fasteners": { "alloy": "6061-T6", "head": "1/8" } }), Kind::FastenerSize, "/fasteners/head"),
        (hold(json!({ "gravity": 2 })), Kind::OutOfRange, "/fasteners/gravity"),
        (hold(json!({ "lift": { "pounds": 1, "newtons": 1 } })), Kind::Conflict, "/fasteners/lift/newtons"),
        (hold(json!({ "side": { "pounds": "much" } })), Kind::WrongType, "/fasteners/side/pounds"),
    ];
    for (span, kind, pointer) in cases {
        let found = faults(span.clone());
        assert_eq!(found.first(), Some(&(kind, format!("/span{pointer}"))), "{span}: {found:?}");
        let count = if pointer == "/points/0" { 2 } else { 1 };
        assert_eq!(found.len(), count, "{span}: {found:?}");
    }
}

#[test]
fn a_point_that_was_left_out_does_not_shift_the_others() {
    let found = faults(json!({ "points": [7, { "preset": "jack", "width": -1 }] }));
    assert_eq!(found[1], (Kind::LengthNegative, "/span/points/1/width".to_owned()));
}

#[test]
fn a_screw_without_known_threads_has_no_strength() {
    let job = with(&[
        ("/span", json!({ "fasteners": { "alloy": "6061-T6", "head": "1/2" } })),
        ("/fastening", json!({ "threads_per_inch": 3 })),
    ]);
    let error = refused(&job);
    assert_eq!((error.first().kind, error.first().pointer.as_str()), (Kind::Conflict, "/fastening/threads_per_inch"));
}

#[test]
fn what_is_left_out_takes_its_default_and_what_no_source_settles_is_assumed() {
    let checked = |span: Value| Job::from_value(&with(&[("/span", span)])).unwrap().check().unwrap();
    let plain = checked(json!({ "panel": panel() }));
    let service = plain.settings.service;
    assert_eq!((service.wet, service.duration, service.deflection), (true, 1.0, 360.0));
    let assumed = |pointer: &str| plain.settings.assumed.iter().any(|assumed| assumed.pointer == pointer);
    assert!(assumed("/span/deflection") && !assumed("/span/wet"));
    let without = checked(json!({}));
    assert!(without.settings.assumed.iter().all(|assumed| !assumed.pointer.starts_with("/span")));
    let given = checked(json!({ "panel": panel(), "wet": false, "duration": 1.15, "deflection": 240 }));
    let service = given.settings.service;
    assert_eq!((service.wet, service.duration, service.deflection), (false, 1.15, 240.0));
}

#[test]
fn the_section_comes_back_from_its_file_and_can_be_built_in_code() {
    let span = SpanSpec::new()
        .panel(PanelSpec::new().series(SANDED.into()).rating("3/4".into()))
        .load(LoadSpec::new().kpa(2.4))
        .points(vec![PointSpec::new().preset(PointPreset::Heel)]);
    let job = Job::from_value(&super::plain()).unwrap().span(span);
    assert!(job.check().is_ok());
    assert_eq!(Job::from_json(&job.to_json()).unwrap(), job);
    let structural = job.span.panel.as_ref().unwrap().structural().unwrap();
    assert_eq!(structural, StructuralPanel::published(SANDED, "3/4"));
    assert!(!Job::from_value(&super::plain()).unwrap().to_json().contains("span"));
}

#[test]
fn all_of_a_section_is_told_at_once() {
    let found = faults(json!({ "panel": { "series": "x", "rating": "y" }, "duration": 9, "load": { "psf": -1 } }));
    let pointers: Vec<&str> = found.iter().map(|(_, pointer)| pointer.as_str()).collect();
    assert_eq!(pointers, ["/span/panel/series", "/span/duration", "/span/load/psf"]);
}
