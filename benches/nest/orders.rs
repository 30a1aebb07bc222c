//! Orders with many copies of few sizes, one row each: a furniture maker's panels (Macedo, Alves and Valério de
//! Carvalho 2010), and a cutting-stock order (sizes of Beasley 1985, demands of Cintra and others 2008).

use crate::Outcome;
use crate::args::Args;
use crate::data::instances;
use crate::measure::{Log, Row, row, way};
use crate::table::{Table, milliseconds};

const HEAD: [&str; 6] = ["order", "sheets", "own bound", "proven", "known", "ms"];

pub(crate) fn furniture(args: &Args) -> Outcome {
    orders(args, "Furniture", "furniture_a.json")
}

pub(crate) fn demand(args: &Args) -> Outcome {
    orders(args, "Demand", "gcut_demand.json")
}

fn orders(args: &Args, title: &str, file: &str) -> Outcome {
    let orders = instances(args, file)?;
    let mut log = Log::open(args)?;
    for turned in args.turns.iter().copied().filter(|_| !orders.is_empty()) {
        println!("{title}, {}, {}:\n", way(turned), args.effort_text());
        let rows = orders.iter().map(|order| row(order, turned, args, &mut log));
        let rows: Vec<Row> = rows.collect::<Result<_, String>>()?;
        let table = Table::new(&HEAD);
        for row in &rows {
            table.row(&cells(row));
        }
        table.row(&total(&rows));
        println!("\n{}\n", against_proven(&rows));
    }
    Ok(())
}

fn cells(row: &Row) -> Vec<String> {
    let proven = if row.proven { "yes" } else { "no" };
    let figures = [row.sheets.to_string(), row.bound.to_string(), proven.to_owned(), row.known.text()];
    std::iter::once(row.name.clone()).chain(figures).chain([milliseconds(row.seconds)]).collect()
}

fn total(rows: &[Row]) -> Vec<String> {
    let sum = |figure: fn(&Row) -> i64| rows.iter().map(figure).sum::<i64>().to_string();
    let proven = rows.iter().filter(|row| row.proven).count();
    let seconds: f64 = rows.iter().map(|row| row.seconds).sum();
    let figures = [sum(|row| row.sheets), sum(|row| row.bound), format!("{proven} of {}", rows.len())];
    let least = sum(|row| row.known.least.unwrap_or(row.bound));
    let most = sum(|row| row.known.most.unwrap_or(row.sheets));
    let known = format!("{least}…{most}");
    std::iter::once("all".to_owned()).chain(figures).chain([known, milliseconds(seconds)]).collect()
}

/// How the orders whose answer is known came out, in a sentence.
fn against_proven(rows: &[Row]) -> String {
    let settled = rows.iter().filter(|row| row.known.settled()).count();
    let met = rows.iter().filter(|row| row.known.settled() && row.known.least == Some(row.sheets)).count();
    let missed: Vec<&str> =
        rows.iter().filter(|row| row.known.most.is_some_and(|most| row.sheets > most)).map(|row| &*row.name).collect();
    let better: Vec<&str> =
        rows.iter().filter(|row| row.known.most.is_some_and(|most| row.sheets < most)).map(|row| &*row.name).collect();
    let names = |names: Vec<&str>| if names.is_empty() { "none".to_owned() } else { names.join(", ") };
    format!(
        "Proven elsewhere: {met} of {settled} met. More sheets than known: {}. Fewer: {}.",
        names(missed),
        names(better)
    )
}
