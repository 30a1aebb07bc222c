//! What the figures of strength rest on: each check of a small load with its place, spacings and their reasons, screws,
//! clauses, why table and beam differ, what was assumed.

use super::span_sheet::{over, ratio};
use crate::draw::desk::{Desk, list};
use crate::draw::figure::{Align, Column, MILLIMETRE, Micrometres, Table, TextSize};
use crate::draw::flow::Flow;
use crate::draw::page::Page;
use crate::plan::{FastenerSpan, PanelSpan, PlanSpan, ScrewHold};
use crate::published::Standing;
use crate::span::hold::Held;
use crate::span::{Axis, Criterion};

/// Distances of a screw take at most this much of the table's width.
const EDGES: Micrometres = 30 * MILLIMETRE;

pub(super) fn pages(desk: &Desk<'_>) -> Vec<Page> {
    let span = &desk.plan.span;
    let page = desk.page("span-notes", "Strength: notes");
    let mut flow = Flow::new(page, Page::body(desk.paper));
    if span.panels.iter().any(|panel| !panel.points.is_empty()) {
        flow.headed("On a small place of each board", &points_table(desk, span));
    }
    mending(desk, span, &mut flow);
    if let Some(fasteners) = &span.fasteners {
        of_fasteners(desk, fasteners, &mut flow);
    }
    clauses(span, &mut flow);
    for note in &span.notes {
        flow.paragraph(&format!("• {note}"), TextSize::LEAST, false);
    }
    flow.finish()
}

fn points_table(desk: &Desk<'_>, span: &PlanSpan) -> Table {
    let right = |title: &str| Column::new(title, Align::Right);
    let mut table = Table::new(vec![
        Column::new("Panel", Align::Left),
        Column::words("load"),
        right("deflection"),
        right("bending"),
        right("shear"),
        Column::new("governs", Align::Left),
        Column::words("where"),
        right("load/limit"),
    ])
    .size(TextSize::LEAST);
    for panel in &span.panels {
        for check in &panel.points {
            let force = |criterion: Criterion| desk.force(check.limits.get(criterion).value);
            let cells = [
                panel.panel.clone(),
                format!("{}, {}", check.name, check.zone.words()),
                force(Criterion::Deflection),
                force(Criterion::Bending),
                force(Criterion::Shear),
                check.governing.to_string(),
                check.limits.get(check.governing).place.clone(),
                ratio(check.utilisation),
            ];
            if over(check.utilisation) { table.bold_row(cells) } else { table.row(cells) }
        }
    }
    table
}

/// How far apart members may stand, blocking, and panels that would be enough.
fn mending(desk: &Desk<'_>, span: &PlanSpan, flow: &mut Flow) {
    if span.load.is_none() || span.panels.is_empty() {
        return;
    }
    let mut table = Table::new(vec![
        Column::words("Panels"),
        Column::words("strength axis along the members"),
        Column::words("strength axis across the members"),
    ])
    .size(TextSize::LEAST);
    let mut alike: Vec<(Vec<String>, [String; 2])> = Vec::new();
    for panel in &span.panels {
        let cells = [Axis::Along, Axis::Across].map(|axis| spacing(desk, panel, axis));
        match alike.iter_mut().find(|(_, other)| *other == cells) {
            Some((names, _)) => names.push(panel.panel.clone()),
            None => alike.push((vec![panel.panel.clone()], cells)),
        }
    }
    for (names, [along, across]) in alike {
        table.row([list(&names), along, across]);
    }
    flow.headed("By the table: members no farther apart than", &table);
    for panel in &span.panels {
        for blocking in &panel.blocking {
            flow.paragraph(&format!("Panel {}: {}", panel.panel, blocking.text), TextSize::LEAST, false);
        }
    }
    let way = |axis: Axis| {
        let carriers = span.enough.iter().filter(|enough| enough.axis == axis);
        let names: Vec<String> = carriers
            .map(|enough| format!("{} {} ({})", enough.series, enough.rating, desk.pressure(enough.allowable_psf)))
            .collect();
        if names.is_empty() { "none of the published panels".to_owned() } else { names.join("; ") }
    };
    flow.paragraph(
        &format!(
            "Enough for the uniform load on this frame by the table, the first rating of each series: laid as now, axis \
             along the members: {}. Turned, axis across the members: {}.",
            way(Axis::Along),
            way(Axis::Across)
        ),
        TextSize::LEAST,
        false,
    );
}

fn spacing(desk: &Desk<'_>, panel: &PanelSpan, axis: Axis) -> String {
    let Some(limit) = panel.spacing.iter().find(|limit| limit.axis == axis) else { return "–".into() };
    match limit.spacing {
        Some(spacing) => format!("{}: {}", desk.ruler.text(spacing), limit.why),
        None => limit.why.clone(),
    }
}

fn of_fasteners(desk: &Desk<'_>, fasteners: &FastenerSpan, flow: &mut Flow) {
    flow.heading("What the fasteners hold");
    flow.paragraph(
        &format!("{}, in {} flanges. Each screw, in each way that it lets go:", fasteners.screw, fasteners.alloy),
        TextSize::BODY,
        false,
    );
    let mut table = Table::new(vec![
        Column::new("Screw", Align::Left),
        Column::at_most("wall; least edges in metal and board", EDGES),
        Column::words("way"),
        Column::new("holds", Align::Right),
        Column::words("by"),
    ])
    .size(TextSize::LEAST);
    for screw in &fasteners.screws {
        for (way, held) in ways(screw) {
            let edges = format!(
                "{}; {} and {}",
                desk.ruler.text(screw.wall),
                desk.ruler.text(screw.edge_in_metal),
                desk.ruler.text(screw.edge_in_board)
            );
            table.row([screw.number.to_string(), edges, way, desk.force(held.allowable), by(held)]);
        }
    }
    flow.table(&table);
    let mut said: Vec<&str> = Vec::new();
    for screw in fasteners.screws.iter().filter(|screw| !screw.pull_out_why.is_empty()) {
        if !said.contains(&screw.pull_out_why.as_str()) {
            said.push(&screw.pull_out_why);
        }
    }
    flow.paragraph(&format!("Pull-out: {} {}", said.join(" "), fasteners.notes.join(" ")), TextSize::LEAST, false);
    flow.table(&rows_table(desk, fasteners));
}

