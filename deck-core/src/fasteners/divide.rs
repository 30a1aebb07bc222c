//! Divides a row, and moves or drops what an opening is in the way of.

use crate::length::Length;

/// A stretch of a row in which no fastener may lie; its ends are free.
pub(super) type Blocked = (Length, Length);

/// Fasteners along a row, with what had to be done to them.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub(super) struct Division {
    pub(super) positions: Vec<Length>,
    pub(super) moved: usize,
    pub(super) dropped: usize,
}

/// Evenly from `low` to `high` with no step over `spacing`, and `more` steps than that takes; staggered: both ends and the
/// half steps.
///
/// The half beyond the middle is counted from `high`, so that a mirrored row is mirrored to the nanometre.
pub(super) fn even(low: Length, high: Length, spacing: Length, more: i64, stagger: bool) -> Vec<Length> {
    let span = high - low;
    if span.is_negative() {
        return Vec::new();
    }
    let steps = if span.is_zero() { 0 } else { span.steps_of(spacing) + more };
    if steps == 0 {
        return vec![low];
    }
    if !stagger {
        return (0..=steps).map(|step| along(low, high, step * 2, steps * 2)).collect();
    }
    let halves = (0..steps).map(|step| along(low, high, step * 2 + 1, steps * 2));
    std::iter::once(low).chain(halves).chain([high]).collect()
}

fn along(low: Length, high: Length, part: i64, parts: i64) -> Length {
    let span = high - low;
    if part * 2 <= parts { low + span.part(part, parts) } else { high - span.part(parts - part, parts) }
}

/// The ends of a row, drawn in until they are free.
pub(super) fn free_ends(mut low: Length, mut high: Length, blocked: &[Blocked]) -> (Length, Length) {
    for &(from, to) in blocked {
        if from < low && low < to {
            low = to;
        }
    }
    for &(from, to) in blocked.iter().rev() {
        if from < high && high < to {
            high = from;
        }
    }
    (low, high)
}

/// Clears the blocked stretches: of the fasteners in one, the first moves to its near side, the last to its far side,
/// and those between are dropped. One alone moves to the nearer side, outboard when both are as near, and to both when
/// it lies on the centreline. A moved fastener that would come within `apart` of one that stays, or of a moved one
/// further outboard, is dropped.
pub(super) fn clear(
    positions: &[Length],
    blocked: &[Blocked],
    (low, high): (Length, Length),
    centreline: Length,
    apart: Length,
) -> Division {
    let inside = |position: &Length| blocked.iter().find(|(from, to)| from < position && position < to);
    let mut kept: Vec<Length> = positions.iter().copied().filter(|position| inside(position).is_none()).collect();
    let stays = kept.len();
    let mut moves: Vec<Length> = Vec::new();
    for stretch in blocked {
        let held: Vec<Length> =
            positions.iter().copied().filter(|position| inside(position) == Some(stretch)).collect();
        if let (Some(first), Some(last)) = (held.first(), held.last()) {
            moves.extend(targets(*first, *last, *stretch, centreline));
        }
    }
    moves.retain(|target| (low..=high).contains(target) && inside(target).is_none());
    // From outboard inwards, and a mirrored pair together, so that a mirrored row is mirrored.
    let outboard = |target: &Length| (*target + *target - centreline - centreline).abs();
    moves.sort_by_key(|target| (std::cmp::Reverse(outboard(target)), *target));
    moves.dedup();
    for pair in moves.chunk_by(|one, other| outboard(one) == outboard(other)) {
        let crowded = |target: &Length| kept.iter().any(|neighbour| (*target - *neighbour).abs() < apart);
        let free: Vec<Length> = pair.iter().copied().filter(|target| !crowded(target)).collect();
        let clash = free.windows(2).any(|both| both[1] - both[0] < apart);
        kept.extend(free.into_iter().filter(|_| !clash));
    }
    let moved = kept.len() - stays;
    kept.sort_unstable();
    let dropped = positions.len().saturating_sub(kept.len());
    Division { positions: kept, moved, dropped }
}

/// Where the fasteners in a blocked stretch go: to one of its sides, or to both.
fn targets(first: Length, last: Length, (from, to): Blocked, centreline: Length) -> Vec<Length> {
    if first != last {
        return vec![from, to];
    }
    let (back, on) = (first - from, to - first);
    if back == on && first == centreline {
        return vec![from, to];
    }
    let to_port = back < on || (back == on && first < centreline);
    vec![if to_port { from } else { to }]
}

/// The greatest distance between neighbours, and between a row's ends and the first and last.
pub(super) fn greatest_gap(positions: &[Length], (low, high): (Length, Length)) -> Length {
    let (Some(first), Some(last)) = (positions.first(), positions.last()) else {
        return (high - low).max(Length::ZERO);
    };
    let between = positions.windows(2).map(|pair| pair[1] - pair[0]).max().unwrap_or_default();
    between.max(*first - low).max(high - *last)
}
