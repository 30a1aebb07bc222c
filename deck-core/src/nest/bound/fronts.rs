//! Which sets of a few rectangles can be sawn out of one sheet.
//!
//! # Method
//! For every subset of the chosen rectangles, the smallest pieces out of which it can be sawn: the first cut parts the
//! subset in two, whose pieces lie side by side or end to end. Pieces that are larger both ways than another are
//! dropped. Exhaustive, so a set without a piece cannot be sawn; common practice for few items.

use super::super::build::Node;
use super::super::effort::Steps;
use super::super::problem::Size;
use crate::stock::SawLine;

/// Subsets from which on one more rectangle takes long enough to be broken off.
const MANY: usize = 1 << 6;

/// Smallest pieces of all subsets of the rectangles chosen so far. A subset is a number with one bit for each.
#[derive(Debug)]
pub(super) struct Fronts {
    sheet: Size,
    /// Pieces of subset after subset.
    points: Vec<Size>,
    /// Where the pieces of each subset begin, with one more entry at the end.
    starts: Vec<usize>,
    scratch: Vec<Size>,
}

impl Fronts {
    pub(super) fn new(sheet: Size) -> Fronts {
        Fronts { sheet, points: Vec::new(), starts: vec![0, 0], scratch: Vec::new() }
    }

    fn front(&self, subset: usize) -> &[Size] {
        let at = |index: usize| self.starts.get(index).copied().unwrap_or(self.points.len());
        self.points.get(at(subset)..at(subset + 1)).unwrap_or_default()
    }

    /// Rectangles chosen.
    pub(super) fn depth(&self) -> usize {
        // One entry for each subset and one at the end.
        (self.starts.len() - 1).trailing_zeros() as usize
    }

    /// True where one more rectangle could be added.
    pub(super) fn holds(&mut self, lies: [Option<Size>; 2], steps: &mut Steps<'_>) -> bool {
        // Beside all the others is the commonest place.
        let all = self.front(self.starts.len() - 2);
        steps.spend(1 + all.len() as u64 / 4);
        let beside = |size: Size| {
            let fits = |length: i64, width: i64| length <= self.sheet.0 && width <= self.sheet.1;
            all.iter()
                .any(|other| fits(other.0 + size.0, other.1.max(size.1)) || fits(other.0.max(size.0), other.1 + size.1))
        };
        if self.depth() > 0 && lies.into_iter().flatten().any(beside) {
            return true;
        }
        let pushed = self.push(lies, steps);
        if pushed {
            self.pop();
        }
        pushed
    }

    /// Adds one more rectangle. False, and nothing is added, where the sheet does not hold all, or where for one of many
    /// the steps do not last.
    pub(super) fn push(&mut self, lies: [Option<Size>; 2], steps: &mut Steps<'_>) -> bool {
        let (own, kept) = (self.starts.len() - 1, self.points.len());
        for subset in own..2 * own {
            self.scratch.clear();
            let mut scratch = std::mem::take(&mut self.scratch);
            if subset == own {
                for size in lies.into_iter().flatten() {
                    offer(&mut scratch, size, self.sheet);
                }
            }
            let others = subset - own;
            let mut side = others;
            while side > 0 {
                let (first, second) = (self.front(subset - side), self.front(side));
                steps.spend(1 + (first.len() * second.len()) as u64);
                for &(length, width) in first {
                    for &(other_length, other_width) in second {
                        offer(&mut scratch, (length + other_length, width.max(other_width)), self.sheet);
                        offer(&mut scratch, (length.max(other_length), width + other_width), self.sheet);
                    }
                }
                side = (side - 1) & others;
            }
            let fits = !scratch.is_empty() && (own < MANY || !steps.spent_all());
            self.points.extend(&scratch);
            self.scratch = scratch;
            if !fits {
                // No set that holds this one fits either.
                self.points.truncate(kept);
                self.starts.truncate(own + 1);
                return false;
            }
            self.starts.push(self.points.len());
        }
        true
    }

    /// Takes the last rectangle away.
    pub(super) fn pop(&mut self) {
        let subsets = self.starts.len() / 2;
        self.starts.truncate(subsets + 1);
        self.points.truncate(self.starts.last().copied().unwrap_or(0));
    }

    /// The cuts of a sheet that holds all; `classes` name the rectangles in the order in which they were added.
    pub(super) fn nodes(&self, classes: &[u32]) -> Vec<Node> {
        let all = self.starts.len() - 2;
        let mut nodes = vec![Node::Free];
        if let Some(&size) = self.front(all).first() {
            self.saw(&mut nodes, 0, self.sheet, (all, size), classes);
        }
        nodes
    }

