//! How likely a sum of squares is, where nothing but the tape's own error is in it.

/// The chance that a sum of squares of that many independent errors is this large or larger.
///
/// # Method
/// The upper incomplete gamma function Q(freedom/2, statistic/2): its series below, Lentz's continued fraction above
/// freedom/2 + 1. M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions (1964), 6.5.29, 6.5.31 and 26.4.19, from
/// memory.
pub(super) fn chance(statistic: f64, freedom: usize) -> f64 {
    if freedom == 0 || statistic <= 0.0 {
        return 1.0;
    }
    let (a, x) = (freedom as f64 / 2.0, statistic / 2.0);
    let front = (a * x.ln() - x - log_gamma_half(freedom)).exp();
    let chance = if x < a + 1.0 { 1.0 - front * series(a, x) } else { front * fraction(a, x) };
    chance.clamp(0.0, 1.0)
}

/// Terms after which neither changes any more for the sums of a boat.
const MOST_TERMS: usize = 10_000;
const SMALL: f64 = 1e-16;

fn series(a: f64, x: f64) -> f64 {
    let (mut term, mut sum, mut n) = (1.0 / a, 1.0 / a, a);
    for _ in 0..MOST_TERMS {
        n += 1.0;
        term *= x / n;
        sum += term;
        if term < sum * SMALL {
            break;
        }
    }
    sum
}

fn fraction(a: f64, x: f64) -> f64 {
    const TINY: f64 = 1e-300;
    let mut b = x + 1.0 - a;
    let (mut c, mut d) = (1.0 / TINY, 1.0 / b);
    let mut h = d;
    for i in 1..MOST_TERMS {
        let i = i as f64;
        let an = -i * (i - a);
        b += 2.0;
        d = 1.0 / nonzero(an * d + b, TINY);
        c = nonzero(b + an / c, TINY);
        h *= d * c;
        if (d * c - 1.0).abs() < SMALL * 10.0 {
            break;
        }
    }
    h
}

fn nonzero(value: f64, tiny: f64) -> f64 {
    if value.abs() < tiny { tiny } else { value }
}

/// The logarithm of Γ(freedom/2), by its recurrence from Γ(1/2) = √π or Γ(1) = 1.
fn log_gamma_half(freedom: usize) -> f64 {
    let start = if freedom.is_multiple_of(2) { (1.0, 0.0) } else { (0.5, std::f64::consts::PI.sqrt().ln()) };
    let (mut at, mut sum) = start;
    while at + 0.5 < freedom as f64 / 2.0 {
        sum += f64::ln(at);
        at += 1.0;
    }
    sum
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 3.841, 9.488, 18.307 and 6.635: the usual printed points of chi-square, from memory.
    #[test]
    fn printed_points_have_their_printed_chances() {
        for (statistic, freedom, printed) in [
            (3.841, 1, 0.05),
            (9.488, 4, 0.05),
            (18.307, 10, 0.05),
            (6.635, 1, 0.01),
            (2.706, 1, 0.10),
            (0.711, 4, 0.95),
        ] {
            assert!((chance(statistic, freedom) - printed).abs() < 1e-4, "{statistic} {freedom}");
        }
        // Two degrees have a closed form.
        assert!((chance(5.0, 2) - (-2.5_f64).exp()).abs() < 1e-14);
        assert_eq!((chance(0.0, 3), chance(1.0, 0)), (1.0, 1.0));
    }
}
