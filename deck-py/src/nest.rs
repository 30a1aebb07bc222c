//! Sheets with their parts and cuts, as Python sees them.

use crate::document::{Document, Reduced};
use crate::table;
use deck_core::Error;
use pyo3::prelude::*;

/// Parts on sheets, and how to saw them.
///
/// Examples
/// --------
/// >>> import deck_py
/// >>> lids = [{"label": "lid", "length": 40, "width": 20, "count": 4}]
/// >>> nest = deck_py.nest(lids, [{"label": "4 x 8", "length": 96, "width": 48, "price": 62.5}])
/// >>> nest.sheet_count, nest.cost, nest.bound, nest.proven
/// (1, 62.5, 62.5, True)
/// >>> nest.sheets[0].placements[0]
/// Placement(part='lid', x=0, y=0, length=20, width=40, turned=True)
#[pyclass(frozen, module = "deck_py")]
#[derive(Debug)]
pub(crate) struct Nest {
    nest: deck_core::nest::Nest,
    document: Document,
}

impl Nest {
    pub(crate) fn new(document: Document) -> Result<Nest, Error> {
        Ok(Nest { nest: document.core()?, document })
    }
}

#[pymethods]
impl Nest {
    /// The unit of its lengths.
    #[getter]
    fn unit(&self) -> &'static str {
        self.document.unit.symbol()
    }

    /// The sheets, each with its placements, its cut tree and its offcuts.
    #[getter]
    fn sheets<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "sheets", "Sheet")
    }

    /// The parts that found no place, and why.
    #[getter]
    fn unplaced<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "unplaced", "Unplaced")
    }

    /// How many sheets are used.
    #[getter]
    fn sheet_count<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.get(py, "sheet_count")
    }

    /// What the sheets cost: in money where they have prices, otherwise their area.
    #[getter]
    fn cost<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.get(py, "cost")
    }

    /// The cost by boat.
    #[getter]
    fn cost_by_boat<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "cost_by_boat", "BoatCost")
    }

    /// No answer costs less than this.
    #[getter]
    fn bound<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.get(py, "bound")
    }

    /// True where no better answer exists.
    #[getter]
    fn proven(&self) -> bool {
        self.nest.proven
    }

    /// Whether costs are `money`, or an `area` because no sheet has a price.
    #[getter]
    fn cost_in<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.get(py, "cost_in")
    }

    /// The nest's JSON: the same bytes from every language and on every machine.
    fn to_json(&self, py: Python<'_>) -> String {
        py.detach(|| self.document.text())
    }

    /// The sheets as a table, for notebooks.
    fn _repr_html_(&self) -> String {
        table::nest(&self.nest)
    }

    /// The nest as a dict, as `json.loads` makes it of its JSON.
    fn to_dict<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.python(py)
    }

    fn __eq__(&self, other: &Nest) -> bool {
        self.document == other.document
    }

    fn __reduce__<'py>(&self, py: Python<'py>) -> PyResult<Reduced<'py>> {
        self.document.reduce(py, "Nest")
    }

    fn __repr__(&self) -> String {
        let proven = if self.nest.proven { "proven" } else { "not proven" };
        let unplaced: usize = self.nest.unplaced.len();
        format!("Nest({} sheets, {unplaced} kinds of parts not placed, {proven})", self.nest.sheet_count)
    }
}
