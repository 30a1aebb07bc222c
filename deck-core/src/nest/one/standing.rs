//! Looking on while a sheet is filled.

use super::worth::{Worth, WorthIn};
use std::cell::Cell;

/// How far a fill has come, and the best answer so far.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[non_exhaustive]
pub struct FillProgress {
    /// Steps done.
    pub done: u64,
    /// Steps that the effort pays for at most. A proof ends the search sooner.
    pub of: u64,
    /// What the best answer so far is worth.
    pub value: Worth,
    /// No set of parts that can be cut from the sheet is worth more.
    pub bound: Worth,
    /// True once no better answer exists.
    pub proven: bool,
}

/// The value and the bound of the best answer so far, for the watcher.
#[derive(Debug)]
pub(super) struct Standing {
    value: Cell<i128>,
    bound: Cell<i128>,
    /// What one unit of the searches' values is worth, in the smallest units.
    step: i128,
    worth_in: WorthIn,
}

impl Standing {
    pub(super) fn new(step: i128, worth_in: WorthIn) -> Standing {
        Standing { value: Cell::new(0), bound: Cell::new(i128::MAX), step, worth_in }
    }

    /// Notes a better answer.
    pub(super) fn found(&self, value: i64) {
        self.value.set(self.value.get().max(i128::from(value).saturating_mul(self.step)));
    }

    /// Notes a bound.
    pub(super) fn bounded(&self, bound: i64) {
        self.bound.set(self.bound.get().min(i128::from(bound).saturating_mul(self.step)));
    }

    /// Notes what the answer says in the end, in the smallest units.
    pub(super) fn settled(&self, value: i128, bound: i128) {
        self.value.set(value);
        self.bound.set(bound);
    }

    /// What the watcher is told.
    pub(super) fn progress(&self, done: u64, of: u64) -> FillProgress {
        let (value, bound) = (self.value.get(), self.bound.get().max(self.value.get()));
        let worth = |units| self.worth_in.worth(units);
        FillProgress { done, of, value: worth(value), bound: worth(bound), proven: value == bound }
    }
}

impl Default for Standing {
    /// Where nobody looks on.
    fn default() -> Standing {
        Standing::new(1, WorthIn::Area)
    }
}

#[cfg(test)]
mod tests {
    use super::super::super::{Effort, Fill, FillPart, fill, fill_watched};
    use super::*;
    use crate::Length;
    use crate::stock::{Saw, Sheet};
    use std::ops::ControlFlow;

    /// A sheet that takes a search: limited copies of many sizes.
    fn question() -> (Sheet, Vec<FillPart>) {
        let part = |index: i64| {
            let (length, width) = (Length::inches(13 + index * 7 % 19), Length::inches(7 + index * 5 % 17));
            FillPart::new(format!("part {index}"), length, width).count(2)
        };
        (Sheet::new("4 x 8", Length::inches(96), Length::inches(48)), (0..14).map(part).collect())
    }

    fn watched(steps: u64, mut go_on: impl FnMut(&FillProgress) -> bool) -> (Fill, Vec<FillProgress>) {
        let (sheet, parts) = question();
        let mut told = Vec::new();
        let fill = fill_watched(&sheet, &parts, &Saw::new(), Effort::Steps(steps), &mut |progress| {
            told.push(*progress);
            if go_on(progress) { ControlFlow::Continue(()) } else { ControlFlow::Break(()) }
        });
        (fill.unwrap(), told)
    }

    fn units(worth: Worth) -> i128 {
        match worth {
            Worth::Area(area) => area.square_nanometres(),
            Worth::Value(value) => value.ten_thousandths(),
        }
    }

    #[test]
    fn looking_on_changes_nothing() {
        const STEPS: u64 = 6_000_000;
        let (sheet, parts) = question();
        let unwatched = fill(&sheet, &parts, &Saw::new(), Effort::Steps(STEPS)).unwrap();
        let (fill, told) = watched(STEPS, |_| true);
        assert_eq!(fill, unwatched);
        assert_eq!(told, watched(STEPS, |_| true).1, "asked at the same steps");
        let ordered = told.is_sorted_by(|one, next| {
            one.done <= next.done
                && units(one.value) <= units(next.value)
                && units(one.bound) >= units(next.bound)
                && (one.of, next.of) == (STEPS, STEPS)
        });
        assert!(told.len() > 1 && ordered, "{told:?}");
        let last = told.last().unwrap();
        assert_eq!((last.value, last.bound, last.proven), (fill.value, fill.bound, fill.proven));
    }

    #[test]
    fn a_stop_hands_back_the_best_so_far_at_once() {
        const STEPS: u64 = 50_000_000;
        let (stopped, told) = watched(STEPS, |_| false);
        assert_eq!(told.len(), 1, "the question must be one that is searched: {told:?}");
        assert!(units(stopped.value) >= units(told[0].value) && units(stopped.bound) >= units(told[0].value));
        assert!(!stopped.placements.is_empty() && told[0].done < 1_200_000, "{told:?}");
        let (longer, _) = watched(STEPS, |progress| progress.done < 3_000_000);
        assert!(units(longer.value) >= units(stopped.value) && units(longer.bound) <= units(stopped.bound));
    }
}
