//! The deck from above: frame, panels, seams, openings and fasteners, dimensioned from the bow edge and the port edge.

use super::blocking;
use crate::draw::bow_up::{self, UNPLACED};
use crate::draw::deck_shape;
use crate::draw::desk::{Desk, count};
use crate::draw::figure::{
    Align, Column, Figure, Line, MILLIMETRE, Mapping, Mark, Micrometres, Path, Point, Rect, Running, Side, Table,
    TextSize, Tone, hatch, width,
};
use crate::draw::page::Page;
use crate::draw::sheet_frame::Bow;
use crate::frame::CrossMember;
use crate::geometry::{Bounds, Limit};
use crate::length::Length;
use crate::panels::Panel;
use crate::patch::{PatchEdge, PatchSide};
use crate::plan::{PatchFacts, PlacedOpening};

/// Width of the column with the key, at the right of the sheet.
const KEY: Micrometres = 46 * MILLIMETRE;
/// Space between the drawing's figures and the key.
const BESIDE_KEY: Micrometres = 4 * MILLIMETRE;
/// Height of the running dimensions.
const SIZE: TextSize = TextSize::BODY;
/// Radius of the dot that stands for a fastener.
const DOT: Micrometres = 350;

pub(super) fn pages(desk: &Desk<'_>) -> Vec<Page> {
    let mut page = desk.page("plan", "Plan");
    page.frame = page.frame.bow(Bow::Up).note(note(desk));
    let body = Page::body(desk.paper);
    let (drawing, key) = body.cut_right(KEY);
    let view = PlanView::new(desk, drawing.cut_right(BESIDE_KEY).0);
    view.draw(&mut page.figure);
    draw_key(desk, &mut page.figure, key);
    page.frame = page.frame.scale(view.mapping.scale, desk.ruler.unit());
    vec![page]
}

fn note(desk: &Desk<'_>) -> String {
    let plan = desk.plan;
    let size = format!("{} long, {} beam", desk.ruler.text(plan.deck.length), desk.ruler.text(plan.deck.beam));
    if plan.no_layout.is_some() {
        return format!("{size}; no layout of seams");
    }
    if let Some(patch) = &plan.patch {
        return format!("{size}; {}, the rest of the old deck stays", count(patch.patches.len(), "patch", "patches"));
    }
    let seams = plan.layouts.first().map_or(0, |layout| layout.seams.len());
    let joints = match blocking::joints(desk).len() {
        0 => String::new(),
        joints => format!(", {}", count(joints, "joint along the boat", "joints along the boat")),
    };
    format!("{size}; {}, {}{joints}", count(plan.panels.len(), "panel", "panels"), count(seams, "seam", "seams"))
}

struct PlanView<'a> {
    desk: &'a Desk<'a>,
    mapping: Mapping,
    stations: Running,
    seams: Running,
    athwart: Running,
}

