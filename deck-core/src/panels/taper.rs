//! A panel whose edges at seams follow members out of square.

use super::panel::Edge;
use crate::geometry::{Bounds, Path, Point, Side};
use crate::length::Length;
use serde::{Deserialize, Serialize};

/// How a panel's edges at seams run on the rectangle that it is sawn from: running figures from that rectangle's fore edge,
/// at the port and at the starboard end of the edge. An edge that is square has twice the same figure.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Taper {
    /// Of the fore edge, at its port end.
    pub fore_port: Length,
    /// Of the fore edge, at its starboard end.
    pub fore_starboard: Length,
    /// Of the aft edge, at its port end.
    pub aft_port: Length,
    /// Of the aft edge, at its starboard end.
    pub aft_starboard: Length,
}

impl Taper {
    /// Width at the port end, at the starboard end.
    pub fn widths(&self) -> [Length; 2] {
        [self.aft_port - self.fore_port, self.aft_starboard - self.fore_starboard]
    }

    /// True where both edges run the same way, so that the panel is as wide at both ends.
    pub fn is_even(&self) -> bool {
        let [port, starboard] = self.widths();
        port == starboard
    }
}

/// The taper of a panel; none where its edges at seams are square.
pub(super) fn taper(shape: &Path<Edge>, bounds: Bounds) -> Option<Taper> {
    // The sides of a patch are joints that run fore and aft: they make no panel tapered.
    let athwart = |side: &Side<Edge>, to: Point| side.arc.is_none() && side.from.y != to.y;
    let seams = || shape.walk().filter(|(side, to)| athwart(side, *to) && matches!(side.edge, Edge::Seam { .. }));
    if seams().all(|(side, to)| side.from.x == to.x) {
        return None;
    }
    // The inside is on the left: a fore edge is walked to port, an aft edge to starboard.
    let fore = seams().find(|(side, to)| to.y < side.from.y).map(|(side, to)| (to.x, side.from.x));
    let aft = seams().find(|(side, to)| to.y > side.from.y).map(|(side, to)| (side.from.x, to.x));
    let (fore, aft) = (fore.unwrap_or((bounds.fore, bounds.fore)), aft.unwrap_or((bounds.aft, bounds.aft)));
    let from = bounds.fore;
    Some(Taper {
        fore_port: fore.0 - from,
        fore_starboard: fore.1 - from,
        aft_port: aft.0 - from,
        aft_starboard: aft.1 - from,
    })
}
