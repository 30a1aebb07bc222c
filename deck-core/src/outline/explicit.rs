//! An outline given corner by corner, of lines and arcs.

use super::Rim;
use crate::error::{Error, Fault, Faults, Kind};
use crate::geometry::{Arc, Path, Point, Side, Turn};
use crate::length::Length;
use serde::{Deserialize, Serialize};

/// A corner of an outline, and the side from it to the next one.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Corner {
    /// Station, aft of the bow reference edge.
    pub x: Length,
    /// Distance to starboard of the port edge.
    pub y: Length,
    /// The arc to the next corner; none: a straight line.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub arc: Option<ArcSpec>,
}

/// An arc of at most a half turn between two corners.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct ArcSpec {
    /// Its radius.
    pub radius: Length,
    /// Whether it bulges out of the deck or into it.
    pub bulge: Bulge,
}

/// The way an arc bulges.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Bulge {
    /// Away from the deck.
    Out,
    /// Into the deck.
    In,
}

/// The closed path through the corners; pointers of errors are relative to the list.
pub(super) fn path(corners: &[Corner]) -> Result<Path<Rim>, Error> {
    if corners.len() < 2 || (corners.len() == 2 && corners.iter().all(|corner| corner.arc.is_none())) {
        return Err(Fault::new(
            Kind::OutlineTooFewCorners,
            corners.len().to_string(),
            format!("{} corners enclose no deck.", corners.len()),
            "There are three corners at least, or two with an arc.",
        )
        .into());
    }
    // A bulge is out or in only once it is known which side the inside is on: the chords tell.
    let inside_left = signed_doubled_area(corners) >= 0;
    let mut faults = Faults::new();
    let mut sides = Vec::new();
    for (index, (corner, next)) in corners.iter().zip(corners.iter().skip(1).chain(corners.first())).enumerate() {
        let (from, to) = (Point::new(corner.x, corner.y), Point::new(next.x, next.y));
        let arc = corner.arc.map(|spec| {
            let turn = if (spec.bulge == Bulge::Out) == inside_left { Turn::Left } else { Turn::Right };
            Arc::through(from, to, spec.radius, turn).ok_or_else(|| too_small(from, to, spec.radius, index))
        });
        match arc.transpose() {
            Ok(arc) => sides.push(Side { from, arc, edge: Rim::Rim }),
            Err(fault) => faults.push(fault),
        }
        if from == to {
            faults.push(
                Fault::new(
                    Kind::OutlineTooFewCorners,
                    format!("x {}, y {}", corner.x, corner.y),
                    "Two corners that follow each other are the same.",
                    "Leave one of them out.",
                )
                .within(index),
            );
        }
    }
    faults.finish()?;
    Ok(Path::new(sides))
}

fn too_small(from: Point, to: Point, radius: Length, index: usize) -> Fault {
    let least = from.distance(to) / 2;
    Fault::new(
        Kind::OutlineArcTooSmall,
        radius.to_string(),
        format!("A radius of {radius} does not reach from this corner to the next."),
        format!("It is {least} at least."),
    )
    .within("radius")
    .within("arc")
    .within(index)
}

fn signed_doubled_area(corners: &[Corner]) -> i128 {
    let coordinate = |length: Length| i128::from(length.nanometres());
    corners
        .iter()
        .zip(corners.iter().skip(1).chain(corners.first()))
        .map(|(a, b)| coordinate(a.x) * coordinate(b.y) - coordinate(b.x) * coordinate(a.y))
        .sum()
}
