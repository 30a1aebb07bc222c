//! Reads what is damaged and what stays.

use super::Notes;
use super::at::At;
use super::fittings::hole;
use crate::job::patch::{DamageSpec, PatchSpec};

pub(super) fn patch(at: &At<'_>, notes: &mut Notes) -> Option<PatchSpec> {
    let mut fields = at.object(notes)?;
    let old_seams = fields.required("old_seams", notes, |at, notes| at.whole(notes, At::length));
    let old_gap = fields.optional("old_gap", notes, At::length);
    let old_thickness = fields.optional("old_thickness", notes, At::length);
    let damage = fields.required("damage", notes, |at, notes| at.whole(notes, damage));
    let margin = fields.optional("margin", notes, At::length);
    let blocking_width = fields.optional("blocking_width", notes, At::length);
    let blocking = fields.optional("blocking", notes, At::word);
    let least_strip = fields.optional("least_strip", notes, At::length);
    fields.close(notes);
    let (old_seams, damage) = (old_seams?, damage?);
    Some(PatchSpec { old_seams, old_gap, old_thickness, damage, margin, blocking_width, blocking, least_strip })
}

fn damage(at: &At<'_>, notes: &mut Notes) -> Option<DamageSpec> {
    let mut fields = at.object(notes)?;
    let name = fields.required("name", notes, At::text);
    let corners = fields.required("corners", notes, |at, notes| at.whole(notes, hole));
    fields.close(notes);
    Some(DamageSpec { name: name?, corners: corners? })
}
