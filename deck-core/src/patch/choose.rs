//! The patches of every board.

use super::edges::{Landing, Site};
use super::rules::{Damage, OldBoard, PatchRules, around};
use super::search::{Candidate, cheapest};
use crate::frame::{CrossMember, Frame};
use crate::geometry::{Bounds, Path};
use crate::length::{Area, Length};
use serde::{Deserialize, Serialize};

/// What an edge of a patch rests on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(tag = "kind", content = "number", rename_all = "kebab-case")]
pub enum Rest {
    /// It is an edge of the old board, and rests on what that rested on.
    BoardEdge,
    /// On the flange of a member, together with what stays.
    Member(usize),
    /// On blocking that is put in.
    Blocking,
}

/// A side of a patch.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum PatchSide {
    /// Its fore edge.
    Fore,
    /// Its aft edge.
    Aft,
    /// Its port edge.
    Port,
    /// Its starboard edge.
    Starboard,
}

/// An edge of a patch.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct PatchEdge {
    /// Which.
    pub side: PatchSide,
    /// Where it lies: a station, or a distance from the port edge.
    pub at: Length,
    /// What it rests on.
    pub on: Rest,
    /// Where the old board is sawn: a gap further out; none at an edge of the old board.
    pub saw_at: Option<Length>,
}

/// What is replaced of a board around one or more damaged places.
#[derive(Debug, Clone, PartialEq, Eq)]
#[non_exhaustive]
pub struct Patch {
    /// The old board's place in the list.
    pub board: usize,
    /// The damaged places, by their places in the list.
    pub damages: Vec<usize>,
    /// The rectangle of the new board.
    pub bounds: Bounds,
    /// Its edges: fore, aft, port, starboard.
    pub edges: [PatchEdge; 4],
    /// The new board in its true shape, in one part or more.
    pub shapes: Vec<Path<()>>,
    /// Blocking under its edges, between the flanges.
    pub blocking: Vec<Bounds>,
    /// Plywood of the patch and of its blocking.
    pub plywood: Area,
}

/// The patches, or why there are none.
#[derive(Debug, Clone, PartialEq, Eq)]
#[non_exhaustive]
pub enum Patched {
    /// Patches, board by board.
    Patches(Vec<Patch>),
    /// A board's damage finds no patch that a sheet holds: the board's place in the list, and the smallest rectangle that
    /// was tried.
    TooLarge {
        /// The old board's place in the list.
        board: usize,
        /// The smallest rectangle whose edges land somewhere.
        least: Bounds,
    },
}

/// The least plywood that replaces every damaged place, blocking counted in.
///
/// Boards do not touch each other: what reaches over an old seam is patched on both sides of it, and an old seam needs no
/// margin, as rot has to be probed for in the next board by itself. No more than eight damaged places of one board are
/// looked at together; the caller sees to that.
///
/// # Method
/// For a set of damaged places, an edge lies as near to them as what it rests on allows, so there are few candidates; all
/// are gone through. The sets are chosen by branch and bound over all partitions of a board's damaged places, with patches
/// of one board apart by a strip that may stay. Areas are whole, so the answer is exact. Derived here, no source.
pub fn patch(boards: &[OldBoard], damages: &[Damage], frame: &Frame, rules: &PatchRules) -> Patched {
    let mut all = Vec::new();
    for (index, board) in boards.iter().enumerate() {
        match of_board(index, board, damages, frame, rules) {
            Ok(patches) => all.extend(patches),
            Err(least) => return Patched::TooLarge { board: index, least },
        }
    }
    Patched::Patches(all)
}

fn of_board(
    index: usize,
    board: &OldBoard,
    damages: &[Damage],
    frame: &Frame,
    rules: &PatchRules,
) -> Result<Vec<Patch>, Bounds> {
    let bounds = board.shape.bounds();
    let parts = damages.iter().enumerate().filter_map(|(number, damage)| Some((number, damage.within(bounds)?)));
    let (numbers, parts): (Vec<usize>, Vec<Bounds>) = parts.unzip();
    let members: Vec<CrossMember> =
        frame.members().iter().filter(|member| member.aft > bounds.fore && member.fore < bounds.aft).cloned().collect();
    let site = Site { board: bounds, clear: &board.clear, members: &members, rules };
    let candidates = |set: usize| {
        let chosen = parts.iter().enumerate().filter(|(part, _)| set >> part & 1 == 1).map(|(_, bounds)| *bounds);
        chosen.reduce(around).map(|damage| site.candidates(&damage, board)).unwrap_or_default()
    };
    let found = cheapest(parts.len(), board.clear.is_empty(), candidates, |one, other| {
        site.are_apart(&one.bounds, &other.bounds)
    });
    match found {
        Some(chosen) => Ok(chosen
            .into_iter()
            .map(|(set, candidate)| {
                let of_set = numbers.iter().enumerate().filter(|(part, _)| set >> part & 1 == 1);
                site.patch(index, of_set.map(|(_, number)| *number).collect(), &candidate, board)
            })
            .collect()),
        None => Err(bounds),
    }
}

