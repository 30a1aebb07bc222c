//! The one call: from a job to a plan.
//!
//! The steps below are the order of the data. Each room that they call answers one question and has not heard of the
//! others; what one hands to the next is put into its words by the small files beside this one.

mod basis;
mod checks;
mod covering;
mod document;
mod fittings;
mod inside;
mod narrow_flange;
mod openings;
mod parts;
mod patch;
mod quote;
mod span;
mod strip_out;
mod tolerance;
mod warn;
mod weights;

pub use basis::Basis;
pub use checks::{CheckDimensions, SquareCheck};
pub use document::{DeckFacts, PlacedOpening, Plan};
pub use fittings::{PlacedHole, PlanFittings};
pub use openings::{CheckedOpening, NoPlace, OpeningChecks, OpeningPart, OpeningPartKind};
pub use patch::{BlockingPiece, DamagedPlace, OldBoardFacts, PatchFacts, PlanPatch};
pub use span::{
    Bearing, Blocking, Enough, FastenerSpan, Limit, NO_RATING, PanelSpan, PlanSpan, PointCheck, PointLoad, PointZone,
    RowHolds, SagPicture, ScrewHold, SpacingLimitOf, SpanBay, UniformCheck,
};
pub use weights::{WeightLine, WeightSide, Weights};

pub use narrow_flange::NarrowFlanges;
pub use tolerance::{ErrorShares, PlanTolerance};

use crate::error::Error;
use crate::fasteners::fasteners;
use crate::job::{Checked, Job};
use crate::nest::Effort;
use crate::panels::{Panel, panels};
use crate::seams::{SeamLayout, Seams};
use crate::takeoff::{TakeoffInput, hardware, takeoff};

/// Plans a deck.
///
/// A job that can be read but not laid out is a plan without layouts that says why in
/// [`no_layout`](Plan::no_layout); what does not depend on seams is there all the same.
///
/// # Errors
/// Everything that is wrong with the job, each with the JSON pointer of its field.
///
/// # Examples
/// ```
/// use deck_core::{Job, plan};
/// let job = Job::from_json(r#"{
///     "schema": 1, "name": "Sandpiper", "unit": "in",
///     "deck": {"length": "20 ft", "beam": 96},
///     "frame": {"measured_to": "centre", "flange": 2, "regular": {"first": 0, "last": 240, "spacing": 24}},
///     "stock": [{"label": "3/4 ply", "length": 96, "width": 48, "thickness": "3/4"}],
///     "gap": 0
/// }"#)?;
/// let plan = plan(&job)?;
/// let stations: Vec<String> = plan.layouts[0].seams.iter().map(|seam| seam.fore.to_string()).collect();
/// assert_eq!(stations, ["48 in", "96 in", "144 in", "192 in"]);
/// # Ok::<(), deck_core::Error>(())
/// ```
pub fn plan(job: &Job) -> Result<Plan, Error> {
    Planner::new(job).plan()
}

/// A step of planning, told before it starts.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
#[non_exhaustive]
pub enum Step {
    /// Checking the job.
    Check,
    /// Placing seams.
    Seams,
    /// Cutting panels out of the outline.
    Panels,
    /// Placing fasteners.
    Fasteners,
    /// Holding panels and fasteners against their loads.
    Span,
    /// Nesting panels in sheets.
    Sheets,
    /// Counting what to buy.
    Takeoff,
    /// Looking for what to caution about.
    Cautions,
}

impl Step {
    /// Every step, in order.
    pub const ALL: [Step; 8] = [
        Step::Check,
        Step::Seams,
        Step::Panels,
        Step::Fasteners,
        Step::Span,
        Step::Sheets,
        Step::Takeoff,
        Step::Cautions,
    ];
}

/// A plan in the making, where more is wanted than [`plan`] takes.
pub struct Planner<'a> {
    job: &'a Job,
    effort: Effort,
    progress: Option<&'a mut dyn FnMut(Step)>,
}

