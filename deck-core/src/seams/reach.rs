//! From which seam positions the rest of the deck can be boarded.

use super::seat::{Seat, nm};
use super::{Rules, SeamProblem};
use crate::frame::CrossMember;
use crate::length::Length;
use crate::math::IntervalSet;

/// The problem in nanometres, with each member's seat.
pub(super) struct Ground {
    pub(super) seats: Vec<Seat>,
    /// Positions of each seat: where two rows fit, and where they do not.
    pub(super) good: Vec<IntervalSet>,
    pub(super) short: Vec<IntervalSet>,
    any: Vec<IntervalSet>,
    pub(super) gap: i64,
    pub(super) least_width: i64,
    pub(super) preferred_width: i64,
    /// Distinct board widths of the sheets, the widest last.
    pub(super) widths: Vec<i64>,
    /// Foremost and aftmost end of the last board.
    pub(super) finish: (i64, i64),
    least_supports: usize,
    /// Members under the first board, when its seam lies on a member; under the last, when its seam does; under a
    /// single board.
    first_supports: Vec<usize>,
    last_supports: Vec<usize>,
    single_supports: usize,
}

impl Ground {
    pub(super) fn new(problem: &SeamProblem<'_>) -> Ground {
        let rules = &problem.rules;
        let members = problem.frame.members();
        let seats: Vec<Seat> = members.iter().map(|member| Seat::new(problem, member)).collect();
        let mut widths: Vec<i64> = problem.sheets.iter().map(|sheet| nm(sheet.width)).collect();
        widths.sort_unstable();
        widths.dedup();
        let resting: Vec<bool> = members.iter().map(|member| rests(member, rules, problem.deck_length)).collect();
        let single_supports = resting.iter().filter(|rests| **rests).count();
        let before = |member: usize| resting[..member].iter().filter(|rests| **rests).count() + 1;
        let behind = |member: usize| resting[member + 1..].iter().filter(|rests| **rests).count() + 1;
        Ground {
            good: seats.iter().map(|seat| seat.positions(Some(false))).collect(),
            short: seats.iter().map(|seat| seat.positions(Some(true))).collect(),
            any: seats.iter().map(|seat| seat.positions(None)).collect(),
            seats,
            gap: nm(rules.gap),
            // A board of no width is none.
            least_width: nm(rules.least_width).max(1),
            preferred_width: nm(rules.preferred_width),
            widths,
            finish: (nm(problem.deck_length - rules.end_tolerance).max(1), nm(problem.deck_length)),
            least_supports: rules.least_supports,
            first_supports: (0..members.len()).map(before).collect(),
            last_supports: (0..members.len()).map(behind).collect(),
            single_supports,
        }
    }

    /// Widest board in stock.
    pub(super) fn widest(&self) -> i64 {
        self.widths.last().copied().unwrap_or(0)
    }

    pub(super) fn members(&self) -> usize {
        self.seats.len()
    }

    /// True where a board from one seam to another rests on enough members; `None` is the deck's end.
    pub(super) fn is_supported(&self, fore: Option<usize>, aft: Option<usize>) -> bool {
        let supports = match (fore, aft) {
            (Some(fore), Some(aft)) => aft - fore + 1,
            (None, Some(aft)) => self.first_supports[aft],
            (Some(fore), None) => self.last_supports[fore],
            (None, None) => self.single_supports,
        };
        supports >= self.least_supports
    }

    /// By how much a board between two seams is narrower at the centreline than the rectangle that it is sawn from,
    /// where its seams follow members out of square; `None` is the deck's end.
    pub(super) fn tilt(&self, fore: Option<usize>, aft: Option<usize>) -> i64 {
        [fore, aft].into_iter().flatten().map(|member| self.seats[member].tilt).sum()
    }

    /// Positions of the next seam, from the positions of one; the bow edge is a seam whose gap ends at station 0. `tilt` is
    /// that of the board between.
    pub(super) fn next(&self, positions: &IntervalSet, tilt: i64) -> IntervalSet {
        positions.stretched(self.gap + self.least_width, self.gap + self.widest() - tilt)
    }

    pub(super) fn bow(&self) -> IntervalSet {
        IntervalSet::of(-self.gap, -self.gap)
    }

    /// True where the last board can end the deck from some of the positions.
    pub(super) fn finishes(&self, positions: &IntervalSet, last: Option<usize>) -> bool {
        !self.next(positions, self.tilt(last, None)).within(self.finish.0, self.finish.1).is_empty()
    }

    /// Positions on each member that can be reached from the bow at all, however many boards it takes.
    pub(super) fn reachable(&self) -> Vec<IntervalSet> {
        let mut reachable: Vec<IntervalSet> = Vec::with_capacity(self.members());
        for aft in 0..self.members() {
            let mut here = self.first_board(aft);
            here.add_all(&self.one_on(&reachable, aft));
            reachable.push(here);
        }
        reachable
    }

    /// The fewest boards that cover the deck, two rows of fasteners at a seam or not; none where it takes more than
    /// `most`, or no number does.
    pub(super) fn fewest_boards(&self, most: usize) -> Option<usize> {
        if self.is_supported(None, None) && self.finishes(&self.bow(), None) {
            return Some(1);
        }
        let mut row: Vec<IntervalSet> = (0..self.members()).map(|aft| self.first_board(aft)).collect();
        for boards in 2..=most {
            let done = |last: usize| self.is_supported(Some(last), None) && self.finishes(&row[last], Some(last));
            if (0..self.members()).any(done) {
                return Some(boards);
            }
            row = (0..self.members()).map(|aft| self.one_on(&row, aft)).collect();
        }
        None
    }

