//! The best of one sheet, by the means that the copies and the saw allow.

use super::super::effort::Steps;
use super::board::{Board, Filled};
use super::climb::climb;
use super::join::{End, Ground, Search};
use super::raster::Raster;
use super::rest::Rest;
use super::stages::Staged;
use super::standing::Standing;
use super::table::{Amount, Table};
use super::tree::{Joined, Joins};
use super::weights::{Priced, Weights};

/// The best pattern at hand.
#[derive(Debug, Default)]
struct Found {
    value: i64,
    pattern: Option<(Joins, Joined)>,
}

impl Found {
    fn offer(&mut self, value: i64, joins: Joins, joined: Joined, standing: &Standing) {
        if value > self.value {
            standing.found(value);
            *self = Found { value, pattern: Some((joins, joined)) };
        }
    }
}

/// Share of the steps for whether the sheet holds everything, where its area does.
const ALL_SHARE: u64 = 2;

/// The answer to whether all parts can be cut from one sheet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(in crate::nest) enum All {
    /// They can, so.
    Fit(Filled),
    /// They cannot.
    DoNotFit,
    /// The steps did not suffice to tell.
    Unknown,
}

impl Board {
    /// The best set that the steps pay for, while someone looks on; they are counted down. A step is some four nanoseconds.
    ///
    /// `values` are worth of one copy, by kind; none is below zero, and a sheet full of the best is below 2⁶⁰.
    pub(super) fn best(&self, values: &[i64], standing: &Standing, steps: &mut Steps<'_>) -> Filled {
        let mut most = i64::MAX;
        if let Some(total) = self.total(values) {
            let mut some = steps.take(ALL_SHARE);
            let all = self.all(&mut some);
            steps.take_back(&some);
            match all {
                All::Fit(filled) => return Filled { value: total, bound: total, ..filled },
                // Something has to stay out.
                All::DoNotFit => most = total - values.iter().copied().min().unwrap_or(0),
                All::Unknown => {}
            }
            standing.bounded(most.min(total));
        }
        let filled = self.above(Wanted { values, total: None, standing }, steps);
        Filled { bound: filled.bound.min(most), ..filled }
    }

    /// Value of all copies, where their area does not show already that the sheet does not hold them.
    fn total(&self, values: &[i64]) -> Option<i64> {
        let sheet = i128::from(self.size.0) * i128::from(self.size.1);
        let area: i128 = self.kinds.iter().map(|kind| self.area(kind) * i128::from(kind.count)).sum();
        let some = self.holds_each && area <= sheet && !values.is_empty() && values.iter().all(|value| *value > 0);
        some.then(|| i64::try_from(self.all_copies(values)).ok()).flatten()
    }

    /// Whether every copy of every kind can be cut from the sheet; steps are counted down.
    ///
    /// # Method
    /// The best by area, where nothing less than all counts: a rectangle dies as soon as what is wasted in it and around
    /// it is more than the sheet has to spare. Weights may raise a value too, because every copy has to be used.
    pub(in crate::nest) fn all(&self, steps: &mut Steps<'_>) -> All {
        /// Bits that a sheet's area may have.
        const BITS: u32 = 50;
        if !self.holds_each {
            return All::DoNotFit;
        }
        let sheet = i128::from(self.size.0) * i128::from(self.size.1);
        let areas: Vec<i128> = self.kinds.iter().map(|kind| self.area(kind)).collect();
        if areas.iter().zip(&self.kinds).map(|(area, kind)| area * i128::from(kind.count)).sum::<i128>() > sheet {
            return All::DoNotFit;
        }
        // Any values above zero ask the same question; areas ask it best, and these fit the numbers of the searches.
        let shift = (i128::BITS - sheet.leading_zeros()).saturating_sub(BITS);
        let values: Vec<i64> =
            areas.iter().map(|area| i64::try_from(area >> shift).unwrap_or(i64::MAX).max(1)).collect();
        let total = values.iter().zip(&self.kinds).map(|(value, kind)| value * i64::from(kind.count)).sum();
        let wanted = Wanted { values: &values, total: Some(total), standing: &Standing::default() };
        let filled = self.above(wanted, steps);
        match filled {
            filled if filled.value == total => All::Fit(filled),
            filled if filled.bound < total => All::DoNotFit,
            _ => All::Unknown,
        }
    }

    fn above(&self, wanted: Wanted<'_>, steps: &mut Steps<'_>) -> Filled {
        /// Parts in which values are counted at most, so that weights can be fractions.
        const FINEST: i64 = 1 << 10;
        let most = self.most(wanted.values);
        let narrow = i64::from(i32::MAX) / 4;
        if most <= narrow {
            self.search::<i32>(wanted, (narrow / most).clamp(1, FINEST), steps)
        } else {
            let scale = i128::from((1_i64 << 60) / most).min((1 << 61) / self.all_copies(wanted.values).max(1));
            self.search::<i64>(wanted, i64::try_from(scale).unwrap_or(1).clamp(1, FINEST), steps)
        }
    }

