//! What errors of measuring, sawing and setting leave of the bearing at each seam, and whether to rip on the boat.

use crate::draw::desk::Desk;
use crate::draw::figure::{Align, Column, Table, TextSize};
use crate::draw::flow::Flow;
use crate::draw::page::Page;
use crate::length::Length;
use crate::plan::PlanTolerance;
use crate::seams::{BearingTolerance, LastBoard, Spread};

pub(super) fn pages(desk: &Desk<'_>) -> Vec<Page> {
    let Some(tolerance) = &desk.plan.tolerance else { return Vec::new() };
    let page = desk.page("tolerance", "What errors leave of the bearings");
    let mut flow = Flow::new(page, Page::body(desk.paper));
    flow.paragraph(&errors(desk, tolerance), TextSize::BODY, false);
    if tolerance.seams.is_empty() {
        flow.paragraph("The deck has no seam.", TextSize::BODY, false);
    } else {
        let least = desk.ruler.text(tolerance.least_bearing);
        flow.headed(&format!("Bearing at each seam; {least} is the least"), &table(desk, tolerance));
        flow.paragraph(&how(desk, tolerance), TextSize::LEAST, false);
    }
    for words in &tolerance.mend {
        flow.paragraph(words, TextSize::BODY, true);
    }
    if let Some(last) = &tolerance.last_board {
        flow.heading("The last board");
        flow.paragraph(&last_board(desk, last), TextSize::BODY, last.pays);
    }
    flow.finish()
}

fn spread(desk: &Desk<'_>, spread: Spread) -> String {
    if spread.under == spread.over {
        return format!("± {}", desk.ruler.text(spread.over));
    }
    format!("+ {} / − {}", desk.ruler.text(spread.over), desk.ruler.text(spread.under))
}

fn errors(desk: &Desk<'_>, tolerance: &PlanTolerance) -> String {
    let tape = if tolerance.chained { "each bay from the member before" } else { "all off one tape from the bow" };
    let chosen = if tolerance.by_margin {
        " Among layouts of the same boards and rips, seams were placed for the greatest margin at worst."
    } else {
        ""
    };
    format!(
        "Errors, each evenly spread and independent: a station as read {} ({tape}); a sawn width {}; a sheet + 0 / − {}; \
         the place of a board {}.{chosen}",
        spread(desk, tolerance.measuring),
        spread(desk, tolerance.sawing),
        desk.ruler.text(tolerance.sheet),
        spread(desk, tolerance.setting),
    )
}

/// Bold where a bearing may fall under the least.
fn table(desk: &Desk<'_>, tolerance: &PlanTolerance) -> Table {
    let right = |title: &str| Column::new(title, Align::Right);
    let mut table = Table::new(vec![
        Column::words("Seam"),
        Column::words("on"),
        Column::words("board"),
        right("planned"),
        right("by squares"),
        right("at worst"),
        right("over least"),
        right("chance"),
    ])
    .size(Desk::FIGURES);
    for seam in &tolerance.seams {
        let sides = [(seam.seam, "forward", &seam.fore), (seam.seam + 1, "aft", &seam.aft)];
        for (place, (board, side, bearing)) in sides.into_iter().enumerate() {
            let named =
                if place == 0 { [seam.seam.to_string(), format!("M{}", seam.member)] } else { Default::default() };
            let cells = named.into_iter().chain([format!("{board}, {side}")]).chain(figures(desk, bearing));
            if bearing.margin.is_negative() { table.bold_row(cells) } else { table.row(cells) }
        }
    }
    table
}

fn figures(desk: &Desk<'_>, bearing: &BearingTolerance) -> [String; 5] {
    let text = |length: Length| desk.ruler.text(length);
    [
        text(bearing.planned),
        text(bearing.root_sum_square),
        text(bearing.worst),
        text(bearing.margin),
        percent(bearing.chance_short),
    ]
}

fn percent(chance: f64) -> String {
    if chance <= 0.0 {
        "none".into()
    } else if chance < 0.0001 {
        "under 0.01 %".into()
    } else {
        format!("{:.2} %", chance * 100.0)
    }
}

fn how(desk: &Desk<'_>, tolerance: &PlanTolerance) -> String {
    let shares = tolerance.shares.as_ref().zip(tolerance.weakest).map(|(shares, seam)| {
        let text = |length: Length| desk.ruler.text(length);
        format!(
            " At seam {seam}, the weakest, readings can take {}, sheets {}, the saw {}, setting {}.",
            text(shares.measuring),
            text(shares.sheets),
            text(shares.sawing),
            text(shares.setting)
        )
    });
    format!(
        "At worst: every error at its limit the same way. By squares: less the root of the sum of the squares of all \
         half-widths. Over least: how far the worst is above the least, minus under it. Chance: of bearing less than the \
         least, by the sum of even spreads.{}",
        shares.unwrap_or_default()
    )
}

fn last_board(desk: &Desk<'_>, last: &LastBoard) -> String {
    let board = last.board;
    let ends = format!(
        "Sawn in the shop with the others, board {board} can end {} from its place at worst; ripped on the boat {}.",
        spread(desk, last.in_shop),
        spread(desk, last.on_boat)
    );
    if !last.pays {
        return format!("{ends} It may be sawn in the shop: it stays within what the job allows at the stern.");
    }
    let beyond = desk.ruler.text(last.beyond);
    let saves = desk.ruler.text(last.saves);
    let advice = if last.lacks > Length::ZERO {
        format!(
            "The widest board in stock is {} short of what it takes to leave it over: set the boards before it with care, \
             and only cut it shorter.",
            desk.ruler.text(last.lacks)
        )
    } else {
        format!("Leave it {} wide, and rip it on the boat: that saves {saves}.", desk.ruler.text(last.leave_wide))
    };
    format!("{ends} From the shop it can be {beyond} past what the job allows at the stern. {advice}")
}
