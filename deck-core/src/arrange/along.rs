//! Rows along the boat: the butts of each, and together, so that those of neighbours keep apart.

use super::blocks::{JointLine, joints};
use super::chain::{Price, cheapest, plus};
use super::widths::lanes;
use super::{ArrangeProblem, ArrangementKind, Cell, Cut, Division, reason};
use crate::frame::{CrossMember, Frame};
use crate::geometry::Limit;
use crate::length::Length;
use crate::outline::KeepClear;
use crate::seams::{BoardStock, Cost, Lane, NoLayout, SeamLayout, SeamProblem, Seams, seams};

/// Layouts of a row that are asked for at first, and at the most. Each asking takes four times as many.
const FIRST: usize = 12;
const MOST: usize = 768;

/// A division for each way to divide the beam into rows.
pub(super) fn divisions(problem: &ArrangeProblem<'_>) -> Result<Vec<Division>, NoLayout> {
    let mut found = Vec::new();
    let mut refused = None;
    for lanes in lanes(problem)? {
        match division(problem, &lanes) {
            Ok(division) => found.push(division),
            Err(reason) => refused = refused.or(Some(reason)),
        }
    }
    match refused {
        Some(reason) if found.is_empty() => Err(reason),
        _ => Ok(found),
    }
}

/// The best butts for rows of given widths.
pub(super) fn division(problem: &ArrangeProblem<'_>, lanes: &[Lane]) -> Result<Division, NoLayout> {
    let (chosen, proven) = butts(problem, lanes)?;
    let lines: Vec<JointLine> = lanes
        .iter()
        .take(lanes.len().saturating_sub(1))
        .map(|lane| JointLine { strip: None, port: lane.starboard, fore: Length::ZERO, aft: problem.outline.length() })
        .collect();
    let (joints, blocks) = joints(problem, &lines);
    let layout = together(problem, lanes, &chosen);
    let cells = cells(lanes, &layout, &chosen);
    let zones =
        if joints.is_empty() { Vec::new() } else { problem.keep_clear.iter().map(|zone| zone.name.clone()).collect() };
    let kind = ArrangementKind::ForeAndAft;
    Ok(Division { kind, layout, rows: lanes.to_vec(), joints, blocks, cells, zones, proven })
}

/// A row's own question.
struct Row {
    frame: Frame,
    stock: Vec<BoardStock>,
    clear: Vec<KeepClear>,
}

impl Row {
    fn new(problem: &ArrangeProblem<'_>, lane: &Lane) -> Row {
        let overhang = problem.rules.side_overhang;
        let beam = problem.outline.beam();
        let under = |member: &&CrossMember| {
            member.port_end.is_none_or(|end| end <= lane.port.max(overhang))
                && member.starboard_end.is_none_or(|end| end >= lane.starboard.min(beam - overhang))
        };
        let stock = problem.sheets.iter().filter(|sheet| sheet.width >= lane.width());
        Row {
            frame: Frame::of(problem.frame.members().iter().filter(under).cloned().collect()),
            stock: stock.map(|sheet| BoardStock { label: sheet.label.clone(), width: sheet.length }).collect(),
            clear: problem.kept_clear(lane.port, lane.starboard),
        }
    }

    fn layouts(&self, problem: &ArrangeProblem<'_>, best: usize) -> Seams {
        let (length, rules) = (problem.outline.length(), problem.rules.seams.clone());
        let question = SeamProblem::new(&self.frame, length, self.stock.clone(), rules);
        seams(&question.clear(self.clear.clone()).notation(problem.notation).best(best))
    }

    fn is_like(&self, other: &Row) -> bool {
        self.frame == other.frame && self.stock == other.stock && self.clear == other.clear
    }
}

/// The cheapest layouts of all rows whose butts keep apart, and whether no others are cheaper.
///
/// A layout that a row has not listed costs at least as much as the last that it has. So no choice with one can be
/// better than that plus the cheapest of every other row: once the best choice costs no more than that for each row, it
/// is the best of all.
fn butts(problem: &ArrangeProblem<'_>, lanes: &[Lane]) -> Result<(Vec<SeamLayout>, bool), NoLayout> {
    let rows: Vec<Row> = lanes.iter().map(|lane| Row::new(problem, lane)).collect();
    let mut wanted = FIRST;
    loop {
        let found = listed(problem, lanes, &rows, wanted)?;
        let prices: Vec<Vec<Price>> =
            found.iter().map(|seams| seams.layouts.iter().map(|layout| price(&layout.cost)).collect()).collect();
        let best = cheapest(&prices, |place, before, here| {
            let pair = found.get(place.wrapping_sub(1)).zip(found.get(place));
            let pair = pair.and_then(|(a, b)| a.layouts.get(before).zip(b.layouts.get(here)));
            pair.is_some_and(|(before, here)| keep_apart(before, here, problem.rules.stagger))
        });
        let more = found.iter().any(|seams| seams.layouts.len() >= wanted);
        let settled = best.as_ref().is_some_and(|(sum, _)| !could_be_cheaper(&prices, wanted, sum));
        if settled || !more || wanted >= MOST {
            let Some((_, chosen)) = best else { return Err(reason::no_stagger(problem, lanes)) };
            let proven = (settled || !more) && found.iter().all(|seams| seams.proven);
            let layouts = found.iter().zip(chosen).filter_map(|(seams, at)| seams.layouts.get(at).cloned());
            return Ok((layouts.collect(), proven));
        }
        wanted *= 4;
    }
}

