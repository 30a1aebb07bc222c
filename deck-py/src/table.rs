//! Results as tables in HTML, for notebooks.

use deck_core::nest::{Nest, Placement};

/// A row for each sheet: what it is taken from, the parts on it, and what is left to keep.
pub(crate) fn nest(nest: &Nest) -> String {
    let rows = nest.sheets.iter().enumerate().map(|(index, sheet)| {
        let cells =
            [(index + 1).to_string(), sheet.stock.clone(), parts(&sheet.placements), sheet.offcuts.len().to_string()];
        row("td", &cells)
    });
    let unplaced = nest.unplaced.iter().map(|part| {
        row("td", &["not placed".into(), String::new(), format!("{} × {}", part.count, part.part), part.why.clone()])
    });
    let head = row("th", &["sheet", "from", "parts", "offcuts"].map(str::to_owned));
    format!("<table>{head}{}</table>", rows.chain(unplaced).collect::<String>())
}

/// The labels in sawing order, each once with its count.
pub(crate) fn parts(placements: &[Placement]) -> String {
    let mut counts: Vec<(&str, usize)> = Vec::new();
    for placement in placements {
        match counts.iter_mut().find(|(label, _)| *label == placement.part) {
            Some((_, count)) => *count += 1,
            None => counts.push((&placement.part, 1)),
        }
    }
    let texts: Vec<String> = counts.into_iter().map(|(label, count)| format!("{count} × {label}")).collect();
    texts.join(", ")
}

pub(crate) fn row(tag: &str, cells: &[String]) -> String {
    let cells: Vec<String> = cells.iter().map(|cell| format!("<{tag}>{}</{tag}>", escaped(cell))).collect();
    format!("<tr>{}</tr>", cells.concat())
}

fn escaped(text: &str) -> String {
    text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;")
}
