//! What a job may hold, and the number of this border.

use crate::failure::Outcome;
use crate::guard::guard;
use crate::text::{Buffer, Unit};
use std::ffi::c_char;

/// The number of the border that this header describes. It rises where a program built for an older one would break.
pub const DECK_ABI_VERSION: i32 = 1;

/// The number of the library's border, to be compared with DECK_ABI_VERSION. This is the number itself and not a status.
///
/// # Threads
/// Any. The last error stays as it is.
#[unsafe(no_mangle)]
pub extern "C" fn deck_abi_version() -> i32 {
    DECK_ABI_VERSION
}

/// Writes the JSON Schema (draft 2020-12) of a job.
///
/// # Ownership
/// All that is handed in stays the caller's.
///
/// # Threads
/// Any.
///
/// # Statuses
/// DECK_OK, DECK_NULL_POINTER, DECK_SHORT_BUFFER, DECK_BAD_SIZE, DECK_PANIC.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_job_schema(buf: *mut c_char, cap: usize, needed: *mut usize) -> i32 {
    guard(|| schema(buf, cap, needed))
}

/// As deck_job_schema, in UTF-16.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_job_schema_utf16(buf: *mut u16, cap: usize, needed: *mut usize) -> i32 {
    guard(|| schema(buf, cap, needed))
}

fn schema<U: Unit>(buf: *mut U, cap: usize, needed: *mut usize) -> Outcome {
    let out = Buffer::at(buf, cap, needed)?;
    out.write(&format!("{:#}", deck_core::job::schema()))
}
