//! A value of the document with the place where it stands, and what can be read off it.
//!
//! Nothing here recurses into what it does not know, so no depth of nesting can harm it.

use super::words::word;
use super::{Notes, Rounded};
use crate::error::{Fault, Kind};
use crate::length::{Length, Reading};
use crate::money::{Figure, Money};
use serde::de::DeserializeOwned;
use serde_json::{Map, Value};

/// Longer texts than this are no figure, and a message does not repeat them.
const MOST_FIGURE: usize = 200;

/// A value, and its JSON pointer from the root.
pub(super) struct At<'a> {
    pub(super) value: &'a Value,
    pub(super) pointer: String,
}

/// A list from which unreadable items were left out, with the places of the others.
#[derive(Debug)]
pub(super) struct Listed<T> {
    pub(super) items: Vec<T>,
    pub(super) positions: Vec<usize>,
}

impl<T> Default for Listed<T> {
    fn default() -> Listed<T> {
        Listed { items: Vec::new(), positions: Vec::new() }
    }
}

impl<'a> At<'a> {
    pub(super) fn refuse(&self, notes: &mut Notes, kind: Kind, message: impl Into<String>, accepted: &str) {
        notes.faults.push(Fault::new(kind, shown(self.value), message, accepted).at(&self.pointer));
    }

    fn wrong_type<T>(&self, notes: &mut Notes, wanted: &str, accepted: &str) -> Option<T> {
        self.refuse(notes, Kind::WrongType, format!("{} is no {wanted}.", shown(self.value)), accepted);
        None
    }

    pub(super) fn text(&self, notes: &mut Notes) -> Option<String> {
        match self.value {
            Value::String(text) => Some(text.clone()),
            _ => self.wrong_type(notes, "text", "A text stands in double quotes."),
        }
    }

    pub(super) fn flag(&self, notes: &mut Notes) -> Option<bool> {
        match self.value {
            Value::Bool(flag) => Some(*flag),
            _ => self.wrong_type(notes, "yes or no", "It is true or false."),
        }
    }

    /// A number, with or without a fraction.
    pub(super) fn number(&self, notes: &mut Notes) -> Option<f64> {
        match self.value {
            Value::Number(number) => number.as_f64(),
            _ => self.wrong_type(notes, "number", "It is a number, without quotes."),
        }
    }

    /// An exact decimal.
    pub(super) fn figure(&self, notes: &mut Notes) -> Option<Figure> {
        let number = self.number(notes)?;
        Figure::read_number(number)
            .map_err(|error| notes.faults.extend(error.faults().map(|fault| fault.clone().at(&self.pointer))))
            .ok()
    }

    /// A whole number from zero up; `3.0` counts as whole, as spreadsheets write it.
    pub(super) fn count(&self, notes: &mut Notes) -> Option<u32> {
        let Some(number) = self.value.as_f64().filter(|number| number.fract() == 0.0) else {
            return self.wrong_type(notes, "whole number", "It is a whole number, without quotes.");
        };
        if !(0.0..=f64::from(u32::MAX)).contains(&number) {
            let message = format!("{} is out of range.", shown(self.value));
            self.refuse(notes, Kind::OutOfRange, message, "It is a whole number from 0 to 4294967295.");
            return None;
        }
        // Whole and within range: the cast is exact.
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
        Some(number as u32)
    }

    pub(super) fn small_count(&self, notes: &mut Notes) -> Option<u8> {
        let count = self.count(notes)?;
        u8::try_from(count).map_or_else(
            |_| {
                let message = format!("{count} is out of range.");
                self.refuse(notes, Kind::OutOfRange, message, "It is a whole number from 0 to 255.");
                None
            },
            Some,
        )
    }

    pub(super) fn length(&self, notes: &mut Notes) -> Option<Length> {
        let reading = match self.value {
            Value::Number(number) => Length::read_number(number.as_f64().unwrap_or(f64::INFINITY), notes.unit),
            Value::String(text) if text.len() <= MOST_FIGURE => Length::read(text, notes.unit),
            _ => {
                let accepted = format!(
                    "A length is a number in the {}'s unit, or a text such as 94-1/2, 7' 10-1/2\" or 2400 mm.",
                    notes.document
                );
                return self.wrong_type(notes, "length", &accepted);
            }
        };
        match reading {
            Ok(Reading { length, exact }) => {
                if !exact {
                    let given = shown(self.value);
                    notes.rounded.push(Rounded { pointer: self.pointer.clone(), given, taken: length });
                }
                Some(length)
            }
            Err(error) => {
                notes.faults.extend(error.faults().map(|fault| fault.clone().at(&self.pointer)));
                None
            }
        }
    }

    /// A length as the number that it is in the document's unit, for methods that reckon in floats.
    pub(super) fn measure(&self, notes: &mut Notes) -> Option<f64> {
        match self.value {
            Value::Number(number) => number.as_f64(),
            _ => self.length(notes).map(|length| length.number(notes.unit)),
        }
    }

