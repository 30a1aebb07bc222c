//! The calls of a plan's steps: what they may be given, and every fault at its place.

use crate::error::{Error, Kind};
use crate::job::{FastenersCall, PanelsCall, SeamsCall};
use crate::length::{Length, Unit};
use crate::panels::{Panel, SeamLine};
use serde_json::{Value, json};

fn inch(text: &str) -> Length {
    Length::read(text, Unit::Inch).unwrap().length
}

fn told<T: std::fmt::Debug>(made: Result<T, Error>) -> Vec<(String, Kind)> {
    made.unwrap_err().faults().map(|fault| (fault.pointer.clone(), fault.kind)).collect()
}

fn at(pointer: &str, kind: Kind) -> (String, Kind) {
    (pointer.to_owned(), kind)
}

/// Twenty feet on 24 in members from 4 x 8 sheets.
fn seams() -> Value {
    json!({
        "frame": { "measured_to": "centre", "flange": 2, "regular": { "first": 0, "last": 240, "spacing": 24 } },
        "deck_length": "20 ft",
        "sheet": { "label": "4 x 8", "length": 96, "width": 48 }
    })
}

fn with(mut call: Value, field: &str, value: Value) -> Value {
    call[field] = value;
    call
}

fn stations(call: &Value) -> Vec<Length> {
    let found = SeamsCall::from_value(call).unwrap().seams().unwrap();
    found.layouts[0].seams.iter().map(|seam| seam.fore).collect()
}

#[test]
fn a_gap_left_out_is_none_and_a_null_one_is_the_job_s() {
    let gap = |call: Value| SeamsCall::from_value(&call).unwrap().gap;
    assert_eq!(gap(seams()), Some(Length::ZERO));
    assert_eq!(gap(with(seams(), "gap", Value::Null)), None);
    let null = SeamsCall::from_value(&with(seams(), "gap", Value::Null)).unwrap().seams().unwrap();
    let seam = &null.layouts[0].seams[0];
    assert_eq!(seam.aft - seam.fore, inch("1/8"));
}

#[test]
fn seams_need_no_outline_and_have_no_length_without_one() {
    let full = [48, 96, 144, 192].map(Length::inches);
    assert_eq!(stations(&seams()), full);
    let bare = SeamsCall::from_value(&seams()).unwrap().seams().unwrap();
    assert_eq!(bare.layouts[0].seams[0].length, None);
    let outline = json!({ "length": 240, "beam": 96 });
    let shaped = with(with(seams(), "outline", outline), "deck_length", Value::Null);
    assert_eq!(stations(&shaped), full);
    let wide = with(shaped, "outline", json!({ "length": 240, "beam": 97 }));
    let found = SeamsCall::from_value(&wide).unwrap().seams().unwrap();
    assert!(found.no_layout.unwrap().reason.contains("1\" short"));
}

#[test]
fn several_layouts_come_from_several_sheets() {
    let sheets = json!([{ "label": "a", "length": 96, "width": 48 }, { "label": "b", "length": 120, "width": 60 }]);
    let call = with(with(seams(), "sheet", sheets), "best", json!(3));
    let found = SeamsCall::from_value(&call).unwrap().seams().unwrap();
    assert_eq!(found.layouts.len(), 3);
    assert_eq!(found.layouts[0].boards.len(), 5);
}

