//! Reads a job, and gathers everything that is wrong with it.
//!
//! Reading never stops at a fault. An optional field with a fault counts as absent and a list item with one is left out,
//! so that what is whole can still be checked against the rest; what follows from a fault that is already told is not
//! told again. All faults come out in the order of the document.

mod arrange;
mod at;
mod call;
mod covering;
mod deck;
mod fittings;
mod frame;
mod narrow_flange;
mod openings;
mod order;
mod panel;
mod patch;
pub(super) mod places;
mod quote;
mod span;
mod specs;
mod stock;
mod strip_out;
mod survey;
mod text;
mod tolerance;
mod words;

use super::check::{Listing, Parts, examine};
use super::{
    ArrangeSpec, CoveringSpec, ExtraPart, FasteningSpec, FittingsSpec, Job, NarrowFlangeSpec, OldHolesSpec,
    OpeningRulesSpec, PatchSpec, QuoteSpec, SCHEMA, SawSpec, ShopSpec, SpanSpec, StripOutSpec, ToleranceSpec,
};
use crate::error::{Error, Fault, Faults, Kind};
use crate::length::{JsonForm, Length, Unit, with_json_form};
use crate::outline::{Deck, KeepClear, Opening};
use crate::stock::Sheet;
use crate::survey::SurveySpec;
use at::{At, Listed, Object, shown};
pub(super) use call::{
    beam_call, beam_call_value, fasteners_call, fasteners_call_value, fill_call, fill_call_value, length_call,
    nest_call, nest_call_value, panels_call, panels_call_value, plate_call, plate_call_value, seams_call,
    seams_call_value, span_limits_call, span_limits_call_value, survey_call, survey_call_value,
};
use order::{in_order, unsaid};
use places::Placed;
use serde::{Deserialize, Serialize};
use serde_json::Value;

/// A length that was not a whole number of nanometres as it was given.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Rounded {
    /// JSON pointer of the field.
    pub pointer: String,
    /// What was given.
    pub given: String,
    /// The length that was taken, rounded half to even.
    pub taken: Length,
}

/// What was rounded in reading. It says where a job came from and not what it is: two jobs that differ in it are equal.
#[derive(Debug, Clone, Default)]
pub(super) struct Roundings(pub(super) Vec<Rounded>);

impl PartialEq for Roundings {
    fn eq(&self, _: &Roundings) -> bool {
        true
    }
}

impl Eq for Roundings {}

/// What is gathered on the way through the document.
struct Notes {
    /// What the document is, for messages.
    document: &'static str,
    unit: Unit,
    faults: Vec<Fault>,
    rounded: Vec<Rounded>,
}

impl Notes {
    fn new(document: &'static str) -> Notes {
        Notes { document, unit: Unit::Inch, faults: Vec::new(), rounded: Vec::new() }
    }
}

/// A job as far as it could be read.
struct Draft {
    name: Option<String>,
    unit: Option<Unit>,
    deck: Option<Deck>,
    frame: Option<frame::Read>,
    openings: Listed<Opening>,
    keep_clear: Listed<KeepClear>,
    stock: Option<Listed<Sheet>>,
    extra_parts: Listed<ExtraPart>,
    gap: Option<Length>,
    end_tolerance: Option<Length>,
    fastening: FasteningSpec,
    saw: SawSpec,
    shop: ShopSpec,
    span: SpanSpec,
    arrange: ArrangeSpec,
    point_places: Vec<usize>,
    covering: Option<Placed<CoveringSpec>>,
    strip_out: Option<Placed<StripOutSpec>>,
    quote: Option<Placed<QuoteSpec>>,
    tolerance: Option<ToleranceSpec>,
    narrow_flange: Option<NarrowFlangeSpec>,
    survey: SurveySpec,
    /// True where something in the survey is at fault; then nothing is said of what is taken from it.
    survey_faulty: bool,
    opening_rules: Option<OpeningRulesSpec>,
    old_holes: Listed<OldHolesSpec>,
    fittings: Option<FittingsSpec>,
    patch: Option<PatchSpec>,
}

