//! A point on the deck or on a sheet.

use crate::length::Length;
use serde::{Deserialize, Serialize};

/// A point: `x` aft of the bow reference edge, `y` to starboard of the port edge.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
// Denied in the schema alone: in a plan, texts may stand beside the figures. A job is read field by field.
#[cfg_attr(feature = "schema", schemars(deny_unknown_fields))]
pub struct Point {
    /// Station, aft of the bow reference edge.
    pub x: Length,
    /// Distance to starboard of the port edge.
    pub y: Length,
}

impl Point {
    /// A point at a station and a distance from the port edge.
    pub const fn new(x: Length, y: Length) -> Point {
        Point { x, y }
    }

    /// The distance to another point, to the nearest nanometre.
    pub fn distance(self, other: Point) -> Length {
        (self.x - other.x).hypotenuse(self.y - other.y)
    }

    /// Both figures in nanometres, for what is done in floating point.
    pub(crate) fn floats(self) -> (f64, f64) {
        (self.x.nanometres() as f64, self.y.nanometres() as f64)
    }

    pub(crate) fn nearest(x: f64, y: f64) -> Point {
        Point::new(Length::nearest(x), Length::nearest(y))
    }
}
