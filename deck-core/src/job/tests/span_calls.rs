//! The calls of strength: what they may hold, and every fault at once.

use crate::error::{Error, Kind};
use crate::job::{BeamCall, PlateCall, SpanLimitsCall};
use crate::length::{Length, Unit};
use crate::published::{Capacity, FaceGrade, SpeciesGroup};
use crate::span::{
    Axis, BeamLoad, BeamProblem, End, Layup, Place, PlateLoad, PlateProblem, PlateSupport, Ply, PlyGrain, Rigidity,
    SpanOptions, Stresses, StructuralPanel, beam, span_limits,
};
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

const SANDED: &str = "sanded plywood Group 1 A-A/A-C";

fn limits(panel: &Value) -> Result<SpanLimitsCall, Error> {
    SpanLimitsCall::from_value(&json!({ "panel": panel, "spacing": 16, "axis": "along", "spans": 2 }))
}

#[test]
fn a_panel_is_known_by_its_fields() {
    let panel = |panel: Value| limits(&panel).unwrap().panel;
    assert_eq!(panel(json!({ "series": SANDED, "rating": "3/4" })), StructuralPanel::published(SANDED, "3/4"));
    let graded = json!({ "series": SANDED, "rating": "3/4", "group": "2", "grade": "other" });
    assert_eq!(panel(graded), StructuralPanel::sanded("3/4", SpeciesGroup::Group2, FaceGrade::Other));
    let capacity = Capacity { ei: 100_000.0, mr: 600.0, fs: 240.5 };
    let figures = json!({ "ei": 100_000, "mr": 600, "fs": 240.5 });
    assert_eq!(panel(figures.clone()), StructuralPanel::OneAxis(capacity));
    assert_eq!(panel(json!({ "along": figures })), StructuralPanel::own(None, Some(capacity)));
    let stresses = Stresses { e: 1.6e6, e_shear: 1.5e6, fb: 2000.0, fs: 50.0 };
    let given = json!({ "e": 1.6e6, "e_shear": 1.5e6, "fb": 2000, "fs": 50 });
    let section = json!({ "i": 0.2, "ks": 0.4, "ib_q": 6 });
    let sections = json!({ "thickness": "3/4", "along": section, "across": section, "stresses": given });
    assert!(matches!(panel(sections), StructuralPanel::Sections(panel) if panel.thickness == inch("3/4")));
    let ply = |grain: &str| json!({ "thickness": "1/4", "grain": grain });
    let plies =
        json!({ "plies": [ply("with"), ply("square"), ply("with")], "stresses": given, "cross_stiffness": 0.05 });
    let ply = |grain| Ply::new(inch("1/4"), grain);
    let plain = Layup::new(vec![ply(PlyGrain::With), ply(PlyGrain::Square), ply(PlyGrain::With)], stresses);
    assert_eq!(panel(plies), StructuralPanel::Layup(plain.cross_stiffness(0.05)));
}

#[test]
fn limits_are_those_that_rust_is_asked_for() {
    let text = json!({
        "panel": { "series": SANDED, "rating": "3/4" }, "spacing": "2 ft", "axis": "along", "spans": 3,
        "support": 50.8, "clear_span": 540, "deflection": 240, "wet": true, "duration": 1.15, "width": 300, "unit": "mm"
    });
    let call = SpanLimitsCall::from_json(&text.to_string()).unwrap();
    let options = SpanOptions::new().support(inch("2")).clear_span(inch("540 mm")).deflection(240.0);
    let options = options.wet(true).duration(1.15).width(inch("300 mm"));
    assert_eq!((&call.options, call.unit), (&options, Unit::Millimetre));
    let answer = call.span_limits().unwrap();
    let panel = StructuralPanel::published(SANDED, "3/4");
    let ours = span_limits(&panel, inch("24"), Axis::Along, 3, &options).unwrap();
    let (told, asked) = (answer.limits().unwrap(), ours.limits().unwrap());
    assert_eq!((told.deflection, told.bending, told.shear), (asked.deflection, asked.bending, asked.shear));
    let read: Value = serde_json::from_str(&answer.to_json(call.unit)).unwrap();
    assert_eq!(
        (&read["spacing"], &read["bending"], &read["unit"]),
        (&json!(609.6), &json!(told.bending), &json!("psf"))
    );
    // What a source says, it says in the call's unit.
    assert!(read["source"]["bending"].as_str().unwrap().contains("l1 = 609.6 mm"), "{read:#}");
}

