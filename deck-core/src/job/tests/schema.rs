//! That the schema and the reader are of one mind: about each field, what is required, and what type it is.

use super::{plain, with};
use crate::error::{Fault, Kind};
use crate::job::{Job, schema};
use serde_json::{Map, Value, json};
use std::collections::{BTreeMap, BTreeSet};

/// What is bolted down again, every field used.
fn fittings() -> Value {
    json!({
        "old_datum": { "x": 1, "y": 0.5, "from": "stern", "side": "starboard", "skew": { "over": 240, "to_starboard": "1/4" } },
        "from_seam": 2, "bolt_lengths": [1, 2, 3],
        "items": [{
            "name": "rail", "holes": [{ "x": 40, "y": 20 }],
            "bolt": {
                "kind": "hex bolt", "diameter": "1/4", "foot": "1/8", "washer": 0.06, "nut": "1/4",
                "plate": { "length": 4, "width": 2, "thickness": "1/8", "bolts": 2 }
            }
        }]
    })
}

/// What is damaged and what stays, every field used.
fn patch() -> Value {
    json!({
        "old_seams": [48, 96], "old_gap": 0.1, "old_thickness": 0.7, "margin": 6, "blocking_width": 10,
        "blocking": "anywhere", "least_strip": 10,
        "damage": [{ "name": "rot", "corners": [{ "x": 60, "y": 20 }, { "x": 70, "y": 20 }, { "x": 70, "y": 30 }] }]
    })
}

/// Jobs that use every field of the schema between them.
fn full() -> Vec<Value> {
    let mut one = measured();
    one["covering"] = super::work::roll_goods();
    one["strip_out"] = super::work::old_deck();
    one["quote"] = super::work::prices();
    [vec![one], others()].concat()
}

/// A job of measurements and settings.
fn measured() -> Value {
    let member = json!({
        "station": 2, "station_port": "1-15/16", "station_starboard": "2-1/16", "measured_to": "web", "profile": "C", "flange": 2, "faces": "aft", "wall": "1/8", "port_end": 1,
        "starboard_end": 95, "condition": "bent"
    });
    json!({
        "schema": 1, "name": "Avocet", "unit": "in",
        "deck": {
            "length": 240, "beam": 96, "bow": { "radius": 10 }, "taper": { "length": 40, "bow_beam": 80 },
            "notch": { "width": 30, "depth": 20, "from_port": 30, "inside_radius": 2, "stern_radius": 1 }
        },
        "frame": {
            "profile": "Z", "flange": 2, "faces": "fore", "measured_to": "centre", "wall": 0.1,
            "members": [member, { "station": 30 }]
        },
        "openings": [
            { "name": "a", "purpose": "fuel", "round": { "x": 60, "y": 40, "diameter": 6 }, "framed": true },
            {
                "name": "b", "rectangle": { "x": 80, "y": 40, "depth": 10, "width": 20, "corner_radius": 2 },
                "lid": { "clearance": "1/8", "layers": 2 }
            },
            {
                "name": "c", "rectangle": { "x": 150, "y": 90, "depth": 4, "width": 6 }, "slot": "starboard",
                "lid": { "lap": 1 }
            }
        ],
        "opening_rules": {
            "from_seam": 3, "from_seam_preferred": 6, "from_edge": 4, "from_flange": 2, "corner_radius": 1,
            "corner_radius_preferred": 2, "apart": 1.5, "frame_width": 3
        },
        "old_holes": [{ "member": 1, "y": [10, "20-1/2"], "diameter": "1/4", "x": 3 }],
        "fittings": fittings(),
        "keep_clear": [{ "name": "gate", "from": 100, "to": 128 }],
        "stock": [{
            "label": "ply", "length": 96, "width": 48, "measured": { "length": 96, "width": 47.9 }, "thickness": "3/4",
            "grain": "none", "count": 6, "price": 62.5, "offcut": false, "treatment": "micronized-copper"
        }],
        "extra_parts": [{ "label": "lid", "length": 20, "width": 12, "count": 2, "grain": "length", "layers": 2 }],
        "gap": "1/8", "end_tolerance": 1,
        "fastening": {
            "kind": "screw", "diameter": 0.25, "length": 2, "threads_per_inch": 20, "drill_point": 0.25, "edge_spacing": 8,
            "field_spacing": 12, "edge_distance": 0.375, "edge_distance_metal": 0.375, "end_distance": 1, "stagger": true,
            "old_hole_clear": 2.5, "reuse_old_holes": true, "spares_percent": 5, "box": 100
        },
        "saw": { "kerf": 0.125, "trim": 0.25, "stages": 2, "first": "width", "keep": [24, 12], "face": "down" },
        "shop": {
            "fractions": 32, "feet": true, "least_bearing": 0.5, "preferred_bearing": 0.75, "least_panel_width": 12,
            "preferred_panel_width": 16, "preferred_supports": 3, "overhang": 6, "side_overhang": 3, "layouts": 3,
            "spare_sheets": 1, "sealer_coats": 2, "edge_sealer_coverage": "100'", "tape_width": 2, "tape_thickness": 0.03,
            "tape_roll": "50'", "barrier": true, "clearance": 3, "paper": "a4"
        },
        "span": {
            "panel": { "series": "sanded plywood Group 1 A-A/A-C", "rating": "3/4", "group": "2", "grade": "other" },
            "wet": false, "duration": 1.15, "deflection": 240, "load": { "psf": 60 },
            "points": [
                { "preset": "heel", "force": { "pounds": 200 }, "at": { "station": 40, "from_port": 20 } },
                { "name": "keg", "length": 12, "width": 12, "force": { "newtons": 700 } }
            ],
            "fasteners": {
                "alloy": "6061-T6", "head": "1/2", "gravity": 0.5, "lift": { "pounds": 90 }, "side": { "newtons": 90 }
            }
        },
        "arrange": {
            "compare": ["athwart", "fore-and-aft"], "build": "best", "stagger": 2, "block_width": 10, "block_spacing": 6,
            "seams_by_nest": true
        },
        "tolerance": {
            "measuring": { "under": "1/32", "over": 0 }, "chained": true, "sawing": { "under": 0, "over": "1/16" },
            "setting": { "under": 0, "over": "1/32" },
            "sheet": "1/16", "by_margin": true
        },
        "narrow_flange": { "angle_leg": "1-1/4", "spacing": 8 }
    })
}

