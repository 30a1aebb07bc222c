//! What the boards take, on one sheet: the figures that decide, what stands beside them, how the worst board sags. What
//! they rest on follows on the sheets of notes.

use super::{span_notes, span_picture};
use crate::draw::desk::{Desk, list};
use crate::draw::figure::{Align, Column, MILLIMETRE, Micrometres, Rect, Table, TextSize};
use crate::draw::flow::Flow;
use crate::draw::page::Page;
use crate::plan::{FastenerSpan, PanelSpan, PlanSpan, PointCheck, PointZone, RowHolds};
use crate::span::{Axis, Criterion};

/// The picture is not drawn lower than this.
const LEAST_PICTURE: Micrometres = 40 * MILLIMETRE;
/// More columns of small loads than this stand in the notes only.
const MOST_COLUMNS: usize = 6;

pub(super) fn pages(desk: &Desk<'_>) -> Vec<Page> {
    let span = &desk.plan.span;
    if span.panels.is_empty() && span.fasteners.is_none() {
        return Vec::new();
    }
    let mut page = desk.page("span", "Strength of boards and fasteners");
    page.frame = page.frame.note(note(span));
    let mut flow = Flow::new(page, Page::body(desk.paper));
    flow.paragraph(&loads(desk, span), TextSize::BODY, false);
    flow.paragraph(&span.caution, TextSize::BODY, true);
    if let Some(reason) = &span.no_figure {
        flow.paragraph(&format!("Boards: {reason}."), TextSize::FIGURE, true);
    }
    uniform(desk, span, &mut flow);
    points(desk, span, &mut flow);
    if let Some(fasteners) = &span.fasteners {
        flow.paragraph(&rows(desk, fasteners), TextSize::BODY, false);
    }
    if let Some(picture) = &span.picture {
        flow.drawing(LEAST_PICTURE, |page, room: Rect| span_picture::draw(desk, page, picture, room));
    }
    let mut pages = flow.finish();
    pages.extend(span_notes::pages(desk));
    pages
}

fn note(span: &PlanSpan) -> String {
    let panel = span.panel.clone().unwrap_or_else(|| "no panel rating given".into());
    let service = span.service.map(|service| {
        let wet = if service.wet { "wet" } else { "dry" };
        format!("; {wet}, load duration {}, sag up to l/{}", service.duration, service.deflection)
    });
    format!("{panel}{}", service.unwrap_or_default())
}

/// The loads that were chosen, and that no rule was applied.
fn loads(desk: &Desk<'_>, span: &PlanSpan) -> String {
    let uniform = match &span.load {
        Some(load) => format!("Uniform load: {} ({}, {}).", desk.pressure(load.psf), load.name, load.source),
        None => "No uniform load was chosen: limits only.".into(),
    };
    let points: Vec<String> = span
        .points
        .iter()
        .map(|point| {
            let force = point.pounds.map_or_else(|| "no force chosen".into(), |pounds| desk.force(pounds));
            let size = desk.ruler.size(point.length, point.width);
            let place = point.station.zip(point.from_port).map(|(station, from_port)| {
                let (station, from_port) = (desk.ruler.text(station), desk.ruler.text(from_port));
                format!(", standing {station} aft and {from_port} from port")
            });
            format!("{} {force} on {size}{} ({})", point.name, place.unwrap_or_default(), point.source)
        })
        .collect();
    let points = if points.is_empty() { String::new() } else { format!(" On a small place: {}.", points.join("; ")) };
    let rule = span.rule.as_ref().map(|rule| format!(" {rule}")).unwrap_or_default();
    format!("{uniform}{points}{rule}")
}

fn uniform(desk: &Desk<'_>, span: &PlanSpan, flow: &mut Flow) {
    if span.panels.is_empty() {
        return;
    }
    let laid = common_axis(span).map_or("as laid", way);
    flow.headed(&format!("Uniform load that each board takes, {laid}"), &uniform_table(desk, span));
    for panel in &span.panels {
        if let Some(reason) = &panel.no_figure {
            flow.paragraph(&format!("Panel {}: {reason}", panel.panel), TextSize::LEAST, panel.table.is_none());
        }
    }
    flow.paragraph(&deciding(span), TextSize::LEAST, false);
}

/// The way in which all boards lie, where it is the same.
fn common_axis(span: &PlanSpan) -> Option<Axis> {
    let axis = span.panels.first()?.axis;
    span.panels.iter().all(|panel| panel.axis == axis).then_some(axis)
}

