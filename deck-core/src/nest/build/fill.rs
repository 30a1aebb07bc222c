//! Fills one sheet, part by part, each into the free piece that it wastes least of.
//!
//! # Method
//! Best-fit insertion into the free pieces of a guillotine partition: a part is sawn out of one corner of a free piece
//! by at most two cuts, and the rests are free pieces in their turn. Common practice; the free pieces are never merged
//! across cuts, so every layout can be sawn.

use super::super::effort::Steps;
use super::super::problem::{Problem, Size, along, strip};
use super::queue::{Least, Queue};
use super::rule::Rule;
use crate::stock::SawLine;
use std::collections::BTreeMap;

/// Cuts of one sheet as they were decided: a binary tree in a vector, the whole sheet first.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(in crate::nest) enum Node {
    /// Nothing lies there.
    Free,
    /// A part of that class fills it.
    Part(u32),
    /// Sawn through at a distance from the origin edge, in grown measure.
    Split { line: SawLine, at: i64, first: u32, second: u32 },
}

/// A filled sheet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(in crate::nest) struct Pattern {
    /// Index of the stock.
    pub(in crate::nest) rack: usize,
    pub(in crate::nest) nodes: Vec<Node>,
    /// Class and copies, each class once.
    pub(in crate::nest) parts: Vec<(u32, u32)>,
    /// Real area of the parts.
    pub(in crate::nest) area: i128,
}

/// The same cuts without the copies beyond those that are left.
pub(in crate::nest) fn clipped(problem: &Problem, pattern: &Pattern, left: &[u32]) -> Pattern {
    let mut taken: BTreeMap<u32, u32> = BTreeMap::new();
    let mut keep = |node: &Node| {
        let Node::Part(class) = *node else { return node.clone() };
        let copies = taken.entry(class).or_default();
        if left.get(class as usize).is_none_or(|left| *copies >= *left) {
            return Node::Free;
        }
        *copies += 1;
        node.clone()
    };
    let nodes = pattern.nodes.iter().map(&mut keep).collect();
    let parts: Vec<(u32, u32)> = taken.into_iter().filter(|part| part.1 > 0).collect();
    let area = |&(class, copies): &(u32, u32)| {
        problem.classes.get(class as usize).map_or(0, |class| class.area * i128::from(copies))
    };
    Pattern { rack: pattern.rack, nodes, area: parts.iter().map(area).sum(), parts }
}

/// A piece in which parts may still be placed.
#[derive(Debug, Clone, Copy)]
struct Leaf {
    node: u32,
    size: Size,
    /// The line that cut it off, none for the whole sheet.
    line: Option<SawLine>,
    /// Turns of the saw line that may follow.
    turns: u8,
}

/// A part's place: which leaf, how it lies there, and which line is sawn first.
#[derive(Debug, Clone, Copy)]
struct Place {
    leaf: usize,
    size: Size,
    first: SawLine,
}

/// A sheet being filled.
struct Filling<'p> {
    problem: &'p Problem,
    rule: Rule,
    leaves: Vec<Leaf>,
    /// Not less than the extents of any leaf: parts beyond it need not be tried.
    reach: Size,
    pattern: Pattern,
}

/// Looks at the queue in the time of a step.
const LOOKS: u64 = 4;
/// Steps that it takes to lay out a bare sheet.
const SHEET: u64 = 16;

/// Fills one sheet of a stock with what is left of the classes in the queue. Classes of which nothing is left are taken
/// out of it on the way.
pub(in crate::nest) fn fill(
    problem: &Problem,
    rack: usize,
    queue: &mut Queue,
    left: &[u32],
    rule: Rule,
    steps: &mut Steps,
) -> Pattern {
    let mut filling = Filling::new(problem, rack, rule);
    let (mut spent, mut from) = (0, 0);
    while !filling.leaves.is_empty() {
        let (next, looks) = queue.next(from, |least| filling.may_hold(least));
        spent += looks / LOOKS;
        let Some((place, class)) = next else { break };
        match left.get(class as usize) {
            Some(&copies) if copies > 0 => spent += filling.insert(class, copies),
            _ => queue.take_out(place),
        }
        from = place + 1;
    }
    steps.spend(spent + SHEET);
    filling.pattern
}

