//! Where on each flange a seam may lie.

use super::Rules;
use super::SeamProblem;
use crate::frame::CrossMember;
use crate::geometry::Limit;
use crate::length::Length;
use crate::math::IntervalSet;

/// A stretch of positions on a flange that are alike in kind.
#[derive(Debug, Clone)]
pub(super) struct Piece {
    /// Foremost and aftmost position of the gap's fore edge, in nanometres.
    pub(super) low: i64,
    pub(super) high: i64,
    /// Two rows of fasteners do not fit here.
    pub(super) short: bool,
    /// Length of the seam at both ends, in nanometres.
    pub(super) breadth: [i64; 2],
}

/// The positions that a member offers to a seam.
#[derive(Debug, Clone)]
pub(super) struct Seat {
    pub(super) pieces: Vec<Piece>,
    /// Twice the position at which the gap lies in the middle of the flange.
    pub(super) doubled_middle: i64,
    /// How far the seam's ends lie from its middle along the boat, where it follows a member out of square.
    pub(super) tilt: i64,
}

/// How a seam lies on a member, and what of its flange is under it all over the beam. Positions are at the centreline.
#[derive(Debug, Clone, Copy)]
pub(super) struct Lie {
    /// Along the member's chord, and not athwart.
    pub(super) along: bool,
    pub(super) fore: Length,
    pub(super) aft: Length,
}

impl Lie {
    /// Athwart where that leaves both rows and both bearings their room; otherwise the way that leaves more.
    pub(super) fn new(member: &CrossMember, rules: &Rules) -> Lie {
        let needed = rules.gap + rules.least_bearing.max(rules.edge_in_ply + rules.edge_in_metal) * 2;
        let [square, chord] = [false, true].map(|along| {
            let (fore, aft) = member.under_edge(along);
            Lie { along, fore, aft }
        });
        if square.room() >= needed || square.room() >= chord.room() { square } else { chord }
    }

    fn room(self) -> Length {
        self.aft - self.fore
    }

    /// How much further aft the seam's starboard end lies than its port end, over the beam.
    pub(super) fn slant(self, member: &CrossMember) -> Length {
        member.skew.filter(|_| self.along).map_or(Length::ZERO, |skew| skew.out)
    }
}

impl Seat {
    pub(super) fn new(problem: &SeamProblem<'_>, member: &CrossMember) -> Seat {
        let rules = &problem.rules;
        let lie = Lie::new(member, rules);
        // Rounded up: a board's corner is never further out than reckoned.
        let tilt = (lie.slant(member).abs().nanometres() + 1) / 2;
        let bearing = span(lie, rules.gap, rules.least_bearing);
        let mut open = IntervalSet::of(bearing.0, bearing.1).within(1, nm(problem.deck_length - rules.gap) - 1);
        for zone in &problem.clear {
            open.remove_open(nm(zone.from - rules.gap) - tilt, nm(zone.to) + tilt);
        }
        let rows = span(lie, rules.gap, rules.edge_in_ply + rules.edge_in_metal);
        let mut pieces = Vec::new();
        for &(low, high) in open.intervals() {
            for (start, end, short) in [
                (low, high.min(rows.0 - 1), true),
                (low.max(rows.0), high.min(rows.1), false),
                (low.max(rows.1 + 1), high, true),
            ] {
                add_pieces(problem, start, end, short, &mut pieces);
            }
            if rows.0 > rows.1 {
                // No position takes two rows: the two short stretches above overlap, and one serves.
                pieces.retain(|piece: &Piece| piece.high < low || piece.low > high);
                add_pieces(problem, low, high, true, &mut pieces);
            }
        }
        Seat { pieces, doubled_middle: nm(lie.fore + lie.aft - rules.gap), tilt }
    }

    /// The positions of one kind, or of both.
    pub(super) fn positions(&self, short: Option<bool>) -> IntervalSet {
        let mut all = IntervalSet::new();
        for piece in self.pieces.iter().filter(|piece| short.is_none_or(|short| piece.short == short)) {
            all.add(piece.low, piece.high);
        }
        all
    }
}

/// Positions of the gap's fore edge that leave a margin on both sides of the gap.
fn span(lie: Lie, gap: Length, margin: Length) -> (i64, i64) {
    (nm(lie.fore + margin), nm(lie.aft - margin - gap))
}

pub(super) fn nm(length: Length) -> i64 {
    length.nanometres()
}

/// Adds a stretch, cut where the outline has a corner, so that the seam's length changes smoothly in each part.
fn add_pieces(problem: &SeamProblem<'_>, low: i64, high: i64, short: bool, pieces: &mut Vec<Piece>) {
    if low > high {
        return;
    }
    let mut start = low;
    let breaks = corners(problem, low, high);
    for end in breaks.into_iter().chain([high]) {
        if start <= end {
            let breadth = [start, end].map(|x| breadth(problem, x));
            pieces.push(Piece { low: start, high: end, short, breadth });
        }
        start = end.saturating_add(1);
    }
}

/// Stations of the outline's corners over a stretch, where the seam's length is not the same all over it.
fn corners(problem: &SeamProblem<'_>, low: i64, high: i64) -> Vec<i64> {
    let Some(outline) = problem.outline else { return Vec::new() };
    let stations = outline.path().sides().iter().map(|side| nm(side.from.x));
    let mut corners: Vec<i64> = stations.filter(|x| (low..high).contains(x)).collect();
    corners.sort_unstable();
    corners.dedup();
    corners
}

/// Length of a seam whose forward board ends at a station: measured on that board's edge.
pub(super) fn breadth(problem: &SeamProblem<'_>, position: i64) -> i64 {
    problem.outline.map_or(0, |outline| nm(outline.breadth(Length::from_nanometres(position), Limit::Fore)))
}
