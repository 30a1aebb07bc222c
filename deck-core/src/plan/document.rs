//! The plan as one value, and its JSON.

use super::arrange::{Arrangement, PlanDivision, SeamPricing};
use super::basis::Basis;
use super::checks::CheckDimensions;
use super::fittings::{PlacedHole, PlanFittings};
use super::narrow_flange::NarrowFlanges;
use super::openings::{OpeningChecks, OpeningPart};
use super::patch::PlanPatch;
use super::span::{PlanSpan, without_boards};
use super::tolerance::PlanTolerance;
use super::weights::Weights;
use crate::cautions::Caution;
use crate::covering::Covering;
use crate::error::{Error, Fault, Kind};
use crate::fasteners::Fastening;
use crate::frame::CrossMember;
use crate::geometry::{Bounds, Path};
use crate::job::{Assumed, Checked, Job, Rounded, texts};
use crate::length::{Area, JsonForm, Length, with_json_form};
use crate::nest::Nest;
use crate::outline::{Opening, Rim, SlotEdge};
use crate::panels::Panel;
use crate::quote::Quote;
use crate::seams::{NoLayout, SeamLayout, Seams};
use crate::strip_out::StripOut;
use crate::survey::Survey;
use crate::takeoff::Takeoff;
use serde::{Deserialize, Deserializer, Serialize, Serializer, de};

/// Everything that follows from a job: one value, from which every drawing is made.
///
/// In JSON, lengths are numbers in the job's unit, exact to the nanometre, and where a person reads them the shop's own
/// writing stands beside: `"width": 47.9375, "width_text": "47-15/16\""`.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(remote = "Self")]
#[non_exhaustive]
pub struct Plan {
    /// Number of the schema that the plan follows.
    pub schema: u32,
    /// The library's version.
    pub version: String,
    /// The job that the plan comes from, so that it can be computed again.
    pub job: Job,
    /// The settings that it rests on.
    pub basis: Basis,
    /// Defaults that it rests on and that no source settles.
    pub assumed: Vec<Assumed>,
    /// Lengths that were not whole nanometres, and what was taken for them.
    pub rounded: Vec<Rounded>,
    /// The outline and what to check on it.
    pub deck: DeckFacts,
    /// The cross members, their flanges in place.
    pub frame: Vec<CrossMember>,
    /// The openings.
    pub openings: Vec<PlacedOpening>,
    /// The layouts of seams, best first. Everything below follows from the first.
    pub layouts: Vec<SeamLayout>,
    /// True where no better layout than the first exists.
    pub proven: bool,
    /// Why there is no layout, where there is none.
    pub no_layout: Option<NoLayout>,
    /// The manners of laying boards that were compared, the best first. Empty where one piece from side to side was all
    /// that was asked for.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub arrangements: Vec<Arrangement>,
    /// Joints along the boat and what lies under them, where what is built has any.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub division: Option<PlanDivision>,
    /// What came of choosing seams by the nest, where that was asked for and boards lie athwart in one piece.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub seams_by_nest: Option<SeamPricing>,
    /// The panels.
    pub panels: Vec<Panel>,
    /// The fasteners.
    pub fasteners: Option<Fastening>,
    /// What the boards take on their supports, and what the fasteners hold.
    #[serde(default)]
    pub span: PlanSpan,
    /// What errors leave of the bearings, where the job reckons with them.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tolerance: Option<PlanTolerance>,
    /// What mends flanges too narrow for two rows, where the job asks for that.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub narrow_flange: Option<NarrowFlanges>,
    /// The sheets, and how to saw them.
    pub sheets: Option<Nest>,
    /// Holes of the old deck in the members, beside the new fasteners.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub old_holes: Vec<PlacedHole>,
    /// What is bolted down again, where the job says so.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub fittings: Option<PlanFittings>,
    /// What stays of the old deck and what is replaced, where part of it stays.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub patch: Option<PlanPatch>,
    /// Openings against their clearances, where the job asks for it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub opening_checks: Option<OpeningChecks>,
    /// Lids of openings, and strips under their edges.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub opening_parts: Vec<OpeningPart>,
    /// What to buy.
    pub takeoff: Option<Takeoff>,
    /// Roll goods over the deck, where the job has them.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub covering: Option<Covering>,
    /// How the old deck comes off, where the job speaks of it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub strip_out: Option<StripOut>,
    /// What comes off the boat and what goes on, where the job speaks of the old deck.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub weights: Option<Weights>,
    /// What the job costs, where it gives prices and hours.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub quote: Option<Quote>,
    /// What the survey found; none where the job has none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub survey: Option<Survey>,
    /// What to know before acting on the plan; those that it triggered come first.
    pub cautions: Vec<Caution>,
}

