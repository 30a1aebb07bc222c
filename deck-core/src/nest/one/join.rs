//! Joins known rectangles side by side and end to end, the most promising first.
//!
//! # Method
//! Best-first search from the parts up (Viswanathan and Bagchi 1993; Hifi 1997; Cung, Hifi and Le Cun 2000; Yoon, Ahn
//! and Kang 2013): what is taken up next has the highest sum of its own value and the bound of the rest of the sheet.
//! A rectangle of the same parts as another that leaves no less room both ways is left out. Of a run of parallel lines
//! only the second of two rectangles is an element, never a run itself.
//!
//! Room is counted in points: what a rectangle leaves beside it is rounded down to what anything can use.

use super::super::effort::Steps;
use super::super::problem::Size;
use super::board::Board;
use super::copies::{Packing, hash};
use super::groups::{Group, Groups, Room};
use super::raster::Raster;
use super::rest::Rest;
use super::standing::Standing;
use super::table::Amount;
use super::tree::{Joined, Joins, Turns, join_sizes, join_turns};
use super::weights::Priced;
use crate::stock::SawLine;
use std::collections::BinaryHeap;

/// What a search is about.
#[derive(Debug, Clone, Copy)]
pub(super) struct Ground<'a, V> {
    pub(super) board: &'a Board,
    pub(super) lengths: &'a Raster,
    pub(super) widths: &'a Raster,
    pub(super) values: &'a [i64],
    pub(super) priced: &'a Priced,
    pub(super) rest: &'a Rest<V>,
    pub(super) standing: &'a Standing,
}

/// A rectangle put together.
#[derive(Debug, Clone, Copy)]
struct Rect {
    reduced: i64,
    value: i64,
    /// Room beside and above, by points.
    room: Room,
    /// Set where a rectangle of the same parts leaves more room.
    beaten: bool,
    /// The next rectangle with the same hash of its parts.
    twin: u32,
}

/// Rectangles that are kept at most: half a gigabyte.
const MOST_RECTS: usize = 1 << 22;
/// Words for their counters at most: half a gigabyte.
const MOST_WORDS: usize = 1 << 26;

/// No rectangle.
const NONE: u32 = u32::MAX;

/// How a search ended.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum End {
    /// Nothing is left that could be better.
    Done,
    /// Something was left out for want of width.
    Narrow,
    /// The steps are spent; nothing is worth more than this.
    Spent(i64),
}

/// A search under way.
#[derive(Debug)]
pub(super) struct Search<'a, V> {
    ground: Ground<'a, V>,
    packing: Packing,
    joins: Joins,
    rects: Vec<Rect>,
    /// The counters of all rectangles, one after the other.
    words: Vec<u64>,
    twins: Vec<u32>,
    groups: Groups,
    open: BinaryHeap<(i64, i64, u32)>,
    /// Bounds below this are of no interest.
    needed: i64,
    best: Option<(i64, Joined)>,
    hope: u8,
    scratch: Vec<u64>,
    pairs: Vec<Pair>,
}

/// Two rectangles that are to be joined.
#[derive(Debug, Clone, Copy)]
struct Pair {
    other: u32,
    line: SawLine,
    room: Room,
}

