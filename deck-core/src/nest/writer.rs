//! Writes one sheet down: the saw's work as a tree, and where the parts and the offcuts come to lie.

use super::build::Piece;
use super::problem::Size;
use super::report::Order;
use super::result::{Placement, Rectangle};
use super::sheets::Queues;
use super::tree::{Cut, Tree};
use crate::length::Length;
use crate::stock::SawLine;

/// One sheet being written down.
pub(super) struct Writer<'a, 'q> {
    order: Order<'a>,
    queues: &'q mut Queues<'a>,
    /// True where the sheet has a grain.
    grain: bool,
    written: Written,
}

/// What has come to lie where, in sawing order.
#[derive(Default)]
pub(super) struct Written {
    pub(super) placements: Vec<Placement>,
    /// Class and index of the part at each placement.
    pub(super) parts: Vec<(u32, usize)>,
    pub(super) offcuts: Vec<Rectangle>,
}

/// A piece of the sheet as it lies there, real measure.
#[derive(Clone, Copy)]
pub(super) struct Spot {
    pub(super) x: i64,
    pub(super) y: i64,
    pub(super) size: Size,
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

/// The trim cuts in sawing order: direction, and whether it is the edge at the origin.
pub(super) const TRIMS: [(SawLine, bool); 4] =
    [(SawLine::Length, true), (SawLine::Length, false), (SawLine::Width, true), (SawLine::Width, false)];

/// A run of more strips than this is first sawn through in its middle: trees stay flat enough for every JSON reader.
pub(super) const LONGEST_RUN: usize = 24;

impl<'a, 'q> Writer<'a, 'q> {
    pub(super) fn new(order: Order<'a>, queues: &'q mut Queues<'a>, grain: bool) -> Writer<'a, 'q> {
        Writer { order, queues, grain, written: Written::default() }
    }

    pub(super) fn finish(self) -> Written {
        self.written
    }

    /// Takes the trim off the edges, then saws what is left.
    ///
    /// The trim includes its own kerf. Where the kerf is wider than the trim, the blade runs partly beside the sheet.
    pub(super) fn trim(&mut self, trims: &[(SawLine, bool)], spot: Spot, piece: &Piece) -> Tree {
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

    pub(super) fn saw(&mut self, spot: Spot, piece: &Piece) -> Tree {
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
        let next = self.queues.next(class).and_then(|index| Some((index, self.order.parts.get(index)?)));
        // A pattern never uses more copies than the class has.
        let Some((index, part)) = next else { return Tree::waste() };
        self.written.parts.push((class, index));
        let Rectangle { x, y, length, width } = spot.rectangle();
        let turned = part.is_turned(length, width);
        let (label, boat) = (part.label.clone(), part.boat.clone());
        self.written.placements.push(Placement { part: label, x, y, length, width, turned, boat });
        Tree::part(part.label.clone())
    }

    fn free(&mut self, spot: Spot) -> Tree {
        let kerf = self.order.problem.kerf;
        if self.order.problem.keeps((spot.size.0 + kerf, spot.size.1 + kerf), self.grain) {
            self.written.offcuts.push(spot.rectangle());
            return Tree::offcut();
        }
        Tree::waste()
    }
}

fn cut(cut: SawLine, at: i64, kerf: i64, first: Tree, second: Option<Tree>) -> Tree {
    let (at, kerf) = (Length::from_nanometres(at), Length::from_nanometres(kerf));
    Tree::Cut(Box::new(Cut { cut, at, kerf, children: (first, second) }))
}
