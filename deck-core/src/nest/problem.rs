//! The order as the constructions see it: whole numbers, equal parts together, kerf folded into the sizes.
//!
//! Every part and every sheet is one kerf longer and one kerf wider than it is. Cuts then have no thickness: pieces
//! laid edge to edge fill the grown sheet exactly when the real ones, a kerf apart, fill the real sheet, because the
//! last piece of a row needs no cut behind it.

use super::cost::CostIn;
use super::inside::{self, Waste};
use super::part::{Grain, Part};
use crate::length::Length;
use crate::stock::{Saw, SawLine, Sheet, SheetGrain};
use std::collections::BTreeMap;

/// Turns of the saw line where the shop sets no limit. Deeper trees are never wanted at a saw, and depth is stack.
pub(super) const MOST_STAGES: u8 = 16;

/// A size, grown by the kerf, in nanometres: along the sheet's length, and across it.
pub(super) type Size = (i64, i64);

/// The extent of a piece that pieces side by side share out when they are parted by such lines.
pub(super) fn along(piece: Size, line: SawLine) -> i64 {
    match line {
        SawLine::Length => piece.1,
        SawLine::Width => piece.0,
    }
}

/// The extent that they have in common.
pub(super) fn across(piece: Size, line: SawLine) -> i64 {
    along(piece, line.turned())
}

/// The size of a strip of that extent out of a piece.
pub(super) fn strip(piece: Size, line: SawLine, extent: i64) -> Size {
    match line {
        SawLine::Length => (piece.0, extent),
        SawLine::Width => (extent, piece.1),
    }
}

/// Parts that cannot be told apart by the saw.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Class {
    /// Grown size as it lies on a sheet with grain; for parts that may turn the longer side comes first.
    pub(super) size: Size,
    /// True where the grain of the sheet forbids the turn.
    pub(super) locked: bool,
    /// Real area of one.
    pub(super) area: i128,
    /// Copies wanted.
    pub(super) count: u32,
    /// The parts in it: index and copies.
    pub(super) members: Vec<(usize, u32)>,
}

/// One size of stock.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Rack {
    /// Grown size inside the edge trim; zero or less where the trim leaves nothing.
    pub(super) size: Size,
    /// True where grain locks parts.
    pub(super) grain: bool,
    /// Sheets there are, at most one for each copy that is wanted.
    pub(super) count: u32,
    /// Cost of one in the smallest units.
    pub(super) cost: i128,
    /// True for waste whose grain may run either way: nothing that grain locks can be laid there.
    pub(super) unsure: bool,
}

/// The whole order.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Problem {
    /// Kinds of parts, in an order that does not depend on the order of the input.
    pub(super) classes: Vec<Class>,
    /// The stock, as it was given; behind it the waste inside parts.
    pub(super) racks: Vec<Rack>,
    /// What the racks behind the stock are, in their order.
    pub(super) waste: Vec<Waste>,
    pub(super) kerf: i64,
    pub(super) stages: u8,
    pub(super) first: Option<SawLine>,
    /// Smallest offcut worth keeping, grown.
    pub(super) keep: Option<Size>,
    pub(super) cost_in: CostIn,
}

impl Problem {
    /// Input that has been checked, in whole numbers.
    pub(super) fn new(parts: &[Part], stock: &[Sheet], saw: &Saw) -> Problem {
        let kerf = saw.kerf.nanometres();
        let classes = classes(parts, kerf);
        let copies = classes.iter().fold(0_u32, |sum, class| sum.saturating_add(class.count));
        let cost_in = if stock.iter().any(|sheet| sheet.price.is_some()) { CostIn::Money } else { CostIn::Area };
        let mut racks: Vec<Rack> = stock.iter().map(|sheet| rack(sheet, saw, copies, cost_in)).collect();
        let waste = inside::offer(parts, &classes, &mut racks, saw);
        Problem {
            racks,
            waste,
            classes,
            kerf,
            stages: saw.stages.unwrap_or(MOST_STAGES),
            first: saw.first,
            keep: saw.keep.map(|(length, width)| (length.nanometres() + kerf, width.nanometres() + kerf)),
            cost_in,
        }
    }

