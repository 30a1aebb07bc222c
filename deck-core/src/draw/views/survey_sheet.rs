//! What was measured, on one sheet: what it comes to in sentences, the points and the readings between them, tables of both.

use crate::draw::desk::Desk;
use crate::draw::figure::{Align, Column, MILLIMETRE, Micrometres, Rect, Table, TextSize};
use crate::draw::flow::Flow;
use crate::draw::page::Page;
use crate::draw::sheet_frame::Bow;
use crate::draw::survey_picture;
use crate::survey::{BoardEvidence, FittedTrace, JoinKind, MarkKind, PieceKind, Survey};

/// The picture is not drawn lower than this, nor higher.
const LEAST_PICTURE: Micrometres = 70 * MILLIMETRE;
const HIGHEST: Micrometres = 120 * MILLIMETRE;

pub(super) fn pages(desk: &Desk<'_>) -> Vec<Page> {
    let Some(survey) = &desk.plan.survey else { return Vec::new() };
    let mut page = desk.page("survey", "What was measured");
    let error = desk.ruler.text(survey.error);
    let source = survey.error_source.as_ref().map(|source| format!(" ({source})")).unwrap_or_default();
    page.frame = page.frame.note(format!("standard deviation of a reading {error}{source}"));
    let mut flow = Flow::new(page, Page::body(desk.paper));
    for (index, sentence) in survey.summary.iter().enumerate() {
        flow.paragraph(sentence, TextSize::BODY, index < survey.blunders.len());
    }
    if !survey.points.is_empty() {
        flow.drawing(LEAST_PICTURE, |page, room| picture(desk, page, survey, room));
        flow.headed("Points, from the datum", &points(desk, survey));
        flow.headed("Readings", &readings(desk, survey));
        let words = "Residual: adjusted less read. Times error: the residual over its own standard deviation; above 3.3 a reading \
            is looked at. Part checked: how much of an error here shows in its own residual. Least found: the smallest error that \
            is found four times in five.";
        flow.paragraph(words, TextSize::LEAST, false);
    }
    for trace in &survey.traces {
        flow.headed(&format!("Trace {}", trace.name), &pieces(desk, trace));
    }
    if let Some(boards) = &survey.old_boards {
        flow.headed("Old boards against the members", &marks(desk, boards));
    }
    flow.finish()
}

fn picture(desk: &Desk<'_>, page: &mut Page, survey: &Survey, room: Rect) -> Micrometres {
    let room = Rect { bottom: room.bottom.min(room.top + HIGHEST), ..room };
    let (mapping, below) = survey_picture::draw(&mut page.figure, survey, room, desk.ruler.unit());
    page.frame = page.frame.clone().scale(mapping.scale, desk.ruler.unit()).bow(Bow::Up);
    below
}

fn right(titles: &[&str]) -> Vec<Column> {
    titles.iter().map(|title| Column::new(*title, Align::Right)).collect()
}

fn points(desk: &Desk<'_>, survey: &Survey) -> Table {
    let mut columns = vec![Column::words("Point")];
    columns.extend(right(&["aft", "to starboard", "± aft", "± starboard"]));
    let mut table = Table::new(columns);
    for point in &survey.points {
        let [x, y] = [point.x, point.y].map(|length| desk.ruler.text(length));
        let [dx, dy] = [point.x_deviation, point.y_deviation].map(|length| desk.ruler.near(length));
        table.row([point.name.clone(), x, y, dx, dy]);
    }
    table
}

fn readings(desk: &Desk<'_>, survey: &Survey) -> Table {
    let mut columns = vec![Column::new("No.", Align::Left), Column::words("From, to")];
    columns.extend(right(&["read", "residual", "times error", "part checked", "least found"]));
    let mut table = Table::new(columns);
    for reading in &survey.readings {
        let read = reading.reading.map_or_else(|| "trusted".into(), |read| desk.ruler.text(read));
        let times = reading.standardised.map_or_else(|| "not checked".into(), |times| format!("{times:.1}"));
        let least = reading.least_blunder.map(|least| desk.ruler.near(least)).unwrap_or_default();
        let part = if reading.used { format!("{:.2}", reading.redundancy) } else { "left out".into() };
        let cells =
            [reading.name.clone(), reading.what.clone(), read, desk.ruler.near(reading.residual), times, part, least];
        if reading.used { table.row(cells) } else { table.bold_row(cells) }
    }
    table
}

fn pieces(desk: &Desk<'_>, trace: &FittedTrace) -> Table {
    let mut columns = vec![Column::new("Points", Align::Left), Column::words("Piece")];
    columns.extend(right(&["radius", "spread", "ends at, aft", "to starboard"]));
    let mut table = Table::new(columns);
    for (index, piece) in trace.pieces.iter().enumerate() {
        let join = trace.joins.get(index);
        let kind = match (piece.kind, join.map(|join| join.kind)) {
            (PieceKind::Line, Some(JoinKind::Tangent)) => "line, runs smoothly into the next",
            (PieceKind::Arc, Some(JoinKind::Tangent)) => "arc, runs smoothly into the next",
            (PieceKind::Line, Some(JoinKind::Corner)) => "line, to a corner",
            (PieceKind::Arc, Some(JoinKind::Corner)) => "arc, to a corner",
            (PieceKind::Line, _) => "line",
            (PieceKind::Arc, _) => "arc",
        };
        let radius = piece.radius.map(|radius| desk.ruler.text(radius)).unwrap_or_default();
        let [x, y] = join.map_or([const { String::new() }; 2], |join| [join.x, join.y].map(|at| desk.ruler.near(at)));
        let points = format!("{} to {}", piece.points[0], piece.points[1]);
        table.row([points, kind.into(), radius, desk.ruler.near(piece.spread), x, y]);
    }
    table
}

fn marks(desk: &Desk<'_>, boards: &BoardEvidence) -> Table {
    let mut columns = vec![Column::words("Mark")];
    columns.extend(right(&["at", "member", "its station", "off"]));
    let mut table = Table::new(columns);
    for mark in &boards.marks {
        let name = match mark.kind {
            MarkKind::Seam => format!("seam of old boards {} and {}", mark.number, mark.number + 1),
            MarkKind::Row => format!("row {} of old holes", mark.number),
        };
        let member = mark.member.map_or_else(|| "none".into(), |member| member.to_string());
        let station = mark.member_station.map(|station| desk.ruler.text(station)).unwrap_or_default();
        let off = mark.off.map(|off| desk.ruler.near(off)).unwrap_or_default();
        let cells = [name, desk.ruler.near(mark.station), member, station, off];
        if mark.member.is_some() { table.row(cells) } else { table.bold_row(cells) }
    }
    table
}