/// The layouts of each row; rows with one question are answered once.
fn listed(problem: &ArrangeProblem<'_>, lanes: &[Lane], rows: &[Row], wanted: usize) -> Result<Vec<Seams>, NoLayout> {
    let mut found: Vec<Seams> = Vec::with_capacity(rows.len());
    for (row, lane) in rows.iter().zip(lanes) {
        let known = rows.iter().zip(&found).find(|(other, _)| other.is_like(row)).map(|(_, seams)| seams.clone());
        let seams = known.unwrap_or_else(|| row.layouts(problem, wanted));
        if let Some(no) = seams.no_layout {
            return Err(reason::row_has_none(problem, lane, no));
        }
        found.push(seams);
    }
    Ok(found)
}

/// True where a choice with an unlisted layout could still cost less than `sum`.
fn could_be_cheaper(prices: &[Vec<Price>], wanted: usize, sum: &Price) -> bool {
    let firsts: Vec<Price> = prices.iter().filter_map(|row| row.first().copied()).collect();
    (0..prices.len()).any(|row| {
        let last = prices.get(row).filter(|row| row.len() >= wanted).and_then(|row| row.last());
        let others = firsts.iter().enumerate().filter(|(other, _)| *other != row);
        last.is_some_and(|last| others.fold(*last, |least, (_, first)| plus(&least, first)) < *sum)
    })
}

fn price(cost: &Cost) -> Price {
    let whole = |count: usize| i128::try_from(count).unwrap_or(i128::MAX);
    let length = |length: Length| i128::from(length.nanometres());
    [
        whole(cost.short_seams),
        whole(cost.boards),
        whole(cost.narrow_boards),
        whole(cost.ripped_boards),
        length(cost.unevenness),
        length(cost.seam_length),
        length(cost.shift),
        length(cost.finish_short),
    ]
}

/// True where no butt of one row lies within so many members of one of the other's.
fn keep_apart(one: &SeamLayout, other: &SeamLayout, stagger: usize) -> bool {
    one.seams.iter().all(|seam| other.seams.iter().all(|beside| seam.member.abs_diff(beside.member) >= stagger))
}

/// The rows as one layout: boards and butts numbered through, each with its row.
fn together(problem: &ArrangeProblem<'_>, lanes: &[Lane], rows: &[SeamLayout]) -> SeamLayout {
    let mut all = SeamLayout {
        boards: Vec::new(),
        seams: Vec::new(),
        cost: Cost::default(),
        finish: rows.iter().map(|row| row.finish).min().unwrap_or_default(),
    };
    for (lane, row) in lanes.iter().zip(rows) {
        for board in &row.boards {
            let number = all.boards.len() + 1;
            all.boards.push(crate::seams::Board { number, lane: Some(*lane), ..board.clone() });
        }
        for seam in &row.seams {
            let length = Some(within(problem, lane, seam.fore));
            let number = all.seams.len() + 1;
            all.seams.push(crate::seams::Seam { number, lane: Some(*lane), length, ..seam.clone() });
        }
        all.cost.add(&row.cost);
    }
    all.cost.seam_length = all.seams.iter().filter_map(|seam| seam.length).sum();
    all
}

/// Length of a butt: as far as the deck lies in the row.
fn within(problem: &ArrangeProblem<'_>, lane: &Lane, station: Length) -> Length {
    let inside = problem.outline.path().breadths(station, Limit::Fore);
    let clipped = inside.iter().map(|(port, starboard)| (*starboard).min(lane.starboard) - (*port).max(lane.port));
    clipped.filter(|length| *length > Length::ZERO).sum()
}

/// The boards row by row: `1A`, `2A`, … from the bow in the row at port, then `1B`.
fn cells(lanes: &[Lane], layout: &SeamLayout, rows: &[SeamLayout]) -> Vec<Cell> {
    let joint = |number: usize, at: Length| Cut { at, number, member: None };
    let mut cells = Vec::new();
    for (lane, row) in lanes.iter().zip(rows) {
        let boards: Vec<_> = layout.boards.iter().filter(|board| board.lane == Some(*lane)).collect();
        let butts: Vec<_> = layout.seams.iter().filter(|seam| seam.lane == Some(*lane)).collect();
        for (index, board) in boards.iter().enumerate() {
            let fore = index.checked_sub(1).and_then(|before| butts.get(before));
            cells.push(Cell {
                label: format!("{}{}", index + 1, letter(lane.row)),
                board: board.number,
                fore: fore.map(|seam| Cut { at: seam.aft, number: seam.number, member: Some(seam.member) }),
                aft: butts.get(index).map(|seam| Cut { at: seam.fore, number: seam.number, member: Some(seam.member) }),
                finish: row.finish,
                port: (lane.row > 1).then(|| joint(lane.row - 1, lane.port)),
                starboard: (lane.row < lanes.len()).then(|| joint(lane.row, lane.starboard)),
                along: true,
            });
        }
    }
    cells
}

/// A, B, … from port.
pub(super) fn letter(row: usize) -> char {
    u8::try_from(row.saturating_sub(1)).ok().filter(|row| *row < 26).map_or('Z', |row| char::from(b'A' + row))
}
