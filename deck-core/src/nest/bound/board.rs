//! One stock, ready to be priced.

use super::super::effort::Steps;
use super::super::one;
use super::super::problem::{Problem, Size};
use super::joins::Joins;
use super::measures::Measures;
use super::price::{Found, Priced, Ware, price};
use super::raster::{Raster, Valued};
use super::shapes::Item;

/// Binary digits of values that are rounded up before one sheet is searched with them.
const COARSE: u32 = 10;
/// Steps of a pricing from which on both searches share them.
const LONG: u64 = 4_000_000;
/// The share of them for sets of parts: one in so many.
const SETS_SHARE: u64 = 3;

/// A stock with the parts that it holds.
#[derive(Debug)]
pub(super) struct Board {
    pub(super) rack: usize,
    size: Size,
    measures: Measures,
    wares: Vec<Ware>,
    joins: Joins,
    raster: Option<Raster>,
    /// The same sheet for the search that joins rectangles; made when it is first asked.
    joining: Option<one::Board>,
}

impl Board {
    /// None where there are no such sheets.
    pub(super) fn new(problem: &Problem, rack: usize) -> Option<Board> {
        let stock = problem.racks.get(rack).filter(|stock| stock.count > 0 && stock.size.0 > 0)?;
        let fits = |size: &Size| size.0 <= stock.size.0 && size.1 <= stock.size.1;
        let mut wares = Vec::new();
        let mut items = Vec::new();
        for (class, kind) in (0_u32..).zip(&problem.classes) {
            // Orders with more classes are not worked on.
            let place = u16::try_from(wares.len()).unwrap_or(u16::MAX);
            let lies = kind.lies(stock).map(|size| size.filter(fits));
            if lies.iter().any(Option::is_some) {
                wares.push(Ware { class, place, lies, count: kind.count, measures: Vec::new(), value: 0 });
                items.push(Item { lies, count: kind.count });
            }
        }
        let lies = items.iter().flat_map(|item: &Item| item.lies).flatten();
        let raster = Raster::new(lies, stock.size);
        let measures = Measures::new(&items, stock.size);
        Some(Board { rack, size: stock.size, measures, wares, joins: Joins::default(), raster, joining: None })
    }

    /// True where it holds the class.
    pub(super) fn holds(&self, class: usize) -> bool {
        self.wares.iter().any(|ware| ware.class as usize == class)
    }

    /// True where it can be priced fast.
    pub(super) fn is_fast(&self) -> bool {
        self.raster.is_some()
    }

