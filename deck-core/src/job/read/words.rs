//! The words of an enum, asked of its own derived reader, so that no second list of them can go stale.

use serde::de::value::StrDeserializer;
use serde::de::{DeserializeOwned, Error, IntoDeserializer};
use std::fmt;

/// What a derived reader says of a word that it does not know: the words that it does.
#[derive(Debug, Default)]
struct Words(&'static [&'static str]);

impl fmt::Display for Words {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:?}", self.0)
    }
}

impl std::error::Error for Words {}

impl Error for Words {
    fn custom<T: fmt::Display>(_: T) -> Words {
        Words::default()
    }

    fn unknown_variant(_: &str, expected: &'static [&'static str]) -> Words {
        Words(expected)
    }
}

/// The variant that a word names, or the words that there are.
pub(super) fn word<T: DeserializeOwned>(text: &str) -> Result<T, &'static [&'static str]> {
    let deserializer: StrDeserializer<'_, Words> = text.into_deserializer();
    T::deserialize(deserializer).map_err(|words| words.0)
}
