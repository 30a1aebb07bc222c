//! Plans a job from a file and prints the order list. The same program stands in `c/plan.c` and `python/plan.py`.

use deck_core::{Error, Job, plan};

#[allow(clippy::print_stdout, reason = "printing is what this program is for")]
fn main() -> Result<(), Box<dyn std::error::Error>> {
    let path = std::env::args().nth(1).unwrap_or_else(|| "examples/jobs/plain-20.json".into());
    let plan = planned(&std::fs::read_to_string(path)?)?;
    for line in plan.takeoff.iter().flat_map(|takeoff| &takeoff.lines) {
        println!("{} {} {}", line.buy, line.unit, line.description);
    }
    Ok(())
}

fn planned(text: &str) -> Result<deck_core::Plan, Error> {
    plan(&Job::from_json(text)?)
}
