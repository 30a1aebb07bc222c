//! Plans a new plywood deck for a pontoon boat.
//!
//! From tape measurements of a stripped frame the library finds how the deck splits into panels whose seams bear on the
//! cross members, where every fastener goes, which sheets to buy and how to saw them, and draws the sheets that people
//! work from. Lengths are whole nanometres, so nothing drifts; results hold no clock, thread order or hash order, so the
//! same job gives the same bytes everywhere.
//!
//! ```
//! use deck_core::{Job, plan};
//! let job = Job::from_json(r#"{
//!     "schema": 1, "name": "Sandpiper", "unit": "in",
//!     "deck": {"length": "20 ft", "beam": 96},
//!     "frame": {"measured_to": "centre", "flange": 2, "regular": {"first": 0, "last": 240, "spacing": 24}},
//!     "stock": [{"label": "3/4 ply", "length": 96, "width": 48, "thickness": "3/4"}],
//!     "gap": 0
//! }"#)?;
//! let plan = plan(&job)?;
//! assert_eq!(plan.panels.len(), 5);
//! assert_eq!(plan.takeoff.unwrap().lines[0].buy, 5); // sheets
//! # Ok::<(), deck_core::Error>(())
//! ```
//!
//! # What there is
//! - **The one call**: [`plan()`], [`Plan`], [`Job`]; [`plan::Planner`] for effort and progress.
//! - **On paper**: [`draw`] (SVG, and the PDF job packet with the feature `packet`).
//! - **Each step on its own**: [`seams::seams`], [`panels::panels`], [`fasteners::fasteners`], [`nest::nest`],
//!   [`fill`] (the best of one sheet), [`takeoff::takeoff`], [`cautions`].
//! - **What was measured**: [`survey()`], [`survey`](mod@survey) (readings, blunders, traces, squaring, old boards).
//! - **Does it carry**: [`span_limits`], [`span::beam`], [`span::plate`], [`span`] (lay-ups, loads, supports).
//! - **Things that exist**: [`outline`], [`frame`], [`stock`]; [`published`] figures with their sources.
//! - **Measures**: [`Length`], [`Area`], [`Unit`], [`Notation`], [`Money`]; [`geometry`].
//! - **When input is wrong**: [`Error`], a list of [`Fault`]s of a [`Kind`], each with a JSON pointer.
//!
//! # Limits
//! Figures of strength are for a person to judge: no load rating of a boat is computed and nothing is called safe. Boards lie athwart, in one piece from side to side; members are
//! level, and straight and square to the boat where they are not read at their ends.

#![forbid(unsafe_code)]
#![deny(missing_docs)]
#![cfg_attr(test, allow(clippy::float_cmp, reason = "whole inches and their halves are exact in binary"))]

pub mod arrange;
pub mod cautions;
pub mod covering;
pub mod draw;
pub mod error;
pub mod fasteners;
pub mod fittings;
pub mod frame;
pub mod geometry;
pub mod job;
pub mod length;
pub mod math;
pub mod money;
pub mod nest;
pub mod openings;
pub mod outline;
pub mod panels;
pub mod patch;
pub mod plan;
pub mod published;
pub mod quote;
pub mod seams;
pub mod span;
pub mod stock;
pub mod strip_out;
pub mod survey;
pub mod takeoff;

pub use error::{Error, Fault, Faults, Kind};
pub use job::Job;
pub use length::{Area, Length, Notation, Unit};
pub use money::Money;
pub use nest::fill;
pub use plan::{Plan, plan};
pub use span::{beam, plate, span_limits};
pub use survey::survey;