pub(super) fn from_json(text: &str) -> Result<Job, Error> {
    let (value, twice) = text::parse(text, "A job is a JSON object that follows the schema.")?;
    from_value(&value, twice)
}

/// `faults` are those that were found in parsing.
pub(super) fn from_value(root: &Value, faults: Vec<Fault>) -> Result<Job, Error> {
    let mut notes = Notes { faults, ..Notes::new("job") };
    let at = At { value: root, pointer: String::new() };
    let draft = match at.object(&mut notes) {
        Some(mut fields) => {
            schema_number(&mut fields, &mut notes)?;
            draft(fields, &mut notes)
        }
        None => return Err(in_order(root, notes.faults)),
    };
    // Without a unit a bare number means nothing, and there is nothing to hold it against.
    if draft.unit.is_some() {
        let mut found = Faults::new();
        let _ = with_json_form(JsonForm::Input(draft.unit.unwrap_or_default()), || examine(&draft.parts(), &mut found));
        if let Err(error) = found.finish() {
            let news = unsaid(&error, &notes.faults);
            notes.faults.extend(news);
        }
    }
    if !notes.faults.is_empty() {
        return Err(in_order(root, notes.faults));
    }
    // unreachable: what is required and missing has left a fault.
    draft.job(notes.rounded).ok_or_else(|| Fault::new(Kind::MissingField, "", "The job is not complete.", "").into())
}

/// Another schema has other fields: nothing else can be said of a file that follows it.
fn schema_number(fields: &mut Object<'_>, notes: &mut Notes) -> Result<(), Error> {
    let accepted = format!("This version reads \"schema\": {SCHEMA}.");
    if !fields.has("schema") {
        fields.missing("schema", notes, "The file does not say which schema it follows.".into(), &accepted);
        return Ok(());
    }
    let mut other = None;
    fields.required("schema", notes, |at, notes| {
        let number = at.value.as_f64();
        if number.is_none() {
            at.refuse(notes, Kind::WrongType, format!("{} is no schema number.", shown(at.value)), &accepted);
        } else if at.value.as_u64() != Some(SCHEMA) && number != Some(1.0) {
            let newer = number.is_some_and(|number| number > 1.0);
            let what = if newer { "newer than this version can read" } else { "not one that there is" };
            let message = format!("Schema {} is {what}.", shown(at.value));
            other = Some(Fault::new(Kind::SchemaNumber, shown(at.value), message, &accepted).at(&at.pointer));
        }
        Some(())
    });
    other.map_or(Ok(()), |fault| Err(fault.into()))
}

fn draft(mut fields: Object<'_>, notes: &mut Notes) -> Draft {
    let name = fields.required("name", notes, At::text);
    let unit = if fields.has("unit") {
        fields.required("unit", notes, At::word)
    } else {
        let accepted = "It is \"in\", \"ft\", \"mm\", \"cm\" or \"m\".";
        fields.missing("unit", notes, "The job does not name the unit of its numbers.".into(), accepted);
        None
    };
    notes.unit = unit.unwrap_or_default();
    let (span, point_places) = fields.defaulted("span", notes, span::span);
    let before = notes.faults.len();
    let survey = fields.defaulted("survey", notes, survey::survey);
    let survey_faulty = notes.faults.len() > before;
    let draft = Draft {
        name,
        unit,
        deck: fields.required("deck", notes, deck::deck),
        frame: fields.required("frame", notes, frame::frame),
        openings: fields.defaulted("openings", notes, |at, notes| at.list(notes, deck::opening)),
        keep_clear: fields.defaulted("keep_clear", notes, |at, notes| at.list(notes, deck::zone)),
        stock: stock(&mut fields, notes),
        extra_parts: fields.defaulted("extra_parts", notes, |at, notes| at.list(notes, specs::extra_part)),
        gap: fields.optional("gap", notes, At::length),
        end_tolerance: fields.optional("end_tolerance", notes, At::length),
        fastening: fields.defaulted("fastening", notes, specs::fastening),
        saw: fields.defaulted("saw", notes, specs::saw),
        shop: fields.defaulted("shop", notes, specs::shop),
        span,
        arrange: fields.defaulted("arrange", notes, arrange::arrange),
        point_places,
        covering: fields.optional("covering", notes, covering::covering),
        strip_out: fields.optional("strip_out", notes, strip_out::strip_out),
        quote: fields.optional("quote", notes, quote::quote),
        tolerance: fields.optional("tolerance", notes, tolerance::tolerance),
        narrow_flange: fields.optional("narrow_flange", notes, narrow_flange::narrow_flange),
        survey,
        survey_faulty,
        opening_rules: fields.optional("opening_rules", notes, openings::rules),
        old_holes: fields.defaulted("old_holes", notes, |at, notes| at.list(notes, openings::old_holes)),
        fittings: fields.optional("fittings", notes, fittings::fittings),
        patch: fields.optional("patch", notes, patch::patch),
    };
    fields.close(notes);
    draft
}

