//! The calls that need no job, as documents: what a program in another language hands in.
//!
//! Each is read from one JSON object of the function's arguments, and tells everything that is wrong with it at once.

mod beam;
mod fasteners;
mod fill;
mod length;
mod nest;
mod panels;
mod plate;
mod seams;
mod span_limits;
mod survey;

pub use beam::BeamCall;
pub use fasteners::FastenersCall;
pub use fill::FillCall;
pub use length::LengthCall;
pub use nest::NestCall;
pub use panels::PanelsCall;
pub use plate::PlateCall;
pub use seams::SeamsCall;
pub use span_limits::SpanLimitsCall;
pub use survey::SurveyCall;