/// Jobs with what excludes a field of the first.
fn others() -> Vec<Value> {
    let corner = |x: i64, y: i64| json!({ "x": x, "y": y });
    let own = json!({ "ei": 1e5, "mr": 400, "fs": 200 });
    let fasteners = json!({
        "alloy": "6063-T5", "head": "1/2", "lift": { "newtons": 90 }, "side": { "pounds": 90 }
    });
    let clipped = with(&[
        ("/patch", patch()),
        ("/deck/bow", json!({ "clip": 8 })),
        ("/span", json!({ "panel": { "across": own, "along": own }, "load": { "kpa": 3 }, "fasteners": fasteners })),
    ]);
    let ply = |grain: &str| json!({ "thickness": "1/4", "grain": grain, "stiffness": 1 });
    let plies = json!({
        "plies": [ply("with"), ply("square"), ply("with")], "cross_stiffness": 0.03,
        "stresses": { "e": 1.6e6, "e_shear": 1.5e6, "fb": 1900, "fs": 72 }
    });
    let cornered = with(&[
        (
            "/deck",
            json!({ "outline": [
                { "x": 0, "y": 12, "arc": { "radius": 12, "bulge": "out" } },
                corner(12, 0), corner(240, 0), corner(240, 96), corner(0, 96)
            ] }),
        ),
        (
            "/frame",
            json!({ "flange": 2, "measured_to": "centre", "regular": { "first": 0, "last": 240, "spacing": 24 } }),
        ),
        ("/span", json!({ "panel": plies, "load": { "preset": "assembly" } })),
    ]);
    vec![clipped, cornered, surveyed()]
}

