//! Lays closed paths of the model onto a sheet, arcs as arcs.

use crate::draw::figure::{Mapping, Path, Rect, Step};
use crate::frame::CrossMember;
use crate::geometry::{self, Bounds, CutLine, Point, Turn};
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

/// The flange of a member between two distances from the port edge of a deck of a beam, straight between where it was read.
pub(super) fn flange(
    mapping: &Mapping,
    member: &CrossMember,
    (port, starboard): (Length, Length),
    beam: Length,
) -> Path {
    let Some(skew) = member.skew else {
        return Path::rect(band(mapping, member.fore, member.aft, port, starboard));
    };
    let middle = beam / 2;
    // The half on whose side a point lies; beyond the sides it goes on straight.
    let moved = |y: Length| {
        let (slant, from) = if y < middle { (-skew.port, skew.port) } else { (skew.starboard, Length::ZERO) };
        let line = CutLine::slanted(from, slant, middle.max(Length::from_nanometres(1)));
        if y < middle { line.at(y) } else { line.at(y - middle) }
    };
    let mut places = vec![port, starboard];
    if port < middle && middle < starboard {
        places.insert(1, middle);
    }
    let edge = |x: Length, y: Length| mapping.point(x + moved(y), y);
    let fore = places.iter().map(|&y| edge(member.fore, y));
    let aft = places.iter().rev().map(|&y| edge(member.aft, y));
    Path::polygon(&fore.chain(aft).collect::<Vec<_>>())
}

/// A stretch athwart, from one station to another over the whole breadth.
pub(super) fn band(mapping: &Mapping, fore: Length, aft: Length, port: Length, starboard: Length) -> Rect {
    rect(mapping, Point::new(fore, port), Point::new(aft, starboard))
}
