//! The best value of every piece of a sheet, copies without limit.
//!
//! # Method
//! Dynamic programming over raster points (Gilmore and Gomory 1966; Beasley 1985; Cintra, Miyazawa, Wakabayashi and
//! Xavier 2008): the best of a piece is its best single part or the best of two pieces that a cut makes of it. Cuts are
//! tried in the first half only, and what they leave is rounded down to a point. A cut that is not at the first of
//! several equal pieces is passed over: an earlier one leaves more. How a row is cut stands in `row`.

use super::super::effort::Steps;
use super::board::LEAST_STEPS;
use super::raster::Raster;
use super::row::{Cutter, cut_across};
use super::tree::{Joined, Joins};
use crate::stock::SawLine;

/// A whole number that values are counted in. Narrow ones fill memory and time half as much.
pub(super) trait Amount: Copy + Ord + Default + std::ops::Add<Output = Self> + std::fmt::Debug {
    /// The number, cut off at the largest that the type holds.
    fn of(value: i64) -> Self;
    fn wide(self) -> i64;
}

impl Amount for i32 {
    fn of(value: i64) -> i32 {
        i32::try_from(value).unwrap_or(i32::MAX)
    }
    fn wide(self) -> i64 {
        i64::from(self)
    }
}

impl Amount for i64 {
    fn of(value: i64) -> i64 {
        value
    }
    fn wide(self) -> i64 {
        self
    }
}

/// The points that a piece reaches to.
type Piece = (usize, usize);

/// A rectangle that may be cut: its class, how it lies, and its value.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Item {
    pub(super) class: u32,
    pub(super) size: (i64, i64),
    pub(super) value: i64,
}

/// Values of pieces: a row for each point along the length, in it one value for each point along the width.
#[derive(Debug, Clone)]
pub(super) struct Table<'r, V> {
    lengths: &'r Raster,
    widths: &'r Raster,
    values: Vec<V>,
}

/// Of so many cuts one is made: the others are seen to be no better than those before. Seen on published sheets, where
/// it lies between four and twenty.
const CUTS: u64 = 8;

impl<'r, V: Amount> Table<'r, V> {
    /// Steps that a table takes about, without taking them.
    pub(super) fn cost(lengths: &Raster, widths: &Raster) -> u64 {
        let halves =
            |raster: &Raster| -> u64 { raster.points().iter().map(|point| raster.floor(point / 2) as u64).sum() };
        let (rows, columns) = (lengths.len() as u64, widths.len() as u64);
        let across = halves(lengths).saturating_mul(columns) / 32;
        let along = halves(widths).saturating_mul(rows) / 16;
        (across.saturating_add(along) / CUTS).saturating_add(rows.saturating_mul(columns) / 8)
    }

