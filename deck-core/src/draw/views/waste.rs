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

#[cfg(test)]
mod tests {
    use crate::draw::svg;
    use crate::plan::plan;

    #[test]
    fn a_saw_sheet_says_what_it_is_sawn_from() {
        let job = r#"{"schema": 1, "name": "Waste", "unit": "in",
            "deck": {"length": 48, "beam": 96, "notch": {"width": 30, "depth": 20, "from_port": 60, "inside_radius": 2}},
            "frame": {"measured_to": "centre", "flange": 2, "wall": "1/8", "regular": {"first": 1, "last": 47, "spacing": 23}},
            "openings": [{"name": "hatch", "framed": true, "rectangle": {"x": 5, "y": 10, "depth": 14, "width": 40}}],
            "extra_parts": [
                {"label": "lid", "length": 24, "width": 15, "grain": "length"},
                {"label": "cleat", "length": 38, "width": 3, "grain": "length", "count": 2}
            ],
            "stock": [{"label": "ply", "length": 96, "width": 48, "thickness": "3/4"}],
            "gap": 0, "saw": {"kerf": "1/8", "trim": 0}}"#;
        let plan = plan(&crate::job::Job::from_json(job).unwrap()).unwrap();
        let sheets = [svg(&plan, "saw-2").unwrap(), svg(&plan, "saw-3").unwrap()];
        let from = |place: &str| {
            sheets.iter().filter(|sheet| sheet.contains(&format!("from the {place} of panel 1, after"))).count()
        };
        assert_eq!((from("notch"), from("hatch")), (1, 1));
        assert!(sheets.iter().all(|sheet| !sheet.contains("factory edge<") && !sheet.contains("panel lid")));
        assert_eq!(plan.takeoff.unwrap().lines[0].buy, 1);
    }
}
