//! Sheet after sheet: which stock is sawn next, until every part has a place or no sheet is left.

use super::super::effort::Steps;
use super::super::problem::{Class, Problem};
use super::fill::{Pattern, fill};
use super::queue::Queue;
use super::rule::Rule;

/// Which stock the next sheet is taken from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(in crate::nest) enum Choice {
    /// Of the stock that holds the largest part left, the sheet that costs least for the area placed on it.
    Cheapest,
    /// First everything that costs nothing; then as above.
    FreeFirst,
    /// That stock where it holds the largest part left; otherwise as above.
    Prefer(usize),
}

/// A pattern and how many sheets are sawn by it.
pub(in crate::nest) type Run = (Pattern, u32);

/// A whole answer, as yet without labels.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(in crate::nest) struct Solution {
    pub(in crate::nest) runs: Vec<Run>,
    /// Copies of each class that found no place.
    pub(in crate::nest) left: Vec<u32>,
    /// Cost in the smallest units.
    pub(in crate::nest) cost: i128,
}

/// What remains to be placed, and of which stock how much remains.
struct Packing<'p, 's, 'w> {
    problem: &'p Problem,
    rule: Rule,
    queue: Queue,
    left: &'s mut [u32],
    stock: &'s mut [u32],
    runs: Vec<Run>,
    steps: &'s mut Steps<'w>,
}

/// How to pack: the classes in order, the rule, and where sheets come from.
#[derive(Debug, Clone)]
pub(in crate::nest) struct Way {
    pub(in crate::nest) order: Vec<u32>,
    pub(in crate::nest) rule: Rule,
    pub(in crate::nest) choice: Choice,
}

/// Packs the whole order.
pub(in crate::nest) fn pack(problem: &Problem, way: Way, steps: &mut Steps) -> Solution {
    let mut left = problem.wanted();
    let mut stock: Vec<u32> = problem.racks.iter().map(|rack| rack.count).collect();
    let runs = pack_some(problem, way, &mut left, &mut stock, steps);
    let cost = runs.iter().map(|(pattern, times)| cost(problem, pattern.rack) * i128::from(*times)).sum();
    Solution { runs, left, cost }
}

/// Packs what is left of the classes in the order onto what is left of the stock, and takes it off both.
pub(in crate::nest) fn pack_some(
    problem: &Problem,
    way: Way,
    left: &mut [u32],
    stock: &mut [u32],
    steps: &mut Steps,
) -> Vec<Run> {
    let queue = Queue::new(problem, way.order);
    let mut packing = Packing { problem, rule: way.rule, queue, left, stock, runs: Vec::new(), steps };
    packing.run(way.choice);
    packing.runs
}

/// The cost of one sheet of a stock.
pub(in crate::nest) fn cost(problem: &Problem, rack: usize) -> i128 {
    problem.racks.get(rack).map_or(0, |rack| rack.cost)
}

impl Packing<'_, '_, '_> {
    fn run(&mut self, choice: Choice) {
        if choice == Choice::FreeFirst {
            let free: Vec<usize> =
                (0..self.problem.racks.len()).filter(|&rack| cost(self.problem, rack) == 0).collect();
            while let Some(pattern) = self.best_fill(&free) {
                self.saw(pattern);
            }
        }
        while let Some(racks) = self.racks_for_largest() {
            let racks = match choice {
                Choice::Prefer(rack) if racks.contains(&rack) => vec![rack],
                _ => racks,
            };
            let Some(pattern) = self.best_fill(&racks) else { break };
            self.saw(pattern);
        }
    }

    /// The stock that can hold the first part in the order which any stock can hold; parts that none can are passed
    /// over for good. Otherwise small parts could use up the few sheets that are large enough for the large ones.
    fn racks_for_largest(&mut self) -> Option<Vec<usize>> {
        while let Some((place, class)) = self.queue.first() {
            if self.left.get(class as usize).is_some_and(|&left| left > 0) {
                let racks = self.racks_for(class);
                if !racks.is_empty() {
                    return Some(racks);
                }
            }
            self.queue.take_out(place);
        }
        None
    }

    fn racks_for(&self, class: u32) -> Vec<usize> {
        let class: Option<&Class> = self.problem.classes.get(class as usize);
        let racks = self.problem.racks.iter().zip(&*self.stock).enumerate();
        racks
            .filter(|(_, (rack, count))| **count > 0 && class.is_some_and(|class| Problem::fits(class, rack)))
            .map(|(index, _)| index)
            .collect()
    }

    /// The best next sheet out of those, or none where nothing can be placed on them.
    fn best_fill(&mut self, racks: &[usize]) -> Option<Pattern> {
        let mut best: Option<Pattern> = None;
        for &rack in racks {
            if self.stock.get(rack).copied().unwrap_or(0) == 0 {
                continue;
            }
            let pattern = fill(self.problem, rack, &mut self.queue, self.left, self.rule, self.steps);
            if pattern.area > 0 && best.as_ref().is_none_or(|best| self.is_better(&pattern, best)) {
                best = Some(pattern);
            }
        }
        best
    }

    /// Less cost for the area placed; then less waste; then more placed.
    fn is_better(&self, one: &Pattern, other: &Pattern) -> bool {
        let key = |this: &Pattern, that: &Pattern| {
            let waste = self
                .problem
                .racks
                .get(this.rack)
                .map_or(0, |rack| i128::from(rack.size.0) * i128::from(rack.size.1) - this.area);
            (self.weight(this.rack) * coarse(that.area), waste, -this.area)
        };
        key(one, other) < key(other, one)
    }

    /// The cost, coarse enough to be multiplied by an area.
    fn weight(&self, rack: usize) -> i128 {
        match self.problem.cost_in {
            super::super::cost::CostIn::Money => cost(self.problem, rack),
            super::super::cost::CostIn::Area => coarse(cost(self.problem, rack)),
        }
    }

    /// Saws by a pattern as often as parts and stock allow, and takes what it uses off both.
    ///
    /// Filling again would give the same pattern as long as twice what it uses is left of every class.
    fn saw(&mut self, pattern: Pattern) {
        let stock = self.stock.get(pattern.rack).copied().unwrap_or(0);
        let often =
            |&(class, copies): &(u32, u32)| self.left.get(class as usize).map_or(0, |left| left / copies.max(1));
        let times = pattern.parts.iter().map(often).min().unwrap_or(0).min(stock).max(1);
        for &(class, copies) in &pattern.parts {
            if let Some(left) = self.left.get_mut(class as usize) {
                *left = left.saturating_sub(copies.saturating_mul(times));
            }
        }
        if let Some(stock) = self.stock.get_mut(pattern.rack) {
            *stock = stock.saturating_sub(times);
        }
        self.runs.push((pattern, times));
    }
}

/// An area in units of 2^24 square nanometres (a square of 4 µm): the areas of sheets then fit into 57 bits, and a
/// product with a price or with another area into 128.
fn coarse(area: i128) -> i128 {
    (area >> 24).max(1)
}