impl std::fmt::Debug for Planner<'_> {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Planner").field("job", self.job).field("effort", &self.effort).finish_non_exhaustive()
    }
}

impl<'a> Planner<'a> {
    /// Plans with standard effort.
    pub fn new(job: &'a Job) -> Planner<'a> {
        Planner { job, effort: Effort::Standard, progress: None }
    }

    /// With another effort for the sheets.
    #[must_use]
    pub fn effort(mut self, effort: Effort) -> Planner<'a> {
        self.effort = effort;
        self
    }

    /// Telling each step before it starts.
    #[must_use]
    pub fn progress(mut self, progress: &'a mut dyn FnMut(Step)) -> Planner<'a> {
        self.progress = Some(progress);
        self
    }

    fn tell(&mut self, step: Step) {
        if let Some(progress) = self.progress.as_mut() {
            progress(step);
        }
    }

    /// Plans.
    ///
    /// # Errors
    /// As [`plan`].
    pub fn plan(mut self) -> Result<Plan, Error> {
        self.tell(Step::Check);
        let checked = self.job.check()?;
        self.tell(Step::Seams);
        let patch = checked.settings.patch.as_ref();
        let found = if patch.is_some() { Seams::unasked() } else { checked.layouts() };
        let mut plan = Plan::new(self.job, &checked, found);
        plan.covering = covering::covering(&self.job.name, &checked, plan.layouts.first());
        if let Some(settings) = patch {
            self.tell(Step::Panels);
            patch::plan(&mut plan, &checked, settings, self.effort)?;
        }
        if let Some(layout) = plan.layouts.first().cloned() {
            self.build(&mut plan, &checked, &layout)?;
        }
        plan.opening_checks = openings::checks(&checked, self.job.opening_rules.is_some(), plan.layouts.first());
        plan.strip_out = strip_out::strip_out(&checked);
        plan.weights = weights::weights(&plan, &checked);
        plan.quote = quote::quote(&plan, &checked);
        self.tell(Step::Cautions);
        plan.cautions = warn::cautions(&plan, &checked);
        Ok(plan)
    }

    /// What follows from a layout.
    fn build(&mut self, plan: &mut Plan, checked: &Checked, layout: &SeamLayout) -> Result<(), Error> {
        let settings = &checked.settings;
        plan.tolerance = tolerance::tolerance(checked, layout);
        self.tell(Step::Panels);
        let boards: Vec<Panel> = panels(&checked.outline, layout, &checked.openings, checked.thickness);
        self.tell(Step::Fasteners);
        let fastening = fasteners(&boards, &checked.frame, &checked.outline, &settings.schedule);
        self.tell(Step::Span);
        plan.span = span::span(checked, &boards, &fastening)?;
        self.tell(Step::Sheets);
        let sheets = parts::sheets(&boards, checked, self.effort)?;
        self.tell(Step::Takeoff);
        let input = TakeoffInput {
            nest: &sheets,
            stock: &checked.stock,
            panels: &boards,
            layout,
            fastening: &fastening,
            fastener: &settings.schedule.fastener,
            frame: &checked.frame,
            outline: &checked.outline,
            covering: plan.covering.as_ref(),
        };
        let buying = parts::purchase_rules(&settings.shop);
        let mut order = takeoff(&input, &buying);
        plan.narrow_flange = narrow_flange::narrow_flanges(checked, layout, &boards);
        if let Some(flanges) = &plan.narrow_flange {
            order.add_mends(&flanges.parts, flanges.angle_leg, &buying, &settings.notation);
        }
        plan.fittings = fittings::fittings(checked, &boards, &layout.seams, Some(&fastening));
        if let Some(found) = &plan.fittings {
            order.lines.extend(hardware(&found.bolts, &found.plates, &buying, &settings.notation));
        }
        plan.takeoff = Some(order);
        plan.old_holes = fittings::old_holes(checked, Some(&fastening));
        plan.panels = boards;
        plan.fasteners = Some(fastening);
        plan.sheets = Some(sheets);
        Ok(())
    }
}

#[cfg(test)]
mod tests;
