//! Finds what a JSON pointer leads to in a plan, or says where it goes astray.

use deck_core::{Error, Fault, Kind};
use serde_json::Value;

/// Longest list of names that a message shows.
const SHOWN: usize = 20;

/// What the pointer leads to.
pub(crate) fn find<'a>(root: &'a Value, pointer: &str) -> Result<&'a Value, Error> {
    root.pointer(pointer).ok_or_else(|| {
        let (reached, value) = furthest(root, pointer);
        let message = format!("Nothing stands there. {}", held(reached, value));
        fault(pointer, message, "A pointer is empty, or starts with a slash, and leads from field to field.")
    })
}

/// What the pointer leads to, as what `take` makes of it.
pub(crate) fn find_as<'a, T>(
    root: &'a Value,
    pointer: &str,
    wanted: &str,
    take: impl FnOnce(&'a Value) -> Option<T>,
) -> Result<T, Error> {
    let value = find(root, pointer)?;
    take(value).ok_or_else(|| fault(pointer, format!("{} stands there.", sort(value)), &format!("Wanted: {wanted}.")))
}

fn fault(pointer: &str, message: String, accepted: &str) -> Error {
    Error::from(Fault::new(Kind::UnknownPointer, pointer, message, accepted).at(pointer))
}

/// The longest part of the pointer that leads somewhere, and where.
fn furthest<'p, 'a>(root: &'a Value, pointer: &'p str) -> (&'p str, &'a Value) {
    let ends = pointer.rmatch_indices('/').map(|(end, _)| end);
    let parts = ends.filter_map(|end| pointer.get(..end));
    parts.into_iter().find_map(|part| Some((part, root.pointer(part)?))).unwrap_or(("", root))
}

/// What stands where the pointer still led somewhere.
fn held(pointer: &str, value: &Value) -> String {
    let place = if pointer.is_empty() { "The plan" } else { pointer };
    match value {
        Value::Array(items) => format!("{place} is a list of {}, counted from 0.", items.len()),
        Value::Object(fields) if !fields.is_empty() => {
            let names: Vec<&str> = fields.keys().take(SHOWN).map(String::as_str).collect();
            format!("{place} has {}.", names.join(", "))
        }
        other => format!("{place} is {}.", sort(other).to_lowercase()),
    }
}

fn sort(value: &Value) -> &'static str {
    match value {
        Value::Null => "Null",
        Value::Bool(_) => "A truth value",
        Value::Number(_) => "A number",
        Value::String(_) => "A text",
        Value::Array(_) => "A list",
        Value::Object(_) => "An object",
    }
}

#[cfg(test)]
mod tests {
    use super::{find, find_as};
    use serde_json::{Value, json};

    fn said(pointer: &str) -> String {
        let plan = json!({ "name": "Dory", "takeoff": { "lines": [1, 2] }, "a/b": { "m~n": 3 } });
        find(&plan, pointer).map_or_else(|error| error.to_string(), Value::to_string)
    }

    #[test]
    fn pointers_lead_from_field_to_field() {
        assert_eq!(said("/takeoff/lines/1"), "2");
        assert_eq!(said("/a~1b/m~0n"), "3");
        assert!(said("").starts_with('{'));
    }

    #[test]
    fn a_pointer_astray_is_told_how_far_it_led() {
        assert!(said("/takeoff/lines/2").contains("/takeoff/lines is a list of 2, counted from 0."));
        assert!(said("/takeoff/line").contains("/takeoff has lines."));
        assert!(said("/name/first").contains("/name is a text."));
        assert!(said("name").contains("The plan has name, takeoff, a/b."));
    }

    #[test]
    fn another_sort_is_refused_with_what_stands_there() {
        let error = find_as(&json!({ "name": "Dory" }), "/name", "a number", Value::as_f64).unwrap_err();
        assert_eq!(error.to_string(), "/name: A text stands there. Wanted: a number.");
    }
}
