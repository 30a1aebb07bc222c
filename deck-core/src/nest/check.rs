//! Stops what cannot be worked on at the door. Pointers name the fields of a nest call: `parts`, `stock`, `kerf`, …

use super::part::Part;
use crate::error::{Error, Fault, Faults, Kind};
use crate::length::Length;
use crate::money::Money;
use crate::stock::{Saw, Sheet, check_prices};

/// Copies of parts in one order. Beyond it a typing error is likelier than a boat yard, and the result fills memory.
pub(super) const MOST_COPIES: u64 = 1_000_000;

/// Kinds of stock in one order. Every construction is tried with each of them.
const MOST_STOCK: usize = 1_000;

/// Checks what [`nest`](super::nest) is asked, and reports everything that is wrong with it.
///
/// # Errors
/// As `nest`; pointers name the fields of a call: `parts`, `stock`, `kerf` and so on.
pub fn check(parts: &[Part], stock: &[Sheet], saw: &Saw) -> Result<(), Error> {
    let mut faults = Faults::new();
    for (index, part) in parts.iter().enumerate() {
        faults.take(part.check().map_err(|error| error.within(index).within("parts")));
    }
    check_copies(parts, &mut faults);
    check_stock(stock, &mut faults);
    for (index, sheet) in stock.iter().enumerate() {
        faults.take(check_sheet(sheet).map_err(|error| error.within(index).within("stock")));
    }
    faults.take(check_prices(stock).map_err(|error| error.within("stock")));
    faults.take(check_offcut_prices(stock));
    faults.take(saw.check());
    check_saw_sizes(saw, &mut faults);
    if faults.is_empty() {
        check_trim(stock, saw, &mut faults);
    }
    faults.finish()
}

fn check_copies(parts: &[Part], faults: &mut Faults) {
    let copies: u64 = parts.iter().map(|part| u64::from(part.count)).sum();
    if copies > MOST_COPIES {
        let message = format!("{copies} parts are more than one order holds.");
        let accepted = format!("An order holds up to {MOST_COPIES} parts.");
        faults.push(Fault::new(Kind::TooMany, copies.to_string(), message, accepted).within("parts"));
    }
}

fn check_stock(stock: &[Sheet], faults: &mut Faults) {
    if stock.len() > MOST_STOCK {
        let message = format!("{} kinds of sheets are more than one order holds.", stock.len());
        let accepted = format!("An order holds up to {MOST_STOCK} kinds; equal sheets are one kind with a count.");
        faults.push(Fault::new(Kind::TooMany, stock.len().to_string(), message, accepted).within("stock"));
    }
}

fn check_sheet(sheet: &Sheet) -> Result<(), Error> {
    let mut faults = Faults::new();
    faults.take(sheet.check());
    for (field, side) in [("length", sheet.length), ("width", sheet.width)] {
        if side > Length::LIMIT {
            faults.push(too_large(side).within(field));
        }
    }
    if let Some(price) = sheet.price.filter(|&price| price < Money::ZERO) {
        let message = format!("{price} is below zero.");
        faults.push(
            Fault::new(Kind::MoneyNegative, price.to_string(), message, "A price is zero or more.").within("price"),
        );
    }
    faults.finish()
}

/// A priced offcut beside sheets without prices would add money to areas.
fn check_offcut_prices(stock: &[Sheet]) -> Result<(), Error> {
    let priced = stock.iter().any(|sheet| sheet.offcut && sheet.price.is_some());
    let bought = stock.iter().enumerate().find(|(_, sheet)| !sheet.offcut);
    match bought {
        Some((index, sheet)) if priced && stock.iter().all(|sheet| sheet.offcut || sheet.price.is_none()) => {
            Err(Fault::new(
                Kind::StockPriceMissing,
                sheet.label.clone(),
                format!("\"{}\" has no price, but an offcut has one.", sheet.label),
                "Prices are given for all bought sheets or for none.",
            )
            .within("price")
            .within(index)
            .within("stock")
            .into())
        }
        _ => Ok(()),
    }
}

fn check_saw_sizes(saw: &Saw, faults: &mut Faults) {
    let keep = saw.keep.map_or([Length::ZERO; 2], |(length, width)| [length, width]);
    for (field, length) in [("kerf", saw.kerf), ("trim", saw.trim), ("keep", keep[0]), ("keep", keep[1])] {
        if length > Length::LIMIT {
            faults.push(too_large(length).within(field));
        }
    }
}

fn too_large(length: Length) -> Fault {
    Fault::new(Kind::LengthTooLarge, length.to_string(), format!("{length} is too large."), "A length lies below 1 km.")
}

/// A small offcut may vanish in the trim; stock that vanishes altogether is a mistake.
fn check_trim(stock: &[Sheet], saw: &Saw, faults: &mut Faults) {
    let vanishes = |sheet: &Sheet| {
        let (length, width) = sheet.size();
        length.min(width) <= saw.trim * 2
    };
    if !stock.is_empty() && stock.iter().all(vanishes) {
        let message = format!("A trim of {} on each edge leaves nothing of any sheet.", saw.trim);
        let accepted = "Twice the trim is less than the shorter side of a sheet.";
        faults.push(Fault::new(Kind::SawTrimTooLarge, saw.trim.to_string(), message, accepted).within("trim"));
    }
}
