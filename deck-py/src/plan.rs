//! The one call, and the plan that it returns.

use crate::columns;
use crate::document::{self, Document, Reduced};
use crate::drawing;
use crate::failure::Failure;
use crate::fastening::Fastening;
use crate::job::Source;
use crate::layout::SeamLayout;
use crate::nest::Nest;
use crate::outline::Outline;
use crate::panel::Panel;
use crate::quote::Quote;
use crate::survey::Survey;
use deck_core::{Error, Fault, Kind, draw};
use pyo3::prelude::*;
use pyo3::types::PyDict;
use serde_json::Value;

/// Plans a deck.
///
/// A job that can be read but not laid out is no error: its plan has no layouts, and `no_layout` says why.
///
/// Parameters
/// ----------
/// job : dict, str or path
///     The job as a dict of the job file's fields, as JSON text (a str that starts with a brace), or as a path to a job
///     file (every other str, or any `os.PathLike`). In a dict, lengths may also be `fractions.Fraction` or
///     `decimal.Decimal`, and are taken exactly.
///
/// Returns
/// -------
/// Plan
///     Everything that follows from the job.
///
/// Raises
/// ------
/// DeckError
///     The job cannot be worked on. Its `errors` are everything that is wrong with it.
/// OSError
///     The file cannot be read; a missing one is a `FileNotFoundError`.
/// TypeError
///     The job is none of these, or holds something that JSON has no word for.
///
/// Examples
/// --------
/// >>> from fractions import Fraction
/// >>> import deck_py
/// >>> job = {
/// ...     "schema": 1, "name": "Sandpiper", "unit": "in",
/// ...     "deck": {"length": "20 ft", "beam": 96},
/// ...     "frame": {"measured_to": "centre", "flange": 2, "regular": {"first": 0, "last": 240, "spacing": 24}},
/// ...     "stock": [{"label": "3/4 ply", "length": 96, "width": 48, "thickness": Fraction(3, 4)}],
/// ...     "gap": 0,
/// ... }
/// >>> plan = deck_py.plan(job)
/// >>> plan
/// Plan("Sandpiper": 5 panels, 4 seams, 5 sheets)
/// >>> [seam.fore for seam in plan.seams]
/// [48, 96, 144, 192]
///
/// Where no board in stock reaches from one flange to the next, the plan says so:
///
/// >>> job["frame"]["regular"]["spacing"] = 60
/// >>> plan = deck_py.plan(job)
/// >>> plan.seams, plan.no_layout.shortfall
/// (Records(), 11)
#[pyfunction]
pub(crate) fn plan(py: Python<'_>, job: &Bound<'_, PyAny>) -> Result<Plan, Failure> {
    let source = Source::new(job, "plan")?;
    Ok(py.detach(|| Plan::new(deck_core::plan(&source.job()?)?))?)
}

/// Everything that follows from a job: seams, panels, fasteners, sheets, and what to buy.
///
/// Lengths are numbers in `unit`. Two plans are equal when their JSON is.
///
/// Examples
/// --------
/// >>> import deck_py
/// >>> job = {
/// ...     "schema": 1, "name": "Sandpiper", "unit": "in",
/// ...     "deck": {"length": "20 ft", "beam": 96},
/// ...     "frame": {"measured_to": "centre", "flange": 2, "regular": {"first": 0, "last": 240, "spacing": 24}},
/// ...     "stock": [{"label": "3/4 ply", "length": 96, "width": 48, "thickness": "3/4", "price": 62.5}],
/// ...     "gap": 0,
/// ... }
/// >>> plan = deck_py.plan(job)
/// >>> plan.takeoff.lines[0]
/// TakeoffLine(buy=5, unit='sheet', description='3/4 ply', cost=312.5)
/// >>> plan.frame("seams")["fore"]
/// [48.0, 96.0, 144.0, 192.0]
/// >>> plan.views[:2], plan.svg("plan")[:4]
/// (['cover', 'cover-2'], '<svg')
/// >>> deck_py.Plan.from_json(plan.to_json()) == plan == deck_py.plan(plan.job)
/// True
#[pyclass(frozen, module = "deck_py")]
#[derive(Debug)]
pub(crate) struct Plan {
    plan: deck_core::Plan,
    document: Document,
}