#[test]
fn every_fault_of_a_call_for_seams_is_told_at_its_place() {
    let call = json!({
        "frame": { "measured_to": "center", "flange": 2, "members": [{ "station": 1 }, { "station": "x" }, { "station": 300 }] },
        "deck_length": 240,
        "sheet": [{ "label": "a", "length": 96, "width": 0 }, { "label": "a", "lenght": 96, "width": 48 }],
        "bearing": -1,
        "best": 0,
        "openings": [{ "name": "hatch", "round": { "x": 20, "y": 20, "diameter": 0 } }],
        "keep_clear": [{ "name": "gate", "from": 9, "to": 8 }],
        "fastening": { "edge_spacing": 0 },
        "shop": { "layouts": 5 },
        "saw": { "trim": 50 },
        "gaps": 1
    });
    let found = told(SeamsCall::from_value(&call));
    let expected = [
        at("/frame/measured_to", Kind::UnknownWord),
        at("/frame/members/1/station", Kind::LengthUnreadable),
        at("/sheet/0/width", Kind::LengthZero),
        at("/sheet/1/lenght", Kind::UnknownField),
        at("/bearing", Kind::LengthNegative),
        at("/best", Kind::OutOfRange),
        at("/openings/0/round/diameter", Kind::LengthZero),
        at("/keep_clear/0/to", Kind::OutOfRange),
        at("/fastening/edge_spacing", Kind::FastenerSpacing),
        at("/gaps", Kind::UnknownField),
    ];
    assert_eq!(found, expected);
    let refused = |field: &str, value: Value| told(SeamsCall::from_value(&with(seams(), field, value)));
    assert_eq!(refused("sheet", json!([])), [at("/sheet", Kind::EmptyList)]);
    assert_eq!(
        refused("sheet", json!({ "label": "a", "length": 96, "width": -1 })),
        [at("/sheet/width", Kind::LengthNegative)]
    );
    assert_eq!(refused("deck_length", json!(0)), [at("/deck_length", Kind::LengthZero)]);
    assert_eq!(refused("deck_length", Value::Null), [at("/deck_length", Kind::WrongType)]);
    assert_eq!(refused("deck_length", json!(200)), [at("/frame/regular/last", Kind::FrameMemberOutside)]);
    assert_eq!(refused("outline", json!({ "length": 200, "beam": 96 })), [at("/deck_length", Kind::Conflict)]);
    let notched = json!({ "length": 240, "beam": 96, "notch": { "width": 99, "depth": 9 } });
    assert_eq!(refused("outline", notched), [at("/outline/notch/width", Kind::OutlineNotchOutside)]);
    let twice = with(with(seams(), "bearing", json!(1)), "shop", json!({ "least_bearing": 1 }));
    assert_eq!(told(SeamsCall::from_value(&twice)), [at("/bearing", Kind::Conflict)]);
    assert_eq!(
        told(SeamsCall::from_json("{}")),
        ["/frame", "/deck_length", "/sheet"].map(|pointer| at(pointer, Kind::MissingField))
    );
}

fn panels(seams: &Value) -> Result<Vec<Panel>, Error> {
    PanelsCall::from_value(&json!({ "outline": { "length": 240, "beam": 96 }, "seams": seams, "gap": "1/8" }))?.panels()
}

#[test]
fn panels_are_cut_by_layouts_by_seams_and_by_stations() {
    let widths = |seams: Value| panels(&seams).unwrap().iter().map(|panel| panel.width).collect::<Vec<Length>>();
    let (first, rest) = (inch("48"), inch("191-7/8"));
    assert_eq!(widths(json!([48])), [first, rest]);
    assert_eq!(widths(json!([{ "fore": 48, "member": 3 }])), [first, rest]);
    assert_eq!(widths(json!([{ "fore": 48, "aft": "48-1/8", "number": 7 }])), [first, rest]);
    assert_eq!(widths(json!({ "seams": [48], "finish": 239 })), [first, inch("190-7/8")]);
    assert_eq!(widths(json!({ "layouts": [{ "seams": [48] }, { "seams": [] }] })), [first, rest]);
    assert_eq!(widths(json!([{ "seams": [48] }])), [first, rest]);
    assert_eq!(widths(json!([])), [inch("240")]);
    assert_eq!(panels(&json!([])).unwrap()[0].weight_lb, None);
}

#[test]
fn panels_in_code_are_those_of_the_document() {
    let call = PanelsCall::from_value(
        &json!({ "outline": { "length": 96, "beam": 90 }, "seams": [{ "fore": 48, "aft": 49, "member": 3 }] }),
    );
    let built =
        PanelsCall::new(call.as_ref().unwrap().outline.clone(), vec![SeamLine::new(inch("48"), inch("49")).on(3)]);
    assert_eq!(built, call.unwrap());
    let wrong = PanelsCall { finish: Some(inch("40")), ..built };
    assert_eq!(told(wrong.panels()), [at("/finish", Kind::OutOfRange)]);
}

