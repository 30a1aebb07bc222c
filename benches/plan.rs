//! How long does a plan take, and which step takes it?
//!
//! The boat is the uneven demo, without drawings, and without its figures of strength but where the name says so. `cargo bench -p deck-benches --bench plan` prints the medians that
//! DEVELOPERS.md keeps.

#![allow(clippy::expect_used, reason = "a benchmark whose demo job does not work has nothing to measure")]

use deck_core::fasteners::fasteners;
use deck_core::job::{Checked, SpanSpec};
use deck_core::nest::{Effort, Grain, Part, nest};
use deck_core::panels::panels;
use deck_core::plan::Planner;
use deck_core::seams::{BoardStock, SeamProblem, seams};
use deck_core::{Job, Plan};
use divan::Bencher;

const UNEVEN: &str = include_str!("../examples/jobs/uneven-22.json");

fn main() {
    divan::main();
}

/// The demo with what it says of strength.
fn job_with_span() -> Job {
    Job::from_json(UNEVEN).expect("the demo job reads")
}

fn job() -> Job {
    job_with_span().span(SpanSpec::new())
}

fn checked() -> Checked {
    job().check().expect("the demo job is sound")
}

fn planned() -> Plan {
    let job = job();
    Planner::new(&job).effort(Effort::Quick).plan().expect("the demo job plans")
}

#[divan::bench]
fn whole_plan_quick(bencher: Bencher<'_, '_>) {
    let job = job();
    bencher.bench_local(|| Planner::new(&job).effort(Effort::Quick).plan());
}

#[divan::bench]
fn whole_plan_standard(bencher: Bencher<'_, '_>) {
    let job = job();
    bencher.bench_local(|| Planner::new(&job).plan());
}

/// Uniform and point loads on every board, spacings, blocking, enough, and every row of screws: all but a plan without.
#[divan::bench]
fn whole_plan_with_span(bencher: Bencher<'_, '_>) {
    let job = job_with_span();
    bencher.bench_local(|| Planner::new(&job).effort(Effort::Quick).plan());
}

#[divan::bench]
fn step_read_job() -> Result<Job, deck_core::Error> {
    Job::from_json(UNEVEN)
}

#[divan::bench]
fn step_check_job(bencher: Bencher<'_, '_>) {
    let job = job();
    bencher.bench_local(|| job.check());
}

#[divan::bench]
fn step_seams(bencher: Bencher<'_, '_>) {
    let (checked, layouts) = (checked(), planned().layouts.len());
    let sheet = &checked.stock[0];
    let stock = vec![BoardStock { label: sheet.label.clone(), width: sheet.size().1 }];
    let rules = checked.settings.rules.clone();
    let clear = checked.keep_clear.clone();
    let problem = SeamProblem::new(&checked.frame, checked.outline.length(), stock, rules)
        .clear(clear)
        .outline(&checked.outline)
        .best(layouts);
    bencher.bench_local(|| seams(&problem));
}

#[divan::bench]
fn step_panels(bencher: Bencher<'_, '_>) {
    let (checked, plan) = (checked(), planned());
    bencher.bench_local(|| panels(&checked.outline, &plan.layouts[0], &checked.openings, checked.thickness));
}

#[divan::bench]
fn step_fasteners(bencher: Bencher<'_, '_>) {
    let (checked, plan) = (checked(), planned());
    bencher.bench_local(|| fasteners(&plan.panels, &checked.frame, &checked.outline, &checked.settings.schedule));
}

#[divan::bench]
fn step_nest_quick(bencher: Bencher<'_, '_>) {
    let (checked, plan) = (checked(), planned());
    let part = |panel: &deck_core::panels::Panel| {
        Part::new(panel.label.clone(), panel.length, panel.width).grain(Grain::Length)
    };
    let parts: Vec<Part> = plan.panels.iter().map(part).collect();
    bencher.bench_local(|| nest(&parts, &checked.stock, &checked.settings.saw, Effort::Quick));
}

#[divan::bench]
fn step_json(bencher: Bencher<'_, '_>) {
    let plan = planned();
    bencher.bench_local(|| plan.to_json());
}
