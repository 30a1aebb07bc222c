//! Pointers that the caller hands in: handles that are lent, and places that are filled.

use crate::failure::Failure;

/// A place of the caller's for one result, known not to be NULL.
#[derive(Debug)]
pub(crate) struct Slot<T>(*mut T);

impl<T> Slot<T> {
    /// Checked before the work starts, so that nothing is made that cannot be handed over.
    pub(crate) fn at(place: *mut T, argument: &str) -> Result<Slot<T>, Failure> {
        if place.is_null() { Err(Failure::null(argument)) } else { Ok(Slot(place)) }
    }

    /// Fills the place.
    pub(crate) fn put(&self, value: T) {
        // SAFETY: not NULL, and by the rules of the header it points at room for one T; nothing else is asked of it, as the
        // write is unaligned and does not drop what stood there.
        unsafe { self.0.write_unaligned(value) }
    }
}

/// Turns a value into a handle, which belongs to whom it is given.
pub(crate) fn give<T>(value: T) -> *mut T {
    Box::into_raw(Box::new(value))
}

/// Lends a handle for the length of a call.
pub(crate) fn lend<T, R>(
    handle: *const T,
    argument: &str,
    body: impl FnOnce(&T) -> Result<R, Failure>,
) -> Result<R, Failure> {
    // SAFETY: NULL gives no reference; else, by the rules of the header, it came from `give` for the same type and is not
    // freed during the call. It is only ever read, so that other references to it do no harm.
    let value = unsafe { handle.as_ref() }.ok_or_else(|| Failure::null(argument))?;
    body(value)
}

/// Takes a handle back and drops what it stands for; NULL stands for nothing.
pub(crate) fn free<T>(handle: *mut T) {
    if !handle.is_null() {
        // SAFETY: not NULL, so by the rules of the header it came from `give` for the same type, is freed once, and no other
        // thread reads it.
        drop(unsafe { Box::from_raw(handle) });
    }
}
