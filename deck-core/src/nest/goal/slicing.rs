//! A sheet as a slicing tree: groups of parts, side by side or end to end, that keep only the room they need.
//!
//! # Method
//! Slicing trees (Otten, "Automatic floorplan design", DAC 1982). A group is as long and as wide as what is in it; where
//! the sheet has room for it, another part can be set beside any group, be it one part or a hundred. The waste is not
//! laid out at all: it is what the sheet has more than the tree needs. So the cuts of earlier parts give way to later
//! ones, which pieces sawn free once and for all cannot.

use super::super::build::{Node, Pattern};
use super::super::problem::{Problem, Size};
use crate::stock::SawLine;

/// Index of a knot.
type At = u32;
const NONE: At = At::MAX;

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Kind {
    /// A part of that class.
    Part(u32),
    /// Two groups, parted by a saw line in that direction.
    Join(SawLine, At, At),
    /// None: the knot is not in use.
    Unused,
}

#[derive(Debug, Clone, Copy)]
struct Knot {
    kind: Kind,
    up: At,
    /// What the group needs, in grown measure.
    size: Size,
    /// Turns of the saw line inside it, its own first line counted.
    turns: u8,
}

/// A sheet and the parts on it.
#[derive(Debug, Clone)]
pub(super) struct Slicing {
    pub(super) rack: usize,
    knots: Vec<Knot>,
    unused: Vec<At>,
    root: At,
    /// Area of the parts, coarse.
    pub(super) filled: f64,
}

/// What a sheet offers and allows.
#[derive(Debug, Clone, Copy)]
pub(super) struct Room {
    pub(super) size: Size,
    pub(super) stages: u8,
    pub(super) first: Option<SawLine>,
}

/// A place for a part: beside which group, parted by which line, and how the part lies.
#[derive(Debug, Clone, Copy)]
pub(super) struct Place {
    beside: At,
    line: SawLine,
    size: Size,
    /// How well it fits: the less, the better.
    pub(super) waste: f64,
}

/// What makes one place better than another.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Fit {
    /// The smaller of the strips that are left beside and behind the part.
    Side,
    /// The area that is left of the free piece.
    Piece,
    /// What the group and the part leave empty between them.
    Group,
}

/// A group on the way down: which, the room that it may grow into, and what lies above it.
#[derive(Clone, Copy)]
struct Visit {
    at: At,
    room: Size,
    above: Option<SawLine>,
    used: u8,
}

fn along(size: Size, line: SawLine) -> i64 {
    if line == SawLine::Width { size.0 } else { size.1 }
}

fn across(size: Size, line: SawLine) -> i64 {
    if line == SawLine::Width { size.1 } else { size.0 }
}

fn joined(one: Size, other: Size, line: SawLine) -> Size {
    match line {
        SawLine::Width => (one.0 + other.0, one.1.max(other.1)),
        SawLine::Length => (one.0.max(other.0), one.1 + other.1),
    }
}

impl Fit {
    fn waste(self, piece: Size, part: Size, group: Size, line: SawLine) -> f64 {
        let (right, top) = ((piece.0 - part.0) as f64, (piece.1 - part.1) as f64);
        match self {
            Fit::Side => right.min(top) + right.max(top) * 1e-3,
            Fit::Piece => piece.0 as f64 * piece.1 as f64 - part.0 as f64 * part.1 as f64,
            Fit::Group => {
                let step = (across(part, line) - across(group, line)) as f64;
                if step > 0.0 { step * along(group, line) as f64 } else { -step * along(part, line) as f64 }
            }
        }
    }
}

impl Slicing {
    pub(super) fn new(rack: usize) -> Slicing {
        Slicing { rack, knots: Vec::new(), unused: Vec::new(), root: NONE, filled: 0.0 }
    }

    pub(super) fn is_empty(&self) -> bool {
        self.root == NONE
    }

    /// Groups and parts on it: what a search for a place looks at.
    pub(super) fn len(&self) -> usize {
        self.knots.len() - self.unused.len()
    }

    fn knot(&self, at: At) -> Option<&Knot> {
        self.knots.get(at as usize)
    }

    /// The best place for a part that may lie in these ways, where there is one better than `limit`.
    pub(super) fn best_place(&self, room: Room, lies: [Option<Size>; 2], fit: Fit, limit: f64) -> Option<Place> {
        let mut best: Option<Place> = None;
        let mut limit = limit;
        for size in lies.into_iter().flatten() {
            if size.0 > room.size.0 || size.1 > room.size.1 {
                continue;
            }
            if self.root == NONE {
                let waste = fit.waste(room.size, size, size, SawLine::Length);
                if waste < limit {
                    limit = waste;
                    best = Some(Place { beside: NONE, line: SawLine::Length, size, waste });
                }
                continue;
            }
            self.look(room, Visit { at: self.root, room: room.size, above: None, used: 0 }, size, fit, &mut limit, &mut best);
        }
        best
    }

