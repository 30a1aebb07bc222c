//! What a job says of the covering, of the old deck, of prices and of hours.

use super::{plain, refused, set, with};
use crate::error::Kind;
use crate::job::{Job, QuoteSpec, StripOutSpec, TaskSpec};
use crate::length::Length;
use crate::money::{Figure, ThreePoint};
use crate::strip_out::{OldCondition, OldCovering, OldFastener, OldKind, Pit, Water};
use serde_json::{Value, json};

/// Every field on the covering.
pub(super) fn roll_goods() -> Value {
    json!({
        "rolls": [{ "label": "carpet", "width": "6 ft", "length": "100 ft", "sold_by": "1 ft", "price": 5.2 }],
        "run": "fore-and-aft", "wrap": 2, "least_piece": 12, "off_ply_seams": 6, "psf": 0.4,
        "traffic": [{ "name": "gate", "x": 100, "y": 0, "depth": 28, "width": 40 }],
        "other_boats": [{ "boat": "Dunlin", "length": "20 ft", "count": 2 }],
        "adhesive": {
            "kind": "vinyl", "trowel": "1/16 in square", "coverage_least": 150, "coverage_most": 200, "can": 3.5,
            "wait_minutes": 20, "set_minutes": 40, "spread": 6
        }
    })
}

/// Every field on the old deck.
pub(super) fn old_deck() -> Value {
    let hours = json!({ "low": 0.5, "likely": 1, "high": 2 });
    json!({
        "covering": "glued", "strip_width": 12, "covering_psf": 0.4, "covering_thickness": "1/4", "covering_hours": hours,
        "board_width": 48, "thickness": "5/8", "soaked_least_percent": 20, "soaked_most_percent": 50, "board_minutes": hours,
        "tape": true,
        "fasteners": [
            { "kind": "screw", "condition": "seized", "count": 10, "method": "grind-head", "minutes": hours },
            { "kind": "bolt", "count": 4 }
        ],
        "freed": [{ "name": "harness", "x": 100, "y": 80, "depth": 4, "width": 8, "becomes": "a" }],
        "pits": [{ "member": 1, "depth": 0.04, "years": 12, "water": "salt", "wall": "1/8" }]
    })
}

/// Every field on prices and hours.
pub(super) fn prices() -> Value {
    let hours = json!({ "low": 0.5, "likely": 1, "high": 2 });
    json!({
        "kind": "fixed-price", "currency": "USD", "prepared_for": "the owner", "date": "today",
        "prices": [{ "item": "fastener", "price": 20 }, { "item": "edge-sealer", "price": "12.50" }],
        "materials": [{ "description": "filler", "count": 1.5, "unit": "can", "price": 14 }],
        "labour": {
            "rate": 80, "correlation": 0.25, "distribution": "normal", "charge": "p90",
            "tasks": [{ "task": "lay", "hours": hours, "rate": 90 }, { "task": "wash", "hours": hours }]
        },
        "disposal": 100, "freight": 50, "overhead_percent": 10, "contingency_percent": 5, "tax_percent": 6.25,
        "tax_on": "all", "change_rate": 95, "exclusions": ["paint"], "terms": ["cash"]
    })
}

