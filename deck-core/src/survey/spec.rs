//! A survey as it is asked for.

use super::boards::OldBoards;
use super::equation::Place;
use super::network::length;
use super::reading::Reading;
use super::trace::Trace;
use crate::length::Length;
use serde::{Deserialize, Serialize};

/// What was measured on a stripped frame.
///
/// The datum is a point, the origin, and a second one towards which `x` runs; `y` runs to starboard of it. On a boat they
/// are the port corners at bow and stern.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
#[non_exhaustive]
pub struct SurveySpec {
    /// The readings, in the order of the form.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub readings: Vec<Reading>,
    /// The origin, and the point towards which stations run. Left out: the first two of `corners`, or of `known`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub datum: Option<[String; 2]>,
    /// The corners of the frame, for squaring: bow port, stern port, stern starboard, bow starboard.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub corners: Option<[String; 4]>,
    /// Points whose places are known beforehand.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub known: Vec<Known>,
    /// Standard deviation of a tape reading. Left out: 1/16 in, common practice, no source.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub error: Option<Length>,
    /// Edges traced point by point.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub traces: Vec<Trace>,
    /// The old boards, held against the stations of the members.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub old_boards: Option<OldBoards>,
    /// The deck's outline: names of points and traces in order around it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub outline: Option<Vec<String>>,
    /// The cross members, from the bow aft: a point on each, or its port and its starboard end.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub members: Vec<SurveyMember>,
    /// Whether outline and members are told as they were measured, or as they will lie once the frame is square. Left out: as
    /// measured.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub lie: Option<Lie>,
}

/// A point whose place is known.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Known {
    /// Its name.
    pub point: String,
    /// How far aft of the origin it lies.
    pub x: Length,
    /// How far to starboard of the origin it lies.
    pub y: Length,
}

/// A cross member by the points that were measured on it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(untagged)]
pub enum SurveyMember {
    /// A point on it.
    Point(String),
    /// Its port and its starboard end; its station is the middle of theirs.
    Ends([String; 2]),
}

/// How a frame lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Lie {
    /// As it was measured.
    Measured,
    /// As it will lie once it is squared: starboard slides along port until the skew is gone.
    Squared,
}

/// A cross member in its place.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct MemberStation {
    /// Its point, or its two ends.
    pub points: Vec<String>,
    /// Its station.
    pub station: Length,
    /// How far its starboard end lies aft of its port end; none where one point was measured.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub out_of_square: Option<Length>,
}

impl SurveyMember {
    /// The names of its points.
    pub fn points(&self) -> Vec<&str> {
        match self {
            SurveyMember::Point(name) => vec![name],
            SurveyMember::Ends([port, starboard]) => vec![port, starboard],
        }
    }

    pub(super) fn is_pair(&self) -> bool {
        matches!(self, SurveyMember::Ends(_))
    }
}

impl MemberStation {
    /// A member from its points' places, with the zero of stations moved.
    pub(super) fn of(member: &SurveyMember, places: &[Place], moved: Length) -> MemberStation {
        let sum: f64 = places.iter().map(|place| place[0]).sum();
        let aslant = match places {
            [port, starboard] => Some(length(starboard[0] - port[0])),
            _ => None,
        };
        MemberStation {
            points: member.points().into_iter().map(ToOwned::to_owned).collect(),
            station: length(sum / places.len().max(1) as f64) - moved,
            out_of_square: aslant,
        }
    }
}

impl SurveySpec {
    /// Readings alone; their datum is still to be named.
    pub fn new(readings: Vec<Reading>) -> SurveySpec {
        SurveySpec { readings, ..SurveySpec::default() }
    }

    /// With a datum.
    #[must_use]
    pub fn datum(mut self, origin: impl Into<String>, towards: impl Into<String>) -> SurveySpec {
        self.datum = Some([origin.into(), towards.into()]);
        self
    }

    /// With the frame's corners: bow port, stern port, stern starboard, bow starboard.
    #[must_use]
    pub fn corners(mut self, corners: [&str; 4]) -> SurveySpec {
        self.corners = Some(corners.map(Into::into));
        self
    }

    /// With points whose places are known.
    #[must_use]
    pub fn known(mut self, known: Vec<Known>) -> SurveySpec {
        self.known = known;
        self
    }

    /// With another standard deviation of readings.
    #[must_use]
    pub fn error(mut self, error: Length) -> SurveySpec {
        self.error = Some(error);
        self
    }

    /// With traced edges.
    #[must_use]
    pub fn traces(mut self, traces: Vec<Trace>) -> SurveySpec {
        self.traces = traces;
        self
    }

    /// With the old boards.
    #[must_use]
    pub fn old_boards(mut self, boards: OldBoards) -> SurveySpec {
        self.old_boards = Some(boards);
        self
    }

    /// With the outline through points and traces.
    #[must_use]
    pub fn outline(mut self, names: &[&str]) -> SurveySpec {
        self.outline = Some(names.iter().map(|&name| name.into()).collect());
        self
    }

    /// With the cross members.
    #[must_use]
    pub fn members(mut self, members: Vec<SurveyMember>) -> SurveySpec {
        self.members = members;
        self
    }

    /// As it was measured, or squared.
    #[must_use]
    pub fn lie(mut self, lie: Lie) -> SurveySpec {
        self.lie = Some(lie);
        self
    }

    /// Nothing measured, as a constant.
    pub(crate) const fn nothing() -> SurveySpec {
        SurveySpec {
            readings: Vec::new(),
            datum: None,
            corners: None,
            known: Vec::new(),
            error: None,
            traces: Vec::new(),
            old_boards: None,
            outline: None,
            members: Vec::new(),
            lie: None,
        }
    }

    /// True where nothing was measured.
    pub fn is_empty(&self) -> bool {
        *self == SurveySpec::default()
    }

    /// The datum: as given, or as the corners or the known points have it.
    pub fn datum_points(&self) -> Option<[&str; 2]> {
        let corners = self.corners.as_ref().map(|[bow, stern, ..]| [bow.as_str(), stern.as_str()]);
        let known = match self.known.as_slice() {
            [one, other, ..] => Some([one.point.as_str(), other.point.as_str()]),
            _ => None,
        };
        self.datum.as_ref().map(|[origin, towards]| [origin.as_str(), towards.as_str()]).or(corners).or(known)
    }
}

impl Known {
    /// A point at a place.
    pub fn new(point: impl Into<String>, x: Length, y: Length) -> Known {
        Known { point: point.into(), x, y }
    }
}
