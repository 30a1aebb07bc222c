//! The best value of every piece where the saw line turns only so often, copies without limit.
//!
//! # Method
//! Dynamic programming as in `table`, a pair of tables for each stage: in one, pieces are sawn along the length first, in
//! the other across it (Gilmore and Gomory 1965 for two stages; Cintra, Miyazawa, Wakabayashi and Xavier 2008). A piece
//! may always hold one part alone: the cut that frees it is not counted.

use super::super::effort::Steps;
use super::raster::Raster;
use super::table::{Amount, Item, Table, halves};
use super::tree::{Joined, Joins};
use crate::stock::SawLine;

/// Values by stages left: pieces that are sawn along the length first, and across it first.
#[derive(Debug, Clone)]
pub(super) struct Staged<'r, V> {
    lengths: &'r Raster,
    widths: &'r Raster,
    levels: Vec<[Table<'r, V>; 2]>,
    first: Option<SawLine>,
}

/// A piece: stages used below it, the direction of its lines, and the points that it reaches to.
type Piece = (usize, SawLine, usize, usize);

/// The two directions, as the tables lie.
const LINES: [SawLine; 2] = [SawLine::Length, SawLine::Width];

impl<'r, V: Amount> Staged<'r, V> {
    /// None where the watcher says stop.
    pub(super) fn new(
        (lengths, widths): (&'r Raster, &'r Raster),
        items: &[Item],
        stages: u8,
        first: Option<SawLine>,
        steps: &mut Steps<'_>,
    ) -> Option<Staged<'r, V>> {
        let mut levels: Vec<[Table<'r, V>; 2]> = Vec::new();
        for _ in 0..stages.max(1) {
            let below = levels.last();
            let mut strips = |line: SawLine| {
                let turned = below.and_then(|level| level.get(index(line.turned())));
                Table::strips(lengths, widths, items, line, turned, steps)
            };
            let [along, across] = LINES;
            let level = [strips(along)?, strips(across)?];
            levels.push(level);
        }
        Some(Staged { lengths, widths, levels, first })
    }

    /// Value of the whole sheet.
    pub(super) fn whole(&self) -> i64 {
        self.roots().map(|root| self.at(root).wide()).max().unwrap_or(0)
    }

    /// A best pattern of the whole sheet.
    pub(super) fn pattern(&self, items: &[Item], joins: &mut Joins) -> Option<Joined> {
        let root = self.roots().max_by_key(|root| self.at(*root))?;
        self.trace(root, items, joins)
    }

    /// What the sheet may be for the first line.
    ///
    /// Where that line is fixed, a sheet without anything left across it may not begin with the other one. Points are
    /// rounded and do not tell; the value is a bound then, and `Board::can_saw` looks at the pattern itself.
    fn roots(&self) -> impl Iterator<Item = Piece> {
        let top = self.levels.len().saturating_sub(1);
        let (length, width) = (self.lengths.len() - 1, self.widths.len() - 1);
        let lines = LINES.into_iter().filter(|line| self.first.is_none_or(|first| first == *line));
        lines.map(move |line| (top, line, length, width))
    }

    fn at(&self, (level, line, length, width): Piece) -> V {
        let table = self.levels.get(level).and_then(|level| level.get(index(line)));
        table.map_or_else(V::default, |table| table.at(length, width))
    }

    fn trace(&self, root: Piece, items: &[Item], joins: &mut Joins) -> Option<Joined> {
        /// What is still to be done, the last first.
        enum Task {
            Piece(Piece),
            Join(SawLine),
        }
        let mut tasks = vec![Task::Piece(root)];
        let mut done = Vec::new();
        while let Some(task) = tasks.pop() {
            match task {
                Task::Join(line) => {
                    let (second, first) = (done.pop()?, done.pop()?);
                    // One of two pieces may be empty where the first cut is fixed.
                    done.push(match (first, second) {
                        (Some(first), Some(second)) => Some(joins.join(line, first, second)),
                        (one, other) => Option::or(one, other),
                    });
                }
                Task::Piece(piece) => {
                    let (level, line, length, width) = self.shrink(piece);
                    let here = (level, line, length, width);
                    let value = self.at(here);
                    if value == V::default() {
                        done.push(None);
                    } else if let Some(item) = self.single(value, length, width, items) {
                        done.push(Some(joins.part(item.class, item.size)));
                    } else if level > 0 && self.at((level - 1, line.turned(), length, width)) == value {
                        tasks.push(Task::Piece((level - 1, line.turned(), length, width)));
                    } else {
                        let (first, second) = self.cut(here)?;
                        tasks.extend([Task::Join(line), Task::Piece(second), Task::Piece(first)]);
                    }
                }
            }
        }
        done.pop().flatten()
    }

    /// The smallest piece of the same value.
    fn shrink(&self, (level, line, mut length, mut width): Piece) -> Piece {
        let value = self.at((level, line, length, width));
        while length > 0 && self.at((level, line, length - 1, width)) == value {
            length -= 1;
        }
        while width > 0 && self.at((level, line, length, width - 1)) == value {
            width -= 1;
        }
        (level, line, length, width)
    }

    fn single<'i>(&self, value: V, length: usize, width: usize, items: &'i [Item]) -> Option<&'i Item> {
        let piece = (self.lengths.point(length), self.widths.point(width));
        items.iter().find(|item| item.size.0 <= piece.0 && item.size.1 <= piece.1 && V::of(item.value) == value)
    }

    /// The two pieces of a cut that gives a piece its value.
    fn cut(&self, (level, line, length, width): Piece) -> Option<(Piece, Piece)> {
        let value = self.at((level, line, length, width));
        let (raster, last) = match line {
            SawLine::Length => (self.widths, width),
            SawLine::Width => (self.lengths, length),
        };
        let piece = |point: usize| match line {
            SawLine::Length => (level, line, length, point),
            SawLine::Width => (level, line, point, width),
        };
        let mut pairs = halves(raster, last).map(|(first, second)| (piece(first), piece(second)));
        pairs.find(|&(first, second)| self.at(first) + self.at(second) == value)
    }
}

fn index(line: SawLine) -> usize {
    usize::from(line == SawLine::Width)
}
