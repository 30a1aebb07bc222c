//! Every kind of fault that a job can have, and that all of them are told at once and nothing twice.

use super::{plain, refused, with};
use crate::error::{Error, Kind};
use crate::job::Job;
use serde_json::{Value, json};
use std::collections::BTreeSet;

fn corners(points: &[(i64, i64)]) -> Value {
    json!({ "outline": points.iter().map(|(x, y)| json!({ "x": x, "y": y })).collect::<Vec<_>>() })
}

fn rot(points: &[(i64, i64)]) -> Value {
    json!({ "name": "rot", "corners": points.iter().map(|(x, y)| json!({ "x": x, "y": y })).collect::<Vec<_>>() })
}

type Changes = Vec<(&'static str, Value)>;

/// A kind, changes to the plain job that provoke it, and the pointer that it comes with.
fn provoked() -> Vec<(Kind, Changes, &'static str)> {
    let opening = |shape: Value| json!([{ "name": "hatch", "rectangle": shape }]);
    let lid = json!({ "name": "lid", "round": { "x": 50, "y": 50, "diameter": 12 } });
    let second = json!({ "label": "rack", "length": 96, "width": 24, "thickness": "3/4" });
    vec![
        (Kind::LengthUnreadable, vec![("/gap", json!("a bit"))], "/gap"),
        (Kind::LengthUnknownUnit, vec![("/deck/beam", json!("8 spans"))], "/deck/beam"),
        (Kind::LengthTwoUnits, vec![("/deck/beam", json!("8' 20 mm"))], "/deck/beam"),
        (Kind::LengthNotFinite, vec![("/frame/flange", json!("NaN"))], "/frame/flange"),
        (Kind::LengthTooLarge, vec![("/deck/length", json!(1e300))], "/deck/length"),
        (Kind::LengthNegative, vec![("/gap", json!(-1))], "/gap"),
        (Kind::LengthZero, vec![("/deck/beam", json!(0))], "/deck/beam"),
        (Kind::MoneyUnreadable, vec![("/stock/0/price", json!("cheap"))], "/stock/0/price"),
        (Kind::MoneyNegative, vec![("/stock/0/price", json!(-1))], "/stock/0/price"),
        (Kind::UnknownField, vec![("/stock/0/lenght", json!(96))], "/stock/0/lenght"),
        (Kind::MissingField, vec![("/openings", json!([{ "name": "hatch" }]))], "/openings/0"),
        (Kind::WrongType, vec![("/deck", json!("a big one"))], "/deck"),
        (Kind::UnknownWord, vec![("/frame/measured_to", json!("middle"))], "/frame/measured_to"),
        (Kind::OutOfRange, vec![("/shop/fractions", json!(10))], "/shop/fractions"),
        (Kind::Conflict, vec![("/deck/outline", json!([]))], "/deck/outline"),
        (Kind::SchemaNumber, vec![("/schema", json!(2))], "/schema"),
        (Kind::EmptyList, vec![("/stock", json!([]))], "/stock"),
        (
            Kind::DuplicateName,
            vec![("/openings", json!([lid, { "name": "lid", "round": { "x": 90, "y": 50, "diameter": 12 } }]))],
            "/openings/1/name",
        ),
        (
            Kind::OutlineCrossesItself,
            vec![("/deck", corners(&[(0, 0), (240, 96), (240, 0), (0, 96)]))],
            "/deck/outline",
        ),
        (Kind::OutlineTooFewCorners, vec![("/deck", corners(&[(0, 0), (240, 0)]))], "/deck/outline"),
        (
            Kind::OutlineArcTooSmall,
            vec![(
                "/deck",
                json!({ "outline": [{ "x": 0, "y": 0, "arc": { "radius": 4, "bulge": "out" } }, { "x": 240, "y": 0 }, { "x": 240, "y": 96 }] }),
            )],
            "/deck/outline/0/arc/radius",
        ),
        (Kind::OutlineCornerTooLarge, vec![("/deck/bow", json!({ "radius": 60 }))], "/deck/bow/radius"),
        (Kind::OutlineNotchOutside, vec![("/deck/notch", json!({ "width": 96, "depth": 20 }))], "/deck/notch/width"),
        (Kind::OutlineDatum, vec![("/deck", corners(&[(1, 0), (240, 0), (240, 96)]))], "/deck/outline"),
        (Kind::FrameSkew, vec![("/frame/members/1/station_port", json!(24))], "/frame/members/1/station_starboard"),
        (Kind::FrameMemberOutside, vec![("/frame/members/2/station", json!(374))], "/frame/members/2/station"),
        (Kind::FrameOutOfOrder, vec![("/frame/members/1/station", json!(-30))], "/frame/members/1/station"),
        (Kind::FrameOverlap, vec![("/frame/members/1/station", json!(1))], "/frame/members/1/station"),
        (
            Kind::FrameEndsReversed,
            vec![("/frame/members/1/port_end", json!(90)), ("/frame/members/1/starboard_end", json!(6))],
            "/frame/members/1/port_end",
        ),
        (
            Kind::FrameSpacing,
            vec![("/frame/members", json!([])), ("/frame/regular", json!({ "first": 0, "last": 240, "spacing": 0 }))],
            "/frame/regular/spacing",
        ),
        (
            Kind::OpeningOutside,
            vec![("/openings", opening(json!({ "x": 230, "y": 10, "depth": 20, "width": 20 })))],
            "/openings/0",
        ),
        (
            Kind::OpeningOverlap,
            vec![("/openings", json!([lid, { "name": "next", "round": { "x": 56, "y": 50, "diameter": 12 } }]))],
            "/openings/1",
        ),
        (
            Kind::OpeningCornerTooLarge,
            vec![("/openings", opening(json!({ "x": 50, "y": 10, "depth": 20, "width": 20, "corner_radius": 11 })))],
            "/openings/0/rectangle/corner_radius",
        ),
        (
            Kind::ZoneOutside,
            vec![("/keep_clear", json!([{ "name": "gate", "from": 250, "to": 280 }]))],
            "/keep_clear/0/from",
        ),
        (Kind::StockPriceMissing, vec![("/stock/0/price", json!(60)), ("/stock/1", second.clone())], "/stock/1/price"),
        (
            Kind::StockMeasuredSize,
            vec![("/stock/0/measured", json!({ "length": 90, "width": 48 }))],
            "/stock/0/measured/length",
        ),
        (Kind::SawTrimTooLarge, vec![("/saw/trim", json!(24))], "/saw/trim"),
        (Kind::FastenerSpacing, vec![("/fastening/edge_spacing", json!(0))], "/fastening/edge_spacing"),
        (
            Kind::FastenerSize,
            vec![("/fastening/length", json!(1)), ("/fastening/drill_point", json!(1))],
            "/fastening/drill_point",
        ),
        (Kind::NestStages, vec![("/saw/stages", json!(4))], "/saw/stages"),
        (
            Kind::TooMany,
            vec![
                ("/frame/members", json!([])),
                ("/frame/regular", json!({ "first": 0, "last": 240, "spacing": 0.01 })),
            ],
            "/frame/regular/spacing",
        ),
    ]
}

/// The same for what the old deck left, for lids and slots, and for what is bolted down again.
fn provoked_by_leftovers() -> Vec<(Kind, Changes, &'static str)> {
    vec![
        (
            Kind::PatchSeams,
            vec![("/patch", json!({ "old_seams": [96, 48], "damage": [rot(&[(10, 10), (20, 10), (20, 20)])] }))],
            "/patch/old_seams/1",
        ),
        (
            Kind::PatchDamage,
            vec![("/patch", json!({ "old_seams": [48], "damage": [rot(&[(10, 90), (20, 90), (20, 100)])] }))],
            "/patch/damage/0/corners",
        ),
        (
            Kind::OldHoleOutside,
            vec![("/old_holes", json!([{ "member": 9, "y": [6], "diameter": "1/4" }]))],
            "/old_holes/0/member",
        ),
        (
            Kind::OpeningSlot,
            vec![(
                "/openings",
                json!([{ "name": "slot", "round": { "x": 50, "y": 50, "diameter": 12 }, "slot": "port" }]),
            )],
            "/openings/0/slot",
        ),
        (
            Kind::LidSize,
            vec![(
                "/openings",
                json!([{ "name": "lid", "round": { "x": 50, "y": 50, "diameter": 12 }, "lid": { "clearance": 6 } }]),
            )],
            "/openings/0/lid",
        ),
        (
            Kind::FittingSize,
            vec![(
                "/fittings",
                json!({ "items": [{ "name": "rail", "holes": [], "bolt": {
                    "diameter": "1/4", "plate": { "length": 2, "width": 3, "thickness": "1/8" }
                } }] }),
            )],
            "/fittings/items/0/bolt/plate/width",
        ),
    ]
}

#[test]
fn every_kind_that_a_job_can_have_is_provoked_alone_and_pointed_to() {
    assert!(Job::from_value(&plain()).is_ok());
    let mut met: BTreeSet<Kind> = BTreeSet::new();
    for (kind, changes, pointer) in provoked().into_iter().chain(provoked_by_leftovers()) {
        let error = refused(&with(&changes));
        let found: Vec<(Kind, &str)> = error.faults().map(|fault| (fault.kind, fault.pointer.as_str())).collect();
        // A member that is nowhere near its place may break more than one rule; the first is the one it is about.
        assert_eq!(found.first(), Some(&(kind, pointer)), "{error}");
        assert!(found.len() == 1 || kind == Kind::FrameOutOfOrder, "{kind:?}: {error}");
        met.insert(kind);
    }
    met.insert(Job::from_json("{\"schema\": 1,}").unwrap_err().first().kind);
    for info in Kind::ALL.iter().filter(|info| info.code < 800) {
        assert!(met.contains(&info.kind), "no job provokes {}", info.name);
    }
}

#[test]
fn faults_of_holes_and_lids_point_to_their_fields() {
    let first = |changes: &[(&str, Value)]| {
        let error = refused(&with(changes));
        (error.first().kind, error.first().pointer.clone())
    };
    let holes = |holes: Value| first(&[("/old_holes", json!([holes]))]);
    let outside = |pointer: &str| (Kind::OldHoleOutside, format!("/old_holes/0/{pointer}"));
    assert_eq!(holes(json!({ "member": 2, "y": [6, 97], "diameter": "1/4" })), outside("y/1"));
    assert_eq!(holes(json!({ "member": 2, "y": [6], "diameter": "1/4", "x": 26 })), outside("x"));
    assert_eq!(
        holes(json!({ "member": 2, "y": [6], "diameter": 0 })),
        (Kind::LengthZero, "/old_holes/0/diameter".into())
    );
    let opening =
        json!({ "name": "lid", "round": { "x": 50, "y": 50, "diameter": 12 }, "lid": { "lap": 1, "clearance": 1 } });
    assert_eq!(first(&[("/openings", json!([opening]))]), (Kind::Conflict, "/openings/0/lid/lap".into()));
    let opening = json!({ "name": "a", "round": { "x": 50, "y": 50, "diameter": 12 }, "lid": {} });
    let part = json!({ "label": "lid of a", "length": 5, "width": 5 });
    let twice = [("/openings", json!([opening])), ("/extra_parts", json!([part]))];
    assert_eq!(first(&twice), (Kind::DuplicateName, "/extra_parts/0/label".into()));
    // A slot that does not reach the edge, and one as wide as its side.
    for (y, x, depth) in [(80, 100, 10), (90, 0, 240)] {
        let shape = json!({ "x": x, "y": y, "depth": depth, "width": 6 });
        let slot = json!([{ "name": "s", "rectangle": shape, "slot": "starboard" }]);
        assert_eq!(first(&[("/openings", slot)]), (Kind::OpeningSlot, "/openings/0/slot".into()), "{y}");
    }
    let rules = json!({ "from_seam": 6, "from_seam_preferred": 3 });
    assert_eq!(first(&[("/opening_rules", rules)]).1, "/opening_rules/from_seam_preferred");
    let patch = |damage: Value| first(&[("/patch", json!({ "old_seams": [48, 300], "damage": damage }))]);
    assert_eq!(patch(json!([])).1, "/patch/old_seams/1");
    let arranged = [("/patch", json!({ "old_seams": [48], "damage": [rot(&[(10, 10), (20, 10), (20, 20)])] }))];
    let arranged = [arranged.as_slice(), &[("/arrange", json!({ "stagger": 1 }))]].concat();
    assert_eq!(first(&arranged), (Kind::Conflict, "/arrange".into()));
    let damage = |points: &[(i64, i64)]| first(&[("/patch", json!({ "old_seams": [], "damage": [rot(points)] }))]);
    let nine: Vec<Value> = (0..9)
        .map(|at| json!({ "name": at.to_string(), "corners": rot(&[(10, 9 * at), (12, 9 * at), (12, 9 * at + 2)])["corners"] }))
        .collect();
    assert_eq!(
        first(&[("/patch", json!({ "old_seams": [48], "damage": nine }))]),
        (Kind::TooMany, "/patch/damage".into())
    );
    let holes: Vec<Value> = (0..41)
        .map(|at| json!({ "name": at.to_string(), "round": { "x": 4 + 5 * at, "y": 5, "diameter": 1 } }))
        .collect();
    let many = [("/openings", json!(holes)), ("/opening_rules", json!({}))];
    assert_eq!(first(&many), (Kind::TooMany, "/openings".into()));
    let nothing = (Kind::PatchDamage, "/patch/damage/0/corners".to_owned());
    assert_eq!(damage(&[(10, 10), (20, 10)]), nothing);
    assert_eq!(damage(&[(10, 10), (20, 20), (20, 10), (10, 20)]), nothing);
    let skew = json!({ "x": 0, "y": 0, "skew": { "over": 10, "to_starboard": 11 } });
    let pointer = "/fittings/old_datum/skew/to_starboard";
    assert_eq!(first(&[("/fittings", json!({ "items": [], "old_datum": skew }))]), (Kind::FittingSize, pointer.into()));
}

#[test]
fn everything_wrong_with_a_file_is_told_at_once_in_its_order() {
    let text = r#"{
        "schema": 1,
        "name": 7,
        "unit": "in",
        "deck": { "length": "20 ft", "beam": "8 fathoms", "bow": { "radius": 12, "clip": 8 } },
        "frame": { "profil": "Z", "flange": 2, "measured_to": "center",
            "members": [{ "station": 0, "condition": "rusty" }, { "staton": 24 }, { "station": "NaN" }] },
        "openings": [{ "name": "hatch", "round": { "x": 50, "y": 50 } }, "hole"],
        "keep_clear": [{ "name": "gate", "from": 90, "to": 60 }],
        "stock": [{ "label": "ply", "length": 96, "width": -48, "thickness": "3/4", "count": 2.5 }],
        "gap": "1/8",
        "gap": -1,
        "saw": { "stages": 9, "first": "along" },
        "colour": "grey"
    }"#;
    let error = Job::from_json(text).unwrap_err();
    let found: Vec<(Kind, &str)> = error.faults().map(|fault| (fault.kind, fault.pointer.as_str())).collect();
    let expected = [
        (Kind::WrongType, "/name"),
        (Kind::LengthUnknownUnit, "/deck/beam"),
        (Kind::Conflict, "/deck/bow/clip"),
        (Kind::UnknownField, "/frame/profil"),
        (Kind::UnknownWord, "/frame/measured_to"),
        (Kind::UnknownWord, "/frame/members/0/condition"),
        (Kind::UnknownField, "/frame/members/1/staton"),
        (Kind::LengthNotFinite, "/frame/members/2/station"),
        (Kind::MissingField, "/openings/0/round/diameter"),
        (Kind::WrongType, "/openings/1"),
        (Kind::OutOfRange, "/keep_clear/0/to"),
        (Kind::LengthNegative, "/stock/0/width"),
        (Kind::WrongType, "/stock/0/count"),
        (Kind::DuplicateName, "/gap"),
        (Kind::NestStages, "/saw/stages"),
        (Kind::UnknownWord, "/saw/first"),
        (Kind::UnknownField, "/colour"),
    ];
    assert_eq!(found, expected, "{error}");
}

