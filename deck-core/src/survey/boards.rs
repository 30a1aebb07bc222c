//! Old boards as evidence: their widths, one after another, against the stations of the members.

use super::network::size_kind;
use crate::error::{Error, Fault, Kind};
use crate::length::{Length, Notation};
use serde::{Deserialize, Serialize};

/// What the old boards tell.
///
/// Boards shrink and swell, and were not always cut right, so each is held against the members next to it and not against a
/// sum over the whole deck.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
#[non_exhaustive]
pub struct OldBoards {
    /// Widths of the old boards from the bow aft.
    #[cfg_attr(feature = "schema", schemars(length(min = 1)))]
    pub widths: Vec<Length>,
    /// Where the first of them began. Left out: at 0.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub start: Option<Length>,
    /// Gap between them. Left out: none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub gap: Option<Length>,
    /// Rows of old screw holes, as distances from the bow edge.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub rows: Vec<Length>,
    /// Stations of the members' middles as measured. Left out in a job: those of its frame.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub members: Vec<Length>,
    /// How far a board may have shrunk, swollen or been cut wrong. Left out: 1/4 in, common practice, no source.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tolerance: Option<Length>,
    /// Width of the members' flanges: a seam lay anywhere on one. Left out in a job: that of its frame; elsewhere 2 in, from
    /// memory.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub flange: Option<Length>,
}

/// The old boards held against the members.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct BoardEvidence {
    /// How far off a board could be.
    pub tolerance: Length,
    /// Width of the flanges.
    pub flange: Length,
    /// The seams and the rows of holes in order, and the member on which each lay.
    pub marks: Vec<BoardMark>,
    /// What does not fit.
    pub findings: Vec<BoardFinding>,
}

/// A seam between old boards, or a row of old holes.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct BoardMark {
    /// What it is.
    pub kind: MarkKind,
    /// Its number from the bow, from 1.
    pub number: usize,
    /// Where it lay, reckoned from the member under the seam before it.
    pub station: Length,
    /// The member on which it lay, counted from 1; none where there is none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub member: Option<usize>,
    /// That member's station.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub member_station: Option<Length>,
    /// The mark less the member's middle.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub off: Option<Length>,
}

/// What a mark is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum MarkKind {
    /// Where two old boards met.
    Seam,
    /// A row of old screw holes.
    Row,
}

/// Something that the boards and the members do not agree about.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct BoardFinding {
    /// What it is.
    pub kind: FindingKind,
    /// Where it is.
    pub station: Length,
    /// The member, where it is about one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub member: Option<usize>,
    /// The whole in a sentence.
    pub message: String,
}

/// What boards and members disagree about.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum FindingKind {
    /// A seam or a row lay where no member was measured.
    Missing,
    /// Two members stand where one was.
    Doubled,
    /// A member under which no row of holes lay.
    Unscrewed,
}

impl OldBoards {
    /// Boards of these widths, from the bow aft.
    pub fn new(widths: Vec<Length>) -> OldBoards {
        let (rows, members) = (Vec::new(), Vec::new());
        OldBoards { widths, start: None, gap: None, rows, members, tolerance: None, flange: None }
    }

    /// With rows of old holes.
    #[must_use]
    pub fn rows(mut self, rows: Vec<Length>) -> OldBoards {
        self.rows = rows;
        self
    }

    /// With the members' stations.
    #[must_use]
    pub fn members(mut self, members: Vec<Length>) -> OldBoards {
        self.members = members;
        self
    }

    /// With another flange.
    #[must_use]
    pub fn flange(mut self, flange: Length) -> OldBoards {
        self.flange = Some(flange);
        self
    }

    /// With another tolerance.
    #[must_use]
    pub fn tolerance(mut self, tolerance: Length) -> OldBoards {
        self.tolerance = Some(tolerance);
        self
    }

    /// Looks whether they can be held against anything.
    ///
    /// # Errors
    /// No boards, sizes of zero or less, stations out of order. Messages write lengths in that notation.
    pub fn check(&self, notation: &Notation) -> Result<(), Error> {
        let positive = |length: Length, what: &str| {
            let text = notation.text(length);
            (length <= Length::ZERO).then(|| {
                let message = format!("{text} is no {what}.");
                Fault::new(size_kind(length), text, message, "More than zero is accepted.")
            })
        };
        for (index, width) in self.widths.iter().enumerate() {
            if let Some(fault) = positive(*width, "width of a board") {
                return Err(fault.within(index).within("widths").into());
            }
        }
        for (field, list) in [("rows", &self.rows), ("members", &self.members)] {
            if let Some(index) = list.windows(2).position(|pair| pair.first() > pair.last()) {
                let message = "This one does not lie aft of the one before it.";
                let fault = Fault::new(Kind::FrameOutOfOrder, "", message, "They are listed from the bow aft.");
                return Err(fault.within(index + 1).within(field).into());
            }
        }
        if self.widths.is_empty() {
            let fault =
                Fault::new(Kind::EmptyList, "", "There are no old boards.", "Give their widths from the bow aft.");
            return Err(fault.within("widths").into());
        }
        for (field, length) in [("flange", self.flange), ("tolerance", self.tolerance)] {
            if let Some(fault) = length.and_then(|length| positive(length, field)) {
                return Err(fault.within(field).into());
            }
        }
        Ok(())
    }
}