/// A job whose outline and members come from a survey.
fn surveyed() -> Value {
    let survey = json!({
        "readings": [
            { "kind": "distance", "name": "port side", "between": ["BP", "SP"], "reading": 240, "error": "1/16" },
            { "kind": "tie", "of": "BS", "from": ["BP", "SP"], "readings": [100, 260], "side": "starboard" },
            { "kind": "offset", "of": "SS", "along": ["BP", "SP"], "station": 240, "reading": 100 },
            { "kind": "station", "of": "M1", "along": ["BP", "SP"], "reading": 2 },
            { "kind": "straight", "points": ["BP", "M1", "SP"] },
            { "kind": "square", "at": "BP", "between": ["SP", "BS"] },
            { "kind": "station", "of": "M2", "reading": 30 },
            { "kind": "offset", "of": "M2", "reading": 1 }
        ],
        "datum": ["BP", "SP"], "corners": ["BP", "SP", "SS", "BS"], "error": 0.0625,
        "known": [{ "point": "BP", "x": 0, "y": 0 }, { "point": "SP", "x": 240, "y": 0 }],
        "traces": [{
            "name": "bow", "points": [[0, 0], [0, 50], [0, 100]], "scale": [{ "from": [0, 0], "to": [0, 100], "is": 100 }],
            "at": [{ "point": "BP", "trace": [0, 0] }, { "point": "BS", "trace": [0, -100] }], "flipped": true,
            "tolerance": 0.25
        }],
        "old_boards": {
            "widths": [48, 48, 48, 48, 48], "start": 0, "gap": 0, "rows": [24], "members": [0, 24, 48], "tolerance": 0.25,
            "flange": 2
        },
        "outline": ["SP", "BP", "BS", "SS"], "members": ["M1", ["M2", "M2"]], "lie": "measured"
    });
    with(&[
        ("/deck", json!({ "from": "survey" })),
        ("/frame", json!({ "flange": 2, "measured_to": "centre", "from": "survey" })),
        ("/survey", survey),
    ])
}

/// The fields at each place of the schema; places in lists are written `*`.
fn fields_of(schema: &Value) -> BTreeMap<String, BTreeSet<String>> {
    fn walk(root: &Value, node: &Value, place: &str, found: &mut BTreeMap<String, BTreeSet<String>>) {
        if let Some(reference) = node["$ref"].as_str() {
            walk(root, root.pointer(&reference[1..]).unwrap(), place, found);
        }
        for branch in ["anyOf", "oneOf", "prefixItems"].iter().filter_map(|key| node[key].as_array()).flatten() {
            walk(root, branch, place, found);
        }
        if node["items"].is_object() {
            walk(root, &node["items"], &format!("{place}/*"), found);
        }
        for (name, field) in node["properties"].as_object().into_iter().flatten() {
            found.entry(place.into()).or_default().insert(name.clone());
            walk(root, field, &format!("{place}/{name}"), found);
        }
    }
    let mut found = BTreeMap::new();
    walk(schema, schema, "", &mut found);
    found
}

fn general(pointer: &str) -> String {
    let step = |step: &str| if step.parse::<usize>().is_ok() { "*".to_owned() } else { step.to_owned() };
    pointer.split('/').map(step).collect::<Vec<_>>().join("/")
}

/// Every pointer in a document, the root's first.
fn pointers(node: &Value, here: &str, found: &mut Vec<String>) {
    found.push(here.into());
    match node {
        Value::Object(map) => map.iter().for_each(|(name, value)| pointers(value, &format!("{here}/{name}"), found)),
        Value::Array(list) => {
            list.iter().enumerate().for_each(|(at, value)| pointers(value, &format!("{here}/{at}"), found));
        }
        _ => {}
    }
}

fn all_pointers(job: &Value) -> Vec<String> {
    let mut found = Vec::new();
    pointers(job, "", &mut found);
    found
}

/// True for what a schema can say, as against what only the frame or the deck as a whole can.
fn is_about_shape(fault: &Fault) -> bool {
    let shape = [
        Kind::UnknownField,
        Kind::MissingField,
        Kind::WrongType,
        Kind::UnknownWord,
        Kind::OutOfRange,
        Kind::EmptyList,
        Kind::NestStages,
        Kind::SchemaNumber,
    ];
    // That members come from one of two fields, that a flange is given in one of two places, and that a zone's ends are
    // the right way round, the schema does not say.
    let in_either = ["/members", "/flange", "/measured_to", "/profile", "/faces"];
    let beyond = fault.kind == Kind::MissingField
        && fault.pointer.starts_with("/frame/")
        && in_either.iter().any(|field| fault.pointer.ends_with(field))
        || fault.pointer.starts_with("/keep_clear") && fault.kind == Kind::OutOfRange;
    shape.contains(&fault.kind) && !beyond
}

fn agree(validator: &jsonschema::Validator, job: &Value, what: &str) {
    let read = Job::from_value(job);
    let told: Vec<String> = read.iter_err().into_iter().filter(is_about_shape).map(|fault| fault.to_string()).collect();
    assert_eq!(validator.is_valid(job), told.is_empty(), "{what}: the reader says {told:?}");
}

/// The faults of a result.
trait IterErr {
    fn iter_err(&self) -> Vec<Fault>;
}

impl IterErr for Result<Job, crate::Error> {
    fn iter_err(&self) -> Vec<Fault> {
        self.as_ref().err().map(|error| error.faults().cloned().collect()).unwrap_or_default()
    }
}

