//! The manners of laying boards that were compared: a small picture of each, their figures, and why others cannot be.

use crate::draw::bow_up;
use crate::draw::deck_shape;
use crate::draw::desk::Desk;
use crate::draw::figure::{Align, Column, Line, MILLIMETRE, Micrometres, Path, Rect, Table, TextSize};
use crate::draw::flow::Flow;
use crate::draw::page::Page;
use crate::draw::sheet_frame::Bow;
use crate::plan::{Arrangement, ArrangementFigures, SeamPricing, SheetCost};

/// Height of the small pictures.
const PICTURES: Micrometres = 84 * MILLIMETRE;
/// Space between them.
const BETWEEN: Micrometres = 6 * MILLIMETRE;

pub(super) fn pages(desk: &Desk<'_>) -> Vec<Page> {
    let plan = desk.plan;
    if plan.arrangements.is_empty() {
        return Vec::new();
    }
    let mut page = desk.page("arrangements", "Arrangements compared");
    page.frame = page.frame.bow(Bow::Up).note("the first figure that differs decides, from left to right");
    let mut flow = Flow::new(page, Page::body(desk.paper));
    if let Some(division) = &plan.division {
        flow.paragraph(&division.chosen, TextSize::BODY, false);
    }
    if let Some(pricing) = &plan.seams_by_nest {
        flow.paragraph(&by_nest(desk, pricing), TextSize::BODY, false);
    }
    let possible: Vec<&Arrangement> = plan.arrangements.iter().filter(|row| row.figures.is_some()).collect();
    if !possible.is_empty() {
        flow.drawing(PICTURES, |page, room| pictures(desk, page, room, &possible));
        flow.headed("Figures", &figures(desk, &possible));
        flow.table(&details(&possible));
    }
    let refused: Vec<&Arrangement> = plan.arrangements.iter().filter(|row| row.no_layout.is_some()).collect();
    if !refused.is_empty() {
        flow.headed("Cannot be", &reasons(&refused));
    }
    if let Some(division) = &plan.division {
        flow.heading("Rules kept");
        for rule in &division.rules {
            flow.paragraph(rule, TextSize::FIGURE, false);
        }
    }
    flow.finish()
}

/// What choosing seams by the nest came to.
fn by_nest(desk: &Desk<'_>, pricing: &SeamPricing) -> String {
    let say = |cost: &SheetCost| match (cost.money, cost.area) {
        (Some(money), _) => money.to_string(),
        (None, Some(area)) => desk.area(area),
        (None, None) => String::new(),
    };
    let all = if pricing.every_layout { "all" } else { "the first" };
    let end = if pricing.proven { ", so this is the best" } else { "" };
    format!(
        "Seams of boards athwart were chosen by what the sheets cost: {all} {} layouts were nested. The layout with the best          seams takes sheets for {}, the one that was chosen {}; no layout takes less than {}{end}.",
        pricing.layouts,
        say(&pricing.seams_first),
        say(&pricing.by_nest),
        say(&pricing.bound),
    )
}

/// Every arrangement that can be, bow up, all to one scale, the best at the left.
fn pictures(desk: &Desk<'_>, page: &mut Page, room: Rect, possible: &[&Arrangement]) -> Micrometres {
    let deck = &desk.plan.deck;
    let count = i64::try_from(possible.len().max(3)).unwrap_or(4);
    let each = (room.width() - BETWEEN * (count - 1)) / count;
    let title = 3 * TextSize::FIGURE.line_height();
    let mut lowest = room.top;
    for (index, arrangement) in possible.iter().enumerate() {
        let left = room.left + (each + BETWEEN) * i64::try_from(index).unwrap_or(0);
        let field = Rect::new(left, room.top, left + each, room.top + PICTURES);
        let built = if arrangement.built { ", built" } else { "" };
        let words = format!("{}. {}{built}", index + 1, arrangement.name);
        let figure = &mut page.figure;
        figure.paragraph(field.top_left(), each, &words, TextSize::FIGURE, arrangement.built);
        let drawing = Rect { top: field.top + title, ..field };
        let (mapping, placed) = bow_up::fitted(drawing, (deck.beam, deck.length), desk.ruler.unit());
        for bounds in &arrangement.bounds {
            figure.stroke(Path::rect(deck_shape::bounds(&mapping, bounds)), Line::Thin);
        }
        let line = if arrangement.built { Line::Outline } else { Line::Thin };
        figure.stroke(deck_shape::path(&mapping, &deck.outline), line);
        lowest = lowest.max(placed.bottom);
    }
    lowest + 2 * MILLIMETRE
}

fn figures(desk: &Desk<'_>, possible: &[&Arrangement]) -> Table {
    let right = |title: &str| Column::new(title, Align::Right);
    let with_strength = possible.iter().any(|row| figures_of(row).is_some_and(|found| found.utilisation.is_some()));
    let mut columns = vec![
        right(""),
        Column::words("Arrangement"),
        right("no sheet"),
        right("short"),
        right("zones"),
        right("cost"),
        right("sheets"),
        right("boards"),
        right("seams"),
        right("along"),
        right("blocks"),
        right("blocking"),
    ];
    if with_strength {
        columns.push(right("used"));
    }
    let mut table = Table::new(columns).size(TextSize::LEAST);
    for row in possible {
        let Some(found) = figures_of(row) else { continue };
        let cost = found.cost.map_or_else(|| desk.area(found.sheet_area), |money| money.to_string());
        let mut cells = vec![
            row.rank.map_or_else(String::new, |rank| rank.to_string()),
            row.name.clone(),
            found.unplaced.to_string(),
            found.short_seams.to_string(),
            found.zones_crossed.to_string(),
            cost,
            found.sheets.to_string(),
            found.boards.to_string(),
            desk.running_length(found.seam_length),
            desk.running_length(found.joint_length),
            found.blocks.to_string(),
            desk.running_length(found.blocking_length),
        ];
        if with_strength {
            cells.push(found.utilisation.map_or_else(String::new, |used| format!("{used:.2}")));
        }
        if row.built { table.bold_row(cells) } else { table.row(cells) }
    }
    table
}

fn figures_of(row: &Arrangement) -> Option<&ArrangementFigures> {
    row.figures.as_ref()
}

fn details(possible: &[&Arrangement]) -> Table {
    let mut table =
        Table::new(vec![Column::new("", Align::Right), Column::words("How the boards lie")]).size(TextSize::FIGURE);
    for row in possible {
        let rank = row.rank.map_or_else(String::new, |rank| rank.to_string());
        table.row([rank, row.detail.clone().unwrap_or_default()]);
    }
    table
}

fn reasons(refused: &[&Arrangement]) -> Table {
    let columns = vec![Column::words("Arrangement"), Column::words("Why not"), Column::words("Would mend it")];
    let mut table = Table::new(columns).size(TextSize::FIGURE);
    for row in refused {
        if let Some(reason) = &row.no_layout {
            table.row([row.name.clone(), reason.reason.clone(), reason.mend.join(" ")]);
        }
    }
    table
}
