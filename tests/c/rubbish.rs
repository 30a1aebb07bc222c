//! Texts that were requests before something happened to them. The same chance gives the same texts.

use serde_json::{Map, Value};

/// What a value is exchanged for: wrong types, figures beyond anything, and words that are no JSON at all.
const RUBBISH: [&str; 30] = [
    "null",
    "true",
    "-1",
    "0",
    "-0.0",
    "1e400",
    "-1e400",
    "1e308",
    "5e-324",
    "NaN",
    "Infinity",
    "-Infinity",
    "0x10",
    "01",
    ".5",
    "9223372036854775808",
    "1e-9",
    "\"\"",
    "\"NaN\"",
    "\"7' 10-1/2\\\" 3 mm\"",
    "\"-4\"",
    "\"1e99 mm\"",
    "\"\\ud800\"",
    "\"\\u0000\"",
    "[]",
    "{}",
    "[null]",
    "{\"\": {}}",
    "'4'",
    "4 in",
];

/// Stands for rubbish until the text is written.
const MARK: &str = "\u{e000}";

/// A small generator with one number of state (splitmix64; Steele, Lea and Flood 2014).
pub(crate) struct Chance(u64);

impl Chance {
    pub(crate) fn new(seed: u64) -> Chance {
        Chance(seed)
    }

    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mixed = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        let mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }

    /// A number below another.
    pub(crate) fn below(&mut self, end: usize) -> usize {
        usize::try_from(self.next() % u64::try_from(end).unwrap()).unwrap()
    }

    pub(crate) fn one_in(&mut self, many: usize) -> bool {
        self.below(many) == 0
    }

    pub(crate) fn byte(&mut self) -> u8 {
        self.next().to_le_bytes()[0]
    }

    pub(crate) fn bytes(&mut self, most: usize) -> Vec<u8> {
        (0..self.below(most + 1)).map(|_| self.byte()).collect()
    }

    pub(crate) fn pick<'a, T>(&mut self, list: &'a [T]) -> &'a T {
        &list[self.below(list.len())]
    }
}

/// A text to which something happened.
pub(crate) fn spoiled(chance: &mut Chance, text: &str) -> Vec<u8> {
    let bytes = text.as_bytes();
    match chance.below(16) {
        0 => bytes[..chance.below(bytes.len())].to_vec(),
        1 => chance.bytes(200),
        2 => nested(chance),
        3 => [bytes, chance.pick(&["}", ",", "[", "\0", "\u{feff}", " x"]).as_bytes()].concat(),
        4 | 5 => {
            let mut bytes = bytes.to_vec();
            for _ in 0..=chance.below(3) {
                let place = chance.below(bytes.len());
                bytes[place] = chance.byte();
            }
            bytes
        }
        6 => text.replacen('"', "\"\\udc00", 1 + chance.below(3)).into_bytes(),
        _ => exchanged(chance, text),
    }
}

/// Brackets within brackets, deeper than any reader goes.
fn nested(chance: &mut Chance) -> Vec<u8> {
    let depth = *chance.pick(&[3, 120, 127, 128, 129, 5000]);
    let open = *chance.pick(&["[", "{\"a\":", "{\"parts\":[", "{\"loads\":{\"at\":"]);
    open.repeat(depth).into_bytes()
}

/// A request in which values somewhere are others, are gone, or have another name.
fn exchanged(chance: &mut Chance, text: &str) -> Vec<u8> {
    let mut request: Value = serde_json::from_str(text).unwrap();
    for _ in 0..=chance.below(2) {
        spoil(chance, &mut request);
    }
    let (written, mark) = (request.to_string(), format!("\"{MARK}\""));
    let mut parts = written.split(&mark);
    let first = parts.next().unwrap_or_default().to_owned();
    parts.fold(first, |text, part| text + chance.pick::<&str>(&RUBBISH) + part).into_bytes()
}

/// Walks down at random, and does one thing to one value.
fn spoil(chance: &mut Chance, value: &mut Value) {
    match value {
        Value::Object(fields) if !fields.is_empty() && !chance.one_in(12) => {
            let key = fields.keys().nth(chance.below(fields.len())).cloned().unwrap();
            if chance.one_in(6) { misname(chance, fields, &key) } else { spoil(chance, &mut fields[&key]) }
        }
        Value::Array(items) if !items.is_empty() && !chance.one_in(6) => {
            let place = chance.below(items.len());
            match chance.below(8) {
                0 => items.push(items[place].clone()),
                1 => drop(items.remove(place)),
                _ => spoil(chance, &mut items[place]),
            }
        }
        _ => *value = MARK.into(),
    }
}

/// A field is left out, or has a letter less.
fn misname(chance: &mut Chance, fields: &mut Map<String, Value>, key: &str) {
    let value = fields.remove(key);
    if chance.one_in(2) {
        fields.insert(key.chars().skip(1).collect(), value.unwrap_or_default());
    }
}
