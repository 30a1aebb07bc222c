//! Reads the calls that need no job.

mod beam;
mod fasteners;
mod fill;
mod length;
mod nest;
mod outline;
mod panels;
mod plate;
mod sawing;
mod seam_lines;
mod seams;
mod span_limits;
mod survey;

pub(in crate::job) use beam::{beam_call, beam_call_value};
pub(in crate::job) use fasteners::{fasteners_call, fasteners_call_value};
pub(in crate::job) use fill::{fill_call, fill_call_value};
pub(in crate::job) use length::length_call;
pub(in crate::job) use nest::{nest_call, nest_call_value};
pub(in crate::job) use panels::{panels_call, panels_call_value};
pub(in crate::job) use plate::{plate_call, plate_call_value};
pub(in crate::job) use seams::{seams_call, seams_call_value};
pub(in crate::job) use span_limits::{span_limits_call, span_limits_call_value};
pub(in crate::job) use survey::{survey_call, survey_call_value};

use super::Notes;
use super::at::{At, Object};
use super::order::{in_order, unsaid};
use crate::error::{Error, Fault};
use crate::length::{Length, Unit};
use serde_json::Value;

const ACCEPTED: &str = "A call is a JSON object of the function's arguments.";

/// A call: its unit, what `read` makes of its other fields, and what `check` refuses of that. `faults` are those that
/// were found in parsing.
fn whole<T>(
    root: &Value,
    faults: Vec<Fault>,
    read: impl FnOnce(&mut Object<'_>, &mut Notes) -> Option<T>,
    check: impl FnOnce(&T) -> Result<(), Error>,
) -> Result<(Unit, T), Error> {
    let mut notes = Notes { faults, ..Notes::new("call") };
    let at = At { value: root, pointer: String::new() };
    let Some(mut fields) = at.object(&mut notes) else { return Err(in_order(root, notes.faults)) };
    notes.unit = fields.optional("unit", &mut notes, At::word).unwrap_or_default();
    let made = read(&mut fields, &mut notes);
    fields.close(&mut notes);
    if let Some(Err(error)) = made.as_ref().map(check) {
        let news = unsaid(&error, &notes.faults);
        notes.faults.extend(news);
    }
    match made.filter(|_| notes.faults.is_empty()) {
        Some(made) => Ok((notes.unit, made)),
        None => Err(in_order(root, notes.faults)),
    }
}

/// The gap between boards: none where it is left out, and what a job takes by default, `None`, where it is null.
fn gap(fields: &mut Object<'_>, notes: &mut Notes) -> Option<Length> {
    if fields.has("gap") { fields.optional("gap", notes, At::length) } else { Some(Length::ZERO) }
}

/// A pointer into a list from which unreadable items were left out, as a pointer into the list that was given.
fn moved(pointer: &str, list: &str, positions: &[usize]) -> Option<String> {
    let inside = pointer.strip_prefix(list)?;
    let (index, rest) =
        inside.split_once('/').map_or((inside, String::new()), |(index, rest)| (index, format!("/{rest}")));
    let position = positions.get(index.parse::<usize>().ok()?)?;
    Some(format!("{list}{position}{rest}"))
}
