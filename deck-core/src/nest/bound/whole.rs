//! The least cost of whole sheets that meet several needs at once, each from its own set of stock.
//!
//! # Method
//! Depth-first branch and bound over the number of sheets of each stock (Land and Doig 1960), with the relaxation of
//! [`cover`](super::cover) for each need as the bound. The cost of a known answer starts as the one to undercut.

use super::cover::{Offer, cheapest, least_cost};

/// What the parts of one set of stock ask for.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Need {
    /// The stock that can meet it.
    pub(super) stock: Vec<bool>,
    /// Area to cover, in grown measure.
    pub(super) area: i128,
    /// Sheets, whatever their area.
    pub(super) sheets: i128,
}

/// Nodes of the search: a few stock sizes and some dozen sheets are settled well within, and a millisecond is not
/// exceeded.
const NODES: u32 = 1_000;

/// The least cost at which whole sheets meet every need, at most `known`; none where the search would take too long.
pub(super) fn least_whole_cost(offers: &[Offer], needs: &[Need], known: i128) -> Option<i128> {
    let mut search = Search { offers, best: known, nodes: NODES };
    search.branch(0, 0, needs);
    (search.nodes > 0).then_some(search.best)
}

struct Search<'a> {
    offers: &'a [Offer],
    best: i128,
    nodes: u32,
}

impl Search<'_> {
    fn branch(&mut self, at: usize, cost: i128, needs: &[Need]) {
        self.nodes = self.nodes.saturating_sub(1);
        let Some(rest) = self.offers.get(at..).filter(|_| self.nodes > 0) else { return };
        if needs.iter().all(|need| need.area <= 0 && need.sheets <= 0) {
            self.best = self.best.min(cost);
            return;
        }
        let Some((offer, _)) = rest.split_first() else { return };
        let bound = needs.iter().map(|need| relaxed(rest, at, need)).max().unwrap_or(0);
        if cost + bound >= self.best {
            return;
        }
        let most = needs.iter().map(|need| wanted(offer, at, need)).max().unwrap_or(0).min(i128::from(offer.count));
        for taken in (0..=most).rev() {
            let left: Vec<Need> = needs.iter().map(|need| less(offer, at, need, taken)).collect();
            self.branch(at + 1, cost + offer.cost * taken, &left);
        }
    }
}

fn meets(need: &Need, at: usize) -> bool {
    need.stock.get(at).copied().unwrap_or(false)
}

/// A bound on what the rest of a need costs with the stock from `at` on.
fn relaxed(rest: &[Offer], at: usize, need: &Need) -> i128 {
    let offers: Vec<Offer> =
        rest.iter().zip(at..).filter(|(_, index)| meets(need, *index)).map(|(offer, _)| *offer).collect();
    least_cost(&offers, need.area).max(cheapest(&offers, need.sheets))
}

/// Sheets of this stock that would meet the need alone.
fn wanted(offer: &Offer, at: usize, need: &Need) -> i128 {
    if !meets(need, at) || offer.capacity <= 0 {
        return 0;
    }
    let by_area = (need.area.max(0) + offer.capacity - 1) / offer.capacity;
    by_area.max(need.sheets)
}

fn less(offer: &Offer, at: usize, need: &Need, taken: i128) -> Need {
    let taken = if meets(need, at) { taken } else { 0 };
    Need { stock: need.stock.clone(), area: need.area - offer.capacity * taken, sheets: need.sheets - taken }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn long_boards_need_long_sheets_and_the_rest_one_more() {
        let offers =
            [(49 << 40, 80, 10), (46 << 40, 62, 10)].map(|(capacity, cost, count)| Offer { capacity, cost, count });
        let long = Need { stock: vec![true, false], area: 280 << 40, sheets: 6 };
        let all = Need { stock: vec![true, true], area: 300 << 40, sheets: 6 };
        assert_eq!(least_whole_cost(&offers, &[long.clone(), all.clone()], 1_000), Some(542));
        assert_eq!(least_whole_cost(&offers, &[long, all], 542), Some(542));
    }

    #[test]
    fn a_need_that_nothing_meets_leaves_the_known_cost() {
        let offers = [Offer { capacity: 1 << 40, cost: 5, count: 2 }];
        let need = Need { stock: vec![true], area: 9 << 40, sheets: 0 };
        assert_eq!(least_whole_cost(&offers, &[need], 77), Some(77));
    }
}
