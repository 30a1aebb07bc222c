//! What goes wrong on the way: the core's errors become `DeckError`, Python's stay what they are.

use deck_core::{Error, Fault};
use pyo3::prelude::*;
use pyo3::types::{IntoPyDict, PyTuple};

/// A fault in the input, or an exception of Python's own.
#[derive(Debug)]
pub(crate) enum Failure {
    /// Input that cannot be worked on.
    Input(Error),
    /// Anything that Python raised.
    Python(PyErr),
}

impl From<Error> for Failure {
    fn from(error: Error) -> Failure {
        Failure::Input(error)
    }
}

impl From<PyErr> for Failure {
    fn from(error: PyErr) -> Failure {
        Failure::Python(error)
    }
}

impl From<Failure> for PyErr {
    fn from(failure: Failure) -> PyErr {
        match failure {
            Failure::Input(error) => Python::attach(|py| deck_error(py, &error).unwrap_or_else(|other| other)),
            Failure::Python(error) => error,
        }
    }
}

/// The exception, of the class that the package defines in Python: there it can carry its faults and be pickled.
fn deck_error(py: Python<'_>, error: &Error) -> PyResult<PyErr> {
    let module = py.import("deck_py._error")?;
    let class = module.getattr("Fault")?;
    let faults = error.faults().map(|each| fault(&class, each)).collect::<PyResult<Vec<_>>>()?;
    let raised = module.getattr("DeckError")?.call1((error.to_string(), PyTuple::new(py, faults)?))?;
    Ok(PyErr::from_value(raised))
}

fn fault<'py>(class: &Bound<'py, PyAny>, fault: &Fault) -> PyResult<Bound<'py, PyAny>> {
    let fields = [
        ("pointer", fault.pointer.clone()),
        ("value", fault.value.clone()),
        ("message", fault.message.clone()),
        ("accepted", fault.accepted.clone()),
        ("kind", format!("{:?}", fault.kind)),
    ]
    .into_py_dict(class.py())?;
    fields.set_item("code", fault.kind.code())?;
    class.call((), Some(&fields))
}
