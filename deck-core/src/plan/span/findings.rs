//! What of the boards' strength a person has to look at.

use super::found::{PanelSpan, PlanSpan, UniformCheck};
use crate::cautions::SpanFindings;
use crate::span::Axis;

impl PlanSpan {
    /// The findings that cautions are made of.
    pub(in crate::plan) fn findings(&self) -> SpanFindings {
        let over = self.panels.iter().filter_map(over);
        let placed =
            self.points.iter().filter_map(|point| Some(format!("{}: {}", point.name, point.no_figure.as_ref()?)));
        SpanFindings {
            over: over.collect(),
            beside: self.panels.iter().filter_map(beside).collect(),
            rows: self.rows_over(),
            outside: self.panels.iter().filter_map(no_figure).chain(placed).collect(),
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

/// The worst of a board's loads that pass a limit; the others are in the notes on strength.
fn over(panel: &PanelSpan) -> Option<String> {
    let above = panel.utilisations().into_iter().filter(|(_, utilisation)| *utilisation > 1.0);
    let (check, ratio) = above.reduce(|worst, check| if check.1 > worst.1 { check } else { worst })?;
    Some(format!("panel {}: {check}, {ratio} of the limit", panel.panel))
}

fn no_figure(panel: &PanelSpan) -> Option<String> {
    let reasons = [panel.no_figure.as_ref().filter(|_| panel.table.is_none()), panel.no_points.as_ref()];
    let reasons: Vec<&str> = reasons.into_iter().flatten().map(String::as_str).collect();
    (!reasons.is_empty()).then(|| format!("panel {}: {}", panel.panel, reasons.join(" ")))
}

/// Over the limit of our beam, and not of the table where that has a figure.
fn beside(panel: &PanelSpan) -> Option<String> {
    let used = |check: &Option<UniformCheck>| check.as_ref().and_then(|check| check.utilisation);
    let beam = panel.beam.as_ref()?;
    let over = beam.utilisation.filter(|utilisation| *utilisation > 1.0)?;
    let table = match used(&panel.table) {
        Some(table) if table > 1.0 => return None,
        Some(table) => format!("{table} of the table's limit"),
        None => "no figure by the table".to_owned(),
    };
    Some(format!("panel {}: {}, {over} of the beam's limit; {table}", panel.panel, beam.governing))
}

fn weak(panel: &PanelSpan) -> Option<String> {
    let (table, other) = (panel.table.as_ref()?, panel.other_way?);
    let weak = panel.axis == Axis::Along && other > table.allowable_psf;
    let turned = panel.other_way_text.as_ref()?;
    weak.then(|| {
        format!("panel {}: {} as laid, {turned} with the axis across the members", panel.panel, table.allowable_text)
    })
}
