//! How good are nests, how far is that from the best known, and what do they cost?
//!
//! Published instances are read from a folder that is no part of the project; without it the sections that need it say
//! so and print no figures. Every answer is sawn again by `replay` and held against the known bounds before it counts.
//! Tables are printed as markdown. `cargo bench -p deck-benches --bench nest -- help` lists sections and options.

#![allow(clippy::print_stdout, clippy::print_stderr, reason = "a program that prints tables")]

mod args;
mod classes;
mod clock;
mod data;
mod feasible;
mod fill;
mod growth;
mod measure;
mod orders;
mod replay;
mod served;
mod several;
mod table;

use args::Args;
use std::process::ExitCode;

/// What went wrong, in words: an answer that cannot be sawn, a file that cannot be read.
type Outcome = Result<(), String>;

/// A part of the program that can be asked for by its name.
type Section = (&'static str, fn(&Args) -> Outcome);

const SECTIONS: [Section; 9] = [
    ("classes", classes::run),
    ("furniture", orders::furniture),
    ("demand", orders::demand),
    ("fill", fill::run),
    ("feasible", feasible::run),
    ("several", several::run),
    ("growth", growth::run),
    ("growth-one", growth::one),
    ("serve", served::run),
];

fn main() -> ExitCode {
    match run() {
        Ok(()) => ExitCode::SUCCESS,
        Err(message) => {
            eprintln!("{message}");
            ExitCode::FAILURE
        }
    }
}

fn run() -> Outcome {
    let args = Args::read(std::env::args().skip(1))?;
    replay::sees_faults()?;
    if args.sections.is_empty() {
        println!("{}", args::HELP);
    }
    for name in &args.sections {
        let Some((_, section)) = SECTIONS.iter().find(|(known, _)| known == name) else {
            return Err(format!("\"{name}\" is no section.\n{}", args::HELP));
        };
        section(&args)?;
    }
    Ok(())
}
