//! Rows of fasteners, along each member under each panel.

use super::around::{Task, around};
use super::divide::{Blocked, clear, even, free_ends, greatest_gap};
use super::old_hole::{AroundHoles, OldHole};
use super::schedule::Schedule;
use super::slant::{Level, RowSlant};
use crate::frame::{CrossMember, Frame};
use crate::geometry::{CutLine, Limit};
use crate::length::Length;
use crate::outline::Outline;
use crate::panels::{Edge, Panel};
use serde::{Deserialize, Serialize};

/// Every row, and the count of all.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Fastening {
    /// The rows, panel by panel and from the bow aft.
    pub rows: Vec<Row>,
    /// Fasteners in all rows.
    pub count: usize,
    /// Fasteners in edge rows.
    pub edge_count: usize,
    /// Fasteners in field rows.
    pub field_count: usize,
}

/// A row of fasteners through one panel into one member.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Row {
    /// Label of the panel.
    pub panel: String,
    /// Number of the member.
    pub member: usize,
    /// Edge or field.
    pub kind: RowKind,
    /// The seam that the row lies beside, where it does.
    pub seam: Option<usize>,
    /// Station of the row; of one that is slanted, at the deck's centreline.
    pub station: Length,
    /// Where the row runs that follows a member out of square; none: athwart.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub slant: Option<RowSlant>,
    /// Each fastener's station, where the row is slanted; otherwise that of the row is that of all.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub stations: Vec<Length>,
    /// Each fastener's distance from the port edge, from port to starboard.
    pub positions: Vec<Length>,
    /// Greatest spacing that the schedule allows here.
    pub limit: Length,
    /// Greatest gap between fasteners, or from an end of the row to the first of them. Where no fastener finds room, the
    /// whole stretch of board over the member.
    pub greatest_gap: Length,
    /// True where that gap is over the limit, or where no fastener finds room.
    pub over_limit: bool,
    /// How much the flange lacks for the edge distances in board and metal; zero where they are kept.
    pub short_by: Length,
    /// Fasteners moved to the side of an opening.
    pub moved: usize,
    /// Fasteners dropped at an opening.
    pub dropped: usize,
    /// What was done to keep clear of old holes in the member; none where none was in the way.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub around: Option<AroundHoles>,
}

impl Row {
    /// The row as it follows a member out of square.
    fn slanted(mut self, level: &Level, beam: Length) -> Row {
        self.slant = Some(level.slant(self.station));
        self.stations = self.positions.iter().map(|&y| self.station_at(y, beam)).collect();
        self
    }

    /// The row's station at a distance from the port edge, on a deck of that beam.
    pub fn station_at(&self, from_port: Length, beam: Length) -> Length {
        let line = self.slant.map(|slant| CutLine::slanted(slant.port, slant.starboard - slant.port, beam));
        line.map_or(self.station, |line| line.at(from_port))
    }
}

/// Whether a row lies along an edge of its panel.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum RowKind {
    /// On the panel's first or last member.
    Edge,
    /// Between those.
    Field,
}

/// Two fasteners are not set nearer to each other than this many diameters. Common practice for screws beside old
/// holes (two to three diameters), no source.
const DIAMETERS_APART: i64 = 3;

/// The rows of fasteners that hold the panels to the frame.
///
/// # Examples
/// Twenty feet by eight on 24 in members, 8 in spacing: five boards with two edge rows and one field row each, thirteen
/// screws to a row.
/// ```
/// use deck_core::fasteners::{Fastener, Schedule, fasteners};
/// use deck_core::frame::{Frame, FrameSpec};
/// use deck_core::outline::{Deck, Parametric};
/// use deck_core::panels::panels;
/// use deck_core::seams::{BoardStock, Rules, SeamProblem, seams};
/// use deck_core::Length;
/// let inches = Length::inches;
/// let outline = Deck::Parametric(Parametric::new(inches(240), inches(96))).outline()?;
/// let frame = Frame::new(&FrameSpec::regular(inches(0), inches(240), inches(24), inches(2)))?;
/// let sheets = vec![BoardStock { label: "48 x 96".into(), width: inches(48) }];
/// let found = seams(&SeamProblem::new(&frame, inches(240), sheets, Rules::new("1/2 in".parse()?)));
/// let boards = panels(&outline, &found.layouts[0], &[], "3/4 in".parse()?);
/// let screw = Fastener::new("screw", "1/4 in".parse()?, "2 in".parse()?);
/// let schedule = Schedule::new(screw, inches(8), inches(8), "3/8 in".parse()?).end_distance(inches(1));
/// assert_eq!(fasteners(&boards, &frame, &outline, &schedule).count, 195);
/// # Ok::<(), deck_core::Error>(())
/// ```
pub fn fasteners(panels: &[Panel], frame: &Frame, outline: &Outline, schedule: &Schedule) -> Fastening {
    let deck = Deck { beam: outline.beam(), edge: Rim::Outline(outline) };
    fastening(panels, frame, deck, schedule)
}

