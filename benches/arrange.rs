//! How many arrangements are ranked in a second, and how does that grow with the members?
//!
//! `cargo bench -p deck-benches --bench arrange` prints, for the uneven demo (its sheets are 102 in long, so a second size of
//! 96 in stands beside them) and for plain decks of more and more members: the arrangements that can be, the divisions
//! that were nested for them, and the median time of a plan with quick effort. The last column is divisions a second.

#![allow(clippy::expect_used, reason = "a benchmark whose demo job does not work has nothing to measure")]
#![allow(clippy::print_stdout, reason = "it is a program that prints")]

use deck_core::Job;
use deck_core::job::SpanSpec;
use deck_core::nest::Effort;
use deck_core::plan::Planner;
use std::time::{Duration, Instant};

const UNEVEN: &str = include_str!("../examples/jobs/uneven-22.json");
const RACK: &str = include_str!("../examples/jobs/rack-22.json");
const RUNS: usize = 15;

fn main() {
    println!("{:32} {:>7} {:>6} {:>6} {:>10} {:>8}", "deck", "members", "ranked", "nested", "median", "a second");
    row("uneven demo", &uneven());
    for members in [10, 20, 40, 80] {
        row("plain, 10 ft beam", &plain(members));
    }
    row("seams by nest (rack-22)", &Job::from_json(RACK).expect("the demo job reads"));
}

fn row(name: &str, job: &Job) {
    let plan = || Planner::new(job).effort(Effort::Quick).plan().expect("the job plans");
    let found = plan();
    let figures = found.arrangements.iter().filter_map(|row| row.figures.as_ref());
    let (ranked, nested) = (figures.clone().count(), figures.map(|found| found.tried).sum::<usize>());
    let mut times: Vec<Duration> = (0..RUNS)
        .map(|_| {
            let start = Instant::now();
            let _ = std::hint::black_box(plan());
            start.elapsed()
        })
        .collect();
    times.sort_unstable();
    let median = times.get(RUNS / 2).copied().unwrap_or_default().as_secs_f64();
    println!(
        "{name:32} {:>7} {ranked:>6} {nested:>6} {:>7.2} ms {:>8.0}",
        found.frame.len(),
        median * 1000.0,
        nested as f64 / median
    );
}

fn uneven() -> Job {
    let mut value: serde_json::Value = serde_json::from_str(UNEVEN).expect("JSON");
    let mut short = value["stock"][0].clone();
    short["label"] = "3/4 ply 48 x 96".into();
    short["length"] = 96.into();
    short["price"] = 96.into();
    value["stock"].as_array_mut().expect("a list").push(short);
    value["arrange"] = serde_json::json!({ "build": "best" });
    Job::from_value(&value).expect("the demo job reads").span(SpanSpec::new())
}

/// A deck of bays of 16 in, 10 ft wide, with sheets of 8 ft and of 10 ft.
fn plain(members: usize) -> Job {
    let length = (members - 1) * 16;
    let sheet = |label: &str, length: u32, price: u32| serde_json::json!({ "label": label, "length": length, "width": 48, "thickness": "3/4", "price": price });
    let job = serde_json::json!({
        "schema": 1, "name": "plain", "unit": "in", "deck": { "length": length, "beam": 120 },
        "frame": { "measured_to": "centre", "flange": 2, "wall": "1/8", "regular": { "first": 0, "last": length, "spacing": 16 } },
        "stock": [sheet("4 x 8", 96, 60), sheet("4 x 10", 120, 100)],
        "arrange": { "build": "best" },
    });
    Job::from_value(&job).expect("the job reads")
}
