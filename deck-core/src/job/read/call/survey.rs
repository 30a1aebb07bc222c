//! Reads a call for a survey.

use super::{ACCEPTED, whole};
use crate::error::{Error, Fault};
use crate::job::read::{specs, survey, text};
use crate::job::{ShopSpec, SurveyCall};
use crate::survey::SurveySpec;
use serde_json::Value;

pub(in crate::job) fn survey_call(text: &str) -> Result<SurveyCall, Error> {
    let (value, twice) = text::parse(text, ACCEPTED)?;
    survey_call_value(&value, twice)
}

/// `faults` are those that were found in parsing. What only the reckoning finds is told by [`SurveyCall::survey`].
pub(in crate::job) fn survey_call_value(root: &Value, faults: Vec<Fault>) -> Result<SurveyCall, Error> {
    let read = |fields: &mut super::Object<'_>, notes: &mut super::Notes| {
        let shop = fields.defaulted("shop", notes, specs::shop);
        let spec = survey::spec(fields, notes);
        let is_placed = ["datum", "corners", "known"].into_iter().any(|name| fields.has(name));
        let boards_alone = spec.readings.is_empty() && spec.old_boards.is_some();
        if !is_placed && !boards_alone {
            let message = "The survey does not say from which point and towards which one it counts.";
            let accepted = "\"datum\" names two points, or \"corners\" the four of the frame.";
            fields.missing("datum", notes, message.into(), accepted);
        }
        Some((spec, shop))
    };
    let (unit, (spec, shop)): (_, (SurveySpec, ShopSpec)) = whole(root, faults, read, |_| Ok(()))?;
    Ok(SurveyCall { shop, unit, ..SurveyCall::new(spec) })
}