/// The sheets; none where there are some and not one of them could be read.
fn stock(fields: &mut Object<'_>, notes: &mut Notes) -> Option<Listed<Sheet>> {
    let before = notes.faults.len();
    let listed = fields.required("stock", notes, |at, notes| at.list(notes, stock::sheet))?;
    (!listed.items.is_empty() || notes.faults.len() == before).then_some(listed)
}

impl Draft {
    fn parts(&self) -> Parts<'_> {
        fn listing<T>(listed: &Listed<T>) -> Listing<'_, T> {
            Listing { items: &listed.items, positions: &listed.positions }
        }
        Parts {
            unit: self.unit.unwrap_or_default(),
            deck: self.deck.as_ref(),
            frame: self.frame.as_ref().filter(|read| read.usable).map(|read| (&read.spec, read.positions.as_slice())),
            openings: listing(&self.openings),
            keep_clear: listing(&self.keep_clear),
            stock: self.stock.as_ref().map(listing),
            extra: listing(&self.extra_parts),
            gap: self.gap,
            end_tolerance: self.end_tolerance,
            fastening: &self.fastening,
            saw: &self.saw,
            shop: &self.shop,
            span: &self.span,
            arrange: &self.arrange,
            point_places: &self.point_places,
            covering: self.covering.as_ref().map(|placed| (&placed.spec, &placed.places)),
            strip_out: self.strip_out.as_ref().map(|placed| (&placed.spec, &placed.places)),
            quote: self.quote.as_ref().map(|placed| (&placed.spec, &placed.places)),
            tolerance: self.tolerance.as_ref(),
            narrow_flange: self.narrow_flange.as_ref(),
            survey: &self.survey,
            survey_faulty: self.survey_faulty,
            opening_rules: self.opening_rules.as_ref(),
            old_holes: listing(&self.old_holes),
            fittings: self.fittings.as_ref(),
            patch: self.patch.as_ref(),
        }
    }

    fn job(self, rounded: Vec<Rounded>) -> Option<Job> {
        let mut job = Job::new(self.name?, self.unit?, self.deck?, self.frame?.spec, self.stock?.items)
            .openings(self.openings.items)
            .keep_clear(self.keep_clear.items)
            .extra_parts(self.extra_parts.items)
            .fastening(self.fastening)
            .saw(self.saw)
            .shop(self.shop)
            .span(self.span)
            .arrange(self.arrange)
            .survey(self.survey)
            .old_holes(self.old_holes.items);
        job.covering = self.covering.map(|placed| placed.spec);
        job.strip_out = self.strip_out.map(|placed| placed.spec);
        job.quote = self.quote.map(|placed| placed.spec);
        (job.gap, job.end_tolerance, job.rounded) = (self.gap, self.end_tolerance, Roundings(rounded));
        (job.tolerance, job.narrow_flange) = (self.tolerance, self.narrow_flange);
        (job.opening_rules, job.fittings, job.patch) = (self.opening_rules, self.fittings, self.patch);
        Some(job)
    }
}
