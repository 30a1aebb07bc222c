//! One call's arguments, sound or not.

use crate::units::Unit;
use serde_json::Value;
use std::ptr;

/// Steps of a search: enough to get into it, few enough for thousands of searches.
const STEPS: u64 = 2000;

/// Which pointers are NULL.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Nulls(pub(crate) u8);

impl Nulls {
    pub(crate) const TEXT: u8 = 1;
    pub(crate) const BUFFER: u8 = 2;
    pub(crate) const OUT: u8 = 4;
    /// The plan, or the function that looks on.
    pub(crate) const HANDLE: u8 = 8;

    pub(crate) fn has(self, bit: u8) -> bool {
        self.0 & bit != 0
    }
}

/// The count that is handed over with a text. None counts more than there is, which no callee could see.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Len {
    Exact,
    ToNul,
    /// Less than there is: so many per 256.
    Part(u8),
    /// A count that is refused.
    Refused(i64),
}

/// The arguments of a call.
#[derive(Clone, Debug)]
pub(crate) struct Case {
    pub(crate) text: Vec<u8>,
    /// Whether the bytes are code units as they are, or a text.
    pub(crate) raw: bool,
    pub(crate) len: Len,
    pub(crate) cap: usize,
    pub(crate) nulls: Nulls,
    /// For the functions with an index or a status.
    pub(crate) index: i32,
}

/// Counts that are none.
pub(crate) const REFUSED: [i64; 4] = [-2, i64::MIN, deck_ffi::DECK_MAX_TEXT + 1, i64::MAX];

/// Sizes of a buffer that cannot be.
pub(crate) const NO_SIZES: [usize; 2] = [usize::MAX, isize::MAX.unsigned_abs() + 1];

/// A text in memory, with a NUL behind it.
pub(crate) struct Text<U> {
    units: Vec<U>,
    len: i64,
    null: bool,
}

impl<U> Text<U> {
    pub(crate) fn at(&self) -> *const U {
        if self.null { ptr::null() } else { self.units.as_ptr() }
    }

    pub(crate) fn len(&self) -> i64 {
        self.len
    }
}

impl Case {
    pub(crate) fn text<U: Unit>(&self) -> Text<U> {
        let mut units = U::units(&self.text, self.raw);
        let count = i64::try_from(units.len()).unwrap();
        let len = match self.len {
            Len::Exact => count,
            Len::ToNul => -1,
            Len::Part(part) => count * i64::from(part) / 256,
            Len::Refused(len) => len,
        };
        // Exact counts go without a NUL, so that a checker of memory sees whoever reads on.
        if !matches!(self.len, Len::Exact) {
            units.push(U::NUL);
        }
        Text { units, len, null: self.nulls.has(Nulls::TEXT) }
    }

    /// The same request with few steps of search: one that may ask for any number of them may take any time.
    pub(crate) fn tamed(&self) -> Case {
        let mut case = self.clone();
        if let Ok(Value::Object(mut request)) = serde_json::from_slice(&self.text) {
            let quick = request.get("effort").is_some_and(|effort| {
                effort == "quick"
                    || effort.as_u64().map_or(!effort.is_string() && !effort.is_null(), |steps| steps <= STEPS)
            });
            if !quick {
                request.insert("effort".into(), STEPS.into());
                case.text = Value::Object(request).to_string().into_bytes();
            }
        }
        case
    }
}
