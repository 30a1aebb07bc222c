//! From the tasks' spreads to that of their sum.
//!
//! Floating point, as roots and logarithms are: what comes out is hours, rounded to hundredths.

use crate::money::{Figure, ThreePoint};
use serde::{Deserialize, Serialize};

/// What a sum of hours is taken to be.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Distribution {
    /// Lognormal with the same mean and deviation.
    #[default]
    Lognormal,
    /// Normal with the same mean and deviation.
    Normal,
}

impl Distribution {
    /// Why one would take it.
    pub fn why(self) -> &'static str {
        match self {
            Distribution::Lognormal => {
                "Lognormal with the sum's mean and deviation: hours are above zero and run over further than they run \
                 under, which tasks that share their difficulty do not average out."
            }
            Distribution::Normal => {
                "Normal with the sum's mean and deviation: a sum of many tasks that share little comes near it."
            }
        }
    }
}

/// Hours that are enough in so many of a hundred such jobs.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Percentiles {
    /// In 50.
    pub p50: Figure,
    /// In 80.
    pub p80: Figure,
    /// In 90.
    pub p90: Figure,
}

/// The standard normal distribution's 50th, 80th and 90th percentile.
const NORMAL: [f64; 3] = [0.0, 0.841_621_233_572_914_2, 1.281_551_565_544_600_4];

/// Deviation of a sum of tasks of which any two are correlated by that much.
///
/// # Method
/// σ² = (1 − r) Σ σᵢ² + r (Σ σᵢ)², with σᵢ = (high − low)/6.
///
/// # Examples
/// ```
/// use deck_core::{money::ThreePoint, published::LABOUR_STEPS, quote::deviation};
/// let tasks: Vec<ThreePoint> = LABOUR_STEPS.iter().map(|step| step.hours()).collect();
/// assert_eq!(format!("{:.2} {:.2}", deviation(&tasks, 0.0), deviation(&tasks, 1.0)), "2.36 8.08");
/// ```
pub fn deviation(tasks: &[ThreePoint], correlation: f64) -> f64 {
    let own = || tasks.iter().map(|task| (task.high - task.low).number() / 6.0);
    let (squares, sum) = (own().map(|own| own * own).sum::<f64>(), own().sum::<f64>());
    ((1.0 - correlation) * squares + correlation * sum * sum).max(0.0).sqrt()
}

/// Percentiles of a distribution with that mean and deviation, rounded to hundredths.
///
/// # Method
/// Normal: μ + z σ. Lognormal by moments: s² = ln(1 + σ²/μ²), exp(ln μ − s²/2 + z s).
pub fn percentiles(mean: f64, deviation: f64, distribution: Distribution) -> Percentiles {
    let at = |z: f64| {
        let hours = match distribution {
            Distribution::Normal => mean + z * deviation,
            Distribution::Lognormal if mean > 0.0 => {
                let square = (deviation / mean).powi(2).ln_1p();
                (mean.ln() - square / 2.0 + z * square.sqrt()).exp()
            }
            Distribution::Lognormal => 0.0,
        };
        Figure::nearest(hours, 2)
    };
    let [p50, p80, p90] = NORMAL.map(at);
    Percentiles { p50, p80, p90 }
}
