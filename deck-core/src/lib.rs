//! Plans a new plywood deck for a pontoon boat.
//!
//! (front page written last)

#![forbid(unsafe_code)]
#![deny(missing_docs)]
#![cfg_attr(test, allow(clippy::float_cmp, reason = "whole inches and their halves are exact in binary"))]

pub mod cautions;
pub mod draw;
pub mod error;
pub mod fasteners;
pub mod frame;
pub mod geometry;
pub mod job;
pub mod length;
pub mod math;
pub mod money;
pub mod nest;
pub mod outline;
pub mod panels;
pub mod plan;
pub mod published;
pub mod seams;
pub mod stock;
pub mod takeoff;

pub use error::{Error, Fault, Faults, Kind};
pub use job::Job;
pub use length::{Area, Length, Notation, Unit};
pub use money::Money;
pub use plan::{Plan, plan};
