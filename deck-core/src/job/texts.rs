//! Puts the shop's own writing of each length beside its number.

use crate::length::{JsonForm, Length, Notation, Unit, with_json_form};
use serde::Serialize;
use serde_json::{Map, Value};

/// Subtrees in which a person reads no figures: they are drawn, or, as the cut tree, have a fixed shape.
const BARE: [&str; 5] = ["outline", "shape", "bounds", "sheets", "positions"];

/// Replaces marked lengths by numbers in the unit, and adds `<key>_text` after each that stands under a key.
pub(crate) fn beside(marked: Value, notation: &Notation) -> Value {
    walk(marked, notation, true)
}

/// A result as a document of its own, written as it stands in a plan.
pub(super) fn document<T: Serialize>(result: &T, notation: &Notation) -> Value {
    let marked = with_json_form(JsonForm::Marked(notation.unit), || serde_json::to_value(result));
    // unreachable: results hold texts, finite numbers and lists; none of them fails to be written.
    beside(marked.unwrap_or_default(), notation)
}

fn walk(value: Value, notation: &Notation, texts: bool) -> Value {
    match value {
        Value::Object(map) => Value::Object(object(map, notation, texts)),
        Value::Array(items) => items.into_iter().map(|item| walk(item, notation, texts)).collect(),
        Value::String(text) => match Length::marked(&text) {
            Some(length) => number(length, notation.unit),
            None => Value::String(text),
        },
        other => other,
    }
}

fn object(map: Map<String, Value>, notation: &Notation, texts: bool) -> Map<String, Value> {
    let mut written = Map::with_capacity(map.len() * 2);
    for (key, value) in map {
        let texts = texts && !BARE.contains(&key.as_str());
        let length = value.as_str().and_then(Length::marked).filter(|_| texts);
        let text = length.map(|length| (format!("{key}_text"), Value::String(notation.text(length))));
        written.insert(key, walk(value, notation, texts));
        written.extend(text);
    }
    written
}

/// The exact decimal as a JSON number, without a point where it is whole.
fn number(length: Length, unit: Unit) -> Value {
    serde_json::from_str(&length.decimal(unit)).unwrap_or(Value::Null)
}
