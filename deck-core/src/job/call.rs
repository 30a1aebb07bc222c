//! The calls that need no boat, as documents: what a program in another language hands in.

mod beam;
mod plate;
mod span_limits;

pub use beam::BeamCall;
pub use plate::PlateCall;
pub use span_limits::SpanLimitsCall;

use super::read;
use crate::error::Error;
use crate::length::{JsonForm, Unit, with_json_form};
use crate::nest::{Effort, Nest, Part, Progress, nest_watched};
use crate::stock::{Saw, Sheet};
use std::ops::ControlFlow;

/// Parts to be laid out on sheets, asked for in one document.
///
/// In JSON: `parts` and `stock` are required. `kerf`, `trim`, `stages`, `first` and `keep` are those of [`Saw`];
/// `effort` is a word or a number of steps; `unit`, inches where it is left out, is that of bare numbers, of the answer
/// and of messages. Sheets are written as in a job file, except that they need no thickness. The `value` of a part is
/// for one sheet's best filling, and a nest does not look at it.
///
/// # Examples
/// ```
/// use deck_core::job::NestCall;
/// let call = NestCall::from_json(r#"{
///     "parts": [{"label": "lid", "length": "24 1/2", "width": 16, "count": 6, "grain": "length"}],
///     "stock": [{"label": "4 x 8", "length": 96, "width": 48, "price": 62.50}],
///     "kerf": "1/8", "keep": [24, 12], "effort": "quick"
/// }"#)?;
/// let nest = call.nest()?;
/// assert_eq!((nest.sheet_count, nest.cost.to_string().as_str()), (1, "62.50"));
/// assert!(nest.to_json(call.unit).contains("\"length\": 24.5"));
/// # Ok::<(), deck_core::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[non_exhaustive]
pub struct NestCall {
    /// The parts.
    pub parts: Vec<Part>,
    /// The sheets.
    pub stock: Vec<Sheet>,
    /// How they are sawn.
    pub saw: Saw,
    /// How long to search.
    pub effort: Effort,
    /// The unit of bare numbers and of the answer.
    pub unit: Unit,
}

impl NestCall {
    /// Standard effort, in inches, by a saw without kerf, trim or limits.
    pub fn new(parts: Vec<Part>, stock: Vec<Sheet>) -> NestCall {
        NestCall { parts, stock, saw: Saw::new(), effort: Effort::Standard, unit: Unit::Inch }
    }

    /// Reads a call.
    ///
    /// # Errors
    /// Everything that is wrong with it, in the order in which it stands there: text that is not JSON, unknown fields,
    /// missing or unreadable ones, and what [`nest`](crate::nest::nest) refuses.
    pub fn from_json(text: &str) -> Result<NestCall, Error> {
        read::nest_call(text)
    }

    /// Reads a call from JSON that is parsed already.
    ///
    /// # Errors
    /// As [`NestCall::from_json`].
    pub fn from_value(value: &serde_json::Value) -> Result<NestCall, Error> {
        read::nest_call_value(value, Vec::new())
    }

    /// Lays the parts out.
    ///
    /// # Errors
    /// As [`nest`](crate::nest::nest).
    pub fn nest(&self) -> Result<Nest, Error> {
        self.nest_watched(&mut |_| ControlFlow::Continue(()))
    }

    /// Lays the parts out while someone looks on, who may stop it.
    ///
    /// # Errors
    /// As [`nest`](crate::nest::nest).
    pub fn nest_watched(&self, watch: &mut dyn FnMut(&Progress) -> ControlFlow<()>) -> Result<Nest, Error> {
        with_json_form(JsonForm::Input(self.unit), || {
            nest_watched(&self.parts, &self.stock, &self.saw, self.effort, watch)
        })
    }
}
