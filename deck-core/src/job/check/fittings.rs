//! What is bolted down again: sizes and counts.

use super::{Parts, too_many, unique};
use crate::error::{Fault, Faults, Kind};
use crate::job::fittings::{FittingSpec, FittingsSpec, PlateSpec};
use crate::length::{Length, Notation};

pub(super) fn fittings(parts: &Parts<'_>, faults: &mut Faults) {
    let Some(spec) = parts.fittings else { return };
    let mut own = Faults::new();
    examine(spec, parts.notation(), &mut own);
    if let Err(error) = own.finish() {
        faults.absorb(error.within("fittings"));
    }
}

fn examine(spec: &FittingsSpec, notation: Notation, faults: &mut Faults) {
    let check = &mut Check { notation, faults };
    if let Some(skew) = spec.old_datum.as_ref().and_then(|datum| datum.skew) {
        check.size("/old_datum/skew/over", Some(skew.over), false);
        if skew.over > Length::ZERO && skew.to_starboard.abs() > skew.over {
            let text = notation.text(skew.to_starboard);
            let message = format!("{text} over {} is more than an eighth of a turn.", notation.text(skew.over));
            let fault = Fault::new(Kind::FittingSize, text, message, "Measure from the other side or end instead.");
            check.faults.push(fault.at("/old_datum/skew/to_starboard"));
        }
    }
    check.size("/from_seam", spec.from_seam, true);
    for (index, length) in spec.bolt_lengths.iter().flatten().enumerate() {
        check.size(&format!("/bolt_lengths/{index}"), Some(*length), false);
    }
    let holes: usize = spec.items.iter().map(|item| item.holes.len()).sum();
    if too_many(holes.max(spec.items.len()), "holes", "items", check.faults) {
        return;
    }
    unique(spec.items.iter().enumerate().map(|(at, item)| (at, item.name.as_str())), "items", "name", check.faults);
    for (index, item) in spec.items.iter().enumerate() {
        fitting(item, &format!("/items/{index}/bolt"), check);
    }
}

struct Check<'f> {
    notation: Notation,
    faults: &'f mut Faults,
}

impl Check<'_> {
    fn size(&mut self, pointer: &str, length: Option<Length>, zero: bool) {
        let Some(length) = length.filter(|length| length.is_negative() || (length.is_zero() && !zero)) else { return };
        let kind = if length.is_zero() { Kind::LengthZero } else { Kind::LengthNegative };
        let accepted = if zero { "Zero or more is accepted." } else { "More than zero is accepted." };
        let text = self.notation.text(length);
        self.faults.push(Fault::new(kind, &text, format!("{text} is too little."), accepted).at(pointer));
    }
}

fn fitting(item: &FittingSpec, pointer: &str, check: &mut Check<'_>) {
    let bolt = &item.bolt;
    check.size(&format!("{pointer}/diameter"), Some(bolt.diameter), false);
    check.size(&format!("{pointer}/foot"), bolt.foot, true);
    check.size(&format!("{pointer}/washer"), bolt.washer, true);
    check.size(&format!("{pointer}/nut"), bolt.nut, true);
    if let Some(PlateSpec { length, width, thickness, bolts }) = bolt.plate {
        for (field, size) in [("length", length), ("width", width), ("thickness", thickness)] {
            check.size(&format!("{pointer}/plate/{field}"), Some(size), false);
        }
        if width > length {
            let text = check.notation.text(width);
            let message = format!("A plate {text} wide is wider than it is long.");
            let fault = Fault::new(Kind::FittingSize, text, message, "The length is the longer side.");
            check.faults.push(fault.at(&format!("{pointer}/plate/width")));
        }
        if let Some(bolts) = bolts.filter(|bolts| !(1..=100).contains(bolts)) {
            let message = format!("{bolts} bolts through one plate are out of range.");
            let fault = Fault::new(Kind::OutOfRange, bolts.to_string(), message, "There are 1 to 100.");
            check.faults.push(fault.at(&format!("{pointer}/plate/bolts")));
        }
    }
}
