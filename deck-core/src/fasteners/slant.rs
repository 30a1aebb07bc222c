//! Rows on members out of square: the member's chord and all that lies on it are moved until the chord lies athwart.

use crate::frame::CrossMember;
use crate::geometry::{CutLine, Path};
use crate::length::Length;
use crate::panels::Panel;
use serde::{Deserialize, Serialize};

/// Where a row that follows a member out of square crosses the deck's sides.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct RowSlant {
    /// Its station at the deck's port edge.
    pub port: Length,
    /// Its station at the starboard edge.
    pub starboard: Length,
}

/// A panel and a member as they lie when the member's chord is level.
pub(super) struct Level {
    pub(super) panel: Panel,
    pub(super) member: CrossMember,
    /// The panel's fore and aft edge where they come furthest in.
    pub(super) edges: (Length, Length),
    out: Length,
}

impl Level {
    /// None on a member that was not measured at its ends.
    pub(super) fn new(panel: &Panel, member: &CrossMember, beam: Length) -> Option<Level> {
        let out = member.skew?.out;
        let chord = CutLine::slanted(member.centre() - out / 2, out, beam);
        let mut level = panel.clone();
        level.shape = panel.shape.unslanted(&chord);
        level.bounds = level.shape.bounds();
        for opening in &mut level.openings {
            opening.shape = opening.shape.unslanted(&chord);
            opening.bounds = opening.shape.bounds();
        }
        let (fore, aft) = member.under_edge(true);
        let member = CrossMember { fore, aft, skew: None, ..member.clone() };
        let edges = edges(&level.shape);
        Some(Level { panel: level, member, edges, out })
    }

    /// Where a row at a station of the centreline crosses the deck's sides.
    pub(super) fn slant(&self, station: Length) -> RowSlant {
        let port = station - self.out / 2;
        RowSlant { port, starboard: port + self.out }
    }
}

/// Of the edges that run nearly athwart and reach furthest forward and aft: how far in they come.
fn edges<T: Copy>(shape: &Path<T>) -> (Length, Length) {
    let bounds = shape.bounds();
    let athwart = shape.walk().filter(|(side, to)| {
        let (along, across) = ((to.x - side.from.x).abs(), (to.y - side.from.y).abs());
        side.arc.is_none() && across > along * 4
    });
    let (mut fore, mut aft) = (bounds.fore, bounds.aft);
    for (side, to) in athwart {
        let (low, high) = (side.from.x.min(to.x), side.from.x.max(to.x));
        if low == bounds.fore {
            fore = fore.max(high);
        }
        if high == bounds.aft {
            aft = aft.min(low);
        }
    }
    (fore, aft)
}
