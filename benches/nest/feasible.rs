//! Do all parts fit one sheet, yes or no (Clautiaux, Carlier and Moukrim 2007)?
//!
//! Each order is nested twice: with one sheet, where nothing left over is a yes; and with sheets without limit, where a
//! bound of two or more is a no. Then the one sheet is filled: all parts on it are a yes, and a bound below the area of all
//! of them is a no.

use crate::Outcome;
use crate::args::Args;
use crate::clock::Stopwatch;
use crate::data::{Instance, instances};
use crate::measure::{area, timed, way};
use crate::replay;
use crate::table::{Table, median, milliseconds};
use deck_core::Area;
use deck_core::nest::{Worth, fill};
use deck_core::stock::Saw;

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
        println!("The same by filling the sheet, {}, {}:\n", way(turned), args.effort_text());
        let rows: Vec<Row> = orders.iter().map(|order| by_fill(order, turned, args)).collect::<Result<_, String>>()?;
        print(&rows);
    }
    Ok(())
}

fn row(order: &Instance, turned: bool, args: &Args) -> Result<Row, String> {
    let (one, first) = timed(&order.clone().only(1), turned, args)?;
    let (many, second) = timed(order, turned, args)?;
    let fits = one.unplaced.is_empty() || (many.unplaced.is_empty() && many.sheet_count == 1);
    let shown_not = (one.proven && !one.unplaced.is_empty()) || order.sheets_of(area(many.bound)?) > 1;
    held(order, turned, (fits, shown_not), order.area_left(&one), first + second)
}

/// Fills the sheet with the most area.
fn by_fill(order: &Instance, turned: bool, args: &Args) -> Result<Row, String> {
    let (parts, stock, saw) = (order.area_parts(turned), order.stock(), Saw::new());
    let sheet = stock.first().ok_or_else(|| format!("{}: no sheet", order.name))?;
    let watch = Stopwatch::start();
    let answer = fill(sheet, &parts, &saw, args.effort).map_err(|error| format!("{}: {error}", order.name))?;
    let seconds = watch.seconds();
    replay::check_fill(&parts, sheet, &saw, &answer).map_err(|fault| format!("{}: {fault}", order.name))?;
    let all: i128 = parts
        .iter()
        .map(|part| Area::of(part.length, part.width).square_nanometres() * i128::from(part.count.unwrap_or(1)))
        .sum();
    let (Worth::Area(value), Worth::Area(bound)) = (answer.value, answer.bound) else { return Err("no area".into()) };
    let left = Area::from_square_nanometres(all - value.square_nanometres());
    held(order, turned, (left == Area::ZERO, bound.square_nanometres() < all), left, seconds)
}

/// The answer, held against what is known.
fn held(
    order: &Instance,
    turned: bool,
    (fits, shown_not): (bool, bool),
    left: Area,
    seconds: f64,
) -> Result<Row, String> {
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
    Ok(Row { name: order.name.clone(), answer, left, known, seconds })
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
