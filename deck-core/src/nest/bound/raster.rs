//! The patterns of one sheet that are worth most when there is any number of copies of every part.
//!
//! # Method
//! Dynamic programming over raster points (Beasley, "Algorithms for unconstrained two-dimensional guillotine cutting",
//! Journal of the Operational Research Society 36, 1985): a piece is a part, or is sawn into two pieces whose extents are
//! sums of extents of parts.

use super::super::build::Node;
use super::super::effort::Steps;
use super::super::problem::Size;
use super::fronts::split;
use super::price::{Found, counted};
use crate::stock::SawLine;
use std::collections::BTreeSet;

/// A part and what it is worth.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Valued {
    pub(super) class: u32,
    pub(super) lies: [Option<Size>; 2],
    pub(super) value: i64,
}

/// Raster points of one sheet.
#[derive(Debug)]
pub(super) struct Raster {
    along: Points,
    across: Points,
}

/// A piece by its points: along, and across.
type Piece = (usize, usize);

/// Where a raster piece is sawn: a node, and how large it is.
#[derive(Debug, Clone, Copy)]
struct Place {
    node: usize,
    size: Size,
    piece: Piece,
}

/// Points along each side, at most: the time of a pricing grows with their third power.
const MOST: usize = 400;
/// Cells that are looked at in the time of a step.
const CELLS: u64 = 8;
/// Pieces of a pattern that is told of, at most. Tiny parts fill a sheet by the thousand where any number is allowed.
const MOST_NODES: usize = 10_000;
/// Patterns that are told of at once, at most.
const TOLD: usize = 24;

/// Worth of every piece between raster points.
#[derive(Debug)]
pub(super) struct Worth<'r> {
    raster: &'r Raster,
    parts: &'r [Valued],
    /// By point along, the worth by point across.
    rows: Vec<Vec<i64>>,
}

impl Raster {
    /// None where the parts' extents have too many sums.
    pub(super) fn new(lies: impl Iterator<Item = Size> + Clone, sheet: Size) -> Option<Raster> {
        let along = Points::new(lies.clone().map(|size| size.0), sheet.0)?;
        let across = Points::new(lies.map(|size| size.1), sheet.1)?;
        Some(Raster { along, across })
    }

    /// The worth of every piece; none where the steps do not last.
    pub(super) fn worth<'r>(&'r self, parts: &'r [Valued], steps: &mut Steps<'_>) -> Option<Worth<'r>> {
        let (along, across) = (self.along.sums.len(), self.across.sums.len());
        let mut rows = vec![vec![0_i64; across]; along];
        for part in parts {
            for size in part.lies.iter().flatten() {
                let row = rows.get_mut(self.along.within(size.0));
                if let Some(cell) = row.and_then(|row| row.get_mut(self.across.within(size.1))) {
                    *cell = part.value.max(*cell);
                }
            }
        }
        for at in 0..along {
            let (before, from) = rows.split_at_mut(at);
            let Some(row) = from.first_mut() else { break };
            if let Some(last) = before.last() {
                raise(row, last.iter().copied());
            }
            let cuts = self.along.cuts.get(at).map_or(&[][..], Vec::as_slice);
            for &(first, second) in cuts {
                if let (Some(first), Some(second)) = (before.get(first), before.get(second)) {
                    raise(row, first.iter().zip(second).map(|(first, second)| first + second));
                }
            }
            self.cut_across(row);
            steps.spend((across * (cuts.len() + across / 4 + 1)) as u64 / CELLS);
            if steps.spent_all() {
                return None;
            }
        }
        Some(Worth { raster: self, parts, rows })
    }

    fn cut_across(&self, row: &mut [i64]) {
        for (at, cuts) in self.across.cuts.iter().enumerate() {
            let cell = |index: usize| row.get(index).copied().unwrap_or(0);
            let cut = cuts.iter().map(|&(first, second)| cell(first) + cell(second)).max().unwrap_or(0);
            let most = cut.max(cell(at)).max(at.checked_sub(1).map_or(0, cell));
            if let Some(cell) = row.get_mut(at) {
                *cell = most;
            }
        }
    }
}

fn raise(row: &mut [i64], by: impl Iterator<Item = i64>) {
    for (cell, other) in row.iter_mut().zip(by) {
        *cell = other.max(*cell);
    }
}

/// Sums of extents up to the whole, and for each the ways to part it in two.
#[derive(Debug)]
struct Points {
    sums: Vec<i64>,
    cuts: Vec<Vec<(usize, usize)>>,
}

