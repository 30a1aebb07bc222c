//! How long the nest may search: a count of steps, never a clock.

use serde::{Deserialize, Serialize};

/// How much work a nest may take. The same effort gives the same answer on every machine.
///
/// A step is one part held against one free piece of a sheet, a few nanoseconds.
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
/// About a second, at some nanoseconds a step.
const STANDARD: u64 = 100_000_000;
/// About twenty seconds.
const THOROUGH: u64 = 2_000_000_000;

impl Effort {
    /// Steps for the constructions, and steps for the search after them.
    pub(super) fn budget(self, copies: u64) -> (u64, u64) {
        let quick = QUICK_BASE.saturating_add(QUICK_EACH.saturating_mul(copies));
        match self {
            Effort::Quick => (quick, 0),
            Effort::Standard => (quick, STANDARD),
            Effort::Thorough => (quick, THOROUGH),
            Effort::Steps(steps) => (quick.min(steps), steps.saturating_sub(quick)),
        }
    }
}

/// Counts down the steps of a search.
#[derive(Debug)]
pub(super) struct Steps {
    left: u64,
}

impl Steps {
    pub(super) fn new(budget: u64) -> Steps {
        Steps { left: budget }
    }

    pub(super) fn spend(&mut self, count: u64) {
        self.left = self.left.saturating_sub(count);
    }

    pub(super) fn spent_all(&self) -> bool {
        self.left == 0
    }
}
