//! Numbers that came from outside, each with where it was read and how sure of it one can be.
//!
//! One file per source. A figure that no source settles is still a figure that somebody acts on: it stands here too,
//! with its mark, and the plan lists it as assumed.

pub mod defaults;
mod panel_weights;

pub use panel_weights::{plywood_pounds, plywood_psf};

use serde::{Deserialize, Serialize};

/// How sure a figure is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Standing {
    /// Read in the source that is named.
    #[serde(rename = "V")]
    Verified,
    /// Follows from other figures.
    #[serde(rename = "D")]
    Derived,
    /// Common shop practice, with no source.
    #[serde(rename = "C")]
    CommonPractice,
    /// Recalled and not confirmed.
    #[serde(rename = "M")]
    Memory,
    /// A choice of this library that changes nothing about the boat, or the plain absence of something.
    #[serde(rename = "choice")]
    Choice,
}

/// The default of a setting, with where it comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[non_exhaustive]
pub struct Preset<T> {
    /// JSON pointer of the setting in a job.
    pub pointer: &'static str,
    /// The setting in words.
    pub setting: &'static str,
    /// The default.
    pub value: T,
    /// How sure it is.
    pub standing: Standing,
    /// True where the sources differ.
    pub differ: bool,
    /// Where it comes from.
    pub source: &'static str,
}

impl<T> Preset<T> {
    /// True where a plan that rests on it says so: it was not read or derived, or its sources differ.
    pub fn is_assumed(&self) -> bool {
        self.differ || matches!(self.standing, Standing::CommonPractice | Standing::Memory)
    }

    /// The same default where it stands on memory alone, with the reason.
    #[must_use]
    pub fn unsettled(mut self, reason: &'static str) -> Preset<T> {
        self.standing = Standing::Memory;
        self.source = reason;
        self
    }
}