impl<'a> PlanView<'a> {
    fn new(desk: &'a Desk<'a>, room: Rect) -> PlanView<'a> {
        let plan = desk.plan;
        // The figures' depth does not depend on the scale: it is measured on marks that are not placed yet.
        let depth = |side, marks: Vec<Mark>| running(side, 0, (room.top, room.bottom), marks).depth();
        let left = depth(Side::Left, member_marks(desk, &UNPLACED));
        let right = depth(Side::Right, seam_marks(desk, &UNPLACED));
        // Athwart figures stand upright in the worst case.
        let longest = athwart_marks(desk, &UNPLACED).iter().map(|mark| width(&mark.words, SIZE, false)).max();
        let above = longest.unwrap_or(0) + 9 * MILLIMETRE;
        let inner = Rect::new(room.left + left, room.top + above, room.right - right, room.bottom - 4 * MILLIMETRE);
        let (mapping, deck) = bow_up::fitted(inner, (plan.deck.beam, plan.deck.length), desk.ruler.unit());
        // Figures at the sides keep below the leaders of those above.
        let limits = (deck.top - SIZE.em(), room.bottom);
        PlanView {
            desk,
            mapping,
            stations: running(Side::Left, deck.left, limits, member_marks(desk, &mapping)),
            seams: running(Side::Right, deck.right, limits, seam_marks(desk, &mapping)),
            athwart: running(Side::Above, deck.top, (room.left, room.right), athwart_marks(desk, &mapping)),
        }
    }

    fn draw(&self, figure: &mut Figure) {
        let plan = self.desk.plan;
        self.draw_blocked_bay(figure);
        for member in &plan.frame {
            self.draw_member(figure, member);
        }
        for block in blocking::blocks(self.desk) {
            blocking::draw_block(figure, &self.mapping, block);
        }
        self.draw_what_stays(figure);
        for panel in &plan.panels {
            figure.stroke(deck_shape::path(&self.mapping, &panel.shape), Line::Thin);
        }
        figure.stroke(deck_shape::path(&self.mapping, &plan.deck.outline), Line::Outline);
        // The outline goes around a slot by itself.
        for opening in plan.openings.iter().filter(|opening| opening.slot.is_none()) {
            let shape = deck_shape::path(&self.mapping, &opening.shape);
            figure.fill(shape.clone(), Tone::White);
            figure.stroke(shape, Line::Thin);
        }
        self.draw_fasteners(figure);
        for (index, opening) in plan.openings.iter().enumerate() {
            self.draw_letter(figure, index, opening);
        }
        for panel in &plan.panels {
            self.draw_label(figure, panel);
        }
        self.draw_old_labels(figure);
        for running in [&self.stations, &self.seams, &self.athwart] {
            running.draw(figure);
        }
    }

    /// The flange, as far as the member reaches.
    fn draw_member(&self, figure: &mut Figure, member: &CrossMember) {
        let breadths = self.desk.plan.deck.outline.breadths(member.centre(), Limit::Aft);
        let port = member.port_end.or(breadths.first().map(|breadth| breadth.0)).unwrap_or(Length::ZERO);
        let starboard = member.starboard_end.or(breadths.last().map(|breadth| breadth.1));
        let starboard = starboard.unwrap_or(self.desk.plan.deck.beam);
        let beam = self.desk.plan.deck.beam;
        figure.fill(deck_shape::flange(&self.mapping, member, (port, starboard), beam), Tone::Light);
    }

    fn draw_blocked_bay(&self, figure: &mut Figure) {
        let bay = self.desk.plan.no_layout.as_ref().and_then(|reason| reason.bay.as_ref());
        if let Some(bay) = bay {
            let band = deck_shape::band(&self.mapping, bay.from, bay.to, Length::ZERO, self.desk.plan.deck.beam);
            figure.stroke(hatch(&Path::rect(band), 2 * MILLIMETRE, false), Line::Fine);
        }
    }

    /// Of a deck that is patched: old boards hatched, blocking and damaged places in dashes.
    fn draw_what_stays(&self, figure: &mut Figure) {
        let plan = self.desk.plan;
        let Some(patch) = &plan.patch else { return };
        for board in &patch.old_boards {
            let mut stays = deck_shape::path(&self.mapping, &board.shape);
            figure.stroke(stays.clone(), Line::Thin);
            for panel in plan.panels.iter().filter(|panel| panel_of(panel, &board.label)) {
                stays.append(deck_shape::path(&self.mapping, &panel.shape));
            }
            figure.stroke(hatch(&stays, 2 * MILLIMETRE, false), Line::Fine);
        }
        for piece in patch.patches.iter().flat_map(|patch| &patch.blocking) {
            figure.stroke(Path::rect(deck_shape::bounds(&self.mapping, &piece.place)), Line::Hidden);
        }
        for place in &patch.damage {
            let shape = deck_shape::path(&self.mapping, &place.shape);
            figure.fill(shape.clone(), Tone::Light);
            figure.stroke(shape, Line::Hidden);
        }
    }

    fn draw_fasteners(&self, figure: &mut Figure) {
        let rows = self.desk.plan.fasteners.iter().flat_map(|fastening| &fastening.rows);
        for row in rows {
            for &position in &row.positions {
                let station = row.station_at(position, self.desk.plan.deck.beam);
                figure.fill(Path::circle(self.mapping.point(station, position), DOT), Tone::Black);
            }
        }
        for row in blocking::blocks(self.desk).iter().flat_map(|block| &block.rows) {
            for &station in &row.stations {
                figure.fill(Path::circle(self.mapping.point(station, row.from_port), DOT), Tone::Black);
            }
        }
    }

    /// The opening's letter, within it where it fits, otherwise beside it.
    fn draw_letter(&self, figure: &mut Figure, index: usize, opening: &PlacedOpening) {
        let size = TextSize::FIGURE;
        let room = deck_shape::bounds(&self.mapping, &opening.bounds);
        let words = letter(index);
        if !figure.write_within(room, None, &words, size, true) {
            figure.write_within(room.inset(-size.em() * 2), None, &words, size, true);
        }
    }

    /// The labels of the old boards, on what stays of them.
    fn draw_old_labels(&self, figure: &mut Figure) {
        let plan = self.desk.plan;
        for board in plan.patch.iter().flat_map(|patch| &patch.old_boards) {
            let mut stays = deck_shape::path(&self.mapping, &board.shape);
            for panel in plan.panels.iter().filter(|panel| panel_of(panel, &board.label)) {
                stays.append(deck_shape::path(&self.mapping, &panel.shape));
            }
            let room = deck_shape::bounds(&self.mapping, &board.bounds).inset(MILLIMETRE);
            let words = format!("old board {}", board.label);
            figure.write_within(room, Some(&stays), &words, TextSize::LEAST, false);
        }
    }

    /// The panel's label: large where there is room, on the board and not in an opening.
    fn draw_label(&self, figure: &mut Figure, panel: &Panel) {
        let room = deck_shape::bounds(&self.mapping, &panel.bounds).inset(MILLIMETRE / 2);
        let mut shape = deck_shape::path(&self.mapping, &panel.shape);
        for opening in &panel.openings {
            shape.append(deck_shape::path(&self.mapping, &opening.shape));
        }
        // Patches are small, and their edges are told by their labels.
        let patched = self.desk.plan.patch.is_some();
        let words = if patched { panel.label.clone() } else { format!("panel {}", panel.label) };
        let sizes = if patched {
            [TextSize::HEADING, TextSize::BODY, TextSize::LEAST]
        } else {
            [TextSize::TITLE, TextSize::HEADING, TextSize::LEAST]
        };
        // The first size that finds room; a panel too small for all of them is named on its own sheets.
        let named = sizes.into_iter().any(|size| figure.write_within(room, Some(&shape), &words, size, true));
        if !named && self.desk.plan.division.is_some() {
            let _ = figure.write_within(room, Some(&shape), &panel.label, TextSize::LEAST, true);
        }
    }
}

