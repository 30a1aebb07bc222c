//! Cautions about what is bolted down again.

use super::Caution;
use crate::fittings::{FittedHole, HoleRule};
use crate::length::{Length, Notation};

const PRACTICE: &str = "common practice, no source";

/// Each rule: the caution's id, what to do, and why.
const ROWS: [(HoleRule, &str, &str, &str); 8] = [
    (
        HoleRule::OffBoard,
        "hole-off-board",
        "These holes lie on no board: measure the old datum again, or move the fitting.",
        "The new deck is not where the old one was.",
    ),
    (
        HoleRule::InOpening,
        "hole-in-opening",
        "These holes lie in an opening: move the fitting or the opening.",
        "There is no board to bolt to.",
    ),
    (
        HoleRule::NearSeam,
        "hole-near-seam",
        "These holes are too near to a seam: move the fitting, or use a plate that reaches over both boards.",
        "A bolt near an edge splits the board, and a seam works.",
    ),
    (
        HoleRule::FlangeEdge,
        "hole-flange-edge",
        "These bolts go through a flange too near to its edge: move the fitting.",
        "The flange tears out at its edge.",
    ),
    (
        HoleRule::FoulsFlange,
        "hole-fouls-flange",
        "Below these holes a plate or a washer would lie on the edge of a flange: move the fitting, or pack the plate level.",
        "A nut that pulls on a tilted plate bends the bolt.",
    ),
    (
        HoleRule::NearFastener,
        "hole-near-fastener",
        "These holes are too near to a fastener of the deck: leave that fastener out, or move it along its row.",
        "Two holes side by side leave no wood between them.",
    ),
    (
        HoleRule::NearOldHole,
        "hole-near-old-hole",
        "These bolts go through a flange beside an old hole: use the old hole, or move the fitting.",
        "Two holes side by side leave no metal between them.",
    ),
    (
        HoleRule::NoBolt,
        "bolt-too-long",
        "No bolt on the shop's list is long enough for these holes.",
        "Foot, board, wall, plate, washer and nut are more than the longest.",
    ),
];

/// Cautions about the holes of fittings.
pub fn fittings(holes: &[FittedHole], notation: &Notation) -> Vec<Caution> {
    let say = |length: Length| notation.text(length);
    let row = |(rule, id, text, reason): (HoleRule, &str, &str, &str)| {
        let about = holes.iter().filter_map(|hole| {
            let found = hole.findings.iter().find(|found| found.rule == rule)?;
            let short = match found.short_by {
                short if short.is_zero() => String::new(),
                short => format!(": short by {}", say(short)),
            };
            let way = found.aft.map(|aft| {
                let way = if aft.is_negative() { "forward" } else { "aft" };
                format!(", {} {way} would mend it", say(aft.abs()))
            });
            Some(format!("{} hole {}{short}{}", hole.fitting, hole.number, way.unwrap_or_default()))
        });
        Caution::triggered(id, about.collect(), text, reason, PRACTICE)
    };
    ROWS.into_iter().filter_map(row).collect()
}
