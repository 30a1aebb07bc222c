//! `DECK_ABI_VERSION` is the number of a list of declarations: as long as it stays, none of them changes or goes.

use crate::compile::root;
use deck_ffi::{DECK_ABI_VERSION, deck_abi_version};
use std::fs;

/// Set to add what is new to the list.
const RENEW: &str = "DECK_RENEW";

/// The list: the number on the first line, then a declaration a line, in the order in which they came.
const LIST: &str = "tests/c/abi.txt";

/// A text without its comments, and with one space where there is any.
fn bare(header: &str) -> String {
    let mut text = String::new();
    for (index, part) in header.split("/*").enumerate() {
        text += if index == 0 { part } else { part.split_once("*/").unwrap().1 };
    }
    text
}

fn one_space(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Everything that a program is built on: functions, types, numbers.
fn declarations(header: &str) -> Vec<String> {
    let bare = bare(header);
    let numbers = bare.lines().filter(|line| line.starts_with("#define DECK_") && line.split(' ').count() == 3);
    let numbers = numbers.map(one_space).filter(|line| !line.starts_with("#define DECK_ABI_VERSION "));
    let code: Vec<&str> = bare.lines().filter(|line| !line.starts_with('#')).collect();
    let code = code.join("\n");
    let others = code.split(';').map(one_space).map(|text| text.trim_start_matches("extern \"C\" { ").to_owned());
    let others = others.filter(|text| text.starts_with("int32_t deck_") || text.starts_with("typedef "));
    numbers.chain(others).collect()
}

fn header() -> String {
    fs::read_to_string(root().join("deck-ffi/include/deck.h")).unwrap()
}

/// What is wrong with a header under a list, if anything is.
fn broken(header: &str, list: &str) -> Result<(), String> {
    let (number, known) = list.split_once('\n').unwrap();
    let defined =
        bare(header).lines().find_map(|line| line.strip_prefix("#define DECK_ABI_VERSION ").map(str::to_owned));
    if defined.as_deref() != Some(number) {
        return Err(format!("the header is {defined:?}, the list is {number}"));
    }
    let there = declarations(header);
    for line in known.lines() {
        if !there.iter().any(|declaration| declaration == line) {
            return Err(format!("gone or changed: {line}. Raise DECK_ABI_VERSION and begin {LIST} anew."));
        }
    }
    let new = there.iter().find(|declaration| known.lines().all(|line| line != declaration.as_str()));
    new.map_or(Ok(()), |new| Err(format!("not in {LIST}: {new}. Add it with {RENEW}=1.")))
}

#[test]
fn the_abi_number_stands_for_what_is_declared() {
    let path = root().join(LIST);
    let mut list = fs::read_to_string(&path).unwrap_or_default();
    if std::env::var_os(RENEW).is_some() {
        if list.is_empty() {
            list = format!("{DECK_ABI_VERSION}\n");
        }
        for declaration in declarations(&header()) {
            if list.lines().all(|line| line != declaration) {
                list += &(declaration + "\n");
            }
        }
        fs::write(&path, &list).unwrap();
    }
    broken(&header(), &list).unwrap();
    assert_eq!(deck_abi_version(), DECK_ABI_VERSION);
    assert!(list.lines().count() > 80, "{list}");
}

/// The check sees what would break a program, and what would not.
#[test]
fn a_change_that_breaks_programs_is_seen() {
    let (header, list) = (header(), fs::read_to_string(root().join(LIST)).unwrap());
    for (old, new) in [
        (
            "int32_t deck_beam(const char *json,\n                  int64_t len",
            "int32_t deck_beam(const char *json,\n int32_t len",
        ),
        ("#define DECK_NOT_JSON 201", "#define DECK_NOT_JSON 211"),
        ("#define DECK_ABI_VERSION 1", "#define DECK_ABI_VERSION 2"),
        ("double bound,\n                                 int32_t proven", "float bound, int32_t proven"),
        ("int32_t deck_abi_version(void);", "int32_t deck_abi_version(void);\nint32_t deck_more(void);"),
    ] {
        assert!(header.contains(old), "{old}");
        assert!(broken(&header.replace(old, new), &list).is_err(), "{new}");
    }
    let reworded = header.replace("Frees a plan", "Lets a plan go").replace(",\n", ", ");
    assert!(reworded != header && broken(&reworded, &list).is_ok());
}
