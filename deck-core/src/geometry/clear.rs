//! Where on a line athwart a point keeps its distance from a path.

use super::{Arc, Path, Point, Turn};
use crate::length::Length;

impl<T: Copy> Path<T> {
    /// The stretches of `y` at a station that lie nearer to the path's sides than `distance`, merged and in order.
    ///
    /// The ends of a stretch lie at the distance itself. Beside straight fore-and-aft sides they are exact; beside
    /// slanted sides and arcs they are rounded away from the side, to the nanometre.
    pub fn near(&self, x: Length, distance: Length) -> Vec<(Length, Length)> {
        let line = Line { x: x.nanometres() as f64, distance: distance.nanometres() as f64 };
        let mut blocked: Vec<(f64, f64)> = Vec::new();
        for (side, to) in self.walk() {
            match &side.arc {
                None => blocked.extend(line.near_segment(side.from, to)),
                Some(arc) => line.near_arc(arc, side.from, to, &mut blocked),
            }
        }
        blocked.sort_by(|a, b| a.0.total_cmp(&b.0));
        merge(&blocked)
    }
}

fn merge(sorted: &[(f64, f64)]) -> Vec<(Length, Length)> {
    let mut merged: Vec<(Length, Length)> = Vec::new();
    for &(low, high) in sorted {
        let (low, high) = (Length::nearest(low.floor()), Length::nearest(high.ceil()));
        match merged.last_mut() {
            Some(last) if low <= last.1 => last.1 = last.1.max(high),
            _ => merged.push((low, high)),
        }
    }
    merged
}

/// A line athwart, and the distance to keep.
struct Line {
    x: f64,
    distance: f64,
}

impl Line {
    fn near_point(&self, (px, py): (f64, f64)) -> Option<(f64, f64)> {
        let dx = self.x - px;
        let rise = (self.distance * self.distance - dx * dx).sqrt();
        // Not a number where the line passes the point at a greater distance.
        (rise > 0.0).then_some((py - rise, py + rise))
    }

    /// The points near a straight side form a convex shape, so they are one stretch: that of its round ends and of the
    /// band between them.
    fn near_segment(&self, from: Point, to: Point) -> Option<(f64, f64)> {
        let (a, b) = (from.floats(), to.floats());
        // On a line at the very distance from a side athwart, every point keeps it.
        if self.x <= a.0.min(b.0) - self.distance || self.x >= a.0.max(b.0) + self.distance {
            return None;
        }
        let (dx, dy) = (b.0 - a.0, b.1 - a.1);
        let length = dx.hypot(dy);
        let (nx, ny) = (-dy / length * self.distance, dx / length * self.distance);
        let band = [(a.0 + nx, a.1 + ny), (b.0 + nx, b.1 + ny), (b.0 - nx, b.1 - ny), (a.0 - nx, a.1 - ny)];
        let mut hull: Option<(f64, f64)> = None;
        let ends = [self.near_point(a), self.near_point(b)];
        let edges = (0..4).map(|k| self.crossing(band[k], band[(k + 1) % 4]));
        for (low, high) in ends.into_iter().chain(edges).flatten() {
            let (least, most) = hull.unwrap_or((low, high));
            hull = Some((least.min(low), most.max(high)));
        }
        hull.filter(|(low, high)| low < high)
    }

    /// Where the line crosses a straight edge of the band. At either end of the edge the line only touches the band, which
    /// is the distance itself and not nearer.
    fn crossing(&self, a: (f64, f64), b: (f64, f64)) -> Option<(f64, f64)> {
        let (low, high) = (a.0.min(b.0), a.0.max(b.0));
        if self.x <= low || self.x >= high {
            return None;
        }
        let y = a.1 + (b.1 - a.1) * (self.x - a.0) / (b.0 - a.0);
        Some((y, y))
    }

    /// Near an arc is near one of its ends, or within its angle and between two circles.
    fn near_arc(&self, arc: &Arc, from: Point, to: Point, blocked: &mut Vec<(f64, f64)>) {
        blocked.extend(self.near_point(from.floats()));
        blocked.extend(self.near_point(to.floats()));
        let Some((low, high)) = self.within_angle(arc, from, to) else { return };
        let (cx, cy) = arc.centre.floats();
        let (radius, dx) = (arc.radius.nanometres() as f64, self.x - cx);
        let rise = |reach: f64| (reach * reach - dx * dx).max(0.0).sqrt();
        let outer = radius + self.distance;
        if dx.abs() >= outer {
            return;
        }
        let inner = rise((radius - self.distance).max(0.0));
        let outer = rise(outer);
        for (start, end) in [(cy - outer, cy - inner), (cy + inner, cy + outer)] {
            let (start, end) = (start.max(low), end.min(high));
            if start < end {
                blocked.push((start, end));
            }
        }
    }

    /// The stretch of the line that lies within the arc's angle, seen from its centre.
    fn within_angle(&self, arc: &Arc, from: Point, to: Point) -> Option<(f64, f64)> {
        let (first, last) = if arc.turn == Turn::Left { (from, to) } else { (to, from) };
        let (cx, cy) = arc.centre.floats();
        let mut span = (f64::NEG_INFINITY, f64::INFINITY);
        // Left of the ray to the first end, right of the ray to the last: two half planes, as the arc is a half turn
        // at most.
        for (end, side) in [(first, 1.0), (last, -1.0)] {
            let (rx, ry) = (end.floats().0 - cx, end.floats().1 - cy);
            // side · (rx · (y − cy) − ry · (x − cx)) ≥ 0
            let slope = side * rx;
            let offset = side * ry * (self.x - cx);
            if slope > 0.0 {
                span.0 = span.0.max(cy + offset / slope);
            } else if slope < 0.0 {
                span.1 = span.1.min(cy + offset / slope);
            } else if offset > 0.0 {
                return None;
            }
        }
        (span.0 < span.1).then_some(span)
    }
}
