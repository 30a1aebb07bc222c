//! Numbers that the solvers of beam and plate can work with.

use crate::error::{Error, Fault, Kind};

/// Numbers up to this, and down to its inverse, keep every product of the methods within what a float holds.
pub(super) const LARGEST: f64 = 1e15;

/// True for a size or a stiffness: a finite number above zero. NaN is none.
pub(super) fn is_size(value: f64) -> bool {
    (1.0 / LARGEST..=LARGEST).contains(&value)
}

/// Refuses what is no size or stiffness; `what` begins the message.
pub(super) fn size(value: f64, what: &str) -> Result<(), Error> {
    if is_size(value) {
        return Ok(());
    }
    Err(range(value, format!("{what} of {value} cannot be."), "Give a finite number above zero.").into())
}

/// A fault where a load's value cannot be worked with.
pub(super) fn no_load(value: f64) -> Option<Fault> {
    let message = || format!("A load of {value} cannot be worked with.");
    let fault = || range(value, message(), "Give a finite number, downward positive.").within("value");
    (!(-LARGEST..=LARGEST).contains(&value)).then(fault)
}

/// A number outside what is accepted.
pub(super) fn range(value: f64, message: String, accepted: &str) -> Fault {
    Fault::new(Kind::OutOfRange, value.to_string(), message, accepted)
}
