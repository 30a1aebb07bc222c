//! Cautions about sheets and what treats them.

use super::Caution;
use crate::length::{Length, Notation};
use crate::nest::Nest;
use crate::stock::{Sheet, Treatment};

/// PS 1-19, Structural Plywood: size tolerance +0, −1/16 in, read on the panel association's European pages.
const SIXTEENTH: (i64, i64) = (1, 16);

/// Cautions about the stock: treatment against aluminium, measured sizes, and parts that found no sheet.
pub fn stock(sheets: &[Sheet], nest: Option<&Nest>, barrier: bool, notation: &Notation) -> Vec<Caution> {
    let say = |length: Length| notation.text(length);
    [copper(sheets, barrier), arsenate(sheets), off_size(sheets, &say), nest.and_then(unplaced)]
        .into_iter()
        .flatten()
        .collect()
}

fn labels<'a>(sheets: &'a [Sheet], pick: impl Fn(&Sheet) -> bool + 'a) -> Vec<String> {
    sheets.iter().filter(move |sheet| pick(sheet)).map(|sheet| sheet.label.clone()).collect()
}

fn copper(sheets: &[Sheet], barrier: bool) -> Option<Caution> {
    let treated = |sheet: &Sheet| matches!(sheet.treatment, Some(Treatment::Copper | Treatment::MicronizedCopper));
    let about = if barrier { Vec::new() } else { labels(sheets, treated) };
    Caution::triggered(
        "copper-treated",
        about,
        "Copper-treated plywood lies on bare aluminium here: put a barrier, such as tape on every member, between them.",
        "Copper salts and aluminium corrode when wet; dissolved and micronised copper differ in degree.",
        "the treater's and the boat builder's instructions",
    )
}

fn arsenate(sheets: &[Sheet]) -> Option<Caution> {
    let about = labels(sheets, |sheet| sheet.treatment == Some(Treatment::Arsenate));
    Caution::triggered(
        "arsenate-treated",
        about,
        "Arsenate-treated wood: follow the treater's sheet on handling, and keep it from where people sit barefoot.",
        "Its dust and its surface carry arsenic; 29 CFR 1910.1018 leaves preserved wood out, 1910.1200 does not.",
        "29 CFR 1910.1200 and the supplier's safety data sheet",
    )
}

fn off_size(sheets: &[Sheet], say: &impl Fn(Length) -> String) -> Option<Caution> {
    let least = Length::inch_fraction(SIXTEENTH.0, SIXTEENTH.1);
    let about = sheets.iter().filter(|sheet| !sheet.offcut).flat_map(|sheet| {
        let (length, width) = sheet.size();
        [(length, sheet.length), (width, sheet.width)].into_iter().filter_map(move |(found, nominal)| {
            let off = found > nominal || nominal - found > least;
            off.then(|| format!("{}: {} for {}", sheet.label, say(found), say(nominal)))
        })
    });
    Caution::triggered(
        "sheet-size",
        about.collect(),
        "These measured sheets are outside the size tolerance of +0, −1/16 in: measure more of the bundle.",
        "The plan cuts from the measured size.",
        "PS 1-19, size tolerance",
    )
}

/// A panel's label begins with a figure, and that of a small part does not.
fn name(label: &str) -> String {
    let panel = label.starts_with(|first: char| first.is_ascii_digit());
    if panel { format!("panel {label}") } else { label.to_owned() }
}

fn unplaced(nest: &Nest) -> Option<Caution> {
    let about = nest.unplaced.iter().map(|part| format!("{}: {}", name(&part.part), part.why));
    Caution::triggered(
        "unplaced",
        about.collect(),
        "These boards found no sheet: the order list is not complete.",
        "Stock is limited by count or size.",
        "the shop's stock list",
    )
}
