//! Thousands of calls that no well-meant program makes: each gives a status and a sentence, and leaves the outputs alone.

use crate::calls::{JOB, Planned, Text8, last_error};
use deck_core::Kind;
use deck_ffi::{
    DECK_BAD_SIZE, DECK_NOT_TEXT, DECK_OK, DECK_PANIC, DECK_SHORT_BUFFER, deck_beam, deck_fasteners, deck_fill,
    deck_last_error_at, deck_last_error_count, deck_last_error_pointer, deck_length, deck_nest, deck_panels,
    deck_plan_count, deck_plan_new, deck_plan_new_utf16, deck_plan_number, deck_plan_text, deck_plate, deck_seams,
    deck_span_limits,
};
use proptest::prelude::*;
use std::ffi::c_char;
use std::ptr;

/// Planning takes some milliseconds; most of these jobs fail before that.
const CASES: u32 = 4000;

const LENGTH_REQUEST: &str = r#"{"length": "7' 10-1/2\"", "unit": "mm", "fractions": 32, "feet": true}"#;

/// The golden requests of the steps.
const SEAMS: &str = include_str!("../golden/calls/seams.json");
const PANELS: &str = include_str!("../golden/calls/panels.json");
const FASTENERS: &str = include_str!("../golden/calls/fasteners.json");

/// A status that a call with faulty input may give: of the border, a panic excepted, or of the library.
fn is_a_refusal(status: i32) -> bool {
    let known = Kind::ALL.iter().any(|kind| kind.code == status);
    known || (status != DECK_OK && status != DECK_PANIC && (1..100).contains(&status))
}

/// Every fault of the last call can be read, and stands at a pointer that its text begins with.
fn faults_are_told() {
    assert!(deck_last_error_count() > 0);
    for index in 0..deck_last_error_count() {
        let text = Text8::ask(|buf, cap, needed| unsafe { deck_last_error_at(index, buf, cap, needed) });
        let pointer = Text8::ask(|buf, cap, needed| unsafe { deck_last_error_pointer(index, buf, cap, needed) });
        assert_eq!((text.status, pointer.status), (DECK_OK, DECK_OK));
        assert!(text.text.starts_with(&pointer.text) && !text.text.is_empty());
    }
}

/// Plans bytes as they are; a plan that comes of them is freed.
fn plan_bytes(bytes: &[u8], len: i64) -> i32 {
    let mut plan = ptr::null_mut();
    let status = unsafe { deck_plan_new(bytes.as_ptr().cast(), len, &raw mut plan) };
    if status == DECK_OK {
        drop(Planned(plan));
    } else {
        assert!(plan.is_null() && is_a_refusal(status), "{status}: {}", last_error());
        faults_are_told();
    }
    status
}

fn length(bytes: &[u8]) -> i64 {
    i64::try_from(bytes.len()).unwrap()
}

const REQUEST: &str = r#"{"parts": [{"label": "a", "length": "7' 10-1/2\"", "width": 16, "count": 3, "grain": "length"},
    {"label": "b", "length": 30.5, "width": "200 mm", "boat": "x", "value": null}],
    "stock": [{"label": "ply", "length": 96, "width": 48, "count": 4, "price": 62.5, "offcut": false}],
    "kerf": "1/8", "trim": 0.25, "stages": 3, "first": "width", "keep": [24, 12], "effort": 2000, "unit": "in"}"#;

/// Asks for a nest with bytes as they are; what is refused is told.
fn nest_bytes(bytes: &[u8]) -> i32 {
    let (mut buf, mut needed) = (vec![0; 1 << 16], usize::MAX);
    let len = length(bytes);
    let status = unsafe { deck_nest(bytes.as_ptr().cast(), len, buf.as_mut_ptr(), buf.len(), &raw mut needed) };
    if ![DECK_OK, DECK_SHORT_BUFFER].contains(&status) {
        assert!(needed == usize::MAX && is_a_refusal(status), "{status}: {}", last_error());
        faults_are_told();
    }
    status
}

const FILL_REQUEST: &str = r#"{"sheet": {"label": "rest", "length": "40", "width": 36, "offcut": true},
    "parts": [{"label": "a", "length": "1' 10-1/2\"", "width": 16, "count": 3, "grain": "length", "value": 4.5},
    {"label": "b", "length": 30.5, "width": "200 mm", "boat": "x", "count": null, "value": 3}],
    "kerf": "1/8", "trim": 0.25, "stages": 3, "first": "width", "keep": [24, 12], "effort": 2000, "unit": "in"}"#;

