//! Where part of the old deck stays: what is sawn out of it, what each edge rests on, the blocking.

use crate::draw::desk::{Desk, count, list};
use crate::draw::figure::{Align, Column, Table, TextSize};
use crate::draw::flow::Flow;
use crate::draw::page::Page;
use crate::length::Length;
use crate::patch::{PatchEdge, PatchSide, Rest};
use crate::plan::PlanPatch;

pub(super) fn pages(desk: &Desk<'_>) -> Vec<Page> {
    let Some(patch) = desk.plan.patch.as_ref().filter(|patch| !patch.patches.is_empty()) else { return Vec::new() };
    let mut page = desk.page("patch", "Patches");
    page.frame = page.frame.note(format!(
        "{}; from the bow edge and the port edge of the deck",
        count(patch.patches.len(), "patch", "patches")
    ));
    let mut flow = Flow::new(page, Page::body(desk.paper));
    flow.paragraph(
        "Saw the old boards at the lines told under \"saw old board at\", set to the old boards' thickness: members and blocking \
         lie right below. Fix the blocking under what stays, screwed and glued, before the patch goes in.",
        TextSize::FIGURE,
        false,
    );
    flow.headed("Edges", &edges(desk, patch));
    let blocking = blocking(desk, patch);
    if !blocking.rows.is_empty() {
        flow.headed("Blocking, from the same sheets", &blocking);
        let words = format!(
            "{} into blocking in all, half of them from what stays; {} into members along the sawn edges of what stays.",
            count(patch.blocking_screws, "wood screw", "wood screws"),
            count(patch.old_edge_screws, "fastener", "fasteners"),
        );
        flow.paragraph(&words, TextSize::FIGURE, false);
    }
    let words = format!("{} of plywood in patches and blocking: the least there is.", desk.area(patch.plywood));
    flow.paragraph(&words, TextSize::FIGURE, false);
    flow.finish()
}

fn edges(desk: &Desk<'_>, patch: &PlanPatch) -> Table {
    let mut table = Table::new(vec![
        Column::new("Panel", Align::Left),
        Column::words("for"),
        Column::new("edge", Align::Left),
        Column::new("patch ends at", Align::Right),
        Column::new("saw old board at", Align::Right),
        Column::words("rests on"),
    ])
    .size(Desk::FIGURES);
    for facts in &patch.patches {
        for (index, edge) in facts.edges.iter().enumerate() {
            let first = index == 0;
            let name = if first { list(&facts.panels) } else { String::new() };
            let damage = if first { list(&facts.damage) } else { String::new() };
            let saw = edge.saw_at.map_or_else(|| "–".to_owned(), |at| desk.ruler.text(at));
            table.row([name, damage, side(edge).to_owned(), desk.ruler.text(edge.at), saw, rests(edge, &facts.board)]);
        }
    }
    table
}

fn side(edge: &PatchEdge) -> &'static str {
    match edge.side {
        PatchSide::Fore => "fore",
        PatchSide::Aft => "aft",
        PatchSide::Port => "port",
        PatchSide::Starboard => "starboard",
    }
}

fn rests(edge: &PatchEdge, board: &str) -> String {
    match edge.on {
        Rest::BoardEdge => format!("edge of old board {board}, as before"),
        Rest::Member(number) => format!("member M{number}, with what stays"),
        Rest::Blocking => "blocking, with what stays".to_owned(),
    }
}

fn blocking(desk: &Desk<'_>, patch: &PlanPatch) -> Table {
    let say = |length: Length| desk.ruler.text(length);
    let mut table = Table::new(vec![
        Column::words("Piece"),
        Column::new("size", Align::Left),
        Column::words("from the bow edge"),
        Column::words("from the port edge"),
        Column::new("screws a side", Align::Right),
    ])
    .size(Desk::FIGURES);
    for piece in patch.patches.iter().flat_map(|facts| &facts.blocking) {
        let place = piece.place;
        table.row([
            piece.label.clone(),
            format!("{} × {}", say(piece.length), say(piece.width)),
            format!("{} to {}", say(place.fore), say(place.aft)),
            format!("{} to {}", say(place.port), say(place.starboard)),
            piece.screws_a_side.to_string(),
        ]);
    }
    table
}
