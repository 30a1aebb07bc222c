//! The cover: what the job is, what to order, what to beware of, what to measure first, what was assumed.

use super::opening_notes;
use crate::cautions::{Caution, Source};
use crate::draw::desk::{Desk, count, list};
use crate::draw::figure::{Align, Column, MILLIMETRE, Table, TextSize};
use crate::draw::flow::Flow;
use crate::draw::page::Page;
use crate::money::Figure;
use crate::plan::Plan;
use crate::takeoff::{Amount, Takeoff, TakeoffLine};

/// The cover's pages; `sheets` are those that follow it.
pub(super) fn pages(desk: &Desk<'_>, sheets: &[Page]) -> Vec<Page> {
    let plan = desk.plan;
    let mut page = desk.page("cover", plan.job.name.clone());
    page.frame = page.frame.note("Deck job packet");
    let mut flow = Flow::new(page, Page::body(desk.paper));
    flow.table(&facts(desk));
    no_layout(desk, &mut flow);
    unplaced(desk, &mut flow);
    if let Some(takeoff) = &plan.takeoff {
        flow.heading("Order list");
        flow.table(&order(desk, takeoff));
    }
    flow.heading("Check before the first cut");
    flow.table(&checks(desk));
    opening_notes::openings(desk, &mut flow);
    cautions(desk, &mut flow);
    assumed(desk, &mut flow);
    contents(sheets, &mut flow);
    flow.finish()
}

fn facts(desk: &Desk<'_>) -> Table {
    let (plan, ruler) = (desk.plan, desk.ruler);
    let basis = &plan.basis;
    let mut table = Table::new(vec![Column::new("Job", Align::Left), Column::words(plan.job.name.clone())]);
    table.size = Desk::FIGURES;
    let mut say = |name: &str, words: String| table.row([name.to_owned(), words]);
    say(
        "deck",
        format!(
            "{} long, {} beam, {}",
            ruler.text(plan.deck.length),
            ruler.text(plan.deck.beam),
            desk.area(plan.deck.area)
        ),
    );
    say("frame", count(plan.frame.len(), "cross member", "cross members"));
    if let Some(layout) = plan.layouts.first() {
        let panels = count(plan.panels.len(), "panel", "panels");
        let seams = count(layout.seams.len(), "seam", "seams");
        let gap = if basis.gap.is_zero() { "no gap".to_owned() } else { format!("gap {}", ruler.text(basis.gap)) };
        let proven = if plan.proven { "; no better layout of seams exists" } else { "" };
        say("boards", format!("{panels}, {seams}, {gap}, {} thick{proven}", ruler.text(basis.thickness)));
    }
    if let Some(patch) = &plan.patch {
        let patches = count(patch.patches.len(), "patch", "patches");
        let kept = count(patch.old_boards.len(), "old board", "old boards");
        say(
            "boards",
            format!("{patches} in {kept}, {} thick; the rest of the old deck stays", ruler.text(basis.thickness)),
        );
    }
    if let Some(nest) = &plan.sheets {
        let proven = if nest.proven { "; fewer or cheaper is not possible" } else { "" };
        say("sheets to saw", format!("{}{proven}", nest.sheet_count));
    }
    if let Some(fastening) = &plan.fasteners {
        say(
            "fasteners",
            format!(
                "{}: {} in edge rows, {} in field rows",
                fastening.count, fastening.edge_count, fastening.field_count
            ),
        );
    }
    say("strength", strength(plan));
    if let Some(takeoff) = &plan.takeoff {
        say(
            "new boards",
            format!("{} dry; mass only, no statement on what the boat may carry", desk.mass(takeoff.deck_weight_lb)),
        );
    }
    table
}

/// Whether there are figures of strength, and on which sheet.
fn strength(plan: &Plan) -> String {
    match (&plan.span.no_figure, &plan.span.panel) {
        (None, Some(panel)) => {
            format!("{panel}: see the sheet on strength; no statement that the deck will carry anybody")
        }
        (reason, _) => reason.clone().unwrap_or_default(),
    }
}

fn no_layout(desk: &Desk<'_>, flow: &mut Flow) {
    let Some(reason) = &desk.plan.no_layout else { return };
    flow.heading("No layout of seams");
    flow.paragraph(&reason.reason, TextSize::FIGURE, true);
    if !reason.mend.is_empty() {
        flow.paragraph("Each of these would mend it on its own:", TextSize::FIGURE, false);
    }
    for mend in &reason.mend {
        flow.paragraph(&format!("• {mend}"), TextSize::FIGURE, false);
    }
}

fn unplaced(desk: &Desk<'_>, flow: &mut Flow) {
    let unplaced = desk.plan.sheets.iter().flat_map(|nest| &nest.unplaced);
    let name = |label: &str| {
        let panel = desk.plan.panels.iter().any(|panel| panel.label == label);
        if panel { format!("panel {label}") } else { label.to_owned() }
    };
    let lines: Vec<String> =
        unplaced.map(|part| format!("• {}, {} missing: {}", name(&part.part), part.count, part.why)).collect();
    if lines.is_empty() {
        return;
    }
    flow.heading("Panels for which there is no sheet");
    for line in lines {
        flow.paragraph(&line, TextSize::FIGURE, true);
    }
}