/// Asks for a fill with bytes as they are; what is refused is told.
fn fill_bytes(bytes: &[u8]) -> i32 {
    let (mut buf, mut needed) = (vec![0; 1 << 16], usize::MAX);
    let len = length(bytes);
    let status = unsafe { deck_fill(bytes.as_ptr().cast(), len, buf.as_mut_ptr(), buf.len(), &raw mut needed) };
    if ![DECK_OK, DECK_SHORT_BUFFER].contains(&status) {
        assert!(needed == usize::MAX && is_a_refusal(status), "{status}: {}", last_error());
        faults_are_told();
    }
    status
}

const LIMITS_REQUEST: &str = r#"{"panel": {"series": "sanded plywood Group 1 A-A/A-C", "rating": "3/4", "group": "2"},
    "spacing": "2 ft", "axis": "along", "spans": 3, "support": 1.5, "deflection": 240, "wet": true, "unit": "in"}"#;
const BEAM_REQUEST: &str = r#"{"spans": [16, "2 ft"], "overhangs": [3, 0.5], "stiffness": 1e5, "ends": ["simple", "simple"],
    "loads": [{"kind": "uniform", "value": 2}, {"kind": "patch", "at": 12, "size": 3, "value": -5}]}"#;
const PLATE_REQUEST: &str = r#"{"length": 24, "width": 16, "dx": 90, "dy": 30, "torsion": 40, "poisson": [0.1, 0.3], "mesh": 8,
    "supports": [{"kind": "along", "y": 0, "clamped": true}, {"kind": "across", "x": 9, "between": [0, 9]}],
    "loads": [{"kind": "line", "at": [12, 8], "size": [3, 0], "value": 5}]}"#;

type Ask = unsafe extern "C" fn(*const c_char, i64, *mut c_char, usize, *mut usize) -> i32;

/// Asks a function with bytes as they are; what is refused is told.
fn call_bytes(ask: Ask, bytes: &[u8]) -> i32 {
    let (mut buf, mut needed) = (vec![0; 1 << 16], usize::MAX);
    let status = unsafe { ask(bytes.as_ptr().cast(), length(bytes), buf.as_mut_ptr(), buf.len(), &raw mut needed) };
    if ![DECK_OK, DECK_SHORT_BUFFER].contains(&status) {
        assert!(needed == usize::MAX && is_a_refusal(status), "{status}: {}", last_error());
        faults_are_told();
    }
    status
}

