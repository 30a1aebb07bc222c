//! What a panel carries, a beam over several supports, a plate: a request in, an answer out.

use crate::failure::Failure;
use crate::guard::guard;
use crate::kept::ask;
use deck_core::job::{BeamCall, PlateCall, SpanLimitsCall};
use std::ffi::c_char;

/// The allowable uniform loads of a panel on equal spans: reads a request in JSON, writes the answer in JSON.
///
/// The request is an object of panel, spacing, axis ("across" or "along" the supports the strength axis), spans (1, 2, or 3
/// for three and more), support, clear_span, deflection (360), wet (false), duration (1), width and unit ("in" where it is
/// left out). Only the first four are required. A panel is {"series", "rating"} in the words of the published tables, the
/// user's own {"ei", "mr", "fs"}, sections, or plies. The answer has the loads in psf under deflection, bending and shear,
/// the one that is governing, and the source of each; or no_figure, with the reason. It is a figure for a person to judge,
/// and no load rating.
///
/// # Ownership
/// All that is handed in stays the caller's.
///
/// # Threads
/// Any.
///
/// # Statuses
/// DECK_OK, DECK_NULL_POINTER, DECK_NOT_TEXT, DECK_SHORT_BUFFER, DECK_BAD_SIZE, DECK_PANIC, and those from 101 on:
/// everything that is wrong with the request is in the last error.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_span_limits(
    json: *const c_char,
    len: i64,
    buf: *mut c_char,
    cap: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| ask("span_limits", span_limits, json, len, buf, cap, needed))
}

/// As deck_span_limits, in UTF-16.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_span_limits_utf16(
    json: *const u16,
    len: i64,
    buf: *mut u16,
    cap: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| ask("span_limits", span_limits, json, len, buf, cap, needed))
}

/// Reactions, moments, shears and deflections of a beam over several supports: reads a request in JSON, writes the answer
/// in JSON.
///
/// The request is an object of spans, loads, overhangs ([left, right]), stiffness (EI, 1 where it is left out), ends (two of
/// "simple" and "fixed") and unit (that of lengths written as texts). Only spans and loads are required. A load is
/// {"kind", "at", "size", "value"}: "uniform" is force per length, a "patch" is a force spread over size, a "point" has no
/// size; at is its middle, from the left tip. Any consistent units will do. Downward loads, sagging moments and downward
/// deflections are positive.
///
/// # Ownership
/// All that is handed in stays the caller's.
///
/// # Threads
/// Any.
///
/// # Statuses
/// As deck_span_limits.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_beam(
    json: *const c_char,
    len: i64,
    buf: *mut c_char,
    cap: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| ask("beam", beam, json, len, buf, cap, needed))
}

/// As deck_beam, in UTF-16.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_beam_utf16(
    json: *const u16,
    len: i64,
    buf: *mut u16,
    cap: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| ask("beam", beam, json, len, buf, cap, needed))
}

/// Deflections, moments and reactions of an orthotropic plate: reads a request in JSON, writes the answer in JSON.
///
/// The request is an object of length, width, dx, dy (bending rigidities, force times length), torsion (H = dx nu_y + 2 Dxy),
/// poisson ([nu_x, nu_y]), supports, loads, mesh (the largest side of an element) and unit (that of lengths written as
/// texts). Poisson, mesh and unit may be left out. A support is {"kind": "across", "x"} or {"kind": "along", "y"}, perhaps
/// with "between": [from, to] and "clamped": true, or {"kind": "point", "at": [x, y]}. A load is {"kind", "at": [x, y],
/// "size": [length, width], "value"}: "uniform" is force per area, a "patch" is a force spread over size, a "line" is force
/// per length, a "point" has no size; at is its middle. Any consistent units will do. Downward loads, sagging moments and
/// downward deflections are positive.
///
/// # Ownership
/// All that is handed in stays the caller's.
///
/// # Threads
/// Any.
///
/// # Statuses
/// As deck_span_limits.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_plate(
    json: *const c_char,
    len: i64,
    buf: *mut c_char,
    cap: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| ask("plate", plate, json, len, buf, cap, needed))
}

/// As deck_plate, in UTF-16.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn deck_plate_utf16(
    json: *const u16,
    len: i64,
    buf: *mut u16,
    cap: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| ask("plate", plate, json, len, buf, cap, needed))
}

fn span_limits(request: &str) -> Result<String, Failure> {
    let call = SpanLimitsCall::from_json(request)?;
    Ok(call.span_limits()?.to_json(call.unit))
}

fn beam(request: &str) -> Result<String, Failure> {
    Ok(BeamCall::from_json(request)?.beam()?.to_json())
}

fn plate(request: &str) -> Result<String, Failure> {
    Ok(PlateCall::from_json(request)?.plate()?.to_json())
}
