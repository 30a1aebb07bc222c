//! The least cost of whole sheets that meet several needs at once, each from its own set of stock.
//!
//! # Method
//! Depth-first branch and bound over the number of sheets of each stock (Land and Doig 1960), with the relaxation of
//! [`cover`](super::cover) for each need as the bound. The cost of a known answer starts as the one to undercut.

use super::cover::{Offer, least_cost};

/// Something the parts ask for, and how much of it one sheet of each stock can give: an area, a number of sheets, a sum
/// of values of parts.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Need {
    /// What all the parts ask for together.
    pub(super) want: i128,
    /// The most that one sheet gives, by stock; zero where it holds none of the parts.
    pub(super) gives: Vec<i128>,
}

/// One stock, whatever it gives: cost of a sheet, and how many there are.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Price {
    pub(super) cost: i128,
    pub(super) count: u32,
}

impl Need {
    /// The least cost of meeting it, parts of sheets allowed.
    pub(super) fn cost(&self, prices: &[Price]) -> i128 {
        least_cost(self.offers(prices, 0), self.want)
    }

    fn offers<'a>(&'a self, prices: &'a [Price], from: usize) -> impl Iterator<Item = Offer> + 'a {
        let stock = prices.iter().zip(&self.gives).skip(from);
        stock.map(|(price, &capacity)| Offer { capacity, cost: price.cost, count: price.count })
    }

    fn given(&self, at: usize) -> i128 {
        self.gives.get(at).copied().unwrap_or(0)
    }
}

/// The least cost at which whole sheets meet every need, at most `known`; none where the search takes more than so
/// many nodes.
pub(super) fn least_whole_cost(prices: &[Price], needs: &[Need], known: i128, nodes: u32) -> Option<i128> {
    let mut search = Search { prices, needs, best: known, nodes };
    let wants: Vec<i128> = needs.iter().map(|need| need.want).collect();
    search.branch(0, 0, &wants);
    (search.nodes > 0).then_some(search.best)
}

struct Search<'a> {
    prices: &'a [Price],
    needs: &'a [Need],
    best: i128,
    nodes: u32,
}

impl Search<'_> {
    fn branch(&mut self, at: usize, cost: i128, wants: &[i128]) {
        self.nodes = self.nodes.saturating_sub(1);
        if self.nodes == 0 {
            return;
        }
        if wants.iter().all(|&want| want <= 0) {
            self.best = self.best.min(cost);
            return;
        }
        let Some(&price) = self.prices.get(at) else { return };
        let rest = |(need, &want): (&Need, &i128)| least_cost(need.offers(self.prices, at), want);
        let bound = self.needs.iter().zip(wants).map(rest).max().unwrap_or(0);
        if cost + bound >= self.best {
            return;
        }
        let alone = |(need, &want): (&Need, &i128)| {
            let gives = need.given(at);
            if gives > 0 { (want.max(0) + gives - 1) / gives } else { 0 }
        };
        let most = self.needs.iter().zip(wants).map(alone).max().unwrap_or(0).min(i128::from(price.count));
        for taken in (0..=most).rev() {
            let left: Vec<i128> =
                self.needs.iter().zip(wants).map(|(need, want)| want - need.given(at) * taken).collect();
            self.branch(at + 1, cost + price.cost * taken, &left);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const NODES: u32 = 1_000;

    #[test]
    fn long_boards_need_long_sheets_and_the_rest_one_more() {
        let prices = [80, 62].map(|cost| Price { cost, count: 10 });
        let long = Need { want: 6, gives: vec![1, 0] };
        let long_area = Need { want: 280 << 40, gives: vec![49 << 40, 0] };
        let all = Need { want: 300 << 40, gives: vec![49 << 40, 46 << 40] };
        let needs = [long, long_area, all];
        assert_eq!(least_whole_cost(&prices, &needs, 1_000, NODES), Some(542));
        assert_eq!(least_whole_cost(&prices, &needs, 542, NODES), Some(542));
        assert_eq!(least_whole_cost(&prices, &needs, 1_000, 1), None);
    }

    #[test]
    fn a_need_that_nothing_meets_leaves_the_known_cost() {
        let prices = [Price { cost: 5, count: 2 }];
        let need = Need { want: 9 << 40, gives: vec![1 << 40] };
        assert_eq!(least_whole_cost(&prices, &[need], 77, NODES), Some(77));
    }
}
