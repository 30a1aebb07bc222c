//! Figures that others have published, against ours.

#![allow(clippy::type_complexity, clippy::float_cmp, reason = "tables stand, and are compared, as they are printed")]
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, reason = "a test that cannot go on has failed")]

mod arrange;
mod beam_cases;
mod counts;
mod decks;
mod fill;
mod form_plywood;
mod holes;
mod load_spans;
mod narrow_flange;
mod nest;
mod panel_agencies;
mod patches;
mod plate_cases;
mod refit;
mod screws;
mod sheets;
mod squareness;
mod survey;
mod units;

use deck_core::{Length, Unit};

/// A figure in inches, as a tape is read.
fn inches(text: &str) -> Length {
    Length::read(text, Unit::Inch).unwrap().length
}
