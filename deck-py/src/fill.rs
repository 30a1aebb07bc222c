//! One sheet's best filling, as Python sees it.

use crate::document::{Document, Reduced};
use crate::table;
use deck_core::Error;
use pyo3::prelude::*;

/// The most valuable set of parts that was found for one sheet, and how to saw it.
///
/// Examples
/// --------
/// >>> import deck_py
/// >>> lid = {"label": "lid", "length": 24, "width": 20, "count": None, "value": 5}
/// >>> fill = deck_py.fill({"label": "rest", "length": 96, "width": 22}, [lid])
/// >>> fill.value, fill.bound, len(fill.placements), fill.cuts.cut
/// (20, 20, 4, 'length')
#[pyclass(frozen, module = "deck_py")]
#[derive(Debug)]
pub(crate) struct Fill {
    fill: deck_core::nest::Fill,
    document: Document,
}

impl Fill {
    pub(crate) fn new(document: Document) -> Result<Fill, Error> {
        Ok(Fill { fill: document.core()?, document })
    }
}

#[pymethods]
impl Fill {
    /// The unit of its lengths.
    #[getter]
    fn unit(&self) -> &'static str {
        self.document.unit.symbol()
    }

    /// What the parts on the sheet are worth together: the sum of their values, or of their areas.
    #[getter]
    fn value<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.get(py, "value")
    }

    /// Whether it is a sum of `value`s, or an `area` because no part has a value.
    #[getter]
    fn value_in<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.get(py, "value_in")
    }

    /// No set of parts that can be cut from the sheet is worth more than this.
    #[getter]
    fn bound<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.get(py, "bound")
    }

    /// True where no better answer exists.
    #[getter]
    fn proven(&self) -> bool {
        self.fill.proven
    }

    /// The parts on the sheet, in sawing order.
    #[getter]
    fn placements<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "placements", "Placement")
    }

    /// The tree of cuts, from the bare sheet.
    #[getter]
    fn cuts<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "cuts", "Tree")
    }

    /// Pieces worth keeping, in sawing order.
    #[getter]
    fn offcuts<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "offcuts", "Rectangle")
    }

    /// The fill's JSON: the same bytes from every language and on every machine.
    fn to_json(&self, py: Python<'_>) -> String {
        py.detach(|| self.document.text())
    }

    /// The fill as a dict, as `json.loads` makes it of its JSON.
    fn to_dict<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.python(py)
    }

    /// The parts as a table, for notebooks.
    fn _repr_html_(&self) -> String {
        table::fill(&self.fill)
    }

    fn __eq__(&self, other: &Fill) -> bool {
        self.document == other.document
    }

    fn __reduce__<'py>(&self, py: Python<'py>) -> PyResult<Reduced<'py>> {
        self.document.reduce(py, "Fill")
    }

    fn __repr__(&self) -> String {
        let proven = if self.fill.proven { "proven" } else { "not proven" };
        format!("Fill({} parts, worth {}, {proven})", self.fill.placements.len(), self.fill.value)
    }
}
