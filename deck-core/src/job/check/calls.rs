//! What the calls for seams, panels and fasteners work on, held against each other as in a job.

use super::frame::Size;
use super::{Listing, Parts, deck, frame, settings, stock, tolerance, too_many, unique};
use crate::error::{Error, Fault, Faults, Kind};
use crate::frame::Frame;
use crate::job::settings::Settings;
use crate::length::{Length, Notation};
use crate::outline::{Deck, Opening, Outline};
use crate::panels::{Panel, SeamLine};

/// The outline of a deck; pointers are relative to it.
pub(in crate::job) fn outline(deck: &Deck) -> Result<Outline, Error> {
    let mut faults = Faults::new();
    let outline = deck::outline(deck, &mut faults);
    faults.finish().map_err(|error| error.map_pointers(|pointer| pointer.strip_prefix("/deck").map(str::to_owned)))?;
    // unreachable: without an outline there is a fault.
    outline.ok_or_else(|| Fault::new(Kind::MissingField, "", "There is no outline.", "").into())
}

/// A call for seams: its frame and settings where nothing is wrong with it. Its sheets are told of under `/stock`.
pub(in crate::job) fn seams(
    parts: &Parts<'_>,
    outline: Option<&Outline>,
    deck_length: Option<Length>,
    faults: &mut Faults,
) -> Option<(Frame, Settings)> {
    let length = deck_length.filter(|length| long(*length, outline, parts.notation(), faults));
    let frame = frame::frame(parts, length.map(|length| Size { length, beam: outline.map(Outline::beam) }), faults);
    deck::openings(parts, outline, faults);
    deck::zones(parts, length, faults);
    if let Some(listing) = parts.stock {
        stock::boards(listing, faults);
    }
    settings::settings(parts, outline, faults);
    tolerance::tolerance(parts, faults);
    let frame = frame?;
    let settings = resolve(parts, &frame);
    Some((frame, settings))
}

fn resolve(parts: &Parts<'_>, frame: &Frame) -> Settings {
    Settings::resolve(parts, frame.members().iter().any(|member| member.wall.is_none()), false)
}

/// Whether a deck can be so long.
fn long(length: Length, outline: Option<&Outline>, notation: Notation, faults: &mut Faults) -> bool {
    let text = notation.text(length);
    let fault = if length <= Length::ZERO {
        let kind = if length.is_zero() { Kind::LengthZero } else { Kind::LengthNegative };
        Fault::new(kind, &text, format!("{text} is no length of a deck."), "More than zero is accepted.")
    } else if let Some(other) = outline.map(Outline::length).filter(|other| *other != length) {
        let other = notation.text(other);
        let message = format!("The deck is {text} long here, and its outline {other}.");
        Fault::new(Kind::Conflict, &text, message, "It is the outline's length, or left out.")
    } else {
        return true;
    };
    faults.push(fault.within("deck_length"));
    false
}

/// A call for panels.
pub(in crate::job) fn panels(
    parts: &Parts<'_>,
    outline: Option<&Outline>,
    seams: Listing<'_, SeamLine>,
    (finish, thickness): (Option<Length>, Option<Length>),
    faults: &mut Faults,
) {
    deck::openings(parts, outline, faults);
    if let Some(outline) = outline {
        let _ = deck::slotted(outline.clone(), parts.openings, faults);
    }
    settings::settings(parts, outline, faults);
    if let Some(thickness) = thickness.filter(|thickness| *thickness <= Length::ZERO) {
        let kind = if thickness.is_zero() { Kind::LengthZero } else { Kind::LengthNegative };
        let text = parts.notation().text(thickness);
        let message = format!("{text} is no thickness.");
        faults.push(Fault::new(kind, text, message, "More than zero is accepted.").within("thickness"));
    }
    if too_many(seams.items.len(), "seams", "seams", faults) {
        return;
    }
    if let Some(outline) = outline
        && in_order(seams, finish, outline.length(), parts.notation(), faults)
    {
        whole(parts.openings, seams.items, finish.unwrap_or(outline.length()), parts.notation(), faults);
    }
}

/// The outline with the slots among the openings cut in; those that cannot be cut are told of by the check.
pub(in crate::job) fn slotted(outline: &Outline, openings: &[Opening]) -> Outline {
    let slots = openings.iter().filter(|opening| opening.slot.is_some());
    slots.fold(outline.clone(), |outline, slot| outline.slotted(slot).unwrap_or(outline))
}

/// Whether the seams, and the end of the last board, lie one behind the other on the deck.
fn in_order(
    seams: Listing<'_, SeamLine>,
    finish: Option<Length>,
    length: Length,
    notation: Notation,
    faults: &mut Faults,
) -> bool {
    let text = |length: Length| notation.text(length);
    let (mut from, mut sound) = (Length::ZERO, true);
    for (position, seam) in seams.iter() {
        let message = if seam.aft < seam.fore {
            format!("The seam ends at {}, forward of where it starts, {}.", text(seam.aft), text(seam.fore))
        } else if seam.fore <= from {
            format!("The seam at {} leaves no board aft of {}.", text(seam.fore), text(from))
        } else if seam.aft >= length {
            format!("The seam at {} leaves no board forward of the deck's end, {}.", text(seam.fore), text(length))
        } else {
            from = seam.aft;
            continue;
        };
        sound = false;
        let accepted = format!("Seams lie between 0 and {}, in order from the bow.", text(length));
        let fault = Fault::new(Kind::OutOfRange, text(seam.fore), message, accepted);
        faults.push(fault.within(position).within("seams"));
    }
    if let Some(finish) = finish.filter(|finish| !(from < *finish && *finish <= length)) {
        sound = false;
        let message = format!("The last board cannot end at {}.", text(finish));
        let accepted = format!("It ends aft of {}, and at {} at the most.", text(from), text(length));
        faults.push(Fault::new(Kind::OutOfRange, text(finish), message, accepted).within("finish"));
    }
    sound
}

/// Every opening lies within one board.
fn whole(openings: Listing<'_, Opening>, seams: &[SeamLine], finish: Length, notation: Notation, faults: &mut Faults) {
    for (position, opening) in openings.iter() {
        let bounds = opening.path().bounds();
        let crossing = seams.iter().find(|seam| bounds.fore < seam.aft && seam.fore < bounds.aft);
        let what = match crossing {
            Some(seam) => format!("is crossed by the seam at {}", notation.text(seam.fore)),
            None if bounds.aft > finish => format!("lies aft of {}, where the last board ends", notation.text(finish)),
            None => continue,
        };
        let (fore, aft) = (notation.text(bounds.fore), notation.text(bounds.aft));
        let message = format!("\"{}\", from {fore} to {aft} aft of the bow, {what}.", opening.name);
        let accepted = "An opening lies within one board.";
        let fault = Fault::new(Kind::Conflict, format!("\"{}\"", opening.name), message, accepted);
        faults.push(fault.within(position).within("openings"));
    }
}

/// A call for fasteners: its frame and settings where nothing is wrong with it.
pub(in crate::job) fn fasteners(
    parts: &Parts<'_>,
    panels: Listing<'_, Panel>,
    outline: Option<&Outline>,
    faults: &mut Faults,
) -> Option<(Frame, Settings)> {
    let frame = frame::frame(parts, outline.map(Size::of), faults);
    settings::settings(parts, outline, faults);
    if !too_many(panels.items.len(), "panels", "panels", faults) {
        unique(panels.iter().map(|(at, panel)| (at, panel.label.as_str())), "panels", "label", faults);
    }
    let frame = frame?;
    let settings = resolve(parts, &frame);
    Some((frame, settings))
}
