//! Parts on sheets, without a boat: a request in, an answer out.

use crate::failure::{Failure, Outcome};
use crate::guard::guard;
use crate::kept::ask;
use crate::text::Unit;
use deck_core::job::NestCall;
use deck_core::nest::Progress;
use std::ffi::{c_char, c_void};
use std::ops::ControlFlow;

/// Is told how far a search has come; goes on where it returns 0, and stops at once with the best answer so far where it
/// returns anything else.
///
/// `user` is what the caller handed in. `done` of at most `of` steps are done; a search may end sooner. In the best answer
/// so far, parts of the area `unplaced` found no place, and the sheets cost `cost`; no answer that places as much costs less
/// than `bound`; `proven` is 1 once no better answer exists, 0 before. Areas are in the square of the request's unit; so are
/// costs where no sheet has a price.
///
/// It is called in the thread of the call, after the first answer, then each million steps, and at the end: at the same
/// steps on every machine. It must return: no exception and no longjmp may leave it.
pub type DeckProgress = Option<
    extern "C" fn(user: *mut c_void, done: f64, of: f64, unplaced: f64, cost: f64, bound: f64, proven: i32) -> i32,
>;

/// Lays parts out on sheets: reads a request in JSON, writes the answer in JSON.
///
/// The request is an object of parts, stock, kerf, trim, stages, first, keep, effort ("quick", "standard", "thorough", or
/// a number of steps) and unit ("in" where it is left out). Only parts and stock are required. A part that finds no place is
/// no error: it is listed in the answer under unplaced. Lengths in the answer are numbers in the request's unit. The same
/// request gives the same bytes as from Rust and Python.
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
pub unsafe extern "C" fn deck_nest(
    json: *const c_char,
    len: i64,
    buf: *mut c_char,
    cap: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| ask("nest", nest, json, len, buf, cap, needed))
}

/// As deck_nest, in UTF-16.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_nest_utf16(
    json: *const u16,
    len: i64,
    buf: *mut u16,
    cap: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| ask("nest", nest, json, len, buf, cap, needed))
}

/// As deck_nest, while `progress` looks on and may stop it. A search that is stopped has an answer as well.
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
/// As deck_nest.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_nest_watched(
    json: *const c_char,
    len: i64,
    buf: *mut c_char,
    cap: usize,
    needed: *mut usize,
    progress: DeckProgress,
    user: *mut c_void,
) -> i32 {
    guard(|| nest_watched(json, len, buf, cap, needed, progress, user))
}

/// As deck_nest_watched, in UTF-16.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_nest_watched_utf16(
    json: *const u16,
    len: i64,
    buf: *mut u16,
    cap: usize,
    needed: *mut usize,
    progress: DeckProgress,
    user: *mut c_void,
) -> i32 {
    guard(|| nest_watched(json, len, buf, cap, needed, progress, user))
}

fn nest(request: &str) -> Result<String, Failure> {
    let call = NestCall::from_json(request)?;
    Ok(call.nest()?.to_json(call.unit))
}

fn nest_watched<U: Unit>(
    json: *const U,
    len: i64,
    buf: *mut U,
    cap: usize,
    needed: *mut usize,
    progress: DeckProgress,
    user: *mut c_void,
) -> Outcome {
    let progress = progress.ok_or_else(|| Failure::null("progress"))?;
    let work = |request: &str| {
        let call = NestCall::from_json(request)?;
        let mut watch = |told: &Progress| {
            let (unplaced, cost, bound) =
                (told.unplaced.number(call.unit), told.cost.number(call.unit), told.bound.number(call.unit));
            // Steps are counted far below 2^53.
            #[allow(clippy::cast_precision_loss)]
            let (done, of) = (told.done as f64, told.of as f64);
            match progress(user, done, of, unplaced, cost, bound, i32::from(told.proven)) {
                0 => ControlFlow::Continue(()),
                _ => ControlFlow::Break(()),
            }
        };
        Ok(call.nest_watched(&mut watch)?.to_json(call.unit))
    };
    ask("nest_watched", work, json, len, buf, cap, needed)
}
