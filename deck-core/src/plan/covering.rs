//! From the checked job and its layout to what the room of the covering asks.

use super::Plan;
use crate::covering::{Covering, CoveringInput, covering as room};
use crate::job::Checked;
use crate::length::Length;

/// Of the plan, the job's name, its layout and its joints are looked at.
pub(super) fn covering(checked: &Checked, plan: &Plan) -> Option<Covering> {
    let (spec, cover) = (checked.covering.as_ref()?, checked.settings.cover.as_ref()?);
    let layout = plan.layouts.first();
    let seams: Vec<Length> = layout.iter().flat_map(|layout| &layout.seams).map(|seam| seam.fore).collect();
    let division = plan.division.as_ref();
    let joints: Vec<Length> = division.iter().flat_map(|division| &division.joints).map(|joint| joint.port).collect();
    Some(room(&CoveringInput {
        boat: &plan.job.name,
        outline: &checked.outline,
        openings: &checked.openings,
        ply_seams: &seams,
        ply_joints: &joints,
        rolls: spec.rolls.as_deref().unwrap_or_default(),
        run: cover.run,
        wrap: cover.wrap,
        least_piece: cover.least_piece,
        off_ply_seams: cover.off_ply_seams,
        traffic: spec.traffic.as_deref().unwrap_or_default(),
        others: spec.other_boats.as_deref().unwrap_or_default(),
        adhesive: cover.adhesive.as_ref(),
    }))
}
