//! The job: everything that is asked of a plan, as plain data and as a file.
//!
//! A measurement is required; a setting has a default. [`Job::from_json`] reads the file and says everything that is
//! wrong with it at once. [`Job::check`] does the same for a job built in code, and hands back what the rooms below work
//! on: the outline, the frame and the settings, resolved and checked.
//!
//! ```text
//!   text ── read ──┐
//!                  ├── Job ── check ── Checked { outline, frame, openings, …, settings }
//!   Job::new(…) ───┘
//! ```

mod arrange;
mod boards;
mod call;
mod check;
mod covering;
mod fittings;
mod narrow_flange;
mod old_holes;
mod openings;
mod patch;
mod quote;
mod read;
#[cfg(feature = "schema")]
mod schema;
mod settings;
mod span;
mod specs;
mod strip_out;
pub(crate) mod texts;
mod tolerance;

pub use arrange::{ArrangeSpec, Build};
pub use call::{
    BeamCall, FastenersCall, FillCall, LengthCall, NestCall, PanelsCall, PlateCall, SeamsCall, SpanLimitsCall,
    SurveyCall,
};
pub use check::Checked;
pub(crate) use check::{frame_label, lid_label};
pub use covering::{AdhesiveKind, AdhesiveSpec, CoveringSpec};
pub use fittings::{BoltSpec, DeckEnd, DeckSide, FittingSpec, FittingsSpec, OldDatumSpec, PlateSpec, SkewSpec};
pub use narrow_flange::NarrowFlangeSpec;
pub use old_holes::OldHolesSpec;
pub use openings::OpeningRulesSpec;
pub use patch::{BlockingPlaces, DamageSpec, PatchSpec};
pub use quote::{LabourSpec, QuoteSpec, TaskSpec};
pub use read::Rounded;
#[cfg(feature = "schema")]
pub use schema::schema;
pub use settings::{
    Arranging, Assumed, Cover, FittingSettings, Mending, OldDeck, PatchSettings, Service, Settings, Shop, Tolerance,
};
pub use span::{ForceSpec, HoldSpec, LoadSpec, PanelSpec, PointPlace, PointPreset, PointSpec, SpanSpec};
pub use specs::{ExtraPart, Face, FasteningSpec, Paper, SawSpec, ShopSpec};
pub use strip_out::StripOutSpec;
pub use tolerance::{ErrorSpec, ToleranceSpec, UnevenError};

use crate::error::Error;
use crate::frame::FrameSpec;
use crate::length::{JsonForm, Length, Unit, with_json_form};
use crate::outline::{Deck, KeepClear, Opening};
use crate::stock::Sheet;
use crate::survey::SurveySpec;
use serde::{Deserialize, Deserializer, Serialize, Serializer, de};

