//! A solved plate, as Python sees it.

use crate::document::{self, Document, Reduced, reduced};
use crate::failure::Failure;
use crate::table::{self, figure};
use deck_core::Error;
use deck_core::job::PlateCall;
use pyo3::prelude::*;
use serde_json::Value;

/// What an orthotropic plate does under its loads.
///
/// Places are distances from a corner, along the length and along the width. Downward loads, sagging moments and downward
/// deflections are positive. Two plates are equal when their JSON is.
///
/// Examples
/// --------
/// >>> import deck_py
/// >>> edges = [{"kind": "along", "y": 0}, {"kind": "along", "y": 24}]
/// >>> load = [{"kind": "uniform", "value": 0.5}]
/// >>> plate = deck_py.plate(96, 24, dx=9583, dy=29583, torsion=8000, supports=edges, loads=load)
/// >>> round(sum(plate.reactions), 6), round(plate.deflection.most.value, 3)
/// (1152.0, 0.073)
/// >>> plate.at(200, 0) is None
/// True
#[pyclass(frozen, module = "deck_py")]
#[derive(Debug)]
pub(crate) struct Plate {
    solved: deck_core::span::Plate,
    document: Document,
    /// Pickled in place of the answer, which says less than the plate knows.
    request: Value,
}

impl Plate {
    /// The answer to a request.
    pub(crate) fn asked(request: Value, call: &PlateCall) -> Result<Plate, Error> {
        let solved = call.plate()?;
        Ok(Plate { document: Document::write(&solved, call.unit)?, solved, request })
    }
}

#[pymethods]
impl Plate {
    /// The unit of its lengths: `in`, `ft`, `mm`, `cm` or `m`.
    #[getter]
    fn unit(&self) -> &'static str {
        self.document.unit.symbol()
    }

    /// The least and the most deflection, and where.
    #[getter]
    fn deflection<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "deflection", "PlateRange")
    }

    /// The least and the most moment that bends along the length, per width, and where.
    #[getter]
    fn moment_x<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "moment_x", "PlateRange")
    }

    /// The least and the most moment that bends along the width, per length, and where.
    #[getter]
    fn moment_y<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "moment_y", "PlateRange")
    }

    /// The least and the most twisting moment, per length, and where.
    #[getter]
    fn twist<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "twist", "PlateRange")
    }

    /// What each support carries, upward positive, in the order of the supports.
    #[getter]
    fn reactions(&self) -> Vec<f64> {
        self.solved.reactions.clone()
    }

    /// Elements along the length and along the width.
    #[getter]
    fn elements(&self) -> (usize, usize) {
        let [along, across] = self.solved.elements;
        (along, across)
    }

    /// How far the largest deflection and moments may be off by the mesh; None where the caller chose the mesh.
    #[getter]
    fn error<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "error", "PlateError")
    }

    /// Deflection, slopes, moments, twist and shears at a place; None outside the plate.
    ///
    /// Parameters
    /// ----------
    /// x, y : float
    ///     Distances from the corner along the length and along the width, in `unit`.
    fn at<'py>(&self, py: Python<'py>, x: f64, y: f64) -> Result<Bound<'py, PyAny>, Failure> {
        let state = self.solved.at(x, y);
        let state = state.map(|state| Document::write(&state, self.document.unit)).transpose()?;
        Ok(document::record(py, "PlateState", &state.map_or(Value::Null, |state| state.value))?)
    }

    /// The plate's JSON: the same bytes from every language and on every machine.
    fn to_json(&self, py: Python<'_>) -> String {
        py.detach(|| self.document.text())
    }

    /// The plate as a dict, as `json.loads` makes it of its JSON.
    fn to_dict<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.python(py)
    }

    /// The extremes and the reactions as tables, for notebooks.
    fn _repr_html_(&self) -> String {
        table::plate(&self.solved)
    }

    fn __eq__(&self, other: &Plate) -> bool {
        self.document == other.document
    }

    fn __reduce__<'py>(&self, py: Python<'py>) -> PyResult<Reduced<'py>> {
        reduced(py, "Plate", self.document.unit, &self.request)
    }

    fn __repr__(&self) -> String {
        let sags = self.solved.deflection.largest();
        let [x, y] = sags.at.map(figure);
        let supports = self.solved.reactions.len();
        format!("Plate({supports} supports, largest deflection {} at ({x}, {y}))", figure(sags.value))
    }
}
