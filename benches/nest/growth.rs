//! How time and memory grow with the order, from a hundred parts to a hundred thousand.
//!
//! Orders are drawn at random from a stated seed. Each is nested in a process of its own, so that its peak of memory
//! is its own.

use crate::Outcome;
use crate::args::Args;
use crate::clock::Stopwatch;
use crate::measure::area;
use crate::replay;
use crate::table::{Table, milliseconds, three_figures};
use deck_core::Length;
use deck_core::nest::{Grain, Part, nest};
use deck_core::stock::{Saw, Sheet};
use std::process::Command;

const SEED: u64 = 20_261_125;
/// Sides in sixteenths of an inch: 5 to 60 in.
const SIDES: (i64, i64) = (5 * 16, 60 * 16);
/// Length and width of the sheets in inches. All parts fit the largest.
const STOCK: [(i64, i64); 6] = [(96, 48), (108, 48), (120, 48), (120, 60), (132, 60), (144, 60)];

struct Point {
    parts: u32,
    seconds: f64,
    peak_kib: u64,
    sheets: u32,
    over_bound: f64,
}

/// Every size, without and with a kerf.
pub(crate) fn run(args: &Args) -> Outcome {
    for kerf in ["0 in", "1/8 in"] {
        println!("Growth, {}, kerf {kerf}, six sizes of sheet, seed {SEED}:\n", args.effort_text());
        let table = Table::new(&["parts", "ms", "µs a part", "peak MiB", "sheets", "cost / bound"]);
        let mut points = Vec::new();
        for parts in args.sizes.iter().copied() {
            let point = in_own_process(parts, kerf, args)?;
            table.row(&cells(&point));
            points.push(point);
        }
        if let (Some(first), Some(last)) = (points.first(), points.last()) {
            println!("\nTime grows as n^{:.2} from {} to {} parts.\n", exponent(&points), first.parts, last.parts);
        }
    }
    Ok(())
}

fn cells(point: &Point) -> Vec<String> {
    vec![
        point.parts.to_string(),
        milliseconds(point.seconds),
        three_figures(point.seconds * 1e6 / f64::from(point.parts)),
        format!("{:.1}", point.peak_kib as f64 / 1024.0),
        point.sheets.to_string(),
        format!("{:.4}", point.over_bound),
    ]
}

/// The slope of log time over log parts, by least squares.
fn exponent(points: &[Point]) -> f64 {
    let count = points.len() as f64;
    let logs = || points.iter().map(|point| (f64::from(point.parts).ln(), point.seconds.ln()));
    let (x, y) = logs().fold((0.0, 0.0), |(x, y), (a, b)| (x + a / count, y + b / count));
    let (over, under) = logs().fold((0.0, 0.0), |(o, u), (a, b)| (o + (a - x) * (b - y), u + (a - x) * (a - x)));
    if under == 0.0 { f64::NAN } else { over / under }
}

fn in_own_process(parts: u32, kerf: &str, args: &Args) -> Result<Point, String> {
    let program = std::env::current_exe().map_err(|error| error.to_string())?;
    let (parts, effort) = (parts.to_string(), args.effort_text().replace(" steps", ""));
    let words = ["growth-one", "--sizes", &parts, "--effort", &effort, "--kerf", kerf];
    let run = Command::new(program).args(words).output().map_err(|error| error.to_string())?;
    let text = String::from_utf8_lossy(&run.stdout);
    if !run.status.success() {
        return Err(format!("growth at {parts} parts: {}", String::from_utf8_lossy(&run.stderr)));
    }
    read_point(text.trim()).ok_or_else(|| format!("growth at {parts} parts said \"{text}\""))
}

fn read_point(text: &str) -> Option<Point> {
    let words: Vec<&str> = text.split(' ').collect();
    let [parts, seconds, peak, sheets, over] = words[..] else { return None };
    Some(Point {
        parts: parts.parse().ok()?,
        seconds: seconds.parse().ok()?,
        peak_kib: peak.parse().ok()?,
        sheets: sheets.parse().ok()?,
        over_bound: over.parse().ok()?,
    })
}

/// One size in this process; a line of figures for the process that asked.
pub(crate) fn one(args: &Args) -> Outcome {
    let count = args.sizes.first().copied().unwrap_or(100);
    let kerf: Length = args.kerf.parse().map_err(|error| format!("--kerf: {error}"))?;
    let (parts, stock, saw) = (order(count), sheets(), Saw::new().kerf(kerf));
    let watch = Stopwatch::start();
    let answer = nest(&parts, &stock, &saw, args.effort).map_err(|error| error.to_string())?;
    let seconds = watch.seconds();
    // Before the replay, which takes memory of its own.
    let peak = peak_kib();
    replay::check(&parts, &stock, &saw, &answer)?;
    if !answer.unplaced.is_empty() {
        return Err("parts are left over though sheets are without limit".into());
    }
    let (cost, bound) = (area(answer.cost)?.square_nanometres(), area(answer.bound)?.square_nanometres());
    let over = cost as f64 / bound.max(1) as f64;
    println!("{count} {seconds:.6} {peak} {} {over:.6}", answer.sheet_count);
    Ok(())
}

fn order(count: u32) -> Vec<Part> {
    let mut random = SplitMix(SEED);
    let mut side = || Length::inch_fraction(random.within(SIDES.0, SIDES.1), 16);
    (0..count).map(|index| Part::new(index.to_string(), side(), side()).grain(Grain::Any)).collect()
}

fn sheets() -> Vec<Sheet> {
    let sheet = |(length, width): &(i64, i64)| {
        Sheet::new(format!("{length}x{width}"), Length::inches(*length), Length::inches(*width))
    };
    STOCK.iter().map(sheet).collect()
}

/// The most memory that this process has held, where the system tells (Linux); 0 elsewhere.
fn peak_kib() -> u64 {
    let status = std::fs::read_to_string("/proc/self/status").unwrap_or_default();
    let line = status.lines().find_map(|line| line.strip_prefix("VmHWM:"));
    line.and_then(|line| line.trim().strip_suffix("kB")?.trim().parse().ok()).unwrap_or(0)
}

/// `SplitMix64` (Steele, Lea and Flood 2014): small, and the same everywhere.
struct SplitMix(u64);

impl SplitMix {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mixed = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        let mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        mixed ^ (mixed >> 31)
    }

    /// Evenly from `low` to `high`, both included; the bias of so small a range is below 2^-50.
    fn within(&mut self, low: i64, high: i64) -> i64 {
        let span = u64::try_from(high - low + 1).unwrap_or(1);
        low + i64::try_from(self.next() % span).unwrap_or(0)
    }
}
