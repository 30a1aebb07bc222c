//! From text to JSON values: what is not JSON is refused with its line, and a field that is given twice is noticed.

use crate::error::{Fault, Kind};
use serde::de::{DeserializeSeed, Deserializer, Error, MapAccess, SeqAccess, Visitor};
use serde_json::{Map, Number, Value};
use std::fmt;

/// Parses the text; the faults are those of fields given twice, of which the last one counts. `accepted` says what the
/// document is.
pub(super) fn parse(text: &str, accepted: &str) -> Result<(Value, Vec<Fault>), Fault> {
    // Some editors put a byte order mark before a text; it is no part of it.
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let mut twice = Vec::new();
    let mut deserializer = serde_json::Deserializer::from_str(text);
    let value = Node { pointer: String::new(), twice: &mut twice }
        .deserialize(&mut deserializer)
        .and_then(|value| deserializer.end().map(|()| value))
        .map_err(|error| not_json(text, &error, accepted))?;
    Ok((value, twice))
}

fn not_json(text: &str, error: &serde_json::Error, accepted: &str) -> Fault {
    let (line, column) = (error.line(), error.column());
    let whole = error.to_string();
    let what = whole.split(" at line ").next().unwrap_or(&whole);
    let at: String = text.lines().nth(line.saturating_sub(1)).unwrap_or("").trim().chars().take(60).collect();
    let message = format!("Line {line}, column {column}: {what}.");
    Fault::new(Kind::NotJson, at, message, accepted)
}

/// A place in the document that is about to be parsed.
struct Node<'t> {
    pointer: String,
    twice: &'t mut Vec<Fault>,
}

impl<'de> DeserializeSeed<'de> for Node<'_> {
    type Value = Value;
    fn deserialize<D: Deserializer<'de>>(self, deserializer: D) -> Result<Value, D::Error> {
        deserializer.deserialize_any(self)
    }
}

impl<'de> Visitor<'de> for Node<'_> {
    type Value = Value;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "a JSON value")
    }

    fn visit_unit<E: Error>(self) -> Result<Value, E> {
        Ok(Value::Null)
    }

    fn visit_bool<E: Error>(self, flag: bool) -> Result<Value, E> {
        Ok(Value::Bool(flag))
    }

    fn visit_u64<E: Error>(self, number: u64) -> Result<Value, E> {
        Ok(Value::from(number))
    }

    fn visit_i64<E: Error>(self, number: i64) -> Result<Value, E> {
        Ok(Value::from(number))
    }

    fn visit_f64<E: Error>(self, number: f64) -> Result<Value, E> {
        Number::from_f64(number).map(Value::Number).ok_or_else(|| E::custom("number out of range"))
    }

    fn visit_str<E: Error>(self, text: &str) -> Result<Value, E> {
        Ok(Value::String(text.to_owned()))
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut items: A) -> Result<Value, A::Error> {
        let mut list = Vec::new();
        loop {
            let pointer = format!("{}/{}", self.pointer, list.len());
            match items.next_element_seed(Node { pointer, twice: self.twice })? {
                Some(item) => list.push(item),
                None => return Ok(Value::Array(list)),
            }
        }
    }

    fn visit_map<A: MapAccess<'de>>(self, mut fields: A) -> Result<Value, A::Error> {
        let mut map = Map::new();
        while let Some(name) = fields.next_key::<String>()? {
            let pointer = format!("{}/{}", self.pointer, name.replace('~', "~0").replace('/', "~1"));
            let value = fields.next_value_seed(Node { pointer: pointer.clone(), twice: self.twice })?;
            if map.contains_key(&name) {
                let message = format!("\"{name}\" is given twice in one object.");
                self.twice.push(Fault::new(Kind::DuplicateName, &name, message, "Give it once.").at(&pointer));
            }
            map.insert(name, value);
        }
        Ok(Value::Object(map))
    }
}