    fn search<V: Amount>(&self, wanted: Wanted<'_>, scale: i64, steps: &mut Steps<'_>) -> Filled {
        /// Share of the steps for climbing, before anything is proven.
        const SHARE: u64 = 8;
        /// Decodings without anything better, for each way that a part may lie, after which a climb ends.
        const PATIENCE: u64 = 60;
        let Wanted { values, total, standing } = wanted;
        let (lengths, widths, complete) = self.points::<V>(steps.left());
        let ground =
            Searching { board: self, lengths: &lengths, widths: &widths, values, scale, total, standing, complete };
        let mut found = Found { value: 0, pattern: None };
        let mut bound = self.area_bound(values);
        standing.bounded(bound);
        let (priced, by_weights) = ground.weigh::<V>(&mut found, steps);
        bound = bound.min(by_weights);
        if ground.is_open(&found, bound) {
            let mut some = steps.take(SHARE);
            ground.climb(&mut found, bound, PATIENCE, &mut some);
            steps.take_back(&some);
        }
        if ground.is_open(&found, bound) {
            bound = bound.min(ground.join::<V>(&priced, &mut found, bound, steps));
        }
        // What was asked for cannot be had: only that is known then, and not what is best.
        let bound = if total.is_some() { bound } else { bound.max(found.value) };
        match found.pattern {
            Some((joins, joined)) => self.filled(&joins, Some(joined), values, bound),
            None => self.filled(&Joins::new(), None, values, bound),
        }
    }
}

/// What is asked of a board.
#[derive(Debug, Clone, Copy)]
struct Wanted<'a> {
    values: &'a [i64],
    /// Only this value is of interest, that of all parts together.
    total: Option<i64>,
    standing: &'a Standing,
}

/// What does not change while one sheet is being filled.
#[derive(Debug, Clone, Copy)]
struct Searching<'a> {
    board: &'a Board,
    lengths: &'a Raster,
    widths: &'a Raster,
    values: &'a [i64],
    scale: i64,
    /// Only this value is of interest, that of all parts together.
    total: Option<i64>,
    standing: &'a Standing,
    /// True where the points are all that matter: then what is not found does not exist.
    complete: bool,
}