impl Site<'_> {
    /// Every rectangle around a damaged stretch whose edges land somewhere and that a sheet holds.
    fn candidates(&self, damage: &Bounds, board: &OldBoard) -> Vec<Candidate> {
        let (ports, starboards) = (self.port(damage), self.starboard(damage));
        let mut found = Vec::new();
        for fore in self.fore(damage) {
            for aft in self.aft(damage) {
                for port in &ports {
                    for starboard in &starboards {
                        let landings = [fore, aft, *port, *starboard];
                        let bounds = Bounds { fore: fore.at, aft: aft.at, port: port.at, starboard: starboard.at };
                        if self.rules.fits(&bounds) && self.is_clear(&bounds) {
                            let cost = self.cost(&bounds, &landings, board);
                            found.push(Candidate { bounds, landings, cost });
                        }
                    }
                }
            }
        }
        found
    }

    /// Plywood in square nanometres: the patch in its true shape, and its blocking.
    fn cost(&self, bounds: &Bounds, landings: &[Landing; 4], board: &OldBoard) -> i128 {
        let patch: i128 = cut_out(&board.shape, bounds).iter().map(Path::area).sum();
        let blocking = self.blocking(bounds, landings);
        let blocking = blocking.iter().map(|piece| Area::of(piece.depth(), piece.breadth()).square_nanometres());
        patch + blocking.sum::<i128>()
    }

    /// Blocking centred under each joint that rests on some: athwart from side to side of the patch, fore and aft between
    /// the flanges.
    fn blocking(&self, bounds: &Bounds, landings: &[Landing; 4]) -> Vec<Bounds> {
        let half = self.rules.blocking / 2;
        let [fore, aft, port, starboard] = *landings;
        let gap = self.rules.gap / 2;
        let mut pieces = Vec::new();
        for (landing, joint) in [(fore, fore.at - gap), (aft, aft.at + gap)] {
            if landing.on == Rest::Blocking {
                let strip = Bounds { fore: joint - half, aft: joint + half, ..*bounds };
                pieces.extend(self.between_flanges(strip).into_iter().filter(|piece| {
                    // Of a strip that reaches over a flange the piece under the joint counts.
                    piece.fore < joint && joint < piece.aft
                }));
            }
        }
        for (landing, joint) in [(port, port.at - gap), (starboard, starboard.at + gap)] {
            if landing.on == Rest::Blocking {
                pieces.extend(self.between_flanges(Bounds { port: joint - half, starboard: joint + half, ..*bounds }));
            }
        }
        pieces
    }

    fn between_flanges(&self, strip: Bounds) -> Vec<Bounds> {
        let mut free = crate::math::IntervalSet::of(strip.fore.nanometres(), strip.aft.nanometres());
        for member in self.members {
            free.remove_open(member.fore.nanometres(), member.aft.nanometres());
        }
        let piece = |&(fore, aft): &(i64, i64)| Bounds {
            fore: Length::from_nanometres(fore),
            aft: Length::from_nanometres(aft),
            ..strip
        };
        free.intervals().iter().map(piece).filter(|piece| piece.depth() > Length::ZERO).collect()
    }

    /// Two patches of a board leave a strip between them that may stay.
    fn are_apart(&self, one: &Bounds, other: &Bounds) -> bool {
        let least = self.rules.least_strip + self.rules.gap * 2;
        let along = (other.fore - one.aft).max(one.fore - other.aft);
        let across = (other.port - one.starboard).max(one.port - other.starboard);
        along.max(across) >= least
    }

    fn patch(&self, board: usize, damages: Vec<usize>, candidate: &Candidate, old: &OldBoard) -> Patch {
        let gap = self.rules.gap;
        let sides = [PatchSide::Fore, PatchSide::Aft, PatchSide::Port, PatchSide::Starboard];
        let edge = |index: usize| {
            let (side, landing) = (sides[index], candidate.landings[index]);
            let outward = if matches!(side, PatchSide::Fore | PatchSide::Port) { -gap } else { gap };
            let saw_at = (landing.on != Rest::BoardEdge).then_some(landing.at + outward);
            PatchEdge { side, at: landing.at, on: landing.on, saw_at }
        };
        Patch {
            board,
            damages,
            bounds: candidate.bounds,
            edges: [edge(0), edge(1), edge(2), edge(3)],
            shapes: cut_out(&old.shape, &candidate.bounds),
            blocking: self.blocking(&candidate.bounds, &candidate.landings),
            plywood: Area::from_square_nanometres(candidate.cost),
        }
    }
}

/// What of a board lies in a rectangle.
fn cut_out(shape: &Path<()>, bounds: &Bounds) -> Vec<Path<()>> {
    let strips = shape.strip(Some((bounds.fore, ())), Some((bounds.aft, ())));
    let across = strips.iter().flat_map(|strip| {
        let turned = strip.transposed();
        turned.strip(Some((bounds.port, ())), Some((bounds.starboard, ())))
    });
    across.map(|part| part.transposed()).collect()
}
