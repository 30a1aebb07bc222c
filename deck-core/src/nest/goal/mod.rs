//! One sheet less: takes a sheet away for good and looks for room on the others for what was on it.
//!
//! # Method
//! Ruin and recreate (Schrimpf, Schneider, Stamm-Wilbrandt and Dueck, Journal of Computational Physics 159, 2000) with
//! a goal: the sheets are one fewer than in the best answer, and some parts stay out. A few sheets are taken apart,
//! wholly or in part, and packed again together with what is out, each part beside the group that it fits best
//! ([`slicing`]). The result stays where little enough is out, the limit falling as the steps run out (simulated
//! annealing, Kirkpatrick, Gelatt and Vecchi, Science 220, 1983). Full sheets beside empty ones are preferred among
//! equals: one large gap takes a part that two small ones do not. Once nothing is out, the next sheet goes.

mod convert;
mod place;
mod slicing;
mod state;

use super::bound::Bound;
use super::choose::Best;
use super::effort::Steps;
use super::problem::Problem;
use state::State;

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