impl Searching<'_> {
    /// The value that is to be exceeded.
    fn known(&self, found: &Found) -> i64 {
        self.total.map_or(found.value, |total| found.value.max(total - 1))
    }

    fn is_open(&self, found: &Found, bound: i64) -> bool {
        self.known(found) < bound
    }

    /// Offers what climbing finds.
    fn climb(&self, found: &mut Found, bound: i64, patience: u64, steps: &mut Steps<'_>) {
        let (value, joins, joined) = climb(self.board, self.values, bound, patience, steps);
        if let Some(joined) = joined.filter(|&joined| self.board.can_saw(&joins, joined)) {
            found.offer(value, joins, joined, self.standing);
        }
    }

    /// The best of the sheet with copies without limit, as the saw can make it: reduced value, and how it is joined.
    /// None where the watcher says stop.
    fn relaxed<V: Amount>(&self, priced: &Priced, steps: &mut Steps<'_>) -> Option<(i64, Joins, Option<Joined>)> {
        /// Turns beyond which values hardly grow: without a limit, so many are looked at and the bound is taken elsewhere.
        const MANY: u8 = 6;
        let limits = self.board.limits;
        let (items, mut joins) = (priced.items(self.board), Joins::new());
        if limits.is_none() {
            let table = self.table::<V>(priced, steps)?;
            let pattern = table.pattern(&items, &mut joins);
            return Some((table.whole(), joins, pattern));
        }
        let rasters = (self.lengths, self.widths);
        let stages = limits.stages.unwrap_or(MANY);
        let table: Staged<'_, V> = Staged::new(rasters, &items, stages, limits.first, steps)?;
        let pattern = table.pattern(&items, &mut joins);
        if limits.stages.is_some() {
            return Some((table.whole(), joins, pattern));
        }
        Some((self.table::<V>(priced, steps)?.whole(), joins, pattern))
    }

    fn table<V: Amount>(&self, priced: &Priced, steps: &mut Steps<'_>) -> Option<Table<'_, V>> {
        Table::new(self.lengths, self.widths, &priced.items(self.board), steps)
    }

    /// The weights of the lowest bound, and that bound where points are complete. Patterns met on the way are offered.
    fn weigh<V: Amount>(&self, found: &mut Found, steps: &mut Steps<'_>) -> (Priced, i64) {
        /// Rounds of improvement at most.
        const ROUNDS: usize = 120;
        /// Scaled values of all copies at most.
        const MOST: i128 = 1 << 61;
        /// Rounds together take so small a share of half the steps; the first may take all of that half.
        const SHARE: u64 = 3;
        // Weights on so much would not fit the numbers: then the plain values have to do.
        let copies = self.board.all_copies(self.values) * i128::from(self.scale);
        let rounds = if copies > MOST { 1 } else { ROUNDS };
        let mut some = steps.take(2);
        let before = steps.left();
        let mut weights = Weights::new(self.board.kinds.len(), self.total.is_some());
        let mut lowest: Option<(i64, Priced)> = None;
        for _ in 0..rounds {
            let priced = weights.priced(self.board, self.values, self.scale);
            let Some((reduced, joins, pattern)) = self.relaxed::<V>(&priced, &mut some) else { break };
            let sum = reduced.saturating_add(priced.constant);
            let taken = self.try_pattern(&joins, pattern, found);
            if lowest.as_ref().is_none_or(|lowest| sum < lowest.0) {
                lowest = Some((sum, priced));
            }
            let least = lowest.as_ref().map_or(i64::MAX, |lowest| lowest.0 / self.scale);
            if self.complete {
                self.standing.bounded(least);
            }
            let go_on = weights.improve(self.board, &taken, sum as f64 / self.scale as f64, self.known(found));
            if !self.is_open(found, least) || !go_on || before - some.left().min(before) > before / SHARE {
                break;
            }
        }
        steps.take_back(&some);
        let (sum, priced) = lowest.unwrap_or_else(|| (i64::MAX, Priced::plain(self.values, self.scale)));
        (priced, if self.complete { sum / self.scale } else { i64::MAX })
    }

    /// Offers a best pattern without the copies that are too many; what it takes with them.
    fn try_pattern(&self, joins: &Joins, pattern: Option<Joined>, found: &mut Found) -> Vec<u32> {
        let mut taken = vec![0; self.board.kinds.len()];
        let Some(whole) = pattern else { return taken };
        for class in joins.parts(whole) {
            if let Some(taken) = taken.get_mut(class as usize) {
                *taken += 1;
            }
        }
        let count = |class: u32| self.board.kinds.get(class as usize).map_or(0, |kind| kind.count);
        let mut pruned = Joins::new();
        if let Some(kept) = joins.pruned(whole, count, &mut pruned)
            && self.board.can_saw(&pruned, kept)
        {
            let value = |class: u32| self.values.get(class as usize).copied().unwrap_or(0);
            let sum = pruned.parts(kept).into_iter().map(value).sum();
            found.offer(sum, pruned, kept, self.standing);
        }
        taken
    }

    /// Joins rectangles, with a wider beam each time, until nothing was left out; the bound.
    fn join<V: Amount>(&self, priced: &Priced, found: &mut Found, bound: i64, steps: &mut Steps<'_>) -> i64 {
        /// Rectangles for each room that a pass may make, and for how many eighths the rest of the sheet counts in the order.
        const BEAMS: [(usize, u8); 5] = [(1, 2), (1, 5), (4, 6), (24, 7), (usize::MAX, 8)];
        /// Share of the steps that one pass with a beam may take.
        const SHARE: u64 = 8;
        /// Where nothing can be proven, the climb may go on for longer.
        const PATIENCE: u64 = 4000;
        if Rest::<V>::cost(self.lengths, self.widths) > steps.left() {
            self.climb(found, bound, PATIENCE, steps);
            return bound;
        }
        let Some(table) = self.table::<V>(priced, steps) else { return bound };
        let Some(rest) = Rest::new(&table, self.lengths, self.widths, steps) else { return bound };
        let ground = Ground {
            board: self.board,
            lengths: self.lengths,
            widths: self.widths,
            values: self.values,
            priced,
            rest: &rest,
            standing: self.standing,
        };
        for beam in BEAMS {
            let all = beam.0 == usize::MAX;
            let mut some = steps.take(if all { 1 } else { SHARE });
            let mut search = Search::new(ground, self.known(found), beam);
            let end = search.run(&mut some);
            steps.take_back(&some);
            let (joins, best) = search.found();
            if let Some((value, joined)) = best {
                found.offer(value, joins, joined, self.standing);
            }
            match end {
                End::Done if self.complete => return self.known(found),
                End::Spent(bound) if self.complete && all => return bound,
                End::Done | End::Narrow | End::Spent(_) => {}
            }
        }
        bound
    }
}
