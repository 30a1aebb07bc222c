//! The least cost of sheets whose areas together cover a need.

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
pub(super) fn least_cost(offers: &[Offer], need: i128) -> i128 {
    let mut offers: Vec<&Offer> = offers.iter().filter(|offer| offer.capacity > 0 && offer.count > 0).collect();
    offers.sort_by(|one, other| weigh(one, other).cmp(&weigh(other, one)));
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
            cost += part_cost(offer, left);
            left = 0;
        }
    }
    round_up(cost, offers.iter().fold(0, |divisor, offer| greatest_divisor(divisor, offer.cost)))
}

/// The cost of a sum of so many of the cheapest sheets. Where there are fewer, of all.
pub(super) fn cheapest(offers: &[Offer], sheets: i128) -> i128 {
    let mut offers: Vec<&Offer> = offers.iter().collect();
    offers.sort_by_key(|offer| offer.cost);
    let (mut left, mut cost) = (sheets, 0);
    for offer in offers {
        let taken = left.min(i128::from(offer.count));
        cost += offer.cost * taken;
        left -= taken;
    }
    cost
}

/// Bits that capacities lose in products with costs; both have up to 80.
const COARSE: u32 = 40;

fn weigh(offer: &Offer, other: &Offer) -> i128 {
    offer.cost * (other.capacity >> COARSE).max(1)
}

/// No more than the cost of a share of sheets of this sort, in whole units.
fn part_cost(offer: &Offer, need: i128) -> i128 {
    let (sheets, rest) = (need / offer.capacity, need % offer.capacity);
    // Rounded so that the share is not overstated; any rest at all costs at least the smallest unit.
    let share = offer.cost * (rest >> COARSE) / ((offer.capacity >> COARSE) + 1);
    offer.cost * sheets + share.max(i128::from(rest > 0 && offer.cost > 0))
}

fn greatest_divisor(a: i128, b: i128) -> i128 {
    if b == 0 { a } else { greatest_divisor(b, a % b) }
}

fn round_up(cost: i128, step: i128) -> i128 {
    if step == 0 { cost } else { cost.div_euclid(step) * step + if cost.rem_euclid(step) == 0 { 0 } else { step } }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn offer(capacity: i128, cost: i128, count: u32) -> Offer {
        Offer { capacity: capacity << COARSE, cost, count }
    }

    #[test]
    fn whole_sheets_of_one_size_are_rounded_up() {
        let sheets = [offer(100, 60, 1000)];
        assert_eq!(least_cost(&sheets, 250 << COARSE), 180);
        assert_eq!(least_cost(&sheets, 300 << COARSE), 180);
        assert_eq!(least_cost(&sheets, (300 << COARSE) + 1), 240);
        assert_eq!(least_cost(&sheets, 0), 0);
    }

    #[test]
    fn free_ones_come_first_and_the_rest_by_price_for_area() {
        let sheets = [offer(100, 60, 1000), offer(50, 0, 2), offer(10, 5, 10)];
        assert_eq!(least_cost(&sheets, 100 << COARSE), 0);
        assert_eq!(least_cost(&sheets, 150 << COARSE), 25);
        // Ten small ones for 50 and a twentieth of a large one.
        assert_eq!(least_cost(&sheets, 205 << COARSE), 55);
    }

    #[test]
    fn too_little_stock_costs_all_of_it() {
        assert_eq!(least_cost(&[offer(100, 60, 3)], 1000 << COARSE), 180);
        assert_eq!(cheapest(&[offer(1, 60, 3), offer(1, 10, 1)], 3), 130);
        assert_eq!(cheapest(&[offer(1, 60, 3)], 5), 180);
    }
}
