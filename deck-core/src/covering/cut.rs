//! Drops off rolls: one-dimensional cutting.

use crate::length::Length;
use serde::{Deserialize, Serialize};

/// How drops are cut off rolls of one length.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct CutList {
    /// The rolls, each with its drops in the order of cutting.
    pub rolls: Vec<RollCut>,
    /// No cutting takes fewer rolls.
    pub bound: u32,
    /// True where none takes fewer than this one.
    pub proven: bool,
    /// Drops that are longer than a roll.
    pub too_long: Vec<RollPiece>,
}

/// A roll with its drops.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct RollCut {
    /// The drops from the roll's end.
    pub drops: Vec<RollPiece>,
    /// What they take.
    pub used: Length,
    /// What is left on the roll.
    pub left: Length,
}

/// A drop on a roll.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct RollPiece {
    /// The boat that it is for.
    pub boat: String,
    /// What it is there.
    pub name: String,
    /// Its length.
    pub length: Length,
    /// Where on the roll it starts.
    pub from: Length,
    /// Where it is cut off.
    pub to: Length,
}

impl RollPiece {
    /// A drop that is not on a roll yet.
    pub fn new(boat: impl Into<String>, name: impl Into<String>, length: Length) -> RollPiece {
        RollPiece { boat: boat.into(), name: name.into(), length, from: Length::ZERO, to: length }
    }
}

/// Steps of the search, after which the best that was found stands. Larger: longer orders are proven, later.
const STEPS: u32 = 400_000;

/// Cuts drops off as few rolls as possible.
///
/// # Method
/// First fit by falling length, then branch and bound over the rolls for each drop in that order (Martello and Toth,
/// *Knapsack Problems*, Wiley 1990, chapter 8; from memory), against the bound of their L2. Exact unless the search ends at
/// its limit of steps, which some thirty drops do not reach in practice.
pub fn cut_list(mut drops: Vec<RollPiece>, roll: Length) -> CutList {
    let (fitting, too_long): (Vec<RollPiece>, Vec<RollPiece>) =
        drops.drain(..).partition(|drop| drop.length <= roll && drop.length > Length::ZERO);
    let mut order: Vec<usize> = (0..fitting.len()).collect();
    let length = |index: usize| fitting.get(index).map_or(0, |drop| drop.length.nanometres());
    order.sort_by_key(|&index| (-length(index), index));
    let lengths: Vec<i64> = order.iter().map(|&index| length(index)).collect();
    let bound = bound(&lengths, roll.nanometres());
    let mut search = Search::new(&lengths, roll.nanometres(), bound);
    search.branch(0);
    let count = search.best_count;
    let mut rolls: Vec<Vec<usize>> = vec![Vec::new(); count];
    for (index, bin) in order.iter().zip(&search.best) {
        if let Some(roll) = rolls.get_mut(*bin) {
            roll.push(*index);
        }
    }
    let rolls = rolls.into_iter().map(|mut indices| {
        // In the order in which they were given: boat by boat.
        indices.sort_unstable();
        RollCut::new(indices.into_iter().filter_map(|index| fitting.get(index).cloned()), roll)
    });
    CutList {
        rolls: rolls.collect(),
        bound: u32::try_from(bound).unwrap_or(u32::MAX),
        proven: count == bound || search.left > 0,
        too_long,
    }
}

impl RollCut {
    fn new(drops: impl Iterator<Item = RollPiece>, roll: Length) -> RollCut {
        let mut at = Length::ZERO;
        let drops: Vec<RollPiece> = drops
            .map(|drop| {
                let from = at;
                at += drop.length;
                RollPiece { from, to: at, ..drop }
            })
            .collect();
        RollCut { drops, used: at, left: roll - at }
    }
}

/// L2: for each limit, drops above half a roll less that limit are alone or with smaller ones.
fn bound(lengths: &[i64], roll: i64) -> usize {
    let rounded_up =
        |total: i128| usize::try_from((total + i128::from(roll) - 1) / i128::from(roll.max(1))).unwrap_or(0);
    let limits = std::iter::once(0).chain(lengths.iter().copied().filter(|length| *length * 2 <= roll));
    let of = |limit: i64| {
        let large = lengths.iter().filter(|length| **length > roll - limit).count();
        let middle: Vec<i64> =
            lengths.iter().copied().filter(|length| *length * 2 > roll && *length <= roll - limit).collect();
        let small: i128 = lengths
            .iter()
            .filter(|length| **length >= limit && **length * 2 <= roll)
            .map(|length| i128::from(*length))
            .sum();
        let room: i128 = middle.iter().map(|length| i128::from(roll - length)).sum();
        large + middle.len() + rounded_up((small - room).max(0))
    };
    limits.map(of).max().unwrap_or(0)
}

struct Search<'a> {
    lengths: &'a [i64],
    roll: i64,
    bound: usize,
    /// Room left on each roll that is begun.
    room: Vec<i64>,
    /// The roll of each drop so far.
    chosen: Vec<usize>,
    best: Vec<usize>,
    best_count: usize,
    left: u32,
}

impl<'a> Search<'a> {
    /// Starts from first fit.
    fn new(lengths: &'a [i64], roll: i64, bound: usize) -> Search<'a> {
        let mut room: Vec<i64> = Vec::new();
        let mut best = Vec::new();
        for length in lengths {
            let place = room.iter().position(|room| room >= length).unwrap_or_else(|| {
                room.push(roll);
                room.len() - 1
            });
            if let Some(room) = room.get_mut(place) {
                *room -= length;
            }
            best.push(place);
        }
        let best_count = room.len();
        Search { lengths, roll, bound, room: Vec::new(), chosen: Vec::new(), best, best_count, left: STEPS }
    }

    /// Places drop after drop on each roll that is begun and differs in room, then on a new one.
    fn branch(&mut self, drop: usize) {
        if self.left == 0 || self.best_count <= self.bound || self.room.len() >= self.best_count {
            return;
        }
        self.left -= 1;
        let Some(&length) = self.lengths.get(drop) else {
            (self.best, self.best_count) = (self.chosen.clone(), self.room.len());
            return;
        };
        let mut tried: Vec<i64> = Vec::new();
        for place in 0..=self.room.len() {
            let room = self.room.get(place).copied();
            let is_new = room.is_none();
            let room = room.unwrap_or(self.roll);
            if room < length || tried.contains(&room) || is_new && self.room.len() + 1 >= self.best_count {
                continue;
            }
            tried.push(room);
            if is_new {
                self.room.push(room);
            }
            self.take(place, -length);
            self.chosen.push(place);
            self.branch(drop + 1);
            self.chosen.pop();
            self.take(place, length);
            if is_new {
                self.room.pop();
            }
        }
    }

    fn take(&mut self, place: usize, change: i64) {
        if let Some(room) = self.room.get_mut(place) {
            *room += change;
        }
    }
}
