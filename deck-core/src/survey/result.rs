//! What a survey finds.

use super::boards::{BoardEvidence, OldBoards};
use super::spec::MemberStation;
use super::square::Squaring;
use super::trace::FittedTrace;
use crate::length::{Length, Notation};
use crate::outline::Corner;
use serde::{Deserialize, Serialize};

/// The places of the points, and how well the readings agree.
///
/// Numbers without a unit are rounded to six digits after the point.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Survey {
    /// The origin, and the point towards which stations run.
    pub datum: [String; 2],
    /// Standard deviation of readings that have none of their own.
    pub error: Length,
    /// Where that comes from; none where the user gave it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub error_source: Option<String>,
    /// The points, in the order in which the readings name them.
    pub points: Vec<SurveyPoint>,
    /// The readings in order; a tie, or an offset at a station, is two.
    pub readings: Vec<SurveyReading>,
    /// How many readings are more than the places need, once what is wrong is out.
    pub freedom: usize,
    /// Steps until the places were at rest.
    pub iterations: usize,
    /// Whether what is left agrees within the tape's error; none where nothing is left over to tell.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub test: Option<GlobalTest>,
    /// Readings that are wrong, or may be, and were left out.
    pub blunders: Vec<Blunder>,
    /// The largest residual of the tape's readings that were used; what is trusted has errors of its own.
    pub agreement: Length,
    /// Readings that no other checks: an error in them would not be seen.
    pub unchecked: Vec<String>,
    /// How far the frame is out of square, and what to pull.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub squaring: Option<Squaring>,
    /// Lines and arcs fitted to the traces.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub traces: Vec<FittedTrace>,
    /// The old boards held against the members.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub old_boards: Option<BoardEvidence>,
    /// The corners of the outline, as the job file takes them under `deck`.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub outline: Vec<Corner>,
    /// How far aft and to starboard of the origin the outline's own zero lies: its foremost point, and its port edge.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub outline_moved: Option<[Length; 2]>,
    /// The cross members, counted from the outline's zero.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub members: Vec<MemberStation>,
    /// The whole in sentences, what matters most first.
    pub summary: Vec<String>,
}

/// A point in its place.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct SurveyPoint {
    /// Its name.
    pub name: String,
    /// How far aft of the origin it lies.
    pub x: Length,
    /// How far to starboard of the origin it lies.
    pub y: Length,
    /// Standard deviation of `x`.
    pub x_deviation: Length,
    /// Standard deviation of `y`.
    pub y_deviation: Length,
    /// Covariance of the two over the product of their deviations.
    pub correlation: f64,
}

/// A reading against what the places make of it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct SurveyReading {
    /// Its name, or its number in the list; a letter follows where it is one of several.
    pub name: String,
    /// What it is, in words.
    pub what: String,
    /// The points that it names.
    pub points: Vec<String>,
    /// Which of the list it comes from, counted from 1.
    pub number: usize,
    /// What was read; none for what is trusted.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub reading: Option<Length>,
    /// Its standard deviation.
    pub error: Length,
    /// What the places make of it.
    pub adjusted: Length,
    /// Adjusted less read.
    pub residual: Length,
    /// The residual over its own deviation, with everything wrong left out; none where no other reading checks it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub standardised: Option<f64>,
    /// The part of an error in this reading that shows in its own residual: 0 where no other checks it, 1 where the others
    /// would do without it.
    pub redundancy: f64,
    /// The least error that is found four times in five; none where no other reading checks it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub least_blunder: Option<Length>,
    /// How far the farthest point would be moved by an error of that size that is not found.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub moves: Option<Length>,
    /// False where it was left out.
    pub used: bool,
}

/// Whether the readings agree as well as their errors say.
///
/// # Method
/// The sum of squared residuals over their errors against chi-square with as many degrees as there is redundancy. It fails
/// where such a sum arises less than once in twenty times by chance; that limit is this library's choice.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct GlobalTest {
    /// The sum.
    pub statistic: f64,
    /// The redundancy.
    pub freedom: usize,
    /// How likely a sum as large is by chance.
    pub probability: f64,
    /// True where it is not too unlikely.
    pub passes: bool,
}

/// A reading that disagrees with the rest.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Blunder {
    /// The reading that was left out.
    pub reading: String,
    /// Which of the list it is, counted from 1.
    pub number: usize,
    /// What was read less what it should have been.
    pub off: Length,
    /// Standard deviation of that.
    pub deviation: Length,
    /// What the tape should read there, as the other readings have it.
    pub expected: Length,
    /// False where others could be at fault as well, and the readings cannot tell which.
    pub told_apart: bool,
    /// The readings that could be at fault, the one left out first.
    pub suspects: Vec<BlunderSuspect>,
    /// What slip it looks like.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cause: Option<String>,
    /// What to measure to settle which of the suspects it is.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub settle: Option<String>,
    /// The whole in a sentence or two.
    pub message: String,
}

/// A reading that may be at fault.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct BlunderSuspect {
    /// The reading.
    pub reading: String,
    /// What was read less what it should have been, if it alone is at fault.
    pub off: Length,
    /// What slip it looks like.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cause: Option<String>,
}

impl Survey {
    /// Nothing but old boards, which are still to be held against the members.
    pub(crate) fn of_boards() -> Survey {
        Survey {
            datum: [String::new(), String::new()],
            error: super::TAPE_ERROR,
            error_source: None,
            points: Vec::new(),
            readings: Vec::new(),
            freedom: 0,
            iterations: 0,
            test: None,
            blunders: Vec::new(),
            agreement: Length::ZERO,
            unchecked: Vec::new(),
            squaring: None,
            traces: Vec::new(),
            old_boards: None,
            outline: Vec::new(),
            outline_moved: None,
            members: Vec::new(),
            summary: Vec::new(),
        }
    }

    /// Lays the old boards on the members; what does not fit joins the summary.
    pub(crate) fn hold_boards(&mut self, boards: &OldBoards, notation: &Notation) {
        let evidence = super::boards::evidence(boards, notation);
        self.summary.extend(evidence.findings.iter().map(|finding| finding.message.clone()));
        if evidence.findings.is_empty() {
            self.summary.push("The old boards fit the members.".into());
        }
        self.old_boards = Some(evidence);
    }

    /// The place of a point.
    pub fn point(&self, name: &str) -> Option<&SurveyPoint> {
        self.points.iter().find(|point| point.name == name)
    }

    /// A reading by its name.
    pub fn reading(&self, name: &str) -> Option<&SurveyReading> {
        self.readings.iter().find(|reading| reading.name == name)
    }

    /// A trace by its name.
    pub fn trace(&self, name: &str) -> Option<&FittedTrace> {
        self.traces.iter().find(|trace| trace.name == name)
    }
}

/// Rounded so that the last digits, in which machines differ, are not told.
pub(super) fn rounded(figure: f64) -> f64 {
    (figure * 1e6).round_ties_even() / 1e6 + 0.0
}
