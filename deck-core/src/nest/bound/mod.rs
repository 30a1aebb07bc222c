//! What no nest can undercut: a lower bound on the cost, and when an answer is proven the best.

mod board;
mod cover;
mod dual;
mod fronts;
mod function;
mod generate;
mod joins;
mod master;
mod measures;
mod price;
mod raster;
mod shapes;
mod suffix;
mod whole;

use super::build::{Pattern, Solution};
use super::choose::unplaced_area;
use super::effort::Steps;
use super::one::{Fits, fits};
use super::problem::{Class, Problem, Rack, Size};
use crate::math::greatest_divisor;
use cover::{Offer, least_cost};
use dual::needs_by_shape;
use generate::{Gap, Generator, Round};
use shapes::Item;
use std::collections::BTreeSet;
use whole::{Need, Price, least_whole_cost};

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

/// Parts under pairs of functions at first, for each part and however few there are: a nanosecond or two each. Most
/// orders of a boat are settled by these.
const FIRST_EACH: u64 = 200;
const FIRST_BASE: u64 = 6_000;
/// The same where the first answers do not meet the bound.
const QUICK_EACH: u64 = 500;
const QUICK_BASE: u64 = 200_000;
/// Parts of which it is asked whether they all fit one sheet: with more, the question is seldom settled.
const MOST_CLOSED: u64 = 40;
/// Share of the steps of a longer effort that goes into more functions, and the most of them.
const SHAPES_SHARE: u64 = 8;
const SHAPES_MOST: u64 = 4_000_000;
/// Nodes of the search for whole sheets: a few stock sizes and some dozen sheets are settled well within, and a
/// millisecond is not exceeded.
const NODES: u32 = 1_000;
/// Sets of sheets that are looked at one by one; beyond it the whole stock is looked at only.
const MOST_SETS: usize = 16;

impl Bound {
    /// Bounds from areas and from shapes.
    ///
    /// # Method
    /// Parts that fit only some of the stock must be paid for by that stock. For every such set of stock the grown areas
    /// of its parts must be covered by grown areas of sheets ([`cover`]), and so must their values under dual-feasible
    /// functions ([`dual`]). The greatest of these costs bounds the order.
    pub(super) fn new(problem: &Problem) -> Bound {
        let hopeless = problem.classes.iter().filter(|class| !fit_set(problem, class).contains(&true));
        let hopeless = hopeless.map(|class| class.area * i128::from(class.count)).sum();
        let asked = asked(problem);
        let needs =
            needs(problem, &asked, FIRST_BASE + FIRST_EACH * kinds(&asked), &mut Steps::new(u64::MAX, u64::MAX));
        let prices = prices(problem);
        let all = needs.iter().map(|need| need.cost(&prices)).max().unwrap_or(0);
        Bound { all, hopeless, needs }
    }

    /// Looks at more functions, and for the least cost of whole sheets that meet all needs at once, where an answer
    /// places all it can and does not meet the bound.
    pub(super) fn tighten(&mut self, problem: &Problem, unplaced: i128, cost: i128, steps: &mut Steps<'_>) {
        if unplaced > self.hopeless || cost <= self.all {
            return;
        }
        let (asked, prices) = (asked(problem), prices(problem));
        let needs = needs(problem, &asked, QUICK_BASE + QUICK_EACH * kinds(&asked), steps);
        self.all = needs.iter().map(|need| need.cost(&prices)).fold(self.all, i128::max);
        self.needs.extend(needs);
        if cost > self.all && problem.racks.len() > 1 {
            let least = least_whole_cost(&prices, &self.needs, cost, NODES);
            self.all = self.all.max(least.unwrap_or(0));
        }
    }

    /// Looks for a better bound where the answer does not meet it yet: more functions, then patterns made to order.
    /// The patterns met, best first, and how often the linear programme uses them.
    ///
    /// # Method
    /// [`generate`].
    pub(super) fn strengthen(
        &mut self,
        problem: &Problem,
        answer: &Solution,
        steps: &mut Steps<'_>,
    ) -> Vec<(Pattern, f64)> {
        let open = |bound: &Bound| !bound.met_by(unplaced_area(problem, &answer.left), answer.cost);
        if !open(self) || unplaced_area(problem, &answer.left) > self.hopeless {
            return Vec::new();
        }
        let prices = prices(problem);
        let work = (steps.left() / SHAPES_SHARE).min(SHAPES_MOST);
        for need in needs(problem, &asked(problem), work, steps) {
            self.take(need, &prices);
        }
        let Some(mut generator) =
            Some(()).filter(|()| open(self)).and_then(|()| Generator::new(problem, &prices, answer))
        else {
            return Vec::new();
        };
        let grain = prices.iter().fold(0, |divisor, price| greatest_divisor(divisor, price.cost));
        while open(self) && !steps.spent_all() {
            let Round::Priced(need, more) = generator.round(Gap { least: self.all, known: answer.cost, grain }, steps)
            else {
                break;
            };
            self.take(need, &prices);
            if !more {
                break;
            }
        }
        generator.patterns()
    }

    /// Where all that is open is whether one sheet holds the whole order: the answer on it, or a bound of two sheets.
    ///
    /// # Method
    /// An exhaustive search of one sheet ([`fits`]), as far as the steps go.
    pub(super) fn close(&mut self, problem: &Problem, answer: &Solution, steps: &mut Steps<'_>) -> Option<Solution> {
        let [rack] = problem.racks.as_slice() else { return None };
        let open = self.all <= rack.cost && rack.cost > 0 && answer.cost == 2 * rack.cost;
        if !open || problem.copies() > MOST_CLOSED || answer.left.iter().any(|&left| left > 0) {
            return None;
        }
        match fits(problem, 0, &problem.wanted(), steps) {
            Fits::Yes(pattern) => {
                Some(Solution { runs: vec![(pattern, 1)], left: answer.left.clone(), cost: rack.cost })
            }
            Fits::No => {
                self.take(Need { want: 2, gives: vec![1] }, &prices(problem));
                None
            }
            Fits::Unknown => None,
        }
    }

