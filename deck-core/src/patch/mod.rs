//! Part of the deck stays: the least that has to be replaced around damaged places.
//!
//! Old boards are given by their seams and stay where they are. Around each damaged place a rectangle is cut out of its board
//! whose edges go past the damage by a margin and land on something: an edge of the old board, a flange on which both boards
//! bear, or blocking. Places that lie near each other share a patch where that takes less plywood.
//!
//! ```text
//!   old seam ════════════════════════════════  board edge
//!            ╲╲╲╲╲╲┌─────────────┐╲╲╲╲╲╲╲╲╲╲╲
//!            ╲╲╲╲╲╲│   ( rot )   ┊ blocking ╲   ┐ margin
//!            ╲╲╲╲╲╲└─────────────┘╲╲╲╲╲╲╲╲╲╲╲   ┘
//!   ▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒ flange ▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒
//! ```

mod choose;
mod edges;
mod rules;
mod search;

pub use choose::{Patch, PatchEdge, PatchSide, Patched, Rest, patch};
pub use rules::{Damage, OldBoard, PatchRules, SheetSize};

#[cfg(test)]
mod tests;
