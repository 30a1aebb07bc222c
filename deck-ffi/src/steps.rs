//! The steps of a plan, each on its own: a request in, an answer out.

use crate::failure::Failure;
use crate::guard::guard;
use crate::kept::ask;
use deck_core::job::{FastenersCall, PanelsCall, SeamsCall, SurveyCall};
use std::ffi::c_char;

/// Finds where a deck splits into boards: reads a request in JSON, writes the answer in JSON.
///
/// The request is an object of frame, deck_length, sheet (or a list of them), outline, gap (0), bearing, keep_clear,
/// openings, fastening, best (1: how many layouts), end_tolerance, saw, shop and unit ("in" where it is left out). Only frame
/// and sheet are required, and deck_length where there is no outline, which is the job file's "deck". Everything else is
/// the job file's field of that name, with the job's defaults; those are also taken for a gap or a bearing of null.
///
/// The answer has layouts, best first and each as it stands in a plan; no_layout, the reason where there is none; and proven.
/// That there is no layout is no failure. Lengths in the answer are numbers in the request's unit, and beside them as the shop
/// writes them.
///
/// # Ownership
/// All that is handed in stays the caller's.
///
/// # Threads
/// Any.
///
/// # Statuses
/// DECK_OK, DECK_NULL_POINTER, DECK_NOT_TEXT, DECK_SHORT_BUFFER, DECK_BAD_SIZE, DECK_PANIC, and those from 101 on:
/// everything that is wrong with the request is in the last error.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_seams(
    json: *const c_char,
    len: i64,
    buf: *mut c_char,
    cap: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| ask("seams", seams, json, len, buf, cap, needed))
}

/// As deck_seams, in UTF-16.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_seams_utf16(
    json: *const u16,
    len: i64,
    buf: *mut u16,
    cap: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| ask("seams", seams, json, len, buf, cap, needed))
}

/// Cuts the boards in their true shape: reads a request in JSON, writes the answer in JSON.
///
/// The request is an object of outline (the job file's "deck"), seams, gap (0), finish, openings, thickness, shop and unit.
/// Only outline and seams are required. Seams are the answer of deck_seams as it is, of which the first layout is taken; or
/// a layout; or a list of stations at which boards end, with gap aft of each. Without a thickness no panel has a weight.
///
/// The answer is a list of panels, each as it stands in a plan.
///
/// # Ownership
/// All that is handed in stays the caller's.
///
/// # Threads
/// Any.
///
/// # Statuses
/// As deck_seams. An answer of deck_seams without a layout gives DECK_EMPTY_LIST.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_panels(
    json: *const c_char,
    len: i64,
    buf: *mut c_char,
    cap: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| ask("panels", panels, json, len, buf, cap, needed))
}

/// As deck_panels, in UTF-16.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_panels_utf16(
    json: *const u16,
    len: i64,
    buf: *mut u16,
    cap: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| ask("panels", panels, json, len, buf, cap, needed))
}

/// Places the fasteners: reads a request in JSON, writes the answer in JSON.
///
/// The request is an object of panels (the answer of deck_panels as it is), frame, outline, fastening, shop and unit. Only
/// panels and frame are required; the outline may be left out where all panels of the deck are given.
///
/// The answer has rows, count, edge_count and field_count, as they stand in a plan.
///
/// # Ownership
/// All that is handed in stays the caller's.
///
/// # Threads
/// Any.
///
/// # Statuses
/// As deck_seams.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_fasteners(
    json: *const c_char,
    len: i64,
    buf: *mut c_char,
    cap: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| ask("fasteners", fasteners, json, len, buf, cap, needed))
}

/// As deck_fasteners, in UTF-16.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_fasteners_utf16(
    json: *const u16,
    len: i64,
    buf: *mut u16,
    cap: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| ask("fasteners", fasteners, json, len, buf, cap, needed))
}

/// Finds where measured points lie, and which readings are wrong: reads a request in JSON, writes the answer in JSON.
///
/// The request is an object of readings, datum, corners, known, error, traces, old_boards, outline, members, lie, shop and unit
/// ("in" where it is left out): the fields of a job's "survey". Only readings is required, and datum where there are no corners.
///
/// The answer has points with their deviations, readings with residuals and reliability, blunders (readings that disagree with
/// the rest and were left out), squaring, traces as lines and arcs, old_boards, outline and members as a job takes them, and a
/// summary in sentences. That a reading is wrong is no failure.
///
/// # Ownership
/// All that is handed in stays the caller's.
///
/// # Threads
/// Any.
///
/// # Statuses
/// As deck_seams. Readings that do not hold a point in place give DECK_SURVEY_POINT_LOOSE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_survey(
    json: *const c_char,
    len: i64,
    buf: *mut c_char,
    cap: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| ask("survey", survey, json, len, buf, cap, needed))
}

/// As deck_survey, in UTF-16.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_survey_utf16(
    json: *const u16,
    len: i64,
    buf: *mut u16,
    cap: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| ask("survey", survey, json, len, buf, cap, needed))
}

fn seams(request: &str) -> Result<String, Failure> {
    Ok(format!("{:#}", SeamsCall::from_json(request)?.document()?))
}

fn panels(request: &str) -> Result<String, Failure> {
    Ok(format!("{:#}", PanelsCall::from_json(request)?.document()?))
}

fn survey(request: &str) -> Result<String, Failure> {
    Ok(format!("{:#}", SurveyCall::from_json(request)?.document()?))
}

fn fasteners(request: &str) -> Result<String, Failure> {
    Ok(format!("{:#}", FastenersCall::from_json(request)?.document()?))
}
