//! One stock, ready to be priced.

use super::super::effort::Steps;
use super::super::problem::{Problem, Size};
use super::joins::Joins;
use super::measures::Measures;
use super::price::{Priced, Ware, price};
use super::raster::{Raster, Valued};
use super::shapes::Item;

/// A stock with the parts that it holds.
#[derive(Debug)]
pub(super) struct Board {
    pub(super) rack: usize,
    size: Size,
    measures: Measures,
    wares: Vec<Ware>,
    joins: Joins,
    raster: Option<Raster>,
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
        Some(Board { rack, size: stock.size, measures, wares, joins: Joins::default(), raster })
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

    /// The same with no more copies than are wanted.
    pub(super) fn properly(&mut self, threshold: i64, steps: &mut Steps<'_>) -> Priced {
        let values: Vec<i64> = self.wares.iter().map(|ware| ware.value).collect();
        let measures = self.measures.choose(&values, steps);
        for (at, ware) in self.wares.iter_mut().enumerate() {
            ware.measures = measures.iter().map(|measure| measure.each.get(at).copied().unwrap_or(0)).collect();
        }
        let room: Vec<i64> = measures.iter().map(|measure| measure.whole).collect();
        price(self.size, &room, &self.wares, &mut self.joins, threshold, steps)
    }
}