impl Points {
    fn new(extents: impl Iterator<Item = i64>, whole: i64) -> Option<Points> {
        let extents: BTreeSet<i64> = extents.filter(|&extent| extent > 0).collect();
        let mut sums = BTreeSet::from([0_i64]);
        let mut fresh = vec![0_i64];
        while let Some(sum) = fresh.pop() {
            for extent in &extents {
                if sum + extent <= whole && sums.insert(sum + extent) {
                    fresh.push(sum + extent);
                }
            }
            if sums.len() > MOST {
                return None;
            }
        }
        let mut points = Points { sums: sums.into_iter().collect(), cuts: Vec::new() };
        let cuts = points.sums.iter().map(|&whole| {
            let halves = points.sums.iter().enumerate().skip(1).take_while(|(_, first)| **first * 2 <= whole);
            halves.map(|(at, first)| (at, points.within(whole - first))).collect()
        });
        points.cuts = cuts.collect();
        Some(points)
    }

    /// The last point within an extent.
    fn within(&self, extent: i64) -> usize {
        self.sums.partition_point(|&point| point <= extent).saturating_sub(1)
    }
}

impl Worth<'_> {
    fn at(&self, piece: Piece) -> i64 {
        self.rows.get(piece.0).and_then(|row| row.get(piece.1)).copied().unwrap_or(0)
    }

    fn whole(&self) -> Piece {
        (self.raster.along.sums.len() - 1, self.raster.across.sums.len() - 1)
    }

    /// The most that a sheet is worth.
    pub(super) fn most(&self) -> i64 {
        self.at(self.whole())
    }

    /// Patterns worth more than the threshold, best first. They differ in the first cut.
    pub(super) fn patterns(&self, sheet: Size, threshold: i64, steps: &mut Steps<'_>) -> Vec<Found> {
        let whole = self.whole();
        let mut cuts: Vec<(i64, Piece, Piece)> =
            self.cuts_of(whole).map(|(one, other)| (self.at(one) + self.at(other), one, other)).collect();
        cuts.retain(|cut| cut.0 > threshold);
        cuts.sort_by_key(|cut| std::cmp::Reverse(cut.0));
        let mut patterns: Vec<Found> = Vec::new();
        // A part may be a sheet's best by itself, without a cut.
        if cuts.first().is_none_or(|best| best.0 < self.most()) && self.most() > threshold {
            patterns.extend(self.sawn(sheet, None, steps));
        }
        for (_, one, other) in cuts {
            let Some(found) = self.sawn(sheet, Some((one, other)), steps) else { break };
            if patterns.iter().all(|known| known.parts != found.parts) {
                patterns.push(found);
            }
            if patterns.len() >= TOLD {
                break;
            }
        }
        patterns
    }

    /// The best pattern of a sheet, or that with a certain first cut; none where the steps do not last. What is beyond
    /// the most pieces is left free.
    fn sawn(&self, sheet: Size, first: Option<(Piece, Piece)>, steps: &mut Steps<'_>) -> Option<Found> {
        let points = self.raster.along.sums.len() + self.raster.across.sums.len();
        let look = 1 + (points + self.parts.len()) as u64 / CELLS;
        let mut nodes = vec![Node::Free];
        let mut classes = Vec::new();
        let mut value = 0;
        let whole = Place { node: 0, size: sheet, piece: self.whole() };
        let mut waiting = match first {
            Some(cut) => self.cut(&mut nodes, whole, cut).to_vec(),
            None => vec![whole],
        };
        while let Some(place) = waiting.pop() {
            let worth = self.at(place.piece);
            let (along, across) = place.piece;
            let smaller = [(along.wrapping_sub(1), across), (along, across.wrapping_sub(1))];
            steps.spend(1);
            if steps.spent_all() {
                return None;
            }
            if nodes.len() > MOST_NODES {
                break;
            }
            if worth == 0 {
                continue;
            }
            if let Some(&piece) = smaller.iter().find(|&&smaller| self.at(smaller) == worth) {
                waiting.push(Place { piece, ..place });
                continue;
            }
            steps.spend(look);
            if let Some(part) = self.part_of(place.piece, worth) {
                let node = self.trim(&mut nodes, place).node;
                if let Some(node) = nodes.get_mut(node) {
                    *node = Node::Part(part.class);
                }
                classes.push(part.class);
                value += part.value;
            } else if let Some(cut) =
                self.cuts_of(place.piece).find(|&(one, other)| self.at(one) + self.at(other) == worth)
            {
                waiting.extend(self.cut(&mut nodes, place, cut));
            }
        }
        Some(Found { value, parts: counted(classes), nodes })
    }

    fn extent(&self, piece: Piece) -> Size {
        let sum = |points: &Points, at: usize| points.sums.get(at).copied().unwrap_or(0);
        (sum(&self.raster.along, piece.0), sum(&self.raster.across, piece.1))
    }

    /// Saws a place down to its raster piece.
    fn trim(&self, nodes: &mut Vec<Node>, place: Place) -> Place {
        let (size, mut trimmed) = (self.extent(place.piece), place);
        if trimmed.size.0 > size.0 {
            trimmed.node = split(nodes, trimmed.node, SawLine::Width, size.0);
        }
        if trimmed.size.1 > size.1 {
            trimmed.node = split(nodes, trimmed.node, SawLine::Length, size.1);
        }
        Place { size, ..trimmed }
    }

    fn cut(&self, nodes: &mut Vec<Node>, place: Place, (one, other): (Piece, Piece)) -> [Place; 2] {
        let place = self.trim(nodes, place);
        let first = self.extent(one);
        let (line, at, rest) = if one.1 == place.piece.1 {
            (SawLine::Width, first.0, (place.size.0 - first.0, place.size.1))
        } else {
            (SawLine::Length, first.1, (place.size.0, place.size.1 - first.1))
        };
        let node = split(nodes, place.node, line, at);
        [Place { node, size: first, piece: one }, Place { node: node + 1, size: rest, piece: other }]
    }

    fn cuts_of(&self, piece: Piece) -> impl Iterator<Item = (Piece, Piece)> + '_ {
        let along = self.raster.along.cuts.get(piece.0).into_iter().flatten();
        let across = self.raster.across.cuts.get(piece.1).into_iter().flatten();
        let along = along.map(move |&(first, second)| ((first, piece.1), (second, piece.1)));
        along.chain(across.map(move |&(first, second)| ((piece.0, first), (piece.0, second))))
    }

    fn part_of(&self, piece: Piece, worth: i64) -> Option<&Valued> {
        let (along, across) = (&self.raster.along, &self.raster.across);
        let lies = |size: &Size| (along.within(size.0), across.within(size.1)) == piece;
        self.parts.iter().find(|part| part.value == worth && part.lies.iter().flatten().any(lies))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn valued(class: u32, size: Size, value: i64) -> Valued {
        Valued { class, lies: [Some(size), None], value }
    }

    #[test]
    fn the_best_of_a_small_sheet() {
        // The pinwheel of four cannot be sawn; three of them beside one of the small kind can.
        let parts = [valued(0, (3, 2), 20), valued(1, (2, 3), 20), valued(2, (2, 2), 9)];
        let mut steps = Steps::new(100_000, u64::MAX);
        let raster = Raster::new(parts.iter().flat_map(|part| part.lies).flatten(), (5, 5)).unwrap();
        let worth = raster.worth(&parts, &mut steps).unwrap();
        assert_eq!(worth.most(), 69);
        let patterns = worth.patterns((5, 5), 60, &mut steps);
        assert_eq!((patterns[0].value, patterns[0].parts.iter().map(|part| part.1).sum()), (69, 4));
        let cut = patterns[0].nodes.iter().filter(|node| matches!(node, Node::Part(_))).count();
        assert_eq!(cut, 4);
        assert!(worth.patterns((5, 5), 69, &mut steps).is_empty());
    }

    #[test]
    fn a_part_alone_is_trimmed_out_of_the_sheet() {
        let parts = [valued(7, (4, 3), 5)];
        let mut steps = Steps::new(100_000, u64::MAX);
        let raster = Raster::new(parts.iter().flat_map(|part| part.lies).flatten(), (5, 5)).unwrap();
        let worth = raster.worth(&parts, &mut steps).unwrap();
        let found = worth.patterns((5, 5), 0, &mut steps).remove(0);
        assert_eq!((found.value, &found.parts[..]), (5, &[(7, 1)][..]));
        assert!(matches!(found.nodes[0], Node::Split { line: SawLine::Width, at: 4, .. }), "{:?}", found.nodes);
        assert_eq!(found.nodes.len(), 5);
    }
}
