//! Do all parts fit one sheet, yes or no (Clautiaux, Carlier and Moukrim 2007)?
//!
//! Each order is nested twice: with one sheet, where nothing left over is a yes; and with sheets without limit, where a
//! bound of two or more is a no.

use crate::Outcome;
use crate::args::Args;
use crate::data::{Instance, instances};
use crate::measure::{area, timed, way};
use crate::table::{Table, median, milliseconds};
use deck_core::Area;

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Answer {
    Fits,
    DoesNot,
    Open,
}

struct Row {
    name: String,
    answer: Answer,
    left: Area,
    known: Option<bool>,
    seconds: f64,
}

pub(crate) fn run(args: &Args) -> Outcome {
    let orders = instances(args, "opp_cjcm.json")?;
    for turned in args.turns.iter().copied().filter(|_| !orders.is_empty()) {
        println!("Feasible on one sheet, {}, {}:\n", way(turned), args.effort_text());
        let rows: Vec<Row> = orders.iter().map(|order| row(order, turned, args)).collect::<Result<_, String>>()?;
        print(&rows);
    }
    Ok(())
}

fn row(order: &Instance, turned: bool, args: &Args) -> Result<Row, String> {
    let (one, first) = timed(&order.clone().only(1), turned, args)?;
    let (many, second) = timed(order, turned, args)?;
    let fits = one.unplaced.is_empty() || (many.unplaced.is_empty() && many.sheet_count == 1);
    let shown_not = (one.proven && !one.unplaced.is_empty()) || order.sheets_of(area(many.bound)?) > 1;
    let answer = match (fits, shown_not) {
        (true, true) => return Err(format!("{}: fits, and is proven not to", order.name)),
        (true, false) => Answer::Fits,
        (false, true) => Answer::DoesNot,
        (false, false) => Answer::Open,
    };
    let known = order.fits(if turned { "fits_guillotine_rotated" } else { "fits_guillotine_fixed" });
    let wrong = matches!((answer, known), (Answer::Fits, Some(false)) | (Answer::DoesNot, Some(true)));
    if wrong {
        return Err(format!("{}: {answer:?}, and known is {known:?}", order.name));
    }
    Ok(Row { name: order.name.clone(), answer, left: order.area_left(&one), known, seconds: first + second })
}

fn print(rows: &[Row]) {
    let table = Table::new(&["known", "orders", "answered", "least area left over", "median ms", "max ms", "open"]);
    for (known, name) in [(Some(true), "fits"), (Some(false), "does not fit")] {
        let rows: Vec<&Row> = rows.iter().filter(|row| row.known == known).collect();
        let open: Vec<&Row> = rows.iter().copied().filter(|row| row.answer == Answer::Open).collect();
        let names: Vec<&str> = open.iter().map(|row| row.name.as_str()).collect();
        let left = open.iter().map(|row| row.left.square_nanometres() / 1_000_000_000_000).min();
        table.row(&[
            name.to_owned(),
            rows.len().to_string(),
            (rows.len() - open.len()).to_string(),
            left.map_or_else(|| "–".to_owned(), |left| left.to_string()),
            milliseconds(median(rows.iter().map(|row| row.seconds))),
            milliseconds(rows.iter().map(|row| row.seconds).fold(0.0, f64::max)),
            names.join(" "),
        ]);
    }
    println!();
}
