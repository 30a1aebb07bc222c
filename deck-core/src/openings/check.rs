//! Measures each opening against each rule.

use super::distance::from_sides;
use super::rules::OpeningRules;
use super::site::{Surroundings, apart_of, distance, meets, radius};
use crate::geometry::Bounds;
use crate::length::Length;
use crate::outline::{Opening, OpeningShape};
use serde::{Deserialize, Serialize};

/// A rule that openings keep.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Rule {
    /// No member is cut; a framed lid may cross one that stays whole.
    Member,
    /// It lies clear of flanges, or is framed.
    Flange,
    /// It lies clear of seams.
    Seam,
    /// It lies clear of the deck's edge.
    Edge,
    /// Openings lie apart from each other.
    Apart,
    /// Its corners are rounded.
    Corner,
}

impl Rule {
    /// The rules that have to do with where an opening lies.
    pub(super) const OF_PLACE: [Rule; 5] = [Rule::Member, Rule::Flange, Rule::Seam, Rule::Edge, Rule::Apart];
}

/// What a clearance is measured from.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "kind", content = "which", rename_all = "kebab-case")]
pub enum Against {
    /// A member, by number.
    Member(usize),
    /// A seam, by number.
    Seam(usize),
    /// The deck's edge.
    Edge,
    /// Another opening, by name.
    Opening(String),
    /// The opening's own corners.
    Corner,
}

/// One clearance of one opening.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Clearance {
    /// The rule.
    pub rule: Rule,
    /// What it is measured from.
    pub against: Against,
    /// What there is; below zero where they overlap. For corners: their radius.
    pub distance: Length,
    /// What there must be.
    pub least: Length,
    /// What is preferred, where that is more.
    pub preferred: Option<Length>,
    /// How much is missing; zero where the rule is kept.
    pub short_by: Length,
}

impl Clearance {
    fn new(rule: Rule, against: Against, distance: Length, least: Length) -> Clearance {
        let short_by = (least - distance).max(Length::ZERO);
        Clearance { rule, against, distance, least, preferred: None, short_by }
    }

    fn preferred(mut self, preferred: Length) -> Clearance {
        self.preferred = Some(preferred);
        self
    }

    /// True where the rule is kept.
    pub fn holds(&self) -> bool {
        self.short_by.is_zero()
    }
}

/// An opening measured against every rule.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct OpeningCheck {
    /// The opening's name.
    pub name: String,
    /// Whether its edge is framed underneath.
    pub framed: bool,
    /// Every clearance that is not kept, and the nearest of each rule that is.
    pub clearances: Vec<Clearance>,
}

impl OpeningCheck {
    /// True where every rule is kept.
    pub fn holds(&self) -> bool {
        self.clearances.iter().all(Clearance::holds)
    }

    /// True where a rule is broken that another place would keep.
    pub fn is_misplaced(&self) -> bool {
        self.clearances.iter().any(|clearance| clearance.rule != Rule::Corner && !clearance.holds())
    }
}

/// Measures every opening against every rule.
///
/// Distances fore and aft, from members and seams, are told for their whole breadth; that from the deck's edge is the least
/// in any direction; that between openings is the one of the rectangles around them.
///
/// # Examples
/// ```
/// use deck_core::frame::{Frame, FrameSpec};
/// use deck_core::openings::{OpeningRules, Rule, Surroundings, check};
/// use deck_core::outline::{Deck, Opening, OpeningShape, Parametric};
/// use deck_core::Length;
/// let inches = Length::inches;
/// let outline = Deck::Parametric(Parametric::new(inches(96), inches(96))).outline()?;
/// let frame = Frame::new(&FrameSpec::regular(inches(0), inches(96), inches(24), inches(2)))?;
/// let hole = Opening::new("sender", OpeningShape::Round { x: inches(12), y: inches(6), diameter: inches(6) });
/// let around = Surroundings { outline: &outline, frame: &frame, layout: None };
/// let found = check(&[hole], &around, &OpeningRules::default());
/// let edge = found[0].clearances.iter().find(|clearance| clearance.rule == Rule::Edge).unwrap();
/// assert_eq!((edge.distance, edge.short_by), (inches(3), inches(1)));
/// # Ok::<(), deck_core::Error>(())
/// ```
pub fn check(openings: &[Opening], around: &Surroundings<'_>, rules: &OpeningRules) -> Vec<OpeningCheck> {
    let bounds: Vec<Bounds> = openings.iter().map(|opening| opening.path().bounds()).collect();
    let named: Vec<(&str, Bounds)> = openings.iter().map(|opening| opening.name.as_str()).zip(bounds).collect();
    let one = |(index, opening): (usize, &Opening)| {
        let beside = named.iter().enumerate().filter(|(other, _)| *other != index).map(|(_, other)| *other);
        measured(opening, beside, around, rules)
    };
    openings.iter().enumerate().map(one).collect()
}

