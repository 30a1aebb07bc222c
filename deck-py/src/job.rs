//! A job as it is handed in: a dict, JSON text, or a path.

use crate::document;
use crate::failure::Failure;
use crate::given::{Given, kind};
use deck_core::{Error, Fault, Job, Kind};
use pyo3::exceptions::PyTypeError;
use pyo3::prelude::*;
use pyo3::types::{PyMapping, PyString};

/// A job that is not read yet, free of Python.
#[derive(Debug)]
pub(crate) enum Source {
    /// The text of a job file.
    Text(String),
    /// A dict.
    Given(Given),
}

impl Source {
    /// Takes over what `function` was handed.
    ///
    /// Text that starts with a brace is JSON, every other is a path.
    pub(crate) fn new(job: &Bound<'_, PyAny>, function: &str) -> Result<Source, Failure> {
        if let Ok(text) = job.cast::<PyString>() {
            let text = text.to_str()?;
            if text.trim_start_matches(|c: char| c.is_whitespace() || c == '\u{feff}').starts_with('{') {
                return Ok(Source::Text(text.to_owned()));
            }
            return file(job);
        }
        if job.hasattr("__fspath__")? {
            return file(job);
        }
        if job.cast::<PyMapping>().is_ok() {
            return Given::new(job, "job").map(Source::Given);
        }
        let message = format!("{function}() takes a dict, JSON text or a path, not {}", kind(job));
        Err(PyTypeError::new_err(message).into())
    }

    /// Reads the job.
    pub(crate) fn job(&self) -> Result<Job, Error> {
        match self {
            Source::Text(text) => Job::from_json(text),
            Source::Given(given) => given.read(Job::from_value),
        }
    }
}

/// A file, opened by Python: so that a missing one raises Python's own error, its name with it.
fn file(path: &Bound<'_, PyAny>) -> Result<Source, Failure> {
    let opened = path.py().import("pathlib")?.getattr("Path")?.call1((path,))?;
    let bytes: Vec<u8> = opened.call_method0("read_bytes")?.extract()?;
    let text = String::from_utf8(bytes).map_err(|error| {
        let at = error.utf8_error().valid_up_to();
        let message = format!("The file is not UTF-8 text: byte {at} does not belong there.");
        Error::from(Fault::new(Kind::NotJson, path.to_string(), message, "A job file is JSON in UTF-8."))
    })?;
    Ok(Source::Text(text))
}

/// The JSON Schema (draft 2020-12) of a job file.
///
/// Returns
/// -------
/// dict
///     The schema, ready for `json.dump` or for a validator.
///
/// Examples
/// --------
/// >>> import deck_py
/// >>> deck_py.job_schema()["$schema"]
/// 'https://json-schema.org/draft/2020-12/schema'
#[pyfunction]
pub(crate) fn job_schema(py: Python<'_>) -> PyResult<Bound<'_, PyAny>> {
    document::python(py, &deck_core::job::schema())
}
