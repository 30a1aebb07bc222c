//! A quote as a table for spreadsheets.

use super::Quote;
use std::fmt::Write;

/// The quote's lines as comma-separated values, the total last: RFC 4180, with CR LF, amounts with two places and a point.
///
/// Columns: `group`, `description`, `quantity`, `unit`, `rate`, `amount`. What has no price has no amount.
pub fn quote_csv(quote: &Quote) -> String {
    let mut text = String::from("group,description,quantity,unit,rate,amount\r\n");
    let mut row = |cells: [String; 6]| {
        let cells = cells.map(|cell| quoted(&cell)).join(",");
        // unreachable: writing to a text does not fail.
        let _ = write!(text, "{cells}\r\n");
    };
    for line in &quote.lines {
        row([
            line.group.words().to_lowercase(),
            line.description.clone(),
            line.quantity.map(|quantity| quantity.to_string()).unwrap_or_default(),
            line.unit.clone(),
            line.rate.map(|rate| rate.to_string()).unwrap_or_default(),
            line.amount.map(|amount| amount.to_string()).unwrap_or_default(),
        ]);
    }
    let empty = String::new;
    let unit = quote.currency.clone().unwrap_or_default();
    row(["total".into(), "Total".into(), empty(), unit, empty(), quote.total.to_string()]);
    text
}

fn quoted(cell: &str) -> String {
    if cell.contains([',', '"', '\r', '\n']) { format!("\"{}\"", cell.replace('"', "\"\"")) } else { cell.to_owned() }
}
