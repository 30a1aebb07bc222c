//! A form to fill in by hand on the boat: numbered measurements that match the fields of the job file.
//!
//! Who fills it need not know the program; who types it in finds beside each line the field that it belongs to.

use crate::draw::figure::{Align, Column, Paper, Table, TextSize};
use crate::draw::flow::Flow;
use crate::draw::page::Page;
use crate::draw::sheet_frame::SheetFrame;
use crate::survey::Survey;

/// Stations and boards for which the form of a boat that nobody knows yet has lines.
const MEMBERS: usize = 20;
const BOARDS: usize = 7;
/// Room to write a figure in.
const BLANK: &str = "______________";

/// A line of the form.
struct Line {
    number: String,
    what: String,
    field: String,
}

/// The form of a job's own survey: its readings, to be read once more.
pub(super) fn of(survey: &Survey, job: &str, paper: Paper) -> Vec<Page> {
    let lines = survey.readings.iter().filter(|reading| reading.reading.is_some()).map(|reading| {
        let at = reading.number - 1;
        let same = survey.readings.iter().filter(|other| other.number == reading.number).count();
        let part = match (same > 1, reading.name.ends_with('a')) {
            (false, _) => "",
            (true, true) => ", the first",
            (true, false) => ", the second",
        };
        Line { number: reading.name.clone(), what: reading.what.clone(), field: format!("survey/readings/{at}{part}") }
    });
    let mut flow = begun(job, paper);
    flow.paragraph(
        &format!("Stations run from {} towards {}.", survey.datum[0], survey.datum[1]),
        TextSize::BODY,
        false,
    );
    flow.headed("Readings", &table(lines.collect()));
    finished(flow)
}

/// The form of a boat that nobody has measured yet.
pub(in crate::draw) fn blank(paper: Paper) -> Vec<Page> {
    let mut flow = begun("", paper);
    let words = "Corners: BP bow port, SP stern port, SS stern starboard, BS bow starboard. BM and SM are marks near the middle of \
        the bow and the stern member. Hook the tape on the corner itself, pull it level and straight, read to 1/16 in or 1 mm.";
    flow.paragraph(words, TextSize::BODY, false);
    flow.headed("1 to 14: sides, diagonals, checks", &table(frame()));
    let words = "Without 7 to 14 a wrong diagonal shows, but not which reading it is.";
    flow.paragraph(words, TextSize::BODY, false);
    let members = (1..=MEMBERS).map(|member| Line {
        number: (14 + member).to_string(),
        what: format!("BP to member {member}, along the port side, one tape from the bow"),
        field: format!("survey/readings/{}", 13 + member),
    });
    flow.headed("Members: all from one tape, to web, edge or centre (say which: ________)", &table(members.collect()));
    let boards = (1..=BOARDS).map(|board| Line {
        number: format!("B{board}"),
        what: format!("width of old board {board} from the bow"),
        field: format!("survey/old_boards/widths/{}", board - 1),
    });
    flow.headed("Old boards", &table(boards.collect()));
    let traced = (1..=8).map(|point| Line {
        number: format!("T{point}"),
        what: format!("point {point} on the edge: from the bow _______, from the port side"),
        field: format!("survey/traces/0/points/{}", point - 1),
    });
    flow.headed("A rounded corner or edge", &table(traced.collect()));
    finished(flow)
}

fn frame() -> Vec<Line> {
    let pairs = [
        ("BP", "SP", "port side"),
        ("BS", "SS", "starboard side"),
        ("BP", "BS", "bow"),
        ("SP", "SS", "stern"),
        ("BP", "SS", "first diagonal"),
        ("BS", "SP", "second diagonal"),
        ("BM", "BP", "check"),
        ("BM", "BS", "check"),
        ("BM", "SP", "check"),
        ("BM", "SS", "check"),
        ("SM", "SP", "check"),
        ("SM", "SS", "check"),
        ("SM", "BP", "check"),
        ("SM", "BS", "check"),
    ];
    pairs
        .iter()
        .enumerate()
        .map(|(index, (from, to, what))| Line {
            number: (index + 1).to_string(),
            what: format!("{from} to {to}, {what}"),
            field: format!("survey/readings/{index}"),
        })
        .collect()
}

fn begun(job: &str, paper: Paper) -> Flow {
    let frame = SheetFrame::new(job, "Survey form").note("fill in by hand, type in by the field");
    let page = Page::new("survey-form", frame, paper);
    let mut flow = Flow::new(page, Page::body(paper));
    flow.paragraph(&format!("Boat {BLANK}{BLANK}   Date {BLANK}   By {BLANK}   Unit ______"), TextSize::FIGURE, false);
    flow
}

fn table(lines: Vec<Line>) -> Table {
    let columns = vec![
        Column::new("No.", Align::Left),
        Column::words("Measure"),
        Column::new("Reading", Align::Left),
        Column::new("Type in at", Align::Left),
    ];
    let mut table = Table::new(columns);
    table.size = TextSize::FIGURE;
    for line in lines {
        table.row([line.number, line.what, BLANK.into(), line.field]);
    }
    table
}

fn finished(mut flow: Flow) -> Vec<Page> {
    flow.paragraph(
        "Photograph the frame from the stern and from port. Note bent, cut and corroded members.",
        TextSize::BODY,
        false,
    );
    flow.finish()
}
