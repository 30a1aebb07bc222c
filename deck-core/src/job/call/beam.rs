//! A continuous beam, asked for in one document.

use crate::error::Error;
use crate::job::read;
use crate::length::Unit;
use crate::span::{Beam, BeamLoad, BeamProblem};

/// A continuous beam under its loads, asked for in one document.
///
/// In JSON: `spans` and `loads` are required. A load is `{"kind", "at", "size", "value"}`: `"uniform"` (force per length,
/// over everything, or over `size` with its middle `at`), `"patch"` (`value` is the whole force, spread over `size`) or
/// `"point"`; `at` counts from the left tip. `overhangs` are the lengths beyond the first and the last support, none where
/// left out; `stiffness` is EI, 1 where left out; `ends` are two of `"simple"` and `"fixed"`. Lengths are numbers of any
/// one unit, or texts, which are taken in `unit`, inches where it is left out. Forces are of any one unit.
///
/// # Examples
/// ```
/// use deck_core::job::BeamCall;
/// let call = BeamCall::from_json(r#"{
///     "spans": ["2 ft", 24], "stiffness": 115000,
///     "loads": [{"kind": "uniform", "value": 2}, {"kind": "point", "at": 12, "value": 200}]
/// }"#)?;
/// let beam = call.beam()?;
/// let carried: f64 = beam.supports.iter().map(|support| support.reaction).sum();
/// assert!((carried - (2.0 * 48.0 + 200.0)).abs() < 1e-9);
/// # Ok::<(), deck_core::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct BeamCall {
    /// The beam.
    pub problem: BeamProblem,
    /// Its loads, which act at once.
    pub loads: Vec<BeamLoad>,
    /// The unit of its lengths.
    pub unit: Unit,
}

impl BeamCall {
    /// In inches.
    pub fn new(problem: BeamProblem, loads: Vec<BeamLoad>) -> BeamCall {
        BeamCall { problem, loads, unit: Unit::Inch }
    }

    /// Reads a call.
    ///
    /// # Errors
    /// Everything that is wrong with it, in the order in which it stands there: text that is not JSON, unknown fields,
    /// missing or unreadable ones, and what [`BeamProblem::check`] refuses.
    pub fn from_json(text: &str) -> Result<BeamCall, Error> {
        read::beam_call(text)
    }

    /// Reads a call from JSON that is parsed already.
    ///
    /// # Errors
    /// As [`BeamCall::from_json`].
    pub fn from_value(value: &serde_json::Value) -> Result<BeamCall, Error> {
        read::beam_call_value(value, Vec::new())
    }

    /// Solves it.
    ///
    /// # Errors
    /// As [`BeamProblem::solve`].
    pub fn beam(&self) -> Result<Beam, Error> {
        self.problem.solve(&self.loads)
    }
}
