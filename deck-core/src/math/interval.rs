//! Sets of whole numbers as sorted, separate intervals.

/// A set of whole numbers: closed intervals in order, none touching the next.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct IntervalSet(Vec<(i64, i64)>);

impl IntervalSet {
    /// The empty set.
    pub fn new() -> IntervalSet {
        IntervalSet::default()
    }

    /// The numbers from `low` to `high`, both in it; empty where `low` is above `high`.
    pub fn of(low: i64, high: i64) -> IntervalSet {
        IntervalSet(if low <= high { vec![(low, high)] } else { Vec::new() })
    }

    /// The intervals in order.
    pub fn intervals(&self) -> &[(i64, i64)] {
        &self.0
    }

    /// True where nothing is in it.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// The least number in it.
    pub fn least(&self) -> Option<i64> {
        self.0.first().map(|&(low, _)| low)
    }

    /// The greatest number in it.
    pub fn greatest(&self) -> Option<i64> {
        self.0.last().map(|&(_, high)| high)
    }

    /// Adds the numbers from `low` to `high`.
    pub fn add(&mut self, low: i64, high: i64) {
        if low > high {
            return;
        }
        let start = self.0.partition_point(|&(_, end)| end < low.saturating_sub(1));
        let end = self.0.partition_point(|&(begin, _)| begin <= high.saturating_add(1));
        let merged = self.0[start..end].iter().fold((low, high), |(a, b), &(c, d)| (a.min(c), b.max(d)));
        self.0.splice(start..end, [merged]);
    }

    /// Adds every number of another set.
    pub fn add_all(&mut self, other: &IntervalSet) {
        for &(low, high) in &other.0 {
            self.add(low, high);
        }
    }

    /// Takes out the numbers strictly between `low` and `high`; the ends stay.
    pub fn remove_open(&mut self, low: i64, high: i64) {
        let mut kept = Vec::with_capacity(self.0.len() + 1);
        for &(a, b) in &self.0 {
            if low >= b || high <= a || high.saturating_sub(low) < 2 {
                kept.push((a, b));
                continue;
            }
            if a <= low {
                kept.push((a, low));
            }
            if high <= b {
                kept.push((high, b));
            }
        }
        self.0 = kept;
    }

    /// The numbers that are also in `low ..= high`.
    #[must_use]
    pub fn within(&self, low: i64, high: i64) -> IntervalSet {
        let kept = self.0.iter().map(|&(a, b)| (a.max(low), b.min(high))).filter(|(a, b)| a <= b);
        IntervalSet(kept.collect())
    }

    /// Every number `x + d` with `x` in the set and `d` from `least` to `most`.
    #[must_use]
    pub fn stretched(&self, least: i64, most: i64) -> IntervalSet {
        let mut all = IntervalSet::new();
        if least <= most {
            for &(a, b) in &self.0 {
                all.add(a.saturating_add(least), b.saturating_add(most));
            }
        }
        all
    }
}

#[cfg(test)]
mod tests {
    use super::IntervalSet;

    #[test]
    fn touching_intervals_merge_and_open_ones_leave_their_ends() {
        let mut set = IntervalSet::of(10, 20);
        set.add(30, 40);
        set.add(21, 25);
        assert_eq!(set.intervals(), [(10, 25), (30, 40)]);
        set.add(0, 100);
        assert_eq!(set.intervals(), [(0, 100)]);
        set.remove_open(40, 60);
        assert_eq!(set.intervals(), [(0, 40), (60, 100)]);
        set.remove_open(60, 61);
        set.remove_open(-5, 10);
        assert_eq!(set.intervals(), [(10, 40), (60, 100)]);
        assert_eq!(set.within(35, 65).intervals(), [(35, 40), (60, 65)]);
        assert_eq!(set.stretched(1, 21).intervals(), [(11, 121)]);
        assert_eq!((set.least(), set.greatest()), (Some(10), Some(100)));
    }
}
