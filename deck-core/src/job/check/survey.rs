//! The survey of a job, and what the job takes from it: the outline, the members, the old boards' members.

use super::{Parts, deck, frame};
use crate::error::{Error, Fault, Faults, Kind};
use crate::frame::{Frame, FrameSpec, MemberSpec, MembersFrom};
use crate::outline::{Deck, Explicit, Outline};
use crate::survey::{self, Survey, SurveySpec};

/// The adjusted survey; none where nothing was measured, or something is wrong with it.
pub(super) fn survey(parts: &Parts<'_>, faults: &mut Faults) -> Option<Survey> {
    if parts.survey.is_empty() {
        return None;
    }
    // The old boards wait for the frame.
    let spec = SurveySpec { old_boards: None, ..parts.survey.clone() };
    let notation = parts.notation();
    let boards = parts.survey.old_boards.as_ref().map_or(Ok(()), |boards| boards.check(&notation));
    faults.take(boards.map_err(|error| error.within("old_boards").within("survey")));
    if spec.is_empty() {
        return Some(Survey::of_boards());
    }
    faults.take(survey::survey(&spec, &notation).map_err(|error| error.within("survey")))
}

/// The outline: the deck's own, or the one that runs through the survey's points.
pub(super) fn outline(parts: &Parts<'_>, given: &Deck, found: Option<&Survey>, faults: &mut Faults) -> Option<Outline> {
    let Deck::Surveyed(_) = given else { return deck::outline(given, faults) };
    let corners = &wanted(parts, found, "deck", faults)?.outline;
    if corners.is_empty() {
        let message = "The deck is taken from the survey, which names no outline.";
        let accepted = "\"outline\" lists points and traces in order around the deck.";
        faults.push(Fault::new(Kind::SurveyWanted, "", message, accepted).within("outline").within("survey"));
        return None;
    }
    let made = Deck::Explicit(Explicit { outline: corners.clone() }).outline();
    // Corners have no place of their own in the file: the list of names stands for them.
    let moved = |error: Error| error.map_pointers(|_| Some("/survey/outline".into()));
    faults.take(made.map_err(moved))
}

/// The frame: its own members, or those of the survey.
pub(super) fn frame(
    parts: &Parts<'_>,
    outline: Option<&Outline>,
    found: Option<&Survey>,
    faults: &mut Faults,
) -> Option<Frame> {
    let size = outline.map(frame::Size::of);
    let Some((spec, _)) = parts.frame.filter(|(spec, _)| spec.from == Some(MembersFrom::Survey)) else {
        return frame::frame(parts, size, faults);
    };
    if !spec.members.is_empty() || spec.regular.is_some() {
        let message = "The members are taken from the survey, and given as well.";
        let fault = Fault::new(Kind::Conflict, "from and members", message, "Give one of the two.");
        faults.push(fault.within("from").within("frame"));
        return None;
    }
    let members = &wanted(parts, found, "frame", faults)?.members;
    if members.is_empty() {
        let message = "The members are taken from the survey, which names none.";
        let accepted = "\"members\" lists a point on each, or the names of its two ends.";
        faults.push(Fault::new(Kind::SurveyWanted, "", message, accepted).within("members").within("survey"));
        return None;
    }
    let members: Vec<MemberSpec> = members.iter().map(|member| MemberSpec::new(member.station)).collect();
    let positions: Vec<usize> = (0..members.len()).collect();
    let spec = FrameSpec { members, from: None, ..spec.clone() };
    let mut own = Faults::new();
    let made = frame::frame(&Parts { frame: Some((&spec, &positions)), ..parts.again() }, size, &mut own);
    if let Err(error) = own.finish() {
        faults.absorb(error.map_pointers(of_members));
    }
    made
}

/// Members that come from the survey stand there in the file.
fn of_members(pointer: &str) -> Option<String> {
    let inside = pointer.strip_prefix("/frame/members/")?;
    let index = inside.split('/').next()?;
    Some(format!("/survey/members/{index}"))
}

/// The survey that something is taken from; that there is none is told, unless it was told already what is wrong with it.
fn wanted<'s>(parts: &Parts<'_>, found: Option<&'s Survey>, what: &str, faults: &mut Faults) -> Option<&'s Survey> {
    if found.is_none() && parts.survey.is_empty() && !parts.survey_faulty {
        let message = format!("The {what} is taken from a survey that is not there.");
        let fault = Fault::new(Kind::SurveyWanted, "", message, "\"survey\" holds what was measured.");
        faults.push(fault.within("survey"));
    }
    found
}

/// Holds the old boards against the members of the frame, unless they come with stations of their own.
pub(super) fn old_boards(parts: &Parts<'_>, frame: &Frame, found: &mut Survey) {
    let Some(boards) = &parts.survey.old_boards else { return };
    let mut boards = boards.clone();
    if boards.members.is_empty() {
        boards.members = frame.members().iter().map(crate::frame::CrossMember::centre).collect();
    }
    let narrowest = frame.members().iter().map(crate::frame::CrossMember::flange).min();
    boards.flange = boards.flange.or(narrowest);
    found.hold_boards(&boards, &parts.notation());
}
