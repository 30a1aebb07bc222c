//! Where fitted pieces meet, and the chain of lines and arcs that they make.

use super::circle::FitCircle;
use super::line::FitLine;
use super::pieces::{Piece, Shape};
use super::{JoinKind, TraceJoin};
use crate::survey::equation::{Place, dot, minus, plus, size, times, turned, unit};
use crate::survey::network::length;

/// A corner of a chain, and the arc from it to the next one.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::survey) struct Vertex {
    pub(in crate::survey) place: Place,
    pub(in crate::survey) arc: Option<Sweep>,
}

/// An arc of at most a half turn.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::survey) struct Sweep {
    pub(in crate::survey) radius: f64,
    /// True where it turns from aft to starboard.
    pub(in crate::survey) left: bool,
}

pub(super) struct Joined {
    pub(super) joins: Vec<TraceJoin>,
    pub(super) vertices: Vec<Vertex>,
}

pub(super) fn join(pieces: &[Piece], points: &[Place], tolerance: f64) -> Joined {
    let at = |index: usize| points.get(index).copied().unwrap_or_default();
    let mut joins = Vec::new();
    let mut ends = Vec::new();
    if let (Some(first), Some(last)) = (pieces.first(), pieces.last()) {
        ends.push(first.shape.foot(at(first.from)));
        for (one, next) in pieces.iter().zip(pieces.iter().skip(1)) {
            let (kind, place) = meeting(one, next, [at(one.to), at(next.from)], tolerance);
            joins.push(TraceJoin { kind, x: length(place[0]), y: length(place[1]) });
            ends.push(place);
        }
        ends.push(last.shape.foot(at(last.to)));
    }
    let mut vertices = Vec::new();
    for (index, piece) in pieces.iter().enumerate() {
        let (Some(&from), Some(&to)) = (ends.get(index), ends.get(index + 1)) else { continue };
        match piece.shape {
            Shape::Line(_) => vertices.push(Vertex { place: from, arc: None }),
            Shape::Circle(circle) => arcs(&circle, from, to, at(usize::midpoint(piece.from, piece.to)), &mut vertices),
        }
    }
    vertices.extend(ends.last().map(|&place| Vertex { place, arc: None }));
    Joined { joins, vertices }
}

/// Where two pieces meet, near the gap between the last point of the one and the first of the other.
fn meeting(one: &Piece, next: &Piece, gap: [Place; 2], tolerance: f64) -> (JoinKind, Place) {
    let middle = times(plus(gap[0], gap[1]), 0.5);
    let reach = 1.5 * size(minus(gap[1], gap[0])) + 4.0 * tolerance;
    let near = |place: Place| size(minus(place, middle)) <= reach;
    // Touching is looked for first: where two pieces touch, their crossings are ill told or are not there.
    let touch = touch(&one.shape, &next.shape, tolerance).filter(|place| near(*place));
    if let Some(place) = touch {
        return (JoinKind::Tangent, place);
    }
    let crossings = crossings(&one.shape, &next.shape).into_iter().filter(|place| near(*place));
    let nearest = crossings.min_by(|a, b| size(minus(*a, middle)).total_cmp(&size(minus(*b, middle))));
    let between = || times(plus(one.shape.foot(gap[0]), next.shape.foot(gap[1])), 0.5);
    nearest.map_or_else(|| (JoinKind::Between, between()), |place| (JoinKind::Corner, place))
}

fn touch(one: &Shape, other: &Shape, tolerance: f64) -> Option<Place> {
    match (one, other) {
        (Shape::Line(_), Shape::Line(_)) => None,
        (Shape::Line(line), Shape::Circle(circle)) | (Shape::Circle(circle), Shape::Line(line)) => {
            let apart = line.beside(circle.centre).abs() - circle.radius;
            (apart.abs() <= tolerance).then(|| line.foot(circle.centre))
        }
        (Shape::Circle(a), Shape::Circle(b)) => {
            let way = minus(b.centre, a.centre);
            let (apart, u) = (size(way), unit(way)?);
            let outside = apart - (a.radius + b.radius);
            let inside = apart - (a.radius - b.radius).abs();
            if outside.abs() <= tolerance {
                Some(plus(a.centre, times(u, a.radius)))
            } else if inside.abs() <= tolerance {
                let larger = if a.radius >= b.radius { 1.0 } else { -1.0 };
                Some(plus(a.centre, times(u, larger * a.radius)))
            } else {
                None
            }
        }
    }
}

fn crossings(one: &Shape, other: &Shape) -> Vec<Place> {
    match (one, other) {
        (Shape::Line(a), Shape::Line(b)) => lines(a, b).into_iter().collect(),
        (Shape::Line(line), Shape::Circle(circle)) | (Shape::Circle(circle), Shape::Line(line)) => {
            let foot = line.foot(circle.centre);
            let half = circle.radius * circle.radius - line.beside(circle.centre).powi(2);
            if half < 0.0 {
                return Vec::new();
            }
            let along = times(line.u, half.sqrt());
            vec![plus(foot, along), minus(foot, along)]
        }
        (Shape::Circle(a), Shape::Circle(b)) => circles(a, b),
    }
}

fn lines(a: &FitLine, b: &FitLine) -> Option<Place> {
    let sine = dot(turned(a.u), b.u);
    // Lines within a degree of each other cross nowhere that can be told.
    (sine.abs() > 0.0175).then(|| {
        let along = -b.beside(a.through) / dot(turned(b.u), a.u);
        plus(a.through, times(a.u, along))
    })
}

fn circles(a: &FitCircle, b: &FitCircle) -> Vec<Place> {
    let way = minus(b.centre, a.centre);
    let (apart, Some(u)) = (size(way), unit(way)) else { return Vec::new() };
    let along = (a.radius * a.radius - b.radius * b.radius + apart * apart) / (2.0 * apart);
    let half = a.radius * a.radius - along * along;
    if half < 0.0 {
        return Vec::new();
    }
    let (foot, aside) = (plus(a.centre, times(u, along)), times(turned(u), half.sqrt()));
    vec![plus(foot, aside), minus(foot, aside)]
}

/// An arc from one end to the other by way of a point; in two where it is near to a half turn or beyond.
fn arcs(circle: &FitCircle, from: Place, to: Place, by: Place, vertices: &mut Vec<Vertex>) {
    let left = cross(minus(by, from), minus(to, by)) > 0.0;
    let chord = minus(to, from);
    let middle = times(plus(from, to), 0.5);
    // The middle of the arc lies on the side of the chord on which its traced points are.
    let n = unit(turned(chord)).unwrap_or_default();
    let side = if left { -1.0 } else { 1.0 };
    let crown = plus(circle.centre, times(n, side * circle.radius));
    let is_wide = dot(minus(circle.centre, middle), n) * side > -0.25 * circle.radius;
    let sweep = |a: Place, b: Place| {
        // The ends are rounded later on: an arc never falls short of them.
        let least = size(minus(b, a)) / 2.0;
        Some(Sweep { radius: circle.radius.max(least * (1.0 + 1e-9)), left })
    };
    if is_wide {
        vertices.push(Vertex { place: from, arc: sweep(from, crown) });
        vertices.push(Vertex { place: crown, arc: sweep(crown, to) });
    } else {
        vertices.push(Vertex { place: from, arc: sweep(from, to) });
    }
}

fn cross(a: Place, b: Place) -> f64 {
    a[0] * b[1] - a[1] * b[0]
}
