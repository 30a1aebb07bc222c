//! From a template's own coordinates to places on the boat.

use super::Trace;
use crate::error::{Error, Fault, Kind};
use crate::length::Length;
use crate::survey::equation::{Place, dot, minus, plus, size, times, turned, unit};
use crate::survey::network::millimetres;

/// The points of a trace on the boat.
pub(super) struct Placed {
    pub(super) points: Vec<Place>,
    pub(super) scale: f64,
    /// How far off the named points lie, at most.
    pub(super) within: Option<f64>,
}

/// Places a trace.
///
/// # Method
/// The scale is the least-squares slope of the marks' distances. The turn and shift are those that bring the template's named
/// points nearest to the survey's, in closed form: P. Schönemann, A generalized solution of the orthogonal Procrustes problem
/// (1966), in the plane.
pub(super) fn place(trace: &Trace, place_of: impl Fn(&str) -> Result<Place, Fault>) -> Result<Placed, Error> {
    let scale = scale(trace)?;
    let own = |(x, y): (Length, Length)| {
        let [x, y] = [millimetres(x) * scale, millimetres(y) * scale];
        [x, if trace.flipped { -y } else { y }]
    };
    let points: Vec<Place> = trace.points.iter().copied().map(own).collect();
    if trace.at.is_empty() {
        if !trace.scale.is_empty() || trace.flipped {
            let accepted = "\"at\" names two points, and where each lies on the template.";
            let message = "A template is placed by points that the survey knows.";
            return Err(Fault::new(Kind::SurveyTrace, "", message, accepted).within("at").into());
        }
        return Ok(Placed { points, scale, within: None });
    }
    let mut pairs = Vec::new();
    for (index, at) in trace.at.iter().enumerate() {
        let known = place_of(&at.point).map_err(|fault| fault.within("point").within(index).within("at"))?;
        pairs.push((own(at.trace), known));
    }
    let turn = turn(&pairs).ok_or_else(|| {
        let message = "One place does not say how the template lies.";
        Fault::new(
            Kind::SurveyTrace,
            pairs.len().to_string(),
            message,
            "There are two at least, apart from each other.",
        )
        .within("at")
    })?;
    let within = pairs.iter().map(|(own, known)| size(minus(turn.of(*own), *known))).fold(0.0_f64, f64::max);
    Ok(Placed { points: points.into_iter().map(|point| turn.of(point)).collect(), scale, within: Some(within) })
}

fn scale(trace: &Trace) -> Result<f64, Error> {
    let (mut products, mut squares) = (0.0, 0.0);
    for (index, mark) in trace.scale.iter().enumerate() {
        let point = |(x, y): (Length, Length)| [millimetres(x), millimetres(y)];
        let drawn = size(minus(point(mark.to), point(mark.from)));
        if drawn <= 0.0 || mark.is <= Length::ZERO {
            let message = "These marks give no scale.";
            let accepted = "Two marks lie apart on the template, and on the boat.";
            return Err(Fault::new(Kind::SurveyTrace, mark.is.to_string(), message, accepted)
                .within(index)
                .within("scale")
                .into());
        }
        (products, squares) = (products + drawn * millimetres(mark.is), squares + drawn * drawn);
    }
    Ok(if squares > 0.0 { products / squares } else { 1.0 })
}

/// A turn about one place and a shift of it to another.
struct Turn {
    from: Place,
    to: Place,
    u: Place,
}

impl Turn {
    fn of(&self, place: Place) -> Place {
        let way = minus(place, self.from);
        plus(self.to, plus(times(self.u, way[0]), times(turned(self.u), way[1])))
    }
}

fn turn(pairs: &[(Place, Place)]) -> Option<Turn> {
    let middle = |pick: fn(&(Place, Place)) -> Place| {
        times(pairs.iter().fold([0.0, 0.0], |sum, pair| plus(sum, pick(pair))), 1.0 / pairs.len().max(1) as f64)
    };
    let (from, to) = (middle(|pair| pair.0), middle(|pair| pair.1));
    let mut sum = [0.0, 0.0];
    for (own, known) in pairs {
        let (a, b) = (minus(*own, from), minus(*known, to));
        sum = plus(sum, [dot(a, b), dot(turned(a), b)]);
    }
    Some(Turn { from, to, u: unit(sum)? })
}
