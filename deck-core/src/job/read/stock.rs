//! Reads sheets and offcuts.

use super::Notes;
use super::at::At;
use crate::stock::{Measured, Sheet};

/// A sheet of a deck: its thickness is a measurement like any other.
pub(super) fn sheet(at: &At<'_>, notes: &mut Notes) -> Option<Sheet> {
    read(at, notes, true).filter(|sheet| sheet.thickness.is_some())
}

/// A sheet that is only sawn: its thickness is of no account.
pub(super) fn any(at: &At<'_>, notes: &mut Notes) -> Option<Sheet> {
    read(at, notes, false)
}

fn read(at: &At<'_>, notes: &mut Notes, thick: bool) -> Option<Sheet> {
    let mut fields = at.object(notes)?;
    let label = fields.required("label", notes, At::text);
    let length = fields.required("length", notes, At::length);
    let width = fields.required("width", notes, At::length);
    let measured = fields.optional("measured", notes, measured);
    let thickness = if thick {
        fields.required("thickness", notes, At::length)
    } else {
        fields.optional("thickness", notes, At::length)
    };
    let grain = fields.defaulted("grain", notes, At::word);
    let count = fields.optional("count", notes, At::count);
    let price = fields.optional("price", notes, At::money);
    let offcut = fields.defaulted("offcut", notes, At::flag);
    let treatment = fields.optional("treatment", notes, At::word);
    let sizes = [("length", length), ("width", width), ("thickness", thickness)];
    fields.sizes(notes, if thick { &sizes } else { &sizes[..2] });
    fields.close(notes);
    let mut sheet = Sheet::new(label?, length?, width?).grain(grain).offcut(offcut);
    (sheet.measured, sheet.thickness, sheet.count) = (measured, thickness, count);
    (sheet.price, sheet.treatment) = (price, treatment);
    Some(sheet)
}

fn measured(at: &At<'_>, notes: &mut Notes) -> Option<Measured> {
    let mut fields = at.object(notes)?;
    let length = fields.required("length", notes, At::length);
    let width = fields.required("width", notes, At::length);
    fields.close(notes);
    Some(Measured { length: length?, width: width? })
}
