//! Traced edges: points along an old board's edge, read off a template, to lines and arcs.

mod circle;
mod join;
mod line;
mod pieces;
mod place;

pub(super) use join::Vertex;

use super::equation::Place;
use super::network::{length, millimetres, size_kind};
use crate::error::{Error, Fault, Kind};
use crate::length::Length;
use pieces::Piece;
use serde::{Deserialize, Serialize};

/// An edge traced point by point.
///
/// With neither `scale` nor `at`, the points are stations and offsets from the datum. A template has `at`, where two or more
/// named points lie on it, and, unless it is of true size, `scale` marks; its own coordinates may run any way.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
#[non_exhaustive]
pub struct Trace {
    /// What it is called, as in the outline.
    pub name: String,
    /// The points in order along the edge, in the template's own coordinates.
    pub points: Vec<(Length, Length)>,
    /// Marks of known distance, for the template's scale.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub scale: Vec<ScaleMark>,
    /// Where named points lie on the template: none, or two at least.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub at: Vec<TracePlace>,
    /// Whether the template was traced from below, or lies on its face.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub flipped: bool,
    /// How far a point may lie off its line or arc. Left out: twice the survey's error.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tolerance: Option<Length>,
}

/// Two marks on a template, and how far apart they are on the boat.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct ScaleMark {
    /// The one mark, on the template.
    pub from: (Length, Length),
    /// The other mark, on the template.
    pub to: (Length, Length),
    /// How far apart they are.
    pub is: Length,
}

/// A named point on a template.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct TracePlace {
    /// The point's name.
    pub point: String,
    /// Where it lies on the template.
    pub trace: (Length, Length),
}

/// A trace as lines and arcs.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct FittedTrace {
    /// Its name.
    pub name: String,
    /// Length on the boat of one on the template.
    pub scale: f64,
    /// How far the named points lie off those of the template, at most; none where there are none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub placed_within: Option<Length>,
    /// How far a point could lie off its line or arc.
    pub tolerance: Length,
    /// The lines and arcs, in order.
    pub pieces: Vec<TracePiece>,
    /// Where they meet: one fewer than there are pieces.
    pub joins: Vec<TraceJoin>,
    /// The largest residual of all.
    pub largest_residual: Length,
    #[serde(skip)]
    pub(super) vertices: Vec<Vertex>,
}

/// A line or an arc, fitted to a run of points.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct TracePiece {
    /// What it is.
    pub kind: PieceKind,
    /// The first and the last of its points, counted from 1.
    pub points: [usize; 2],
    /// Radius of an arc.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub radius: Option<Length>,
    /// Centre of an arc, aft of the origin.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub centre_x: Option<Length>,
    /// Centre of an arc, to starboard of the origin.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub centre_y: Option<Length>,
    /// Of each point, how far it lies off.
    pub residuals: Vec<Length>,
    /// The root of the mean of their squares.
    pub spread: Length,
}

/// A line or an arc.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum PieceKind {
    /// A straight line.
    Line,
    /// An arc of a circle.
    Arc,
}

/// Where two pieces meet.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct TraceJoin {
    /// How they meet.
    pub kind: JoinKind,
    /// How far aft of the origin.
    pub x: Length,
    /// How far to starboard of the origin.
    pub y: Length,
}

/// How two pieces meet.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum JoinKind {
    /// They cross there.
    Corner,
    /// They touch there.
    Tangent,
    /// They miss each other: the middle between their ends.
    Between,
}

impl Trace {
    /// An edge, by stations and offsets from the datum.
    pub fn new(name: impl Into<String>, points: Vec<(Length, Length)>) -> Trace {
        let (scale, at) = (Vec::new(), Vec::new());
        Trace { name: name.into(), points, scale, at, flipped: false, tolerance: None }
    }

    /// With scale marks.
    #[must_use]
    pub fn scale(mut self, scale: Vec<ScaleMark>) -> Trace {
        self.scale = scale;
        self
    }

    /// With named points on it.
    #[must_use]
    pub fn at(mut self, at: Vec<TracePlace>) -> Trace {
        self.at = at;
        self
    }

    /// Traced from below.
    #[must_use]
    pub fn flipped(mut self, flipped: bool) -> Trace {
        self.flipped = flipped;
        self
    }

    /// With another tolerance.
    #[must_use]
    pub fn tolerance(mut self, tolerance: Length) -> Trace {
        self.tolerance = Some(tolerance);
        self
    }
}

/// More points than this are a scan and no tracing; each run of them is fitted.
const MOST_POINTS: usize = 300;

/// Places a trace and finds its lines and arcs. Pointers are relative to the trace.
pub(super) fn fit(
    trace: &Trace,
    place_of: impl Fn(&str) -> Result<Place, Fault>,
    error: Length,
) -> Result<FittedTrace, Error> {
    let tolerance = trace.tolerance.unwrap_or(error * 2);
    if tolerance <= Length::ZERO {
        let message = format!("{tolerance} is no tolerance.");
        let fault = Fault::new(size_kind(tolerance), tolerance.to_string(), message, "More than zero is accepted.");
        return Err(fault.within("tolerance").into());
    }
    if !(2..=MOST_POINTS).contains(&trace.points.len()) {
        let message = format!("{} points are no trace.", trace.points.len());
        let accepted = format!("There are 2 to {MOST_POINTS}.");
        return Err(Fault::new(Kind::SurveyTrace, trace.points.len().to_string(), message, accepted)
            .within("points")
            .into());
    }
    let placed = place::place(trace, place_of)?;
    if let Some(again) = placed.points.windows(2).position(|pair| pair.first() == pair.last()) {
        let message = "Two points that follow each other are the same.";
        let fault = Fault::new(Kind::SurveyTrace, "", message, "Leave one of them out.");
        return Err(fault.within(again + 1).within("points").into());
    }
    let pieces = pieces::pieces(&placed.points, millimetres(tolerance));
    let joined = join::join(&pieces, &placed.points, millimetres(tolerance));
    let told: Vec<TracePiece> = pieces.iter().map(|piece| piece.told(&placed.points)).collect();
    let largest = told.iter().flat_map(|piece| &piece.residuals).map(|residual| residual.abs()).max();
    Ok(FittedTrace {
        name: trace.name.clone(),
        scale: super::result::rounded(placed.scale),
        placed_within: placed.within.map(length),
        tolerance,
        pieces: told,
        joins: joined.joins,
        largest_residual: largest.unwrap_or_default(),
        vertices: joined.vertices,
    })
}

impl Piece {
    fn told(&self, points: &[Place]) -> TracePiece {
        let own = points.get(self.from..=self.to).unwrap_or_default();
        let residuals: Vec<f64> = own.iter().map(|point| self.shape.off(*point)).collect();
        let mean = residuals.iter().map(|residual| residual * residual).sum::<f64>() / residuals.len().max(1) as f64;
        let circle = self.shape.circle();
        TracePiece {
            kind: if circle.is_some() { PieceKind::Arc } else { PieceKind::Line },
            points: [self.from + 1, self.to + 1],
            radius: circle.map(|circle| length(circle.radius)),
            centre_x: circle.map(|circle| length(circle.centre[0])),
            centre_y: circle.map(|circle| length(circle.centre[1])),
            residuals: residuals.into_iter().map(length).collect(),
            spread: length(mean.sqrt()),
        }
    }
}
