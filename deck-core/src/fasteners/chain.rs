//! Places along a line, each as near to a wanted one as the others allow.
//!
//! # Method
//! Of all places q₀ < q₁ < … that lie in a free set and keep a least and a greatest step from each to the next, those with
//! the least sum of |qᵢ − wᵢ|. With the free stretch of each place chosen, this is a linear programme over differences; at
//! one of its best corners every place lies at a wanted one, at the end of a stretch, or a run of least and greatest steps
//! away from such a place. Those are finitely many, and a walk along the line with the best sum for each (dynamic
//! programming) finds the least. Whole nanometres, so the answer is exact. Derived here, no source.

use crate::math::IntervalSet;
use std::collections::{BTreeSet, VecDeque};

/// What the places are held to.
#[derive(Debug, Clone)]
pub(super) struct Chain<'a> {
    /// Where they are wanted, in order; one at the least.
    pub(super) wanted: &'a [i64],
    /// Where they may lie.
    pub(super) free: &'a IntervalSet,
    /// Where the first may lie.
    pub(super) first: (i64, i64),
    /// Where the last may lie.
    pub(super) last: (i64, i64),
    /// The least and the greatest step from each place to the next: one fewer than places.
    pub(super) steps: &'a [(i64, i64)],
}

impl Chain<'_> {
    /// True where there are such places at all.
    pub(super) fn is_possible(&self) -> bool {
        self.reach().is_some()
    }

    /// The places with the least sum of shifts; of those the foremost, place by place. None where there are none.
    pub(super) fn least_shift(&self) -> Option<Vec<i64>> {
        let reach = self.reach()?;
        let some = self.backwards(&reach)?;
        // No place of a best answer is further from its wanted one than any answer's whole sum.
        let bound = some.iter().zip(self.wanted).map(|(place, wanted)| (place - wanted).abs()).sum();
        self.walk(&self.candidates(&reach, bound))
    }

    /// Where each place can lie, as far as those before it tell.
    fn reach(&self) -> Option<Vec<IntervalSet>> {
        let mut sets: Vec<IntervalSet> = Vec::with_capacity(self.wanted.len());
        for index in 0..self.wanted.len() {
            let mut here = match (sets.last(), index.checked_sub(1).and_then(|before| self.steps.get(before))) {
                (Some(before), Some(&(least, most))) => common(self.free, &before.stretched(least, most)),
                _ => self.free.within(self.first.0, self.first.1),
            };
            if index + 1 == self.wanted.len() {
                here = here.within(self.last.0, self.last.1);
            }
            if here.is_empty() {
                return None;
            }
            sets.push(here);
        }
        (!sets.is_empty()).then_some(sets)
    }

    /// Some places that keep everything, from the last backwards.
    fn backwards(&self, reach: &[IntervalSet]) -> Option<Vec<i64>> {
        let mut places: Vec<i64> = Vec::with_capacity(reach.len());
        for (index, (set, wanted)) in reach.iter().zip(self.wanted).enumerate().rev() {
            let near = match (places.last(), self.steps.get(index)) {
                (Some(after), Some((least, most))) => nearest(&set.within(after - most, after - least), *wanted),
                _ => nearest(set, *wanted),
            };
            places.push(near?);
        }
        places.reverse();
        Some(places)
    }

    /// For each place, in order, where it lies in one of the best answers at the least.
    fn candidates(&self, reach: &[IntervalSet], bound: i64) -> Vec<Vec<i64>> {
        let ends: Vec<i64> = self.free.intervals().iter().flat_map(|&(low, high)| [low, high]).collect();
        let last = reach.len().saturating_sub(1);
        let fair = |index: usize, place: i64| {
            let near = self.wanted.get(index).is_some_and(|wanted| (place - wanted).abs() <= bound);
            near && reach.get(index).is_some_and(|set| !set.within(place, place).is_empty())
        };
        let own = |index: usize| {
            let mut bases = ends.clone();
            bases.extend(self.wanted.get(index));
            if index == 0 {
                bases.extend([self.first.0, self.first.1]);
            }
            if index == last {
                bases.extend([self.last.0, self.last.1]);
            }
            bases.into_iter().filter(|place| fair(index, *place)).collect::<BTreeSet<i64>>()
        };
        let mut all: Vec<BTreeSet<i64>> = (0..reach.len()).map(own).collect();
        let mut forth: Vec<BTreeSet<i64>> = all.clone();
        for (index, &(least, most)) in self.steps.iter().enumerate() {
            let from: Vec<i64> = forth.get(index).into_iter().flatten().copied().collect();
            let next = from.into_iter().flat_map(|place| [place + least, place + most]);
            let next: Vec<i64> = next.filter(|place| fair(index + 1, *place)).collect();
            if let Some(set) = forth.get_mut(index + 1) {
                set.extend(next);
            }
        }
        let mut back = all.clone();
        for (index, &(least, most)) in self.steps.iter().enumerate().rev() {
            let from: Vec<i64> = back.get(index + 1).into_iter().flatten().copied().collect();
            let before = from.into_iter().flat_map(|place| [place - least, place - most]);
            let before: Vec<i64> = before.filter(|place| fair(index, *place)).collect();
            if let Some(set) = back.get_mut(index) {
                set.extend(before);
            }
        }
        for (set, more) in all.iter_mut().zip(forth.into_iter().zip(back)) {
            set.extend(more.0.into_iter().chain(more.1));
        }
        all.into_iter().map(|set| set.into_iter().collect()).collect()
    }

    /// The best walk over the candidates.
    fn walk(&self, candidates: &[Vec<i64>]) -> Option<Vec<i64>> {
        let mut layers: Vec<Vec<Reached>> = Vec::with_capacity(candidates.len());
        for (index, (places, wanted)) in candidates.iter().zip(self.wanted).enumerate() {
            let step = index.checked_sub(1).and_then(|before| self.steps.get(before));
            let layer = match (layers.last(), step) {
                (Some(before), Some(step)) => advance(before, *step, places, *wanted),
                _ => places.iter().map(|&place| Reached { place, sum: (place - wanted).abs(), from: 0 }).collect(),
            };
            layers.push(layer);
        }
        let ends = layers.last()?.iter().enumerate();
        let mut at = ends.min_by_key(|(_, reached)| reached.sum)?.0;
        let mut walk = Vec::with_capacity(layers.len());
        for layer in layers.iter().rev() {
            let reached = layer.get(at)?;
            walk.push(reached.place);
            at = reached.from;
        }
        walk.reverse();
        Some(walk)
    }
}

