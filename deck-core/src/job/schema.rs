//! The JSON Schema of the job file, made from the same structures that are read into.

use super::{Job, SCHEMA, SchemaNumber};
use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde_json::Value;
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
/// What it accepts in shape the reader accepts in shape; that things fit together only the reader knows.
///
/// # Examples
/// ```
/// let schema = deck_core::job::schema();
/// assert_eq!(schema["properties"]["schema"]["const"], 1);
/// assert_eq!(schema["additionalProperties"], false);
/// ```
pub fn schema() -> Value {
    schemars::schema_for!(Job).to_value()
}
