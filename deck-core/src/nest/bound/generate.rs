//! Patterns made to order: what the parts are worth to each other, and the bound that follows from it.
//!
//! # Method
//! Column generation: Gilmore and Gomory, "Multistage cutting stock problems of two and more dimensions", Operations
//! Research 13 (1965). The linear programme over the patterns at hand suggests what each part is worth; the dearest
//! pattern at those values joins them. Any values, with a proven limit of what one sheet holds of them, bound the cost:
//! Farley, "A note on bounding a class of linear programming problems, including cutting stock problems", Operations
//! Research 38 (1990). At first any number of copies may lie on a sheet, whatever is wanted: that is priced fast
//! ([`raster`](super::raster)) and mostly proves what there is to prove; after it sheets hold no more than is wanted
//! ([`price`](super::price)). Values are rounded to whole numbers first and everything behind is exact, so a slip of the
//! floating point can only make the bound worse.

use super::super::build::{Pattern, Solution, clipped};
use super::super::effort::Steps;
use super::super::problem::Problem;
use super::board::Board;
use super::master::{Column, Master};
use super::price::Found;
use super::whole::{Need, Price};

/// Worth of the dearest sheet in the whole numbers that values are rounded to.
const UNIT: f64 = (1_i64 << 30) as f64;
/// Values are cut off there, in dearest sheets: sums of them over a sheet then stay below 2^62.
const DEAREST: f64 = 16.0;
/// Classes beyond which the linear programme takes longer than it is worth.
const MOST_CLASSES: usize = 400;
/// Pivots between two pricings.
const PIVOTS: usize = 20_000;
/// What floating point may be wrong by, relative to the cost.
const SLACK: f64 = 1e-6;
/// Patterns that are worth no more than this beyond their cost would not change the programme.
const HARDLY: f64 = 1e-7;
/// Steps of the first pricings, and by how much they grow when they find nothing and prove nothing.
const PRICING: u64 = 500_000;
const LONGER: u64 = 4;

/// The patterns at hand, their linear programme, and the best needs that came of it.
#[derive(Debug)]
pub(super) struct Generator<'p> {
    problem: &'p Problem,
    prices: Vec<Price>,
    /// Classes that some sheet holds; each is a row.
    rows: Vec<usize>,
    /// Stock of which there may be too little: rows behind those of the classes.
    scarce: Vec<usize>,
    boards: Vec<Board>,
    master: Master,
    /// Pattern of each column that has one.
    patterns: Vec<Option<Pattern>>,
    /// Cost of the dearest sheet.
    unit: f64,
    /// Steps that pricing one stock may take.
    pricing: u64,
    /// The best bound so far and the values that gave it.
    best: (i128, Vec<f64>),
    /// Whether the next values are drawn towards those.
    smooth: bool,
    /// True while any number of copies is allowed on a sheet, which is priced fast.
    loose: bool,
    /// Columns with more copies on a sheet than are wanted.
    improper: Vec<usize>,
}

/// What is proven, what an answer costs, and what every cost is a multiple of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Gap {
    pub(super) least: i128,
    pub(super) known: i128,
    pub(super) grain: i128,
}

/// How a round ended.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Round {
    /// A need that bounds the cost, and whether another round may better it.
    Priced(Need, bool),
    /// The programme can do no better.
    Done,
}

