//! The compiled part of the Python package `deck_py`: it converts, and `deck-core` computes.
//!
//! ```text
//!   arguments ─ given ── call, steps, strength ┐
//!   dict ────── given ──┐                 │   ┌── document ── dict, list, number, text
//!   JSON text ──────────┼── job ── deck_core ─┤
//!   path ───────────────┘                     ├── polygon ─── __geo_interface__
//!                                             └── failure ─── DeckError
//! ```
//!
//! Results are read through their JSON document, so that Python sees the same names and figures as every other language.

// The docs of what is exported are docstrings: numpydoc's headings and Python's examples.
#![allow(clippy::doc_markdown, clippy::doc_link_with_quotes)]

mod beam;
mod call;
mod columns;
mod document;
mod drawing;
mod failure;
mod fastening;
mod fill;
mod given;
mod job;
mod layout;
mod nest;
mod outline;
mod panel;
mod plan;
mod plate;
mod polygon;
mod quote;
mod steps;
mod strength;
mod survey;
mod table;

use pyo3::prelude::*;

#[pymodule]
mod _deck {
    #[pymodule_export]
    use super::beam::Beam;
    #[pymodule_export]
    use super::call::{fill, nest};
    #[pymodule_export]
    use super::document::{_json, restore};
    #[pymodule_export]
    use super::fastening::Fastening;
    #[pymodule_export]
    use super::fill::Fill;
    #[pymodule_export]
    use super::job::job_schema;
    #[pymodule_export]
    use super::layout::SeamLayout;
    #[pymodule_export]
    use super::nest::Nest;
    #[pymodule_export]
    use super::outline::Outline;
    #[pymodule_export]
    use super::panel::Panel;
    #[pymodule_export]
    use super::plan::{Plan, plan};
    #[pymodule_export]
    use super::plate::Plate;
    #[pymodule_export]
    use super::quote::Quote;
    #[pymodule_export]
    use super::steps::{fasteners, panels, seams};
    #[pymodule_export]
    use super::strength::{beam, plate, span_limits};
    #[pymodule_export]
    use super::survey::{Survey, survey};
    use super::{Bound, PyModule, PyModuleMethods, PyResult};

    #[pymodule_init]
    fn init(module: &Bound<'_, PyModule>) -> PyResult<()> {
        module.add("__version__", env!("CARGO_PKG_VERSION"))
    }
}
