//! Answers from the patterns of a linear programme.
//!
//! # Method
//! Sheets are sawn by each pattern as often as the programme uses it, rounded down or up; copies beyond those that are
//! wanted are left out, and what is still missing is packed by the constructions (Wäscher and Gau, "Heuristics for the
//! integer one-dimensional cutting stock problem: a computational study", OR Spektrum 18, 1996).

use super::bound::Bound;
use super::build::{Pattern, Rule, Run, Solution, Way, clipped, cost, pack_some};
use super::choose::Best;
use super::effort::Steps;
use super::problem::{MOST_STAGES, Problem};
use super::search::{choices, order};

/// Fractions of a sheet from which on a pattern is used once more, in percent; the first never rounds up.
const ROUNDED_UP: [u32; 7] = [100, 90, 75, 60, 45, 30, 15];

/// Betters the best answer by patterns and how often a linear programme uses them, best first.
pub(super) fn round_up(
    problem: &Problem,
    best: &mut Best<'_>,
    patterns: &[(Pattern, f64)],
    steps: &mut Steps<'_>,
    bound: &Bound,
) {
    // Patterns take no notice of a limit on stages.
    if patterns.is_empty() || problem.stages < MOST_STAGES || problem.first.is_some() {
        return;
    }
    for from in ROUNDED_UP {
        let rounded = Rounded::new(problem, patterns, from);
        for rule in Rule::all() {
            for choice in choices(problem) {
                if steps.spent_all() || best.value().is_some_and(|(unplaced, cost)| bound.met_by(unplaced, cost)) {
                    return;
                }
                let way = Way { order: order(problem, rule), rule, choice };
                best.offer(rounded.clone().packed(problem, way, steps));
            }
        }
    }
}

/// Whole sheets by patterns, and what they leave.
#[derive(Debug, Clone)]
struct Rounded {
    runs: Vec<Run>,
    left: Vec<u32>,
    stock: Vec<u32>,
}

impl Rounded {
    fn new(problem: &Problem, patterns: &[(Pattern, f64)], from: u32) -> Rounded {
        let stock = problem.racks.iter().map(|rack| rack.count).collect();
        let mut rounded = Rounded { runs: Vec::new(), left: problem.wanted(), stock };
        for (pattern, times) in patterns {
            rounded.saw(problem, pattern, whole(*times, from));
        }
        rounded
    }

    /// Sheets by one pattern; the last ones without the copies that are not wanted.
    fn saw(&mut self, problem: &Problem, pattern: &Pattern, times: u32) {
        let there = self.stock.get(pattern.rack).copied().unwrap_or(0);
        let mut times = times.min(there);
        while times > 0 {
            let clipped = clipped(problem, pattern, &self.left);
            if clipped.parts.is_empty() {
                return;
            }
            let often = |&(class, copies): &(u32, u32)| self.left.get(class as usize).map_or(0, |left| left / copies);
            let often = clipped.parts.iter().map(often).min().unwrap_or(0).clamp(1, times);
            for &(class, copies) in &clipped.parts {
                if let Some(left) = self.left.get_mut(class as usize) {
                    *left = left.saturating_sub(copies.saturating_mul(often));
                }
            }
            if let Some(stock) = self.stock.get_mut(pattern.rack) {
                *stock = stock.saturating_sub(often);
            }
            self.runs.push((clipped, often));
            times -= often;
        }
    }

    fn packed(mut self, problem: &Problem, way: Way, steps: &mut Steps<'_>) -> Solution {
        let rest = pack_some(problem, way, &mut self.left, &mut self.stock, steps);
        self.runs.extend(rest);
        let cost = self.runs.iter().map(|(pattern, times)| cost(problem, pattern.rack) * i128::from(*times)).sum();
        Solution { runs: self.runs, left: self.left, cost }
    }
}

/// A number of sheets, rounded up where the fraction reaches so many percent; what floating point lacks is made up.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "at most a million sheets, none below zero")]
fn whole(times: f64, from: u32) -> u32 {
    const LACKING: f64 = 1e-6;
    (times.max(0.0) + 1.0 - f64::from(from) / 100.0 + LACKING) as u32
}

#[cfg(test)]
mod tests {
    use super::super::part::Part;
    use super::*;
    use crate::length::Length;
    use crate::stock::{Saw, Sheet};

    #[test]
    fn fractions_are_rounded_by_the_limit() {
        assert_eq!([0.0, 0.89, 0.91, 1.0, 2.999_999_9].map(|times| whole(times, 90)), [0, 0, 1, 1, 3]);
        assert_eq!([0.99, 1.0].map(|times| whole(times, 100)), [0, 1]);
    }

    #[test]
    fn copies_that_are_not_wanted_are_left_out() {
        let parts = [Part::new("lid", Length::inches(40), Length::inches(20)).count(5)];
        let stock = [Sheet::new("ply", Length::inches(80), Length::inches(20))];
        let problem = Problem::new(&parts, &stock, &Saw::new());
        let way = |rule| Way { order: vec![0], rule, choice: super::super::build::Choice::Cheapest };
        let rule = Rule::all().next().unwrap();
        let mut steps = Steps::new(10_000, u64::MAX);
        let pattern = pack_some(&problem, way(rule), &mut [2], &mut [1], &mut steps).remove(0).0;
        assert_eq!(pattern.parts, [(0, 2)]);
        let rounded = Rounded::new(&problem, &[(pattern, 2.5)], 45);
        let used: Vec<(u32, u32)> = rounded.runs.iter().map(|(pattern, times)| (pattern.parts[0].1, *times)).collect();
        assert_eq!((used, rounded.left), (vec![(2, 2), (1, 1)], vec![0]));
    }
}
