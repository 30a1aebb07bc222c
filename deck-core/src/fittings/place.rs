//! Each hole on its new panel, held against what lies near it.

use super::bolt::{Bolt, Layers, Stack};
use super::datum::OldDatum;
use crate::frame::{CrossMember, Frame};
use crate::geometry::{Limit, Path, Point};
use crate::length::Length;
use crate::panels::Panel;
use crate::seams::Seam;
use serde::{Deserialize, Serialize};

/// A fitting: what its holes are drilled for, and where they were on the old deck.
#[derive(Debug, Clone, PartialEq, Eq)]
#[non_exhaustive]
pub struct Fitting {
    /// What the shop calls it.
    pub name: String,
    /// The bolt of each of its holes.
    pub bolt: Bolt,
    /// Its holes on the old deck, from the old datum.
    pub holes: Vec<Point>,
}

impl Fitting {
    /// A fitting with one kind of bolt.
    pub fn new(name: impl Into<String>, bolt: Bolt, holes: Vec<Point>) -> Fitting {
        Fitting { name: name.into(), bolt, holes }
    }
}

/// What holes are drilled through and held against.
#[derive(Debug, Clone, Copy)]
pub struct Ground<'a> {
    /// The panels.
    pub panels: &'a [Panel],
    /// The seams.
    pub seams: &'a [Seam],
    /// The members.
    pub frame: &'a Frame,
    /// Wall of a flange where it was not measured.
    pub wall: Length,
    /// Board and tape; the wall is each member's own.
    pub layers: Layers,
    /// Screws of the deck: middles.
    pub fasteners: &'a [Point],
    /// Old holes in the members: middles and diameters.
    pub old_holes: &'a [(Point, Length)],
    /// Least distance from a hole's middle to a seam.
    pub from_seam: SeamDistance,
    /// Least distance from a hole's middle to an edge of a flange that it goes through, in halves of its diameter.
    pub in_metal_halves: i64,
    /// Lengths of bolts that are sold.
    pub sold: &'a [Length],
}

/// How far holes keep off a seam.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SeamDistance {
    /// A length.
    Given(Length),
    /// So many diameters of the bolt.
    Diameters(i64),
}

/// A hole of the old deck on the new one.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct FittedHole {
    /// The fitting's name.
    pub fitting: String,
    /// Its number among the fitting's holes, from 1.
    pub number: usize,
    /// Station on the new deck.
    pub x: Length,
    /// Distance from the new deck's port edge.
    pub y: Length,
    /// The panel that it goes through; none where there is no board.
    pub panel: Option<String>,
    /// Distance from the panel's fore edge.
    pub from_fore: Option<Length>,
    /// Distance from the panel's port edge.
    pub from_port: Option<Length>,
    /// The nearest seam.
    pub seam: Option<NearSeam>,
    /// The nearest member.
    pub member: Option<NearMember>,
    /// True where an old hole in the member lies right under it, wide enough for the bolt.
    pub reuses_old_hole: bool,
    /// The bolt.
    pub bolt: Bolt,
    /// What it goes through.
    pub stack: Stack,
    /// What is wrong with its place.
    pub findings: Vec<HoleFinding>,
}

/// The seam nearest to a hole.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct NearSeam {
    /// Its number.
    pub number: usize,
    /// Distance from the hole's middle to the nearer board edge; zero in the gap.
    pub distance: Length,
    /// What there should be.
    pub least: Length,
}

/// The member nearest to a hole.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct NearMember {
    /// Its number.
    pub number: usize,
    /// True where the bolt goes through its flange.
    pub through: bool,
    /// Distance from the hole's middle to the nearer edge of the flange.
    pub distance: Length,
}

/// Something wrong with a hole's place.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct HoleFinding {
    /// What it is.
    pub rule: HoleRule,
    /// How much is missing, where that can be said.
    pub short_by: Length,
    /// How far aft, or forward below zero, the hole would have to be moved for this alone; none where another way mends it.
    pub aft: Option<Length>,
}

/// What can be wrong with a hole's place.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum HoleRule {
    /// There is no board.
    OffBoard,
    /// It lies in an opening.
    InOpening,
    /// It is too near to a seam.
    NearSeam,
    /// It goes through a flange too near to its edge.
    FlangeEdge,
    /// Its plate or washer, below, would lie on the edge of a flange.
    FoulsFlange,
    /// It is too near to a fastener of the deck.
    NearFastener,
    /// It goes through a flange too near to an old hole.
    NearOldHole,
    /// No bolt that is sold is long enough.
    NoBolt,
}

/// Holes and fasteners keep so many diameters of the larger, middle to middle: common practice, no source.
const APART: i64 = 3;
/// Two hole middles nearer than this are one hole: what a tape reads.
const SAME: (i64, i64) = (1, 32);

/// Puts every hole of every fitting on the new panels, in order.
pub fn place(fittings: &[Fitting], datum: &OldDatum, ground: &Ground<'_>) -> Vec<FittedHole> {
    let holes = fittings.iter().flat_map(|fitting| {
        fitting.holes.iter().enumerate().map(move |(index, hole)| (fitting, index + 1, datum.on_deck(hole.x, hole.y)))
    });
    holes.map(|(fitting, number, at)| ground.hole(fitting, number, at)).collect()
}

