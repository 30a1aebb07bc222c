//! Reads what is said of the covering.

use super::Notes;
use super::at::{At, Object};
use super::places::{Placed, list};
use crate::covering::{Drop, Roll, Traffic};
use crate::error::Kind;
use crate::job::{AdhesiveSpec, CoveringSpec};

pub(super) fn covering(at: &At<'_>, notes: &mut Notes) -> Option<Placed<CoveringSpec>> {
    let mut fields = at.object(notes)?;
    let mut places = Vec::new();
    let before = notes.faults.len();
    if !fields.has("rolls") {
        let message = "The covering has no rolls.".to_owned();
        fields.missing("rolls", notes, message, "Give the rolls that can be had, one at least.");
    }
    let rolls = list(&mut fields, "rolls", notes, &mut places, roll);
    if rolls.is_none() && notes.faults.len() == before {
        // The list is null.
        at.refuse(notes, Kind::WrongType, "The covering has no rolls.", "\"rolls\" is a list of one roll at least.");
    }
    // Some are there, and not one of them could be read: that has been told.
    let rolls = rolls.filter(|rolls| !rolls.is_empty() || notes.faults.len() == before);
    let spec = CoveringSpec {
        rolls,
        run: fields.optional("run", notes, At::word),
        wrap: fields.optional("wrap", notes, At::length),
        least_piece: fields.optional("least_piece", notes, At::length),
        off_ply_seams: fields.optional("off_ply_seams", notes, At::length),
        traffic: list(&mut fields, "traffic", notes, &mut places, traffic),
        other_boats: list(&mut fields, "other_boats", notes, &mut places, other),
        psf: fields.optional("psf", notes, At::figure),
        adhesive: fields.optional("adhesive", notes, adhesive),
    };
    fields.close(notes);
    spec.rolls.is_some().then_some(Placed { spec, places })
}

fn roll(fields: &mut Object<'_>, notes: &mut Notes) -> Option<Roll> {
    let label = fields.required("label", notes, At::text);
    let width = fields.required("width", notes, At::length);
    let length = fields.required("length", notes, At::length);
    let sold_by = fields.optional("sold_by", notes, At::length);
    let price = fields.optional("price", notes, At::money);
    let mut roll = Roll::new(label?, width?, length?);
    (roll.sold_by, roll.price) = (sold_by, price);
    Some(roll)
}

fn traffic(fields: &mut Object<'_>, notes: &mut Notes) -> Option<Traffic> {
    let name = fields.required("name", notes, At::text);
    let x = fields.required("x", notes, At::length);
    let y = fields.required("y", notes, At::length);
    let depth = fields.required("depth", notes, At::length);
    let width = fields.required("width", notes, At::length);
    Some(Traffic::new(name?, (x?, y?), depth?, width?))
}

fn other(fields: &mut Object<'_>, notes: &mut Notes) -> Option<Drop> {
    let boat = fields.required("boat", notes, At::text);
    let length = fields.required("length", notes, At::length);
    let count = fields.optional("count", notes, At::count);
    let mut drop = Drop::new(boat?, length?);
    drop.count = count;
    Some(drop)
}

fn adhesive(at: &At<'_>, notes: &mut Notes) -> Option<AdhesiveSpec> {
    let mut fields = at.object(notes)?;
    let spec = AdhesiveSpec {
        kind: fields.optional("kind", notes, At::word),
        trowel: fields.optional("trowel", notes, At::text),
        coverage_least: fields.optional("coverage_least", notes, At::figure),
        coverage_most: fields.optional("coverage_most", notes, At::figure),
        can: fields.optional("can", notes, At::figure),
        wait_minutes: fields.optional("wait_minutes", notes, At::figure),
        set_minutes: fields.optional("set_minutes", notes, At::figure),
        spread: fields.optional("spread", notes, At::figure),
    };
    fields.close(notes);
    Some(spec)
}
