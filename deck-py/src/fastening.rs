//! The fasteners of a deck, as Python sees them.

use crate::document::{Document, Reduced};
use crate::table;
use deck_core::Error;
use pyo3::prelude::*;

/// Every row of fasteners, and the count of all.
///
/// Examples
/// --------
/// >>> import deck_py
/// >>> panels = deck_py.panels({"length": 48, "beam": 96}, [])
/// >>> frame = {"measured_to": "centre", "flange": 2, "members": [{"station": x} for x in (1, 24, 47)]}
/// >>> fastening = deck_py.fasteners(panels, frame, fastening={"edge_spacing": 8, "field_spacing": 16, "end_distance": 1})
/// >>> fastening.count, fastening.edge_count, fastening.rows[1].kind
/// (33, 26, 'field')
#[pyclass(frozen, module = "deck_py")]
#[derive(Debug)]
pub(crate) struct Fastening {
    fastening: deck_core::fasteners::Fastening,
    document: Document,
}

impl Fastening {
    pub(crate) fn new(document: Document) -> Result<Fastening, Error> {
        Ok(Fastening { fastening: document.core()?, document })
    }
}

#[pymethods]
impl Fastening {
    /// The unit of its lengths.
    #[getter]
    fn unit(&self) -> &'static str {
        self.document.unit.symbol()
    }

    /// The rows, panel by panel and from the bow aft: `panel`, `member`, `kind`, `station`, `positions` and what is amiss.
    #[getter]
    fn rows<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "rows", "Row")
    }

    /// Fasteners in all rows.
    #[getter]
    fn count(&self) -> usize {
        self.fastening.count
    }

    /// Fasteners in edge rows.
    #[getter]
    fn edge_count(&self) -> usize {
        self.fastening.edge_count
    }

    /// Fasteners in field rows.
    #[getter]
    fn field_count(&self) -> usize {
        self.fastening.field_count
    }

    /// The fasteners' JSON, as it stands in a plan.
    fn to_json(&self, py: Python<'_>) -> String {
        py.detach(|| self.document.text())
    }

    /// The fasteners as a dict, as `json.loads` makes it of their JSON.
    fn to_dict<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.python(py)
    }

    /// The rows as a table, for notebooks.
    fn _repr_html_(&self) -> String {
        table::fastening(&self.fastening, self.document.unit)
    }

    fn __eq__(&self, other: &Fastening) -> bool {
        self.document == other.document
    }

    fn __reduce__<'py>(&self, py: Python<'py>) -> PyResult<Reduced<'py>> {
        self.document.reduce(py, "Fastening")
    }

    fn __repr__(&self) -> String {
        let (rows, count) = (self.fastening.rows.len(), self.fastening.count);
        format!("Fastening({rows} rows, {count} fasteners)")
    }
}
