//! What is said of errors, on its own.

use super::Parts;
use crate::error::{Fault, Faults, Kind};
use crate::job::ErrorSpec;
use crate::length::Length;

/// An error is not negative, and less than what one would see at a glance.
const MOST: Length = Length::inches(6);

pub(super) fn tolerance(parts: &Parts<'_>, faults: &mut Faults) {
    let Some(spec) = parts.tolerance else { return };
    for (field, error) in [("measuring", spec.measuring), ("sawing", spec.sawing), ("setting", spec.setting)] {
        let sides: Vec<(String, Length)> = match error {
            None => Vec::new(),
            Some(ErrorSpec::Even(half)) => vec![(format!("/tolerance/{field}"), half)],
            Some(ErrorSpec::Uneven(error)) => vec![
                (format!("/tolerance/{field}/under"), error.under),
                (format!("/tolerance/{field}/over"), error.over),
            ],
        };
        for (pointer, side) in sides {
            if let Some(fault) = refused(parts, side) {
                faults.push(fault.at(&pointer));
            }
        }
    }
    if let Some(fault) = spec.sheet.and_then(|sheet| refused(parts, sheet)) {
        faults.push(fault.at("/tolerance/sheet"));
    }
}

fn refused(parts: &Parts<'_>, side: Length) -> Option<Fault> {
    let notation = parts.notation();
    let text = notation.text(side);
    let accepted = format!("An error lies between 0 and {}.", notation.text(MOST));
    if side.is_negative() {
        return Some(Fault::new(Kind::LengthNegative, &text, format!("{text} is below zero."), accepted));
    }
    (side > MOST).then(|| Fault::new(Kind::OutOfRange, &text, format!("{text} is no error but a blunder."), accepted))
}