/// A quarter of an inch: trade figure for how far old boards are off.
const TOLERANCE: (i64, i64) = (1, 4);
/// Two inches, a usual flange.
const FLANGE: i64 = 2;

/// Lays the old boards on the members.
///
/// # Method
/// From seam to seam: where a seam lay on a member, the next board is counted from that member, so that what boards have shrunk
/// does not add up. A seam may lie anywhere on the flange; a row of screws as well. Derived here, no source.
pub(super) fn evidence(boards: &OldBoards, notation: &Notation) -> BoardEvidence {
    let tolerance = boards.tolerance.unwrap_or(Length::inch_fraction(TOLERANCE.0, TOLERANCE.1));
    let flange = boards.flange.unwrap_or(Length::inches(FLANGE));
    let reach = tolerance + flange / 2;
    let gap = boards.gap.unwrap_or_default();
    let mut marks = Vec::new();
    let mut at = boards.start.unwrap_or_default();
    let inner = boards.widths.len().saturating_sub(1);
    for (index, width) in boards.widths.iter().take(inner).enumerate() {
        let station = at + *width + gap / 2;
        let mark = mark(MarkKind::Seam, index + 1, station, &boards.members, reach);
        // The seam's own place on the flange is known no better than the board: its middle is taken, within the tolerance.
        let drift = mark.off.unwrap_or_default();
        let kept = drift.abs().min(flange / 2);
        at = station - drift + if drift.is_negative() { -kept } else { kept } + gap / 2;
        marks.push(mark);
    }
    for (index, &row) in boards.rows.iter().enumerate() {
        marks.push(mark(MarkKind::Row, index + 1, row, &boards.members, reach));
    }
    marks.sort_by_key(|mark| (mark.station, mark.kind));
    let findings = findings(boards, &marks, flange, notation);
    BoardEvidence { tolerance, flange, marks, findings }
}

fn mark(kind: MarkKind, number: usize, station: Length, members: &[Length], reach: Length) -> BoardMark {
    let near = members.iter().enumerate().map(|(index, member)| ((station - *member).abs(), index, *member)).min();
    let near = near.filter(|(apart, ..)| *apart <= reach);
    BoardMark {
        kind,
        number,
        station,
        member: near.map(|(_, index, _)| index + 1),
        member_station: near.map(|(.., member)| member),
        off: near.map(|(.., member)| station - member),
    }
}

fn findings(boards: &OldBoards, marks: &[BoardMark], flange: Length, notation: &Notation) -> Vec<BoardFinding> {
    let text = |length: Length| notation.figure(length);
    let mut found = Vec::new();
    for mark in marks.iter().filter(|mark| mark.member.is_none()) {
        let what = match mark.kind {
            MarkKind::Seam => format!("Old boards {} and {} met", mark.number, mark.number + 1),
            MarkKind::Row => format!("Row {} of old holes lies", mark.number),
        };
        let near = nearest(&boards.members, mark.station, notation);
        let message = format!(
            "{what} at about {}, where no member was measured{near}: look for a missed one.",
            text(mark.station)
        );
        found.push(BoardFinding { kind: FindingKind::Missing, station: mark.station, member: None, message });
    }
    for (index, pair) in boards.members.windows(2).enumerate() {
        if let &[fore, aft] = pair
            && aft - fore < flange
        {
            let message = format!(
                "Members {} and {}, at {} and {}, lie {} apart, less than a flange: one member was read twice.",
                index + 1,
                index + 2,
                text(fore),
                text(aft),
                text(aft - fore)
            );
            let (kind, member) = (FindingKind::Doubled, Some(index + 2));
            found.push(BoardFinding { kind, station: aft, member, message });
        }
    }
    if !boards.rows.is_empty() {
        let last = boards.rows.last().copied().unwrap_or_default();
        for (index, &member) in boards.members.iter().enumerate().filter(|(_, member)| **member <= last) {
            let number = index + 1;
            let doubled = found.iter().any(|finding| finding.member == Some(number));
            if doubled || marks.iter().any(|mark| mark.member == Some(number)) {
                continue;
            }
            let message = format!("Under member {number}, at {}, lay no row of old holes: is it there?", text(member));
            found.push(BoardFinding { kind: FindingKind::Unscrewed, station: member, member: Some(number), message });
        }
    }
    found.sort_by_key(|finding| finding.station);
    found
}

/// Where the members on either side lie, for a person who goes and looks.
fn nearest(members: &[Length], station: Length, notation: &Notation) -> String {
    let fore = members.iter().enumerate().rfind(|(_, member)| **member <= station);
    let aft = members.iter().enumerate().find(|(_, member)| **member > station);
    let named = |(index, member): (usize, &Length)| format!("member {} at {}", index + 1, notation.figure(*member));
    match (fore, aft) {
        (Some(fore), Some(aft)) => format!(" (between {} and {})", named(fore), named(aft)),
        (Some(only), None) | (None, Some(only)) => format!(" (nearest {})", named(only)),
        (None, None) => String::new(),
    }
}
