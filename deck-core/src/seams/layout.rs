//! A layout of seams, and the reason when there is none.

use crate::frame::CrossMember;
use crate::length::Length;
use serde::{Deserialize, Serialize};

/// What the search found.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Seams {
    /// The layouts, best first.
    pub layouts: Vec<SeamLayout>,
    /// Why there is no layout, where there is none.
    pub no_layout: Option<NoLayout>,
    /// True where nothing better than the first layout exists, or where there is none; false where the enumeration was
    /// cut off before that was known.
    pub proven: bool,
}

/// One way to split the deck into boards.
///
/// Where boards lie in rows along the boat, the boards and seams of all rows stand here, row by row from port, numbered
/// through; there is then a seam fewer than boards in each row.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct SeamLayout {
    /// The boards from the bow aft.
    pub boards: Vec<Board>,
    /// The seams from the bow aft, one fewer than boards.
    pub seams: Vec<Seam>,
    /// What the layout costs, in order of weight.
    pub cost: Cost,
    /// Station where the last board ends.
    pub finish: Length,
}

/// A board, from seam to seam.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Board {
    /// Counted from the bow, from 1.
    pub number: usize,
    /// Station of its fore edge.
    pub fore: Length,
    /// Station of its aft edge.
    pub aft: Length,
    /// Extent fore and aft.
    pub width: Length,
    /// The sheet whose full width it keeps; none: it is ripped.
    pub full_width_of: Option<String>,
    /// True below the preferred width.
    pub narrow: bool,
    /// The members that it rests on, by number.
    pub supports: Vec<usize>,
    /// The row that it lies in, where boards lie in rows along the boat.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub lane: Option<Lane>,
}

/// A row of boards along the boat, from the bow to the stern.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Lane {
    /// Counted from port, from 1.
    pub row: usize,
    /// Distance of its port edge from the deck's.
    pub port: Length,
    /// Distance of its starboard edge from the deck's port edge.
    pub starboard: Length,
}

impl Lane {
    /// A row between two distances from the port edge.
    pub fn new(row: usize, port: Length, starboard: Length) -> Lane {
        Lane { row, port, starboard }
    }

    /// Extent athwart.
    pub fn width(&self) -> Length {
        self.starboard - self.port
    }
}

/// A seam, on the flange of a member.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Seam {
    /// Counted from the bow, from 1: it lies between the board of that number and the next.
    pub number: usize,
    /// Number of the member that it lies on.
    pub member: usize,
    /// Aft edge of the board forward of it: where the gap starts; of a slanted seam, at the deck's centreline.
    pub fore: Length,
    /// Fore edge of the board aft of it: where the gap ends; of a slanted seam, at the deck's centreline.
    pub aft: Length,
    /// Bearing of the board forward of it; on a member out of square or bent the least along the edge.
    pub bearing_fore: Length,
    /// Bearing of the board aft of it; on a member out of square or bent the least along the edge.
    pub bearing_aft: Length,
    /// How far the middle of the gap lies aft of the middle of the flange.
    pub shift: Length,
    /// How much wider the flange would have to be for two rows of fasteners where the seam lies; zero where they fit.
    pub short_by: Length,
    /// On a member out of square or bent: how the seam lies, and what bears at its ends.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub ends: Option<SeamEnds>,
    /// Length of the seam, athwart; none where no outline was given.
    pub length: Option<Length>,
    /// The row that it lies in, where boards lie in rows along the boat.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub lane: Option<Lane>,
}

/// A seam on a member out of square or bent.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct SeamEnds {
    /// True where the seam follows the member; false where it is square to the boat.
    pub along: bool,
    /// How much further aft its starboard end lies than its port end, over the beam.
    pub slant: Length,
    /// Where the gap starts at the deck's port edge.
    pub port: Length,
    /// Where it starts at the starboard edge.
    pub starboard: Length,
    /// Bearing of the board forward of it at the port edge, the centreline and the starboard edge.
    pub bearings_fore: [Length; 3],
    /// The same of the board aft of it.
    pub bearings_aft: [Length; 3],
}

