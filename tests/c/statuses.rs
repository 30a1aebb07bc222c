//! The numbers of `deck.h` are the library's, each with its text.

use crate::calls::{Text8, Text16, utf16};
use deck_core::Kind;
use deck_ffi::{DECK_NO_SUCH_STATUS, DECK_OK, deck_status_text, deck_status_text_utf16};
use std::collections::BTreeMap;

/// `LengthUnreadable` in the header's letters.
fn in_capitals(name: &str) -> String {
    let spaced = name.chars().flat_map(|letter| letter.is_uppercase().then_some('_').into_iter().chain([letter]));
    format!("DECK{}", spaced.collect::<String>().to_uppercase())
}

/// Each constant of the header with its number, and the doc above it.
fn header() -> BTreeMap<i32, (String, String)> {
    let text = std::fs::read_to_string(crate::compile::root().join("deck-ffi/include/deck.h")).unwrap();
    let lines: Vec<&str> = text.lines().collect();
    let statuses = lines.iter().enumerate().filter_map(|(index, line)| {
        let (name, number) = line.strip_prefix("#define ")?.split_once(' ')?;
        let doc = lines.get(index.checked_sub(2)?)?.strip_prefix(" * ")?;
        let other = ["DECK_ABI_VERSION", "DECK_MAX_TEXT"].contains(&name);
        (!other).then(|| (number.parse().unwrap(), (name.to_string(), doc.to_string())))
    });
    let statuses: Vec<_> = statuses.collect();
    let count = statuses.len();
    let map = BTreeMap::from_iter(statuses);
    assert_eq!(map.len(), count, "a number is used twice");
    map
}

fn said(status: i32) -> (i32, String) {
    let narrow = Text8::ask(|buf, cap, needed| unsafe { deck_status_text(status, buf, cap, needed) });
    let wide = Text16::ask(|buf, cap, needed| unsafe { deck_status_text_utf16(status, buf, cap, needed) });
    assert_eq!((narrow.status, utf16(&narrow.text)), (wide.status, wide.units));
    (narrow.status, narrow.text)
}

#[test]
fn every_kind_of_the_library_has_its_number_name_and_doc_in_the_header() {
    let mut header = header();
    for kind in Kind::ALL {
        let (name, doc) = header.remove(&kind.code).unwrap_or_else(|| panic!("{} is not in deck.h", kind.name));
        assert_eq!((name, doc.as_str()), (in_capitals(kind.name), kind.text));
    }
    // What is left is of the border alone, in one block from 0 on.
    let left: Vec<i32> = header.into_keys().collect();
    assert_eq!(left, (0..i32::try_from(left.len()).unwrap()).collect::<Vec<_>>());
    assert!(left.len() < 100);
}

#[test]
fn every_status_has_a_text() {
    for (number, (_, doc)) in header() {
        assert_eq!(said(number), (DECK_OK, doc));
    }
    for number in [-1, 99, 100, 123, i32::MIN, i32::MAX] {
        assert_eq!(said(number).0, DECK_NO_SUCH_STATUS);
    }
}
