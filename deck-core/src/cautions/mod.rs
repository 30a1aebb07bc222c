//! What a person should know before acting on a plan.
//!
//! Standing cautions hold for every strip-out and every new deck; the others are triggered by what the plan shows. Each
//! says why, and which rule or practice it defers to. None of them is a verdict, and none says that anything is safe.

mod arrange;
mod boards;
mod caution;
mod fastening;
mod fittings;
mod openings;
mod patch;
mod span;
mod square;
mod standing;
mod stock;
mod survey;
mod tolerance;

pub use arrange::{DividedDeck, arrangement};
pub use boards::{BoardWishes, boards};
pub use caution::{Caution, Source};
pub use fastening::{FastenerReach, fastening};
pub use fittings::fittings;
pub use openings::openings;
pub use patch::{PatchFindings, patch};
pub use span::{SpanFindings, span};
pub use square::square;
pub use standing::standing;
pub use stock::stock;
pub use survey::survey;
pub use tolerance::tolerance;

#[cfg(test)]
mod tests;
