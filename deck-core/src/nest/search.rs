//! The order of work: every rule once, then cheaper sheets, then other orders of the parts and repacked sheets while
//! steps are left.

use super::bound::Bound;
use super::build::{Choice, Rule, Solution, Way, cheapen, pack};
use super::choose::Best;
use super::effort::{Effort, Steps};
use super::goal::one_sheet_less;
use super::polish::polish;
use super::problem::Problem;
use super::random::SplitMix;
use super::repack::repack;
use super::roundup::round_up;
use super::watch::{Standing, Watch};

/// The share of the steps that goes into whole orders: one in so many.
const SHUFFLING: u64 = 16;
/// The share that may go into a better bound, in eighths. What is not needed for it is given back.
const BOUNDING: u64 = 3;
/// The share that may go into rounding what came of it.
const ROUNDING: u64 = 16;
/// The share that may go into one larger offcut, fewer fence settings and fewer cuts.
const POLISHING: u64 = 32;

/// The best answer that the effort pays for.
pub(super) fn search(
    problem: &Problem,
    effort: Effort,
    bound: &mut Bound,
    watch: &Watch<'_>,
    standing: &Standing,
) -> Solution {
    let copies = problem.copies();
    let quick = || effort.quick(copies).watched(watch);
    let mut best = Best::new(problem, standing);
    construct(problem, &mut best, &mut quick());
    if let Some(cheaper) = best.solution().map(|solution| cheapen(problem, solution, &mut quick())) {
        best.offer(cheaper);
    }
    if let Some((unplaced, cost)) = best.value() {
        bound.tighten(problem, unplaced, cost, &mut quick());
    }
    standing.bounded(bound.least());
    watch.ask();
    if let Some(mut steps) = effort.search(copies).map(|steps| steps.watched(watch)) {
        let mut polishing = steps.take(POLISHING);
        // A bound that is met saves the rest of the steps, so it comes first.
        if let Some(solution) = best.solution() {
            let mut share = steps.lend(steps.left() / 8 * BOUNDING);
            let patterns = bound.strengthen(problem, solution, &mut share);
            steps.take_back(&share);
            standing.bounded(bound.least());
            round_up(problem, &mut best, &patterns, &mut steps.take(ROUNDING), bound);
        }
        // Whole orders are shuffled for a small share of the steps; working on a few sheets at a time gains more. What
        // is tried with sheets of other sizes comes before the sheets are held fixed and made one fewer.
        shuffle(problem, &mut best, &mut steps.take(SHUFFLING), bound);
        let repacking = if problem.racks.len() > 1 { 2 } else { 16 };
        repack(problem, &mut best, &mut steps.take(repacking), bound);
        one_sheet_less(problem, &mut best, &mut steps, bound);
        polish(problem, &mut best, &mut polishing);
    }
    // `construct` always finishes one construction, so there is an answer; the empty one stands for what cannot happen.
    let nothing = || Solution { runs: Vec::new(), left: problem.wanted(), cost: 0 };
    best.into_solution().unwrap_or_else(nothing)
}

/// Where the next sheet comes from, in every way that can make a difference.
pub(super) fn choices(problem: &Problem) -> Vec<Choice> {
    let some: Vec<usize> = (0..problem.racks.len()).filter(|&rack| has_any(problem, rack)).collect();
    let mut choices = vec![Choice::Cheapest];
    if some.len() > 1 {
        if problem.racks.iter().any(|rack| rack.cost == 0 && rack.count > 0) {
            choices.push(Choice::FreeFirst);
        }
        choices.extend(some.into_iter().map(Choice::Prefer));
    }
    choices
}

fn has_any(problem: &Problem, rack: usize) -> bool {
    problem.racks.get(rack).is_some_and(|rack| rack.count > 0 && rack.size.0 > 0)
}

pub(super) fn order(problem: &Problem, rule: Rule) -> Vec<u32> {
    let mut order: Vec<u32> = (0..).take(problem.classes.len()).collect();
    rule.order.sort(&problem.classes, &mut order);
    order
}

fn construct(problem: &Problem, best: &mut Best<'_>, steps: &mut Steps) {
    let choices = choices(problem);
    for rule in Rule::all() {
        for &choice in &choices {
            best.offer(pack(problem, Way { order: order(problem, rule), rule, choice }, steps));
            if steps.spent_all() {
                return;
            }
        }
    }
}

/// Constructions from orders in which neighbours have changed places at random, until the steps are spent or nothing
/// better can exist.
///
/// # Method
/// Random restarts around a greedy order; common practice. The numbers come from a generator with a fixed start, so
/// that the same effort gives the same answer.
fn shuffle(problem: &Problem, best: &mut Best<'_>, steps: &mut Steps, bound: &Bound) {
    let mut random = SplitMix::new();
    let choices = choices(problem);
    let rules: Vec<Rule> = Rule::all().collect();
    if problem.classes.len() < 2 {
        return;
    }
    while !steps.spent_all() {
        if best.value().is_some_and(|(unplaced, cost)| bound.met_by(unplaced, cost)) {
            return;
        }
        let (Some(&rule), Some(&choice)) =
            (rules.get(random.below(rules.len())), choices.get(random.below(choices.len())))
        else {
            return;
        };
        let mut order = order(problem, rule);
        disturb(&mut order, &mut random);
        if best.offer(pack(problem, Way { order, rule, choice }, steps)) {
            steps.found_better();
        }
        steps.spend(problem.classes.len() as u64);
    }
}

/// Lets each class fall back behind a few of those that follow it.
pub(super) fn disturb(order: &mut [u32], random: &mut SplitMix) {
    /// Places that a class may fall back at most: more makes the order arbitrary, less leaves it as it was.
    const REACH: usize = 4;
    for index in 0..order.len() {
        let other = (index + random.below(REACH)).min(order.len() - 1);
        order.swap(index, other);
    }
}
