//! Reads what is said of strength.
//!
//! A thing with a fault in it counts as absent: what follows from the fault is not told again.

use super::Notes;
use super::at::{At, Object};
use super::panel::{capacity, ply, sound, stresses};
use crate::job::{ForceSpec, HoldSpec, LoadSpec, PanelSpec, PointPlace, PointSpec, SpanSpec};

/// The section, and where each of its point loads stands.
pub(super) fn span(at: &At<'_>, notes: &mut Notes) -> Option<(SpanSpec, Vec<usize>)> {
    let mut fields = at.object(notes)?;
    let points = fields.optional("points", notes, |at, notes| at.list(notes, |at, notes| whole(at, notes, point)));
    let (points, places) = points.map_or((None, Vec::new()), |listed| (Some(listed.items), listed.positions));
    let spec = SpanSpec {
        panel: fields.optional("panel", notes, |at, notes| whole(at, notes, panel)),
        wet: fields.optional("wet", notes, At::flag),
        duration: fields.optional("duration", notes, At::number),
        deflection: fields.optional("deflection", notes, At::number),
        load: fields.optional("load", notes, |at, notes| whole(at, notes, load)),
        points,
        fasteners: fields.optional("fasteners", notes, |at, notes| whole(at, notes, fasteners)),
    };
    fields.close(notes);
    Some((spec, places))
}

/// A thing in which nothing is at fault, of fields that may each be left out.
fn whole<'a, T>(at: &At<'a>, notes: &mut Notes, read: impl FnOnce(&mut Object<'a>, &mut Notes) -> T) -> Option<T> {
    sound(at, notes, |fields, notes| Some(read(fields, notes)))
}

fn panel(fields: &mut Object<'_>, notes: &mut Notes) -> PanelSpec {
    PanelSpec {
        series: fields.optional("series", notes, At::text),
        rating: fields.optional("rating", notes, At::text),
        group: fields.optional("group", notes, At::word),
        grade: fields.optional("grade", notes, At::word),
        across: fields.optional("across", notes, |at, notes| sound(at, notes, capacity)),
        along: fields.optional("along", notes, |at, notes| sound(at, notes, capacity)),
        plies: fields.optional("plies", notes, |at, notes| {
            at.list(notes, |at, notes| sound(at, notes, ply)).map(|listed| listed.items)
        }),
        stresses: fields.optional("stresses", notes, |at, notes| sound(at, notes, stresses)),
        cross_stiffness: fields.optional("cross_stiffness", notes, At::number),
    }
}

fn load(fields: &mut Object<'_>, notes: &mut Notes) -> LoadSpec {
    LoadSpec {
        psf: fields.optional("psf", notes, At::number),
        kpa: fields.optional("kpa", notes, At::number),
        preset: fields.optional("preset", notes, At::text),
    }
}

fn point(fields: &mut Object<'_>, notes: &mut Notes) -> PointSpec {
    PointSpec {
        name: fields.optional("name", notes, At::text),
        preset: fields.optional("preset", notes, At::word),
        force: fields.optional("force", notes, |at, notes| whole(at, notes, force)),
        length: fields.optional("length", notes, At::length),
        width: fields.optional("width", notes, At::length),
        at: fields.optional("at", notes, |at, notes| whole(at, notes, place)),
    }
}

fn place(fields: &mut Object<'_>, notes: &mut Notes) -> PointPlace {
    let station = fields.optional("station", notes, At::length);
    PointPlace { station, from_port: fields.optional("from_port", notes, At::length) }
}

fn force(fields: &mut Object<'_>, notes: &mut Notes) -> ForceSpec {
    let pounds = fields.optional("pounds", notes, At::number);
    ForceSpec { pounds, newtons: fields.optional("newtons", notes, At::number) }
}

fn fasteners(fields: &mut Object<'_>, notes: &mut Notes) -> HoldSpec {
    HoldSpec {
        alloy: fields.optional("alloy", notes, At::text),
        head: fields.optional("head", notes, At::length),
        gravity: fields.optional("gravity", notes, At::number),
        lift: fields.optional("lift", notes, |at, notes| whole(at, notes, force)),
        side: fields.optional("side", notes, |at, notes| whole(at, notes, force)),
    }
}
