//! Which kind each board is of, and on which stretch of its flange each seam lies.

use super::reach::Ground;
use super::seat::Piece;

/// The kinds a board can be of, cheapest first.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Kind {
    /// Least and greatest width, in nanometres.
    pub(super) width: (i64, i64),
    pub(super) narrow: bool,
    pub(super) ripped: bool,
}

impl Kind {
    /// The kind of a board with slanted edges: they are sawn, and the board at the centreline is narrower than its
    /// rectangle.
    fn tilted(mut self, tilt: i64) -> Option<Kind> {
        if tilt > 0 {
            self.width.1 -= tilt;
        }
        (tilt == 0 || self.ripped && self.width.0 <= self.width.1).then_some(self)
    }
}

/// A choice for every seam and board of a layout, with its discrete cost.
#[derive(Debug, Clone)]
pub(super) struct Pattern<'a> {
    pub(super) pieces: Vec<&'a Piece>,
    pub(super) kinds: Vec<Kind>,
}

/// Boards narrower than preferred, then ripped boards.
pub(super) type DiscreteCost = (usize, usize);

/// More patterns than this of one member set are not weighed against each other.
const MOST_PATTERNS: usize = 4096;

/// All patterns of least discrete cost for a set of members with exactly so many short seams; none where the least
/// cost is above `limit`.
pub(super) fn least_patterns<'a>(
    ground: &'a Ground,
    members: &[usize],
    short: usize,
    limit: Option<DiscreteCost>,
) -> Option<(DiscreteCost, Vec<Pattern<'a>>)> {
    let kinds = kinds(ground);
    let mut walk = Walk { ground, members, kinds: &kinds, best: limit, patterns: Vec::new(), at: Vec::new() };
    walk.board((-ground.gap, -ground.gap), short, (0, 0));
    let cost = walk.best?;
    (!walk.patterns.is_empty()).then_some((cost, walk.patterns))
}

/// A board keeps a sheet's full width, or is ripped to a preferred width, or to a narrow one.
fn kinds(ground: &Ground) -> Vec<Kind> {
    let preferred = ground.preferred_width.max(ground.least_width);
    let full = ground.widths.iter().rev().filter(|width| **width >= ground.least_width).map(|&width| Kind {
        width: (width, width),
        narrow: width < ground.preferred_width,
        ripped: false,
    });
    let mut kinds: Vec<Kind> = full.collect();
    kinds.push(Kind { width: (preferred, ground.widest()), narrow: false, ripped: true });
    kinds.push(Kind { width: (ground.least_width, (preferred - 1).min(ground.widest())), narrow: true, ripped: true });
    kinds.retain(|kind| kind.width.0 <= kind.width.1);
    kinds.sort_by_key(|kind| (kind.narrow, kind.ripped));
    kinds
}

struct Walk<'a, 'b> {
    ground: &'a Ground,
    members: &'b [usize],
    kinds: &'b [Kind],
    best: Option<DiscreteCost>,
    patterns: Vec<Pattern<'a>>,
    at: Vec<(Option<&'a Piece>, Kind)>,
}

impl Walk<'_, '_> {
    /// Lays the next board from a stretch of positions.
    fn board(&mut self, from: (i64, i64), short: usize, cost: DiscreteCost) {
        let next = self.at.len();
        let fore = next.checked_sub(1).map(|before| self.members[before]);
        let tilt = self.ground.tilt(fore, self.members.get(next).copied());
        for index in 0..self.kinds.len() {
            let Some(kind) = self.kinds[index].tilted(tilt) else { continue };
            let cost = (cost.0 + usize::from(kind.narrow), cost.1 + usize::from(kind.ripped));
            if self.best.is_some_and(|best| cost > best) {
                continue;
            }
            let reach = (from.0 + self.ground.gap + kind.width.0, from.1 + self.ground.gap + kind.width.1);
            match self.members.get(next) {
                Some(&member) => self.seam(member, reach, kind, short, cost),
                None => self.finish(reach, kind, short, cost),
            }
        }
    }

    fn seam(&mut self, member: usize, reach: (i64, i64), kind: Kind, short: usize, cost: DiscreteCost) {
        let ground = self.ground;
        for piece in &ground.seats[member].pieces {
            let (low, high) = (reach.0.max(piece.low), reach.1.min(piece.high));
            if low > high || usize::from(piece.short) > short {
                continue;
            }
            self.at.push((Some(piece), kind));
            self.board((low, high), short - usize::from(piece.short), cost);
            self.at.pop();
        }
    }

    fn finish(&mut self, reach: (i64, i64), kind: Kind, short: usize, cost: DiscreteCost) {
        let (low, high) = (reach.0.max(self.ground.finish.0), reach.1.min(self.ground.finish.1));
        if low > high || short > 0 {
            return;
        }
        if self.best.is_none_or(|best| cost < best) {
            self.patterns.clear();
        }
        self.best = Some(cost);
        if self.patterns.len() < MOST_PATTERNS {
            let pieces = self.at.iter().filter_map(|(piece, _)| *piece).collect();
            let kinds = self.at.iter().map(|(_, kind)| *kind).chain([kind]).collect();
            self.patterns.push(Pattern { pieces, kinds });
        }
    }
}
