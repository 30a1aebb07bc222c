//! Reads the calls that need no boat.

mod beam;
mod plate;
mod span_limits;

pub(in crate::job) use beam::{beam_call, beam_call_value};
pub(in crate::job) use plate::{plate_call, plate_call_value};
pub(in crate::job) use span_limits::{span_limits_call, span_limits_call_value};

use super::at::{At, Listed, Object, shown};
use super::order::{in_order, unsaid};
use super::{Notes, stock, text};
use crate::error::{Error, Fault, Kind};
use crate::job::NestCall;
use crate::length::{JsonForm, Unit, with_json_form};
use crate::nest::{self, Effort, Part};
use crate::stock::{Saw, Sheet};
use serde_json::Value;

const ACCEPTED: &str = "A call is a JSON object of the function's arguments.";

pub(in crate::job) fn nest_call(text: &str) -> Result<NestCall, Error> {
    let (value, twice) = text::parse(text, ACCEPTED)?;
    nest_call_value(&value, twice)
}

/// `faults` are those that were found in parsing.
pub(in crate::job) fn nest_call_value(root: &Value, faults: Vec<Fault>) -> Result<NestCall, Error> {
    let mut notes = Notes { faults, ..Notes::new("call") };
    let at = At { value: root, pointer: String::new() };
    let Some(mut fields) = at.object(&mut notes) else { return Err(in_order(root, notes.faults)) };
    notes.unit = fields.optional("unit", &mut notes, At::word).unwrap_or_default();
    let parts = fields.required("parts", &mut notes, |at, notes| at.list(notes, part)).unwrap_or_default();
    let stock = fields.required("stock", &mut notes, |at, notes| at.list(notes, stock::any)).unwrap_or_default();
    let saw = saw(&mut fields, &mut notes);
    let effort = fields.optional("effort", &mut notes, effort).unwrap_or_default();
    fields.close(&mut notes);
    if let Err(error) = check(&parts, &stock, &saw, &notes) {
        let news = unsaid(&error, &notes.faults);
        notes.faults.extend(news);
    }
    if !notes.faults.is_empty() {
        return Err(in_order(root, notes.faults));
    }
    Ok(NestCall { saw, effort, unit: notes.unit, ..NestCall::new(parts.items, stock.items) })
}

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

/// What the nest refuses, at the places where it stands in the document.
fn check(parts: &Listed<Part>, stock: &Listed<Sheet>, saw: &Saw, notes: &Notes) -> Result<(), Error> {
    let checked = with_json_form(JsonForm::Input(notes.unit), || nest::check(&parts.items, &stock.items, saw));
    checked
        .map_err(|error| error.map_pointers(|pointer| moved(pointer, "/parts/", &parts.positions)))
        .map_err(|error| error.map_pointers(|pointer| moved(pointer, "/stock/", &stock.positions)))
}

/// A pointer into a list from which unreadable items were left out, as a pointer into the list that was given.
fn moved(pointer: &str, list: &str, positions: &[usize]) -> Option<String> {
    let inside = pointer.strip_prefix(list)?;
    let (index, rest) =
        inside.split_once('/').map_or((inside, String::new()), |(index, rest)| (index, format!("/{rest}")));
    let position = positions.get(index.parse::<usize>().ok()?)?;
    Some(format!("{list}{position}{rest}"))
}

fn part(at: &At<'_>, notes: &mut Notes) -> Option<Part> {
    let mut fields = at.object(notes)?;
    let label = fields.required("label", notes, At::text);
    let length = fields.required("length", notes, At::length);
    let width = fields.required("width", notes, At::length);
    let count: Option<u32> = fields.defaulted("count", notes, |at, notes| count(at, notes).map(Some));
    let grain = fields.defaulted("grain", notes, At::word);
    let _ = fields.optional("value", notes, At::money);
    let boat = fields.optional("boat", notes, At::text);
    fields.sizes(notes, &[("length", length), ("width", width)]);
    fields.close(notes);
    let mut part = Part::new(label?, length?, width?).count(count.unwrap_or(1)).grain(grain);
    part.boat = boat;
    Some(part)
}

/// Null stands for as many as there is room for: there is no end of sheets to lay those out on.
fn count(at: &At<'_>, notes: &mut Notes) -> Option<u32> {
    if at.value.is_null() {
        let message = "Parts without a count have no end, and a nest lays out all of them.";
        at.refuse(notes, Kind::OutOfRange, message, "It is a whole number from 0 to 4294967295.");
        return None;
    }
    at.count(notes)
}

/// The saw's fields stand beside the others in a call.
fn saw(fields: &mut Object<'_>, notes: &mut Notes) -> Saw {
    let mut saw = Saw::new();
    saw.kerf = fields.optional("kerf", notes, At::length).unwrap_or_default();
    saw.trim = fields.optional("trim", notes, At::length).unwrap_or_default();
    saw.stages = fields.optional("stages", notes, At::small_count);
    saw.first = fields.optional("first", notes, At::word);
    saw.keep = fields.optional("keep", notes, At::pair);
    saw
}

fn effort(at: &At<'_>, notes: &mut Notes) -> Option<Effort> {
    const ACCEPTED: &str = "It is \"quick\", \"standard\" or \"thorough\", or a number of steps.";
    match at.value {
        Value::String(word) => match word.as_str() {
            "quick" => return Some(Effort::Quick),
            "standard" => return Some(Effort::Standard),
            "thorough" => return Some(Effort::Thorough),
            _ => at.refuse(notes, Kind::UnknownWord, format!("{} is not known here.", shown(at.value)), ACCEPTED),
        },
        Value::Number(number) => match steps(number) {
            Some(steps) => return Some(Effort::Steps(steps)),
            None => at.refuse(notes, Kind::OutOfRange, format!("{number} is no number of steps."), ACCEPTED),
        },
        _ => at.refuse(notes, Kind::WrongType, format!("{} is no effort.", shown(at.value)), ACCEPTED),
    }
    None
}

/// A whole number from zero up; `3.0` counts as whole, as spreadsheets write it.
fn steps(number: &serde_json::Number) -> Option<u64> {
    const WHOLE: f64 = 9_007_199_254_740_992.0;
    let whole = |number: &f64| number.fract() == 0.0 && (0.0..WHOLE).contains(number);
    // Whole and below 2^53: the cast is exact.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
    number.as_u64().or_else(|| number.as_f64().filter(whole).map(|number| number as u64))
}
