//! The small parts that are wanted beside the boards.

use super::{Parts, too_many, unique};
use crate::error::{Fault, Faults, Kind};
use crate::frame::Frame;
use crate::job::ExtraPart;
use crate::job::settings::Settings;
use crate::length::Length;
use crate::nest::Grain;
use crate::openings::framing;
use crate::outline::{Lid, Opening};
use crate::published::defaults;

/// Copies of one small part that a boat may ask for. Beyond it a typing error is likelier.
const MOST_COPIES: u32 = 10_000;

pub(super) fn extra(parts: &Parts<'_>, faults: &mut Faults) {
    let listing = parts.extra;
    if too_many(listing.items.len(), "parts", "extra_parts", faults) {
        return;
    }
    unique(listing.iter().map(|(at, part)| (at, part.label.as_str())), "extra_parts", "label", faults);
    for (position, part) in listing.iter() {
        let mut tell =
            |fault: Fault, field: &str| faults.push(fault.within(field).within(position).within("extra_parts"));
        for (field, side) in [("length", part.length), ("width", part.width)] {
            if side <= Length::ZERO {
                let kind = if side.is_zero() { Kind::LengthZero } else { Kind::LengthNegative };
                let text = parts.notation().text(side);
                let message = format!("{text} is no size of a part.");
                tell(Fault::new(kind, text, message, "More than zero is accepted."), field);
            }
        }
        if let Some(count) = part.count.filter(|count| *count > MOST_COPIES) {
            let message = format!("{count} copies are more than a boat has.");
            let accepted = format!("There are at most {MOST_COPIES} of one part.");
            tell(Fault::new(Kind::TooMany, count.to_string(), message, accepted), "count");
        }
        if let Some(layers) = part.layers.filter(|layers| !(1..=4).contains(layers)) {
            let message = format!("{layers} layers are out of range.");
            tell(Fault::new(Kind::OutOfRange, layers.to_string(), message, "There are 1 to 4 layers."), "layers");
        }
        if part.label.starts_with(|first: char| first.is_ascii_digit()) {
            let message = format!("\"{}\" could be taken for a panel's label.", part.label);
            let accepted = "A label that does not begin with a figure, such as \"lid 1\".";
            tell(Fault::new(Kind::DuplicateName, format!("\"{}\"", part.label), message, accepted), "label");
        }
    }
}

/// The small parts that are given, the lids of openings, and the strips under the edges of those that are framed.
pub(super) fn with_derived(
    parts: &Parts<'_>,
    frame: &Frame,
    settings: &Settings,
    faults: &mut Faults,
) -> Vec<ExtraPart> {
    let mut all = parts.extra.items.to_vec();
    let strips = parts.opening_rules.and_then(|rules| rules.frame_width);
    for (position, opening) in parts.openings.iter() {
        if let Some(lid) = opening.lid {
            match lid_of(opening, lid) {
                Some(part) => all.push(part),
                None => faults.push(no_lid(opening, settings).within(position).within("openings")),
            }
        }
        if let Some(width) = strips.filter(|width| opening.framed && *width > Length::ZERO) {
            let pieces = framing(opening, frame, width);
            all.extend(pieces.iter().enumerate().map(|(index, strip)| {
                let (long, short) = (strip.breadth().max(strip.depth()), strip.breadth().min(strip.depth()));
                ExtraPart::new(frame_label(opening, index), long, short)
            }));
        }
    }
    if all.len() > parts.extra.items.len() {
        let given = parts.extra.iter();
        for (position, part) in
            given.filter(|(_, part)| all.iter().filter(|other| other.label == part.label).count() > 1)
        {
            let message = format!("\"{}\" is what a part of an opening is called.", part.label);
            let fault = Fault::new(Kind::DuplicateName, format!("\"{}\"", part.label), message, "Each has its own.");
            faults.push(fault.within("label").within(position).within("extra_parts"));
        }
    }
    all
}

/// What is written on an opening's lid.
pub(crate) fn lid_label(opening: &Opening) -> String {
    format!("lid of {}", opening.name)
}

/// What is written on the strips under an opening's edge, counted from 0.
pub(crate) fn frame_label(opening: &Opening, index: usize) -> String {
    format!("frame {} of {}", index + 1, opening.name)
}

/// The lid as a part: athwart by fore and aft, the grain as in the boards. None where nothing is left of it.
fn lid_of(opening: &Opening, lid: Lid) -> Option<ExtraPart> {
    let hole = opening.path().bounds();
    let grown = match (lid.lap, lid.clearance) {
        (Some(lap), _) => lap * 2,
        (None, clearance) => -(clearance.unwrap_or(defaults::LID_CLEARANCE.value) * 2),
    };
    let (length, width) = (hole.breadth() + grown, hole.depth() + grown);
    let sound = [lid.lap, lid.clearance].iter().flatten().all(|size| !size.is_negative());
    let mut part = ExtraPart::new(lid_label(opening), length, width).grain(Grain::Length);
    part.layers = lid.layers;
    (sound && length > Length::ZERO && width > Length::ZERO).then_some(part)
}

fn no_lid(opening: &Opening, settings: &Settings) -> Fault {
    let say = |length: Length| settings.notation.text(length);
    let hole = opening.path().bounds();
    let message = format!("No lid is left of an opening of {} by {}.", say(hole.breadth()), say(hole.depth()));
    let accepted = "A clearance is from zero to less than half of either side; a lap is zero or more.";
    Fault::new(Kind::LidSize, format!("\"{}\"", opening.name), message, accepted).within("lid")
}