    pub(super) fn money(&self, notes: &mut Notes) -> Option<Money> {
        let reading = match self.value {
            Value::Number(number) => Money::read_number(number.as_f64().unwrap_or(f64::INFINITY)),
            Value::String(text) if text.len() <= MOST_FIGURE => text.parse(),
            _ => return self.wrong_type(notes, "amount of money", "An amount is a figure such as 62.50."),
        };
        reading.map_err(|error| notes.faults.extend(error.faults().map(|fault| fault.clone().at(&self.pointer)))).ok()
    }

    /// One of the words of an enum; which those are, its own derive knows.
    pub(super) fn word<T: DeserializeOwned>(&self, notes: &mut Notes) -> Option<T> {
        let Value::String(text) = self.value else {
            return self.wrong_type(notes, "word", "A word stands in double quotes.");
        };
        match word(text) {
            Ok(value) => Some(value),
            Err(words) => {
                let accepted = format!("It is {}.", listed(words, "or"));
                let message = format!("{} is not known here.", shown(self.value));
                self.refuse(notes, Kind::UnknownWord, message, &accepted);
                None
            }
        }
    }

    pub(super) fn pair(&self, notes: &mut Notes) -> Option<(Length, Length)> {
        match self.value.as_array().map(Vec::as_slice) {
            Some([length, width]) => {
                let (length, width) = (self.item(0, length).length(notes), self.item(1, width).length(notes));
                length.zip(width)
            }
            _ => self.wrong_type(notes, "pair of lengths", "It is a list of two lengths: [length, width]."),
        }
    }

