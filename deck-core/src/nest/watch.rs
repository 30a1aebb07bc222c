//! Looking on while a search runs, and stopping it.
//!
//! The watcher is asked at fixed counts of steps and never by a clock, so that looking on cannot change the answer.
//! Whatever counts its steps is watched: [`Steps`](super::effort::Steps) reports here what it spends, and is spent as
//! soon as the watcher says stop.

use super::cost::{Cost, CostIn};
use super::problem::Problem;
use crate::length::Area;
use std::cell::Cell;
use std::ops::ControlFlow;

/// How far a nest has come, and the best answer so far.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[non_exhaustive]
pub struct Progress {
    /// Steps done.
    pub done: u64,
    /// Steps that the effort pays for at most. A proof, or a long time without anything better, ends the search sooner.
    pub of: u64,
    /// Area of the parts that find no place in the best answer so far.
    pub unplaced: Area,
    /// What the best answer so far costs.
    pub cost: Cost,
    /// No answer that places as much can cost less than this. Zero while something is unplaced that a sheet could hold.
    pub bound: Cost,
    /// True once no better answer exists.
    pub proven: bool,
}

/// Steps from one question to the watcher to the next: some hundredths of a second. With fewer, asking would cost more
/// than a thousandth of the time where the watcher is slow to answer, as an interpreter is.
const EVERY: u64 = 1_000_000;

/// Counts the steps of everything that is searched in one call, and asks at fixed counts whether to go on.
pub(super) struct Watch<'w> {
    /// Told the steps done and the most there are; answers whether to go on.
    ask: &'w dyn Fn(u64, u64) -> ControlFlow<()>,
    of: u64,
    done: Cell<u64>,
    next: Cell<u64>,
    stopped: Cell<bool>,
}

impl<'w> Watch<'w> {
    /// A watch over a search of so many steps at most.
    pub(super) fn new(of: u64, ask: &'w dyn Fn(u64, u64) -> ControlFlow<()>) -> Watch<'w> {
        Watch { ask, of, done: Cell::new(0), next: Cell::new(EVERY), stopped: Cell::new(false) }
    }

    /// Counts steps, and asks where enough have gone by.
    pub(super) fn spend(&self, count: u64) {
        self.done.set(self.done.get().saturating_add(count));
        if self.done.get() >= self.next.get() {
            self.ask();
        }
    }

    /// Asks whatever the count.
    pub(super) fn ask(&self) {
        self.next.set(self.done.get().saturating_add(EVERY));
        // The constructions may take a little more than their share.
        if !self.stopped.get() && (self.ask)(self.done.get().min(self.of), self.of).is_break() {
            self.stopped.set(true);
        }
    }

    /// True once the watcher has said stop.
    pub(super) fn stopped(&self) -> bool {
        self.stopped.get()
    }
}

impl std::fmt::Debug for Watch<'_> {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Watch").field("of", &self.of).field("done", &self.done).finish_non_exhaustive()
    }
}

/// The value of the best answer so far, for the watcher.
#[derive(Debug)]
pub(super) struct Standing {
    cost_in: CostIn,
    unplaced: Cell<i128>,
    cost: Cell<i128>,
    /// Area that no sheet holds, and the least cost of placing the rest.
    least: Cell<(i128, i128)>,
}

impl Standing {
    /// Nothing placed, which costs nothing.
    pub(super) fn new(problem: &Problem) -> Standing {
        let wanted = problem.classes.iter().map(|class| class.area * i128::from(class.count)).sum();
        let least = Cell::new((0, 0));
        Standing { cost_in: problem.cost_in, unplaced: Cell::new(wanted), cost: Cell::new(0), least }
    }

    /// Notes a better answer.
    pub(super) fn found(&self, unplaced: i128, cost: i128) {
        self.unplaced.set(unplaced);
        self.cost.set(cost);
    }

    /// Notes what the bound says: area that no sheet holds, and the least cost of placing the rest.
    pub(super) fn bounded(&self, (hopeless, least): (i128, i128)) {
        self.least.set((hopeless, least));
    }

    /// What the watcher is told.
    pub(super) fn progress(&self, done: u64, of: u64) -> Progress {
        let (unplaced, cost, (hopeless, least)) = (self.unplaced.get(), self.cost.get(), self.least.get());
        let all_placed = unplaced <= hopeless;
        Progress {
            done,
            of,
            unplaced: Area::from_square_nanometres(unplaced),
            cost: self.cost_in.cost(cost),
            bound: self.cost_in.cost(if all_placed { least } else { 0 }),
            proven: all_placed && cost <= least,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::{Effort, Nest, Part, nest, nest_watched};
    use super::*;
    use crate::Length;
    use crate::stock::{Saw, Sheet};

    /// An order whose bound is not met by its first answers.
    fn order() -> (Vec<Part>, Vec<Sheet>) {
        let part = |index: i64| {
            let (length, width) = (Length::inches(23 + index * 7 % 19), Length::inches(13 + index * 5 % 17));
            Part::new(format!("part {index}"), length, width).count(3)
        };
        ((0..12).map(part).collect(), vec![Sheet::new("4 x 8", Length::inches(96), Length::inches(48))])
    }

    fn watched(effort: Effort, mut go_on: impl FnMut(&Progress) -> bool) -> (Nest, Vec<Progress>) {
        let (parts, stock) = order();
        let mut told = Vec::new();
        let nest = nest_watched(&parts, &stock, &Saw::new(), effort, &mut |progress| {
            told.push(*progress);
            if go_on(progress) { ControlFlow::Continue(()) } else { ControlFlow::Break(()) }
        });
        (nest.unwrap(), told)
    }

    #[test]
    fn looking_on_changes_nothing() {
        let effort = Effort::Steps(5_000_000);
        let (parts, stock) = order();
        let unwatched = nest(&parts, &stock, &Saw::new(), effort).unwrap();
        let (nest, told) = watched(effort, |_| true);
        assert_eq!(nest, unwatched);
        assert_eq!(told, watched(effort, |_| true).1, "asked at the same steps");
        assert!(
            told.is_sorted_by(|one, next| one.done <= next.done && (one.unplaced, one.of) >= (next.unplaced, next.of))
        );
        let last = told.last().unwrap();
        assert_eq!((last.cost, last.bound, last.proven), (nest.cost, nest.bound, nest.proven));
        assert!(last.done <= last.of && last.of == 5_000_000);
    }

    #[test]
    fn a_stop_hands_back_the_best_so_far_at_once() {
        let (first, told) = watched(Effort::Thorough, |_| false);
        assert_eq!(told.len(), 1, "{told:?}");
        assert!(!told[0].proven && !first.proven, "the order must be one that is searched");
        assert!(first.unplaced.is_empty() && told[0].cost == first.cost);
        let (_, told) = watched(Effort::Thorough, |progress| progress.done < 3_000_000);
        assert!((4..=5).contains(&told.len()) && told.last().unwrap().done < 3_100_000, "{told:?}");
    }
}
