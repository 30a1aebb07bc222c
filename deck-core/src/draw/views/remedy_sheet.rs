//! Seams whose flange is too narrow for two rows: what is short, what mends it, and the parts that takes.

use crate::draw::desk::Desk;
use crate::draw::figure::{Align, Column, Table, TextSize};
use crate::draw::flow::Flow;
use crate::draw::page::Page;
use crate::length::Length;
use crate::plan::NarrowFlanges;
use crate::seams::{Remedy, RemedyCheck, SeamRemedy};

pub(super) fn pages(desk: &Desk<'_>) -> Vec<Page> {
    let Some(flanges) = desk.plan.narrow_flange.as_ref().filter(|flanges| !flanges.seams.is_empty()) else {
        return Vec::new();
    };
    let mut flow = Flow::new(desk.page("remedies", "Narrow flanges"), Page::body(desk.paper));
    flow.paragraph(&rule(desk, flanges), TextSize::BODY, false);
    flow.headed("Seams that are short, and what mends them", &seams(desk, flanges));
    if !flanges.parts.is_empty() {
        flow.headed("Parts to fit before the boards", &parts(desk, flanges));
    }
    flow.finish()
}

fn rule(desk: &Desk<'_>, flanges: &NarrowFlanges) -> String {
    let text = |length: Length| desk.ruler.text(length);
    let basis = &desk.plan.basis;
    format!(
        "Two rows at a seam take a flange of gap {} + 2 × ({} in the board + {} in the metal) = {}. Tried in this order: \
         staggered rows at the least distances in print ({} and {}), on half steps; one row on the flange and a cleat for the \
         other board; an angle with a flat leg of {} beside the flange, its row clear of the joint.",
        text(basis.gap),
        text(basis.edge_in_ply),
        text(basis.edge_in_metal),
        text(flanges.least_flange),
        text(flanges.least_in_ply),
        text(flanges.least_in_metal),
        text(flanges.angle_leg),
    )
}

fn seams(desk: &Desk<'_>, flanges: &NarrowFlanges) -> Table {
    let text = |length: Length| desk.ruler.text(length);
    let mut table = Table::new(vec![
        Column::words("Seam"),
        Column::new("flange", Align::Right),
        Column::new("short by", Align::Right),
        Column::words("staggered"),
        Column::words("row and cleat"),
        Column::words("angle"),
        Column::words("do"),
    ])
    .size(Desk::FIGURES);
    let check = |check: &RemedyCheck| if check.does { "does".into() } else { format!("lacks {}", text(check.lacks)) };
    for seam in &flanges.seams {
        let name = format!("S{} on M{}", seam.seam, seam.member);
        let tried = seam.checks.iter().map(check);
        let cells = [name, text(seam.flange), text(seam.short_by)].into_iter().chain(tried).chain([what(seam)]);
        if seam.chosen.is_none() { table.bold_row(cells) } else { table.row(cells) }
    }
    table
}

fn what(seam: &SeamRemedy) -> String {
    let sides = match seam.sides {
        [true, true] => "on both sides",
        [true, false] => "forward",
        _ => "aft",
    };
    match seam.chosen {
        Some(Remedy::Staggered) => "stagger the rows".into(),
        Some(Remedy::Cleat) => format!("a cleat {sides}"),
        Some(Remedy::Angle) => format!("an angle {sides}"),
        None => "NOTHING DOES: a longer leg, or another flange".into(),
    }
}

fn parts(desk: &Desk<'_>, flanges: &NarrowFlanges) -> Table {
    let mut table = Table::new(vec![
        Column::words("Part"),
        Column::words("beside"),
        Column::words("carries the row of"),
        Column::new("length", Align::Right),
        Column::new("screws", Align::Right),
    ])
    .size(Desk::FIGURES);
    for part in &flanges.parts {
        let side = if part.forward { "forward" } else { "aft" };
        table.row([
            (if part.is_angle { "angle" } else { "cleat" }).to_owned(),
            format!("M{}, {side} of its flange, seam S{}", part.member, part.seam),
            format!("panel {}", part.panel),
            desk.ruler.text(part.length),
            part.screws.to_string(),
        ]);
    }
    table
}
