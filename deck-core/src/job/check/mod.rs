//! Holds the parts of a job against each other, and builds what a plan works on.

mod arrange;
pub(super) mod calls;
mod deck;
mod frame;
mod parts;
mod settings;
mod span;
mod stock;
mod tolerance;

use super::settings::{Settings, asked};
use super::{ArrangeSpec, ExtraPart, FasteningSpec, Job, NarrowFlangeSpec, SawSpec, ShopSpec, SpanSpec, ToleranceSpec};
use crate::error::{Error, Fault, Faults, Kind};
use crate::frame::{Frame, FrameSpec};
use crate::length::{Length, Notation, Unit};
use crate::outline::{Deck, KeepClear, Opening, Outline};
use crate::stock::Sheet;

/// What a plan works on: everything of a job, built, resolved and checked.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Checked {
    /// The outline.
    pub outline: Outline,
    /// The cross members, their flanges in place.
    pub frame: Frame,
    /// The openings, within the outline and apart from each other.
    pub openings: Vec<Opening>,
    /// The zones that no seam may cross.
    pub keep_clear: Vec<KeepClear>,
    /// The sheets, all of one thickness.
    pub stock: Vec<Sheet>,
    /// The small parts from the same sheets.
    pub extra_parts: Vec<ExtraPart>,
    /// The thickness of the sheets.
    pub thickness: Length,
    /// The settings, given or by default.
    pub settings: Settings,
    /// What is said of strength.
    pub span: SpanSpec,
}

/// Items with the places where they stand in the input.
pub(super) struct Listing<'a, T> {
    pub(super) items: &'a [T],
    pub(super) positions: &'a [usize],
}

// Derived, these would ask the same of `T`.
impl<T> Clone for Listing<'_, T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T> Copy for Listing<'_, T> {}

impl<'a, T> Listing<'a, T> {
    fn iter(self) -> impl Iterator<Item = (usize, &'a T)> {
        self.positions.iter().copied().zip(self.items)
    }
}

/// A job in pieces, those that could not be read left out.
pub(super) struct Parts<'a> {
    pub(super) unit: Unit,
    pub(super) deck: Option<&'a Deck>,
    pub(super) frame: Option<(&'a FrameSpec, &'a [usize])>,
    pub(super) openings: Listing<'a, Opening>,
    pub(super) keep_clear: Listing<'a, KeepClear>,
    pub(super) stock: Option<Listing<'a, Sheet>>,
    pub(super) extra: Listing<'a, ExtraPart>,
    pub(super) gap: Option<Length>,
    pub(super) end_tolerance: Option<Length>,
    pub(super) fastening: &'a FasteningSpec,
    pub(super) saw: &'a SawSpec,
    pub(super) shop: &'a ShopSpec,
    pub(super) span: &'a SpanSpec,
    pub(super) arrange: &'a ArrangeSpec,
    /// Where each of the point loads stands in the input.
    pub(super) point_places: &'a [usize],
    pub(super) tolerance: Option<&'a ToleranceSpec>,
    pub(super) narrow_flange: Option<&'a NarrowFlangeSpec>,
}

impl<'a> Parts<'a> {
    /// Nothing but settings, for calls that ask for a step alone.
    pub(super) fn bare(unit: Unit, fastening: &'a FasteningSpec, shop: &'a ShopSpec) -> Parts<'a> {
        const UNSAID: &SawSpec = &SawSpec { kerf: None, trim: None, stages: None, first: None, keep: None, face: None };
        const UNASKED: &SpanSpec = &SpanSpec {
            panel: None,
            wet: None,
            duration: None,
            deflection: None,
            load: None,
            points: None,
            fasteners: None,
        };
        const UNARRANGED: &ArrangeSpec = &ArrangeSpec {
            compare: None,
            build: None,
            stagger: None,
            block_width: None,
            block_spacing: None,
            seams_by_nest: None,
        };
        Parts {
            unit,
            deck: None,
            frame: None,
            openings: Listing { items: &[], positions: &[] },
            keep_clear: Listing { items: &[], positions: &[] },
            stock: None,
            extra: Listing { items: &[], positions: &[] },
            gap: None,
            end_tolerance: None,
            fastening,
            saw: UNSAID,
            shop,
            span: UNASKED,
            arrange: UNARRANGED,
            point_places: &[],
            tolerance: None,
            narrow_flange: None,
        }
    }

    /// How lengths are written to whoever gave them.
    pub(super) fn notation(&self) -> Notation {
        asked::notation(self.unit, self.shop)
    }
}

