//! Moves what lies on a sheet to a cheaper one that is left in the rack.

use super::super::effort::Steps;
use super::super::problem::Problem;
use super::fill::Pattern;
use super::pack::{Run, Solution, cost};
use super::relay::relay;
use std::ops::ControlFlow;

/// The same parts on cheaper sheets, where they fit. The last sheet of an order is seldom full, and may be a small one.
pub(in crate::nest) fn cheapen(problem: &Problem, solution: &Solution, steps: &mut Steps) -> Solution {
    let mut stock: Vec<u32> = problem.racks.iter().map(|rack| rack.count).collect();
    for (pattern, times) in &solution.runs {
        take(&mut stock, pattern.rack, *times);
    }
    let mut wanted = vec![0; problem.classes.len()];
    let mut runs = Vec::with_capacity(solution.runs.len());
    for run in &solution.runs {
        runs.extend(move_run(problem, run, &mut stock, &mut wanted, steps));
    }
    let cost = runs.iter().map(|(pattern, times)| cost(problem, pattern.rack) * i128::from(*times)).sum();
    Solution { runs, left: solution.left.clone(), cost }
}

fn take(stock: &mut [u32], rack: usize, times: u32) {
    if let Some(count) = stock.get_mut(rack) {
        *count = count.saturating_sub(times);
    }
}

/// The run, some of it or all of it on cheaper sheets. Sheets that come free go back to the rack.
fn move_run(problem: &Problem, run: &Run, stock: &mut [u32], wanted: &mut [u32], steps: &mut Steps) -> Vec<Run> {
    let (pattern, mut times) = (&run.0, run.1);
    let dearest = cost(problem, pattern.rack);
    let mut cheaper: Vec<usize> = (0..problem.racks.len()).filter(|&rack| cost(problem, rack) < dearest).collect();
    cheaper.sort_by_key(|&rack| cost(problem, rack));
    let mut runs = Vec::new();
    for rack in cheaper {
        let free = stock.get(rack).copied().unwrap_or(0).min(times);
        if free == 0 || steps.spent_all() {
            continue;
        }
        if let Some(smaller) = refill(problem, pattern, rack, wanted, steps) {
            take(stock, rack, free);
            if let Some(count) = stock.get_mut(pattern.rack) {
                *count = count.saturating_add(free);
            }
            times -= free;
            runs.push((smaller, free));
        }
    }
    if times > 0 {
        runs.push((pattern.clone(), times));
    }
    runs
}

/// All parts of a pattern on one sheet of another stock, by the first rule that brings it about.
fn refill(problem: &Problem, old: &Pattern, rack: usize, wanted: &mut [u32], steps: &mut Steps) -> Option<Pattern> {
    let room = problem.racks.get(rack).map_or(0, |rack| i128::from(rack.size.0) * i128::from(rack.size.1));
    if room < old.area {
        return None;
    }
    let mut found = None;
    relay(problem, rack, &old.parts, wanted, steps, |pattern, _| {
        found = Some(pattern);
        ControlFlow::Break(())
    });
    found
}
