//! Squaring a racked frame: which corner moves, how far, which diagonal to pull.
//!
//! ```text
//!   bow port ────────────── stern port        L
//!        │ ╲    d1      d2 ╱    │
//!      W │      ╲      ╱        │              skew s: how far one long side lies ahead of the other
//!   bow starboard ──────── stern starboard
//! ```

use super::equation::{Place, dot, minus, plus, size, times, turned, unit};
use super::network::{length, millimetres};
use crate::length::{Length, Notation};
use serde::{Deserialize, Serialize};

/// How far the frame is out of square, and what brings it back.
///
/// The port side stays where it is and the starboard side slides along it, as a frame of members does.
///
/// # Method
/// A parallelogram of sides L and W whose long sides lie s ahead of each other has the diagonals √((L ± s)² + h²), with
/// h² = W² − s²; so d1² − d2² = 4 L s exactly, and to first order the diagonals differ by 2 s L / D. Derived; the second is
/// the form in which the trade knows it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Squaring {
    /// Mean length of the two long sides.
    pub length: Length,
    /// Mean length of the two ends.
    pub width: Length,
    /// Bow port to stern starboard.
    pub diagonal_from_bow_port: Length,
    /// Bow starboard to stern port.
    pub diagonal_from_bow_starboard: Length,
    /// Both diagonals once the frame is square.
    pub diagonal_when_square: Length,
    /// How far the starboard side lies aft of square; below zero, forward.
    pub skew: Length,
    /// Standard deviation of the skew.
    pub skew_deviation: Length,
    /// The skew by the trade's rule of thumb, difference × D / 2L.
    pub skew_first_order: Length,
    /// Which diagonal is the longer one and is to be pulled, by its ends; none where they agree.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub pull: Option<[String; 2]>,
    /// By how much that diagonal becomes shorter.
    pub pull_by: Length,
    /// What a parallelogram with these sides and diagonals would leave: d1² + d2² less 2 (L² + W²), as a length in the
    /// diagonals. Far from zero, the frame is no parallelogram: opposite sides differ.
    pub closure: Length,
    /// What to do, in sentences.
    pub advice: String,
}

/// The corners' places and names: bow port, stern port, stern starboard, bow starboard.
pub(super) struct Corners<'a> {
    pub(super) places: [Place; 4],
    pub(super) names: [&'a str; 4],
}

/// The skew, in millimetres, and its slopes by the four corners.
pub(super) fn skew(places: &[Place; 4]) -> (f64, [Place; 4]) {
    // The slopes are taken numerically: the figure itself is only as good as the tape.
    const STEP: f64 = 1e-3;
    let value = skew_of(places);
    let mut slopes = [[0.0; 2]; 4];
    for (corner, slope) in slopes.iter_mut().enumerate() {
        for (axis, slope) in slope.iter_mut().enumerate() {
            let moved = |by: f64| {
                let mut places = *places;
                if let Some(part) = places.get_mut(corner).and_then(|place| place.get_mut(axis)) {
                    *part += by;
                }
                skew_of(&places)
            };
            *slope = (moved(STEP) - moved(-STEP)) / (2.0 * STEP);
        }
    }
    (value, slopes)
}

/// How far starboard lies aft of square: along the mean long side, the middle of starboard against that of port.
fn skew_of([bow_port, stern_port, stern_starboard, bow_starboard]: &[Place; 4]) -> f64 {
    let along = plus(minus(*stern_port, *bow_port), minus(*stern_starboard, *bow_starboard));
    let across = plus(minus(*bow_starboard, *bow_port), minus(*stern_starboard, *stern_port));
    unit(along).map_or(0.0, |u| dot(times(across, 0.5), u))
}

/// Below this many deviations a skew is no more than the tape's error.
const SEEN: f64 = 2.0;

