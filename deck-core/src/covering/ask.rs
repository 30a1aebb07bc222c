//! What is asked of the covering: rolls, traffic, glue, what other boats take.

use crate::length::Length;
use crate::money::{Figure, Money};
use serde::{Deserialize, Serialize};

/// A roll that can be had.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
#[non_exhaustive]
pub struct Roll {
    /// What the shop calls it.
    pub label: String,
    /// Its width.
    pub width: Length,
    /// Length of a whole roll.
    pub length: Length,
    /// What it is sold by: a running foot, a metre, the whole roll. Left out: the whole roll.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub sold_by: Option<Length>,
    /// Price of that much of it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub price: Option<Money>,
}

impl Roll {
    /// A roll that is sold whole.
    pub fn new(label: impl Into<String>, width: Length, length: Length) -> Roll {
        Roll { label: label.into(), width, length, sold_by: None, price: None }
    }

    /// What it is sold by.
    pub fn step(&self) -> Length {
        self.sold_by.unwrap_or(self.length)
    }
}

/// The way a covering runs.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Run {
    /// From bow to stern.
    ForeAndAft,
    /// From port to starboard.
    Athwart,
}

/// The way a covering is to run.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum RunChoice {
    /// From bow to stern.
    ForeAndAft,
    /// From port to starboard.
    Athwart,
    /// The way with fewer seams, then the cheaper.
    #[default]
    Best,
}

/// A place where people walk: no seam of the covering lies in it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
#[non_exhaustive]
pub struct Traffic {
    /// What it is called.
    pub name: String,
    /// Station of its fore edge.
    pub x: Length,
    /// Distance of its port edge from the deck's port edge.
    pub y: Length,
    /// Extent fore and aft.
    pub depth: Length,
    /// Extent athwart.
    pub width: Length,
}

impl Traffic {
    /// A place from its fore port corner.
    pub fn new(name: impl Into<String>, corner: (Length, Length), depth: Length, width: Length) -> Traffic {
        Traffic { name: name.into(), x: corner.0, y: corner.1, depth, width }
    }
}

/// A length that another boat takes off the same rolls.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
#[non_exhaustive]
pub struct Drop {
    /// The boat.
    pub boat: String,
    /// Length of the drop.
    pub length: Length,
    /// How many. Left out: one.
    #[cfg_attr(feature = "schema", schemars(range(max = 100)))]
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub count: Option<u32>,
}

impl Drop {
    /// One drop of a boat.
    pub fn new(boat: impl Into<String>, length: Length) -> Drop {
        Drop { boat: boat.into(), length, count: None }
    }
}

/// How a covering is glued.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Adhesive {
    /// What it is called.
    pub kind: String,
    /// The trowel, where known.
    pub trowel: Option<String>,
    /// Square feet to the US gallon, least and most.
    pub coverage: (Figure, Figure),
    /// US gallons in a can.
    pub can: Figure,
    /// Minutes to wait before the covering goes into the glue.
    pub wait: Figure,
    /// Minutes after which it has set.
    pub set: Figure,
    /// Square feet that the crew spreads in a minute, where known.
    pub spread: Option<Figure>,
    /// Where coverage and times come from.
    pub source: String,
}
