//! The chance that a sum of independent errors, each evenly spread over a stretch, falls under a figure.
//!
//! # Method
//! A number evenly spread over `0..a` is a whole number evenly spread over `0, 1, …, a − 1` plus a fraction evenly spread
//! over `0..1`, where `a` is counted in a unit that divides every stretch. So the sum of n of them is a sum of whole
//! numbers, whose distribution follows by adding one after the other, plus a sum of n fractions, whose distribution is a
//! cardinal B-spline (Irwin 1927; Hall 1927), reckoned by the recurrence of Cox and de Boor (1972). Both only add and
//! multiply what is not negative, so nothing cancels.

use super::greatest_divisor;

/// A stretch is counted in cells of the greatest common divisor, and the sum has at most so many; beyond it stretches
/// are rounded to whole cells, about their middle. With more the answer is finer and takes longer.
const MOST_CELLS: i64 = 1 << 16;

/// The chance that the sum of numbers, each evenly spread over `0..width`, is less than `at`. No width is negative.
pub(crate) fn chance_below(widths: &[i64], at: i64) -> f64 {
    let widths: Vec<i64> = widths.iter().copied().filter(|width| *width > 0).collect();
    let total: i64 = widths.iter().sum();
    if at <= 0 {
        return 0.0;
    }
    if at >= total {
        return 1.0;
    }
    let divisor = widths.iter().fold(0, |divisor, &width| greatest_divisor(divisor, i128::from(width)));
    let exact = i64::try_from(divisor).unwrap_or(1).max(1);
    let cell = exact.max(total / MOST_CELLS);
    let cells: Vec<i64> = if cell == exact {
        widths.iter().map(|width| width / cell).collect()
    } else {
        widths.iter().map(|width| ((width + cell / 2) / cell).max(1)).collect()
    };
    // What rounding added or took lies on both sides alike.
    let at = at + (cells.iter().sum::<i64>() * cell - total) / 2;
    let whole = whole_numbers(&cells);
    let (last, part) = (at.div_euclid(cell), at.rem_euclid(cell));
    #[allow(clippy::cast_precision_loss, reason = "a part of a cell, of which only the ratio counts")]
    let fractions = fractions_below(cells.len(), part as f64 / cell as f64);
    let mut chance = 0.0;
    for (number, weight) in (0_i64..).zip(&whole) {
        let left = last - number;
        if left < 0 {
            break;
        }
        let below = usize::try_from(left).ok().and_then(|left| fractions.get(left)).copied();
        chance += weight * below.unwrap_or(1.0);
    }
    chance.clamp(0.0, 1.0)
}

/// The chances of each sum of whole numbers, each evenly spread over `0, 1, …, cells − 1`.
fn whole_numbers(cells: &[i64]) -> Vec<f64> {
    let mut chances = vec![1.0];
    for &count in cells {
        let count = usize::try_from(count).unwrap_or(1);
        #[allow(clippy::cast_precision_loss, reason = "at most 65 536 cells")]
        let share = 1.0 / count as f64;
        let mut next = vec![0.0; chances.len() + count - 1];
        let mut window = 0.0;
        for (place, sum) in next.iter_mut().enumerate() {
            window += chances.get(place).copied().unwrap_or(0.0);
            if let Some(left) = place.checked_sub(count).and_then(|left| chances.get(left)) {
                window -= left;
            }
            *sum = f64::max(window, 0.0) * share;
        }
        chances = next;
    }
    chances
}

/// For each whole number j under `count`, the chance that the sum of `count` fractions is less than `j + part`.
fn fractions_below(count: usize, part: f64) -> Vec<f64> {
    // The spline of order m + 1 at j + part is the chance that the sum of m fractions lies in the unit under it.
    let mut spline = vec![1.0];
    for order in 2..=count + 1 {
        let at = |place: Option<usize>| place.and_then(|place| spline.get(place)).copied().unwrap_or(0.0);
        #[allow(clippy::cast_precision_loss, reason = "at most some hundred fractions")]
        let value = |place: usize| {
            let (here, order) = (place as f64 + part, order as f64);
            (here * at(Some(place)) + (order - here) * at(place.checked_sub(1))) / (order - 1.0)
        };
        spline = (0..order).map(value).collect();
    }
    let mut below = 0.0;
    spline
        .iter()
        .take(count)
        .map(|chance| {
            below += chance;
            below
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_is_a_straight_line_and_two_a_hat() {
        assert_eq!(chance_below(&[8], 2), 0.25);
        // Two of 4: the area under the hat up to 2 is an eighth, to 4 a half, to 6 seven eighths.
        let hat = [2, 4, 6].map(|at| chance_below(&[4, 4], at));
        assert_eq!(hat, [0.125, 0.5, 0.875]);
        assert_eq!([chance_below(&[4, 4], 0), chance_below(&[4, 4], 8), chance_below(&[], 1)], [0.0, 1.0, 1.0]);
        assert_eq!(chance_below(&[], 0), 0.0);
    }

    #[test]
    fn of_different_stretches_it_is_the_volume_of_the_cut_box() {
        // Under x + y + z = 2 in a box of 4 by 6 by 10: 2³/6 of 240. Under 5: (5³ − 1³)/6 of 240.
        assert!((chance_below(&[4, 6, 10], 2) - 8.0 / 6.0 / 240.0).abs() < 1e-15);
        assert!((chance_below(&[4, 6, 10], 5) - 124.0 / 6.0 / 240.0).abs() < 1e-15);
    }

    #[test]
    fn thirty_of_a_kind_stay_even_about_their_middle() {
        let widths = [3; 30];
        for at in 1..45 {
            let both = chance_below(&widths, at) + chance_below(&widths, 90 - at);
            assert!((both - 1.0).abs() < 1e-12, "{at}: {both}");
        }
        // By the normal curve of the same deviation, √(30 · 9 / 12): one deviation under the middle is 0.1587.
        assert!((chance_below(&widths, 40) - 0.146).abs() < 2e-3);
    }

    #[test]
    fn stretches_without_a_common_measure_are_rounded_about_their_middle() {
        let widths = [100_000_007, 40_000_003, 60_000_011];
        let total: i64 = widths.iter().sum();
        assert!((chance_below(&widths, total / 2) - 0.5).abs() < 1e-6);
        // The corner of the box again: x³ / 6 / volume.
        let at = 30_000_000.0_f64;
        let corner = at.powi(3) / 6.0 / widths.iter().map(|&width| width as f64).product::<f64>();
        assert!((chance_below(&widths, 30_000_000) - corner).abs() < 1e-6);
    }
}
