//! What lies around an opening, and whether it may be moved by so much.

use super::check::Rule;
use super::distance::{encloses, from_sides};
use super::rules::OpeningRules;
use crate::frame::Frame;
use crate::geometry::{Bounds, Point};
use crate::length::Length;
use crate::math::IntervalSet;
use crate::outline::{Opening, OpeningShape, Outline};
use crate::seams::{Seam, SeamLayout};

/// What openings keep clear of.
#[derive(Debug, Clone, Copy)]
pub struct Surroundings<'a> {
    /// The deck.
    pub outline: &'a Outline,
    /// The members.
    pub frame: &'a Frame,
    /// The seams, where there are any.
    pub layout: Option<&'a SeamLayout>,
}

impl<'a> Surroundings<'a> {
    pub(super) fn seams(&self) -> impl Iterator<Item = &'a Seam> + use<'a> {
        self.layout.into_iter().flat_map(|layout| &layout.seams)
    }
}

/// An opening among what it keeps clear of.
pub(super) struct Site<'a> {
    pub(super) outline: &'a Outline,
    /// The least rectangle around the opening.
    pub(super) bounds: Bounds,
    /// That rectangle less the corner radius all around.
    pub(super) core: Bounds,
    /// Corner radius and clearance from the deck's edge together.
    pub(super) reach: Length,
    /// How far aft the opening may be moved, in nanometres.
    pub(super) aft: IntervalSet,
    /// The other openings, each with the distance to keep from it.
    pub(super) others: Vec<(Bounds, Length)>,
    /// Butts in rows along the boat, with the clearance fore and aft of them: no part of the opening lies within.
    pub(super) butts: Vec<Bounds>,
}

impl<'a> Site<'a> {
    /// `without` leaves one rule out.
    pub(super) fn new(
        opening: &Opening,
        others: &[Bounds],
        around: &Surroundings<'a>,
        rules: &OpeningRules,
        without: Option<Rule>,
    ) -> Site<'a> {
        let (bounds, radius) = (opening.path().bounds(), radius(opening));
        let core = Bounds {
            fore: bounds.fore + radius,
            aft: bounds.aft - radius,
            port: bounds.port + radius,
            starboard: bounds.starboard - radius,
        };
        let keeps = |rule: Rule| without != Some(rule);
        let apart = |other: &Bounds| (*other, apart_of(&bounds, other, rules));
        let others = if keeps(Rule::Apart) { others.iter().map(apart).collect() } else { Vec::new() };
        Site {
            outline: around.outline,
            bounds,
            core,
            reach: if keeps(Rule::Edge) { radius + rules.from_edge } else { radius },
            aft: free_aft(opening.framed, &bounds, around, rules, keeps),
            others,
            butts: if keeps(Rule::Seam) { butts(around, rules) } else { Vec::new() },
        }
    }

    /// True where the opening keeps every rule once it is moved.
    pub(super) fn fits(&self, aft: Length, starboard: Length) -> bool {
        let moved = moved(self.bounds, aft, starboard);
        !self.aft.within(aft.nanometres(), aft.nanometres()).is_empty()
            && self.others.iter().all(|(other, least)| distance(&moved, other) >= *least)
            && !self.butts.iter().any(|butt| overlap(&moved, butt))
            && self.is_inside(aft, starboard)
    }

    fn is_inside(&self, aft: Length, starboard: Length) -> bool {
        let core = moved(self.core, aft, starboard);
        let deck = self.outline.path();
        encloses(deck, Point::new(core.fore, core.port)) && from_sides(deck, core) >= self.reach
    }
}

/// How far aft an opening may be moved for members and seams, and to stay on the deck.
fn free_aft(
    framed: bool,
    bounds: &Bounds,
    around: &Surroundings<'_>,
    rules: &OpeningRules,
    keeps: impl Fn(Rule) -> bool,
) -> IntervalSet {
    let length = around.outline.length();
    let mut free = IntervalSet::of((-bounds.fore).nanometres(), (length - bounds.aft).nanometres());
    let mut keep_off = |fore: Length, aft: Length, least: Length| {
        free.remove_open((fore - least - bounds.aft).nanometres(), (aft + least - bounds.fore).nanometres());
    };
    let from_flange = if keeps(Rule::Flange) { rules.from_flange } else { Length::ZERO };
    if !framed && keeps(Rule::Member) {
        around.frame.members().iter().for_each(|member| keep_off(member.fore, member.aft, from_flange));
    }
    if keeps(Rule::Seam) {
        let across = around.seams().filter(|seam| seam.lane.is_none());
        across.for_each(|seam| keep_off(seam.fore, seam.aft, rules.from_seam));
    }
    free
}

fn butts(around: &Surroundings<'_>, rules: &OpeningRules) -> Vec<Bounds> {
    let butt = |seam: &Seam| {
        let lane = seam.lane?;
        Some(Bounds {
            fore: seam.fore - rules.from_seam,
            aft: seam.aft + rules.from_seam,
            port: lane.port,
            starboard: lane.starboard,
        })
    };
    around.seams().filter_map(butt).collect()
}

/// True where a seam is one of the opening's own boards; a butt in another row is not.
pub(super) fn meets(seam: &Seam, bounds: &Bounds) -> bool {
    seam.lane.is_none_or(|lane| bounds.port < lane.starboard && lane.port < bounds.starboard)
}

/// True where two rectangles share more than an edge.
fn overlap(one: &Bounds, other: &Bounds) -> bool {
    let along = one.fore < other.aft && other.fore < one.aft;
    along && one.port < other.starboard && other.port < one.starboard
}

pub(super) fn radius(opening: &Opening) -> Length {
    match opening.shape {
        OpeningShape::Round { diameter, .. } => diameter / 2,
        OpeningShape::Rectangle { corner_radius, .. } => corner_radius,
    }
}

pub(super) fn moved(bounds: Bounds, aft: Length, starboard: Length) -> Bounds {
    Bounds {
        fore: bounds.fore + aft,
        aft: bounds.aft + aft,
        port: bounds.port + starboard,
        starboard: bounds.starboard + starboard,
    }
}

/// How far two rectangles lie apart; zero where they touch or overlap.
pub(super) fn distance(one: &Bounds, other: &Bounds) -> Length {
    let along = (other.fore - one.aft).max(one.fore - other.aft).max(Length::ZERO);
    let across = (other.port - one.starboard).max(one.port - other.starboard).max(Length::ZERO);
    along.hypotenuse(across)
}

/// How far two openings are to lie apart: a part of the smaller one's smaller side.
pub(super) fn apart_of(one: &Bounds, other: &Bounds, rules: &OpeningRules) -> Length {
    let size = |bounds: &Bounds| bounds.depth().min(bounds.breadth());
    size(one).min(size(other)).part(rules.apart, 1000)
}