impl<'p> Filling<'p> {
    fn new(problem: &'p Problem, rack: usize, rule: Rule) -> Filling<'p> {
        let size = problem.racks.get(rack).map_or((0, 0), |rack| rack.size);
        let whole = Leaf { node: 0, size, line: None, turns: problem.stages };
        let pattern = Pattern { rack, nodes: vec![Node::Free], parts: Vec::new(), area: 0 };
        Filling { problem, rule, leaves: vec![whole], reach: size, pattern }
    }

    /// True where one of the pieces may hold one of the classes.
    fn may_hold(&self, least: &Least) -> bool {
        least.may_fit(self.reach) && self.leaves.iter().any(|leaf| least.may_fit(leaf.size))
    }

    /// Places copies of a class while they fit; the number of trials.
    fn insert(&mut self, class: u32, copies: u32) -> u64 {
        let problem = self.problem;
        let (Some(kind), Some(rack)) = (problem.classes.get(class as usize), problem.racks.get(self.pattern.rack))
        else {
            return 0;
        };
        let lies = kind.lies(rack);
        let (mut placed, mut trials) = (0, 0);
        while placed < copies && lies.iter().flatten().any(|size| size.0 <= self.reach.0 && size.1 <= self.reach.1) {
            trials += self.leaves.len() as u64;
            let Some(place) = self.best_place(lies) else { break };
            self.put(place, class);
            placed += 1;
        }
        if placed > 0 {
            self.pattern.parts.push((class, placed));
            self.pattern.area += kind.area * i128::from(placed);
        }
        trials
    }

    fn best_place(&self, lies: [Option<Size>; 2]) -> Option<Place> {
        let mut best: Option<((i128, i64), Place)> = None;
        for (index, leaf) in self.leaves.iter().enumerate() {
            for size in lies.into_iter().flatten() {
                if size.0 > leaf.size.0 || size.1 > leaf.size.1 {
                    continue;
                }
                let waste = self.rule.fit.waste(leaf.size, size);
                if best.as_ref().is_some_and(|(least, _)| waste >= *least) {
                    continue;
                }
                if let Some(first) = self.first_line(leaf, size) {
                    best = Some((waste, Place { leaf: index, size, first }));
                }
            }
        }
        best.map(|(_, place)| place)
    }

    /// The line to saw first, by the rule where the saw leaves a choice; none where the part cannot be sawn free.
    fn first_line(&self, leaf: &Leaf, size: Size) -> Option<SawLine> {
        match (size.0 < leaf.size.0, size.1 < leaf.size.1) {
            // One cut frees it, and such a cut is not counted.
            (true, false) => Some(SawLine::Width),
            (false, _) => Some(SawLine::Length),
            (true, true) => {
                let wanted = self.rule.split.first(leaf.size, size);
                [wanted, wanted.turned()].into_iter().find(|&line| self.turns_after(leaf, line).is_some())
            }
        }
    }

    /// Turns that are left after a counted cut along that line, or none where it may not be sawn.
    fn turns_after(&self, leaf: &Leaf, line: SawLine) -> Option<u8> {
        if leaf.line == Some(line) {
            return Some(leaf.turns);
        }
        if leaf.line.is_none() && self.problem.first.is_some_and(|first| first != line) {
            return None;
        }
        leaf.turns.checked_sub(1)
    }

    fn put(&mut self, place: Place, class: u32) {
        if place.leaf >= self.leaves.len() {
            return;
        }
        let mut leaf = self.leaves.swap_remove(place.leaf);
        for line in [place.first, place.first.turned()] {
            leaf = self.cut(leaf, place.size, line);
        }
        self.set(leaf.node, Node::Part(class));
        self.reach =
            self.leaves.iter().fold((0, 0), |reach, leaf| (reach.0.max(leaf.size.0), reach.1.max(leaf.size.1)));
    }

    /// Saws a leaf along one line where the part is smaller than it; the piece at the origin edge.
    fn cut(&mut self, leaf: Leaf, part: Size, line: SawLine) -> Leaf {
        let (at, whole) = (along(part, line), along(leaf.size, line));
        if at == whole {
            return leaf;
        }
        // A cut that is not counted frees the part from waste: nothing may be placed in its rest.
        let turns = self.turns_after(&leaf, line);
        let (first, second) = (self.add_node(), self.add_node());
        self.set(leaf.node, Node::Split { line, at, first, second });
        if let Some(turns) = turns.filter(|_| whole - at > self.problem.kerf) {
            self.leaves.push(Leaf { node: second, size: strip(leaf.size, line, whole - at), line: Some(line), turns });
        }
        Leaf { node: first, size: strip(leaf.size, line, at), line: Some(line), turns: turns.unwrap_or(0) }
    }

    fn add_node(&mut self) -> u32 {
        let index = self.pattern.nodes.len();
        self.pattern.nodes.push(Node::Free);
        // At most four nodes a part, and the parts of an order are counted in a million.
        u32::try_from(index).unwrap_or(u32::MAX)
    }

    fn set(&mut self, node: u32, value: Node) {
        if let Some(place) = self.pattern.nodes.get_mut(node as usize) {
            *place = value;
        }
    }
}