    /// Fills the table; none where the steps run out or the watcher says stop.
    pub(super) fn new(
        lengths: &'r Raster,
        widths: &'r Raster,
        items: &[Item],
        steps: &mut Steps<'_>,
    ) -> Option<Table<'r, V>> {
        let columns = widths.len();
        let mut table = Table { lengths, widths, values: vec![V::default(); lengths.len() * columns] };
        let mut starts: Vec<(usize, usize, V)> = items
            .iter()
            .filter(|item| item.value > 0)
            .map(|item| (lengths.ceil(item.size.0), widths.ceil(item.size.1), V::of(item.value)))
            .filter(|start| start.0 < lengths.len() && start.1 < columns)
            .collect();
        starts.sort_unstable_by_key(|start| start.0);
        let mut starts = starts.into_iter().peekable();
        let large = Self::cost(lengths, widths) > LEAST_STEPS;
        let mut cutter = Cutter::new(lengths, widths);
        for row in 1..lengths.len() {
            let (before, rest) = table.values.split_at_mut(row * columns);
            let Some(values) = rest.get_mut(..columns) else { break };
            let last = before.get((row - 1) * columns..).unwrap_or_default();
            values.copy_from_slice(last);
            cut_across(lengths, row, &cutter.elements, before, values, steps);
            cutter.across(values);
            while let Some((_, column, value)) = starts.next_if(|start| start.0 == row) {
                if let Some(here) = values.get_mut(column) {
                    *here = value.max(*here);
                }
            }
            cutter.cut_along(values, steps);
            cutter.along(row, last, values);
            if steps.stopped() || large && steps.spent_all() {
                return None;
            }
        }
        Some(table)
    }

    /// The same where all lines run one way; `turned` holds values of pieces that are sawn the other way, if such may follow.
    pub(super) fn strips(
        lengths: &'r Raster,
        widths: &'r Raster,
        items: &[Item],
        line: SawLine,
        turned: Option<&Table<'r, V>>,
        steps: &mut Steps<'_>,
    ) -> Option<Table<'r, V>> {
        let columns = widths.len();
        let mut table = match turned {
            Some(turned) => turned.clone(),
            None => Table { lengths, widths, values: vec![V::default(); lengths.len() * columns] },
        };
        for item in items.iter().filter(|item| item.value > 0) {
            let (row, column) = (lengths.ceil(item.size.0), widths.ceil(item.size.1));
            let place = (column < columns).then(|| table.values.get_mut(row * columns + column)).flatten();
            if let Some(here) = place {
                *here = V::of(item.value).max(*here);
            }
        }
        let large = Self::cost(lengths, widths) > LEAST_STEPS;
        let mut cutter = Cutter::new(lengths, widths);
        for row in 0..lengths.len() {
            let (before, rest) = table.values.split_at_mut(row * columns);
            let Some(values) = rest.get_mut(..columns) else { break };
            let last = before.get(row.saturating_sub(1) * columns..).unwrap_or_default();
            for (value, last) in values.iter_mut().zip(last) {
                *value = (*value).max(*last);
            }
            match line {
                SawLine::Width => {
                    cut_across(lengths, row, &cutter.elements, before, values, steps);
                    let mut most = V::default();
                    for value in values.iter_mut() {
                        most = most.max(*value);
                        *value = most;
                    }
                }
                SawLine::Length => cutter.cut_along(values, steps),
            }
            cutter.improved(row, last, values);
            if steps.stopped() || large && steps.spent_all() {
                return None;
            }
        }
        Some(table)
    }

    /// Value of the piece that reaches to those points.
    #[inline]
    pub(super) fn at(&self, length: usize, width: usize) -> V {
        self.values.get(length * self.widths.len() + width).copied().unwrap_or_default()
    }

    /// All values of pieces as long as that point.
    #[inline]
    pub(super) fn row(&self, length: usize) -> &[V] {
        let columns = self.widths.len();
        self.values.get(length * columns..(length + 1) * columns).unwrap_or_default()
    }

    /// Value of the whole sheet.
    pub(super) fn whole(&self) -> i64 {
        self.at(self.lengths.len() - 1, self.widths.len() - 1).wide()
    }

    /// A best pattern of the whole sheet, none where nothing fits.
    pub(super) fn pattern(&self, items: &[Item], joins: &mut Joins) -> Option<Joined> {
        self.trace(self.lengths.len() - 1, self.widths.len() - 1, items, joins)
    }

    /// A best pattern of a piece, found again from the values.
    pub(super) fn trace(&self, length: usize, width: usize, items: &[Item], joins: &mut Joins) -> Option<Joined> {
        /// What is still to be done, the last first.
        enum Task {
            Piece(usize, usize),
            Join(SawLine),
        }
        let (mut tasks, mut done) = (vec![Task::Piece(length, width)], Vec::new());
        while let Some(task) = tasks.pop() {
            match task {
                Task::Join(line) => {
                    let (second, first) = (done.pop()?, done.pop()?);
                    done.push(joins.join(line, first, second));
                }
                Task::Piece(length, width) => {
                    let (length, width) = self.shrink(length, width);
                    let value = self.at(length, width);
                    if value == V::default() {
                        return None;
                    }
                    if let Some(item) = self.single(length, width, items) {
                        done.push(joins.part(item.class, item.size));
                        continue;
                    }
                    let (line, first, second) = self.cut(length, width)?;
                    tasks.push(Task::Join(line));
                    tasks.push(Task::Piece(second.0, second.1));
                    tasks.push(Task::Piece(first.0, first.1));
                }
            }
        }
        done.pop()
    }

    /// The smallest piece of the same value.
    fn shrink(&self, mut length: usize, mut width: usize) -> (usize, usize) {
        let value = self.at(length, width);
        while length > 0 && self.at(length - 1, width) == value {
            length -= 1;
        }
        while width > 0 && self.at(length, width - 1) == value {
            width -= 1;
        }
        (length, width)
    }

    fn single<'i>(&self, length: usize, width: usize, items: &'i [Item]) -> Option<&'i Item> {
        let (value, piece) = (self.at(length, width), (self.lengths.point(length), self.widths.point(width)));
        items.iter().find(|item| item.size.0 <= piece.0 && item.size.1 <= piece.1 && V::of(item.value) == value)
    }

    /// A cut that gives a piece its value, and the two pieces.
    fn cut(&self, length: usize, width: usize) -> Option<(SawLine, Piece, Piece)> {
        let value = self.at(length, width);
        let across = halves(self.lengths, length)
            .find(|&(first, second)| self.at(first, width) + self.at(second, width) == value)
            .map(|(first, second)| (SawLine::Width, (first, width), (second, width)));
        across.or_else(|| {
            halves(self.widths, width)
                .find(|&(first, second)| self.at(length, first) + self.at(length, second) == value)
                .map(|(first, second)| (SawLine::Length, (length, first), (length, second)))
        })
    }
}

/// Every cut in the first half of the side up to a point, and the point to which the rest is rounded down.
pub(super) fn halves(raster: &Raster, point: usize) -> impl Iterator<Item = (usize, usize)> + '_ {
    let side = raster.point(point);
    let first = raster.points().iter().enumerate().skip(1).take_while(move |(_, first)| *first * 2 <= side);
    first.map(move |(index, first)| (index, raster.floor(side - first)))
}
