//! Text across the border, in and out, in code units of 8 bits (UTF-8) or of 16 (UTF-16).
//!
//! Each function with a text is written once over the [`Unit`] and has two C names.

use crate::failure::{Failure, Outcome};
use crate::handle::Slot;
use std::ffi::c_char;

/// The longest text that goes in, in code units without the NUL. The longest of job files has less than a tenth of it.
pub const DECK_MAX_TEXT: i64 = 16_777_216;

/// The count that says: up to the NUL.
const TO_NUL: i64 = -1;

/// What is accepted as the size of a text.
const SIZES: &str =
    "A count of code units from 0 to DECK_MAX_TEXT is, or -1 for a text that ends with a NUL within that.";

/// A code unit of an encoding.
pub(crate) trait Unit: Copy + PartialEq {
    /// What ends a text.
    const NUL: Self;
    /// The encoding's name.
    const ENCODING: &'static str;
    /// The text that the units spell, if they do.
    fn decode(units: &[Self]) -> Option<String>;
    /// The text's units, without the NUL.
    fn encode(text: &str) -> Vec<Self>;
}

/// `char` is signed on some machines and not on others; its byte is the same.
impl Unit for c_char {
    const NUL: c_char = 0;
    const ENCODING: &'static str = "UTF-8";

    fn decode(units: &[c_char]) -> Option<String> {
        String::from_utf8(units.iter().flat_map(|unit| unit.to_ne_bytes()).collect()).ok()
    }

    fn encode(text: &str) -> Vec<c_char> {
        text.bytes().map(|byte| c_char::from_ne_bytes([byte])).collect()
    }
}

impl Unit for u16 {
    const NUL: u16 = 0;
    const ENCODING: &'static str = "UTF-16";

    fn decode(units: &[u16]) -> Option<String> {
        String::from_utf16(units).ok()
    }

    fn encode(text: &str) -> Vec<u16> {
        text.encode_utf16().collect()
    }
}

/// Reads a text of the caller's: `len` units, or up to the NUL.
pub(crate) fn read<U: Unit>(start: *const U, len: i64, argument: &str) -> Result<String, Failure> {
    if start.is_null() {
        return Err(Failure::null(argument));
    }
    let units = match len {
        TO_NUL => up_to_nul(start),
        0..=DECK_MAX_TEXT => usize::try_from(len).ok().map(|len| counted(start, len)),
        _ => None,
    };
    let units = units.ok_or_else(|| Failure::bad_size(argument, SIZES))?;
    U::decode(&units).ok_or_else(|| Failure::not_text(argument, U::ENCODING))
}

/// Reads a text of the caller's that ends with a NUL.
pub(crate) fn read_to_nul<U: Unit>(start: *const U, argument: &str) -> Result<String, Failure> {
    read(start, TO_NUL, argument)
}

fn counted<U: Unit>(start: *const U, len: usize) -> Vec<U> {
    // SAFETY: not NULL (checked by `read`), and by the rules of the header `len` units stand there; none is read beyond
    // them, and each is read unaligned.
    (0..len).map(|index| unsafe { start.add(index).read_unaligned() }).collect()
}

/// None where no NUL stands within the longest text.
fn up_to_nul<U: Unit>(start: *const U) -> Option<Vec<U>> {
    let mut units = Vec::new();
    for index in 0..=usize::try_from(DECK_MAX_TEXT).ok()? {
        // SAFETY: not NULL (checked by `read`), and by the rules of the header a NUL stands at or after this unit: reading
        // stops at the first. Each is read unaligned.
        let unit = unsafe { start.add(index).read_unaligned() };
        if unit == U::NUL {
            return Some(units);
        }
        units.push(unit);
    }
    None
}

/// A buffer of the caller's, its pointers checked.
#[derive(Debug)]
pub(crate) struct Buffer<U> {
    start: *mut U,
    cap: usize,
    needed: Slot<usize>,
}

impl<U: Unit> Buffer<U> {
    /// Checked before the work starts.
    pub(crate) fn at(start: *mut U, cap: usize, needed: *mut usize) -> Result<Buffer<U>, Failure> {
        let needed = Slot::at(needed, "needed")?;
        if start.is_null() && cap > 0 {
            return Err(Failure::null("buf"));
        }
        // No object is larger; such a number is a negative one that lost its sign.
        if cap > isize::MAX.unsigned_abs() / size_of::<U>() {
            return Err(Failure::bad_size("buf", "A count of code units that memory can hold is."));
        }
        Ok(Buffer { start, cap, needed })
    }