#[test]
fn every_fault_of_a_call_for_panels_is_told_at_its_place() {
    let refused = |seams: Value| told(panels(&seams));
    assert_eq!(refused(json!([48, 48, 300, -1])), [1, 2, 3].map(|n| at(&format!("/seams/{n}"), Kind::OutOfRange)));
    assert_eq!(refused(json!([48, "x", 30])), [at("/seams/1", Kind::LengthUnreadable)]);
    let behind = json!({ "layouts": [{ "seams": [{ "fore": 48, "aft": 47 }], "finish": 300 }] });
    let place = |rest: &str| at(&format!("/seams/layouts/0/{rest}"), Kind::OutOfRange);
    assert_eq!(refused(behind), [place("seams/0"), place("finish")]);
    assert_eq!(refused(json!({ "seams": [{ "aft": 47 }] })), [at("/seams/seams/0/fore", Kind::MissingField)]);
    assert_eq!(refused(json!(48)), [at("/seams", Kind::WrongType)]);
    let none = json!({ "layouts": [], "no_layout": { "reason": "Too wide." } });
    assert_eq!(refused(none.clone()), [at("/seams/layouts", Kind::EmptyList)]);
    assert!(panels(&none).unwrap_err().message().ends_with("Too wide."));
    let call = json!({
        "outline": { "length": 240, "beam": 96, "bow": {} },
        "seams": [48],
        "thickness": 0,
        "openings": [
            { "name": "hatch", "round": { "x": 47, "y": 40, "diameter": 4 } },
            { "name": "locker", "round": { "x": 236, "y": 40, "diameter": 4 } },
            { "name": "rod", "round": { "x": 120, "y": 0, "diameter": 4 } }
        ],
        "finish": 237
    });
    let found = told(PanelsCall::from_value(&call));
    assert_eq!(found[..2], [at("/outline/bow/radius", Kind::MissingField), at("/thickness", Kind::LengthZero)]);
    assert_eq!(found.len(), 5);
    let call = with(with(call, "outline", json!({ "length": 240, "beam": 96 })), "thickness", json!("3/4"));
    let expected = [Kind::Conflict, Kind::Conflict, Kind::OpeningOutside];
    let found = told(PanelsCall::from_value(&call));
    assert_eq!(found, [0, 1, 2].map(|n| at(&format!("/openings/{n}"), expected[n])));
}

fn fasteners(panels: &Value) -> Value {
    json!({ "panels": panels, "frame": { "measured_to": "centre", "flange": 2, "members": [{ "station": 1 }, { "station": 48 }, { "station": 95 }] } })
}

fn two_panels() -> Value {
    let call = json!({ "outline": { "length": 96, "beam": 90, "bow": { "radius": 12 } }, "seams": [48] });
    PanelsCall::from_value(&call).unwrap().document().unwrap()
}

#[test]
fn a_seam_without_a_member_is_found_by_its_station() {
    let call = FastenersCall::from_value(&fasteners(&two_panels())).unwrap();
    let seams: Vec<Option<usize>> = call.fasteners().unwrap().rows.iter().map(|row| row.seam).collect();
    assert_eq!(seams, [None, Some(1), Some(1), None]);
}

#[test]
fn what_is_no_panel_is_refused() {
    let changed = |change: &dyn Fn(&mut Value)| {
        let mut panels = two_panels();
        change(&mut panels);
        told(FastenersCall::from_value(&fasteners(&panels)))
    };
    let first = [at("/panels/0", Kind::WrongType)];
    assert_eq!(changed(&|panels| panels[0] = json!(7)), first);
    assert_eq!(changed(&|panels| panels[0]["shape"] = Value::Null), first);
    assert_eq!(changed(&|panels| panels[0]["shape"] = json!([])), first);
    assert_eq!(changed(&|panels| panels[0]["shape"][0]["x"] = json!(1000)), first);
    let arc = two_panels()[0]["shape"].as_array().unwrap().iter().position(|side| side.get("arc").is_some()).unwrap();
    assert_eq!(changed(&|panels| panels[0]["shape"][arc]["arc"]["radius"] = json!(13)), first);
    assert_eq!(changed(&|panels| panels[1]["label"] = json!("1")), [at("/panels/1/label", Kind::DuplicateName)]);
    let mut call = fasteners(&two_panels());
    call["outline"] = json!({ "length": 90, "beam": 90 });
    call["fastening"] = json!({ "end_distance": 45 });
    let expected = [
        at("/frame/members/2/station", Kind::FrameMemberOutside),
        at("/fastening/end_distance", Kind::FastenerSpacing),
    ];
    assert_eq!(told(FastenersCall::from_value(&call)), expected);
    assert_eq!(
        told(FastenersCall::from_json("{}")),
        ["/panels", "/frame"].map(|pointer| at(pointer, Kind::MissingField))
    );
}

#[test]
fn a_planned_outline_that_makes_no_sense_is_refused() {
    let side = |x: i32, y: i32| json!({ "x": x, "y": y, "edge": "rim" });
    let refused = |sides: Vec<Value>| {
        told(PanelsCall::from_value(&json!({ "outline": { "outline": sides, "area": 1 }, "seams": [] })))
    };
    assert_eq!(refused(vec![side(0, 0)]), [at("/outline", Kind::OutlineCrossesItself)]);
    assert_eq!(
        refused(vec![side(0, 0), side(9, 9), side(9, 0), side(0, 9)]),
        [at("/outline", Kind::OutlineCrossesItself)]
    );
    assert_eq!(refused(vec![side(1, 0), side(9, 0), side(9, 9)]), [at("/outline", Kind::OutlineDatum)]);
    assert_eq!(refused(vec![json!({ "edge": 1 })]), [at("/outline", Kind::WrongType)]);
}
