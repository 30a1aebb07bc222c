//! Patterns put together from parts: what lies beside what.

use super::super::build::Node;
use super::super::problem::Size;
use crate::stock::SawLine;
use std::collections::BTreeMap;

/// Index of a rectangle in its [`Joins`].
pub(super) type Joined = u32;

/// A rectangle put together from parts.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Made {
    Part(u32),
    /// Two rectangles with a saw line between them.
    Join(SawLine, Joined, Joined),
}

/// Rectangles, each made of earlier ones.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub(super) struct Joins {
    made: Vec<(Made, Size, Turns)>,
}

/// Turns of the saw line in a run of that direction which a rectangle is an element of: along the length, and across.
///
/// A part alone is freed by a cut that is not counted; a run of the same direction is sawn with the same setting.
pub(super) type Turns = (u8, u8);

impl Joins {
    pub(super) fn new() -> Joins {
        Joins::default()
    }

    pub(super) fn clear(&mut self) {
        self.made.clear();
    }

    pub(super) fn part(&mut self, class: u32, size: Size) -> Joined {
        self.add(Made::Part(class), size, (1, 1))
    }

    /// Two rectangles on both sides of a saw line.
    pub(super) fn join(&mut self, line: SawLine, first: Joined, second: Joined) -> Joined {
        let size = join_sizes(line, self.size(first), self.size(second));
        let turns = join_turns(line, self.turns(first), self.turns(second));
        self.add(Made::Join(line, first, second), size, turns)
    }

    fn add(&mut self, made: Made, size: Size, turns: Turns) -> Joined {
        let index = self.made.len();
        self.made.push((made, size, turns));
        // Every rectangle holds a part, and memory ends long before four thousand million of them.
        u32::try_from(index).unwrap_or(u32::MAX)
    }

    pub(super) fn size(&self, joined: Joined) -> Size {
        self.made.get(joined as usize).map_or((0, 0), |made| made.1)
    }

    pub(super) fn turns(&self, joined: Joined) -> Turns {
        self.made.get(joined as usize).map_or((1, 1), |made| made.2)
    }

    /// The direction of the lines that a rectangle is sawn by first; none for a part.
    pub(super) fn line(&self, joined: Joined) -> Option<SawLine> {
        match self.made.get(joined as usize) {
            Some(&(Made::Join(line, ..), ..)) => Some(line),
            _ => None,
        }
    }

    /// The same without the parts that are more than `counts` allow; none where nothing is left.
    pub(super) fn pruned(&self, joined: Joined, counts: impl Fn(u32) -> u32, pruned: &mut Joins) -> Option<Joined> {
        let (mut open, mut reached) = (vec![joined], Vec::new());
        while let Some(joined) = open.pop() {
            reached.push(joined);
            if let Some(&(Made::Join(_, first, second), ..)) = self.made.get(joined as usize) {
                open.extend([first, second]);
            }
        }
        let mut taken: BTreeMap<u32, u32> = BTreeMap::new();
        // One entry for each time that a rectangle is met; what it is made of is met after it.
        let mut kept: Vec<Option<Joined>> = Vec::new();
        for &joined in reached.iter().rev() {
            let place = match self.made.get(joined as usize) {
                Some(&(Made::Part(class), size, _)) => {
                    let taken = taken.entry(class).or_insert(0);
                    *taken += 1;
                    (*taken <= counts(class)).then(|| pruned.part(class, size))
                }
                Some(&(Made::Join(line, ..), ..)) => match (kept.pop().flatten(), kept.pop().flatten()) {
                    (Some(first), Some(second)) => Some(pruned.join(line, first, second)),
                    (one, other) => one.or(other),
                },
                None => None,
            };
            kept.push(place);
        }
        kept.pop().flatten()
    }

    /// The classes in a rectangle, one entry for each part.
    pub(super) fn parts(&self, joined: Joined) -> Vec<u32> {
        let (mut open, mut parts) = (vec![joined], Vec::new());
        while let Some(joined) = open.pop() {
            match self.made.get(joined as usize) {
                Some(&(Made::Part(class), ..)) => parts.push(class),
                Some(&(Made::Join(_, first, second), ..)) => open.extend([second, first]),
                None => {}
            }
        }
        parts
    }

