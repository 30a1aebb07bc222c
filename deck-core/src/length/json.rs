//! Lengths in JSON: a bare number in the document's unit, or a text that names its own.
//!
//! A length does not know in which document it stands, and serde hands nothing down. The document (a job, a plan)
//! therefore names its unit for the time it is written or read; each thread has its own, and it is put back at the end.
//! Messages about a document are written in the same unit.

use super::{Area, Length, Unit};
use serde::{Deserialize, Deserializer, Serialize, Serializer, de};
use std::cell::Cell;

/// How lengths are written into JSON, and what a bare number means in it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[non_exhaustive]
pub enum JsonForm {
    /// Texts that name their unit; a bare number is refused. The form outside every document.
    Text,
    /// Numbers in the unit where those are exact, otherwise texts: reading gives back the same lengths.
    Input(Unit),
    /// Numbers in the unit, exact to the nanometre.
    Number(Unit),
    /// Marked texts of the count of nanometres, for a document that writes each length twice; areas as numbers in the
    /// unit squared.
    Marked(Unit),
}

thread_local! {
    static FORM: Cell<JsonForm> = const { Cell::new(JsonForm::Text) };
}

/// Runs `body` with lengths written and read in that form on this thread.
pub fn with_json_form<T>(form: JsonForm, body: impl FnOnce() -> T) -> T {
    struct Restore(JsonForm);
    impl Drop for Restore {
        fn drop(&mut self) {
            FORM.set(self.0);
        }
    }
    let _restore = Restore(FORM.replace(form));
    body()
}

/// The unit of the document at hand; none outside every document.
pub(super) fn document_unit() -> Option<Unit> {
    match FORM.get() {
        JsonForm::Text => None,
        JsonForm::Input(unit) | JsonForm::Number(unit) | JsonForm::Marked(unit) => Some(unit),
    }
}

/// No text that a person writes starts like this.
const MARK: &str = "\u{1}nm:";

impl Length {
    /// The length that a marked text stands for; none for any other text.
    pub(crate) fn marked(text: &str) -> Option<Length> {
        text.strip_prefix(MARK)?.parse().ok().map(Length::from_nanometres)
    }
}

impl Serialize for Length {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match FORM.get() {
            JsonForm::Text => serializer.serialize_str(&self.exact_text()),
            JsonForm::Marked(_) => serializer.collect_str(&format_args!("{MARK}{}", self.nanometres())),
            JsonForm::Input(unit) if !self.is_exact_in(unit) => serializer.serialize_str(&self.exact_text()),
            JsonForm::Input(unit) | JsonForm::Number(unit) => serialize_number(self.number(unit), serializer),
        }
    }
}

/// Writes a number without a point where it is whole.
pub(crate) fn serialize_number<S: Serializer>(number: f64, serializer: S) -> Result<S::Ok, S::Error> {
    const WHOLE: f64 = 9_007_199_254_740_992.0;
    if number.fract() == 0.0 && number.abs() < WHOLE {
        // Whole and below 2^53: the cast is exact.
        #[allow(clippy::cast_possible_truncation)]
        serializer.serialize_i64(number as i64)
    } else {
        serializer.serialize_f64(number)
    }
}

impl<'de> Deserialize<'de> for Length {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Length, D::Error> {
        #[derive(Deserialize)]
        #[serde(untagged)]
        enum Given {
            Number(f64),
            Text(String),
        }
        let unit = match FORM.get() {
            JsonForm::Text | JsonForm::Marked(_) => None,
            JsonForm::Input(unit) | JsonForm::Number(unit) => Some(unit),
        };
        let reading = match (Given::deserialize(deserializer)?, unit) {
            (Given::Number(number), Some(unit)) => Length::read_number(number, unit).map(|reading| reading.length),
            (Given::Text(text), Some(unit)) => Length::read(&text, unit).map(|reading| reading.length),
            (Given::Number(number), None) => number.to_string().parse(),
            (Given::Text(text), None) => text.parse(),
        };
        reading.map_err(de::Error::custom)
    }
}

/// As for lengths, in the squared unit. A number carries 53 bits, fewer than an area may have: it is the nearest one.
impl Serialize for Area {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match FORM.get() {
            JsonForm::Text => serializer.collect_str(self),
            JsonForm::Input(unit) | JsonForm::Number(unit) | JsonForm::Marked(unit) => {
                serialize_number(self.number(unit), serializer)
            }
        }
    }
}

/// A text names its unit; a bare number takes the document's.
impl<'de> Deserialize<'de> for Area {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Area, D::Error> {
        #[derive(Deserialize)]
        #[serde(untagged)]
        enum Given {
            Number(f64),
            Text(String),
        }
        match (Given::deserialize(deserializer)?, FORM.get()) {
            (Given::Text(text), _) => text.parse(),
            (Given::Number(number), JsonForm::Input(unit) | JsonForm::Number(unit)) => Area::read_number(number, unit),
            (Given::Number(number), JsonForm::Text | JsonForm::Marked(_)) => number.to_string().parse(),
        }
        .map_err(de::Error::custom)
    }
}

#[cfg(feature = "schema")]
impl schemars::JsonSchema for Length {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Length".into()
    }

    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        schemars::json_schema!({
            "description": "A length: a number in the job's unit, or a text such as 94-1/2, 94.5 in, 7' 10-1/2\", 2400 mm or 2.4 m.",
            "type": ["number", "string"]
        })
    }
}
