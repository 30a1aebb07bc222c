//! The sheets there are, what is on them and what is out.

use super::super::build::{Solution, cost};
use super::super::effort::Steps;
use super::super::problem::Problem;
use super::super::random::SplitMix;
use super::Crowded;
use super::convert::{to_pattern, to_slicing};
use super::place::{Fit, Place, Room, best_place};
use super::slicing::Slicing;

/// Sheets taken apart at once, at most. With more, the parts are packed no better than they were.
const MOST_APART: usize = 3;
/// Parts taken out at once, about: a sheet of hundreds is taken apart bit by bit.
const MOST_OUT: usize = 64;
/// Levels that a group taken out is above one of its parts, at most.
const MOST_LEVELS: usize = 3;
/// Places in the order of size that a part may change with those behind it.
const REACH: usize = 2;
/// One place in so many is overlooked, so that the same parts are not packed the same way again.
const OVERLOOKED: usize = 50;
/// How much worse an answer may become in a step, as a share of a sheet: at first, and in the end.
const YIELDING: (f64, f64) = (0.005, 0.001);
/// What the unevenness of sheets counts beside what is out.
const UNEVEN: f64 = 0.02;
/// Rounds after which a part that is out weighs more, and how much more: what is out for long gets the best places.
const ROUNDS_OUT: u64 = 1000;
const WEIGHT_OUT: f64 = 0.05;
/// Steps that a round costs beside the search for places.
const ROUND: u64 = 16;

pub(super) struct State<'p> {
    problem: &'p Problem,
    rooms: Vec<Room>,
    /// Grown areas, as shares of the largest sheet.
    room_areas: Vec<f64>,
    areas: Vec<f64>,
    sheets: Vec<Slicing>,
    /// The sheet that was taken away.
    gone: Slicing,
    /// Parts that have no place, by class, each copy.
    out: Vec<u32>,
    /// What area counts while it is out, by class.
    weights: Vec<f64>,
    rounds: u64,
    /// Copies that no answer places.
    left: Vec<u32>,
    random: SplitMix,
}