impl<'p> Generator<'p> {
    /// Ready to start from the patterns of an answer; none for orders that are too large, or where nothing costs.
    pub(super) fn new(problem: &'p Problem, prices: &[Price], answer: &Solution) -> Option<Generator<'p>> {
        let dearest = prices.iter().map(|price| price.cost).max().filter(|&cost| cost > 0)?;
        if problem.classes.len() > usize::from(u16::MAX) {
            return None;
        }
        let boards: Vec<Board> = (0..problem.racks.len()).filter_map(|rack| Board::new(problem, rack)).collect();
        let held = |class: &usize| boards.iter().any(|board| board.holds(*class));
        let rows: Vec<usize> = (0..problem.classes.len()).filter(held).collect();
        if rows.is_empty() || rows.len() > MOST_CLASSES {
            return None;
        }
        let copies = rows.iter().filter_map(|&row| problem.classes.get(row)).map(|class| u64::from(class.count)).sum();
        let scarce = |board: &Board| prices.get(board.rack).is_some_and(|price| u64::from(price.count) < copies);
        let scarce: Vec<usize> = boards.iter().filter(|board| scarce(board)).map(|board| board.rack).collect();
        let mut generator = Generator {
            problem,
            prices: prices.to_vec(),
            rows,
            scarce,
            boards,
            master: Master::new(&[], Vec::new()),
            patterns: Vec::new(),
            unit: dearest as f64,
            pricing: PRICING,
            best: (0, Vec::new()),
            smooth: false,
            loose: false,
            improper: Vec::new(),
        };
        generator.loose = generator.boards.iter().all(Board::is_fast);
        generator.start();
        if generator.loose {
            generator.start_in_rows();
        }
        for (pattern, _) in &answer.runs {
            generator.add(pattern.clone());
        }
        Some(generator)
    }

    /// The first programme: each part on a sheet of its own, and what is over or lacking.
    fn start(&mut self) {
        let class = |row: &usize| self.problem.classes.get(*row);
        let mut needs: Vec<f64> = self.rows.iter().filter_map(class).map(|class| f64::from(class.count)).collect();
        let mut columns: Vec<Column> = Vec::new();
        // Dearer than any part on a sheet of its own: it only stands in where the stock is too small for a start.
        let lacking = 2.0 * needs.iter().sum::<f64>();
        for row in 0..self.rows.len() {
            columns.push(Column { cost: lacking, entries: vec![(row, 1.0)] });
        }
        for (row, &rack) in (self.rows.len()..).zip(&self.scarce) {
            columns.push(Column { cost: 0.0, entries: vec![(row, 1.0)] });
            needs.push(self.prices.get(rack).map_or(0.0, |price| f64::from(price.count)));
        }
        for row in 0..self.rows.len() {
            columns.push(Column { cost: 0.0, entries: vec![(row, -1.0)] });
        }
        self.patterns = vec![None; columns.len()];
        self.master = Master::new(&needs, columns);
    }

    /// Sheets of one class each. They keep small parts from being thought worth a sheet; no answer is made of them, so
    /// their cuts are not told.
    fn start_in_rows(&mut self) {
        let rows: Vec<(usize, (u32, u32))> =
            self.boards.iter().flat_map(|board| board.in_rows().map(|part| (board.rack, part))).collect();
        for (rack, part) in rows {
            self.add(Pattern { rack, nodes: Vec::new(), parts: vec![part], area: 0 });
        }
    }

    fn add(&mut self, pattern: Pattern) {
        let row = |class: u32| self.rows.binary_search(&(class as usize)).ok();
        let mut entries: Vec<(usize, f64)> =
            pattern.parts.iter().filter_map(|&(class, copies)| Some((row(class)?, f64::from(copies)))).collect();
        if let Some(at) = self.scarce.iter().position(|&rack| rack == pattern.rack) {
            entries.push((self.rows.len() + at, 1.0));
        }
        self.master.add(Column { cost: self.cost(pattern.rack), entries });
        let wanted = |class: u32| self.problem.classes.get(class as usize).map_or(0, |class| class.count);
        let proper = pattern.parts.iter().all(|&(class, copies)| copies <= wanted(class));
        if !proper {
            self.improper.push(self.patterns.len());
        }
        self.patterns.push(Some(pattern));
    }

    /// Solves the programme and prices every stock at its values. Patterns that cannot matter in the gap are not looked
    /// for.
    pub(super) fn round(&mut self, gap: Gap, steps: &mut Steps<'_>) -> Round {
        self.master.solve(PIVOTS, steps);
        let mut goal = self.goal(gap);
        if goal.is_none() && self.loose {
            self.end_loose();
            self.master.solve(PIVOTS, steps);
            goal = self.goal(gap);
        }
        let Some(goal) = goal else { return Round::Done };
        let duals = self.smoothed();
        let (need, found, complete) = self.price(&duals, goal, steps);
        if found.is_empty() && (self.smooth || self.loose) {
            // The values of the programme itself come next, and after them sheets without too many copies.
            if !std::mem::take(&mut self.smooth) {
                self.end_loose();
            }
            return Round::Priced(need, true);
        }
        if found.is_empty() && !complete {
            self.pricing = self.pricing.saturating_mul(LONGER);
        }
        let more = !found.is_empty() || !complete;
        self.learn(found);
        let cost = need.cost(&self.prices);
        if cost >= self.best.0 {
            self.best = (cost, duals);
        }
        Round::Priced(need, more)
    }

    /// The cost to be exceeded so that the next multiple of the grain is proven; none where the programme cannot.
    fn goal(&self, gap: Gap) -> Option<f64> {
        let [least, known, grain] = [gap.least, gap.known, gap.grain.max(1)].map(|cost| cost as f64 / self.unit);
        let most = ((self.master.cost() * (1.0 - SLACK) / grain).ceil() * grain).min(known);
        (most >= least + grain / 2.0).then_some(most - grain)
    }

    /// What parts are worth at those values, what each sheet holds of it at most, the patterns that exceed their cost,
    /// and whether those are all that matter.
    fn price(&mut self, duals: &[f64], goal: f64, steps: &mut Steps<'_>) -> (Need, Vec<(usize, Found)>, bool) {
        let values: Vec<i64> =
            duals.iter().take(self.rows.len()).map(|&dual| whole(dual.clamp(0.0, DEAREST) * UNIT)).collect();
        let want = self.want(&values);
        // By so much patterns may be worth more than they cost, and the bound still reaches there.
        let rents: f64 = self.scarce.iter().map(|&rack| self.rent(rack, duals) * self.count(rack)).sum();
        let yielding = (want as f64 / UNIT / (goal + rents)).max(1.0 + HARDLY);
        let mut need = Need { want, gives: vec![0; self.prices.len()] };
        let (mut found, mut complete) = (Vec::new(), true);
        let costs: Vec<f64> =
            self.boards.iter().map(|board| self.cost(board.rack) + self.rent(board.rack, duals)).collect();
        for (board, cost) in self.boards.iter_mut().zip(costs) {
            let threshold = whole(cost * UNIT * yielding) - 1;
            board.value(&self.rows, &values);
            let mut share = steps.lend(if self.loose { u64::MAX } else { self.pricing });
            let priced = if self.loose {
                board.loosely(threshold, &mut share)
            } else {
                board.properly(self.problem, threshold, &mut share)
            };
            steps.take_back(&share);
            if let Some(gives) = need.gives.get_mut(board.rack) {
                *gives = i128::from(priced.bound);
            }
            complete &= priced.bound <= threshold;
            found.extend(priced.found.into_iter().map(|found| (board.rack, found)));
        }
        (need, found, complete)
    }

    /// Takes patterns into the programme. What was found for other values than its own need not lower its cost.
    fn learn(&mut self, mut found: Vec<(usize, Found)>) {
        found.retain(|(rack, found)| self.lowers(*rack, found));
        self.smooth = !found.is_empty();
        for (rack, found) in found {
            self.add(self.pattern(rack, found));
        }
    }

    /// Cost of a sheet.
    fn cost(&self, rack: usize) -> f64 {
        self.prices.get(rack).map_or(0.0, |price| price.cost as f64 / self.unit)
    }

    fn count(&self, rack: usize) -> f64 {
        self.prices.get(rack).map_or(0.0, |price| f64::from(price.count))
    }

    /// What one more sheet of a scarce stock would save.
    fn rent(&self, rack: usize, duals: &[f64]) -> f64 {
        let at = self.scarce.iter().position(|&other| other == rack);
        at.and_then(|at| duals.get(self.rows.len() + at)).map_or(0.0, |dual| (-dual).max(0.0))
    }

    /// The values of the programme drawn half way to those that gave the best bound so far: they swing less.
    ///
    /// # Method
    /// Wentges, "Weighted Dantzig-Wolfe decomposition for linear mixed-integer programming", International Transactions
    /// in Operational Research 4 (1997).
    fn smoothed(&self) -> Vec<f64> {
        let (duals, best) = (self.master.duals(), &self.best.1);
        if !self.smooth || best.len() != duals.len() {
            return duals.to_vec();
        }
        duals.iter().zip(best).map(|(own, best)| own.midpoint(*best)).collect()
    }

    /// True where a pattern would lower the cost of the programme.
    fn lowers(&self, rack: usize, found: &Found) -> bool {
        let duals = self.master.duals();
        let dual = |class: u32| self.rows.binary_search(&(class as usize)).ok().and_then(|row| duals.get(row));
        let worth: f64 = found.parts.iter().filter_map(|&(class, copies)| Some(dual(class)? * f64::from(copies))).sum();
        worth > self.cost(rack) + self.rent(rack, duals) + HARDLY
    }

    /// From here on no sheet holds more copies than are wanted.
    fn end_loose(&mut self) {
        self.loose = false;
        let wanted = self.problem.wanted();
        for column in std::mem::take(&mut self.improper) {
            self.master.forbid(column);
            if let Some(pattern) = self.patterns.get_mut(column).and_then(Option::take) {
                self.add(clipped(self.problem, &pattern, &wanted));
            }
        }
    }

    fn want(&self, values: &[i64]) -> i128 {
        let count = |row: &usize| self.problem.classes.get(*row).map_or(0, |class| i128::from(class.count));
        self.rows.iter().zip(values).map(|(row, &value)| i128::from(value) * count(row)).sum()
    }

    fn pattern(&self, rack: usize, found: Found) -> Pattern {
        let area = |&(class, copies): &(u32, u32)| {
            self.problem.classes.get(class as usize).map_or(0, |class| class.area * i128::from(copies))
        };
        Pattern { rack, area: found.parts.iter().map(area).sum(), nodes: found.nodes, parts: found.parts }
    }

    /// The patterns that the programme uses, the most used first, and how often.
    pub(super) fn patterns(self) -> Vec<(Pattern, f64)> {
        let mut times = vec![0.0; self.patterns.len()];
        for (column, value) in self.master.solution() {
            if let Some(times) = times.get_mut(column) {
                *times = value;
            }
        }
        let patterns = self.patterns.into_iter().zip(times);
        let mut patterns: Vec<(Pattern, f64)> =
            patterns.filter_map(|(pattern, times)| Some((pattern?, times))).collect();
        patterns.retain(|(pattern, times)| *times > 0.0 && !pattern.nodes.is_empty());
        patterns.sort_by(|one, other| other.1.total_cmp(&one.1));
        patterns
    }
}

/// Rounded down; figures are far below 2^62, and what is not is cut off.
#[allow(clippy::cast_possible_truncation, reason = "the cast cuts off at the ends")]
fn whole(figure: f64) -> i64 {
    figure as i64
}
