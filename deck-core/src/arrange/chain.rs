//! The cheapest choice of one candidate for each place in a row of places, where neighbours must go together.

/// Costs in order of weight.
pub(super) type Price = [i128; 8];

/// The least sum of prices and the candidates that make it, the first of those that are alike; none where no choice of
/// candidates goes together. `fits(place, before, here)` tells whether candidate `here` of a place goes with candidate
/// `before` of the place before it.
///
/// # Method
/// A dynamic programme over the places (Bellman 1957). Prices are compared cost by cost; as that order is kept when the
/// same is added to both sides, the least of each candidate is enough.
pub(super) fn cheapest(
    places: &[Vec<Price>],
    fits: impl Fn(usize, usize, usize) -> bool,
) -> Option<(Price, Vec<usize>)> {
    let (first, rest) = places.split_first()?;
    let mut best: Vec<Option<(Price, Vec<usize>)>> =
        first.iter().enumerate().map(|(index, price)| Some((*price, vec![index]))).collect();
    for (place, candidates) in rest.iter().enumerate() {
        let next = |(here, price): (usize, &Price)| {
            let before = best.iter().enumerate().filter(|(before, _)| fits(place + 1, *before, here));
            let (sum, path) = before.filter_map(|(_, reached)| reached.as_ref()).min()?;
            let path = path.iter().copied().chain([here]).collect();
            Some((plus(sum, price), path))
        };
        best = candidates.iter().enumerate().map(next).collect();
    }
    best.into_iter().flatten().min()
}

pub(super) fn plus(one: &Price, other: &Price) -> Price {
    let mut sum = *one;
    sum.iter_mut().zip(other).for_each(|(cost, more)| *cost += more);
    sum
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_least_sum_is_that_of_every_choice_tried() {
        // Numbers that follow no order, from a fixed rule.
        let number = |seed: usize| (seed * 7919 + 104_729) % 31;
        for case in 0..200 {
            let sizes = [1 + number(case) % 4, 1 + number(case + 1) % 4, 1 + number(case + 2) % 4];
            let price = |place: usize, at: usize| {
                let mut price = [0; 8];
                price[0] = i128::try_from(number(case * 31 + place * 5 + at) % 3).unwrap();
                price[3] = i128::try_from(number(case * 17 + place + at * 3)).unwrap();
                price
            };
            let places: Vec<Vec<Price>> =
                (0..3).map(|place| (0..sizes[place]).map(|at| price(place, at)).collect()).collect();
            let fits = |place: usize, a: usize, b: usize| number(case + place * 3 + a * 7 + b * 11) % 3 > 0;
            let mut tried = Vec::new();
            for a in 0..sizes[0] {
                for b in (0..sizes[1]).filter(|&b| fits(1, a, b)) {
                    for c in (0..sizes[2]).filter(|&c| fits(2, b, c)) {
                        tried.push((plus(&plus(&places[0][a], &places[1][b]), &places[2][c]), vec![a, b, c]));
                    }
                }
            }
            let found = cheapest(&places, fits);
            assert_eq!(found.as_ref().map(|(sum, _)| *sum), tried.iter().map(|(sum, _)| *sum).min(), "case {case}");
            assert!(found.is_none_or(|found| tried.contains(&found)));
        }
    }
}
