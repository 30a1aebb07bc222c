//! The patterns of one sheet that are worth most, and what none exceeds.
//!
//! # Method
//! Depth-first branch and bound over sets of parts, dearest first (Land and Doig 1960). A set is dropped when it cannot
//! be sawn ([`fronts`](super::fronts)), or when no parts that may still join it make it worth more than the threshold:
//! by fractional knapsacks (Dantzig 1957) in area and in the values of parts under dual-feasible functions
//! ([`dual`](super::dual)), of which a sheet holds no more than it gives.

use super::super::build::Node;
use super::super::effort::Steps;
use super::super::problem::Size;
use super::fronts::Fronts;
use super::joins::Joins;
use super::suffix::{Load, Suffixes};

/// Parts of one class as they may lie on the sheet at hand, and what one is worth.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Ware {
    pub(super) class: u32,
    /// Its place in the list of the sheet.
    pub(super) place: u16,
    pub(super) lies: [Option<Size>; 2],
    pub(super) count: u32,
    /// Area and other measures that add up to no more than the sheet's. Below 2^31.
    pub(super) measures: Vec<i64>,
    /// Above zero; a sheet full of the best stays below 2^62.
    pub(super) value: i64,
}

/// One way to use a sheet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Found {
    pub(super) value: i64,
    /// Class and copies, each class once.
    pub(super) parts: Vec<(u32, u32)>,
    pub(super) nodes: Vec<Node>,
}

/// What one sheet may be worth.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Priced {
    /// Patterns worth more than the threshold, best first.
    pub(super) found: Vec<Found>,
    /// No pattern is worth more.
    pub(super) bound: i64,
}

/// Patterns that are kept: with more, the linear programme grows faster than it learns.
const KEPT: usize = 80;
/// Finds with the same dearest part after which the next part is tried: what follows is much the same pattern.
const ENOUGH: usize = 3;
/// Rectangles of a set that is always tried with the saw: each one more takes three times as long. Larger sets are tried
/// only where they would be worth more than the threshold.
const SAWN: usize = 7;
/// Larger sets than this are not tried at all.
const DEEPEST: usize = 11;
/// Steps that it takes to look up what is known of a set.
const LOOKED_UP: u64 = 8;

/// Looks for patterns worth more than the threshold until the steps are spent.
pub(super) fn price(
    sheet: Size,
    room: &[i64],
    wares: &[Ware],
    joins: &mut Joins,
    threshold: i64,
    steps: &mut Steps<'_>,
) -> Priced {
    let mut wares: Vec<&Ware> = wares.iter().filter(|ware| ware.value > 0).collect();
    wares.sort_by(|one, other| other.value.cmp(&one.value).then(one.class.cmp(&other.class)));
    let orders = (0..room.len()).map(|measure| by_worth(&wares, measure)).collect();
    let left: Vec<u32> = wares.iter().map(|ware| ware.count).collect();
    let load = |measure: usize| {
        let size = move |ware: &&Ware| ware.measures.get(measure).copied().unwrap_or(0);
        move |ware: &&Ware| Load { size: size(ware), value: ware.value, count: ware.count }
    };
    let tables =
        room.iter().enumerate().map(|(measure, &whole)| Suffixes::new(wares.iter().map(load(measure)), whole, steps));
    let tables: Vec<Suffixes> = tables.map_while(|table| table).collect();
    let mut search = Search {
        joins,
        wares,
        orders,
        tables,
        fronts: Fronts::new(sheet),
        chosen: Vec::new(),
        threshold,
        bound: threshold,
        found: Vec::new(),
        hits: 0,
        steps,
    };
    let most = search.most(0, &left, room, 0);
    if most > threshold {
        search.branch(0, left, room, 0, most);
    }
    let mut found = search.found;
    found.sort_by(|one, other| other.value.cmp(&one.value).then_with(|| one.parts.cmp(&other.parts)));
    let bound = found.first().map_or(search.bound, |best| best.value.max(search.bound));
    Priced { found, bound }
}

/// The wares by value for that measure, the best first.
fn by_worth(wares: &[&Ware], measure: usize) -> Vec<usize> {
    let ratio = |index: usize| {
        let ware = wares.get(index);
        let size = ware.and_then(|ware| ware.measures.get(measure)).copied().unwrap_or(0);
        (i128::from(ware.map_or(0, |ware| ware.value)), i128::from(size))
    };
    let mut order: Vec<usize> = (0..wares.len()).collect();
    order.sort_by(|&one, &other| {
        let (one, other) = (ratio(one), ratio(other));
        // What takes no room comes first: its ratio is beyond all others.
        (other.0 * one.1).cmp(&(one.0 * other.1))
    });
    order
}

