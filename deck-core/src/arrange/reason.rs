//! Why no division of a kind is possible: which rule fails, where, by how much, and what would mend it.

use super::along::{division, letter};
use super::{ArrangeProblem, Ply};
use crate::length::Length;
use crate::seams::{Board, Lane, NoLayout};

fn longest<'a>(problem: &'a ArrangeProblem<'_>) -> Option<&'a Ply> {
    problem.sheets.iter().max_by_key(|sheet| sheet.length)
}

/// Members that do not run square to the boat.
pub(super) fn out_of_square(problem: &ArrangeProblem<'_>) -> NoLayout {
    let skewed = problem.frame.members().iter().filter(|member| member.skew.is_some());
    let names: Vec<String> = skewed.map(|member| format!("M{}", member.number)).collect();
    let reason = format!(
        "Joints along the boat and their blocks are laid on members square to it, and these are not: {}.",
        names.join(", ")
    );
    NoLayout::by_rule(reason, vec!["Boards athwart in one piece.".to_owned()])
}

/// No sheet of which two pieces reach across and one does not.
pub(super) fn no_length(problem: &ArrangeProblem<'_>) -> NoLayout {
    let say = |length: Length| problem.notation.text(length);
    let (beam, gap) = (problem.outline.beam(), problem.rules.seams.gap);
    let label = longest(problem).map(|sheet| sheet.label.clone());
    let length = longest(problem).map_or(Length::ZERO, |sheet| sheet.length);
    if length >= beam {
        let reason =
            format!("Every sheet in stock reaches across the deck ({}): no strip needs a second piece.", say(beam));
        let mend = vec!["Boards athwart in one piece.".to_owned()];
        return NoLayout::by_rule(reason, mend);
    }
    let two = length * 2 + gap;
    let reason = format!(
        "Two pieces of the longest sheet in stock ({}) reach {} across, and the deck is {}: {} short.",
        label.as_deref().unwrap_or("none"),
        say(two),
        say(beam),
        say(beam - two),
    );
    let enough = beam - gap - (beam - gap) / 2;
    let mend = vec![format!("Sheets that give boards {} long.", say(enough)), "Rows along the boat.".to_owned()];
    NoLayout::by_sheet(reason, label, enough - length, mend)
}

/// Openings leave no place for a strip's joint.
pub(super) fn no_joint(problem: &ArrangeProblem<'_>, strip: &Board, low: Length, high: Length) -> NoLayout {
    let say = |length: Length| problem.notation.text(length);
    let reason = format!(
        "In strip {} ({} to {}) no joint can start from {} to {} from the port edge, where the sheet puts it, and keep {} \
         of wood to the openings.",
        strip.number,
        say(strip.fore),
        say(strip.aft),
        say(low),
        say(high),
        say(problem.wood()),
    );
    NoLayout::by_rule(reason, without_each_opening(problem, strip, low, high))
}

/// The openings of which each is in the way on its own.
fn without_each_opening(problem: &ArrangeProblem<'_>, strip: &Board, low: Length, high: Length) -> Vec<String> {
    let (wood, gap) = (problem.wood(), problem.rules.seams.gap);
    let free = |left_out: usize| {
        let mut open = crate::math::IntervalSet::of(low.nanometres(), high.nanometres());
        for (_, opening) in problem.openings.iter().enumerate().filter(|(index, _)| *index != left_out) {
            let bounds = opening.path().bounds();
            if bounds.fore < strip.aft && bounds.aft > strip.fore {
                open.remove_open((bounds.port - wood - gap).nanometres(), (bounds.starboard + wood).nanometres());
            }
        }
        !open.is_empty()
    };
    let openings = problem.openings.iter().enumerate().filter(|(index, _)| free(*index));
    openings.map(|(_, opening)| format!("Moving \"{}\" to another place.", opening.name)).collect()
}

/// Joints of neighbouring strips cannot keep off each other's blocks.
pub(super) fn no_stagger_of_joints(problem: &ArrangeProblem<'_>) -> NoLayout {
    let reason = format!(
        "The openings and the sheets' length leave no choice of joints in which those of neighbouring strips lie {} apart, \
         a block's width.",
        problem.notation.text(problem.rules.block_width),
    );
    let mend = vec!["Joints that may meet: \"stagger\": 0.".to_owned(), "Narrower blocks.".to_owned()];
    NoLayout::by_rule(reason, mend)
}

/// No number of rows covers the beam.
pub(super) fn no_rows(problem: &ArrangeProblem<'_>, stops: Length) -> NoLayout {
    let say = |length: Length| problem.notation.text(length);
    let widest = problem.sheets.iter().max_by_key(|sheet| sheet.width);
    let (label, width) = (widest.map(|sheet| sheet.label.clone()), widest.map_or(Length::ZERO, |sheet| sheet.width));
    let least = problem.rules.seams.least_width;
    if width < least {
        let reason = format!(
            "The widest sheet in stock ({}) gives rows {} wide, and a board is {} at the least: {} short.",
            label.as_deref().unwrap_or("none"),
            say(width),
            say(least),
            say(least - width),
        );
        return NoLayout::by_sheet(reason, label, least - width, Vec::new());
    }
    let reason = format!(
        "Beyond {} from the port edge no joint along the boat can keep {} of wood to every opening within a row {} wide.",
        say(stops),
        say(problem.wood()),
        say(width),
    );
    let mut mend = Vec::new();
    for index in 0..problem.openings.len() {
        let mut openings = problem.openings.to_vec();
        let moved = openings.remove(index);
        let changed = ArrangeProblem { openings: &openings, ..problem.clone() };
        if super::widths::lanes(&changed).is_ok() {
            mend.push(format!("Moving \"{}\" to another place.", moved.name));
        }
    }
    NoLayout::by_rule(reason, mend)
}

/// A row cannot be divided: its own reason, with the row's name.
pub(super) fn row_has_none(problem: &ArrangeProblem<'_>, lane: &Lane, no: NoLayout) -> NoLayout {
    let say = |length: Length| problem.notation.text(length);
    let reason = format!(
        "Row {} ({} to {} from the port edge; in what follows a board's width is its extent along the boat): {}",
        letter(lane.row),
        say(lane.port),
        say(lane.starboard),
        no.reason,
    );
    NoLayout { reason, ..no }
}

/// Butts of neighbouring rows cannot keep apart.
pub(super) fn no_stagger(problem: &ArrangeProblem<'_>, lanes: &[Lane]) -> NoLayout {
    let stagger = problem.rules.stagger;
    let reason = format!(
        "The butts of {} rows cannot be laid so that those of neighbours lie {stagger} members apart, counted from one to \
         the other.",
        lanes.len(),
    );
    let mend = (0..stagger).rev().find(|fewer| {
        let rules = problem.rules.clone().stagger(*fewer);
        division(&ArrangeProblem { rules, ..problem.clone() }, lanes).is_ok()
    });
    NoLayout::by_rule(reason, mend.map(|fewer| format!("\"stagger\": {fewer}.")).into_iter().collect())
}