impl Ground<'_> {
    fn hole(&self, fitting: &Fitting, number: usize, at: Point) -> FittedHole {
        let bolt = &fitting.bolt;
        let panel = self.panels.iter().find(|panel| encloses(&panel.shape, at));
        let seam = self.seam(at, bolt.diameter);
        let member = self.member(at);
        let under = member.filter(|member| member.through).and_then(|near| self.numbered(near.number));
        let wall = under.map(|member| member.wall.unwrap_or(self.wall));
        let stack = Stack::new(bolt, &Layers { wall, ..self.layers }, self.sold);
        let reuses_old_hole = under.is_some() && self.reuses(at, bolt.diameter);
        let mut hole = FittedHole {
            fitting: fitting.name.clone(),
            number,
            x: at.x,
            y: at.y,
            panel: panel.map(|panel| panel.label.clone()),
            from_fore: panel.map(|panel| at.x - panel.bounds.fore),
            from_port: panel.map(|panel| at.y - panel.bounds.port),
            seam,
            member,
            reuses_old_hole,
            bolt: bolt.clone(),
            stack,
            findings: Vec::new(),
        };
        hole.findings = self.findings(&hole, panel);
        hole
    }

    fn seam(&self, at: Point, diameter: Length) -> Option<NearSeam> {
        let least = match self.from_seam {
            SeamDistance::Given(length) => length,
            SeamDistance::Diameters(count) => diameter * count,
        };
        let near = |seam: &Seam| NearSeam { number: seam.number, distance: off((seam.fore, seam.aft), at.x), least };
        // A butt in another row of boards is no seam of the hole's board.
        let own = |seam: &&Seam| seam.lane.is_none_or(|lane| lane.port <= at.y && at.y <= lane.starboard);
        self.seams.iter().filter(own).map(near).min_by_key(|near| near.distance)
    }

    /// The member that the hole goes through, or else the nearest.
    fn member(&self, at: Point) -> Option<NearMember> {
        let near = |member: &CrossMember| {
            let reaches =
                member.port_end.is_none_or(|end| end <= at.y) && member.starboard_end.is_none_or(|end| at.y <= end);
            let through = reaches && member.fore <= at.x && at.x <= member.aft;
            let distance = (at.x - member.fore).abs().min((at.x - member.aft).abs());
            NearMember { number: member.number, through, distance }
        };
        self.frame.members().iter().map(near).min_by_key(|near| (!near.through, near.distance))
    }

    fn numbered(&self, number: usize) -> Option<&CrossMember> {
        self.frame.members().iter().find(|member| member.number == number)
    }

    fn reuses(&self, at: Point, diameter: Length) -> bool {
        let same = Length::inch_fraction(SAME.0, SAME.1);
        self.old_holes.iter().any(|(old, size)| *size >= diameter && old.distance(at) <= same)
    }

    fn findings(&self, hole: &FittedHole, panel: Option<&Panel>) -> Vec<HoleFinding> {
        let (at, diameter) = (Point::new(hole.x, hole.y), hole.bolt.diameter);
        let mut found = Vec::new();
        let mut tell = |rule: HoleRule, short_by: Length, aft: Option<Length>| {
            found.push(HoleFinding { rule, short_by, aft });
        };
        match panel {
            None => tell(HoleRule::OffBoard, Length::ZERO, None),
            Some(panel) if panel.openings.iter().any(|opening| encloses(&opening.shape, at)) => {
                tell(HoleRule::InOpening, Length::ZERO, None);
            }
            Some(_) => {}
        }
        if let Some(near) = hole.seam.filter(|near| near.distance < near.least) {
            let seam = self.seams.iter().find(|seam| seam.number == near.number);
            let aft = seam.map(|seam| away((seam.fore, seam.aft), at.x, near.least));
            tell(HoleRule::NearSeam, near.least - near.distance, aft);
        }
        if let Some((near, member)) = hole.member.and_then(|near| Some((near, self.numbered(near.number)?))) {
            if near.through {
                let least = diameter.part(self.in_metal_halves, 2);
                let lacks = least - near.distance;
                let fore = at.x - member.fore <= member.aft - at.x;
                if lacks > Length::ZERO {
                    tell(HoleRule::FlangeEdge, lacks, Some(if fore { lacks } else { -lacks }));
                }
            } else {
                let below = hole.bolt.plate.map_or(diameter, |plate| (plate.width / 2).max(diameter));
                let lacks = below - near.distance;
                if lacks > Length::ZERO {
                    let aft = away((member.fore, member.aft), at.x, below);
                    tell(HoleRule::FoulsFlange, lacks, Some(aft));
                }
            }
        }
        let least = diameter * APART;
        if let Some(near) = self.fasteners.iter().map(|screw| screw.distance(at)).min().filter(|near| *near < least) {
            tell(HoleRule::NearFastener, least - near, None);
        }
        if hole.member.is_some_and(|near| near.through) && !hole.reuses_old_hole {
            let lacks = |(old, size): &(Point, Length)| diameter.max(*size) * APART - old.distance(at);
            if let Some(lacks) = self.old_holes.iter().map(lacks).max().filter(|lacks| *lacks > Length::ZERO) {
                tell(HoleRule::NearOldHole, lacks, None);
            }
        }
        if hole.stack.bolt.is_none() {
            let longest = self.sold.iter().copied().max().unwrap_or_default();
            tell(HoleRule::NoBolt, hole.stack.needed - longest, None);
        }
        found
    }
}

/// True where a point lies within a path or on its edge athwart.
fn encloses<T: Copy>(path: &Path<T>, at: Point) -> bool {
    let within = |limit| path.breadths(at.x, limit).iter().any(|(port, starboard)| *port <= at.y && at.y <= *starboard);
    within(Limit::Aft) || within(Limit::Fore)
}

/// How far a station lies off a stretch; zero within it.
fn off((from, to): (Length, Length), x: Length) -> Length {
    (from - x).max(x - to).max(Length::ZERO)
}

/// How far aft a station has to be moved to lie so far off a stretch, on the side on which it lies.
fn away((from, to): (Length, Length), x: Length, least: Length) -> Length {
    if x <= from.midpoint(to) { from - least - x } else { to + least - x }
}
