//! Splits traced points into as few lines and arcs as hold within a tolerance.
//!
//! # Method
//! Dynamic programming over where pieces end, as R. Bellman, On the approximation of curves by line segments using dynamic
//! programming (1961) did for lines. The cost is the count of parameters, two for a line and three for an arc, then the
//! sum of squares; every point of a piece lies within the tolerance.

use super::circle::{FitCircle, circle};
use super::line::{FitLine, line};
use crate::survey::equation::{Place, minus, size};

/// A line or a circle.
#[derive(Debug, Clone, Copy)]
pub(super) enum Shape {
    Line(FitLine),
    Circle(FitCircle),
}

impl Shape {
    /// How far off a point lies.
    pub(super) fn off(&self, place: Place) -> f64 {
        match self {
            Shape::Line(line) => line.beside(place),
            Shape::Circle(circle) => circle.outside(place),
        }
    }

    pub(super) fn foot(&self, place: Place) -> Place {
        match self {
            Shape::Line(line) => line.foot(place),
            Shape::Circle(circle) => circle.foot(place),
        }
    }

    pub(super) fn circle(&self) -> Option<FitCircle> {
        match self {
            Shape::Line(_) => None,
            Shape::Circle(circle) => Some(*circle),
        }
    }
}

/// A shape and the run of points that it was fitted to.
#[derive(Debug, Clone, Copy)]
pub(super) struct Piece {
    pub(super) shape: Shape,
    pub(super) from: usize,
    pub(super) to: usize,
    parameters: usize,
    squares: f64,
}

/// An arc is told from a line by four points at least.
const LEAST_ON_ARC: usize = 4;
/// A run that fails this many times in growing is not tried any longer.
const MOST_FAILURES: usize = 3;
/// An arc flatter than this, its chord by its radius, is a line as far as a saw goes.
const FLATTEST: f64 = 0.02;

pub(super) fn pieces(points: &[Place], tolerance: f64) -> Vec<Piece> {
    // Of each count of points, the cheapest way to cover so many, and the piece that ends it.
    let mut best: Vec<Option<(usize, f64, Option<Piece>)>> = vec![None; points.len() + 1];
    if let Some(start) = best.first_mut() {
        *start = Some((0, 0.0, None));
    }
    for from in 0..points.len() {
        let Some((parameters, squares, _)) = best.get(from).copied().flatten() else { continue };
        for piece in runs(points, from, tolerance) {
            let cost = (parameters + piece.parameters, squares + piece.squares);
            let Some(slot) = best.get_mut(piece.to + 1) else { continue };
            if slot.is_none_or(|(parameters, squares, _)| {
                cost.0 < parameters || (cost.0 == parameters && cost.1 < squares)
            }) {
                *slot = Some((cost.0, cost.1, Some(piece)));
            }
        }
    }
    let mut pieces = Vec::new();
    let mut end = points.len();
    while let Some((_, _, Some(piece))) = best.get(end).copied().flatten() {
        pieces.push(piece);
        end = piece.from;
    }
    pieces.reverse();
    pieces
}

/// Every piece that starts at a point.
fn runs(points: &[Place], from: usize, tolerance: f64) -> Vec<Piece> {
    let mut found = Vec::new();
    for (least, parameters) in [(2, 2), (LEAST_ON_ARC, 3)] {
        let mut failures = 0;
        // A last point by itself has no line; it takes one of the point before.
        for to in (from + least - 1)..points.len() {
            let own = points.get(from..=to).unwrap_or_default();
            let shape = if parameters == 2 { line(own).map(Shape::Line) } else { arc(own).map(Shape::Circle) };
            let fitting = shape.filter(|shape| own.iter().all(|point| shape.off(*point).abs() <= tolerance));
            let Some(shape) = fitting else {
                failures += 1;
                if failures == MOST_FAILURES {
                    break;
                }
                continue;
            };
            failures = 0;
            let squares = own.iter().map(|point| shape.off(*point).powi(2)).sum();
            found.push(Piece { shape, from, to, parameters, squares });
        }
    }
    if from + 1 == points.len() {
        found.extend(single(points, from));
    }
    found
}

fn single(points: &[Place], from: usize) -> Option<Piece> {
    let before = from.checked_sub(1)?;
    let shape = Shape::Line(line(points.get(before..=from)?)?);
    Some(Piece { shape, from, to: from, parameters: 2, squares: 0.0 })
}

fn arc(points: &[Place]) -> Option<FitCircle> {
    let chord = size(minus(*points.last()?, *points.first()?));
    let fitted = circle(points)?;
    (chord / fitted.radius > FLATTEST).then_some(fitted)
}