fn order(desk: &Desk<'_>, takeoff: &Takeoff) -> Table {
    let priced = takeoff.lines.iter().any(|line| line.price.is_some());
    let mut columns = vec![
        Column::words("Material"),
        Column::new("needed", Align::Right),
        Column::new("spare", Align::Right),
        Column::new("get", Align::Right),
        Column::new("", Align::Left),
    ];
    if priced {
        columns.extend([Column::new("each", Align::Right), Column::new("cost", Align::Right)]);
    }
    let mut table = Table::new(columns).size(Desk::FIGURES);
    for line in &takeoff.lines {
        table.row(order_row(desk, line));
    }
    if let Some(cost) = takeoff.sheets_cost {
        let empty = || String::new();
        table.bold_row(["sheets in all".to_owned(), empty(), empty(), empty(), empty(), empty(), cost.to_string()]);
    }
    table
}

fn order_row(desk: &Desk<'_>, line: &TakeoffLine) -> [String; 7] {
    let amount = |amount: &Amount| match amount {
        Amount::Count(0) => "–".to_owned(),
        Amount::Count(count) => count.to_string(),
        Amount::Length(length) if length.is_zero() => "–".to_owned(),
        Amount::Length(length) => desk.running_length(*length),
        Amount::Gallons(gallons) if *gallons == Figure::ZERO => "–".to_owned(),
        Amount::Gallons(gallons) => desk.volume(*gallons),
    };
    let holds = line.holds.as_ref().map(|holds| format!(" of {}", amount(holds))).unwrap_or_default();
    let money = |money: Option<crate::money::Money>| money.map(|money| money.to_string()).unwrap_or_default();
    [
        line.description.clone(),
        amount(&line.needed),
        amount(&line.spare),
        line.buy.to_string(),
        format!("{}{holds}", line.unit),
        money(line.price),
        money(line.cost),
    ]
}

fn checks(desk: &Desk<'_>) -> Table {
    let (checks, ruler) = (&desk.plan.deck.checks, desk.ruler);
    let mut table = Table::new(vec![Column::words("Measure on the boat"), Column::new("must be", Align::Right)]);
    table.size = Desk::FIGURES;
    table.row(["length over all".to_owned(), ruler.both(checks.length)]);
    table.row(["greatest beam".to_owned(), ruler.both(checks.beam)]);
    if let Some(square) = &checks.square {
        let corners = format!(
            "both diagonals, between the corners at {} and {} aft of the bow edge; a difference of {} means that one side \
             is {} ahead of the other",
            ruler.text(square.fore),
            ruler.text(square.aft),
            ruler.text(square.difference),
            ruler.text(square.skew),
        );
        table.row([corners, ruler.both(square.diagonal)]);
    }
    if let Some(stack) = &checks.stack {
        let words = "how far the aftmost board may be off when boards are sawn and set within the usual errors: at worst, \
                     and as a root of the sum of squares";
        table
            .row([words.to_owned(), format!("± {}, ± {}", ruler.text(stack.worst), ruler.text(stack.root_sum_square))]);
    }
    table
}

fn cautions(desk: &Desk<'_>, flow: &mut Flow) {
    for (source, title) in [(Source::Plan, "Cautions for this plan"), (Source::Standing, "Standing cautions")] {
        let cautions: Vec<&Caution> = desk.plan.cautions.iter().filter(|caution| caution.source == source).collect();
        if cautions.is_empty() {
            continue;
        }
        flow.heading(title);
        let mut table = Table::new(vec![
            Column::words("What"),
            Column::at_most("Why", 54 * MILLIMETRE),
            Column::at_most("Goes by", 38 * MILLIMETRE),
        ]);
        for caution in cautions {
            let about = if caution.about.is_empty() { String::new() } else { format!(" ({})", list(&caution.about)) };
            table.row([format!("{}{about}", caution.text), caution.reason.clone(), caution.defers_to.clone()]);
        }
        flow.table(&table);
    }
}

fn assumed(desk: &Desk<'_>, flow: &mut Flow) {
    if !desk.plan.assumed.is_empty() {
        flow.heading("Assumed, because the job does not say");
        let mut table =
            Table::new(vec![Column::words("Setting"), Column::words("taken"), Column::words("where it comes from")]);
        for assumed in &desk.plan.assumed {
            table.row([assumed.setting.clone(), assumed.value.clone(), assumed.source.clone()]);
        }
        flow.table(&table);
    }
    if !desk.plan.rounded.is_empty() {
        flow.heading("Rounded to whole nanometres");
        let mut table = Table::new(vec![Column::words("Field"), Column::words("given"), Column::words("taken")]);
        for rounded in &desk.plan.rounded {
            table.row([rounded.pointer.clone(), rounded.given.clone(), rounded.taken.to_string()]);
        }
        flow.table(&table);
    }
}

fn contents(sheets: &[Page], flow: &mut Flow) {
    flow.heading("In this packet");
    let titles: Vec<String> = sheets
        .iter()
        .filter(|page| !page.frame.title.ends_with("(continued)"))
        .map(|page| page.frame.title.clone())
        .collect();
    flow.paragraph(&titles.join("; "), TextSize::BODY, false);
}