/// The rows of fasteners where no outline is known but that of the panels, all of which are given.
///
/// A deck's sides are then those of the boards, and its beam that of the widest: the same rows as with the outline, unless
/// the deck is widest within a gap.
pub fn fasteners_of_panels(panels: &[Panel], frame: &Frame, schedule: &Schedule) -> Fastening {
    let beam = panels.iter().map(|panel| panel.bounds.starboard).max().unwrap_or_default();
    fastening(panels, frame, Deck { beam, edge: Rim::Panels(panels) }, schedule)
}

/// The deck as the rows see it.
#[derive(Clone, Copy)]
struct Deck<'a> {
    beam: Length,
    edge: Rim<'a>,
}

/// Where the deck's edge is known from.
#[derive(Clone, Copy)]
enum Rim<'a> {
    Outline(&'a Outline),
    Panels(&'a [Panel]),
}

impl Deck<'_> {
    /// Where the deck starts and ends on a line athwart under a board.
    fn sides(&self, board: usize, station: Length, limit: Limit) -> Option<(Length, Length)> {
        let stretches = match self.edge {
            Rim::Outline(outline) => outline.path().breadths(station, limit),
            Rim::Panels(panels) => {
                let parts = panels.iter().filter(|panel| panel.board == board);
                parts.flat_map(|panel| panel.shape.breadths(station, limit)).collect()
            }
        };
        let port = stretches.iter().map(|stretch| stretch.0).min()?;
        Some((port, stretches.iter().map(|stretch| stretch.1).max()?))
    }
}

fn fastening(panels: &[Panel], frame: &Frame, deck: Deck<'_>, schedule: &Schedule) -> Fastening {
    let rows: Vec<Row> = panels.iter().flat_map(|panel| panel_rows(panel, frame, deck, schedule)).collect();
    let count = |kind: RowKind| rows.iter().filter(|row| row.kind == kind).map(|row| row.positions.len()).sum();
    let (edge_count, field_count) = (count(RowKind::Edge), count(RowKind::Field));
    Fastening { rows, count: edge_count + field_count, edge_count, field_count }
}

fn panel_rows(panel: &Panel, frame: &Frame, deck: Deck<'_>, schedule: &Schedule) -> Vec<Row> {
    let bounds = panel.bounds;
    let under: Vec<&CrossMember> =
        frame.members().iter().filter(|member| member.aft > bounds.fore && member.fore < bounds.aft).collect();
    let last = under.len().saturating_sub(1);
    let mut rows = Vec::new();
    for (index, member) in under.into_iter().enumerate() {
        let kind = if index == 0 || index == last { RowKind::Edge } else { RowKind::Field };
        let level = Level::new(panel, member, deck.beam);
        let line = match &level {
            Some(level) => Line::new(&level.panel, level.edges, &level.member, deck, schedule, kind),
            None => Line::new(panel, (bounds.fore, bounds.aft), member, deck, schedule, kind),
        };
        for (port, starboard) in line.panel.shape.breadths(line.station, line.limit()) {
            let slanted = |row: Row| level.as_ref().map_or(row.clone(), |level| row.slanted(level, deck.beam));
            rows.extend(line.row(port, starboard).map(slanted));
        }
    }
    rows
}

/// The line athwart that a row lies on.
struct Line<'a> {
    panel: &'a Panel,
    /// The panel's fore and aft edge.
    edges: (Length, Length),
    member: &'a CrossMember,
    deck: Deck<'a>,
    schedule: &'a Schedule,
    kind: RowKind,
    station: Length,
    short_by: Length,
    seam: Option<usize>,
}

