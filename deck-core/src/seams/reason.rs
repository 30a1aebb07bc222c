//! Says why a deck cannot be laid out, and what would mend it.

use super::layout::{Bay, NoLayout};
use super::reach::Ground;
use super::seat::Lie;
use super::{BoardStock, SeamProblem};
use crate::length::Length;

/// Each way to look for the cause, the plainest first.
///
/// `most_boards` is the limit of the search: a deck that takes more has no layout either.
pub(super) fn no_layout(problem: &SeamProblem<'_>, most_boards: usize) -> NoLayout {
    if Ground::new(problem).is_feasible() {
        return too_long(problem, most_boards);
    }
    let found =
        no_sheet(problem).or_else(|| no_seat(problem)).or_else(|| wide_bay(problem)).or_else(|| too_narrow(problem));
    let mut reason = found.unwrap_or_else(|| rule_in_the_way(problem));
    reason.mend = mends(problem, reason.shortfall);
    reason
}

fn no_sheet(problem: &SeamProblem<'_>) -> Option<NoLayout> {
    let reason = "No sheet in stock is long enough to reach across the deck.";
    problem.sheets.is_empty().then(|| NoLayout::told(reason.into()))
}

fn too_long(problem: &SeamProblem<'_>, most_boards: usize) -> NoLayout {
    let length = problem.notation.text(problem.deck_length);
    let reason =
        format!("A deck {length} long takes more than {most_boards} boards of this stock, more than are laid out.");
    NoLayout { sheet: widest(problem).map(|sheet| sheet.label.clone()), ..NoLayout::told(reason) }
}

fn widest<'a>(problem: &'a SeamProblem<'_>) -> Option<&'a BoardStock> {
    problem.sheets.iter().max_by_key(|sheet| sheet.width)
}

/// No flange is wide enough for two edges to bear on it.
fn no_seat(problem: &SeamProblem<'_>) -> Option<NoLayout> {
    let rules = &problem.rules;
    let needed = rules.gap + rules.least_bearing * 2;
    let members = problem.frame.members();
    let widest = members.iter().map(crate::frame::CrossMember::flange).max()?;
    let say = |length: Length| problem.notation.text(length);
    let left = |member: &crate::frame::CrossMember| {
        let lie = Lie::new(member, rules);
        lie.aft - lie.fore
    };
    if let Some(best) =
        members.iter().max_by_key(|member| left(member)).filter(|best| widest >= needed && left(best) < needed)
    {
        let skew = best.skew.map_or_else(Default::default, |skew| (skew.out.abs(), skew.bend.abs()));
        return Some(NoLayout::told(format!(
            "No flange can carry a seam: two boards that bear {} each, with a gap of {}, take {} of flange all along the \
             edge. Member {} leaves most, {} of its {}: it is {} out of square and bent by {}: {} short.",
            say(rules.least_bearing),
            say(rules.gap),
            say(needed),
            best.number,
            say(left(best).max(Length::ZERO)),
            say(best.flange()),
            say(skew.0),
            say(skew.1),
            say(needed - left(best)),
        )));
    }
    (widest < needed).then(|| {
        NoLayout::told(format!(
            "No flange can carry a seam: two boards that bear {} each, with a gap of {}, take a flange of {}, and the \
             widest is {}: {} short.",
            say(rules.least_bearing),
            say(rules.gap),
            say(needed),
            say(widest),
            say(needed - widest),
        ))
    })
}

