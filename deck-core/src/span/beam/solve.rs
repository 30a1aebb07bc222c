//! The rotations over the supports, and from them everything else.

use super::piece::{Bent, integrate};
use super::result::{Beam, BeamSpan, BeamSupport};
use super::segment::Segment;
use super::{BeamProblem, End};

/// Solves a sound problem; `segments` are the left overhang, the spans and the right overhang.
pub(super) fn solve(problem: &BeamProblem, segments: &[Segment]) -> Beam {
    let [left, spans @ .., right] = segments else { return Beam::default() };
    // Moment over the first and the last support, from the overhangs alone.
    let (force, moment) = left.resultant();
    let outer_left = moment - force * left.length;
    let outer_right = -right.resultant().1;
    let turns = rotations(problem, spans, [outer_left, outer_right]);
    let mut bent = Vec::with_capacity(segments.len());
    bent.push(left_overhang(left, outer_left, turns.first().copied().unwrap_or(0.0)));
    for (index, span) in spans.iter().enumerate() {
        let first = (index == 0 && problem.ends[0] == End::Simple).then_some(outer_left);
        let last = (index + 1 == spans.len() && problem.ends[1] == End::Simple).then_some(outer_right);
        bent.push(bend(span, [turns[index], turns[index + 1]], [first, last]));
    }
    bent.push(right_overhang(right, outer_right, turns.last().copied().unwrap_or(0.0)));
    report(problem, segments, bent)
}

/// Rotations over the supports times the stiffness: moments on both sides of each support are alike.
///
/// One sweep of elimination; the diagonal outweighs the rest of its row twice, so no pivot can be small.
fn rotations(problem: &BeamProblem, spans: &[Segment], outer: [f64; 2]) -> Vec<f64> {
    let count = spans.len() + 1;
    let fixed: Vec<(f64, f64)> = spans.iter().map(Segment::fixed_end).collect();
    // Of the row above: its right neighbour's factor and its right-hand side, both over its pivot.
    let (mut above, mut carried) = (0.0, 0.0);
    let mut factors = vec![0.0; count];
    let mut turns = vec![0.0; count];
    for row in 0..count {
        let held = (row == 0 && problem.ends[0] == End::Fixed) || (row + 1 == count && problem.ends[1] == End::Fixed);
        if held {
            (above, carried) = (0.0, 0.0);
            continue;
        }
        let (mut diagonal, mut before, mut after, mut right) = (0.0, 0.0, 0.0, 0.0);
        if row > 0 {
            diagonal += 4.0 / spans[row - 1].length;
            before = 2.0 / spans[row - 1].length;
            right += fixed[row - 1].1;
        } else {
            right += outer[0];
        }
        if row + 1 < count {
            diagonal += 4.0 / spans[row].length;
            after = 2.0 / spans[row].length;
            right -= fixed[row].0;
        } else {
            right -= outer[1];
        }
        let pivot = diagonal - before * above;
        carried = (right - before * carried) / pivot;
        above = after / pivot;
        factors[row] = above;
        turns[row] = carried;
    }
    for row in (0..count - 1).rev() {
        turns[row] -= factors[row] * turns[row + 1];
    }
    turns
}

/// A span whose ends turn; `known` are the moments at its ends where the overhangs alone set them.
fn bend(span: &Segment, [left, right]: [f64; 2], known: [Option<f64>; 2]) -> Bent {
    let length = span.length;
    let (fixed_left, fixed_right) = span.fixed_end();
    let moment = known[0].unwrap_or(fixed_left + (4.0 * left + 2.0 * right) / length);
    let end = known[1].unwrap_or(fixed_right - (2.0 * left + 4.0 * right) / length);
    let (force, about_left) = span.resultant();
    let shear = (end - moment - about_left) / length + force;
    let mut bent = integrate(span, moment, shear);
    bent.place(left, 0.0);
    bent.pin_end(end, Some(0.0));
    bent
}

fn left_overhang(overhang: &Segment, moment: f64, turn: f64) -> Bent {
    let mut bent = integrate(overhang, 0.0, 0.0);
    // At the support the slope is `turn` and the deflection zero.
    let slope = turn - bent.end.slope;
    let sag = -bent.end.sag - slope * overhang.length;
    bent.place(slope, sag);
    bent.pin_end(moment, Some(0.0));
    bent
}

fn right_overhang(overhang: &Segment, moment: f64, turn: f64) -> Bent {
    let mut bent = integrate(overhang, moment, overhang.resultant().0);
    bent.place(turn, 0.0);
    bent.pin_end(0.0, None);
    bent
}

/// Writes the answer down.
fn report(problem: &BeamProblem, segments: &[Segment], bent: Vec<Bent>) -> Beam {
    let support = |(index, (pair, segment)): (usize, (&[Bent], &Segment))| {
        let (before, after) = (&pair[0].end, pair[1].pieces.first().unwrap_or(&pair[1].end));
        BeamSupport {
            at: segment.start,
            reaction: after.shear - before.shear + segment.on_left,
            // Left of a fixed first end nothing could carry its moment; elsewhere both sides are alike.
            moment: if index == 0 { after.moment } else { before.moment },
        }
    };
    let supports = bent.windows(2).zip(segments.iter().skip(1)).enumerate().map(support).collect();
    let span = |(bent, segment): (&Bent, &Segment)| BeamSpan {
        from: segment.start,
        length: segment.length,
        moment: bent.moments(),
        shear: bent.shears(),
        deflection: bent.sags().scaled(1.0 / problem.stiffness),
    };
    let mut spans: Vec<BeamSpan> = bent.iter().zip(segments).map(span).collect();
    let overhang = |span: Option<BeamSpan>| span.filter(|span| span.length > 0.0);
    let right = overhang(spans.pop());
    let left = overhang((!spans.is_empty()).then(|| spans.remove(0)));
    Beam { supports, spans, overhangs: [left, right], stiffness: problem.stiffness, bent }
}
