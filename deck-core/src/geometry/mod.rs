//! Closed paths of straight lines and arcs, in exact lengths.
//!
//! `x` runs aft from the bow reference edge and `y` to starboard from the port edge, seen from above. Curves stay
//! curves: a path is cut by a straight line athwart without being flattened ([`Path::strip`]), and is flattened, to a
//! stated tolerance, only for drawing and for questions put to the `geo` library ([`polygon`]).
//!
//! A path runs with its inside on the left when `x` points right and `y` up; its area is then positive.

mod arc;
mod clear;
mod cover;
mod cut;
mod cut_line;
mod lane;
mod path;
mod point;
pub mod polygon;

pub use arc::{Arc, Turn};
pub use cut_line::CutLine;
pub use path::{Bounds, Limit, Path, Side};
pub use point::Point;

#[cfg(test)]
mod tests;
