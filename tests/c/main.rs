//! The C border, from the caller's side: programs in C and C++ against the library as it is shipped, under a checker of
//! memory; and what no well-meant program would do.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, reason = "a test that cannot go on has failed")]
#![allow(unsafe_code, reason = "calls C functions as a program in C would")]

mod abi;
mod calls;
mod compile;
mod cpp;
mod declares;
mod drawings;
mod example;
mod header;
mod hundred_thousand;
mod install;
mod malformed;
mod programs;
mod quotes;
mod readme;
mod rubbish;
mod sanitised;
mod statuses;
mod threads;

// What holds of any call of any function; the fuzzer has it from the same files.
#[path = "../../deck-ffi/fuzz/case.rs"]
mod case;
#[path = "../../deck-ffi/fuzz/entries.rs"]
mod entries;
#[path = "../../deck-ffi/fuzz/units.rs"]
mod units;
