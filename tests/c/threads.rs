//! Many threads at once, each with plans of its own and one that all read.

use crate::calls::{JOB, Planned, Text8, last_error};
use deck_ffi::{
    DECK_OK, DECK_UNKNOWN_FIELD, DECK_UNKNOWN_POINTER, DeckPlan, deck_last_error_count, deck_plan_json,
    deck_plan_number, deck_plan_svg,
};
use std::thread;

/// More than any machine that tests this has cores for, so that they are interrupted anywhere.
const THREADS: usize = 8;

/// Rounds of each thread.
const ROUNDS: usize = 12;

/// The border says that a plan may be read from any thread.
#[derive(Clone, Copy)]
struct Shared(*const DeckPlan);

// SAFETY: what the header promises of a plan, and this test tries.
unsafe impl Send for Shared {}

impl Shared {
    fn json(self) -> String {
        Text8::ask(|buf, cap, needed| unsafe { deck_plan_json(self.0, buf, cap, needed) }).text
    }

    fn plan_view(self) -> String {
        let view = c"plan".as_ptr();
        Text8::ask(|buf, cap, needed| unsafe { deck_plan_svg(self.0, view, buf, cap, needed) }).text
    }

    fn number(self, pointer: &str) -> (i32, f64) {
        let (pointer, mut value) = (format!("{pointer}\0"), f64::NAN);
        (unsafe { deck_plan_number(self.0, pointer.as_ptr().cast(), &raw mut value) }, value)
    }
}

/// A boat of the thread's own; its faults are the thread's own too.
fn one_round(shared: Shared, expected: &[String; 2], thread: usize, round: usize) {
    let beam = 40 + thread;
    let job = JOB.replace("\"beam\": 96", &format!("\"beam\": {beam}"));
    let own = Planned::new(&job).unwrap();
    let (status, value) = Shared(own.0).number("/deck/beam");
    assert!(status == DECK_OK && (value - f64::from(u32::try_from(beam).unwrap())).abs() < f64::EPSILON);
    assert_eq!(deck_last_error_count(), 0);

    let field = format!("beam_{thread}_{round}");
    assert_eq!(Planned::new(&JOB.replace("beam", &field)).err(), Some(DECK_UNKNOWN_FIELD));
    assert!(last_error().starts_with(&format!("/deck/{field}: ")), "{}", last_error());

    assert_eq!(&[shared.json(), shared.plan_view()], expected);
    assert_eq!(shared.number(&format!("/deck/{field}")).0, DECK_UNKNOWN_POINTER);
    assert!(last_error().contains(&field));
}

#[test]
fn threads_with_plans_of_their_own_and_one_in_common() {
    let common = Planned::new(JOB).unwrap();
    let shared = Shared(common.0);
    let expected = [shared.json(), shared.plan_view()];
    thread::scope(|scope| {
        for number in 0..THREADS {
            let expected = &expected;
            scope.spawn(move || (0..ROUNDS).for_each(|round| one_round(shared, expected, number, round)));
        }
    });
    assert_eq!(deck_last_error_count(), 0);
}
