//! A filled sheet put in order for the saw: parallel cuts together, strips before waste, waste in one piece.

use super::super::problem::{Problem, Size, along, strip};
use super::fill::{Node, Pattern};
use crate::stock::SawLine;
use std::cmp::Reverse;
use std::collections::BTreeSet;

/// A piece of a sheet in grown measure.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(in crate::nest) enum Piece {
    /// Nothing lies there.
    Free,
    /// A part of that class.
    Part(u32),
    /// Sawn by parallel lines into pieces of these extents, from the origin edge on.
    Strips(SawLine, Vec<(i64, Piece)>),
}

/// What the choice between layouts looks at once area and cost are equal.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub(in crate::nest) struct Tally {
    /// Largest single piece worth keeping, in real area.
    pub(in crate::nest) largest_offcut: i128,
    /// Different fence settings: direction and distance.
    pub(in crate::nest) fences: BTreeSet<(SawLine, i64)>,
    /// Saw cuts.
    pub(in crate::nest) cuts: u64,
}

/// The pattern's pieces in sawing order.
///
/// Strips of one run may be sawn in any order. The widest come first, so that equal ones share a fence setting, and
/// what is left free lies behind them in one piece. Where nothing is left, the last strip needs no cut: that is the one
/// whose width occurs least often, and its fence setting is saved.
pub(in crate::nest) fn layout(problem: &Problem, pattern: &Pattern) -> Piece {
    let size = problem.racks.get(pattern.rack).map_or((0, 0), |rack| rack.size);
    piece(&pattern.nodes, 0, size)
}

fn piece(nodes: &[Node], index: u32, size: Size) -> Piece {
    match nodes.get(index as usize) {
        Some(&Node::Part(class)) => Piece::Part(class),
        Some(&Node::Split { line, .. }) => strips(nodes, index, size, line),
        Some(Node::Free) | None => Piece::Free,
    }
}

/// All parallel cuts that follow one another from this node on. Loops along the run; recursion is only as deep as the
/// saw line turns.
fn strips(nodes: &[Node], index: u32, size: Size, run: SawLine) -> Piece {
    let mut pieces: Vec<(i64, Piece)> = Vec::new();
    let mut free = 0;
    let mut waiting = vec![(index, along(size, run))];
    while let Some((index, extent)) = waiting.pop() {
        match nodes.get(index as usize) {
            Some(&Node::Split { line, at, first, second }) if line == run => {
                waiting.push((second, extent - at));
                waiting.push((first, at));
            }
            _ => match piece(nodes, index, strip(size, run, extent)) {
                Piece::Free => free += extent,
                piece => pieces.push((extent, piece)),
            },
        }
    }
    if pieces.is_empty() {
        return Piece::Free;
    }
    pieces.sort_by_key(|&(extent, _)| Reverse(extent));
    if free > 0 {
        pieces.push((free, Piece::Free));
    } else {
        rarest_last(&mut pieces);
    }
    Piece::Strips(run, pieces)
}

/// Moves the strip whose extent occurs least often to the end, the narrowest such among equals; widest come first.
fn rarest_last(pieces: &mut Vec<(i64, Piece)>) {
    // Equal ones stand together: a group is as long as its extent occurs.
    let mut rarest: Option<(usize, usize)> = None;
    let mut start = 0;
    while let Some(&(extent, _)) = pieces.get(start) {
        let count = pieces.iter().skip(start).take_while(|piece| piece.0 == extent).count();
        if rarest.is_none_or(|(_, least)| count <= least) {
            rarest = Some((start + count - 1, count));
        }
        start += count;
    }
    if let Some((at, _)) = rarest {
        let piece = pieces.remove(at);
        pieces.push(piece);
    }
}

impl Tally {
    /// Adds so many sheets of a pattern.
    pub(in crate::nest) fn add(&mut self, problem: &Problem, pattern: &Pattern, times: u32) {
        let (size, grain) = problem.racks.get(pattern.rack).map_or(((0, 0), true), |rack| (rack.size, rack.grain));
        self.look(problem, &layout(problem, pattern), size, grain, u64::from(times));
    }

    fn look(&mut self, problem: &Problem, piece: &Piece, size: Size, grain: bool, times: u64) {
        match piece {
            Piece::Part(_) => {}
            Piece::Free => {
                if problem.keeps(size, grain) {
                    let area = i128::from(size.0 - problem.kerf) * i128::from(size.1 - problem.kerf);
                    self.largest_offcut = self.largest_offcut.max(area);
                }
            }
            Piece::Strips(line, pieces) => {
                // Behind the last strip there is no cut.
                for (extent, _) in pieces.iter().take(pieces.len().saturating_sub(1)) {
                    self.fences.insert((*line, *extent));
                    self.cuts += times;
                }
                for (extent, piece) in pieces {
                    self.look(problem, piece, strip(size, *line, *extent), grain, times);
                }
            }
        }
    }
}
