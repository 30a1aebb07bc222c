//! The cross members where some were measured at their ends: by how much each is out, and what that leaves at the seams.

use crate::draw::desk::Desk;
use crate::draw::figure::{Align, Column, Table, TextSize};
use crate::draw::flow::Flow;
use crate::draw::page::Page;
use crate::frame::CrossMember;
use crate::length::Length;
use crate::seams::{Seam, SeamEnds};

pub(super) fn pages(desk: &Desk<'_>) -> Vec<Page> {
    if desk.plan.frame.iter().all(|member| member.skew.is_none()) {
        return Vec::new();
    }
    let mut flow = Flow::new(desk.page("frame", "Cross members out of square"), Page::body(desk.paper));
    flow.paragraph(
        "Stations run from the bow edge, at the deck's port edge, centreline and starboard edge. Out of square: how much \
         further aft the starboard end lies than the port end. Bent: how far aft of the member's middle the straight line \
         between its ends passes; minus is forward. Square and brace the frame first; what is left is planned for here.",
        TextSize::LEAST,
        false,
    );
    flow.headed("Members", &members(desk));
    let ends: Vec<(&Seam, &SeamEnds)> = desk
        .plan
        .layouts
        .first()
        .into_iter()
        .flat_map(|layout| &layout.seams)
        .filter_map(|seam| Some((seam, seam.ends.as_ref()?)))
        .collect();
    if !ends.is_empty() {
        flow.headed("Seams on them", &seams(desk, &ends));
        let least = desk.ruler.text(desk.plan.basis.least_bearing);
        let words =
            format!("Bearings at port, at the centreline and at starboard; {least} is the least, all along the edge.");
        flow.paragraph(&words, TextSize::LEAST, false);
    }
    flow.finish()
}

/// Minus where it is forward, and nothing where it is nothing.
fn signed(desk: &Desk<'_>, length: Length) -> String {
    match length {
        length if length.is_zero() => "–".into(),
        length if length.is_negative() => format!("− {}", desk.ruler.text(-length)),
        length => desk.ruler.text(length),
    }
}

fn members(desk: &Desk<'_>) -> Table {
    let right = |title: &str| Column::new(title, Align::Right);
    let mut table = Table::new(vec![
        Column::words("Member"),
        Column::words("flange at port"),
        Column::words("at the centreline"),
        Column::words("at starboard"),
        right("out of square"),
        right("bent"),
    ])
    .size(Desk::FIGURES);
    let range = |(fore, aft): (Length, Length)| format!("{} to {}", desk.ruler.text(fore), desk.ruler.text(aft));
    for member in &desk.plan.frame {
        let CrossMember { number, skew, .. } = member;
        let [port, centre, starboard] = member.edges();
        let [port, starboard] = [port, starboard].map(|edges| skew.map_or_else(|| "as there".into(), |_| range(edges)));
        let [out, bend] = skew.map_or(["not measured".to_owned(), String::new()], |skew| {
            [signed(desk, skew.out), signed(desk, skew.bend)]
        });
        table.row([format!("M{number}"), port, range(centre), starboard, out, bend]);
    }
    table
}

fn seams(desk: &Desk<'_>, ends: &[(&Seam, &SeamEnds)]) -> Table {
    let mut table = Table::new(vec![
        Column::words("Seam"),
        Column::words("lies"),
        Column::words("at port; at starboard"),
        Column::words("bears forward"),
        Column::words("bears aft"),
    ])
    .size(Desk::FIGURES);
    let list = |bearings: [Length; 3]| bearings.map(|bearing| desk.ruler.text(bearing)).join(", ");
    for (seam, ends) in ends {
        let lies = if ends.along { "along the member" } else { "square to the boat" };
        table.row([
            format!("S{} on M{}", seam.number, seam.member),
            lies.to_owned(),
            format!("{}; {}", desk.ruler.text(ends.port), desk.ruler.text(ends.starboard)),
            list(ends.bearings_fore),
            list(ends.bearings_aft),
        ]);
    }
    table
}
