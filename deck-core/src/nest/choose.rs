//! Which of several answers is the best one.

use super::build::{Solution, Tally};
use super::inside::ground;
use super::problem::Problem;
use super::watch::Standing;
use std::cmp::Ordering;

/// The best answer so far.
#[derive(Debug)]
pub(super) struct Best<'p> {
    problem: &'p Problem,
    kept: Option<Ranked>,
    /// Is told of every better answer, for the watcher.
    standing: &'p Standing,
}

#[derive(Debug)]
struct Ranked {
    solution: Solution,
    unplaced: i128,
    /// Counted the first time that a comparison comes down to it.
    tally: Option<Tally>,
}

impl<'p> Best<'p> {
    pub(super) fn new(problem: &'p Problem, standing: &'p Standing) -> Best<'p> {
        Best { problem, kept: None, standing }
    }

    /// Keeps the answer where it is better than all before: least unplaced area, then least cost, then the largest
    /// single offcut worth keeping, then fewest fence settings, then fewest cuts. The earlier one stays among equals.
    pub(super) fn offer(&mut self, mut solution: Solution) -> bool {
        ground(self.problem, &mut solution);
        let unplaced = unplaced_area(self.problem, &solution.left);
        let mut offered = Ranked { solution, unplaced, tally: None };
        let better = match &mut self.kept {
            None => true,
            Some(best) => compare(self.problem, &mut offered, best) == Ordering::Less,
        };
        if better {
            self.standing.found(offered.unplaced, offered.solution.cost);
            self.kept = Some(offered);
        }
        better
    }

    /// Unplaced area and cost of the best.
    pub(super) fn value(&self) -> Option<(i128, i128)> {
        self.kept.as_ref().map(|best| (best.unplaced, best.solution.cost))
    }

    pub(super) fn solution(&self) -> Option<&Solution> {
        self.kept.as_ref().map(|best| &best.solution)
    }

    pub(super) fn into_solution(self) -> Option<Solution> {
        self.kept.map(|best| best.solution)
    }
}

/// Real area of the parts that found no place.
pub(super) fn unplaced_area(problem: &Problem, left: &[u32]) -> i128 {
    problem.classes.iter().zip(left).map(|(class, left)| class.area * i128::from(*left)).sum()
}

fn compare(problem: &Problem, one: &mut Ranked, other: &mut Ranked) -> Ordering {
    let value = |ranked: &Ranked| (ranked.unplaced, ranked.solution.cost);
    value(one).cmp(&value(other)).then_with(|| {
        let (one, other) = (one.tally(problem), other.tally(problem));
        other
            .largest_offcut
            .cmp(&one.largest_offcut)
            .then_with(|| one.fences.len().cmp(&other.fences.len()))
            .then_with(|| one.cuts.cmp(&other.cuts))
    })
}

impl Ranked {
    fn tally(&mut self, problem: &Problem) -> &Tally {
        let solution = &self.solution;
        self.tally.get_or_insert_with(|| {
            let mut tally = Tally::default();
            for (pattern, times) in &solution.runs {
                tally.add(problem, pattern, *times);
            }
            tally
        })
    }
}
