//! `deck.hpp` and the examples in C++ and in Python without a build: the same bytes as from Rust, nothing left unfreed.

use crate::compile::{Link, built, checked, compile, compile_with, printed, root, run, run_both};
use crate::example::{jobs, order};
use deck_core::job::{
    BeamCall, FastenersCall, FillCall, NestCall, PanelsCall, PlateCall, SeamsCall, SpanLimitsCall, SurveyCall,
};
use deck_core::{Plan, draw};
use std::fs;
use std::path::Path;
use std::process::{Command, Output};

const PROGRAM: &str = "tests/c/programs/hpp.cpp";

#[test]
fn the_cpp_header_checks_itself() {
    let program = compile(PROGRAM, "hpp", Link::Shared);
    printed(&run_both(&program, &[]));
}

/// A second compiler, where there is one: its warnings are others.
#[test]
fn the_cpp_header_compiles_with_clang_and_as_cpp_20() {
    let clang = ["clang++", "clang++-14", "clang++-16", "clang++-19"].into_iter();
    let clang = clang.filter(|name| Command::new(name).arg("--version").output().is_ok()).take(1);
    let compilers: Vec<[&str; 2]> = clang.map(|name| [name, "-std=c++17"]).chain([["c++", "-std=c++20"]]).collect();
    for (number, compiler) in compilers.iter().enumerate() {
        let program = compile_with(compiler, PROGRAM, &format!("hpp_{number}"), Link::Shared);
        printed(&run(&program, &[]));
    }
}

/// What the program prints of a plan: its JSON, then each view under its name.
fn shown(plan: &Plan) -> String {
    let views = draw::views(plan).into_iter().map(|name| format!("{name}\n{}\n", draw::svg(plan, &name).unwrap()));
    format!("{}\n{}", plan.to_json(), views.collect::<String>())
}

#[test]
fn plans_drawings_and_packets_from_cpp_are_rust_s() {
    let program = compile(PROGRAM, "hpp_plans", Link::Shared);
    let packet = Path::new(env!("CARGO_TARGET_TMPDIR")).join("hpp.pdf");
    for (path, plan) in &jobs() {
        let _ = fs::remove_file(&packet);
        assert!(printed(&run(&program, &["plan", path, &packet.to_string_lossy()])) == shown(plan), "{path}");
        assert!(fs::read(&packet).unwrap() == draw::packet(plan, plan.basis.paper).unwrap(), "{path}");
        // The header takes the list of names apart by its quotes.
        let plain = |name: &String| name.chars().all(|letter| letter.is_ascii_alphanumeric() || letter == '-');
        assert!(draw::views(plan).iter().all(plain), "{:?}", draw::views(plan));
    }
}

#[test]
fn answers_from_cpp_are_rust_s() {
    let program = compile(PROGRAM, "hpp_answers", Link::Shared);
    let golden = |name: &str| fs::read_to_string(root().join(format!("tests/golden/calls/{name}.json"))).unwrap();
    let expected = |name: &str| -> String {
        let text = golden(name);
        match name {
            "nest" => NestCall::from_json(&text).map(|call| call.nest().unwrap().to_json(call.unit)),
            "fill" => FillCall::from_json(&text).map(|call| call.fill().unwrap().to_json(call.unit)),
            "seams" => SeamsCall::from_json(&text).map(|call| format!("{:#}", call.document().unwrap())),
            "panels" => PanelsCall::from_json(&text).map(|call| format!("{:#}", call.document().unwrap())),
            "fasteners" => FastenersCall::from_json(&text).map(|call| format!("{:#}", call.document().unwrap())),
            "survey" => SurveyCall::from_json(&text).map(|call| format!("{:#}", call.document().unwrap())),
            "span_limits" => {
                SpanLimitsCall::from_json(&text).map(|call| call.span_limits().unwrap().to_json(call.unit))
            }
            "beam" => BeamCall::from_json(&text).map(|call| call.beam().unwrap().to_json()),
            "plate" => PlateCall::from_json(&text).map(|call| call.plate().unwrap().to_json()),
            _ => panic!("{name}"),
        }
        .unwrap()
    };
    for name in ["nest", "fill", "seams", "panels", "fasteners", "survey", "span_limits", "beam", "plate"] {
        let path = root().join(format!("tests/golden/calls/{name}.json"));
        assert_eq!(printed(&run(&program, &[name, &path.to_string_lossy()])), expected(name), "{name}");
    }
}

