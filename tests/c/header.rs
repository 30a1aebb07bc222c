//! `deck.h` is what cbindgen makes of the sources, under the rules at the head of `deck-ffi/src/lib.rs`.

use crate::compile::root;
use cbindgen::Config;
use std::fs;

/// Set to write the header anew.
const RENEW: &str = "DECK_RENEW";

fn source(file: &str) -> String {
    fs::read_to_string(root().join("deck-ffi/src").join(file)).unwrap()
}

/// The head of lib.rs as a comment in C.
fn rules() -> String {
    let lib = source("lib.rs");
    let lines = lib.lines().map_while(|line| line.strip_prefix("//!"));
    let commented: Vec<String> = lines.map(|line| format!(" *{line}\n")).collect();
    assert!(commented.len() > 10, "the rules have left the head of lib.rs");
    format!("/*\n{} *\n * Made by cbindgen from deck-ffi/src. Do not edit.\n */", commented.concat())
}

fn generated() -> String {
    let config = Config { header: Some(rules()), ..Config::from_file(root().join("deck-ffi/cbindgen.toml")).unwrap() };
    let bindings = cbindgen::generate_with_config(root().join("deck-ffi"), config).unwrap();
    let mut bytes = Vec::new();
    bindings.write(&mut bytes);
    String::from_utf8(bytes).unwrap()
}

fn checked_in() -> String {
    fs::read_to_string(root().join("deck-ffi/include/deck.h")).unwrap_or_default()
}

#[test]
fn the_header_is_what_the_sources_say() {
    let generated = generated();
    if std::env::var_os(RENEW).is_some() {
        fs::write(root().join("deck-ffi/include/deck.h"), &generated).unwrap();
    }
    let checked_in = checked_in();
    let differing = generated.lines().zip(checked_in.lines()).find(|(new, old)| new != old);
    assert!(generated == checked_in, "include/deck.h is out of date (first: {differing:?}); renew it with {RENEW}=1");
}

/// Every function of the sources is in the header, so that none is hidden from cbindgen by a macro or a module.
#[test]
fn every_exported_function_is_declared_and_documented() {
    let header = checked_in();
    let mut found = 0;
    for file in fs::read_dir(root().join("deck-ffi/src")).unwrap() {
        let text = fs::read_to_string(file.unwrap().path()).unwrap();
        for at in text.match_indices("extern \"C\" fn ").map(|(at, mark)| at + mark.len()) {
            let name = text[at..].split('(').next().unwrap();
            assert!(header.contains(&format!(" */\nint32_t {name}(")), "{name} is not in deck.h with its doc");
            found += 1;
        }
    }
    assert!(found >= 15, "only {found} functions found");
}

/// Each function that takes or gives text has its twin in UTF-16, and only those.
#[test]
fn every_text_function_has_a_twin() {
    let header = checked_in();
    for declaration in header.split(';').filter_map(|part| part.split("int32_t deck_").nth(1)) {
        let (name, arguments) = declaration.split_once('(').unwrap();
        if name.ends_with("_utf16") {
            assert!(arguments.contains("uint16_t *") && !arguments.contains("char *"), "{name}");
        } else {
            let twin = header.contains(&format!("deck_{name}_utf16("));
            assert_eq!(arguments.contains("char *"), twin, "{name}");
        }
    }
}

/// What touches the caller's memory stays in two small files.
#[test]
fn unsafe_blocks_stand_in_two_files_with_their_reasons() {
    for file in fs::read_dir(root().join("deck-ffi/src")).unwrap() {
        let path = file.unwrap().path();
        let name = path.file_name().unwrap().to_string_lossy().into_owned();
        let text = fs::read_to_string(&path).unwrap();
        let (blocks, reasons) = (text.matches("unsafe {").count(), text.matches("// SAFETY: ").count());
        let expected = matches!(name.as_str(), "handle.rs" | "text.rs");
        assert_eq!(blocks > 0, expected, "{name}");
        assert_eq!(blocks, reasons, "{name}: each unsafe block has its sentence");
    }
}

/// Whoever reads one entry knows who owns what, who may call it, and what comes of it.
#[test]
fn every_entry_says_its_rules() {
    let header = checked_in();
    let mut looked_at = 0;
    for (doc, declaration) in header.split("/**").filter_map(|part| part.split_once("*/\nint32_t ")) {
        let (name, arguments) = declaration.split_once('(').unwrap();
        if name.ends_with("_utf16") {
            assert!(
                doc.trim_start_matches([' ', '*', '\n'])
                    .starts_with(&format!("As {}", name.trim_end_matches("_utf16")))
            );
            continue;
        }
        let takes = arguments.split(';').next().unwrap().contains('*');
        assert!(doc.contains("* # Threads\n"), "{name}");
        assert_eq!(takes, doc.contains("* # Ownership\n"), "{name}");
        assert_eq!(takes, doc.contains("* # Statuses\n"), "{name}");
        looked_at += 1;
    }
    assert!(looked_at > 20);
}
