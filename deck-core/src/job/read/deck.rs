//! Reads the deck: its outline, its openings, its zones.

use super::Notes;
use super::at::{At, Object};
use crate::error::Kind;
use crate::outline::{
    ArcSpec, BowCorner, Corner, Deck, Explicit, KeepClear, Notch, Opening, OpeningShape, Parametric, Surveyed, Taper,
};

pub(super) fn deck(at: &At<'_>, notes: &mut Notes) -> Option<Deck> {
    let mut fields = at.object(notes)?;
    let measures = ["length", "beam", "bow", "taper", "notch"];
    let given: Vec<&'static str> = measures.into_iter().filter(|name| fields.has(name)).collect();
    let deck = if fields.has("from") {
        let named = given.first().copied().or(fields.has("outline").then_some("outline"));
        if let Some(other) = named {
            fields.conflict(notes, [other, "from"], "The deck is taken from the survey, and given as well.");
        }
        let from = fields.required("from", notes, At::word);
        from.filter(|_| named.is_none()).map(|from| Deck::Surveyed(Surveyed { from }))
    } else if fields.has("outline") {
        if let Some(first) = given.first() {
            let message = "The deck is given both corner by corner and by its measures.";
            fields.conflict(notes, [first, "outline"], message);
        }
        explicit(&mut fields, notes).filter(|_| given.is_empty())
    } else {
        parametric(&mut fields, notes)
    };
    fields.close(notes);
    deck
}

fn explicit(fields: &mut Object<'_>, notes: &mut Notes) -> Option<Deck> {
    let corners = fields.required("outline", notes, |at, notes| {
        let before = notes.faults.len();
        let corners = at.list(notes, corner)?;
        // A corner that is missing makes another deck of it: one cannot go on without.
        (notes.faults.len() == before).then_some(corners.items)
    })?;
    Some(Deck::Explicit(Explicit { outline: corners }))
}

fn corner(at: &At<'_>, notes: &mut Notes) -> Option<Corner> {
    let mut fields = at.object(notes)?;
    let x = fields.required("x", notes, At::length);
    let y = fields.required("y", notes, At::length);
    let arc = fields.optional("arc", notes, arc);
    fields.close(notes);
    Some(Corner { x: x?, y: y?, arc })
}

fn arc(at: &At<'_>, notes: &mut Notes) -> Option<ArcSpec> {
    let mut fields = at.object(notes)?;
    let radius = fields.required("radius", notes, At::length);
    let bulge = fields.required("bulge", notes, At::word);
    fields.close(notes);
    Some(ArcSpec { radius: radius?, bulge: bulge? })
}

fn parametric(fields: &mut Object<'_>, notes: &mut Notes) -> Option<Deck> {
    let length = fields.required("length", notes, At::length);
    let beam = fields.required("beam", notes, At::length);
    let bow = fields.optional("bow", notes, bow);
    let taper = fields.optional("taper", notes, taper);
    let notch = fields.optional("notch", notes, notch);
    fields.sizes(notes, &[("length", length), ("beam", beam)]);
    let mut deck = Parametric::new(length?, beam?);
    (deck.bow, deck.taper, deck.notch) = (bow, taper, notch);
    Some(Deck::Parametric(deck))
}

fn bow(at: &At<'_>, notes: &mut Notes) -> Option<BowCorner> {
    let mut fields = at.object(notes)?;
    let radius = fields.has("radius");
    let clip = fields.has("clip");
    let corner = match (radius, clip) {
        (true, true) => {
            fields.conflict(notes, ["radius", "clip"], "A bow corner is either rounded or clipped.");
            None
        }
        (true, false) => fields.required("radius", notes, At::length).map(BowCorner::Radius),
        (false, true) => fields.required("clip", notes, At::length).map(BowCorner::Clip),
        (false, false) => {
            let message = "A bow corner has neither a radius nor a clip.".to_owned();
            fields.missing(
                "radius",
                notes,
                message,
                "Give \"radius\" or \"clip\"; a square bow has no \"bow\" at all.",
            );
            None
        }
    };
    fields.close(notes);
    corner
}

