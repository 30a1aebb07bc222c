//! Where every fastener goes.
//!
//! A row runs along each member under each panel. The rows on a panel's first and last member are edge rows, whether at
//! a seam or at the bow or stern; those between are field rows. A row is evenly divided between its ends and mirrored
//! about its middle; where an opening is in the way, fasteners move to the opening's sides or are dropped, and the
//! greatest gap that is left is told.
//!
//! ```text
//!   panel's port end                                       starboard end
//!   │← end distance →•──────•──────•──────•──────•← end distance →│
//!                    │← R, evenly divided in n − 1 steps →│
//! ```
//!
//! Where the old deck left holes in a member, fasteners move along their row until each keeps its distance: as little in
//! all as can be, mirrored where that can be, with one or two fasteners more only where the gaps would pass the limit.
//!
//! # Method
//! `n = ⌈R / s⌉ + 1` fasteners to a row, R the length over which board and member both exist, less the end distance in
//! the board or in the metal at each end, whichever binds. Derived; the distances are the caller's.

mod around;
mod chain;
mod divide;
mod length;
mod old_hole;
mod row;
mod schedule;
mod slant;

pub use length::least_length;
pub use old_hole::{AroundHoles, OldHole};
pub use row::{Fastening, Row, RowKind, fasteners, fasteners_of_panels};
pub use schedule::{Fastener, Schedule};
pub use slant::RowSlant;

#[cfg(test)]
mod tests;
