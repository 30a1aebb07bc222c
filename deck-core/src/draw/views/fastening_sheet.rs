//! One panel on its members: rows and fasteners by running distances from the bow edge and the port edge.

use super::blocking;
use crate::draw::bow_up::{self, UNPLACED};
use crate::draw::deck_shape;
use crate::draw::desk::{Desk, count, list};
use crate::draw::figure::{
    Align, Column, Figure, Line, MILLIMETRE, Mapping, Mark, Micrometres, Path, Rect, Running, Side, Table, TextSize,
    Tone,
};
use crate::draw::flow::Flow;
use crate::draw::page::Page;
use crate::draw::sheet_frame::Bow;
use crate::fasteners::{Row, RowKind};
use crate::fittings::FittedHole;
use crate::frame::CrossMember;
use crate::length::Length;
use crate::panels::Panel;
use crate::plan::PlacedHole;
use crate::seams::Seam;

/// The drawing with its figures takes at most this much of the sheet's height.
const HIGHEST: Micrometres = 130 * MILLIMETRE;
/// How far the members are drawn beyond the panel.
const BEYOND: Micrometres = 2 * MILLIMETRE;
/// Radius of the dot that stands for a fastener.
const DOT: Micrometres = 550;
/// Radius of the ring that stands for an old hole.
const RING: Micrometres = 900;
/// Names of rows take at most this much of the table's width.
const NAMES: Micrometres = 38 * MILLIMETRE;
/// More distances than this are not written above the drawing: the table has them.
const MOST_ABOVE: usize = 40;

pub(super) fn pages(desk: &Desk<'_>) -> Vec<Page> {
    let Some(fastening) = &desk.plan.fasteners else { return Vec::new() };
    let sheets = desk.plan.panels.iter().enumerate().map(|(index, panel)| {
        let rows = fastening.rows.iter().filter(|row| row.panel == panel.label).collect();
        FasteningSheet { desk, panel, rows }.pages(index + 1)
    });
    sheets.flatten().collect()
}

struct FasteningSheet<'a> {
    desk: &'a Desk<'a>,
    panel: &'a Panel,
    rows: Vec<&'a Row>,
}

