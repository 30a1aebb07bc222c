//! Laws that hold for every input, tried on random ones.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, reason = "a test that cannot go on has failed")]

mod arrange;
mod covering;
mod fasteners;
mod fill;
mod fill_exhaustive;
mod lengths;
mod nest;
mod nest_exhaustive;
mod openings;
mod plans;
mod quote;
mod saw_replay;
mod seams;
mod skew;
mod span_beam;
mod span_plate;
mod tolerance;
mod waste;
