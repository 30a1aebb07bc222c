//! Rectangles that together hide the edge of a path: what lies clear of them lies wholly inside it or wholly outside.

use super::{Bounds, Path, Point};
use crate::length::Length;
use std::f64::consts::FRAC_PI_2;

/// Pieces into which a quarter turn, or a slanted side, is parted. Twice as many leave half the gap between edge and
/// rectangle; an even number puts one point in the middle, where the largest rectangle beside an arc has its corner.
const PIECES: u32 = 8;

impl<T: Copy> Path<T> {
    /// Rectangles that hide the path's edge.
    ///
    /// Along straight sides that run athwart or fore and aft they have no width; along arcs and slanted sides they follow
    /// in steps, and a nanometre is added all round for the points between, which are rounded.
    pub fn cover(&self) -> Vec<Bounds> {
        self.walk()
            .flat_map(|(side, to)| {
                let (from, arc) = (side.from, side.arc);
                let points = match arc {
                    Some(arc) => {
                        let (cx, cy) = arc.centre.floats();
                        let radius = arc.radius.nanometres() as f64;
                        let angle = |point: Point| {
                            let (x, y) = point.floats();
                            (y - cy).atan2(x - cx)
                        };
                        let sweep = arc.sweep(from, to) * if arc.turn == super::Turn::Left { 1.0 } else { -1.0 };
                        let at = |angle: f64| Point::nearest(cx + radius * angle.cos(), cy + radius * angle.sin());
                        steps(angle(from), angle(from) + sweep).into_iter().map(at).collect()
                    }
                    None if from.x != to.x && from.y != to.y => {
                        (1..PIECES).map(|piece| between(from, to, piece)).collect()
                    }
                    None => Vec::new(),
                };
                let slack = Length::from_nanometres(i64::from(arc.is_some() || from.x != to.x && from.y != to.y));
                let starts = std::iter::once(from).chain(points.clone());
                let ends = points.into_iter().chain([to]);
                starts
                    .zip(ends)
                    .map(move |(a, b)| Bounds {
                        fore: a.x.min(b.x) - slack,
                        aft: a.x.max(b.x) + slack,
                        port: a.y.min(b.y) - slack,
                        starboard: a.y.max(b.y) + slack,
                    })
                    .collect::<Vec<Bounds>>()
            })
            .collect()
    }
}

/// The angles between two, both left out, that part quarter turns evenly: an arc then only rises or falls between them.
fn steps(from: f64, to: f64) -> Vec<f64> {
    let step = FRAC_PI_2 / f64::from(PIECES);
    let (low, high) = (from.min(to), from.max(to));
    let first = (low / step).floor() + 1.0;
    let mut angles: Vec<f64> =
        (0..4 * PIECES).map(|index| (first + f64::from(index)) * step).take_while(|angle| *angle < high).collect();
    if to < from {
        angles.reverse();
    }
    angles
}

fn between(from: Point, to: Point, piece: u32) -> Point {
    let part = |from: Length, to: Length| from + (to - from) * i64::from(piece) / i64::from(PIECES);
    Point::new(part(from.x, to.x), part(from.y, to.y))
}
