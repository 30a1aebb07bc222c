//! Strips athwart that are divided across: with a filler at one side, or by a butt near the centreline.

use super::blocks::{JointLine, joints};
use super::chain::{Price, cheapest};
use super::{ArrangeProblem, ArrangementKind, Cell, Cut, Division, Ply, reason};
use crate::length::Length;
use crate::math::IntervalSet;
use crate::seams::{Board, BoardStock, NoLayout, SeamLayout, SeamProblem, seams};

/// So many layouts of strips are tried for joints that keep clear of the openings.
const LAYOUTS: usize = 8;

/// One division for each length of sheet that reaches across in two pieces and not in one: the longest first.
pub(super) fn divisions(problem: &ArrangeProblem<'_>, kind: ArrangementKind) -> Result<Vec<Division>, NoLayout> {
    let lengths = lengths(problem);
    if lengths.is_empty() {
        return Err(reason::no_length(problem));
    }
    let mut found = Vec::new();
    let mut refused = None;
    for length in lengths {
        match of_length(problem, kind, length) {
            Ok(division) => found.push(division),
            Err(reason) => refused = refused.or(Some(reason)),
        }
    }
    match refused {
        Some(reason) if found.is_empty() => Err(reason),
        _ => Ok(found),
    }
}

/// Lengths of sheets of which two pieces reach across and one does not, the longest first.
fn lengths(problem: &ArrangeProblem<'_>) -> Vec<Length> {
    let (beam, gap) = (problem.outline.beam(), problem.rules.seams.gap);
    let two = |length: &Length| *length < beam && *length * 2 + gap >= beam;
    let mut lengths: Vec<Length> = problem.sheets.iter().map(|sheet| sheet.length).filter(two).collect();
    lengths.sort_unstable_by_key(|length| std::cmp::Reverse(*length));
    lengths.dedup();
    lengths
}

fn of_length(problem: &ArrangeProblem<'_>, kind: ArrangementKind, length: Length) -> Result<Division, NoLayout> {
    let beam = problem.outline.beam();
    let long_enough = |sheet: &&Ply| sheet.length >= length;
    let stock = problem.sheets.iter().filter(long_enough);
    let stock = stock.map(|sheet| BoardStock { label: sheet.label.clone(), width: sheet.width }).collect();
    let strips = SeamProblem::new(problem.frame, problem.outline.length(), stock, problem.rules.seams.clone())
        .clear(problem.kept_clear(Length::ZERO, beam))
        .outline(problem.outline)
        .notation(problem.notation)
        .best(LAYOUTS);
    let found = seams(&strips);
    if let Some(reason) = found.no_layout {
        return Err(reason);
    }
    let proven = found.proven;
    let mut refused = None;
    for (place, layout) in found.layouts.into_iter().enumerate() {
        match division(problem, kind, layout, length) {
            Ok(mut division) => {
                division.proven = proven && place == 0;
                return Ok(division);
            }
            Err(reason) => refused = refused.or(Some(reason)),
        }
    }
    // unreachable: seams without a reason have a layout.
    Err(refused.unwrap_or_else(|| reason::no_length(problem)))
}

fn division(
    problem: &ArrangeProblem<'_>,
    kind: ArrangementKind,
    layout: SeamLayout,
    length: Length,
) -> Result<Division, NoLayout> {
    let ports = ports(problem, kind, &layout, length)?;
    let line = |(board, port): (&Board, &Length)| JointLine {
        strip: Some(board.number),
        port: *port,
        fore: board.fore,
        aft: board.aft,
    };
    let lines: Vec<JointLine> = layout.boards.iter().zip(&ports).map(line).collect();
    let (joints, blocks) = joints(problem, &lines);
    let cells = layout.boards.iter().zip(&ports);
    let cells = cells.flat_map(|(board, port)| cells_of(problem, kind, &layout, board, *port)).collect();
    let mut zones: Vec<String> = Vec::new();
    for joint in &joints {
        for stretch in &joint.stretches {
            zones.extend(problem.zones_between(stretch.fore, stretch.aft).map(str::to_owned));
        }
    }
    zones.sort();
    zones.dedup();
    Ok(Division { kind, layout, rows: Vec::new(), joints, blocks, cells, zones, proven: false })
}

