//! Can these parts all be cut from one sheet?

use super::super::build::Pattern;
use super::super::effort::Steps;
use super::super::problem::{Class, MOST_STAGES, Problem, Size};
use super::best::All;
use super::board::{Board, Kind, Limits};

/// A size that no sheet holds.
const NOWHERE: Size = (i64::MAX, i64::MAX);

/// Whether a number of parts can be cut from one sheet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(in crate::nest) enum Fits {
    /// They can, like this.
    Yes(Pattern),
    /// No saw within its limits can cut them all from one sheet.
    No,
    /// The steps did not suffice to tell, or the watcher said stop.
    Unknown,
}

/// Whether so many copies of each class can be cut from one sheet of a rack; steps are counted down.
#[allow(dead_code, reason = "for the nest where the parts that are left may fit one sheet")]
pub(in crate::nest) fn fits(problem: &Problem, rack: usize, copies: &[u32], steps: &mut Steps<'_>) -> Fits {
    let board = board(problem, rack, copies);
    match board.all(steps) {
        All::Fit(filled) => {
            let area = |&(class, copies): &(u32, u32)| {
                problem.classes.get(class as usize).map_or(0, |class| class.area * i128::from(copies))
            };
            let area = filled.parts.iter().map(area).sum();
            Fits::Yes(Pattern { rack, nodes: filled.nodes, parts: filled.parts, area })
        }
        All::DoNotFit => Fits::No,
        All::Unknown => Fits::Unknown,
    }
}

/// A sheet of a rack with all copies that are wanted, for a saw without limits.
pub(in crate::nest) fn unlimited_saw(problem: &Problem, rack: usize) -> Board {
    board_for(problem, rack, &problem.wanted(), Limits::NONE)
}

/// A sheet of a rack without its trim, and so many copies of each class.
pub(super) fn board(problem: &Problem, rack: usize, copies: &[u32]) -> Board {
    let limits = Limits { stages: (problem.stages < MOST_STAGES).then_some(problem.stages), first: problem.first };
    board_for(problem, rack, copies, limits)
}

fn board_for(problem: &Problem, rack: usize, copies: &[u32], limits: Limits) -> Board {
    let Some(rack) = problem.racks.get(rack) else { return Board::new((0, 0), &[], limits) };
    let counts = copies.iter().copied().chain(std::iter::repeat(0));
    let kind = |(class, count): (&Class, u32)| {
        // What grain locks has no place where the grain may run either way.
        let size = if class.locked && rack.unsure { NOWHERE } else { class.size };
        Kind { size, turns: !(class.locked && rack.grain), count }
    };
    let kinds: Vec<Kind> = problem.classes.iter().zip(counts).map(kind).collect();
    Board::new(rack.size, &kinds, limits)
}
