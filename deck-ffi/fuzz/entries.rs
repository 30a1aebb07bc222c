//! Every function of the border under its name, called with any text, size, index and NULL there may be, and what must hold
//! of each call whatever came in.
//!
//! The fuzzer and the test of a hundred thousand malformed calls share this file.

use crate::case::{Case, Len, Nulls};
use crate::units::{Unit, untouched};
use deck_ffi::*;
use std::ffi::{c_char, c_void};
use std::ptr;

/// A folder that is not there.
const NOWHERE: &str = "/no/such/folder/";

/// A function of the border, called for a case with a plan that is in order. Returns the status.
pub(crate) type Entry = fn(&Case, *const DeckPlan) -> i32;

type Ask<U> = unsafe extern "C" fn(*const U, i64, *mut U, usize, *mut usize) -> i32;
type Write<U> = unsafe extern "C" fn(*mut U, usize, *mut usize) -> i32;
type WriteAt<U> = unsafe extern "C" fn(i32, *mut U, usize, *mut usize) -> i32;
type WriteOf<U> = unsafe extern "C" fn(*const DeckPlan, *mut U, usize, *mut usize) -> i32;
type Find = unsafe extern "C" fn(*const DeckPlan, *const c_char, *mut c_char, usize, *mut usize) -> i32;
type Find16 = unsafe extern "C" fn(*const DeckPlan, *const u16, i64, *mut u16, usize, *mut usize) -> i32;
type Watched<U, P> = unsafe extern "C" fn(*const U, i64, *mut U, usize, *mut usize, P, *mut c_void) -> i32;

