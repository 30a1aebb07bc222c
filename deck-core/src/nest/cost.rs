//! What sheets cost: money where they have prices, otherwise their area.

use crate::length::{Area, Unit};
use crate::money::Money;
use serde::{Deserialize, Serialize};
use std::fmt;

/// A sum of money, or an area where no sheet has a price. In JSON a number either way; the nest says which.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(untagged)]
pub enum Cost {
    /// The sum of the prices.
    Money(Money),
    /// The area of the bought sheets.
    Area(Area),
}

/// In what a nest counts its cost.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum CostIn {
    /// Prices.
    Money,
    /// The area of bought sheets.
    #[default]
    Area,
}

/// A boat's share of the cost.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct BoatCost {
    /// The boat; none for parts that are for no boat in particular.
    pub boat: Option<String>,
    /// Its share.
    pub cost: Cost,
}

impl Cost {
    /// The nearest number: of money, or of square units.
    pub fn number(self, unit: Unit) -> f64 {
        match self {
            Cost::Money(money) => money.number(),
            Cost::Area(area) => area.number(unit),
        }
    }
}

impl CostIn {
    /// The cost of a whole number of its smallest units: ten-thousandths of money, square nanometres.
    pub(super) fn cost(self, units: i128) -> Cost {
        match self {
            CostIn::Money => Cost::Money(Money::from_ten_thousandths(units)),
            CostIn::Area => Cost::Area(Area::from_square_nanometres(units)),
        }
    }

    /// The smallest units in which a share is given: cents where the whole is in cents.
    pub(super) fn grain(self, whole: i128) -> i128 {
        const CENT: i128 = 100;
        if self == CostIn::Money && whole % CENT == 0 { CENT } else { 1 }
    }
}

impl fmt::Display for Cost {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Cost::Money(money) => money.fmt(f),
            Cost::Area(area) => area.fmt(f),
        }
    }
}

/// Splits `whole` by weights so that the shares add up to it.
///
/// # Method
/// Largest remainder (Hamilton's rule): each share is rounded down to a multiple of `grain`, and what is left goes in
/// such multiples to the largest remainders, earlier ones first among equals.
pub(super) fn share(whole: i128, grain: i128, weights: &[i128]) -> Vec<i128> {
    let weights = scaled(weights);
    let total: i128 = weights.iter().sum();
    if total == 0 {
        return vec![0; weights.len()];
    }
    let units = whole / grain;
    let (quotient, rest) = (units / total, units % total);
    // Weights sum to less than 2^60 and `rest` is below that sum: the products fit.
    let mut shares: Vec<i128> = weights.iter().map(|weight| quotient * weight + rest * weight / total).collect();
    let mut order: Vec<usize> = (0..weights.len()).collect();
    let remainder = |index: &usize| weights.get(*index).map_or(0, |weight| rest * weight % total);
    order.sort_by_key(|index| std::cmp::Reverse(remainder(index)));
    let missing = units - shares.iter().sum::<i128>();
    for index in order.into_iter().take(usize::try_from(missing).unwrap_or(0)) {
        if let Some(share) = shares.get_mut(index) {
            *share += 1;
        }
    }
    shares.into_iter().map(|share| share * grain).collect()
}

/// The weights shifted down alike until their sum is below 2^60, so that products with them stay inside 128 bits.
fn scaled(weights: &[i128]) -> Vec<i128> {
    const BITS: u32 = 60;
    let total: i128 = weights.iter().sum();
    let shift = (i128::BITS - total.leading_zeros()).saturating_sub(BITS);
    weights.iter().map(|weight| weight >> shift).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn shares_add_up() {
        assert_eq!(share(100, 1, &[1, 1, 1]), [34, 33, 33]);
        assert_eq!(share(12_400, 100, &[1, 1, 1]), [4_200, 4_100, 4_100]);
        assert_eq!(share(0, 1, &[5, 7]), [0, 0]);
        assert_eq!(share(7, 1, &[]), Vec::<i128>::new());
        let weights = [1 << 90, 3 << 90, (1 << 90) + 5];
        assert_eq!(share(1_000_000_007, 1, &weights), [200_000_002, 600_000_004, 200_000_001]);
    }
}
