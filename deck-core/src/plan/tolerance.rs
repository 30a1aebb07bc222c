//! What errors leave of the bearings, and what would mend too little.

use crate::job::{Checked, Tolerance};
use crate::length::Length;
use crate::seams::{
    Errors, LastBoard, SeamLayout, SeamTolerance, Spread, last_board, tolerance as of_seams, width_to_rip,
};
use serde::{Deserialize, Serialize};

/// The errors that a plan reckons with, and what they leave at each seam.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct PlanTolerance {
    /// Error of the reading of a member's station.
    pub measuring: Spread,
    /// Whether readings were chained from member to member.
    pub chained: bool,
    /// Error of a sawn board's width.
    pub sawing: Spread,
    /// Error of a board's place against the one before it.
    pub setting: Spread,
    /// How much a sheet may be scant.
    pub sheet: Length,
    /// Whether layouts of one cost were ranked by the margin that errors leave.
    pub by_margin: bool,
    /// The least bearing that the margins are against.
    pub least_bearing: Length,
    /// Each seam, from the bow.
    pub seams: Vec<SeamTolerance>,
    /// The seam with the smallest margin.
    pub weakest: Option<usize>,
    /// What takes the bearing away there, at worst.
    pub shares: Option<ErrorShares>,
    /// Whether the last board is better ripped on the boat.
    pub last_board: Option<LastBoard>,
    /// What would mend the seams that may bear too little.
    pub mend: Vec<String>,
}

/// How much each sort of error can take off a bearing.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct ErrorShares {
    /// Readings of stations.
    pub measuring: Length,
    /// Widths of sawn boards.
    pub sawing: Length,
    /// Widths of boards that keep a sheet's.
    pub sheets: Length,
    /// Places of boards.
    pub setting: Length,
}

pub(super) fn tolerance(checked: &Checked, layout: &SeamLayout) -> Option<PlanTolerance> {
    let given = checked.settings.tolerance.as_ref()?;
    let errors = checked.errors()?;
    let least_bearing = checked.settings.rules.least_bearing;
    let seams = of_seams(layout, least_bearing, &errors);
    let weakest = seams.iter().min_by_key(|seam| seam.margin());
    let finish_short = layout.cost.finish_short;
    let room = [checked.settings.rules.end_tolerance - finish_short, finish_short];
    Some(PlanTolerance {
        measuring: given.measuring,
        chained: given.chained,
        sawing: given.sawing,
        setting: given.setting,
        sheet: given.sheet,
        by_margin: given.by_margin,
        least_bearing,
        weakest: weakest.map(|seam| seam.seam),
        shares: weakest.map(|seam| shares(seam, layout, given, &errors)),
        last_board: last_board(layout, &errors, room, checked.widest_board()),
        mend: mend(&seams, layout, &errors, checked),
        seams,
    })
}

/// Which errors take how much at the weaker side of a seam: forward what makes boards narrow, aft what makes them wide.
fn shares(seam: &SeamTolerance, layout: &SeamLayout, given: &Tolerance, errors: &Errors) -> ErrorShares {
    let is_fore = seam.fore.margin <= seam.aft.margin;
    let side = |spread: Spread| if is_fore { spread.under } else { spread.over };
    let (mut sawing, mut sheets) = (Length::ZERO, Length::ZERO);
    for board in layout.boards.iter().take(seam.seam) {
        let is_full = errors.full.iter().any(|(width, _)| *width == board.width);
        *(if is_full { &mut sheets } else { &mut sawing }) += side(errors.board(board.width));
    }
    let count = |count: usize| i64::try_from(count).unwrap_or(i64::MAX);
    let reading = if is_fore { given.measuring.over } else { given.measuring.under };
    ErrorShares {
        measuring: reading * if given.chained { count(seam.member) } else { 1 },
        sawing,
        sheets,
        setting: side(given.setting) * count(if is_fore { seam.seam } else { seam.seam + 1 }),
    }
}

/// For each seam that may bear too little: a board that is ripped on the boat, to a line on the flange, is off by the saw
/// alone, whatever lies before it; and it takes the errors before it out of every seam behind it.
fn mend(seams: &[SeamTolerance], layout: &SeamLayout, errors: &Errors, checked: &Checked) -> Vec<String> {
    let (least, widest) = (checked.settings.rules.least_bearing, checked.widest_board());
    let say = |length: Length| checked.settings.notation.text(length);
    let mut mends = Vec::new();
    for seam in seams.iter().filter(|seam| seam.margin().is_negative()) {
        let (board, member) = (seam.seam, seam.member);
        let fore = seam.fore.planned - errors.sawing.under;
        let aft = seam.aft.planned - errors.sawing.over - errors.setting.over;
        let left = width_to_rip(layout, errors, board);
        if fore >= least && aft >= least && left > widest {
            mends.push(format!(
                "Board {board} would be left {} wide to be ripped on the boat, {} more than the widest board in stock: plan \
                 it narrower, with its seam on a member further forward, or measure the sheets and set boards closer.",
                say(left),
                say(left - widest),
            ));
        } else if fore >= least && aft >= least {
            mends.push(format!(
                "Leave board {board} {} wide and rip it on the boat to a line {} aft of member {member}'s fore edge: its seam \
                 then bears {} forward and {} aft at worst.",
                say(left),
                say(seam.fore.planned),
                say(fore),
                say(aft)
            ));
        } else {
            let lacks = (least - fore).max(Length::ZERO) + (least - aft).max(Length::ZERO);
            mends.push(format!(
                "Even ripped on the boat board {board} may leave too little on member {member}: a flange {} wider, such as \
                 by a sistered angle, would do.",
                say(lacks)
            ));
        }
    }
    mends
}