/// Every function of `deck.h`; a test holds the names against the header.
pub(crate) const ENTRIES: &[(&str, Entry)] = &[
    ("deck_plan_new", |case, _| plan_new(case, deck_plan_new)),
    ("deck_plan_new_utf16", |case, _| plan_new(case, deck_plan_new_utf16)),
    ("deck_nest", |case, _| ask(&case.tamed(), deck_nest)),
    ("deck_nest_utf16", |case, _| ask(&case.tamed(), deck_nest_utf16)),
    ("deck_nest_watched", |case, _| watched(case, deck_nest_watched, stop_nest)),
    ("deck_nest_watched_utf16", |case, _| watched(case, deck_nest_watched_utf16, stop_nest)),
    ("deck_fill", |case, _| ask(&case.tamed(), deck_fill)),
    ("deck_fill_utf16", |case, _| ask(&case.tamed(), deck_fill_utf16)),
    ("deck_fill_watched", |case, _| watched(case, deck_fill_watched, stop_fill)),
    ("deck_fill_watched_utf16", |case, _| watched(case, deck_fill_watched_utf16, stop_fill)),
    ("deck_seams", |case, _| ask(case, deck_seams)),
    ("deck_seams_utf16", |case, _| ask(case, deck_seams_utf16)),
    ("deck_panels", |case, _| ask(case, deck_panels)),
    ("deck_panels_utf16", |case, _| ask(case, deck_panels_utf16)),
    ("deck_fasteners", |case, _| ask(case, deck_fasteners)),
    ("deck_fasteners_utf16", |case, _| ask(case, deck_fasteners_utf16)),
    ("deck_survey", |case, _| ask(case, deck_survey)),
    ("deck_survey_utf16", |case, _| ask(case, deck_survey_utf16)),
    ("deck_span_limits", |case, _| ask(case, deck_span_limits)),
    ("deck_span_limits_utf16", |case, _| ask(case, deck_span_limits_utf16)),
    ("deck_beam", |case, _| ask(case, deck_beam)),
    ("deck_beam_utf16", |case, _| ask(case, deck_beam_utf16)),
    ("deck_plate", |case, _| ask(case, deck_plate)),
    ("deck_plate_utf16", |case, _| ask(case, deck_plate_utf16)),
    ("deck_length", |case, _| ask(case, deck_length)),
    ("deck_length_utf16", |case, _| ask(case, deck_length_utf16)),
    ("deck_job_schema", |case, _| told(write(deck_job_schema, case))),
    ("deck_job_schema_utf16", |case, _| told(write(deck_job_schema_utf16, case))),
    ("deck_last_error", |case, _| write(deck_last_error, case)),
    ("deck_last_error_utf16", |case, _| write(deck_last_error_utf16, case)),
    ("deck_last_error_at", |case, _| case.write_at(deck_last_error_at)),
    ("deck_last_error_at_utf16", |case, _| case.write_at(deck_last_error_at_utf16)),
    ("deck_last_error_pointer", |case, _| case.write_at(deck_last_error_pointer)),
    ("deck_last_error_pointer_utf16", |case, _| case.write_at(deck_last_error_pointer_utf16)),
    ("deck_status_text", |case, _| case.write_at(deck_status_text)),
    ("deck_status_text_utf16", |case, _| case.write_at(deck_status_text_utf16)),
    ("deck_plan_json", |case, plan| told(case.write_of(plan, deck_plan_json))),
    ("deck_plan_json_utf16", |case, plan| told(case.write_of(plan, deck_plan_json_utf16))),
    ("deck_plan_quote_csv", |case, plan| told(case.write_of(plan, deck_plan_quote_csv))),
    ("deck_plan_quote_csv_utf16", |case, plan| told(case.write_of(plan, deck_plan_quote_csv_utf16))),
    ("deck_plan_views", |case, plan| told(case.write_of(plan, deck_plan_views))),
    ("deck_plan_views_utf16", |case, plan| told(case.write_of(plan, deck_plan_views_utf16))),
    ("deck_plan_text", |case, plan| told(case.find(plan, deck_plan_text))),
    ("deck_plan_text_utf16", |case, plan| told(case.find16(plan, deck_plan_text_utf16))),
    ("deck_plan_svg", |case, plan| told(case.find(plan, deck_plan_svg))),
    ("deck_plan_svg_utf16", |case, plan| told(case.find16(plan, deck_plan_svg_utf16))),
    ("deck_plan_number", |case, plan| {
        told(case.read(plan, f64::MAX, |plan, at, _, out| unsafe { deck_plan_number(plan, at, out) }))
    }),
    ("deck_plan_number_utf16", |case, plan| {
        told(case.read(plan, f64::MAX, |plan, at, len, out| unsafe { deck_plan_number_utf16(plan, at, len, out) }))
    }),
    ("deck_plan_count", |case, plan| {
        told(case.read(plan, usize::MAX, |plan, at, _, out| unsafe { deck_plan_count(plan, at, out) }))
    }),
    ("deck_plan_count_utf16", |case, plan| {
        told(case.read(plan, usize::MAX, |plan, at, len, out| unsafe { deck_plan_count_utf16(plan, at, len, out) }))
    }),
    ("deck_plan_packet", |case, plan| {
        told(case.nowhere::<c_char>().pass(plan, |plan, path, _| unsafe { deck_plan_packet(plan, path) }))
    }),
    ("deck_plan_packet_utf16", |case, plan| {
        told(case.nowhere::<u16>().pass(plan, |plan, path, len| unsafe { deck_plan_packet_utf16(plan, path, len) }))
    }),
    ("deck_plan_free", |_, _| unsafe { deck_plan_free(ptr::null_mut()) }),
    ("deck_last_error_count", |_, _| {
        assert!(deck_last_error_count() >= 0);
        DECK_OK
    }),
    ("deck_abi_version", |_, _| {
        assert_eq!(deck_abi_version(), DECK_ABI_VERSION);
        DECK_OK
    }),
];

/// A search is stopped where it first looks around.
extern "C" fn stop_nest(_: *mut c_void, done: f64, of: f64, unplaced: f64, cost: f64, bound: f64, proven: i32) -> i32 {
    assert!(done <= of && unplaced >= 0.0 && bound <= cost && [0, 1].contains(&proven));
    1
}

