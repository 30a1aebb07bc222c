//! Slanted lines within an area, for what is waste or lies under.

use super::{Micrometres, Path, Point, Step, Subpath};

/// Lines at 45 degrees within the path by the even-odd rule, `pitch` apart along the sheet's edge; rising to the right, or
/// falling where `falling` is set.
///
/// The lines lie on a grid of the whole sheet, so that neighbouring areas match.
pub fn hatch(area: &Path, pitch: Micrometres, falling: bool) -> Path {
    let pitch = pitch.max(1);
    let sign = if falling { -1 } else { 1 };
    // Along a hatch line x + sign · y is constant; the line is followed in x.
    let level = |point: Point| point.x + sign * point.y;
    let edges = area.chords();
    let levels = || edges.iter().flat_map(|edge| [level(edge.0), level(edge.1)]);
    let (Some(low), Some(high)) = (levels().min(), levels().max()) else {
        return Path::default();
    };
    let mut hatching = Path::default();
    for index in low.div_euclid(pitch) + 1..=high.div_euclid(pitch) {
        let line = index * pitch;
        let mut crossings: Vec<Micrometres> = edges.iter().filter_map(|edge| crossing(edge, line, level)).collect();
        crossings.sort_unstable();
        for pair in crossings.chunks_exact(2) {
            // A line through a corner alone has no length.
            if let [from, to] = *pair
                && from < to
            {
                let at = |x| Point::new(x, (line - x) * sign);
                hatching.subpaths.push(Subpath { start: at(from), steps: vec![Step::Line(at(to))], closed: false });
            }
        }
    }
    hatching
}

/// Where an edge crosses the line. An end on the line counts as just above it, so that each corner is met once or twice.
fn crossing(edge: &(Point, Point), line: Micrometres, level: impl Fn(Point) -> Micrometres) -> Option<Micrometres> {
    let (from, to) = (level(edge.0), level(edge.1));
    if (from < line) == (to < line) {
        return None;
    }
    let (run, way) = (i128::from(edge.1.x - edge.0.x), i128::from(line - from));
    // `to` differs from `from`, and the quotient lies between the edge's ends.
    let step =
        crate::math::round_half_even(run * way * i128::from((to - from).signum()), i128::from((to - from).abs()));
    Some(edge.0.x + i64::try_from(step).unwrap_or(0))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::draw::figure::Rect;

    #[test]
    fn a_square_is_hatched_from_edge_to_edge() {
        let square = Path::rect(Rect::new(0, 0, 1000, 1000));
        for falling in [false, true] {
            let lines = hatch(&square, 250, falling).chords();
            // Seven levels cross a square of four pitches.
            assert_eq!(lines.len(), 7, "{lines:?}");
            for (a, b) in lines {
                assert_eq!((a.x - b.x).abs(), (a.y - b.y).abs());
                assert!([a.x, a.y, b.x, b.y].iter().all(|side| (0..=1000).contains(side)));
            }
        }
    }

    #[test]
    fn a_hole_stays_clear() {
        let mut frame = Path::rect(Rect::new(0, 0, 900, 900));
        frame.append(Path::rect(Rect::new(300, 300, 600, 600)));
        let lines = hatch(&frame, 900, false).chords();
        assert_eq!(lines, [(Point::new(0, 900), Point::new(300, 600)), (Point::new(600, 300), Point::new(900, 0))]);
    }
}