impl FasteningSheet<'_> {
    fn pages(&self, number: usize) -> Vec<Page> {
        let desk = self.desk;
        let mut page = desk.page(format!("fastening-{number}"), format!("Fastening of panel {}", self.panel.label));
        let total = self.rows.iter().map(|row| row.positions.len()).sum();
        let into_blocks = match blocking::screws(desk, self.panel).len() {
            0 => String::new(),
            screws => format!(", and {} into blocks", count(screws, "screw", "screws")),
        };
        let fasteners = count(total, "fastener", "fasteners");
        page.frame = page.frame.bow(Bow::Up).note(format!(
            "{fasteners} in {}{into_blocks}; from the bow edge and the port edge of the deck",
            count(self.rows.len(), "row", "rows")
        ));
        let body = Page::body(desk.paper);
        let bottom = self.draw(&mut page, Rect { bottom: body.top + HIGHEST, ..body });
        let mut flow = Flow::new(page, Rect { top: bottom, ..body });
        flow.paragraph(&self.screw(), TextSize::FIGURE, false);
        flow.paragraph(
            "At the left: rows on members M, and the panel's fore and aft edge. At the right: edges of flanges M and of seams S.",
            TextSize::LEAST,
            false,
        );
        if let Some(words) = self.rings_and_crosses() {
            flow.paragraph(&words, TextSize::LEAST, false);
        }
        flow.table(&self.rows_table());
        flow.table(&self.positions_table());
        if let (Some(table), Some(division)) = (blocking::table(desk, self.panel), &desk.plan.division) {
            flow.headed(&division.screw, &table);
        }
        flow.finish()
    }

    /// What the rings and the crosses stand for, where there are any.
    fn rings_and_crosses(&self) -> Option<String> {
        let mut words = Vec::new();
        if self.old_holes().count() > 0 {
            let places = self.old_holes().map(|hole| format!("M{} at {}", hole.member, self.desk.ruler.text(hole.y)));
            let places: Vec<String> = places.collect();
            words.push(format!("Rings: old holes in the members, from the port edge: {}.", places.join(", ")));
        }
        if self.fitted().count() > 0 {
            words.push("Crosses: holes of what is bolted down again, see the sheet of bolts.".to_owned());
        }
        (!words.is_empty()).then(|| words.join(" "))
    }

    /// The old holes under this panel.
    fn old_holes(&self) -> impl Iterator<Item = &PlacedHole> {
        let bounds = self.panel.bounds;
        let under = move |hole: &&PlacedHole| {
            bounds.fore <= hole.x && hole.x <= bounds.aft && bounds.port <= hole.y && hole.y <= bounds.starboard
        };
        self.desk.plan.old_holes.iter().filter(under)
    }

    /// The holes of fittings through this panel.
    fn fitted(&self) -> impl Iterator<Item = &FittedHole> {
        let all = self.desk.plan.fittings.iter().flat_map(|fittings| &fittings.holes);
        all.filter(|hole| hole.panel.as_deref() == Some(self.panel.label.as_str()))
    }

    fn screw(&self) -> String {
        let (basis, ruler) = (&self.desk.plan.basis, self.desk.ruler);
        let fastener = &basis.fastener;
        format!(
            "{}, {} × {}. Spacing at most {} in edge rows and {} in field rows; first and last {} from the board's end, or \
             further in where the member stops short; at least {} from an edge of the board and {} from an edge of the flange.",
            fastener.kind,
            ruler.text(fastener.diameter),
            ruler.text(fastener.length),
            ruler.text(basis.edge_spacing),
            ruler.text(basis.field_spacing),
            ruler.text(basis.end_distance),
            ruler.text(basis.edge_in_ply),
            ruler.text(basis.edge_in_metal),
        )
    }

    /// Draws the panel with its figures; the answer is where they end.
    fn draw(&self, page: &mut Page, room: Rect) -> Micrometres {
        let limits = (room.top, room.bottom);
        let left = Running::new(Side::Left, 0, limits).marks(self.row_marks(&UNPLACED)).depth();
        let right = Running::new(Side::Right, 0, limits).marks(self.flange_marks(&UNPLACED)).depth();
        // Distances above stand upright in the worst case.
        let longest = self.distance_marks(&UNPLACED).iter().map(|mark| figure_width(&mark.words)).max().unwrap_or(0);
        let inner = Rect::new(
            room.left + left + BEYOND,
            room.top + longest + 8 * MILLIMETRE + BEYOND,
            room.right - right - BEYOND,
            room.bottom - 4 * MILLIMETRE,
        );
        let size = (self.panel.length, self.panel.width);
        let (local, panel) = bow_up::fitted(inner, size, self.desk.ruler.unit());
        let corner = local.point(-self.panel.bounds.fore, -self.panel.bounds.port);
        let mapping = Mapping { origin: corner, ..local };
        page.frame = page.frame.clone().scale(mapping.scale, self.desk.ruler.unit());
        let figure = &mut page.figure;
        self.draw_panel(figure, &mapping, panel);
        // Figures at the sides keep below the leaders of those above.
        let limits = (panel.top - TextSize::FIGURE.em(), room.bottom);
        Running::new(Side::Left, panel.left - BEYOND, limits).marks(self.row_marks(&mapping)).draw(figure);
        Running::new(Side::Right, panel.right + BEYOND, limits).marks(self.flange_marks(&mapping)).draw(figure);
        let athwart = (room.left, room.right);
        Running::new(Side::Above, panel.top - BEYOND, athwart).marks(self.distance_marks(&mapping)).draw(figure);
        let lowest = figure.texts.iter().map(|text| text.bounds().bottom).max().unwrap_or(panel.bottom);
        lowest.max(panel.bottom + BEYOND) + 5 * MILLIMETRE
    }

    fn draw_panel(&self, figure: &mut Figure, mapping: &Mapping, panel: Rect) {
        let bounds = self.panel.bounds;
        for member in self.members() {
            let mut flange =
                Path::rect(deck_shape::band(mapping, member.fore, member.aft, bounds.port, bounds.starboard));
            if member.skew.is_some() {
                let beam = self.desk.plan.deck.beam;
                flange = deck_shape::flange(mapping, member, (bounds.port, bounds.starboard), beam);
            } else if let Some(band) = flange.bounds() {
                flange = Path::rect(Rect { left: panel.left - BEYOND, right: panel.right + BEYOND, ..band });
            }
            figure.fill(flange.clone(), Tone::Pale);
            figure.stroke(flange, Line::Hidden);
        }
        for block in blocking::under(self.desk, self.panel) {
            let bounds = self.panel.bounds;
            let mut shown = block.clone();
            (shown.port, shown.starboard) = (block.port.max(bounds.port), block.starboard.min(bounds.starboard));
            blocking::draw_block(figure, mapping, &shown);
        }
        let mut board = deck_shape::path(mapping, &self.panel.shape);
        figure.stroke(board.clone(), Line::Outline);
        for opening in &self.panel.openings {
            let path = deck_shape::path(mapping, &opening.shape);
            figure.fill(path.clone(), Tone::White);
            figure.stroke(path.clone(), Line::Thin);
            board.append(path);
        }
        for row in &self.rows {
            for &position in &row.positions {
                let station = row.station_at(position, self.desk.plan.deck.beam);
                figure.fill(Path::circle(mapping.point(station, position), DOT), Tone::Black);
            }
        }
        for (station, from_port) in blocking::screws(self.desk, self.panel) {
            figure.stroke(Path::circle(mapping.point(station, from_port), DOT), Line::Thin);
        }
        for hole in self.old_holes() {
            figure.stroke(Path::circle(mapping.point(hole.x, hole.y), RING), Line::Fine);
        }
        for hole in self.fitted() {
            let at = mapping.point(hole.x, hole.y);
            figure.line(at.moved(-RING, -RING), at.moved(RING, RING), Line::Hidden);
            figure.line(at.moved(-RING, RING), at.moved(RING, -RING), Line::Hidden);
        }
        for opening in &self.panel.openings {
            let room = deck_shape::bounds(mapping, &opening.bounds);
            figure.write_within(room, None, &opening.name, TextSize::LEAST, false);
        }
        figure.write_within(panel.inset(MILLIMETRE), Some(&board), &self.panel.label, TextSize::TITLE, true);
    }

    /// The members that the panel's rows go into.
    fn members(&self) -> impl Iterator<Item = &CrossMember> {
        let used = |member: &&CrossMember| self.rows.iter().any(|row| row.member == member.number);
        self.desk.plan.frame.iter().filter(used)
    }

    /// The seams at the panel's fore and aft edges.
    fn seams(&self) -> impl Iterator<Item = &Seam> {
        let bounds = self.panel.bounds;
        let layout = self.desk.plan.layouts.first().into_iter();
        let (board, row) = (self.panel.board, self.panel.bounds);
        let beside =
            move |seam: &&Seam| seam.lane.is_none_or(|lane| lane.port < row.starboard && lane.starboard > row.port);
        layout.flat_map(|layout| &layout.seams).filter(beside).filter(move |seam| {
            if seam.slant().is_zero() {
                seam.fore == bounds.aft || seam.aft == bounds.fore
            } else {
                seam.number == board || seam.number + 1 == board
            }
        })
    }

    /// At the left: the rows, and the panel's edges.
    fn row_marks(&self, mapping: &Mapping) -> Vec<Mark> {
        let at = |x| mapping.point(x, Length::ZERO).y;
        let ruler = self.desk.ruler;
        let mut stations: Vec<(Length, usize)> = self.rows.iter().map(|row| (row.station, row.member)).collect();
        stations.dedup();
        let row =
            |(station, member): (Length, usize)| Mark::new(at(station), format!("M{member}: {}", ruler.text(station)));
        let bounds = self.panel.bounds;
        let edge = |x: Length| Mark::new(at(x), ruler.text(x));
        stations.into_iter().map(row).chain([bounds.fore, bounds.aft].map(edge)).collect()
    }

    /// At the right: flanges and seams.
    fn flange_marks(&self, mapping: &Mapping) -> Vec<Mark> {
        let at = |x| mapping.point(x, Length::ZERO).y;
        let ruler = self.desk.ruler;
        let mark =
            |name: String, x: Length, bold: bool| Mark::new(at(x), format!("{name}: {}", ruler.text(x))).bold(bold);
        let mut marks = Vec::new();
        for member in self.members() {
            marks.extend([member.fore, member.aft].map(|x| mark(format!("M{}", member.number), x, false)));
        }
        for seam in self.seams() {
            let mut edges = vec![seam.fore, seam.aft];
            edges.dedup();
            marks.extend(edges.into_iter().map(|x| mark(format!("S{}", seam.number), x, true)));
        }
        marks
    }

    /// Above: the fasteners' distances from the port edge, each printed figure once, unless there are too many to read.
    ///
    /// Rows whose fasteners differ by less than the tape shows share a figure; the table tells them apart.
    fn distance_marks(&self, mapping: &Mapping) -> Vec<Mark> {
        let ruler = self.desk.ruler;
        let mut distances: Vec<Length> = self.rows.iter().flat_map(|row| row.positions.iter().copied()).collect();
        distances.extend(blocking::screws(self.desk, self.panel).into_iter().map(|(_, from_port)| from_port));
        distances.sort_unstable();
        distances.dedup();
        let at = |y| mapping.point(Length::ZERO, y).x;
        let groups = distances.chunk_by(|a, b| ruler.prints_alike(*a, *b));
        let marks = groups.filter_map(|group| match *group {
            [one] => Some(Mark::new(at(one), ruler.text(one))),
            [first, ..] => Some(Mark::new(at(first), ruler.near(first))),
            [] => None,
        });
        let marks: Vec<Mark> = marks.collect();
        if marks.len() > MOST_ABOVE { Vec::new() } else { marks }
    }

    /// The member of a row; where a notch parts the row, with its side.
    fn row_name(&self, row: &Row) -> String {
        let member = row.member;
        let parts: Vec<&&Row> = self.rows.iter().filter(|other| other.member == member).collect();
        let place = parts.iter().position(|other| **other == row).unwrap_or(0);
        match (parts.len(), place) {
            (1, _) => format!("M{member}"),
            (2, 0) => format!("M{member} port"),
            (2, _) => format!("M{member} starboard"),
            (_, place) => format!("M{member} part {}", place + 1),
        }
    }

    fn rows_table(&self) -> Table {
        let ruler = self.desk.ruler;
        let mut table = Table::new(vec![
            Column::words("Row on"),
            Column::words("flange; centre"),
            Column::words("row at"),
            Column::words("where"),
            Column::new("count", Align::Right),
            Column::words("greatest gap"),
        ])
        .size(Desk::FIGURES);
        for row in &self.rows {
            let member = self.desk.plan.frame.iter().find(|member| member.number == row.member);
            let flange = member.map_or_else(String::new, |member| {
                let [fore, aft, centre] = [member.fore, member.aft, member.centre()].map(|x| ruler.text(x));
                format!("{fore} to {aft}; {centre}")
            });
            let count = row.positions.len().to_string();
            let cells = [self.row_name(row), flange, self.station(row), self.place(row), count, self.gap(row)];
            if row.over_limit || row.short_by > Length::ZERO { table.bold_row(cells) } else { table.row(cells) }
        }
        table
    }

    /// Where a row lies; of one that follows a member out of square, at the deck's sides as well.
    fn station(&self, row: &Row) -> String {
        let ruler = self.desk.ruler;
        let ends = row.slant.filter(|slant| slant.port != slant.starboard);
        ends.map_or_else(
            || ruler.text(row.station),
            |ends| {
                let [port, starboard] = [ends.port, ends.starboard].map(|x| ruler.text(x));
                format!("{}; {port} at port, {starboard} at starboard", ruler.text(row.station))
            },
        )
    }

    /// Where the fasteners of each row are, rows with the same distances together.
    fn positions_table(&self) -> Table {
        let mut patterns: Vec<(Vec<String>, &[Length])> = Vec::new();
        for row in &self.rows {
            let name = self.row_name(row);
            match patterns.iter_mut().find(|(_, positions)| *positions == row.positions) {
                Some((names, _)) => names.push(name),
                None => patterns.push((vec![name], &row.positions)),
            }
        }
        let mut table = Table::new(vec![Column::at_most("Rows", NAMES), Column::words("fasteners from the port edge")])
            .size(Desk::FIGURES);
        for (names, positions) in patterns {
            let words: Vec<String> = positions.iter().map(|&y| self.desk.ruler.text(y)).collect();
            table.row([list(&names), words.join(", ")]);
        }
        table
    }

    /// Edge or field; at a seam, on which side of it, and what the panel bears there.
    fn place(&self, row: &Row) -> String {
        let kind = match row.kind {
            RowKind::Edge => "edge row",
            RowKind::Field => "field row",
        };
        let Some(seam) = self.seams().find(|seam| row.seam == Some(seam.number)) else { return kind.to_owned() };
        let aft = seam.number + 1 == self.panel.board;
        let (side, bearing) = if aft { ("aft", seam.bearing_aft) } else { ("forward", seam.bearing_fore) };
        format!("{kind}, {side} of seam S{}, bearing {}", seam.number, self.desk.ruler.text(bearing))
    }

    /// The greatest gap, and what is out of the ordinary about a row.
    fn gap(&self, row: &Row) -> String {
        let ruler = self.desk.ruler;
        let mut flags = vec![ruler.text(row.greatest_gap)];
        if row.over_limit {
            flags.push(format!("OVER {}", ruler.text(row.limit)));
        }
        if row.short_by > Length::ZERO {
            flags.push(format!("FLANGE SHORT BY {}", ruler.text(row.short_by)));
        }
        for (count, words) in [(row.moved, "moved beside an opening"), (row.dropped, "dropped at an opening")] {
            if count > 0 {
                flags.push(format!("{count} {words}"));
            }
        }
        if let Some(around) = &row.around {
            let told = [
                (around.moved, "moved off old holes"),
                (around.added, "added for old holes"),
                (around.dropped, "dropped at old holes"),
                (around.reused, "through old holes again"),
            ];
            flags.extend(
                told.into_iter().filter(|(count, _)| *count > 0).map(|(count, words)| format!("{count} {words}")),
            );
        }
        flags.join("; ")
    }
}

fn figure_width(words: &str) -> Micrometres {
    crate::draw::figure::width(words, TextSize::FIGURE, true)
}
