//! Which further reading would tell suspects apart.

use super::adjust::{Fit, adjust};
use super::equation::{Form, minus, size};
use super::network::Network;
use super::snoop::{Disagreement, Snooped};

/// A further reading tells two suspects apart where what it would read differs by this many of its own errors.
const APART: f64 = 4.0;
/// Of more suspects and points than this only the first are looked at.
const MOST_SUSPECTS: usize = 6;
const MOST_POINTS: usize = 40;

/// A reading that would settle which suspect is at fault.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Settling {
    /// A distance that nobody measured.
    Measure(usize, usize),
    /// One of the suspects, once more.
    Again(usize),
}

/// The reading that separates most suspects from each other; a new one before a repeated one, where both do.
pub(super) fn settling(network: &Network, snooped: &Snooped, disagreement: &Disagreement) -> Option<Settling> {
    let suspects: Vec<usize> =
        disagreement.suspects.iter().take(MOST_SUSPECTS).map(|suspect| suspect.equation).collect();
    let Some((&taken, true)) = suspects.first().map(|first| (first, suspects.len() > 1)) else { return None };
    let mut fits = Vec::new();
    for &suspect in &suspects {
        let mut used = snooped.used.clone();
        for (equation, value) in [(taken, true), (suspect, false)] {
            if let Some(used) = used.get_mut(equation) {
                *used = value;
            }
        }
        fits.push(adjust(&network.unknowns, &network.equations, &used, &snooped.fit.places).ok()?);
    }
    let mut best: Option<((usize, i64), Settling)> = None;
    for candidate in candidates(network, &suspects) {
        let Some(score) = score(network, &suspects, &fits, candidate) else { continue };
        if score.0 > 0 && best.as_ref().is_none_or(|(before, _)| score > *before) {
            best = Some((score, candidate));
        }
    }
    best.map(|(_, settling)| settling)
}

fn candidates(network: &Network, suspects: &[usize]) -> Vec<Settling> {
    let points = network.names.len().min(MOST_POINTS);
    let measured = |a: usize, b: usize| {
        let between = |form: Form| matches!(form, Form::Distance(c, d) if (c, d) == (a, b) || (c, d) == (b, a));
        network.equations.iter().any(|equation| between(equation.form))
    };
    let pairs = (0..points).flat_map(|a| (a + 1..points).map(move |b| (a, b)));
    let new = pairs.filter(|&(a, b)| !measured(a, b)).map(|(a, b)| Settling::Measure(a, b));
    let read =
        suspects.iter().filter(|&&suspect| network.equations.get(suspect).is_some_and(|equation| equation.is_read));
    new.chain(read.map(|&suspect| Settling::Again(suspect))).collect()
}

/// How many pairs of suspects it separates, and by how much the nearest of those, in tenths of its error.
fn score(network: &Network, suspects: &[usize], fits: &[Fit], candidate: Settling) -> Option<(usize, i64)> {
    let sigma = network.equations.iter().map(|equation| equation.sigma).fold(0.0_f64, f64::max);
    let expected: Vec<(f64, f64)> = suspects
        .iter()
        .zip(fits)
        .map(|(&suspect, fit)| expected(network, fit, suspect, candidate))
        .collect::<Option<_>>()?;
    let (mut pairs, mut least) = (0, f64::INFINITY);
    for (index, (one, spread)) in expected.iter().enumerate() {
        for (other, wide) in expected.iter().skip(index + 1) {
            let apart = (one - other).abs() / (sigma * sigma + spread.max(*wide)).sqrt();
            if apart >= APART {
                pairs += 1;
                least = least.min(apart);
            }
        }
    }
    // Below 10^15 tenths, as lengths are; the cast saturates.
    #[allow(clippy::cast_possible_truncation)]
    Some((pairs, if pairs > 0 { (least * 10.0) as i64 } else { 0 }))
}

/// What the candidate would read if that suspect is at fault, and its variance.
fn expected(network: &Network, fit: &Fit, suspect: usize, candidate: Settling) -> Option<(f64, f64)> {
    match candidate {
        Settling::Measure(a, b) => {
            let (from, to) = (*fit.places.get(a)?, *fit.places.get(b)?);
            let row = Form::Distance(a, b).row(&fit.places)?;
            Some((size(minus(to, from)), fit.variance(&network.unknowns, &row.slopes)))
        }
        // The one at fault would read otherwise, the others what they read before.
        Settling::Again(again) if again == suspect => {
            let row = fit.rows.get(again)?;
            Some((row.value, fit.variance(&network.unknowns, &row.slopes)))
        }
        Settling::Again(again) => Some((network.equations.get(again)?.value, 0.0)),
    }
}
