//! Roll goods over the whole deck: which roll, which way it runs, where its seams lie, how it is cut off the roll, and how
//! it is glued.
//!
//! ```text
//!    wrap            seam            wrap
//!   --|----------------|---------------|--     run fore and aft: each piece is a drop as long as the boat,
//!     |    piece 1     |    piece 2    |        its wrap at both ends included
//! ```
//!
//! A seam lies only where the roll is too narrow, and then off traffic and, where it runs as the boards' seams do, off
//! those. Openings are cut out once the covering lies.

mod ask;
mod cut;
mod glue;
mod lay;
mod plan;

pub use ask::{Adhesive, Drop, Roll, Run, RunChoice, Traffic};
pub use cut::{CutList, RollCut, RollPiece, cut_list};
pub use glue::{Glue, Timing};
pub use lay::{Across, seam_lines};
pub use plan::{CoverPiece, CoverSeam, CoverTrial, Covering, CoveringInput, Laid, covering};

#[cfg(test)]
mod tests;
