//! Arrows between the rooms of deck-core point down only, and rooms on one floor do not see each other.

use super::{root, rust_files, shown, text};
use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

/// The floors, top down; rooms of one floor are separated by commas. On the ground floor `>` stands between the room
/// that may use and those that it may use; the other rooms of a step do not see each other.
const FLOORS: &str = "
attic    draw
roof     plan
door     job
office   quote, cautions
store    takeoff
fit-out  fasteners, covering, strip_out, openings, fittings, patch
deck     panels
division arrange
seams    seams
shop     survey, nest, span
yard     frame, outline, stock, published
ground   geometry > money > length > error, math
";

/// What the crate's root re-exports, and from which room.
const RE_EXPORTS: [(&str, &[&str]); 8] = [
    ("error", &["Error", "Fault", "Faults", "Kind"]),
    ("length", &["Area", "Length", "Notation", "Unit"]),
    ("money", &["Money"]),
    ("nest", &["fill"]),
    ("job", &["Job"]),
    ("plan", &["Plan"]),
    ("span", &["beam", "plate", "span_limits"]),
    ("survey", &["survey"]),
];

/// Each room's height, the ground lowest.
fn heights() -> BTreeMap<&'static str, usize> {
    let steps = FLOORS.lines().filter(|line| !line.is_empty()).flat_map(|line| {
        let (_, rooms) = line.split_once(' ').unwrap();
        rooms.split('>').collect::<Vec<&str>>()
    });
    let steps: Vec<&str> = steps.collect();
    let rooms = |(height, step): (usize, &&'static str)| {
        step.split(',').map(move |room| (room.trim(), height)).collect::<Vec<(&str, usize)>>()
    };
    steps.iter().rev().enumerate().flat_map(rooms).collect()
}

/// The room that a file belongs to; none for the crate's root.
fn room(path: &Path) -> Option<String> {
    let inside = path.strip_prefix(root().join("deck-core/src")).unwrap();
    let first = inside.components().next().unwrap().as_os_str().to_string_lossy();
    let room = first.strip_suffix(".rs").unwrap_or(&first);
    (room != "lib").then(|| room.to_owned())
}

/// The names right after every `crate::` of a text, those in braces one by one; comments and docs are left out.
fn crate_names(text: &str) -> BTreeSet<String> {
    let code: Vec<&str> = text.lines().map(|line| line.split("//").next().unwrap_or("")).collect();
    let code = code.join("\n");
    let mut names = BTreeSet::new();
    for (at, found) in code.match_indices("crate::") {
        let whole_word = !code[..at].ends_with(|c: char| c.is_alphanumeric() || c == '_');
        let rest = &code[at + found.len()..];
        let list = rest.strip_prefix('{').map_or(rest, |list| list.split('}').next().unwrap_or(""));
        // Only the first of nested paths is a room; a nested list is not written at the root in this crate.
        let parts: Vec<&str> = if rest.starts_with('{') { list.split(',').collect() } else { vec![rest] };
        for part in parts.iter().filter(|_| whole_word) {
            let name: String = part.trim().chars().take_while(|c| c.is_alphanumeric() || *c == '_').collect();
            names.insert(name);
        }
    }
    names.remove("");
    names
}

fn room_of(name: &str) -> &str {
    RE_EXPORTS.iter().find(|(_, names)| names.contains(&name)).map_or(name, |(room, _)| room)
}

#[test]
fn arrows_point_down() {
    let heights = heights();
    let mut wrong = Vec::new();
    let mut arrows = 0;
    for path in rust_files(&root().join("deck-core/src")) {
        let Some(room) = room(&path) else { continue };
        let Some(height) = heights.get(room.as_str()) else {
            wrong.push(format!("{}: \"{room}\" stands on no floor", shown(&path)));
            continue;
        };
        for name in crate_names(&text(&path)) {
            let other = room_of(&name);
            if other == room {
                continue;
            }
            arrows += 1;
            match heights.get(other) {
                Some(below) if below < height => {}
                _ => wrong.push(format!("{}: {room} uses crate::{name}", shown(&path))),
            }
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
    // Far fewer, and the paths are not read any more.
    assert!(arrows > 150, "only {arrows} arrows found");
}

#[test]
fn re_exports_are_those_of_the_root() {
    let root = text(&root().join("deck-core/src/lib.rs"));
    for (room, names) in RE_EXPORTS {
        let line = root.lines().find(|line| line.starts_with(&format!("pub use {room}::"))).unwrap();
        for name in names {
            assert!(line.contains(name), "{line}");
        }
    }
    let lines = root.lines().filter(|line| line.starts_with("pub use "));
    let unknown: Vec<&str> = lines.filter(|line| RE_EXPORTS.iter().all(|(room, _)| !line.contains(room))).collect();
    assert!(unknown.is_empty(), "{unknown:?}");
}

/// The developers' page shows the same floors, in a block of their own.
#[test]
fn the_page_shows_the_same_floors() {
    let page = text(&root().join("DEVELOPERS.md"));
    let block = page.split("```floors\n").nth(1).and_then(|rest| rest.split("```").next()).expect("a block of floors");
    assert_eq!(block.trim(), FLOORS.trim());
}

#[test]
fn names_are_read_off_paths() {
    let text = "use crate::length::{Length, Unit};\nuse crate::{Error, nest::Part};\n// crate::draw\nlet x = crate::math::f();\nmycrate::no();";
    assert_eq!(crate_names(text).into_iter().collect::<Vec<_>>(), ["Error", "length", "math", "nest"]);
    assert!(heights()["length"] < heights()["money"] && heights()["error"] == heights()["math"]);
}
