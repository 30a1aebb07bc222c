//! Questions about flattened paths, put to the `geo` library.
//!
//! `geo` works in floating point and moves corners that are not on a coarse enough grid. Whole numbers of micrometres
//! come back as they went in, so that is what it is fed, counted from the path's own corner.

use super::{Path, Point};
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
    polygon(path, corner(path)).is_valid()
}

/// True where `inner` lies within `outer`; a shared boundary is allowed.
pub fn contains<T: Copy, U: Copy>(outer: &Path<T>, inner: &Path<U>) -> bool {
    let origin = corner(outer);
    polygon(outer, origin).relate(&polygon(inner, origin)).is_covers()
}

/// True where the insides of two paths have a point in common.
pub fn overlap<T: Copy, U: Copy>(one: &Path<T>, other: &Path<U>) -> bool {
    let origin = corner(one);
    let shared: MultiPolygon<f64> = polygon(one, origin).intersection(&polygon(other, origin));
    !shared.0.is_empty()
}

fn corner<T: Copy>(path: &Path<T>) -> Point {
    let bounds = path.bounds();
    Point::new(bounds.fore, bounds.port)
}
