//! Files one can read in a sitting, and library code that never ends a program.

use super::{root, rust_files, shown, text};

/// A file that is longer holds two things.
const MOST_LINES: usize = 500;

/// What ends a program where it should have said what is wrong.
const ENDS: [&str; 8] =
    [".unwrap()", ".expect(", "panic!(", "todo!", "unimplemented!", "unreachable!", ".unwrap_err()", ".expect_err("];

const FOLDERS: [&str; 6] = ["deck-core/src", "deck-ffi/src", "deck-py/src", "tests", "benches", "examples"];

#[test]
fn no_file_is_too_long() {
    let folders = FOLDERS.map(|folder| root().join(folder)).into_iter().filter(|folder| folder.exists());
    let files: Vec<_> = folders.flat_map(|folder| rust_files(&folder)).collect();
    assert!(files.len() > 100);
    let long =
        files.iter().map(|file| (shown(file), text(file).lines().count())).filter(|(_, lines)| *lines > MOST_LINES);
    let long: Vec<(String, usize)> = long.collect();
    assert!(long.is_empty(), "{long:#?}");
}

/// The library's own code: no tests, no comments.
fn code(text: &str) -> impl Iterator<Item = (usize, &str)> {
    let own = text.split("\n#[cfg(test)]\nmod tests {").next().unwrap_or(text);
    own.lines().enumerate().map(|(number, line)| (number + 1, line.split("//").next().unwrap_or("")))
}

#[test]
fn library_code_never_ends_a_program() {
    let mut found = Vec::new();
    for file in rust_files(&root().join("deck-core/src")) {
        let is_test = shown(&file).ends_with("/tests.rs") || shown(&file).contains("/tests/");
        let text = text(&file);
        for (number, line) in code(&text).filter(|_| !is_test) {
            if ENDS.iter().any(|end| line.contains(end)) {
                found.push(format!("{}:{number}: {}", shown(&file), line.trim()));
            }
        }
    }
    assert!(found.is_empty(), "{found:#?}");
}

/// Results do not depend on the order of a hash or on a clock.
#[test]
fn nothing_depends_on_chance() {
    let mut found = Vec::new();
    for file in rust_files(&root().join("deck-core/src")) {
        for (number, line) in code(&text(&file)) {
            if ["HashMap", "HashSet", "Instant::now", "SystemTime", "unsafe "].iter().any(|word| line.contains(word)) {
                found.push(format!("{}:{number}", shown(&file)));
            }
        }
    }
    assert!(found.is_empty(), "{found:#?}");
}

#[test]
fn the_papers_of_the_project_have_no_unfilled_places() {
    for paper in ["README.md", "DEVELOPERS.md", "CHANGELOG.md"] {
        assert!(!text(&root().join(paper)).contains("@@"), "{paper}");
    }
}
