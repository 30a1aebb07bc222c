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
