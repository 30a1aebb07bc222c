//! One sheet less: takes a sheet away for good and looks for room on the others for what was on it.
//!
//! # Method
//! Ruin and recreate (Schrimpf, Schneider, Stamm-Wilbrandt and Dueck, Journal of Computational Physics 159, 2000) with
//! a goal: the sheets are one fewer than in the best answer, and some parts stay out. A few sheets are taken apart,
//! wholly or in part, and packed again together with what is out, each part beside the group that it fits best
//! ([`slicing`]). The result stays where little enough is out, the limit falling as the steps run out (simulated
//! annealing, Kirkpatrick, Gelatt and Vecchi, Science 220, 1983); a part weighs more the longer it is out (guided local
//! search, Voudouris and Tsang, European Journal of Operational Research 113, 1999). Full sheets beside empty ones are
//! preferred among equals: one large gap takes a part that two small ones do not. Once nothing is out, the next sheet
//! goes.

mod convert;
mod place;
mod slicing;
mod state;

use super::bound::Bound;
use super::build::{Pattern, Solution};
use super::choose::Best;
use super::effort::Steps;
use super::problem::Problem;
use state::State;

/// An answer without one sheet, after the others have taken in what they have room for.
pub(super) struct Crowded {
    pub(super) solution: Solution,
    /// The stock of the sheet that is missing.
    pub(super) rack: usize,
    /// What is still to be laid out on it: class and copies, each class once.
    pub(super) out: Vec<(u32, u32)>,
    /// That, as it lay on it before; none where the saw lines would then begin in a direction that is not allowed.
    pub(super) same: Option<Pattern>,
}

/// The answer without its thinnest sheet, in several tries; in none where the others have room for nothing of it.
pub(super) fn without_the_thinnest(
    problem: &Problem,
    solution: &Solution,
    tries: usize,
    steps: &mut Steps<'_>,
) -> Vec<Crowded> {
    let Some(mut state) = State::without_a_sheet(problem, solution) else { return Vec::new() };
    (0..tries).map_while(|_| if steps.spent_all() { None } else { state.crowded(steps) }).collect()
}

/// Betters the best answer sheet by sheet, until the steps are spent or nothing better can exist.
///
/// Only answers that place all they can are bettered: where parts are left out, a sheet less would leave out more.
pub(super) fn one_sheet_less(problem: &Problem, best: &mut Best<'_>, steps: &mut Steps<'_>, bound: &Bound) {
    while let Some((unplaced, cost)) = best.value() {
        if steps.spent_all() || unplaced > bound.least().0 || bound.met_by(unplaced, cost) {
            return;
        }
        let Some(mut state) = best.solution().and_then(|solution| State::without_a_sheet(problem, solution)) else {
            return;
        };
        let Some(better) = state.search(steps) else { return };
        if !best.offer(better) {
            return;
        }
        steps.found_better();
    }
}
