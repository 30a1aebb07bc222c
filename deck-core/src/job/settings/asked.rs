//! The settings that follow from the job's unit where they are not given.

use crate::job::{Paper, ShopSpec};
use crate::length::{Notation, Unit};
use crate::published::defaults;

/// The fractions that are on a tape: a message is not written in any other.
pub(in crate::job) const FRACTIONS: [u32; 6] = [2, 4, 8, 16, 32, 64];

/// How the shop writes lengths.
pub(in crate::job) fn notation(unit: Unit, shop: &ShopSpec) -> Notation {
    let finest = shop.fractions.filter(|finest| FRACTIONS.contains(finest));
    let plain = Notation::new(unit).denominator(finest.unwrap_or(defaults::FRACTIONS.value));
    shop.feet.map_or(plain, |feet| plain.feet(feet))
}

/// Where inches are read off the tape, Letter is in the printer.
pub(in crate::job) fn paper(unit: Unit, shop: &ShopSpec) -> Paper {
    shop.paper.unwrap_or(if unit.is_imperial() { Paper::Letter } else { Paper::A4 })
}