/// A candidate with the least sum of shifts up to it, and the candidate before it on that walk.
#[derive(Debug, Clone, Copy)]
struct Reached {
    place: i64,
    sum: i64,
    from: usize,
}

/// The candidates of the next place, each with its best predecessor: the least sum in a window that only moves on.
fn advance(before: &[Reached], (least, most): (i64, i64), places: &[i64], wanted: i64) -> Vec<Reached> {
    let mut window: VecDeque<usize> = VecDeque::new();
    let mut next = 0;
    let sum = |index: usize| before.get(index).map_or(i64::MAX, |reached| reached.sum);
    let mut found = Vec::new();
    for &place in places {
        while before.get(next).is_some_and(|reached| reached.place <= place - least) {
            while window.back().is_some_and(|&last| sum(last) > sum(next)) {
                window.pop_back();
            }
            window.push_back(next);
            next += 1;
        }
        let gone = |index: &usize| before.get(*index).is_none_or(|reached| reached.place < place - most);
        while window.front().is_some_and(gone) {
            window.pop_front();
        }
        if let Some(&from) = window.front() {
            found.push(Reached { place, sum: sum(from) + (place - wanted).abs(), from });
        }
    }
    found
}

/// The numbers that are in both sets.
pub(super) fn common(one: &IntervalSet, other: &IntervalSet) -> IntervalSet {
    let mut both = IntervalSet::new();
    for &(low, high) in other.intervals() {
        both.add_all(&one.within(low, high));
    }
    both
}

fn nearest(set: &IntervalSet, wanted: i64) -> Option<i64> {
    let near = set.intervals().iter().map(|&(low, high)| wanted.clamp(low, high));
    near.min_by_key(|place| ((place - wanted).abs(), *place))
}
