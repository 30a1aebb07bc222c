//! Openings that must be freed before a board can be lifted.

use crate::length::Length;
use serde::{Deserialize, Serialize};

/// A temporary slot in an old board, so that what runs through it drops free.
///
/// The new board gets a closed hole: what runs through it is pulled through once the board lies.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
// Denied in the schema alone: in a plan, texts stand beside the lengths. A job is read field by field.
#[cfg_attr(feature = "schema", schemars(deny_unknown_fields))]
#[non_exhaustive]
pub struct Freed {
    /// What is freed: a harness, a hose, a cable.
    pub name: String,
    /// Station of the slot's fore edge.
    pub x: Length,
    /// Distance of its port edge from the deck's port edge.
    pub y: Length,
    /// Extent fore and aft.
    pub depth: Length,
    /// Extent athwart.
    pub width: Length,
    /// The opening of the new deck through which it will run.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub becomes: Option<String>,
}

impl Freed {
    /// A slot, from its fore port corner.
    pub fn new(name: impl Into<String>, corner: (Length, Length), depth: Length, width: Length) -> Freed {
        Freed { name: name.into(), x: corner.0, y: corner.1, depth, width, becomes: None }
    }

    /// With the opening that takes its place.
    #[must_use]
    pub fn becomes(mut self, opening: impl Into<String>) -> Freed {
        self.becomes = Some(opening.into());
        self
    }
}
