//! Holes that the old deck left in the members, as a job gives them.

use crate::length::Length;
use serde::Serialize;

/// Holes of one diameter in one member.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
#[non_exhaustive]
pub struct OldHolesSpec {
    /// Number of the member, counted from the bow from 1.
    pub member: u32,
    /// Distance of each hole's middle from the port edge.
    pub y: Vec<Length>,
    /// Diameter of the holes.
    pub diameter: Length,
    /// Station of their middles; none given: the middle of the flange.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub x: Option<Length>,
}

impl OldHolesSpec {
    /// Holes in the middle of a member's flange.
    pub fn new(member: u32, y: Vec<Length>, diameter: Length) -> OldHolesSpec {
        OldHolesSpec { member, y, diameter, x: None }
    }

    /// At another station.
    #[must_use]
    pub fn x(mut self, x: Length) -> OldHolesSpec {
        self.x = Some(x);
        self
    }
}