fn measured<'o>(
    opening: &Opening,
    others: impl Iterator<Item = (&'o str, Bounds)>,
    around: &Surroundings<'_>,
    rules: &OpeningRules,
) -> OpeningCheck {
    let bounds = opening.path().bounds();
    let mut clearances = members(opening.framed, &bounds, around, rules);
    clearances.extend(seams(&bounds, around, rules));
    // A slot is open to the edge because somebody asked for it.
    if opening.slot.is_none() {
        clearances.push(edge(opening, &bounds, around, rules));
    }
    let apart = others.map(|(name, other)| {
        let least = apart_of(&bounds, &other, rules);
        Clearance::new(Rule::Apart, Against::Opening(name.to_owned()), distance(&bounds, &other), least)
    });
    clearances.extend(telling(apart.collect()));
    if let OpeningShape::Rectangle { corner_radius, .. } = opening.shape {
        let corner = Clearance::new(Rule::Corner, Against::Corner, corner_radius, rules.corner_radius);
        clearances.push(corner.preferred(rules.corner_radius_preferred));
    }
    OpeningCheck { name: opening.name.clone(), framed: opening.framed, clearances }
}

/// How far two stretches lie apart; below zero where they overlap.
fn gap(one: (Length, Length), other: (Length, Length)) -> Length {
    (other.0 - one.1).max(one.0 - other.1)
}

/// From flanges; a member under the opening is another rule than one beside it.
fn members(framed: bool, bounds: &Bounds, around: &Surroundings<'_>, rules: &OpeningRules) -> Vec<Clearance> {
    let from = around.frame.members().iter().map(|member| {
        let gap = gap((bounds.fore, bounds.aft), (member.fore, member.aft));
        let (rule, least) =
            if gap.is_negative() { (Rule::Member, Length::ZERO) } else { (Rule::Flange, rules.from_flange) };
        let mut clearance = Clearance::new(rule, Against::Member(member.number), gap, least);
        if framed {
            clearance.short_by = Length::ZERO;
        }
        clearance
    });
    let (over, beside): (Vec<Clearance>, Vec<Clearance>) = from.partition(|clearance| clearance.rule == Rule::Member);
    over.into_iter().chain(telling(beside)).collect()
}

fn seams(bounds: &Bounds, around: &Surroundings<'_>, rules: &OpeningRules) -> Vec<Clearance> {
    let from = around.seams().filter(|seam| meets(seam, bounds)).map(|seam| {
        let gap = gap((bounds.fore, bounds.aft), (seam.fore, seam.aft));
        let clearance = Clearance::new(Rule::Seam, Against::Seam(seam.number), gap, rules.from_seam);
        clearance.preferred(rules.from_seam_preferred)
    });
    telling(from.collect())
}

fn edge(opening: &Opening, bounds: &Bounds, around: &Surroundings<'_>, rules: &OpeningRules) -> Clearance {
    let radius = radius(opening);
    let core = Bounds {
        fore: bounds.fore + radius,
        aft: bounds.aft - radius,
        port: bounds.port + radius,
        starboard: bounds.starboard - radius,
    };
    let distance = from_sides(around.outline.path(), core) - radius;
    Clearance::new(Rule::Edge, Against::Edge, distance, rules.from_edge)
}

/// Those that are not kept, or else the one that is nearest to not being kept.
fn telling(all: Vec<Clearance>) -> Vec<Clearance> {
    let (kept, broken): (Vec<Clearance>, Vec<Clearance>) = all.into_iter().partition(Clearance::holds);
    let nearest = kept.into_iter().min_by_key(|clearance| clearance.distance - clearance.least);
    if broken.is_empty() { nearest.into_iter().collect() } else { broken }
}
