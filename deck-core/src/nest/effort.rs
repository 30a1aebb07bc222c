//! How long the nest may search: a count of steps, never a clock.

use super::watch::Watch;
use serde::{Deserialize, Serialize};

/// How much work a nest may take. The same effort gives the same answer on every machine.
///
/// A step is one part held against one free piece of a sheet, some ten or twenty nanoseconds.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
#[non_exhaustive]
pub enum Effort {
    /// The constructive heuristics, once over.
    Quick,
    /// About a second on an ordinary order.
    #[default]
    Standard,
    /// Some tens of seconds at most.
    Thorough,
    /// So many steps. The first construction is always finished.
    #[serde(untagged)]
    Steps(u64),
}

/// Steps that quick may take however small the order: a fraction of a millisecond, and enough for every rule on a boat.
const QUICK_BASE: u64 = 12_000;
/// Steps that quick may take for each copy of a part, so that its time grows with the order and not faster.
const QUICK_EACH: u64 = 2_000;
/// About a second, at ten to twenty nanoseconds a step.
const STANDARD: u64 = 75_000_000;
/// Some hundredths of a second: quick fills one sheet by dynamic programming and searches little.
const QUICK_ONE: u64 = 4_000_000;
/// About a second: a step of filling one sheet takes a few nanoseconds.
const STANDARD_ONE: u64 = 200_000_000;
/// About twenty seconds.
const THOROUGH_ONE: u64 = 4_000_000_000;
/// About forty seconds.
const THOROUGH: u64 = 3_000_000_000;
/// Standard stops when so many steps for each copy have brought nothing better: orders of ten parts are done within half
/// a second, those of twenty and more take the second that they may.
const STANDARD_PATIENCE: u64 = 2_500_000;
/// As above, for thorough.
const THOROUGH_PATIENCE: u64 = 20_000_000;

impl Effort {
    /// Steps for the constructions.
    pub(super) fn quick(self, copies: u64) -> Steps<'static> {
        let quick = quick(copies);
        match self {
            Effort::Steps(steps) => Steps::new(quick.min(steps), u64::MAX),
            _ => Steps::new(quick, u64::MAX),
        }
    }

    /// Steps for the best of one sheet.
    pub(super) fn one_sheet(self) -> Steps<'static> {
        let steps = match self {
            Effort::Quick => QUICK_ONE,
            Effort::Standard => STANDARD_ONE,
            Effort::Thorough => THOROUGH_ONE,
            Effort::Steps(steps) => steps,
        };
        Steps::new(steps, u64::MAX)
    }

    /// The most steps there can be in all.
    pub(super) fn most(self, copies: u64) -> u64 {
        match self {
            Effort::Quick => quick(copies),
            Effort::Standard => STANDARD.saturating_add(quick(copies)),
            Effort::Thorough => THOROUGH.saturating_add(quick(copies)),
            Effort::Steps(steps) => steps,
        }
    }

    /// Steps for the search after the constructions, where there is one.
    pub(super) fn search(self, copies: u64) -> Option<Steps<'static>> {
        match self {
            Effort::Quick => None,
            Effort::Standard => Some(Steps::new(STANDARD, STANDARD_PATIENCE.saturating_mul(copies))),
            Effort::Thorough => Some(Steps::new(THOROUGH, THOROUGH_PATIENCE.saturating_mul(copies))),
            Effort::Steps(steps) => {
                let quick = quick(copies);
                (steps > quick).then(|| Steps::new(steps - quick, u64::MAX))
            }
        }
    }
}

fn quick(copies: u64) -> u64 {
    QUICK_BASE.saturating_add(QUICK_EACH.saturating_mul(copies))
}

/// Counts down the steps of a search.
#[derive(Debug)]
pub(super) struct Steps<'w> {
    left: u64,
    patience: u64,
    since_better: u64,
    watch: Option<&'w Watch<'w>>,
}

impl<'w> Steps<'w> {
    /// So many steps, fewer where so many in a row bring nothing better.
    pub(super) fn new(left: u64, patience: u64) -> Steps<'w> {
        Steps { left, patience, since_better: 0, watch: None }
    }

    /// The same steps, watched: each one is told of, and none is left once the watcher says stop.
    pub(super) fn watched<'v>(self, watch: &'v Watch<'v>) -> Steps<'v> {
        Steps { left: self.left, patience: self.patience, since_better: self.since_better, watch: Some(watch) }
    }

    /// Takes one part in so many off, to be spent on one way of searching.
    pub(super) fn take(&mut self, parts: u64) -> Steps<'w> {
        let taken = self.left / parts.max(1);
        self.left -= taken;
        Steps { watch: self.watch, ..Steps::new(taken, self.patience / parts.max(1)) }
    }

    /// Takes at most so many off, to be spent on something that betters no answer; what is left of them can be given back.
    pub(super) fn lend(&mut self, most: u64) -> Steps<'w> {
        let lent = self.left.min(most);
        self.left -= lent;
        Steps { watch: self.watch, ..Steps::new(lent, u64::MAX) }
    }

    /// What is left of steps that were lent.
    pub(super) fn take_back(&mut self, lent: &Steps<'_>) {
        self.left = self.left.saturating_add(lent.left);
    }

    /// Steps that are left.
    pub(super) fn left(&self) -> u64 {
        self.left
    }

    pub(super) fn spend(&mut self, count: u64) {
        if let Some(watch) = self.watch {
            watch.spend(count);
        }
        self.left = self.left.saturating_sub(count);
        self.since_better = self.since_better.saturating_add(count);
    }

    pub(super) fn found_better(&mut self) {
        self.since_better = 0;
    }

    /// True once the watcher has said stop.
    pub(super) fn stopped(&self) -> bool {
        self.watch.is_some_and(Watch::stopped)
    }

    pub(super) fn spent_all(&self) -> bool {
        self.left == 0 || self.since_better >= self.patience || self.stopped()
    }
}
