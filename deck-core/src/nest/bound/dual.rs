//! What the parts ask of the sheets by their shapes.
//!
//! # Method
//! With one dual-feasible function for the lengths and one for the widths ([`function`](super::function)), the sum of
//! f(length) · g(width) over the parts of a sheet is at most f · g of the sheet. So the sum over all parts must be
//! covered by those values of the sheets: Fekete and Schepers, "A general framework for bounds for higher-dimensional
//! orthogonal packing problems", Mathematical Methods of Operations Research 60 (2004).

use super::super::effort::Steps;
use super::super::problem::Size;
use super::shapes::{Item, Pair, Shapes};
use super::whole::{Need, Price};

/// Needs of a set of stock that are kept: together they ask for more than one by one where several sizes compete.
const KEPT: usize = 4;

/// The needs that cost most, best first, out of as many pairs of functions as the work allows; a unit of work is one
/// part under one pair. Pairs are passed over once the steps are spent.
///
/// `sheets` are the sizes of the stock in order, none for stock that is not asked. `prices` belong to the same stock.
pub(super) fn needs_by_shape(
    items: &[Item],
    sheets: &[Option<Size>],
    prices: &[Price],
    work: u64,
    steps: &mut Steps<'_>,
) -> Vec<Need> {
    let shapes = Shapes::new(items, sheets, work);
    let mut best: Vec<(i128, Pair)> = Vec::new();
    let mut need = Need { want: 0, gives: Vec::new() };
    for pair in shapes.pairs() {
        steps.spend(shapes.work_of_one());
        if steps.spent_all() {
            break;
        }
        fill_in(&mut need, &shapes, pair);
        let cost = need.cost(prices);
        if best.len() < KEPT || best.last().is_some_and(|least| cost > least.0) {
            let at = best.partition_point(|other| other.0 >= cost);
            best.insert(at, (cost, pair));
            best.truncate(KEPT);
        }
    }
    let needs = best.into_iter().map(|(_, pair)| {
        fill_in(&mut need, &shapes, pair);
        need.clone()
    });
    needs.collect()
}

fn fill_in(need: &mut Need, shapes: &Shapes, pair: Pair) {
    // Values are below 2^50 and copies below 2^20: sums stay inside 128 bits.
    need.want = shapes.each(pair).map(|(each, count)| each * i128::from(count)).sum();
    need.gives.clear();
    need.gives.extend(shapes.gives(pair));
}

#[cfg(test)]
mod tests {
    use super::*;

    fn fixed(length: i64, width: i64, count: u32) -> Item {
        Item { lies: [Some((length, width)), None], count }
    }

    fn sheets(items: &[Item], sheet: Size) -> i128 {
        let prices = [Price { cost: 1, count: 1_000 }];
        let needs = needs_by_shape(items, &[Some(sheet)], &prices, 100_000, &mut Steps::new(100_000, u64::MAX));
        needs.first().map_or(0, |need| need.cost(&prices))
    }

    #[test]
    fn parts_over_half_a_sheet_take_one_each() {
        assert_eq!(sheets(&[fixed(6, 6, 5)], (10, 10)), 5);
        assert_eq!(sheets(&[fixed(5, 5, 5)], (10, 10)), 2);
        assert_eq!(sheets(&[fixed(4, 10, 5)], (10, 10)), 3);
        assert_eq!(sheets(&[], (10, 10)), 0);
    }

    #[test]
    fn a_turn_that_asks_for_less_is_believed() {
        let turning = Item { lies: [Some((6, 5)), Some((5, 6))], count: 2 };
        assert_eq!(sheets(&[turning], (10, 10)), 1);
        assert_eq!(sheets(&[fixed(6, 6, 2)], (10, 10)), 2);
    }

    #[test]
    fn smaller_sheets_give_less() {
        let prices = [Price { cost: 10, count: 9 }, Price { cost: 6, count: 9 }];
        let items = [fixed(4, 10, 4)];
        let needs = needs_by_shape(
            &items,
            &[Some((10, 10)), Some((6, 10))],
            &prices,
            100_000,
            &mut Steps::new(100_000, u64::MAX),
        );
        // Two on a large sheet for 10, one on a small one for 6.
        assert_eq!(needs.first().map(|need| need.cost(&prices)), Some(20));
    }
}
