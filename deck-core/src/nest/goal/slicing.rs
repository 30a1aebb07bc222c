//! A sheet as a slicing tree: groups of parts, side by side or end to end, that keep only the room they need.
//!
//! # Method
//! Slicing trees (Otten, "Automatic floorplan design", Design Automation Conference 1982). A group is as long and as
//! wide as what is in it. The waste is not laid out: it is what the sheet has more than the tree needs, and another
//! part can be set beside any group, be it one part or a hundred. So the cuts of earlier parts give way to later ones,
//! which pieces that are sawn free once and for all cannot.

use super::super::problem::Size;
use crate::stock::SawLine;

/// Index of a knot.
pub(super) type At = u32;
/// No knot: the tree is empty, or there is nothing above the whole.
pub(super) const NONE: At = At::MAX;

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Kind {
    /// A part of that class.
    Part(u32),
    /// Two groups, parted by a saw line in that direction.
    Join(SawLine, At, At),
    /// The knot is not in use.
    Unused,
}

/// A part, or a group of parts.
#[derive(Debug, Clone, Copy)]
pub(super) struct Knot {
    pub(super) kind: Kind,
    up: At,
    /// What the group needs, in grown measure.
    pub(super) size: Size,
    /// Turns of the saw line inside it, its own first line counted.
    pub(super) turns: u8,
    /// The same without its own first line, below a line along the sheet's length and below one across it. Kept because
    /// only a join has a line to ask: compilers read that of a part as well, and checkers of memory complain of it.
    below: (u8, u8),
}

impl Knot {
    /// Turns of the saw line that it asks for below a line in that direction.
    pub(super) fn turns_below(&self, line: SawLine) -> u8 {
        match line {
            SawLine::Length => self.below.0,
            SawLine::Width => self.below.1,
        }
    }
}

/// A sheet and the parts on it.
#[derive(Debug, Clone)]
pub(super) struct Slicing {
    /// Index of the stock.
    pub(super) rack: usize,
    knots: Vec<Knot>,
    unused: Vec<At>,
    pub(super) root: At,
    /// Grown area of the parts, as a share of the largest sheet.
    pub(super) filled: f64,
}

/// Where a part is set: beside which group, parted by which line, and how it lies there.
#[derive(Debug, Clone, Copy)]
pub(super) struct Spot {
    pub(super) beside: At,
    pub(super) line: SawLine,
    pub(super) size: Size,
}

fn joined(one: Size, other: Size, line: SawLine) -> Size {
    match line {
        SawLine::Width => (one.0 + other.0, one.1.max(other.1)),
        SawLine::Length => (one.0.max(other.0), one.1 + other.1),
    }
}

impl Slicing {
    /// A bare sheet.
    pub(super) fn new(rack: usize) -> Slicing {
        Slicing { rack, knots: Vec::new(), unused: Vec::new(), root: NONE, filled: 0.0 }
    }

    pub(super) fn is_empty(&self) -> bool {
        self.root == NONE
    }

    /// Groups and parts on it: what a search for a place looks at.
    pub(super) fn knots(&self) -> usize {
        self.knots.len() - self.unused.len()
    }

    /// Parts on it: each join has one group more than itself below it.
    pub(super) fn count(&self) -> usize {
        self.knots().div_ceil(2)
    }

    pub(super) fn knot(&self, at: At) -> Option<&Knot> {
        self.knots.get(at as usize)
    }

    /// The saw line that parts the whole, where there is more than one part.
    pub(super) fn first_line(&self) -> Option<SawLine> {
        match self.knot(self.root)?.kind {
            Kind::Join(line, ..) => Some(line),
            Kind::Part(_) | Kind::Unused => None,
        }
    }

