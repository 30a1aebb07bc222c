//! The small parts that are wanted beside the boards.

use super::{Parts, too_many, unique};
use crate::error::{Fault, Faults, Kind};
use crate::length::Length;

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
        if part.label.starts_with(|first: char| first.is_ascii_digit()) {
            let message = format!("\"{}\" could be taken for a panel's label.", part.label);
            let accepted = "A label that does not begin with a figure, such as \"lid 1\".";
            tell(Fault::new(Kind::DuplicateName, format!("\"{}\"", part.label), message, accepted), "label");
        }
    }
}
