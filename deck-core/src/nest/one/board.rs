//! One sheet and the kinds of rectangles that may be cut from it, in whole numbers.

use super::super::build::Node;
use super::super::problem::Size;
use super::raster::Raster;
use super::table::{Amount, Item, Table};
use super::tree::{Joined, Joins};
use crate::math::greatest_divisor;
use crate::stock::SawLine;
use std::borrow::Cow;

/// Equal rectangles that may be cut.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(in crate::nest) struct Kind {
    /// Size as it lies, grown by the kerf.
    pub(in crate::nest) size: Size,
    /// True where it may lie the other way as well.
    pub(in crate::nest) turns: bool,
    /// Copies at most; more than fit where there is no limit.
    pub(in crate::nest) count: u32,
}

impl Kind {
    /// The ways in which it may lie.
    fn lies(&self) -> [Option<Size>; 2] {
        let (length, width) = self.size;
        [Some((length, width)), (self.turns && length != width).then_some((width, length))]
    }
}

/// What the saw may do.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(in crate::nest) struct Limits {
    /// Turns of the saw line; none where there is no limit.
    pub(in crate::nest) stages: Option<u8>,
    /// Direction of the first line, where it is fixed.
    pub(in crate::nest) first: Option<SawLine>,
}

impl Limits {
    /// Any cuts, edge to edge.
    pub(in crate::nest) const NONE: Limits = Limits { stages: None, first: None };

    pub(super) fn is_none(self) -> bool {
        self == Limits::NONE
    }
}

/// The best that was found for one sheet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(in crate::nest) struct Filled {
    /// Value of what is cut.
    pub(in crate::nest) value: i64,
    /// Nothing that can be cut is worth more.
    pub(in crate::nest) bound: i64,
    /// The cuts, the whole sheet first. Without parts it is one free piece.
    pub(in crate::nest) nodes: Vec<Node>,
    /// The same parts with the waste of the sheet cut off in another order.
    pub(in crate::nest) others: Vec<Vec<Node>>,
    /// Class and copies, each class once.
    pub(in crate::nest) parts: Vec<(u32, u32)>,
}

impl Filled {
    fn nothing(bound: i64) -> Filled {
        Filled { value: 0, bound, nodes: vec![Node::Free], others: Vec::new(), parts: Vec::new() }
    }
}

/// A sheet prepared for questions about what is best cut from it. Values come with each question.
#[derive(Debug, Clone)]
pub(in crate::nest) struct Board {
    /// Size in units.
    pub(super) size: Size,
    /// The unit along each side: what divides the extents of all kinds.
    unit: Size,
    /// True along each side where the sheet is not a whole number of units.
    pub(super) slack: (bool, bool),
    /// What may be cut, sizes in units, counts at most what the sheet holds.
    pub(super) kinds: Vec<Kind>,
    /// True where the sheet holds every copy of each kind for itself.
    pub(super) holds_each: bool,
    /// Ways in which kinds may lie on the sheet, with values of zero.
    pub(super) ways: Vec<Item>,
    pub(super) limits: Limits,
    pub(super) lengths: Raster,
    pub(super) widths: Raster,
    /// True where the points are all that matter, not a choice of them.
    pub(super) complete: bool,
}

/// Points along one side at most where they are gathered in a list.
const MOST_POINTS: usize = 1 << 16;
/// Pieces whose values are held at most: some hundred megabytes.
const MOST_PIECES: usize = 1 << 26;
/// Steps that a table may always take: a millisecond.
pub(super) const LEAST_STEPS: u64 = 100_000;
/// Points along a side that are kept where all would be too many.
const KEPT_POINTS: usize = 1 << 10;

