//! The status numbers, written out, and a line on each.
//!
//! Those of the border are below 100. The others are the numbers of `deck_core::Kind`; a test holds the two lists together.

use crate::failure::{Failure, Outcome};
use crate::guard::look;
use crate::text::{Buffer, Unit};
use deck_core::Kind;
use std::ffi::c_char;

/// Done.
pub const DECK_OK: i32 = 0;
/// A pointer that is NULL where one is needed.
pub const DECK_NULL_POINTER: i32 = 1;
/// Text that is not UTF-8, or not UTF-16 in a function that ends in _utf16.
pub const DECK_NOT_TEXT: i32 = 2;
/// A buffer that is too short; `needed` says what the text takes.
pub const DECK_SHORT_BUFFER: i32 = 3;
/// A failure inside the library, which is a fault of ours.
pub const DECK_PANIC: i32 = 4;
/// A size of a text or a buffer that cannot be, or is beyond DECK_MAX_TEXT.
pub const DECK_BAD_SIZE: i32 = 5;
/// An error index that the last error does not have.
pub const DECK_NO_SUCH_ERROR: i32 = 6;
/// A status number that no function returns.
pub const DECK_NO_SUCH_STATUS: i32 = 7;
/// A length that cannot be read.
pub const DECK_LENGTH_UNREADABLE: i32 = 101;
/// A length in a unit that is not known.
pub const DECK_LENGTH_UNKNOWN_UNIT: i32 = 102;
/// A length with two units that do not belong together.
pub const DECK_LENGTH_TWO_UNITS: i32 = 103;
/// A length that is NaN or infinite.
pub const DECK_LENGTH_NOT_FINITE: i32 = 104;
/// A length beyond what a boat or a shop holds.
pub const DECK_LENGTH_TOO_LARGE: i32 = 105;
/// A length below zero where none can be.
pub const DECK_LENGTH_NEGATIVE: i32 = 106;
/// A length of zero where something must be left.
pub const DECK_LENGTH_ZERO: i32 = 107;
/// An amount of money that cannot be read.
pub const DECK_MONEY_UNREADABLE: i32 = 121;
/// An amount of money below zero.
pub const DECK_MONEY_NEGATIVE: i32 = 122;
/// Text that is not JSON.
pub const DECK_NOT_JSON: i32 = 201;
/// A field that the schema does not have.
pub const DECK_UNKNOWN_FIELD: i32 = 202;
/// A measurement that is required and not there.
pub const DECK_MISSING_FIELD: i32 = 203;
/// A value of the wrong type.
pub const DECK_WRONG_TYPE: i32 = 204;
/// A word that is not one of those a field accepts.
pub const DECK_UNKNOWN_WORD: i32 = 205;
/// A number outside what a field accepts.
pub const DECK_OUT_OF_RANGE: i32 = 206;
/// Two fields that exclude each other.
pub const DECK_CONFLICT: i32 = 207;
/// A schema number that this version does not read.
pub const DECK_SCHEMA_NUMBER: i32 = 208;
/// A list that must hold something.
pub const DECK_EMPTY_LIST: i32 = 209;
/// A name that is used twice.
pub const DECK_DUPLICATE_NAME: i32 = 210;
/// An outline that crosses or touches itself.
pub const DECK_OUTLINE_CROSSES_ITSELF: i32 = 301;
/// An outline with too few corners to enclose anything.
pub const DECK_OUTLINE_TOO_FEW_CORNERS: i32 = 302;
/// An arc whose radius cannot reach both of its ends.
pub const DECK_OUTLINE_ARC_TOO_SMALL: i32 = 303;
/// A corner or taper too large for the sides it joins.
pub const DECK_OUTLINE_CORNER_TOO_LARGE: i32 = 304;
/// A notch that does not fit the stern.
pub const DECK_OUTLINE_NOTCH_OUTSIDE: i32 = 305;
/// An outline that does not start at the bow and port reference edges.
pub const DECK_OUTLINE_DATUM: i32 = 306;
/// Old seams that are not in order, or not within the deck.
pub const DECK_PATCH_SEAMS: i32 = 311;
/// A damaged place that encloses nothing, or lies off the deck.
pub const DECK_PATCH_DAMAGE: i32 = 312;
/// A cross member that lies outside the deck.
pub const DECK_FRAME_MEMBER_OUTSIDE: i32 = 401;
/// Cross members that are not in order from the bow.
pub const DECK_FRAME_OUT_OF_ORDER: i32 = 402;
/// Cross members that overlap.
pub const DECK_FRAME_OVERLAP: i32 = 403;
/// A cross member whose port end is not to port of its starboard end.
pub const DECK_FRAME_ENDS_REVERSED: i32 = 404;
/// A regular spacing that does not go from the first to the last.
pub const DECK_FRAME_SPACING: i32 = 405;
/// Readings at a cross member's ends that are not both given, or further off than boards can follow.
pub const DECK_FRAME_SKEW: i32 = 406;
/// An opening that does not lie within the deck.
pub const DECK_OPENING_OUTSIDE: i32 = 501;
/// Two openings that overlap.
pub const DECK_OPENING_OVERLAP: i32 = 502;
/// An opening's corner radius that is too large for its sides.
pub const DECK_OPENING_CORNER_TOO_LARGE: i32 = 503;
/// A keep-clear zone that does not touch the deck.
pub const DECK_ZONE_OUTSIDE: i32 = 504;
/// An old hole that is in no member.
pub const DECK_OLD_HOLE_OUTSIDE: i32 = 505;
/// A slot that does not open to the edge that it names.
pub const DECK_OPENING_SLOT: i32 = 506;
/// A lid of which nothing is left, or that laps too far.
pub const DECK_LID_SIZE: i32 = 507;
/// A fitting whose sizes contradict each other.
pub const DECK_FITTING_SIZE: i32 = 508;
/// Prices given for some bought sheets and not for all.
pub const DECK_STOCK_PRICE_MISSING: i32 = 601;
/// A measured sheet that cannot be the nominal one.
pub const DECK_STOCK_MEASURED_SIZE: i32 = 602;
/// An edge trim or kerf that leaves nothing of a sheet.
pub const DECK_SAW_TRIM_TOO_LARGE: i32 = 603;
/// A fastener spacing that cannot be laid out.
pub const DECK_FASTENER_SPACING: i32 = 701;
/// A fastener whose sizes contradict each other.
pub const DECK_FASTENER_SIZE: i32 = 702;
/// Values given for some parts and not for all.
pub const DECK_NEST_VALUE_MISSING: i32 = 801;
/// A number of cutting stages that no saw has.
pub const DECK_NEST_STAGES: i32 = 802;
/// More of something than can be worked on.
pub const DECK_TOO_MANY: i32 = 803;
/// Waste inside a part that is not within it, or overlaps other waste.
pub const DECK_NEST_INSIDE: i32 = 805;
/// A drawing view that the plan does not have.
pub const DECK_UNKNOWN_VIEW: i32 = 901;
/// A file that cannot be written.
pub const DECK_CANNOT_WRITE: i32 = 902;
/// A file that cannot be read.
pub const DECK_CANNOT_READ: i32 = 903;
/// A JSON pointer that leads to nothing of that type.
pub const DECK_UNKNOWN_POINTER: i32 = 904;
/// A point that the readings do not hold in place.
pub const DECK_SURVEY_POINT_LOOSE: i32 = 1001;
/// A survey that does not say from where and which way it counts.
pub const DECK_SURVEY_DATUM: i32 = 1002;
/// A trace that cannot be placed or fitted.
pub const DECK_SURVEY_TRACE: i32 = 1003;
/// A name of a point that no reading has.
pub const DECK_SURVEY_POINT_UNKNOWN: i32 = 1004;
/// A reading whose points or parts contradict each other.
pub const DECK_SURVEY_READING: i32 = 1005;
/// Readings that no places of the points come near to.
pub const DECK_SURVEY_NOT_SOLVED: i32 = 1006;
/// Something that is taken from a survey which does not give it.
pub const DECK_SURVEY_WANTED: i32 = 1007;
/// A figure that cannot be taken exactly.
pub const DECK_FIGURE_UNREADABLE: i32 = 1101;
/// A low, a likely and a high figure that are not in order.
pub const DECK_THREE_POINT_ORDER: i32 = 1102;
/// A pit that is as deep as the wall is thick, or deeper.
pub const DECK_PIT_TOO_DEEP: i32 = 1103;

