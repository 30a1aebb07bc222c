//! From cuts to a slicing tree and back.

use super::super::build::{Node, Pattern};
use super::super::problem::{Problem, Size, across, along, strip};
use super::place::{Room, Visit};
use super::slicing::{At, Kind, Knot, NONE, Slicing};
use crate::stock::SawLine;

/// A filled sheet as a slicing tree.
pub(super) fn to_slicing(pattern: &Pattern, whole: Size) -> Slicing {
    let mut sheet = Slicing::new(pattern.rack);
    sheet.root = grow(&mut sheet, pattern, 0, whole).unwrap_or(NONE);
    sheet
}

fn grow(sheet: &mut Slicing, pattern: &Pattern, node: u32, size: Size) -> Option<At> {
    match *pattern.nodes.get(node as usize)? {
        Node::Free => None,
        Node::Part(class) => Some(sheet.part(class, size)),
        Node::Split { line, at, first, second } => {
            let one = grow(sheet, pattern, first, strip(size, line, at));
            let other = grow(sheet, pattern, second, strip(size, line, along(size, line) - at));
            let (Some(one), Some(other)) = (one, other) else { return one.or(other) };
            Some(sheet.group(line, one, other))
        }
    }
}

/// The cuts of a sheet, the waste sawn off in as large pieces as the saw allows.
pub(super) fn to_pattern(problem: &Problem, sheet: &Slicing, room: Room) -> Pattern {
    let mut classes: Vec<u32> = sheet.classes().collect();
    classes.sort_unstable();
    let parts: Vec<(u32, u32)> = classes
        .chunk_by(|one, other| one == other)
        .filter_map(|same| Some((*same.first()?, u32::try_from(same.len()).ok()?)))
        .collect();
    let area = |&(class, copies): &(u32, u32)| {
        problem.classes.get(class as usize).map_or(0, |class| class.area) * i128::from(copies)
    };
    let area = parts.iter().map(area).sum();
    let pattern = Pattern { rack: sheet.rack, nodes: vec![Node::Free], area, parts };
    let mut sawing = Sawing { sheet, room, pattern };
    sawing.saw(Visit::whole(sheet, room), 0);
    sawing.pattern
}

struct Sawing<'s> {
    sheet: &'s Slicing,
    room: Room,
    pattern: Pattern,
}

impl Sawing<'_> {
    fn saw(&mut self, visit: Visit, node: u32) {
        let Some(&knot) = self.sheet.knot(visit.at) else { return };
        match knot.kind {
            Kind::Unused => {}
            Kind::Part(class) => self.part(visit, &knot, class, node),
            Kind::Join(line, one, other) => {
                let (visit, node) = self.trimmed(visit, &knot, line, node);
                let at = self.sheet.knot(one).map_or(0, |knot| along(knot.size, line));
                let (before, behind) = self.split(node, line, at);
                let rest = along(visit.room, line) - at;
                for (at, extent, node) in [(one, at, before), (other, rest, behind)] {
                    let room = strip(visit.room, line, extent);
                    self.saw(Visit { at, room, above: Some(line), used: visit.used_by(line) }, node);
                }
            }
        }
    }

    /// The group without the strip of waste along its saw line, where that strip is worth a cut of its own: otherwise
    /// each piece of the group gets a bit of it.
    fn trimmed(&mut self, visit: Visit, knot: &Knot, line: SawLine, node: u32) -> (Visit, u32) {
        let trim = line.turned();
        let (size, room) = (knot.size, visit.room);
        let spare = across(room, line) - across(size, line);
        let behind = along(room, line) - along(size, line);
        let edge = i128::from(spare) * i128::from(along(room, line));
        let wide = edge > i128::from(behind) * i128::from(across(room, line));
        if spare <= 0 || !wide || !visit.may(self.room, trim, knot.turns) {
            return (visit, node);
        }
        let (inner, _) = self.split(node, trim, along(size, trim));
        let room = strip(room, trim, along(size, trim));
        (Visit { room, above: Some(trim), used: visit.used_by(trim), ..visit }, inner)
    }

    /// Frees a part from its room by at most two cuts.
    fn part(&mut self, visit: Visit, knot: &Knot, class: u32, mut node: u32) {
        let (size, mut room) = (knot.size, visit.room);
        let beside = i128::from(room.0 - size.0) * i128::from(room.1);
        let above = i128::from(room.1 - size.1) * i128::from(room.0);
        let wanted = if beside >= above { SawLine::Width } else { SawLine::Length };
        // The last cut that frees a part is not counted; the one before it is.
        let first = if visit.may(self.room, wanted, 0) { wanted } else { wanted.turned() };
        for line in [first, first.turned()] {
            if along(room, line) > along(size, line) {
                node = self.split(node, line, along(size, line)).0;
                room = strip(room, line, along(size, line));
            }
        }
        if let Some(place) = self.pattern.nodes.get_mut(node as usize) {
            *place = Node::Part(class);
        }
    }

    fn split(&mut self, node: u32, line: SawLine, at: i64) -> (u32, u32) {
        let nodes = &mut self.pattern.nodes;
        // At most eight nodes a part, and the parts of an order are counted in a million.
        let first = u32::try_from(nodes.len()).unwrap_or(u32::MAX);
        nodes.extend([Node::Free, Node::Free]);
        if let Some(place) = nodes.get_mut(node as usize) {
            *place = Node::Split { line, at, first, second: first.saturating_add(1) };
        }
        (first, first.saturating_add(1))
    }
}
