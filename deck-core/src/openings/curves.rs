//! The lines and circles along which an opening that is moved just keeps a distance.
//!
//! # Method
//! A rectangle with rounded corners keeps a distance from a corner, a straight side or an arc where its middle lies outside
//! a shape that is bounded by straight lines and arcs of circles (their Minkowski sum). So the nearest place is either the
//! foot of the perpendicular on one of these, or where two of them cross. Derived here, no source.

use super::site::Site;
use crate::geometry::{Arc, Bounds, Point};
use crate::length::Length;

type P = (f64, f64);

/// A line or a circle in the plane of moves: aft and to starboard, in nanometres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Curve {
    /// Points (x, y) with `a x + b y = c`; (a, b) has length 1.
    Line(f64, f64, f64),
    /// A circle: middle, radius.
    Circle(P, f64),
}

impl Curve {
    /// The points of the curve nearest to no move at all.
    pub(super) fn feet(self) -> Vec<P> {
        match self {
            Curve::Line(a, b, c) => vec![(a * c, b * c)],
            Curve::Circle((x, y), radius) => {
                let far = (x * x + y * y).sqrt();
                if far == 0.0 {
                    return vec![(radius, 0.0), (-radius, 0.0), (0.0, radius), (0.0, -radius)];
                }
                [1.0 - radius / far, 1.0 + radius / far].map(|part| (x * part, y * part)).to_vec()
            }
        }
    }

    /// Where two curves cross or touch.
    pub(super) fn crossings(self, other: Curve) -> Vec<P> {
        match (self, other) {
            (Curve::Line(a, b, c), Curve::Line(d, e, f)) => {
                let across = a * e - b * d;
                // Below a billionth they are parallel: over the length of a boat they would meet beyond it.
                if across.abs() < 1e-9 {
                    Vec::new()
                } else {
                    vec![((c * e - b * f) / across, (a * f - c * d) / across)]
                }
            }
            (Curve::Line(a, b, c), Curve::Circle(middle, radius))
            | (Curve::Circle(middle, radius), Curve::Line(a, b, c)) => line_circle((a, b, c), middle, radius),
            (Curve::Circle(one, r), Curve::Circle(two, s)) => {
                let (dx, dy) = (two.0 - one.0, two.1 - one.1);
                let square = dx * dx + dy * dy;
                if square == 0.0 {
                    return Vec::new();
                }
                // The line through both crossings, square to the line through both middles.
                let far = square.sqrt();
                let along = (square + r * r - s * s) / (2.0 * far);
                let line = (dx / far, dy / far, (one.0 * dx + one.1 * dy) / far + along);
                line_circle(line, one, r)
            }
        }
    }
}

fn line_circle((a, b, c): (f64, f64, f64), (x, y): P, radius: f64) -> Vec<P> {
    let off = c - a * x - b * y;
    let half = radius * radius - off * off;
    // A touch may come out a little below zero.
    if half < -radius {
        return Vec::new();
    }
    let half = half.max(0.0).sqrt();
    let foot = (x + a * off, y + b * off);
    vec![(foot.0 - b * half, foot.1 + a * half), (foot.0 + b * half, foot.1 - a * half)]
}

/// Every curve on which the opening of a site just keeps a distance.
pub(super) fn curves(site: &Site<'_>) -> Vec<Curve> {
    let at = |length: Length| length.nanometres() as f64;
    let mut all = Vec::new();
    for &(low, high) in site.aft.intervals() {
        all.extend([low, high].map(|aft| Curve::Line(1.0, 0.0, aft as f64)));
    }
    for butt in &site.butts {
        let (own, aft, athwart) = (&site.bounds, |at| Curve::Line(1.0, 0.0, at), |at| Curve::Line(0.0, 1.0, at));
        all.extend([butt.fore - own.aft, butt.aft - own.fore].map(|move_by| aft(at(move_by))));
        all.extend([butt.port - own.starboard, butt.starboard - own.port].map(|move_by| athwart(at(move_by))));
    }
    for (other, least) in &site.others {
        around_corners(&corners(*other), &site.bounds, at(*least), &mut all);
    }
    let reach = at(site.reach);
    for (side, to) in site.outline.path().walk() {
        around_corners(&[side.from.floats()], &site.core, reach, &mut all);
        match side.arc {
            None => along_line(side.from, to, &site.core, reach, &mut all),
            Some(arc) => along_arc(&arc, &site.core, reach, &mut all),
        }
    }
    let mut kept: Vec<Curve> = Vec::with_capacity(all.len());
    for curve in all {
        if !kept.contains(&curve) {
            kept.push(curve);
        }
    }
    kept
}

fn corners(bounds: Bounds) -> [P; 4] {
    let point = |x: Length, y: Length| Point::new(x, y).floats();
    [
        point(bounds.fore, bounds.port),
        point(bounds.aft, bounds.port),
        point(bounds.aft, bounds.starboard),
        point(bounds.fore, bounds.starboard),
    ]
}

/// Moves by which a corner or an edge of the rectangle comes to lie at a distance from a point.
fn around_corners(points: &[P], rectangle: &Bounds, distance: f64, all: &mut Vec<Curve>) {
    let own = corners(*rectangle);
    for point in points {
        for corner in own {
            let (x, y) = (point.0 - corner.0, point.1 - corner.1);
            for off in [-distance, distance] {
                all.extend([Curve::Line(1.0, 0.0, x + off), Curve::Line(0.0, 1.0, y + off)]);
            }
            all.push(Curve::Circle((x, y), distance));
        }
    }
}

/// Moves by which a corner of the rectangle comes to lie at a distance from a straight side.
fn along_line(from: Point, to: Point, rectangle: &Bounds, distance: f64, all: &mut Vec<Curve>) {
    let (a, b) = (from.floats(), to.floats());
    let (dx, dy) = (b.0 - a.0, b.1 - a.1);
    let length = (dx * dx + dy * dy).sqrt();
    let (nx, ny) = (-dy / length, dx / length);
    for corner in corners(*rectangle) {
        let off = nx * (a.0 - corner.0) + ny * (a.1 - corner.1);
        all.extend([off - distance, off + distance].map(|c| Curve::Line(nx, ny, c)));
    }
}

/// Moves by which a corner of the rectangle comes to lie at a distance from an arc, or an edge of it from the arc's
/// outermost points.
fn along_arc(arc: &Arc, rectangle: &Bounds, distance: f64, all: &mut Vec<Curve>) {
    let (centre, radius) = (arc.centre.floats(), arc.radius.nanometres() as f64);
    for corner in corners(*rectangle) {
        let middle = (centre.0 - corner.0, centre.1 - corner.1);
        let radii = [radius - distance, radius + distance, distance - radius];
        all.extend(radii.into_iter().filter(|radius| *radius > 0.0).map(|radius| Curve::Circle(middle, radius)));
        for off in [-radius - distance, distance - radius, radius - distance, radius + distance] {
            all.extend([Curve::Line(1.0, 0.0, middle.0 + off), Curve::Line(0.0, 1.0, middle.1 + off)]);
        }
    }
}
