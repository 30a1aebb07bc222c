//! Plans a new plywood deck for a pontoon boat.
//!
//! (front page written last)

pub mod error;
pub mod geometry;
pub mod length;
pub mod math;
pub mod money;
pub mod stock;

pub use error::{Error, Fault, Faults, Kind};
pub use length::{Length, Notation, Unit};
pub use money::Money;