/// So is the filling of a sheet.
extern "C" fn stop_fill(_: *mut c_void, done: f64, of: f64, value: f64, bound: f64, proven: i32) -> i32 {
    assert!(done <= of && value <= bound && [0, 1].contains(&proven));
    1
}

fn write<U: Unit>(function: Write<U>, case: &Case) -> i32 {
    case.write(|buf, cap, needed| unsafe { function(buf, cap, needed) })
}

fn ask<U: Unit>(case: &Case, function: Ask<U>) -> i32 {
    let text = case.text::<U>();
    told(case.write(|buf, cap, needed| unsafe { function(text.at(), text.len(), buf, cap, needed) }))
}

fn watched<U: Unit, P: Copy>(case: &Case, function: Watched<U, Option<P>>, stop: P) -> i32 {
    let (text, progress) = (case.text::<U>(), (!case.nulls.has(Nulls::HANDLE)).then_some(stop));
    told(case.write(|buf, cap, needed| unsafe {
        function(text.at(), text.len(), buf, cap, needed, progress, ptr::null_mut())
    }))
}

/// A plan that comes of the text is read in several ways, drawn, and freed.
fn plan_new<U: Unit>(case: &Case, function: unsafe extern "C" fn(*const U, i64, *mut *mut DeckPlan) -> i32) -> i32 {
    let (text, mut plan) = (case.text::<U>(), ptr::null_mut());
    let place = if case.nulls.has(Nulls::OUT) { ptr::null_mut() } else { &raw mut plan };
    let status = told(unsafe { function(text.at(), text.len(), place) });
    assert_eq!(status == DECK_OK, !plan.is_null());
    if !plan.is_null() {
        let mut length = f64::NAN;
        assert_eq!(unsafe { deck_plan_number(plan, c"/deck/length".as_ptr(), &raw mut length) }, DECK_OK);
        assert!(length > 0.0);
        // Drawing takes longer than all else: some views of some plans.
        let views = if case.index % 5 == 0 { views(plan) } else { Vec::new() };
        for view in views.into_iter().step_by(5) {
            let (at, mut needed) = (view.as_ptr().cast(), 0);
            assert_eq!(unsafe { deck_plan_svg(plan, at, ptr::null_mut(), 0, &raw mut needed) }, DECK_SHORT_BUFFER);
        }
        assert_eq!(unsafe { deck_plan_free(plan) }, DECK_OK);
    }
    status
}

/// The names of a plan's views, each with its NUL.
fn views(plan: *const DeckPlan) -> Vec<String> {
    let (mut buf, mut needed) = (vec![0_u8; 1 << 16], 0);
    let status = unsafe { deck_plan_views(plan, buf.as_mut_ptr().cast(), buf.len(), &raw mut needed) };
    assert_eq!(status, DECK_OK);
    let names: Vec<String> = serde_json::from_slice(&buf[..needed - 1]).unwrap();
    names.into_iter().map(|name| name + "\0").collect()
}

/// A call that keeps its failure: every fault can be read, and stands at a pointer that its text begins with.
fn told(status: i32) -> i32 {
    let count = deck_last_error_count();
    assert_eq!(count == 0, status == DECK_OK, "status {status} with {count} faults");
    for index in (0..count).take(3) {
        let text = last(|buf, cap, needed| unsafe { deck_last_error_at(index, buf, cap, needed) });
        let pointer = last(|buf, cap, needed| unsafe { deck_last_error_pointer(index, buf, cap, needed) });
        assert!(text.starts_with(&pointer) && !text.is_empty(), "{text}");
        assert!(status != DECK_PANIC, "{text}");
    }
    status
}

fn last(write: impl Fn(*mut c_char, usize, *mut usize) -> i32) -> String {
    let mut needed = 0;
    assert_eq!(write(ptr::null_mut(), 0, &raw mut needed), DECK_SHORT_BUFFER);
    let mut buf = vec![0_u8; needed];
    assert_eq!(write(buf.as_mut_ptr().cast(), needed, &raw mut needed), DECK_OK);
    assert_eq!(buf.pop(), Some(0));
    String::from_utf8(buf).unwrap()
}

