//! From the checked job to what the room of strip-out asks.

use crate::job::Checked;
use crate::length::{Length, Unit};
use crate::strip_out::{StripOut, StripOutInput, strip_out as room};

pub(super) fn strip_out(checked: &Checked) -> Option<StripOut> {
    let (spec, old) = (checked.strip_out.as_ref()?, checked.settings.old_deck.as_ref()?);
    Some(room(&StripOutInput {
        outline: &checked.outline,
        frame: &checked.frame,
        openings: &checked.openings,
        covering: old.covering,
        strip_width: old.strip_width,
        grid: if checked.settings.notation.unit.is_imperial() {
            Length::inches(1)
        } else {
            Length::of(1, Unit::Centimetre)
        },
        board_width: old.board_width,
        thickness: old.thickness.unwrap_or(checked.thickness),
        soaked: old.soaked,
        covering_psf: spec.covering_psf,
        covering_thickness: spec.covering_thickness,
        covering_hours: old.covering_hours,
        board_minutes: old.board_minutes,
        fasteners: spec.fasteners.as_deref().unwrap_or_default(),
        tape: spec.tape.unwrap_or(false),
        freed: spec.freed.as_deref().unwrap_or_default(),
        pits: spec.pits.as_deref().unwrap_or_default(),
        wall: checked.settings.shop.wall,
    }))
}
