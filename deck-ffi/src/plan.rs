//! One call: plan a job. Then read the plan, whole or by JSON pointers.

use crate::failure::{Failure, Outcome};
use crate::guard::{guard, look};
use crate::handle::{self, Slot};
use crate::pointer::find_as;
use crate::text::{self, Buffer, Unit};
use deck_core::{Job, Plan};
use serde_json::Value;
use std::ffi::c_char;

/// A plan. Belongs to the caller until deck_plan_free; any number of threads may read it at once.
#[derive(Debug)]
pub struct DeckPlan {
    /// The plan itself, for drawings.
    plan: Plan,
    /// The plan's JSON, the same bytes as from every other language.
    json: String,
    /// The same, for pointers.
    value: Value,
}

/// Any thread may read a plan, and another may free it than made it.
const _: fn() = || {
    fn shared<T: Send + Sync>() {}
    shared::<DeckPlan>();
};

impl DeckPlan {
    fn new(plan: Plan) -> Result<DeckPlan, Failure> {
        // Not read back from the text: a deep cut tree is past what serde_json reads.
        // unreachable: a plan holds texts, finite numbers and lists; none of them fails to be written.
        let value = serde_json::to_value(&plan).map_err(|error| Failure::panic(&error.to_string()))?;
        Ok(DeckPlan { json: plan.to_json(), value, plan })
    }

    pub(crate) fn plan(&self) -> &Plan {
        &self.plan
    }
}

/// Plans a job: reads its JSON, and fills `plan` with a handle.
///
/// A job that can be read but not laid out is a plan too, with the reason at /no_layout.
///
/// # Ownership
/// The plan is the caller's, to be freed with deck_plan_free. `json` stays the caller's.
///
/// # Threads
/// Any.
///
/// # Statuses
/// DECK_OK, DECK_NULL_POINTER, DECK_NOT_TEXT, DECK_BAD_SIZE, DECK_PANIC, and those from 101 on: everything that is wrong with
/// the job is in the last error.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_plan_new(json: *const c_char, len: i64, plan: *mut *mut DeckPlan) -> i32 {
    guard(|| new(json, len, plan))
}

/// As deck_plan_new, in UTF-16.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_plan_new_utf16(json: *const u16, len: i64, plan: *mut *mut DeckPlan) -> i32 {
    guard(|| new(json, len, plan))
}

fn new<U: Unit>(json: *const U, len: i64, plan: *mut *mut DeckPlan) -> Outcome {
    let slot = Slot::at(plan, "plan")?;
    let job = Job::from_json(&text::read(json, len, "json")?)?;
    let made = DeckPlan::new(deck_core::plan(&job)?)?;
    slot.put(handle::give(made));
    Ok(())
}

/// Frees a plan; NULL is left alone.
///
/// # Ownership
/// The handle is nobody's after this. It must not be used, and not be freed again: no status tells of that, and anything
/// may come of it.
///
/// # Threads
/// Any, while no other uses the plan. The last error stays as it is.
///
/// # Statuses
/// DECK_OK, DECK_PANIC.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_plan_free(plan: *mut DeckPlan) -> i32 {
    look(|| {
        handle::free(plan);
        Ok(())
    })
}

/// Writes the plan's JSON: the same bytes as from Rust and Python.
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
pub unsafe extern "C" fn deck_plan_json(
    plan: *const DeckPlan,
    buf: *mut c_char,
    cap: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| json(plan, buf, cap, needed))
}

/// As deck_plan_json, in UTF-16.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_plan_json_utf16(
    plan: *const DeckPlan,
    buf: *mut u16,
    cap: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| json(plan, buf, cap, needed))
}

fn json<U: Unit>(plan: *const DeckPlan, buf: *mut U, cap: usize, needed: *mut usize) -> Outcome {
    handle::lend(plan, "plan", |plan| Buffer::at(buf, cap, needed)?.write(&plan.json))
}

