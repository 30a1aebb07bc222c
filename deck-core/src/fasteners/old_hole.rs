//! Holes that the old deck left in the members.

use super::divide::Blocked;
use crate::length::Length;
use crate::math::floor_root;
use serde::{Deserialize, Serialize};

/// A hole in a member's flange. A new screw keeps clear of it; a bolt may go through it again.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct OldHole {
    /// Number of the member, from the bow.
    pub member: usize,
    /// Station of its middle.
    pub x: Length,
    /// Distance of its middle from the port edge.
    pub y: Length,
    /// Its diameter.
    pub diameter: Length,
    /// Least distance from its middle to that of a new fastener.
    pub clear: Length,
}

impl OldHole {
    /// A hole of which new fasteners keep that distance, middle to middle.
    pub fn new(member: usize, x: Length, y: Length, diameter: Length, clear: Length) -> OldHole {
        OldHole { member, x, y, diameter, clear }
    }

    /// The stretch of a row at a station in which a fastener would lie nearer than allowed; its ends are free.
    pub(super) fn blocks(&self, station: Length) -> Option<Blocked> {
        let square = |length: Length| i128::from(length.nanometres()).pow(2);
        let left = square(self.clear) - square(station - self.x);
        if left <= 0 {
            return None;
        }
        let root = floor_root(left);
        // Rounded away from the hole, so that the ends keep the distance.
        let reach = Length::saturating(if root * root == left { root } else { root + 1 });
        Some((self.y - reach, self.y + reach))
    }

    /// True where a bolt of a diameter in a row at a station can go through the hole as it is.
    pub(super) fn takes(&self, station: Length, bolt: Length) -> bool {
        self.x == station && self.diameter >= bolt
    }
}

/// What a row did to keep clear of old holes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[non_exhaustive]
pub struct AroundHoles {
    /// Old holes that lie within reach of the row.
    pub holes: usize,
    /// Fasteners that do not lie where the even division has them.
    pub moved: usize,
    /// Fasteners more than the even division has.
    pub added: usize,
    /// Fasteners left out because no place within the row keeps its distances.
    pub dropped: usize,
    /// Bolts that go through an old hole again.
    pub reused: usize,
    /// How far fasteners were moved in all: the least that there is with that many fasteners.
    pub shift: Length,
    /// How far the one that moved most was moved.
    pub greatest_shift: Length,
    /// True where the row is mirrored about the centreline.
    pub mirrored: bool,
}
