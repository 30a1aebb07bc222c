//! Which parts can join which sets on a sheet, remembered from one pricing to the next.
//!
//! What can be sawn does not depend on what parts are worth, and the values of one pricing are much like those of the
//! next: the same sets come up again and again.

use std::collections::BTreeMap;

/// Rectangles of the largest sets that are remembered.
pub(super) const LARGEST: usize = 4;
/// Sets that are remembered at once; beyond it everything is forgotten.
const MOST: usize = 200_000;
/// Stands for no ware in a set of less than the largest size.
const NONE: u16 = u16::MAX;

/// A set of wares by their places in the list of the sheet, in order.
type Set = [u16; LARGEST];

/// What is known of every ware beside one set.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub(super) struct Known {
    fit: Vec<u64>,
    unfit: Vec<u64>,
}

/// What is known of the sets of one sheet.
#[derive(Debug, Default)]
pub(super) struct Joins {
    sets: BTreeMap<Set, Known>,
}

impl Known {
    /// Whether that ware can join; none where it has not been tried.
    pub(super) fn says(&self, ware: u16) -> Option<bool> {
        let (word, bit) = place(ware);
        let has = |words: &[u64]| words.get(word).is_some_and(|word| word & bit != 0);
        if has(&self.unfit) { Some(false) } else { has(&self.fit).then_some(true) }
    }

    pub(super) fn note(&mut self, ware: u16, fits: bool) {
        let (at, bit) = place(ware);
        let words = if fits { &mut self.fit } else { &mut self.unfit };
        if words.len() <= at {
            words.resize(at + 1, 0);
        }
        if let Some(word) = words.get_mut(at) {
            *word |= bit;
        }
    }

    /// What cannot join a part of the set cannot join the set.
    fn take_unfit(&mut self, other: &Known) {
        if self.unfit.len() < other.unfit.len() {
            self.unfit.resize(other.unfit.len(), 0);
        }
        for (own, other) in self.unfit.iter_mut().zip(&other.unfit) {
            *own |= other;
        }
    }
}

fn place(ware: u16) -> (usize, u64) {
    (usize::from(ware / 64), 1 << (ware % 64))
}

impl Joins {
    /// What is known of a set, none where it is larger than those that are remembered.
    pub(super) fn of(&self, wares: &[u16]) -> Option<Known> {
        let set = set(wares.iter().copied())?;
        let mut known = self.sets.get(&set).cloned().unwrap_or_default();
        for at in 0..wares.len() {
            let others = wares.iter().enumerate().filter(|(other, _)| *other != at).map(|(_, ware)| *ware);
            if let Some(part) = self::set(others).and_then(|part| self.sets.get(&part)) {
                known.take_unfit(part);
            }
        }
        Some(known)
    }

    pub(super) fn keep(&mut self, wares: &[u16], known: Known) {
        if self.sets.len() >= MOST {
            self.sets.clear();
        }
        if let Some(set) = set(wares.iter().copied()) {
            self.sets.insert(set, known);
        }
    }
}

fn set(wares: impl Iterator<Item = u16>) -> Option<Set> {
    let mut set = [NONE; LARGEST];
    let mut places = set.iter_mut();
    for ware in wares {
        *places.next()? = ware;
    }
    set.sort_unstable();
    Some(set)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_noted_is_known_whatever_the_order() {
        let mut joins = Joins::default();
        let mut known = joins.of(&[7, 3]).unwrap();
        assert_eq!(known.says(70), None);
        known.note(70, true);
        known.note(5, false);
        joins.keep(&[7, 3], known);
        let known = joins.of(&[3, 7]).unwrap();
        assert_eq!((known.says(70), known.says(5), known.says(6)), (Some(true), Some(false), None));
        // Of a larger set only the noes are known.
        let known = joins.of(&[3, 100, 7]).unwrap();
        assert_eq!((known.says(70), known.says(5)), (None, Some(false)));
        assert_eq!(joins.of(&[1, 2, 3, 4, 5]), None);
    }
}