/// Each function of the C header that takes or gives text is called by the one in C++.
#[test]
fn the_cpp_header_leaves_no_function_out() {
    let read = |name: &str| fs::read_to_string(root().join("deck-ffi/include").join(name)).unwrap();
    let (c, cpp) = (read("deck.h"), read("deck.hpp"));
    let functions = c.lines().filter_map(|line| line.strip_prefix("int32_t ")?.split_once('(')).map(|(name, _)| name);
    let functions: Vec<&str> = functions.filter(|name| !name.ends_with("_utf16")).collect();
    assert!(functions.len() > 20);
    for function in functions {
        let used = cpp.match_indices(function).any(|(at, _)| {
            let after = cpp[at + function.len()..].chars().next();
            after.is_some_and(|letter| "(,)".contains(letter))
        });
        assert!(used, "deck.hpp has no use for {function}");
    }
}

#[test]
fn the_cpp_example_nests() {
    let program = compile("examples/cpp/nest.cpp", "example_nest", Link::Shared);
    let request = |count: &str| {
        format!(
            r#"{{"parts": [{{"label": "seat base", "length": "2' 6-1/2\"", "width": 22, "count": {count}}},
            {{"label": "lid", "length": 24, "width": 20, "grain": "length", "count": {count}}}],
            "stock": [{{"label": "3/4 ply 4 x 8", "length": 96, "width": 48}}], "kerf": "1/8"}}"#
        )
    };
    let call = NestCall::from_json(&request("9")).unwrap();
    let output = run_both(&program, &["1/8", "9"]);
    assert_eq!(printed(&output), call.nest().unwrap().to_json(call.unit) + "\n");
    assert!(String::from_utf8_lossy(&output.stderr).contains("bound"));
    let faults = run(&program, &["a \"wide\" one", "2.5"]);
    let told = String::from_utf8(faults.stderr).unwrap();
    assert_eq!((faults.status.code(), told.lines().count()), (Some(1), 3), "{told}");
    assert!(told.contains("/kerf: ") && told.contains("/parts/0/count: "), "{told}");
}

/// Python as it comes, on a job: what it prints and how it ends.
fn python(job: &Path) -> Output {
    let library = built().join("libdeck_ffi.so");
    let mut command = Command::new("python3");
    command.arg("examples/ctypes/plan.py").arg(job).arg(library).current_dir(root());
    command.output().unwrap_or_else(|error| panic!("python3 cannot be run: {error}"))
}

#[test]
fn the_ctypes_example_prints_the_plan_s_order() {
    for (path, plan) in &jobs() {
        assert_eq!(printed(&python(Path::new(path))), order(plan), "{path}");
    }
    let faulty = root().join("tests/golden/jobs/faults_metric.json");
    let error = deck_core::Job::from_json(&fs::read_to_string(&faulty).unwrap()).unwrap_err();
    let output = python(&faulty);
    assert_eq!(output.status.code(), Some(1));
    assert_eq!(String::from_utf8(output.stderr).unwrap(), format!("{error}\n"));
}

#[test]
fn plans_from_cpp_under_valgrind() {
    let program = compile(PROGRAM, "hpp_checked", Link::Shared);
    let job = root().join("tests/c/programs/accents.json");
    let plan = deck_core::plan(&deck_core::Job::from_json(&fs::read_to_string(&job).unwrap()).unwrap()).unwrap();
    let packet = Path::new(env!("CARGO_TARGET_TMPDIR")).join("hpp_checked.pdf");
    if let Some(output) = checked(&program, &["plan", &job.to_string_lossy(), &packet.to_string_lossy()]) {
        assert!(printed(&output) == shown(&plan));
    }
}
