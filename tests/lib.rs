//! What several test targets share: boats counted in whole numbers, random ones, and a tape that measures what the
//! library returns. The tests themselves are in the folders beside this file, one target each.
//!
//! Nothing here asks the library how to compute: boats are written as job files, and measures are taken from corners,
//! centres and radii by formulas of their own.

#[path = "support/boat.rs"]
pub mod boat;
#[path = "support/measure.rs"]
pub mod measure;
#[path = "support/random.rs"]
pub mod random;

/// The README's Rust, as a test.
#[cfg(doctest)]
#[doc = include_str!("../README.md")]
pub struct Readme;
