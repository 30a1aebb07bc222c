//! The steps of a plan, each on its own: a request in, an answer out, while the interpreter is free for others.

use crate::document::{self, Document};
use crate::failure::Failure;
use crate::fastening::Fastening;
use crate::layout::SeamLayout;
use crate::panel::Panel;
use crate::strength::work;
use deck_core::Error;
use deck_core::job::{FastenersCall, PanelsCall, SeamsCall};
use pyo3::prelude::*;
use serde_json::Value;

/// The layouts; why there is none, where there is none; and whether nothing better than the first exists.
type Found<'py> = (Vec<SeamLayout>, Bound<'py, PyAny>, bool);

/// `deck_py.seams`, its arguments as one dict.
#[pyfunction(name = "_seams")]
pub(crate) fn seams<'py>(py: Python<'py>, request: &Bound<'py, PyAny>) -> Result<Found<'py>, Failure> {
    let (layouts, answer) = work(py, request, |given| {
        let call = given.read(SeamsCall::from_value)?;
        let answer = Document::new(call.document()?, call.unit);
        let layouts = parts(&answer.part("layouts"), SeamLayout::new)?;
        Ok((layouts, answer.value))
    })?;
    let field = |name: &str| answer.get(name).unwrap_or(&Value::Null);
    Ok((layouts, document::record(py, "NoLayout", field("no_layout"))?, field("proven").as_bool().unwrap_or(false)))
}

/// `deck_py.panels`, its arguments as one dict.
#[pyfunction(name = "_panels")]
pub(crate) fn panels(py: Python<'_>, request: &Bound<'_, PyAny>) -> Result<Vec<Panel>, Failure> {
    work(py, request, |given| {
        let call = given.read(PanelsCall::from_value)?;
        parts(&Document::new(call.document()?, call.unit), Panel::new)
    })
}

/// `deck_py.fasteners`, its arguments as one dict.
#[pyfunction(name = "_fasteners")]
pub(crate) fn fasteners(py: Python<'_>, request: &Bound<'_, PyAny>) -> Result<Fastening, Failure> {
    work(py, request, |given| {
        let call = given.read(FastenersCall::from_value)?;
        Fastening::new(Document::new(call.document()?, call.unit))
    })
}

/// Each item of a list as an object of its own.
fn parts<T>(list: &Document, make: impl Fn(Document) -> Result<T, Error>) -> Result<Vec<T>, Error> {
    let items = list.value.as_array().map_or(&[][..], Vec::as_slice);
    items.iter().map(|item| make(Document::new(item.clone(), list.unit))).collect()
}
