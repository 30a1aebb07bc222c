//! A tape for paths: distances, areas and stretches from corners, centres and radii, in floating point.
//!
//! Figures are nanometres as `f64`: a deck has ten digits, so that squares keep their nanometre. Areas and stretches
//! take arcs as [`CHORDS`] chords.

use deck_core::Length;
use deck_core::geometry::{Path, Point, Turn};

/// A point in nanometres.
pub type P = (f64, f64);

/// Chords to an arc. The chords of a half turn of 24 in then lie within 50 nm of it.
pub const CHORDS: u32 = 4096;

/// A side of a path.
#[derive(Debug, Clone, Copy)]
pub enum Piece {
    /// A straight one.
    Line(P, P),
    /// Centre, radius, ends, and true where it turns left.
    Arc(P, f64, P, P, bool),
}

/// A length as a floating-point count of nanometres.
pub fn nm(length: Length) -> f64 {
    length.nanometres() as f64
}

fn point(point: Point) -> P {
    (nm(point.x), nm(point.y))
}

/// The sides of a path.
pub fn pieces<T: Copy>(path: &Path<T>) -> Vec<Piece> {
    path.walk()
        .map(|(side, to)| match side.arc {
            None => Piece::Line(point(side.from), point(to)),
            Some(arc) => {
                Piece::Arc(point(arc.centre), nm(arc.radius), point(side.from), point(to), arc.turn == Turn::Left)
            }
        })
        .collect()
}

/// The angle from one direction to another, walked left or right, from 0 to 2π.
fn sweep(centre: P, from: P, to: P, left: bool) -> f64 {
    let angle = |p: P| (p.1 - centre.1).atan2(p.0 - centre.0);
    let turned = if left { angle(to) - angle(from) } else { angle(from) - angle(to) };
    turned.rem_euclid(std::f64::consts::TAU)
}

fn between(a: P, b: P) -> f64 {
    (a.0 - b.0).hypot(a.1 - b.1)
}

impl Piece {
    /// The distance of a point.
    pub fn distance(&self, p: P) -> f64 {
        match *self {
            Piece::Line(a, b) => {
                let (dx, dy) = (b.0 - a.0, b.1 - a.1);
                let along = ((p.0 - a.0) * dx + (p.1 - a.1) * dy) / (dx * dx + dy * dy);
                let t = along.clamp(0.0, 1.0);
                between(p, (a.0 + t * dx, a.1 + t * dy))
            }
            Piece::Arc(centre, radius, from, to, left) => {
                let ends = between(p, from).min(between(p, to));
                let abreast = sweep(centre, from, p, left) <= sweep(centre, from, to, left);
                if abreast { (between(p, centre) - radius).abs().min(ends) } else { ends }
            }
        }
    }

    /// Points along it, its end left out.
    fn points(&self) -> Vec<P> {
        match *self {
            Piece::Line(a, _) => vec![a],
            Piece::Arc(centre, radius, from, to, left) => {
                let turn = sweep(centre, from, to, left) * if left { 1.0 } else { -1.0 };
                let start = (from.1 - centre.1).atan2(from.0 - centre.0);
                let at = |k: u32| {
                    let angle = start + turn * f64::from(k) / f64::from(CHORDS);
                    (centre.0 + radius * angle.cos(), centre.1 + radius * angle.sin())
                };
                std::iter::once(from).chain((1..CHORDS).map(at)).collect()
            }
        }
    }
}

/// The closed polygon of a path.
pub fn polygon(pieces: &[Piece]) -> Vec<P> {
    pieces.iter().flat_map(Piece::points).collect()
}

/// The least distance of a point from the sides.
pub fn distance(pieces: &[Piece], p: P) -> f64 {
    pieces.iter().map(|piece| piece.distance(p)).fold(f64::INFINITY, f64::min)
}

fn edges(polygon: &[P]) -> impl Iterator<Item = (P, P)> {
    polygon.iter().copied().zip(polygon.iter().copied().cycle().skip(1))
}

/// Where a line athwart crosses a polygon, from port to starboard.
pub fn crossings(polygon: &[P], x: f64) -> Vec<f64> {
    let crossing = |(a, b): (P, P)| ((a.0 <= x) != (b.0 <= x)).then(|| a.1 + (b.1 - a.1) * (x - a.0) / (b.0 - a.0));
    let mut found: Vec<f64> = edges(polygon).filter_map(crossing).collect();
    found.sort_by(f64::total_cmp);
    found
}

/// The stretches of a line athwart inside a polygon.
pub fn stretches(polygon: &[P], x: f64) -> Vec<(f64, f64)> {
    crossings(polygon, x).chunks_exact(2).map(|pair| (pair[0], pair[1])).collect()
}

/// True where a point lies inside a polygon.
pub fn inside(polygon: &[P], p: P) -> bool {
    crossings(polygon, p.0).iter().filter(|y| **y < p.1).count() % 2 == 1
}

/// The area of a polygon, above zero either way round.
pub fn area(polygon: &[P]) -> f64 {
    // Taken from the first corner, so that products keep their digits.
    let Some(&(x, y)) = polygon.first() else { return 0.0 };
    let cross = |(a, b): (P, P)| (a.0 - x) * (b.1 - y) - (b.0 - x) * (a.1 - y);
    (edges(polygon).map(cross).sum::<f64>() / 2.0).abs()
}

/// The area within sides, arcs counted as arcs: half the integral of x dy − y dx along each.
pub fn area_of(sides: &[Piece]) -> f64 {
    let Some(Piece::Line(first, _) | Piece::Arc(_, _, first, ..)) = sides.first() else { return 0.0 };
    let part = |side: &Piece| match *side {
        Piece::Line(a, b) => (a.0 - first.0) * (b.1 - first.1) - (b.0 - first.0) * (a.1 - first.1),
        Piece::Arc(c, radius, a, b, left) => {
            let turn = sweep(c, a, b, left) * if left { 1.0 } else { -1.0 };
            radius * radius * turn + (c.0 - first.0) * (b.1 - a.1) - (c.1 - first.1) * (b.0 - a.0)
        }
    };
    (sides.iter().map(part).sum::<f64>() / 2.0).abs()
}

/// What lies of a polygon between two stations. Parts that fall asunder stay joined along the cut, which adds no area.
pub fn strip(polygon: &[P], fore: f64, aft: f64) -> Vec<P> {
    half(&half(polygon, fore, |x| x >= fore), aft, |x| x <= aft)
}

fn half(polygon: &[P], line: f64, keeps: impl Fn(f64) -> bool) -> Vec<P> {
    let mut kept = Vec::new();
    for (a, b) in edges(polygon) {
        if keeps(a.0) {
            kept.push(a);
        }
        if keeps(a.0) != keeps(b.0) {
            kept.push((line, a.1 + (b.1 - a.1) * (line - a.0) / (b.0 - a.0)));
        }
    }
    kept
}
