//! What is said of the manner in which boards lie.

use super::Parts;
use crate::error::{Fault, Faults, Kind};
use crate::length::Length;
use crate::outline::Outline;

/// More members between butts no row of boards can keep.
const MOST_STAGGER: u32 = 3;

pub(super) fn arrange(parts: &Parts<'_>, outline: Option<&Outline>, faults: &mut Faults) {
    let spec = parts.arrange;
    let notation = parts.notation();
    let mut refuse = |kind: Kind, field: &str, value: String, message: String, accepted: String| {
        faults.push(Fault::new(kind, value, message, accepted).within(field).within("arrange"));
    };
    if let Some(stagger) = spec.stagger.filter(|stagger| *stagger > MOST_STAGGER) {
        let message = format!("{stagger} members between butts are more than rows of boards can keep.");
        let accepted = format!("It is a whole number from 0 to {MOST_STAGGER}.");
        refuse(Kind::OutOfRange, "stagger", stagger.to_string(), message, accepted);
    }
    let lengths = [("block_width", "block", spec.block_width), ("block_spacing", "spacing", spec.block_spacing)];
    for (field, what, length) in lengths {
        if let Some(length) = length.filter(|length| *length <= Length::ZERO) {
            let kind = if length.is_zero() { Kind::LengthZero } else { Kind::LengthNegative };
            let text = notation.text(length);
            let message = format!("A {what} of {text} holds nothing.");
            refuse(kind, field, text, message, "More than zero is accepted.".into());
        }
    }
    if let (Some(width), Some(outline)) = (spec.block_width, outline)
        && width * 2 > outline.beam()
    {
        let (text, beam) = (notation.text(width), notation.text(outline.beam()));
        let message = format!("Blocks {text} wide do not lie under two boards on a beam of {beam}.");
        refuse(
            Kind::OutOfRange,
            "block_width",
            text,
            message,
            "It is at most half the beam; 8 to 12 in is usual.".into(),
        );
    }
}