impl<'a, V: Amount> Search<'a, V> {
    /// A search for more than a known value, with so many rectangles for each room at most.
    pub(super) fn new(ground: Ground<'a, V>, known: i64, (beam, hope): (usize, u8)) -> Search<'a, V> {
        let packing = Packing::new(ground.board.kinds.iter().map(|kind| kind.count));
        let mut search = Search {
            scratch: vec![0; packing.words()],
            packing,
            joins: Joins::new(),
            rects: Vec::new(),
            words: Vec::new(),
            twins: vec![NONE; 1 << 10],
            groups: Groups::new(ground.lengths.len(), ground.widths.len(), beam),
            open: BinaryHeap::new(),
            needed: ground.priced.needed(known),
            best: None,
            hope,
            pairs: Vec::new(),
            ground,
        };
        search.parts();
        search
    }

    /// What was found, where it is more than was known.
    pub(super) fn found(self) -> (Joins, Option<(i64, Joined)>) {
        (self.joins, self.best)
    }

    fn parts(&mut self) {
        for item in self.ground.board.items(self.ground.values) {
            let reduced = self.ground.priced.reduced.get(item.class as usize).copied().unwrap_or(0);
            let (lengths, widths) = (self.ground.lengths, self.ground.widths);
            let room = |raster: &Raster, extent: i64| u32::try_from(raster.floor(raster.whole() - extent)).unwrap_or(0);
            let room = (room(lengths, item.size.0), room(widths, item.size.1));
            if self.bound(reduced, room) < self.needed {
                continue;
            }
            self.scratch.fill(0);
            let mut words = std::mem::take(&mut self.scratch);
            self.packing.one(item.class, &mut words);
            self.scratch = words;
            if self.is_new(room, (1, 1), None, item.size) {
                let joined = self.joins.part(item.class, item.size);
                self.add(joined, reduced, item.value, room);
            }
        }
    }

    /// Takes up one rectangle after the other.
    pub(super) fn run(&mut self, steps: &mut Steps<'_>) -> End {
        while let Some((_, _, rect)) = self.open.pop() {
            let Some(this) = self.rect(rect).filter(|rect| !rect.beaten) else { continue };
            let bound = self.bound(this.reduced, this.room);
            if bound < self.needed {
                continue;
            }
            if steps.spent_all() || self.rects.len() >= MOST_RECTS || self.words.len() >= MOST_WORDS {
                return End::Spent(self.ground.priced.bound(bound));
            }
            let spent = self.take_up(rect);
            steps.spend(spent);
        }
        if self.groups.left_out() { End::Narrow } else { End::Done }
    }

    fn rect(&self, rect: u32) -> Option<Rect> {
        self.rects.get(rect as usize).copied()
    }

    #[inline]
    fn bound(&self, reduced: i64, room: Room) -> i64 {
        reduced + self.ground.rest.at(room.0 as usize, room.1 as usize)
    }

    /// Joins a rectangle with all that were taken up before, and with itself; the steps that it took.
    fn take_up(&mut self, rect: u32) -> u64 {
        let Some(this) = self.rect(rect) else { return 0 };
        self.groups.take(this.room, this.reduced, rect);
        let mut pairs = std::mem::take(&mut self.pairs);
        pairs.clear();
        let looks = self.partners(rect, this, &mut pairs);
        let mut spent = looks / 4 + 4;
        for pair in &pairs {
            spent += self.join(rect, this, *pair);
        }
        self.pairs = pairs;
        spent
    }

    /// Every rectangle that may stand beside or above with a bound that is of interest.
    fn partners(&self, rect: u32, this: Rect, pairs: &mut Vec<Pair>) -> u64 {
        let Ground { lengths, widths, rest, .. } = self.ground;
        let size = self.joins.size(rect);
        let line = self.joins.line(rect);
        let mut looks = 0;
        for (beside, row) in self.groups.rows() {
            let room = lengths.point(beside) - size.0;
            let row_beside = lengths.floor(room);
            let beside_rest = if room >= 0 { rest.row(row_beside) } else { &[] };
            let stacked = this.room.0.min(u32::try_from(beside).unwrap_or(NONE));
            let above_rest = rest.row(stacked as usize);
            for group in row {
                looks += 1;
                let above = this.room.1.min(group.above);
                if let Some(most) = beside_rest.get(above as usize) {
                    let least = self.needed - this.reduced - most.wide();
                    let room = (u32::try_from(row_beside).unwrap_or(0), above);
                    looks += self.gather(group, least, Pair { other: 0, line: SawLine::Width, room }, line, pairs);
                }
                let room = widths.point(group.above as usize) - size.1;
                if room >= 0 {
                    let above = widths.floor(room);
                    let most = above_rest.get(above).copied().unwrap_or_default();
                    let least = self.needed - this.reduced - most.wide();
                    let room = (stacked, u32::try_from(above).unwrap_or(0));
                    looks += self.gather(group, least, Pair { other: 0, line: SawLine::Length, room }, line, pairs);
                }
            }
        }
        looks
    }

    #[inline]
    fn gather(&self, group: &Group, least: i64, pair: Pair, line: Option<SawLine>, pairs: &mut Vec<Pair>) -> u64 {
        let mut looks = 0;
        for &(reduced, other) in &group.taken {
            if reduced < least {
                break;
            }
            looks += 1;
            // Of two runs along the line, one would have been joined to the elements of the other one by one.
            if line == Some(pair.line) && self.joins.line(other) == line {
                continue;
            }
            pairs.push(Pair { other, ..pair });
        }
        looks
    }

    /// Makes one rectangle of two where it may be and is new; the steps that it took.
    fn join(&mut self, rect: u32, this: Rect, pair: Pair) -> u64 {
        /// Steps to look at a pair, to hold its counters against each other, and to look for its twins and keep it.
        const LOOK: u64 = 1;
        const COUNT: u64 = 6;
        const KEEP: u64 = 80;
        let Some(other) = self.rect(pair.other).filter(|other| !other.beaten) else { return LOOK };
        let reduced = this.reduced + other.reduced;
        if self.bound(reduced, pair.room) < self.needed
            || !self.turns_allow(rect, pair)
            || !self.groups.has_place(reduced, pair.room)
        {
            return LOOK;
        }
        let stride = self.packing.words();
        let words =
            |rect: u32| self.words.get(rect as usize * stride..(rect as usize + 1) * stride).unwrap_or_default();
        let mut sum = std::mem::take(&mut self.scratch);
        let allowed = self.packing.add(words(rect), words(pair.other), &mut sum);
        self.scratch = sum;
        if !allowed {
            return COUNT;
        }
        let turns = join_turns(pair.line, self.joins.turns(rect), self.joins.turns(pair.other));
        let size = join_sizes(pair.line, self.joins.size(rect), self.joins.size(pair.other));
        if self.is_new(pair.room, turns, Some(pair.line), size) {
            self.groups.take_place(reduced, pair.room);
            let joined = self.joins.join(pair.line, rect, pair.other);
            self.add(joined, reduced, this.value + other.value, pair.room);
        }
        KEEP
    }

    fn turns_allow(&self, rect: u32, pair: Pair) -> bool {
        let Some(stages) = self.ground.board.limits.stages else { return true };
        let turns = join_turns(pair.line, self.joins.turns(rect), self.joins.turns(pair.other));
        turns.0.min(turns.1) <= stages
    }

    /// Keeps a rectangle whose counters are in `scratch`.
    fn add(&mut self, joined: Joined, reduced: i64, value: i64, room: Room) {
        let slot = self.slot();
        let twin = self.twins.get(slot).copied().unwrap_or(NONE);
        self.rects.push(Rect { reduced, value, room, beaten: false, twin });
        self.words.extend_from_slice(&self.scratch);
        if let Some(head) = self.twins.get_mut(slot) {
            *head = joined;
        }
        if self.rects.len() > self.twins.len() {
            self.spread_twins();
        }
        if self.best.is_none_or(|best| value > best.0)
            && self.ground.priced.needed(value) > self.needed
            && self.ground.board.can_saw(&self.joins, joined)
        {
            self.best = Some((value, joined));
            self.ground.standing.found(value);
            self.needed = self.ground.priced.needed(value);
        }
        let bound = self.bound(reduced, room);
        if bound >= self.needed {
            // A narrow beam dives: what is at hand counts for more than what may come.
            let hope = bound - reduced;
            let first = if self.groups.is_wide() { bound } else { reduced + hope / 8 * i64::from(self.hope) };
            self.open.push((first, reduced, joined));
        }
    }

    fn slot(&self) -> usize {
        usize::try_from(hash(&self.scratch)).unwrap_or(0) & (self.twins.len() - 1)
    }

    /// Twice as many slots.
    fn spread_twins(&mut self) {
        let stride = self.packing.words();
        self.twins = vec![NONE; self.twins.len() * 2];
        for (index, words) in (0_u32..).zip(self.words.chunks_exact(stride)) {
            let slot = usize::try_from(hash(words)).unwrap_or(0) & (self.twins.len() - 1);
            if let (Some(head), Some(rect)) = (self.twins.get_mut(slot), self.rects.get_mut(index as usize)) {
                rect.twin = std::mem::replace(head, index);
            }
        }
    }

    /// False where a rectangle of the parts in `scratch` leaves no less room. Those that leave no more are beaten.
    fn is_new(&mut self, room: Room, turns: Turns, line: Option<SawLine>, size: Size) -> bool {
        let stride = self.packing.words();
        let mut at = self.twins.get(self.slot()).copied().unwrap_or(NONE);
        let mut worse = NONE;
        let no_limits = self.ground.board.limits.is_none();
        while let Some(twin) = self.rect(at) {
            let same = || self.words.get(at as usize * stride..(at as usize + 1) * stride) == Some(&self.scratch[..]);
            if !twin.beaten && same() && self.sawn_alike(at, turns, line, size) {
                if twin.room.0 >= room.0 && twin.room.1 >= room.1 {
                    return false;
                }
                if twin.room.0 <= room.0 && twin.room.1 <= room.1 && no_limits {
                    worse = at;
                    break;
                }
            }
            at = twin.twin;
        }
        if let Some(rect) = self.rects.get_mut(worse as usize) {
            rect.beaten = true;
        }
        true
    }

    /// True where the saw can do with a twin all that it can do with a rectangle of those turns and that first line.
    fn sawn_alike(&self, twin: u32, turns: Turns, line: Option<SawLine>, size: Size) -> bool {
        let limits = self.ground.board.limits;
        let other = self.joins.turns(twin);
        // Rooms are rounded: whether anything is left to be cut off first, only the sizes tell.
        let other_size = self.joins.size(twin);
        let no_larger = other_size.0 <= size.0 && other_size.1 <= size.1;
        let turns_less = other.0 <= turns.0 && other.1 <= turns.1;
        (limits.stages.is_none() || turns_less)
            && (limits.first.is_none() || self.joins.line(twin) == line && no_larger)
    }
}
