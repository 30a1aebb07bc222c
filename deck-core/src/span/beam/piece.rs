//! A length of beam without a break in its load: moment a parabola, deflection a quartic.

use super::result::{Peak, Range};
use super::segment::{Local, Segment};

/// Newton steps for a root; halving alone would need some sixty.
const MOST_STEPS: usize = 100;

/// State at the left end of the piece; stiffness is 1 here, so `slope' = -moment`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Piece {
    /// Left end, from the left tip of the beam.
    pub(super) start: f64,
    pub(super) length: f64,
    /// Force per length on it.
    pub(super) intensity: f64,
    pub(super) moment: f64,
    pub(super) shear: f64,
    pub(super) slope: f64,
    pub(super) sag: f64,
}

impl Piece {
    pub(super) fn shear_at(&self, s: f64) -> f64 {
        self.shear - self.intensity * s
    }

    pub(super) fn moment_at(&self, s: f64) -> f64 {
        self.moment + s * (self.shear - self.intensity * s / 2.0)
    }

    pub(super) fn slope_at(&self, s: f64) -> f64 {
        self.slope - s * (self.moment + s * (self.shear / 2.0 - self.intensity * s / 6.0))
    }

    pub(super) fn sag_at(&self, s: f64) -> f64 {
        self.sag + s * (self.slope - s * (self.moment / 2.0 + s * (self.shear / 6.0 - self.intensity * s / 24.0)))
    }

    /// Where the moment has its vertex, strictly inside.
    fn moment_vertex(&self) -> Option<f64> {
        let s = self.shear / self.intensity;
        (s > 0.0 && s < self.length).then_some(s)
    }

    /// Where the moment is zero, strictly inside, in order: roots of `intensity/2 s² - shear s - moment`.
    pub(super) fn moment_roots(&self) -> impl Iterator<Item = f64> + use<> {
        let root = (self.shear * self.shear + 2.0 * self.intensity * self.moment).sqrt();
        // Adding what has the same sign loses no digits; the other root follows from the product of both.
        let sum = self.shear + root.copysign(self.shear);
        let (a, b) = (sum / self.intensity, -2.0 * self.moment / sum);
        let length = self.length;
        // Without intensity the first is infinite or NaN, and drops out.
        [a.min(b), a.max(b)].into_iter().filter(move |s| *s > 0.0 && *s < length)
    }

    /// Where the deflection is level, strictly inside. Between zeros of the moment the slope runs one way.
    fn level_places(&self) -> impl Iterator<Item = f64> + use<> {
        let piece = *self;
        let mut roots = piece.moment_roots();
        let first = roots.next().unwrap_or(piece.length);
        let second = roots.next().unwrap_or(piece.length);
        let brackets = [(0.0, first), (first, second), (second, piece.length)];
        brackets.into_iter().filter_map(move |(from, to)| piece.level_between(from, to))
    }

    /// The zero of the slope between two places.
    fn level_between(&self, from: f64, to: f64) -> Option<f64> {
        root_between(from, to, |s| (self.slope_at(s), -self.moment_at(s)))
    }

    /// Where the deflection is zero, strictly inside. Between level places it runs one way.
    pub(super) fn sag_roots(&self) -> impl Iterator<Item = f64> + use<> {
        let piece = *self;
        let mut from = 0.0;
        let ends = piece.level_places().chain([piece.length]);
        ends.filter_map(move |to| {
            let root = root_between(from, to, |s| (piece.sag_at(s), piece.slope_at(s)));
            from = to;
            root
        })
    }
}

/// The zero of a function that runs one way between two places and has different signs there: Newton's steps, kept
/// inside the bracket. `function` gives value and derivative.
fn root_between(mut from: f64, mut to: f64, function: impl Fn(f64) -> (f64, f64)) -> Option<f64> {
    let (left, right) = (function(from).0, function(to).0);
    if left == 0.0 || right == 0.0 || (left > 0.0) == (right > 0.0) {
        return None;
    }
    let mut s = from.midpoint(to);
    for _ in 0..MOST_STEPS {
        let (value, derivative) = function(s);
        if (value > 0.0) == (left > 0.0) {
            from = s;
        } else {
            to = s;
        }
        let newton = s - value / derivative;
        let next = if newton > from && newton < to { newton } else { from.midpoint(to) };
        if (next - s).abs() <= f64::EPSILON * s {
            break;
        }
        s = next;
    }
    Some(s)
}

/// A stretch cut into pieces, as it bends.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Bent {
    pub(super) pieces: Vec<Piece>,
    /// State at the right end: moment and shear, right of which a support or nothing follows.
    pub(super) end: Piece,
}

