//! The answer of a call whose buffer was too short, kept for the thread's next call of the same: who asks for the size
//! first has the work done once.

use crate::failure::{Failure, Outcome};
use crate::status::DECK_SHORT_BUFFER;
use crate::text::{self, Buffer, Unit};
use std::cell::RefCell;

/// What was asked of which function, and what came of it.
#[derive(Debug)]
struct Kept {
    function: &'static str,
    request: String,
    answer: String,
}

thread_local! {
    static KEPT: RefCell<Option<Kept>> = const { RefCell::new(None) };
}

/// Reads a request in JSON, and writes the answer to it.
pub(crate) fn ask<U: Unit>(
    function: &'static str,
    work: impl FnOnce(&str) -> Result<String, Failure>,
    json: *const U,
    len: i64,
    buf: *mut U,
    cap: usize,
    needed: *mut usize,
) -> Outcome {
    let (out, request) = (Buffer::at(buf, cap, needed)?, text::read(json, len, "json")?);
    write(&out, function, request, work)
}

/// Writes the answer to a request. It is worked out where the thread did not just ask the same of the same function.
fn write<U: Unit>(
    out: &Buffer<U>,
    function: &'static str,
    request: String,
    work: impl FnOnce(&str) -> Result<String, Failure>,
) -> Outcome {
    let answer = match take(function, &request) {
        Some(answer) => answer,
        None => work(&request)?,
    };
    let written = out.write(&answer);
    if written.as_ref().is_err_and(|failure| failure.status() == DECK_SHORT_BUFFER) {
        keep(Kept { function, request, answer });
    }
    written
}

/// The kept answer, if it is that; nothing is kept after this.
fn take(function: &str, request: &str) -> Option<String> {
    let kept = KEPT.try_with(|kept| kept.try_borrow_mut().ok().and_then(|mut kept| kept.take())).ok()??;
    (kept.function == function && kept.request == request).then_some(kept.answer)
}

fn keep(kept: Kept) {
    // A thread that is ending keeps nothing.
    let _ = KEPT.try_with(|place| place.try_borrow_mut().map(|mut place| *place = Some(kept)));
}

#[cfg(test)]
mod tests {
    use super::write;
    use crate::status::DECK_SHORT_BUFFER;
    use crate::text::Buffer;

    #[test]
    fn the_same_request_is_worked_out_once() {
        let (mut buf, mut needed, mut worked) = ([0_u16; 8], 0, Vec::new());
        let mut ask = |function: &'static str, request: &str, cap: usize| {
            let out = Buffer::at(buf.as_mut_ptr(), cap, &raw mut needed).unwrap();
            write(&out, function, request.into(), |request| {
                worked.push(format!("{function} {request}"));
                Ok("saw".into())
            })
            .map_err(|failure| failure.status())
        };
        assert_eq!(ask("nest", "a", 0), Err(DECK_SHORT_BUFFER));
        assert_eq!(ask("nest", "a", 2), Err(DECK_SHORT_BUFFER));
        assert_eq!(ask("nest", "a", 4), Ok(()));
        assert_eq!(ask("nest", "a", 4), Ok(()), "what was fetched is not kept");
        assert_eq!(ask("nest", "a", 0), Err(DECK_SHORT_BUFFER));
        assert_eq!(ask("nest", "b", 0), Err(DECK_SHORT_BUFFER));
        assert_eq!(ask("fill", "b", 4), Ok(()));
        assert_eq!(worked, ["nest a", "nest a", "nest a", "nest b", "fill b"]);
    }
}