    /// A list of two things of a sort.
    pub(super) fn two<T>(
        &self,
        notes: &mut Notes,
        things: &str,
        read: impl Fn(&At<'a>, &mut Notes) -> Option<T>,
    ) -> Option<[T; 2]> {
        match self.value.as_array().map(Vec::as_slice) {
            Some([one, other]) => {
                let (one, other) = (read(&self.item(0, one), notes), read(&self.item(1, other), notes));
                Some([one?, other?])
            }
            _ => self.wrong_type(notes, &format!("list of two {things}"), &format!("It is a list of two {things}.")),
        }
    }

    pub(super) fn list<T>(
        &self,
        notes: &mut Notes,
        read: impl Fn(&At<'a>, &mut Notes) -> Option<T>,
    ) -> Option<Listed<T>> {
        let Value::Array(values) = self.value else {
            return self.wrong_type(notes, "list", "A list stands in brackets.");
        };
        let mut listed = Listed::default();
        for (position, value) in values.iter().enumerate() {
            if let Some(item) = read(&self.item(position, value), notes) {
                listed.items.push(item);
                listed.positions.push(position);
            }
        }
        Some(listed)
    }

    /// A list that counts only as a whole: of what is left of it another thing would follow.
    pub(super) fn whole<T>(
        &self,
        notes: &mut Notes,
        read: impl Fn(&At<'a>, &mut Notes) -> Option<T>,
    ) -> Option<Vec<T>> {
        let before = notes.faults.len();
        let listed = self.list(notes, read)?;
        (notes.faults.len() == before).then_some(listed.items)
    }

    pub(super) fn object(&self, notes: &mut Notes) -> Option<Object<'a>> {
        match self.value {
            Value::Object(map) => Some(Object { map, pointer: self.pointer.clone(), asked: Vec::new() }),
            _ => self.wrong_type(notes, "object", "An object stands in braces."),
        }
    }

    pub(super) fn item(&self, position: usize, value: &'a Value) -> At<'a> {
        At { value, pointer: format!("{}/{position}", self.pointer) }
    }
}

/// An object that is being read: a field that is asked for is known, and what is left over at the end is not.
pub(super) struct Object<'a> {
    map: &'a Map<String, Value>,
    pointer: String,
    asked: Vec<&'static str>,
}

impl<'a> Object<'a> {
    /// True where the field is there; it counts as known.
    pub(super) fn has(&mut self, name: &'static str) -> bool {
        self.field(name).is_some()
    }

    fn field(&mut self, name: &'static str) -> Option<At<'a>> {
        if !self.asked.contains(&name) {
            self.asked.push(name);
        }
        // No name of ours holds `~` or `/`, so none needs escaping.
        self.map.get(name).map(|value| At { value, pointer: format!("{}/{name}", self.pointer) })
    }

    /// Tells of sizes of zero or less, where the thing they belong to is not complete and so is not checked as a whole.
    pub(super) fn sizes(&self, notes: &mut Notes, sizes: &[(&str, Option<Length>)]) {
        if sizes.iter().all(|(_, size)| size.is_some()) {
            return;
        }
        for (name, size) in sizes {
            let Some(size) = size.filter(|size| *size <= Length::ZERO) else { continue };
            let kind = if size.is_zero() { Kind::LengthZero } else { Kind::LengthNegative };
            let value = self.map.get(*name).map(shown).unwrap_or_default();
            let fault = Fault::new(kind, value.clone(), format!("{value} is no size."), "More than zero is accepted.");
            notes.faults.push(fault.within(name).at(&self.pointer));
        }
    }

    /// A field that must be there.
    pub(super) fn required<T>(
        &mut self,
        name: &'static str,
        notes: &mut Notes,
        read: impl FnOnce(&At<'a>, &mut Notes) -> Option<T>,
    ) -> Option<T> {
        if let Some(at) = self.field(name) {
            return read(&at, notes);
        }
        self.missing(name, notes, format!("\"{name}\" is required."), "It has no default.");
        None
    }

    pub(super) fn missing(&self, name: &str, notes: &mut Notes, message: String, accepted: &str) {
        let fault = Fault::new(Kind::MissingField, "", message, accepted);
        notes.faults.push(fault.within(name).at(&self.pointer));
    }

    /// Refuses the object because of two fields that exclude each other; points to the second of them.
    pub(super) fn conflict(&self, notes: &mut Notes, fields: [&str; 2], message: &str) {
        let value = format!("{} and {}", fields[0], fields[1]);
        let fault = Fault::new(Kind::Conflict, value, message, "Give one of the two.");
        notes.faults.push(fault.within(fields[1]).at(&self.pointer));
    }

    /// A field that may be left out, or be null.
    pub(super) fn optional<T>(
        &mut self,
        name: &'static str,
        notes: &mut Notes,
        read: impl FnOnce(&At<'a>, &mut Notes) -> Option<T>,
    ) -> Option<T> {
        self.field(name).filter(|at| !at.value.is_null()).and_then(|at| read(&at, notes))
    }

    /// A field that may be left out, and then is what the type's own default is.
    pub(super) fn defaulted<T: Default>(
        &mut self,
        name: &'static str,
        notes: &mut Notes,
        read: impl FnOnce(&At<'a>, &mut Notes) -> Option<T>,
    ) -> T {
        self.field(name).and_then(|at| read(&at, notes)).unwrap_or_default()
    }

    /// A field that may be left out, and then is a value.
    pub(super) fn unless_given<T>(
        &mut self,
        name: &'static str,
        value: T,
        notes: &mut Notes,
        read: impl FnOnce(&At<'a>, &mut Notes) -> Option<T>,
    ) -> Option<T> {
        self.field(name).map_or(Some(value), |at| read(&at, notes))
    }

    /// Refuses the fields that were not asked for.
    pub(super) fn close(self, notes: &mut Notes) {
        let mut meant: Vec<&'static str> = Vec::new();
        for (name, value) in self.map.iter().filter(|(name, _)| !self.asked.contains(&name.as_str())) {
            let near = nearest(name, self.asked.iter().filter(|known| !self.map.contains_key(**known)));
            meant.extend(near.filter(|known| !meant.contains(known)));
            let accepted = match near {
                Some(known) => format!("Did you mean \"{known}\"?"),
                None => format!("The fields here are {}.", listed(&self.asked, "and")),
            };
            let fault = Fault::new(Kind::UnknownField, shown(value), "unknown field.", accepted);
            notes.faults.push(fault.within(name).at(&self.pointer));
        }
        // A field that is there under a misspelt name is told of once, by that name.
        let misspelt: Vec<String> = meant.iter().map(|known| format!("{}/{known}", self.pointer)).collect();
        notes.faults.retain(|fault| fault.kind != Kind::MissingField || !misspelt.contains(&fault.pointer));
    }
}

/// The known name that is fewest slips of the pen away, a swap of neighbours counting as one.
fn nearest<'n>(name: &str, known: impl Iterator<Item = &'n &'static str>) -> Option<&'static str> {
    // Longer than any field of ours by far: not a slip of the pen, and costly to compare.
    if name.len() > 60 {
        return None;
    }
    let plain = name.to_lowercase().replace(['-', ' '], "_");
    let slips = |known: &str| strsim::osa_distance(&plain, known);
    // A third of the letters wrong, or two of them, is still the same word to a reader.
    let most = (plain.chars().count() / 3).clamp(1, 3);
    known.map(|known| (slips(known), *known)).filter(|(slips, _)| *slips <= most).min().map(|(_, known)| known)
}

/// `"a", "b" or "c"`.
fn listed(words: &[&str], last: &str) -> String {
    let quoted: Vec<String> = words.iter().map(|word| format!("\"{word}\"")).collect();
    match quoted.split_last() {
        Some((end, rest)) if !rest.is_empty() => format!("{} {last} {end}", rest.join(", ")),
        _ => quoted.concat(),
    }
}

/// A value as it is repeated to the person who wrote it.
pub(super) fn shown(value: &Value) -> String {
    const MOST: usize = 60;
    match value {
        Value::Null => "null".into(),
        Value::Bool(flag) => flag.to_string(),
        Value::Number(number) => number.to_string(),
        Value::String(text) if text.chars().count() > MOST => {
            format!("\"{}…\"", text.chars().take(MOST).collect::<String>())
        }
        Value::String(text) => format!("\"{text}\""),
        Value::Array(_) => "a list".into(),
        Value::Object(_) => "an object".into(),
    }
}