#[test]
fn the_full_jobs_use_every_field_of_the_schema() {
    let mut used: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
    for job in full() {
        Job::from_value(&job).unwrap();
        for pointer in all_pointers(&job) {
            if let Some(Value::Object(map)) = job.pointer(&pointer) {
                used.entry(general(&pointer)).or_default().extend(map.keys().cloned());
            }
        }
    }
    assert_eq!(used, fields_of(&schema()));
}

#[test]
fn the_reader_knows_the_fields_of_the_schema_and_no_others() {
    let fields = fields_of(&schema());
    for job in full() {
        for pointer in all_pointers(&job).iter().filter(|pointer| job.pointer(pointer).is_some_and(Value::is_object)) {
            // Of the fields that are there only the stranger's list tells; take them out by leaving it alone there.
            let mut strange = job.clone();
            let object: &mut Map<String, Value> = strange.pointer_mut(pointer).unwrap().as_object_mut().unwrap();
            object.insert("zzzzzz".into(), Value::Null);
            let faults = Job::from_value(&strange).iter_err();
            let fault = faults.iter().find(|fault| fault.pointer == format!("{pointer}/zzzzzz")).unwrap();
            assert_eq!(fault.kind, Kind::UnknownField);
            let listed: BTreeSet<String> = fault.accepted.split('"').skip(1).step_by(2).map(str::to_owned).collect();
            assert_eq!(listed, fields[&general(pointer)], "at {pointer}");
        }
    }
}

#[test]
fn every_default_is_that_of_a_field() {
    let fields = fields_of(&schema());
    for row in crate::published::defaults::ALL {
        let (place, name) = row.pointer.rsplit_once('/').unwrap();
        assert!(fields[place].contains(name), "{}", row.pointer);
    }
}

#[test]
fn every_object_of_the_schema_is_closed() {
    fn walk(node: &Value, place: &str) {
        match node {
            Value::Object(map) => {
                if map.get("properties").is_some_and(Value::is_object)
                    && map.get("type").is_some_and(|kind| kind == "object")
                {
                    assert_eq!(map.get("additionalProperties"), Some(&Value::Bool(false)), "{place}");
                    assert!(map.contains_key("description"), "{place} says nothing");
                }
                map.iter().for_each(|(name, value)| walk(value, &format!("{place}/{name}")));
            }
            Value::Array(list) => list.iter().for_each(|value| walk(value, place)),
            _ => {}
        }
    }
    let schema = schema();
    assert_eq!(schema["$schema"], "https://json-schema.org/draft/2020-12/schema");
    assert!(jsonschema::meta::is_valid(&schema));
    walk(&schema, "");
}

#[test]
fn schema_and_reader_accept_and_refuse_the_same_shapes() {
    let validator = jsonschema::validator_for(&schema()).unwrap();
    let strangers = [
        Value::Null,
        json!(true),
        json!([]),
        json!({}),
        json!("zzz"),
        json!(1.5),
        json!(-3),
        json!(3),
        json!(1e10),
        json!([1, 2]),
    ];
    agree(&validator, &plain(), "plain");
    for job in full() {
        assert!(validator.is_valid(&job));
        for pointer in all_pointers(&job).iter().filter(|pointer| !pointer.is_empty()) {
            for stranger in &strangers {
                let mut other = job.clone();
                *other.pointer_mut(pointer).unwrap() = stranger.clone();
                agree(&validator, &other, &format!("{stranger} at {pointer}"));
            }
            let (parent, name) = pointer.rsplit_once('/').unwrap();
            let mut less = job.clone();
            if let Some(Value::Object(map)) = less.pointer_mut(parent) {
                map.shift_remove(name);
                agree(&validator, &less, &format!("without {pointer}"));
            }
        }
    }
    // Two shapes, two corners, two kinds of outline.
    for (pointer, value) in [
        ("/deck/outline", json!([])),
        ("/deck/bow", json!({ "radius": 1, "clip": 1 })),
        (
            "/openings",
            json!([{ "name": "a", "round": { "x": 9, "y": 9, "diameter": 1 }, "rectangle": { "x": 9, "y": 9, "depth": 1, "width": 1 } }]),
        ),
    ] {
        let both = with(&[(pointer, value)]);
        assert!(!validator.is_valid(&both), "{pointer}");
        assert_eq!(Job::from_value(&both).unwrap_err().first().kind, Kind::Conflict, "{pointer}");
    }
}