/// A bay so wide that no board in stock bears on both of its flanges.
fn wide_bay(problem: &SeamProblem<'_>) -> Option<NoLayout> {
    let sheet = widest(problem)?;
    let bearing = problem.rules.least_bearing;
    let members = problem.frame.members();
    let bay = members.windows(2).map(|pair| bay_between(Some(&pair[0]), Some(&pair[1]), problem)).find(|bay| {
        bay.from >= Length::ZERO && bay.to <= problem.deck_length && bay.clear + bearing * 2 > sheet.width
    })?;
    let needed = bay.clear + bearing * 2;
    let shortfall = needed - sheet.width;
    let say = |length: Length| problem.notation.text(length);
    let reason = format!(
        "The bay from member {} to member {} is {} clear; to bear {} on both flanges a board is {} wide, and the widest \
         in stock ({}) gives {}: {} short.",
        bay.fore_member.unwrap_or(0),
        bay.aft_member.unwrap_or(0),
        say(bay.clear),
        say(bearing),
        say(needed),
        sheet.label,
        say(sheet.width),
        say(shortfall),
    );
    let reason = NoLayout::by_sheet(reason, Some(sheet.label.clone()), shortfall, Vec::new());
    Some(NoLayout { bay: Some(bay), ..reason })
}

/// The bay between two members; without one of them, between the other and the deck's end.
fn bay_between(
    fore: Option<&crate::frame::CrossMember>,
    aft: Option<&crate::frame::CrossMember>,
    problem: &SeamProblem<'_>,
) -> Bay {
    let from = fore.map_or(Length::ZERO, |member| member.aft);
    let to = aft.map_or(problem.deck_length, |member| member.fore);
    Bay {
        fore_member: fore.map(|member| member.number),
        aft_member: aft.map(|member| member.number),
        from,
        to,
        clear: to - from,
    }
}

/// Boards of some greater width would do: by how much, and where the boards in stock stop.
fn too_narrow(problem: &SeamProblem<'_>) -> Option<NoLayout> {
    let sheet = widest(problem)?;
    let needed = least_width_that_does(problem)?;
    let shortfall = needed - sheet.width;
    let (bay, from) = where_it_stops(problem);
    let say = |length: Length| problem.notation.text(length);
    let place = match from {
        Some(seam) => format!("from the seam at {}", say(seam)),
        None => "from the bow edge".to_string(),
    };
    let reason = format!(
        "Going aft {place}, the next flange that could carry a seam, or the stern, is further than the widest board in \
         stock ({}, {}): {} short.",
        sheet.label,
        say(sheet.width),
        say(shortfall),
    );
    let reason = NoLayout::by_sheet(reason, Some(sheet.label.clone()), shortfall, Vec::new());
    Some(NoLayout { bay: Some(bay), ..reason })
}

/// The least board width with which the deck can be laid out; none where no width does.
fn least_width_that_does(problem: &SeamProblem<'_>) -> Option<Length> {
    let does = |width: i64| {
        let mut wider = problem.clone();
        wider.sheets = vec![BoardStock { label: String::new(), width: Length::from_nanometres(width) }];
        Ground::new(&wider).is_feasible()
    };
    let (mut low, mut high) = (widest(problem)?.width.nanometres(), problem.deck_length.nanometres());
    if low >= high || !does(high) {
        return None;
    }
    // A wider sheet can do all that a narrower one can, so halving the stretch finds the least.
    while high - low > 1 {
        let middle = low + (high - low) / 2;
        if does(middle) { high = middle } else { low = middle }
    }
    Some(Length::from_nanometres(high))
}

/// The bay just aft of the aftmost seam that can be reached, and that seam.
fn where_it_stops(problem: &SeamProblem<'_>) -> (Bay, Option<Length>) {
    let ground = Ground::new(problem);
    let reachable = ground.reachable();
    let last = (0..ground.members()).rev().find(|&member| !reachable[member].is_empty());
    let members = problem.frame.members();
    let next = last.map_or(0, |last| last + 1);
    let seam = last.and_then(|last| reachable[last].greatest()).map(Length::from_nanometres);
    (bay_between(last.and_then(|last| members.get(last)), members.get(next), problem), seam)
}