/// Where each strip's joint starts, measured from the port edge.
///
/// A filler is as narrow as the sheet's length allows, and at the least half a block wide, so that it bears over its half
/// of the block. A butt lies in the middle or, staggered, half a block to either side of it in turn. Joints keep clear of
/// openings: each moves as little as it must.
fn ports(
    problem: &ArrangeProblem<'_>,
    kind: ArrangementKind,
    layout: &SeamLayout,
    length: Length,
) -> Result<Vec<Length>, NoLayout> {
    let rest = problem.outline.beam() - problem.rules.seams.gap;
    let half = problem.rules.block_width / 2;
    let (low, high) = ((rest - length).max(half), length.min(rest - half));
    let mut places: Vec<Vec<(i64, i128)>> = Vec::with_capacity(layout.boards.len());
    for board in &layout.boards {
        let open = open(problem, board, low, high);
        let options = options(problem, kind, &open, (low.nanometres(), high.nanometres()), rest / 2);
        if options.is_empty() {
            return Err(reason::no_joint(problem, board, low, high));
        }
        places.push(options);
    }
    let prices: Vec<Vec<Price>> =
        places.iter().map(|options| options.iter().map(|(_, moved)| [*moved, 0, 0, 0, 0, 0, 0, 0]).collect()).collect();
    let apart = if problem.rules.stagger == 0 { 0 } else { problem.rules.block_width.nanometres() };
    let at =
        |place: usize, option: usize| places.get(place).and_then(|options| options.get(option)).map(|option| option.0);
    let fits = |place: usize, before: usize, here: usize| {
        let both = at(place.wrapping_sub(1), before).zip(at(place, here));
        both.is_some_and(|(before, here)| (before - here).abs() >= apart)
    };
    let Some((_, chosen)) = cheapest(&prices, fits) else {
        return Err(reason::no_stagger_of_joints(problem));
    };
    let ports = chosen.iter().enumerate().filter_map(|(place, option)| at(place, *option));
    Ok(ports.map(Length::from_nanometres).collect())
}

/// Where the joint of a strip may start.
fn open(problem: &ArrangeProblem<'_>, strip: &Board, low: Length, high: Length) -> IntervalSet {
    let (wood, gap) = (problem.wood(), problem.rules.seams.gap);
    let mut open = IntervalSet::of(low.nanometres(), high.nanometres());
    for opening in problem.openings {
        let bounds = opening.path().bounds();
        if bounds.fore < strip.aft && bounds.aft > strip.fore {
            open.remove_open((bounds.port - wood - gap).nanometres(), (bounds.starboard + wood).nanometres());
        }
    }
    open
}

/// The places that are worth a thought, each with how far it lies from where it should.
fn options(
    problem: &ArrangeProblem<'_>,
    kind: ArrangementKind,
    open: &IntervalSet,
    (low, high): (i64, i64),
    middle: Length,
) -> Vec<(i64, i128)> {
    let half = problem.rules.block_width / 2;
    let targets = match kind {
        ArrangementKind::FillerStrips => vec![high, low],
        _ if problem.rules.stagger == 0 => vec![middle.nanometres()],
        _ => vec![(middle + half).nanometres(), (middle - half).nanometres()],
    };
    let mut options: Vec<(i64, i128)> = Vec::new();
    for target in targets {
        let target = target.clamp(low, high);
        for at in [open.within(low, target).greatest(), open.within(target, high).least()].into_iter().flatten() {
            let moved = i128::from(at - target).abs();
            match options.iter_mut().find(|(known, _)| *known == at) {
                Some(option) => option.1 = option.1.min(moved),
                None => options.push((at, moved)),
            }
        }
    }
    options
}

/// The two boards of a strip. The filler has an F behind its number; two boards that butt have P and S.
fn cells_of(
    problem: &ArrangeProblem<'_>,
    kind: ArrangementKind,
    layout: &SeamLayout,
    board: &Board,
    port: Length,
) -> [Cell; 2] {
    let starboard = port + problem.rules.seams.gap;
    let filler_to_port = port < problem.outline.beam() - starboard;
    let suffixes = match (kind, filler_to_port) {
        (ArrangementKind::FillerStrips, true) => ["F", ""],
        (ArrangementKind::FillerStrips, false) => ["", "F"],
        _ => ["P", "S"],
    };
    let seam = |number: usize| layout.seams.iter().find(|seam| seam.number == number);
    let fore = board.number.checked_sub(1).and_then(seam);
    let aft = seam(board.number);
    let joint = |at: Length| Some(Cut { at, number: board.number, member: None });
    let cell = |suffix: &str, port: Option<Cut>, starboard: Option<Cut>| Cell {
        label: format!("{}{suffix}", board.number),
        board: board.number,
        fore: fore.map(|seam| Cut { at: seam.aft, number: seam.number, member: Some(seam.member) }),
        aft: aft.map(|seam| Cut { at: seam.fore, number: seam.number, member: Some(seam.member) }),
        finish: layout.finish,
        port,
        starboard,
        along: false,
    };
    [cell(suffixes[0], None, joint(port)), cell(suffixes[1], joint(starboard), None)]
}
