//! One sheet's best filling, asked for in one document.

use crate::error::Error;
use crate::job::read;
use crate::length::{JsonForm, Unit, with_json_form};
use crate::nest::{Effort, Fill, FillPart, FillProgress, fill_watched};
use crate::stock::{Saw, Sheet};
use std::ops::ControlFlow;

/// The most valuable set of parts from one sheet, asked for in one document.
///
/// In JSON: `sheet` and `parts` are required. A part without a `count` is one; with null for a count, as many as fit. A
/// `value` is given for every part or for none; then a part is worth its area. The count and the price of the sheet do not
/// matter. Everything else is as in a [`NestCall`](super::NestCall).
///
/// # Examples
/// ```
/// use deck_core::job::FillCall;
/// let call = FillCall::from_json(r#"{
///     "sheet": {"label": "rest", "length": 40, "width": "2 ft"},
///     "parts": [{"label": "lid", "length": 13, "width": 11, "count": null, "value": 2.5},
///               {"label": "side", "length": 26, "width": 12, "count": 2, "value": 7}],
///     "kerf": "1/8"
/// }"#)?;
/// let fill = call.fill()?;
/// assert_eq!((fill.value.to_string().as_str(), fill.placements.len(), fill.proven), ("17.00", 5, true));
/// # Ok::<(), deck_core::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[non_exhaustive]
pub struct FillCall {
    /// The sheet or offcut.
    pub sheet: Sheet,
    /// The parts.
    pub parts: Vec<FillPart>,
    /// How it is sawn.
    pub saw: Saw,
    /// How long to search.
    pub effort: Effort,
    /// The unit of bare numbers and of the answer.
    pub unit: Unit,
}

impl FillCall {
    /// Standard effort, in inches, by a saw without kerf, trim or limits.
    pub fn new(sheet: Sheet, parts: Vec<FillPart>) -> FillCall {
        FillCall { sheet, parts, saw: Saw::new(), effort: Effort::Standard, unit: Unit::Inch }
    }

    /// Reads a call.
    ///
    /// # Errors
    /// Everything that is wrong with it, in the order in which it stands there: text that is not JSON, unknown fields,
    /// missing or unreadable ones, and what [`fill`](crate::nest::fill) refuses.
    pub fn from_json(text: &str) -> Result<FillCall, Error> {
        read::fill_call(text)
    }

    /// Reads a call from JSON that is parsed already.
    ///
    /// # Errors
    /// As [`FillCall::from_json`].
    pub fn from_value(value: &serde_json::Value) -> Result<FillCall, Error> {
        read::fill_call_value(value, Vec::new())
    }

    /// Fills the sheet.
    ///
    /// # Errors
    /// As [`fill`](crate::nest::fill).
    pub fn fill(&self) -> Result<Fill, Error> {
        self.fill_watched(&mut |_| ControlFlow::Continue(()))
    }

    /// Fills the sheet while someone looks on, who may stop it.
    ///
    /// # Errors
    /// As [`fill`](crate::nest::fill).
    pub fn fill_watched(&self, watch: &mut dyn FnMut(&FillProgress) -> ControlFlow<()>) -> Result<Fill, Error> {
        with_json_form(JsonForm::Input(self.unit), || {
            fill_watched(&self.sheet, &self.parts, &self.saw, self.effort, watch)
        })
    }
}
