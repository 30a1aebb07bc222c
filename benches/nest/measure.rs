//! One order nested, timed, replayed, and held against what is known of it.

use crate::args::Args;
use crate::clock::Stopwatch;
use crate::data::{Instance, Known};
use crate::replay;
use deck_core::Area;
use deck_core::nest::{Cost, Nest, nest};
use deck_core::stock::Saw;
use std::collections::BTreeMap;
use std::io::Write;

/// What came of one instance with one kind of sheet.
#[derive(Debug, Clone)]
pub(crate) struct Row {
    pub(crate) name: String,
    pub(crate) sheets: i64,
    pub(crate) bound: i64,
    pub(crate) proven: bool,
    pub(crate) seconds: f64,
    pub(crate) known: Known,
}

/// A nest and how long it took.
pub(crate) fn timed(instance: &Instance, turned: bool, args: &Args) -> Result<(Nest, f64), String> {
    let (parts, stock, saw) = (instance.parts(turned), instance.stock(), Saw::new());
    let watch = Stopwatch::start();
    let answer = nest(&parts, &stock, &saw, args.effort).map_err(|error| format!("{}: {error}", instance.name))?;
    let seconds = watch.seconds();
    replay::check(&parts, &stock, &saw, &answer).map_err(|fault| format!("{}: {fault}", instance.name))?;
    Ok((answer, seconds))
}

/// Runs one instance, or takes it from the log; refuses figures that cannot be.
pub(crate) fn row(instance: &Instance, turned: bool, args: &Args, log: &mut Log) -> Result<Row, String> {
    let known = instance.known(if turned { "bins_rotated" } else { "bins_fixed" });
    let key = format!("{} {} {}", instance.name, way(turned), args.effort_text().replace(' ', "-"));
    let row = match log.find(&key) {
        Some((sheets, bound, proven, seconds)) => {
            Row { name: instance.name.clone(), sheets, bound, proven, seconds, known }
        }
        None => fresh(instance, turned, args, known)?,
    };
    check_known(&row)?;
    log.keep(&key, &row)?;
    Ok(row)
}

fn fresh(instance: &Instance, turned: bool, args: &Args, known: Known) -> Result<Row, String> {
    let (nest, seconds) = timed(instance, turned, args)?;
    if !nest.unplaced.is_empty() {
        return Err(format!("{}: parts are left over though sheets are without limit", instance.name));
    }
    let bound = instance.sheets_of(area(nest.bound)?);
    let sheets = i64::from(nest.sheet_count);
    Ok(Row { name: instance.name.clone(), sheets, bound, proven: nest.proven, seconds, known })
}

fn check_known(row: &Row) -> Result<(), String> {
    let Row { name, sheets, bound, proven, known, .. } = row;
    let faults = [
        (known.least.is_some_and(|least| *sheets < least), "fewer sheets than is possible"),
        (known.most.is_some_and(|most| *bound > most), "a bound above the sheets that are known to do"),
        (bound > sheets, "a bound above the answer"),
        (*proven && bound != sheets, "proven, though the bound is not met"),
    ];
    match faults.iter().find(|(fault, _)| *fault) {
        Some((_, what)) => Err(format!("{name}: {what} ({sheets} sheets, bound {bound}, known {known:?})")),
        None => Ok(()),
    }
}

/// The area that a cost is where no sheet has a price.
pub(crate) fn area(cost: Cost) -> Result<Area, String> {
    match cost {
        Cost::Area(area) => Ok(area),
        Cost::Money(_) => Err("a cost in money, though nothing has a price".into()),
    }
}

pub(crate) fn way(turned: bool) -> &'static str {
    if turned { "turned" } else { "fixed" }
}

/// Figures of earlier runs: `name way effort sheets bound proven seconds` in each line.
#[derive(Debug, Default)]
pub(crate) struct Log {
    file: Option<std::fs::File>,
    known: BTreeMap<String, (i64, i64, bool, f64)>,
}

impl Log {
    pub(crate) fn open(args: &Args) -> Result<Log, String> {
        let Some(path) = &args.log else { return Ok(Log::default()) };
        let text = std::fs::read_to_string(path).unwrap_or_default();
        let known = text.lines().filter_map(read_line).collect();
        let file = std::fs::OpenOptions::new().create(true).append(true).open(path);
        Ok(Log { file: Some(file.map_err(|error| format!("{}: {error}", path.display()))?), known })
    }

    fn find(&self, key: &str) -> Option<(i64, i64, bool, f64)> {
        self.known.get(key).copied()
    }

    fn keep(&mut self, key: &str, row: &Row) -> Result<(), String> {
        let Row { sheets, bound, proven, seconds, .. } = *row;
        if self.known.contains_key(key) {
            return Ok(());
        }
        self.known.insert(key.to_owned(), (sheets, bound, proven, seconds));
        let Some(file) = &mut self.file else { return Ok(()) };
        writeln!(file, "{key} {sheets} {bound} {proven} {seconds:.6}").map_err(|error| format!("the log: {error}"))
    }
}

fn read_line(line: &str) -> Option<(String, (i64, i64, bool, f64))> {
    let words: Vec<&str> = line.split(' ').collect();
    let [name, way, effort, sheets, bound, proven, seconds] = words[..] else { return None };
    let figures = (sheets.parse().ok()?, bound.parse().ok()?, proven.parse().ok()?, seconds.parse().ok()?);
    Some((format!("{name} {way} {effort}"), figures))
}