    /// The elements of a run of parallel lines.
    fn run(&self, joined: Joined, run: SawLine) -> Vec<Joined> {
        let (mut open, mut elements) = (vec![joined], Vec::new());
        while let Some(joined) = open.pop() {
            match self.made.get(joined as usize) {
                Some(&(Made::Join(line, first, second), ..)) if line == run => open.extend([second, first]),
                _ => elements.push(joined),
            }
        }
        elements
    }

    /// The cuts that saw a rectangle out of a piece that is at least as large.
    ///
    /// The waste of a run lies behind its last element. Where the first line is fixed and the rectangle begins with the
    /// other one, its waste is taken off first.
    pub(super) fn nodes(&self, joined: Joined, piece: Size, first: Option<SawLine>) -> Vec<Node> {
        let mut writer = Writer { joins: self, nodes: vec![Node::Free] };
        let (mut node, mut piece) = (0, piece);
        if let Some(first) = first.filter(|first| self.line(joined) == Some(first.turned())) {
            (node, piece) = writer.free(node, piece, self.size(joined), first);
        }
        writer.piece(node, joined, piece, first.unwrap_or(SawLine::Length));
        writer.nodes
    }
}

/// The smallest size that holds two rectangles with a saw line between them.
pub(super) fn join_sizes(line: SawLine, one: Size, other: Size) -> Size {
    match line {
        SawLine::Length => (one.0.max(other.0), one.1 + other.1),
        SawLine::Width => (one.0 + other.0, one.1.max(other.1)),
    }
}

/// Turns of two rectangles with a saw line between them.
pub(super) fn join_turns(line: SawLine, one: Turns, other: Turns) -> Turns {
    match line {
        SawLine::Length => {
            let turns = one.0.max(other.0);
            (turns, turns.saturating_add(1))
        }
        SawLine::Width => {
            let turns = one.1.max(other.1);
            (turns.saturating_add(1), turns)
        }
    }
}

/// The extent across a saw line.
fn across(line: SawLine, size: Size) -> i64 {
    if line == SawLine::Length { size.1 } else { size.0 }
}

struct Writer<'j> {
    joins: &'j Joins,
    nodes: Vec<Node>,
}

impl Writer<'_> {
    fn piece(&mut self, node: u32, joined: Joined, piece: Size, first: SawLine) {
        match self.joins.made.get(joined as usize) {
            Some(&(Made::Part(class), size, _)) => {
                let (node, piece) = self.free(node, piece, size, first);
                let (node, _) = self.free(node, piece, size, first.turned());
                self.set(node, Node::Part(class));
            }
            Some(&(Made::Join(line, ..), ..)) => self.run(node, joined, piece, line),
            None => {}
        }
    }

    /// Recursion is only as deep as the saw line turns.
    fn run(&mut self, node: u32, joined: Joined, piece: Size, line: SawLine) {
        let (mut node, mut piece) = (node, piece);
        let elements = self.joins.run(joined, line);
        for (index, &element) in elements.iter().enumerate() {
            let extent = across(line, self.joins.size(element));
            if index + 1 == elements.len() && extent == across(line, piece) {
                self.piece(node, element, piece, line.turned());
                return;
            }
            let (before, behind) = self.split(node, line, extent);
            let (strip, rest) = split_size(line, piece, extent);
            self.piece(before, element, strip, line.turned());
            (node, piece) = (behind, rest);
        }
    }

    /// Takes the waste off along one line; the piece that holds the part.
    fn free(&mut self, node: u32, piece: Size, part: Size, line: SawLine) -> (u32, Size) {
        let extent = across(line, part);
        if extent >= across(line, piece) {
            return (node, piece);
        }
        let (before, _) = self.split(node, line, extent);
        (before, split_size(line, piece, extent).0)
    }

    fn split(&mut self, node: u32, line: SawLine, at: i64) -> (u32, u32) {
        let first = u32::try_from(self.nodes.len()).unwrap_or(u32::MAX);
        let second = first.saturating_add(1);
        self.nodes.extend([Node::Free, Node::Free]);
        self.set(node, Node::Split { line, at, first, second });
        (first, second)
    }

    fn set(&mut self, node: u32, value: Node) {
        if let Some(place) = self.nodes.get_mut(node as usize) {
            *place = value;
        }
    }
}

fn split_size(line: SawLine, piece: Size, extent: i64) -> (Size, Size) {
    match line {
        SawLine::Length => ((piece.0, extent), (piece.0, piece.1 - extent)),
        SawLine::Width => ((extent, piece.1), (piece.0 - extent, piece.1)),
    }
}
