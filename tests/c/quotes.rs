//! The quote as comma-separated values: from C the bytes that Rust writes, and the empty text where none is asked for.

use crate::calls::{JOB, Planned, Text8, Text16, utf16};
use crate::example::jobs;
use deck_core::quote::quote_csv;
use deck_ffi::{DECK_NULL_POINTER, DECK_OK, deck_plan_quote_csv, deck_plan_quote_csv_utf16};
use std::ptr;

fn csv(plan: &Planned) -> String {
    let narrow = Text8::ask(|buf, cap, needed| unsafe { deck_plan_quote_csv(plan.0, buf, cap, needed) });
    let wide = Text16::ask(|buf, cap, needed| unsafe { deck_plan_quote_csv_utf16(plan.0, buf, cap, needed) });
    assert_eq!((narrow.status, wide.status), (DECK_OK, DECK_OK));
    assert_eq!(utf16(&narrow.text), wide.units);
    narrow.text
}

#[test]
fn a_quote_from_c_is_rust_s_byte_for_byte() {
    let mut quoted = 0;
    for (path, plan) in &jobs() {
        let expected = plan.quote.as_ref().map(quote_csv).unwrap_or_default();
        quoted += usize::from(!expected.is_empty());
        assert_eq!(csv(&Planned::new(&plan.job.to_json()).unwrap()), expected, "{path}");
    }
    assert!(quoted > 0, "no demo job asks for a quote");
    assert_eq!(csv(&Planned::new(JOB).unwrap()), "");
    let (mut needed, none) = (0, ptr::null());
    let status = unsafe { deck_plan_quote_csv(none, ptr::null_mut(), 0, &raw mut needed) };
    assert_eq!((status, needed), (DECK_NULL_POINTER, 0));
}