fn way(axis: Axis) -> &'static str {
    match axis {
        Axis::Along => "laid the weak way",
        Axis::Across => "laid the strong way",
    }
}

/// Boards with the same figures share a row; bold where the load is over the table's limit.
fn uniform_table(desk: &Desk<'_>, span: &PlanSpan) -> Table {
    let right = |title: &str| Column::new(title, Align::Right);
    let mut table = Table::new(vec![
        Column::words("Panel"),
        Column::words("bays"),
        right("deflection"),
        right("bending"),
        right("shear"),
        Column::words("governs, by the table"),
        right("load/limit"),
        Column::words("our beam, beside"),
        Column::words("members at most"),
    ])
    .size(TextSize::LEAST);
    let mut alike: Vec<(Vec<String>, [String; 8], bool)> = Vec::new();
    for panel in &span.panels {
        let cells = uniform_cells(desk, panel, common_axis(span).is_none());
        if let Some((names, ..)) = alike.iter_mut().find(|(_, other, _)| *other == cells) {
            names.push(panel.panel.clone());
        } else {
            let bold = panel.table.as_ref().is_some_and(|table| over(table.utilisation));
            alike.push((vec![panel.panel.clone()], cells, bold));
        }
    }
    for (names, cells, bold) in alike {
        let cells = std::iter::once(list(&names)).chain(cells);
        if bold { table.bold_row(cells) } else { table.row(cells) }
    }
    table
}

/// `told`: whether the way it lies is told for each board.
fn uniform_cells(desk: &Desk<'_>, panel: &PanelSpan, told: bool) -> [String; 8] {
    let table = panel.table.as_ref();
    let load = |criterion: Criterion| {
        table.map_or_else(|| "–".into(), |table| desk.pressure(table.limits.get(criterion).value))
    };
    let mut bays: Vec<String> = Vec::new();
    for bay in &panel.bays {
        let text = desk.ruler.text(bay.spacing);
        if !bays.contains(&text) {
            bays.push(text);
        }
    }
    let governs = table.map(|table| format!("{}, {}", table.governing, table.limits.get(table.governing).place));
    let beam = panel.beam.as_ref().map(|beam| {
        let ratio = beam.utilisation.map(|ratio| format!(", {ratio:.2}")).unwrap_or_default();
        format!("{} {}{ratio}", desk.pressure(beam.allowable_psf), beam.governing)
    });
    let axis = if told { format!(" ({})", way(panel.axis)) } else { String::new() };
    let dash = || "–".to_owned();
    let spacing = panel.spacing.iter().find(|limit| limit.axis == panel.axis);
    [
        format!("{}{axis}", bays.join(", ")),
        load(Criterion::Deflection),
        load(Criterion::Bending),
        load(Criterion::Shear),
        governs.unwrap_or_else(|| crate::span::NO_FIGURE.into()),
        ratio(table.and_then(|table| table.utilisation)),
        beam.unwrap_or_else(dash),
        spacing.map_or_else(dash, |limit| limit.spacing.map_or_else(dash, |spacing| desk.ruler.text(spacing))),
    ]
}

/// What decides, with the clause of the board that is used up most, and what does not.
fn deciding(span: &PlanSpan) -> String {
    let tables = || span.panels.iter().filter_map(|panel| Some((panel, panel.table.as_ref()?)));
    let lowest = tables().reduce(|low, other| if other.1.allowable_psf < low.1.allowable_psf { other } else { low });
    let clause = lowest.map_or_else(String::new, |(panel, table)| {
        format!(
            "The table's clause decides; of panel {}, the lowest: {} ",
            panel.panel,
            table.limits.get(table.governing).clause
        )
    });
    format!(
        "{clause}\"Our beam, beside\" is a continuous beam on the true bearings with the live load on the worst bays: derived \
         here, it stands beside the table and decides nothing. \"Members at most\": their spacing by the table for this \
         load, as the board lies. Equations, reasons and what was assumed are in the notes."
    )
}