#[test]
fn items_that_were_left_out_do_not_shift_the_pointers_of_the_others() {
    let job = with(&[
        ("/frame/members", json!([{ "station": "?" }, { "station": 24 }, { "station": 300 }])),
        ("/openings", json!([7, { "name": "lid", "round": { "x": 500, "y": 50, "diameter": 12 } }])),
        ("/stock", json!([7, { "label": "ply", "length": 96, "width": 0, "thickness": "3/4" }])),
    ]);
    let pointers: Vec<String> = refused(&job).faults().map(|fault| fault.pointer.clone()).collect();
    let expected = [
        "/frame/members/0/station",
        "/frame/members/2/station",
        "/stock/0",
        "/stock/1/width",
        "/openings/0",
        "/openings/1",
    ];
    assert_eq!(pointers, expected);
}

#[test]
fn a_typed_job_is_checked_like_a_file() {
    let mut job = Job::from_value(&plain()).unwrap();
    job.gap = Some(crate::Length::inches(-1));
    job.stock[0].thickness = None;
    job.frame.members[2].station = crate::Length::inches(374);
    let pointers: Vec<String> = job.check().unwrap_err().faults().map(|fault| fault.pointer.clone()).collect();
    assert_eq!(pointers, ["/frame/members/2/station", "/stock/0/thickness", "/gap"]);
}

