//! Cuts a path by lines along the boat: the same as by lines athwart, with the two coordinates changed over.

use super::path::opposite;
use super::{Arc, Limit, Path, Point, Side};
use crate::length::Length;

fn changed(point: Point) -> Point {
    Point::new(point.y, point.x)
}

impl<T: Copy> Path<T> {
    /// The path with `x` and `y` changed over: a mirror image, walked so that its inside is on the left again.
    fn changed_over(&self) -> Path<T> {
        let sides = self.sides().iter().map(|side| Side {
            from: changed(side.from),
            arc: side.arc.map(|arc| Arc { centre: changed(arc.centre), radius: arc.radius, turn: opposite(arc.turn) }),
            edge: side.edge,
        });
        Path::as_walked(sides.collect()).reversed()
    }

    /// The parts of the path between two distances from the port edge, from port to starboard and then from the bow.
    ///
    /// New edges along the cuts carry the marks that are given with them; a distance of `None` does not cut.
    pub fn lane(&self, port: Option<(Length, T)>, starboard: Option<(Length, T)>) -> Vec<Path<T>> {
        if port.is_none() && starboard.is_none() {
            return vec![self.clone()];
        }
        let mut parts: Vec<Path<T>> =
            self.changed_over().strip(port, starboard).iter().map(Path::changed_over).collect();
        parts.sort_by_key(|part| {
            let bounds = part.bounds();
            (bounds.port, bounds.fore, bounds.aft)
        });
        parts
    }

    /// The stretches of `x` inside the path on a line along the boat, from the bow: both just to port of `port` and just
    /// to starboard of `starboard`.
    pub fn stretches(&self, port: Length, starboard: Length) -> Vec<(Length, Length)> {
        let over = self.changed_over();
        let (one, other) = (over.breadths(port, Limit::Fore), over.breadths(starboard, Limit::Aft));
        let common = one.iter().flat_map(|a| other.iter().map(|b| (a.0.max(b.0), a.1.min(b.1))));
        let mut common: Vec<(Length, Length)> = common.filter(|(fore, aft)| fore < aft).collect();
        common.sort_unstable();
        common
    }
}
