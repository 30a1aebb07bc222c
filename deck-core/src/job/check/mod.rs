//! Holds the parts of a job against each other, and builds what a plan works on.

mod arrange;
pub(super) mod calls;
mod covering;
mod deck;
mod figures;
mod fittings;
mod frame;
mod old_holes;
mod parts;
mod patch;
mod quote;
mod settings;
mod span;
mod stock;
mod strip_out;
mod survey;
mod tolerance;

pub(crate) use parts::{frame_label, lid_label};

use super::read::places::Places;
use super::settings::{Settings, asked};
use super::{
    ArrangeSpec, CoveringSpec, ExtraPart, FasteningSpec, FittingsSpec, Job, NarrowFlangeSpec, OldHolesSpec,
    OpeningRulesSpec, PatchSpec, QuoteSpec, SawSpec, ShopSpec, SpanSpec, StripOutSpec, ToleranceSpec,
};
use crate::error::{Error, Fault, Faults, Kind};
use crate::frame::{Frame, FrameSpec};
use crate::length::{Length, Notation, Unit};
use crate::outline::{Deck, KeepClear, Opening, Outline};
use crate::patch::Damage;
use crate::stock::Sheet;
use crate::survey::{Survey, SurveySpec};

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
    /// Width of the strips under the edges of framed openings; none: no strips.
    pub frame_width: Option<Length>,
    /// Damaged places, where part of the old deck stays.
    pub damages: Vec<Damage>,
    /// The thickness of the sheets.
    pub thickness: Length,
    /// The settings, given or by default.
    pub settings: Settings,
    /// What is said of strength.
    pub span: SpanSpec,
    /// What is said of the covering.
    pub covering: Option<CoveringSpec>,
    /// What is said of the old deck.
    pub strip_out: Option<StripOutSpec>,
    /// What is said of prices and hours.
    pub quote: Option<QuoteSpec>,
    /// What the survey found, where there is one.
    pub survey: Option<Survey>,
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
    pub(super) covering: Option<(&'a CoveringSpec, &'a Places)>,
    pub(super) strip_out: Option<(&'a StripOutSpec, &'a Places)>,
    pub(super) quote: Option<(&'a QuoteSpec, &'a Places)>,
    pub(super) tolerance: Option<&'a ToleranceSpec>,
    pub(super) narrow_flange: Option<&'a NarrowFlangeSpec>,
    pub(super) survey: &'a SurveySpec,
    /// True where something in the survey could not be read.
    pub(super) survey_faulty: bool,
    pub(super) opening_rules: Option<&'a OpeningRulesSpec>,
    pub(super) old_holes: Listing<'a, OldHolesSpec>,
    pub(super) fittings: Option<&'a FittingsSpec>,
    pub(super) patch: Option<&'a PatchSpec>,
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
        static UNSURVEYED: SurveySpec = SurveySpec::nothing();
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
            covering: None,
            strip_out: None,
            quote: None,
            tolerance: None,
            narrow_flange: None,
            survey: &UNSURVEYED,
            survey_faulty: false,
            opening_rules: None,
            old_holes: Listing { items: &[], positions: &[] },
            fittings: None,
            patch: None,
        }
    }

    /// The same parts, for a copy in which one is another.
    fn again(&self) -> Parts<'a> {
        Parts { ..*self }
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
    let old_holes = places(job.old_holes.len());
    let points = places(job.span.points.as_ref().map_or(0, Vec::len));
    let in_order = Places::new();
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
        covering: job.covering.as_ref().map(|spec| (spec, &in_order)),
        strip_out: job.strip_out.as_ref().map(|spec| (spec, &in_order)),
        quote: job.quote.as_ref().map(|spec| (spec, &in_order)),
        tolerance: job.tolerance.as_ref(),
        narrow_flange: job.narrow_flange.as_ref(),
        survey: &job.survey,
        survey_faulty: false,
        opening_rules: job.opening_rules.as_ref(),
        old_holes: Listing { items: &job.old_holes, positions: &old_holes },
        fittings: job.fittings.as_ref(),
        patch: job.patch.as_ref(),
    };
    let mut faults = Faults::new();
    let checked = examine(&parts, &mut faults);
    faults.finish()?;
    // unreachable: a part that is not there has left a fault.
    checked.ok_or_else(|| Fault::new(Kind::MissingField, "", "The job is not complete.", "").into())
}

/// Checks all that is there; what is built is complete only where no fault was found.
pub(super) fn examine(parts: &Parts<'_>, faults: &mut Faults) -> Option<Checked> {
    let mut surveyed = survey::survey(parts, faults);
    let outline = parts.deck.and_then(|deck| survey::outline(parts, deck, surveyed.as_ref(), faults));
    let frame = survey::frame(parts, outline.as_ref(), surveyed.as_ref(), faults);
    deck::openings(parts, outline.as_ref(), faults);
    deck::zones(parts, outline.as_ref().map(Outline::length), faults);
    let thickness = stock::stock(parts, faults);
    parts::extra(parts, faults);
    settings::settings(parts, outline.as_ref(), faults);
    span::span(parts, outline.as_ref(), faults);
    arrange::arrange(parts, outline.as_ref(), faults);
    covering::covering(parts, outline.as_ref(), faults);
    strip_out::strip_out(parts, outline.as_ref(), frame.as_ref(), faults);
    quote::quote(parts, faults);
    tolerance::tolerance(parts, faults);
    old_holes::old_holes(parts, frame.as_ref(), outline.as_ref().map(Outline::beam), faults);
    fittings::fittings(parts, faults);
    patch::patch(parts, outline.as_ref(), faults);
    let (outline, frame) = (outline?, frame?);
    // A patch comes out of the sheets that there are; nobody lays out a whole deck then.
    let whole_deck = parts.stock.filter(|_| parts.patch.is_none());
    let too_wide = whole_deck.is_some_and(|stock| super::boards::none_reaches(stock.items, parts.saw, outline.beam()));
    let outline = deck::slotted(outline, parts.openings, faults)?;
    if let Some(found) = &mut surveyed {
        survey::old_boards(parts, &frame, found);
    }
    let wall_missing = frame.members().iter().any(|member| member.wall.is_none());
    let mut settings = Settings::resolve(parts, wall_missing, too_wide);
    settings.schedule.old_holes = old_holes::in_place(parts, &frame, &settings);
    let extra_parts = parts::with_derived(parts, &frame, &settings, faults);
    Some(Checked {
        outline,
        frame,
        openings: parts.openings.items.to_vec(),
        keep_clear: parts.keep_clear.items.to_vec(),
        stock: parts.stock?.items.to_vec(),
        extra_parts,
        damages: parts.patch.map(patch::damages).unwrap_or_default(),
        frame_width: parts.opening_rules.and_then(|rules| rules.frame_width),
        thickness: thickness?,
        settings,
        span: parts.span.clone(),
        covering: parts.covering.map(|(spec, _)| spec.clone()),
        strip_out: parts.strip_out.map(|(spec, _)| spec.clone()),
        quote: parts.quote.map(|(spec, _)| spec.clone()),
        survey: surveyed,
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