impl SeamEnds {
    pub(super) fn new(member: &CrossMember, slant: Length, along: bool, fore: Length, aft: Length) -> Option<SeamEnds> {
        member.skew?;
        // As a line is cut: its middle is at the centreline.
        let port = -(slant / 2);
        let moved = [port, Length::ZERO, port + slant];
        let edges = member.edges();
        let bearing = |at: usize| (fore + moved[at] - edges[at].0, edges[at].1 - (aft + moved[at]));
        let bearings = [0, 1, 2].map(bearing);
        Some(SeamEnds {
            along,
            slant,
            port: fore + port,
            starboard: fore + port + slant,
            bearings_fore: bearings.map(|(ahead, _)| ahead),
            bearings_aft: bearings.map(|(_, behind)| behind),
        })
    }
}

impl Seam {
    /// How much further aft the starboard end lies than the port end, over the beam; zero where the seam is square.
    pub fn slant(&self) -> Length {
        self.ends.as_ref().map_or(Length::ZERO, |ends| ends.slant)
    }
}

/// What a layout costs, in order of weight: the first that differs decides.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Cost {
    /// Seams where two rows of fasteners do not fit.
    pub short_seams: usize,
    /// Boards.
    pub boards: usize,
    /// Boards narrower than preferred.
    pub narrow_boards: usize,
    /// Boards that are not as wide as a sheet.
    pub ripped_boards: usize,
    /// How far the worst bearing at any seam stays above the least when every error is at its limit: more is better.
    /// Only where seams are chosen by it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub worst_margin: Option<Length>,
    /// Sum over the boards of |width of board i − width of board n + 1 − i|.
    pub unevenness: Length,
    /// Length of all seams.
    pub seam_length: Length,
    /// Sum of how far seams lie from the middle of their flanges.
    pub shift: Length,
    /// How much shorter than the outline the boards finish.
    pub finish_short: Length,
}

/// Why a deck cannot be laid out, as a value: the estimator needs the reason more than the no.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct NoLayout {
    /// The reason, as a sentence.
    pub reason: String,
    /// The bay that stops it, where one does.
    pub bay: Option<Bay>,
    /// The sheet that falls short: the widest in stock.
    pub sheet: Option<String>,
    /// How much wider that sheet would have to be.
    pub shortfall: Option<Length>,
    /// What would mend it, each on its own.
    pub mend: Vec<String>,
}

/// The bay between two neighbouring members.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Bay {
    /// Number of the member forward of it; none at the bow.
    pub fore_member: Option<usize>,
    /// Number of the member aft of it; none at the stern.
    pub aft_member: Option<usize>,
    /// Station where it starts: the aft edge of the flange forward of it.
    pub from: Length,
    /// Station where it ends: the fore edge of the flange aft of it.
    pub to: Length,
    /// Clear distance between the two.
    pub clear: Length,
}

impl Cost {
    /// Adds another's, cost by cost.
    pub(crate) fn add(&mut self, other: &Cost) {
        self.short_seams += other.short_seams;
        self.boards += other.boards;
        self.narrow_boards += other.narrow_boards;
        self.ripped_boards += other.ripped_boards;
        self.unevenness += other.unevenness;
        self.seam_length += other.seam_length;
        self.shift += other.shift;
        self.finish_short += other.finish_short;
    }
}

impl Seams {
    /// No layout, because none is asked for.
    pub fn unasked() -> Seams {
        Seams { layouts: Vec::new(), no_layout: None, proven: true }
    }

    /// No layout, for a reason that lies outside the seams.
    pub fn none(reason: NoLayout) -> Seams {
        Seams { layouts: Vec::new(), no_layout: Some(reason), proven: true }
    }
}

impl NoLayout {
    /// A reason in words alone.
    pub(super) fn told(reason: String) -> NoLayout {
        NoLayout { reason, bay: None, sheet: None, shortfall: None, mend: Vec::new() }
    }

    /// A reason that lies in a rule, in no bay and in no sheet.
    pub fn by_rule(reason: String, mend: Vec<String>) -> NoLayout {
        NoLayout { mend, ..NoLayout::told(reason) }
    }

    /// A reason that lies in a sheet and in no bay.
    pub fn by_sheet(reason: String, sheet: Option<String>, shortfall: Length, mend: Vec<String>) -> NoLayout {
        NoLayout { sheet, shortfall: Some(shortfall), mend, ..NoLayout::told(reason) }
    }
}
