//! What is damaged and what stays, against the deck.

use super::{Parts, too_many, unique};
use crate::error::{Fault, Faults, Kind};
use crate::geometry::{Path, Point, Side, polygon};
use crate::job::patch::{DamageSpec, PatchSpec};
use crate::length::{Length, Notation};
use crate::outline::Outline;
use crate::patch::Damage;

/// Damaged places of one deck, and of one of its boards: every way to share patches among those is gone through.
const MOST: usize = 40;
const MOST_OF_A_BOARD: usize = 8;
/// Openings of a deck that is patched: edges are tried beyond each.
const MOST_OPENINGS: usize = 12;

pub(super) fn patch(parts: &Parts<'_>, outline: Option<&Outline>, faults: &mut Faults) {
    let Some(spec) = parts.patch else { return };
    if parts.fittings.is_some() {
        let message = "Fittings go to a whole new deck: of one that is patched, what stays keeps its holes.";
        let fault = Fault::new(Kind::Conflict, "patch and fittings", message, "Give one of the two.");
        faults.push(fault.within("fittings"));
    }
    if !parts.arrange.is_empty() {
        let message = "Boards are arranged on a whole new deck: of one that is patched, what stays lies as it is.";
        let fault = Fault::new(Kind::Conflict, "patch and arrange", message, "Give one of the two.");
        faults.push(fault.within("arrange"));
    }
    let openings = parts.openings.items.len();
    if openings > MOST_OPENINGS {
        let message = format!("{openings} openings are more than a deck is patched around.");
        let accepted = format!("With a patch there are at most {MOST_OPENINGS}.");
        faults.push(Fault::new(Kind::TooMany, openings.to_string(), message, accepted).within("openings"));
    }
    let mut own = Faults::new();
    examine(spec, outline, parts.notation(), &mut own);
    if let Err(error) = own.finish() {
        faults.absorb(error.within("patch"));
    }
}

fn examine(spec: &PatchSpec, outline: Option<&Outline>, notation: Notation, faults: &mut Faults) {
    let say = |length: Length| notation.text(length);
    let sizes = [
        ("old_gap", spec.old_gap, true),
        ("old_thickness", spec.old_thickness, false),
        ("margin", spec.margin, true),
        ("blocking_width", spec.blocking_width, false),
        ("least_strip", spec.least_strip, true),
    ];
    for (field, size, zero) in sizes {
        let Some(size) = size.filter(|size| size.is_negative() || (size.is_zero() && !zero)) else { continue };
        let kind = if size.is_zero() { Kind::LengthZero } else { Kind::LengthNegative };
        let accepted = if zero { "Zero or more is accepted." } else { "More than zero is accepted." };
        faults.push(Fault::new(kind, say(size), format!("{} is too little.", say(size)), accepted).within(field));
    }
    if too_many(spec.old_seams.len(), "seams", "old_seams", faults) {
        return;
    }
    seams(spec, outline, notation, faults);
    if spec.damage.is_empty() {
        let fault = Fault::new(Kind::EmptyList, "", "Nothing is damaged.", "There is one damaged place at least.");
        faults.push(fault.within("damage"));
    }
    if spec.damage.len() > MOST {
        let count = spec.damage.len();
        let message = format!("{count} damaged places are more than a deck is patched for.");
        let fault = Fault::new(Kind::TooMany, count.to_string(), message, format!("There are at most {MOST}."));
        faults.push(fault.within("damage"));
        return;
    }
    unique(spec.damage.iter().enumerate().map(|(at, item)| (at, item.name.as_str())), "damage", "name", faults);
    crowded(spec, notation, faults);
    for (index, damage) in spec.damage.iter().enumerate() {
        if too_many(damage.corners.len(), "corners", "corners", faults) {
            continue;
        }
        if let Some(fault) = damaged(damage, outline) {
            faults.push(fault.within("corners").within(index).within("damage"));
        }
    }
}

fn seams(spec: &PatchSpec, outline: Option<&Outline>, notation: Notation, faults: &mut Faults) {
    let say = |length: Length| notation.text(length);
    let gap = spec.old_gap.unwrap_or_default();
    let mut before = Length::ZERO;
    for (index, seam) in spec.old_seams.iter().enumerate() {
        let last = outline.is_some_and(|outline| *seam + gap >= outline.length());
        if *seam <= before || last {
            let message = format!("An old seam at {} is not aft of {} and within the deck.", say(*seam), say(before));
            let accepted = "Seams are told from the bow aft.";
            faults.push(Fault::new(Kind::PatchSeams, say(*seam), message, accepted).within(index).within("old_seams"));
        }
        before = *seam + gap;
    }
}

/// A board with more damaged places than are looked at together.
fn crowded(spec: &PatchSpec, notation: Notation, faults: &mut Faults) {
    let gap = spec.old_gap.unwrap_or_default();
    let starts = std::iter::once(None).chain(spec.old_seams.iter().map(|seam| Some(*seam + gap)));
    let ends = spec.old_seams.iter().map(|seam| Some(*seam)).chain([None]);
    for (fore, aft) in starts.zip(ends) {
        let lies = |damage: &&DamageSpec| {
            damage.corners.iter().any(|corner| fore.is_none_or(|fore| corner.x > fore))
                && damage.corners.iter().any(|corner| aft.is_none_or(|aft| corner.x < aft))
        };
        let count = spec.damage.iter().filter(lies).count();
        if count > MOST_OF_A_BOARD {
            let from = notation.text(fore.unwrap_or_default());
            let message = format!("{count} damaged places lie on the old board that starts at {from}.");
            let accepted = format!("There are at most {MOST_OF_A_BOARD} on one board: join those that lie together.");
            faults.push(Fault::new(Kind::TooMany, count.to_string(), message, accepted).within("damage"));
        }
    }
}

/// What is wrong with a damaged place by itself and on the deck.
fn damaged(spec: &DamageSpec, outline: Option<&Outline>) -> Option<Fault> {
    let refuse = |message: String, accepted: &str| {
        Some(Fault::new(Kind::PatchDamage, format!("\"{}\"", spec.name), message, accepted))
    };
    let shape = shape(&spec.corners);
    if spec.corners.len() < 3 || shape.doubled_area() == 0 || !polygon::is_simple(&shape) {
        let message = format!("The corners of \"{}\" do not go once around anything.", spec.name);
        return refuse(message, "There are three corners at least, walked from one to the next.");
    }
    if outline.is_some_and(|outline| !polygon::contains(outline.path(), &shape)) {
        let message = format!("\"{}\" does not lie on the deck.", spec.name);
        return refuse(message, "A damaged place lies within the outline.");
    }
    None
}

fn shape(corners: &[Point]) -> Path<()> {
    Path::new(corners.iter().map(|from| Side { from: *from, arc: None, edge: () }).collect())
}

/// The damaged places as they are worked on.
pub(super) fn damages(spec: &PatchSpec) -> Vec<Damage> {
    spec.damage.iter().map(|damage| Damage::new(damage.name.clone(), shape(&damage.corners))).collect()
}