    /// One more thing that is asked for.
    fn take(&mut self, need: Need, prices: &[Price]) {
        let cost = need.cost(prices);
        if cost > self.all {
            self.all = cost;
            self.needs.push(need);
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
        let offer = |rack: &Rack| Offer {
            capacity: if rack.size.0 > 0 { real(rack.size) } else { 0 },
            cost: rack.cost,
            count: rack.count,
        };
        least_cost(problem.racks.iter().map(offer), wanted - unplaced)
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

fn prices(problem: &Problem) -> Vec<Price> {
    problem.racks.iter().map(|rack| Price { cost: rack.cost, count: rack.count }).collect()
}

/// Sets of stock, each with the classes that fit nothing outside it.
fn asked(problem: &Problem) -> Vec<(Vec<bool>, Vec<&Class>)> {
    let fits: Vec<Vec<bool>> = problem.classes.iter().map(|class| fit_set(problem, class)).collect();
    let every: Vec<bool> = problem.racks.iter().map(|rack| rack.count > 0).collect();
    let mut sets: BTreeSet<Vec<bool>> = fits.iter().filter(|set| set.contains(&true)).cloned().collect();
    if sets.len() > MOST_SETS {
        sets.clear();
    }
    sets.insert(every);
    let asking = |set: Vec<bool>| {
        let inside =
            |fit: &Vec<bool>| fit.contains(&true) && fit.iter().zip(&set).all(|(fits, allowed)| *allowed || !fits);
        let classes = problem.classes.iter().zip(&fits).filter(|(_, fit)| inside(fit)).map(|(class, _)| class);
        let classes = classes.collect();
        (set, classes)
    };
    sets.into_iter().map(asking).collect()
}

/// Classes in all of them together.
fn kinds(asked: &[(Vec<bool>, Vec<&Class>)]) -> u64 {
    asked.iter().map(|(_, classes)| classes.len() as u64).sum()
}

/// What each set of stock is asked for: area, and values by shape with so much work shared among the sets.
fn needs(problem: &Problem, asked: &[(Vec<bool>, Vec<&Class>)], work: u64, steps: &mut Steps<'_>) -> Vec<Need> {
    let prices = prices(problem);
    let mut needs = Vec::new();
    for (set, classes) in asked {
        let want = classes.iter().map(|class| grown(class.size) * i128::from(class.count)).sum();
        let stock: Vec<Option<&Rack>> =
            problem.racks.iter().zip(set).map(|(rack, &allowed)| allowed.then_some(rack)).collect();
        needs.push(Need { want, gives: stock.iter().map(|rack| rack.map_or(0, |rack| grown(rack.size))).collect() });
        let share = work / kinds(asked).max(1) * classes.len() as u64;
        let sizes: Vec<Option<Size>> = stock.iter().map(|rack| rack.map(|rack| rack.size)).collect();
        needs.extend(needs_by_shape(&items(classes, &stock), &sizes, &prices, share, steps));
    }
    needs
}

/// The classes with the ways in which they may lie on some sheet of that stock.
fn items(classes: &[&Class], stock: &[Option<&Rack>]) -> Vec<Item> {
    let lies = |class: &Class| {
        let mut lies = [None, None];
        for rack in stock.iter().flatten() {
            for (own, size) in lies.iter_mut().zip(class.lies(rack)) {
                *own = own.or(size.filter(|size| size.0 <= rack.size.0 && size.1 <= rack.size.1));
            }
        }
        lies
    };
    classes.iter().map(|class| Item { lies: lies(class), count: class.count }).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Length;
    use crate::nest::build::Node;
    use crate::nest::{Grain, Part};
    use crate::stock::{Saw, Sheet};

    fn inches(count: i64) -> Length {
        Length::from_nanometres(25_400_000) * count
    }

    /// Two sheets of 10 by 10 for these parts, as far as cost goes, and what closing makes of it.
    fn closed(parts: &[(i64, i64, u32)]) -> (Option<Solution>, i128) {
        let part = |&(length, width, count): &(i64, i64, u32)| {
            Part::new("part", inches(length), inches(width)).count(count).grain(Grain::Length)
        };
        let parts: Vec<Part> = parts.iter().map(part).collect();
        let problem = Problem::new(&parts, &[Sheet::new("sheet", inches(10), inches(10))], &Saw::new());
        let one = problem.racks[0].cost;
        let bare = Pattern { rack: 0, nodes: vec![Node::Free], parts: Vec::new(), area: 0 };
        let answer = Solution { runs: vec![(bare, 2)], left: vec![0; problem.classes.len()], cost: 2 * one };
        let mut bound = Bound::new(&problem);
        assert_eq!(bound.least().1, one);
        let better = bound.close(&problem, &answer, &mut Steps::new(1_000_000, u64::MAX));
        (better, bound.least().1 / one)
    }

    #[test]
    fn parts_around_a_hole_fill_the_sheet_and_cannot_be_sawn_from_it() {
        assert_eq!(closed(&[(6, 4, 2), (4, 6, 2), (2, 2, 1)]), (None, 2));
    }

    #[test]
    fn parts_that_can_be_sawn_from_one_sheet_are() {
        let (better, sheets) = closed(&[(6, 4, 1), (6, 6, 1), (4, 10, 1)]);
        assert_eq!((better.map(|better| better.runs[0].0.parts.len()), sheets), (Some(3), 1));
    }
}
