//! What is said when input cannot be worked on.
//!
//! An [`Error`] holds one or more [`Fault`]s, so that a person mends a job file in one go and not one line a run.
//! A fault is made of texts and a [`Kind`]; it knows no other part of the library, and lies at the very bottom of it.
//!
//! ```text
//! /frame/members/3/station: 31' 2" lies 14" aft of the deck's end (30' 0"). A station lies between 0 and 30' 0".
//! ^ pointer                 ^ value                                         ^ accepted
//! ```

mod kind;

pub use kind::{Kind, KindInfo};

use std::fmt;

/// One thing that is wrong with the input.
#[derive(Debug, Clone, PartialEq, Eq, serde::Serialize)]
#[non_exhaustive]
pub struct Fault {
    /// What sort of fault it is; its number is the status that the C functions return.
    pub kind: Kind,
    /// JSON pointer (RFC 6901) of the field, from the root of what was handed in. Empty: the whole of it.
    pub pointer: String,
    /// The value as it was given.
    pub value: String,
    /// What is wrong, as a sentence.
    pub message: String,
    /// What would be accepted, as a sentence.
    pub accepted: String,
}

impl Fault {
    /// A fault about the value as a whole; [`Fault::within`] says which field holds it.
    pub fn new(kind: Kind, value: impl Into<String>, message: impl Into<String>, accepted: impl Into<String>) -> Fault {
        Fault { kind, pointer: String::new(), value: value.into(), message: message.into(), accepted: accepted.into() }
    }

    /// The same fault, seen from one level up: `field` is put before its pointer.
    #[must_use]
    pub fn within(mut self, field: impl fmt::Display) -> Fault {
        let escaped = field.to_string().replace('~', "~0").replace('/', "~1");
        self.pointer = format!("/{escaped}{}", self.pointer);
        self
    }

    /// The same fault with a whole pointer put before its own.
    #[must_use]
    pub fn at(mut self, pointer: &str) -> Fault {
        self.pointer = format!("{pointer}{}", self.pointer);
        self
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if !self.pointer.is_empty() {
            write!(f, "{}: ", self.pointer)?;
        }
        write!(f, "{}", self.message)?;
        if !self.accepted.is_empty() {
            write!(f, " {}", self.accepted)?;
        }
        Ok(())
    }
}

/// Everything that is wrong with an input, in the order in which it stands there. Never empty.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Error {
    first: Fault,
    rest: Vec<Fault>,
}

impl Error {
    /// All faults, the first first.
    pub fn faults(&self) -> impl Iterator<Item = &Fault> {
        std::iter::once(&self.first).chain(&self.rest)
    }

    /// How many faults there are: one at least.
    pub fn count(&self) -> usize {
        1 + self.rest.len()
    }

    /// The first fault.
    pub fn first(&self) -> &Fault {
        &self.first
    }

    /// The pointer of the first fault.
    pub fn pointer(&self) -> &str {
        &self.first.pointer
    }

    /// The message of the first fault.
    pub fn message(&self) -> &str {
        &self.first.message
    }

    /// The same error seen from one level up; see [`Fault::within`].
    #[must_use]
    pub fn within(self, field: impl fmt::Display) -> Error {
        Error {
            first: self.first.within(&field),
            rest: self.rest.into_iter().map(|fault| fault.within(&field)).collect(),
        }
    }

    /// The same error with other pointers, where `change` has another one.
    #[must_use]
    pub(crate) fn map_pointers(mut self, change: impl Fn(&str) -> Option<String>) -> Error {
        for fault in std::iter::once(&mut self.first).chain(&mut self.rest) {
            if let Some(pointer) = change(&fault.pointer) {
                fault.pointer = pointer;
            }
        }
        self
    }
}

impl From<Fault> for Error {
    fn from(fault: Fault) -> Error {
        Error { first: fault, rest: Vec::new() }
    }
}

impl fmt::Display for Error {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (index, fault) in self.faults().enumerate() {
            if index > 0 {
                writeln!(f)?;
            }
            write!(f, "{fault}")?;
        }
        Ok(())
    }
}

impl std::error::Error for Error {}

/// A list into which faults are gathered while reading goes on.
#[derive(Debug, Clone, Default)]
pub struct Faults(Vec<Fault>);

impl Faults {
    /// An empty list.
    pub fn new() -> Faults {
        Faults::default()
    }

    /// Adds a fault.
    pub fn push(&mut self, fault: Fault) {
        self.0.push(fault);
    }

    /// Adds all the faults of an error.
    pub fn absorb(&mut self, error: Error) {
        self.0.push(error.first);
        self.0.extend(error.rest);
    }

    /// Takes the value of a result, or keeps its faults.
    pub fn take<T>(&mut self, result: Result<T, Error>) -> Option<T> {
        result.map_err(|error| self.absorb(error)).ok()
    }

    /// True while nothing has been found wrong.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// How many faults have been gathered.
    pub fn len(&self) -> usize {
        self.0.len()
    }

    /// `Ok` when nothing was found wrong, otherwise all of it.
    ///
    /// # Errors
    /// The gathered faults.
    pub fn finish(self) -> Result<(), Error> {
        let mut all = self.0.into_iter();
        match all.next() {
            None => Ok(()),
            Some(first) => Err(Error { first, rest: all.collect() }),
        }
    }
}
