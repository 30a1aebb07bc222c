//! What no nest can undercut: a lower bound on the cost, and when an answer is proven the best.

mod cover;
mod dual;

use super::build::Solution;
use super::choose::unplaced_area;
use super::problem::{Class, Problem, Rack};
use cover::{Offer, cheapest, least_cost};
use dual::{Item, fewest_sheets};
use std::collections::BTreeSet;

/// Lower bounds for one order.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Bound {
    /// Least cost of placing everything that any sheet holds.
    all: i128,
    /// Real area of what no sheet holds.
    hopeless: i128,
}

/// Sets of sheets that are looked at one by one; beyond it the whole stock is looked at only.
const MOST_SETS: usize = 16;

impl Bound {
    /// Bounds from areas and from shapes.
    ///
    /// # Method
    /// Parts that fit only some of the stock must be paid for by that stock. For every such set of stock: the grown
    /// areas of its parts must be covered by grown areas of sheets ([`cover`]), and the shapes ask for a number of
    /// sheets as large as the largest of the set ([`dual`]). The greatest of these costs bounds the order.
    pub(super) fn new(problem: &Problem) -> Bound {
        let fits: Vec<Vec<bool>> = problem.classes.iter().map(|class| fit_set(problem, class)).collect();
        let hopeless = problem.classes.iter().zip(&fits).filter(|(_, set)| !set.contains(&true));
        let hopeless = hopeless.map(|(class, _)| class.area * i128::from(class.count)).sum();
        let every: Vec<bool> = problem.racks.iter().map(|rack| rack.count > 0).collect();
        let mut sets: BTreeSet<Vec<bool>> = fits.iter().filter(|set| set.contains(&true)).cloned().collect();
        if sets.len() > MOST_SETS {
            sets.clear();
        }
        sets.insert(every);
        let all = sets.iter().map(|set| bound_of_set(problem, &fits, set)).max().unwrap_or(0);
        Bound { all, hopeless }
    }

    /// A cost that no answer which places as much as this one can undercut.
    pub(super) fn cost(&self, problem: &Problem, solution: &Solution) -> i128 {
        let unplaced = unplaced_area(problem, solution);
        if unplaced <= self.hopeless {
            return self.all;
        }
        // The best answer places at least this area, but it is not known which parts.
        let wanted: i128 = problem.classes.iter().map(|class| class.area * i128::from(class.count)).sum();
        let real = |rack: &Rack| i128::from(rack.size.0 - problem.kerf) * i128::from(rack.size.1 - problem.kerf);
        let offers: Vec<Offer> = problem
            .racks
            .iter()
            .filter(|rack| rack.size.0 > 0)
            .map(|rack| Offer { capacity: real(rack), cost: rack.cost, count: rack.count })
            .collect();
        least_cost(&offers, wanted - unplaced)
    }

    /// True where an answer with that unplaced area and cost cannot be bettered.
    pub(super) fn met_by(&self, unplaced: i128, cost: i128) -> bool {
        unplaced <= self.hopeless && cost <= self.all
    }
}

/// The stock that holds a class.
fn fit_set(problem: &Problem, class: &Class) -> Vec<bool> {
    problem.racks.iter().map(|rack| rack.count > 0 && Problem::fits(class, rack)).collect()
}

/// The bound from the parts that fit nothing outside a set of stock.
fn bound_of_set(problem: &Problem, fits: &[Vec<bool>], set: &[bool]) -> i128 {
    let inside = |fit: &Vec<bool>| fit.contains(&true) && fit.iter().zip(set).all(|(fits, allowed)| *allowed || !fits);
    let classes: Vec<&Class> =
        problem.classes.iter().zip(fits).filter(|(_, fit)| inside(fit)).map(|(class, _)| class).collect();
    let racks: Vec<&Rack> =
        problem.racks.iter().zip(set).filter(|(_, allowed)| **allowed).map(|(rack, _)| rack).collect();
    let grown = |size: super::problem::Size| i128::from(size.0) * i128::from(size.1);
    let offers: Vec<Offer> =
        racks.iter().map(|rack| Offer { capacity: grown(rack.size), cost: rack.cost, count: rack.count }).collect();
    let need = classes.iter().map(|class| grown(class.size) * i128::from(class.count)).sum();
    least_cost(&offers, need).max(cheapest(&offers, sheets_by_shape(&classes, &racks)))
}

/// Sheets that the shapes ask for, each as long and as wide as any of the stock.
fn sheets_by_shape(classes: &[&Class], racks: &[&Rack]) -> i128 {
    let (length, width) =
        racks.iter().fold((0, 0), |(length, width), rack| (rack.size.0.max(length), rack.size.1.max(width)));
    if length <= 0 || width <= 0 {
        return 0;
    }
    // Where one sheet lets parts turn, they may all be turned.
    let freest = racks.iter().find(|rack| !rack.grain).or(racks.first());
    let Some(freest) = freest else { return 0 };
    let fits = |size: &super::problem::Size| size.0 <= length && size.1 <= width;
    let items: Vec<Item> = classes
        .iter()
        .map(|class| Item { lies: class.lies(freest).map(|lies| lies.filter(|size| fits(size))), count: class.count })
        .collect();
    fewest_sheets(&items, (length, width))
}