    fn look(&self, room: Room, visit: Visit, size: Size, fit: Fit, limit: &mut f64, best: &mut Option<Place>) {
        if size.0 > visit.room.0 || size.1 > visit.room.1 {
            return;
        }
        let Some(knot) = self.knot(visit.at) else { return };
        for line in [SawLine::Length, SawLine::Width] {
            let free = along(visit.room, line) - along(knot.size, line);
            if free < along(size, line) {
                continue;
            }
            let piece = match line {
                SawLine::Width => (free, visit.room.1),
                SawLine::Length => (visit.room.0, free),
            };
            let waste = fit.waste(piece, size, knot.size, line);
            if waste < *limit && Self::may(room, visit, knot, line) {
                *limit = waste;
                *best = Some(Place { beside: visit.at, line, size, waste });
            }
        }
        let Kind::Join(line, one, other) = knot.kind else { return };
        let used = if visit.above == Some(line) { visit.used } else { visit.used + 1 };
        for (at, beside) in [(one, other), (other, one)] {
            let taken = self.knot(beside).map_or(0, |knot| along(knot.size, line));
            let inner = match line {
                SawLine::Width => (visit.room.0 - taken, visit.room.1),
                SawLine::Length => (visit.room.0, visit.room.1 - taken),
            };
            self.look(room, Visit { at, room: inner, above: Some(line), used }, size, fit, limit, best);
        }
    }

    /// True where the saw may part the group and something beside it by that line.
    fn may(room: Room, visit: Visit, knot: &Knot, line: SawLine) -> bool {
        if visit.above.is_none() && room.first.is_some_and(|first| first != line) {
            return false;
        }
        let used = if visit.above == Some(line) { visit.used } else { visit.used + 1 };
        let inside = match knot.kind {
            Kind::Join(own, ..) if own == line => knot.turns - 1,
            _ => knot.turns,
        };
        used + inside <= room.stages
    }

    /// Sets a part into its place.
    pub(super) fn put(&mut self, place: Place, class: u32, area: f64) {
        self.filled += area;
        let part = self.add(Knot { kind: Kind::Part(class), up: NONE, size: place.size, turns: 0 });
        if place.beside == NONE {
            self.root = part;
            return;
        }
        let up = self.knot(place.beside).map_or(NONE, |knot| knot.up);
        let join = self.add(Knot { kind: Kind::Join(place.line, place.beside, part), up, size: (0, 0), turns: 0 });
        self.replace(up, place.beside, join);
        self.set_up(place.beside, join);
        self.set_up(part, join);
        self.measure(join);
    }

    fn add(&mut self, knot: Knot) -> At {
        if let Some(at) = self.unused.pop() {
            if let Some(place) = self.knots.get_mut(at as usize) {
                *place = knot;
            }
            return at;
        }
        self.knots.push(knot);
        At::try_from(self.knots.len() - 1).unwrap_or(NONE)
    }

    fn set_up(&mut self, at: At, up: At) {
        if let Some(knot) = self.knots.get_mut(at as usize) {
            knot.up = up;
        }
    }

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

    /// Sizes and turns anew, from a group up to the whole.
    fn measure(&mut self, mut at: At) {
        while let Some(&Knot { kind: Kind::Join(line, one, other), up, size, turns }) = self.knot(at) {
            let (Some(first), Some(second)) = (self.knot(one), self.knot(other)) else { return };
            let new = joined(first.size, second.size, line);
            let inner = |knot: &Knot| match knot.kind {
                Kind::Join(own, ..) if own == line => knot.turns - 1,
                _ => knot.turns,
            };
            let deep = 1 + inner(first).max(inner(second));
            if new == size && deep == turns {
                return;
            }
            if let Some(knot) = self.knots.get_mut(at as usize) {
                (knot.size, knot.turns) = (new, deep);
            }
            at = up;
        }
    }

    /// Takes out the parts for which `out` says so, and hands them to `taken`.
    pub(super) fn take_out(&mut self, mut out: impl FnMut() -> bool, mut taken: impl FnMut(u32)) {
        let parts: Vec<(At, u32)> = self.parts().collect();
        for (at, class) in parts {
            if out() {
                self.remove(at);
                taken(class);
            }
        }
    }