    /// Copies wanted of every class.
    pub(super) fn wanted(&self) -> Vec<u32> {
        self.classes.iter().map(|class| class.count).collect()
    }

    /// Copies wanted in all.
    pub(super) fn copies(&self) -> u64 {
        self.classes.iter().map(|class| u64::from(class.count)).sum()
    }

    /// True where the class fits that stock, alone on a sheet.
    pub(super) fn fits(class: &Class, rack: &Rack) -> bool {
        // Two cuts free a part from a sheet, and the second is not counted as a stage: every saw can do it.
        class.lies(rack).into_iter().flatten().any(|size| size.0 <= rack.size.0 && size.1 <= rack.size.1)
    }

    /// True for a grown size that is worth keeping as an offcut.
    pub(super) fn keeps(&self, size: Size, grain: bool) -> bool {
        self.keep.is_some_and(|keep| {
            let real = size.0 > self.kerf && size.1 > self.kerf;
            let as_is = size.0 >= keep.0 && size.1 >= keep.1;
            real && (as_is || !grain && size.0 >= keep.1 && size.1 >= keep.0)
        })
    }
}

impl Class {
    /// The ways in which it may lie on a sheet.
    pub(super) fn lies(&self, rack: &Rack) -> [Option<Size>; 2] {
        let (length, width) = self.size;
        if self.locked && rack.unsure {
            return [None, None];
        }
        let turns = length != width && !(self.locked && rack.grain);
        [Some((length, width)), turns.then_some((width, length))]
    }
}

fn rack(sheet: &Sheet, saw: &Saw, copies: u32, cost_in: CostIn) -> Rack {
    let (length, width) = sheet.size();
    let grown = |side: Length| (side - saw.trim * 2 + saw.kerf).nanometres();
    let usable = |side: Length| side > saw.trim * 2;
    let price = match (cost_in, sheet.offcut) {
        (CostIn::Money, _) => sheet.price.map_or(0, crate::money::Money::ten_thousandths),
        (CostIn::Area, true) => 0,
        (CostIn::Area, false) => i128::from(length.nanometres()) * i128::from(width.nanometres()),
    };
    Rack {
        size: if usable(length) && usable(width) { (grown(length), grown(width)) } else { (0, 0) },
        grain: sheet.grain == SheetGrain::Length,
        count: sheet.count.map_or(copies, |count| count.min(copies)),
        cost: price,
        unsure: false,
    }
}

/// Parts that the saw cannot tell apart, largest first; ties are broken by what the parts are, not by where they stand.
fn classes(parts: &[Part], kerf: i64) -> Vec<Class> {
    let mut groups: BTreeMap<(Size, bool, Vec<Size>), Vec<usize>> = BTreeMap::new();
    for (index, part) in parts.iter().enumerate().filter(|(_, part)| part.count > 0) {
        let (length, width) = (part.length.nanometres() + kerf, part.width.nanometres() + kerf);
        let size = if part.lies_across() { (width, length) } else { (length, width) };
        // A square lies the same way whichever way it is turned.
        let locked = part.grain != Grain::Any && length != width;
        // Parts with other waste inside are other parts: each copy placed brings the waste of its class.
        groups.entry((size, locked, inside::sizes(part, kerf))).or_default().push(index);
    }
    let class = |((size, locked, _), mut members): ((Size, bool, Vec<Size>), Vec<usize>)| {
        members.sort_by_key(|&index| parts.get(index).map(|part| (&part.boat, &part.label, part.grain, &part.inside)));
        let members: Vec<(usize, u32)> =
            members.into_iter().filter_map(|index| Some((index, parts.get(index)?.count))).collect();
        let count = members.iter().fold(0_u32, |sum, member| sum.saturating_add(member.1));
        let area = i128::from(size.0 - kerf) * i128::from(size.1 - kerf);
        Class { size, locked, area, count, members }
    };
    groups.into_iter().rev().map(class).collect()
}
