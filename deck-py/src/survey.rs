//! An adjusted survey, as Python sees it.

use crate::document::{Document, Reduced, record};
use crate::failure::Failure;
use crate::polygon::polygon;
use crate::strength::work;
use crate::table;
use deck_core::job::SurveyCall;
use deck_core::outline::{Deck, Explicit};
use deck_core::{Error, draw};
use pyo3::prelude::*;
use pyo3::types::PyDict;
use serde_json::Value;

/// `deck_py.survey`, its arguments as one dict.
#[pyfunction(name = "_survey")]
pub(crate) fn survey(py: Python<'_>, request: &Bound<'_, PyAny>) -> Result<Survey, Failure> {
    work(py, request, |given| {
        let call = given.read(SurveyCall::from_value)?;
        Survey::new(Document::new(call.document()?, call.unit))
    })
}

/// Where measured points lie, and which readings are wrong.
///
/// Lengths are numbers in `unit`; x runs aft and y to starboard of the datum. Two surveys are equal when their JSON is.
///
/// Examples
/// --------
/// >>> import deck_py
/// >>> def distance(a, b, reading):
/// ...     return {"kind": "distance", "between": [a, b], "reading": reading}
/// >>> sides = [distance("BP", "SP", 240), distance("BS", "SS", 240), distance("BP", "BS", 100), distance("SP", "SS", 100)]
/// >>> survey = deck_py.survey([*sides, distance("BP", "SS", 260), distance("BS", "SP", 260)], corners=("BP", "SP", "SS", "BS"))
/// >>> len(survey.points), len(survey.readings), len(survey.blunders)
/// (4, 6, 0)
#[pyclass(frozen, module = "deck_py")]
#[derive(Debug)]
pub(crate) struct Survey {
    found: deck_core::survey::Survey,
    document: Document,
}

impl Survey {
    pub(crate) fn new(document: Document) -> Result<Survey, Error> {
        Ok(Survey { found: document.core()?, document })
    }
}

#[pymethods]
impl Survey {
    /// The unit of its lengths.
    #[getter]
    fn unit(&self) -> &'static str {
        self.document.unit.symbol()
    }

    /// The points in the order in which readings name them: places, standard deviations, correlation.
    #[getter]
    fn points<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "points", "SurveyPoint")
    }

    /// The readings against what the places make of them: residuals, standardised residuals, redundancy, the least blunder
    /// that would be found, and whether each was used.
    #[getter]
    fn readings<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "readings", "SurveyReading")
    }

    /// Readings that disagree with the rest and were left out, with what they should have read.
    #[getter]
    fn blunders<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "blunders", "SurveyBlunder")
    }

    /// How many readings are more than the places need.
    #[getter]
    fn freedom(&self) -> usize {
        self.found.freedom
    }

    /// The largest residual of the readings that were used.
    #[getter]
    fn agreement<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.get(py, "agreement")
    }

    /// Whether what is left agrees within the errors of the readings; None where nothing is left over to tell.
    #[getter]
    fn test<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "test", "SurveyTest")
    }

    /// Names of readings that no other reading checks.
    #[getter]
    fn unchecked(&self) -> Vec<String> {
        self.found.unchecked.clone()
    }

    /// How far the frame is out of square and which diagonal to pull; None without corners.
    #[getter]
    fn squaring<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "squaring", "SurveySquaring")
    }

    /// The traces as lines and arcs.
    #[getter]
    fn traces<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.list(py, "traces", "SurveyTrace")
    }

    /// The old boards held against the members; None where none were given.
    #[getter]
    fn old_boards<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "old_boards", "SurveyBoards")
    }

    /// The corners of the outline, as a job takes them: `{"deck": {"outline": survey.outline}}`. Empty where none was asked for.
    #[getter]
    fn outline<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.list(py, "outline", "SurveyCorner")
    }

    /// The cross members and their stations from the outline's zero.
    #[getter]
    fn members<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.list(py, "members", "SurveyMember")
    }

    /// The whole in sentences, what matters most first.
    #[getter]
    fn summary(&self) -> Vec<String> {
        self.found.summary.clone()
    }

    /// The survey's JSON: the same bytes from every language and on every machine.
    fn to_json(&self, py: Python<'_>) -> String {
        py.detach(|| self.document.text())
    }

    /// The survey as a dict, as `json.loads` makes it of its JSON.
    fn to_dict<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.python(py)
    }

    /// The outline as a polygon, arcs as chords within 0.01 mm of them; the points where there is no outline.
    #[getter(__geo_interface__)]
    fn geo_interface<'py>(&self, py: Python<'py>) -> Result<Bound<'py, PyDict>, Failure> {
        if !self.found.outline.is_empty() {
            let outline = Deck::Explicit(Explicit { outline: self.found.outline.clone() }).outline()?;
            return Ok(polygon(py, outline.path(), std::iter::empty(), self.document.unit)?);
        }
        let unit = self.document.unit;
        let place = |point: &deck_core::survey::SurveyPoint| (point.x.number(unit), point.y.number(unit));
        let places: Vec<(f64, f64)> = self.found.points.iter().map(place).collect();
        let dict = PyDict::new(py);
        dict.set_item("type", "MultiPoint")?;
        dict.set_item("coordinates", places)?;
        Ok(dict)
    }

    /// What was found in sentences, and the readings as a table, for notebooks.
    fn _repr_html_(&self) -> String {
        table::survey(&self.found, self.document.unit)
    }

    /// The points and the readings between them, for notebooks.
    fn _repr_svg_(&self, py: Python<'_>) -> String {
        py.detach(|| draw::survey_svg(&self.found, self.document.unit))
    }

    fn __eq__(&self, other: &Survey) -> bool {
        self.document == other.document
    }

    fn __reduce__<'py>(&self, py: Python<'py>) -> PyResult<Reduced<'py>> {
        self.document.reduce(py, "Survey")
    }

    fn __repr__(&self) -> String {
        let (points, readings, wrong) = (self.found.points.len(), self.found.readings.len(), self.found.blunders.len());
        let unit = self.document.unit;
        let agreement = table::figure(self.found.agreement.in_unit(unit));
        let wrong = if wrong == 0 { String::new() } else { format!(", {wrong} left out") };
        format!("Survey({points} points, {readings} readings{wrong}, agreement {agreement} {})", unit.symbol())
    }
}

impl Survey {
    /// A list of the document, each item as an object of that class; empty where it was left out.
    fn list<'py>(&self, py: Python<'py>, key: &str, class: &str) -> PyResult<Bound<'py, PyAny>> {
        let none = Value::Array(Vec::new());
        record(py, class, self.document.value.get(key).unwrap_or(&none))
    }
}
