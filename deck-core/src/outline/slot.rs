//! Slots: openings that are open to the deck's edge, cut into the outline.

use super::{Opening, OpeningShape, Outline, Rim};
use crate::geometry::{Arc, Bounds, Path, Point, Side, Turn};
use crate::length::Length;
use serde::{Deserialize, Serialize};

/// The edge of the deck to which a slot is open.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum SlotEdge {
    /// The bow edge.
    Bow,
    /// The stern edge.
    Stern,
    /// The port edge.
    Port,
    /// The starboard edge.
    Starboard,
}

impl SlotEdge {
    /// As it stands in a sentence.
    pub fn name(self) -> &'static str {
        match self {
            SlotEdge::Bow => "bow",
            SlotEdge::Stern => "stern",
            SlotEdge::Port => "port",
            SlotEdge::Starboard => "starboard",
        }
    }

    /// The outward direction: aft and to starboard.
    fn outward(self) -> (i64, i64) {
        match self {
            SlotEdge::Bow => (-1, 0),
            SlotEdge::Stern => (1, 0),
            SlotEdge::Port => (0, -1),
            SlotEdge::Starboard => (0, 1),
        }
    }
}

impl Outline {
    /// The outline with a slot cut in. None where the slot is no rectangle, or does not reach a straight side at that edge
    /// that is longer than the slot is wide.
    pub fn slotted(&self, slot: &Opening) -> Option<Outline> {
        let edge = slot.slot?;
        let OpeningShape::Rectangle { corner_radius, .. } = slot.shape else { return None };
        let hole = slot.path().bounds();
        // The outline of a plan has its slots already.
        let is_cut = self.path.walk().any(|(side, to)| {
            let middle = Point::new(side.from.x.midpoint(to.x), side.from.y.midpoint(to.y));
            let along = hole.fore <= middle.x && middle.x <= hole.aft;
            side.edge == Rim::Slot && along && hole.port <= middle.y && middle.y <= hole.starboard
        });
        if is_cut {
            return Some(self.clone());
        }
        let mut sides = Vec::new();
        let mut cut = false;
        for (side, to) in self.path.walk() {
            match Mouth::of(side, to, edge, &hole).filter(|_| !cut) {
                None => sides.push(side.clone()),
                Some(mouth) => {
                    cut = true;
                    sides.push(side.clone());
                    sides.extend(mouth.sides(corner_radius, side.edge));
                }
            }
        }
        let path = Path::new(sides);
        cut.then(|| Outline { bounds: path.bounds(), path })
    }
}

/// Where a slot opens to a side, in the direction of the walk.
struct Mouth {
    first: Point,
    last: Point,
    /// From the side into the deck.
    depth: (Length, Length),
    /// Along the side.
    along: (i64, i64),
}

impl Mouth {
    fn of(side: &Side<Rim>, to: Point, edge: SlotEdge, hole: &Bounds) -> Option<Mouth> {
        let (out_x, out_y) = edge.outward();
        // With the inside on the left, the walk goes along the outward direction turned a quarter to the left.
        let along = (-out_y, out_x);
        let from = side.from;
        let (dx, dy) = (to.x - from.x, to.y - from.y);
        let runs = |delta: Length, way: i64| delta.nanometres().signum() == way;
        if side.arc.is_some() || !runs(dx, along.0) || !runs(dy, along.1) {
            return None;
        }
        let (least, most, level, reach, inner) = if out_x == 0 {
            let (outer, inner) = if out_y > 0 { (hole.starboard, hole.port) } else { (hole.port, hole.starboard) };
            (hole.fore, hole.aft, from.y, outer, inner)
        } else {
            let (outer, inner) = if out_x > 0 { (hole.aft, hole.fore) } else { (hole.fore, hole.aft) };
            (hole.port, hole.starboard, from.x, outer, inner)
        };
        let sign = if out_x == 0 { out_y } else { out_x };
        let (start, end) = if out_x == 0 { (from.x, to.x) } else { (from.y, to.y) };
        let within = start.min(end) < least && most < start.max(end);
        let reaches = (reach - level) * sign >= Length::ZERO && (level - inner) * sign > Length::ZERO;
        if !within || !reaches {
            return None;
        }
        let (first, last) = if start < end { (least, most) } else { (most, least) };
        let at = |along: Length| if out_x == 0 { Point::new(along, level) } else { Point::new(level, along) };
        let depth = inner - level;
        let depth = if out_x == 0 { (Length::ZERO, depth) } else { (depth, Length::ZERO) };
        Some(Mouth { first: at(first), last: at(last), depth, along })
    }

    /// The sides of the slot, and what is left of the side that it is cut into.
    fn sides(&self, radius: Length, rim: Rim) -> Vec<Side<Rim>> {
        let inner = |point: Point| Point::new(point.x + self.depth.0, point.y + self.depth.1);
        let (third, fourth) = (inner(self.first), inner(self.last));
        let step = |point: Point, along: i64, out: i64| {
            let sign = |length: Length| length.nanometres().signum();
            let (in_x, in_y) = (sign(self.depth.0), sign(self.depth.1));
            Point::new(
                point.x + radius * (self.along.0 * along - in_x * out),
                point.y + radius * (self.along.1 * along - in_y * out),
            )
        };
        let straight = |from: Point| Side { from, arc: None, edge: Rim::Slot };
        let mut sides = vec![straight(self.first)];
        for (corner, way) in [(third, 1), (fourth, -1)] {
            // Inside corners of the slot: the walk turns right in them.
            if radius > Length::ZERO {
                let arc = Some(Arc { centre: step(corner, way, 1), radius, turn: Turn::Right });
                let from = if way == 1 { step(corner, 0, 1) } else { step(corner, -1, 0) };
                sides.push(Side { from, arc, edge: Rim::Slot });
                sides.push(straight(if way == 1 { step(corner, 1, 0) } else { step(corner, 0, 1) }));
            } else {
                sides.push(straight(corner));
            }
        }
        sides.push(Side { from: self.last, arc: None, edge: rim });
        let ends: Vec<Point> = sides.iter().skip(1).map(|side| side.from).collect();
        // A radius of half the width leaves no straight bottom.
        let keep = |(index, side): &(usize, Side<Rim>)| ends.get(*index).is_none_or(|end| *end != side.from);
        sides.into_iter().enumerate().filter(keep).map(|(_, side)| side).collect()
    }
}
