//! The programs built with `AddressSanitizer` and the checker of undefined behaviour, against the library as it is shipped:
//! what they do with its memory, and what it leaves behind. The library itself is built so by `deck-ffi/fuzz/run.sh`.

use crate::compile::{Link, compile_with, is_cpp, printed, root, run};

const SANITISERS: [&str; 3] = ["-fsanitize=address,undefined", "-fno-sanitize-recover=all", "-fno-omit-frame-pointer"];

fn built(source: &str, name: &str) -> std::path::PathBuf {
    let (compiler, standard) = if is_cpp(source) { ("c++", "-std=c++17") } else { ("cc", "-std=c99") };
    compile_with(&[&[compiler, standard][..], &SANITISERS].concat(), source, name, Link::Shared)
}

#[test]
fn programs_run_clean() {
    let call = |name: &str| root().join(format!("tests/golden/calls/{name}.json")).to_string_lossy().into_owned();
    let job = root().join("tests/c/programs/accents.json").to_string_lossy().into_owned();
    let programs: [(&str, Vec<String>); 10] = [
        ("tests/c/programs/border.c", vec![]),
        ("tests/c/programs/threads.c", vec![]),
        ("tests/c/programs/threads_calls.c", vec![]),
        ("tests/c/programs/steps.c", vec![]),
        ("tests/c/programs/schema.c", vec![]),
        ("tests/c/programs/nest.c", vec![call("nest")]),
        ("tests/c/programs/fill.c", vec![call("fill")]),
        ("tests/c/programs/json.c", vec![job]),
        ("tests/c/programs/hpp.cpp", vec![]),
        ("examples/c/plan.c", vec!["examples/jobs/uneven-22.json".into()]),
    ];
    for (source, arguments) in programs {
        let name = format!("sanitised_{}", source.rsplit('/').next().unwrap().replace('.', "_"));
        let arguments: Vec<&str> = arguments.iter().map(String::as_str).collect();
        printed(&run(&built(source, &name), &arguments));
    }
}

/// The checkers are there and see a buffer that the library is told to overrun, and a plan that nobody frees.
#[test]
fn faults_are_seen() {
    let program = built("tests/c/programs/faulty.c", "sanitised_faulty");
    for (fault, word) in [("overrun", "AddressSanitizer"), ("leak", "LeakSanitizer"), ("freed", "AddressSanitizer")] {
        let output = run(&program, &[fault]);
        let told = String::from_utf8_lossy(&output.stderr);
        assert!(!output.status.success() && told.contains(word), "{fault}: {told}");
    }
}