/// A deck to be planned.
///
/// # Examples
/// ```
/// use deck_core::{frame::FrameSpec, outline::{Deck, Parametric}, stock::Sheet, Job, Length, Unit};
/// let inches = Length::inches;
/// let deck = Deck::Parametric(Parametric::new(inches(240), inches(96)));
/// let frame = FrameSpec::regular(inches(0), inches(240), inches(24), inches(2));
/// let sheet = Sheet::new("3/4 ply", inches(96), inches(48)).thickness("3/4 in".parse()?);
/// let job = Job::new("Sandpiper", Unit::Inch, deck, frame, vec![sheet]).gap(inches(0));
/// assert!(job.check().is_ok());
/// assert_eq!(Job::from_json(&job.to_json())?, job);
/// # Ok::<(), deck_core::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(remote = "Self", deny_unknown_fields)]
#[non_exhaustive]
pub struct Job {
    /// Number of the schema that the file follows.
    schema: SchemaNumber,
    /// What the boat or the job is called.
    pub name: String,
    /// The unit of bare numbers, and of what is written on paper.
    pub unit: Unit,
    /// The deck's outline.
    pub deck: Deck,
    /// The cross members.
    pub frame: FrameSpec,
    /// Openings in the deck.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub openings: Vec<Opening>,
    /// Zones that no seam may cross.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub keep_clear: Vec<KeepClear>,
    /// Sheets to buy, and offcuts on the rack: one at least.
    #[cfg_attr(feature = "schema", schemars(length(min = 1)))]
    pub stock: Vec<Sheet>,
    /// Small parts that are sawn from the same sheets.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub extra_parts: Vec<ExtraPart>,
    /// Gap between boards.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub gap: Option<Length>,
    /// How much shorter than the outline the boards may finish at the stern.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub end_tolerance: Option<Length>,
    /// The fastener, and the distances it keeps.
    #[serde(default, skip_serializing_if = "FasteningSpec::is_empty")]
    pub fastening: FasteningSpec,
    /// How sheets are sawn.
    #[serde(default, skip_serializing_if = "SawSpec::is_empty")]
    pub saw: SawSpec,
    /// What the shop holds to, what it buys by, and how it writes.
    #[serde(default, skip_serializing_if = "ShopSpec::is_empty")]
    pub shop: ShopSpec,
    /// The panel's rating and the loads that the user chose, for figures of strength.
    #[serde(default, skip_serializing_if = "SpanSpec::is_empty")]
    pub span: SpanSpec,
    /// In what manner the boards lie, where one piece from side to side is not to be the only way.
    #[serde(default, skip_serializing_if = "ArrangeSpec::is_empty")]
    pub arrange: ArrangeSpec,
    /// Roll goods over the deck. Left out: the plan says nothing of them.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub covering: Option<CoveringSpec>,
    /// The old deck, and how it comes off. Left out: the plan says nothing of it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub strip_out: Option<StripOutSpec>,
    /// Prices and hours. Left out: there is no quote.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub quote: Option<QuoteSpec>,
    /// How far off measuring, sawing and setting may be; none: nothing is said of it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tolerance: Option<ToleranceSpec>,
    /// What flanges too narrow for two rows are mended with; none: what is short is told, and nothing is bought for it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub narrow_flange: Option<NarrowFlangeSpec>,
    /// What was measured, where the outline or the members come from a survey, or old boards are held against them.
    #[serde(default, skip_serializing_if = "SurveySpec::is_empty")]
    pub survey: SurveySpec,
    /// The clearances that openings keep; given, the plan measures openings against them.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub opening_rules: Option<OpeningRulesSpec>,
    /// Holes that the old deck left in the members.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub old_holes: Vec<OldHolesSpec>,
    /// Rails, seats and consoles that are bolted down again.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub fittings: Option<FittingsSpec>,
    /// What is damaged of an old deck that stays otherwise; none: the whole deck is new.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub patch: Option<PatchSpec>,
    #[serde(skip)]
    rounded: read::Roundings,
}

/// The schema number that this version reads and writes.
pub(crate) const SCHEMA: u64 = 1;

/// Stands in the file as the number of its schema, and in memory as nothing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
struct SchemaNumber;

impl Serialize for SchemaNumber {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_u64(SCHEMA)
    }
}

impl Job {
    /// A job with what has no default.
    pub fn new(name: impl Into<String>, unit: Unit, deck: Deck, frame: FrameSpec, stock: Vec<Sheet>) -> Job {
        Job {
            schema: SchemaNumber,
            name: name.into(),
            unit,
            deck,
            frame,
            openings: Vec::new(),
            keep_clear: Vec::new(),
            stock,
            extra_parts: Vec::new(),
            gap: None,
            end_tolerance: None,
            fastening: FasteningSpec::new(),
            saw: SawSpec::new(),
            shop: ShopSpec::new(),
            span: SpanSpec::new(),
            arrange: ArrangeSpec::new(),
            covering: None,
            strip_out: None,
            quote: None,
            tolerance: None,
            narrow_flange: None,
            survey: SurveySpec::default(),
            opening_rules: None,
            old_holes: Vec::new(),
            fittings: None,
            patch: None,
            rounded: read::Roundings::default(),
        }
    }

    /// With openings in the deck.
    #[must_use]
    pub fn openings(mut self, openings: Vec<Opening>) -> Job {
        self.openings = openings;
        self
    }

    /// With zones that no seam may cross.
    #[must_use]
    pub fn keep_clear(mut self, zones: Vec<KeepClear>) -> Job {
        self.keep_clear = zones;
        self
    }

    /// With small parts from the same sheets.
    #[must_use]
    pub fn extra_parts(mut self, parts: Vec<ExtraPart>) -> Job {
        self.extra_parts = parts;
        self
    }

    /// With a gap between boards.
    #[must_use]
    pub fn gap(mut self, gap: Length) -> Job {
        self.gap = Some(gap);
        self
    }

    /// With a shortfall allowed at the stern.
    #[must_use]
    pub fn end_tolerance(mut self, tolerance: Length) -> Job {
        self.end_tolerance = Some(tolerance);
        self
    }

