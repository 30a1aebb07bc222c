//! The least cost of sheets that together cover a need.

use crate::math::greatest_divisor;
use std::cmp::Ordering;

/// Sheets that may be bought to cover a need: capacity of one, cost of one, how many.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Offer {
    pub(super) capacity: i128,
    pub(super) cost: i128,
    pub(super) count: u32,
}

/// A lower bound on the cost of covering the need. Where all sheets together cannot, the cost of all of them.
///
/// # Method
/// The linear relaxation of the covering knapsack: sheets by cost for capacity, the last one in part (Dantzig 1957),
/// rounded up to a multiple of the greatest common divisor of the costs, which every sum of whole sheets is.
pub(super) fn least_cost(offers: impl Iterator<Item = Offer>, need: i128) -> i128 {
    let mut offers: Vec<Offer> = offers.filter(|offer| offer.capacity > 0 && offer.count > 0).collect();
    offers.sort_by(|one, other| compare((one.cost, one.capacity), (other.cost, other.capacity)));
    let (mut left, mut cost) = (need, 0);
    for offer in &offers {
        let whole = i128::from(offer.count) * offer.capacity;
        if left <= 0 {
            break;
        }
        if whole <= left {
            left -= whole;
            cost += offer.cost * i128::from(offer.count);
        } else {
            let (sheets, rest) = (left / offer.capacity, left % offer.capacity);
            cost += offer.cost * sheets + share(offer.cost, rest, offer.capacity);
            left = 0;
        }
    }
    round_up(cost, offers.iter().fold(0, |divisor, offer| greatest_divisor(divisor, offer.cost)))
}

/// Which of two fractions is less, exactly, however large the figures. Numerators are zero or more, denominators above.
///
/// # Method
/// Continued fractions: whole parts first, then the remainders turned upside down.
fn compare(one: (i128, i128), other: (i128, i128)) -> Ordering {
    let (mut one, mut other, mut turned) = (one, other, false);
    loop {
        let (whole, other_whole) = (one.0 / one.1, other.0 / other.1);
        let (rest, other_rest) = (one.0 % one.1, other.0 % other.1);
        let order = whole.cmp(&other_whole).then(match (rest, other_rest) {
            (0, 0) => Ordering::Equal,
            (0, _) => Ordering::Less,
            (_, 0) => Ordering::Greater,
            _ => {
                if whole == other_whole {
                    (one, other, turned) = ((one.1, rest), (other.1, other_rest), !turned);
                    continue;
                }
                Ordering::Equal
            }
        });
        return if turned { order.reverse() } else { order };
    }
}

/// `cost · rest / capacity`, rounded up; `rest` is below `capacity`.
fn share(cost: i128, rest: i128, capacity: i128) -> i128 {
    if let Some(product) = cost.checked_mul(rest) {
        return product / capacity + i128::from(product % capacity > 0);
    }
    // The schoolbook product, a bit of the cost at a time: remainders stay below three capacities, which are areas.
    let (mut quotient, mut left) = (0_i128, 0_i128);
    for bit in (0..i128::BITS - 1).rev() {
        left = 2 * left + if cost >> bit & 1 == 1 { rest } else { 0 };
        quotient = 2 * quotient + left / capacity;
        left %= capacity;
    }
    quotient + i128::from(left > 0)
}

fn round_up(cost: i128, step: i128) -> i128 {
    if step == 0 { cost } else { cost.div_euclid(step) * step + if cost.rem_euclid(step) == 0 { 0 } else { step } }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Areas of sheets in square nanometres take up to eighty bits.
    const LARGE: i128 = 1 << 40;

    fn least(offers: &[(i128, i128, u32)], need: i128) -> i128 {
        let offer = |&(capacity, cost, count): &(i128, i128, u32)| Offer { capacity: capacity * LARGE, cost, count };
        least_cost(offers.iter().map(offer), need)
    }

    #[test]
    fn whole_sheets_of_one_size_are_rounded_up() {
        let sheets = [(100, 60, 1000)];
        assert_eq!(least(&sheets, 250 * LARGE), 180);
        assert_eq!(least(&sheets, 300 * LARGE), 180);
        assert_eq!(least(&sheets, 300 * LARGE + 1), 240);
        assert_eq!(least(&sheets, 0), 0);
    }

    #[test]
    fn free_ones_come_first_and_the_rest_by_price_for_area() {
        let sheets = [(100, 60, 1000), (50, 0, 2), (10, 5, 10)];
        assert_eq!(least(&sheets, 100 * LARGE), 0);
        assert_eq!(least(&sheets, 150 * LARGE), 25);
        // Ten small ones for 50 and a twentieth of a large one.
        assert_eq!(least(&sheets, 205 * LARGE), 55);
    }

    #[test]
    fn too_little_stock_costs_all_of_it() {
        assert_eq!(least(&[(100, 60, 3)], 1000 * LARGE), 180);
        assert_eq!(least(&[(1, 60, 3), (1, 10, 1)], 3 * LARGE), 130);
        assert_eq!(least(&[(1, 60, 3)], 5 * LARGE), 180);
    }

    #[test]
    fn figures_of_eighty_bits_lose_nothing() {
        let (cost, capacity) = ((1_i128 << 80) - 1, (1_i128 << 80) + 13);
        assert_eq!(share(cost, capacity - 1, capacity), cost);
        assert_eq!(share(cost, 1, capacity), 1);
        assert_eq!(share(3 << 70, 5 << 70, 7 << 70), (15 << 70) / 7 + 1);
        assert_eq!(compare((cost, capacity), (cost + 1, capacity)), Ordering::Less);
        assert_eq!(compare((cost, capacity), (cost - 1, capacity - 1)), Ordering::Greater);
        assert_eq!(compare((cost, 3 * cost), (1, 3)), Ordering::Equal);
        assert_eq!(compare((1, 3), (2, 6)), Ordering::Equal);
        assert_eq!(compare((0, 3), (1, 6)), Ordering::Less);
        assert_eq!(compare((7, 2), (3, 1)), Ordering::Greater);
    }
}
