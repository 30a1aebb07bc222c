//! Where the points lie to begin with: each is placed from those before it, where two readings cross.
//!
//! A crossing of circles has two places. Every reading to points that are placed already votes, by sums of distances and not
//! of squares, so that one gross error does not decide; where nothing votes, the point lies to starboard, or aft.

use super::adjust::{Fit, adjust};
use super::equation::{Equation, Form, Place, dot, minus, plus, sense, size, times, turned, unit};
use super::network::Network;
use super::reading::Side;

/// Two places are equally good where the readings do not tell them apart by this many errors.
const TELLS_APART: f64 = 3.0;
/// Points for which the other place is tried as well, where readings disagree at first.
const MOST_TRIED: usize = 12;

/// Where a point lies as one reading has it.
#[derive(Debug, Clone, Copy)]
enum Locus {
    Circle(Place, f64),
    Line(Place, Place),
}

/// Places to begin with, and the points that had a second place which no reading spoke against.
#[derive(Debug, Clone)]
pub(super) struct Start {
    pub(super) places: Vec<Place>,
    doubtful: Vec<usize>,
}

/// Places every point, or names one that cannot be placed.
pub(super) fn start(network: &Network) -> Result<Start, usize> {
    place_all(network, None)
}

/// The start's fit, or that from another one in which a doubtful point lies at its second place, where that agrees better.
pub(super) fn best(
    network: &Network,
    start: &Start,
    used: &[bool],
    fit: Fit,
    suspicious: impl Fn(&Fit) -> bool,
) -> Fit {
    if !suspicious(&fit) {
        return fit;
    }
    let misfit = |fit: &Fit| -> f64 {
        network.equations.iter().zip(&fit.residuals).map(|(equation, residual)| (residual / equation.sigma).abs()).sum()
    };
    let mut best = fit;
    for &point in start.doubtful.iter().take(MOST_TRIED) {
        let Ok(other) = place_all(network, Some(point)) else { continue };
        let Ok(other) = adjust(&network.unknowns, &network.equations, used, &other.places) else { continue };
        if misfit(&other) < misfit(&best) * 0.8 {
            best = other;
        }
    }
    best
}

/// A network in the making.
struct Placing<'n> {
    network: &'n Network,
    places: Vec<Option<Place>>,
    doubtful: Vec<usize>,
    /// The point that takes its second place.
    flipped: Option<usize>,
    /// False until the datum's direction is known: offsets have no sign before.
    oriented: bool,
}

fn place_all(network: &Network, flipped: Option<usize>) -> Result<Start, usize> {
    let places = vec![None; network.names.len()];
    let mut placing = Placing { network, places, doubtful: Vec::new(), flipped, oriented: true };
    let [origin, towards] = network.datum;
    if network.known.len() >= 2 {
        for (&point, &place) in &network.known {
            placing.put(point, place);
        }
        placing.grow();
    } else if let Some(length) = placing.measured(origin, towards) {
        placing.put(origin, [0.0, 0.0]);
        placing.put(towards, [length, 0.0]);
        placing.grow();
        placing.lay_to_starboard();
    } else {
        placing.build_elsewhere()?;
    }
    if let Some(loose) = placing.places.iter().position(Option::is_none) {
        return Err(loose);
    }
    Ok(Start { places: placing.places.into_iter().flatten().collect(), doubtful: placing.doubtful })
}

