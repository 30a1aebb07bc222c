//! The README's C compiles, links and runs.

use super::compile::{Link, compile, root, run};
use deck_core::{Job, plan};

#[test]
fn the_readme_compiles_and_prints_the_first_line_to_order() {
    let readme = std::fs::read_to_string(root().join("README.md")).unwrap();
    let block = readme.split("```c\n").nth(1).and_then(|rest| rest.split("```").next()).unwrap();
    let job = std::fs::read_to_string(root().join("examples/jobs/plain-20.json")).unwrap();
    let text = job.replace('\\', "\\\\").replace('"', "\\\"").replace('\n', "\\n");
    let folder = std::path::Path::new(env!("CARGO_TARGET_TMPDIR"));
    let source = folder.join("readme.c");
    std::fs::write(&source, format!("{block}\nint main(void) {{ return print_first_line(\"{text}\"); }}\n")).unwrap();
    // Joining an absolute path to the root gives that path.
    let program = compile(source.to_str().unwrap(), "readme", Link::Shared);
    let output = run(&program, &[]);
    assert!(output.status.success());
    let takeoff = plan(&Job::from_json(&job).unwrap()).unwrap().takeoff.unwrap();
    assert_eq!(String::from_utf8_lossy(&output.stdout).trim_end(), takeoff.lines[0].description);
}
