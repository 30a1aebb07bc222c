//! Patterns made to order: what the parts are worth to each other, and the bound that follows from it.
//!
//! # Method
//! Column generation: Gilmore and Gomory, "Multistage cutting stock problems of two and more dimensions", Operations
//! Research 13 (1965). The linear programme over the patterns at hand suggests what each part is worth; the dearest
//! pattern at those values joins them. Any values, with a proven limit of what one sheet holds of them, bound the cost:
//! Farley, "A note on bounding a class of linear programming problems, including cutting stock problems", Operations
//! Research 38 (1990). Values are rounded to whole numbers first and everything behind is exact, so a slip of the
//! floating point can only make the bound worse.

use super::super::build::{Pattern, Solution};
use super::super::effort::Steps;
use super::super::problem::{Problem, Size};
use super::master::{Column, Master};
use super::measures::Measures;
use super::price::{Found, Priced, Ware, price};
use super::shapes::Item;
use super::whole::{Need, Price};

/// Worth of the dearest sheet in the whole numbers that values are rounded to.
const UNIT: f64 = (1_i64 << 30) as f64;
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
}

/// One stock, ready to be priced.
#[derive(Debug)]
struct Board {
    rack: usize,
    size: Size,
    measures: Measures,
    wares: Vec<Ware>,
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
        let boards: Vec<Board> = (0..problem.racks.len()).filter_map(|rack| Board::new(problem, rack)).collect();
        let held =
            |class: &usize| boards.iter().any(|board| board.wares.iter().any(|ware| ware.class as usize == *class));
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
        };
        generator.start();
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

    fn add(&mut self, pattern: Pattern) {
        let row = |class: u32| self.rows.binary_search(&(class as usize)).ok();
        let mut entries: Vec<(usize, f64)> =
            pattern.parts.iter().filter_map(|&(class, copies)| Some((row(class)?, f64::from(copies)))).collect();
        if let Some(at) = self.scarce.iter().position(|&rack| rack == pattern.rack) {
            entries.push((self.rows.len() + at, 1.0));
        }
        let cost = self.prices.get(pattern.rack).map_or(0.0, |price| price.cost as f64 / self.unit);
        self.master.add(Column { cost, entries });
        self.patterns.push(Some(pattern));
    }

    /// Solves the programme and prices every stock at its values. `least` is what is proven, `known` the cost of an
    /// answer: patterns that cannot matter between them are not looked for.
    pub(super) fn round(&mut self, least: i128, known: i128, grain: i128, steps: &mut Steps<'_>) -> Round {
        self.master.solve(PIVOTS, steps);
        let cost = self.master.cost();
        let (least, known, grain) =
            (least as f64 / self.unit, known as f64 / self.unit, grain.max(1) as f64 / self.unit);
        // The most that the values can prove, as all costs are multiples of the grain.
        let most = ((cost * (1.0 - SLACK) / grain).ceil() * grain).min(known);
        if most < least + grain / 2.0 {
            return Round::Done;
        }
        let duals = self.master.duals();
        let (worth, rent) = duals.split_at(self.rows.len().min(duals.len()));
        let rents: f64 = self
            .scarce
            .iter()
            .zip(rent)
            .filter_map(|(&rack, rent)| Some((self.prices.get(rack)?, rent)))
            .map(|(price, rent)| (-rent).max(0.0) * f64::from(price.count))
            .sum();
        let values: Vec<i64> = worth.iter().map(|&dual| whole(dual.max(0.0) * UNIT)).collect();
        let want = self.want(&values);
        // By so much patterns may be worth more than they cost, and the bound still reaches there.
        let yielding = (want as f64 / UNIT / (most - grain + rents)).max(1.0 + HARDLY);
        let mut need = Need { want, gives: vec![0; self.prices.len()] };
        let mut found = Vec::new();
        let mut complete = true;
        for board in &mut self.boards {
            let rent = self.scarce.iter().position(|&rack| rack == board.rack).and_then(|at| rent.get(at));
            let cost = self.prices.get(board.rack).map_or(0.0, |price| price.cost as f64 / self.unit)
                + rent.map_or(0.0, |rent| (-rent).max(0.0));
            let threshold = whole(cost * UNIT * yielding) - 1;
            let mut share = steps.lend(self.pricing);
            let priced = board.price(&self.rows, &values, threshold, &mut share);
            steps.take_back(&share);
            if let Some(gives) = need.gives.get_mut(board.rack) {
                *gives = i128::from(priced.bound);
            }
            complete &= priced.bound <= threshold;
            found.extend(priced.found.into_iter().map(|found| (board.rack, found)));
        }
        if found.is_empty() && !complete {
            self.pricing = self.pricing.saturating_mul(LONGER);
        }
        let more = !found.is_empty() || !complete;
        for (rack, found) in found {
            self.add(self.pattern(rack, found));
        }
        Round::Priced(need, more)
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

    /// The patterns met, those in use in the programme first, and how often.
    pub(super) fn patterns(self) -> Vec<(Pattern, f64)> {
        let mut times = vec![0.0; self.patterns.len()];
        for (column, value) in self.master.solution() {
            if let Some(times) = times.get_mut(column) {
                *times = value;
            }
        }
        let mut patterns: Vec<(Pattern, f64)> =
            self.patterns.into_iter().zip(times).filter_map(|(pattern, times)| Some((pattern?, times))).collect();
        patterns.sort_by(|one, other| other.1.total_cmp(&one.1));
        patterns
    }
}

/// Rounded down; figures are far below 2^62, and what is not is cut off.
#[allow(clippy::cast_possible_truncation, reason = "the cast cuts off at the ends")]
fn whole(figure: f64) -> i64 {
    figure as i64
}

impl Board {
    fn new(problem: &Problem, rack: usize) -> Option<Board> {
        let stock = problem.racks.get(rack).filter(|stock| stock.count > 0 && stock.size.0 > 0)?;
        let fits = |size: &Size| size.0 <= stock.size.0 && size.1 <= stock.size.1;
        let mut wares = Vec::new();
        let mut items = Vec::new();
        for (class, kind) in (0_u32..).zip(&problem.classes) {
            let lies = kind.lies(stock).map(|size| size.filter(fits));
            if lies.iter().any(Option::is_some) {
                wares.push(Ware { class, lies, count: kind.count, measures: Vec::new(), value: 0 });
                items.push(Item { lies, count: kind.count });
            }
        }
        Some(Board { rack, size: stock.size, measures: Measures::new(&items, stock.size), wares })
    }

    fn price(&mut self, rows: &[usize], values: &[i64], threshold: i64, steps: &mut Steps<'_>) -> Priced {
        for ware in &mut self.wares {
            let row = rows.binary_search(&(ware.class as usize)).ok();
            ware.value = row.and_then(|row| values.get(row)).copied().unwrap_or(0);
        }
        let own: Vec<i64> = self.wares.iter().map(|ware| ware.value).collect();
        let measures = self.measures.choose(&own, steps);
        for (at, ware) in self.wares.iter_mut().enumerate() {
            ware.measures = measures.iter().map(|measure| measure.each.get(at).copied().unwrap_or(0)).collect();
        }
        let room: Vec<i64> = measures.iter().map(|measure| measure.whole).collect();
        price(self.size, &room, &self.wares, threshold, steps)
    }
}
