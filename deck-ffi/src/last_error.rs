//! What went wrong in this thread's latest call: every fault, in words and with its place.
//!
//! A status is a number; the reason is here.

use crate::failure::{Failure, Outcome};
use crate::guard::look;
use crate::text::{Buffer, Unit};
use std::cell::RefCell;
use std::ffi::c_char;

/// One fault, as it is told.
#[derive(Debug, Clone)]
struct Entry {
    /// JSON pointer of the field; empty where it is about the call or the whole of the text.
    pointer: String,
    /// The pointer, what is wrong, and what is accepted.
    text: String,
}

thread_local! {
    static LAST: RefCell<Vec<Entry>> = const { RefCell::new(Vec::new()) };
}

/// Keeps a failure as the thread's last error, or that there is none.
pub(crate) fn replace(failure: Option<&Failure>) {
    let entries = failure.map(entries).unwrap_or_default();
    // A thread that is ending has no last error any more, and nobody to read it.
    let _ = LAST.try_with(|last| last.try_borrow_mut().map(|mut last| *last = entries));
}

fn entries(failure: &Failure) -> Vec<Entry> {
    match failure {
        Failure::Border(_, text) => vec![Entry { pointer: String::new(), text: text.clone() }],
        Failure::Core(error) => {
            error.faults().map(|fault| Entry { pointer: fault.pointer.clone(), text: fault.to_string() }).collect()
        }
    }
}

/// A copy, so that nothing is borrowed while the caller's buffers are written.
fn last() -> Vec<Entry> {
    LAST.try_with(|last| last.try_borrow().map(|last| last.clone()).unwrap_or_default()).unwrap_or_default()
}

fn count() -> i32 {
    i32::try_from(last().len()).unwrap_or(i32::MAX)
}

fn entry(index: i32) -> Result<Entry, Failure> {
    let found = usize::try_from(index).ok().and_then(|index| last().into_iter().nth(index));
    found.ok_or_else(|| Failure::no_such_error(index, count()))
}

/// The text of the first fault; empty where there is none.
pub(crate) fn first() -> String {
    entry(0).map(|entry| entry.text).unwrap_or_default()
}

/// Writes what is wrong, after the JSON pointer of the field: the first fault, where there are several.
///
/// It is empty where the thread's last call succeeded.
///
/// # Ownership
/// All that is handed in stays the caller's.
///
/// # Threads
/// Each thread sees its own. The last error stays as it is.
///
/// # Statuses
/// DECK_OK, DECK_NULL_POINTER, DECK_SHORT_BUFFER, DECK_BAD_SIZE, DECK_PANIC.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_last_error(buf: *mut c_char, cap: usize, needed: *mut usize) -> i32 {
    look(|| Buffer::at(buf, cap, needed)?.write(&first()))
}

/// As deck_last_error, in UTF-16.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_last_error_utf16(buf: *mut u16, cap: usize, needed: *mut usize) -> i32 {
    look(|| Buffer::at(buf, cap, needed)?.write(&first()))
}

/// How many faults the thread's last call found: 0 where it succeeded. This is the count itself and not a status.
///
/// # Threads
/// Each thread sees its own. The last error stays as it is.
#[unsafe(no_mangle)]
pub extern "C" fn deck_last_error_count() -> i32 {
    let mut found = 0;
    look(|| {
        found = count();
        Ok(())
    });
    found
}

/// Writes what deck_last_error writes, for the fault of that index, from 0 on. Faults of a job are in its own order.
///
/// # Ownership
/// All that is handed in stays the caller's.
///
/// # Threads
/// Each thread sees its own. The last error stays as it is.
///
/// # Statuses
/// DECK_OK, DECK_NULL_POINTER, DECK_SHORT_BUFFER, DECK_BAD_SIZE, DECK_NO_SUCH_ERROR, DECK_PANIC.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_last_error_at(index: i32, buf: *mut c_char, cap: usize, needed: *mut usize) -> i32 {
    look(|| text_at(index, buf, cap, needed))
}

/// As deck_last_error_at, in UTF-16.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_last_error_at_utf16(index: i32, buf: *mut u16, cap: usize, needed: *mut usize) -> i32 {
    look(|| text_at(index, buf, cap, needed))
}

fn text_at<U: Unit>(index: i32, buf: *mut U, cap: usize, needed: *mut usize) -> Outcome {
    Buffer::at(buf, cap, needed)?.write(&entry(index)?.text)
}

/// Writes the JSON pointer alone (RFC 6901) of the fault of that index, for a program that marks the field.
///
/// It is empty where the fault is about the whole of the text, or about the call.
///
/// # Ownership
/// All that is handed in stays the caller's.
///
/// # Threads
/// Each thread sees its own. The last error stays as it is.
///
/// # Statuses
/// DECK_OK, DECK_NULL_POINTER, DECK_SHORT_BUFFER, DECK_BAD_SIZE, DECK_NO_SUCH_ERROR, DECK_PANIC.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_last_error_pointer(index: i32, buf: *mut c_char, cap: usize, needed: *mut usize) -> i32 {
    look(|| pointer_at(index, buf, cap, needed))
}

/// As deck_last_error_pointer, in UTF-16.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_last_error_pointer_utf16(
    index: i32,
    buf: *mut u16,
    cap: usize,
    needed: *mut usize,
) -> i32 {
    look(|| pointer_at(index, buf, cap, needed))
}

fn pointer_at<U: Unit>(index: i32, buf: *mut U, cap: usize, needed: *mut usize) -> Outcome {
    Buffer::at(buf, cap, needed)?.write(&entry(index)?.pointer)
}
