//! In what manner do the boards lie, where one piece from side to side is not the only way?
//!
//! ```text
//!   athwart          filler strips      centre butt        fore and aft
//!   ┌──────────┐     ┌────────┬─┐      ┌─────┬────┐       ┌───┬────┬───┐
//!   │          │     │        │ │      │     │    │       │   │    ├───┤
//!   ├──────────┤     ├─┬──────┴─┤      ├────┬┴────┤       ├───┤    │   │
//!   │          │     │ │        │      │    │     │       │   ├────┤   │
//!   ├──────────┤     ├─┴──────┬─┤      ├────┴┬────┤       ├───┤    ├───┤
//!   │          │     │        │ │      │     │    │       │   │    │   │
//!   └──────────┘     └────────┴─┘      └─────┴────┘       └───┴────┴───┘
//! ```
//!
//! All are one thing, a [`Division`] in two levels: strips athwart of which each may be divided across, or rows along the
//! boat of which each is divided along. Edges athwart are seams on members, found by the room [`seams`](crate::seams);
//! edges along the boat are [`Joint`]s on [`Block`]s between the members. This room lists the divisions of a kind; which
//! is cheapest only the nest can tell, and it is asked elsewhere.
//!
//! # Method
//! Rows: widths are whole sheets, half sheets and equal shares of the rest, in every order (`widths`); the fewest rows
//! that openings allow are exact. The butts of each row are the exact seam search on that row; over the rows a dynamic
//! programme takes the cheapest layouts whose butts keep apart, and asks each row for more layouts until none that is not
//! listed could be cheaper (`along`, `chain`). Strips: the exact seam search, then the same programme over where each
//! strip is divided (`across`). That butts of neighbouring rows keep off each other's members, and joints of neighbouring
//! strips off each other's blocks, is common practice, no source.

mod across;
mod along;
mod blocks;
mod chain;
mod division;
mod kind;
mod reason;
mod rules;
mod widths;

pub use division::{Block, BlockRow, Cell, Cut, Division, Joint, Stretch};
pub use kind::ArrangementKind;
pub use rules::{ArrangeRules, Ply};

use crate::frame::Frame;
use crate::length::{Length, Notation};
use crate::outline::{KeepClear, Opening, Outline};
use crate::seams::NoLayout;

/// The question: how the boards of a deck may lie.
#[derive(Debug, Clone)]
#[non_exhaustive]
pub struct ArrangeProblem<'a> {
    /// The cross members.
    pub frame: &'a Frame,
    /// The outline.
    pub outline: &'a Outline,
    /// The sheets that boards are counted on.
    pub sheets: Vec<Ply>,
    /// What a division must keep.
    pub rules: ArrangeRules,
    /// The openings.
    pub openings: &'a [Opening],
    /// Zones that no seam athwart crosses; seams along the boat are told that they do.
    pub keep_clear: &'a [KeepClear],
    /// How lengths are written in reasons, and to what fraction rows are sawn.
    pub notation: Notation,
}

impl<'a> ArrangeProblem<'a> {
    /// The question with no openings and nothing kept clear.
    pub fn new(
        frame: &'a Frame,
        outline: &'a Outline,
        sheets: Vec<Ply>,
        rules: ArrangeRules,
        notation: Notation,
    ) -> ArrangeProblem<'a> {
        ArrangeProblem { frame, outline, sheets, rules, openings: &[], keep_clear: &[], notation }
    }

    /// With openings.
    #[must_use]
    pub fn openings(mut self, openings: &'a [Opening]) -> ArrangeProblem<'a> {
        self.openings = openings;
        self
    }

    /// With zones that no seam athwart crosses.
    #[must_use]
    pub fn keep_clear(mut self, zones: &'a [KeepClear]) -> ArrangeProblem<'a> {
        self.keep_clear = zones;
        self
    }

    /// Wood between a joint and an opening: one edge distance for the screws into the block, on both their sides.
    fn wood(&self) -> Length {
        self.rules.seams.edge_in_ply * 2
    }

    /// Openings and zones as stretches that no seam athwart crosses, over a part of the beam.
    fn kept_clear(&self, port: Length, starboard: Length) -> Vec<KeepClear> {
        let wood = self.rules.seams.edge_in_ply;
        let near = self.openings.iter().filter_map(|opening| {
            let bounds = opening.path().bounds();
            let within = bounds.port - wood < starboard && bounds.starboard + wood > port;
            within.then(|| KeepClear::new(opening.name.clone(), bounds.fore - wood, bounds.aft + wood))
        });
        near.chain(self.keep_clear.iter().cloned()).collect()
    }

    /// Names of the zones that a seam from one station to another crosses.
    fn zones_between(&self, fore: Length, aft: Length) -> impl Iterator<Item = &str> {
        self.keep_clear.iter().filter(move |zone| zone.from < aft && zone.to > fore).map(|zone| zone.name.as_str())
    }
}

/// The divisions of a kind with joints, or the rule that none of them keeps.
///
/// They come in the order in which they were thought of: the nest is to say which is cheapest. Boards that lie athwart in
/// one piece have no joints and are found by [`seams`](crate::seams::seams) alone: for them there is no division here.
///
/// # Errors
/// The rule that no division of the kind keeps. Members out of square are one: blocks and butts are laid square.
///
/// # Examples
/// A deck of 102 in where only sheets of 96 can be had: five strips, each with a filler of 6 in.
/// ```
/// use deck_core::arrange::{ArrangeProblem, ArrangeRules, ArrangementKind, Ply, divisions};
/// use deck_core::frame::{Frame, FrameSpec};
/// use deck_core::outline::{Deck, Parametric};
/// use deck_core::seams::Rules;
/// use deck_core::{Length, Notation, Unit};
/// let inches = Length::inches;
/// let outline = Deck::Parametric(Parametric::new(inches(240), inches(102))).outline()?;
/// let frame = Frame::new(&FrameSpec::regular(inches(0), inches(240), inches(24), inches(2)))?;
/// let rules = ArrangeRules::new(Rules::new("1/2 in".parse()?), inches(8), inches(8));
/// let sheets = vec![Ply::new("48 x 96", inches(96), inches(48))];
/// let problem = ArrangeProblem::new(&frame, &outline, sheets, rules, Notation::new(Unit::Inch));
/// let found = divisions(&problem, ArrangementKind::FillerStrips).unwrap();
/// let (joints, blocks) = (&found[0].joints, &found[0].blocks);
/// assert_eq!((found[0].layout.boards.len(), joints.len(), blocks.len()), (5, 5, 10));
/// assert_eq!([joints[0].port, joints[1].port], [inches(96), inches(6)]);
/// # Ok::<(), deck_core::Error>(())
/// ```
pub fn divisions(problem: &ArrangeProblem<'_>, kind: ArrangementKind) -> Result<Vec<Division>, NoLayout> {
    if problem.frame.members().iter().any(|member| member.skew.is_some()) {
        return Err(reason::out_of_square(problem));
    }
    match kind {
        ArrangementKind::Athwart => Ok(Vec::new()),
        ArrangementKind::FillerStrips | ArrangementKind::CentreButt => across::divisions(problem, kind),
        ArrangementKind::ForeAndAft => along::divisions(problem),
    }
}

#[cfg(test)]
mod tests;
