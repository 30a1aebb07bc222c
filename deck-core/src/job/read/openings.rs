//! Reads the clearances of openings, their lids, and old holes in the members.

use super::Notes;
use super::at::At;
use crate::job::{OldHolesSpec, OpeningRulesSpec};
use crate::outline::Lid;

pub(super) fn rules(at: &At<'_>, notes: &mut Notes) -> Option<OpeningRulesSpec> {
    let mut fields = at.object(notes)?;
    let spec = OpeningRulesSpec {
        from_seam: fields.optional("from_seam", notes, At::length),
        from_seam_preferred: fields.optional("from_seam_preferred", notes, At::length),
        from_edge: fields.optional("from_edge", notes, At::length),
        from_flange: fields.optional("from_flange", notes, At::length),
        corner_radius: fields.optional("corner_radius", notes, At::length),
        corner_radius_preferred: fields.optional("corner_radius_preferred", notes, At::length),
        apart: fields.optional("apart", notes, At::number),
        frame_width: fields.optional("frame_width", notes, At::length),
    };
    fields.close(notes);
    Some(spec)
}

pub(super) fn lid(at: &At<'_>, notes: &mut Notes) -> Option<Lid> {
    let mut fields = at.object(notes)?;
    let both = fields.has("clearance") && fields.has("lap");
    let clearance = fields.optional("clearance", notes, At::length);
    let lap = fields.optional("lap", notes, At::length);
    let layers = fields.optional("layers", notes, At::count);
    if both && clearance.is_some() && lap.is_some() {
        fields.conflict(notes, ["clearance", "lap"], "A lid either lies in its opening or laps over it.");
    }
    fields.close(notes);
    Some(Lid { clearance, lap, layers })
}

pub(super) fn old_holes(at: &At<'_>, notes: &mut Notes) -> Option<OldHolesSpec> {
    let mut fields = at.object(notes)?;
    let member = fields.required("member", notes, At::count);
    let y = fields.required("y", notes, |at, notes| at.whole(notes, At::length));
    let diameter = fields.required("diameter", notes, At::length);
    let x = fields.optional("x", notes, At::length);
    fields.close(notes);
    Some(OldHolesSpec { member: member?, y: y?, diameter: diameter?, x })
}
