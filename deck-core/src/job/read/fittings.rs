//! Reads what is bolted down again.

use super::Notes;
use super::at::{At, Object};
use crate::geometry::Point;
use crate::job::fittings::{BoltSpec, FittingSpec, FittingsSpec, OldDatumSpec, PlateSpec, SkewSpec};
use crate::length::Length;

pub(super) fn fittings(at: &At<'_>, notes: &mut Notes) -> Option<FittingsSpec> {
    let mut fields = at.object(notes)?;
    let old_datum = fields.optional("old_datum", notes, datum);
    let from_seam = fields.optional("from_seam", notes, At::length);
    let bolt_lengths = fields.optional("bolt_lengths", notes, |at, notes| at.whole(notes, At::length));
    let items = fields.required("items", notes, |at, notes| at.whole(notes, fitting));
    fields.close(notes);
    Some(FittingsSpec { old_datum, from_seam, bolt_lengths, items: items? })
}

fn datum(at: &At<'_>, notes: &mut Notes) -> Option<OldDatumSpec> {
    let mut fields = at.object(notes)?;
    let (x, y) = place(&mut fields, notes);
    let from = fields.optional("from", notes, At::word);
    let side = fields.optional("side", notes, At::word);
    let skew = fields.optional("skew", notes, skew);
    fields.close(notes);
    Some(OldDatumSpec { x: x?, y: y?, from, side, skew })
}

fn place(fields: &mut Object<'_>, notes: &mut Notes) -> (Option<Length>, Option<Length>) {
    (fields.required("x", notes, At::length), fields.required("y", notes, At::length))
}

fn skew(at: &At<'_>, notes: &mut Notes) -> Option<SkewSpec> {
    let mut fields = at.object(notes)?;
    let over = fields.required("over", notes, At::length);
    let to_starboard = fields.required("to_starboard", notes, At::length);
    fields.close(notes);
    Some(SkewSpec { over: over?, to_starboard: to_starboard? })
}

fn fitting(at: &At<'_>, notes: &mut Notes) -> Option<FittingSpec> {
    let mut fields = at.object(notes)?;
    let name = fields.required("name", notes, At::text);
    let bolt = fields.required("bolt", notes, bolt);
    let holes = fields.required("holes", notes, |at, notes| at.whole(notes, hole));
    fields.close(notes);
    Some(FittingSpec { name: name?, bolt: bolt?, holes: holes? })
}

fn bolt(at: &At<'_>, notes: &mut Notes) -> Option<BoltSpec> {
    let mut fields = at.object(notes)?;
    let kind = fields.optional("kind", notes, At::text);
    let diameter = fields.required("diameter", notes, At::length);
    let foot = fields.optional("foot", notes, At::length);
    let washer = fields.optional("washer", notes, At::length);
    let nut = fields.optional("nut", notes, At::length);
    let plate = fields.optional("plate", notes, plate);
    fields.close(notes);
    Some(BoltSpec { kind, diameter: diameter?, foot, washer, nut, plate })
}

fn plate(at: &At<'_>, notes: &mut Notes) -> Option<PlateSpec> {
    let mut fields = at.object(notes)?;
    let length = fields.required("length", notes, At::length);
    let width = fields.required("width", notes, At::length);
    let thickness = fields.required("thickness", notes, At::length);
    let bolts = fields.optional("bolts", notes, At::count);
    fields.close(notes);
    Some(PlateSpec { length: length?, width: width?, thickness: thickness?, bolts })
}

pub(super) fn hole(at: &At<'_>, notes: &mut Notes) -> Option<Point> {
    let mut fields = at.object(notes)?;
    let (x, y) = place(&mut fields, notes);
    fields.close(notes);
    Some(Point::new(x?, y?))
}
