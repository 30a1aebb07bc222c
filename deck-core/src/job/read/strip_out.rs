//! Reads what is said of the old deck.

use super::Notes;
use super::at::{At, Object};
use super::places::{Placed, list};
use crate::job::StripOutSpec;
use crate::money::ThreePoint;
use crate::strip_out::{Freed, OldFastener, Pit};

pub(super) fn strip_out(at: &At<'_>, notes: &mut Notes) -> Option<Placed<StripOutSpec>> {
    let mut fields = at.object(notes)?;
    let mut places = Vec::new();
    let spec = StripOutSpec {
        covering: fields.required("covering", notes, At::word),
        strip_width: fields.optional("strip_width", notes, At::length),
        covering_psf: fields.optional("covering_psf", notes, At::figure),
        covering_thickness: fields.optional("covering_thickness", notes, At::length),
        covering_hours: fields.optional("covering_hours", notes, three_point),
        board_width: fields.optional("board_width", notes, At::length),
        thickness: fields.optional("thickness", notes, At::length),
        soaked_least_percent: fields.optional("soaked_least_percent", notes, At::count),
        soaked_most_percent: fields.optional("soaked_most_percent", notes, At::count),
        board_minutes: fields.optional("board_minutes", notes, three_point),
        tape: fields.optional("tape", notes, At::flag),
        fasteners: list(&mut fields, "fasteners", notes, &mut places, fastener),
        freed: list(&mut fields, "freed", notes, &mut places, freed),
        pits: list(&mut fields, "pits", notes, &mut places, pit),
    };
    fields.close(notes);
    // What it lacks has been told.
    spec.covering.is_some().then_some(Placed { spec, places })
}

/// Three figures; whether they are in order the check tells.
pub(super) fn three_point(at: &At<'_>, notes: &mut Notes) -> Option<ThreePoint> {
    let mut fields = at.object(notes)?;
    let low = fields.required("low", notes, At::figure);
    let likely = fields.required("likely", notes, At::figure);
    let high = fields.required("high", notes, At::figure);
    fields.close(notes);
    Some(ThreePoint::new(low?, likely?, high?))
}

fn fastener(fields: &mut Object<'_>, notes: &mut Notes) -> Option<OldFastener> {
    let kind = fields.required("kind", notes, At::word);
    let condition = fields.defaulted("condition", notes, At::word);
    let count = fields.required("count", notes, At::count);
    let method = fields.optional("method", notes, At::word);
    let minutes = fields.optional("minutes", notes, three_point);
    let mut fastener = OldFastener::new(kind?, condition, count?);
    (fastener.method, fastener.minutes) = (method, minutes);
    Some(fastener)
}

fn freed(fields: &mut Object<'_>, notes: &mut Notes) -> Option<Freed> {
    let name = fields.required("name", notes, At::text);
    let x = fields.required("x", notes, At::length);
    let y = fields.required("y", notes, At::length);
    let depth = fields.required("depth", notes, At::length);
    let width = fields.required("width", notes, At::length);
    let becomes = fields.optional("becomes", notes, At::text);
    let mut freed = Freed::new(name?, (x?, y?), depth?, width?);
    freed.becomes = becomes;
    Some(freed)
}

fn pit(fields: &mut Object<'_>, notes: &mut Notes) -> Option<Pit> {
    let member = fields.required("member", notes, At::count);
    let depth = fields.required("depth", notes, At::length);
    let years = fields.required("years", notes, At::figure);
    let water = fields.required("water", notes, At::word);
    let wall = fields.optional("wall", notes, At::length);
    let mut pit = Pit::new(member?, depth?, years?, water?);
    pit.wall = wall;
    Some(pit)
}
