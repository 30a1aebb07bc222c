//! Lays closed paths of the model onto a sheet, arcs as arcs.

use crate::draw::figure::{Mapping, Path, Rect, Step};
use crate::geometry::{self, Bounds, Point, Turn};
use crate::length::Length;

/// A closed path of the model as it lies on the sheet.
pub(super) fn path<T: Copy>(mapping: &Mapping, model: &geometry::Path<T>) -> Path {
    let Some(first) = model.sides().first() else {
        return Path::default();
    };
    let steps = model.walk().map(|(side, to)| {
        let end = mapping.point(to.x, to.y);
        match side.arc {
            None => Step::Line(end),
            // A left turn goes from x to y; an arc of the model is a half turn at most.
            Some(arc) => Step::Arc {
                to: end,
                radius: mapping.length(arc.radius),
                large: false,
                clockwise: (arc.turn == Turn::Left) == mapping.keeps_clockwise(),
            },
        }
    });
    Path::closed(mapping.point(first.from.x, first.from.y), steps.collect())
}

/// A rectangle of the model as it lies on the sheet.
pub(super) fn rect(mapping: &Mapping, fore_port: Point, aft_starboard: Point) -> Rect {
    Rect::spanning(mapping.point(fore_port.x, fore_port.y), mapping.point(aft_starboard.x, aft_starboard.y))
}

/// The rectangle around a path of the model as it lies on the sheet.
pub(super) fn bounds(mapping: &Mapping, bounds: &Bounds) -> Rect {
    rect(mapping, Point::new(bounds.fore, bounds.port), Point::new(bounds.aft, bounds.starboard))
}

/// A stretch athwart, from one station to another over the whole breadth.
pub(super) fn band(mapping: &Mapping, fore: Length, aft: Length, port: Length, starboard: Length) -> Rect {
    rect(mapping, Point::new(fore, port), Point::new(aft, starboard))
}
