//! The sheets of an answer one by one: first those from the stock, then the waste inside the parts on them.

use super::build::{Pattern, Piece, Solution};
use super::inside::Waste;
use super::problem::Problem;
use super::report::Order;
use super::result::{CutSheet, Inside};
use super::tree::Tree;
use super::writer::{Spot, TRIMS, Writer, Written};

/// The sheets, and how many copies of each part found no place; a layout for each of the answer's runs.
pub(super) fn sheets(order: Order<'_>, solution: &Solution, layouts: &[Piece]) -> (Vec<CutSheet>, Vec<u32>) {
    let mut sheets = Sheets::new(order);
    let mut runs: Vec<(&Pattern, u32, &Piece)> =
        solution.runs.iter().zip(layouts).map(|((pattern, times), piece)| (pattern, *times, piece)).collect();
    // Racks of waste follow the stock, and those of a part in waste follow those of the part that the waste is in.
    runs.sort_by_key(|(pattern, ..)| (pattern.rack + 1).saturating_sub(order.stock.len()));
    for (pattern, times, piece) in runs {
        for _ in 0..times {
            sheets.write(pattern.rack, piece);
        }
    }
    let left = sheets.queues.left(order.parts.len());
    (sheets.written, left)
}

struct Sheets<'a> {
    order: Order<'a>,
    queues: Queues<'a>,
    written: Vec<CutSheet>,
    /// For each class that has waste inside: its copies, where they lie.
    hosts: Vec<Vec<Host>>,
    /// How much of each waste is used.
    used: Vec<usize>,
}

/// A part with waste inside, where it lies.
#[derive(Debug, Clone, Copy)]
struct Host {
    sheet: usize,
    copy: usize,
    /// Index among the parts.
    part: usize,
    /// True where its sheet has a grain.
    grain: bool,
}

impl<'a> Sheets<'a> {
    fn new(order: Order<'a>) -> Sheets<'a> {
        Sheets {
            order,
            queues: Queues::new(order.problem),
            written: Vec::new(),
            hosts: vec![Vec::new(); order.problem.classes.len()],
            used: vec![0; order.problem.waste.len()],
        }
    }

    fn write(&mut self, rack: usize, piece: &Piece) {
        match rack.checked_sub(self.order.stock.len()) {
            None => self.write_stock(rack, piece),
            Some(waste) => self.write_inside(waste, piece),
        }
    }

    fn write_stock(&mut self, rack: usize, piece: &Piece) {
        let rack_grain = self.order.problem.racks.get(rack).map(|rack| rack.grain);
        let Some((stock, grain)) = self.order.stock.get(rack).zip(rack_grain) else { return };
        let (length, width) = stock.size();
        let spot = Spot { x: 0, y: 0, size: (length.nanometres(), width.nanometres()) };
        let mut writer = Writer::new(self.order, &mut self.queues, grain);
        let cuts = writer.trim(&TRIMS, spot, piece);
        let written = writer.finish();
        self.add(stock.label.clone(), None, cuts, written, grain);
    }

    /// The next copy of the part that the waste is in gives the sheet: there is one, see [`super::inside::ground`].
    fn write_inside(&mut self, waste: usize, piece: &Piece) {
        let Some((inside, host, transpose)) = self.next_inside(waste) else { return };
        let mut writer = Writer::new(self.order, &mut self.queues, host.grain);
        let spot = Spot { x: 0, y: 0, size: (inside.length.nanometres(), inside.width.nanometres()) };
        let cuts = if transpose { writer.saw(spot, &transposed(piece)) } else { writer.saw(spot, piece) };
        let stock = format!("waste inside {}", inside.part);
        let written = writer.finish();
        self.add(stock, Some(inside), cuts, written, host.grain);
    }

    /// The sheet's place, and whether its length runs across that of its rack.
    fn next_inside(&mut self, waste: usize) -> Option<(Inside, Host, bool)> {
        let &Waste { class, index, turned } = self.order.problem.waste.get(waste)?;
        let used = self.used.get_mut(waste)?;
        let host = *self.hosts.get(class as usize)?.get(*used)?;
        *used += 1;
        let part = self.order.parts.get(host.part)?;
        let waste = part.fallen(part.inside.get(index)?, self.order.saw.kerf);
        let placement = self.written.get(host.sheet)?.placements.get(host.copy)?.clone();
        // Whether the length runs across the part's own: that of the rack does where the nest sees the part so, and that
        // of the sheet runs along the grain, where there is any.
        let rack_across = part.lies_across() != turned;
        let across = if host.grain { placement.turned } else { rack_across };
        let (length, width) = if across { (waste.width, waste.length) } else { (waste.length, waste.width) };
        let label = part.label.clone();
        let inside = Inside { part: label, sheet: host.sheet, copy: host.copy, placement, waste, length, width };
        Some((inside, host, across != rack_across))
    }

    /// Takes a sheet up, and the parts on it that have waste inside.
    fn add(&mut self, stock: String, inside: Option<Inside>, cuts: Tree, written: Written, grain: bool) {
        let sheet = self.written.len();
        for (copy, &(class, part)) in written.parts.iter().enumerate() {
            if let Some(hosts) = self.hosts.get_mut(class as usize).filter(|_| !self.used.is_empty()) {
                hosts.push(Host { sheet, copy, part, grain });
            }
        }
        let Written { placements, offcuts, .. } = written;
        self.written.push(CutSheet { stock, inside, placements, cuts, offcuts });
    }
}

/// The same pieces with length and width exchanged.
fn transposed(piece: &Piece) -> Piece {
    match piece {
        Piece::Strips(line, pieces) => {
            Piece::Strips(line.turned(), pieces.iter().map(|(extent, piece)| (*extent, transposed(piece))).collect())
        }
        other => other.clone(),
    }
}

/// Hands out the parts of each class, one copy after the other.
pub(super) struct Queues<'a> {
    problem: &'a Problem,
    /// For each class: the member at hand, and how many of its copies are handed out.
    at: Vec<(usize, u32)>,
}

impl Queues<'_> {
    fn new(problem: &Problem) -> Queues<'_> {
        Queues { problem, at: vec![(0, 0); problem.classes.len()] }
    }

    /// The next part of a class, by index.
    pub(super) fn next(&mut self, class: u32) -> Option<usize> {
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
