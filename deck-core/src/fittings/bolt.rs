//! Which bolt a hole takes, and how many of each to get.

use super::FittedHole;
use crate::length::Length;
use serde::{Deserialize, Serialize};

/// A bolt, with what goes on it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Bolt {
    /// What the shop calls it.
    pub kind: String,
    /// Its diameter.
    pub diameter: Length,
    /// Thickness of the fitting's foot above the board.
    pub foot: Length,
    /// Thickness of its washers together.
    pub washer: Length,
    /// Height of its nut.
    pub nut: Length,
    /// The plate below.
    pub plate: Option<Plate>,
}

/// A plate under the deck.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Plate {
    /// Its longer side.
    pub length: Length,
    /// Its shorter side.
    pub width: Length,
    /// Its thickness.
    pub thickness: Length,
    /// Bolts through one plate.
    pub bolts: u32,
}

impl Bolt {
    /// A bolt without foot, washer, nut or plate.
    pub fn new(kind: impl Into<String>, diameter: Length) -> Bolt {
        let none = Length::ZERO;
        Bolt { kind: kind.into(), diameter, foot: none, washer: none, nut: none, plate: None }
    }
}

impl Plate {
    /// A plate for so many bolts.
    pub fn new(length: Length, width: Length, thickness: Length, bolts: u32) -> Plate {
        Plate { length, width, thickness, bolts }
    }
}

/// The layers of the deck that a bolt goes through.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Layers {
    /// Thickness of the boards.
    pub board: Length,
    /// Thickness of the tape on the members; zero where there is none.
    pub tape: Length,
    /// Wall of the flange, where the bolt goes through one.
    pub wall: Option<Length>,
}

/// What a bolt goes through, and the length that it needs.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Stack {
    /// Foot of the fitting.
    pub foot: Length,
    /// Board.
    pub board: Length,
    /// Tape on the member; zero beside one.
    pub tape: Length,
    /// Wall of the flange; zero beside a member.
    pub wall: Length,
    /// Plate.
    pub plate: Length,
    /// Washers.
    pub washer: Length,
    /// Nut.
    pub nut: Length,
    /// The sum.
    pub needed: Length,
    /// The shortest bolt that is sold and reaches; none where the longest does not.
    pub bolt: Option<Length>,
}

impl Stack {
    /// The stack of a bolt through layers; `sold` are the lengths that there are.
    ///
    /// # Method
    /// Foot + board + tape + wall + plate + washer + nut, rounded up to what is sold: common practice, no source; the sum is
    /// derived.
    pub fn new(bolt: &Bolt, layers: &Layers, sold: &[Length]) -> Stack {
        let (wall, plate) =
            (layers.wall.unwrap_or_default(), bolt.plate.map(|plate| plate.thickness).unwrap_or_default());
        let tape = if layers.wall.is_some() { layers.tape } else { Length::ZERO };
        let needed = bolt.foot + layers.board + tape + wall + plate + bolt.washer + bolt.nut;
        Stack {
            foot: bolt.foot,
            board: layers.board,
            tape,
            wall,
            plate,
            washer: bolt.washer,
            nut: bolt.nut,
            needed,
            bolt: sold.iter().copied().filter(|length| *length >= needed).min(),
        }
    }
}

/// Bolts of one kind and length.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct BoltLine {
    /// What the shop calls it.
    pub kind: String,
    /// Its diameter.
    pub diameter: Length,
    /// Its length; none: no bolt that is sold is long enough.
    pub length: Option<Length>,
    /// The longest stack of these.
    pub needed: Length,
    /// How many.
    pub count: usize,
    /// The fittings that they are for.
    pub fittings: Vec<String>,
}

/// Plates of one size.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct PlateLine {
    /// The plate.
    pub plate: Plate,
    /// How many.
    pub count: usize,
    /// The fittings that they are for.
    pub fittings: Vec<String>,
}

/// The bolts of all holes, by kind and length, in the order in which they are met.
pub fn bolts(holes: &[FittedHole]) -> Vec<BoltLine> {
    let mut lines: Vec<BoltLine> = Vec::new();
    for hole in holes {
        let (bolt, stack) = (&hole.bolt, &hole.stack);
        let same = |line: &&mut BoltLine| {
            line.kind == bolt.kind && line.diameter == bolt.diameter && line.length == stack.bolt
        };
        match lines.iter_mut().find(same) {
            Some(line) => {
                line.count += 1;
                line.needed = line.needed.max(stack.needed);
                if !line.fittings.contains(&hole.fitting) {
                    line.fittings.push(hole.fitting.clone());
                }
            }
            None => lines.push(BoltLine {
                kind: bolt.kind.clone(),
                diameter: bolt.diameter,
                length: stack.bolt,
                needed: stack.needed,
                count: 1,
                fittings: vec![hole.fitting.clone()],
            }),
        }
    }
    lines
}

/// The plates of all fittings by size: to each fitting as many as its bolts fill.
pub fn plates(holes: &[FittedHole]) -> Vec<PlateLine> {
    let mut each: Vec<(&str, Plate, usize)> = Vec::new();
    for hole in holes {
        let Some(plate) = hole.bolt.plate else { continue };
        match each.iter_mut().find(|(fitting, _, _)| *fitting == hole.fitting) {
            Some((_, _, bolts)) => *bolts += 1,
            None => each.push((&hole.fitting, plate, 1)),
        }
    }
    let mut lines: Vec<PlateLine> = Vec::new();
    for (fitting, plate, bolts) in each {
        let count = bolts.div_ceil(usize::try_from(plate.bolts.max(1)).unwrap_or(1));
        match lines.iter_mut().find(|line| line.plate == plate) {
            Some(line) => {
                line.count += count;
                line.fittings.push(fitting.to_owned());
            }
            None => lines.push(PlateLine { plate, count, fittings: vec![fitting.to_owned()] }),
        }
    }
    lines
}
