//! What is damaged, what stays, and what a patch keeps to.

use crate::frame::CrossMember;
use crate::geometry::{Bounds, Path};
use crate::length::Length;

/// A damaged place, as far as it was found by probing.
#[derive(Debug, Clone, PartialEq, Eq)]
#[non_exhaustive]
pub struct Damage {
    /// What the shop calls it.
    pub name: String,
    /// Its edge.
    pub shape: Path<()>,
}

impl Damage {
    /// A damaged place within an edge.
    pub fn new(name: impl Into<String>, shape: Path<()>) -> Damage {
        Damage { name: name.into(), shape }
    }

    /// The least rectangle around what of it lies in a board; none where nothing does.
    pub(super) fn within(&self, board: Bounds) -> Option<Bounds> {
        let parts = self.shape.strip(Some((board.fore, ())), Some((board.aft, ())));
        let all = parts.iter().map(Path::bounds).filter_map(|part| {
            let part = Bounds {
                fore: part.fore.max(board.fore),
                aft: part.aft.min(board.aft),
                port: part.port.max(board.port),
                starboard: part.starboard.min(board.starboard),
            };
            (part.fore < part.aft && part.port < part.starboard).then_some(part)
        });
        all.reduce(around)
    }
}

/// The least rectangle around two.
pub(super) fn around(one: Bounds, other: Bounds) -> Bounds {
    Bounds {
        fore: one.fore.min(other.fore),
        aft: one.aft.max(other.aft),
        port: one.port.min(other.port),
        starboard: one.starboard.max(other.starboard),
    }
}

/// A board of the old deck.
#[derive(Debug, Clone, PartialEq, Eq)]
#[non_exhaustive]
pub struct OldBoard {
    /// Its label.
    pub label: String,
    /// Its edge.
    pub shape: Path<()>,
    /// Rectangles that no edge of a patch may cross: openings, with wood for a fastener around them.
    pub clear: Vec<Bounds>,
}

impl OldBoard {
    /// A board without openings.
    pub fn new(label: impl Into<String>, shape: Path<()>) -> OldBoard {
        OldBoard { label: label.into(), shape, clear: Vec::new() }
    }
}

/// A sheet that patches may be sawn from: athwart and fore and aft, as the grain lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct SheetSize {
    /// Longest extent athwart.
    pub athwart: Length,
    /// Longest extent fore and aft.
    pub along: Length,
}

/// What a patch keeps to.
#[derive(Debug, Clone, PartialEq, Eq)]
#[non_exhaustive]
pub struct PatchRules {
    /// How far past the damage an edge lies that is not the old board's own.
    pub margin: Length,
    /// Least bearing of a board's edge on a flange or on blocking.
    pub bearing: Length,
    /// Gap between a patch and what stays.
    pub gap: Length,
    /// Width of the blocking.
    pub blocking: Length,
    /// Narrowest strip that may be left of an old board beside a patch.
    pub least_strip: Length,
    /// Whether an edge athwart may lie on blocking between two members; otherwise only edges fore and aft do.
    pub anywhere: bool,
    /// The sheets.
    pub sheets: Vec<SheetSize>,
}

impl PatchRules {
    /// Rules with a margin and a bearing, edges athwart on members only, no gap.
    pub fn new(margin: Length, bearing: Length, blocking: Length, sheets: Vec<SheetSize>) -> PatchRules {
        PatchRules { margin, bearing, gap: Length::ZERO, blocking, least_strip: Length::ZERO, anywhere: false, sheets }
    }

    /// Stations at which an edge athwart on blocking is too near to a flange: an open stretch for each member. `port_edge`
    /// counts a patch's fore edge, otherwise its aft edge.
    pub(super) fn fouled(&self, member: &CrossMember, fore_edge: bool) -> (Length, Length) {
        // The patch bears on one side of the joint and the old board on the other, the gap between them.
        let (before, behind) = (self.bearing, self.bearing + self.gap);
        if fore_edge {
            (member.fore - before, member.aft + behind)
        } else {
            (member.fore - behind, member.aft + before)
        }
    }

    pub(super) fn fits(&self, bounds: &Bounds) -> bool {
        self.sheets.iter().any(|sheet| bounds.breadth() <= sheet.athwart && bounds.depth() <= sheet.along)
    }
}
