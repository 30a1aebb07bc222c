//! An orthotropic plate, asked for in one document.

use crate::error::Error;
use crate::job::read;
use crate::length::Unit;
use crate::span::{Plate, PlateLoad, PlateProblem};

/// An orthotropic plate under its loads, asked for in one document.
///
/// In JSON: `length`, `width`, `dx`, `dy`, `torsion`, `supports` and `loads` are required. `dx` and `dy` are bending
/// rigidities (force × length), `torsion` is `H = dx νy + 2 Dxy`, `poisson` is `[νx, νy]`, zeros where left out; `mesh`
/// is the largest side of an element. A support is `{"kind": "across", "x"}` or `{"kind": "along", "y"}`, perhaps
/// `"between"` two places and `"clamped"`, or `{"kind": "point", "at"}`. A load is `{"kind", "at", "size", "value"}`:
/// `"uniform"` (force per area, over everything, or over `size` with its middle `at`), `"patch"` (`value` is the whole
/// force, spread over `size`), `"line"` (force per length; one number of `size` is zero) or `"point"`. Lengths are numbers
/// in `unit`, inches where it is left out, or texts. Forces are of any one unit.
///
/// # Examples
/// ```
/// use deck_core::job::PlateCall;
/// let call = PlateCall::from_json(r#"{
///     "length": 102, "width": "4 ft", "dx": 9583, "dy": 29583, "torsion": 8000,
///     "supports": [{"kind": "along", "y": 0}, {"kind": "along", "y": 24}, {"kind": "along", "y": 48}],
///     "loads": [{"kind": "patch", "at": [51, 12], "size": [3, 3], "value": 200}]
/// }"#)?;
/// let plate = call.plate()?;
/// assert!((plate.reactions.iter().sum::<f64>() - 200.0).abs() < 1e-6);
/// # Ok::<(), deck_core::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct PlateCall {
    /// The plate.
    pub problem: PlateProblem,
    /// Its loads, which act at once.
    pub loads: Vec<PlateLoad>,
    /// The unit of its lengths.
    pub unit: Unit,
}

impl PlateCall {
    /// In inches.
    pub fn new(problem: PlateProblem, loads: Vec<PlateLoad>) -> PlateCall {
        PlateCall { problem, loads, unit: Unit::Inch }
    }

    /// Reads a call.
    ///
    /// # Errors
    /// Everything that is wrong with it, in the order in which it stands there: text that is not JSON, unknown fields,
    /// missing or unreadable ones, and what [`PlateProblem::check`] refuses.
    pub fn from_json(text: &str) -> Result<PlateCall, Error> {
        read::plate_call(text)
    }

    /// Reads a call from JSON that is parsed already.
    ///
    /// # Errors
    /// As [`PlateCall::from_json`].
    pub fn from_value(value: &serde_json::Value) -> Result<PlateCall, Error> {
        read::plate_call_value(value, Vec::new())
    }

    /// Solves it.
    ///
    /// # Errors
    /// As [`PlateProblem::solve`].
    pub fn plate(&self) -> Result<Plate, Error> {
        self.problem.solve(&self.loads)
    }
}
