//! Figures that others published, one file to a source.

mod panel_weights;

pub use panel_weights::{plywood_pounds, plywood_psf};
