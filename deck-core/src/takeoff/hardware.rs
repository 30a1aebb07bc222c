//! Bolts and plates of what is bolted down again.

use super::line::{Item, PurchaseRules, TakeoffLine, pieces};
use crate::fittings::{BoltLine, PlateLine};
use crate::length::{Length, Notation};

/// The bolts, with nuts and washers, and the plates: a line for each kind and length, singly bought.
pub fn hardware(
    bolts: &[BoltLine],
    plates: &[PlateLine],
    rules: &PurchaseRules,
    notation: &Notation,
) -> Vec<TakeoffLine> {
    let say = |length: Length| notation.text(length);
    let bolts = bolts.iter().map(|line| {
        let length =
            line.length.map_or_else(|| format!("{} long at least: not on the shop's list", say(line.needed)), say);
        let words = format!("{} {} × {length}, nut and washers", line.kind, say(line.diameter));
        rules.single(Item::Bolt, words, line.count as u64, "bolt")
    });
    let plates = plates.iter().map(|line| {
        let plate = line.plate;
        let [length, width, thickness] = [plate.length, plate.width, plate.thickness].map(say);
        pieces(Item::Plate, format!("Backing plate {length} × {width} × {thickness}"), line.count as u64, 0, "plate")
    });
    bolts.chain(plates).collect()
}
