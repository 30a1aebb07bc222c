//! Measures of parts of which no sheet holds more than it gives, chosen for the values at hand.
//!
//! # Method
//! The most that the values of parts can sum to under all measures at once is a linear programme; its dual says how much
//! of each measure to add up into one (surrogate constraints: Glover, Operations Research 16, 1968). Measures come from
//! pairs of dual-feasible functions and are added while one is exceeded, the most exceeded first (Kelley 1960). The
//! figures of the programme only choose: the sum of measures is a measure whatever the factors.

use super::super::effort::Steps;
use super::super::problem::Size;
use super::master::{Column, Master};
use super::shapes::{Item, Pair, Shapes};

/// Whole-number measures of one sheet and its parts, both below 2^31.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Measure {
    /// What the sheet holds.
    pub(super) whole: i64,
    /// What one copy of each item takes.
    pub(super) each: Vec<i64>,
}

/// Bits of a measure.
const BITS: u32 = 30;
/// Work on tables, in parts under pairs of functions.
const WORK: u64 = 300_000;
/// Measures that are added for one set of values.
const MOST: usize = 12;
/// Less than this a measure is hardly exceeded.
const HARDLY: f64 = 1.0 + 1e-6;
/// Pivots of the small programme between two measures.
const PIVOTS: usize = 2_000;

/// The measures of one sheet.
#[derive(Debug)]
pub(super) struct Measures {
    shapes: Shapes,
    counts: Vec<u32>,
    area: Measure,
}

impl Measures {
    pub(super) fn new(items: &[Item], sheet: Size) -> Measures {
        let area = |size: Size| i128::from(size.0) * i128::from(size.1);
        let least = |item: &Item| item.lies.iter().flatten().map(|&size| area(size)).min().unwrap_or(0);
        let areas: Vec<i128> = items.iter().map(least).collect();
        Measures {
            shapes: Shapes::new(items, &[Some(sheet)], WORK),
            counts: items.iter().map(|item| item.count).collect(),
            area: coarse(area(sheet), &areas),
        }
    }

    /// Area, the sum of all measures that matters most for the values, and those that it is made of.
    pub(super) fn choose(&self, values: &[i64], steps: &mut Steps<'_>) -> Vec<Measure> {
        let largest = values.iter().copied().max().unwrap_or(0).max(1) as f64;
        let needs: Vec<f64> = values.iter().map(|&value| value as f64 / largest).collect();
        let mut master = Master::new(&needs, self.start());
        let mut measures = vec![self.area.clone()];
        master.add(column(&self.area));
        let mut seen: Vec<Pair> = Vec::new();
        for _ in 0..MOST {
            master.solve(PIVOTS, steps);
            steps.spend(self.shapes.work());
            let amounts = master.duals();
            let Some(pair) = self.most_exceeded(amounts).filter(|pair| !seen.contains(pair)) else { break };
            seen.push(pair);
            let each: Vec<i128> = self.shapes.each(pair).map(|(each, _)| each).collect();
            let measure = coarse(self.shapes.gives(pair).next().unwrap_or(0), &each);
            master.add(column(&measure));
            measures.push(measure);
        }
        master.solve(PIVOTS, steps);
        let factors = self.factors(&master, measures.len());
        let sum = together(&measures, &factors);
        let mut ranked: Vec<(f64, Measure)> = factors.into_iter().zip(measures).collect();
        ranked.sort_by(|one, other| other.0.total_cmp(&one.0));
        let rest = ranked.into_iter().take(KEPT).map(|(_, measure)| measure);
        sum.into_iter().chain(rest).collect()
    }

    /// Columns with which the programme starts: a price on each item by itself, and what is over.
    fn start(&self) -> Vec<Column> {
        let own = self.counts.iter().enumerate();
        let own = own.map(|(row, &count)| Column { cost: f64::from(count), entries: vec![(row, 1.0)] });
        let over = (0..self.counts.len()).map(|row| Column { cost: 0.0, entries: vec![(row, -1.0)] });
        own.chain(over).collect()
    }

