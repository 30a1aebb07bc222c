//! Plans a new plywood deck for a pontoon boat, from C, C++, VBA, C#, or anything that can call C.
//!
//! A job is a text in JSON; a plan is a handle, read through buffers that belong to the caller. The functions that need no
//! job, such as deck_seams and deck_nest, read a request in JSON and write their answer in JSON. For C++17 there is deck.hpp
//! beside this, with plans that free themselves and exceptions.
//!
//! Installed by deck-ffi/install.sh, a program is built by `cc program.c $(pkg-config --cflags --libs deck)`.
//!
//! These rules hold for every function:
//!
//! - Every function returns a status: DECK_OK, or what went wrong. deck_last_error says it in words. Only
//!   deck_last_error_count and deck_abi_version return what their names say.
//! - Text goes in as a pointer and a count of code units, or -1 where it ends with a NUL. Where a function takes no count,
//!   the text ends with a NUL. Text is copied before the function returns; the caller keeps it. Text that is longer than
//!   DECK_MAX_TEXT, or is not what it should be (UTF-8, or UTF-16 in the functions that end in _utf16), is refused.
//! - Text comes out in a buffer of the caller's with room for `cap` code units. It ends with a NUL. `needed` receives the
//!   code units it takes, the NUL counted. A buffer that is too short, NULL with a `cap` of 0 for one, is left as it is,
//!   `needed` is set all the same, and the status is DECK_SHORT_BUFFER: ask once for the size, once for the text.
//! - Else nothing is written to outputs where the status is not DECK_OK. Set a handle to NULL before it is filled.
//! - NULL is refused with a status of its own, except where a handle is freed: freeing NULL does nothing.
//! - A deck_plan belongs to the caller from the call that fills it to deck_plan_free, and is freed once. A plan does not
//!   change: any number of threads may read it at once. None may read it while, or after, it is freed: a handle that is
//!   freed cannot be told from one that is not, so no status warns of it, and anything may come of it.
//! - The last error belongs to the thread: each call replaces its own thread's, a call that succeeds by none. Only
//!   deck_plan_free, deck_status_text, deck_abi_version and the functions of the last error leave it as it is.
//! - A failure inside the library is caught and returned as DECK_PANIC. No handle is harmed by it.
//! - A function that ends in _utf16 does what its namesake does, with code units of 16 bits, for VBA and C#. It takes a
//!   count with every text that goes in.
//! - Status numbers are fixed for good. Those below 100 are of this border; those from 101 on are about the job, and each
//!   fault has the JSON pointer of its field.

#![deny(unsafe_op_in_unsafe_fn)]
#![allow(
    unsafe_code,
    reason = "C names and C pointers are what this crate is for; unsafe blocks stand in handle.rs and text.rs only, and a \
              test holds them there"
)]
#![allow(clippy::doc_markdown, reason = "the docs are the header's, where a name is a name")]
#![allow(
    clippy::missing_safety_doc,
    reason = "one set of rules, at the head of this file and of the header, holds for every function"
)]

mod failure;
mod fill;
mod guard;
mod handle;
mod job;
mod kept;
mod last_error;
mod length;
mod nest;
mod plan;
mod plan_drawings;
mod pointer;
mod quote;
mod span;
mod status;
mod steps;
mod text;

pub use fill::*;
pub use job::*;
pub use last_error::*;
pub use length::*;
pub use nest::*;
pub use plan::*;
pub use plan_drawings::*;
pub use quote::*;
pub use span::*;
pub use status::*;
pub use steps::*;
pub use text::DECK_MAX_TEXT;