/// Reads one number of the plan, by a JSON pointer (RFC 6901) that ends with a NUL, such as /deck/length.
///
/// Lengths are in the job's unit. True is 1 and false is 0.
///
/// # Ownership
/// The plan stays the caller's, and so does all else that is handed in.
///
/// # Threads
/// Any; several may read one plan at once.
///
/// # Statuses
/// DECK_OK, DECK_NULL_POINTER, DECK_NOT_TEXT, DECK_BAD_SIZE, DECK_PANIC, DECK_UNKNOWN_POINTER.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_plan_number(plan: *const DeckPlan, json_pointer: *const c_char, value: *mut f64) -> i32 {
    guard(|| number(plan, text::read_to_nul(json_pointer, "json_pointer"), value))
}

/// As deck_plan_number, in UTF-16.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_plan_number_utf16(
    plan: *const DeckPlan,
    json_pointer: *const u16,
    len: i64,
    value: *mut f64,
) -> i32 {
    guard(|| number(plan, text::read(json_pointer, len, "json_pointer"), value))
}

fn number(plan: *const DeckPlan, pointer: Result<String, Failure>, value: *mut f64) -> Outcome {
    let (pointer, slot) = (pointer?, Slot::at(value, "value")?);
    handle::lend(plan, "plan", |plan| {
        slot.put(find_as(&plan.value, &pointer, "a number", as_number)?);
        Ok(())
    })
}

fn as_number(value: &Value) -> Option<f64> {
    value.as_f64().or_else(|| value.as_bool().map(|yes| f64::from(u8::from(yes))))
}

/// Counts what is in a list or an object of the plan, by a JSON pointer that ends with a NUL, such as /takeoff/lines.
///
/// # Ownership
/// The plan stays the caller's, and so does all else that is handed in.
///
/// # Threads
/// Any; several may read one plan at once.
///
/// # Statuses
/// DECK_OK, DECK_NULL_POINTER, DECK_NOT_TEXT, DECK_BAD_SIZE, DECK_PANIC, DECK_UNKNOWN_POINTER.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_plan_count(plan: *const DeckPlan, json_pointer: *const c_char, count: *mut usize) -> i32 {
    guard(|| items(plan, text::read_to_nul(json_pointer, "json_pointer"), count))
}

/// As deck_plan_count, in UTF-16.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_plan_count_utf16(
    plan: *const DeckPlan,
    json_pointer: *const u16,
    len: i64,
    count: *mut usize,
) -> i32 {
    guard(|| items(plan, text::read(json_pointer, len, "json_pointer"), count))
}

fn items(plan: *const DeckPlan, pointer: Result<String, Failure>, count: *mut usize) -> Outcome {
    let (pointer, slot) = (pointer?, Slot::at(count, "count")?);
    handle::lend(plan, "plan", |plan| {
        slot.put(find_as(&plan.value, &pointer, "a list or an object", as_count)?);
        Ok(())
    })
}

fn as_count(value: &Value) -> Option<usize> {
    value.as_array().map(Vec::len).or_else(|| value.as_object().map(serde_json::Map::len))
}

/// Writes one text of the plan, by a JSON pointer that ends with a NUL, such as /takeoff/lines/0/description.
///
/// The length that a person reads stands beside each number as its name with _text, such as /deck/length_text.
///
/// # Ownership
/// The plan stays the caller's, and so does all else that is handed in.
///
/// # Threads
/// Any; several may read one plan at once.
///
/// # Statuses
/// DECK_OK, DECK_NULL_POINTER, DECK_NOT_TEXT, DECK_SHORT_BUFFER, DECK_BAD_SIZE, DECK_PANIC, DECK_UNKNOWN_POINTER.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_plan_text(
    plan: *const DeckPlan,
    json_pointer: *const c_char,
    buf: *mut c_char,
    cap: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| one_text(plan, text::read_to_nul(json_pointer, "json_pointer"), Buffer::at(buf, cap, needed)))
}

/// As deck_plan_text, in UTF-16.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_plan_text_utf16(
    plan: *const DeckPlan,
    json_pointer: *const u16,
    len: i64,
    buf: *mut u16,
    cap: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| one_text(plan, text::read(json_pointer, len, "json_pointer"), Buffer::at(buf, cap, needed)))
}

fn one_text<U: Unit>(
    plan: *const DeckPlan,
    pointer: Result<String, Failure>,
    out: Result<Buffer<U>, Failure>,
) -> Outcome {
    let (pointer, out) = (pointer?, out?);
    handle::lend(plan, "plan", |plan| out.write(find_as(&plan.value, &pointer, "a text", Value::as_str)?))
}