    fn most_exceeded(&self, amounts: &[f64]) -> Option<Pair> {
        let mut most = (HARDLY, None);
        for pair in self.shapes.pairs() {
            let whole = self.shapes.gives(pair).next().unwrap_or(0) as f64;
            let taken: f64 = self.shapes.each(pair).zip(amounts).map(|((each, _), amount)| each as f64 * amount).sum();
            if taken > most.0 * whole && whole > 0.0 {
                most = (taken / whole, Some(pair));
            }
        }
        most.1
    }

    /// How much of each measure the programme uses; measures follow the columns of the start.
    fn factors(&self, master: &Master, measures: usize) -> Vec<f64> {
        let mut factors = vec![0.0; measures];
        for (column, value) in master.solution() {
            let at = column.checked_sub(2 * self.counts.len());
            if let Some(factor) = at.and_then(|at| factors.get_mut(at)) {
                *factor = value.max(0.0);
            }
        }
        factors
    }
}

/// Measures beside their sum that are kept.
const KEPT: usize = 4;

/// Entries as fractions of the sheet.
fn column(measure: &Measure) -> Column {
    let whole = measure.whole.max(1) as f64;
    let entries = measure.each.iter().enumerate().filter(|(_, each)| **each > 0);
    Column { cost: 1.0, entries: entries.map(|(row, &each)| (row, each as f64 / whole)).collect() }
}

/// The sum of measures by factors, which are rounded to whole numbers first.
fn together(measures: &[Measure], factors: &[f64]) -> Option<Measure> {
    const FINE: f64 = (1_u64 << BITS) as f64;
    let largest = factors.iter().copied().fold(0.0, f64::max);
    if largest <= 0.0 {
        return None;
    }
    let mut whole = 0_i128;
    let mut each = vec![0_i128; measures.first()?.each.len()];
    for (measure, factor) in measures.iter().zip(factors) {
        // Measures differ in scale: factors are for fractions of the sheet.
        let factor = i128::from(whole_factor((factor / largest * FINE) * (FINE / measure.whole.max(1) as f64)));
        whole += factor * i128::from(measure.whole);
        for (sum, &own) in each.iter_mut().zip(&measure.each) {
            *sum += factor * i128::from(own);
        }
    }
    Some(coarse(whole, &each))
}

/// Rounded down; at most 2^60.
#[allow(clippy::cast_possible_truncation, reason = "the cast cuts off at the ends")]
fn whole_factor(factor: f64) -> i64 {
    factor as i64
}

/// Fewer bits. What was not exceeded before is not exceeded after: the parts' figures are rounded down, and so is the
/// sheet's, which is no less than the sum of theirs.
fn coarse(whole: i128, each: &[i128]) -> Measure {
    let shift = (i128::BITS - whole.leading_zeros()).saturating_sub(BITS);
    let fewer = |value: i128| i64::try_from(value >> shift).unwrap_or(i64::MAX);
    Measure { whole: fewer(whole), each: each.iter().map(|&value| fewer(value)).collect() }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn two_over_half_a_sheet_exceed_a_measure() {
        // By area two fit; but each is over half as long and over half as wide as the sheet.
        let item = Item { lies: [Some((6, 6)), None], count: 2 };
        let measures = Measures::new(&[item], (10, 10)).choose(&[100], &mut Steps::new(1_000_000, u64::MAX));
        assert!(measures.iter().any(|measure| 2 * measure.each[0] > measure.whole));
    }

    #[test]
    fn coarsening_keeps_sums_within_the_sheet() {
        let measure = coarse((1 << 90) - 1, &[1 << 89, (1 << 89) - 1]);
        assert!(measure.each.iter().sum::<i64>() <= measure.whole && measure.whole < 1 << BITS);
    }
}