#[test]
fn faults_of_limits_are_told_at_their_place() {
    assert_eq!(told(limits(&json!({ "serie": SANDED, "rating": "3/4" }))), [at("/panel/serie", Kind::UnknownField)]);
    assert_eq!(told(limits(&json!({ "name": "ply" }))), [at("/panel", Kind::WrongType)]);
    assert_eq!(told(limits(&json!({ "series": SANDED, "rating": "5" }))), [at("/panel/rating", Kind::UnknownWord)]);
    assert_eq!(told(limits(&json!({ "ei": 1, "mr": -1, "fs": "2" }))), [at("/panel/fs", Kind::WrongType)]);
    assert_eq!(told(limits(&json!({ "ei": 1, "mr": -1, "fs": 2 }))), [at("/panel/mr", Kind::OutOfRange)]);
    let all = json!({
        "panel": { "plies": [{ "thickness": 1, "grian": "with" }], "stresses": 7 }, "spacing": 0, "axis": "up", "spans": 4,
        "wet": "no", "deflection": null, "speed": 1
    });
    assert_eq!(
        told(SpanLimitsCall::from_value(&all)),
        [
            at("/panel/plies/0/grian", Kind::UnknownField),
            at("/panel/stresses", Kind::WrongType),
            at("/axis", Kind::UnknownWord),
            at("/wet", Kind::WrongType),
            at("/speed", Kind::UnknownField),
        ]
    );
    let checked = json!({
        "panel": { "ei": 1, "mr": 1, "fs": 1 }, "spacing": 0, "axis": "along", "spans": 4, "duration": 2, "support": -1
    });
    assert_eq!(
        told(SpanLimitsCall::from_value(&checked)),
        [
            at("/spacing", Kind::LengthZero),
            at("/spans", Kind::OutOfRange),
            at("/duration", Kind::OutOfRange),
            at("/support", Kind::LengthNegative),
        ]
    );
}

#[test]
fn a_beam_is_the_one_that_rust_is_asked() {
    let text = r#"{"unit": "mm", "spans": [400, "24 in"], "overhangs": [0, 10.5], "ends": ["fixed", "simple"], "stiffness": 7,
        "loads": [{"kind": "uniform", "value": 2}, {"kind": "patch", "at": "8 in", "size": 10, "value": 3},
                  {"kind": "point", "at": 9, "size": null, "value": -1}]}"#;
    let call = BeamCall::from_json(text).unwrap();
    let problem = BeamProblem::new(&[400.0, 609.6]).overhangs([0.0, 10.5]).ends([End::Fixed, End::Simple]);
    let loads = [BeamLoad::uniform(2.0), BeamLoad::patch(203.2, 10.0, 3.0), BeamLoad::point(9.0, -1.0)];
    assert_eq!((&call.problem, call.loads.as_slice()), (&problem.stiffness(7.0), loads.as_slice()));
    assert_eq!(call.beam().unwrap(), call.problem.solve(&loads).unwrap());
    let plain = BeamCall::from_json(r#"{"spans": [2, 3.5], "loads": [], "overhangs": null}"#).unwrap();
    assert_eq!(plain, BeamCall::new(BeamProblem::new(&[2.0, 3.5]), Vec::new()));
    let written: Value = serde_json::from_str(&call.beam().unwrap().to_json()).unwrap();
    assert_eq!(written["supports"].as_array().unwrap().len(), 3);
    assert_eq!(written["overhangs"][0], Value::Null);
    let one = beam(&[2.0], &[BeamLoad::point(1.0, 4.0)], [0.0; 2], 1.0).unwrap();
    let written: Value = serde_json::from_str(&one.to_json()).unwrap();
    assert_eq!(written["spans"][0]["moment"]["most"], json!({ "at": 1.0, "value": 2.0 }));
}

#[test]
fn faults_of_beams_are_told_at_their_place() {
    let told = |call: Value| told(BeamCall::from_value(&call));
    assert_eq!(told(json!({})), [at("/spans", Kind::MissingField), at("/loads", Kind::MissingField)]);
    assert_eq!(
        told(json!({
            "span": [1], "overhangs": [1], "stiffness": "1", "ends": ["simple", "glued"],
            "loads": [{ "kind": "uniform", "valu": 1 }, { "kind": "heavy", "value": 1 }, 7]
        })),
        [
            at("/span", Kind::UnknownField),
            at("/overhangs", Kind::WrongType),
            at("/stiffness", Kind::WrongType),
            at("/ends/1", Kind::UnknownWord),
            at("/loads/0/valu", Kind::UnknownField),
            at("/loads/1/kind", Kind::UnknownWord),
            at("/loads/2", Kind::WrongType),
        ]
    );
    assert_eq!(
        told(json!({ "spans": [1, 0], "stiffness": -1, "loads": [] })),
        [at("/spans/1", Kind::OutOfRange), at("/stiffness", Kind::OutOfRange)]
    );
    // The second load of those that could be read is the third of those that were given.
    let point = |place: f64| json!({ "kind": "point", "at": place, "value": 1 });
    assert_eq!(
        told(json!({ "spans": [1], "loads": [point(0.5), "?", point(2.0)] })),
        [at("/loads/1", Kind::WrongType), at("/loads/2/at", Kind::OutOfRange)]
    );
}

