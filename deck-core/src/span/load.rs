//! A uniform load, and how far it uses a panel up.

use super::axis::{Criterion, Each};
use super::limits::SpanLimits;
use super::options::figure;
use super::words::unknown;
use crate::error::{Error, Fault, Kind};
use crate::published::{LIVE_PRESETS, NO_DECK_RULE, PASCALS_PER_PSF, PresetLoad, Standing, live_preset};
use serde::{Deserialize, Serialize};

/// A uniform load with where it comes from.
///
/// # Examples
/// ```
/// use deck_core::span::Load;
/// assert_eq!(Load::preset("assembly")?.psf, 100.0);
/// assert_eq!(Load::user(60.0)?.source, "the user's choice");
/// # Ok::<(), deck_core::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct Load {
    /// Pounds to the square foot.
    pub psf: f64,
    /// What it is.
    pub name: String,
    /// The rule and its year, or the user.
    pub source: String,
    /// How sure the figure is.
    pub standing: Standing,
}

/// More than any deck is loaded with, psf.
const MOST: f64 = 100_000.0;

impl Load {
    /// A load of the user's own, psf.
    ///
    /// # Errors
    /// A load below zero, above 100 000 psf or not finite.
    pub fn user(psf: f64) -> Result<Load, Error> {
        figure(psf, 0.0, MOST)?;
        Ok(Load { psf, name: "uniform load".into(), source: "the user's choice".into(), standing: Standing::Choice })
    }

    /// A load of the user's own, kilopascals.
    ///
    /// # Errors
    /// As [`Load::user`].
    pub fn kilopascals(kilopascals: f64) -> Result<Load, Error> {
        Load::user(kilopascals * 1000.0 / PASCALS_PER_PSF)
    }

    /// A uniform load that a rule names; see [`LIVE_PRESETS`].
    ///
    /// # Errors
    /// A key that is not published here, or one that is a person's weight: a person stands on a point.
    pub fn preset(key: &str) -> Result<Load, Error> {
        let keys = || -> Vec<&str> {
            let uniform = LIVE_PRESETS.iter().filter(|preset| matches!(preset.load, PresetLoad::Uniform(_)));
            uniform.map(|preset| preset.key).collect()
        };
        let preset = live_preset(key).ok_or_else(|| Error::from(unknown("uniform load", key, &keys())))?;
        match preset.load {
            PresetLoad::Uniform(psf) => {
                let (name, source) = (preset.name.into(), preset.source.into());
                Ok(Load { psf, name, source, standing: preset.standing })
            }
            PresetLoad::Person(_) => {
                let accepted = format!("Uniform: {}.", keys().join(", "));
                let message = format!("\"{key}\" is a person's weight, and no uniform load.");
                Err(Fault::new(Kind::UnknownWord, key, message, accepted).into())
            }
        }
    }
}

/// Load over allowable load, by each criterion: 1 is the whole of it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct Utilisation {
    /// The load.
    pub load: Load,
    /// Load over allowable load.
    pub ratio: Each<f64>,
    /// The criterion with the greatest ratio.
    pub governing: Criterion,
    /// Its clause.
    pub clause: String,
    /// That no rule sets a live load for such a deck.
    pub rule: String,
    /// The caution that goes with every figure of strength.
    pub caution: String,
}

impl Utilisation {
    pub(super) fn new(limits: &SpanLimits, load: &Load) -> Utilisation {
        let of = |criterion| load.psf / limits.load(criterion);
        let ratio = Each {
            deflection: of(Criterion::Deflection),
            bending: of(Criterion::Bending),
            shear: of(Criterion::Shear),
        };
        Utilisation {
            load: load.clone(),
            ratio,
            governing: limits.governing,
            clause: limits.source.get(limits.governing).clone(),
            rule: NO_DECK_RULE.into(),
            caution: limits.caution.clone(),
        }
    }

    /// The greatest of the three ratios.
    pub fn greatest(&self) -> f64 {
        *self.ratio.get(self.governing)
    }
}
