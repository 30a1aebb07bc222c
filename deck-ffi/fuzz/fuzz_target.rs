//! Any bytes to any function of the border: the first three choose the function, its sizes and what is NULL; the others
//! are the text.

#![no_main]

mod case;
mod entries;
mod units;

use case::{Case, Len, NO_SIZES, Nulls, REFUSED};
use deck_ffi::DeckPlan;
use entries::ENTRIES;
use std::ptr;
use std::sync::OnceLock;

libfuzzer_sys::fuzz_target!(|data: &[u8]| {
    let [entry, shape, size, text @ ..] = data else { return };
    let (_, call) = ENTRIES[usize::from(*entry) % ENTRIES.len()];
    call(&case(*shape, *size, text), plan());
});

fn case(shape: u8, size: u8, text: &[u8]) -> Case {
    let len = match shape >> 1 & 7 {
        0..=3 => Len::Exact,
        4 | 5 => Len::ToNul,
        6 => Len::Part(size),
        _ => Len::Refused(REFUSED[usize::from(size) % REFUSED.len()]),
    };
    let cap = match size {
        0..=253 => (1 << (size % 19)) - 1,
        _ => NO_SIZES[usize::from(size) % NO_SIZES.len()],
    };
    // Mostly none: a call with a NULL ends at once.
    let nulls = Nulls(if shape >> 4 == 15 { size & 15 } else { 0 });
    Case { text: text.to_vec(), raw: shape & 1 == 1, len, cap, nulls, index: i32::from(size) - 1 }
}

/// One plan that all calls read.
fn plan() -> *const DeckPlan {
    struct Shared(*const DeckPlan);
    // SAFETY: the header says that any thread may read a plan.
    unsafe impl Send for Shared {}
    unsafe impl Sync for Shared {}
    static PLAN: OnceLock<Shared> = OnceLock::new();
    PLAN.get_or_init(|| {
        let (job, mut plan) = (include_str!("../../examples/jobs/uneven-22.json"), ptr::null_mut());
        let len = i64::try_from(job.len()).unwrap();
        let status = unsafe { deck_ffi::deck_plan_new(job.as_ptr().cast(), len, &raw mut plan) };
        assert_eq!(status, deck_ffi::DECK_OK);
        Shared(plan)
    })
    .0
}
