//! Turns an answer in whole numbers into sheets with labels, cut trees and shares of the cost.

use super::bound::Bound;
use super::build::{Pattern, Piece, Solution, layout};
use super::choose::unplaced_area;
use super::cost::{BoatCost, share};
use super::part::Part;
use super::problem::{Problem, Size};
use super::result::{CutSheet, Nest, Placement, Rectangle};
use super::tree::{Cut, Tree};
use super::why::unplaced;
use crate::length::Length;
use crate::stock::{Saw, SawLine, Sheet};

/// The order as it was given and as it was worked on.
#[derive(Debug, Clone, Copy)]
pub(super) struct Order<'a> {
    pub(super) parts: &'a [Part],
    pub(super) stock: &'a [Sheet],
    pub(super) saw: &'a Saw,
    pub(super) problem: &'a Problem,
}

/// The result for people and programs.
pub(super) fn report(order: Order<'_>, solution: &Solution, bound: &Bound) -> Nest {
    let problem = order.problem;
    let mut queues = Queues::new(problem);
    let mut sheets = Vec::new();
    for (pattern, times) in &solution.runs {
        let piece = layout(problem, pattern);
        for _ in 0..*times {
            sheets.extend(sheet(order, pattern, &piece, &mut queues));
        }
    }
    let bound_cost = bound.cost(problem, solution);
    Nest {
        sheet_count: u32::try_from(sheets.len()).unwrap_or(u32::MAX),
        unplaced: unplaced(order, &queues.left(order.parts.len())),
        cost: problem.cost_in.cost(solution.cost),
        cost_by_boat: cost_by_boat(order, solution.cost, &sheets),
        bound: problem.cost_in.cost(bound_cost),
        proven: bound.met_by(unplaced_area(problem, &solution.left), solution.cost),
        cost_in: problem.cost_in,
        sheets,
    }
}

/// Hands out the parts of each class, one copy after the other.
pub(super) struct Queues<'a> {
    problem: &'a Problem,
    /// For each class: the member at hand, and how many of its copies are handed out.
    at: Vec<(usize, u32)>,
}

impl Queues<'_> {
    pub(super) fn new(problem: &Problem) -> Queues<'_> {
        Queues { problem, at: vec![(0, 0); problem.classes.len()] }
    }

    /// The next part of a class, by index.
    fn next(&mut self, class: u32) -> Option<usize> {
        let members = &self.problem.classes.get(class as usize)?.members;
        let (member, taken) = self.at.get_mut(class as usize)?;
        let &(index, copies) = members.get(*member)?;
        *taken += 1;
        if *taken >= copies {
            (*member, *taken) = (*member + 1, 0);
        }
        Some(index)
    }

    /// Copies of each part that have not been handed out.
    fn left(&self, parts: usize) -> Vec<u32> {
        let mut left = vec![0; parts];
        for (class, &(at, taken)) in self.problem.classes.iter().zip(&self.at) {
            for (position, &(index, copies)) in class.members.iter().enumerate().skip(at) {
                if let Some(left) = left.get_mut(index) {
                    *left = if position == at { copies - taken } else { copies };
                }
            }
        }
        left
    }
}

/// One sheet being written down.
struct Writer<'a, 'q, 'p> {
    order: Order<'a>,
    queues: &'q mut Queues<'p>,
    grain: bool,
    placements: Vec<Placement>,
    offcuts: Vec<Rectangle>,
}

/// A piece of the sheet as it lies there, real measure.
#[derive(Clone, Copy)]
struct Spot {
    x: i64,
    y: i64,
    size: Size,
}

impl Spot {
    fn rectangle(self) -> Rectangle {
        let [x, y, length, width] = [self.x, self.y, self.size.0, self.size.1].map(Length::from_nanometres);
        Rectangle { x, y, length, width }
    }

    /// The piece before a saw line, and the one that begins at a distance behind it.
    fn split(self, line: SawLine, at: i64, behind: i64) -> (Spot, Spot) {
        match line {
            SawLine::Length => (
                Spot { size: (self.size.0, at), ..self },
                Spot { y: self.y + behind, size: (self.size.0, self.size.1 - behind), ..self },
            ),
            SawLine::Width => (
                Spot { size: (at, self.size.1), ..self },
                Spot { x: self.x + behind, size: (self.size.0 - behind, self.size.1), ..self },
            ),
        }
    }

    fn across(self, line: SawLine) -> i64 {
        if line == SawLine::Length { self.size.1 } else { self.size.0 }
    }
}

/// One sheet sawn by a pattern.
pub(super) fn sheet(order: Order<'_>, pattern: &Pattern, piece: &Piece, queues: &mut Queues<'_>) -> Option<CutSheet> {
    let stock = order.stock.get(pattern.rack)?;
    let grain = order.problem.racks.get(pattern.rack)?.grain;
    let (length, width) = stock.size();
    let spot = Spot { x: 0, y: 0, size: (length.nanometres(), width.nanometres()) };
    let mut writer = Writer { order, queues, grain, placements: Vec::new(), offcuts: Vec::new() };
    let cuts = writer.trim(&TRIMS, spot, piece);
    Some(CutSheet { stock: stock.label.clone(), placements: writer.placements, cuts, offcuts: writer.offcuts })
}

