//! What the rest of the sheet is worth at most, once a rectangle lies in its corner.
//!
//! # Method
//! The recursion of Viswanathan and Bagchi (Operations Research 41, 1993): a rectangle grows by what stands beside or
//! above it, and each addition is at most as good as the best of a piece of that size, copies without limit.

use super::super::effort::Steps;
use super::raster::Raster;
use super::table::{Amount, Table};

/// A bound for each room left beside and above a rectangle, by points.
#[derive(Debug, Clone)]
pub(super) struct Rest<V> {
    columns: usize,
    values: Vec<V>,
}

impl<V: Amount> Rest<V> {
    /// Steps that it takes, without taking them.
    pub(super) fn cost(lengths: &Raster, widths: &Raster) -> u64 {
        let (rows, columns) = (lengths.len() as u64, widths.len() as u64);
        rows.saturating_mul(columns).saturating_mul(rows / 16 + columns / 8 + 1)
    }

    /// None where the watcher says stop.
    pub(super) fn new(
        table: &Table<'_, V>,
        lengths: &Raster,
        widths: &Raster,
        steps: &mut Steps<'_>,
    ) -> Option<Rest<V>> {
        let columns = widths.len();
        let mut values = vec![V::default(); lengths.len() * columns];
        // What stands beside is as wide as what lies below the room above.
        let below: Vec<usize> = widths.points().iter().map(|room| widths.floor(widths.whole() - room)).collect();
        let mut beside = Vec::with_capacity(values.len());
        let mut better = Vec::with_capacity(lengths.len());
        for row in 0..lengths.len() {
            let values = table.row(row);
            better.push(row > 0 && values != table.row(row - 1));
            beside.extend(below.iter().map(|&below| values.get(below).copied().unwrap_or_default()));
        }
        for row in 0..lengths.len() {
            let room = lengths.point(row);
            let (before, here) = values.split_at_mut(row * columns);
            let Some(here) = here.get_mut(..columns) else { break };
            if row > 0 {
                here.copy_from_slice(before.get((row - 1) * columns..).unwrap_or_default());
            }
            for first in (1..=row).filter(|&first| better.get(first) == Some(&true)) {
                let second = lengths.floor(room - lengths.point(first));
                let firsts = beside.get(first * columns..).unwrap_or_default();
                let seconds = before.get(second * columns..).unwrap_or_default();
                for ((value, first), second) in here.iter_mut().zip(firsts).zip(seconds) {
                    *value = (*value).max(*first + *second);
                }
            }
            above(table.row(lengths.floor(lengths.whole() - room)), widths, here, steps);
            steps.spend((row * columns / 8) as u64);
            if steps.stopped() {
                return None;
            }
        }
        Some(Rest { columns, values })
    }

    /// All bounds for a room beside.
    #[inline]
    pub(super) fn row(&self, beside: usize) -> &[V] {
        self.values.get(beside * self.columns..(beside + 1) * self.columns).unwrap_or_default()
    }

    /// The bound for a room beside and one above.
    #[inline]
    pub(super) fn at(&self, beside: usize, above: usize) -> i64 {
        self.values.get(beside * self.columns + above).copied().unwrap_or_default().wide()
    }
}

/// The best of what stands above, from the smallest room on. `table` holds values of pieces as long as what lies below.
fn above<V: Amount>(table: &[V], widths: &Raster, here: &mut [V], steps: &mut Steps<'_>) {
    let mut last = V::default();
    let better: Vec<(i64, V)> = widths
        .points()
        .iter()
        .zip(table)
        .filter(|(_, value)| std::mem::replace(&mut last, **value) != **value)
        .map(|(point, value)| (*point, *value))
        .collect();
    let (mut last, mut looks) = (V::default(), 0);
    for (column, &room) in widths.points().iter().enumerate() {
        let mut best = here.get(column).copied().unwrap_or_default().max(last);
        for &(first, value) in &better {
            if first > room {
                break;
            }
            looks += 1;
            best = best.max(value + here.get(widths.floor(room - first)).copied().unwrap_or_default());
        }
        if let Some(value) = here.get_mut(column) {
            *value = best;
        }
        last = best;
    }
    steps.spend(looks);
}
