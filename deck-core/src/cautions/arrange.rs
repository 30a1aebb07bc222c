//! Cautions about boards that do not reach across, and about the blocks under their joints.

use super::Caution;
use crate::arrange::{Block, Joint};

const PRACTICE: &str = "common practice, no source";

/// A division of the deck along the boat, as far as there is something to know about it.
#[derive(Debug, Clone, Copy)]
pub struct DividedDeck<'a> {
    /// How it came to be built.
    pub chosen: &'a str,
    /// True where nobody asked for it: no sheet reaches across.
    pub unasked: bool,
    /// The joints.
    pub joints: &'a [Joint],
    /// The blocks.
    pub blocks: &'a [Block],
    /// Zones that joints cross.
    pub zones: &'a [String],
}

/// Cautions about joints along the boat.
pub fn arrangement(deck: &DividedDeck<'_>) -> Vec<Caution> {
    [chosen(deck), zones(deck), unblocked(deck), blocks(deck), trimmed(deck)].into_iter().flatten().collect()
}

fn chosen(deck: &DividedDeck<'_>) -> Option<Caution> {
    let about = if deck.unasked { vec![deck.chosen.to_owned()] } else { Vec::new() };
    Caution::triggered(
        "beam-wider-than-sheet",
        about,
        "Look at the sheet that compares the arrangements before you order. The job file's \"arrange\" builds another of them.",
        "Nobody chose between fillers, butts, rows along the boat and longer sheets: the plan took the first of its ranking.",
        "the shop",
    )
}

fn zones(deck: &DividedDeck<'_>) -> Option<Caution> {
    Caution::triggered(
        "joint-in-zone",
        deck.zones.to_vec(),
        "Joints along the boat run through these zones, which are kept clear of seams athwart only. See what stands there, or \
         take sheets that reach across.",
        "A joint under a gate, a pedestal or a table is trodden on and racked more than elsewhere.",
        PRACTICE,
    )
}

/// Joints of which a stretch lies on neither a block nor a flange are left to the overhangs at bow and stern.
fn unblocked(deck: &DividedDeck<'_>) -> Option<Caution> {
    let without = deck.joints.iter().filter(|joint| !deck.blocks.iter().any(|block| block.joint == joint.number));
    let about = without.map(|joint| format!("joint {}", joint.number));
    Caution::triggered(
        "joint-without-block",
        about.collect(),
        "No two members hold a block under these joints: find another way to carry them.",
        "A joint between members is carried by its blocks alone.",
        PRACTICE,
    )
}

fn blocks(deck: &DividedDeck<'_>) -> Option<Caution> {
    let about = match (deck.blocks.len(), deck.joints.len()) {
        (0, _) => Vec::new(),
        (blocks, joints) => vec![format!("blocks: {blocks}, under joints: {joints}")],
    };
    Caution::triggered(
        "blocking",
        about,
        "Seal the blocks all round. Glue and screw each to the first board before the second goes down, and fill the joint.",
        "A joint between members is carried by its blocks alone, and water stands on it.",
        PRACTICE,
    )
}

fn trimmed(deck: &DividedDeck<'_>) -> Option<Caution> {
    let about = deck.blocks.iter().filter(|block| block.trimmed).map(|block| {
        let member =
            |number: Option<usize>| number.map_or_else(|| "the deck's end".to_owned(), |number| format!("M{number}"));
        format!(
            "{} under joint {}, {} to {}",
            block.label,
            block.joint,
            member(block.fore_member),
            member(block.aft_member)
        )
    });
    Caution::triggered(
        "block-trimmed",
        about.collect(),
        "These blocks reach past the deck's edge or under an opening: trim them on the boat, and leave each board its half.",
        "They are sawn as rectangles.",
        PRACTICE,
    )
}
