//! How long a fastener has to be.

use super::Fastener;
use crate::length::Length;

/// Threads that are to show below the metal.
const THREADS_THROUGH: i64 = 3;

/// The least length of a fastener through a board and whatever lies between it and the metal.
///
/// # Method
/// Board, layer between, wall, three threads, drill point: common practice as told, no source; the sum is derived.
///
/// # Examples
/// ```
/// use deck_core::fasteners::{Fastener, least_length};
/// let screw = Fastener::new("screw", "1/4 in".parse()?, "2 in".parse()?);
/// let least = least_length(&screw, "3/4 in".parse()?, "0 in".parse()?, "1/8 in".parse()?);
/// assert_eq!(least, "1.025 in".parse()?);
/// # Ok::<(), deck_core::Error>(())
/// ```
pub fn least_length(fastener: &Fastener, board: Length, between: Length, wall: Length) -> Length {
    let threads = Length::inches(THREADS_THROUGH) / i64::from(fastener.threads_per_inch.max(1));
    board + between + wall + threads + fastener.drill_point
}
