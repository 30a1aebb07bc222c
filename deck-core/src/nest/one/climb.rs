//! Good answers quickly: parts are taken in an order that is disturbed at random and kept where it gets no worse.
//!
//! # Method
//! A piece is given the first part of the order that fits, in its corner; what remains beside and above it are pieces in
//! their turn. Late acceptance hill climbing over the order (Burke and Bykov 2017); the decoding is common practice.

use super::super::effort::Steps;
use super::super::random::SplitMix;
use super::board::Board;
use super::table::Item;
use super::tree::{Joined, Joins};
use crate::stock::SawLine;

/// A piece that is still to be filled.
#[derive(Debug, Clone, Copy)]
struct Piece {
    size: (i64, i64),
    /// The line that cut it off; none for the whole sheet.
    line: Option<SawLine>,
    /// Turns of the saw line that may follow.
    turns: u8,
}

/// A part in the order: how it lies, and along which line it is sawn off first.
#[derive(Debug, Clone, Copy)]
struct Entry {
    item: Item,
    line: SawLine,
}

/// Deeper pieces are left as waste: a part lies in each piece above them, and every call takes stack.
const DEEPEST: u16 = 400;

/// A climb under way.
#[derive(Debug)]
struct Climb<'b> {
    board: &'b Board,
    left: Vec<u32>,
    joins: Joins,
    looks: u64,
}

/// The best answer of a climb that stops at a value, or after so many steps: value, and how it is joined.
///
/// It ends after so many decodings without anything better, `patience` for each way that a part may lie.
pub(super) fn climb(
    board: &Board,
    values: &[i64],
    goal: i64,
    patience: u64,
    steps: &mut Steps<'_>,
) -> (i64, Joins, Option<Joined>) {
    /// An answer is kept where it is no worse than the one so many decodings ago.
    const MEMORY: usize = 24;
    let mut order = start(board, values);
    let mut climb = Climb { board, left: Vec::new(), joins: Joins::new(), looks: 0 };
    let (value, joined) = climb.decode(&order);
    let mut best = (value, std::mem::take(&mut climb.joins), joined);
    let mut random = SplitMix::new();
    let (mut current, mut memory) = (value, [value; MEMORY]);
    let (mut round, mut since_better) = (0_usize, 0_u64);
    while best.0 < goal && since_better < patience * order.len() as u64 && !steps.spent_all() && order.len() > 1 {
        let undo = disturb(&mut order, &mut random);
        let (value, joined) = climb.decode(&order);
        let Some(before) = memory.get_mut(round % MEMORY) else { break };
        if value >= current || value >= *before {
            current = value;
        } else {
            undo.revert(&mut order);
        }
        *before = current;
        round += 1;
        steps.spend(climb.looks / 2);
        climb.looks %= 2;
        since_better += 1;
        if value > best.0 {
            best = (value, std::mem::take(&mut climb.joins), joined);
            since_better = 0;
        }
    }
    steps.spend(climb.looks / 2);
    best
}

/// The parts of most value for their area first; among equals the largest.
fn start(board: &Board, values: &[i64]) -> Vec<Entry> {
    let area = |item: &Item| i128::from(item.size.0) * i128::from(item.size.1);
    let mut items = board.items(values);
    items.retain(|item| item.value > 0);
    items.sort_by(|one, other| {
        let (mine, theirs) = (i128::from(one.value) * area(other), i128::from(other.value) * area(one));
        theirs.cmp(&mine).then_with(|| area(other).cmp(&area(one)))
    });
    let entry = |item: Item| {
        let line = if item.size.0 >= item.size.1 { SawLine::Length } else { SawLine::Width };
        Entry { item, line }
    };
    items.into_iter().map(entry).collect()
}

/// A change of the order, to be taken back.
#[derive(Debug, Clone, Copy)]
enum Change {
    Swap(usize, usize),
    /// Taken out at the first place and put in at the second.
    Move(usize, usize),
    Turn(usize),
}

fn disturb(order: &mut Vec<Entry>, random: &mut SplitMix) -> Change {
    let (one, other) = (random.below(order.len()), random.below(order.len()));
    let change = match random.below(4) {
        0 => Change::Swap(one, other),
        1 => Change::Turn(one),
        _ => Change::Move(one, other),
    };
    change.make(order);
    change
}

