//! What comes off the boat before the new deck goes on: the old covering in strips, fasteners by kind and condition, the
//! old boards, and what the frame shows once it is bare.
//!
//! ```text
//!   port                 starboard
//!    |      |      |      |          strips: knife lines fore and aft, each strip pulled aft
//!    |======|======|======|          boards: fasteners out, lifted one by one
//! ```
//!
//! Every figure is for planning. Hours are given at best, most likely and at worst, and say where they come from.

mod boards;
mod fastener;
mod freed;
mod hours;
mod pit;
mod strips;

pub use boards::{Disposal, OldBoards, SeamTape};
pub use fastener::{FastenerLine, Method, OldCondition, OldFastener, OldKind};
pub use freed::Freed;
pub use hours::HoursLine;
pub use pit::{Pit, PitNote, Water};
pub use strips::{OldCovering, Strips};

use crate::frame::Frame;
use crate::length::Length;
use crate::money::{Figure, ThreePoint};
use crate::outline::{Opening, Outline};
use serde::{Deserialize, Serialize};

/// What is known of the old deck.
#[derive(Debug, Clone, Copy)]
pub struct StripOutInput<'a> {
    /// The outline.
    pub outline: &'a Outline,
    /// The members.
    pub frame: &'a Frame,
    /// The openings; the old boards are taken to have the same.
    pub openings: &'a [Opening],
    /// How the old covering is held.
    pub covering: OldCovering,
    /// Width of the strips in which a glued one comes off.
    pub strip_width: Length,
    /// Marks of the tape on which the knife's lines lie: an inch, a centimetre.
    pub grid: Length,
    /// Width of the old boards, fore and aft.
    pub board_width: Length,
    /// Their thickness.
    pub thickness: Length,
    /// Water in them, percent of their dry mass, least and most.
    pub soaked: (u32, u32),
    /// Pounds to the square foot of the old covering, where known.
    pub covering_psf: Option<Figure>,
    /// Its thickness, where known.
    pub covering_thickness: Option<Length>,
    /// Hours to take it off.
    pub covering_hours: ThreePoint,
    /// Minutes to lift a board.
    pub board_minutes: ThreePoint,
    /// The fasteners that were counted; none: they are estimated.
    pub fasteners: &'a [OldFastener],
    /// True where tape lies over the old seams.
    pub tape: bool,
    /// Openings to free before boards are lifted.
    pub freed: &'a [Freed],
    /// Pits that were measured in the frame.
    pub pits: &'a [Pit],
    /// Wall thickness of members where it was not measured.
    pub wall: Length,
}

/// How the old deck comes off.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct StripOut {
    /// The old covering.
    pub covering: Strips,
    /// The fasteners, by kind and condition.
    pub fasteners: Vec<FastenerLine>,
    /// True where they were not counted but estimated from rows.
    pub fasteners_estimated: bool,
    /// How many there are, at least, most likely and at most.
    pub fastener_count: ThreePoint,
    /// How far a shank stands up once its board is off: the old boards' thickness.
    pub stub_height: Length,
    /// Tape over the old seams, where there is some.
    pub tape: Option<SeamTape>,
    /// The old boards.
    pub boards: OldBoards,
    /// What goes to the dump.
    pub disposal: Disposal,
    /// Hours by task.
    pub hours: Vec<HoursLine>,
    /// Their sum.
    pub total_hours: ThreePoint,
    /// Openings to free first.
    pub freed: Vec<Freed>,
    /// Pits in the frame, with a projection.
    pub pits: Vec<PitNote>,
}

/// Plans how the old deck comes off.
///
/// # Method
/// Common practice, no source, except where a part says otherwise.
pub fn strip_out(input: &StripOutInput<'_>) -> StripOut {
    let boards = OldBoards::new(input);
    let fasteners = fastener::lines(input, &boards);
    let hours = hours::hours(input, &boards, &fasteners);
    StripOut {
        covering: Strips::new(input),
        fastener_count: fasteners.iter().map(|line| line.count).sum(),
        fasteners,
        fasteners_estimated: input.fasteners.is_empty(),
        stub_height: input.thickness,
        tape: input.tape.then(|| SeamTape::new(input, &boards)),
        disposal: Disposal::new(input, &boards),
        boards,
        total_hours: hours.iter().map(|line| line.hours).sum(),
        hours,
        freed: input.freed.to_vec(),
        pits: input.pits.iter().map(|pit| PitNote::new(pit, input)).collect(),
    }
}

#[cfg(test)]
mod tests;
