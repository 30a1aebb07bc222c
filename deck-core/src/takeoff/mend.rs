//! Angles and cleats under seams whose flange is too narrow, with their screws.

use super::line::{Amount, Item, PurchaseRules, Takeoff, TakeoffLine};
use crate::length::{Length, Notation};
use serde::{Deserialize, Serialize};

/// An angle or a cleat along an edge of a board at a seam.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct MendPart {
    /// Number of the seam.
    pub seam: usize,
    /// Number of the member that it is fastened to.
    pub member: usize,
    /// True for an angle, false for a cleat.
    pub is_angle: bool,
    /// True forward of the flange, false aft of it.
    pub forward: bool,
    /// Label of the panel whose row it carries.
    pub panel: String,
    /// Its length.
    pub length: Length,
    /// Screws that hold it to the member.
    pub screws: u64,
}

impl Takeoff {
    /// Adds angles, cleats and the screws that hold them.
    pub fn add_mends(&mut self, parts: &[MendPart], leg: Length, rules: &PurchaseRules, notation: &Notation) {
        let words = format!("Aluminium angle, flat leg {}, beside members", notation.text(leg));
        for (item, angles, words) in [(Item::Angle, true, words.as_str()), (Item::Cleat, false, "Cleat beside members")]
        {
            let of: Vec<&MendPart> = parts.iter().filter(|part| part.is_angle == angles).collect();
            if of.is_empty() {
                continue;
            }
            self.lines.push(TakeoffLine {
                item,
                description: words.into(),
                needed: Amount::Length(of.iter().map(|part| part.length).sum()),
                spare: Amount::Length(Length::ZERO),
                buy: of.len() as u64,
                unit: "piece".into(),
                holds: None,
                price: None,
                cost: None,
            });
        }
        let screws: u64 = parts.iter().map(|part| part.screws).sum();
        if screws > 0 {
            self.lines.push(rules.boxed(Item::MendScrew, "Screws for angles and cleats, into the web".into(), screws));
        }
    }
}