fn running(side: Side, edge: Micrometres, limits: (Micrometres, Micrometres), marks: Vec<Mark>) -> Running {
    Running::new(side, edge, limits).size(SIZE).marks(marks)
}

/// At the left: the members' centres.
fn member_marks(desk: &Desk<'_>, mapping: &Mapping) -> Vec<Mark> {
    let at = |x| mapping.point(x, Length::ZERO).y;
    let member = |member: &CrossMember| {
        Mark::new(at(member.centre()), format!("M{}: {}", member.number, desk.ruler.text(member.centre())))
    };
    desk.plan.frame.iter().map(member).collect()
}

/// At the right: seams, the corners of the outline, openings.
fn seam_marks(desk: &Desk<'_>, mapping: &Mapping) -> Vec<Mark> {
    let plan = desk.plan;
    let at = |x| mapping.point(x, Length::ZERO).y;
    let mut stations: Vec<Length> = plan.deck.outline.sides().iter().map(|side| side.from.x).collect();
    stations.extend([Length::ZERO, plan.deck.length]);
    stations.sort_unstable();
    stations.dedup();
    let corner = |x: Length| {
        let name = if x.is_zero() { " bow edge" } else { "" };
        Mark::new(at(x), format!("{}{name}", desk.ruler.text(x)))
    };
    let mut marks: Vec<Mark> = stations.into_iter().map(corner).collect();
    // Butts of several rows can lie at one station.
    let mut seams: Vec<(Length, Vec<String>)> = Vec::new();
    for seam in plan.layouts.first().into_iter().flat_map(|layout| &layout.seams) {
        let name = format!("S{}", seam.number);
        match seams.iter_mut().find(|(station, _)| *station == seam.fore) {
            Some((_, names)) => names.push(name),
            None => seams.push((seam.fore, vec![name])),
        }
    }
    for (station, names) in seams {
        marks.push(Mark::new(at(station), format!("{}: {}", names.join(" "), desk.ruler.text(station))).bold(true));
    }
    marks.extend(patch_marks(desk, at, [PatchSide::Fore, PatchSide::Aft]));
    for (index, opening) in plan.openings.iter().enumerate().filter(|(_, opening)| opening.slot.is_none()) {
        for station in [opening.bounds.fore, opening.bounds.aft] {
            marks.push(Mark::new(at(station), format!("{}: {}", letter(index), desk.ruler.text(station))));
        }
    }
    marks
}