/// Integrates from the left end with its moment and shear; slope and deflection start at zero.
pub(super) fn integrate(segment: &Segment, moment: f64, shear: f64) -> Bent {
    let mut breaks = breaks(segment);
    breaks.sort_by(|a, b| a.0.total_cmp(&b.0));
    let start = segment.start;
    let mut piece = Piece { start, length: 0.0, intensity: 0.0, moment, shear, slope: 0.0, sag: 0.0 };
    let mut pieces = Vec::with_capacity(breaks.len());
    for (at, force, intensity) in breaks {
        piece = close(piece, at - (piece.start - start), &mut pieces);
        piece.shear -= force;
        piece.intensity += intensity;
    }
    Bent { pieces, end: piece }
}

/// Places where the load changes: place, force that stands there, change of force per length. The right end is last.
fn breaks(segment: &Segment) -> Vec<(f64, f64, f64)> {
    let mut breaks = Vec::with_capacity(2 * segment.loads.len() + 1);
    for load in &segment.loads {
        match *load {
            Local::Force { at, value } => breaks.push((at, value, 0.0)),
            Local::Spread { from, to, intensity } => {
                breaks.push((from, 0.0, intensity));
                breaks.push((to, 0.0, -intensity));
            }
        }
    }
    breaks.push((segment.length, 0.0, 0.0));
    breaks
}

/// Ends a piece after a length; the next one starts with its last state.
fn close(mut piece: Piece, length: f64, pieces: &mut Vec<Piece>) -> Piece {
    if length <= 0.0 {
        return piece;
    }
    piece.length = length;
    pieces.push(piece);
    Piece {
        start: piece.start + length,
        length: 0.0,
        intensity: piece.intensity,
        moment: piece.moment_at(length),
        shear: piece.shear_at(length),
        slope: piece.slope_at(length),
        sag: piece.sag_at(length),
    }
}

impl Bent {
    /// Its left end, from the left tip of the beam.
    pub(super) fn start(&self) -> f64 {
        self.pieces.first().unwrap_or(&self.end).start
    }

    /// Adds a turn and a shift of the whole stretch.
    pub(super) fn place(&mut self, slope: f64, sag: f64) {
        let origin = self.start();
        for piece in self.pieces.iter_mut().chain([&mut self.end]) {
            piece.sag += sag + slope * (piece.start - origin);
            piece.slope += slope;
        }
    }

    /// Sets what is known to hold exactly at the right end, free of the rounding of the integration.
    pub(super) fn pin_end(&mut self, moment: f64, sag: Option<f64>) {
        self.end.moment = moment;
        self.end.sag = sag.unwrap_or(self.end.sag);
    }

    /// Moments: ends of pieces and vertices.
    pub(super) fn moments(&self) -> Range {
        let inner = |piece: &Piece| piece.moment_vertex().map(|s| Peak::new(piece.start + s, piece.moment_at(s)));
        let ends = self.starts().map(|piece| Peak::new(piece.start, piece.moment));
        Range::of(ends.chain(self.pieces.iter().filter_map(inner)))
    }

    /// Shears on both sides of every break.
    pub(super) fn shears(&self) -> Range {
        let both = |piece: &Piece| {
            let to = Peak::new(piece.start + piece.length, piece.shear_at(piece.length));
            [Peak::new(piece.start, piece.shear), to]
        };
        Range::of(self.pieces.iter().flat_map(both))
    }

    /// Deflections, still at stiffness 1: ends of pieces and level places.
    pub(super) fn sags(&self) -> Range {
        let inner = |piece: &Piece| {
            let piece = *piece;
            piece.level_places().map(move |s| Peak::new(piece.start + s, piece.sag_at(s)))
        };
        let ends = self.starts().map(|piece| Peak::new(piece.start, piece.sag));
        Range::of(ends.chain(self.pieces.iter().flat_map(inner)))
    }

    /// The left ends of all pieces, and the right end of the last.
    fn starts(&self) -> impl Iterator<Item = &Piece> {
        self.pieces.iter().chain([&self.end])
    }
}

/// Zeros, where a pattern of loads may change.
impl Bent {
    pub(super) fn moment_zeros(&self) -> Vec<f64> {
        let zeros = |piece: &Piece| {
            let start = piece.start;
            piece.moment_roots().map(move |s| start + s)
        };
        self.pieces.iter().flat_map(zeros).collect()
    }

    /// Zeros and jumps of the shear.
    pub(super) fn shear_zeros(&self) -> Vec<f64> {
        let zero = |piece: &Piece| piece.moment_vertex().map(|s| piece.start + s);
        self.pieces.iter().map(|piece| piece.start).chain(self.pieces.iter().filter_map(zero)).collect()
    }

    pub(super) fn sag_zeros(&self) -> Vec<f64> {
        let zeros = |piece: &Piece| {
            let piece = *piece;
            piece.sag_roots().map(move |s| piece.start + s)
        };
        self.pieces.iter().flat_map(zeros).collect()
    }
}