pub(super) fn squaring(corners: &Corners<'_>, deviation: f64, notation: &Notation) -> Squaring {
    let [bow_port, stern_port, stern_starboard, bow_starboard] = corners.places;
    let between = |a: Place, b: Place| size(minus(b, a));
    let (port, starboard) = (between(bow_port, stern_port), between(bow_starboard, stern_starboard));
    let (bow, stern) = (between(bow_port, bow_starboard), between(stern_port, stern_starboard));
    let (long, wide) = (f64::midpoint(port, starboard), f64::midpoint(bow, stern));
    let (first, second) = (between(bow_port, stern_starboard), between(bow_starboard, stern_port));
    let (skew, _) = skew(&corners.places);
    let across = plus(minus(bow_starboard, bow_port), minus(stern_starboard, stern_port));
    let along = plus(minus(stern_port, bow_port), minus(stern_starboard, bow_starboard));
    let beam = unit(along).map_or(wide, |u| dot(times(across, 0.5), turned(u)).abs());
    // The members keep their length as the frame slides, so they come to lie square at their full width.
    let square = (long * long + wide * wide).sqrt();
    let longer = first.max(second);
    let [bp, sp, ss, bs] = corners.names;
    let pull = if first >= second { [bp, ss] } else { [bs, sp] };
    let is_racked = skew.abs() > SEEN * deviation;
    let closure = (first * first + second * second - 2.0 * (long * long + wide * wide)) / (2.0 * square);
    let mut squaring = Squaring {
        length: length(long),
        width: length(wide),
        diagonal_from_bow_port: length(first),
        diagonal_from_bow_starboard: length(second),
        diagonal_when_square: length(square),
        skew: length(skew),
        skew_deviation: length(deviation),
        skew_first_order: length((first - second) * square / (2.0 * long)),
        pull: is_racked.then(|| pull.map(ToOwned::to_owned)),
        pull_by: length(if is_racked { longer - square } else { 0.0 }),
        closure: length(closure),
        advice: String::new(),
    };
    squaring.advice = advice(&squaring, corners.names, beam, notation);
    squaring
}

fn advice(squaring: &Squaring, [_, _, ss, bs]: [&str; 4], beam: f64, notation: &Notation) -> String {
    let text = |length: Length| notation.figure(length);
    let Some([from, to]) = &squaring.pull else {
        return format!(
            "The frame is square as far as the tape can tell: its diagonals differ by {}, and its skew is {} give or take {}.",
            text((squaring.diagonal_from_bow_port - squaring.diagonal_from_bow_starboard).abs()),
            text(squaring.skew),
            text(squaring.skew_deviation)
        );
    };
    let way = if squaring.skew.is_negative() { "aft" } else { "forward" };
    format!(
        "The starboard side lies {} {} of square. Pull the diagonal from {from} to {to} shorter by {}, until both diagonals read \
         {}: {bs} and {ss} then slide {way} by {}, over a beam of {}.",
        text(squaring.skew.abs()),
        if squaring.skew.is_negative() { "forward" } else { "aft" },
        text(squaring.pull_by),
        text(squaring.diagonal_when_square),
        text(squaring.skew.abs()),
        text(length(beam)),
    )
}

/// The skew of a parallelogram from its sides and diagonals: exact, and to first order.
///
/// Above zero where the first diagonal is the longer one.
///
/// # Method
/// s = (d1² − d2²) / 4 L exactly, (d1 − d2) D / 2 L to first order with D = √(L² + W²); see [`Squaring`].
///
/// # Examples
/// A deck of 24 ft by 102 in whose diagonals differ by an eighth is a sixteenth out of square:
/// ```
/// use deck_core::{Length, survey::skew_of_diagonals};
/// let (length, width) = (Length::inches(288), Length::inches(102));
/// let (exact, rule) = skew_of_diagonals(length, width, "305.59 in".parse()?, "305.465 in".parse()?);
/// assert_eq!((exact.as_inches() * 1000.0).round(), 66.0);
/// assert_eq!((rule.as_inches() * 1000.0).round(), 66.0);
/// # Ok::<(), deck_core::Error>(())
/// ```
pub fn skew_of_diagonals(long: Length, width: Length, first: Length, second: Length) -> (Length, Length) {
    let [l, w, d1, d2] = [long, width, first, second].map(millimetres);
    if l <= 0.0 {
        return (Length::ZERO, Length::ZERO);
    }
    let exact = (d1 - d2) * (d1 + d2) / (4.0 * l);
    (length(exact), length((d1 - d2) * (l * l + w * w).sqrt() / (2.0 * l)))
}
