//! Tests of the job: its file, its faults, its settings.

mod call;
mod faults;
mod files;
mod fill_call;
mod messages;
mod round_trip;
#[cfg(feature = "schema")]
mod schema;
mod settings;
mod span;
mod span_calls;
mod step_calls;
mod work;

use crate::error::Error;
use crate::job::Job;
use serde_json::{Value, json};

/// A job that is right.
fn plain() -> Value {
    json!({
        "schema": 1,
        "name": "Sandpiper",
        "unit": "in",
        "deck": { "length": 240, "beam": 96 },
        "frame": {
            "flange": 2,
            "measured_to": "centre",
            "members": [{ "station": 0 }, { "station": 24 }, { "station": 240 }]
        },
        "stock": [{ "label": "ply", "length": 96, "width": 48, "thickness": "3/4" }]
    })
}

/// Puts a value at a pointer; the objects on the way are made where they are not there.
fn set(job: &mut Value, pointer: &str, value: Value) {
    let mut here = job;
    for step in pointer.split('/').skip(1) {
        here = match here {
            Value::Array(list) => {
                let index: usize = step.parse().unwrap();
                if index == list.len() {
                    list.push(Value::Null);
                }
                &mut list[index]
            }
            other => &mut other[step],
        };
    }
    *here = value;
}

/// The plain job with some values in other places.
fn with(changes: &[(&str, Value)]) -> Value {
    let mut job = plain();
    for (pointer, value) in changes {
        set(&mut job, pointer, value.clone());
    }
    job
}

fn refused(job: &Value) -> Error {
    Job::from_json(&job.to_string()).unwrap_err()
}
