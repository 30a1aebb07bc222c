//! The same parts on one sheet, laid out otherwise.

use super::super::effort::Steps;
use super::super::problem::Problem;
use super::fill::{Pattern, fill};
use super::queue::Queue;
use super::rule::Rule;
use std::ops::ControlFlow;

/// Hands over a layout of all those parts on a sheet of that stock for each rule that finds room for them, until told to
/// break off. `wanted` has a place for each class, all of them zero before and after.
pub(in crate::nest) fn relay(
    problem: &Problem,
    rack: usize,
    parts: &[(u32, u32)],
    wanted: &mut [u32],
    steps: &mut Steps,
    mut found: impl FnMut(Pattern, &mut Steps) -> ControlFlow<()>,
) {
    for &(class, copies) in parts {
        set(wanted, class, copies);
    }
    let area_of = |&(class, copies): &(u32, u32)| {
        problem.classes.get(class as usize).map_or(0, |class| class.area) * i128::from(copies)
    };
    let area: i128 = parts.iter().map(area_of).sum();
    // Few classes come in the same order by several measures, and the same order gives the same layout.
    let mut tried = Vec::new();
    for rule in Rule::all() {
        if steps.spent_all() {
            break;
        }
        let mut classes: Vec<u32> = parts.iter().map(|part| part.0).collect();
        rule.order.sort(&problem.classes, &mut classes);
        let way = (rule.fit, rule.split, classes.clone());
        if tried.contains(&way) {
            continue;
        }
        tried.push(way);
        let pattern = fill(problem, rack, &mut Queue::new(problem, classes), wanted, rule, steps);
        if pattern.area == area && found(pattern, steps).is_break() {
            break;
        }
    }
    for &(class, _) in parts {
        set(wanted, class, 0);
    }
}

fn set(wanted: &mut [u32], class: u32, copies: u32) {
    if let Some(wanted) = wanted.get_mut(class as usize) {
        *wanted = copies;
    }
}