    /// Positions on a member that one board from the bow reaches.
    fn first_board(&self, aft: usize) -> IntervalSet {
        let supported = self.is_supported(None, Some(aft));
        if supported {
            both(&self.next(&self.bow(), self.tilt(None, Some(aft))), &self.any[aft])
        } else {
            IntervalSet::new()
        }
    }

    /// Positions on a member that one board more reaches from those on the members before it.
    fn one_on(&self, row: &[IntervalSet], aft: usize) -> IntervalSet {
        let mut here = IntervalSet::new();
        for (fore, positions) in row.iter().enumerate().take(aft) {
            if !positions.is_empty() && self.is_supported(Some(fore), Some(aft)) {
                here.add_all(&self.next(positions, self.tilt(Some(fore), Some(aft))));
            }
        }
        both(&here, &self.any[aft])
    }

    /// True where the deck can be boarded at all.
    pub(super) fn is_feasible(&self) -> bool {
        if self.is_supported(None, None) && self.finishes(&self.bow(), None) {
            return true;
        }
        let reachable = self.reachable();
        (0..self.members())
            .any(|last| self.is_supported(Some(last), None) && self.finishes(&reachable[last], Some(last)))
    }
}

/// What two sets have in common.
pub(super) fn both(one: &IntervalSet, other: &IntervalSet) -> IntervalSet {
    let mut common = IntervalSet::new();
    for &(low, high) in other.intervals() {
        common.add_all(&one.within(low, high));
    }
    common
}

/// True where a board over the member would bear on it: as much of its flange as the rules ask lies under the deck.
pub(super) fn rests(member: &CrossMember, rules: &Rules, deck_length: Length) -> bool {
    let end = deck_length - rules.end_tolerance;
    let overlap = member.aft.min(end) - member.fore.max(Length::ZERO);
    overlap >= rules.least_bearing && overlap > Length::ZERO
}

/// For each short-seam count, board count and member: the positions from which exactly so many boards, with so many
/// short seams between them, finish the deck.
pub(super) struct Finishing<'a> {
    ground: &'a Ground,
    /// `[short seams][boards − 1][member]`
    cells: Vec<Vec<Vec<IntervalSet>>>,
}

impl<'a> Finishing<'a> {
    pub(super) fn new(ground: &'a Ground) -> Finishing<'a> {
        Finishing { ground, cells: Vec::new() }
    }

    /// The positions on a member, where [`Finishing::extend`] has come so far.
    pub(super) fn positions(&self, boards: usize, short: usize, member: usize) -> Option<&IntervalSet> {
        self.row(boards, short)?.get(member)
    }

    fn row(&self, boards: usize, short: usize) -> Option<&Vec<IntervalSet>> {
        self.cells.get(short)?.get(boards.checked_sub(1)?)
    }

    /// Fills the tables up to a board and a short-seam count; false where no higher board count leads anywhere with so
    /// many short seams.
    pub(super) fn extend(&mut self, boards: usize, short: usize) -> bool {
        for column in 0..=short {
            if self.cells.len() <= column {
                self.cells.push(Vec::new());
            }
            for count in self.cells[column].len() + 1..=boards {
                let row = self.next_row(count, column);
                self.cells[column].push(row);
            }
        }
        // A longer row follows from rows with as many short seams or fewer.
        let leads = |short: usize| self.row(boards, short).is_some_and(|row| row.iter().any(|set| !set.is_empty()));
        boards == 0 || (0..=short).any(leads)
    }

    fn next_row(&self, boards: usize, short: usize) -> Vec<IntervalSet> {
        let ground = self.ground;
        if boards == 1 {
            return if short == 0 { self.one_board() } else { vec![IntervalSet::new(); ground.members()] };
        }
        let (least, most) = (-ground.gap - ground.widest(), -ground.gap - ground.least_width);
        let onward: Vec<IntervalSet> = (0..ground.members()).map(|aft| self.onward(boards - 1, short, aft)).collect();
        (0..ground.members())
            .map(|fore| {
                let mut here = IntervalSet::new();
                for (aft, positions) in onward.iter().enumerate().skip(fore + 1) {
                    if !positions.is_empty() && ground.is_supported(Some(fore), Some(aft)) {
                        here.add_all(&positions.stretched(least + ground.tilt(Some(fore), Some(aft)), most));
                    }
                }
                both(&here, &ground.any[fore])
            })
            .collect()
    }

    fn one_board(&self) -> Vec<IntervalSet> {
        let ground = self.ground;
        let high = ground.finish.1 - ground.least_width - ground.gap;
        (0..ground.members())
            .map(|member| {
                let supported = ground.is_supported(Some(member), None);
                let low = ground.finish.0 - ground.widest() + ground.tilt(Some(member), None) - ground.gap;
                if supported { ground.any[member].within(low, high) } else { IntervalSet::new() }
            })
            .collect()
    }

    /// Positions on a member from which so many boards finish the deck with `short` short seams, that on the member
    /// counted.
    fn onward(&self, boards: usize, short: usize, member: usize) -> IntervalSet {
        let here = |short: Option<usize>| short.and_then(|short| self.positions(boards, short, member));
        let ground = self.ground;
        let mut positions = here(Some(short)).map(|set| both(set, &ground.good[member])).unwrap_or_default();
        if let Some(set) = here(short.checked_sub(1)) {
            positions.add_all(&both(set, &ground.short[member]));
        }
        positions
    }
}