/// More of anything than this no job has; the questions below are asked of each pair.
const MOST: usize = 600;

pub(super) fn job(job: &Job) -> Result<Checked, Error> {
    let places = |count: usize| (0..count).collect::<Vec<usize>>();
    let members = places(job.frame.members.len());
    let (openings, zones, sheets) = (places(job.openings.len()), places(job.keep_clear.len()), places(job.stock.len()));
    let extra = places(job.extra_parts.len());
    let points = places(job.span.points.as_ref().map_or(0, Vec::len));
    let parts = Parts {
        unit: job.unit,
        deck: Some(&job.deck),
        frame: Some((&job.frame, &members)),
        openings: Listing { items: &job.openings, positions: &openings },
        keep_clear: Listing { items: &job.keep_clear, positions: &zones },
        stock: Some(Listing { items: &job.stock, positions: &sheets }),
        extra: Listing { items: &job.extra_parts, positions: &extra },
        gap: job.gap,
        end_tolerance: job.end_tolerance,
        fastening: &job.fastening,
        saw: &job.saw,
        shop: &job.shop,
        span: &job.span,
        arrange: &job.arrange,
        point_places: &points,
        tolerance: job.tolerance.as_ref(),
        narrow_flange: job.narrow_flange.as_ref(),
    };
    let mut faults = Faults::new();
    let checked = examine(&parts, &mut faults);
    faults.finish()?;
    // unreachable: a part that is not there has left a fault.
    checked.ok_or_else(|| Fault::new(Kind::MissingField, "", "The job is not complete.", "").into())
}

/// Checks all that is there; what is built is complete only where no fault was found.
pub(super) fn examine(parts: &Parts<'_>, faults: &mut Faults) -> Option<Checked> {
    let outline = parts.deck.and_then(|deck| deck::outline(deck, faults));
    let frame = frame::frame(parts, outline.as_ref().map(frame::Size::of), faults);
    deck::openings(parts, outline.as_ref(), faults);
    deck::zones(parts, outline.as_ref().map(Outline::length), faults);
    let thickness = stock::stock(parts, faults);
    parts::extra(parts, faults);
    settings::settings(parts, outline.as_ref(), faults);
    span::span(parts, outline.as_ref(), faults);
    arrange::arrange(parts, outline.as_ref(), faults);
    tolerance::tolerance(parts, faults);
    let (outline, frame) = (outline?, frame?);
    let too_wide = parts.stock.is_some_and(|stock| super::boards::none_reaches(stock.items, parts.saw, outline.beam()));
    let settings = Settings::resolve(parts, frame.members().iter().any(|member| member.wall.is_none()), too_wide);
    Some(Checked {
        outline,
        frame,
        openings: parts.openings.items.to_vec(),
        keep_clear: parts.keep_clear.items.to_vec(),
        stock: parts.stock?.items.to_vec(),
        extra_parts: parts.extra.items.to_vec(),
        thickness: thickness?,
        settings,
        span: parts.span.clone(),
    })
}

/// Refuses a list that is longer than any job's, so that no pair of its items is looked at.
fn too_many(count: usize, what: &str, field: &str, faults: &mut Faults) -> bool {
    if count <= MOST {
        return false;
    }
    let message = format!("{count} {what} are more than a boat has.");
    let fault = Fault::new(Kind::TooMany, count.to_string(), message, format!("There are at most {MOST}."));
    faults.push(fault.within(field));
    true
}

/// Refuses names that are used twice, at the second of them.
fn unique<'a>(names: impl Iterator<Item = (usize, &'a str)>, list: &str, field: &str, faults: &mut Faults) {
    let mut seen = std::collections::BTreeMap::new();
    for (position, name) in names {
        if let Some(first) = seen.insert(name, position) {
            let message = format!("\"{name}\" is the name of number {} in the list, too.", first + 1);
            let fault = Fault::new(Kind::DuplicateName, format!("\"{name}\""), message, "Each has its own.");
            faults.push(fault.within(field).within(position).within(list));
            seen.insert(name, first);
        }
    }
}
