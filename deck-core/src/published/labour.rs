//! Planning figures of the trade for labour: what each step of a re-deck takes, and what old fasteners take.
//!
//! Common practice, no source; a shop replaces them by its own. One row alone was read: a bolt head is ground off in a
//! minute, on a boat owners' forum.

use crate::money::ThreePoint;

/// A step of the job with its hours.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[non_exhaustive]
pub struct LabourStep {
    /// A short word for it, by which a job replaces it.
    pub task: &'static str,
    /// What is done.
    pub words: &'static str,
    /// Tenths of an hour at best, most likely, at worst.
    tenths: (i64, i64, i64),
}

impl LabourStep {
    /// Its hours.
    pub fn hours(&self) -> ThreePoint {
        ThreePoint::tenths(self.tenths.0, self.tenths.1, self.tenths.2)
    }
}

const fn step(task: &'static str, words: &'static str, low: i64, likely: i64, high: i64) -> LabourStep {
    LabourStep { task, words, tenths: (low, likely, high) }
}

/// The steps in order, for a pontoon boat of 20 to 24 ft: 17.5, 33 and 66 hours in all.
pub const LABOUR_STEPS: [LabourStep; 15] = [
    step("measure", "measure, photograph, label", 5, 10, 20),
    step("make-safe", "battery, fuel, controls off", 10, 20, 40),
    step("furniture", "furniture, top, rails, trim, console off", 20, 30, 50),
    step("old-covering", "old covering off", 5, 15, 30),
    step("boards", "old fasteners and boards out", 15, 30, 80),
    step("frame", "frame repair, old holes", 10, 20, 60),
    step("square", "square and tape the frame", 5, 10, 20),
    step("saw", "saw the boards", 10, 20, 40),
    step("seal", "seal the edges", 5, 10, 20),
    step("lay", "lay and fasten", 20, 30, 50),
    step("fill", "fill and sand", 5, 15, 30),
    step("cover", "cover, tend the cure", 20, 40, 80),
    step("refit", "refit rails, furniture, console", 30, 50, 90),
    step("test", "test and clean", 10, 20, 30),
    step("disposal", "dispose of the old deck", 5, 10, 20),
];

/// Minutes for a sound screw, backed out.
pub fn sound_screw_minutes() -> ThreePoint {
    ThreePoint::tenths(3, 4, 5)
}

/// Minutes for a seized fastener, however it comes out.
pub fn seized_minutes() -> ThreePoint {
    ThreePoint::tenths(20, 30, 40)
}

/// Minutes for a sound bolt, one person above and one below.
pub fn sound_bolt_minutes() -> ThreePoint {
    ThreePoint::tenths(10, 15, 20)
}

/// Minutes for a fastener that spins, its head ground off.
pub fn spinning_minutes() -> ThreePoint {
    ThreePoint::tenths(10, 12, 15)
}

/// Screws in a row of the old deck, on a member under the middle of a board: four to five, in halves.
pub const OLD_FIELD_ROW_HALVES: (i64, i64, i64) = (8, 9, 10);
/// Screws in a row of the old deck at a seam or at the deck's ends: more, so that a 24 ft by 8 ft deck of six boards holds
/// about a hundred.
pub const OLD_EDGE_ROW_HALVES: (i64, i64, i64) = (10, 12, 16);

/// Steel, kilograms to the cubic metre; typical, unconfirmed.
pub const STEEL_DENSITY: f64 = 7850.0;
