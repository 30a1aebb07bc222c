//! A solved beam, as Python sees it.

use crate::document::{Document, Reduced, reduced};
use crate::table::{self, figure};
use deck_core::Error;
use deck_core::job::BeamCall;
use deck_core::span::Peak;
use pyo3::prelude::*;
use serde_json::Value;

/// What a continuous beam does under its loads.
///
/// Places are distances from the left tip. Downward loads, sagging moments and downward deflections are positive. Two beams
/// are equal when their JSON is.
///
/// Examples
/// --------
/// >>> import deck_py
/// >>> beam = deck_py.beam([16, 16], [{"kind": "uniform", "value": 2}], stiffness=115_000)
/// >>> [round(reaction, 6) for reaction in beam.reactions], round(beam.supports[1].moment, 6)
/// ([12.0, 40.0, 12.0], -64.0)
/// >>> beam.moment_at(40) is None
/// True
#[pyclass(frozen, module = "deck_py")]
#[derive(Debug)]
pub(crate) struct Beam {
    solved: deck_core::span::Beam,
    document: Document,
    /// Pickled in place of the answer, which says less than the beam knows.
    request: Value,
}

impl Beam {
    /// The answer to a request.
    pub(crate) fn asked(request: Value, call: &BeamCall) -> Result<Beam, Error> {
        let solved = call.beam()?;
        Ok(Beam { document: Document::write(&solved, call.unit)?, solved, request })
    }

    /// The deflection that is farthest from zero, and where.
    fn sags(&self) -> Peak {
        let stretches = self.solved.spans.iter().chain(self.solved.overhangs.iter().flatten());
        let farther = |one: Peak, other: Peak| if other.value.abs() > one.value.abs() { other } else { one };
        stretches.map(|span| span.deflection.largest()).fold(Peak::default(), farther)
    }
}

#[pymethods]
impl Beam {
    /// The unit in which lengths that were texts were taken: `in`, `ft`, `mm`, `cm` or `m`.
    #[getter]
    fn unit(&self) -> &'static str {
        self.document.unit.symbol()
    }

    /// The supports from the left: where each stands, its reaction (upward positive) and the moment over it.
    #[getter]
    fn supports<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "supports", "BeamSupport")
    }

    /// The spans from the left, each with the least and the most of its moment, shear and deflection, and where.
    #[getter]
    fn spans<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "spans", "BeamSpan")
    }

    /// The left and the right overhang, as the spans; None where there is none.
    #[getter]
    fn overhangs<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "overhangs", "BeamSpan")
    }

    /// The bending stiffness EI.
    #[getter]
    fn stiffness(&self) -> f64 {
        self.solved.stiffness
    }

    /// The reactions of the supports from the left, upward positive: below zero a support must hold the beam down.
    #[getter]
    fn reactions(&self) -> Vec<f64> {
        self.solved.supports.iter().map(|support| support.reaction).collect()
    }

    /// Deflection at a distance from the left tip, downward positive; None outside the beam.
    fn deflection_at(&self, x: f64) -> Option<f64> {
        self.solved.deflection_at(x)
    }

    /// Slope at a distance from the left tip, positive where the beam sinks to the right; None outside the beam.
    fn slope_at(&self, x: f64) -> Option<f64> {
        self.solved.slope_at(x)
    }

    /// Moment at a distance from the left tip, sagging positive; None outside the beam.
    fn moment_at(&self, x: f64) -> Option<f64> {
        self.solved.moment_at(x)
    }

    /// Shear at a distance from the left tip, right of the place where it jumps there; None outside the beam.
    fn shear_at(&self, x: f64) -> Option<f64> {
        self.solved.shear_at(x)
    }

    /// The beam's JSON: the same bytes from every language and on every machine.
    fn to_json(&self, py: Python<'_>) -> String {
        py.detach(|| self.document.text())
    }

    /// The beam as a dict, as `json.loads` makes it of its JSON.
    fn to_dict<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.python(py)
    }

    /// Supports and spans as tables, for notebooks.
    fn _repr_html_(&self) -> String {
        table::beam(&self.solved)
    }

    fn __eq__(&self, other: &Beam) -> bool {
        self.document == other.document
    }

    fn __reduce__<'py>(&self, py: Python<'py>) -> PyResult<Reduced<'py>> {
        reduced(py, "Beam", self.document.unit, &self.request)
    }

    fn __repr__(&self) -> String {
        let (spans, sags) = (self.solved.spans.len(), self.sags());
        format!("Beam({spans} spans, largest deflection {} at {})", figure(sags.value), figure(sags.at))
    }
}
