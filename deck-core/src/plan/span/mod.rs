//! What load does each board take as it is laid, and what do its fasteners hold?
//!
//! The room [`span`](crate::span) knows lay-ups, loads and supports and has never heard of a panel; the files here put the
//! one into the words of the other.
//!
//! ```text
//!   panel + frame ── supports ──┬─ uniform: table, and beam beside it ──┐
//!   job ── asked ───────────────┼─ points: plate                        ├── found
//!                               └─ advice: spacing, blocking, enough    │
//!   rows ── fasteners ──────────────────────────────────────────────────┘
//! ```
//!
//! # Limits
//! Every board is taken to be of the one panel that the job names, whatever sheet it is sawn from. Members are taken as
//! stiff: their own sag is not counted.

mod advice;
mod asked;
mod fasteners;
mod figures;
mod findings;
mod found;
mod picture;
mod points;
mod supports;
#[cfg(test)]
mod tests;
mod uniform;

pub use found::{
    Bearing, Blocking, Enough, FastenerSpan, Limit, PanelSpan, PlanSpan, PointCheck, PointLoad, PointZone, RowHolds,
    SagPicture, ScrewHold, SpacingLimitOf, SpanBay, UniformCheck,
};

use crate::error::Error;
use crate::fasteners::Fastening;
use crate::job::Checked;
use crate::length::{JsonForm, with_json_form};
use crate::panels::{self, Panel};
use crate::published::NO_DECK_RULE;
use crate::span::{Axis, NO_FIGURE};
use asked::Asked;
use picture::Shown;
use points::{BoardPlate, Worsts};
use supports::Supports;
use uniform::ByTable;

/// Said where the job names no panel.
pub const NO_RATING: &str = "no figure: no panel rating given";
/// Said where there is no layout.
const NO_BOARDS: &str = "no figure: there is no layout of boards";

/// What is said of strength before there are boards.
pub(super) fn without_boards(checked: &Checked) -> PlanSpan {
    PlanSpan::none(if checked.span.panel.is_some() { NO_BOARDS } else { NO_RATING })
}

/// What the boards take, and what the rows hold; lengths in its words are in the job's unit.
pub(super) fn span(checked: &Checked, boards: &[Panel], rows: &Fastening) -> Result<PlanSpan, Error> {
    with_json_form(JsonForm::Input(checked.settings.notation.unit), || found(checked, boards, rows))
}

fn found(checked: &Checked, boards: &[Panel], rows: &Fastening) -> Result<PlanSpan, Error> {
    let fasteners = fasteners::fasteners(checked, boards, rows)?;
    let spec = checked.span.panel.as_ref();
    let Some((spec, panel)) = spec.and_then(|spec| Some((spec, spec.structural()?))) else {
        return Ok(PlanSpan { fasteners, ..PlanSpan::none(NO_RATING) });
    };
    let asked = Asked::new(checked, &panel)?;
    let (found, picture) = examine(&asked, checked, boards)?;
    let supports: Vec<_> = boards.iter().map(|board| (Supports::new(board, &checked.frame), board.length)).collect();
    let points = unplaced(asked.points.clone(), &found);
    let rule = asked.load.is_some() || asked.points.iter().any(|point| point.pounds.is_some());
    Ok(PlanSpan {
        no_figure: None,
        panel: Some(spec.title()),
        service: Some(asked.service),
        rule: rule.then(|| NO_DECK_RULE.into()),
        panels: found,
        enough: advice::enough(&asked, &supports)?,
        fasteners,
        picture,
        notes: notes(checked),
        load_text: asked.load.as_ref().map(|load| figures::pressure(asked.notation.unit, load.psf)),
        load: asked.load,
        points,
        ..PlanSpan::none("")
    })
}

/// Each board, and a picture of the one that is used up most.
fn examine(
    asked: &Asked<'_>,
    checked: &Checked,
    boards: &[Panel],
) -> Result<(Vec<PanelSpan>, Option<SagPicture>), Error> {
    let mut found: Vec<PanelSpan> = Vec::with_capacity(boards.len());
    let mut worst: Option<(f64, usize, Shown)> = None;
    let mut worsts = Worsts::default();
    for (index, board) in boards.iter().enumerate() {
        let supports = Supports::new(board, &checked.frame);
        let (one, at) = one(asked, board, &supports, &mut worsts)?;
        if let Some((utilisation, shown)) = most_used(&one, &at)
            && worst.as_ref().is_none_or(|(most, ..)| utilisation > *most)
        {
            worst = Some((utilisation, index, shown));
        }
        found.push(one);
    }
    let picture = match worst.and_then(|(_, index, shown)| Some((boards.get(index)?, shown))) {
        None => None,
        Some((board, shown)) => {
            let supports = Supports::new(board, &checked.frame);
            let plate = BoardPlate::new(asked, board, &supports, axis(board))?;
            plate.ok().and_then(|plate| picture::picture(asked, board, &plate, &shown))
        }
    };
    Ok((found, picture))
}

