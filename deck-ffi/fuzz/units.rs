//! Code units of both encodings, as a caller holds them.

use std::ffi::c_char;
use std::fmt::Debug;

/// A code unit of UTF-8 or UTF-16.
pub(crate) trait Unit: Copy + PartialEq + Debug {
    const NUL: Self;
    /// What a buffer holds before a call.
    const FILL: Self;
    /// Bytes as code units: `raw` bytes are the units' own, else they are a text, as far as they are one.
    fn units(bytes: &[u8], raw: bool) -> Vec<Self>;
    /// The bytes that are a text's units, so that `units` makes the text of them where they are raw.
    fn bytes(text: &str) -> Vec<u8>;
}

impl Unit for c_char {
    const NUL: c_char = 0;
    const FILL: c_char = 0x5a;

    fn units(bytes: &[u8], raw: bool) -> Vec<c_char> {
        let text = if raw { bytes.to_vec() } else { String::from_utf8_lossy(bytes).into_owned().into_bytes() };
        text.into_iter().map(|byte| c_char::from_ne_bytes([byte])).collect()
    }

    fn bytes(text: &str) -> Vec<u8> {
        text.as_bytes().to_vec()
    }
}

impl Unit for u16 {
    const NUL: u16 = 0;
    const FILL: u16 = 0x5a5a;

    fn units(bytes: &[u8], raw: bool) -> Vec<u16> {
        let pairs = || bytes.chunks_exact(2).map(|pair| u16::from_ne_bytes([pair[0], pair[1]])).collect();
        if raw { pairs() } else { String::from_utf8_lossy(bytes).encode_utf16().collect() }
    }

    fn bytes(text: &str) -> Vec<u8> {
        text.encode_utf16().flat_map(u16::to_ne_bytes).collect()
    }
}

pub(crate) fn untouched<U: Unit>(buf: &[U]) -> bool {
    buf.iter().all(|unit| *unit == U::FILL)
}
