//! Plans a boat and leaves the job packet.
//!
//! `cargo run --release --example redeck` plans the uneven demo boat into `packet/`;
//! `-- path/to/job.json --out DIR` plans another.

mod files;
mod summary;

use clap::Parser;
use deck_core::plan::{Planner, Step};
use deck_core::{Job, Plan};
use indicatif::{ProgressBar, ProgressStyle};
use std::io::Write;
use std::path::PathBuf;
use std::process::ExitCode;

/// Plans a new deck: seams, panels, fasteners, sheets to buy, drawings.
#[derive(Parser)]
struct Arguments {
    /// The job file; none: the uneven demo boat.
    job: Option<PathBuf>,
    /// The folder that the packet is left in.
    #[arg(long, default_value = "packet")]
    out: PathBuf,
}

const DEMO: &str = include_str!("../jobs/uneven-22.json");

fn main() -> ExitCode {
    let arguments = Arguments::parse();
    // A reader that has seen enough may close the pipe: that is no failure of the plan.
    match run(&arguments) {
        Ok(text) => {
            let _ = writeln!(std::io::stdout(), "{text}");
            ExitCode::SUCCESS
        }
        Err(text) => {
            let _ = writeln!(std::io::stderr(), "{text}");
            ExitCode::FAILURE
        }
    }
}

fn run(arguments: &Arguments) -> Result<String, String> {
    let text = match &arguments.job {
        Some(path) => std::fs::read_to_string(path).map_err(|error| format!("{}: {error}", path.display()))?,
        None => DEMO.to_string(),
    };
    let job = Job::from_json(&text).map_err(|error| error.to_string())?;
    let bar = progress();
    let plan = plan(&job, &bar)?;
    bar.set_message("drawing");
    let written = files::write(&plan, &arguments.out)?;
    bar.finish_and_clear();
    Ok(format!("{}\n{written}", summary::summary(&plan)))
}

/// A bar on a terminal; nothing where the output goes elsewhere.
fn progress() -> ProgressBar {
    let steps = Step::ALL.len() as u64 + 1;
    let style = ProgressStyle::with_template("{bar:24} {pos}/{len} {msg}");
    ProgressBar::new(steps).with_style(style.unwrap_or_else(|_| ProgressStyle::default_bar()))
}

fn plan(job: &Job, bar: &ProgressBar) -> Result<Plan, String> {
    let mut tell = |step: Step| {
        bar.inc(1);
        bar.set_message(match step {
            Step::Check => "checking the job",
            Step::Seams => "placing seams",
            Step::Panels => "cutting panels",
            Step::Fasteners => "placing fasteners",
            Step::Span => "holding panels against loads",
            Step::Sheets => "laying panels on sheets",
            Step::Takeoff => "counting what to buy",
            _ => "looking for cautions",
        });
    };
    Planner::new(job).progress(&mut tell).plan().map_err(|error| error.to_string())
}
