//! How one row of a table is cut: pieces of one length and of every width.
//!
//! # Method
//! Of the pieces that lie side by side the smallest is taken as the first, and it is an element: not itself two pieces
//! side by side. What the rest is worth is known. Over points that are closed (raster points without a limit on copies)
//! nothing is lost by that: were the first piece no element, its smaller half could be the first, and both rests together
//! are worth no more than one piece as long as both. So rows are looked at only where they have elements, which is what
//! makes large tables possible. Own derivation, after the remark of Herz (1972) that cuts may be taken in order.

use super::super::effort::Steps;
use super::raster::Raster;
use super::table::{Amount, halves};

/// Columns of a row in which it has elements.
pub(super) type Columns = Vec<(u32, u32)>;

/// Ranges of columns with fewer between them are one: it costs more to begin again.
const GAP: usize = 16;
/// Values that are added and compared in one step where they lie side by side.
const SIDE_BY_SIDE: usize = 32;

/// What is known of the rows so far, and room to work in.
#[derive(Debug)]
pub(super) struct Cutter<'r, V> {
    lengths: &'r Raster,
    widths: &'r Raster,
    /// For each row, where it has elements.
    pub(super) elements: Vec<Columns>,
    /// The row at hand before it was cut along.
    before: Vec<V>,
    /// Values by width and not by point.
    spread: Vec<V>,
    breaks: Vec<(usize, i64)>,
}

impl<'r, V: Amount> Cutter<'r, V> {
    pub(super) fn new(lengths: &'r Raster, widths: &'r Raster) -> Cutter<'r, V> {
        let spread = if widths.is_dense() { usize::try_from(widths.whole() + 1).unwrap_or(0) } else { 0 };
        Cutter {
            lengths,
            widths,
            elements: vec![Vec::new(); lengths.len()],
            before: Vec::new(),
            spread: vec![V::default(); spread],
            breaks: Vec::new(),
        }
    }

    /// Notes what a row is worth where it is cut across only.
    pub(super) fn across(&mut self, values: &[V]) {
        self.before.clear();
        self.before.extend_from_slice(values);
    }

    /// Notes where a row is worth more than by cuts across, which `across` was told of.
    pub(super) fn along(&mut self, row: usize, last: &[V], values: &[V]) {
        if !self.lengths.is_closed() {
            return self.improved(row, last, values);
        }
        let columns = columns(&self.before, values);
        if let Some(elements) = self.elements.get_mut(row) {
            *elements = columns;
        }
    }

    /// Notes a whole row where it is worth more than the one before in any place.
    pub(super) fn improved(&mut self, row: usize, last: &[V], values: &[V]) {
        if let Some(elements) = self.elements.get_mut(row)
            && (row > 0 && values != last)
        {
            *elements = vec![(0, u32::try_from(values.len()).unwrap_or(u32::MAX))];
        }
    }

    /// The best of two narrower pieces, from the narrowest on.
    pub(super) fn cut_along(&mut self, values: &mut [V], steps: &mut Steps<'_>) {
        if self.spread.is_empty() {
            cut_points(self.widths, values, &mut self.breaks, steps);
        } else {
            cut_spread(self.widths, values, &mut self.spread, steps);
        }
    }
}

/// Where values are above those before.
fn columns<V: Amount>(before: &[V], values: &[V]) -> Columns {
    let mut columns: Columns = Vec::new();
    for (column, _) in before.iter().zip(values).enumerate().filter(|(_, (before, value))| value > before) {
        let column = u32::try_from(column).unwrap_or(u32::MAX);
        match columns.last_mut() {
            Some((_, end)) if *end as usize + GAP >= column as usize => *end = column + 1,
            _ => columns.push((column, column + 1)),
        }
    }
    columns
}

/// The best of two shorter pieces, for many widths at once.
pub(super) fn cut_across<V: Amount>(
    lengths: &Raster,
    row: usize,
    elements: &[Columns],
    before: &[V],
    values: &mut [V],
    steps: &mut Steps<'_>,
) {
    let columns = values.len();
    let line = |row: usize, from: usize, to: usize| before.get(row * columns + from..row * columns + to);
    let mut added = columns;
    for (first, second) in halves(lengths, row) {
        for &(from, to) in elements.get(first).map_or(&[][..], Vec::as_slice) {
            let (from, to) = (from as usize, to as usize);
            added += to - from + GAP;
            let (Some(firsts), Some(seconds), Some(values)) =
                (line(first, from, to), line(second, from, to), values.get_mut(from..to))
            else {
                continue;
            };
            for ((value, first), second) in values.iter_mut().zip(firsts).zip(seconds) {
                *value = (*value).max(*first + *second);
            }
        }
    }
    steps.spend((added / SIDE_BY_SIDE) as u64);
}

/// Every width in turn: those that are no sum of smaller ones are added to all that they leave.
fn cut_spread<V: Amount>(widths: &Raster, values: &mut [V], spread: &mut [V], steps: &mut Steps<'_>) {
    spread.fill(V::default());
    let mut added = spread.len() * 2;
    for (column, &width) in widths.points().iter().enumerate().skip(1) {
        let Ok(width) = usize::try_from(width) else { continue };
        let value = values.get(column).copied().unwrap_or_default();
        if spread.get(width).is_none_or(|known| *known >= value) {
            continue;
        }
        let mut from = width;
        while from < spread.len() {
            // As far as the width reaches, what is read does not overlap what is written.
            let (rests, sums) = spread.split_at_mut(from);
            for (sum, rest) in sums.iter_mut().zip(rests.get(from - width..).unwrap_or_default()) {
                *sum = (*sum).max(*rest + value);
            }
            from += width;
        }
        added += spread.len() - width + GAP;
    }
    for (value, &width) in values.iter_mut().zip(widths.points()) {
        let best = usize::try_from(width).ok().and_then(|width| spread.get(width));
        *value = best.copied().unwrap_or_default().max(*value);
    }
    steps.spend((added / SIDE_BY_SIDE) as u64);
}

/// Every point in turn, with what it leaves rounded down to a point.
fn cut_points<V: Amount>(widths: &Raster, values: &mut [V], breaks: &mut Vec<(usize, i64)>, steps: &mut Steps<'_>) {
    breaks.clear();
    let mut last = V::default();
    let mut looks = 0;
    for (column, &side) in widths.points().iter().enumerate() {
        let mut best = values.get(column).copied().unwrap_or_default().max(last);
        for &(first, at) in breaks.iter() {
            if at * 2 > side {
                break;
            }
            looks += 1;
            let second = widths.floor(side - at);
            let both = values.get(first).copied().unwrap_or_default() + values.get(second).copied().unwrap_or_default();
            best = best.max(both);
        }
        if best > last {
            breaks.push((column, side));
        }
        if let Some(value) = values.get_mut(column) {
            *value = best;
        }
        last = best;
    }
    steps.spend(looks / 4);
}