#[test]
fn a_flange_that_nobody_gave_is_told_once() {
    let job = with(&[("/frame", json!({ "members": [{ "station": 0 }, { "station": 24 }, { "station": 240 }] }))]);
    let found: Vec<String> = refused(&job).faults().map(|fault| fault.pointer.clone()).collect();
    assert_eq!(found, ["/frame/flange", "/frame/measured_to"]);
}

#[test]
fn rubbish_and_depth_do_no_harm() {
    let kind = |text: &str| Job::from_json(text).unwrap_err().first().kind;
    assert_eq!(kind(""), Kind::NotJson);
    assert_eq!(kind("{} {}"), Kind::NotJson);
    assert_eq!(kind("[]"), Kind::WrongType);
    assert_eq!(kind("{\"gap\": 1e999}"), Kind::NotJson);
    assert_eq!(kind(&"[".repeat(100_000)), Kind::NotJson);
    let deep = format!("{{\"schema\": 1, \"deck\": {}{}}}", "[".repeat(100), "]".repeat(100));
    assert_eq!(kind(&deep), Kind::WrongType);
    let many: Vec<Value> = (0..20_000).map(|at| json!({ "name": at.to_string(), "round": {} })).collect();
    let error: Error = refused(&with(&[("/openings", Value::Array(many))]));
    assert_eq!(error.count(), 60_000);
    let many: Vec<Value> =
        (0..5_000).map(|at| json!({ "name": at.to_string(), "round": { "x": 5, "y": 5, "diameter": 1 } })).collect();
    assert_eq!(refused(&with(&[("/openings", Value::Array(many))])).first().kind, Kind::TooMany);
}

#[test]
fn a_size_below_zero_is_told_beside_one_that_cannot_be_read() {
    let text = r#"{"schema": 1, "name": "x", "unit": "in", "deck": {"length": -3, "beam": "x"},
        "frame": {"measured_to": "centre", "flange": 2, "members": [{"station": 0}, {"station": 24}]},
        "stock": [{"label": "ply", "length": -4, "width": "y", "thickness": "3/4"}]}"#;
    let error = Job::from_json(text).unwrap_err();
    let pointers: Vec<&str> = error.faults().map(|fault| fault.pointer.as_str()).collect();
    assert_eq!(pointers, ["/deck/length", "/deck/beam", "/stock/0/length", "/stock/0/width"]);
}
