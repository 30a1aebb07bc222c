//! A layout of seams, as Python sees it.

use crate::document::{Document, Reduced};
use crate::table;
use deck_core::Error;
use pyo3::prelude::*;

/// One way to split a deck into boards: where the seams lie, and on which cross members.
///
/// Examples
/// --------
/// >>> import deck_py
/// >>> frame = {"measured_to": "centre", "flange": 2, "regular": {"first": 0, "last": 96, "spacing": 24}}
/// >>> layout = deck_py.seams(frame, 96, {"label": "4 x 8", "length": 96, "width": 48})[0]
/// >>> layout, layout.boards[0].width, layout.seams[0].member
/// (SeamLayout(2 boards, seams at 48 in), 48, 3)
#[pyclass(frozen, module = "deck_py")]
#[derive(Debug)]
pub(crate) struct SeamLayout {
    layout: deck_core::seams::SeamLayout,
    pub(crate) document: Document,
}

impl SeamLayout {
    pub(crate) fn new(document: Document) -> Result<SeamLayout, Error> {
        Ok(SeamLayout { layout: document.core()?, document })
    }
}

#[pymethods]
impl SeamLayout {
    /// The unit of its lengths.
    #[getter]
    fn unit(&self) -> &'static str {
        self.document.unit.symbol()
    }

    /// The boards from the bow aft: `number`, `fore`, `aft`, `width` and what they rest on.
    #[getter]
    fn boards<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "boards", "Board")
    }

    /// The seams from the bow aft: `number`, `member`, `fore`, `aft`, bearings, and what a flange lacks.
    #[getter]
    fn seams<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "seams", "Seam")
    }

    /// Where each seam's gap starts, from the bow aft.
    #[getter]
    fn stations(&self) -> Vec<f64> {
        self.layout.seams.iter().map(|seam| seam.fore.number(self.document.unit)).collect()
    }

    /// What the layout costs, in order of weight: the first that differs decides.
    #[getter]
    fn cost<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "cost", "LayoutCost")
    }

    /// Station where the last board ends.
    #[getter]
    fn finish<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.get(py, "finish")
    }

    /// The layout's JSON, as it stands in a plan.
    fn to_json(&self, py: Python<'_>) -> String {
        py.detach(|| self.document.text())
    }

    /// The layout as a dict, as `json.loads` makes it of its JSON.
    fn to_dict<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.python(py)
    }

    /// The boards as a table, for notebooks.
    fn _repr_html_(&self) -> String {
        table::layout(&self.layout, self.document.unit)
    }

    fn __eq__(&self, other: &SeamLayout) -> bool {
        self.document == other.document
    }

    fn __reduce__<'py>(&self, py: Python<'py>) -> PyResult<Reduced<'py>> {
        self.document.reduce(py, "SeamLayout")
    }

    fn __repr__(&self) -> String {
        const SHOWN: usize = 8;
        let unit = self.document.unit;
        let mut stations: Vec<String> =
            self.layout.seams.iter().take(SHOWN).map(|seam| seam.fore.decimal(unit)).collect();
        if self.layout.seams.len() > SHOWN {
            stations.push("…".into());
        }
        let seams = if stations.is_empty() {
            "no seam".into()
        } else {
            format!("seams at {} {}", stations.join(", "), unit.symbol())
        };
        format!("SeamLayout({} boards, {seams})", self.layout.boards.len())
    }
}
