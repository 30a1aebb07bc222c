//! Patterns put together from parts: what lies beside what.

use super::super::build::Node;
use super::super::problem::Size;
use crate::stock::SawLine;

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
    made: Vec<(Made, Size)>,
}

impl Joins {
    pub(super) fn new() -> Joins {
        Joins::default()
    }

    pub(super) fn part(&mut self, class: u32, size: Size) -> Joined {
        self.add(Made::Part(class), size)
    }

    /// Two rectangles on both sides of a saw line.
    pub(super) fn join(&mut self, line: SawLine, first: Joined, second: Joined) -> Joined {
        let size = join_sizes(line, self.size(first), self.size(second));
        self.add(Made::Join(line, first, second), size)
    }

    fn add(&mut self, made: Made, size: Size) -> Joined {
        let index = self.made.len();
        self.made.push((made, size));
        // Every rectangle holds a part, and memory ends long before four thousand million of them.
        u32::try_from(index).unwrap_or(u32::MAX)
    }

    pub(super) fn size(&self, joined: Joined) -> Size {
        self.made.get(joined as usize).map_or((0, 0), |made| made.1)
    }

    /// The classes in a rectangle, one entry for each part.
    pub(super) fn parts(&self, joined: Joined) -> Vec<u32> {
        let (mut open, mut parts) = (vec![joined], Vec::new());
        while let Some(joined) = open.pop() {
            match self.made.get(joined as usize) {
                Some(&(Made::Part(class), _)) => parts.push(class),
                Some(&(Made::Join(_, first, second), _)) => open.extend([second, first]),
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
                Some(&(Made::Join(line, first, second), _)) if line == run => open.extend([second, first]),
                _ => elements.push(joined),
            }
        }
        elements
    }

    /// The cuts that saw a rectangle out of a piece that is at least as large.
    ///
    /// The waste of a run lies behind its last element. A part alone is freed along `first`, then across it.
    pub(super) fn nodes(&self, joined: Joined, piece: Size, first: SawLine) -> Vec<Node> {
        let mut writer = Writer { joins: self, nodes: vec![Node::Free] };
        writer.piece(0, joined, piece, first);
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
            Some(&(Made::Part(class), size)) => {
                let (node, piece) = self.free(node, piece, size, first);
                let (node, _) = self.free(node, piece, size, first.turned());
                self.set(node, Node::Part(class));
            }
            Some(&(Made::Join(line, ..), _)) => self.run(node, joined, piece, line),
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
