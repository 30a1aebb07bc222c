//! The deck's outline, as Python sees it.

use crate::document::{Document, Reduced};
use crate::polygon::polygon;
use deck_core::Error;
use deck_core::plan::DeckFacts;
use pyo3::prelude::*;
use pyo3::types::PyDict;

/// The deck's outline, in deck coordinates: x aft of the bow edge, y to starboard of the port edge.
///
/// Examples
/// --------
/// >>> import deck_py
/// >>> outline = deck_py.plan({
/// ...     "schema": 1, "name": "Sandpiper", "unit": "in",
/// ...     "deck": {"length": "20 ft", "beam": 96},
/// ...     "frame": {"measured_to": "centre", "flange": 2, "regular": {"first": 0, "last": 240, "spacing": 24}},
/// ...     "stock": [{"label": "3/4 ply", "length": 96, "width": 48, "thickness": "3/4"}],
/// ... }).outline
/// >>> outline, outline.area, outline.checks.square.diagonal_text
/// (Outline(240 x 96 in), 23040, '≈258-1/2" (258.488)')
#[pyclass(frozen, module = "deck_py")]
#[derive(Debug)]
pub(crate) struct Outline {
    deck: DeckFacts,
    pub(crate) document: Document,
}

impl Outline {
    pub(crate) fn new(document: Document) -> Result<Outline, Error> {
        Ok(Outline { deck: document.core()?, document })
    }
}

#[pymethods]
impl Outline {
    /// The unit of its lengths.
    #[getter]
    fn unit(&self) -> &'static str {
        self.document.unit.symbol()
    }

    /// Length over all.
    #[getter]
    fn length<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.get(py, "length")
    }

    /// Greatest beam.
    #[getter]
    fn beam<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.get(py, "beam")
    }

    /// Area within it, openings included, arcs counted as arcs, in the square of the unit.
    #[getter]
    fn area<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.get(py, "area")
    }

    /// Its sides in order, each from its own corner to the next one's, with its arc and what it is.
    #[getter]
    fn shape<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "outline", "Side")
    }

    /// What to measure before the first cut.
    #[getter]
    fn checks<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "checks", "Checks")
    }

    /// The outline as a dict, as it stands in the plan's JSON.
    fn to_dict<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.python(py)
    }

    /// The outline as a polygon without holes, arcs as chords within 0.01 mm of them.
    #[getter(__geo_interface__)]
    fn geo_interface<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyDict>> {
        polygon(py, &self.deck.outline, std::iter::empty(), self.document.unit)
    }

    fn __eq__(&self, other: &Outline) -> bool {
        self.document == other.document
    }

    fn __reduce__<'py>(&self, py: Python<'py>) -> PyResult<Reduced<'py>> {
        self.document.reduce(py, "Outline")
    }

    fn __repr__(&self) -> String {
        let unit = self.document.unit;
        let (length, beam) = (self.deck.length.decimal(unit), self.deck.beam.decimal(unit));
        format!("Outline({length} x {beam} {})", unit.symbol())
    }
}