    /// By class, how many copies lie on a sheet in rows and columns.
    pub(super) fn in_rows(&self) -> impl Iterator<Item = (u32, u32)> + '_ {
        let copies = |size: Size| (self.size.0 / size.0.max(1)).saturating_mul(self.size.1 / size.1.max(1));
        self.wares.iter().filter_map(move |ware| {
            let most = ware.lies.iter().flatten().map(|&size| copies(size)).max()?;
            Some((ware.class, u32::try_from(most).unwrap_or(u32::MAX)))
        })
    }

    /// What parts are worth, by class in `rows`.
    pub(super) fn value(&mut self, rows: &[usize], values: &[i64]) {
        for ware in &mut self.wares {
            let row = rows.binary_search(&(ware.class as usize)).ok();
            ware.value = row.and_then(|row| values.get(row)).copied().unwrap_or(0);
        }
    }

    /// The patterns worth more than the threshold where any number of copies may lie on a sheet.
    pub(super) fn loosely(&self, threshold: i64, steps: &mut Steps<'_>) -> Priced {
        let valued = |ware: &Ware| Valued { class: ware.class, lies: ware.lies, value: ware.value };
        let parts: Vec<Valued> = self.wares.iter().map(valued).collect();
        match self.raster.as_ref().and_then(|raster| raster.worth(&parts, steps)) {
            Some(worth) => Priced { found: worth.patterns(self.size, threshold, steps), bound: worth.most() },
            None => Priced { found: Vec::new(), bound: i64::MAX },
        }
    }

    /// The same with no more copies than are wanted. Short pricings branch over sets of parts; a long one that finds
    /// nothing asks the search for one sheet as well.
    pub(super) fn properly(&mut self, problem: &Problem, threshold: i64, steps: &mut Steps<'_>) -> Priced {
        let mut some = steps.lend(if steps.left() < LONG { u64::MAX } else { steps.left() / SETS_SHARE });
        let by_sets = self.by_sets(threshold, &mut some);
        steps.take_back(&some);
        if steps.left() < LONG / SETS_SHARE || !by_sets.found.is_empty() || by_sets.bound <= threshold {
            return by_sets;
        }
        let joined = self.by_joining(problem, threshold, steps);
        Priced { bound: by_sets.bound.min(joined.bound), ..joined }
    }

    /// By branching over sets of parts.
    fn by_sets(&mut self, threshold: i64, steps: &mut Steps<'_>) -> Priced {
        let values: Vec<i64> = self.wares.iter().map(|ware| ware.value).collect();
        let measures = self.measures.choose(&values, steps);
        for (at, ware) in self.wares.iter_mut().enumerate() {
            ware.measures = measures.iter().map(|measure| measure.each.get(at).copied().unwrap_or(0)).collect();
        }
        let room: Vec<i64> = measures.iter().map(|measure| measure.whole).collect();
        price(self.size, &room, &self.wares, &mut self.joins, threshold, steps)
    }

    /// By the search for one sheet ([`one`]): its weights on copies bound sheets of many parts better. Values are rounded
    /// up, so that nothing is understated.
    fn by_joining(&mut self, problem: &Problem, threshold: i64, steps: &mut Steps<'_>) -> Priced {
        let rack = self.rack;
        let board = self.joining.get_or_insert_with(|| one::unlimited_saw(problem, rack));
        let mut values = vec![0_i64; problem.classes.len()];
        for ware in &self.wares {
            if let Some(value) = values.get_mut(ware.class as usize) {
                *value = (ware.value + (1 << COARSE) - 1) >> COARSE;
            }
        }
        let filled = board.exceed(&values, threshold >> COARSE, steps);
        // Coarse values of no more than the coarse threshold are fine values of no more than the threshold.
        let most =
            if filled.bound <= threshold >> COARSE { threshold } else { filled.bound.saturating_mul(1 << COARSE) };
        let worth = |&(class, copies): &(u32, u32)| {
            let ware = self.wares.iter().find(|ware| ware.class == class);
            ware.map_or(0, |ware| ware.value.saturating_mul(i64::from(copies)))
        };
        let value = filled.parts.iter().map(worth).sum();
        let found = (value > threshold).then_some(Found { value, parts: filled.parts, nodes: filled.nodes });
        Priced { found: found.into_iter().collect(), bound: most }
    }
}

#[cfg(test)]
mod tests {
    use super::super::super::part::Part;
    use super::*;
    use crate::length::Length;
    use crate::stock::{Saw, Sheet};

    #[test]
    fn sets_and_joins_say_the_same() {
        let part = |index: i64| {
            let (length, width) = (Length::inches(9 + index * 7 % 23), Length::inches(5 + index * 5 % 17));
            Part::new(format!("part {index}"), length, width).count(1 + u32::try_from(index % 2).unwrap())
        };
        let parts: Vec<Part> = (0..8).map(part).collect();
        let stock = [Sheet::new("sheet", Length::inches(40), Length::inches(30))];
        let problem = Problem::new(&parts, &stock, &Saw::new());
        let mut board = Board::new(&problem, 0).unwrap();
        let rows: Vec<usize> = (0..problem.classes.len()).collect();
        let values: Vec<i64> = (1_i64..).zip(&rows).map(|(place, _)| (1 << 26) + place * 7_654_321).collect();
        board.value(&rows, &values);
        let mut steps = Steps::new(u64::MAX, u64::MAX);
        let best = board.by_sets(0, &mut steps).bound;
        // A search that stops early may overstate the best; the last find at rising thresholds is the best.
        let (mut least, mut last) = (0, 0);
        while let Some(found) = board.by_sets(least, &mut steps).found.first() {
            (least, last) = (found.value, found.value);
        }
        assert!(last > 0 && last <= best);
        // More than what rounding adds to a sheet of parts.
        let above = last + (1 << 14);
        let none = board.by_joining(&problem, above, &mut steps);
        assert_eq!((none.bound, none.found.len()), (above, 0));
        let below = last - (1 << 14);
        let some = board.by_joining(&problem, below, &mut steps);
        assert!(some.bound >= last && some.found[0].value > below && some.found[0].value <= last, "{some:?}");
    }
}
