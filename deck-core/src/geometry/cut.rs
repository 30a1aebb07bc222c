//! Cuts a path by lines athwart, or slanted by a little, keeping arcs as arcs and every corner exact.

use super::{CutLine, Path, Point, Side};
use crate::length::Length;

/// Which part of a cut path is kept.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Keep {
    /// Forward of the line.
    Fore,
    /// Aft of it.
    Aft,
}

impl Keep {
    fn beyond(self, aft: Length) -> bool {
        match self {
            Keep::Fore => aft > Length::ZERO,
            Keep::Aft => aft < Length::ZERO,
        }
    }

    /// True for an edge on the line itself that bounds the kept part: its inside, on the left, is the kept part.
    fn bounds_along(self, from: Point, to: Point) -> bool {
        match self {
            Keep::Fore => to.y > from.y,
            Keep::Aft => to.y < from.y,
        }
    }
}

impl<T: Copy> Path<T> {
    /// The parts of the path between two stations, from port to starboard.
    ///
    /// New edges along the stations carry the marks `fore_edge` and `aft_edge`. A station of `None` does not cut.
    ///
    /// # Method
    /// Sides are split where they cross the line; what lies on the kept side falls into open chains whose ends all lie
    /// on the line. Sorted along it, each chain's end is joined to the chain start that follows it with the inside
    /// between them.
    pub fn strip(&self, fore: Option<(Length, T)>, aft: Option<(Length, T)>) -> Vec<Path<T>> {
        let line = |(station, edge)| (CutLine::athwart(station), edge);
        self.strip_along(fore.map(line), aft.map(line))
    }

    /// The same between two lines that may slant. Where they do, new corners are rounded to the nanometre.
    pub fn strip_along(&self, fore: Option<(CutLine, T)>, aft: Option<(CutLine, T)>) -> Vec<Path<T>> {
        let after_fore = match fore {
            Some((line, edge)) => self.half(line, edge, Keep::Aft),
            None => vec![self.clone()],
        };
        let mut parts: Vec<Path<T>> = match aft {
            Some((line, edge)) => after_fore.iter().flat_map(|part| part.half(line, edge, Keep::Fore)).collect(),
            None => after_fore,
        };
        parts.sort_by_key(|part| {
            let bounds = part.bounds();
            (bounds.port, bounds.fore, bounds.starboard)
        });
        parts
    }

    fn half(&self, line: CutLine, edge: T, keep: Keep) -> Vec<Path<T>> {
        let chains = match self.chains(line, keep) {
            Chains::Whole => return vec![self.clone()],
            Chains::Open(chains) => chains,
        };
        join(&chains, edge, keep).into_iter().map(|sides| Path::as_walked(sides).without_empty_sides()).collect()
    }

    /// The stretches of the path on the kept side, each with the point where it ends.
    fn chains(&self, line: CutLine, keep: Keep) -> Chains<T> {
        let pieces: Vec<Side<T>> = self.walk().flat_map(|(side, to)| line.split(side, to)).collect();
        let split = Path::as_walked(pieces);
        let kept: Vec<bool> = split.walk().map(|(side, to)| is_kept(side, to, line, keep)).collect();
        let Some(start) = kept.iter().position(|kept| !kept) else { return Chains::Whole };
        let walk: Vec<(&Side<T>, Point)> = split.walk().collect();
        let mut chains: Vec<Chain<T>> = Vec::new();
        let mut open = false;
        for step in 0..walk.len() {
            let index = (start + step) % walk.len();
            let (side, to) = walk[index];
            if !kept[index] {
                open = false;
                continue;
            }
            match chains.last_mut().filter(|_| open) {
                Some(chain) => {
                    chain.sides.push(side.clone());
                    chain.end = to;
                }
                None => chains.push(Chain { sides: vec![side.clone()], end: to }),
            }
            open = true;
        }
        Chains::Open(chains)
    }
}

enum Chains<T> {
    Whole,
    Open(Vec<Chain<T>>),
}

struct Chain<T> {
    sides: Vec<Side<T>>,
    end: Point,
}

fn is_kept<T>(side: &Side<T>, to: Point, line: CutLine, keep: Keep) -> bool {
    let (start, end) = (line.offset(side.from), line.offset(to));
    let along = start.is_zero() && end.is_zero();
    if along && side.arc.is_none() {
        return keep.bounds_along(side.from, to);
    }
    // After splitting, a side lies on one side of the line; an arc may touch the line with both ends.
    let middle = match side.arc {
        Some(arc) if along => line.offset(arc.middle(side.from, to)),
        _ if start.is_zero() => end,
        _ => start,
    };
    !keep.beyond(middle)
}

/// Joins chains along the line into closed runs of sides.
fn join<T: Copy>(chains: &[Chain<T>], edge: T, keep: Keep) -> Vec<Vec<Side<T>>> {
    let along = |point: Point| if keep == Keep::Fore { point.y } else { -point.y };
    let mut starts: Vec<(Length, usize)> = chains
        .iter()
        .enumerate()
        .filter_map(|(index, chain)| chain.sides.first().map(|side| (along(side.from), index)))
        .collect();
    starts.sort_unstable();
    let next_of = |chain: &Chain<T>| {
        let end = along(chain.end);
        starts.iter().find(|(start, _)| *start >= end).map(|(_, index)| *index)
    };
    let follows: Vec<Option<usize>> = chains.iter().map(next_of).collect();
    let mut used = vec![false; chains.len()];
    let mut rings = Vec::new();
    for first in 0..chains.len() {
        let mut ring = Vec::new();
        let mut at = Some(first);
        while let Some(index) = at.filter(|&index| !used[index]) {
            used[index] = true;
            ring.extend(chains[index].sides.iter().cloned());
            ring.push(Side { from: chains[index].end, arc: None, edge });
            at = follows[index];
        }
        if !ring.is_empty() {
            rings.push(ring);
        }
    }
    rings
}