/// How a board's strength axis lies to the members, which run athwart.
fn axis(board: &Panel) -> Axis {
    match board.strength_axis {
        panels::Axis::Athwart => Axis::Along,
        panels::Axis::ForeAndAft => Axis::Across,
    }
}

/// A board, and where the point load of each of its checks sags it most.
fn one(
    asked: &Asked<'_>,
    board: &Panel,
    supports: &Supports,
    worsts: &mut Worsts,
) -> Result<(PanelSpan, Vec<[f64; 2]>), Error> {
    let axis = axis(board);
    let mut found = PanelSpan {
        panel: board.label.clone(),
        axis,
        supports: supports.bearings.clone(),
        bays: supports.bays.clone(),
        overhangs: supports.overhangs,
        no_figure: None,
        table: None,
        beam: uniform::by_beam(asked, supports, axis, board.length)?,
        differ: None,
        other_way: None,
        other_way_text: None,
        points: Vec::new(),
        no_points: None,
        spacing: advice::spacing(asked, supports, board.length)?,
        blocking: Vec::new(),
    };
    match uniform::by_table(asked, supports, axis, board.length)? {
        ByTable::Limits { limits, bay, note } => {
            found.table = Some(uniform::table_check(asked, &limits, &bay));
            found.no_figure = note;
        }
        ByTable::None(reason) => found.no_figure = Some(reason),
    }
    let within = found.table.as_ref().is_some_and(|table| table.utilisation.is_none_or(|used| used <= 1.0));
    if !within {
        found.blocking = advice::blocking(asked, supports, axis, board.length)?;
    }
    if let ByTable::Limits { limits, .. } = uniform::by_table(asked, supports, points::other(axis), board.length)? {
        found.other_way = Some(figures::significant(limits.allowable()));
        found.other_way_text = Some(figures::pressure(asked.notation.unit, limits.allowable()));
    }
    if let (Some(table), Some(beam)) = (&found.table, &found.beam) {
        found.differ = uniform::differ(asked, supports, table, beam);
    }
    let at = points_of(asked, board, supports, worsts, &mut found)?;
    Ok((found, at))
}

fn points_of(
    asked: &Asked<'_>,
    board: &Panel,
    supports: &Supports,
    worsts: &mut Worsts,
    found: &mut PanelSpan,
) -> Result<Vec<[f64; 2]>, Error> {
    let plate = match BoardPlate::new(asked, board, supports, found.axis)? {
        Ok(plate) => plate,
        Err(reason) => {
            found.no_points = Some(reason);
            return Ok(Vec::new());
        }
    };
    let mut places = Vec::new();
    let mut reasons = Vec::new();
    let Some(known) = worsts.of(&plate, asked) else { return Ok(places) };
    for (index, answer) in plate.found(asked, known) {
        match (answer, asked.points.get(index)) {
            (Ok((zone, worst)), Some(load)) => {
                found.points.push(plate.check(asked, load, zone, &worst));
                places.push(worst.deflection.load_at);
            }
            (Err(reason), _) => reasons.push(reason),
            (Ok(_), None) => {}
        }
    }
    found.no_points = (!reasons.is_empty()).then(|| reasons.join(" "));
    Ok(places)
}

/// The greatest utilisation of a board, and the load that makes it.
fn most_used(found: &PanelSpan, at: &[[f64; 2]]) -> Option<(f64, Shown)> {
    // The beam decides only where the table has no figure.
    let uniform = found.table.as_ref().or(found.beam.as_ref()).and_then(|check| check.utilisation).into_iter();
    let uniform = uniform.map(|utilisation| (utilisation, Shown::Uniform));
    let points = found.points.iter().zip(at);
    let points = points.filter_map(|(check, at)| Some((check.utilisation?, Shown::Point(check.name.clone(), *at))));
    uniform.chain(points).reduce(|most, other| if other.0 > most.0 { other } else { most })
}

/// The loads; a placed one that no board answers for says that there is no figure.
fn unplaced(mut points: Vec<PointLoad>, panels: &[PanelSpan]) -> Vec<PointLoad> {
    for point in points.iter_mut().filter(|point| point.station.is_some()) {
        let checked = |panel: &PanelSpan| panel.points.iter().any(|check| check.name == point.name);
        if !panels.iter().any(checked) {
            point.no_figure = Some(format!("{NO_FIGURE}. No board carries it whole at its place."));
        }
    }
    points
}

fn notes(checked: &Checked) -> Vec<String> {
    let mut notes = vec![
        "Every board is taken to be of this panel, whatever sheet it is sawn from; sound, without knots cut or holes."
            .to_owned(),
        "Members are taken as stiff and their flanges as level: their own sag is not counted.".to_owned(),
        "The plate is the least rectangle around the board: openings, notches and cut corners are not taken out of it."
            .to_owned(),
        "Supports hold both ways, as a fastened board is held. The torsion of plywood is assumed; no source was found."
            .to_owned(),
    ];
    if checked.stock.iter().any(|sheet| sheet.grain == crate::stock::SheetGrain::None) {
        notes.push(format!(
            "A sheet in stock has no strength axis marked: a board sawn from it may lie either way. {NO_FIGURE} for the \
             other way."
        ));
    }
    notes
}
