//! From the checked job and its layout to what the room of the covering asks.

use crate::covering::{Covering, CoveringInput, covering as room};
use crate::job::Checked;
use crate::length::Length;
use crate::seams::SeamLayout;

/// `boat` is the job's name, for the cut list.
pub(super) fn covering(boat: &str, checked: &Checked, layout: Option<&SeamLayout>) -> Option<Covering> {
    let (spec, cover) = (checked.covering.as_ref()?, checked.settings.cover.as_ref()?);
    let seams: Vec<Length> = layout.iter().flat_map(|layout| &layout.seams).map(|seam| seam.fore).collect();
    Some(room(&CoveringInput {
        boat,
        outline: &checked.outline,
        openings: &checked.openings,
        ply_seams: &seams,
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
