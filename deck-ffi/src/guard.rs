//! The one guard around every body: no panic crosses the border, and each outcome becomes a status.

use crate::failure::{Failure, Outcome};
use crate::last_error;
use crate::status::DECK_OK;
use std::panic::{AssertUnwindSafe, catch_unwind};

/// Runs a body, keeps its failure as this thread's last error, and returns its status.
pub(crate) fn guard(body: impl FnOnce() -> Outcome) -> i32 {
    let failure = caught(body).err();
    last_error::replace(failure.as_ref());
    failure.map_or(DECK_OK, |failure| failure.status())
}

/// Runs a body that leaves the last error as it is.
pub(crate) fn look(body: impl FnOnce() -> Outcome) -> i32 {
    caught(body).err().map_or(DECK_OK, |failure| failure.status())
}

/// The panic hook is left alone: what it prints, and where, is the caller's to say.
fn caught(body: impl FnOnce() -> Outcome) -> Outcome {
    // Unwind-safe: plans do not change once they are made, outputs are written last, and the last error is replaced as a
    // whole. So a body that is broken off leaves nothing half done that a later call could see.
    catch_unwind(AssertUnwindSafe(body)).unwrap_or_else(|payload| Err(Failure::panic(&*payload)))
}

#[cfg(test)]
mod tests {
    use super::{guard, look};
    use crate::last_error;
    use crate::status::{DECK_OK, DECK_PANIC};

    #[test]
    fn a_panic_becomes_a_status_with_its_text() {
        assert_eq!(guard(|| panic!("the saw is {}", "blunt")), DECK_PANIC);
        assert!(last_error::first().ends_with("the saw is blunt."));
        assert_eq!(guard(|| Ok(())), DECK_OK);
        assert_eq!(last_error::first(), "");
    }

    #[test]
    fn a_look_leaves_the_last_error() {
        guard(|| panic!("first"));
        assert_eq!(look(|| panic!("second")), DECK_PANIC);
        assert!(last_error::first().ends_with("first."));
    }
}
