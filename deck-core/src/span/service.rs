//! The factors of service: wet, load duration, a narrow board.

use super::axis::Criterion;
use super::options::SpanOptions;
use crate::published::{LOAD_DURATIONS, Standing, WET_STIFFNESS, WET_STRENGTH, panel_size_factor};
use serde::{Deserialize, Serialize};

/// A factor that a capacity was multiplied by.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct UsedFactor {
    /// What it is for.
    pub name: String,
    /// The factor.
    pub value: f64,
    /// What it changes.
    pub on: Vec<Criterion>,
    /// Where it comes from.
    pub source: String,
    /// How sure it is.
    pub standing: Standing,
}

impl UsedFactor {
    /// True where it changes the capacity behind a criterion.
    pub fn applies(&self, criterion: Criterion) -> bool {
        self.on.contains(&criterion)
    }
}

/// Bending and shear.
const STRENGTH: [Criterion; 2] = [Criterion::Bending, Criterion::Shear];

/// The factors of these options, none of one.
pub(super) fn in_service(options: &SpanOptions) -> Vec<UsedFactor> {
    let mut used = Vec::new();
    if options.wet {
        for (factor, on) in [(WET_STIFFNESS, vec![Criterion::Deflection]), (WET_STRENGTH, STRENGTH.to_vec())] {
            used.push(UsedFactor {
                name: factor.name.into(),
                value: factor.value,
                on,
                source: factor.source.into(),
                standing: factor.standing,
            });
        }
    }
    // A factor of exactly one changes nothing.
    if (options.duration - 1.0).abs() > 0.0 {
        used.push(duration(options.duration));
    }
    // By D510F, as remembered, the size factor is for bending strength alone.
    let size = options.width.map(|width| panel_size_factor(width.as_inches())).filter(|size| size.value < 1.0);
    if let Some(size) = size {
        let on = vec![Criterion::Bending];
        let (name, source) = (size.name.into(), size.source.into());
        used.push(UsedFactor { name, value: size.value, on, source, standing: size.standing });
    }
    used
}

fn duration(value: f64) -> UsedFactor {
    let row = LOAD_DURATIONS.iter().find(|row| (row.value - value).abs() < 1e-9);
    let (name, source, standing) = match row {
        Some(row) => (format!("load duration, {}", row.name), row.source, row.standing),
        None => ("load duration".to_owned(), "the user's own factor", Standing::Choice),
    };
    UsedFactor { name, value, on: STRENGTH.to_vec(), source: source.into(), standing }
}

/// All factors on one criterion, multiplied.
pub(super) fn product(factors: &[UsedFactor], criterion: Criterion) -> f64 {
    factors.iter().filter(|factor| factor.applies(criterion)).map(|factor| factor.value).product()
}
