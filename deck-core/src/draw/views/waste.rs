//! Names the waste inside a panel by what it was, for the saw sheet of what is sawn from it.

use crate::nest::Inside;
use crate::panels::Panel;
use crate::plan::Plan;

/// Where the sheet comes from: `from the notch of panel 5, after it is sawn`.
pub(super) fn from(plan: &Plan, inside: &Inside) -> String {
    let panel = plan.panels.iter().find(|panel| panel.label == inside.part);
    match panel {
        Some(panel) => format!("from {} of panel {}, after it is sawn", place(panel, inside), panel.label),
        None => format!("from the waste inside {}, after it is sawn", inside.part),
    }
}

fn place(panel: &Panel, inside: &Inside) -> String {
    let waste = inside.waste;
    let (port, fore) = (panel.bounds.port + waste.x, panel.bounds.fore + waste.y);
    let (starboard, aft) = (port + waste.length, fore + waste.width);
    let around = panel.openings.iter().find(|opening| {
        let bounds = opening.bounds;
        bounds.port <= port && starboard <= bounds.starboard && bounds.fore <= fore && aft <= bounds.aft
    });
    if let Some(opening) = around {
        return format!("the {}", opening.name);
    }
    let athwart = waste.x.is_zero() || waste.x + waste.length == panel.length;
    let along = waste.y.is_zero() || waste.y + waste.width == panel.width;
    if athwart && along { "the corner".to_owned() } else { "the notch".to_owned() }
}
