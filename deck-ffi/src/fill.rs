//! One sheet's best filling: a request in, an answer out.

use crate::failure::{Failure, Outcome};
use crate::guard::guard;
use crate::kept::ask;
use crate::text::Unit;
use deck_core::job::FillCall;
use deck_core::nest::FillProgress;
use std::ffi::{c_char, c_void};
use std::ops::ControlFlow;

/// Is told how far the filling of a sheet has come; goes on where it returns 0, and stops at once with the best answer so
/// far where it returns anything else.
///
/// `user` is what the caller handed in. `done` of at most `of` steps are done; a search may end sooner. The best answer so
/// far is worth `value`; none is worth more than `bound`; `proven` is 1 once no better answer exists, 0 before. Where no
/// part has a value, both are areas in the square of the request's unit.
///
/// It is called in the thread of the call, each million steps, and at the end: at the same steps on every machine. It must
/// return: no exception and no longjmp may leave it.
pub type DeckFillProgress =
    Option<extern "C" fn(user: *mut c_void, done: f64, of: f64, value: f64, bound: f64, proven: i32) -> i32>;

/// Finds the most valuable set of parts that can be cut from one sheet: reads a request in JSON, writes the answer in JSON.
///
/// The request is an object of sheet, parts, kerf, trim, stages, first, keep, effort ("quick", "standard", "thorough", or
/// a number of steps) and unit ("in" where it is left out). Only sheet and parts are required. The count of a part may be
/// null: as many as fit. Values are given for all parts or for none; then a part is worth its area. Lengths in the answer
/// are numbers in the request's unit. The same request gives the same bytes as from Rust and Python.
///
/// An answer that the buffer was too short for is kept for the thread's next call: asked for the same, it is not worked out
/// again.
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
pub unsafe extern "C" fn deck_fill(
    json: *const c_char,
    len: i64,
    buf: *mut c_char,
    cap: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| ask("fill", fill, json, len, buf, cap, needed))
}

/// As deck_fill, in UTF-16.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_fill_utf16(
    json: *const u16,
    len: i64,
    buf: *mut u16,
    cap: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| ask("fill", fill, json, len, buf, cap, needed))
}

/// As deck_fill, while `progress` looks on and may stop it. A search that is stopped has an answer as well.
///
/// `progress` is not called where the answer was kept by the call before.
///
/// # Ownership
/// All that is handed in stays the caller's; `user` is handed on and not looked at.
///
/// # Threads
/// Any; `progress` is called in the same one, with `user` as it is.
///
/// # Statuses
/// As deck_fill.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_fill_watched(
    json: *const c_char,
    len: i64,
    buf: *mut c_char,
    cap: usize,
    needed: *mut usize,
    progress: DeckFillProgress,
    user: *mut c_void,
) -> i32 {
    guard(|| fill_watched(json, len, buf, cap, needed, progress, user))
}

/// As deck_fill_watched, in UTF-16.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_fill_watched_utf16(
    json: *const u16,
    len: i64,
    buf: *mut u16,
    cap: usize,
    needed: *mut usize,
    progress: DeckFillProgress,
    user: *mut c_void,
) -> i32 {
    guard(|| fill_watched(json, len, buf, cap, needed, progress, user))
}

fn fill(request: &str) -> Result<String, Failure> {
    let call = FillCall::from_json(request)?;
    Ok(call.fill()?.to_json(call.unit))
}

fn fill_watched<U: Unit>(
    json: *const U,
    len: i64,
    buf: *mut U,
    cap: usize,
    needed: *mut usize,
    progress: DeckFillProgress,
    user: *mut c_void,
) -> Outcome {
    let progress = progress.ok_or_else(|| Failure::null("progress"))?;
    let work = |request: &str| {
        let call = FillCall::from_json(request)?;
        let mut watch = |told: &FillProgress| {
            let (value, bound) = (told.value.number(call.unit), told.bound.number(call.unit));
            // Steps are counted far below 2^53.
            #[allow(clippy::cast_precision_loss)]
            let (done, of) = (told.done as f64, told.of as f64);
            match progress(user, done, of, value, bound, i32::from(told.proven)) {
                0 => ControlFlow::Continue(()),
                _ => ControlFlow::Break(()),
            }
        };
        Ok(call.fill_watched(&mut watch)?.to_json(call.unit))
    };
    ask("fill_watched", work, json, len, buf, cap, needed)
}