/// The trim cuts in sawing order: direction, and whether it is the edge at the origin.
const TRIMS: [(SawLine, bool); 4] =
    [(SawLine::Length, true), (SawLine::Length, false), (SawLine::Width, true), (SawLine::Width, false)];

/// A run of more strips than this is first sawn through in its middle: trees stay flat enough for every JSON reader.
const LONGEST_RUN: usize = 24;

impl Writer<'_, '_, '_> {
    /// Takes the trim off the edges, then saws what is left.
    ///
    /// The trim includes its own kerf. Where the kerf is wider than the trim, the blade runs partly beside the sheet.
    fn trim(&mut self, trims: &[(SawLine, bool)], spot: Spot, piece: &Piece) -> Tree {
        let trim = self.order.saw.trim.nanometres();
        let Some((&(line, at_origin), rest)) = trims.split_first().filter(|_| trim > 0) else {
            return self.saw(spot, piece);
        };
        let kerf = self.order.problem.kerf.min(trim);
        let at = if at_origin { trim - kerf } else { spot.across(line) - trim };
        let (first, second) = spot.split(line, at, at + kerf);
        if at_origin {
            let inner = self.trim(rest, second, piece);
            return cut(line, at, kerf, Tree::waste(), Some(inner));
        }
        let inner = self.trim(rest, first, piece);
        cut(line, at, kerf, inner, (second.across(line) > 0).then(Tree::waste))
    }

    fn saw(&mut self, spot: Spot, piece: &Piece) -> Tree {
        match piece {
            Piece::Part(class) => self.part(spot, *class),
            Piece::Free => self.free(spot),
            Piece::Strips(line, pieces) => self.strips(spot, *line, pieces),
        }
    }

    fn strips(&mut self, spot: Spot, line: SawLine, pieces: &[(i64, Piece)]) -> Tree {
        let Some(((extent, piece), rest)) = pieces.split_first() else { return self.free(spot) };
        if rest.is_empty() {
            return self.saw(spot, piece);
        }
        let ahead = if pieces.len() > LONGEST_RUN { pieces.len() / 2 } else { 1 };
        let extent = if ahead == 1 { *extent } else { pieces.iter().take(ahead).map(|piece| piece.0).sum() };
        let kerf = self.order.problem.kerf;
        let at = extent - kerf;
        let eaten = kerf.min(spot.across(line) - at);
        let (first, second) = spot.split(line, at, at + eaten);
        let before = self.strips(first, line, pieces.get(..ahead).unwrap_or_default());
        let behind = if second.across(line) > 0 {
            Some(self.strips(second, line, pieces.get(ahead..).unwrap_or_default()))
        } else {
            None
        };
        cut(line, at, eaten, before, behind)
    }

    fn part(&mut self, spot: Spot, class: u32) -> Tree {
        let part = self.queues.next(class).and_then(|index| self.order.parts.get(index));
        // A pattern never uses more copies than the class has.
        let Some(part) = part else { return Tree::waste() };
        let Rectangle { x, y, length, width } = spot.rectangle();
        let turned = part.is_turned(length, width);
        let (label, boat) = (part.label.clone(), part.boat.clone());
        self.placements.push(Placement { part: label, x, y, length, width, turned, boat });
        Tree::part(part.label.clone())
    }

    fn free(&mut self, spot: Spot) -> Tree {
        let kerf = self.order.problem.kerf;
        if self.order.problem.keeps((spot.size.0 + kerf, spot.size.1 + kerf), self.grain) {
            self.offcuts.push(spot.rectangle());
            return Tree::offcut();
        }
        Tree::waste()
    }
}

fn cut(cut: SawLine, at: i64, kerf: i64, first: Tree, second: Option<Tree>) -> Tree {
    let (at, kerf) = (Length::from_nanometres(at), Length::from_nanometres(kerf));
    Tree::Cut(Box::new(Cut { cut, at, kerf, children: (first, second) }))
}

/// The cost by boat, in the order in which the parts name them; empty where no part names one.
fn cost_by_boat(order: Order<'_>, cost: i128, sheets: &[CutSheet]) -> Vec<BoatCost> {
    if order.parts.iter().all(|part| part.boat.is_none()) {
        return Vec::new();
    }
    let mut boats: Vec<Option<&str>> = Vec::new();
    for part in order.parts {
        if !boats.contains(&part.boat.as_deref()) {
            boats.push(part.boat.as_deref());
        }
    }
    let mut areas = vec![0; boats.len()];
    for placement in sheets.iter().flat_map(|sheet| &sheet.placements) {
        let boat = boats.iter().position(|boat| *boat == placement.boat.as_deref());
        if let Some(area) = boat.and_then(|boat| areas.get_mut(boat)) {
            *area += i128::from(placement.length.nanometres()) * i128::from(placement.width.nanometres());
        }
    }
    let cost_in = order.problem.cost_in;
    let shares = share(cost, cost_in.grain(cost), &areas);
    let named = boats.into_iter().zip(shares);
    named.map(|(boat, share)| BoatCost { boat: boat.map(str::to_owned), cost: cost_in.cost(share) }).collect()
}