/// A column for each small load and zone; bold where one is over its limit.
fn points(desk: &Desk<'_>, span: &PlanSpan, flow: &mut Flow) {
    let mut columns: Vec<(&str, PointZone)> = Vec::new();
    for check in span.panels.iter().flat_map(|panel| &panel.points) {
        if !columns.contains(&(check.name.as_str(), check.zone)) {
            columns.push((check.name.as_str(), check.zone));
        }
    }
    if !columns.is_empty() {
        if columns.len() <= MOST_COLUMNS {
            let words = "On a small place of a board: limit, what governs, load/limit";
            flow.headed(words, &points_table(desk, span, &columns));
        } else {
            flow.paragraph(
                "More small loads than this table has room for: they are in the notes.",
                TextSize::BODY,
                true,
            );
        }
    }
    for panel in &span.panels {
        if let Some(reason) = &panel.no_points {
            flow.paragraph(&format!("Panel {}: {reason}", panel.panel), TextSize::LEAST, true);
        }
    }
    for point in &span.points {
        if let Some(reason) = &point.no_figure {
            flow.paragraph(&format!("{}: {reason}", point.name), TextSize::LEAST, true);
        }
    }
}

fn points_table(desk: &Desk<'_>, span: &PlanSpan, columns: &[(&str, PointZone)]) -> Table {
    let title = |(name, zone): &(&str, PointZone)| Column::words(format!("{name}, {}", zone.words()));
    let heads = std::iter::once(Column::words("Panel")).chain(columns.iter().map(title));
    let mut table = Table::new(heads.collect()).size(TextSize::LEAST);
    let mut alike: Vec<(Vec<String>, Vec<String>, bool)> = Vec::new();
    for panel in span.panels.iter().filter(|panel| !panel.points.is_empty()) {
        let found = |(name, zone): &(&str, PointZone)| {
            panel.points.iter().find(|check| check.name == *name && check.zone == *zone)
        };
        let cell = |column| found(column).map_or_else(|| "–".to_owned(), |check| point_cell(desk, check));
        let cells: Vec<String> = columns.iter().map(cell).collect();
        let bold = panel.points.iter().any(|check| over(check.utilisation));
        match alike.iter_mut().find(|(_, other, _)| *other == cells) {
            Some((names, ..)) => names.push(panel.panel.clone()),
            None => alike.push((vec![panel.panel.clone()], cells, bold)),
        }
    }
    for (names, cells, bold) in alike {
        let cells = std::iter::once(list(&names)).chain(cells);
        if bold { table.bold_row(cells) } else { table.row(cells) }
    }
    table
}

fn point_cell(desk: &Desk<'_>, check: &PointCheck) -> String {
    let ratio = check.utilisation.map(|ratio| format!(", {ratio:.2}")).unwrap_or_default();
    format!("{} {}{ratio}", desk.force(check.allowable_pounds), check.governing)
}

/// The weakest and the strongest row, and what was chosen.
fn rows(desk: &Desk<'_>, fasteners: &FastenerSpan) -> String {
    let said =
        |name: &str, held: fn(&RowHolds) -> Option<f64>, chosen: Option<f64>, used: fn(&RowHolds) -> Option<f64>| {
            let known = || fasteners.rows.iter().filter_map(|row| Some((row, held(row)?)));
            let Some((weak, least)) = known().reduce(|low, other| if other.1 < low.1 { other } else { low }) else {
                return format!(" Against {name}: {}.", crate::span::NO_FIGURE);
            };
            let most = known().map(|(_, held)| held).fold(least, f64::max);
            let ratio = fasteners
                .rows
                .iter()
                .filter_map(used)
                .fold(None, |most: Option<f64>, other| Some(most.map_or(other, |most| most.max(other))));
            let chosen = chosen
                .zip(ratio)
                .map(|(load, ratio)| format!("; {} chosen: at most {ratio:.2} of that", desk.force(load)));
            format!(
                " Against {name} a row holds {} (panel {} on M{}, {} screws) to {}{}.",
                desk.force(least),
                weak.panel,
                weak.member,
                weak.count,
                desk.force(most),
                chosen.unwrap_or_default()
            )
        };
    format!(
        "Rows of screws, {}, {} flanges:{}{} Clauses, and which figures are from memory, are in the notes.",
        fasteners.screw,
        fasteners.alloy,
        said("lift", |row| row.uplift_pounds, fasteners.lift_pounds, |row| row.lift_utilisation),
        said("side load", |row| row.sideways_pounds, fasteners.side_pounds, |row| row.side_utilisation),
    )
}

pub(super) fn over(utilisation: Option<f64>) -> bool {
    utilisation.is_some_and(|utilisation| utilisation > 1.0)
}

pub(super) fn ratio(utilisation: Option<f64>) -> String {
    utilisation.map_or_else(|| "–".into(), |utilisation| format!("{utilisation:.2}"))
}