struct Search<'w, 's, 't> {
    joins: &'s mut Joins,
    wares: Vec<&'w Ware>,
    /// By measure, the wares in order of worth for it.
    orders: Vec<Vec<usize>>,
    /// By measure, what the last of the wares are worth; fewer where the steps did not last.
    tables: Vec<Suffixes>,
    fronts: Fronts,
    chosen: Vec<usize>,
    threshold: i64,
    /// The most that anything passed over without a proof may be worth.
    bound: i64,
    found: Vec<Found>,
    /// Finds with the dearest part of the chosen.
    hits: usize,
    steps: &'s mut Steps<'t>,
}

impl Search<'_, '_, '_> {
    /// Everything that holds the chosen parts and more of what is left from that ware on; `room` is what they leave of
    /// each measure, and `most` what all may be worth. True where something was found.
    fn branch(&mut self, from: usize, mut left: Vec<u32>, room: &[i64], value: i64, most: i64) -> bool {
        if self.is_over() || self.chosen.len() >= DEEPEST {
            self.bound = self.bound.max(most);
            return value > self.threshold && self.catch_up() && self.record(value);
        }
        if value > self.threshold && !self.catch_up() {
            self.pass_over(most);
            return false;
        }
        self.drop_what_lacks_room(from, &mut left, room, value);
        self.drop_what_cannot_join(from, &mut left);
        let mut any = false;
        for at in from..left.len() {
            if left.get(at).is_none_or(|&copies| copies == 0) {
                continue;
            }
            if self.whole_wares(at, room, None, value) <= self.threshold {
                break;
            }
            if self.is_over() {
                let most = self.most(at, &left, room, value);
                self.bound = self.bound.max(most);
                break;
            }
            any |= self.follow(at, &left, room, value);
            if self.chosen.is_empty() {
                self.hits = 0;
            }
            if let Some(copies) = left.get_mut(at) {
                *copies = 0;
            }
        }
        any || value > self.threshold && self.catch_up() && self.record(value)
    }

    /// What was broken off is not known not to be there.
    fn pass_over(&mut self, most: i64) {
        if self.steps.spent_all() {
            self.bound = self.bound.max(most);
        }
    }

    /// Tries with the saw what has been chosen without it. False where it cannot be sawn.
    fn catch_up(&mut self) -> bool {
        while let Some(&ware) = self.chosen.get(self.fronts.depth()).and_then(|&at| self.wares.get(at)) {
            if !self.fronts.push(ware.lies, self.steps) {
                return false;
            }
        }
        true
    }

    fn is_over(&self) -> bool {
        self.steps.spent_all() || self.hits >= ENOUGH
    }

    /// With one more of that ware.
    fn follow(&mut self, at: usize, left: &[u32], room: &[i64], value: i64) -> bool {
        let Some(&ware) = self.wares.get(at) else { return false };
        if self.whole_wares(at, room, Some(ware), value) <= self.threshold {
            return false;
        }
        let mut fewer = left.to_vec();
        if let Some(copies) = fewer.get_mut(at) {
            *copies -= 1;
        }
        let less: Vec<i64> = room.iter().zip(&ware.measures).map(|(room, measure)| room - measure).collect();
        let most = self.most(at, &fewer, &less, value + ware.value);
        if most <= self.threshold {
            return false;
        }
        self.chosen.push(at);
        let sawn = self.chosen.len() > SAWN || self.catch_up();
        if !sawn {
            self.pass_over(most);
        }
        let any = sawn && self.branch(at, fewer, &less, value + ware.value, most);
        self.chosen.pop();
        while self.fronts.depth() > self.chosen.len() {
            self.fronts.pop();
        }
        any
    }

    /// What has no room, and what does not make the chosen worth more than the threshold whatever else joins them.
    fn drop_what_lacks_room(&mut self, from: usize, left: &mut [u32], room: &[i64], value: i64) {
        for (at, copies) in left.iter_mut().enumerate().skip(from) {
            let Some(&ware) = self.wares.get(at).filter(|_| *copies > 0) else { continue };
            let lacks = ware.measures.iter().zip(room).any(|(measure, room)| measure > room);
            if lacks || self.whole_wares(from, room, Some(ware), value) <= self.threshold {
                *copies = 0;
            }
        }
    }

    /// What cannot be sawn together with the chosen; larger sets than those that are remembered are left as they are.
    fn drop_what_cannot_join(&mut self, from: usize, left: &mut [u32]) {
        let set: Vec<u16> = self.chosen.iter().filter_map(|&at| self.wares.get(at)).map(|ware| ware.place).collect();
        let Some(mut known) = self.joins.of(&set) else { return };
        self.steps.spend(LOOKED_UP * (1 + set.len() as u64));
        for (copies, &ware) in left.iter_mut().zip(&self.wares).skip(from) {
            if self.steps.spent_all() {
                break;
            }
            if *copies == 0 {
                continue;
            }
            let fits = known.says(ware.place).unwrap_or_else(|| {
                let fits = self.fronts.holds(ware.lies, self.steps);
                known.note(ware.place, fits);
                fits
            });
            if !fits {
                *copies = 0;
            }
        }
        self.joins.keep(&set, known);
    }

    /// What the chosen and the best of what is left are worth together, at most.
    fn most(&mut self, from: usize, left: &[u32], room: &[i64], value: i64) -> i64 {
        let mut least = self.whole_wares(from, room, None, value);
        if least <= self.threshold {
            return least;
        }
        for (measure, (order, &room)) in self.orders.iter().zip(room).enumerate() {
            self.steps.spend(1 + order.len() as u64 / 4);
            least = least.min(fractional(&self.wares, order, left, measure, room).saturating_add(value));
            if least <= self.threshold {
                break;
            }
        }
        least
    }

    /// The same by whole wares from that one on, whether or not they are left, with one that is sure to be among them.
    fn whole_wares(&mut self, from: usize, room: &[i64], with: Option<&Ware>, value: i64) -> i64 {
        self.steps.spend(1);
        let taken = |measure: usize| with.and_then(|ware| ware.measures.get(measure)).copied().unwrap_or(0);
        let tables = self.tables.iter().zip(room).enumerate();
        let worth = tables.map(|(measure, (table, &room))| table.most(from, room - taken(measure))).min();
        let own = with.map_or(0, |ware| ware.value);
        worth.map_or(i64::MAX, |worth| worth.saturating_add(own).saturating_add(value))
    }

    /// Keeps the chosen set where it is worth more than the threshold.
    fn record(&mut self, value: i64) -> bool {
        if value <= self.threshold {
            return false;
        }
        self.hits += 1;
        if self.found.len() >= KEPT {
            let least = (0..self.found.len()).min_by_key(|&at| self.found.get(at).map(|found| found.value));
            match least.and_then(|at| self.found.get(at).map(|found| (at, found.value))) {
                Some((at, worth)) if worth < value => {
                    self.found.swap_remove(at);
                }
                _ => return true,
            }
        }
        let classes: Vec<u32> =
            self.chosen.iter().filter_map(|&at| self.wares.get(at)).map(|ware| ware.class).collect();
        let nodes = self.fronts.nodes(&classes);
        self.found.push(Found { value, parts: counted(classes), nodes });
        true
    }
}