impl Board {
    /// A sheet of that grown size, and what may be cut from it. Sizes are above zero.
    pub(in crate::nest) fn new(sheet: Size, kinds: &[Kind], limits: Limits) -> Board {
        let extents = |side: fn(Size) -> i64| {
            let some = kinds.iter().filter(|kind| kind.count > 0 && kind.lies().iter().any(|lies| holds(sheet, *lies)));
            let sides = some.flat_map(|kind| kind.lies().into_iter().flatten().map(side));
            // A divisor of sides is no greater than they are.
            i64::try_from(sides.map(i128::from).fold(0, greatest_divisor)).unwrap_or(1).max(1)
        };
        let unit = (extents(|size| size.0), extents(|size| size.1));
        let size = (sheet.0 / unit.0, sheet.1 / unit.1);
        let mut ways = Vec::new();
        let mut counts = Vec::with_capacity(kinds.len());
        for (class, kind) in (0_u32..).zip(kinds) {
            let before = ways.len();
            let lies = kind.lies().into_iter().filter(|lies| kind.count > 0 && holds(sheet, *lies));
            ways.extend(lies.flatten().map(|lies| Item { class, size: (lies.0 / unit.0, lies.1 / unit.1), value: 0 }));
            let fits = if ways.len() > before { most_copies(sheet, kind.size) } else { 0 };
            counts.push(kind.count.min(fits));
        }
        let holds_each = kinds.iter().zip(&counts).all(|(kind, count)| kind.count == *count);
        let kinds: Vec<Kind> = kinds.iter().zip(counts).map(|(kind, count)| Kind { count, ..*kind }).collect();
        let (lengths, widths, complete) = rasters(size, &ways, &kinds);
        let slack = (size.0 * unit.0 < sheet.0, size.1 * unit.1 < sheet.1);
        Board { size, unit, slack, kinds, holds_each, ways, limits, lengths, widths, complete }
    }

    /// The ways in which kinds may lie, with their values.
    pub(super) fn items(&self, values: &[i64]) -> Vec<Item> {
        let value = |item: &Item| Item { value: values.get(item.class as usize).copied().unwrap_or(0), ..*item };
        self.ways.iter().map(value).collect()
    }

    /// The points of a table that the steps pay for, and whether they are all that matter.
    pub(super) fn points<V: Amount>(&self, steps: u64) -> (Cow<'_, Raster>, Cow<'_, Raster>, bool) {
        let (mut lengths, mut widths) = (Cow::Borrowed(&self.lengths), Cow::Borrowed(&self.widths));
        let mut complete = self.complete;
        while Table::<V>::cost(&lengths, &widths) > steps.max(LEAST_STEPS) {
            let fewer = |raster: &Raster| Cow::Owned(raster.thinned(raster.len() / 2));
            if lengths.len() > widths.len() {
                lengths = fewer(&lengths);
            } else {
                widths = fewer(&widths);
            }
            complete = false;
        }
        (lengths, widths, complete)
    }

    /// No table of pieces holds more: the sheet full of the best for its area, copies without limit.
    pub(super) fn most(&self, values: &[i64]) -> i64 {
        let sheet = i128::from(self.size.0) * i128::from(self.size.1);
        let full = |(kind, value): (&Kind, &i64)| i128::from(*value) * sheet / self.area(kind).max(1) + 1;
        let some = self.kinds.iter().zip(values).filter(|(kind, _)| kind.count > 0);
        i64::try_from(some.map(full).max().unwrap_or(1)).unwrap_or(i64::MAX)
    }

    /// Value of all copies, whether they fit together or not.
    pub(super) fn all_copies(&self, values: &[i64]) -> i128 {
        self.kinds.iter().zip(values).map(|(kind, value)| i128::from(kind.count) * i128::from(*value)).sum()
    }

    /// Area of one copy, in units.
    pub(super) fn area(&self, kind: &Kind) -> i128 {
        i128::from(kind.size.0 / self.unit.0) * i128::from(kind.size.1 / self.unit.1)
    }

    /// Nothing on the sheet is worth more: by area, kind by kind.
    pub(super) fn area_bound(&self, values: &[i64]) -> i64 {
        let area = i128::from(self.size.0) * i128::from(self.size.1);
        let mut left = area;
        let mut kinds: Vec<(i128, i128, i128)> = self
            .kinds
            .iter()
            .zip(values)
            .filter(|(kind, value)| kind.count > 0 && **value > 0)
            .map(|(kind, &value)| {
                let (length, width) = kind.size;
                (
                    i128::from(value),
                    i128::from(length / self.unit.0) * i128::from(width / self.unit.1),
                    i128::from(kind.count),
                )
            })
            .collect();
        kinds.sort_by(|one, other| (other.0 * one.1).cmp(&(one.0 * other.1)));
        let mut bound = 0;
        for (value, each, count) in kinds {
            let taken = (left / each).min(count);
            bound += taken * value;
            left -= taken * each;
            if taken < count {
                bound += left * value / each;
                break;
            }
        }
        i64::try_from(bound).unwrap_or(i64::MAX)
    }

