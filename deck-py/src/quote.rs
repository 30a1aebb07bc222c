//! A quote as Python sees it.

use crate::document::{Document, Reduced};
use crate::table;
use deck_core::{Error, quote};
use pyo3::prelude::*;

/// What a job costs: lines that add up to a total, and the hours behind it.
///
/// Examples
/// --------
/// >>> import deck_py
/// >>> quote = deck_py.plan({
/// ...     "schema": 1, "name": "Sandpiper", "unit": "in", "quote": {"currency": "USD"},
/// ...     "deck": {"length": "20 ft", "beam": 96},
/// ...     "frame": {"measured_to": "centre", "flange": 2, "regular": {"first": 0, "last": 240, "spacing": 24}},
/// ...     "stock": [{"label": "3/4 ply", "length": 96, "width": 48, "thickness": "3/4", "price": 62.5}],
/// ... }).quote
/// >>> quote.total, quote.lines[0]
/// (312.5, QuoteLine(group='materials', description='3/4 ply', amount=312.5))
/// >>> quote.unpriced[:2]
/// ['1/4-20 self-drilling flat head', 'Tape over seams']
#[pyclass(frozen, module = "deck_py")]
#[derive(Debug)]
pub(crate) struct Quote {
    quote: quote::Quote,
    document: Document,
}

impl Quote {
    pub(crate) fn new(document: Document) -> Result<Quote, Error> {
        Ok(Quote { quote: document.core()?, document })
    }
}

#[pymethods]
impl Quote {
    /// The lines in order, each with its group, quantity, unit, rate and amount.
    #[getter]
    fn lines<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "lines", "QuoteLine")
    }

    /// Sums by group.
    #[getter]
    fn sums<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "sums", "QuoteSum")
    }

    /// The sum of the lines.
    #[getter]
    fn total<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.get(py, "total")
    }

    /// The hours by task, and how sure their sum is.
    #[getter]
    fn labour<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "labour", "Labour")
    }

    /// What has no price: the total does not hold it.
    #[getter]
    fn unpriced<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.get(py, "unpriced")
    }

    /// The lines as comma-separated values (RFC 4180), the total in the last row.
    ///
    /// Columns: `group`, `description`, `quantity`, `unit`, `rate`, `amount`. Write it with `newline=""`.
    fn to_csv(&self) -> String {
        quote::quote_csv(&self.quote)
    }

    /// The quote's JSON: the same bytes from every language and on every machine.
    fn to_json(&self, py: Python<'_>) -> String {
        py.detach(|| self.document.text())
    }

    /// The quote as a dict, as `json.loads` makes it of its JSON.
    fn to_dict<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.python(py)
    }

    /// The lines as a table, for notebooks.
    fn _repr_html_(&self) -> String {
        table::quote(&self.quote)
    }

    fn __eq__(&self, other: &Quote) -> bool {
        self.document == other.document
    }

    fn __reduce__<'py>(&self, py: Python<'py>) -> PyResult<Reduced<'py>> {
        self.document.reduce(py, "Quote")
    }

    fn __repr__(&self) -> String {
        let hours = self.quote.labour.charged_hours;
        let unpriced = match self.quote.unpriced.len() {
            0 => String::new(),
            count => format!(", {count} not priced"),
        };
        format!("Quote({} lines, {hours} hours, total {}{unpriced})", self.quote.lines.len(), self.quote.total)
    }
}