/// Classes with copies, each once.
pub(super) fn counted(mut classes: Vec<u32>) -> Vec<(u32, u32)> {
    classes.sort_unstable();
    let mut counted: Vec<(u32, u32)> = Vec::new();
    for class in classes {
        match counted.last_mut() {
            Some((last, copies)) if *last == class => *copies += 1,
            _ => counted.push((class, 1)),
        }
    }
    counted
}

/// The most worth of what is left in that room, the last one in part.
fn fractional(wares: &[&Ware], order: &[usize], left: &[u32], measure: usize, room: i64) -> i64 {
    let (mut room, mut sum) = (room.max(0), 0_i64);
    for &at in order {
        let copies = left.get(at).copied().unwrap_or(0);
        if copies == 0 {
            continue;
        }
        let Some(ware) = wares.get(at) else { continue };
        let size = ware.measures.get(measure).copied().unwrap_or(0);
        let all = size.saturating_mul(i64::from(copies));
        if all <= room {
            room -= all;
            sum = sum.saturating_add(ware.value.saturating_mul(i64::from(copies)));
        } else {
            let share = i128::from(ware.value) * i128::from(room) / i128::from(size);
            return sum.saturating_add(i64::try_from(share).unwrap_or(i64::MAX));
        }
    }
    sum
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ware(class: u32, size: Size, count: u32, value: i64) -> Ware {
        Ware {
            class,
            place: u16::try_from(class).unwrap(),
            lies: [Some(size), None],
            count,
            measures: vec![size.0 * size.1],
            value,
        }
    }

    #[test]
    fn the_best_of_a_small_sheet() {
        // The pinwheel's four would be worth eight, but cannot be sawn: three of them and the small one are.
        let wares = [ware(0, (3, 2), 2, 20), ware(1, (2, 3), 2, 20), ware(2, (2, 2), 1, 9)];
        let priced = price((5, 5), &[25], &wares, &mut Joins::default(), 0, &mut Steps::new(1_000_000, u64::MAX));
        assert_eq!((priced.bound, priced.found[0].value), (69, 69));
        // Nothing exceeds a higher threshold; what lies below it is not proven.
        let priced = price((5, 5), &[25], &wares, &mut Joins::default(), 70, &mut Steps::new(1_000_000, u64::MAX));
        assert_eq!((priced.bound, priced.found.len()), (70, 0));
    }

    #[test]
    fn a_search_broken_off_still_bounds() {
        let wares = [ware(0, (3, 2), 2, 20), ware(1, (2, 3), 2, 20), ware(2, (2, 2), 1, 9)];
        let priced = price((5, 5), &[25], &wares, &mut Joins::default(), 0, &mut Steps::new(3, u64::MAX));
        assert!(priced.bound >= 69);
    }
}