    /// Tells the size, and writes the text with its NUL where it fits.
    pub(crate) fn write(&self, text: &str) -> Outcome {
        let mut units = U::encode(text);
        units.push(U::NUL);
        self.needed.put(units.len());
        if units.len() > self.cap {
            return Err(Failure::short_buffer(self.cap, units.len()));
        }
        for (index, unit) in units.into_iter().enumerate() {
            // SAFETY: there is room for `cap` units by the rules of the header, and `index` is less; as there is at least
            // the NUL to write, `cap` is not 0, so the start is not NULL (checked by `at`). Each is written unaligned.
            unsafe { self.start.add(index).write_unaligned(unit) }
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::{Buffer, DECK_MAX_TEXT, Unit, read};
    use crate::status::{DECK_BAD_SIZE, DECK_NOT_TEXT, DECK_NULL_POINTER, DECK_SHORT_BUFFER};
    use std::ffi::c_char;
    use std::ptr;

    const PRIMES: &str = "7\u{2032} 10-1/2\u{2033} \u{1f6e5}";

    fn comes_back<U: Unit>(count: usize) {
        let mut units = U::encode(PRIMES);
        assert_eq!(units.len(), count);
        assert_eq!(read(units.as_ptr(), 0, "text").unwrap(), "");
        assert_eq!(read(units.as_ptr(), i64::try_from(count).unwrap(), "text").unwrap(), PRIMES);
        units.push(U::NUL);
        assert_eq!(read(units.as_ptr(), -1, "text").unwrap(), PRIMES);

        let (mut written, mut needed) = (vec![U::NUL; count + 1], 0);
        let short = Buffer::at(written.as_mut_ptr(), count, &raw mut needed).unwrap().write(PRIMES);
        assert_eq!((short.unwrap_err().status(), needed), (DECK_SHORT_BUFFER, count + 1));
        assert!(written.iter().all(|unit| *unit == U::NUL));
        Buffer::at(written.as_mut_ptr(), count + 1, &raw mut needed).unwrap().write(PRIMES).unwrap();
        assert!(written == units);
    }

    #[test]
    fn text_comes_back_in_both_encodings() {
        comes_back::<c_char>(PRIMES.len());
        comes_back::<u16>(13);
    }

    #[test]
    fn what_is_not_text_is_refused() {
        let lone = [0xd800_u16, 0x41];
        assert_eq!(read(lone.as_ptr(), 2, "text").unwrap_err().status(), DECK_NOT_TEXT);
        let cut = &<c_char as Unit>::encode("\u{2032}")[..2];
        assert_eq!(read(cut.as_ptr(), 2, "text").unwrap_err().status(), DECK_NOT_TEXT);
        assert_eq!(read(ptr::null::<u16>(), 0, "text").unwrap_err().status(), DECK_NULL_POINTER);
    }

    #[test]
    fn a_size_that_cannot_be_is_refused_before_anything_is_read() {
        for len in [-2, i64::MIN, DECK_MAX_TEXT + 1, i64::MAX] {
            assert_eq!(read([0_u16].as_ptr(), len, "text").unwrap_err().status(), DECK_BAD_SIZE);
        }
        let mut needed = 0;
        let huge = Buffer::at([0_u16].as_mut_ptr(), usize::MAX, &raw mut needed);
        assert_eq!(huge.unwrap_err().status(), DECK_BAD_SIZE);
    }

    #[test]
    fn a_text_without_an_end_is_refused() {
        let endless = vec![0x41_u16; usize::try_from(DECK_MAX_TEXT).unwrap() + 1];
        assert_eq!(read(endless.as_ptr(), -1, "text").unwrap_err().status(), DECK_BAD_SIZE);
    }

    #[test]
    #[allow(clippy::cast_ptr_alignment, reason = "that is what is tried")]
    fn text_may_lie_at_an_odd_address() {
        let bytes: Vec<u8> = "odd".encode_utf16().flat_map(u16::to_ne_bytes).collect();
        // A vector of bytes may start anywhere: whatever its parity, one of these is odd.
        for offset in [0, 1] {
            let shifted = [&vec![0; offset][..], &bytes].concat();
            assert_eq!(read(shifted.as_ptr().wrapping_add(offset).cast::<u16>(), 3, "text").unwrap(), "odd");
        }
    }
}