impl Plan {
    fn new(plan: deck_core::Plan) -> Result<Plan, Error> {
        let value =
            serde_json::to_value(&plan).map_err(|error| Fault::new(Kind::NotJson, "", error.to_string(), ""))?;
        Ok(Plan { document: Document::new(value, plan.basis.unit), plan })
    }

    pub(crate) fn read(text: &str) -> Result<Plan, Error> {
        Plan::new(deck_core::Plan::from_json(text)?)
    }

    /// Each item of a list as an object of its own.
    fn each<T>(&self, key: &str, make: impl Fn(Document) -> Result<T, Error>) -> Result<Vec<T>, Error> {
        let items = self.document.value.get(key).and_then(Value::as_array).map_or(&[][..], Vec::as_slice);
        items.iter().map(|item| make(Document::new(item.clone(), self.document.unit))).collect()
    }

    /// Each of a list that the plan's JSON leaves out where it is empty, as an object of that class of `deck_py.types`.
    fn listed<'py>(&self, py: Python<'py>, key: &str, class: &str) -> PyResult<Bound<'py, PyAny>> {
        let none = Value::Array(Vec::new());
        document::record(py, class, self.document.value.get(key).unwrap_or(&none))
    }

    /// A part as an object of its own; none where it is null.
    fn part<T>(&self, key: &str, make: impl Fn(Document) -> Result<T, Error>) -> Result<Option<T>, Error> {
        let part = self.document.part(key);
        if part.value.is_null() { Ok(None) } else { make(part).map(Some) }
    }
}

#[pymethods]
impl Plan {
    /// Reads a plan's JSON back.
    ///
    /// Raises
    /// ------
    /// DeckError
    ///     The text is not a plan's JSON.
    #[staticmethod]
    fn from_json(py: Python<'_>, text: &str) -> Result<Plan, Failure> {
        Ok(py.detach(|| Plan::read(text))?)
    }

    /// The plan's JSON: the same bytes from every language and on every machine.
    fn to_json(&self, py: Python<'_>) -> String {
        py.detach(|| self.plan.to_json())
    }

