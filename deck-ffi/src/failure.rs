//! Why a call failed: something at the border, or something about the job.

use crate::status::{
    DECK_BAD_SIZE, DECK_NO_SUCH_ERROR, DECK_NO_SUCH_STATUS, DECK_NOT_TEXT, DECK_NULL_POINTER, DECK_PANIC,
    DECK_SHORT_BUFFER,
};
use deck_core::Error;
use std::any::Any;

/// What a body at the border comes to.
pub(crate) type Outcome = Result<(), Failure>;

/// A call that failed.
#[derive(Debug)]
pub(crate) enum Failure {
    /// At the border: the status and a sentence.
    Border(i32, String),
    /// In the library: everything that is wrong.
    Core(Error),
}

impl Failure {
    pub(crate) fn null(argument: &str) -> Failure {
        Failure::Border(DECK_NULL_POINTER, format!("{argument} is NULL."))
    }

    pub(crate) fn not_text(argument: &str, encoding: &str) -> Failure {
        Failure::Border(DECK_NOT_TEXT, format!("{argument} is not {encoding}."))
    }

    pub(crate) fn bad_size(argument: &str, accepted: &str) -> Failure {
        Failure::Border(DECK_BAD_SIZE, format!("The size of {argument} is not one that is accepted. {accepted}"))
    }

    pub(crate) fn short_buffer(cap: usize, needed: usize) -> Failure {
        Failure::Border(
            DECK_SHORT_BUFFER,
            format!("The text takes {needed} code units; the buffer has room for {cap}."),
        )
    }

    pub(crate) fn no_such_error(index: i32, count: i32) -> Failure {
        Failure::Border(DECK_NO_SUCH_ERROR, format!("There is no error {index}: this thread has {count}, from 0 on."))
    }

    pub(crate) fn no_such_status(status: i32) -> Failure {
        Failure::Border(DECK_NO_SUCH_STATUS, format!("There is no status {status}."))
    }

    /// A panic carries a text where it was raised with one.
    pub(crate) fn panic(payload: &(dyn Any + Send)) -> Failure {
        let text = payload.downcast_ref::<String>().map(String::as_str);
        let text = text.or_else(|| payload.downcast_ref::<&str>().copied()).unwrap_or("no text");
        Failure::Border(DECK_PANIC, format!("A failure inside the library, which is a fault of ours: {text}."))
    }

    /// The status that the C function returns: the first fault's where there are several.
    pub(crate) fn status(&self) -> i32 {
        match self {
            Failure::Border(status, _) => *status,
            Failure::Core(error) => error.first().kind.code(),
        }
    }
}

impl From<Error> for Failure {
    fn from(error: Error) -> Failure {
        Failure::Core(error)
    }
}
