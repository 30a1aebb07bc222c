//! One sheet, most value: published sets with limited and with unlimited copies.

use crate::Outcome;
use crate::args::Args;
use crate::clock::Stopwatch;
use crate::data::{Instance, Known, UNIT, instances, there};
use crate::measure::way;
use crate::replay;
use crate::table::{Table, median, milliseconds};
use deck_core::nest::{Worth, fill};
use deck_core::stock::Saw;

const LIMITED: [&str; 9] =
    ["gcut", "cgcut", "ngcut", "okp", "hifi_constrained", "fayard_cu", "fayard_cw", "apt_constrained", "velasco_uchoa"];
const UNLIMITED: [&str; 5] = ["gcut", "fayard_uu", "fayard_uw", "hifi_unconstrained", "apt_unconstrained"];
/// How many of the slowest are named.
const SLOWEST: usize = 3;

/// What came of one sheet.
pub(crate) struct Filled {
    name: String,
    pub(crate) value: i64,
    pub(crate) bound: i64,
    pub(crate) proven: bool,
    pub(crate) seconds: f64,
    known: Known,
}

pub(crate) fn run(args: &Args) -> Outcome {
    if !there(args, "the sheets to fill") {
        return Ok(());
    }
    for (limited, sets) in [(true, &LIMITED[..]), (false, &UNLIMITED[..])] {
        for turned in args.turns.iter().copied() {
            tables(args, limited, sets, turned)?;
        }
    }
    Ok(())
}

fn tables(args: &Args, limited: bool, sets: &[&str], turned: bool) -> Outcome {
    let copies = if limited { "limited" } else { "unlimited" };
    let mut all: Vec<(&str, Vec<Filled>)> = Vec::new();
    for set in sets {
        let sheets = instances(args, &format!("{set}.json"))?;
        let rows = sheets.iter().map(|sheet| filled(sheet, turned, limited, args));
        all.push((set, rows.collect::<Result<_, String>>()?));
    }
    if all.iter().all(|(_, rows)| rows.is_empty()) {
        return Ok(());
    }
    println!("Fill, copies {copies}, {}, {}, one sheet in {}:\n", way(turned), args.effort_text(), args.every);
    let table = Table::new(&[
        "set",
        "sheets",
        "proven",
        "best reached",
        "of known",
        "below best known, %",
        "median ms",
        "max ms",
        "slowest",
    ]);
    for (set, rows) in &all {
        table.row(&cells(set, &rows.iter().collect::<Vec<_>>()));
    }
    let rows: Vec<&Filled> = all.iter().flat_map(|(_, rows)| rows).collect();
    table.row(&cells("all", &rows));
    println!();
    if args.list {
        list(&rows);
    }
    Ok(())
}

/// Fills the instance's sheet; refuses figures that cannot be.
pub(crate) fn filled(instance: &Instance, turned: bool, limited: bool, args: &Args) -> Result<Filled, String> {
    let (parts, saw) = (instance.fill_parts(turned, limited), Saw::new());
    let stock = instance.stock();
    let sheet = stock.first().ok_or_else(|| format!("{}: no sheet", instance.name))?;
    let watch = Stopwatch::start();
    let answer = fill(sheet, &parts, &saw, args.effort).map_err(|error| format!("{}: {error}", instance.name))?;
    let seconds = watch.seconds();
    replay::check_fill(&parts, sheet, &saw, &answer).map_err(|fault| format!("{}: {fault}", instance.name))?;
    let known = instance.known(key(turned, limited));
    let (value, bound) = (units(answer.value)?, units(answer.bound)?);
    let row = Filled { name: instance.name.clone(), value, bound, proven: answer.proven, seconds, known };
    check_known(&row)?;
    Ok(row)
}

fn key(turned: bool, limited: bool) -> &'static str {
    match (limited, turned) {
        (true, false) => "limited_fixed",
        (true, true) => "limited_rotated",
        (false, false) => "unlimited_fixed",
        (false, true) => "unlimited_rotated",
    }
}

/// Whole units of value.
fn units(worth: Worth) -> Result<i64, String> {
    let Worth::Value(value) = worth else { return Err("a worth in area, though values are given".into()) };
    i64::try_from(value.ten_thousandths() / UNIT).map_err(|error| error.to_string())
}

fn check_known(row: &Filled) -> Outcome {
    let Filled { name, value, bound, proven, known, .. } = row;
    let faults = [
        (known.most.is_some_and(|most| *value > most), "more value than is possible"),
        (known.least.is_some_and(|least| *bound < least), "a bound below what is known to be possible"),
        (bound < value, "a bound below the answer"),
        (*proven && bound != value, "proven, though the bound is not met"),
    ];
    match faults.iter().find(|(fault, _)| *fault) {
        Some((_, what)) => Err(format!("{name}: {what} (value {value}, bound {bound}, known {known:?})")),
        None => Ok(()),
    }
}

fn cells(name: &str, rows: &[&Filled]) -> Vec<String> {
    let best_known = || rows.iter().filter_map(|row| Some((row.value, row.known.least?)));
    let below: f64 = best_known().map(|(value, least)| 100.0 * (1.0 - value as f64 / least as f64)).sum();
    let known = best_known().count();
    let mut slowest: Vec<&&Filled> = rows.iter().collect();
    slowest.sort_by(|one, other| other.seconds.total_cmp(&one.seconds));
    let told = |row: &&&Filled| format!("{} {}", row.name, milliseconds(row.seconds));
    vec![
        name.to_owned(),
        rows.len().to_string(),
        rows.iter().filter(|row| row.proven).count().to_string(),
        best_known().filter(|(value, least)| value >= least).count().to_string(),
        known.to_string(),
        if known == 0 { "–".to_owned() } else { format!("{:.3}", below / known as f64) },
        milliseconds(median(rows.iter().map(|row| row.seconds))),
        milliseconds(rows.iter().map(|row| row.seconds).fold(0.0, f64::max)),
        slowest.iter().take(SLOWEST).map(told).collect::<Vec<_>>().join(", "),
    ]
}

/// Names of the sheets that say most about what to mend.
fn list(rows: &[&Filled]) {
    let told = |row: &Filled| format!("{} {}…{} (known {})", row.name, row.value, row.bound, row.known.text());
    let named = |what: &str, which: &dyn Fn(&Filled) -> bool| {
        let found: Vec<String> = rows.iter().filter(|row| which(row)).map(|row| told(row)).collect();
        println!("{what} ({}): {}\n", found.len(), found.join(", "));
    };
    named("More value than the best known", &|row| row.known.least.is_some_and(|least| row.value > least));
    named("Less value than the best known", &|row| row.known.least.is_some_and(|least| row.value < least));
    named("Best value reached, not proven", &|row| row.known.least == Some(row.value) && !row.proven);
    named("No value known, not proven", &|row| row.known.least.is_none() && !row.proven);
}
