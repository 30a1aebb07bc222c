//! The calls that need no boat: a request in, watched by Python while the interpreter is free for others.

use crate::document::Document;
use crate::failure::Failure;
use crate::fill::Fill;
use crate::given::Given;
use crate::nest::Nest;
use deck_core::job::{FillCall, NestCall};
use deck_core::nest::{FillProgress, Progress};
use deck_core::{Error, Kind, Unit};
use pyo3::exceptions::PyTypeError;
use pyo3::prelude::*;
use pyo3::types::{IntoPyDict, PyBool};
use std::ops::ControlFlow;

/// `deck_py.nest`, its arguments as one dict.
#[pyfunction(name = "_nest")]
pub(crate) fn nest(
    py: Python<'_>,
    request: &Bound<'_, PyAny>,
    progress: Option<Bound<'_, PyAny>>,
) -> Result<Nest, Failure> {
    let (given, mut watcher) = (Given::new(request, "call")?, Watcher::new(progress)?);
    let made: Result<Nest, Error> = py.detach(|| {
        let call = given.read(NestCall::from_value)?;
        let nest = call.nest_watched(&mut |told| watcher.ask(|py| tell(py, told, call.unit)))?;
        Nest::new(Document::write(&nest, call.unit)?)
    });
    watcher.answer(made)
}

/// `deck_py.fill`, its arguments as one dict.
#[pyfunction(name = "_fill")]
pub(crate) fn fill(
    py: Python<'_>,
    request: &Bound<'_, PyAny>,
    progress: Option<Bound<'_, PyAny>>,
) -> Result<Fill, Failure> {
    let (given, mut watcher) = (Given::new(request, "call")?, Watcher::new(progress)?);
    let made: Result<Fill, Error> = py.detach(|| {
        let call = given.read(FillCall::from_value)?;
        let fill = call.fill_watched(&mut |told| watcher.ask(|py| tell_fill(py, told, call.unit)))?;
        Fill::new(Document::write(&fill, call.unit)?)
    });
    watcher.answer(made)
}

/// Python's side of a search that is looked on: signals, and the caller's function.
struct Watcher {
    progress: Option<Py<PyAny>>,
    raised: Option<PyErr>,
}

impl Watcher {
    fn new(progress: Option<Bound<'_, PyAny>>) -> PyResult<Watcher> {
        if progress.as_ref().is_some_and(|progress| !progress.is_callable()) {
            return Err(PyTypeError::new_err("progress is no function"));
        }
        Ok(Watcher { progress: progress.map(Bound::unbind), raised: None })
    }

    /// Lets Python look at its signals and at the progress. What is raised there stops the search.
    fn ask(&mut self, told: impl FnOnce(Python<'_>) -> PyResult<Bound<'_, PyAny>>) -> ControlFlow<()> {
        let asked = Python::attach(|py| {
            py.check_signals()?;
            let Some(progress) = &self.progress else { return Ok(true) };
            let answer = progress.bind(py).call1((told(py)?,))?;
            Ok(answer.cast::<PyBool>().map_or(true, PyBoolMethods::is_true))
        });
        match asked {
            Ok(true) => ControlFlow::Continue(()),
            Ok(false) => ControlFlow::Break(()),
            Err(error) => {
                self.raised = Some(error);
                ControlFlow::Break(())
            }
        }
    }

    /// What was raised while looking on, before what came of the search.
    fn answer<T>(self, made: Result<T, Error>) -> Result<T, Failure> {
        match (self.raised, made) {
            (Some(error), _) => Err(error.into()),
            (None, Ok(made)) => Ok(made),
            (None, Err(error)) => Err(refused(error)),
        }
    }
}

/// An argument of the wrong type is Python's `TypeError`; everything else that is wrong is told together.
pub(crate) fn refused(error: Error) -> Failure {
    let argument = |pointer: &str| pointer.matches('/').count() == 1;
    let wrong = error.faults().find(|fault| fault.kind == Kind::WrongType && argument(&fault.pointer));
    let message =
        wrong.map(|fault| format!("{}: {} {}", fault.pointer.trim_start_matches('/'), fault.message, fault.accepted));
    message.map_or(Failure::Input(error), |message| PyTypeError::new_err(message).into())
}

fn tell<'py>(py: Python<'py>, told: &Progress, unit: Unit) -> PyResult<Bound<'py, PyAny>> {
    let fields = [
        ("unplaced", told.unplaced.number(unit)),
        ("cost", told.cost.number(unit)),
        ("bound", told.bound.number(unit)),
    ];
    progress(py, "Progress", fields, (told.done, told.of), told.proven)
}

fn tell_fill<'py>(py: Python<'py>, told: &FillProgress, unit: Unit) -> PyResult<Bound<'py, PyAny>> {
    let fields = [("value", told.value.number(unit)), ("bound", told.bound.number(unit))];
    progress(py, "FillProgress", fields, (told.done, told.of), told.proven)
}

/// An object of one of the classes that the package defines in Python: there they can be pickled and shown.
fn progress<'py, const N: usize>(
    py: Python<'py>,
    class: &str,
    fields: [(&str, f64); N],
    (done, of): (u64, u64),
    proven: bool,
) -> PyResult<Bound<'py, PyAny>> {
    let fields = fields.into_py_dict(py)?;
    fields.set_item("done", done)?;
    fields.set_item("of", of)?;
    fields.set_item("proven", proven)?;
    py.import("deck_py._call")?.getattr(class)?.call((), Some(&fields))
}