impl<'p> State<'p> {
    /// An answer without the thinnest of the sheets that cost something; none where no sheet is left then.
    pub(super) fn without_a_sheet(problem: &'p Problem, solution: &Solution) -> Option<State<'p>> {
        let room = |size| Room { size, stages: problem.stages, first: problem.first };
        let rooms: Vec<Room> = problem.racks.iter().map(|rack| room(rack.size)).collect();
        let area = |size: (i64, i64)| size.0 as f64 * size.1 as f64;
        let largest = rooms.iter().map(|room| area(room.size)).fold(1.0, f64::max);
        let areas: Vec<f64> = problem.classes.iter().map(|class| area(class.size) / largest).collect();
        let mut state = State {
            problem,
            room_areas: rooms.iter().map(|room| area(room.size) / largest).collect(),
            rooms,
            weights: vec![1.0; areas.len()],
            rounds: 0,
            areas,
            sheets: Vec::new(),
            gone: Slicing::new(0),
            out: Vec::new(),
            left: solution.left.clone(),
            random: SplitMix::new(),
        };
        for (pattern, times) in &solution.runs {
            let mut sheet = to_slicing(pattern, state.rooms.get(pattern.rack)?.size);
            sheet.filled = sheet.classes().map(|class| state.area(class)).sum();
            state.sheets.extend(std::iter::repeat_n(sheet, *times as usize));
        }
        let bought = (0..).zip(&state.sheets).filter(|(_, sheet)| cost(problem, sheet.rack) > 0);
        let (thinnest, _) = bought.min_by(|one, other| one.1.filled.total_cmp(&other.1.filled))?;
        state.gone = state.sheets.swap_remove(thinnest);
        state.out.extend(state.gone.classes());
        (!state.sheets.is_empty()).then_some(state)
    }

    /// Packs until nothing is out; the answer, or none where the steps are spent first.
    pub(super) fn search(&mut self, steps: &mut Steps<'_>) -> Option<Solution> {
        let budget = steps.left().max(1) as f64;
        let all = self.all();
        while !self.out.is_empty() || !self.may_start(&all) {
            if steps.spent_all() {
                return None;
            }
            let left = steps.left() as f64 / budget;
            self.round(YIELDING.1 + (YIELDING.0 - YIELDING.1) * left * left, steps);
        }
        Some(self.solution())
    }

    fn all(&self) -> Vec<usize> {
        (0..self.sheets.len()).collect()
    }

    /// Puts what is out where there is room for it; the sheets are then as they were. None where there is room for
    /// nothing, or where a sheet that came with the answer would begin in a direction that is not allowed, once its waste
    /// is laid together.
    pub(super) fn crowded(&mut self, steps: &mut Steps<'_>) -> Option<Crowded> {
        let all = self.all();
        if !self.may_start(&all) {
            return None;
        }
        let (sheets, out) = (self.sheets.clone(), self.out.clone());
        let pool = std::mem::take(&mut self.out);
        let pool = self.order(pool);
        steps.spend(self.pack(&all, &pool) + ROUND);
        let solution = self.solution();
        self.sheets = sheets;
        let mut still = std::mem::replace(&mut self.out, out);
        if still.len() == self.out.len() {
            return None;
        }
        still.sort_unstable();
        let counted = |same: &[u32]| Some((*same.first()?, u32::try_from(same.len()).ok()?));
        let out: Vec<(u32, u32)> = still.chunk_by(|one, other| one == other).filter_map(counted).collect();
        let mut same = self.gone.clone();
        same.take_out(|class| still.binary_search(&class).map(|at| still.remove(at)).is_err(), |_| {});
        let first = self.problem.first;
        let may_start = first.is_none_or(|first| same.first_line().is_none_or(|line| line == first));
        let room = self.rooms.get(same.rack).filter(|_| may_start && !out.is_empty());
        let same = room.map(|&room| to_pattern(self.problem, &same, room));
        Some(Crowded { solution, rack: self.gone.rack, out, same })
    }

    fn solution(&self) -> Solution {
        let used = self.sheets.iter().filter(|sheet| !sheet.is_empty());
        let runs: Vec<_> =
            used.filter_map(|sheet| Some((to_pattern(self.problem, sheet, *self.rooms.get(sheet.rack)?), 1))).collect();
        let cost = runs.iter().map(|(pattern, _)| cost(self.problem, pattern.rack)).sum();
        Solution { runs, left: self.left.clone(), cost }
    }

    fn area(&self, class: u32) -> f64 {
        self.areas.get(class as usize).copied().unwrap_or(0.0)
    }

    /// Takes a few sheets apart, packs them again, and goes back where that has made things worse than allowed.
    fn round(&mut self, yielding: f64, steps: &mut Steps<'_>) {
        self.rounds += 1;
        if self.rounds.is_multiple_of(ROUNDS_OUT) {
            for &class in &self.out {
                if let Some(weight) = self.weights.get_mut(class as usize) {
                    *weight += WEIGHT_OUT;
                }
            }
        }
        let chosen = self.choose();
        let before = self.worth(&chosen);
        let saved: Vec<Slicing> = chosen.iter().filter_map(|&at| self.sheets.get(at).cloned()).collect();
        let saved_out = self.out.clone();
        let pool = self.take_apart(&chosen);
        let pool = self.order(pool);
        steps.spend(self.pack(&chosen, &pool) + ROUND);
        // The sum of a whole and a broken random number falls off like an exponential one, and is the same everywhere.
        let luck = f64::from(self.random.zeros()) + self.random.share();
        let good_enough = self.out.is_empty() || self.worth(&chosen) <= before + yielding * luck;
        if good_enough && self.may_start(&chosen) {
            return;
        }
        for (&at, old) in chosen.iter().zip(saved) {
            if let Some(sheet) = self.sheets.get_mut(at) {
                *sheet = old;
            }
        }
        self.out = saved_out;
    }

    /// True where the first saw line of every chosen sheet runs as the saw wants it. What is set into its place keeps to
    /// that; what is left when parts are taken out may not.
    fn may_start(&self, chosen: &[usize]) -> bool {
        let first = self.problem.first;
        let lines = chosen.iter().filter_map(|&at| self.sheets.get(at)?.first_line());
        first.is_none_or(|first| lines.into_iter().all(|line| line == first))
    }

    fn choose(&mut self) -> Vec<usize> {
        let count = (1 + self.random.below(MOST_APART)).min(self.sheets.len());
        let mut chosen = Vec::with_capacity(count);
        while chosen.len() < count {
            let at = self.any_sheet();
            if !chosen.contains(&at) {
                chosen.push(at);
            }
        }
        chosen
    }

    /// Any sheet; of two every other time, and then the emptier one.
    fn any_sheet(&mut self) -> usize {
        let one = self.random.below(self.sheets.len());
        if self.random.below(2) == 0 {
            return one;
        }
        let other = self.random.below(self.sheets.len());
        let free = |at: usize| self.sheets.get(at).map_or(0.0, |sheet| self.free(sheet));
        if free(other) > free(one) { other } else { one }
    }

    /// What is out, less a little for unevenness among the chosen sheets: the less, the better.
    fn worth(&self, chosen: &[usize]) -> f64 {
        let weight = |class: u32| self.weights.get(class as usize).copied().unwrap_or(1.0);
        let out: f64 = self.out.iter().map(|&class| self.area(class) * weight(class)).sum();
        let uneven: f64 =
            chosen.iter().filter_map(|&at| self.sheets.get(at)).map(|sheet| self.free(sheet) * self.free(sheet)).sum();
        out - UNEVEN * uneven
    }

    fn free(&self, sheet: &Slicing) -> f64 {
        self.room_areas.get(sheet.rack).copied().unwrap_or(0.0) - sheet.filled
    }

    /// Empties the chosen sheets, or takes about half of the parts off them, or a group of parts off each; with what was
    /// out before. Groups gain most: parts that lie together leave one large gap.
    fn take_apart(&mut self, chosen: &[usize]) -> Vec<u32> {
        let mut pool = std::mem::take(&mut self.out);
        let way = self.random.below(5);
        let (areas, random) = (&self.areas, &mut self.random);
        for &at in chosen {
            let Some(sheet) = self.sheets.get_mut(at) else { continue };
            let mut gone = 0.0;
            let taken = |class: u32| {
                pool.push(class);
                gone += areas.get(class as usize).copied().unwrap_or(0.0);
            };
            let one_in = (sheet.knots() / MOST_OUT).max(if way == 0 { 1 } else { 2 });
            match way {
                0 | 1 => sheet.take_out(|_| random.below(one_in) == 0, taken),
                _ => sheet.take_group(random.below(sheet.count()), 1 + random.below(MOST_LEVELS), taken),
            }
            // Where all is taken off, the sum is nothing and not what rounding leaves of it.
            sheet.filled = if sheet.is_empty() { 0.0 } else { sheet.filled - gone };
        }
        pool
    }

    /// The parts by falling size in one of several senses, a little disturbed.
    fn order(&mut self, mut pool: Vec<u32>) -> Vec<u32> {
        let sense = self.random.below(6);
        let key = |class: &u32| {
            let size = self.problem.classes.get(*class as usize).map_or((0, 0), |class| class.size);
            let (length, width) = (i128::from(size.0), i128::from(size.1));
            let measure = match sense {
                0 | 1 => length * width,
                2 => length.max(width),
                3 => length.min(width),
                4 => length,
                _ => width,
            };
            (std::cmp::Reverse(measure), *class)
        };
        pool.sort_by_cached_key(key);
        for at in 0..pool.len() {
            let other = (at + self.random.below(REACH)).min(pool.len() - 1);
            pool.swap(at, other);
        }
        pool
    }

    /// Packs the parts onto the chosen sheets; what finds no place is out. The number of groups looked at.
    fn pack(&mut self, chosen: &[usize], pool: &[u32]) -> u64 {
        let fit = match self.random.below(3) {
            0 => Fit::Side,
            1 => Fit::Piece,
            _ => Fit::Group,
        };
        let first_that_holds = self.random.below(2) == 0;
        let mut looked = 0;
        for &class in pool {
            match self.place(chosen, class, fit, first_that_holds, &mut looked) {
                Some((at, (_, spot))) => {
                    let area = self.area(class);
                    if let Some(sheet) = self.sheets.get_mut(at) {
                        sheet.put(spot, class);
                        sheet.filled += area;
                    }
                }
                None => self.out.push(class),
            }
        }
        looked
    }

    fn place(
        &mut self,
        chosen: &[usize],
        class: u32,
        fit: Fit,
        first_that_holds: bool,
        looked: &mut u64,
    ) -> Option<(usize, Place)> {
        /// What rounding may make of a part that fills a gap exactly.
        const ROUNDING: f64 = 1e-9;
        let kind = self.problem.classes.get(class as usize)?;
        let mut best: Option<(usize, Place)> = None;
        for &at in chosen {
            let Some(sheet) = self.sheets.get(at) else { continue };
            if self.free(sheet) < self.area(class) - ROUNDING {
                continue;
            }
            let (Some(rack), Some(&room)) = (self.problem.racks.get(sheet.rack), self.rooms.get(sheet.rack)) else {
                continue;
            };
            *looked += sheet.knots() as u64 * 2 + 1;
            let limit = best.map_or(f64::INFINITY, |(_, (waste, _))| waste);
            let Some(place) = best_place(sheet, room, kind.lies(rack), fit, limit) else { continue };
            if best.is_none() && self.random.below(OVERLOOKED) == 0 {
                continue;
            }
            best = Some((at, place));
            if first_that_holds {
                break;
            }
        }
        best
    }
}
