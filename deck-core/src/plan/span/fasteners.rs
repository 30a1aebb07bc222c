//! What each row of fasteners holds, by the screw, the flange and the distances that the plan gives it.

use super::figures::{force, given, significant};
use super::found::{FastenerSpan, RowHolds, ScrewHold};
use crate::error::Error;
use crate::fasteners::{Fastening, Row};
use crate::job::{Checked, ForceSpec, HoldSpec};
use crate::length::Length;
use crate::panels::Panel;
use crate::published::SCREWS;
use crate::span::hold::{Gravity, Held, Hold, Joint, Metal, Screw, hold};

/// What the rows hold; none where the job says nothing of screws and flanges.
pub(super) fn fasteners(
    checked: &Checked,
    boards: &[Panel],
    fastening: &Fastening,
) -> Result<Option<FastenerSpan>, Error> {
    let Some(spec) = &checked.span.fasteners else { return Ok(None) };
    let (Some(alloy), Some(head)) = (&spec.alloy, spec.head) else { return Ok(None) };
    let bench = Bench { checked, spec, alloy, screw: screw(checked).head(head) };
    let mut found = FastenerSpan {
        screw: format!("{}, head {}", bench.screw.name, checked.settings.notation.text(head)),
        alloy: alloy.clone(),
        screws: Vec::new(),
        rows: Vec::new(),
        lift_pounds: spec.lift.as_ref().and_then(ForceSpec::in_pounds).map(given),
        side_pounds: spec.side.as_ref().and_then(ForceSpec::in_pounds).map(given),
        notes: Vec::new(),
    };
    for row in &fastening.rows {
        let Some(panel) = boards.iter().find(|panel| panel.label == row.panel) else { continue };
        let holds = bench.row(row, panel, &mut found)?;
        found.rows.push(holds);
    }
    Ok(Some(found))
}

/// The job's screw; a published one where diameter and threads are its own.
fn screw(checked: &Checked) -> Screw {
    let fastener = &checked.settings.schedule.fastener;
    let threads = f64::from(fastener.threads_per_inch);
    let same = SCREWS.iter().find(|size| {
        (size.diameter - fastener.diameter.as_inches()).abs() < 1e-6 && (size.threads - threads).abs() < 1e-6
    });
    same.and_then(|size| Screw::published(size.name).ok())
        .unwrap_or_else(|| Screw::new(fastener.kind.clone(), fastener.diameter, threads, fastener.diameter))
}

struct Bench<'a> {
    checked: &'a Checked,
    spec: &'a HoldSpec,
    alloy: &'a str,
    screw: Screw,
}

impl Bench<'_> {
    fn row(&self, row: &Row, panel: &Panel, found: &mut FastenerSpan) -> Result<RowHolds, Error> {
        let none = |count| RowHolds {
            panel: row.panel.clone(),
            member: row.member,
            screw: None,
            count,
            uplift_pounds: None,
            sideways_pounds: None,
            uplift_text: None,
            sideways_text: None,
            lift_utilisation: None,
            side_utilisation: None,
        };
        let count = row.positions.len();
        let Some(screw) = self.screw_of(row, panel, found)?.filter(|_| count > 0) else { return Ok(none(count)) };
        let [uplift, sideways] = [&screw.uplift, &screw.sideways].map(|held| held.first().map(|held| held.allowable));
        let all = |held: Option<f64>| held.map(|held| held * count as f64);
        let text = |held: f64| force(self.checked.settings.notation.unit, held);
        let over = |load: &Option<ForceSpec>, held: Option<f64>| {
            let load = load.as_ref().and_then(ForceSpec::in_pounds)?;
            Some(significant(load / held?))
        };
        Ok(RowHolds {
            screw: Some(screw.number),
            uplift_pounds: all(uplift).map(significant),
            sideways_pounds: all(sideways).map(significant),
            uplift_text: all(uplift).map(text),
            sideways_text: all(sideways).map(text),
            lift_utilisation: over(&self.spec.lift, all(uplift)),
            side_utilisation: over(&self.spec.side, all(sideways)),
            ..none(count)
        })
    }

    /// The screw of a row; none where it lies off the flange or the board.
    fn screw_of<'f>(
        &self,
        row: &Row,
        panel: &Panel,
        found: &'f mut FastenerSpan,
    ) -> Result<Option<&'f ScrewHold>, Error> {
        let members = self.checked.frame.members();
        let Some(member) = members.iter().find(|member| member.number == row.member) else { return Ok(None) };
        let wall = member.wall.unwrap_or(self.checked.settings.shop.wall);
        let in_metal = (row.station - member.fore).min(member.aft - row.station);
        let in_board = (row.station - panel.bounds.fore).min(panel.bounds.aft - row.station);
        if in_metal <= Length::ZERO || in_board <= Length::ZERO {
            return Ok(None);
        }
        let held = self.hold([wall, in_metal, in_board])?;
        if found.notes.is_empty() {
            found.notes.clone_from(&held.notes);
            found.notes.push(held.row(1).note);
        }
        let screw = screw_hold(found.screws.len() + 1, [wall, in_metal, in_board], held);
        let index = found.screws.iter().position(|other| alike(other, &screw));
        let index = index.unwrap_or(found.screws.len());
        match found.screws.get_mut(index) {
            // Of screws that hold the same, the least distances are told.
            Some(other) => {
                other.edge_in_metal = other.edge_in_metal.min(in_metal);
                other.edge_in_board = other.edge_in_board.min(in_board);
            }
            None => found.screws.push(screw),
        }
        Ok(found.screws.get(index))
    }

    fn hold(&self, [wall, in_metal, in_board]: [Length; 3]) -> Result<Hold, Error> {
        let settings = &self.checked.settings;
        let flange = Metal::published(self.alloy, wall)?;
        let spacing = settings.schedule.edge_spacing.min(settings.schedule.field_spacing);
        let gravity = self.spec.gravity.map_or(Gravity::Plywood, Gravity::Given);
        let joint = Joint::new(self.screw.clone(), flange, self.checked.thickness, [in_metal, in_board, spacing]);
        hold(&joint.gravity(gravity).wet(settings.service.wet))
    }
}

/// True for screws that hold the same in every way, with the same distances too close.
fn alike(one: &ScrewHold, other: &ScrewHold) -> bool {
    let close = |screw: &ScrewHold| screw.too_close.iter().map(|distance| distance.what.clone()).collect::<Vec<_>>();
    (one.wall, &one.uplift, &one.sideways) == (other.wall, &other.uplift, &other.sideways) && close(one) == close(other)
}

fn screw_hold(number: usize, [wall, edge_in_metal, edge_in_board]: [Length; 3], held: Hold) -> ScrewHold {
    let all = |ways: Vec<Held>| ways.into_iter().map(rounded).collect();
    ScrewHold {
        number,
        wall,
        edge_in_metal,
        edge_in_board,
        uplift: all(held.uplift),
        sideways: all(held.sideways),
        pull_out_formula: held.pull_out.formula.map(rounded),
        pull_out_test: held.pull_out.test.map(rounded),
        pull_out_why: held.pull_out.why,
        too_close: held.distances.into_iter().filter(|distance| !distance.kept).collect(),
    }
}

fn rounded(mut held: Held) -> Held {
    (held.nominal, held.allowable) = (significant(held.nominal), significant(held.allowable));
    held
}
