//! Whole-number arithmetic that the exact parts rest on.

mod even_sum;
mod interval;
mod simplex;

pub(crate) use even_sum::chance_below;
pub use interval::IntervalSet;
pub(crate) use simplex::Programme;

/// `numerator / denominator` rounded to the nearest whole number, halves to the even one. `denominator` is above zero.
pub fn round_half_even(numerator: i128, denominator: i128) -> i128 {
    let quotient = numerator.div_euclid(denominator);
    let remainder = numerator.rem_euclid(denominator);
    // `remainder` lies in 0..denominator, so comparing it with what is left of the denominator cannot overflow.
    match remainder.cmp(&(denominator - remainder)) {
        std::cmp::Ordering::Less => quotient,
        std::cmp::Ordering::Greater => quotient + 1,
        std::cmp::Ordering::Equal => quotient + (quotient & 1),
    }
}

/// The greatest common divisor of two numbers, neither below zero; that of a number and zero is the number.
pub fn greatest_divisor(one: i128, other: i128) -> i128 {
    if other == 0 { one } else { greatest_divisor(other, one % other) }
}

/// The largest whole number whose square is not above `square`; zero below zero.
pub fn floor_root(square: i128) -> i128 {
    if square <= 0 {
        return 0;
    }
    square.isqrt()
}

/// The whole number nearest to the square root; zero below zero.
pub fn nearest_root(square: i128) -> i128 {
    let root = floor_root(square);
    // The root is nearer to root + 1 when square > (root + 1/2)², that is square - root² > root.
    if square - root * root > root { root + 1 } else { root }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn halves_go_to_the_even_neighbour() {
        let rounded: Vec<i128> = [-5, -3, -1, 1, 3, 5].iter().map(|&half| round_half_even(half, 2)).collect();
        assert_eq!(rounded, [-2, -2, 0, 0, 2, 2]);
        assert_eq!(round_half_even(-7, 3), -2);
        assert_eq!(round_half_even(8, 3), 3);
    }

    #[test]
    fn divisors_are_the_greatest() {
        assert_eq!(greatest_divisor(84, 36), 12);
        assert_eq!(greatest_divisor(0, 7), 7);
        assert_eq!(greatest_divisor(7, 0), 7);
    }

    #[test]
    fn roots_are_nearest() {
        assert_eq!(nearest_root(25), 5);
        assert_eq!(nearest_root(30), 5);
        assert_eq!(nearest_root(31), 6);
        assert_eq!(floor_root(35), 5);
        assert_eq!(nearest_root(-4), 0);
    }
}
