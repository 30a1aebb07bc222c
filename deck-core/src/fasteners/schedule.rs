//! Which fastener, and at what distances.

use super::OldHole;
use crate::length::Length;
use serde::{Deserialize, Serialize};

/// A kind of fastener.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Fastener {
    /// What the shop calls it.
    pub kind: String,
    /// Diameter of its thread.
    pub diameter: Length,
    /// Length under the head, or over all where the head is flush.
    pub length: Length,
    /// Threads to the inch.
    pub threads_per_inch: u32,
    /// Length of its drill point.
    pub drill_point: Length,
}

impl Fastener {
    /// A fastener with 20 threads to the inch and no drill point.
    pub fn new(kind: impl Into<String>, diameter: Length, length: Length) -> Fastener {
        Fastener { kind: kind.into(), diameter, length, threads_per_inch: 20, drill_point: Length::ZERO }
    }
}

/// Spacings and distances, with the fastener they hold for.
#[derive(Debug, Clone, PartialEq, Eq)]
#[non_exhaustive]
pub struct Schedule {
    /// The fastener.
    pub fastener: Fastener,
    /// Greatest spacing along seams and the bow and stern edges.
    pub edge_spacing: Length,
    /// Greatest spacing along the members between.
    pub field_spacing: Length,
    /// Least distance from a fastener's middle to any edge of the board.
    pub edge_in_ply: Length,
    /// Least distance from a fastener's middle to any edge of the flange.
    pub edge_in_metal: Length,
    /// Distance from a row's first and last fastener to the board's end, along the row.
    pub end_distance: Length,
    /// Whether the row aft of a seam is staggered against the row forward of it.
    pub stagger: bool,
    /// Old holes in the members, of which fasteners keep clear.
    pub old_holes: Vec<OldHole>,
    /// Whether the fasteners are bolts that may go through an old hole again, where it lies on the row.
    pub reuse: bool,
}

impl Schedule {
    /// A schedule with both spacings, and every distance the same.
    pub fn new(fastener: Fastener, edge_spacing: Length, field_spacing: Length, distance: Length) -> Schedule {
        Schedule {
            fastener,
            edge_spacing,
            field_spacing,
            edge_in_ply: distance,
            edge_in_metal: distance,
            end_distance: distance,
            stagger: false,
            old_holes: Vec::new(),
            reuse: false,
        }
    }

    /// With edge distances in the board and in the flange.
    #[must_use]
    pub fn edges(mut self, in_ply: Length, in_metal: Length) -> Schedule {
        self.edge_in_ply = in_ply;
        self.edge_in_metal = in_metal;
        self
    }

    /// With another end distance.
    #[must_use]
    pub fn end_distance(mut self, distance: Length) -> Schedule {
        self.end_distance = distance;
        self
    }

    /// Staggered across seams, or not.
    #[must_use]
    pub fn stagger(mut self, stagger: bool) -> Schedule {
        self.stagger = stagger;
        self
    }

    /// Keeping clear of old holes.
    #[must_use]
    pub fn old_holes(mut self, holes: Vec<OldHole>) -> Schedule {
        self.old_holes = holes;
        self
    }

    /// Of bolts that may go through old holes again, or not.
    #[must_use]
    pub fn reuse(mut self, reuse: bool) -> Schedule {
        self.reuse = reuse;
        self
    }
}
