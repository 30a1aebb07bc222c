//! `examples/c/plan.c` on every demo job: what it prints are the values of the plan as Rust has it.

use crate::compile::{Link, compile, printed, root, run, run_both};
use deck_core::{Job, Plan, draw, plan};
use std::fs;

/// The order list in the example's own layout, from the plan and not from its JSON.
pub(crate) fn order(plan: &Plan) -> String {
    if let Some(no) = &plan.no_layout {
        return format!("no layout: {}\n", no.reason);
    }
    let lines = &plan.takeoff.as_ref().unwrap().lines;
    let lines = lines.iter().map(|line| format!("{:4} {:<8} {}\n", line.buy, line.unit, line.description));
    lines.collect::<Vec<_>>().concat()
}

/// The demo jobs, as paths from the root.
pub(crate) fn jobs() -> Vec<(String, Plan)> {
    let files = fs::read_dir(root().join("examples/jobs")).unwrap().map(|file| file.unwrap().path());
    let mut files: Vec<_> = files.filter(|path| path.extension().is_some_and(|suffix| suffix == "json")).collect();
    files.sort();
    assert!(files.len() >= 4, "where are the demo jobs?");
    let planned = files.into_iter().map(|path| {
        let job = Job::from_json(&fs::read_to_string(&path).unwrap()).unwrap();
        (path.to_string_lossy().into_owned(), plan(&job).unwrap())
    });
    planned.collect()
}

#[test]
fn the_example_prints_the_plan_s_order() {
    let program = compile("examples/c/plan.c", "plan", Link::Shared);
    let jobs = jobs();
    assert!(jobs.iter().any(|(_, plan)| plan.no_layout.is_some()), "no demo job shows a reason");
    for (path, plan) in &jobs {
        assert_eq!(printed(&run(&program, &[path])), order(plan), "{path}");
    }
    assert_eq!(printed(&run_both(&program, &[&jobs[0].0])), order(&jobs[0].1));
}

#[test]
fn the_example_writes_the_packet_where_it_is_told_a_file() {
    let program = compile("examples/c/plan.c", "plan_packet", Link::Shared);
    let (job, plan) = &jobs()[0];
    let path = std::path::Path::new(env!("CARGO_TARGET_TMPDIR")).join("packet.pdf");
    if path.exists() {
        fs::remove_file(&path).unwrap();
    }
    assert_eq!(printed(&run(&program, &[job, &path.to_string_lossy()])), order(plan));
    assert!(fs::read(&path).unwrap() == draw::packet(plan, plan.basis.paper).unwrap());

    let output = run(&program, &[job, "no/such/folder/packet.pdf"]);
    assert_eq!(output.status.code(), Some(1));
    let told = String::from_utf8(output.stderr).unwrap();
    assert!(told.starts_with("The packet cannot be written to \"no/such/folder/packet.pdf\": "), "{told}");
    assert_eq!(told.lines().count(), 1);
}

#[test]
fn the_example_runs_with_the_library_linked_in() {
    let program = compile("examples/c/plan.c", "plan_static", Link::Static);
    let (path, plan) = &jobs()[0];
    assert_eq!(printed(&run(&program, &[path])), order(plan));
}

#[test]
fn the_example_tells_every_fault_and_fails() {
    let program = compile("examples/c/plan.c", "plan_faults", Link::Shared);
    let faulty = r#"{"schema": 1, "name": "x", "unit": "in", "stock": [{"label": "a", "lenght": 96}]}"#;
    let path = std::path::Path::new(env!("CARGO_TARGET_TMPDIR")).join("faulty.json");
    fs::write(&path, faulty).unwrap();
    let output = run_both(&program, &[&path.to_string_lossy()]);
    assert_eq!((output.status.code(), output.stdout), (Some(1), Vec::new()));
    let expected = format!("{}\n", Job::from_json(faulty).unwrap_err());
    assert_eq!(String::from_utf8(output.stderr).unwrap(), expected);
    assert!(expected.lines().count() > 2);
    assert_eq!(run_both(&program, &["no such file"]).status.code(), Some(2));
}
