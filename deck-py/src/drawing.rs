//! Drawings into files: Python opens them, so that what goes wrong there is Python's own error.

use crate::failure::Failure;
use deck_core::job::Paper;
use deck_core::{Error, Fault, Kind, Plan, draw};
use pyo3::prelude::*;
use pyo3::types::PyBytes;

/// Writes the job packet; without a paper, on the one that the job asks for.
pub(crate) fn write_packet(plan: &Plan, path: &Bound<'_, PyAny>, paper: Option<&str>) -> Result<(), Failure> {
    let paper = paper.map_or(Ok(plan.basis.paper), read_paper)?;
    let bytes = path.py().detach(|| draw::packet(plan, paper))?;
    write(&place(path)?, &bytes)
}

/// Writes one view, in the format that the path's suffix names.
pub(crate) fn write_drawing(plan: &Plan, path: &Bound<'_, PyAny>, view: &str) -> Result<(), Failure> {
    let place = place(path)?;
    let suffix: String = place.getattr("suffix")?.extract()?;
    if !suffix.eq_ignore_ascii_case(".svg") {
        let message = format!("No drawing is written as \"{suffix}\".");
        return Err(Error::from(Fault::new(Kind::UnknownWord, suffix, message, "The suffix is \".svg\".")).into());
    }
    let text = path.py().detach(|| draw::svg(plan, view))?;
    write(&place, text.as_bytes())
}

fn read_paper(word: &str) -> Result<Paper, Error> {
    match word {
        "letter" => Ok(Paper::Letter),
        "a4" => Ok(Paper::A4),
        _ => {
            let message = format!("\"{word}\" is no paper.");
            Err(Fault::new(Kind::UnknownWord, word, message, "It is \"letter\" or \"a4\".").into())
        }
    }
}

fn place<'py>(path: &Bound<'py, PyAny>) -> PyResult<Bound<'py, PyAny>> {
    path.py().import("pathlib")?.getattr("Path")?.call1((path,))
}

fn write(place: &Bound<'_, PyAny>, bytes: &[u8]) -> Result<(), Failure> {
    place.call_method1("write_bytes", (PyBytes::new(place.py(), bytes),))?;
    Ok(())
}
