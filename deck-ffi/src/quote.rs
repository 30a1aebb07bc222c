//! A plan's quote for spreadsheets.

use crate::failure::Outcome;
use crate::guard::guard;
use crate::handle;
use crate::plan::DeckPlan;
use crate::text::{Buffer, Unit};
use deck_core::quote;
use std::ffi::c_char;

/// Writes the plan's quote as comma-separated values (RFC 4180), the total in the last row; the empty text where the job
/// asks for no quote.
///
/// # Ownership
/// The plan stays the caller's, and so does all else that is handed in.
///
/// # Threads
/// Any; several may read one plan at once.
///
/// # Statuses
/// DECK_OK, DECK_NULL_POINTER, DECK_SHORT_BUFFER, DECK_BAD_SIZE, DECK_PANIC.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_plan_quote_csv(
    plan: *const DeckPlan,
    buf: *mut c_char,
    cap: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| quote_csv(plan, buf, cap, needed))
}

/// As deck_plan_quote_csv, in UTF-16.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_plan_quote_csv_utf16(
    plan: *const DeckPlan,
    buf: *mut u16,
    cap: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| quote_csv(plan, buf, cap, needed))
}

fn quote_csv<U: Unit>(plan: *const DeckPlan, buf: *mut U, cap: usize, needed: *mut usize) -> Outcome {
    let out = Buffer::at(buf, cap, needed)?;
    handle::lend(plan, "plan", |plan| out.write(&plan.plan().quote.as_ref().map(quote::quote_csv).unwrap_or_default()))
}
