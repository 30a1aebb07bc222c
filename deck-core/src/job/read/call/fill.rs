//! Reads a call for one sheet's best filling.

use super::sawing::{effort, saw};
use super::{ACCEPTED, moved};
use crate::error::{Error, Fault};
use crate::job::FillCall;
use crate::job::read::at::{At, Listed};
use crate::job::read::order::{in_order, unsaid};
use crate::job::read::{Notes, stock, text};
use crate::length::{JsonForm, with_json_form};
use crate::nest::{FillPart, check_fill};
use crate::stock::{Saw, Sheet};
use serde_json::Value;

pub(in crate::job) fn fill_call(text: &str) -> Result<FillCall, Error> {
    let (value, twice) = text::parse(text, ACCEPTED)?;
    fill_call_value(&value, twice)
}

/// `faults` are those that were found in parsing.
pub(in crate::job) fn fill_call_value(root: &Value, faults: Vec<Fault>) -> Result<FillCall, Error> {
    let mut notes = Notes { faults, ..Notes::new("call") };
    let at = At { value: root, pointer: String::new() };
    let Some(mut fields) = at.object(&mut notes) else { return Err(in_order(root, notes.faults)) };
    notes.unit = fields.optional("unit", &mut notes, At::word).unwrap_or_default();
    let sheet = fields.required("sheet", &mut notes, stock::any);
    let parts = fields.required("parts", &mut notes, |at, notes| at.list(notes, part)).unwrap_or_default();
    let saw = saw(&mut fields, &mut notes);
    let effort = fields.optional("effort", &mut notes, effort).unwrap_or_default();
    fields.close(&mut notes);
    if let Err(error) = check(sheet.as_ref(), &parts, &saw, &notes) {
        let news = unsaid(&error, &notes.faults);
        notes.faults.extend(news);
    }
    match sheet.filter(|_| notes.faults.is_empty()) {
        Some(sheet) => Ok(FillCall { saw, effort, unit: notes.unit, ..FillCall::new(sheet, parts.items) }),
        None => Err(in_order(root, notes.faults)),
    }
}

/// What the fill refuses, at the places where it stands in the document.
fn check(sheet: Option<&Sheet>, parts: &Listed<FillPart>, saw: &Saw, notes: &Notes) -> Result<(), Error> {
    let checked = with_json_form(JsonForm::Input(notes.unit), || check_fill(sheet, &parts.items, saw));
    checked.map_err(|error| error.map_pointers(|pointer| moved(pointer, "/parts/", &parts.positions)))
}

fn part(at: &At<'_>, notes: &mut Notes) -> Option<FillPart> {
    let mut fields = at.object(notes)?;
    let label = fields.required("label", notes, At::text);
    let length = fields.required("length", notes, At::length);
    let width = fields.required("width", notes, At::length);
    let count: Option<Option<u32>> = fields.defaulted("count", notes, |at, notes| count(at, notes).map(Some));
    let grain = fields.defaulted("grain", notes, At::word);
    let value = fields.optional("value", notes, At::money);
    let boat = fields.optional("boat", notes, At::text);
    fields.sizes(notes, &[("length", length), ("width", width)]);
    fields.close(notes);
    let mut part = FillPart::new(label?, length?, width?).grain(grain);
    part.count = count.unwrap_or(Some(1));
    (part.value, part.boat) = (value, boat);
    Some(part)
}

/// Null stands for as many as there is room for.
#[expect(clippy::option_option, reason = "a fault, no limit, or a limit")]
fn count(at: &At<'_>, notes: &mut Notes) -> Option<Option<u32>> {
    if at.value.is_null() { Some(None) } else { at.count(notes).map(Some) }
}