impl<'a> Line<'a> {
    fn new(
        panel: &'a Panel,
        edges: (Length, Length),
        member: &'a CrossMember,
        deck: Deck<'a>,
        schedule: &'a Schedule,
        kind: RowKind,
    ) -> Line<'a> {
        let (in_ply, in_metal) = (schedule.edge_in_ply, schedule.edge_in_metal);
        let low = (member.fore + in_metal).max(edges.0 + in_ply);
        let high = (member.aft - in_metal).min(edges.1 - in_ply);
        let fits = low <= high;
        // Where both distances cannot be kept, the row lies in the middle of what bears.
        let bearing = (member.fore.max(edges.0), member.aft.min(edges.1));
        let station = if fits { low.midpoint(high) } else { bearing.0.midpoint(bearing.1) };
        let seam = panel.shape.sides().iter().find_map(|side| match side.edge {
            Edge::Seam { seam, member: Some(under) } if under == member.number => Some(seam),
            Edge::Seam { seam, member: None } if member.fore <= side.from.x && side.from.x <= member.aft => Some(seam),
            _ => None,
        });
        let short_by = if fits { Length::ZERO } else { low - high };
        Line { panel, edges, member, deck, schedule, kind, station, short_by, seam }
    }

    /// A row right on an edge athwart looks into the panel.
    fn limit(&self) -> Limit {
        if self.station <= self.panel.bounds.fore { Limit::Aft } else { Limit::Fore }
    }

    /// The row on a stretch of board; none where the member does not lie under it. A row on which no fastener finds room
    /// is there all the same, and says so.
    fn row(&self, port: Length, starboard: Length) -> Option<Row> {
        let metal = self.metal(port, starboard);
        if metal.0 >= starboard || metal.1 <= port {
            return None;
        }
        let ends = self.ends((port, starboard), metal);
        let blocked = self.blocked();
        let (low, high) = free_ends(ends.0, ends.1, &blocked);
        let limit = match self.kind {
            RowKind::Edge => self.schedule.edge_spacing,
            RowKind::Field => self.schedule.field_spacing,
        };
        // The row aft of a seam is the one on the panel's fore edge.
        let aft_of_seam = self.seam.is_some() && self.station < self.panel.bounds.fore.midpoint(self.panel.bounds.aft);
        let centreline = self.deck.beam / 2;
        let apart = self.schedule.fastener.diameter * DIAMETERS_APART;
        let divided = |more: i64| {
            let even = even(low, high, limit, more, self.schedule.stagger && aft_of_seam);
            clear(&even, &blocked, (low, high), centreline, apart)
        };
        let division = divided(0);
        let old: Vec<&OldHole> =
            self.schedule.old_holes.iter().filter(|hole| hole.member == self.member.number).collect();
        let bolt = self.schedule.fastener.diameter;
        let again = old.iter().filter(|hole| self.schedule.reuse && hole.takes(self.station, bolt));
        let task = Task {
            division: &|more| divided(more).positions,
            blocked: &blocked,
            holes: &old.iter().filter_map(|hole| hole.blocks(self.station)).collect::<Vec<Blocked>>(),
            again: &again.map(|hole| hole.y).collect::<Vec<Length>>(),
            ends: (low, high),
            beam: self.deck.beam,
            limit,
            apart,
        };
        let (positions, around) = match around(&task) {
            Some((positions, told)) => (positions, Some(told)),
            None => (division.positions, None),
        };
        let held = !positions.is_empty();
        let greatest_gap = if held { greatest_gap(&positions, (low, high)) } else { starboard - port };
        Some(Row {
            panel: self.panel.label.clone(),
            member: self.member.number,
            kind: self.kind,
            seam: self.seam,
            station: self.station,
            slant: None,
            stations: Vec::new(),
            positions,
            limit,
            greatest_gap,
            over_limit: greatest_gap > limit || !held,
            short_by: self.short_by,
            moved: division.moved,
            dropped: division.dropped,
            around,
        })
    }

    /// Where the metal starts and ends.
    fn metal(&self, port: Length, starboard: Length) -> (Length, Length) {
        let sides = self.deck.sides(self.panel.board, self.station, self.limit()).unwrap_or((port, starboard));
        (self.member.port_end.unwrap_or(sides.0), self.member.starboard_end.unwrap_or(sides.1))
    }

    /// Where the row may start and end: at the end distance in the board, or the edge distance in the metal.
    fn ends(&self, (port, starboard): (Length, Length), metal: (Length, Length)) -> (Length, Length) {
        let (in_board, in_metal) = (self.schedule.end_distance, self.schedule.edge_in_metal);
        ((port + in_board).max(metal.0 + in_metal), (starboard - in_board).min(metal.1 - in_metal))
    }

    /// Stretches nearer than the edge distance to the panel's edge or to an opening, and the openings themselves.
    ///
    /// A short row lies nearer than that to its seam; it keeps the distance that it has.
    fn blocked(&self) -> Vec<Blocked> {
        let (fore, aft) = self.edges;
        let distance = self.schedule.edge_in_ply.min(self.station - fore).min(aft - self.station);
        let mut blocked = self.panel.shape.near(self.station, distance);
        for opening in &self.panel.openings {
            blocked.extend(opening.shape.near(self.station, self.schedule.edge_in_ply));
            blocked.extend(opening.shape.breadths(self.station, Limit::Aft));
        }
        blocked.sort_unstable();
        let mut merged: Vec<Blocked> = Vec::new();
        for (from, to) in blocked {
            match merged.last_mut().filter(|last| from < last.1) {
                Some(last) => last.1 = last.1.max(to),
                None => merged.push((from, to)),
            }
        }
        merged
    }
}
