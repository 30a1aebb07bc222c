//! From a plan's pieces to the cautions about them.

use super::{Plan, patch};
use crate::cautions::{self, BoardWishes, Caution, DividedDeck, FastenerReach};
use crate::job::Checked;
use crate::openings::{Surroundings, check};

pub(super) fn cautions(plan: &Plan, checked: &Checked) -> Vec<Caution> {
    let settings = &checked.settings;
    let (shop, notation) = (&settings.shop, &settings.notation);
    let layout = plan.layouts.first();
    let wishes = BoardWishes {
        bearing: shop.preferred_bearing,
        width: settings.rules.preferred_width,
        supports: shop.preferred_supports,
        overhang: shop.overhang,
        side_overhang: shop.side_overhang,
    };
    let wall = checked.frame.members().iter().map(|member| member.wall.unwrap_or(shop.wall)).max();
    let reach = FastenerReach {
        board: checked.thickness,
        between: if shop.barrier { shop.tape_thickness } else { crate::length::Length::ZERO },
        wall: wall.unwrap_or(shop.wall),
        clearance: shop.clearance,
    };
    let (frame, outline) = (&checked.frame, &checked.outline);
    // A reading that is wrong shifts everything; what is missing from the order comes next.
    let mut found = plan.survey.as_ref().map(cautions::survey).unwrap_or_default();
    found.extend(cautions::stock(&checked.stock, plan.sheets.as_ref(), shop.barrier, notation));
    found.extend(cautions::boards(layout, frame, outline, &wishes, notation));
    if let Some(division) = &plan.division {
        let arranging = &settings.arranging;
        found.extend(cautions::arrangement(&DividedDeck {
            chosen: &division.chosen,
            unasked: arranging.needed && !arranging.asked,
            joints: &division.joints,
            blocks: &division.blocks,
            zones: &division.zones,
        }));
    }
    let needed = settings.rules.gap + settings.rules.least_bearing * 2;
    found.extend(cautions::square(layout, frame, needed, notation));
    if let Some(tolerance) = &plan.tolerance {
        found.extend(cautions::tolerance(&tolerance.seams, tolerance.least_bearing, &tolerance.mend, notation));
    }
    let around = Surroundings { outline, frame, layout };
    let checks = check(&checked.openings, &around, &settings.openings);
    found.extend(cautions::openings(&checks, &checked.openings, &settings.openings, notation));
    if let Some(rows) = &plan.fasteners {
        found.extend(cautions::fastening(rows, &settings.schedule.fastener, &reach, notation));
    }
    if let Some(fittings) = &plan.fittings {
        found.extend(cautions::fittings(&fittings.holes, notation));
    }
    if let Some(settings) = &settings.patch {
        found.extend(cautions::patch(&patch::findings(plan, checked, settings), notation));
    }
    found.extend(cautions::span(&plan.span.findings()));
    found.extend(cautions::standing());
    found
}
