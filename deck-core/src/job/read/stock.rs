//! Reads sheets and offcuts.

use super::Notes;
use super::at::At;
use crate::stock::{Measured, Sheet};

pub(super) fn sheet(at: &At<'_>, notes: &mut Notes) -> Option<Sheet> {
    let mut fields = at.object(notes)?;
    let label = fields.required("label", notes, At::text);
    let length = fields.required("length", notes, At::length);
    let width = fields.required("width", notes, At::length);
    let measured = fields.optional("measured", notes, measured);
    let thickness = fields.required("thickness", notes, At::length);
    let grain = fields.defaulted("grain", notes, At::word);
    let count = fields.optional("count", notes, At::count);
    let price = fields.optional("price", notes, At::money);
    let offcut = fields.defaulted("offcut", notes, At::flag);
    let treatment = fields.optional("treatment", notes, At::word);
    fields.sizes(notes, &[("length", length), ("width", width), ("thickness", thickness)]);
    fields.close(notes);
    let mut sheet = Sheet::new(label?, length?, width?).thickness(thickness?).grain(grain).offcut(offcut);
    (sheet.measured, sheet.count, sheet.price, sheet.treatment) = (measured, count, price, treatment);
    Some(sheet)
}

fn measured(at: &At<'_>, notes: &mut Notes) -> Option<Measured> {
    let mut fields = at.object(notes)?;
    let length = fields.required("length", notes, At::length);
    let width = fields.required("width", notes, At::length);
    fields.close(notes);
    Some(Measured { length: length?, width: width? })
}