/// Edges of patches along one way, from the bow edge or the port edge.
fn patch_marks(desk: &Desk<'_>, at: impl Fn(Length) -> Micrometres, sides: [PatchSide; 2]) -> Vec<Mark> {
    let patches = desk.plan.patch.iter().flat_map(|patch| &patch.patches);
    let mark = |patch: &PatchFacts, edge: Length| {
        let name = patch.panels.first().map_or("", String::as_str);
        Mark::new(at(edge), format!("{name}: {}", desk.ruler.text(edge))).bold(true)
    };
    // An edge of the old board itself is not measured again.
    let sawn = |edge: &&PatchEdge| edge.saw_at.is_some() && sides.contains(&edge.side);
    patches.flat_map(|patch| patch.edges.iter().filter(sawn).map(move |edge| mark(patch, edge.at))).collect()
}

fn panel_of(panel: &Panel, board: &str) -> bool {
    panel.label.strip_prefix(board).is_some_and(|letter| letter.len() == 1)
}

/// Above: corners of the outline and sides of openings, from the port edge.
fn athwart_marks(desk: &Desk<'_>, mapping: &Mapping) -> Vec<Mark> {
    let plan = desk.plan;
    let at = |y| mapping.point(Length::ZERO, y).x;
    let mut distances: Vec<Length> = plan.deck.outline.sides().iter().map(|side| side.from.y).collect();
    distances.extend([Length::ZERO, plan.deck.beam]);
    distances.sort_unstable();
    distances.dedup();
    let corner = |y: Length| {
        let name = if y.is_zero() { " port edge" } else { "" };
        Mark::new(at(y), format!("{}{name}", desk.ruler.text(y)))
    };
    let mut marks: Vec<Mark> = distances.into_iter().map(corner).collect();
    marks.extend(blocking::joint_marks(desk, at));
    marks.extend(patch_marks(desk, at, [PatchSide::Port, PatchSide::Starboard]));
    for (index, opening) in plan.openings.iter().enumerate().filter(|(_, opening)| opening.slot.is_none()) {
        for distance in [opening.bounds.port, opening.bounds.starboard] {
            marks.push(Mark::new(at(distance), format!("{}: {}", letter(index), desk.ruler.text(distance))));
        }
    }
    marks
}

/// `a`, `b`, …, `z`, `a1`, …
fn letter(index: usize) -> String {
    let round = index / 26;
    let letter = char::from(b'a' + u8::try_from(index % 26).unwrap_or(0));
    if round == 0 { letter.to_string() } else { format!("{letter}{round}") }
}

fn draw_key(desk: &Desk<'_>, figure: &mut Figure, room: Rect) {
    let plan = desk.plan;
    let mut top = room.top;
    let mut say = |figure: &mut Figure, words: &str, size: TextSize, bold: bool| {
        top += figure.paragraph(Point::new(room.left, top), room.width(), words, size, bold) + MILLIMETRE;
        top
    };
    if let Some(reason) = &plan.no_layout {
        say(figure, "No layout", TextSize::HEADING, true);
        say(figure, &reason.reason, TextSize::BODY, false);
        for mend in &reason.mend {
            say(figure, &format!("• {mend}"), TextSize::BODY, false);
        }
    }
    say(figure, "Key", TextSize::HEADING, true);
    if plan.frame.iter().any(|member| member.skew.is_some()) {
        let words = "Members out of square and seams along them: figures are at the centreline; those at the sides are on the \
                     sheet of the cross members.";
        say(figure, words, TextSize::LEAST, true);
    }
    let gap = plan.basis.gap;
    let gap =
        if gap.is_zero() { String::new() } else { format!("; the gap of {} lies aft of it", desk.ruler.text(gap)) };
    let words = format!(
        "All distances run from the bow edge and the port edge. At the left: middles of the flanges of cross members M1, \
         M2, … At the right: seams S1, S2, … (the fore edge of each seam{gap}), corners of the outline, openings a, b, …"
    );
    let mut bottom = say(figure, &words, TextSize::LEAST, false);
    if let Some(division) = &plan.division {
        let blocks = count(division.blocks.len(), "block", "blocks");
        let words =
            format!("Above: joints J along the boat (the port edge of each gap), on {blocks} between the flanges.");
        bottom = say(figure, &words, TextSize::LEAST, false);
    }
    let samples: &[Sample] = if plan.patch.is_some() {
        &[Sample::Flange, Sample::Panel, Sample::Fastener, Sample::Stays, Sample::Below]
    } else if plan.panels.is_empty() {
        &[Sample::Flange]
    } else if plan.division.is_some() {
        &[Sample::Flange, Sample::Panel, Sample::Block, Sample::Fastener]
    } else {
        &[Sample::Flange, Sample::Panel, Sample::Fastener]
    };
    for sample in samples {
        bottom = draw_sample(figure, sample, Point::new(room.left, bottom + 3 * MILLIMETRE), room.width());
    }
    bottom += 4 * MILLIMETRE;
    for table in [openings_table(desk), zones_table(desk)].into_iter().flatten() {
        let rows = table.rows_that_fit(room.width(), room.bottom - bottom, 0);
        bottom += table.draw(figure, Point::new(room.left, bottom), room.width(), 0..rows) + 3 * MILLIMETRE;
    }
}

