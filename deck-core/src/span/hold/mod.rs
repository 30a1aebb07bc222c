//! What does one fastener hold, and what does a row of them?
//!
//! A screw through a board into an aluminium flange lets go in one of these ways:
//!
//! ```text
//!     ___ head ___        head pull-through: the head sinks through the board     (uplift)
//!     ::::| |:::::  board
//!     ----| |-----  flange  pull-out: the threads strip                            (uplift)
//!         |_|               bearing: the hole tears along the flange               (sideways)
//!     with an aluminium strap under the head: pull-over: the strap tears           (uplift)
//! ```
//!
//! Each is a [`Held`]: a nominal load, the factor it is divided by, and its clause. Only where the user gives a load is
//! anything compared with it.
//!
//! # Limits
//! The screw's own breaking, its bending in the board, tilting in thin sheet and prying are not counted. Loads in pounds.

mod distance;
mod held;
mod joint;
mod metal;
mod pull_out;
mod screw;
#[cfg(test)]
mod tests;
mod wood;

pub use distance::Distance;
pub use held::{Held, Mode};
pub use joint::{Hold, Joint, RowHold, RowLoad, hold};
pub use metal::{Metal, bearing, pull_over};
pub use pull_out::{PullOut, pull_out};
pub use screw::{Screw, Thread};
pub use wood::{Gravity, Shank, head_pull_through, withdrawal};