    /// True where the saw can make a rectangle of the sheet as it is joined.
    pub(super) fn can_saw(&self, joins: &Joins, joined: Joined) -> bool {
        let Some(line) = joins.line(joined) else { return true };
        let (size, turns) = (joins.size(joined), joins.turns(joined));
        let along = |line: SawLine| if line == SawLine::Length { turns.0 } else { turns.1 };
        // With the other line first, there must be something to saw off.
        let first = self.limits.first.unwrap_or(line);
        let rest = match first {
            _ if first == line => true,
            SawLine::Length => size.1 < self.size.1 || self.slack.1,
            SawLine::Width => size.0 < self.size.0 || self.slack.0,
        };
        rest && self.limits.stages.is_none_or(|stages| along(first) <= stages)
    }

    /// The pattern of joined rectangles, as cuts of the sheet.
    pub(super) fn filled(&self, joins: &Joins, joined: Option<Joined>, values: &[i64], bound: i64) -> Filled {
        let Some(joined) = joined else { return Filled::nothing(bound) };
        let nodes = self.nodes(joins, joined, self.limits.first);
        let leads = [SawLine::Length, SawLine::Width].into_iter().filter(|&lead| self.may_lead(joins, joined, lead));
        let others = leads.map(|lead| self.nodes(joins, joined, Some(lead))).collect();
        let mut copies = vec![0_u32; self.kinds.len()];
        for class in joins.parts(joined) {
            if let Some(copies) = copies.get_mut(class as usize) {
                *copies += 1;
            }
        }
        let value = copies.iter().zip(values).map(|(copies, value)| i64::from(*copies) * value).sum();
        let parts = (0..).zip(copies).filter(|(_, copies)| *copies > 0).collect();
        Filled { value, bound, nodes, others, parts }
    }

    fn nodes(&self, joins: &Joins, joined: Joined, first: Option<SawLine>) -> Vec<Node> {
        // What is left of less than a unit has to be cut off as well; how much it is does not matter here.
        let piece = (self.size.0 + i64::from(self.slack.0), self.size.1 + i64::from(self.slack.1));
        let mut nodes = joins.nodes(joined, piece, first);
        for node in &mut nodes {
            if let Node::Split { line, at, .. } = node {
                *at *= if *line == SawLine::Width { self.unit.0 } else { self.unit.1 };
            }
        }
        nodes
    }

    /// True where the sheet's waste may be cut off along a line before a rectangle that begins with the other one.
    fn may_lead(&self, joins: &Joins, joined: Joined, lead: SawLine) -> bool {
        let turns = joins.turns(joined);
        let along = if lead == SawLine::Length { turns.0 } else { turns.1 };
        joins.line(joined) != Some(lead)
            && self.limits.first.is_none_or(|first| first == lead)
            && self.limits.stages.is_none_or(|stages| along <= stages)
    }
}

/// True where a sheet holds a piece that lies on it so.
fn holds(sheet: Size, lies: Option<Size>) -> bool {
    lies.is_some_and(|lies| lies.0 <= sheet.0 && lies.1 <= sheet.1)
}

/// Copies of a size that the area of a sheet holds at most.
fn most_copies(sheet: Size, size: Size) -> u32 {
    let area = |size: Size| i128::from(size.0) * i128::from(size.1);
    u32::try_from(area(sheet) / area(size).max(1)).unwrap_or(u32::MAX)
}

fn rasters(size: Size, ways: &[Item], kinds: &[Kind]) -> (Raster, Raster, bool) {
    let count = |item: &Item| kinds.get(item.class as usize).map_or(0, |kind| u64::from(kind.count));
    let side = |whole: i64, extent: fn(Size) -> i64| {
        let limited: Vec<(i64, u64)> = ways.iter().map(|item| (extent(item.size), count(item))).collect();
        let free: Vec<(i64, u64)> = limited.iter().map(|(extent, _)| (*extent, u64::MAX)).collect();
        let free = Raster::normal(&free, whole, MOST_POINTS).map(|raster| raster.reduced());
        // Both hold every place that matters.
        let limited = Raster::normal(&limited, whole, MOST_POINTS);
        [free, limited].into_iter().flatten().min_by_key(Raster::len)
    };
    let (lengths, widths) = (side(size.0, |size| size.0), side(size.1, |size| size.1));
    if let (Some(lengths), Some(widths)) = (&lengths, &widths)
        && lengths.len().saturating_mul(widths.len()) <= MOST_PIECES
    {
        return (lengths.clone(), widths.clone(), true);
    }
    let few = |whole: i64, extent: fn(Size) -> i64, raster: Option<Raster>| {
        let alone = || Raster::multiples(ways.iter().map(|item| extent(item.size)), whole);
        raster.unwrap_or_else(alone).thinned(KEPT_POINTS)
    };
    (few(size.0, |size| size.0, lengths), few(size.1, |size| size.1, widths), false)
}
