//! Sums of sheets over ten published classes of orders (Berkey and Wang 1987; Martello and Vigo 1998).

use crate::Outcome;
use crate::args::Args;
use crate::data::instances;
use crate::measure::{Log, Row, row, way};
use crate::table::{Table, median, milliseconds};

const FILE: &str = "bp_class.json";
const HEAD: [&str; 10] =
    ["class", "orders", "sheets", "best known", "own bound", "known bound", "proven", "median ms", "max ms", "sum s"];

pub(crate) fn run(args: &Args) -> Outcome {
    let orders = instances(args, FILE)?;
    let mut log = Log::open(args)?;
    for turned in args.turns.iter().copied().filter(|_| !orders.is_empty()) {
        println!("Classes, {}, {}, one order in {}:\n", way(turned), args.effort_text(), args.every);
        let rows = orders.iter().map(|order| row(order, turned, args, &mut log));
        let rows: Vec<Row> = rows.collect::<Result<_, String>>()?;
        print(&rows);
        if args.list {
            list(&rows);
        }
    }
    Ok(())
}

fn print(rows: &[Row]) {
    let table = Table::new(&HEAD);
    for class in rows.chunk_by(|one, next| class(one) == class(next)) {
        table.row(&cells(class.first().map_or("", |first| class_name(first)), class));
    }
    table.row(&cells("all", rows));
    println!();
}

/// `CLASS01_020_01` is of class `01`.
fn class(row: &Row) -> &str {
    row.name.split('_').next().unwrap_or("")
}

fn class_name(row: &Row) -> &str {
    class(row).trim_start_matches("CLASS")
}

fn cells(name: &str, rows: &[Row]) -> Vec<String> {
    let sum = |figure: fn(&Row) -> i64| rows.iter().map(figure).sum::<i64>().to_string();
    let seconds = || rows.iter().map(|row| row.seconds);
    vec![
        name.to_owned(),
        rows.len().to_string(),
        sum(|row| row.sheets),
        sum(|row| row.known.most.unwrap_or(row.sheets)),
        sum(|row| row.bound),
        sum(|row| row.known.least.unwrap_or(row.bound)),
        rows.iter().filter(|row| row.proven).count().to_string(),
        milliseconds(median(seconds())),
        milliseconds(seconds().fold(0.0, f64::max)),
        format!("{:.1}", seconds().sum::<f64>()),
    ]
}

/// Names of the orders that say most about what to mend.
fn list(rows: &[Row]) {
    let named = |what: &str, which: &dyn Fn(&Row) -> bool| {
        let found: Vec<String> = rows.iter().filter(|row| which(row)).map(told).collect();
        println!("{what} ({}): {}\n", found.len(), found.join(", "));
    };
    named("Fewer sheets than the best known", &|row| row.known.most.is_some_and(|most| row.sheets < most));
    named("More sheets than the best known", &|row| row.known.most.is_some_and(|most| row.sheets > most));
    named("Bound above the best known", &|row| row.known.least.is_some_and(|least| row.bound > least));
    named("Bound below the best known", &|row| row.known.least.is_some_and(|least| row.bound < least));
}

fn told(row: &Row) -> String {
    format!("{} {}…{} (known {})", row.name, row.bound, row.sheets, row.known.text())
}
