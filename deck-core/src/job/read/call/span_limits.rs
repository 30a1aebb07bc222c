//! Reads a call for the uniform loads of a panel.

use super::{ACCEPTED, whole};
use crate::error::{Error, Fault};
use crate::job::SpanLimitsCall;
use crate::job::read::at::{At, Object};
use crate::job::read::{Notes, panel, text};
use crate::span::{Axis, SpanOptions};
use serde_json::Value;

pub(in crate::job) fn span_limits_call(text: &str) -> Result<SpanLimitsCall, Error> {
    let (value, twice) = text::parse(text, ACCEPTED)?;
    span_limits_call_value(&value, twice)
}

/// `faults` are those that were found in parsing.
pub(in crate::job) fn span_limits_call_value(root: &Value, faults: Vec<Fault>) -> Result<SpanLimitsCall, Error> {
    // All that it refuses, it refuses before it works; and it works for microseconds.
    let check = |call: &SpanLimitsCall| call.span_limits().map(|_| ());
    let (unit, call) = whole(root, faults, fields, check)?;
    Ok(SpanLimitsCall { unit, ..call })
}

fn fields(fields: &mut Object<'_>, notes: &mut Notes) -> Option<SpanLimitsCall> {
    let panel = fields.required("panel", notes, panel::panel);
    let spacing = fields.required("spacing", notes, At::length);
    let axis: Option<Axis> = fields.required("axis", notes, At::word);
    let spans = fields.required("spans", notes, At::count);
    let options = options(fields, notes);
    let call = SpanLimitsCall::new(panel?, spacing?, axis?, spans?);
    Some(SpanLimitsCall { options, unit: notes.unit, ..call })
}

fn options(fields: &mut Object<'_>, notes: &mut Notes) -> SpanOptions {
    let mut options = SpanOptions::new();
    options.support = fields.optional("support", notes, At::length);
    options.clear_span = fields.optional("clear_span", notes, At::length);
    options.width = fields.optional("width", notes, At::length);
    options.wet = fields.optional("wet", notes, At::flag).unwrap_or(options.wet);
    options.deflection = fields.optional("deflection", notes, At::number).unwrap_or(options.deflection);
    options.duration = fields.optional("duration", notes, At::number).unwrap_or(options.duration);
    options
}
