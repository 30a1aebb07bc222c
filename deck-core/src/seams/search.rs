//! Enumerates the layouts of least cost, level by level.
//!
//! A level is a count of short seams and of boards, the two weightiest costs. Within a level every set of members is
//! met once, and kept or passed over by its full cost.

use super::layout::Seams;
use super::place::{Placed, best_placing};
use super::reach::{Finishing, Ground, both};
use super::{SeamProblem, reason};
use crate::math::IntervalSet;

/// More member sets than this are not enumerated. A 28 ft deck on members every 8 in has fewer than two thousand of its
/// least board count, a 40 ft deck of one board more some eight thousand; each takes some ten microseconds.
const MOST_SETS: usize = 20_000;

/// More boards than this no deck has: the widest boat on the narrowest boards allowed stays below.
const MOST_BOARDS: usize = 64;

pub(super) fn search(problem: &SeamProblem<'_>) -> Seams {
    let ground = Ground::new(problem);
    let Some(fewest) = ground.fewest_boards(MOST_BOARDS) else {
        return Seams { layouts: Vec::new(), no_layout: Some(reason::no_layout(problem, MOST_BOARDS)), proven: true };
    };
    let mut search = Search {
        problem,
        ground: &ground,
        found: Vec::new(),
        sets: 0,
        wanted: problem.best.max(1),
        level: (0, 0),
        first_level_done: false,
    };
    search.levels(fewest);
    let proven = search.first_level_done && search.found.first().is_some_and(|placed| placed.exact);
    let layouts: Vec<_> = search.found.iter().map(|placed| placed.layout(problem)).collect();
    Seams { layouts, no_layout: None, proven }
}

struct Search<'a> {
    problem: &'a SeamProblem<'a>,
    ground: &'a Ground,
    /// The best so far, best first; no more than wanted.
    found: Vec<Placed>,
    sets: usize,
    wanted: usize,
    level: (usize, usize),
    /// True once the level of the best layout has been enumerated to its end.
    first_level_done: bool,
}

impl Search<'_> {
    fn levels(&mut self, fewest: usize) {
        let most_boards = (self.ground.members() + 1).min(MOST_BOARDS);
        let mut finishing = Finishing::new(self.ground);
        for short in 0..most_boards {
            for boards in fewest.max(short + 1)..=most_boards {
                if !finishing.extend(boards - 1, short) {
                    break;
                }
                self.level = (short, boards);
                self.level(&finishing);
                self.first_level_done |= !self.found.is_empty() && self.sets < MOST_SETS;
                if self.found.len() >= self.wanted || self.sets >= MOST_SETS {
                    return;
                }
            }
        }
    }

    fn level(&mut self, finishing: &Finishing<'_>) {
        let (short, boards) = self.level;
        if boards == 1 {
            if self.ground.is_supported(None, None) && self.ground.finishes(&self.ground.bow(), None) {
                self.keep(&[]);
            }
            return;
        }
        let mut start = vec![IntervalSet::new(); short + 1];
        start[short] = self.ground.bow();
        self.walk(finishing, &start, boards, &mut Vec::new());
    }

    /// Goes on from a seam to every next one. `positions[s]` are those with `s` short seams still to come; `boards` are
    /// still to be laid.
    fn walk(&mut self, finishing: &Finishing<'_>, positions: &[IntervalSet], boards: usize, members: &mut Vec<usize>) {
        if self.sets >= MOST_SETS {
            return;
        }
        if boards == 1 {
            self.keep(members);
            return;
        }
        let fore = members.last().copied();
        let onward =
            |tilt: i64| -> Vec<IntervalSet> { positions.iter().map(|set| self.ground.next(set, tilt)).collect() };
        // Members out of square are few: what is reached on the others is reckoned once.
        let level = self.ground.tilt(fore, None);
        let to_level = onward(level);
        for aft in fore.map_or(0, |fore| fore + 1)..self.ground.members() {
            if !self.ground.is_supported(fore, Some(aft)) {
                continue;
            }
            let tilt = self.ground.tilt(fore, Some(aft));
            let slanted = (tilt != level).then(|| onward(tilt));
            let onward = slanted.as_ref().unwrap_or(&to_level);
            let here: Vec<IntervalSet> =
                (0..positions.len()).map(|short| self.arrive(finishing, onward, boards - 1, short, aft)).collect();
            if here.iter().any(|set| !set.is_empty()) {
                members.push(aft);
                self.walk(finishing, &here, boards - 1, members);
                members.pop();
            }
        }
    }

    /// The positions on a member, with `short` short seams still to come behind it, from which the deck is finished.
    fn arrive(
        &self,
        finishing: &Finishing<'_>,
        onward: &[IntervalSet],
        boards: usize,
        short: usize,
        member: usize,
    ) -> IntervalSet {
        let Some(finish) = finishing.positions(boards, short, member) else { return IntervalSet::new() };
        if finish.is_empty() {
            return IntervalSet::new();
        }
        let mut here = both(&onward[short], &self.ground.good[member]);
        if let Some(before) = onward.get(short + 1) {
            here.add_all(&both(before, &self.ground.short[member]));
        }
        both(&here, finish)
    }

    /// Keeps a set of members in its place among the best, unless it was found on an earlier level.
    fn keep(&mut self, members: &[usize]) {
        self.sets += 1;
        if self.found.iter().any(|placed| placed.members == members) {
            return;
        }
        let worst = self.found.get(self.wanted - 1);
        let Some(placed) = best_placing(self.problem, self.ground, members, self.level.0, worst) else { return };
        let place = self.found.partition_point(|other| other.compare(&placed).is_le());
        self.found.insert(place, placed);
        self.found.truncate(self.wanted);
    }
}
