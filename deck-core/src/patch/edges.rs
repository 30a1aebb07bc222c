//! Where an edge of a patch may land.

use super::choose::Rest;
use super::rules::PatchRules;
use crate::frame::CrossMember;
use crate::geometry::Bounds;
use crate::length::Length;

/// A place for an edge: where, and on what it rests.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Landing {
    pub(super) at: Length,
    pub(super) on: Rest,
}

/// One board with what its patches keep to.
pub(super) struct Site<'a> {
    pub(super) board: Bounds,
    pub(super) clear: &'a [Bounds],
    pub(super) members: &'a [CrossMember],
    pub(super) rules: &'a PatchRules,
}

impl Site<'_> {
    /// For a damaged stretch, the places of the fore edge: on each, nothing nearer to the damage is better.
    pub(super) fn fore(&self, damage: &Bounds) -> Vec<Landing> {
        let rules = self.rules;
        let most = damage.fore - rules.margin;
        let mut places = vec![Landing { at: self.board.fore, on: Rest::BoardEdge }];
        // What stays ends a gap forward of the patch, and is a strip of the least width.
        let fair = |at: Length| at - rules.gap - self.board.fore >= rules.least_strip && at > self.board.fore;
        for limit in self.limits(most, |clear| clear.fore, |at| at <= most) {
            for member in self.members {
                let at = limit.min(member.aft - rules.bearing);
                if at >= member.fore + rules.bearing + rules.gap && fair(at) {
                    places.push(Landing { at, on: Rest::Member(member.number) });
                }
            }
            if rules.anywhere {
                let at = self.members.iter().rev().fold(limit, |at, member| {
                    let (from, to) = rules.fouled(member, true);
                    if from < at && at < to { from } else { at }
                });
                if fair(at) {
                    places.push(Landing { at, on: Rest::Blocking });
                }
            }
        }
        unique(places)
    }

    /// The places of the aft edge.
    pub(super) fn aft(&self, damage: &Bounds) -> Vec<Landing> {
        let rules = self.rules;
        let least = damage.aft + rules.margin;
        let mut places = vec![Landing { at: self.board.aft, on: Rest::BoardEdge }];
        let fair = |at: Length| self.board.aft - at - rules.gap >= rules.least_strip && at < self.board.aft;
        for limit in self.limits(least, |clear| clear.aft, |at| at >= least) {
            for member in self.members {
                let at = limit.max(member.fore + rules.bearing);
                if at <= member.aft - rules.bearing - rules.gap && fair(at) {
                    places.push(Landing { at, on: Rest::Member(member.number) });
                }
            }
            if rules.anywhere {
                let at = self.members.iter().fold(limit, |at, member| {
                    let (from, to) = rules.fouled(member, false);
                    if from < at && at < to { to } else { at }
                });
                if fair(at) {
                    places.push(Landing { at, on: Rest::Blocking });
                }
            }
        }
        unique(places)
    }

    /// The places of the port edge.
    pub(super) fn port(&self, damage: &Bounds) -> Vec<Landing> {
        let rules = self.rules;
        let most = damage.port - rules.margin;
        let mut places = vec![Landing { at: self.board.port, on: Rest::BoardEdge }];
        let fair = |at: &Length| *at - rules.gap - self.board.port >= rules.least_strip && *at > self.board.port;
        let limits = self.limits(most, |clear| clear.port, |at| at <= most);
        places.extend(limits.into_iter().filter(fair).map(|at| Landing { at, on: Rest::Blocking }));
        unique(places)
    }

    /// The places of the starboard edge.
    pub(super) fn starboard(&self, damage: &Bounds) -> Vec<Landing> {
        let rules = self.rules;
        let least = damage.starboard + rules.margin;
        let mut places = vec![Landing { at: self.board.starboard, on: Rest::BoardEdge }];
        let fair =
            |at: &Length| self.board.starboard - *at - rules.gap >= rules.least_strip && *at < self.board.starboard;
        let limits = self.limits(least, |clear| clear.starboard, |at| at >= least);
        places.extend(limits.into_iter().filter(fair).map(|at| Landing { at, on: Rest::Blocking }));
        unique(places)
    }

    /// The margin, and just beyond each opening past it: from each on, an edge is wanted as near as can be.
    fn limits(&self, margin: Length, side: impl Fn(&Bounds) -> Length, past: impl Fn(Length) -> bool) -> Vec<Length> {
        std::iter::once(margin).chain(self.clear.iter().map(side).filter(|at| past(*at))).collect()
    }

    /// True where no edge of the patch that is sawn runs through an opening.
    pub(super) fn is_clear(&self, patch: &Bounds) -> bool {
        let board = &self.board;
        self.clear.iter().all(|hole| {
            let beside = hole.aft <= patch.fore
                || hole.fore >= patch.aft
                || hole.starboard <= patch.port
                || hole.port >= patch.starboard;
            let within = (patch.fore == board.fore || patch.fore <= hole.fore)
                && (patch.aft == board.aft || hole.aft <= patch.aft)
                && (patch.port == board.port || patch.port <= hole.port)
                && (patch.starboard == board.starboard || hole.starboard <= patch.starboard);
            beside || within
        })
    }
}

fn unique(mut places: Vec<Landing>) -> Vec<Landing> {
    places.sort_by_key(|place| (place.at, place.on));
    places.dedup();
    places
}
