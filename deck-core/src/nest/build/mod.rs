//! The constructive heuristics: each gives a whole answer in one go, and all are tried.

mod cheapen;
mod fill;
mod layout;
mod pack;
mod queue;
mod relay;
mod rule;

pub(super) use cheapen::cheapen;
pub(super) use fill::{Node, Pattern, clipped};
pub(super) use layout::{Piece, Tally, layout};
pub(super) use pack::{Choice, Run, Solution, Way, cost, pack, pack_some};
pub(super) use relay::relay;
pub(super) use rule::Rule;
