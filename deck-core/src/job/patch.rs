//! A job in which part of the old deck stays.

use crate::geometry::Point;
use crate::length::Length;
use serde::{Deserialize, Serialize};

/// What of the old deck is damaged, and what stays.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
#[non_exhaustive]
pub struct PatchSpec {
    /// Stations of the old seams, from the bow aft: where the board forward of each ends.
    pub old_seams: Vec<Length>,
    /// Gap at the old seams; none given: zero.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub old_gap: Option<Length>,
    /// Thickness of the old boards, measured. Left out: not compared with the new ones.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub old_thickness: Option<Length>,
    /// The damaged places, one at least.
    #[cfg_attr(feature = "schema", schemars(length(min = 1)))]
    pub damage: Vec<DamageSpec>,
    /// How far past the damage a sawn edge lies.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub margin: Option<Length>,
    /// Width of the blocking under joints.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub blocking_width: Option<Length>,
    /// Where edges may lie on blocking; none given: the sides only.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub blocking: Option<BlockingPlaces>,
    /// Narrowest strip that may be left of an old board beside a patch.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub least_strip: Option<Length>,
}

/// Where edges of a patch may lie on blocking.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum BlockingPlaces {
    /// Edges fore and aft only; edges athwart lie on members.
    Sides,
    /// Any edge.
    Anywhere,
}

/// A damaged place, as far as it was found by probing.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
#[non_exhaustive]
pub struct DamageSpec {
    /// What the shop calls it.
    pub name: String,
    /// Its corners in order, either way round.
    pub corners: Vec<Point>,
}

impl PatchSpec {
    /// Damaged places among old boards.
    pub fn new(old_seams: Vec<Length>, damage: Vec<DamageSpec>) -> PatchSpec {
        PatchSpec {
            old_seams,
            old_gap: None,
            old_thickness: None,
            damage,
            margin: None,
            blocking_width: None,
            blocking: None,
            least_strip: None,
        }
    }
}

impl DamageSpec {
    /// A damaged place within corners.
    pub fn new(name: impl Into<String>, corners: Vec<Point>) -> DamageSpec {
        DamageSpec { name: name.into(), corners }
    }
}
