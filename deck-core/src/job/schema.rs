//! The JSON Schema of the job file, made from the same structures that are read into.
//!
//! What the derive cannot know is put right by hand: a sheet of a job has a thickness, an opening's shape stands among
//! its own fields, a whole number has an end, what is said of strength has its words and its kinds ([`strength`]), and a reading of a survey its
//! kinds ([`survey`]).

mod strength;
mod survey;

use super::{Job, SCHEMA, SchemaNumber};
use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde_json::{Map, Value, json};
use std::borrow::Cow;

impl JsonSchema for SchemaNumber {
    fn schema_name() -> Cow<'static, str> {
        "SchemaNumber".into()
    }

    fn inline_schema() -> bool {
        true
    }

    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({ "const": SCHEMA })
    }
}

/// The JSON Schema (draft 2020-12) of a job file.
///
/// What it accepts in shape the reader accepts in shape; whether things fit together only the reader knows.
///
/// # Examples
/// ```
/// let schema = deck_core::job::schema();
/// assert_eq!(schema["properties"]["schema"]["const"], 1);
/// assert_eq!(schema["additionalProperties"], false);
/// ```
pub fn schema() -> Value {
    let mut schema = schemars::schema_for!(Job).to_value();
    if let Some(Value::Object(sheet)) = schema.pointer_mut("/$defs/Sheet") {
        thickness_required(sheet);
    }
    if let Some(Value::Object(opening)) = schema.pointer_mut("/$defs/Opening") {
        shape_among_fields(opening);
    }
    for (place, field) in [("StripOutSpec", "covering"), ("CoveringSpec", "rolls")] {
        if let Some(Value::Object(section)) = schema.pointer_mut(&format!("/$defs/{place}")) {
            field_required(section, field);
        }
    }
    strength::words(&mut schema);
    strength::kinds(&mut schema);
    survey::readings(&mut schema);
    bound_numbers(&mut schema);
    schema
}

/// Elsewhere a sheet may do without a thickness; in a job it is a measurement.
fn thickness_required(sheet: &mut Map<String, Value>) {
    if let Some(thickness) = sheet.get_mut("properties").and_then(|fields| fields.get_mut("thickness")) {
        *thickness = json!({ "$ref": "#/$defs/Length", "description": thickness["description"] });
    }
    if let Some(Value::Array(required)) = sheet.get_mut("required") {
        required.push("thickness".into());
    }
}

/// A section may be left out, and what it cannot do without may not be, nor be null, nor be an empty list.
fn field_required(section: &mut Map<String, Value>, name: &str) {
    if let Some(field) = section.get_mut("properties").and_then(|fields| fields.get_mut(name)) {
        if let Some(kind) = field["anyOf"].get(0).cloned() {
            let description = field["description"].clone();
            *field = kind;
            field["description"] = description;
        } else if field["type"][0] == "array" {
            field["type"] = "array".into();
            field["minItems"] = 1.into();
        }
    }
    section.insert("required".into(), json!([name]));
}

/// One object with all fields, closed, of which one shape is required: editors complete that better than branches.
fn shape_among_fields(opening: &mut Map<String, Value>) {
    let branches = match opening.remove("oneOf") {
        Some(Value::Array(branches)) => branches,
        _ => Vec::new(),
    };
    if let Some(Value::Object(fields)) = opening.get_mut("properties") {
        for branch in &branches {
            for (name, shape) in branch["properties"].as_object().into_iter().flatten() {
                let mut shape = shape.clone();
                shape["additionalProperties"] = false.into();
                shape["description"] = branch["description"].clone();
                fields.insert(name.clone(), shape);
            }
        }
    }
    let required: Vec<Value> = branches.iter().map(|branch| json!({ "required": branch["required"] })).collect();
    opening.insert("oneOf".into(), required.into());
    opening.remove("unevaluatedProperties");
    opening.insert("additionalProperties".into(), false.into());
}

/// Gives each whole number the end that its type has; `format` alone binds nobody.
fn bound_numbers(schema: &mut Value) {
    match schema {
        Value::Object(map) => {
            let most = match map.get("format").and_then(Value::as_str) {
                Some("uint8") => Some(u32::from(u8::MAX)),
                Some("uint32") => Some(u32::MAX),
                _ => None,
            };
            if let Some(most) = most {
                map.remove("format");
                map.entry("maximum").or_insert_with(|| most.into());
            }
            map.values_mut().for_each(bound_numbers);
        }
        Value::Array(items) => items.iter_mut().for_each(bound_numbers),
        _ => {}
    }
}
