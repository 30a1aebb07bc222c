//! The outline, and what lies within it.

use super::{Listing, MOST, Parts, too_many, unique};
use crate::error::{Fault, Faults, Kind};
use crate::geometry::polygon;
use crate::length::Length;
use crate::outline::{Deck, Opening, Outline};

pub(super) fn outline(deck: &Deck, faults: &mut Faults) -> Option<Outline> {
    if let Deck::Explicit(explicit) = deck {
        let mut many = Faults::new();
        if too_many(explicit.outline.len(), "corners", "outline", &mut many) {
            faults.take(many.finish().map_err(|error| error.within("deck")));
            return None;
        }
    }
    faults.take(deck.outline().map_err(|error| error.within("deck")))
}

/// Openings among which least moves are looked for: the search grows with the square of their number.
const MOST_MOVED: usize = 40;

pub(super) fn openings(parts: &Parts<'_>, outline: Option<&Outline>, faults: &mut Faults) {
    let openings = parts.openings;
    if too_many(openings.items.len(), "openings", "openings", faults) {
        return;
    }
    if parts.opening_rules.is_some() && openings.items.len() > MOST_MOVED {
        let count = openings.items.len();
        let message = format!("{count} openings are more than moves are looked for.");
        let accepted = format!("With \"opening_rules\" there are at most {MOST_MOVED}.");
        faults.push(Fault::new(Kind::TooMany, count.to_string(), message, accepted).within("openings"));
    }
    unique(openings.iter().map(|(at, opening)| (at, opening.name.as_str())), "openings", "name", faults);
    let mut sound: Vec<(usize, &Opening)> = Vec::new();
    for (position, opening) in openings.iter() {
        let own = opening.check().map_err(|error| error.within(position).within("openings"));
        if faults.take(own).is_none() {
            continue;
        }
        match outline {
            Some(outline) if opening.slot.is_none() && !within(opening, outline) => {
                faults.push(outside(opening, outline, parts, position));
            }
            _ => sound.push((position, opening)),
        }
    }
    overlaps(&sound, faults);
}

/// The outline with every slot cut in.
pub(super) fn slotted(outline: Outline, openings: Listing<'_, Opening>, faults: &mut Faults) -> Option<Outline> {
    let slots = openings.iter().filter_map(|(position, opening)| Some((position, opening, opening.slot?)));
    let mut cut = Some(outline);
    for (position, slot, edge) in slots {
        let Some(whole) = &cut else { break };
        cut = whole.slotted(slot);
        if cut.is_none() {
            let name = edge.name();
            let message = format!("\"{}\" does not open to a straight side at the {name} edge.", slot.name);
            let accepted = "A slot is a rectangle that reaches that edge and is narrower than the side.";
            let fault = Fault::new(Kind::OpeningSlot, format!("\"{name}\""), message, accepted);
            faults.push(fault.within("slot").within(position).within("openings"));
        }
    }
    cut
}

fn within(opening: &Opening, outline: &Outline) -> bool {
    let (inner, outer) = (opening.path().bounds(), outline.path().bounds());
    // Far outside coordinates need no polygons; they would only make large numbers.
    inner.fore >= outer.fore
        && inner.aft <= outer.aft
        && inner.port >= outer.port
        && inner.starboard <= outer.starboard
        && polygon::contains(outline.path(), &opening.path())
}

fn outside(opening: &Opening, outline: &Outline, parts: &Parts<'_>, position: usize) -> Fault {
    let notation = parts.notation();
    let text = |length: Length| notation.text(length);
    let bounds = opening.path().bounds();
    let message = format!(
        "\"{}\", from {} to {} aft of the bow and from {} to {} off the port edge, does not lie within the deck.",
        opening.name,
        text(bounds.fore),
        text(bounds.aft),
        text(bounds.port),
        text(bounds.starboard)
    );
    let accepted = format!(
        "The deck is {} by {}, less its bow corners and its notch.",
        text(outline.length()),
        text(outline.beam())
    );
    Fault::new(Kind::OpeningOutside, format!("\"{}\"", opening.name), message, accepted)
        .within(position)
        .within("openings")
}

fn overlaps(openings: &[(usize, &Opening)], faults: &mut Faults) {
    // At most MOST of them: the pairs are few enough to look at each.
    debug_assert!(openings.len() <= MOST);
    let paths: Vec<_> = openings.iter().map(|(_, opening)| (opening.path(), opening.path().bounds())).collect();
    for (index, ((position, opening), (path, bounds))) in openings.iter().zip(&paths).enumerate() {
        let clash = openings.iter().zip(&paths).take(index).find(|(_, (other, beside))| {
            bounds.fore < beside.aft
                && beside.fore < bounds.aft
                && bounds.port < beside.starboard
                && beside.port < bounds.starboard
                && polygon::overlap(path, other)
        });
        if let Some(((_, other), _)) = clash {
            let message = format!("\"{}\" overlaps \"{}\".", opening.name, other.name);
            let fault = Fault::new(
                Kind::OpeningOverlap,
                format!("\"{}\"", opening.name),
                message,
                "Openings lie apart from each other.",
            );
            faults.push(fault.within(position).within("openings"));
        }
    }
}

pub(super) fn zones(parts: &Parts<'_>, length: Option<Length>, faults: &mut Faults) {
    if too_many(parts.keep_clear.items.len(), "zones", "keep_clear", faults) {
        return;
    }
    let notation = parts.notation();
    let text = |length: Length| notation.text(length);
    for (position, zone) in parts.keep_clear.iter() {
        let fault = if zone.to < zone.from {
            let message = format!(
                "\"{}\" ends at {}, forward of where it starts, {}.",
                zone.name,
                text(zone.to),
                text(zone.from)
            );
            Fault::new(Kind::OutOfRange, text(zone.to), message, "\"from\" is the forward end.").within("to")
        } else if zone.to.is_negative() || length.is_some_and(|length| zone.from > length) {
            let message =
                format!("\"{}\", from {} to {}, does not touch the deck.", zone.name, text(zone.from), text(zone.to));
            let accepted = length.map(|length| format!("The deck lies between 0 and {}.", text(length)));
            Fault::new(Kind::ZoneOutside, text(zone.from), message, accepted.unwrap_or_default()).within("from")
        } else {
            continue;
        };
        faults.push(fault.within(position).within("keep_clear"));
    }
}
