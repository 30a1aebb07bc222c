//! Openings against the clearances that the job asks for, and the parts that are sawn for them.

use super::arrange;
use crate::error::Error;
use crate::frame::Frame;
use crate::geometry::Bounds;
use crate::job::{Checked, frame_label, lid_label};
use crate::length::Length;
use crate::nest::Effort;
use crate::openings::{Clearance, Move, OpeningCheck, OpeningRules, Rule, Surroundings, check, framing, least_move};
use crate::outline::{Opening, OpeningShape};
use crate::seams::{Seam, SeamLayout};
use serde::{Deserialize, Serialize};

/// Every opening against every rule.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct OpeningChecks {
    /// The clearances.
    pub rules: OpeningRules,
    /// The openings, as in the job.
    pub openings: Vec<CheckedOpening>,
    /// Whether the seams would stay where they are once every opening is moved as suggested; none where nothing is.
    pub same_seams: Option<bool>,
}

/// An opening against every rule, and where it would keep them all.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct CheckedOpening {
    /// Its name.
    pub name: String,
    /// Every clearance that is not kept, and the nearest of each rule that is.
    pub clearances: Vec<Clearance>,
    /// True where every rule is kept.
    pub holds: bool,
    /// The least move after which every rule of place is kept, the openings before it moved as suggested; none where
    /// nothing need be moved, or no move helps.
    pub suggestion: Option<Move>,
    /// Why no move helps, where one is needed.
    pub no_place: Option<NoPlace>,
}

/// Why an opening finds no place on the deck.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct NoPlace {
    /// The reason, as a sentence.
    pub reason: String,
    /// The rules of which one alone, given up, would leave a place.
    pub rules: Vec<Rule>,
    /// What would mend it, each on its own.
    pub mend: Vec<String>,
}

/// A part that is sawn for an opening.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct OpeningPart {
    /// What is written on it, as on the sheets.
    pub label: String,
    /// The opening.
    pub opening: String,
    /// What it is.
    pub kind: OpeningPartKind,
    /// Where it goes under the deck; none for a lid.
    pub place: Option<Bounds>,
    /// Extent athwart of a lid; longer side of a strip.
    pub length: Length,
    /// Extent fore and aft of a lid; shorter side of a strip.
    pub width: Length,
    /// Radius of a lid's corners; zero for a strip.
    pub corner_radius: Length,
    /// Layers that are glued up.
    pub layers: u32,
}

/// What sort of part it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum OpeningPartKind {
    /// The lid.
    Lid,
    /// A strip under the edge.
    Frame,
}

/// Measures the openings where the job asks for it.
pub(super) fn checks(
    checked: &Checked,
    asked: bool,
    layout: Option<&SeamLayout>,
    effort: Effort,
) -> Result<Option<OpeningChecks>, Error> {
    if !asked {
        return Ok(None);
    }
    let around = Surroundings { outline: &checked.outline, frame: &checked.frame, layout };
    let rules = checked.settings.openings;
    let mut places: Vec<Opening> = checked.openings.clone();
    let measured = check(&checked.openings, &around, &rules);
    let mut openings = Vec::with_capacity(measured.len());
    for (index, found) in measured.into_iter().enumerate() {
        openings.push(one(index, found, &mut places, &around, checked));
    }
    let moved = openings.iter().any(|opening| opening.suggestion.is_some());
    let same_seams = moved.then(|| stay(checked, places, layout, effort)).transpose()?;
    Ok(Some(OpeningChecks { rules, openings, same_seams }))
}

/// Whether the seams stay with the openings in other places; where arrangements are compared, that is done again.
fn stay(checked: &Checked, places: Vec<Opening>, layout: Option<&SeamLayout>, effort: Effort) -> Result<bool, Error> {
    let again = Checked { openings: places, ..checked.clone() };
    let found = arrange::arrange(&again, effort)?.seams;
    let line = |seam: &Seam| (seam.fore, seam.aft, seam.lane);
    let seams = |layout: &SeamLayout| layout.seams.iter().map(line).collect::<Vec<_>>();
    Ok(found.layouts.first().map(seams) == layout.map(seams))
}

