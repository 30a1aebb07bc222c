//! The programs in `programs/`, which check themselves and exit with 0.

use crate::compile::{Link, checked, compile, printed, root, run, run_both};
use crate::example::jobs;
use deck_core::job::{
    BeamCall, FastenersCall, FillCall, NestCall, PanelsCall, PlateCall, SeamsCall, SpanLimitsCall, SurveyCall,
};
use deck_core::{Job, plan};

/// Each is compiled, run, and run under valgrind.
fn passes(source: &str, name: &str) {
    let program = compile(source, name, Link::Shared);
    printed(&run_both(&program, &[]));
}

#[test]
fn every_function_in_c() {
    passes("tests/c/programs/border.c", "border");
}

#[test]
fn each_thread_has_its_own_last_error() {
    passes("tests/c/programs/threads.c", "threads");
}

#[test]
fn threads_that_plan_nest_fill_and_fail_at_once_do_not_meet() {
    passes("tests/c/programs/threads_calls.c", "threads_calls");
}

#[test]
fn the_header_serves_cpp() {
    passes("tests/c/programs/header.cpp", "header_cpp");
}

/// The plan's JSON from C, in UTF-8 and by way of UTF-16, has the bytes that Rust writes.
#[test]
fn json_from_c_is_rust_s_byte_for_byte() {
    let program = compile("tests/c/programs/json.c", "json", Link::Shared);
    for (path, plan) in &jobs() {
        assert_eq!(printed(&run(&program, &[path])), plan.to_json(), "{path}");
    }
    let path = root().join("tests/c/programs/accents.json");
    let job = Job::from_json(&std::fs::read_to_string(&path).unwrap()).unwrap();
    let json = plan(&job).unwrap().to_json();
    assert!(!json.is_ascii());
    let path = path.to_string_lossy();
    assert_eq!(printed(&run(&program, &[&path])), json);
    if let Some(output) = checked(&program, &[&path]) {
        assert_eq!(printed(&output), json);
    }
}

/// The golden request, which Python asks as well.
#[test]
fn a_nest_from_c_is_rust_s_byte_for_byte() {
    let program = compile("tests/c/programs/nest.c", "nest", Link::Shared);
    let path = root().join("tests/golden/calls/nest.json");
    let call = NestCall::from_json(&std::fs::read_to_string(&path).unwrap()).unwrap();
    let json = call.nest().unwrap().to_json(call.unit);
    assert!(!json.is_ascii());
    assert_eq!(printed(&run_both(&program, &[&path.to_string_lossy()])), json);
}

/// The golden requests of strength, which Python asks as well.
#[test]
fn figures_of_strength_from_c_are_rust_s_byte_for_byte() {
    let program = compile("tests/c/programs/span.c", "span", Link::Shared);
    let (path, text) = golden_call("span_limits");
    let call = SpanLimitsCall::from_json(&text).unwrap();
    assert_eq!(printed(&run_both(&program, &["span_limits", &path])), call.span_limits().unwrap().to_json(call.unit));
    let (path, text) = golden_call("beam");
    assert_eq!(
        printed(&run(&program, &["beam", &path])),
        BeamCall::from_json(&text).unwrap().beam().unwrap().to_json()
    );
    let (path, text) = golden_call("plate");
    assert_eq!(
        printed(&run(&program, &["plate", &path])),
        PlateCall::from_json(&text).unwrap().plate().unwrap().to_json()
    );
}

/// The golden requests of a plan's steps, which Python asks as well.
#[test]
fn steps_from_c_are_rust_s_byte_for_byte() {
    let program = compile("tests/c/programs/span.c", "steps", Link::Shared);
    let (path, text) = golden_call("seams");
    let seams = SeamsCall::from_json(&text).unwrap().document().unwrap();
    assert_eq!(printed(&run_both(&program, &["seams", &path])), format!("{seams:#}"));
    let (path, text) = golden_call("panels");
    let panels = format!("{:#}", PanelsCall::from_json(&text).unwrap().document().unwrap());
    assert!(!panels.is_ascii());
    assert_eq!(printed(&run(&program, &["panels", &path])), panels);
    let (path, text) = golden_call("fasteners");
    let fasteners = FastenersCall::from_json(&text).unwrap().document().unwrap();
    assert_eq!(printed(&run(&program, &["fasteners", &path])), format!("{fasteners:#}"));
    let (path, text) = golden_call("survey");
    let survey = SurveyCall::from_json(&text).unwrap().document().unwrap();
    assert_eq!(printed(&run(&program, &["survey", &path])), format!("{survey:#}"));
}

/// Each step's answer goes into the next one's request as it is.
#[test]
fn steps_follow_each_other_in_c() {
    passes("tests/c/programs/steps.c", "steps_chained");
}

/// A golden request: its path, and its text.
fn golden_call(name: &str) -> (String, String) {
    let path = root().join(format!("tests/golden/calls/{name}.json"));
    (path.to_string_lossy().into_owned(), std::fs::read_to_string(path).unwrap())
}

#[test]
fn a_fill_from_c_is_rust_s_byte_for_byte() {
    let program = compile("tests/c/programs/fill.c", "fill", Link::Shared);
    let path = root().join("tests/golden/calls/fill.json");
    let call = FillCall::from_json(&std::fs::read_to_string(&path).unwrap()).unwrap();
    let json = call.fill().unwrap().to_json(call.unit);
    assert!(!json.is_ascii());
    assert_eq!(printed(&run_both(&program, &[&path.to_string_lossy()])), json);
}

#[test]
fn the_schema_from_c_is_rust_s() {
    let program = compile("tests/c/programs/schema.c", "schema", Link::Shared);
    assert_eq!(printed(&run_both(&program, &[])), format!("{:#}", deck_core::job::schema()));
}
