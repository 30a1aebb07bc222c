//! Questions about flattened paths, put to the `geo` library.
//!
//! `geo` works in floating point and moves corners that are not on a coarse enough grid. Whole numbers of micrometres
//! come back as they went in, so that is what it is fed, counted from the path's own corner.
//!
//! Most questions are settled by rectangles around the sides, exactly and at a fraction of the cost; `geo` is asked
//! where those come near each other.

use super::{Bounds, Limit, Path, Point};
use crate::length::Length;
use geo::{BooleanOps, Coord, LineString, MultiPolygon, Polygon, Relate, Validation};

/// The grid that `geo` is fed: one micrometre.
const GRID: i64 = 1_000;

/// Chords of flattened arcs lie within this of their arc: a hundredth of a millimetre.
pub const TOLERANCE: Length = Length::from_nanometres(10_000);

/// The flattened path as a `geo` polygon in micrometres from `origin`.
pub fn polygon<T: Copy>(path: &Path<T>, origin: Point) -> Polygon<f64> {
    let micrometres = |length: Length| (length.nanometres() as f64 / GRID as f64).round();
    let corners = path.flatten(TOLERANCE);
    let ring: Vec<Coord<f64>> = corners
        .iter()
        .map(|point| Coord { x: micrometres(point.x - origin.x), y: micrometres(point.y - origin.y) })
        .collect();
    Polygon::new(LineString::new(ring), Vec::new())
}

/// True where the path neither crosses nor touches itself.
pub fn is_simple<T: Copy>(path: &Path<T>) -> bool {
    sides_are_apart(path) || polygon(path, corner(path)).is_valid()
}

/// True where `inner` lies within `outer`; a shared boundary is allowed.
pub fn contains<T: Copy, U: Copy>(outer: &Path<T>, inner: &Path<U>) -> bool {
    let around = inner.bounds();
    if outer.side_bounds().all(|side| apart(side, around)) {
        // No side of the outer path comes near the inner one: it lies wholly inside or wholly outside.
        let inside = |(port, starboard): &(Length, Length)| *port < around.port && around.port < *starboard;
        return outer.breadths(around.fore, Limit::Aft).iter().any(inside);
    }
    let origin = corner(outer);
    polygon(outer, origin).relate(&polygon(inner, origin)).is_covers()
}

/// True where the insides of two paths have a point in common.
pub fn overlap<T: Copy, U: Copy>(one: &Path<T>, other: &Path<U>) -> bool {
    if apart(one.bounds(), other.bounds()) {
        return false;
    }
    let origin = corner(one);
    let shared: MultiPolygon<f64> = polygon(one, origin).intersection(&polygon(other, origin));
    !shared.0.is_empty()
}

fn corner<T: Copy>(path: &Path<T>) -> Point {
    let bounds = path.bounds();
    Point::new(bounds.fore, bounds.port)
}

/// True where two rectangles have no point in common.
fn apart(one: Bounds, other: Bounds) -> bool {
    one.aft < other.fore || other.aft < one.fore || one.starboard < other.port || other.starboard < one.port
}

/// True where the rectangles around the sides touch only from each side to the next, in the corner that they share.
fn sides_are_apart<T: Copy>(path: &Path<T>) -> bool {
    let sides: Vec<Bounds> = path.side_bounds().collect();
    let count = sides.len();
    let corners: Vec<Point> = path.sides().iter().map(|side| side.from).collect();
    let fair = |one: usize, other: usize| {
        let (a, b) = (sides[one], sides[other]);
        let shared = if other == one + 1 { other } else { 0 };
        let follow = other == one + 1 || (one == 0 && other == count - 1);
        apart(a, b) || (follow && common_point(a, b) == Some(corners[shared]))
    };
    count > 2 && (0..count).all(|one| (one + 1..count).all(|other| fair(one, other)))
}

/// The point that two rectangles share, where it is one.
fn common_point(one: Bounds, other: Bounds) -> Option<Point> {
    let (fore, aft) = (one.fore.max(other.fore), one.aft.min(other.aft));
    let (port, starboard) = (one.port.max(other.port), one.starboard.min(other.starboard));
    (fore == aft && port == starboard).then(|| Point::new(fore, port))
}
