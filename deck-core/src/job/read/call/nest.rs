//! Reads a call for parts on sheets.

use super::sawing::{effort, saw};
use super::{ACCEPTED, moved};
use crate::error::{Error, Fault, Kind};
use crate::job::NestCall;
use crate::job::read::at::{At, Listed};
use crate::job::read::order::{in_order, unsaid};
use crate::job::read::{Notes, stock, text};
use crate::length::{JsonForm, with_json_form};
use crate::nest::{self, Part, Rectangle};
use crate::stock::{Saw, Sheet};
use serde_json::Value;

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

/// What the nest refuses, at the places where it stands in the document.
fn check(parts: &Listed<Part>, stock: &Listed<Sheet>, saw: &Saw, notes: &Notes) -> Result<(), Error> {
    let checked = with_json_form(JsonForm::Input(notes.unit), || nest::check(&parts.items, &stock.items, saw));
    checked
        .map_err(|error| error.map_pointers(|pointer| moved(pointer, "/parts/", &parts.positions)))
        .map_err(|error| error.map_pointers(|pointer| moved(pointer, "/stock/", &stock.positions)))
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
    let inside = fields.defaulted("inside", notes, inside);
    fields.sizes(notes, &[("length", length), ("width", width)]);
    fields.close(notes);
    let mut part = Part::new(label?, length?, width?).count(count.unwrap_or(1)).grain(grain).inside(inside);
    part.boat = boat;
    Some(part)
}

/// The waste in a part; none where one of its rectangles cannot be read, as the places of the others would shift.
fn inside(at: &At<'_>, notes: &mut Notes) -> Option<Vec<Rectangle>> {
    let before = notes.faults.len();
    let listed = at.list(notes, rectangle)?;
    (notes.faults.len() == before).then_some(listed.items)
}

fn rectangle(at: &At<'_>, notes: &mut Notes) -> Option<Rectangle> {
    let mut fields = at.object(notes)?;
    let x = fields.required("x", notes, At::length);
    let y = fields.required("y", notes, At::length);
    let length = fields.required("length", notes, At::length);
    let width = fields.required("width", notes, At::length);
    fields.close(notes);
    Some(Rectangle::new(x?, y?, length?, width?))
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