    /// Saws a subset, which asks for that size, out of a piece.
    fn saw(&self, nodes: &mut Vec<Node>, node: usize, piece: Size, (subset, size): (usize, Size), classes: &[u32]) {
        if piece.0 > size.0 {
            let first = split(nodes, node, SawLine::Width, size.0);
            return self.saw(nodes, first, (size.0, piece.1), (subset, size), classes);
        }
        if piece.1 > size.1 {
            let first = split(nodes, node, SawLine::Length, size.1);
            return self.saw(nodes, first, size, (subset, size), classes);
        }
        if subset.is_power_of_two() {
            if let (Some(place), Some(&class)) = (nodes.get_mut(node), classes.get(subset.trailing_zeros() as usize)) {
                *place = Node::Part(class);
            }
            return;
        }
        let Some((line, one, other)) = self.parted(subset, size) else { return };
        let (at, rest) = match line {
            SawLine::Width => ((one.1.0, size.1), (size.0 - one.1.0, size.1)),
            SawLine::Length => ((size.0, one.1.1), (size.0, size.1 - one.1.1)),
        };
        let first = split(nodes, node, line, if line == SawLine::Width { at.0 } else { at.1 });
        self.saw(nodes, first, at, one, classes);
        self.saw(nodes, first + 1, rest, other, classes);
    }

    /// How a smallest piece of a subset came about.
    #[allow(clippy::type_complexity, reason = "two subsets with their pieces; a type of its own would say no more")]
    fn parted(&self, subset: usize, size: Size) -> Option<(SawLine, (usize, Size), (usize, Size))> {
        let mut side = (subset - 1) & subset;
        while side > 0 {
            for &one in self.front(subset - side) {
                for &other in self.front(side) {
                    let line = if (one.0 + other.0, one.1.max(other.1)) == size {
                        SawLine::Width
                    } else if (one.0.max(other.0), one.1 + other.1) == size {
                        SawLine::Length
                    } else {
                        continue;
                    };
                    return Some((line, (subset - side, one), (side, other)));
                }
            }
            side = (side - 1) & subset;
        }
        None
    }
}

/// Cuts a node in two; the index of the first, behind which the second follows.
pub(super) fn split(nodes: &mut Vec<Node>, node: usize, line: SawLine, at: i64) -> usize {
    let first = nodes.len();
    // A few rectangles have a few dozen nodes.
    let index = u32::try_from(first).unwrap_or(u32::MAX - 1);
    nodes.extend([Node::Free, Node::Free]);
    if let Some(place) = nodes.get_mut(node) {
        *place = Node::Split { line, at, first: index, second: index + 1 };
    }
    first
}

/// Keeps a piece that the sheet holds and that no other undercuts.
fn offer(front: &mut Vec<Size>, piece: Size, sheet: Size) {
    if piece.0 > sheet.0 || piece.1 > sheet.1 || front.iter().any(|other| other.0 <= piece.0 && other.1 <= piece.1) {
        return;
    }
    front.retain(|other| piece.0 > other.0 || piece.1 > other.1);
    front.push(piece);
}

#[cfg(test)]
mod tests {
    use super::*;

    fn push(fronts: &mut Fronts, size: Size) -> bool {
        fronts.push([Some(size), None], &mut Steps::new(u64::MAX, u64::MAX))
    }

    #[test]
    fn four_around_a_hole_cannot_be_sawn() {
        // The pinwheel fills 5 by 5 but for the middle; no saw cuts it edge to edge.
        let mut fronts = Fronts::new((5, 5));
        assert!(push(&mut fronts, (3, 2)) && push(&mut fronts, (2, 3)) && push(&mut fronts, (3, 2)));
        assert!(!push(&mut fronts, (2, 3)));
        // What was refused has left nothing behind.
        assert!(push(&mut fronts, (2, 2)));
        assert_eq!(fronts.starts.len(), 17);
        fronts.pop();
        assert_eq!(fronts.starts.len(), 9);
    }

    #[test]
    fn the_cuts_are_told() {
        let mut fronts = Fronts::new((10, 10));
        assert!(push(&mut fronts, (6, 10)) && push(&mut fronts, (4, 5)) && push(&mut fronts, (4, 4)));
        let nodes = fronts.nodes(&[7, 8, 9]);
        let parts: Vec<u32> =
            nodes.iter().filter_map(|node| if let Node::Part(class) = node { Some(*class) } else { None }).collect();
        assert_eq!(parts.len(), 3);
        assert!(matches!(nodes[0], Node::Split { line: SawLine::Width, at: 6, .. } | Node::Split { at: 4, .. }));
    }
}
