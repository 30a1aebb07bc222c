//! Distances that a fastener keeps from edges and from its neighbours.

use crate::length::{Length, Unit};
use crate::published::{METAL_EDGE_FULL, METAL_EDGE_LEAST, METAL_SPACING_LEAST, PANEL_EDGE_LEAST, Standing};
use serde::{Deserialize, Serialize};

/// A distance, and the least that it should be.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct Distance {
    /// Which distance.
    pub what: String,
    /// As it is.
    pub given: Length,
    /// The least.
    pub least: Length,
    /// True where it is kept.
    pub kept: bool,
    /// Where the least comes from.
    pub source: String,
    /// How sure that is.
    pub standing: Standing,
}

/// The distances of one fastener: edge in the metal (least, and that of full bearing), edge of the board, spacing.
pub(super) fn distances(diameter: Length, edge_metal: Length, edge_board: Length, spacing: Length) -> Vec<Distance> {
    const MANUAL: &str = "Aluminum Design Manual, from memory";
    let diameters = |count: f64| Length::nearest(diameter.nanometres() as f64 * count);
    let distance = |what: &str, given: Length, least: Length, source: &str, standing| Distance {
        what: what.into(),
        given,
        least,
        kept: given >= least,
        source: source.into(),
        standing,
    };
    let board = Length::nearest(PANEL_EDGE_LEAST * Unit::Inch.nanometres() as f64);
    vec![
        distance("edge in the metal, least", edge_metal, diameters(METAL_EDGE_LEAST), MANUAL, Standing::Memory),
        distance("edge in the metal, full bearing", edge_metal, diameters(METAL_EDGE_FULL), MANUAL, Standing::Memory),
        distance("edge of the board", edge_board, board, "APA E30 (2011)", Standing::Verified),
        distance("spacing", spacing, diameters(METAL_SPACING_LEAST), MANUAL, Standing::Memory),
    ]
}
