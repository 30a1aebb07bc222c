//! A panel, as Python sees it.

use crate::document::{Document, Reduced};
use crate::plan::short;
use crate::polygon::polygon;
use deck_core::Error;
use pyo3::prelude::*;
use pyo3::types::PyDict;

/// A board in its true shape, in deck coordinates: x aft of the bow edge, y to starboard of the port edge.
///
/// Examples
/// --------
/// >>> import deck_py
/// >>> panel = deck_py.panels({"length": 48, "beam": 96}, [], thickness="3/4")[0]
/// >>> panel, panel.weight_lb, panel.bounds.aft
/// (Panel("1": 96 x 48 in), 73.6, 48)
/// >>> panel.__geo_interface__["coordinates"][0][0]
/// (0.0, 0.0)
#[pyclass(frozen, module = "deck_py")]
#[derive(Debug)]
pub(crate) struct Panel {
    panel: deck_core::panels::Panel,
    pub(crate) document: Document,
}

impl Panel {
    pub(crate) fn new(document: Document) -> Result<Panel, Error> {
        Ok(Panel { panel: document.core()?, document })
    }
}

#[pymethods]
impl Panel {
    /// Label, unique on the boat.
    #[getter]
    fn label(&self) -> &str {
        &self.panel.label
    }

    /// The board that it is of, counted from the bow from 1.
    #[getter]
    fn board(&self) -> usize {
        self.panel.board
    }

    /// The unit of its lengths.
    #[getter]
    fn unit(&self) -> &'static str {
        self.document.unit.symbol()
    }

    /// Extent athwart of the least rectangle around it.
    #[getter]
    fn length<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.get(py, "length")
    }

    /// Extent fore and aft of the least rectangle around it.
    #[getter]
    fn width<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.get(py, "width")
    }

    /// Where its edges at seams follow members out of square: how they run on that rectangle; None where they are square.
    #[getter]
    fn taper<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "taper", "Taper")
    }

    /// Both diagonals of that rectangle.
    #[getter]
    fn diagonal<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.get(py, "diagonal")
    }

    /// Area without the openings, arcs counted as arcs, in the square of the unit.
    #[getter]
    fn area<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.get(py, "area")
    }

    /// Weight in pounds, dry; None where the thickness is not known.
    #[getter]
    fn weight_lb(&self) -> Option<f64> {
        self.panel.weight_lb
    }

    /// The way its face grain runs: `athwart` or `fore-and-aft`.
    #[getter]
    fn strength_axis<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.get(py, "strength_axis")
    }

    /// The least rectangle around it: `fore`, `aft`, `port` and `starboard`.
    #[getter]
    fn bounds<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "bounds", "Bounds")
    }

    /// Its sides in order, each from its own corner to the next one's, with its arc and its kind of edge.
    #[getter]
    fn shape<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "shape", "Side")
    }

    /// The openings in it.
    #[getter]
    fn openings<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "openings", "PanelOpening")
    }

    /// The panel as a dict, as it stands in the plan's JSON.
    fn to_dict<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.python(py)
    }

    /// The panel as a polygon with its openings as holes, arcs as chords within 0.01 mm of them.
    #[getter(__geo_interface__)]
    fn geo_interface<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyDict>> {
        let holes = self.panel.openings.iter().map(|opening| opening.shape.clone());
        polygon(py, &self.panel.shape, holes, self.document.unit)
    }

    fn __eq__(&self, other: &Panel) -> bool {
        self.document == other.document
    }

    fn __reduce__<'py>(&self, py: Python<'py>) -> PyResult<Reduced<'py>> {
        self.document.reduce(py, "Panel")
    }

    fn __repr__(&self) -> String {
        let unit = self.document.unit;
        let (length, width) = (self.panel.length.decimal(unit), self.panel.width.decimal(unit));
        format!("Panel({}: {length} x {width} {})", short(&self.panel.label), unit.symbol())
    }
}
