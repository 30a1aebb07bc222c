//! The words and the kinds of what is said of strength, from the published tables.

use crate::published::{ALLOYS, LIVE_PRESETS, PresetLoad, panel_series};
use serde_json::{Value, json};

/// Binds the fields that hold a published word to those words; null stands for a field that is left out.
pub(super) fn words(schema: &mut Value) {
    let series = || panel_series().iter();
    let mut ratings: Vec<&str> = series().flat_map(|series| series.rows).map(|row| row.rating).collect();
    ratings.sort_unstable();
    ratings.dedup();
    let uniform = LIVE_PRESETS.iter().filter(|preset| matches!(preset.load, PresetLoad::Uniform(_)));
    let lists: [(&str, Vec<&str>); 4] = [
        ("/$defs/PanelSpec/properties/series", series().map(|series| series.name).collect()),
        ("/$defs/PanelSpec/properties/rating", ratings),
        ("/$defs/LoadSpec/properties/preset", uniform.map(|preset| preset.key).collect()),
        ("/$defs/HoldSpec/properties/alloy", ALLOYS.iter().map(|alloy| alloy.name).collect()),
    ];
    for (pointer, words) in lists {
        if let Some(Value::Object(field)) = schema.pointer_mut(pointer) {
            let words = words.into_iter().map(Value::from).chain([Value::Null]);
            field.insert("enum".into(), words.collect());
        }
    }
}

/// Says which fields make a thing whole, where more than one choice does.
pub(super) fn kinds(schema: &mut Value) {
    let kinds: [(&str, &[&[&str]]); 6] = [
        ("PanelSpec", &[&["series", "rating"], &["across"], &["along"], &["plies", "stresses"]]),
        ("LoadSpec", &[&["psf"], &["kpa"], &["preset"]]),
        ("PointSpec", &[&["preset"], &["name", "length", "width"]]),
        ("ForceSpec", &[&["pounds"], &["newtons"]]),
        ("PointPlace", &[&["station", "from_port"]]),
        ("HoldSpec", &[&["alloy", "head"]]),
    ];
    for (name, kinds) in kinds {
        if let Some(Value::Object(thing)) = schema.pointer_mut(&format!("/$defs/{name}")) {
            thing.insert("anyOf".into(), kinds.iter().map(|fields| given(fields)).collect());
        }
    }
}

/// These fields are there, and none of them is null.
fn given(fields: &[&str]) -> Value {
    let some = |field: &&str| ((*field).to_owned(), json!({ "not": { "type": "null" } }));
    json!({ "required": fields, "properties": fields.iter().map(some).collect::<serde_json::Map<_, _>>() })
}
