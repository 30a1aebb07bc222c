//! Where every fastener goes.

mod schedule;

pub use schedule::{Fastener, Schedule};
