//! Paths of straight lines and true arcs.
//!
//! An arc is held as the two ends, a radius and two choices, as SVG has it. Where a writer has no arcs they become cubic
//! curves. That is done with square roots alone, which are exact to the last bit on every machine, and no sines.

use super::{Micrometres, Point, Rect};
use crate::math::floor_root;

/// One or more lines, each open or closed.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Path {
    /// The lines.
    pub subpaths: Vec<Subpath>,
}

/// A line of straight and round steps.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Subpath {
    /// Where it starts.
    pub start: Point,
    /// How it goes on.
    pub steps: Vec<Step>,
    /// True where it goes back to its start.
    pub closed: bool,
}

/// A step of a path.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Step {
    /// Straight on.
    Line(Point),
    /// Along a circle. A radius that is too small to reach counts as half the way.
    Arc {
        /// Where it ends.
        to: Point,
        /// Radius.
        radius: Micrometres,
        /// True for the longer way round.
        large: bool,
        /// True where it turns with the clock, as seen on the sheet.
        clockwise: bool,
    },
}

impl Step {
    /// Where the step ends.
    pub const fn end(self) -> Point {
        match self {
            Step::Line(to) | Step::Arc { to, .. } => to,
        }
    }
}

/// A cubic curve after its start: two handles and the end, in micrometres.
pub(in crate::draw) type Cubic = [(f64, f64); 3];

impl Path {
    /// A straight line.
    pub fn line(from: Point, to: Point) -> Path {
        Path::open(from, vec![Step::Line(to)])
    }

    /// A line of steps that stays open.
    pub fn open(start: Point, steps: Vec<Step>) -> Path {
        Path { subpaths: vec![Subpath { start, steps, closed: false }] }
    }

    /// A line of steps that goes back to its start.
    pub fn closed(start: Point, steps: Vec<Step>) -> Path {
        Path { subpaths: vec![Subpath { start, steps, closed: true }] }
    }

    /// A closed line through corners; fewer than two make an empty path.
    pub fn polygon(corners: &[Point]) -> Path {
        match corners {
            [start, rest @ ..] if !rest.is_empty() => {
                Path::closed(*start, rest.iter().map(|&to| Step::Line(to)).collect())
            }
            _ => Path::default(),
        }
    }

    /// The edge of an upright rectangle.
    pub fn rect(rect: Rect) -> Path {
        Path::polygon(&[
            rect.top_left(),
            Point::new(rect.right, rect.top),
            rect.bottom_right(),
            Point::new(rect.left, rect.bottom),
        ])
    }

    /// A circle, as two half turns.
    pub fn circle(centre: Point, radius: Micrometres) -> Path {
        let half = |x| Step::Arc { to: Point::new(x, centre.y), radius, large: false, clockwise: true };
        Path::closed(centre.moved(-radius, 0), vec![half(centre.x + radius), half(centre.x - radius)])
    }

    /// Adds the lines of another path.
    pub fn append(&mut self, other: Path) {
        self.subpaths.extend(other.subpaths);
    }

    /// The path as straight pieces. An arc becomes sixteen chords: near enough to see whether it runs through a word or
    /// to hatch within it, not for writing.
    pub fn chords(&self) -> Vec<(Point, Point)> {
        let mut chords = Vec::new();
        for subpath in &self.subpaths {
            let mut at = subpath.start;
            for &step in &subpath.steps {
                chords_of(at, step, &mut chords);
                at = step.end();
            }
            if subpath.closed && at != subpath.start {
                chords.push((at, subpath.start));
            }
        }
        chords
    }

    /// The smallest upright rectangle around the chords; `None` for an empty path.
    pub fn bounds(&self) -> Option<Rect> {
        self.chords().into_iter().map(|(a, b)| Rect::spanning(a, b)).reduce(Rect::united)
    }
}

impl Path {
    /// An upright rectangle that holds the path, found without working out its arcs: a circle's own square, and a little
    /// more than the rest needs. `None` for an empty path.
    pub fn reach(&self) -> Option<Rect> {
        let mut reach: Option<Rect> = None;
        for subpath in &self.subpaths {
            let mut at = subpath.start;
            for &step in &subpath.steps {
                let part = reach_of(at, step);
                reach = Some(reach.map_or(part, |whole| whole.united(part)));
                at = step.end();
            }
        }
        reach
    }
}

/// An arc of up to a half turn lies within the circle on its chord; a longer one within a diameter of its ends.
fn reach_of(from: Point, step: Step) -> Rect {
    let to = step.end();
    let span = Rect::spanning(from, to);
    match step {
        Step::Line(_) => span,
        Step::Arc { radius, large: true, .. } => span.inset(-2 * radius),
        Step::Arc { .. } => {
            let (dx, dy) = (i128::from(to.x - from.x), i128::from(to.y - from.y));
            // The root of a square sum of two i64 fits one; one more for its fraction.
            let chord = i64::try_from(floor_root(dx * dx + dy * dy)).unwrap_or(i64::MAX / 4) + 1;
            let middle = span.centre();
            Rect::spanning(middle, middle).inset(-(chord / 2 + 1))
        }
    }
}

fn chords_of(from: Point, step: Step, chords: &mut Vec<(Point, Point)>) {
    let Step::Arc { to, radius, large, clockwise } = step else {
        chords.push((from, step.end()));
        return;
    };
    let mut at = from;
    for piece in arc_cubics(from, to, radius, large, clockwise) {
        let start = (at.x as f64, at.y as f64);
        for quarter in [0.25, 0.5, 0.75, 1.0] {
            let next = rounded(bezier(start, piece, quarter));
            chords.push((at, next));
            at = next;
        }
    }
}

