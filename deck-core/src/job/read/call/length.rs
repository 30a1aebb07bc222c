//! Reads a call for one length.

use super::{ACCEPTED, whole};
use crate::error::{Error, Fault, Kind};
use crate::job::LengthCall;
use crate::job::read::at::{At, Object};
use crate::job::read::{Notes, text};
use crate::job::settings::asked::FRACTIONS;
use crate::length::{Length, Notation};

pub(in crate::job) fn length_call(text: &str) -> Result<LengthCall, Error> {
    let (value, twice) = text::parse(text, ACCEPTED)?;
    let (unit, (length, finest, feet)) = whole(&value, twice, fields, |(_, finest, _)| is_a_fraction(*finest))?;
    let notation = Notation::new(unit);
    let notation = notation.denominator(finest.unwrap_or(notation.denominator)).feet(feet.unwrap_or(notation.feet));
    Ok(LengthCall::new(length, notation))
}

fn fields(fields: &mut Object<'_>, notes: &mut Notes) -> Option<(Length, Option<u32>, Option<bool>)> {
    let length = fields.required("length", notes, At::length);
    let finest = fields.optional("fractions", notes, At::count);
    let feet = fields.optional("feet", notes, At::flag);
    Some((length?, finest, feet))
}

fn is_a_fraction(finest: Option<u32>) -> Result<(), Error> {
    let Some(finest) = finest.filter(|finest| !FRACTIONS.contains(finest)) else { return Ok(()) };
    let message = format!("{finest} is no fraction on a tape.");
    Err(Fault::new(Kind::OutOfRange, finest.to_string(), message, "It is 2, 4, 8, 16, 32 or 64.")
        .at("/fractions")
        .into())
}

#[cfg(test)]
mod tests {
    use super::length_call;
    use crate::error::Kind;

    fn answer(request: &str) -> String {
        length_call(request).unwrap().to_json()
    }

    #[test]
    fn a_length_is_read_and_written_in_its_unit() {
        assert_eq!(answer(r#"{"length": 94.5}"#), r#"{"length":94.5,"text":"94-1/2\""}"#);
        assert_eq!(answer(r#"{"length": 94.5, "feet": true}"#), r#"{"length":94.5,"text":"7' 10-1/2\""}"#);
        // Feet are written as such where they are the unit.
        assert_eq!(answer(r#"{"length": "94.5 in", "unit": "ft"}"#), r#"{"length":7.875,"text":"7' 10-1/2\""}"#);
        assert_eq!(answer(r#"{"length": "1 in", "unit": "mm"}"#), r#"{"length":25.4,"text":"25.4 mm"}"#);
        assert_eq!(answer(r#"{"length": "1/64", "fractions": 64}"#), r#"{"length":0.015625,"text":"1/64\""}"#);
        assert_eq!(answer(r#"{"length": "3/64", "fractions": 2}"#), r#"{"length":0.046875,"text":"≈0.047 in"}"#);
        assert_eq!(answer(r#"{"length": "-3 1/2"}"#), r#"{"length":-3.5,"text":"-3-1/2\""}"#);
    }

    #[test]
    fn everything_that_is_wrong_is_told() {
        let error = length_call(r#"{"length": "rubbish", "unit": "furlong", "fractions": 7, "feet": 1, "foot": 1}"#);
        let found: Vec<(String, Kind)> =
            error.unwrap_err().faults().map(|fault| (fault.pointer.clone(), fault.kind)).collect();
        let kinds = |pointer: &str| found.iter().find(|(at, _)| at == pointer).map(|(_, kind)| *kind);
        assert_eq!(kinds("/length"), Some(Kind::LengthUnreadable));
        assert_eq!(kinds("/unit"), Some(Kind::UnknownWord));
        assert_eq!(kinds("/feet"), Some(Kind::WrongType));
        assert_eq!(kinds("/foot"), Some(Kind::UnknownField));
        let error = length_call(r#"{"length": 1, "fractions": 7}"#).unwrap_err();
        assert_eq!((error.pointer(), error.first().kind), ("/fractions", Kind::OutOfRange));
        assert_eq!(length_call("{}").unwrap_err().first().kind, Kind::MissingField);
    }
}