#[test]
fn each_fault_is_pointed_to_in_its_place() {
    let base = || {
        with(&[
            ("/strip_out", {
                let mut old = old_deck();
                old["freed"] = json!([]);
                old
            }),
            ("/quote", prices()),
            ("/covering", roll_goods()),
        ])
    };
    assert!(Job::from_value(&base()).is_ok(), "{}", refused(&base()));
    let cases = [
        (Kind::FigureUnreadable, "/strip_out/covering_psf", json!(0.123_456_789_012)),
        (Kind::ThreePointOrder, "/strip_out/board_minutes", json!({ "low": 3, "likely": 2, "high": 4 })),
        (Kind::PitTooDeep, "/strip_out/pits/0/depth", json!("1/8")),
        (Kind::OutOfRange, "/strip_out/pits/0/years", json!(0)),
        (Kind::Conflict, "/strip_out/pits/0/member", json!(9)),
        (Kind::Conflict, "/strip_out/soaked_most_percent", json!(10)),
        (Kind::UnknownWord, "/strip_out/covering", json!("nailed")),
        (Kind::LengthZero, "/strip_out/strip_width", json!(0)),
        (Kind::OutOfRange, "/strip_out/fasteners/1/count", json!(200_000)),
        (Kind::ThreePointOrder, "/strip_out/fasteners/0/minutes", json!({ "low": 3, "likely": 5, "high": 4 })),
        (Kind::OutOfRange, "/quote/labour/correlation", json!(1.5)),
        (Kind::MoneyNegative, "/quote/labour/rate", json!(-1)),
        (Kind::DuplicateName, "/quote/labour/tasks/1/task", json!("lay")),
        (Kind::DuplicateName, "/quote/prices/1/item", json!("fastener")),
        (Kind::Conflict, "/quote/prices/0/item", json!("sheet")),
        (Kind::OutOfRange, "/quote/overhead_percent", json!(-1)),
        (Kind::MoneyUnreadable, "/quote/materials/0/price", json!("dear")),
        (Kind::UnknownWord, "/quote/kind", json!("guess")),
        (Kind::EmptyList, "/covering/rolls", json!([])),
        (Kind::LengthNegative, "/covering/rolls/0/width", json!(-3)),
        (Kind::Conflict, "/covering/rolls/0/sold_by", json!("101 ft")),
        (Kind::Conflict, "/covering/least_piece", json!("7 ft")),
        (Kind::ZoneOutside, "/covering/traffic/0/x", json!(240)),
        (Kind::OutOfRange, "/covering/other_boats/0/count", json!(101)),
        (Kind::OutOfRange, "/covering/adhesive/can", json!(0)),
        (Kind::Conflict, "/covering/adhesive/coverage_most", json!(100)),
        (Kind::Conflict, "/covering/adhesive/set_minutes", json!(20)),
    ];
    for (kind, pointer, value) in cases {
        let mut job = base();
        set(&mut job, pointer, value);
        let error = refused(&job);
        let found: Vec<(Kind, &str)> = error.faults().map(|fault| (fault.kind, fault.pointer.as_str())).collect();
        assert_eq!(found, [(kind, pointer)], "{error}");
    }
    let mut untaxed = base();
    untaxed["quote"].as_object_mut().unwrap().remove("tax_on");
    assert_eq!(refused(&untaxed).first().pointer, "/quote/tax_percent");
    assert_eq!(refused(&with(&[("/strip_out", json!({}))])).first().pointer, "/strip_out/covering");
    assert_eq!(refused(&with(&[("/covering", json!({}))])).first().pointer, "/covering/rolls");
    let mut timeless = base();
    timeless["covering"]["adhesive"].as_object_mut().unwrap().remove("set_minutes");
    assert_eq!(refused(&timeless).first().pointer, "/covering/adhesive/kind");
}

#[test]
fn faults_of_all_sorts_are_told_at_once_and_do_not_shift_each_other() {
    let job = with(&[(
        "/strip_out",
        json!({
            "covering": "glued", "strip_with": 12,
            "fasteners": [{ "kind": "rivet", "count": 2 }, { "kind": "screw", "count": 200_000 }],
            "freed": [{ "name": "hose", "x": 238, "y": 10, "depth": 6, "width": 6, "becomes": "hatch" }],
        }),
    )]);
    let error = refused(&job);
    let found: Vec<(Kind, &str)> = error.faults().map(|fault| (fault.kind, fault.pointer.as_str())).collect();
    let expected = [
        (Kind::UnknownField, "/strip_out/strip_with"),
        (Kind::UnknownWord, "/strip_out/fasteners/0/kind"),
        (Kind::OutOfRange, "/strip_out/fasteners/1/count"),
        (Kind::OpeningOutside, "/strip_out/freed/0/x"),
        (Kind::Conflict, "/strip_out/freed/0/becomes"),
    ];
    assert_eq!(found, expected, "{error}");
}

#[test]
fn a_typed_job_with_these_sections_is_checked_written_and_read_again() {
    let mut job = Job::from_value(&plain()).unwrap();
    let fastener = OldFastener::new(OldKind::Screw, OldCondition::Seized, 7);
    let pit = Pit::new(2, Length::inch_fraction(1, 32), Figure::of(9), Water::Brackish);
    let old = StripOutSpec::new().covering(OldCovering::Stapled).fasteners(vec![fastener]).pits(vec![pit]);
    let points = ThreePoint::tenths(1, 2, 3);
    let labour = crate::job::LabourSpec::new().rate("80".parse().unwrap()).tasks(vec![TaskSpec::new("lay", points)]);
    job = job.strip_out(old).quote(QuoteSpec::new().labour(labour));
    job.check().unwrap();
    assert_eq!(Job::from_json(&job.to_json()).unwrap(), job);
    // An empty section asks for a quote all the same, and is not lost.
    let bare = Job::from_value(&with(&[("/quote", json!({}))])).unwrap();
    assert_eq!(bare.quote, Some(QuoteSpec::new()));
    assert_eq!(Job::from_json(&bare.to_json()).unwrap(), bare);
    let roll = crate::covering::Roll::new("carpet", Length::inches(72), Length::inches(1200));
    job = job.covering(crate::job::CoveringSpec::new().rolls(vec![roll]));
    assert_eq!(Job::from_json(&job.to_json()).unwrap(), job);
    job.strip_out.as_mut().unwrap().pits.as_mut().unwrap()[0].member = 40;
    assert_eq!(job.check().unwrap_err().first().pointer, "/strip_out/pits/0/member");
}
