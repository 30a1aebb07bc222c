//! Stops what cannot be worked on at the door. Pointers name the fields of a fill call: `sheet`, `parts`, `kerf`, …

use super::super::check::{MOST_COPIES, check as check_nest};
use super::part::FillPart;
use crate::error::{Error, Fault, Faults, Kind};
use crate::money::Money;
use crate::stock::{Saw, Sheet};

/// Refuses what [`fill`](super::fill) cannot work on, all of it at once. Without a sheet only the rest is looked at.
///
/// # Errors
/// As [`fill`](super::fill); the pointers begin at the call's arguments: `/sheet/width`, `/parts/0/value`, `/stages`.
///
/// # Examples
/// ```
/// use deck_core::nest::{FillPart, check_fill};
/// use deck_core::stock::Saw;
/// let lid = FillPart::new("lid", "14 in".parse()?, "9 in".parse()?);
/// let error = check_fill(None, &[lid.clone(), lid.value("3".parse()?)], &Saw::new()).unwrap_err();
/// assert_eq!(error.faults().next().map(|fault| fault.pointer.as_str()), Some("/parts/0/value"));
/// # Ok::<(), deck_core::Error>(())
/// ```
pub fn check_fill(sheet: Option<&Sheet>, parts: &[FillPart], saw: &Saw) -> Result<(), Error> {
    let mut faults = Faults::new();
    let plain: Vec<_> = parts.iter().map(|part| part.part(part.count.unwrap_or(1))).collect();
    if let Err(error) = check_nest(&plain, sheet.map(std::slice::from_ref).unwrap_or_default(), saw) {
        for fault in error.faults() {
            let mut fault = fault.clone();
            if let Some(rest) = fault.pointer.strip_prefix("/stock/0") {
                fault.pointer = format!("/sheet{rest}");
            }
            faults.push(fault);
        }
    }
    for (index, part) in parts.iter().enumerate() {
        if let Some(value) = part.value.filter(|&value| value < Money::ZERO) {
            let message = format!("{value} is below zero.");
            let fault = Fault::new(Kind::MoneyNegative, value.to_string(), message, "A value is zero or more.");
            faults.push(fault.within("value").within(index).within("parts"));
        }
    }
    faults.take(check_mixture(parts));
    if let Some(sheet) = sheet.filter(|_| faults.is_empty()) {
        faults.take(check_copies(sheet, parts));
    }
    faults.finish()
}

/// Values beside parts without would add money to areas.
fn check_mixture(parts: &[FillPart]) -> Result<(), Error> {
    let without = parts.iter().enumerate().find(|(_, part)| part.value.is_none());
    match without {
        Some((index, part)) if parts.iter().any(|part| part.value.is_some()) => Err(Fault::new(
            Kind::NestValueMissing,
            part.label.clone(),
            format!("\"{}\" has no value, but other parts have.", part.label),
            "Values are given for all parts or for none.",
        )
        .within("value")
        .within(index)
        .within("parts")
        .into()),
        _ => Ok(()),
    }
}

/// Parts without a limit on copies may be too small to be worked on.
fn check_copies(sheet: &Sheet, parts: &[FillPart]) -> Result<(), Error> {
    let copies: i128 =
        parts.iter().filter(|part| part.count.is_none()).map(|part| copies(sheet, part)).max().unwrap_or(0);
    if copies > i128::from(MOST_COPIES) {
        let message = format!("Up to {copies} parts on one sheet are more than can be worked on.");
        let accepted = format!("A sheet holds up to {MOST_COPIES} parts.");
        return Err(Fault::new(Kind::TooMany, copies.to_string(), message, accepted).within("parts").into());
    }
    Ok(())
}

/// Copies of a part that the area of a sheet holds at most.
pub(super) fn copies(sheet: &Sheet, part: &FillPart) -> i128 {
    let area =
        |length: crate::Length, width: crate::Length| i128::from(length.nanometres()) * i128::from(width.nanometres());
    let (length, width) = sheet.size();
    area(length, width) / area(part.length, part.width).max(1)
}
