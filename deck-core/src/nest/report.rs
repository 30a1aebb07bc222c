//! Turns an answer in whole numbers into sheets with labels, cut trees and shares of the cost.

use super::bound::Bound;
use super::build::{Piece, Solution};
use super::choose::unplaced_area;
use super::cost::{BoatCost, share};
use super::part::Part;
use super::problem::Problem;
use super::result::{CutSheet, Nest};
use super::sheets::sheets;
use super::why::unplaced;
use crate::stock::{Saw, Sheet};

/// The order as it was given and as it was worked on.
#[derive(Debug, Clone, Copy)]
pub(super) struct Order<'a> {
    pub(super) parts: &'a [Part],
    pub(super) stock: &'a [Sheet],
    pub(super) saw: &'a Saw,
    pub(super) problem: &'a Problem,
}

/// The result for people and programs; a layout for each of the answer's runs.
pub(super) fn report(order: Order<'_>, solution: &Solution, layouts: &[Piece], bound: &Bound) -> Nest {
    let problem = order.problem;
    let (sheets, left) = sheets(order, solution, layouts);
    let bound_cost = bound.cost(problem, solution);
    Nest {
        sheet_count: u32::try_from(sheets.iter().filter(|sheet| sheet.inside.is_none()).count()).unwrap_or(u32::MAX),
        unplaced: unplaced(order, &left),
        cost: problem.cost_in.cost(solution.cost),
        cost_by_boat: cost_by_boat(order, solution.cost, &sheets),
        bound: problem.cost_in.cost(bound_cost),
        proven: bound.met_by(unplaced_area(problem, &solution.left), solution.cost),
        cost_in: problem.cost_in,
        sheets,
    }
}

/// The cost by boat, in the order in which the parts name them; empty where no part names one.
fn cost_by_boat(order: Order<'_>, cost: i128, sheets: &[CutSheet]) -> Vec<BoatCost> {
    if order.parts.iter().all(|part| part.boat.is_none()) {
        return Vec::new();
    }
    let mut boats: Vec<Option<&str>> = Vec::new();
    for part in order.parts {
        if !boats.contains(&part.boat.as_deref()) {
            boats.push(part.boat.as_deref());
        }
    }
    let mut areas = vec![0; boats.len()];
    for placement in sheets.iter().flat_map(|sheet| &sheet.placements) {
        let boat = boats.iter().position(|boat| *boat == placement.boat.as_deref());
        if let Some(area) = boat.and_then(|boat| areas.get_mut(boat)) {
            *area += i128::from(placement.length.nanometres()) * i128::from(placement.width.nanometres());
        }
    }
    let cost_in = order.problem.cost_in;
    let shares = share(cost, cost_in.grain(cost), &areas);
    let named = boats.into_iter().zip(shares);
    named.map(|(boat, share)| BoatCost { boat: boat.map(str::to_owned), cost: cost_in.cost(share) }).collect()
}
