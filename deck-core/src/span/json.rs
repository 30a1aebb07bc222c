//! Answers as documents of their own: the same bytes from every language and on every machine.

use super::beam::Beam;
use super::limits::SpanAnswer;
use super::plate::Plate;
use crate::length::{JsonForm, Unit, with_json_form};

impl SpanAnswer {
    /// The answer's JSON with lengths as numbers in that unit. Loads are in psf whatever the unit.
    pub fn to_json(&self, unit: Unit) -> String {
        // unreachable: it holds texts, finite numbers and lists; none of them fails to be written.
        with_json_form(JsonForm::Number(unit), || serde_json::to_string_pretty(self)).unwrap_or_default()
    }
}

impl Beam {
    /// The beam's JSON, in the units that it was asked in.
    pub fn to_json(&self) -> String {
        // unreachable, as above.
        serde_json::to_string_pretty(self).unwrap_or_default()
    }
}

impl Plate {
    /// The plate's JSON, in the units that it was asked in.
    pub fn to_json(&self) -> String {
        // unreachable, as above.
        serde_json::to_string_pretty(self).unwrap_or_default()
    }
}
