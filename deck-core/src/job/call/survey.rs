//! A survey, asked for in one document.

use crate::error::Error;
use crate::job::settings::asked;
use crate::job::{ShopSpec, read, texts};
use crate::length::{JsonForm, Notation, Unit, with_json_form};
use crate::survey::{Survey, SurveySpec, survey};

/// A survey, asked for in one document.
///
/// In JSON: the fields of a job's `survey`, of which `readings` is required, and `shop`, which says how lengths are written.
///
/// # Examples
/// ```
/// use deck_core::job::SurveyCall;
/// let call = SurveyCall::from_json(r#"{
///     "datum": ["BP", "SP"],
///     "readings": [
///         {"kind": "distance", "between": ["BP", "SP"], "reading": "20 ft"},
///         {"kind": "tie", "of": "BS", "from": ["BP", "SP"], "readings": ["100 in", 260]}
///     ]
/// }"#)?;
/// let found = call.survey()?;
/// assert_eq!(found.points[2].y.to_string(), "100 in");
/// # Ok::<(), deck_core::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct SurveyCall {
    /// What was measured.
    pub spec: SurveySpec,
    /// How lengths are written.
    pub shop: ShopSpec,
    /// The unit of bare numbers and of the answer.
    pub unit: Unit,
}

impl SurveyCall {
    /// In inches.
    pub fn new(spec: SurveySpec) -> SurveyCall {
        SurveyCall { spec, shop: ShopSpec::new(), unit: Unit::Inch }
    }

    /// Reads a call.
    ///
    /// # Errors
    /// Everything that is wrong with it as a document: text that is not JSON, unknown fields, missing or unreadable ones.
    pub fn from_json(text: &str) -> Result<SurveyCall, Error> {
        read::survey_call(text)
    }

    /// Reads a call from JSON that is parsed already.
    ///
    /// # Errors
    /// As [`SurveyCall::from_json`].
    pub fn from_value(value: &serde_json::Value) -> Result<SurveyCall, Error> {
        read::survey_call_value(value, Vec::new())
    }

    /// How lengths are written in sentences and beside the answer's numbers.
    pub fn notation(&self) -> Notation {
        asked::notation(self.unit, &self.shop)
    }

    /// Adjusts it.
    ///
    /// # Errors
    /// As [`survey()`].
    pub fn survey(&self) -> Result<Survey, Error> {
        with_json_form(JsonForm::Input(self.unit), || survey(&self.spec, &self.notation()))
    }

    /// The answer as a document.
    ///
    /// # Errors
    /// As [`SurveyCall::survey`].
    pub fn document(&self) -> Result<serde_json::Value, Error> {
        Ok(texts::document(&self.survey()?, &self.notation()))
    }
}
