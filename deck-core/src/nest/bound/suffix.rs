//! The most worth of the wares from a given one on in a given room, whole wares only.
//!
//! # Method
//! The knapsack by dynamic programming over rooms (Bellman 1957), one measure at a time, with measures rounded down to
//! levels so that no sum is understated. From the last ware to the first, so that every suffix of the list is at hand.

use super::super::effort::Steps;

/// Levels of room. More tell rooms apart better, at a cost in proportion.
const LEVELS: i64 = 1024;
/// Copies of a ware up to which they are counted; beyond it there may be any number.
const COUNTED: u32 = 8;
/// Cells that are filled in the time of a step.
const CELLS: u64 = 16;

/// One copy of a ware under one measure.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Load {
    /// What it takes of the measure.
    pub(super) size: i64,
    pub(super) value: i64,
    pub(super) count: u32,
}

/// Worth by suffix and level.
#[derive(Debug)]
pub(super) struct Suffixes {
    whole: i64,
    /// For each suffix, the empty one last, the most worth at each level.
    rows: Vec<Vec<i64>>,
}

impl Suffixes {
    /// For loads of a measure of which there is so much; none where the steps do not last.
    pub(super) fn new(loads: impl DoubleEndedIterator<Item = Load>, whole: i64, steps: &mut Steps<'_>) -> Option<Self> {
        let mut row = vec![0_i64; level(LEVELS) + 1];
        let mut rows = vec![row.clone()];
        for load in loads.rev() {
            // Measures are below 2^31: products fit.
            let size = level(load.size.max(0) * LEVELS / whole.max(1));
            add(&mut row, size, load.value, load.count);
            rows.push(row.clone());
            steps.spend(u64::from(load.count.min(COUNTED) + 1) * LEVELS.unsigned_abs() / CELLS);
            if steps.spent_all() {
                return None;
            }
        }
        rows.reverse();
        Some(Suffixes { whole: whole.max(1), rows })
    }

    /// The most that wares from that one on are worth in that much of the measure.
    pub(super) fn most(&self, from: usize, room: i64) -> i64 {
        let at = level(room.max(0) * LEVELS / self.whole);
        self.rows.get(from).map_or(0, |row| row.get(at).or(row.last()).copied().unwrap_or(0))
    }
}

fn level(figure: i64) -> usize {
    usize::try_from(figure).unwrap_or(0)
}

/// Lets so many copies join every worth at hand.
fn add(row: &mut [i64], size: usize, value: i64, count: u32) {
    if size == 0 {
        let all = value.saturating_mul(i64::from(count));
        for cell in row {
            *cell = cell.saturating_add(all);
        }
        return;
    }
    if count > COUNTED {
        for at in size..row.len() {
            join(row, at, size, value);
        }
        return;
    }
    for _ in 0..count {
        for at in (size..row.len()).rev() {
            join(row, at, size, value);
        }
    }
}

fn join(row: &mut [i64], at: usize, size: usize, value: i64) {
    let with = row.get(at - size).map_or(0, |&before| before.saturating_add(value));
    if let Some(cell) = row.get_mut(at).filter(|cell| **cell < with) {
        *cell = with;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn table(loads: &[(i64, i64, u32)], whole: i64) -> Suffixes {
        let loads = loads.iter().map(|&(size, value, count)| Load { size, value, count });
        Suffixes::new(loads, whole, &mut Steps::new(1_000_000, u64::MAX)).unwrap()
    }

    #[test]
    fn whole_wares_only() {
        let table = table(&[(60, 100, 1), (50, 70, 2), (30, 30, 1)], 1024);
        assert_eq!(
            [0, 29, 30, 59, 60, 89, 90, 110, 190].map(|room| table.most(0, room)),
            [0, 0, 30, 70, 100, 100, 130, 170, 270]
        );
        assert_eq!([59, 80, 100, 1024].map(|room| table.most(1, room)), [70, 100, 140, 170]);
        assert_eq!((table.most(2, 1000), table.most(3, 1000)), (30, 0));
    }

    #[test]
    fn many_copies_and_what_takes_no_room() {
        let table = table(&[(10, 7, 100), (0, 5, 3)], 100);
        assert_eq!((table.most(0, 100), table.most(1, 0)), (85, 15));
    }

    #[test]
    fn rounding_never_understates() {
        // Three of 341 of 1024.5 levels: rounded down they fit, as they do in truth.
        let table = table(&[(333, 1, 3)], 1000);
        assert_eq!(table.most(0, 999), 3);
    }
}
