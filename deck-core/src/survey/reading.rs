//! What is measured: readings between named points.

use crate::length::Length;
use serde::{Deserialize, Serialize};

/// One reading of a tape, or something that the shop trusts, with its error.
///
/// Points are known by their names; a name that a reading mentions is a point. `error` is the standard deviation of the
/// reading; where it is left out, the survey's.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(tag = "kind", rename_all = "kebab-case", deny_unknown_fields)]
#[non_exhaustive]
pub enum Reading {
    /// The distance between two points: a side, a diagonal, a check.
    Distance {
        /// What the form or the message calls it; its number in the list where it is left out.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        name: Option<String>,
        /// The two points.
        between: [String; 2],
        /// What the tape read.
        reading: Length,
        /// Standard deviation of the reading.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        error: Option<Length>,
    },
    /// A point by its distances from two others.
    Tie {
        /// What the form or the message calls it; its number in the list where it is left out.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        name: Option<String>,
        /// The point.
        of: String,
        /// The two points from which it is measured.
        from: [String; 2],
        /// What the tape read from the one and from the other.
        readings: [Length; 2],
        /// On which side of the line between the two the point lies. Left out: to starboard of it, or aft.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        side: Option<Side>,
        /// Standard deviation of each reading.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        error: Option<Length>,
    },
    /// How far along a baseline a point lies.
    Station {
        /// What the form or the message calls it; its number in the list where it is left out.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        name: Option<String>,
        /// The point.
        of: String,
        /// The baseline, from its zero. Left out: the datum.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        along: Option<[String; 2]>,
        /// What the tape along the baseline read, square across to the point.
        reading: Length,
        /// Standard deviation of the reading.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        error: Option<Length>,
    },
    /// How far off a baseline a point lies, measured square to it.
    Offset {
        /// What the form or the message calls it; its number in the list where it is left out.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        name: Option<String>,
        /// The point.
        of: String,
        /// The baseline. Left out: the datum.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        along: Option<[String; 2]>,
        /// Where along the baseline it was measured, where that was read as well.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        station: Option<Length>,
        /// What the tape read: to starboard of a line fore and aft, or aft of a line athwart; below zero the other way.
        reading: Length,
        /// Standard deviation of each reading.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        error: Option<Length>,
    },
    /// Points on a straight line: those between the first and the last lie on the line through both.
    Straight {
        /// What the form or the message calls it; its number in the list where it is left out.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        name: Option<String>,
        /// The points, three at least.
        points: Vec<String>,
        /// How far a point may lie beside the line, as a standard deviation.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        error: Option<Length>,
    },
    /// A right angle that the shop trusts.
    Square {
        /// What the form or the message calls it; its number in the list where it is left out.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        name: Option<String>,
        /// The corner.
        at: String,
        /// The ends of its two legs.
        between: [String; 2],
        /// How far the end of the second leg may lie out of square, as a standard deviation.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        error: Option<Length>,
    },
}

/// A side of a line.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Side {
    /// To port of it.
    Port,
    /// To starboard of it.
    Starboard,
    /// Forward of it.
    Forward,
    /// Aft of it.
    Aft,
}

impl Side {
    /// How far towards this side a way goes.
    pub(super) fn measure(self, [x, y]: [f64; 2]) -> f64 {
        match self {
            Side::Port => -y,
            Side::Starboard => y,
            Side::Forward => -x,
            Side::Aft => x,
        }
    }
}

impl Reading {
    /// A distance between two points.
    pub fn distance(from: impl Into<String>, to: impl Into<String>, reading: Length) -> Reading {
        Reading::Distance { name: None, between: [from.into(), to.into()], reading, error: None }
    }

    /// A point by its distances from two others.
    pub fn tie(of: impl Into<String>, from: [&str; 2], readings: [Length; 2]) -> Reading {
        Reading::Tie { name: None, of: of.into(), from: from.map(Into::into), readings, side: None, error: None }
    }

    /// A station along the datum.
    pub fn station(of: impl Into<String>, reading: Length) -> Reading {
        Reading::Station { name: None, of: of.into(), along: None, reading, error: None }
    }

    /// An offset from the datum, at a station where that was read.
    pub fn offset(of: impl Into<String>, station: Option<Length>, reading: Length) -> Reading {
        Reading::Offset { name: None, of: of.into(), along: None, station, reading, error: None }
    }

    /// Points on a straight line.
    pub fn straight(points: &[&str]) -> Reading {
        Reading::Straight { name: None, points: points.iter().map(|&point| point.into()).collect(), error: None }
    }

    /// A right angle at a corner.
    pub fn square(at: impl Into<String>, between: [&str; 2]) -> Reading {
        Reading::Square { name: None, at: at.into(), between: between.map(Into::into), error: None }
    }

    /// The same with a standard deviation of its own.
    #[must_use]
    pub fn with_error(mut self, own: Length) -> Reading {
        *self.shared_mut().1 = Some(own);
        self
    }

    /// The same with a name.
    #[must_use]
    pub fn named(mut self, own: impl Into<String>) -> Reading {
        *self.shared_mut().0 = Some(own.into());
        self
    }

    /// Its name, where it has one.
    pub fn name(&self) -> Option<&str> {
        self.shared().0.as_deref()
    }

    /// Its own standard deviation, where it has one.
    pub fn error(&self) -> Option<Length> {
        *self.shared().1
    }

    fn shared(&self) -> (&Option<String>, &Option<Length>) {
        match self {
            Reading::Distance { name, error, .. }
            | Reading::Tie { name, error, .. }
            | Reading::Station { name, error, .. }
            | Reading::Offset { name, error, .. }
            | Reading::Straight { name, error, .. }
            | Reading::Square { name, error, .. } => (name, error),
        }
    }

    fn shared_mut(&mut self) -> (&mut Option<String>, &mut Option<Length>) {
        match self {
            Reading::Distance { name, error, .. }
            | Reading::Tie { name, error, .. }
            | Reading::Station { name, error, .. }
            | Reading::Offset { name, error, .. }
            | Reading::Straight { name, error, .. }
            | Reading::Square { name, error, .. } => (name, error),
        }
    }
}
