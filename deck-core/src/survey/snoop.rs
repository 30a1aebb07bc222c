//! Looks for readings that are wrong, one at a time, and takes them out.
//!
//! # Method
//! Data snooping: W. Baarda, A testing procedure for use in geodetic networks (Delft, 1968), from memory: the largest
//! standardised residual over [`CRITICAL`] is the first suspect; without it everything is fitted again. How often readings
//! explain a disagreement equally well, and may not be told apart: choice of this library, see [`TOLD_APART`].

use super::adjust::{Fit, Unfit, adjust};
use super::network::Network;
use super::start;

/// A standardised residual that one reading in a thousand passes by chance.
pub(super) const CRITICAL: f64 = 3.29;
/// Sum of [`CRITICAL`] and of the point of 80 percent power, 0.84: an error of so many deviations is found four times in
/// five.
pub(super) const FOUND: f64 = 4.13;
/// Two suspects are told apart where one explains the readings twenty times as well: their squared standardised residuals
/// differ by 2 ln 20.
const TOLD_APART: f64 = 5.99;
/// More wrong readings than this are no survey.
const MOST_BLUNDERS: usize = 8;

/// A disagreement: the readings that could be at fault, the likeliest first, and by how much each would be off.
#[derive(Debug, Clone)]
pub(super) struct Disagreement {
    pub(super) suspects: Vec<Suspect>,
}

/// A reading that may be wrong.
#[derive(Debug, Clone, Copy)]
pub(super) struct Suspect {
    pub(super) equation: usize,
    /// Read less what it should have been, in millimetres, if it alone is wrong.
    pub(super) off: f64,
    pub(super) deviation: f64,
    pub(super) standardised: f64,
}

/// The fit without what is wrong.
#[derive(Debug, Clone)]
pub(super) struct Snooped {
    pub(super) fit: Fit,
    /// The fit with everything in it.
    pub(super) first: Fit,
    pub(super) used: Vec<bool>,
    pub(super) disagreements: Vec<Disagreement>,
}

/// Fits, and takes out what disagrees, one reading at a time.
pub(super) fn snoop(network: &Network, likely: impl Fn(&Suspect) -> bool) -> Result<Snooped, Unfit> {
    let begun = start::start(network).map_err(|point| Unfit::Loose(unknown_of(network, point)))?;
    let mut used = vec![true; network.equations.len()];
    let fit = adjust(&network.unknowns, &network.equations, &used, &begun.places)?;
    let fit = start::best(network, &begun, &used, fit, |fit| worst(network, fit).is_some());
    let (first, mut fit) = (fit.clone(), fit);
    let mut disagreements = Vec::new();
    while disagreements.len() < MOST_BLUNDERS {
        let suspects = suspects(network, &fit);
        let Some(taken) = suspects.iter().position(&likely).or((!suspects.is_empty()).then_some(0)) else { break };
        let mut ordered = suspects;
        let first = ordered.remove(taken);
        ordered.insert(0, first);
        set(&mut used, first.equation, false);
        fit = adjust(&network.unknowns, &network.equations, &used, &fit.places)?;
        disagreements.push(Disagreement { suspects: ordered });
    }
    take_back(network, &mut used, &mut fit, &mut disagreements)?;
    resized(network, &fit, &mut disagreements);
    Ok(Snooped { fit, first, used, disagreements })
}

fn unknown_of(network: &Network, point: usize) -> usize {
    network.unknowns.of.get(point).and_then(|of| of.iter().flatten().next().copied()).unwrap_or(0)
}

fn set(used: &mut [bool], at: usize, value: bool) {
    if let Some(used) = used.get_mut(at) {
        *used = value;
    }
}

fn worst(network: &Network, fit: &Fit) -> Option<Suspect> {
    let all = (0..network.equations.len()).filter_map(|index| suspect(network, fit, index));
    all.filter(|suspect| suspect.standardised > CRITICAL).max_by(|a, b| a.standardised.total_cmp(&b.standardised))
}

/// Those that explain the worst disagreement nearly as well as the best of them does, the best first.
fn suspects(network: &Network, fit: &Fit) -> Vec<Suspect> {
    let Some(worst) = worst(network, fit) else { return Vec::new() };
    let least = (worst.standardised.powi(2) - TOLD_APART).max(0.0);
    let mut found: Vec<Suspect> = (0..network.equations.len())
        .filter_map(|index| suspect(network, fit, index))
        .filter(|suspect| suspect.standardised.powi(2) >= least)
        .collect();
    found.sort_by(|a, b| b.standardised.total_cmp(&a.standardised).then(a.equation.cmp(&b.equation)));
    found
}

fn suspect(network: &Network, fit: &Fit, index: usize) -> Option<Suspect> {
    let equation = network.equations.get(index)?;
    let standardised = fit.standardised(index, equation.sigma)?.abs();
    let redundancy = fit.redundancy.get(index).copied().flatten()?;
    let off = -fit.residuals.get(index)? / redundancy;
    Some(Suspect { equation: index, off, deviation: equation.sigma / redundancy.sqrt(), standardised })
}

/// What was taken out early may agree once something else is out.
fn take_back(
    network: &Network,
    used: &mut [bool],
    fit: &mut Fit,
    disagreements: &mut Vec<Disagreement>,
) -> Result<(), Unfit> {
    let mut index = 0;
    while let Some(suspect) = disagreements.get(index).and_then(|found| found.suspects.first()).copied() {
        if disagreements.len() > 1
            && misses(network, fit, suspect.equation).is_some_and(|(off, by)| off.abs() < CRITICAL * by)
        {
            set(used, suspect.equation, true);
            let again = adjust(&network.unknowns, &network.equations, used, &fit.places)?;
            if worst(network, &again).is_none() {
                *fit = again;
                disagreements.remove(index);
                continue;
            }
            set(used, suspect.equation, false);
        }
        index += 1;
    }
    Ok(())
}

/// By how much a reading that is not used is off, as the others have it, and how well that is known.
pub(super) fn misses(network: &Network, fit: &Fit, index: usize) -> Option<(f64, f64)> {
    let (equation, row) = (network.equations.get(index)?, fit.rows.get(index)?);
    let variance = fit.variance(&network.unknowns, &row.slopes) + equation.sigma * equation.sigma;
    Some((equation.value - row.value, variance.sqrt()))
}

/// Once nothing wrong is left in the fit, the sizes of what was taken out are seen best.
fn resized(network: &Network, fit: &Fit, disagreements: &mut [Disagreement]) {
    for first in disagreements.iter_mut().filter_map(|found| found.suspects.first_mut()) {
        if let Some((off, deviation)) = misses(network, fit, first.equation) {
            (first.off, first.deviation) = (off, deviation);
        }
    }
}