/// What holds of calls by the shape of their arguments.
impl Case {
    /// A call that writes a text: `needed` tells its size, and nothing else is touched where it fails.
    fn write<U: Unit>(&self, call: impl Fn(*mut U, usize, *mut usize) -> i32) -> i32 {
        // A size that cannot be is refused before anything is written; there is nothing behind it.
        let room = if self.cap > isize::MAX.unsigned_abs() / 2 { 0 } else { self.cap };
        let (mut buf, mut needed) = (vec![U::FILL; room + 4], usize::MAX);
        let start = if self.nulls.has(Nulls::BUFFER) { ptr::null_mut() } else { buf.as_mut_ptr() };
        let size = if self.nulls.has(Nulls::OUT) { ptr::null_mut() } else { &raw mut needed };
        let status = call(start, self.cap, size);
        match status {
            DECK_OK => {
                assert!(needed <= room && buf[needed - 1] == U::NUL);
                assert!(untouched(&buf[needed..]));
            }
            DECK_SHORT_BUFFER => assert!(needed > self.cap && untouched(&buf)),
            _ => assert!(needed == usize::MAX && untouched(&buf), "status {status} has written"),
        }
        status
    }

    fn write_at<U: Unit>(&self, function: WriteAt<U>) -> i32 {
        self.write(|buf, cap, needed| unsafe { function(self.index, buf, cap, needed) })
    }

    fn write_of<U: Unit>(&self, plan: *const DeckPlan, function: WriteOf<U>) -> i32 {
        let plan = self.handle(plan);
        self.write(|buf, cap, needed| unsafe { function(plan, buf, cap, needed) })
    }

    fn find(&self, plan: *const DeckPlan, function: Find) -> i32 {
        let (plan, text) = (self.handle(plan), self.ended().text::<c_char>());
        self.write(|buf, cap, needed| unsafe { function(plan, text.at(), buf, cap, needed) })
    }

    fn find16(&self, plan: *const DeckPlan, function: Find16) -> i32 {
        let (plan, text) = (self.handle(plan), self.text::<u16>());
        self.write(|buf, cap, needed| unsafe { function(plan, text.at(), text.len(), buf, cap, needed) })
    }

    /// A call that fills one place.
    fn read<U: Unit, T: Copy + PartialEq>(
        &self,
        plan: *const DeckPlan,
        before: T,
        call: impl Fn(*const DeckPlan, *const U, i64, *mut T) -> i32,
    ) -> i32 {
        let mut value = before;
        let out = if self.nulls.has(Nulls::OUT) { ptr::null_mut() } else { &raw mut value };
        let status = self.pass(plan, |plan, at, len| call(plan, at, len, out));
        assert_eq!(status == DECK_OK, value != before, "status {status}");
        status
    }

    /// A call with a plan and a text. The twin in UTF-8 takes no count.
    fn pass<U: Unit>(&self, plan: *const DeckPlan, call: impl Fn(*const DeckPlan, *const U, i64) -> i32) -> i32 {
        let counted = if size_of::<U>() == 1 { self.ended() } else { self.clone() };
        let text = counted.text::<U>();
        call(self.handle(plan), text.at(), text.len())
    }

    fn handle(&self, plan: *const DeckPlan) -> *const DeckPlan {
        if self.nulls.has(Nulls::HANDLE) { ptr::null() } else { plan }
    }

    fn ended(&self) -> Case {
        Case { len: Len::ToNul, ..self.clone() }
    }

    /// A path in a folder that is not there. It is never cut, so that no file is ever made.
    fn nowhere<U: Unit>(&self) -> Case {
        let len = if matches!(self.len, Len::Part(_)) { Len::Exact } else { self.len };
        let folder = if self.raw { U::bytes(NOWHERE) } else { NOWHERE.as_bytes().to_vec() };
        Case { text: [folder, self.text.clone()].concat(), len, ..self.clone() }
    }
}
