//! Which damaged places share a patch: branch and bound over every partition.

use super::edges::Landing;
use crate::geometry::Bounds;
use std::collections::BTreeMap;

/// A rectangle that would do for a set of damaged places.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Candidate {
    pub(super) bounds: Bounds,
    pub(super) landings: [Landing; 4],
    pub(super) cost: i128,
}

/// A choice: each set of damaged places, as bits, with its candidate.
type Choice = Vec<(usize, Candidate)>;

/// The cheapest choice of candidates, one for each set of a partition, no two of them in each other's way; nothing for no
/// places at all, and none where there is no such choice. `grows` says that a set with more in it costs no less.
pub(super) fn cheapest(
    places: usize,
    grows: bool,
    candidates: impl Fn(usize) -> Vec<Candidate>,
    apart: impl Fn(&Candidate, &Candidate) -> bool,
) -> Option<Choice> {
    let mut search = Search { places, grows, candidates, apart, known: BTreeMap::new(), best: None };
    search.extend(0, &mut Vec::new(), 0);
    search.best.map(|(_, choice)| choice)
}

struct Search<C, A> {
    places: usize,
    grows: bool,
    candidates: C,
    apart: A,
    known: BTreeMap<usize, Vec<Candidate>>,
    best: Option<(i128, Choice)>,
}

impl<C: Fn(usize) -> Vec<Candidate>, A: Fn(&Candidate, &Candidate) -> bool> Search<C, A> {
    /// Goes on from a choice that covers some of the places.
    fn extend(&mut self, covered: usize, chosen: &mut Choice, cost: i128) {
        let whole = (1_usize << self.places) - 1;
        if covered == whole {
            if self.best.as_ref().is_none_or(|(best, _)| cost < *best) {
                self.best = Some((cost, chosen.clone()));
            }
            return;
        }
        let least = cost + self.at_least(covered);
        if self.best.as_ref().is_some_and(|(best, _)| least >= *best) {
            return;
        }
        // The first place that is not covered lies in the next set.
        let first = covered.trailing_ones();
        let rest = whole & !covered & !(1 << first);
        let mut others = rest;
        loop {
            self.choose(covered, others | 1 << first, chosen, cost);
            if others == 0 {
                return;
            }
            others = (others - 1) & rest;
        }
    }

    fn choose(&mut self, covered: usize, set: usize, chosen: &mut Choice, cost: i128) {
        for candidate in self.of(set) {
            if self.best.as_ref().is_some_and(|(best, _)| cost + candidate.cost >= *best) {
                // The others of the set cost as much at the least.
                return;
            }
            if chosen.iter().all(|(_, other)| (self.apart)(&candidate, other)) {
                let sum = cost + candidate.cost;
                chosen.push((set, candidate));
                self.extend(covered | set, chosen, sum);
                chosen.pop();
            }
        }
    }

    /// What any set that covers one of the places left costs at the least.
    fn at_least(&mut self, covered: usize) -> i128 {
        if !self.grows {
            return 0;
        }
        let left = (0..self.places).filter(|place| covered >> place & 1 == 0).collect::<Vec<usize>>();
        left.into_iter().filter_map(|place| self.of(1 << place).first().map(|first| first.cost)).max().unwrap_or(0)
    }

    /// The candidates of a set, the cheapest first.
    fn of(&mut self, set: usize) -> Vec<Candidate> {
        if let Some(known) = self.known.get(&set) {
            return known.clone();
        }
        let mut found = (self.candidates)(set);
        found.sort_by_key(|candidate| (candidate.cost, candidate.bounds.fore, candidate.bounds.port));
        // A candidate around a smaller one that costs no more is never better: the smaller is in nobody's way where it is not.
        let mut kept: Vec<Candidate> = Vec::new();
        for candidate in found {
            if !kept.iter().any(|other| lies_in(&other.bounds, &candidate.bounds)) {
                kept.push(candidate);
            }
        }
        self.known.insert(set, kept.clone());
        kept
    }
}

fn lies_in(one: &Bounds, other: &Bounds) -> bool {
    other.fore <= one.fore && one.aft <= other.aft && other.port <= one.port && one.starboard <= other.starboard
}
