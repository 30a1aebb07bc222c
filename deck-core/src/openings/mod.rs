//! Whether openings lie where a board can bear them, and the least move that would mend it.
//!
//! Each rule has a name and a clearance of its own ([`OpeningRules`]). [`check`] measures every opening against each;
//! [`least_move`] finds the nearest place at which all hold together; [`framing`] lays strips under the edge of an opening
//! that is framed.
//!
//! ```text
//!     seam ═══════════════════════     ┐ from_seam
//!             ┌─────────┐              ┘
//!     edge │←→│ opening │←→( other )   from_edge, apart
//!             └─────────┘              ┐ from_flange, or framed
//!     ▒▒▒▒▒▒▒▒▒ flange ▒▒▒▒▒▒▒▒▒▒▒     ┘
//! ```

mod check;
mod curves;
mod distance;
mod framing;
mod moves;
mod rules;
mod site;

pub use check::{Against, Clearance, OpeningCheck, Rule, check};
pub use framing::framing;
pub use moves::{Move, least_move};
pub use rules::OpeningRules;
pub use site::Surroundings;

#[cfg(test)]
mod tests;