    /// The parts on the sheet.
    pub(super) fn classes(&self) -> impl Iterator<Item = u32> + '_ {
        self.parts().map(|(_, class)| class)
    }

    fn parts(&self) -> impl Iterator<Item = (At, u32)> + '_ {
        (0..).zip(&self.knots).filter_map(|(at, knot)| match knot.kind {
            Kind::Part(class) => Some((at, class)),
            Kind::Join(..) | Kind::Unused => None,
        })
    }

    fn remove(&mut self, at: At) {
        let Some(&Knot { up, .. }) = self.knot(at) else { return };
        let Some(&Knot { kind: Kind::Join(_, one, other), up: above, .. }) = self.knot(up) else {
            *self = Slicing::new(self.rack);
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

    /// A filled sheet as a slicing tree.
    pub(super) fn of(pattern: &Pattern, sizes: impl Fn(u32, Size) -> Size, whole: Size) -> Slicing {
        let mut tree = Slicing::new(pattern.rack);
        tree.root = tree.grow(pattern, 0, whole, &sizes).unwrap_or(NONE);
        tree
    }

    fn grow(&mut self, pattern: &Pattern, node: u32, size: Size, sizes: &impl Fn(u32, Size) -> Size) -> Option<At> {
        match *pattern.nodes.get(node as usize)? {
            Node::Free => None,
            Node::Part(class) => {
                Some(self.add(Knot { kind: Kind::Part(class), up: NONE, size: sizes(class, size), turns: 0 }))
            }
            Node::Split { line, at, first, second } => {
                let (before, behind) = match line {
                    SawLine::Length => ((size.0, at), (size.0, size.1 - at)),
                    SawLine::Width => ((at, size.1), (size.0 - at, size.1)),
                };
                let one = self.grow(pattern, first, before, sizes);
                let other = self.grow(pattern, second, behind, sizes);
                let (Some(one), Some(other)) = (one, other) else { return one.or(other) };
                let join = self.add(Knot { kind: Kind::Join(line, one, other), up: NONE, size: (0, 0), turns: 0 });
                self.set_up(one, join);
                self.set_up(other, join);
                self.measure(join);
                Some(join)
            }
        }
    }

    /// The cuts of the sheet, the waste sawn off in as large pieces as the saw allows.
    pub(super) fn pattern(&self, problem: &Problem, room: Room) -> Pattern {
        let mut parts: Vec<(u32, u32)> = Vec::new();
        let mut classes: Vec<u32> = self.classes().collect();
        classes.sort_unstable();
        for class in classes {
            match parts.last_mut() {
                Some(last) if last.0 == class => last.1 += 1,
                _ => parts.push((class, 1)),
            }
        }
        let area = parts.iter().map(|&(class, copies)| {
            problem.classes.get(class as usize).map_or(0, |class| class.area) * i128::from(copies)
        });
        let mut pattern = Pattern { rack: self.rack, nodes: vec![Node::Free], area: area.sum(), parts };
        if self.root != NONE {
            self.saw(&mut pattern, Visit { at: self.root, room: room.size, above: None, used: 0 }, 0, room);
        }
        pattern
    }

    /// Saws the group free of what it does not need, then its pieces.
    fn saw(&self, pattern: &mut Pattern, visit: Visit, node: u32, room: Room) {
        let Some(&knot) = self.knot(visit.at) else { return };
        let (right, top) = (visit.room.0 - knot.size.0, visit.room.1 - knot.size.1);
        match knot.kind {
            Kind::Unused => {}
            Kind::Part(class) => {
                let mut node = node;
                let mut first = visit.above.map_or(room.first.unwrap_or(SawLine::Length), |_| {
                    if right * visit.room.1 >= top * visit.room.0 { SawLine::Width } else { SawLine::Length }
                });
                if visit.above.is_some() && visit.used >= room.stages {
                    first = visit.above.unwrap_or(first);
                }
                let mut at = visit.room;
                for line in [first, first.turned()] {
                    if along(at, line) > along(knot.size, line) {
                        node = split(pattern, node, line, along(knot.size, line)).0;
                        at = if line == SawLine::Width { (knot.size.0, at.1) } else { (at.0, knot.size.1) };
                    }
                }
                if let Some(place) = pattern.nodes.get_mut(node as usize) {
                    *place = Node::Part(class);
                }
            }
            Kind::Join(line, one, other) => {
                let (Some(first), Some(_)) = (self.knot(one), self.knot(other)) else { return };
                let at = along(first.size, line);
                let used = if visit.above == Some(line) { visit.used } else { visit.used + 1 };
                let (before, behind) = split(pattern, node, line, at);
                let rooms = match line {
                    SawLine::Width => ((at, visit.room.1), (visit.room.0 - at, visit.room.1)),
                    SawLine::Length => ((visit.room.0, at), (visit.room.0, visit.room.1 - at)),
                };
                self.saw(pattern, Visit { at: one, room: rooms.0, above: Some(line), used }, before, room);
                self.saw(pattern, Visit { at: other, room: rooms.1, above: Some(line), used }, behind, room);
            }
        }
    }
}

fn split(pattern: &mut Pattern, node: u32, line: SawLine, at: i64) -> (u32, u32) {
    let first = u32::try_from(pattern.nodes.len()).unwrap_or(u32::MAX);
    pattern.nodes.extend([Node::Free, Node::Free]);
    if let Some(place) = pattern.nodes.get_mut(node as usize) {
        *place = Node::Split { line, at, first, second: first + 1 };
    }
    (first, first + 1)
}