fn plate() -> Value {
    json!({
        "length": "4 ft", "width": 32, "dx": 9000, "dy": 27000, "torsion": 8000, "poisson": [0.02, 0.06], "mesh": 4,
        "supports": [{ "kind": "along", "y": 0, "clamped": true }, { "kind": "along", "y": 16, "between": [0, "3 ft"] },
                     { "kind": "across", "x": 48 }, { "kind": "point", "at": [1, 31] }],
        "loads": [{ "kind": "uniform", "value": 0.5 }, { "kind": "patch", "at": [20, 8], "size": [3, 3], "value": 200 },
                  { "kind": "line", "at": [24, 24], "size": [10, 0], "value": 4 }, { "kind": "point", "at": [30, 24], "value": 20 }]
    })
}

#[test]
fn a_plate_is_the_one_that_rust_is_asked() {
    let call = PlateCall::from_json(&plate().to_string()).unwrap();
    let supports = [
        PlateSupport::along(0.0).clamped(),
        PlateSupport::along(16.0).between(0.0, 36.0),
        PlateSupport::across(48.0),
        PlateSupport::at(Place::Point { at: [1.0, 31.0] }, false),
    ];
    let rigidity = Rigidity::new(9000.0, 27_000.0, 8000.0).poisson([0.02, 0.06]);
    assert_eq!(call.problem, PlateProblem::new(48.0, 32.0, rigidity, &supports).mesh(4.0));
    let loads = [
        PlateLoad::uniform(0.5),
        PlateLoad::patch([20.0, 8.0], [3.0, 3.0], 200.0),
        PlateLoad::line([24.0, 24.0], [10.0, 0.0], 4.0),
        PlateLoad::point([30.0, 24.0], 20.0),
    ];
    assert_eq!(call.loads, loads);
    let written: Value = serde_json::from_str(&call.plate().unwrap().to_json()).unwrap();
    assert_eq!((written["reactions"].as_array().unwrap().len(), &written["error"]), (4, &Value::Null));
    assert!(written["deflection"]["most"]["value"].as_f64().unwrap() > 0.0);
}

#[test]
fn faults_of_plates_are_told_at_their_place() {
    let told = |changes: &[(&str, Value)]| {
        let mut call = plate();
        for (pointer, value) in changes {
            super::set(&mut call, pointer, value.clone());
        }
        told(PlateCall::from_value(&call))
    };
    assert_eq!(
        told(&[
            ("/length", json!("long")),
            ("/poisson", json!([0.1, true])),
            ("/supports/0/clampd", json!(true)),
            ("/supports/1/kind", json!("round")),
            ("/supports/3/at", json!([1, 2, 3])),
            ("/loads/1/size", json!(3)),
            ("/grid", json!(3)),
        ]),
        [
            at("/length", Kind::LengthUnreadable),
            at("/poisson/1", Kind::WrongType),
            at("/supports/0/clampd", Kind::UnknownField),
            at("/supports/1/kind", Kind::UnknownWord),
            at("/supports/3/at", Kind::WrongType),
            at("/loads/1/size", Kind::WrongType),
            at("/grid", Kind::UnknownField),
        ]
    );
    assert_eq!(
        told(&[("/supports/2/x", json!(50)), ("/torsion", json!(-1))]),
        [at("/torsion", Kind::OutOfRange), at("/supports/2/x", Kind::OutOfRange)]
    );
    assert_eq!(
        told(&[("/loads/0", json!(1)), ("/loads/3/at", json!([49, 1]))]),
        [at("/loads/0", Kind::WrongType), at("/loads/3/at/0", Kind::OutOfRange)]
    );
    let fine = json!({ "mesh": 0.01 });
    let mut call = plate();
    super::set(&mut call, "/mesh", fine["mesh"].clone());
    let refused = PlateCall::from_value(&call).unwrap().plate().unwrap_err();
    assert_eq!((refused.pointer(), refused.first().kind), ("/mesh", Kind::TooMany));
}