    /// The parts on the sheet, by class.
    pub(super) fn classes(&self) -> impl Iterator<Item = u32> + '_ {
        self.parts().map(|(_, class)| class)
    }

    fn parts(&self) -> impl Iterator<Item = (At, u32)> + '_ {
        (0..).zip(&self.knots).filter_map(|(at, knot)| match knot.kind {
            Kind::Part(class) => Some((at, class)),
            Kind::Join(..) | Kind::Unused => None,
        })
    }

    /// Sets a part of a class into its place.
    pub(super) fn put(&mut self, spot: Spot, class: u32) {
        let part = self.part(class, spot.size);
        if spot.beside == NONE {
            self.root = part;
            return;
        }
        let up = self.knot(spot.beside).map_or(NONE, |knot| knot.up);
        let join = self.join(spot.line, spot.beside, part, up);
        self.replace(up, spot.beside, join);
        self.measure(join);
    }

    /// A part that stands alone as yet.
    pub(super) fn part(&mut self, class: u32, size: Size) -> At {
        self.add(Knot { kind: Kind::Part(class), up: NONE, size, turns: 0, below: (0, 0) })
    }

    /// Two groups that stand alone as yet, joined and measured.
    pub(super) fn group(&mut self, line: SawLine, one: At, other: At) -> At {
        let join = self.join(line, one, other, NONE);
        self.measure(join);
        join
    }

    fn join(&mut self, line: SawLine, one: At, other: At, up: At) -> At {
        let join = self.add(Knot { kind: Kind::Join(line, one, other), up, size: (0, 0), turns: 0, below: (0, 0) });
        self.set_up(one, join);
        self.set_up(other, join);
        join
    }

    /// Takes out the parts for whose class `out` says so, and hands them to `taken`.
    pub(super) fn take_out(&mut self, mut out: impl FnMut(u32) -> bool, mut taken: impl FnMut(u32)) {
        let parts: Vec<(At, u32)> = self.parts().collect();
        for (at, class) in parts {
            if out(class) {
                self.remove(at);
                taken(class);
            }
        }
    }

    /// Takes out all parts of a group: the one so many levels above a part, given by its number.
    pub(super) fn take_group(&mut self, part: usize, levels: usize, mut taken: impl FnMut(u32)) {
        let Some((mut top, _)) = self.parts().nth(part) else { return };
        for _ in 0..levels {
            match self.knot(top) {
                Some(knot) if knot.up != NONE => top = knot.up,
                _ => break,
            }
        }
        let mut below = vec![top];
        let mut parts = Vec::new();
        while let Some(at) = below.pop() {
            match self.knot(at).map(|knot| knot.kind) {
                Some(Kind::Join(_, one, other)) => below.extend([one, other]),
                Some(Kind::Part(class)) => parts.push((at, class)),
                Some(Kind::Unused) | None => {}
            }
        }
        for (at, class) in parts {
            self.remove(at);
            taken(class);
        }
    }

    fn remove(&mut self, at: At) {
        let Some(&Knot { up, .. }) = self.knot(at) else { return };
        let Some(&Knot { kind: Kind::Join(_, one, other), up: above, .. }) = self.knot(up) else {
            (self.root, self.filled) = (NONE, 0.0);
            self.knots.clear();
            self.unused.clear();
            return;
        };
        for gone in [at, up] {
            self.unused.push(gone);
            if let Some(knot) = self.knots.get_mut(gone as usize) {
                knot.kind = Kind::Unused;
            }
        }
        let beside = if one == at { other } else { one };
        self.set_up(beside, above);
        self.replace(above, up, beside);
        self.measure(above);
    }

    fn add(&mut self, knot: Knot) -> At {
        if let Some(at) = self.unused.pop() {
            if let Some(place) = self.knots.get_mut(at as usize) {
                *place = knot;
            }
            return at;
        }
        self.knots.push(knot);
        // Two knots a part, and the parts of an order are counted in a million.
        At::try_from(self.knots.len() - 1).unwrap_or(NONE)
    }

    fn set_up(&mut self, at: At, up: At) {
        if let Some(knot) = self.knots.get_mut(at as usize) {
            knot.up = up;
        }
    }

    /// Puts a group where another one was below `up`.
    fn replace(&mut self, up: At, old: At, new: At) {
        match self.knots.get_mut(up as usize) {
            None => self.root = new,
            Some(knot) => {
                if let Kind::Join(line, one, other) = knot.kind {
                    knot.kind = if one == old { Kind::Join(line, new, other) } else { Kind::Join(line, one, new) };
                }
            }
        }
    }

    /// Sizes and turns anew, from a group up until nothing changes.
    fn measure(&mut self, mut at: At) {
        while let Some(&Knot { kind: Kind::Join(line, one, other), up, size, turns, .. }) = self.knot(at) {
            let (Some(one), Some(other)) = (self.knot(one), self.knot(other)) else { return };
            let new = joined(one.size, other.size, line);
            let deep = 1 + one.turns_below(line).max(other.turns_below(line));
            if new == size && deep == turns {
                return;
            }
            if let Some(knot) = self.knots.get_mut(at as usize) {
                (knot.size, knot.turns) = (new, deep);
                knot.below = match line {
                    SawLine::Length => (deep - 1, deep),
                    SawLine::Width => (deep, deep - 1),
                };
            }
            at = up;
        }
    }
}
