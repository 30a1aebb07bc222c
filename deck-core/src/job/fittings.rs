//! What is bolted down again, as a job gives it.

use crate::geometry::Point;
use crate::length::Length;
use serde::{Deserialize, Serialize};

/// Rails, seats and consoles whose holes go from the old deck to the new one.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
#[non_exhaustive]
pub struct FittingsSpec {
    /// Where the old deck's datum lies on the new deck; none given: at the new deck's own.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub old_datum: Option<OldDatumSpec>,
    /// Least distance from a hole's middle to a seam.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub from_seam: Option<Length>,
    /// Lengths of bolts that are sold.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bolt_lengths: Option<Vec<Length>>,
    /// The fittings.
    pub items: Vec<FittingSpec>,
}

/// Where the old deck's datum lies on the new deck, and which way was measured from it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
#[non_exhaustive]
pub struct OldDatumSpec {
    /// Its station on the new deck.
    pub x: Length,
    /// Its distance from the new deck's port edge.
    pub y: Length,
    /// The end from which stations were measured on the old deck; none given: the bow.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub from: Option<DeckEnd>,
    /// The side from which distances athwart were measured on the old deck; none given: port.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub side: Option<DeckSide>,
    /// How the old deck was turned; none given: not at all.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub skew: Option<SkewSpec>,
}

/// An end of the deck.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum DeckEnd {
    /// The bow: stations run aft.
    Bow,
    /// The stern: stations run forward.
    Stern,
}

/// A side of the deck.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum DeckSide {
    /// Port: distances run to starboard.
    Port,
    /// Starboard: distances run to port.
    Starboard,
}

/// How a fore-and-aft line of the old deck runs on the new one.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct SkewSpec {
    /// Over this length aft …
    pub over: Length,
    /// … it runs so far to starboard; to port below zero.
    pub to_starboard: Length,
}

/// A fitting, its bolt and its holes on the old deck.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
#[non_exhaustive]
pub struct FittingSpec {
    /// What the shop calls it.
    pub name: String,
    /// Its bolt.
    pub bolt: BoltSpec,
    /// Its holes, from the old datum.
    pub holes: Vec<Point>,
}

/// A bolt, and what goes on it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
#[non_exhaustive]
pub struct BoltSpec {
    /// What the shop calls it; none given: "bolt".
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub kind: Option<String>,
    /// Its diameter.
    pub diameter: Length,
    /// Thickness of the fitting's foot above the board; none given: zero.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub foot: Option<Length>,
    /// Thickness of its washers together.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub washer: Option<Length>,
    /// Height of its nut.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub nut: Option<Length>,
    /// The plate under the deck; none given: none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub plate: Option<PlateSpec>,
}

/// A plate under the deck.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
#[non_exhaustive]
pub struct PlateSpec {
    /// Its longer side.
    pub length: Length,
    /// Its shorter side.
    pub width: Length,
    /// Its thickness.
    pub thickness: Length,
    /// Bolts through one plate; none given: one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", schemars(range(min = 1, max = 100)))]
    pub bolts: Option<u32>,
}

impl FittingsSpec {
    /// Fittings measured from the new deck's own datum.
    pub fn new(items: Vec<FittingSpec>) -> FittingsSpec {
        FittingsSpec { old_datum: None, from_seam: None, bolt_lengths: None, items }
    }

    /// Measured from an old datum.
    #[must_use]
    pub fn old_datum(mut self, datum: OldDatumSpec) -> FittingsSpec {
        self.old_datum = Some(datum);
        self
    }
}

impl OldDatumSpec {
    /// A datum at a point of the new deck, measured aft and to starboard.
    pub fn new(x: Length, y: Length) -> OldDatumSpec {
        OldDatumSpec { x, y, from: None, side: None, skew: None }
    }
}

impl FittingSpec {
    /// A fitting with a bolt of a diameter.
    pub fn new(name: impl Into<String>, diameter: Length, holes: Vec<Point>) -> FittingSpec {
        FittingSpec { name: name.into(), bolt: BoltSpec::new(diameter), holes }
    }
}

impl BoltSpec {
    /// A bolt of a diameter.
    pub fn new(diameter: Length) -> BoltSpec {
        BoltSpec { kind: None, diameter, foot: None, washer: None, nut: None, plate: None }
    }
}