impl Change {
    fn make(self, order: &mut Vec<Entry>) {
        match self {
            Change::Swap(one, other) => order.swap(one, other),
            Change::Move(from, to) => {
                let entry = order.remove(from);
                order.insert(to, entry);
            }
            Change::Turn(at) => {
                if let Some(entry) = order.get_mut(at) {
                    entry.line = entry.line.turned();
                }
            }
        }
    }

    fn revert(self, order: &mut Vec<Entry>) {
        match self {
            Change::Move(from, to) => Change::Move(to, from).make(order),
            same => same.make(order),
        }
    }
}

impl Climb<'_> {
    /// Fills the sheet in an order; the value of what lies on it.
    fn decode(&mut self, order: &[Entry]) -> (i64, Option<Joined>) {
        self.left.clear();
        self.left.extend(self.board.kinds.iter().map(|kind| kind.count));
        self.joins.clear();
        let piece = Piece { size: self.board.size, line: None, turns: self.board.limits.stages.unwrap_or(u8::MAX) };
        let mut value = 0;
        let joined = self.fill(order, piece, DEEPEST, &mut value);
        (value, joined)
    }

    fn fill(&mut self, order: &[Entry], piece: Piece, depth: u16, value: &mut i64) -> Option<Joined> {
        let depth = depth.checked_sub(1)?;
        let entry = self.first(order, piece)?;
        let item = entry.item;
        if let Some(left) = self.left.get_mut(item.class as usize) {
            *left -= 1;
        }
        *value += item.value;
        let part = self.joins.part(item.class, item.size);
        let free = (item.size.0 < piece.size.0, item.size.1 < piece.size.1);
        let first = match free {
            (false, false) => return Some(part),
            (true, false) => SawLine::Width,
            (false, true) => SawLine::Length,
            (true, true) if self.turns(piece, entry.line).is_some() => entry.line,
            (true, true) => entry.line.turned(),
        };
        let (strip, rest) = self.cut(piece, item.size, first);
        let joined = match strip {
            Some(strip) if free == (true, true) => {
                let (_, above) = self.cut(strip, item.size, first.turned());
                self.beside(order, part, above, first.turned(), depth, value)
            }
            _ => part,
        };
        Some(self.beside(order, joined, rest, first, depth, value))
    }

    fn beside(
        &mut self,
        order: &[Entry],
        joined: Joined,
        rest: Option<Piece>,
        line: SawLine,
        depth: u16,
        value: &mut i64,
    ) -> Joined {
        match rest.and_then(|rest| self.fill(order, rest, depth, value)) {
            Some(other) => self.joins.join(line, joined, other),
            None => joined,
        }
    }

    /// The first of the order that is left, fits, and can be sawn free.
    fn first(&mut self, order: &[Entry], piece: Piece) -> Option<Entry> {
        let fits = |entry: &&Entry| {
            let size = entry.item.size;
            size.0 <= piece.size.0
                && size.1 <= piece.size.1
                && self.left.get(entry.item.class as usize).is_some_and(|left| *left > 0)
                && (size.0 == piece.size.0
                    || size.1 == piece.size.1
                    || self.turns(piece, entry.line).or_else(|| self.turns(piece, entry.line.turned())).is_some())
        };
        let found = order.iter().position(|entry| fits(&entry));
        self.looks += found.unwrap_or(order.len()) as u64 + 4;
        found.and_then(|found| order.get(found)).copied()
    }

    /// Turns that are left after a counted cut along that line, none where it may not be sawn.
    fn turns(&self, piece: Piece, line: SawLine) -> Option<u8> {
        if piece.line == Some(line) {
            return Some(piece.turns);
        }
        if piece.line.is_none() && self.board.limits.first.is_some_and(|first| first != line) {
            return None;
        }
        piece.turns.checked_sub(1)
    }

    /// The strip that holds a part and the rest. Where the cut is not counted, nothing else may be cut from either.
    fn cut(&self, piece: Piece, part: (i64, i64), line: SawLine) -> (Option<Piece>, Option<Piece>) {
        let Some(turns) = self.turns(piece, line) else { return (None, None) };
        let with = |size: (i64, i64)| Some(Piece { size, line: Some(line), turns });
        match line {
            SawLine::Length => (with((piece.size.0, part.1)), with((piece.size.0, piece.size.1 - part.1))),
            SawLine::Width => (with((part.0, piece.size.1)), with((piece.size.0 - part.0, piece.size.1))),
        }
    }
}