impl Placing<'_> {
    fn put(&mut self, point: usize, place: Place) {
        if let Some(slot) = self.places.get_mut(point) {
            *slot = Some(place);
        }
    }

    fn place(&self, point: usize) -> Option<Place> {
        self.places.get(point).copied().flatten()
    }

    fn measured(&self, a: usize, b: usize) -> Option<f64> {
        let between = |form: Form| matches!(form, Form::Distance(c, d) if (c, d) == (a, b) || (c, d) == (b, a));
        self.network.equations.iter().find(|equation| between(equation.form)).map(|equation| equation.value)
    }

    /// Nobody measured along the datum: the network is built from another distance and then turned onto it.
    fn build_elsewhere(&mut self) -> Result<(), usize> {
        self.oriented = false;
        let [origin, towards] = self.network.datum;
        let distances = self.network.equations.iter().filter_map(|equation| match equation.form {
            Form::Distance(a, b) => Some((a, b, equation.value)),
            _ => None,
        });
        for (a, b, length) in distances {
            self.places.iter_mut().for_each(|place| *place = None);
            self.doubtful.clear();
            self.put(a, [0.0, 0.0]);
            self.put(b, [length, 0.0]);
            self.grow();
            if let (Some(start), Some(end)) = (self.place(origin), self.place(towards)) {
                let Some(u) = unit(minus(end, start)) else { continue };
                for place in self.places.iter_mut().flatten() {
                    let way = minus(*place, start);
                    *place = [dot(way, u), dot(way, turned(u))];
                }
                self.lay_to_starboard();
                self.oriented = true;
                self.grow();
                return Ok(());
            }
        }
        Err(towards)
    }

    /// Everything lies to starboard of the datum, on the whole.
    fn lay_to_starboard(&mut self) {
        let sum: f64 = self.places.iter().flatten().map(|place| place[1]).sum();
        if sum < 0.0 {
            self.places.iter_mut().flatten().for_each(|place| place[1] = -place[1]);
        }
    }

    /// Places points, those with most readings to placed ones first, until none has two.
    fn grow(&mut self) {
        loop {
            let mut most: Option<(usize, Vec<Locus>)> = None;
            for point in (0..self.places.len()).filter(|&point| self.place(point).is_none()) {
                let loci = self.loci(point);
                if loci.len() >= 2 && most.as_ref().is_none_or(|(_, before)| loci.len() > before.len()) {
                    most = Some((point, loci));
                }
            }
            let Some((point, loci)) = most else { return };
            let Some(place) = self.choose(point, &loci) else { return };
            self.put(point, place);
        }
    }

    fn loci(&self, point: usize) -> Vec<Locus> {
        let equations = self.network.equations.iter();
        equations
            .filter(|equation| equation.form.points().contains(&point))
            .filter_map(|e| self.locus(point, e))
            .collect()
    }

    /// Where a reading to placed points has a point.
    fn locus(&self, point: usize, equation: &Equation) -> Option<Locus> {
        match equation.form {
            Form::Distance(a, b) => {
                let other = self.place(if a == point { b } else { a })?;
                Some(Locus::Circle(other, equation.value))
            }
            Form::Station { of, from, to } if of == point => {
                let (start, u) = self.line(from, to)?;
                Some(Locus::Line(plus(start, times(u, equation.value)), turned(u)))
            }
            Form::Offset { of, from, to } if of == point => {
                let (start, u) = self.line(from, to)?;
                if !self.oriented && equation.value.abs() > 1e-9 {
                    return None;
                }
                Some(Locus::Line(plus(start, times(turned(u), sense(u) * equation.value)), u))
            }
            // Three points on a line: any two of them place the third on it.
            Form::Offset { of, from, to } if equation.value.abs() < 1e-9 => {
                let (start, u) = self.line(of, if from == point { to } else { from })?;
                Some(Locus::Line(start, u))
            }
            Form::Square { at, along, leg } if at != point => {
                let (start, u) = self.line(at, if leg == point { along } else { leg })?;
                Some(Locus::Line(start, turned(u)))
            }
            _ => None,
        }
    }

    fn line(&self, from: usize, to: usize) -> Option<(Place, Place)> {
        let start = self.place(from)?;
        Some((start, unit(minus(self.place(to)?, start))?))
    }

    /// The crossing that the readings to placed points vote for.
    fn choose(&mut self, point: usize, loci: &[Locus]) -> Option<Place> {
        let mut ranked: Vec<(f64, Place)> = Vec::new();
        for (index, one) in loci.iter().enumerate() {
            for other in loci.iter().skip(index + 1) {
                ranked.extend(crossings(*one, *other).into_iter().map(|place| (misfit(loci, place), place)));
            }
        }
        ranked.sort_by(|one, other| one.0.total_cmp(&other.0));
        let &(least, first) = ranked.first()?;
        let sigma = self.network.equations.iter().map(|equation| equation.sigma).fold(0.0_f64, f64::max);
        let side = self.network.sides.get(&point).copied();
        let as_good =
            ranked.iter().filter(|(misfit, _)| *misfit <= least + TELLS_APART * sigma).map(|(_, place)| *place);
        let far = |place: &Place| size(minus(*place, first)) > 2.0 * TELLS_APART * sigma;
        let second = as_good.clone().find(far);
        // A far second that fits worse, but not much worse, may still be right where a reading is wrong.
        let Some(second) = second.or_else(|| ranked.iter().map(|(_, place)| *place).find(far)) else {
            return Some(first);
        };
        let is_tie = as_good.clone().any(|place| far(&place));
        self.doubtful.push(point);
        let (mut taken, mut left) = (first, second);
        if is_tie && preference(side, second) > preference(side, first) {
            (taken, left) = (left, taken);
        }
        Some(if self.flipped == Some(point) { left } else { taken })
    }
}

fn preference(side: Option<Side>, place: Place) -> f64 {
    side.map_or(place[0] * 0.5 + place[1], |side| side.measure(place))
}

/// How far a place lies off all the loci together.
fn misfit(loci: &[Locus], place: Place) -> f64 {
    loci.iter()
        .map(|locus| match *locus {
            Locus::Circle(centre, radius) => (size(minus(place, centre)) - radius).abs(),
            Locus::Line(point, u) => dot(minus(place, point), turned(u)).abs(),
        })
        .sum()
}

/// Where two loci cross; where they miss each other, the place between them.
fn crossings(one: Locus, other: Locus) -> Vec<Place> {
    match (one, other) {
        (Locus::Circle(a, r), Locus::Circle(b, s)) => circles(a, r, b, s),
        (Locus::Circle(centre, radius), Locus::Line(point, u))
        | (Locus::Line(point, u), Locus::Circle(centre, radius)) => {
            let foot = plus(point, times(u, dot(minus(centre, point), u)));
            let half = (radius * radius - dot(minus(foot, centre), minus(foot, centre))).max(0.0).sqrt();
            vec![plus(foot, times(u, half)), plus(foot, times(u, -half))]
        }
        (Locus::Line(a, u), Locus::Line(b, v)) => {
            let sine = dot(turned(u), v);
            // Lines within a degree of each other place nothing.
            if sine.abs() < 0.0175 {
                return Vec::new();
            }
            let along = dot(turned(v), minus(b, a)) / dot(turned(v), u);
            vec![plus(a, times(u, along))]
        }
    }
}

fn circles(a: Place, r: f64, b: Place, s: f64) -> Vec<Place> {
    let way = minus(b, a);
    let Some(u) = unit(way) else { return Vec::new() };
    let apart = size(way);
    let along = (r * r - s * s + apart * apart) / (2.0 * apart);
    let half = r * r - along * along;
    if half <= 0.0 {
        // They miss each other: the place between them, on the line of the centres.
        let along = if apart > r + s { (r + apart - s) / 2.0 } else { along.clamp(-r, r) };
        return vec![plus(a, times(u, along))];
    }
    let foot = plus(a, times(u, along));
    let aside = times(turned(u), half.sqrt());
    vec![plus(foot, aside), minus(foot, aside)]
}