enum Sample {
    Flange,
    Panel,
    Block,
    Fastener,
    Stays,
    Below,
}

/// A sample of a line with what it stands for; the answer is where it ends.
fn draw_sample(figure: &mut Figure, sample: &Sample, middle_left: Point, room: Micrometres) -> Micrometres {
    let field = Rect::spanning(middle_left.moved(0, -MILLIMETRE), middle_left.moved(9 * MILLIMETRE, MILLIMETRE));
    let words = match sample {
        Sample::Flange => {
            figure.fill(Path::rect(field), Tone::Light);
            "flange under the boards"
        }
        Sample::Panel => {
            figure.line(middle_left, middle_left.moved(9 * MILLIMETRE, 0), Line::Thin);
            "edge of a panel, seam"
        }
        Sample::Block => {
            figure.stroke(Path::rect(field), Line::Hidden);
            "block under a joint"
        }
        Sample::Stays => {
            figure.stroke(hatch(&Path::rect(field), MILLIMETRE, false), Line::Fine);
            "old board that stays"
        }
        Sample::Below => {
            figure.stroke(Path::rect(field), Line::Hidden);
            "blocking below; grey: damaged"
        }
        Sample::Fastener => {
            for step in [1, 4, 7] {
                figure.fill(Path::circle(middle_left.moved(step * MILLIMETRE, 0), DOT), Tone::Black);
            }
            "fastener"
        }
    };
    let at = middle_left.moved(11 * MILLIMETRE, -TextSize::LEAST.line_height() / 2);
    let height = figure.paragraph(at, room - 11 * MILLIMETRE, words, TextSize::LEAST, false);
    middle_left.y + height - TextSize::LEAST.line_height() / 2
}

fn openings_table(desk: &Desk<'_>) -> Option<Table> {
    let openings = &desk.plan.openings;
    let mut table = Table::new(vec![Column::new("", Align::Left), Column::words("Opening")]).size(TextSize::LEAST);
    for (index, opening) in openings.iter().enumerate() {
        let purpose = opening.purpose.as_ref().map(|purpose| format!(", {purpose}")).unwrap_or_default();
        let framed = if opening.framed { ", framed" } else { "" };
        let slot = opening.slot.map(|edge| format!(", open to the {} edge", edge.name())).unwrap_or_default();
        let Bounds { fore, aft, port, starboard } = opening.bounds;
        let size = desk.ruler.size(starboard - port, aft - fore);
        table.row([letter(index), format!("{}{purpose}{framed}{slot}: {size} (athwart × fore and aft)", opening.name)]);
    }
    (!openings.is_empty()).then_some(table)
}

fn zones_table(desk: &Desk<'_>) -> Option<Table> {
    let zones = &desk.plan.job.keep_clear;
    let mut table = Table::new(vec![Column::words("No seam under")]).size(TextSize::LEAST);
    for zone in zones {
        table.row([format!("{}: {} to {}", zone.name, desk.ruler.text(zone.from), desk.ruler.text(zone.to))]);
    }
    (!zones.is_empty()).then_some(table)
}
