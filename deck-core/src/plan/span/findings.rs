//! What of the boards' strength a person has to look at.

use super::found::{PanelSpan, PlanSpan};
use crate::cautions::SpanFindings;
use crate::span::Axis;

impl PlanSpan {
    /// The findings that cautions are made of.
    pub(in crate::plan) fn findings(&self) -> SpanFindings {
        let over = self.panels.iter().flat_map(|panel| {
            let above = panel.utilisations().into_iter().filter(|(_, utilisation)| *utilisation > 1.0);
            above.map(move |(check, utilisation)| format!("panel {}: {check}, {utilisation} of the limit", panel.panel))
        });
        SpanFindings {
            over: over.collect(),
            rows: self.rows_over(),
            outside: self.panels.iter().filter_map(no_figure).collect(),
            weak: self.panels.iter().filter_map(weak).collect(),
        }
    }

    fn rows_over(&self) -> Vec<String> {
        let rows = self.fasteners.iter().flat_map(|fasteners| &fasteners.rows);
        let loads = rows.flat_map(|row| {
            [("lift", row.lift_utilisation), ("side load", row.side_utilisation)].map(|load| (row, load))
        });
        let over = loads.filter_map(|(row, (name, utilisation))| {
            let utilisation = utilisation.filter(|utilisation| *utilisation > 1.0)?;
            Some(format!("panel {} on M{}: {name}, {utilisation} of the limit", row.panel, row.member))
        });
        over.collect()
    }
}

fn no_figure(panel: &PanelSpan) -> Option<String> {
    let reasons = [panel.no_figure.as_ref().filter(|_| panel.table.is_none()), panel.no_points.as_ref()];
    let reasons: Vec<&str> = reasons.into_iter().flatten().map(String::as_str).collect();
    (!reasons.is_empty()).then(|| format!("panel {}: {}", panel.panel, reasons.join(" ")))
}

fn weak(panel: &PanelSpan) -> Option<String> {
    let (as_laid, other) = (panel.table.as_ref()?.allowable_psf, panel.other_way?);
    let weak = panel.axis == Axis::Along && other > as_laid;
    weak.then(|| format!("panel {}: {as_laid} psf as laid, {other} psf with the axis across the members", panel.panel))
}
