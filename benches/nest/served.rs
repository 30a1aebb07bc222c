//! Questions from another program, one JSON object a line, and their answers: the side-by-side run asks in this way.
//!
//! `{"what": "nest", "instance": {...}, "turned": false}` is answered by `{"sheets", "bound", "proven", "seconds"}`; `fill`
//! likewise by `{"value", "bound", "proven", "seconds"}`, and what is not known answered by `{"unknown": what}`.

use crate::Outcome;
use crate::args::Args;
use crate::data::Instance;
use crate::fill::filled;
use crate::measure::{area, timed};
use serde::Deserialize;
use serde_json::{Value, json};
use std::io::{BufRead, Write};

#[derive(Deserialize)]
struct Question {
    what: String,
    instance: Instance,
    #[serde(default)]
    turned: bool,
}

pub(crate) fn run(args: &Args) -> Outcome {
    let mut out = std::io::stdout();
    for line in std::io::stdin().lock().lines() {
        let line = line.map_err(|error| error.to_string())?;
        let question: Question = serde_json::from_str(&line).map_err(|error| format!("the question: {error}"))?;
        let answer = answer(&question, args)?;
        writeln!(out, "{answer}").and_then(|()| out.flush()).map_err(|error| error.to_string())?;
    }
    Ok(())
}

fn answer(question: &Question, args: &Args) -> Result<Value, String> {
    let Question { what, instance, turned } = question;
    match what.as_str() {
        "nest" => {
            let (nest, seconds) = timed(instance, *turned, args)?;
            let bound = instance.sheets_of(area(nest.bound)?);
            Ok(json!({
                "sheets": nest.sheet_count, "unplaced": nest.unplaced.len(), "bound": bound, "proven": nest.proven,
                "seconds": seconds,
            }))
        }
        "fill" => {
            let filled = filled(instance, *turned, true, args)?;
            Ok(json!({
                "value": filled.value, "bound": filled.bound, "proven": filled.proven, "seconds": filled.seconds,
            }))
        }
        other => Ok(json!({ "unknown": other })),
    }
}
