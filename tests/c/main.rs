//! The C border, from the caller's side: programs in C and C++ against the library as it is shipped, under a checker of
//! memory; and what no well-meant program would do.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, reason = "a test that cannot go on has failed")]
#![allow(unsafe_code, reason = "calls C functions as a program in C would")]

mod calls;
mod compile;
mod drawings;
mod example;
mod header;
mod malformed;
mod programs;
mod quotes;
mod readme;
mod statuses;
mod threads;
