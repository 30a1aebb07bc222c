//! The line along which a path is cut: athwart, or slanted by a little.

use super::{Arc, Path, Point, Side, Turn};
use crate::length::Length;
use crate::math::round_half_even;

/// A line across the deck, told where it crosses the port edge and a distance to starboard of it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct CutLine {
    /// Station at the port edge.
    port: Length,
    /// How much further aft it lies a beam to starboard.
    slant: Length,
    /// That beam; above zero where it slants.
    beam: Length,
}

/// A corner that lies as near to a slanted line lies on it: both were rounded to the nanometre.
const ON_LINE: i64 = 2;

impl CutLine {
    /// Straight across at a station.
    pub fn athwart(station: Length) -> CutLine {
        CutLine { port: station, slant: Length::ZERO, beam: Length::from_nanometres(1) }
    }

    /// From a station at the port edge to one that lies `slant` further aft a beam to starboard. A beam of zero or less is
    /// none: the line runs athwart.
    pub fn slanted(port: Length, slant: Length, beam: Length) -> CutLine {
        if beam <= Length::ZERO {
            return CutLine::athwart(port);
        }
        CutLine { port, slant, beam }
    }

    /// The line's station at a distance from the port edge, to the nanometre.
    pub fn at(&self, y: Length) -> Length {
        if self.slant.is_zero() {
            return self.port;
        }
        let product = i128::from(self.slant.nanometres()) * i128::from(y.nanometres());
        self.port + Length::saturating(round_half_even(product, i128::from(self.beam.nanometres())))
    }

    /// How far aft of the line a point lies; zero where it lies on it.
    pub(super) fn offset(&self, point: Point) -> Length {
        let offset = point.x - self.at(point.y);
        let on = !self.slant.is_zero() && offset.nanometres().abs() <= ON_LINE;
        if on { Length::ZERO } else { offset }
    }

    /// A side in pieces, cut where it crosses or touches the line.
    pub(super) fn split<T: Copy>(&self, side: &Side<T>, to: Point) -> Vec<Side<T>> {
        if self.slant.is_zero() {
            return side.split_at(to, self.port);
        }
        let mut cuts: Vec<Point> = match side.arc {
            None => self.across(side.from, to).into_iter().collect(),
            Some(arc) => self.through(&arc, side.from, to),
        };
        cuts.retain(|&point| point != side.from && point != to);
        std::iter::once(side.from).chain(cuts).map(|from| Side { from, ..*side }).collect()
    }

    /// Where a straight side crosses the line between its ends.
    fn across(&self, from: Point, to: Point) -> Option<Point> {
        let (start, end) = (self.offset(from).nanometres(), self.offset(to).nanometres());
        if start.signum() * end.signum() >= 0 {
            return None;
        }
        let (part, whole) = (i128::from(start), i128::from(start) - i128::from(end));
        let along = i128::from((to.y - from.y).nanometres()) * part * whole.signum();
        let y = from.y + Length::saturating(round_half_even(along, whole.abs()));
        Some(Point::new(self.at(y), y))
    }

    /// Where an arc crosses the line, in the order of the walk.
    fn through(&self, arc: &Arc, from: Point, to: Point) -> Vec<Point> {
        let rise = self.slant.nanometres() as f64 / self.beam.nanometres() as f64;
        let (cx, cy) = arc.centre.floats();
        let radius = arc.radius.nanometres() as f64;
        // x = p + rise · y on the circle: (1 + rise²) t² + 2 rise q t + q² − r² = 0 with t = y − cy, q = p + rise · cy − cx.
        let q = self.port.nanometres() as f64 + rise * cy - cx;
        let (a, b, c) = (1.0 + rise * rise, rise * q, q * q - radius * radius);
        let square = b * b - a * c;
        if square <= 0.0 {
            return Vec::new();
        }
        let root = square.sqrt();
        let mut found: Vec<(f64, Point)> = [(-b - root) / a, (-b + root) / a]
            .into_iter()
            .map(|t| {
                let y = Length::nearest(cy + t);
                Point::new(self.at(y), y)
            })
            .filter(|&point| arc.passes(from, to, point))
            .map(|point| (walked(arc, from, point), point))
            .collect();
        found.sort_by(|one, other| one.0.total_cmp(&other.0));
        found.into_iter().map(|(_, point)| point).collect()
    }
}

/// The angle from the start of an arc to a point of it, as it is walked.
fn walked(arc: &Arc, from: Point, to: Point) -> f64 {
    let angle = |point: Point| {
        let ((px, py), (cx, cy)) = (point.floats(), arc.centre.floats());
        (py - cy).atan2(px - cx)
    };
    let turned = angle(to) - angle(from);
    let along = if arc.turn == Turn::Left { turned } else { -turned };
    along.rem_euclid(std::f64::consts::TAU)
}

impl<T: Copy> Path<T> {
    /// The path with every corner moved along the boat by as much as the line slants there against its own middle, so that
    /// the line and all that runs along it lie athwart. Arcs are moved whole, by what their middle is moved: their ends are
    /// off by the slant over the arc.
    #[must_use]
    pub fn unslanted(&self, line: &CutLine) -> Path<T> {
        let middle = line.at(line.beam / 2);
        let level = |point: Point| Point::new(point.x - (line.at(point.y) - middle), point.y);
        let sides = self.sides().iter().map(|side| Side {
            from: level(side.from),
            arc: side.arc.map(|arc| Arc { centre: level(arc.centre), ..arc }),
            edge: side.edge,
        });
        Path::as_walked(sides.collect())
    }
}