/// A text with some of its bytes exchanged for others.
fn spoiled(text: &'static str) -> impl Strategy<Value = Vec<u8>> {
    let bytes = proptest::collection::vec((0..text.len(), any::<u8>()), 1..4);
    bytes.prop_map(|changes| {
        let mut spoiled = text.as_bytes().to_vec();
        for (index, byte) in changes {
            spoiled[index] = byte;
        }
        spoiled
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: CASES, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn spoiled_jobs(job in spoiled(JOB)) {
        plan_bytes(&job, length(&job));
    }

    #[test]
    fn spoiled_requests(request in spoiled(REQUEST)) {
        nest_bytes(&request);
    }

    #[test]
    fn spoiled_fill_requests(request in spoiled(FILL_REQUEST)) {
        fill_bytes(&request);
    }

    #[test]
    fn fill_requests_cut_short(end in 0..FILL_REQUEST.len()) {
        let status = fill_bytes(&FILL_REQUEST.as_bytes()[..end]);
        prop_assert!(![DECK_OK, DECK_SHORT_BUFFER].contains(&status));
    }

    #[test]
    fn spoiled_requests_of_strength(
        limits in spoiled(LIMITS_REQUEST),
        beam in spoiled(BEAM_REQUEST),
        plate in spoiled(PLATE_REQUEST),
    ) {
        call_bytes(deck_span_limits, &limits);
        call_bytes(deck_beam, &beam);
        call_bytes(deck_plate, &plate);
    }

    #[test]
    fn spoiled_and_short_requests_of_a_length(length in spoiled(LENGTH_REQUEST), end in 0..LENGTH_REQUEST.len()) {
        call_bytes(deck_length, &length);
        prop_assert_eq!(call_bytes(deck_length, &LENGTH_REQUEST.as_bytes()[..end]), Kind::NotJson.code());
    }

    #[test]
    fn requests_of_strength_cut_short(end in any::<proptest::sample::Index>()) {
        for (ask, text) in [(deck_span_limits as Ask, LIMITS_REQUEST), (deck_beam, BEAM_REQUEST), (deck_plate, PLATE_REQUEST)] {
            prop_assert_eq!(call_bytes(ask, &text.as_bytes()[..end.index(text.len())]), Kind::NotJson.code());
        }
    }

    #[test]
    fn spoiled_requests_of_steps(seams in spoiled(SEAMS), panels in spoiled(PANELS), fasteners in spoiled(FASTENERS)) {
        call_bytes(deck_seams, &seams);
        call_bytes(deck_panels, &panels);
        call_bytes(deck_fasteners, &fasteners);
    }

    #[test]
    fn requests_of_steps_cut_short(end in any::<proptest::sample::Index>()) {
        for (ask, text) in [(deck_seams as Ask, SEAMS), (deck_panels, PANELS), (deck_fasteners, FASTENERS)] {
            // Cut after its last brace, a file is whole.
            prop_assert_eq!(call_bytes(ask, &text.as_bytes()[..end.index(text.trim_end().len())]), Kind::NotJson.code());
        }
    }

    #[test]
    fn requests_cut_short(end in 0..REQUEST.len()) {
        let status = nest_bytes(&REQUEST.as_bytes()[..end]);
        prop_assert!(![DECK_OK, DECK_SHORT_BUFFER].contains(&status));
    }

    #[test]
    fn jobs_cut_short(end in 0..JOB.len()) {
        let status = plan_bytes(JOB.as_bytes(), i64::try_from(end).unwrap());
        prop_assert!(status != DECK_OK);
    }

    #[test]
    fn bytes_at_random(bytes in proptest::collection::vec(any::<u8>(), 0..200)) {
        let status = plan_bytes(&bytes, length(&bytes));
        prop_assert!(status != DECK_OK);
        prop_assert_eq!(status == DECK_NOT_TEXT, String::from_utf8(bytes).is_err());
    }

    #[test]
    fn lengths_at_random(len in prop_oneof![i64::MIN..-1, deck_ffi::DECK_MAX_TEXT + 1..i64::MAX]) {
        prop_assert_eq!(plan_bytes(JOB.as_bytes(), len), DECK_BAD_SIZE);
    }

    #[test]
    fn units_at_random(units in proptest::collection::vec(any::<u16>(), 0..200)) {
        let mut plan = ptr::null_mut();
        let len = i64::try_from(units.len()).unwrap();
        let status = unsafe { deck_plan_new_utf16(units.as_ptr(), len, &raw mut plan) };
        prop_assert!(plan.is_null() && is_a_refusal(status));
        prop_assert_eq!(status == DECK_NOT_TEXT, String::from_utf16(&units).is_err());
    }
}

#[test]
fn pointers_at_random() {
    let plan = Planned::new(JOB).unwrap();
    proptest!(ProptestConfig { cases: CASES, failure_persistence: None, ..ProptestConfig::default() },
        |(pointer in "(/(deck|frame|takeoff|lines|panels|job|name|-?[0-9]{1,20}|[~/01a-zé]{0,6})){0,6}|[^\0]{0,20}")| {
        let ended = format!("{pointer}\0");
        let (mut value, mut count, mut needed, mut buf) = (f64::NAN, usize::MAX, usize::MAX, [0; 4096]);
        let number = unsafe { deck_plan_number(plan.0, ended.as_ptr().cast(), &raw mut value) };
        let items = unsafe { deck_plan_count(plan.0, ended.as_ptr().cast(), &raw mut count) };
        let text = unsafe { deck_plan_text(plan.0, ended.as_ptr().cast(), buf.as_mut_ptr(), buf.len(), &raw mut needed) };
        // Something is one of the three sorts, or null, or nothing; what is refused is left alone.
        let accepted = [number, items, text].iter().filter(|status| **status == DECK_OK).count();
        prop_assert!(accepted <= 1);
        for (status, untouched) in [(number, value.is_nan()), (items, count == usize::MAX), (text, needed == usize::MAX)] {
            prop_assert_eq!(status != DECK_OK, untouched);
            prop_assert!(status == DECK_OK || is_a_refusal(status));
        }
    });
}
