//! The best of one sheet, by the means that the copies and the saw allow.

use super::board::{Board, Filled};
use super::table::{Amount, Table};
use super::tree::Joins;

impl Board {
    /// The best set that the steps pay for; they are counted down. A step is some ten nanoseconds.
    ///
    /// `values` are worth of one copy, by kind; none is below zero, and a sheet full of the best is below 2⁶².
    pub(in crate::nest) fn best(&self, values: &[i64], steps: &mut u64) -> Filled {
        if self.area_bound(values) <= i64::from(i32::MAX) {
            self.best_in::<i32>(values, steps)
        } else {
            self.best_in::<i64>(values, steps)
        }
    }

    fn best_in<V: Amount>(&self, values: &[i64], steps: &mut u64) -> Filled {
        let items = self.items(values);
        let mut joins = Joins::new();
        let mut spent = 0;
        let by_area = self.area_bound(values);
        let (lengths, widths, complete) = self.points::<V>(*steps);
        let table: Table<'_, V> = Table::new(&lengths, &widths, &items, &mut spent);
        *steps = steps.saturating_sub(spent);
        let pattern = table.pattern(&items, &mut joins);
        let bound = if complete { table.whole().min(by_area) } else { by_area };
        self.filled(&joins, pattern, values, bound)
    }
}
