//! One length, read and written.

use crate::failure::Failure;
use crate::guard::guard;
use crate::kept::ask;
use deck_core::job::LengthCall;
use std::ffi::c_char;

/// Reads a length as a job's are read, and writes it as a plan's are: reads a request in JSON, writes the answer in JSON.
///
/// The request is an object of length (a number in the unit, or a text such as 7' 10-1/2" or 2400 mm), fractions (16: the
/// finest fraction of an inch that is written), feet (whether 12 inches and more are written in feet and inches) and unit
/// ("in" where it is left out). Only length is required. The answer has length, a number in the unit, and text.
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
pub unsafe extern "C" fn deck_length(
    json: *const c_char,
    len: i64,
    buf: *mut c_char,
    cap: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| ask("length", length, json, len, buf, cap, needed))
}

/// As deck_length, in UTF-16.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_length_utf16(
    json: *const u16,
    len: i64,
    buf: *mut u16,
    cap: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| ask("length", length, json, len, buf, cap, needed))
}

fn length(request: &str) -> Result<String, Failure> {
    Ok(LengthCall::from_json(request)?.to_json())
}
