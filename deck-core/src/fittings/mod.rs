//! What is bolted down again: the holes of rails, seats and consoles, from the old deck to the new panels.
//!
//! Holes are measured on the old deck, from a datum of its own; [`OldDatum`] says where that lies on the new deck. Each hole
//! is told from its new panel's edges, held against seams, members, openings and what else is drilled there, and gets the
//! bolt that its stack needs, rounded up to a length that is sold.
//!
//! ```text
//!   bolt  │ foot of the fitting │ board │ tape │ wall │ plate │ washer │ nut │
//!                                       └ over a member ┘
//! ```

mod bolt;
mod datum;
mod place;

pub use bolt::{Bolt, BoltLine, Layers, Plate, PlateLine, Stack, bolts, plates};
pub use datum::OldDatum;
pub use place::{FittedHole, Fitting, Ground, HoleFinding, HoleRule, NearMember, NearSeam, SeamDistance, place};

#[cfg(test)]
mod tests;
