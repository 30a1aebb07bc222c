//! The best place for a part on a sheet that is a slicing tree.

use super::super::problem::{Size, across, along, strip};
use super::slicing::{Kind, Knot, NONE, Slicing, Spot};
use crate::stock::SawLine;

/// What a sheet offers and the saw allows.
#[derive(Debug, Clone, Copy)]
pub(super) struct Room {
    pub(super) size: Size,
    pub(super) stages: u8,
    pub(super) first: Option<SawLine>,
}

/// What makes one place better than another.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Fit {
    /// The smaller of the strips that are left beside and behind the part; then the larger.
    Side,
    /// The area that is left of the free piece.
    Piece,
    /// What the group and the part leave empty between them.
    Group,
}

/// A spot, and what is wasted there: the less, the better.
pub(super) type Place = (f64, Spot);

/// A group on the way down: which, the room that it may grow into, the line above it and the turns down to there.
#[derive(Clone, Copy)]
pub(super) struct Visit {
    pub(super) at: u32,
    pub(super) room: Size,
    pub(super) above: Option<SawLine>,
    pub(super) used: u8,
}

impl Visit {
    /// The whole of a sheet.
    pub(super) fn whole(sheet: &Slicing, room: Room) -> Visit {
        Visit { at: sheet.root, room: room.size, above: None, used: 0 }
    }

    /// Turns of the saw line down to a line in that direction through this group.
    pub(super) fn used_by(self, line: SawLine) -> u8 {
        if self.above == Some(line) { self.used } else { self.used + 1 }
    }

    /// True where the saw may go through here in that direction and ask for so many turns below.
    pub(super) fn may(self, room: Room, line: SawLine, turns_below: u8) -> bool {
        let bound = self.above.is_none() && room.first.is_some_and(|first| first != line);
        !bound && self.used_by(line) + turns_below <= room.stages
    }
}

impl Fit {
    fn waste(self, piece: Size, part: Size, group: Size, line: SawLine) -> f64 {
        /// How little the larger strip counts beside the smaller one.
        const THEN: f64 = 1e-3;
        match self {
            Fit::Side => {
                let (right, top) = ((piece.0 - part.0) as f64, (piece.1 - part.1) as f64);
                right.min(top) + right.max(top) * THEN
            }
            Fit::Piece => piece.0 as f64 * piece.1 as f64 - part.0 as f64 * part.1 as f64,
            Fit::Group => {
                let step = across(part, line) - across(group, line);
                let lower = if step > 0 { group } else { part };
                step.abs() as f64 * along(lower, line) as f64
            }
        }
    }
}

/// A search for the best place on one sheet.
struct Look<'s> {
    sheet: &'s Slicing,
    room: Room,
    fit: Fit,
    part: Size,
    best: Option<Place>,
    limit: f64,
}

/// The best place for a part that may lie in these ways, where there is one that wastes less than `limit`.
pub(super) fn best_place(sheet: &Slicing, room: Room, lies: [Option<Size>; 2], fit: Fit, limit: f64) -> Option<Place> {
    let mut look = Look { sheet, room, fit, part: (0, 0), best: None, limit };
    for part in lies.into_iter().flatten() {
        look.part = part;
        if sheet.is_empty() {
            look.alone();
        } else {
            look.down(Visit::whole(sheet, room));
        }
    }
    look.best
}

impl Look<'_> {
    /// A part on a bare sheet: two cuts free it, whatever the saw allows.
    fn alone(&mut self) {
        let (whole, part) = (self.room.size, self.part);
        if part.0 <= whole.0 && part.1 <= whole.1 {
            self.offer(whole, part, Spot { beside: NONE, line: SawLine::Length, size: part });
        }
    }

    fn offer(&mut self, piece: Size, group: Size, spot: Spot) {
        let waste = self.fit.waste(piece, spot.size, group, spot.line);
        if waste < self.limit {
            self.limit = waste;
            self.best = Some((waste, spot));
        }
    }

    /// Tries the group and all in it. Recursion is as deep as the tree, which is as deep as a sheet has parts at most.
    fn down(&mut self, visit: Visit) {
        let part = self.part;
        if part.0 > visit.room.0 || part.1 > visit.room.1 {
            return;
        }
        let Some(&knot) = self.sheet.knot(visit.at) else { return };
        for line in [SawLine::Length, SawLine::Width] {
            self.beside(visit, &knot, line);
        }
        let Kind::Join(line, one, other) = knot.kind else { return };
        for (at, beside) in [(one, other), (other, one)] {
            let taken = self.sheet.knot(beside).map_or(0, |knot| along(knot.size, line));
            let room = strip(visit.room, line, along(visit.room, line) - taken);
            self.down(Visit { at, room, above: Some(line), used: visit.used_by(line) });
        }
    }

    fn beside(&mut self, visit: Visit, knot: &Knot, line: SawLine) {
        let free = along(visit.room, line) - along(knot.size, line);
        if free >= along(self.part, line) && visit.may(self.room, line, knot.turns_below(line)) {
            let piece = strip(visit.room, line, free);
            self.offer(piece, knot.size, Spot { beside: visit.at, line, size: self.part });
        }
    }
}
