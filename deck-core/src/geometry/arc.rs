//! Arcs of circles up to a half turn.

use super::Point;
use crate::length::Length;
use crate::math::nearest_root;
use serde::{Deserialize, Serialize};

/// The way an arc turns as it is walked.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Turn {
    /// To the left: the arc bulges out of a path whose inside is on the left.
    Left,
    /// To the right: the arc bulges into it.
    Right,
}

/// An arc of at most a half turn between the ends of a path's side.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Arc {
    /// The middle of its circle, to the nearest nanometre.
    pub centre: Point,
    /// The radius as measured or asked for.
    pub radius: Length,
    /// The way it turns.
    pub turn: Turn,
}

impl Arc {
    /// The arc of a radius from one point to another.
    ///
    /// `None` where the radius is less than half the distance of the points, so that no circle reaches both.
    ///
    /// # Method
    /// The centre lies on the chord's perpendicular bisector at `√(r² − (c/2)²)`, rounded to the nearest nanometre.
    pub fn through(from: Point, to: Point, radius: Length, turn: Turn) -> Option<Arc> {
        let (ax, ay) = from.floats();
        let (bx, by) = to.floats();
        let (dx, dy) = (bx - ax, by - ay);
        let chord = dx.hypot(dy);
        let r = radius.nanometres() as f64;
        // A nanometre of grace: a semicircle's chord is rounded like every length.
        if chord == 0.0 || chord > 2.0 * r + 1.0 {
            return None;
        }
        let rise = (r * r - chord * chord / 4.0).max(0.0).sqrt();
        let side = if turn == Turn::Left { 1.0 } else { -1.0 };
        let centre =
            Point::nearest(ax.midpoint(bx) - side * rise * dy / chord, ay.midpoint(by) + side * rise * dx / chord);
        Some(Arc { centre, radius, turn })
    }

    /// `y` at a station within the circle: on its starboard half, or on its port half.
    pub(super) fn y_at(&self, x: Length, starboard_half: bool) -> Length {
        let dx = i128::from((x - self.centre.x).nanometres());
        let r = i128::from(self.radius.nanometres());
        let rise = Length::saturating(nearest_root(r * r - dx * dx));
        if starboard_half { self.centre.y + rise } else { self.centre.y - rise }
    }

    /// The angle that the arc sweeps between two points of it, in radians, from 0 to π.
    pub(super) fn sweep(&self, from: Point, to: Point) -> f64 {
        let half_chord = from.distance(to).nanometres() as f64 / 2.0;
        2.0 * (half_chord / self.radius.nanometres() as f64).min(1.0).asin()
    }

    /// Area between the arc and its chord, in square nanometres.
    pub(super) fn segment(&self, from: Point, to: Point) -> f64 {
        let r = self.radius.nanometres() as f64;
        let sweep = self.sweep(from, to);
        r * r / 2.0 * (sweep - sweep.sin())
    }

    /// Where the arc from one point to another turns back in `x`: where its tangent runs athwart. At most one point.
    pub(super) fn extreme(&self, from: Point, to: Point) -> Option<Point> {
        [self.radius, -self.radius]
            .map(|reach| Point::new(self.centre.x + reach, self.centre.y))
            .into_iter()
            .find(|&point| point != from && point != to && self.covers(from, to, point))
    }

    /// The points furthest in `x` and in `y` that lie strictly between the ends.
    pub(super) fn extremes(&self, from: Point, to: Point) -> Vec<Point> {
        let (c, r) = (self.centre, self.radius);
        [(c.x + r, c.y), (c.x - r, c.y), (c.x, c.y + r), (c.x, c.y - r)]
            .map(|(x, y)| Point::new(x, y))
            .into_iter()
            .filter(|&point| point != from && point != to && self.covers(from, to, point))
            .collect()
    }

    /// The point half-way along the arc.
    pub(super) fn middle(&self, from: Point, to: Point) -> Point {
        let (cx, cy) = self.centre.floats();
        let (fx, fy) = from.floats();
        let half = self.sweep(from, to) / 2.0;
        let angle = (fy - cy).atan2(fx - cx) + if self.turn == Turn::Left { half } else { -half };
        let r = self.radius.nanometres() as f64;
        Point::nearest(cx + r * angle.cos(), cy + r * angle.sin())
    }

    /// True where a point of the circle lies between the ends, or is one of them.
    pub(super) fn passes(&self, from: Point, to: Point, point: Point) -> bool {
        point == from || point == to || self.covers(from, to, point)
    }

    /// True where a point of the circle lies strictly between the ends: on the arc's side of the chord.
    fn covers(&self, from: Point, to: Point, point: Point) -> bool {
        let cross = |a: Point, b: Point, c: Point| {
            let (ux, uy) = ((b.x - a.x).nanometres(), (b.y - a.y).nanometres());
            let (vx, vy) = ((c.x - a.x).nanometres(), (c.y - a.y).nanometres());
            i128::from(ux) * i128::from(vy) - i128::from(uy) * i128::from(vx)
        };
        let side = cross(from, to, point);
        // A left turn runs to the right of its chord.
        if self.turn == Turn::Left { side < 0 } else { side > 0 }
    }

    /// Points along the arc, both ends left out, so that no chord lies further than `tolerance` from it.
    pub(super) fn flatten(&self, from: Point, to: Point, tolerance: Length) -> Vec<Point> {
        let r = self.radius.nanometres() as f64;
        let sweep = self.sweep(from, to);
        let sagitta = (tolerance.nanometres().max(1) as f64 / r).min(1.0);
        let step = 2.0 * (1.0 - sagitta).acos();
        // Between 1 and MOST_CHORDS: the cast is exact.
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
        let chords = (sweep / step).ceil().clamp(1.0, MOST_CHORDS) as u32;
        let (cx, cy) = self.centre.floats();
        let (fx, fy) = from.floats();
        let start = (fy - cy).atan2(fx - cx);
        let signed = if self.turn == Turn::Left { sweep } else { -sweep };
        (1..chords)
            .map(|k| {
                let angle = start + signed * f64::from(k) / f64::from(chords);
                Point::nearest(cx + r * angle.cos(), cy + r * angle.sin())
            })
            .collect()
    }
}

/// More chords than this an arc is never flattened into, however fine the tolerance.
const MOST_CHORDS: f64 = 4096.0;