/// One opening, the others where they are or where they were moved to.
fn one(
    index: usize,
    found: OpeningCheck,
    places: &mut [Opening],
    around: &Surroundings<'_>,
    checked: &Checked,
) -> CheckedOpening {
    let rules = &checked.settings.openings;
    let others: Vec<Bounds> = places
        .iter()
        .enumerate()
        .filter(|(other, _)| *other != index)
        .map(|(_, other)| other.path().bounds())
        .collect();
    let (mut suggestion, mut no_place) = (None, None);
    let holds = found.holds();
    if let Some(place) = places.get_mut(index).filter(|place| place.slot.is_none() && found.is_misplaced()) {
        match least_move(place, &others, around, rules) {
            // Another opening has made room already.
            Ok(least) if least.is_none() => {}
            Ok(least) => {
                *place = place.moved(least.aft, least.starboard);
                suggestion = Some(least);
            }
            Err(helps) => no_place = Some(nowhere(&found, helps, checked)),
        }
    }
    CheckedOpening { name: found.name, clearances: found.clearances, holds, suggestion, no_place }
}

fn nowhere(found: &OpeningCheck, rules: Vec<Rule>, checked: &Checked) -> NoPlace {
    let say = |length: Length| checked.settings.notation.text(length);
    let clearances = &checked.settings.openings;
    let mut mend: Vec<String> = rules
        .iter()
        .filter_map(|rule| match rule {
            Rule::Member | Rule::Flange if found.framed => None,
            Rule::Member => Some("Framed underneath, it may cross a member that stays whole.".to_owned()),
            Rule::Flange => Some(format!("Less than {} from a flange.", say(clearances.from_flange))),
            Rule::Seam => Some(format!("Less than {} from a seam.", say(clearances.from_seam))),
            Rule::Edge => Some(format!("Less than {} from the deck's edge.", say(clearances.from_edge))),
            Rule::Apart => Some("Nearer to the other openings.".to_owned()),
            Rule::Corner => None,
        })
        .collect();
    mend.push("A smaller opening.".to_owned());
    let reason =
        format!("Nowhere on the deck does \"{}\" keep every clearance, with the seams as planned.", found.name);
    NoPlace { reason, rules, mend }
}

/// The parts that are sawn for openings, in their order.
pub(super) fn parts(checked: &Checked) -> Vec<OpeningPart> {
    let strips = checked.frame_width;
    let of = |opening: &Opening| {
        let mut parts: Vec<OpeningPart> = lid(opening, checked).into_iter().collect();
        if let Some(width) = strips.filter(|_| opening.framed) {
            parts.extend(strips_of(opening, &checked.frame, width));
        }
        parts
    };
    checked.openings.iter().flat_map(of).collect()
}

fn lid(opening: &Opening, checked: &Checked) -> Option<OpeningPart> {
    let lid = opening.lid?;
    let label = lid_label(opening);
    let part = checked.extra_parts.iter().find(|part| part.label == label)?;
    let hole = opening.path().bounds();
    let grown = (part.length - hole.breadth()) / 2;
    let corner = match opening.shape {
        OpeningShape::Round { diameter, .. } => diameter / 2,
        OpeningShape::Rectangle { corner_radius, .. } => corner_radius,
    };
    // A square corner stays square, however far the lid laps.
    let corner_radius = if corner.is_zero() { corner } else { (corner + grown).max(Length::ZERO) };
    Some(OpeningPart {
        label,
        opening: opening.name.clone(),
        kind: OpeningPartKind::Lid,
        place: None,
        length: part.length,
        width: part.width,
        corner_radius,
        layers: lid.layers.unwrap_or(1),
    })
}

fn strips_of(opening: &Opening, frame: &Frame, width: Length) -> Vec<OpeningPart> {
    let strip = |(index, place): (usize, Bounds)| OpeningPart {
        label: frame_label(opening, index),
        opening: opening.name.clone(),
        kind: OpeningPartKind::Frame,
        place: Some(place),
        length: place.breadth().max(place.depth()),
        width: place.breadth().min(place.depth()),
        corner_radius: Length::ZERO,
        layers: 1,
    };
    framing(opening, frame, width).into_iter().enumerate().map(strip).collect()
}
