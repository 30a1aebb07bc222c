//! What a panel carries, beams and plates: requests that are answered in one go, while the interpreter is free for others.

use crate::beam::Beam;
use crate::call::refused;
use crate::document::{self, Document};
use crate::failure::Failure;
use crate::given::Given;
use crate::plate::Plate;
use deck_core::Error;
use deck_core::job::{BeamCall, PlateCall, SpanLimitsCall};
use pyo3::prelude::*;
use serde_json::Value;

/// `deck_py.span_limits`, its arguments as one dict.
#[pyfunction(name = "_span_limits")]
pub(crate) fn span_limits<'py>(py: Python<'py>, request: &Bound<'py, PyAny>) -> Result<Bound<'py, PyAny>, Failure> {
    let answer = work(py, request, |given| {
        let call = given.read(SpanLimitsCall::from_value)?;
        Document::write(&call.span_limits()?, call.unit)
    })?;
    Ok(document::python(py, &answer.value)?)
}

/// `deck_py.beam`, its arguments as one dict.
#[pyfunction(name = "_beam")]
pub(crate) fn beam(py: Python<'_>, request: &Bound<'_, PyAny>) -> Result<Beam, Failure> {
    work(py, request, |given| {
        let (value, call) = given.taken(BeamCall::from_value)?;
        Beam::asked(value.into_owned(), &call)
    })
}

/// `deck_py.plate`, its arguments as one dict.
#[pyfunction(name = "_plate")]
pub(crate) fn plate(py: Python<'_>, request: &Bound<'_, PyAny>) -> Result<Plate, Failure> {
    work(py, request, |given| {
        let (value, call) = given.taken(PlateCall::from_value)?;
        Plate::asked(value.into_owned(), &call)
    })
}

/// Reads a request and answers it, while the interpreter is free for others.
pub(crate) fn work<T: Send>(
    py: Python<'_>,
    request: &Bound<'_, PyAny>,
    answer: impl Send + FnOnce(&Given) -> Result<T, Error>,
) -> Result<T, Failure> {
    let given = Given::new(request, "call")?;
    py.detach(|| answer(&given)).map_err(refused)
}

/// A pickled beam: solved again, to the same bytes.
pub(crate) fn beam_again(request: Value) -> Result<Beam, Error> {
    let call = BeamCall::from_value(&request)?;
    Beam::asked(request, &call)
}

/// A pickled plate.
pub(crate) fn plate_again(request: Value) -> Result<Plate, Error> {
    let call = PlateCall::from_value(&request)?;
    Plate::asked(request, &call)
}
