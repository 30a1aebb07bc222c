//! A hundred thousand calls that nobody means, the same ones each time, over every function of the header: all come to
//! nothing but a status, and what must hold of a call holds of each (`deck-ffi/fuzz/entries.rs`).

use crate::calls::{JOB, Planned};
use crate::case::{Case, Len, NO_SIZES, Nulls, REFUSED};
use crate::compile::root;
use crate::entries::ENTRIES;
use crate::rubbish::{Chance, spoiled};
use deck_core::Kind;
use deck_ffi::{DECK_NO_SUCH_STATUS, DECK_OK, DECK_PANIC};
use std::collections::{BTreeMap, BTreeSet};
use std::ffi::OsString;
use std::io::Write;
use std::time::Instant;

/// Calls that are refused; those that turn out to be in order come on top.
const REFUSALS: u32 = 100_000;

/// Functions that draw take longer than a hundred others, as all pages are laid out for each call.
const DRAWING: [&str; 3] = ["packet", "svg", "views"];

/// One in so many turns of those is taken.
const DRAWN: usize = 25;

/// Another seed makes other calls.
const SEED: u64 = 20_261_125;

/// Pointers and names into a plan, some of which are there.
const PLACES: [&str; 12] = [
    "/deck/length",
    "/deck/length_text",
    "/takeoff/lines",
    "/takeoff/lines/0/description",
    "/takeoff/lines/-1/buy",
    "/takeoff/lines/00",
    "/layouts/18446744073709551616",
    "/no_layout",
    "/~2/~",
    "",
    "plan",
    "saw-1",
];

/// Requests in order, by the function's name without its ending.
fn requests() -> BTreeMap<String, String> {
    let files = std::fs::read_dir(root().join("tests/golden/calls")).unwrap().map(|file| file.unwrap().path());
    let named = files.map(|path| {
        let name = path.file_stem().unwrap().to_string_lossy().into_owned();
        (format!("deck_{name}"), std::fs::read_to_string(path).unwrap())
    });
    named.chain([("deck_plan_new".to_owned(), JOB.to_owned())]).collect()
}

/// A case for a function: mostly a spoiled text in sound arguments, else arguments that are not sound.
fn case(chance: &mut Chance, text: Option<&String>) -> Case {
    let text = match text {
        Some(text) => spoiled(chance, text),
        None if chance.one_in(3) => chance.bytes(24),
        None => chance.pick(&PLACES).as_bytes().to_vec(),
    };
    let len = match chance.below(16) {
        0 => Len::Part(chance.byte()),
        1 => Len::Refused(*chance.pick(&REFUSED)),
        2..=5 => Len::ToNul,
        _ => Len::Exact,
    };
    let cap = match chance.below(24) {
        0 => *chance.pick(&NO_SIZES),
        1 => 1 << 17,
        _ => *chance.pick(&[0, 1, 40, 4000]),
    };
    let nulls = if chance.one_in(12) { Nulls(1 << chance.below(4)) } else { Nulls(0) };
    let index =
        if chance.one_in(2) { *chance.pick(&[-1, 0, 1, 99, i32::MIN, i32::MAX]) } else { i32::from(chance.byte()) };
    Case { text, raw: chance.one_in(4), len, cap, nulls, index }
}

/// A status that may come of anything: in order, of the border, or of the library.
fn is_known(status: i32) -> bool {
    status != DECK_PANIC
        && ((DECK_OK..=DECK_NO_SUCH_STATUS).contains(&status) || Kind::ALL.iter().any(|kind| kind.code == status))
}

/// What lies in the folder that relative paths start from.
fn files_here() -> BTreeSet<OsString> {
    std::fs::read_dir(".").unwrap().map(|file| file.unwrap().file_name()).collect()
}

#[test]
fn a_hundred_thousand_malformed_calls_give_nothing_but_statuses() {
    let (requests, plan, begun) = (requests(), Planned::new(JOB).unwrap(), Instant::now());
    let before = files_here();
    let mut chance = Chance::new(SEED);
    let mut counts: BTreeMap<i32, u32> = BTreeMap::new();
    let mut refused = 0;
    for (name, entry) in ENTRIES.iter().cycle() {
        if DRAWING.iter().any(|word| name.contains(word)) && !chance.one_in(DRAWN) {
            continue;
        }
        let known = name.trim_end_matches("_utf16").trim_end_matches("_watched");
        let case = case(&mut chance, requests.get(known));
        let status = entry(&case, plan.0);
        assert!(is_known(status), "{name} gave {status} on {case:?}");
        *counts.entry(status).or_default() += 1;
        refused += u32::from(status != DECK_OK);
        if refused == REFUSALS {
            break;
        }
    }
    let seconds = begun.elapsed().as_secs_f64();
    let list: Vec<String> = counts.iter().map(|(status, count)| format!("{status}: {count}")).collect();
    let rate = f64::from(refused) / seconds;
    // Past the capture of the test harness: the counts are for whoever reads the log.
    writeln!(std::io::stderr(), "{refused} refused calls, {rate:.0} a second; by status: {}", list.join(", ")).unwrap();
    assert!(counts.len() > 30, "only {} statuses came up", counts.len());
    assert_eq!(files_here(), before, "a path of rubbish became a file");
}

/// No function is left out.
#[test]
fn every_function_is_called() {
    let header = std::fs::read_to_string(root().join("deck-ffi/include/deck.h")).unwrap();
    let declared = header.lines().filter_map(|line| Some(line.strip_prefix("int32_t ")?.split_once('(')?.0));
    let mut declared: Vec<&str> = declared.collect();
    let mut called: Vec<&str> = ENTRIES.iter().map(|(name, _)| *name).collect();
    declared.sort_unstable();
    called.sort_unstable();
    assert_eq!(called, declared);
}
