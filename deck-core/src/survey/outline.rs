//! From adjusted points and fitted traces to the corners of an outline.

use super::equation::{Place, minus, plus, size};
use super::network::length;
use super::trace::Vertex;
use crate::length::Length;
use crate::outline::{ArcSpec, Bulge, Corner};

/// Corners nearer than this to each other are one: the tape does not tell them apart.
const ONE_PLACE: f64 = 0.5;

/// One part of an outline on the way to its corners.
pub(super) enum Part<'a> {
    Point(Place),
    Trace(&'a [Vertex]),
}

/// The corners of the closed outline and how far it was moved so that its foremost point is at 0 and its port edge, too.
///
/// A trace whose end is nearer to what comes before it is taken the other way round. Places are rounded to the nanometre here,
/// once.
pub(super) fn corners(parts: &[Part<'_>]) -> (Vec<Corner>, (Length, Length)) {
    let mut chain: Vec<Vertex> = Vec::new();
    for part in parts {
        match part {
            Part::Point(place) => push(&mut chain, Vertex { place: *place, arc: None }),
            Part::Trace(vertices) => {
                let before = chain.last().map(|vertex| vertex.place);
                for vertex in oriented(vertices, before) {
                    push(&mut chain, vertex);
                }
            }
        }
    }
    while chain.len() > 1 && chain.first().zip(chain.last()).is_some_and(|(first, last)| near(first, last)) {
        chain.pop();
    }
    close(&chain)
}

fn near(one: &Vertex, other: &Vertex) -> bool {
    size(minus(one.place, other.place)) < ONE_PLACE
}

/// A corner at the place of the one before it goes on from there.
fn push(chain: &mut Vec<Vertex>, vertex: Vertex) {
    match chain.last_mut() {
        Some(last) if near(last, &vertex) && last.arc.is_none() => last.arc = vertex.arc,
        _ => chain.push(vertex),
    }
}

fn oriented(vertices: &[Vertex], before: Option<Place>) -> Vec<Vertex> {
    let ends = vertices.first().zip(vertices.last());
    let turn = before
        .zip(ends)
        .is_some_and(|(before, (first, last))| size(minus(last.place, before)) < size(minus(first.place, before)));
    if turn { reversed(vertices) } else { vertices.to_vec() }
}

fn reversed(vertices: &[Vertex]) -> Vec<Vertex> {
    let backwards = vertices.iter().rev();
    // The arc that led to a corner leads away from it.
    let arcs = vertices.iter().rev().skip(1).map(|vertex| vertex.arc).chain([None]);
    backwards
        .zip(arcs)
        .map(|(vertex, arc)| {
            let mut arc = arc;
            if let Some(sweep) = &mut arc {
                sweep.left = !sweep.left;
            }
            Vertex { place: vertex.place, arc }
        })
        .collect()
}

fn close(chain: &[Vertex]) -> (Vec<Corner>, (Length, Length)) {
    let next = || chain.iter().skip(1).chain(chain.first());
    let area: f64 = chain.iter().zip(next()).map(|(a, b)| a.place[0] * b.place[1] - b.place[0] * a.place[1]).sum();
    let mut corners: Vec<Corner> = chain
        .iter()
        .map(|vertex| Corner {
            x: length(vertex.place[0]),
            y: length(vertex.place[1]),
            arc: vertex.arc.map(|sweep| ArcSpec {
                radius: length(sweep.radius),
                bulge: if sweep.left == (area >= 0.0) { Bulge::Out } else { Bulge::In },
            }),
        })
        .collect();
    let least = foremost(&corners);
    for corner in &mut corners {
        (corner.x, corner.y) = (corner.x - least.0, corner.y - least.1);
    }
    (corners, least)
}

/// The least station and the least offset of the outline, arcs included.
fn foremost(corners: &[Corner]) -> (Length, Length) {
    let least = |of: fn(&Corner) -> Length| corners.iter().map(of).min().unwrap_or_default();
    crate::outline::corner_bounds(corners)
        .map_or_else(|| (least(|corner| corner.x), least(|corner| corner.y)), |bounds| (bounds.fore, bounds.port))
}

/// A map of places that slides starboard back to square: what lies at `beam` to starboard moves `skew` forward, and its beam
/// becomes that of the members.
#[derive(Debug, Clone, Copy)]
pub(super) struct Squared {
    pub(super) shear: f64,
    pub(super) stretch: f64,
}

impl Squared {
    pub(super) fn of(self, place: Place) -> Place {
        plus([place[0], 0.0], [-self.shear * place[1], place[1] * self.stretch])
    }
}