/// The deck's outline.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct DeckFacts {
    /// Length over all.
    pub length: Length,
    /// Greatest beam.
    pub beam: Length,
    /// Area within the outline, openings included.
    pub area: Area,
    /// The outline, closed, each side marked with what it is.
    pub outline: Path<Rim>,
    /// What to measure before the first cut.
    pub checks: CheckDimensions,
}

/// An opening in its place.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct PlacedOpening {
    /// Its name.
    pub name: String,
    /// What it is for.
    pub purpose: Option<String>,
    /// Whether its edge is framed underneath.
    pub framed: bool,
    /// The edge of the deck to which it is open, where it is a slot: then the outline goes around it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub slot: Option<SlotEdge>,
    /// Its edge.
    pub shape: Path<()>,
    /// The least rectangle around it.
    pub bounds: Bounds,
}

/// The schema number of plans; it goes with the job file's.
const SCHEMA: u32 = 1;

impl Plan {
    /// A plan with its layouts and nothing yet that follows from them.
    pub(super) fn new(job: &Job, checked: &Checked, found: Seams) -> Plan {
        let outline = &checked.outline;
        Plan {
            schema: SCHEMA,
            version: env!("CARGO_PKG_VERSION").into(),
            job: job.clone(),
            basis: Basis::new(checked),
            assumed: checked.settings.assumed.clone(),
            rounded: job.rounded().to_vec(),
            deck: DeckFacts {
                length: outline.length(),
                beam: outline.beam(),
                area: Area::from_square_nanometres(outline.path().area()),
                outline: outline.path().clone(),
                checks: CheckDimensions::new(outline, found.layouts.first(), checked.errors().as_ref()),
            },
            frame: checked.frame.members().to_vec(),
            openings: checked.openings.iter().map(PlacedOpening::new).collect(),
            layouts: found.layouts,
            proven: found.proven,
            no_layout: found.no_layout,
            arrangements: Vec::new(),
            division: None,
            seams_by_nest: None,
            panels: Vec::new(),
            fasteners: None,
            span: without_boards(checked),
            tolerance: None,
            narrow_flange: None,
            sheets: None,
            old_holes: super::fittings::old_holes(checked, None),
            fittings: None,
            patch: None,
            opening_checks: None,
            opening_parts: super::openings::parts(checked),
            takeoff: None,
            covering: None,
            strip_out: None,
            weights: None,
            quote: None,
            survey: checked.survey.clone(),
            cautions: Vec::new(),
        }
    }

    /// The plan's JSON: the same bytes from every language and on every machine.
    pub fn to_json(&self) -> String {
        // unreachable: a plan holds texts, finite numbers and lists; none of them fails to be written.
        serde_json::to_string_pretty(self).unwrap_or_default()
    }

    /// Reads a plan's JSON back.
    ///
    /// # Errors
    /// Text that is not a plan's JSON.
    pub fn from_json(text: &str) -> Result<Plan, Error> {
        serde_json::from_str(text).map_err(|error| {
            Fault::new(Kind::NotJson, "", format!("This is not a plan: {error}."), "A plan's JSON, as it was written.")
                .into()
        })
    }
}

impl PlacedOpening {
    fn new(opening: &Opening) -> PlacedOpening {
        let shape = opening.path();
        PlacedOpening {
            name: opening.name.clone(),
            purpose: opening.purpose.clone(),
            framed: opening.framed,
            slot: opening.slot,
            bounds: shape.bounds(),
            shape,
        }
    }
}

impl Serialize for Plan {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        use serde::ser::Error as _;
        let marked =
            with_json_form(JsonForm::Marked(self.basis.unit), || Plan::serialize(self, serde_json::value::Serializer))
                .map_err(S::Error::custom)?;
        texts::beside(marked, &self.basis.notation()).serialize(serializer)
    }
}

impl<'de> Deserialize<'de> for Plan {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Plan, D::Error> {
        let value = serde_json::Value::deserialize(deserializer)?;
        let job: Job = value
            .get("job")
            .map(Job::deserialize)
            .transpose()
            .map_err(de::Error::custom)?
            .ok_or_else(|| de::Error::missing_field("job"))?;
        with_json_form(JsonForm::Number(job.unit), || Plan::deserialize(value)).map_err(de::Error::custom)
    }
}
