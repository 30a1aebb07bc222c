//! The kinds of readings of a survey, as one object with all fields: editors complete that better than branches.

use serde_json::{Map, Value, json};

/// Merges the branches of a reading, of which each kind says what it needs; and asks for readings or old boards.
pub(super) fn readings(schema: &mut Value) {
    if let Some(Value::Object(survey)) = schema.pointer_mut("/$defs/SurveySpec") {
        survey.insert("anyOf".into(), json!([{ "required": ["readings"] }, { "required": ["old_boards"] }]));
    }
    let Some(Value::Object(reading)) = schema.pointer_mut("/$defs/Reading") else { return };
    let branches = match reading.remove("oneOf") {
        Some(Value::Array(branches)) => branches,
        _ => Vec::new(),
    };
    let mut fields = Map::new();
    let (mut kinds, mut needs) = (Vec::new(), Vec::new());
    for branch in &branches {
        let kind = &branch["properties"]["kind"]["const"];
        kinds.push(kind.clone());
        needs.push(json!({
            "if": { "properties": { "kind": { "const": kind } } },
            "then": { "required": branch["required"] }
        }));
        for (name, field) in branch["properties"].as_object().into_iter().flatten() {
            fields.entry(name.clone()).or_insert_with(|| field.clone());
        }
    }
    fields.insert("kind".into(), json!({ "type": "string", "enum": kinds, "description": "What was read." }));
    reading.insert("type".into(), "object".into());
    reading.insert("properties".into(), fields.into());
    reading.insert("required".into(), json!(["kind"]));
    reading.insert("allOf".into(), needs.into());
    reading.insert("additionalProperties".into(), false.into());
}
