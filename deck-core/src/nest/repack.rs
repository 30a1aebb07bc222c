//! Takes a few sheets apart and packs their parts again, over and over.
//!
//! # Method
//! Ruin and recreate (Schrimpf, Schneider, Stamm-Wilbrandt and Dueck, Journal of Computational Physics 159, 2000): a
//! thinly filled sheet and some others are emptied, and their parts packed in a disturbed order. The new sheets stay
//! where they are no dearer and at most a little less uneven: full sheets beside empty ones are on the way to one
//! sheet less.

use super::bound::Bound;
use super::build::{Choice, Pattern, Rule, Run, Solution, Way, cost, pack_some};
use super::choose::{Best, unplaced_area};
use super::effort::Steps;
use super::problem::Problem;
use super::random::SplitMix;
use super::search::disturb;

/// Sheets taken apart at once, at most. With more, the parts are packed no better than they were at first.
const MOST_APART: usize = 4;
/// Sheets among which the thinnest is taken first. More would take the same one again and again.
const TRIED: usize = 3;
/// Steps that a round costs beside those of filling sheets.
const ROUND: u64 = 64;
/// Counts of what is left that are looked through in the time of a step.
const COUNTS: u64 = 16;
/// How much unevenness may be lost in a step, as a fraction: enough to leave a dead end, little enough to keep course.
const YIELDING: i128 = 64;

/// Repacks the best answer until the steps are spent or nothing better can exist.
pub(super) fn repack(problem: &Problem, best: &mut Best<'_>, steps: &mut Steps, bound: &Bound) {
    let Some(solution) = best.solution() else { return };
    let mut state = State::new(problem, solution);
    let mut random = SplitMix::new();
    let rules: Vec<Rule> = Rule::all().collect();
    while state.sheets.len() > 1 && !steps.spent_all() {
        if best.value().is_some_and(|(unplaced, cost)| bound.met_by(unplaced, cost)) {
            return;
        }
        let Some(&rule) = rules.get(random.below(rules.len())) else { return };
        if state.step(rule, &mut random, steps) && best.offer(state.solution()) {
            steps.found_better();
        }
        steps.spend(ROUND + problem.classes.len() as u64 / COUNTS);
    }
}

/// An answer sheet by sheet.
struct State<'p> {
    problem: &'p Problem,
    sheets: Vec<Pattern>,
    left: Vec<u32>,
    stock: Vec<u32>,
}

/// What a set of sheets is worth: unplaced area beside them, cost, and unevenness.
type Worth = (i128, i128, i128);

impl<'p> State<'p> {
    fn new(problem: &'p Problem, solution: &Solution) -> State<'p> {
        let mut stock: Vec<u32> = problem.racks.iter().map(|rack| rack.count).collect();
        let mut sheets = Vec::new();
        for (pattern, times) in &solution.runs {
            change(&mut stock, pattern.rack, |count| count.saturating_sub(*times));
            sheets.extend(std::iter::repeat_n(pattern, *times as usize).cloned());
        }
        State { problem, sheets, left: solution.left.clone(), stock }
    }

    fn solution(&self) -> Solution {
        Solution {
            runs: self.sheets.iter().map(|sheet| (sheet.clone(), 1)).collect(),
            left: self.left.clone(),
            cost: self.sheets.iter().map(|sheet| cost(self.problem, sheet.rack)).sum(),
        }
    }

    /// Takes sheets apart and packs them again. True where unplaced area or cost has become less.
    fn step(&mut self, rule: Rule, random: &mut SplitMix, steps: &mut Steps) -> bool {
        let apart = self.take_some(random);
        let before = self.worth(&apart.iter().collect::<Vec<_>>());
        for sheet in &apart {
            self.put_back(sheet, 1);
        }
        let mut order = self.classes_of(&apart);
        rule.order.sort(&self.problem.classes, &mut order);
        disturb(&mut order, random);
        let choice = match random.below(self.problem.racks.len() + 1) {
            0 => Choice::Cheapest,
            rack => Choice::Prefer(rack - 1),
        };
        let way = Way { order, rule, choice };
        let runs: Vec<Run> = pack_some(self.problem, way, &mut self.left, &mut self.stock, steps);
        let packed: Vec<&Pattern> =
            runs.iter().flat_map(|(pattern, times)| std::iter::repeat_n(pattern, *times as usize)).collect();
        let after = self.worth(&packed);
        let better = (after.0, after.1) < (before.0, before.1);
        let as_good = (after.0, after.1) == (before.0, before.1) && after.2 * YIELDING >= before.2 * (YIELDING - 1);
        if better || as_good {
            self.sheets.extend(packed.into_iter().cloned());
            return better;
        }
        for (pattern, times) in &runs {
            self.put_back(pattern, *times);
        }
        for sheet in apart {
            self.lay_out(&sheet);
            self.sheets.push(sheet);
        }
        false
    }

    /// One of the thinner sheets, and up to three others.
    fn take_some(&mut self, random: &mut SplitMix) -> Vec<Pattern> {
        let thin = (0..TRIED).map(|_| random.below(self.sheets.len())).min_by_key(|&at| self.fill(at));
        let mut taken = vec![self.sheets.swap_remove(thin.unwrap_or(0))];
        for _ in 0..=random.below(MOST_APART - 1) {
            if !self.sheets.is_empty() {
                let at = random.below(self.sheets.len());
                taken.push(self.sheets.swap_remove(at));
            }
        }
        taken
    }

    fn fill(&self, at: usize) -> i128 {
        self.sheets.get(at).map_or(0, |sheet| sheet.area)
    }

    /// Classes of those sheets and of what found no place, each once.
    fn classes_of(&self, sheets: &[Pattern]) -> Vec<u32> {
        let unplaced = (0..).zip(&self.left).filter(|(_, left)| **left > 0).map(|(class, _)| class);
        let mut classes: Vec<u32> = sheets.iter().flat_map(|sheet| &sheet.parts).map(|part| part.0).collect();
        classes.extend(unplaced);
        classes.sort_unstable();
        classes.dedup();
        classes
    }

    fn worth(&self, sheets: &[&Pattern]) -> Worth {
        /// Areas in units of 2^44 square nanometres (4 mm squared): the squares of such figures fit with room to spare.
        const COARSE: u32 = 44;
        let unplaced = if self.left.iter().any(|&left| left > 0) { self.unplaced() } else { 0 };
        let cost = sheets.iter().map(|sheet| cost(self.problem, sheet.rack)).sum();
        let uneven = sheets.iter().map(|sheet| (sheet.area >> COARSE) * (sheet.area >> COARSE)).sum();
        (unplaced, cost, uneven)
    }

    fn unplaced(&self) -> i128 {
        unplaced_area(self.problem, &self.left)
    }

    /// Sheets of a pattern go back to the rack and their parts to what is left.
    fn put_back(&mut self, pattern: &Pattern, times: u32) {
        change(&mut self.stock, pattern.rack, |count| count.saturating_add(times));
        for &(class, copies) in &pattern.parts {
            change(&mut self.left, class as usize, |left| left.saturating_add(copies.saturating_mul(times)));
        }
    }

    fn lay_out(&mut self, pattern: &Pattern) {
        change(&mut self.stock, pattern.rack, |count| count.saturating_sub(1));
        for &(class, copies) in &pattern.parts {
            change(&mut self.left, class as usize, |left| left.saturating_sub(copies));
        }
    }
}

fn change(counts: &mut [u32], at: usize, by: impl Fn(u32) -> u32) {
    if let Some(count) = counts.get_mut(at) {
        *count = by(*count);
    }
}
