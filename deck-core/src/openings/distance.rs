//! How near a rectangle comes to a path of lines and arcs.
//!
//! # Method
//! A rectangle with rounded corners is its core grown by their radius. The distance of the core from a straight side is
//! that of a corner of the one from the other; from an arc it is that of an end, of an outermost point, or along a ray from
//! the arc's middle through a corner of the core. Square roots only, so that every machine rounds alike; the answer is right
//! to the nanometre.

use crate::geometry::{Arc, Bounds, Limit, Path, Point, Turn};
use crate::length::Length;

type P = (f64, f64);

/// The least distance of a rectangle from the sides of a path, to the nearest nanometre; zero where they meet.
pub(super) fn from_sides<T: Copy>(path: &Path<T>, rectangle: Bounds) -> Length {
    let core = Core::new(rectangle);
    let least = path.walk().map(|(side, to)| core.off_side(side.from, to, side.arc)).fold(f64::INFINITY, f64::min);
    Length::nearest(least)
}

/// True where a point lies within a path.
pub(super) fn encloses<T: Copy>(path: &Path<T>, point: Point) -> bool {
    path.breadths(point.x, Limit::Aft).iter().any(|(port, starboard)| *port <= point.y && point.y <= *starboard)
}

struct Core {
    fore: f64,
    aft: f64,
    port: f64,
    starboard: f64,
}

impl Core {
    fn new(bounds: Bounds) -> Core {
        let at = |length: Length| length.nanometres() as f64;
        Core { fore: at(bounds.fore), aft: at(bounds.aft), port: at(bounds.port), starboard: at(bounds.starboard) }
    }

    fn corners(&self) -> [P; 4] {
        [(self.fore, self.port), (self.aft, self.port), (self.aft, self.starboard), (self.fore, self.starboard)]
    }

    fn off_side(&self, from: Point, to: Point, arc: Option<Arc>) -> f64 {
        let (a, b) = (from.floats(), to.floats());
        match arc {
            None => self.off_line(a, b),
            Some(arc) => self.off_arc(&arc, a, b),
        }
    }

    fn off_point(&self, (x, y): P) -> f64 {
        let (dx, dy) = ((self.fore - x).max(x - self.aft).max(0.0), (self.port - y).max(y - self.starboard).max(0.0));
        root(dx * dx + dy * dy)
    }

    fn off_line(&self, a: P, b: P) -> f64 {
        if self.is_crossed(a, b) {
            return 0.0;
        }
        let ends = self.off_point(a).min(self.off_point(b));
        self.corners().into_iter().map(|corner| point_to_line(corner, a, b)).fold(ends, f64::min)
    }

    /// True where a straight side has a point in the rectangle: it is clipped by each edge in turn.
    fn is_crossed(&self, a: P, b: P) -> bool {
        let (dx, dy) = (b.0 - a.0, b.1 - a.1);
        let mut span = (0.0_f64, 1.0_f64);
        let cuts = [(-dx, a.0 - self.fore), (dx, self.aft - a.0), (-dy, a.1 - self.port), (dy, self.starboard - a.1)];
        for (rate, room) in cuts {
            if rate == 0.0 {
                if room < 0.0 {
                    return false;
                }
            } else if rate < 0.0 {
                span.0 = span.0.max(room / rate);
            } else {
                span.1 = span.1.min(room / rate);
            }
        }
        span.0 <= span.1
    }

    fn off_arc(&self, arc: &Arc, a: P, b: P) -> f64 {
        let (centre, radius) = (arc.centre.floats(), arc.radius.nanometres() as f64);
        let on_arc = |point: P| within_sector(centre, arc.turn, a, b, point);
        if self.meets_circle(centre, radius).into_iter().any(on_arc) {
            return 0.0;
        }
        let ends = self.off_point(a).min(self.off_point(b));
        let outermost = [(radius, 0.0), (-radius, 0.0), (0.0, radius), (0.0, -radius)];
        let outermost = outermost.map(|(dx, dy)| (centre.0 + dx, centre.1 + dy));
        let from_outermost = outermost.into_iter().filter(|point| on_arc(*point)).map(|point| self.off_point(point));
        let from_corners = self.corners().into_iter().filter(|corner| on_arc(*corner));
        let from_corners = from_corners.map(|corner| (between(corner, centre) - radius).abs());
        from_outermost.chain(from_corners).fold(ends, f64::min)
    }

    /// Where the edges of the rectangle meet a circle.
    fn meets_circle(&self, (cx, cy): P, radius: f64) -> Vec<P> {
        let mut points = Vec::new();
        for x in [self.fore, self.aft] {
            let rise = root(radius * radius - (x - cx) * (x - cx));
            let within = |y: &f64| self.port <= *y && *y <= self.starboard;
            points.extend([cy - rise, cy + rise].into_iter().filter(within).map(|y| (x, y)));
        }
        for y in [self.port, self.starboard] {
            let run = root(radius * radius - (y - cy) * (y - cy));
            let within = |x: &f64| self.fore <= *x && *x <= self.aft;
            points.extend([cx - run, cx + run].into_iter().filter(within).map(|x| (x, y)));
        }
        points
    }
}

/// Not a number below zero, so that nothing lies within any bounds there.
fn root(square: f64) -> f64 {
    square.sqrt()
}

fn between(a: P, b: P) -> f64 {
    root((a.0 - b.0) * (a.0 - b.0) + (a.1 - b.1) * (a.1 - b.1))
}

fn point_to_line(p: P, a: P, b: P) -> f64 {
    let (dx, dy) = (b.0 - a.0, b.1 - a.1);
    let along = ((p.0 - a.0) * dx + (p.1 - a.1) * dy) / (dx * dx + dy * dy);
    let along = along.clamp(0.0, 1.0);
    between(p, (a.0 + along * dx, a.1 + along * dy))
}

/// True where a ray from the middle of an arc of at most a half turn to a point passes the arc.
fn within_sector(centre: P, turn: Turn, a: P, b: P, point: P) -> bool {
    let (first, last) = if turn == Turn::Left { (a, b) } else { (b, a) };
    let cross =
        |one: P, other: P| (one.0 - centre.0) * (other.1 - centre.1) - (one.1 - centre.1) * (other.0 - centre.0);
    cross(first, point) >= 0.0 && cross(point, last) >= 0.0
}