/// The border's own statuses with what their docs say.
const BORDER: [(i32, &str); 8] = [
    (DECK_OK, "Done."),
    (DECK_NULL_POINTER, "A pointer that is NULL where one is needed."),
    (DECK_NOT_TEXT, "Text that is not UTF-8, or not UTF-16 in a function that ends in _utf16."),
    (DECK_SHORT_BUFFER, "A buffer that is too short; `needed` says what the text takes."),
    (DECK_PANIC, "A failure inside the library, which is a fault of ours."),
    (DECK_BAD_SIZE, "A size of a text or a buffer that cannot be, or is beyond DECK_MAX_TEXT."),
    (DECK_NO_SUCH_ERROR, "An error index that the last error does not have."),
    (DECK_NO_SUCH_STATUS, "A status number that no function returns."),
];

/// What a status means, in a line.
///
/// # Ownership
/// All that is handed in stays the caller's.
///
/// # Threads
/// Any. The last error stays as it is.
///
/// # Statuses
/// DECK_OK, DECK_NULL_POINTER, DECK_SHORT_BUFFER, DECK_BAD_SIZE, DECK_NO_SUCH_STATUS, DECK_PANIC.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_status_text(status: i32, buf: *mut c_char, cap: usize, needed: *mut usize) -> i32 {
    look(|| text(status, buf, cap, needed))
}

/// As deck_status_text, in UTF-16.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_status_text_utf16(status: i32, buf: *mut u16, cap: usize, needed: *mut usize) -> i32 {
    look(|| text(status, buf, cap, needed))
}

fn text<U: Unit>(status: i32, buf: *mut U, cap: usize, needed: *mut usize) -> Outcome {
    let out = Buffer::at(buf, cap, needed)?;
    let border = BORDER.iter().find(|(code, _)| *code == status).map(|(_, text)| *text);
    let known = || Kind::ALL.iter().find(|kind| kind.code == status).map(|kind| kind.text);
    out.write(border.or_else(known).ok_or_else(|| Failure::no_such_status(status))?)
}
