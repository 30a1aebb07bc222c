//! What the cover says of openings: the clearances that each keeps, where it should go, what is sawn for it.

use crate::draw::desk::Desk;
use crate::draw::figure::{Align, Column, Table, TextSize};
use crate::draw::flow::Flow;
use crate::openings::{Against, Clearance, Move, Rule};
use crate::plan::{CheckedOpening, OpeningChecks, OpeningPart, OpeningPartKind};

/// The openings against their clearances, and their parts, where there are any.
pub(super) fn openings(desk: &Desk<'_>, flow: &mut Flow) {
    if let Some(checks) = desk.plan.opening_checks.as_ref().filter(|checks| !checks.openings.is_empty()) {
        flow.headed("Openings", &clearances(desk, checks));
        if checks.same_seams == Some(false) {
            let words = "With the openings moved as said, other seams would be chosen: plan again before sawing.";
            flow.paragraph(words, TextSize::FIGURE, true);
        }
    }
    if !desk.plan.opening_parts.is_empty() {
        flow.headed("Parts for openings, from the same sheets", &parts(desk));
    }
}

fn clearances(desk: &Desk<'_>, checks: &OpeningChecks) -> Table {
    let say = |length| desk.ruler.text(length);
    let rules = &checks.rules;
    let head = |name: &str, least| Column::words(format!("{name} (≥ {})", say(least)));
    let mut table = Table::new(vec![
        Column::words("Opening"),
        head("seam", rules.from_seam),
        head("deck edge", rules.from_edge),
        head("flange", rules.from_flange),
        Column::words("next opening"),
        head("corners", rules.corner_radius),
        Column::words("what to do"),
    ]);
    for opening in &checks.openings {
        let of = |rules: &[Rule]| {
            let found = opening.clearances.iter().filter(|found| rules.contains(&found.rule));
            found.map(|found| cell(desk, found)).collect::<Vec<String>>().join(", ")
        };
        let cells = [
            opening.name.clone(),
            of(&[Rule::Seam]),
            of(&[Rule::Edge]),
            of(&[Rule::Member, Rule::Flange]),
            of(&[Rule::Apart]),
            of(&[Rule::Corner]),
            advice(desk, opening),
        ];
        if opening.holds { table.row(cells) } else { table.bold_row(cells) }
    }
    table
}

fn cell(desk: &Desk<'_>, found: &Clearance) -> String {
    let has = desk.ruler.text(found.distance);
    let short = if found.holds() { "" } else { " SHORT" };
    match (&found.against, found.rule) {
        (Against::Member(number), Rule::Member) => format!("over M{number}"),
        (Against::Member(number), _) => format!("{has} from M{number}{short}"),
        (Against::Seam(number), _) => format!("{has} from S{number}{short}"),
        (Against::Opening(other), _) => format!("{has} from {other}{short}"),
        (Against::Edge | Against::Corner, _) => format!("{has}{short}"),
    }
}

fn advice(desk: &Desk<'_>, opening: &CheckedOpening) -> String {
    let mut words: Vec<String> = opening.suggestion.iter().map(|least| moved(desk, least)).collect();
    if let Some(none) = &opening.no_place {
        words.push(format!("{} Would mend it: {}", none.reason, none.mend.join(" Or: ")));
    }
    if opening.clearances.iter().any(|found| found.rule == Rule::Corner && !found.holds()) {
        words.push("round the corners".to_owned());
    }
    words.join("; ")
}

/// `move 1" aft and 2" to starboard`
fn moved(desk: &Desk<'_>, least: &Move) -> String {
    let way = |length: crate::length::Length, plus: &str, minus: &str| {
        let word = if length.is_negative() { minus } else { plus };
        (!length.is_zero()).then(|| format!("{} {word}", desk.ruler.text(length.abs())))
    };
    let ways = [way(least.aft, "aft", "forward"), way(least.starboard, "to starboard", "to port")];
    format!("move {}", ways.into_iter().flatten().collect::<Vec<String>>().join(" and "))
}

fn parts(desk: &Desk<'_>) -> Table {
    let say = |length| desk.ruler.text(length);
    let mut table = Table::new(vec![
        Column::words("Part"),
        Column::new("size", Align::Left),
        Column::new("layers", Align::Right),
        Column::words("where it goes"),
    ])
    .size(Desk::FIGURES);
    for part in &desk.plan.opening_parts {
        let size = format!("{} × {}", say(part.length), say(part.width));
        table.row([part.label.clone(), size, part.layers.to_string(), place(desk, part)]);
    }
    table
}

fn place(desk: &Desk<'_>, part: &OpeningPart) -> String {
    let say = |length| desk.ruler.text(length);
    match (part.kind, part.place) {
        (OpeningPartKind::Frame, Some(place)) => format!(
            "under the board, {} to {} from the bow edge, {} to {} from the port edge",
            say(place.fore),
            say(place.aft),
            say(place.port),
            say(place.starboard)
        ),
        _ if part.corner_radius.is_zero() => "athwart × fore and aft, square corners".to_owned(),
        _ => format!("athwart × fore and aft, corner radius {}", say(part.corner_radius)),
    }
}
