//! Old holes beside the new fasteners, and what is bolted down again on the new panels.

use crate::fasteners::{Fastening, OldHole};
use crate::fittings::{BoltLine, FittedHole, Ground, Layers, OldDatum, PlateLine, bolts, place, plates};
use crate::geometry::Point;
use crate::job::Checked;
use crate::length::Length;
use crate::panels::Panel;
use crate::seams::Seam;
use serde::{Deserialize, Serialize};

/// A hole that the old deck left in a member, and the new fastener that comes nearest to it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct PlacedHole {
    /// Number of the member.
    pub member: usize,
    /// Station of its middle.
    pub x: Length,
    /// Distance of its middle from the port edge.
    pub y: Length,
    /// Its diameter.
    pub diameter: Length,
    /// Least distance from its middle to that of a new fastener.
    pub clear: Length,
    /// What there is; none where there are no fasteners in that member.
    pub nearest: Option<Length>,
    /// True where a bolt goes through it again.
    pub reused: bool,
}

/// What is bolted down again.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct PlanFittings {
    /// Where the old deck's datum lies.
    pub datum: OldDatum,
    /// Every hole on the new deck, fitting by fitting.
    pub holes: Vec<FittedHole>,
    /// Bolts by kind and length.
    pub bolts: Vec<BoltLine>,
    /// Plates by size.
    pub plates: Vec<PlateLine>,
}

/// The old holes, each with the nearest of the fasteners in its member.
pub(super) fn old_holes(checked: &Checked, fastening: Option<&Fastening>) -> Vec<PlacedHole> {
    let holes = &checked.settings.schedule.old_holes;
    holes.iter().map(|hole| placed(hole, fastening)).collect()
}

fn placed(hole: &OldHole, fastening: Option<&Fastening>) -> PlacedHole {
    let rows = fastening.into_iter().flat_map(|all| &all.rows).filter(|row| row.member == hole.member);
    let at = Point::new(hole.x, hole.y);
    let distances = rows.flat_map(|row| row.positions.iter().map(|y| Point::new(row.station, *y).distance(at)));
    let nearest = distances.min();
    PlacedHole {
        member: hole.member,
        x: hole.x,
        y: hole.y,
        diameter: hole.diameter,
        clear: hole.clear,
        nearest,
        // A fastener in the very middle of an old hole can only be a bolt that goes through it again.
        reused: nearest == Some(Length::ZERO),
    }
}

/// What is bolted down again, where the job says so.
pub(super) fn fittings(
    checked: &Checked,
    panels: &[Panel],
    seams: &[Seam],
    fastening: Option<&Fastening>,
) -> Option<PlanFittings> {
    let settings = &checked.settings;
    let spec = settings.fittings.as_ref()?;
    let rows = fastening.into_iter().flat_map(|all| &all.rows);
    let screws: Vec<Point> = rows.flat_map(|row| row.positions.iter().map(|y| Point::new(row.station, *y))).collect();
    let old: Vec<(Point, Length)> =
        settings.schedule.old_holes.iter().map(|hole| (Point::new(hole.x, hole.y), hole.diameter)).collect();
    let shop = &settings.shop;
    let tape = if shop.barrier { shop.tape_thickness } else { Length::ZERO };
    let ground = Ground {
        panels,
        seams,
        frame: &checked.frame,
        wall: shop.wall,
        layers: Layers { board: checked.thickness, tape, wall: None },
        fasteners: &screws,
        old_holes: &old,
        from_seam: spec.from_seam,
        in_metal_halves: crate::published::defaults::EDGE_DISTANCE_METAL_HALVES.value,
        sold: &spec.sold,
    };
    let holes = place(&spec.items, &spec.datum, &ground);
    let (bolts, plates) = (bolts(&holes), plates(&holes));
    Some(PlanFittings { datum: spec.datum, holes, bolts, plates })
}
