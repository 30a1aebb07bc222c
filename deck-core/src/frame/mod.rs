//! The aluminium cross members that the deck lies on.
//!
//! A tape reading is to a web, to an edge of the flange or to its middle, and on a C or a Z the flange lies off to one
//! side of the web. What was read is kept as it was read; [`Frame`] holds where each flange lies.
//!
//! ```text
//!   C facing aft          Z facing fore         hat, box, I
//!   ┌────── flange        ────── ┐              ──────
//!   │                           │                │  │
//!   web (station)         web (station)         centre (station)
//! ```

mod member;
mod skew;
mod spec;

pub use member::{CrossMember, Frame};
pub use skew::Skew;
pub use spec::{Condition, Facing, FrameSpec, MeasuredTo, MemberSpec, MembersFrom, Profile, Regular};

#[cfg(test)]
mod tests;