    /// With settings for the fasteners.
    #[must_use]
    pub fn fastening(mut self, fastening: FasteningSpec) -> Job {
        self.fastening = fastening;
        self
    }

    /// With settings for the saw.
    #[must_use]
    pub fn saw(mut self, saw: SawSpec) -> Job {
        self.saw = saw;
        self
    }

    /// With settings of the shop.
    #[must_use]
    pub fn shop(mut self, shop: ShopSpec) -> Job {
        self.shop = shop;
        self
    }

    /// With a panel's rating and loads, for figures of strength.
    #[must_use]
    pub fn span(mut self, span: SpanSpec) -> Job {
        self.span = span;
        self
    }

    /// With arrangements of boards to compare, or one to build.
    #[must_use]
    pub fn arrange(mut self, arrange: ArrangeSpec) -> Job {
        self.arrange = arrange;
        self
    }

    /// With roll goods over the deck.
    #[must_use]
    pub fn covering(mut self, covering: CoveringSpec) -> Job {
        self.covering = Some(covering);
        self
    }

    /// With the old deck, and how it comes off.
    #[must_use]
    pub fn strip_out(mut self, strip_out: StripOutSpec) -> Job {
        self.strip_out = Some(strip_out);
        self
    }

    /// With prices and hours.
    #[must_use]
    pub fn quote(mut self, quote: QuoteSpec) -> Job {
        self.quote = Some(quote);
        self
    }

    /// With errors of measuring, sawing and setting.
    #[must_use]
    pub fn tolerance(mut self, tolerance: ToleranceSpec) -> Job {
        self.tolerance = Some(tolerance);
        self
    }

    /// With what narrow flanges are mended with.
    #[must_use]
    pub fn narrow_flange(mut self, spec: NarrowFlangeSpec) -> Job {
        self.narrow_flange = Some(spec);
        self
    }

    /// With a survey.
    #[must_use]
    pub fn survey(mut self, survey: SurveySpec) -> Job {
        self.survey = survey;
        self
    }

    /// With clearances that openings keep.
    #[must_use]
    pub fn opening_rules(mut self, rules: OpeningRulesSpec) -> Job {
        self.opening_rules = Some(rules);
        self
    }

    /// With holes that the old deck left in the members.
    #[must_use]
    pub fn old_holes(mut self, holes: Vec<OldHolesSpec>) -> Job {
        self.old_holes = holes;
        self
    }

    /// With what is bolted down again.
    #[must_use]
    pub fn fittings(mut self, fittings: FittingsSpec) -> Job {
        self.fittings = Some(fittings);
        self
    }

    /// With part of the old deck kept.
    #[must_use]
    pub fn patch(mut self, patch: PatchSpec) -> Job {
        self.patch = Some(patch);
        self
    }

    /// Reads a job file.
    ///
    /// # Errors
    /// Everything that is wrong with it, in the order in which it stands there: text that is not JSON, fields that the
    /// schema does not have, measurements that are missing or cannot be read, and what [`Job::check`] finds.
    pub fn from_json(text: &str) -> Result<Job, Error> {
        read::from_json(text)
    }

    /// Reads a job from JSON that is parsed already.
    ///
    /// # Errors
    /// As [`Job::from_json`].
    pub fn from_value(value: &serde_json::Value) -> Result<Job, Error> {
        read::from_value(value, Vec::new())
    }

    /// The job file's text.
    pub fn to_json(&self) -> String {
        // unreachable: a job holds texts, finite numbers and lists; none of them fails to be written.
        serde_json::to_string_pretty(self).unwrap_or_default()
    }

    /// The lengths that were not whole nanometres where they were read, and what was taken for them. Not part of the
    /// file.
    pub fn rounded(&self) -> &[Rounded] {
        &self.rounded.0
    }

    /// Checks the whole and builds what a plan works on.
    ///
    /// # Errors
    /// Everything that does not fit together.
    pub fn check(&self) -> Result<Checked, Error> {
        with_json_form(JsonForm::Input(self.unit), || check::job(self))
    }
}

/// Lengths are numbers in the job's own unit where those are exact, and texts otherwise.
impl Serialize for Job {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        with_json_form(JsonForm::Input(self.unit), || Job::serialize(self, serializer))
    }
}

/// As [`Job::from_value`], so that a job inside another document is read as strictly as a file.
impl<'de> Deserialize<'de> for Job {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Job, D::Error> {
        let value = serde_json::Value::deserialize(deserializer)?;
        Job::from_value(&value).map_err(de::Error::custom)
    }
}

#[cfg(test)]
mod tests;
