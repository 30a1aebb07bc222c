//! The stretches between supports and tips, each with the part of the loads that lies on it.

use super::BeamProblem;
use super::check::SLACK;
use super::load::{BeamLoad, BeamLoadKind};

/// A part of a load on one stretch, in the stretch's own coordinate.
#[derive(Debug, Clone, Copy)]
pub(super) enum Local {
    /// Force per length between two places.
    Spread { from: f64, to: f64, intensity: f64 },
    /// A force at a place.
    Force { at: f64, value: f64 },
}

/// One stretch: an overhang or a span.
#[derive(Debug, Clone)]
pub(super) struct Segment {
    /// Its left end, from the left tip.
    pub(super) start: f64,
    pub(super) length: f64,
    pub(super) loads: Vec<Local>,
    /// Force that stands right on the support at its left end and never bends the beam.
    pub(super) on_left: f64,
}

/// All stretches of a beam: the left overhang, the spans, the right overhang. Overhangs may have no length.
pub(super) fn segments(problem: &BeamProblem, loads: &[BeamLoad]) -> Vec<Segment> {
    let lengths = [problem.overhangs[0]].into_iter().chain(problem.spans.iter().copied());
    let mut segments = Vec::with_capacity(problem.spans.len() + 2);
    let mut start = 0.0;
    for length in lengths.chain([problem.overhangs[1]]) {
        segments.push(Segment { start, length, loads: Vec::new(), on_left: 0.0 });
        start += length;
    }
    for load in loads {
        add(&mut segments, load, start);
    }
    segments
}

/// Deals a load out to the stretches that it covers.
fn add(segments: &mut [Segment], load: &BeamLoad, length: f64) {
    let (from, to) = load.stretch(length);
    // The stretch in which the load begins: the last that starts at or before it.
    let first = segments.partition_point(|segment| segment.start <= from).saturating_sub(1);
    let slack = SLACK * length;
    if load.kind == BeamLoadKind::Point {
        return add_force(segments, first, from.clamp(0.0, length), load.value, slack);
    }
    for segment in segments.iter_mut().skip(first).take_while(|segment| segment.start < to) {
        let (from, to) = (from - segment.start, to - segment.start);
        let (from, to) = (from.max(0.0), to.min(segment.length));
        if to > from {
            segment.loads.push(Local::Spread { from, to, intensity: load.intensity() });
        }
    }
}

/// A force within `slack` of a support stands on it.
fn add_force(segments: &mut [Segment], first: usize, at: f64, value: f64, slack: f64) {
    // The first stretch starts at the tip, which is a support only where there is no overhang; then it has no length.
    let last = segments.len() - 1;
    if first < last && segments[first + 1].start - at <= slack {
        segments[first + 1].on_left += value;
    } else if first > 0 && at - segments[first].start <= slack {
        segments[first].on_left += value;
    } else {
        let segment = &mut segments[first];
        let at = (at - segment.start).clamp(0.0, segment.length);
        segment.loads.push(Local::Force { at, value });
    }
}

impl Local {
    /// The force, and where its middle lies.
    pub(super) fn resultant(&self) -> (f64, f64) {
        match *self {
            Local::Spread { from, to, intensity } => (intensity * (to - from), from.midpoint(to)),
            Local::Force { at, value } => (value, at),
        }
    }

    /// Moments at the left and right end of a span of `length` whose ends do not turn; sagging is positive.
    ///
    /// For a force they are `-P a (L-a)²/L²` and `-P a² (L-a)/L²`. Both are cubics in `a`, so the integral over a
    /// stretch of middle `c` and half-length `h` is exactly `2h (f(c) + f''(c) h²/6)`.
    pub(super) fn fixed_end(&self, length: f64) -> (f64, f64) {
        let (force, middle) = self.resultant();
        let half = match *self {
            Local::Spread { from, to, .. } => (to - from) / 2.0,
            Local::Force { .. } => 0.0,
        };
        let (c, rest, sixth) = (middle, length - middle, half * half / 6.0);
        let left = c * rest * rest + sixth * (6.0 * c - 4.0 * length);
        let right = c * c * rest + sixth * (2.0 * length - 6.0 * c);
        (-force * left / (length * length), -force * right / (length * length))
    }
}

impl Segment {
    /// Force of all loads, and its moment about the left end.
    pub(super) fn resultant(&self) -> (f64, f64) {
        let add = |(force, moment): (f64, f64), load: &Local| {
            let (value, at) = load.resultant();
            (force + value, moment + value * at)
        };
        self.loads.iter().fold((0.0, 0.0), add)
    }

    /// Moments at both ends if they did not turn.
    pub(super) fn fixed_end(&self) -> (f64, f64) {
        let add = |(left, right): (f64, f64), load: &Local| {
            let (a, b) = load.fixed_end(self.length);
            (left + a, right + b)
        };
        self.loads.iter().fold((0.0, 0.0), add)
    }
}
