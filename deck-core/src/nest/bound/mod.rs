//! What no nest can undercut: a lower bound on the cost, and when an answer is proven the best.

mod cover;
mod dual;
mod whole;

use super::build::Solution;
use super::choose::unplaced_area;
use super::problem::{Class, Problem, Rack, Size};
use cover::{Offer, cheapest, least_cost};
use dual::{Item, fewest_sheets};
use std::collections::BTreeSet;
use whole::{Need, least_whole_cost};

/// Lower bounds for one order.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Bound {
    /// Least cost of placing everything that any sheet holds.
    all: i128,
    /// Real area of what no sheet holds.
    hopeless: i128,
    /// What the parts of each set of stock ask for.
    needs: Vec<Need>,
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
        let needs: Vec<Need> = sets.into_iter().map(|set| need_of_set(problem, &fits, set)).collect();
        let all = needs.iter().map(|need| cost_of_need(problem, need)).max().unwrap_or(0);
        Bound { all, hopeless, needs }
    }

    /// Looks for the least cost of whole sheets that meet all needs at once, where an answer places all it can.
    pub(super) fn tighten(&mut self, problem: &Problem, unplaced: i128, cost: i128) {
        if unplaced <= self.hopeless && cost > self.all && problem.racks.len() > 1 {
            let least = least_whole_cost(&offers(problem, grown), &self.needs, cost);
            self.all = self.all.max(least.unwrap_or(0));
        }
    }

    /// A cost that no answer which places as much as this one can undercut.
    pub(super) fn cost(&self, problem: &Problem, solution: &Solution) -> i128 {
        let unplaced = unplaced_area(problem, &solution.left);
        if unplaced <= self.hopeless {
            return self.all;
        }
        // The best answer places at least this area, but it is not known which parts.
        let wanted: i128 = problem.classes.iter().map(|class| class.area * i128::from(class.count)).sum();
        let real = |size: Size| i128::from(size.0 - problem.kerf) * i128::from(size.1 - problem.kerf);
        let offers: Vec<Offer> = offers(problem, |size| if size.0 > 0 { real(size) } else { 0 });
        least_cost(&offers, wanted - unplaced)
    }

    /// Real area of what no sheet holds, and the least cost of placing all the rest.
    pub(super) fn least(&self) -> (i128, i128) {
        (self.hopeless, self.all)
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

fn grown(size: Size) -> i128 {
    i128::from(size.0) * i128::from(size.1)
}

/// The whole stock, with capacities by that measure.
fn offers(problem: &Problem, capacity: impl Fn(Size) -> i128) -> Vec<Offer> {
    let offer = |rack: &Rack| Offer { capacity: capacity(rack.size), cost: rack.cost, count: rack.count };
    problem.racks.iter().map(offer).collect()
}

/// What is asked of a set of stock by the parts that fit nothing outside it.
fn need_of_set(problem: &Problem, fits: &[Vec<bool>], set: Vec<bool>) -> Need {
    let inside = |fit: &Vec<bool>| fit.contains(&true) && fit.iter().zip(&set).all(|(fits, allowed)| *allowed || !fits);
    let classes: Vec<&Class> =
        problem.classes.iter().zip(fits).filter(|(_, fit)| inside(fit)).map(|(class, _)| class).collect();
    let racks: Vec<&Rack> =
        problem.racks.iter().zip(&set).filter(|(_, allowed)| **allowed).map(|(rack, _)| rack).collect();
    let area = classes.iter().map(|class| grown(class.size) * i128::from(class.count)).sum();
    let sheets = sheets_by_shape(&classes, &racks);
    Need { stock: set, area, sheets }
}

/// The least cost of meeting one need, parts of sheets allowed.
fn cost_of_need(problem: &Problem, need: &Need) -> i128 {
    let offers: Vec<Offer> = offers(problem, grown)
        .into_iter()
        .zip(&need.stock)
        .filter(|(_, allowed)| **allowed)
        .map(|(offer, _)| offer)
        .collect();
    least_cost(&offers, need.area).max(cheapest(&offers, need.sheets))
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
    let fits = |size: &Size| size.0 <= length && size.1 <= width;
    let items: Vec<Item> = classes
        .iter()
        .map(|class| Item { lies: class.lies(freest).map(|lies| lies.filter(|size| fits(size))), count: class.count })
        .collect();
    fewest_sheets(&items, (length, width))
}