    /// The plan as a dict, as `json.loads` makes it of its JSON.
    fn to_dict<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.python(py)
    }

    /// The library's version that made the plan.
    #[getter]
    fn version(&self) -> &str {
        &self.plan.version
    }

    /// The unit of every length in the plan: `in`, `ft`, `mm`, `cm` or `m`.
    #[getter]
    fn unit(&self) -> &'static str {
        self.document.unit.symbol()
    }

    /// The job that the plan comes from: `deck_py.plan(plan.job)` makes it again.
    #[getter]
    fn job<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.get(py, "job")
    }

    /// The settings that the plan rests on.
    #[getter]
    fn basis<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "basis", "Basis")
    }

    /// Defaults that it rests on and that no source settles.
    #[getter]
    fn assumed<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "assumed", "Assumed")
    }

    /// Lengths of the job that were not whole nanometres, and what was taken for them.
    #[getter]
    fn rounded<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "rounded", "Rounded")
    }

    /// What to measure before the first cut.
    #[getter]
    fn checks<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.part("deck").record(py, "checks", "Checks")
    }

    /// The cross members from the bow aft, their flanges in place.
    #[getter]
    fn members<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "frame", "Member")
    }

    /// The openings in the deck.
    #[getter]
    fn openings<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "openings", "Opening")
    }

    /// The deck's outline.
    #[getter]
    fn outline(&self) -> Result<Outline, Failure> {
        Ok(Outline::new(self.document.part("deck"))?)
    }

    /// The layouts of seams, best first. Everything else follows from the first.
    #[getter]
    fn layouts(&self) -> Result<Vec<SeamLayout>, Failure> {
        Ok(self.each("layouts", SeamLayout::new)?)
    }

    /// The seams of the best layout from the bow aft; empty where there is none.
    #[getter]
    fn seams<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        let none = Value::Array(Vec::new());
        document::record(py, "Seam", self.document.value.pointer("/layouts/0/seams").unwrap_or(&none))
    }

    /// True where no better layout exists.
    #[getter]
    fn proven(&self) -> bool {
        self.plan.proven
    }

    /// Why there is no layout; None where there is one.
    #[getter]
    fn no_layout<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "no_layout", "NoLayout")
    }

    /// The manners of laying boards that were compared, the best first; empty where none were.
    #[getter]
    fn arrangements<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        let none = Value::Array(Vec::new());
        document::record(py, "Arrangement", self.document.value.get("arrangements").unwrap_or(&none))
    }

    /// Joints along the boat and the blocks under them; None where what is built has none.
    #[getter]
    fn division<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "division", "Division")
    }

    /// What came of choosing seams by the nest; None where that was not asked for.
    #[getter]
    fn seams_by_nest<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "seams_by_nest", "SeamPricing")
    }

    /// The panels, from the bow aft and from port to starboard.
    #[getter]
    fn panels(&self) -> Result<Vec<Panel>, Failure> {
        Ok(self.each("panels", Panel::new)?)
    }

    /// The fasteners; None without a layout.
    #[getter]
    fn fasteners(&self) -> Result<Option<Fastening>, Failure> {
        Ok(self.part("fasteners", Fastening::new)?)
    }

    /// The sheets and how to saw them; None without a layout.
    #[getter]
    fn sheets(&self) -> Result<Option<Nest>, Failure> {
        Ok(self.part("sheets", Nest::new)?)
    }

    /// What to buy; None without a layout.
    #[getter]
    fn takeoff<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "takeoff", "Takeoff")
    }

    /// Roll goods over the deck: roll, seams, cut list, glue; None where the job has none.
    #[getter]
    fn covering<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "covering", "Covering")
    }

    /// How the old deck comes off; None where the job does not speak of it.
    #[getter]
    fn strip_out<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "strip_out", "StripOut")
    }

    /// What comes off the boat and what goes on, as mass only; None where the job does not speak of the old deck.
    #[getter]
    fn weights<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "weights", "Weights")
    }

    /// What the job costs; None where it asks for no quote.
    #[getter]
    fn quote(&self) -> Result<Option<Quote>, Failure> {
        Ok(self.part("quote", Quote::new)?)
    }

    /// What the survey found; None where the job has none.
    #[getter]
    fn survey(&self) -> Result<Option<Survey>, Failure> {
        Ok(self.part("survey", Survey::new)?)
    }

    /// What the boards take on their supports, and what the fasteners hold: figures for a person to judge.
    #[getter]
    fn span<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "span", "Span")
    }

    /// What errors of measuring, sawing and setting leave of each seam's bearing; None where the job reckons with none.
    #[getter]
    fn tolerance<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "tolerance", "Tolerance")
    }

    /// What mends flanges too narrow for two rows of fasteners; None where the job does not ask.
    #[getter]
    fn narrow_flange<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "narrow_flange", "NarrowFlanges")
    }

    /// Holes of the old deck in the members, beside the new fasteners; empty where the job gives none.
    #[getter]
    fn old_holes<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.listed(py, "old_holes", "OldHole")
    }

    /// What is bolted down again: holes on the new panels, bolts, plates; None where the job does not say.
    #[getter]
    fn fittings<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "fittings", "Fittings")
    }

    /// The openings against their clearances, with the least move that mends each; None where the job does not ask.
    #[getter]
    fn opening_checks<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "opening_checks", "OpeningChecks")
    }

    /// Lids of openings and strips under their edges; empty where there are none.
    #[getter]
    fn opening_parts<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.listed(py, "opening_parts", "OpeningPart")
    }

    /// What stays of the old deck and what is replaced; None where the whole deck is new.
    #[getter]
    fn patch<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "patch", "Patch")
    }

    /// What to know before acting on the plan; what this job triggered comes first.
    #[getter]
    fn cautions<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        self.document.record(py, "cautions", "Caution")
    }

    /// The names of the lists that `frame` gives in columns.
    #[getter]
    #[expect(clippy::unused_self, reason = "every plan has the same lists")]
    fn frames(&self) -> Vec<&'static str> {
        columns::names()
    }

    /// A list of the plan in columns, of which pandas and polars make a data frame.
    ///
    /// A dict of lists of one length, with a value for each panel, for each seam of the best layout, for each fastener
    /// (x aft of the bow edge, y to starboard of the port edge), for each part on a sheet, for each thing to buy, for each
    /// panel whose strength is known, for each seam whose errors are reckoned with, for each line of the quote, or for each
    /// task behind it. Without such the columns are there, and empty. Lengths are floats in `unit`: a column is of one
    /// type in every plan.
    ///
    /// Parameters
    /// ----------
    /// name : str
    ///     One of `frames`: `panels`, `seams`, `fasteners`, `sheets`, `takeoff`, `span`, `tolerance`, `arrangements`,
    ///     `blocks`, `quote`, `labour`, `old_holes`, `fitting_holes`, `opening_clearances` or `patches`.
    ///
    /// Raises
    /// ------
    /// DeckError
    ///     There is no such list.
    ///
    /// Examples
    /// --------
    /// >>> import deck_py
    /// >>> plan = deck_py.plan({
    /// ...     "schema": 1, "name": "Sandpiper", "unit": "in",
    /// ...     "deck": {"length": "20 ft", "beam": 96},
    /// ...     "frame": {"measured_to": "centre", "flange": 2, "regular": {"first": 0, "last": 240, "spacing": 24}},
    /// ...     "stock": [{"label": "3/4 ply", "length": 96, "width": 48, "thickness": "3/4"}],
    /// ... })
    /// >>> plan.frame("panels")["label"]
    /// ['1', '2', '3', '4', '5']
    fn frame<'py>(&self, py: Python<'py>, name: &str) -> Result<Bound<'py, PyDict>, Failure> {
        Ok(columns::columns(py, &self.document.value, name)?.ok_or_else(|| columns::unknown(name))?)
    }

    /// The names of the views that can be drawn, in the order of the job packet.
    #[getter]
    fn views(&self, py: Python<'_>) -> Vec<String> {
        py.detach(|| draw::views(&self.plan))
    }

    /// One of the `views` as SVG.
    ///
    /// Raises
    /// ------
    /// DeckError
    ///     The plan has no such view.
    fn svg(&self, py: Python<'_>, view: &str) -> Result<String, Failure> {
        Ok(py.detach(|| draw::svg(&self.plan, view))?)
    }

    /// Writes the job packet, a PDF of every view.
    ///
    /// Parameters
    /// ----------
    /// path : str or path
    ///     The file; one that is there is replaced.
    /// paper : str, optional
    ///     `letter` or `a4`; without it, the paper that the job asks for.
    ///
    /// Raises
    /// ------
    /// DeckError
    ///     The paper is not known.
    /// OSError
    ///     The file cannot be written.
    #[pyo3(signature = (path, *, paper = None))]
    fn write_packet(&self, path: &Bound<'_, PyAny>, paper: Option<&str>) -> Result<(), Failure> {
        drawing::write_packet(&self.plan, path, paper)
    }

    /// Writes one view as a drawing, in the format that the path's suffix names: `.svg`.
    ///
    /// Parameters
    /// ----------
    /// path : str or path
    ///     The file; one that is there is replaced.
    /// view : str, default "plan"
    ///     One of the `views`.
    ///
    /// Raises
    /// ------
    /// DeckError
    ///     No drawing is written with that suffix, or the plan has no such view.
    /// OSError
    ///     The file cannot be written.
    #[pyo3(signature = (path, *, view = "plan"))]
    fn write_drawing(&self, path: &Bound<'_, PyAny>, view: &str) -> Result<(), Failure> {
        drawing::write_drawing(&self.plan, path, view)
    }

    /// The deck from above, for notebooks.
    fn _repr_svg_(&self, py: Python<'_>) -> Result<String, Failure> {
        self.svg(py, "plan")
    }

    fn __eq__(&self, other: &Plan) -> bool {
        self.document == other.document
    }

    fn __reduce__<'py>(&self, py: Python<'py>) -> PyResult<Reduced<'py>> {
        self.document.reduce(py, "Plan")
    }

    fn __repr__(&self) -> String {
        let name = short(&self.plan.job.name);
        // A patched deck has panels and no seams of its own.
        let (panels, layout) = (self.plan.panels.len(), self.plan.layouts.first());
        let seams = layout.map_or(0, |layout| layout.seams.len());
        match &self.plan.sheets {
            Some(sheets) => format!("Plan({name}: {panels} panels, {seams} seams, {} sheets)", sheets.sheet_count),
            None => format!("Plan({name}: no layout)"),
        }
    }
}

/// A name in quotes, cut so that it fits a line.
pub(crate) fn short(name: &str) -> String {
    const MOST: usize = 40;
    if name.chars().count() <= MOST {
        return format!("{name:?}");
    }
    format!("{:?}", name.chars().take(MOST - 1).chain(['…']).collect::<String>())
}
