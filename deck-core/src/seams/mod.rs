//! Where the deck splits into boards: on which cross members the seams lie, and where on their flanges.
//!
//! Boards lie athwart, one behind the other from the bow edge to the stern. Each seam is a gap that lies on one
//! member's flange; the board forward of it and the board aft of it both bear on that flange. A seam may lie anywhere
//! on the flange that leaves both their bearing, so that a full sheet can stay full.
//!
//! ```text
//!            board k            gap        board k + 1
//!   ──────────────────────────┤     ├──────────────────────────
//!                   ┌─────────┼─────┼────────┐
//!                   fore      p    p + g    aft      flange of the member
//!                   ├ bearing ┤     ├ bearing┤
//! ```
//!
//! The best layout is the one with the least cost, taken in this order ([`Cost`]): seams whose flange cannot take two
//! rows of fasteners; boards; boards narrower than preferred; ripped boards; where errors are given, the margin that they
//! leave at the worst seam; how uneven mirrored boards are; length of seam; shift of seams from the middle of their flanges; how short the boards finish; and the foremost of what is
//! still equal. Two layouts are different when their seams lie on different members; each is shown at its best
//! positions.
//!
//! # Method
//! Reachable seam positions are sets of intervals of whole nanometres, so feasibility is exact (`reach`). All member
//! sets of the least short-seam and board count are enumerated, pruned by what can still be finished (`search`). For
//! each, the discrete costs follow from a walk over piece and board kinds, and the positions from a linear programme
//! solved in exact fractions with the remaining costs as objectives in order (`place`).
//!
//! On a member out of square or bent a seam lies athwart where that leaves both boards their bearing and their row of
//! fasteners all along the edge, and otherwise along the chord between the member's ends, where that leaves more. Stations
//! and widths are then those at the deck's centreline; a board with a slanted edge is sawn from the rectangle around it.
//!
//! # Limits
//! Positions are the exact optimum rounded down to the nanometre. Where more than one seam lies on a curved or slanted
//! part of the outline, their lengths are weighed along the chord of the part that lies over the flange.

mod errors;
mod layout;
mod pattern;
mod place;
mod reach;
mod reason;
mod remedy;
mod rules;
mod search;
mod seat;
mod stack;
mod tolerance;

pub use errors::{ErrorSum, Spread};
pub use layout::{Bay, Board, Cost, Lane, NoLayout, Seam, SeamEnds, SeamLayout, Seams};
pub use remedy::{Remedy, RemedyCheck, RemedyRules, SeamRemedy, remedy};
pub use rules::Rules;
pub use stack::{Stack, stack};
pub use tolerance::{BearingTolerance, Errors, LastBoard, SeamTolerance, last_board, tolerance, width_to_rip};

use crate::frame::Frame;
use crate::length::{Length, Notation};
use crate::outline::{KeepClear, Outline};

/// A sheet as the seams see it: how wide a board can be cut from it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BoardStock {
    /// The sheet's label.
    pub label: String,
    /// Widest board: the sheet's width across the grain less both edge trims.
    pub width: Length,
}

/// The question: how to split a deck of a length on a frame into boards from some sheets.
#[derive(Debug, Clone)]
#[non_exhaustive]
pub struct SeamProblem<'a> {
    /// The cross members.
    pub frame: &'a Frame,
    /// Length over all.
    pub deck_length: Length,
    /// The sheets that boards are cut from.
    pub sheets: Vec<BoardStock>,
    /// What a layout must keep.
    pub rules: Rules,
    /// Stretches of the deck that no seam crosses: openings and keep-clear zones.
    pub clear: Vec<KeepClear>,
    /// The outline, for the length of seams; none: all seams count as equally long.
    pub outline: Option<&'a Outline>,
    /// With errors given, of layouts that cost the same in boards and rips the one is best that keeps most above the least
    /// bearing when every error is at its limit.
    pub errors: Option<Errors>,
    /// How lengths are written in reasons.
    pub notation: Notation,
    /// How many layouts are wanted, best first.
    pub best: usize,
}

impl<'a> SeamProblem<'a> {
    /// The question with nothing kept clear, for the best layout alone.
    pub fn new(frame: &'a Frame, deck_length: Length, sheets: Vec<BoardStock>, rules: Rules) -> SeamProblem<'a> {
        SeamProblem {
            frame,
            deck_length,
            sheets,
            rules,
            clear: Vec::new(),
            outline: None,
            errors: None,
            notation: Notation::new(crate::length::Unit::Inch),
            best: 1,
        }
    }

    /// With stretches that no seam crosses.
    #[must_use]
    pub fn clear(mut self, clear: Vec<KeepClear>) -> SeamProblem<'a> {
        self.clear = clear;
        self
    }

    /// With an outline, so that the length of seams counts.
    #[must_use]
    pub fn outline(mut self, outline: &'a Outline) -> SeamProblem<'a> {
        self.outline = Some(outline);
        self
    }

    /// With errors, against which the seams keep the greatest margin.
    #[must_use]
    pub fn errors(mut self, errors: Errors) -> SeamProblem<'a> {
        self.errors = Some(errors);
        self
    }

    /// With lengths in reasons written so.
    #[must_use]
    pub fn notation(mut self, notation: Notation) -> SeamProblem<'a> {
        self.notation = notation;
        self
    }

    /// For so many layouts, best first.
    #[must_use]
    pub fn best(mut self, best: usize) -> SeamProblem<'a> {
        self.best = best;
        self
    }
}

/// The best layouts of seams, or the reason why there is none.
///
/// # Cost
/// For m members: the feasibility tables take m² set operations for each board count; the layouts of the least board
/// count are enumerated one by one.
///
/// # Examples
/// Twenty feet on 24 in members from 48 in sheets: five full boards, seams at 48, 96, 144 and 192.
/// ```
/// use deck_core::frame::{Frame, FrameSpec};
/// use deck_core::seams::{BoardStock, Rules, SeamProblem, seams};
/// use deck_core::Length;
/// let inches = Length::inches;
/// let frame = Frame::new(&FrameSpec::regular(inches(0), inches(240), inches(24), inches(2)))?;
/// let sheets = vec![BoardStock { label: "48 x 96".into(), width: inches(48) }];
/// let found = seams(&SeamProblem::new(&frame, inches(240), sheets, Rules::new("1/2 in".parse()?)));
/// let stations: Vec<Length> = found.layouts[0].seams.iter().map(|seam| seam.fore).collect();
/// assert_eq!(stations, [inches(48), inches(96), inches(144), inches(192)]);
/// # Ok::<(), deck_core::Error>(())
/// ```
pub fn seams(problem: &SeamProblem<'_>) -> Seams {
    search::search(problem)
}

#[cfg(test)]
mod tests;
