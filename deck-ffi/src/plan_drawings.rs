//! Puts a plan on paper: one view as SVG for a screen, all of them as one PDF for the shop.

use crate::failure::{Failure, Outcome};
use crate::guard::guard;
use crate::handle;
use crate::plan::DeckPlan;
use crate::text::{self, Buffer, Unit};
use deck_core::{Error, Fault, Kind, Plan, draw};
use serde_json::Value;
use std::ffi::c_char;

/// Writes the names of the plan's views as a JSON array of texts, in the order of the packet.
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
pub unsafe extern "C" fn deck_plan_views(
    plan: *const DeckPlan,
    buf: *mut c_char,
    cap: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| views(plan, buf, cap, needed))
}

/// As deck_plan_views, in UTF-16.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_plan_views_utf16(
    plan: *const DeckPlan,
    buf: *mut u16,
    cap: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| views(plan, buf, cap, needed))
}

fn views<U: Unit>(plan: *const DeckPlan, buf: *mut U, cap: usize, needed: *mut usize) -> Outcome {
    let out = Buffer::at(buf, cap, needed)?;
    handle::lend(plan, "plan", |plan| out.write(&Value::from(draw::views(plan.plan())).to_string()))
}

/// Writes one view as SVG, on the plan's own paper: the same bytes as from Rust.
///
/// `view` is a name from deck_plan_views that ends with a NUL, such as plan or saw-1. Each call draws anew, which takes some
/// milliseconds: a buffer with room enough at once, such as that of the view before, saves the call for the size.
///
/// # Ownership
/// The plan stays the caller's, and so does all else that is handed in.
///
/// # Threads
/// Any; several may read one plan at once.
///
/// # Statuses
/// DECK_OK, DECK_NULL_POINTER, DECK_NOT_TEXT, DECK_SHORT_BUFFER, DECK_BAD_SIZE, DECK_PANIC, DECK_UNKNOWN_VIEW: the last
/// error then tells which views there are.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_plan_svg(
    plan: *const DeckPlan,
    view: *const c_char,
    buf: *mut c_char,
    cap: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| svg(plan, text::read_to_nul(view, "view"), Buffer::at(buf, cap, needed)))
}

/// As deck_plan_svg, in UTF-16.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_plan_svg_utf16(
    plan: *const DeckPlan,
    view: *const u16,
    len: i64,
    buf: *mut u16,
    cap: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| svg(plan, text::read(view, len, "view"), Buffer::at(buf, cap, needed)))
}

fn svg<U: Unit>(plan: *const DeckPlan, view: Result<String, Failure>, out: Result<Buffer<U>, Failure>) -> Outcome {
    let (view, out) = (view?, out?);
    handle::lend(plan, "plan", |plan| out.write(&draw::svg(plan.plan(), &view)?))
}

/// Writes the job packet to a file: every view as a page of one PDF, on the plan's own paper.
///
/// `path` is UTF-8 on every system, and ends with a NUL. It starts from the working directory where it is not absolute.
/// The folder must be there. A file of that name is replaced; where the disk fills up meanwhile, part of the packet is
/// left.
///
/// # Ownership
/// The plan stays the caller's, and so does all else that is handed in.
///
/// # Threads
/// Any; several may read one plan at once, each writing a file of its own.
///
/// # Statuses
/// DECK_OK, DECK_NULL_POINTER, DECK_NOT_TEXT, DECK_BAD_SIZE, DECK_PANIC, DECK_CANNOT_WRITE: the last error then gives the
/// system's reason.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_plan_packet(plan: *const DeckPlan, path: *const c_char) -> i32 {
    guard(|| packet(plan, text::read_to_nul(path, "path")))
}

/// As deck_plan_packet, in UTF-16.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_plan_packet_utf16(plan: *const DeckPlan, path: *const u16, len: i64) -> i32 {
    guard(|| packet(plan, text::read(path, len, "path")))
}

fn packet(plan: *const DeckPlan, path: Result<String, Failure>) -> Outcome {
    let path = path?;
    handle::lend(plan, "plan", |plan| Ok(save(plan.plan(), &path)?))
}

/// The document is whole before the file is touched.
fn save(plan: &Plan, path: &str) -> Result<(), Error> {
    let document = draw::packet(plan, plan.basis.paper)?;
    std::fs::write(path, document).map_err(|error| {
        let message = format!("The packet cannot be written to \"{path}\": {error}.");
        Fault::new(Kind::CannotWrite, path, message, "The folder must be there, and the file one that may be written.")
            .into()
    })
}