fn taper(at: &At<'_>, notes: &mut Notes) -> Option<Taper> {
    let mut fields = at.object(notes)?;
    let length = fields.required("length", notes, At::length);
    let bow_beam = fields.required("bow_beam", notes, At::length);
    fields.close(notes);
    Some(Taper { length: length?, bow_beam: bow_beam? })
}

fn notch(at: &At<'_>, notes: &mut Notes) -> Option<Notch> {
    let mut fields = at.object(notes)?;
    let width = fields.required("width", notes, At::length);
    let depth = fields.required("depth", notes, At::length);
    let from_port = fields.optional("from_port", notes, At::length);
    let inside_radius = fields.defaulted("inside_radius", notes, At::length);
    let stern_radius = fields.defaulted("stern_radius", notes, At::length);
    fields.close(notes);
    let mut notch = Notch::new(width?, depth?).inside_radius(inside_radius).stern_radius(stern_radius);
    notch.from_port = from_port;
    Some(notch)
}

pub(super) fn opening(at: &At<'_>, notes: &mut Notes) -> Option<Opening> {
    let mut fields = at.object(notes)?;
    let name = fields.required("name", notes, At::text);
    let purpose = fields.optional("purpose", notes, At::text);
    let shape = shape(at, &mut fields, notes);
    let framed = fields.defaulted("framed", notes, At::flag);
    let lid = fields.optional("lid", notes, super::openings::lid);
    let slot = fields.optional("slot", notes, At::word);
    fields.close(notes);
    let mut opening = Opening::new(name?, shape?).framed(framed);
    (opening.purpose, opening.lid, opening.slot) = (purpose, lid, slot);
    Some(opening)
}

fn shape(at: &At<'_>, fields: &mut Object<'_>, notes: &mut Notes) -> Option<OpeningShape> {
    match (fields.has("round"), fields.has("rectangle")) {
        (true, true) => {
            fields.conflict(notes, ["round", "rectangle"], "An opening is either round or a rectangle.");
            None
        }
        (true, false) => fields.required("round", notes, round),
        (false, true) => fields.required("rectangle", notes, rectangle),
        (false, false) => {
            let message = "The opening has no shape.";
            at.refuse(notes, Kind::MissingField, message, "Give \"round\" or \"rectangle\".");
            None
        }
    }
}

fn round(at: &At<'_>, notes: &mut Notes) -> Option<OpeningShape> {
    let mut fields = at.object(notes)?;
    let x = fields.required("x", notes, At::length);
    let y = fields.required("y", notes, At::length);
    let diameter = fields.required("diameter", notes, At::length);
    fields.close(notes);
    Some(OpeningShape::Round { x: x?, y: y?, diameter: diameter? })
}

fn rectangle(at: &At<'_>, notes: &mut Notes) -> Option<OpeningShape> {
    let mut fields = at.object(notes)?;
    let x = fields.required("x", notes, At::length);
    let y = fields.required("y", notes, At::length);
    let depth = fields.required("depth", notes, At::length);
    let width = fields.required("width", notes, At::length);
    let corner_radius = fields.defaulted("corner_radius", notes, At::length);
    fields.close(notes);
    Some(OpeningShape::Rectangle { x: x?, y: y?, depth: depth?, width: width?, corner_radius })
}

pub(super) fn zone(at: &At<'_>, notes: &mut Notes) -> Option<KeepClear> {
    let mut fields = at.object(notes)?;
    let name = fields.required("name", notes, At::text);
    let from = fields.required("from", notes, At::length);
    let to = fields.required("to", notes, At::length);
    fields.close(notes);
    Some(KeepClear::new(name?, from?, to?))
}
