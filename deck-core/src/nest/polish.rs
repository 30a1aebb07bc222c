//! Betters what costs no less: one large offcut, few fence settings, few cuts.
//!
//! # Method
//! The thinnest sheet gives up what has room on the others, so that its waste comes together; then the parts of each
//! sheet are laid out by every rule of the constructions. Common practice, no source.

use super::build::{Pattern, Solution, cost, relay};
use super::choose::Best;
use super::effort::Steps;
use super::goal::without_the_thinnest;
use super::problem::Problem;
use std::ops::ControlFlow;

/// Runs of saw lines that are looked through in the time of a step, when two answers are compared.
const LOOKS: usize = 8;

/// Betters the best answer among those of its cost.
pub(super) fn polish(problem: &Problem, best: &mut Best<'_>, steps: &mut Steps<'_>) {
    let mut wanted = vec![0; problem.classes.len()];
    crowd(problem, best, &mut wanted, steps);
    settle(problem, best, &mut wanted, steps);
}

/// Moves parts of the thinnest sheet to where there is room for them.
fn crowd(problem: &Problem, best: &mut Best<'_>, wanted: &mut [u32], steps: &mut Steps<'_>) {
    /// Times that the room on the others is filled, each in another order.
    const TRIES: usize = 8;
    let Some(solution) = best.solution() else { return };
    for others in without_the_thinnest(problem, solution, TRIES, steps) {
        let looks = work(&others.solution);
        if others.out.is_empty() {
            best.offer(others.solution);
            return;
        }
        if let Some(same) = others.same {
            offer(problem, best, with(&others.solution, same), looks, steps);
        }
        relay(problem, others.rack, &others.out, wanted, steps, |pattern, steps| {
            offer(problem, best, with(&others.solution, pattern), looks, steps);
            ControlFlow::Continue(())
        });
    }
}

fn with(solution: &Solution, pattern: Pattern) -> Solution {
    let mut solution = solution.clone();
    solution.runs.push((pattern, 1));
    solution
}

/// Lays out the parts of each sheet by every rule.
fn settle(problem: &Problem, best: &mut Best<'_>, wanted: &mut [u32], steps: &mut Steps<'_>) {
    let runs = best.solution().map_or(0, |solution| solution.runs.len());
    for at in 0..runs {
        let Some(solution) = best.solution().cloned() else { return };
        let Some((old, _)) = solution.runs.get(at) else { return };
        let looks = work(&solution);
        relay(problem, old.rack, &old.parts, wanted, steps, |pattern, steps| {
            let mut other = solution.clone();
            if let Some(run) = other.runs.get_mut(at) {
                run.0 = pattern;
            }
            offer(problem, best, other, looks, steps);
            ControlFlow::Continue(())
        });
        if steps.spent_all() {
            return;
        }
    }
}

fn offer(problem: &Problem, best: &mut Best<'_>, mut solution: Solution, looks: u64, steps: &mut Steps<'_>) {
    solution.cost = solution.runs.iter().map(|(run, times)| cost(problem, run.rack) * i128::from(*times)).sum();
    steps.spend(looks);
    best.offer(solution);
}

/// Steps that it takes to compare an answer with another one.
fn work(solution: &Solution) -> u64 {
    solution.runs.iter().map(|run| (run.0.nodes.len() / LOOKS + 1) as u64).sum()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Length;
    use crate::nest::build::{Node, Tally};
    use crate::nest::effort::Effort;
    use crate::nest::watch::{Standing, Watch};
    use crate::nest::{Grain, Part};
    use crate::stock::{Saw, SawLine, Sheet};

    fn inches(count: i64) -> Length {
        Length::from_nanometres(25_400_000) * count
    }

    /// Strips across a sheet of 96 by 48, by their lengths in inches, each a class of its own.
    fn strips(problem: &Problem, lengths: &[i64]) -> Pattern {
        let class = |&length: &i64| {
            let wanted = inches(length).nanometres();
            let found = problem.classes.iter().position(|class| class.size.0 == wanted).unwrap();
            u32::try_from(found).unwrap()
        };
        let parts: Vec<(u32, u32)> = lengths.iter().map(|length| (class(length), 1)).collect();
        let mut nodes = vec![Node::Free];
        for (length, part) in lengths.iter().zip(&parts) {
            let (whole, first) = (nodes.len() - 1, u32::try_from(nodes.len()).unwrap());
            let at = inches(*length).nanometres();
            nodes[whole] = Node::Split { line: SawLine::Width, at, first, second: first + 1 };
            nodes.extend([Node::Part(part.0), Node::Free]);
        }
        let area = parts.iter().map(|part| problem.classes[part.0 as usize].area).sum();
        Pattern { rack: 0, nodes, parts, area }
    }

    #[test]
    fn waste_of_the_thinnest_sheet_comes_together() {
        let part = |length| Part::new("strip", inches(length), inches(48)).grain(Grain::Length);
        let parts = [part(20), part(30), part(76)];
        let saw = Saw::new().keep(inches(12), inches(12));
        let problem = Problem::new(&parts, &[Sheet::new("4 x 8", inches(96), inches(48))], &saw);
        let scattered = Solution {
            runs: vec![(strips(&problem, &[20, 30]), 1), (strips(&problem, &[76]), 1)],
            left: vec![0; 3],
            cost: 2 * problem.racks[0].cost,
        };
        let standing = Standing::new(&problem);
        let mut best = Best::new(&problem, &standing);
        best.offer(scattered);
        let watch = Watch::new(0, &|_, _| ControlFlow::Continue(()));
        let mut steps = Effort::Steps(1_000_000).search(3).unwrap().watched(&watch);
        polish(&problem, &mut best, &mut steps);
        let mut tally = Tally::default();
        for (pattern, times) in &best.solution().unwrap().runs {
            tally.add(&problem, pattern, *times);
        }
        // 76 and 20 fill one sheet; on the other one 66 by 48 are left behind the 30.
        let square = i128::from(inches(1).nanometres()).pow(2);
        assert_eq!(tally.largest_offcut, 66 * 48 * square);
    }
}