/// No board width helps, so it is a rule that stops the layout: the mends tell which.
fn rule_in_the_way(problem: &SeamProblem<'_>) -> NoLayout {
    let (bay, from) = where_it_stops(problem);
    let place = match from {
        Some(seam) => format!("aft of the seam at {}", problem.notation.text(seam)),
        None => "from the bow edge".to_string(),
    };
    let (least, members) = (problem.rules.least_supports, problem.frame.members().len());
    let reason = if members < least {
        format!("A board rests on {least} members at the least, and the frame has {members}.")
    } else {
        format!("No seam can be placed {place} that keeps the rules, however wide the sheets.")
    };
    NoLayout { reason, bay: Some(bay), sheet: None, shortfall: None, mend: Vec::new() }
}

/// Everything that would mend it on its own, tried out.
fn mends(problem: &SeamProblem<'_>, shortfall: Option<Length>) -> Vec<String> {
    let say = |length: Length| problem.notation.text(length);
    let mut mends = Vec::new();
    let mut try_out = |changed: &SeamProblem<'_>, words: String| {
        if Ground::new(changed).is_feasible() {
            mends.push(words);
        }
    };
    if let (Some(sheet), Some(shortfall)) = (widest(problem), shortfall) {
        let mut wider = problem.clone();
        wider.sheets = vec![BoardStock { label: String::new(), width: sheet.width + shortfall }];
        try_out(&wider, format!("Sheets that give boards {} wide.", say(sheet.width + shortfall)));
    }
    for (index, zone) in problem.clear.iter().enumerate() {
        let mut without = problem.clone();
        without.clear.remove(index);
        let (from, to) = (say(zone.from), say(zone.to));
        try_out(&without, format!("Letting a seam cross \"{}\" ({from} to {to}).", zone.name));
    }
    let rules = &problem.rules;
    let mut with_rules = |rules: super::Rules, words: String| {
        let mut changed = problem.clone();
        changed.rules = rules;
        try_out(&changed, words);
    };
    if !rules.least_width.is_zero() {
        let words = format!("Allowing boards narrower than {}.", say(rules.least_width));
        with_rules(rules.clone().widths(Length::ZERO, rules.preferred_width), words);
    }
    if rules.least_supports > 1 {
        let words = format!("Allowing boards on fewer than {} members.", rules.least_supports);
        with_rules(rules.clone().least_supports(1), words);
    }
    if !rules.gap.is_zero() {
        with_rules(rules.clone().gap(Length::ZERO), "Boards laid without a gap.".into());
    }
    let widest = problem.frame.members().iter().map(crate::frame::CrossMember::flange).max().unwrap_or_default();
    let needed = rules.gap + rules.least_bearing * 2;
    if widest < needed {
        mends.push(format!("Angles sistered to the members, so that their flanges are {} wide.", say(needed)));
    }
    mends.extend(added_member(problem));
    mends
}

/// A member, or blocking fastened between members, in the middle of the widest bay.
fn added_member(problem: &SeamProblem<'_>) -> Option<String> {
    let members = problem.frame.members();
    let pair = members.windows(2).max_by_key(|pair| pair[1].fore - pair[0].aft)?;
    let middle = pair[0].aft.midpoint(pair[1].fore);
    let flange = pair[0].flange().max(problem.rules.least_flange());
    let mut spec = crate::frame::FrameSpec::centred([], flange);
    for member in members {
        let mut copy = crate::frame::MemberSpec::new(member.centre()).flange(member.flange());
        copy.measured_to = Some(crate::frame::MeasuredTo::Centre);
        if member.centre() > middle && spec.members.last().is_none_or(|last| last.station < middle) {
            spec.members.push(crate::frame::MemberSpec::new(middle).flange(flange));
        }
        spec.members.push(copy);
    }
    let frame = crate::frame::Frame::new(&spec).ok()?;
    let mut changed = problem.clone();
    changed.frame = &frame;
    let does = Ground::new(&changed).is_feasible();
    does.then(|| {
        format!(
            "A cross member, or blocking, at {} with a flange of {}.",
            problem.notation.text(middle),
            problem.notation.text(flange)
        )
    })
}