/// The clause; a figure that stands on memory says so.
fn by(held: &Held) -> String {
    let told = held.standing != Standing::Memory || held.clause.contains("from memory");
    if told { held.clause.clone() } else { format!("{}, from memory", held.clause) }
}

fn ways(screw: &ScrewHold) -> Vec<(String, &Held)> {
    use crate::span::hold::Mode;
    let name = |held: &Held| {
        match held.mode {
            Mode::PullOver => "pull-over",
            Mode::PullOut => "pull-out",
            Mode::HeadPullThrough => "head pull-through",
            Mode::Withdrawal => "withdrawal",
            Mode::Bearing => "bearing (sideways)",
        }
        .to_owned()
    };
    let carried = screw.uplift.iter().chain(&screw.sideways).map(|held| (name(held), held));
    let beside = [("formula", &screw.pull_out_formula), ("laboratory mean", &screw.pull_out_test)];
    let carries = |held: &&Held| !screw.uplift.contains(held);
    let beside = beside
        .into_iter()
        .filter_map(|(name, held)| Some((format!("pull-out, {name}, not carried"), held.as_ref().filter(carries)?)));
    carried.chain(beside).collect()
}

fn rows_table(desk: &Desk<'_>, fasteners: &FastenerSpan) -> Table {
    let right = |title: &str| Column::new(title, Align::Right);
    let loaded = |load: Option<f64>| load.map_or_else(String::new, |load| format!(", {} chosen", desk.force(load)));
    let mut table = Table::new(vec![
        Column::words("Panel: each row on"),
        right("screw"),
        right("count"),
        right(&format!("lift{}", loaded(fasteners.lift_pounds))),
        right("load/limit"),
        right(&format!("side{}", loaded(fasteners.side_pounds))),
        right("load/limit"),
    ])
    .size(TextSize::LEAST);
    let mut alike: Vec<(String, Vec<String>, [String; 6], bool)> = Vec::new();
    for row in &fasteners.rows {
        let force = |held: Option<f64>| held.map_or_else(|| "no figure".into(), |pounds| desk.force(pounds));
        let cells = [
            row.screw.map_or_else(|| "–".into(), |screw| screw.to_string()),
            row.count.to_string(),
            force(row.uplift_pounds),
            ratio(row.lift_utilisation),
            force(row.sideways_pounds),
            ratio(row.side_utilisation),
        ];
        let bold = over(row.lift_utilisation) || over(row.side_utilisation);
        let member = format!("M{}", row.member);
        match alike.iter_mut().find(|(panel, _, other, _)| *panel == row.panel && *other == cells) {
            // A notch parts a row; both parts hold the same here.
            Some((_, members, ..)) if members.contains(&member) => {}
            Some((_, members, ..)) => members.push(member),
            None => alike.push((row.panel.clone(), vec![member], cells, bold)),
        }
    }
    for (panel, members, cells, bold) in alike {
        let cells = std::iter::once(format!("{panel}: {}", list(&members))).chain(cells);
        if bold { table.bold_row(cells) } else { table.row(cells) }
    }
    table
}

/// Where the figures come from. The table's equations stand with the spans of each board, for the check that governs; the
/// clauses of beam and plate are alike for all boards. The plan's JSON has every clause of every board.
fn clauses(span: &PlanSpan, flow: &mut Flow) {
    let mut all: Vec<(String, Vec<String>)> = Vec::new();
    let mut add = |name: String, clause: &str| match all.iter_mut().find(|(other, _)| other == clause) {
        Some((_, names)) if names.contains(&name) => {}
        Some((_, names)) => names.push(name),
        None => all.push((clause.to_owned(), vec![name])),
    };
    let every = [Criterion::Deflection, Criterion::Bending, Criterion::Shear];
    for panel in &span.panels {
        if let Some(table) = &panel.table {
            let clause = &table.limits.get(table.governing).clause;
            add(format!("panel {}, table (decides), {}", panel.panel, table.governing), clause);
        }
    }
    for panel in &span.panels {
        for criterion in every {
            if let Some(beam) = &panel.beam {
                add(format!("our beam (beside), {criterion}"), &beam.limits.get(criterion).clause);
            }
            for check in &panel.points {
                add(format!("small place, {criterion}"), &check.limits.get(criterion).clause);
            }
        }
    }
    if all.is_empty() {
        return;
    }
    let mut table = Table::new(vec![Column::words("Panel and check"), Column::words("by")]).size(TextSize::LEAST);
    for (clause, names) in all {
        table.row([names.join("; "), clause]);
    }
    flow.headed("Where the figures come from", &table);
    let differ =
        span.panels.iter().filter_map(|panel| Some(format!("Panel {}: {}", panel.panel, panel.differ.as_ref()?)));
    let differ: Vec<String> = differ.collect();
    if !differ.is_empty() {
        flow.heading("Why table and beam differ");
        flow.paragraph(&differ.join(" "), TextSize::LEAST, false);
    }
}