fn bezier(start: (f64, f64), [a, b, end]: Cubic, t: f64) -> (f64, f64) {
    let s = 1.0 - t;
    let blend =
        |p: f64, q: f64, r: f64, e: f64| s * s * s * p + 3.0 * s * s * t * q + 3.0 * s * t * t * r + t * t * t * e;
    (blend(start.0, a.0, b.0, end.0), blend(start.1, a.1, b.1, end.1))
}

fn rounded(point: (f64, f64)) -> Point {
    // Points on a sheet are far below 2^53 micrometres; `as` saturates.
    #[allow(clippy::cast_possible_truncation)]
    Point::new(point.0.round_ties_even() as i64, point.1.round_ties_even() as i64)
}

/// An arc as four cubic curves of a quarter turn or less each.
///
/// # Method
/// The arc is halved twice. The middle of an arc lies from the centre along the normal of its chord, on the side given by the
/// turning sense. The handles of a piece of angle t are 4/3 tan(t/4) of the radius long (Riškus, "Approximation of a cubic
/// Bézier curve by circular arcs and vice versa", 2006, from memory); the radial error of a quarter turn is below 0.03 %.
pub(in crate::draw) fn arc_cubics(
    from: Point,
    to: Point,
    radius: Micrometres,
    large: bool,
    clockwise: bool,
) -> Vec<Cubic> {
    let (a, b) = ((from.x as f64, from.y as f64), (to.x as f64, to.y as f64));
    let (dx, dy) = (b.0 - a.0, b.1 - a.1);
    let chord = (dx * dx + dy * dy).sqrt();
    if chord == 0.0 {
        return Vec::new();
    }
    let radius = (radius as f64).max(chord / 2.0);
    let height = (radius * radius - chord * chord / 4.0).max(0.0).sqrt();
    let side = if clockwise == large { -height } else { height };
    let centre = (f64::midpoint(a.0, b.0) - dy / chord * side, f64::midpoint(a.1, b.1) + dx / chord * side);
    let circle = Circle { centre, radius, turn: if clockwise { 1.0 } else { -1.0 } };
    let middle = circle.halfway(a, b);
    [a, circle.halfway(a, middle), middle, circle.halfway(middle, b), b]
        .windows(2)
        .filter_map(|ends| if let [start, end] = *ends { Some(circle.piece(start, end)) } else { None })
        .collect()
}

struct Circle {
    centre: (f64, f64),
    radius: f64,
    /// 1 with the clock, −1 against it.
    turn: f64,
}

impl Circle {
    /// The point halfway along the arc between two points of the circle.
    fn halfway(&self, a: (f64, f64), b: (f64, f64)) -> (f64, f64) {
        let (dx, dy) = (b.0 - a.0, b.1 - a.1);
        let chord = (dx * dx + dy * dy).sqrt();
        let reach = if chord == 0.0 { 0.0 } else { self.radius / chord * self.turn };
        (self.centre.0 + dy * reach, self.centre.1 - dx * reach)
    }

    /// The cubic between two points at most a quarter turn apart.
    fn piece(&self, a: (f64, f64), b: (f64, f64)) -> Cubic {
        let unit = |p: (f64, f64)| ((p.0 - self.centre.0) / self.radius, (p.1 - self.centre.1) / self.radius);
        let (u, v) = (unit(a), unit(b));
        let cosine = (u.0 * v.0 + u.1 * v.1).clamp(-1.0, 1.0);
        let (half_cosine, half_sine) = (f64::midpoint(1.0, cosine).sqrt(), ((1.0 - cosine) / 2.0).sqrt());
        let quarter_tangent = if half_sine == 0.0 { 0.0 } else { (1.0 - half_cosine) / half_sine };
        let handle = 4.0 / 3.0 * quarter_tangent * self.radius * self.turn;
        [(a.0 - u.1 * handle, a.1 + u.0 * handle), (b.0 + v.1 * handle, b.1 - v.0 * handle), b]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn quarter(large: bool, clockwise: bool) -> Vec<(f64, f64)> {
        let (from, to) = (Point::new(1000, 0), Point::new(0, 1000));
        let mut start = (1000.0, 0.0);
        let mut points = Vec::new();
        for piece in arc_cubics(from, to, 1000, large, clockwise) {
            points.push(bezier(start, piece, 0.5));
            start = piece[2];
        }
        points
    }

    #[test]
    fn a_quarter_turn_stays_on_its_circle() {
        for (large, clockwise, centre) in [
            (false, true, (0.0, 0.0)),
            (true, true, (1000.0, 1000.0)),
            (false, false, (1000.0, 1000.0)),
            (true, false, (0.0, 0.0)),
        ] {
            for point in quarter(large, clockwise) {
                let radius = ((point.0 - centre.0).powi(2) + (point.1 - centre.1).powi(2)).sqrt();
                assert!((radius - 1000.0).abs() < 0.3, "large {large}, clockwise {clockwise}: {point:?}");
            }
        }
    }

    #[test]
    fn a_small_quarter_turn_lies_between_its_ends_and_a_large_one_goes_round() {
        assert!(quarter(false, true).iter().all(|point| point.0 >= 0.0 && point.1 >= 0.0));
        assert!(quarter(true, true).iter().any(|point| point.0 > 1500.0));
    }

    #[test]
    fn a_circle_is_as_wide_as_it_is_high() {
        let bounds = Path::circle(Point::new(500, 700), 300).bounds().unwrap();
        assert_eq!(bounds, Rect::new(200, 400, 800, 1000));
        let reach = Path::circle(Point::new(500, 700), 300).reach().unwrap();
        assert!(reach.holds(bounds) && reach.inset(2).overlaps(bounds) && bounds.holds(reach.inset(2)), "{reach:?}");
    }
}
