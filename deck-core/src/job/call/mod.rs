//! The calls that need no boat, as documents: what a program in another language hands in.
//!
//! Each is read from one JSON object of the function's arguments, and tells everything that is wrong with it at once.

mod beam;
mod fill;
mod nest;
mod plate;
mod span_limits;

pub use beam::BeamCall;
pub use fill::FillCall;
pub use nest::NestCall;
pub use plate::PlateCall;
pub use span_limits::SpanLimitsCall;
