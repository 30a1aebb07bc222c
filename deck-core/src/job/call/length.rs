//! One length, read and written, asked for in one document.

use crate::error::Error;
use crate::job::read;
use crate::length::{Length, Notation, Unit};
use serde_json::json;

/// One length, read as a job's lengths are, and written as a plan's are.
///
/// In JSON: `length` is required, a number in `unit` or a text. `unit` is inches where it is left out. `fractions` is the
/// finest fraction of an inch that is written, 2, 4, 8, 16 (where it is left out), 32 or 64; `feet` says whether 12 inches
/// and more are written in feet and inches, and is left out for those whose unit is the foot.
///
/// # Examples
/// ```
/// use deck_core::job::LengthCall;
/// let call = LengthCall::from_json(r#"{"length": "7' 10-1/2\"", "unit": "in", "fractions": 8}"#)?;
/// assert_eq!(call.to_json(), r#"{"length":94.5,"text":"94-1/2\""}"#);
/// # Ok::<(), deck_core::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct LengthCall {
    /// The length.
    pub length: Length,
    /// How it is written.
    pub notation: Notation,
}

impl LengthCall {
    /// A length and how it is written.
    pub fn new(length: Length, notation: Notation) -> LengthCall {
        LengthCall { length, notation }
    }

    /// Reads a call.
    ///
    /// # Errors
    /// Everything that is wrong with it, in the order in which it stands there.
    pub fn from_json(text: &str) -> Result<LengthCall, Error> {
        read::length_call(text)
    }

    /// The length as a number in the unit, `length`, and as the shop writes it, `text`.
    pub fn to_json(&self) -> String {
        let unit: Unit = self.notation.unit;
        json!({ "length": self.length.number(unit), "text": self.notation.text(self.length) }).to_string()
    }
}
