//! Seams whose flange is too narrow for two rows: what mends each, and what that takes.

use crate::job::Checked;
use crate::length::Length;
use crate::panels::{Edge, Panel};
use crate::published::defaults;
use crate::seams::{Remedy, RemedyRules, SeamLayout, SeamRemedy, remedy};
use crate::takeoff::MendPart;
use serde::{Deserialize, Serialize};

/// What mends flanges that are too narrow.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct NarrowFlanges {
    /// Flange that two rows take: gap + 2 (edge distance in the board + in the metal).
    pub least_flange: Length,
    /// Least edge distance in a board in print.
    pub least_in_ply: Length,
    /// Least edge distance in metal in print.
    pub least_in_metal: Length,
    /// Flat leg of the angle.
    pub angle_leg: Length,
    /// Greatest distance between the screws that hold an angle or a cleat.
    pub spacing: Length,
    /// The seams that are short, from the bow.
    pub seams: Vec<SeamRemedy>,
    /// Angles and cleats, seam by seam.
    pub parts: Vec<MendPart>,
}

pub(super) fn narrow_flanges(checked: &Checked, layout: &SeamLayout, panels: &[Panel]) -> Option<NarrowFlanges> {
    let mend = checked.settings.narrow_flange.as_ref()?;
    let diameter = checked.settings.schedule.fastener.diameter;
    let least_in_metal = diameter.part(defaults::EDGE_DISTANCE_METAL_HALVES.value, 2);
    let least_in_ply = defaults::EDGE_DISTANCE.value;
    let rules = RemedyRules::new(least_in_ply, least_in_metal, mend.angle_leg);
    let seams: Vec<SeamRemedy> =
        layout.seams.iter().filter_map(|seam| remedy(seam, &checked.settings.rules, &rules)).collect();
    let parts = seams.iter().flat_map(|seam| parts(seam, panels, mend.spacing)).collect();
    Some(NarrowFlanges {
        least_flange: checked.settings.rules.least_flange(),
        least_in_ply,
        least_in_metal,
        angle_leg: mend.angle_leg,
        spacing: mend.spacing,
        seams,
        parts,
    })
}

/// An angle or a cleat under each edge of a board at the seam that lacks its row, as long as that edge.
fn parts(seam: &SeamRemedy, panels: &[Panel], spacing: Length) -> Vec<MendPart> {
    if !matches!(seam.chosen, Some(Remedy::Cleat | Remedy::Angle)) {
        return Vec::new();
    }
    let at = |edge: Edge| matches!(edge, Edge::Seam { seam: number, .. } if number == seam.seam);
    let mut parts = Vec::new();
    for (side, board) in [(0, seam.seam), (1, seam.seam + 1)] {
        if !seam.sides[side] {
            continue;
        }
        for panel in panels.iter().filter(|panel| panel.board == board) {
            for (edge, to) in panel.shape.walk().filter(|(edge, _)| at(edge.edge)) {
                let length = edge.from.distance(to);
                parts.push(MendPart {
                    seam: seam.seam,
                    member: seam.member,
                    is_angle: seam.chosen == Some(Remedy::Angle),
                    forward: side == 0,
                    panel: panel.label.clone(),
                    length,
                    screws: u64::try_from(length.steps_of(spacing)).unwrap_or(0) + 1,
                });
            }
        }
    }
    parts
}
