//! Reads what the calls for sheets share: the saw, and how long to search.

use crate::error::Kind;
use crate::job::read::Notes;
use crate::job::read::at::{At, Object, shown};
use crate::nest::Effort;
use crate::stock::Saw;
use serde_json::Value;

/// The saw's fields stand beside the others in a call.
pub(super) fn saw(fields: &mut Object<'_>, notes: &mut Notes) -> Saw {
    let mut saw = Saw::new();
    saw.kerf = fields.optional("kerf", notes, At::length).unwrap_or_default();
    saw.trim = fields.optional("trim", notes, At::length).unwrap_or_default();
    saw.stages = fields.optional("stages", notes, At::small_count);
    saw.first = fields.optional("first", notes, At::word);
    saw.keep = fields.optional("keep", notes, At::pair);
    saw
}

pub(super) fn effort(at: &At<'_>, notes: &mut Notes) -> Option<Effort> {
    const ACCEPTED: &str = "It is \"quick\", \"standard\" or \"thorough\", or a number of steps.";
    match at.value {
        Value::String(word) => match word.as_str() {
            "quick" => return Some(Effort::Quick),
            "standard" => return Some(Effort::Standard),
            "thorough" => return Some(Effort::Thorough),
            _ => at.refuse(notes, Kind::UnknownWord, format!("{} is not known here.", shown(at.value)), ACCEPTED),
        },
        Value::Number(number) => match steps(number) {
            Some(steps) => return Some(Effort::Steps(steps)),
            None => at.refuse(notes, Kind::OutOfRange, format!("{number} is no number of steps."), ACCEPTED),
        },
        _ => at.refuse(notes, Kind::WrongType, format!("{} is no effort.", shown(at.value)), ACCEPTED),
    }
    None
}

/// A whole number from zero up; `3.0` counts as whole, as spreadsheets write it.
fn steps(number: &serde_json::Number) -> Option<u64> {
    const WHOLE: f64 = 9_007_199_254_740_992.0;
    let whole = |number: &f64| number.fract() == 0.0 && (0.0..WHOLE).contains(number);
    // Whole and below 2^53: the cast is exact.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
    number.as_u64().or_else(|| number.as_f64().filter(whole).map(|number| number as u64))
}
