//! Uniform loads of a panel, asked for in one document.

use crate::error::Error;
use crate::job::read;
use crate::length::{JsonForm, Length, Unit, with_json_form};
use crate::span::{Axis, SpanAnswer, SpanOptions, StructuralPanel, span_limits};

/// The allowable uniform loads of a panel on equal spans, asked for in one document.
///
/// In JSON: `panel`, `spacing`, `axis` and `spans` are required; `support`, `clear_span`, `deflection`, `wet`, `duration`
/// and `width` are those of [`SpanOptions`]; `unit`, inches where it is left out, is that of bare lengths, of those in the
/// answer and of messages. A panel is one of:
///
/// - `{"series", "rating"}`, for sanded plywood also `"group"` and `"grade"`: a published row;
/// - `{"ei", "mr", "fs"}`: the user's own capacities about the axis that is asked about, or such ones under `"across"` and
///   `"along"`;
/// - `{"thickness", "across", "along", "stresses"}`: sections, `{"i", "ks", "ib_q"}`, and `{"e", "e_shear", "fb", "fs"}`;
/// - `{"plies", "stresses"}` and `"cross_stiffness"`: plies `{"thickness", "grain", "stiffness"}`, from face to back.
///
/// # Examples
/// ```
/// use deck_core::job::SpanLimitsCall;
/// let call = SpanLimitsCall::from_json(r#"{
///     "panel": {"series": "sanded plywood Group 1 A-A/A-C", "rating": "3/4"},
///     "spacing": 24, "axis": "along", "spans": 2, "wet": true
/// }"#)?;
/// let answer = call.span_limits()?;
/// assert_eq!(answer.limits().unwrap().allowable().round(), 54.0);
/// assert!(answer.to_json(call.unit).contains("\"governing\": \"deflection\""));
/// # Ok::<(), deck_core::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct SpanLimitsCall {
    /// The panel.
    pub panel: StructuralPanel,
    /// Spacing of the supports, centre to centre.
    pub spacing: Length,
    /// How the strength axis lies to the supports.
    pub axis: Axis,
    /// 1, 2 or 3 equal spans; 3 stands for three or more.
    pub spans: u32,
    /// Supports, limits and service.
    pub options: SpanOptions,
    /// The unit of bare lengths and of the answer's.
    pub unit: Unit,
}

impl SpanLimitsCall {
    /// On the tables' own supports, to l/360, dry, at normal load duration, in inches.
    pub fn new(panel: StructuralPanel, spacing: Length, axis: Axis, spans: u32) -> SpanLimitsCall {
        SpanLimitsCall { panel, spacing, axis, spans, options: SpanOptions::new(), unit: Unit::Inch }
    }

    /// Reads a call.
    ///
    /// # Errors
    /// Everything that is wrong with it, in the order in which it stands there: text that is not JSON, unknown fields,
    /// missing or unreadable ones, and what [`span_limits`] refuses.
    pub fn from_json(text: &str) -> Result<SpanLimitsCall, Error> {
        read::span_limits_call(text)
    }

    /// Reads a call from JSON that is parsed already.
    ///
    /// # Errors
    /// As [`SpanLimitsCall::from_json`].
    pub fn from_value(value: &serde_json::Value) -> Result<SpanLimitsCall, Error> {
        read::span_limits_call_value(value, Vec::new())
    }

    /// The loads, or why there is no figure.
    ///
    /// # Errors
    /// As [`span_limits`].
    pub fn span_limits(&self) -> Result<SpanAnswer, Error> {
        with_json_form(JsonForm::Input(self.unit), || {
            span_limits(&self.panel, self.spacing, self.axis, self.spans, &self.options)
        })
    }
}
