//! Calls as a careful caller makes them: once for the size, once for the text.

use deck_ffi::{DECK_OK, DECK_SHORT_BUFFER, DeckPlan, deck_last_error, deck_plan_free, deck_plan_new};
use std::ffi::c_char;
use std::ptr;

/// The signature that all texts share, in UTF-8.
pub(crate) struct Text8 {
    pub(crate) status: i32,
    pub(crate) text: String,
}

impl Text8 {
    pub(crate) fn ask(call: impl Fn(*mut c_char, usize, *mut usize) -> i32) -> Text8 {
        let (status, bytes) = ask(call);
        let bytes = bytes.into_iter().flat_map(c_char::to_ne_bytes).collect();
        Text8 { status, text: String::from_utf8(bytes).unwrap() }
    }
}

/// The same in UTF-16.
pub(crate) struct Text16 {
    pub(crate) status: i32,
    pub(crate) units: Vec<u16>,
}

impl Text16 {
    pub(crate) fn ask(call: impl Fn(*mut u16, usize, *mut usize) -> i32) -> Text16 {
        let (status, units) = ask(call);
        Text16 { status, units }
    }
}

/// The text without its NUL; the size told first is the size told last.
fn ask<U: Copy + Default + PartialEq + std::fmt::Debug>(
    call: impl Fn(*mut U, usize, *mut usize) -> i32,
) -> (i32, Vec<U>) {
    let mut needed = usize::MAX;
    let status = call(ptr::null_mut(), 0, &raw mut needed);
    if status != DECK_SHORT_BUFFER {
        assert_eq!(needed, usize::MAX, "a failure has written to its output");
        return (status, Vec::new());
    }
    let mut units = vec![U::default(); needed];
    let mut again = 0;
    let status = call(units.as_mut_ptr(), needed, &raw mut again);
    assert_eq!((status, again), (DECK_OK, needed));
    assert_eq!(units.pop(), Some(U::default()), "no NUL at the end");
    (status, units)
}

pub(crate) fn utf16(text: &str) -> Vec<u16> {
    text.encode_utf16().collect()
}

/// A plan that frees itself.
pub(crate) struct Planned(pub(crate) *mut DeckPlan);

impl Planned {
    pub(crate) fn new(job: &str) -> Result<Planned, i32> {
        let mut plan = ptr::null_mut();
        let len = i64::try_from(job.len()).unwrap();
        let status = unsafe { deck_plan_new(job.as_ptr().cast(), len, &raw mut plan) };
        if status == DECK_OK { Ok(Planned(plan)) } else { Err(status) }
    }
}

impl Drop for Planned {
    fn drop(&mut self) {
        assert_eq!(unsafe { deck_plan_free(self.0) }, DECK_OK);
    }
}

/// The thread's last error, empty where there is none.
pub(crate) fn last_error() -> String {
    Text8::ask(|buf, cap, needed| unsafe { deck_last_error(buf, cap, needed) }).text
}

/// A boat that is planned at once.
pub(crate) const JOB: &str = r#"{
    "schema": 1, "name": "Sandpiper", "unit": "in",
    "deck": {"length": "20 ft", "beam": 96},
    "frame": {"measured_to": "centre", "flange": 2, "regular": {"first": 0, "last": 240, "spacing": 24}},
    "stock": [{"label": "3/4 ply", "length": 96, "width": 48, "thickness": "3/4"}],
    "gap": 0
}"#;
