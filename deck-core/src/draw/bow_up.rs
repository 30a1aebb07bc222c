//! Lays the deck or a panel onto the sheet with the bow up and port at the left.

use crate::draw::figure::{Direction, Mapping, Point, Rect, Scale};
use crate::length::{Length, Unit};

/// A mapping of full size from the sheet's corner: for figures whose extent is asked before their place is known.
pub(super) const UNPLACED: Mapping =
    Mapping { scale: Scale::one_to(1), origin: Point::new(0, 0), right: Direction::Y, down: Direction::X };

/// The largest usual scale at which something of that extent, athwart and fore and aft, fits the room; it lies in the
/// middle of the room's width and at its top. The second is where it lies.
pub(super) fn fitted(room: Rect, size: (Length, Length), unit: Unit) -> (Mapping, Rect) {
    let scale = Scale::fitting(size, (room.width(), room.height()), unit);
    let (width, height) = (scale.on_paper(size.0), scale.on_paper(size.1));
    let origin = Point::new(room.left + (room.width() - width) / 2, room.top);
    (Mapping { scale, origin, ..UNPLACED }, Rect::spanning(origin, origin.moved(width, height)))
}
