//! What a panel bears about one axis in service.

use super::axis::{Axis, Criterion};
use super::options::SpanOptions;
use super::panel::StructuralPanel;
use super::service::{UsedFactor, in_service, product};
use super::strength::{Found, strength};
use crate::error::{Error, Faults};
use crate::published::Capacity;

/// The capacities of a panel about one axis with the factors of its service, to a foot of width; none where nothing is
/// listed or given for that axis.
///
/// # Errors
/// As [`span_limits`](super::span_limits): words and figures of the panel, and options; relative to each.
///
/// # Examples
/// ```
/// use deck_core::span::{Axis, SpanOptions, StructuralPanel, capacity};
/// let panel = StructuralPanel::published("sanded plywood Group 1 A-A/A-C", "3/4");
/// let wet = capacity(&panel, Axis::Along, &SpanOptions::new().wet(true))?.unwrap();
/// assert_eq!(wet.ei, 0.85 * 115_000.0);
/// # Ok::<(), deck_core::Error>(())
/// ```
pub fn capacity(panel: &StructuralPanel, axis: Axis, options: &SpanOptions) -> Result<Option<Capacity>, Error> {
    let mut faults = Faults::new();
    let found = faults.take(strength(panel, axis));
    faults.take(options.check());
    faults.finish()?;
    Ok(match found {
        Some(Found::Strength(strength)) => Some(with_factors(&strength.capacity, &in_service(options))),
        _ => None,
    })
}

pub(super) fn with_factors(capacity: &Capacity, factors: &[UsedFactor]) -> Capacity {
    Capacity {
        ei: capacity.ei * product(factors, Criterion::Deflection),
        mr: capacity.mr * product(factors, Criterion::Bending),
        fs: capacity.fs * product(factors, Criterion::Shear),
    }
}
