//! Reads what is said of errors.

use super::Notes;
use super::at::At;
use crate::job::{ErrorSpec, ToleranceSpec, UnevenError};
use serde_json::Value;

pub(super) fn tolerance(at: &At<'_>, notes: &mut Notes) -> Option<ToleranceSpec> {
    let mut fields = at.object(notes)?;
    let spec = ToleranceSpec {
        measuring: fields.optional("measuring", notes, error),
        chained: fields.optional("chained", notes, At::flag),
        sawing: fields.optional("sawing", notes, error),
        setting: fields.optional("setting", notes, error),
        sheet: fields.optional("sheet", notes, At::length),
        by_margin: fields.optional("by_margin", notes, At::flag),
    };
    fields.close(notes);
    Some(spec)
}

fn error(at: &At<'_>, notes: &mut Notes) -> Option<ErrorSpec> {
    if !matches!(at.value, Value::Object(_)) {
        return at.length(notes).map(ErrorSpec::Even);
    }
    let mut fields = at.object(notes)?;
    let under = fields.required("under", notes, At::length);
    let over = fields.required("over", notes, At::length);
    fields.close(notes);
    Some(ErrorSpec::Uneven(UnevenError { under: under?, over: over? }))
}
