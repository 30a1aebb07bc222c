//! The sheets against each other.

use super::{Listing, Parts, too_many, unique};
use crate::error::{Error, Fault, Faults, Kind};
use crate::length::Length;
use crate::money::Money;
use crate::stock::{Sheet, check_prices};

/// Checks sheets that are only asked how wide a board they give.
pub(super) fn boards(listing: Listing<'_, Sheet>, faults: &mut Faults) {
    if none(listing, faults) || too_many(listing.items.len(), "sheets", "stock", faults) {
        return;
    }
    unique(listing.iter().map(|(at, sheet)| (at, sheet.label.as_str())), "stock", "label", faults);
    for (position, sheet) in listing.iter() {
        faults.take(sheet.check().map_err(|error| error.within(position).within("stock")));
    }
}

fn none(listing: Listing<'_, Sheet>, faults: &mut Faults) -> bool {
    if listing.items.is_empty() {
        let message = "No sheet is given.";
        let fault = Fault::new(Kind::EmptyList, "", message, "Give a sheet to buy, or an offcut, at least.");
        faults.push(fault.within("stock"));
    }
    listing.items.is_empty()
}

/// Checks the sheets, and gives their thickness where all have the same.
pub(super) fn stock(parts: &Parts<'_>, faults: &mut Faults) -> Option<Length> {
    let listing = parts.stock?;
    if none(listing, faults) || too_many(listing.items.len(), "sheets", "stock", faults) {
        return None;
    }
    unique(listing.iter().map(|(at, sheet)| (at, sheet.label.as_str())), "stock", "label", faults);
    for (position, sheet) in listing.iter() {
        faults.take(one(sheet).map_err(|error| error.within(position).within("stock")));
    }
    prices(listing, faults);
    thickness(parts, listing, faults)
}

fn one(sheet: &Sheet) -> Result<(), Error> {
    let mut faults = Faults::new();
    faults.take(sheet.check());
    if sheet.thickness.is_none() {
        let message = "The sheet has no thickness.";
        faults.push(Fault::new(Kind::MissingField, "", message, "Measure it; it has no default.").within("thickness"));
    }
    if let Some(price) = sheet.price.filter(|price| *price < Money::ZERO) {
        let message = format!("{price} is below zero.");
        faults.push(
            Fault::new(Kind::MoneyNegative, price.to_string(), message, "A price is zero or more.").within("price"),
        );
    }
    faults.finish()
}

/// Tells the first sheet without a price by its place in the input.
fn prices(listing: Listing<'_, Sheet>, faults: &mut Faults) {
    if let Err(error) = check_prices(listing.items) {
        for fault in error.faults() {
            let index: Option<usize> = fault.pointer.split('/').nth(1).and_then(|index| index.parse().ok());
            let position = index.and_then(|index| listing.positions.get(index));
            let mut fault = fault.clone();
            fault.pointer = position.map(|position| format!("/stock/{position}/price")).unwrap_or_default();
            faults.push(fault);
        }
    }
}

/// Boards of one deck meet flush, so they are of one thickness.
fn thickness(parts: &Parts<'_>, listing: Listing<'_, Sheet>, faults: &mut Faults) -> Option<Length> {
    let notation = parts.notation();
    let mut known = listing.iter().filter_map(|(at, sheet)| Some((at, sheet, sheet.thickness?)));
    let (_, first, thickness) = known.next()?;
    for (position, sheet, other) in known.filter(|(_, _, other)| *other != thickness) {
        let message = format!(
            "\"{}\" is {} thick, and \"{}\" is {}: the boards would not meet flush.",
            sheet.label,
            notation.text(other),
            first.label,
            notation.text(thickness)
        );
        let fault =
            Fault::new(Kind::Conflict, notation.text(other), message, "All sheets of a deck have one thickness.");
        faults.push(fault.within("thickness").within(position).within("stock"));
    }
    Some(thickness)
}
