//! What is said of the old deck, against the outline, the openings and the frame.

use super::figures::Section;
use super::{Parts, too_many, unique};
use crate::error::{Fault, Faults, Kind};
use crate::frame::Frame;
use crate::job::StripOutSpec;
use crate::job::read::places::{Places, place};
use crate::length::Length;
use crate::outline::Outline;
use crate::published::defaults;
use crate::strip_out::{Freed, OldFastener, Pit};

/// The most fasteners of a kind.
const MOST_FASTENERS: u32 = 100_000;

pub(super) fn strip_out(parts: &Parts<'_>, outline: Option<&Outline>, frame: Option<&Frame>, faults: &mut Faults) {
    let Some((spec, places)) = parts.strip_out else { return };
    let mut own = Faults::new();
    settings(parts, spec, &mut own);
    let pits = Walls { frame, wall: parts.frame.and_then(|(frame, _)| frame.wall).unwrap_or(defaults::WALL.value) };
    each(parts, places, "fasteners", spec.fasteners.as_deref(), &mut own, fastener);
    each(parts, places, "freed", spec.freed.as_deref(), &mut own, |item, section| freed(parts, outline, item, section));
    each(parts, places, "pits", spec.pits.as_deref(), &mut own, |item, section| pit(&pits, item, section));
    if let Some(freed) = &spec.freed {
        let names = freed.iter().enumerate().map(|(index, freed)| (place(places, "freed", index), freed.name.as_str()));
        unique(names, "freed", "name", &mut own);
    }
    if let Err(error) = own.finish() {
        faults.absorb(error.within("strip_out"));
    }
}

/// Asks a question of each item of a list, in its place.
pub(super) fn each<T>(
    parts: &Parts<'_>,
    places: &Places,
    list: &str,
    items: Option<&[T]>,
    faults: &mut Faults,
    ask: impl Fn(&T, &mut Section<'_>),
) {
    let items = items.unwrap_or_default();
    if too_many(items.len(), "items", list, faults) {
        return;
    }
    for (index, item) in items.iter().enumerate() {
        let mut own = Faults::new();
        ask(item, &mut Section { notation: parts.notation(), faults: &mut own });
        faults.take(own.finish().map_err(|error| error.within(place(places, list, index)).within(list)));
    }
}

fn settings(parts: &Parts<'_>, spec: &StripOutSpec, faults: &mut Faults) {
    if spec.covering.is_none() {
        let message = "How the old covering is held is not told.";
        let accepted = "It is \"glued\", \"stapled\" or \"none\".";
        faults.push(Fault::new(Kind::MissingField, "", message, accepted).within("covering"));
    }
    let mut check = Section { notation: parts.notation(), faults };
    check.positive("strip_width", spec.strip_width);
    check.between("covering_psf", spec.covering_psf, 0, 100);
    check.not_negative("covering_thickness", spec.covering_thickness);
    check.three_point("covering_hours", spec.covering_hours);
    check.positive("board_width", spec.board_width);
    check.positive("thickness", spec.thickness);
    check.count("soaked_least_percent", spec.soaked_least_percent, 0, 300);
    check.count("soaked_most_percent", spec.soaked_most_percent, 0, 300);
    check.three_point("board_minutes", spec.board_minutes);
    let least = spec.soaked_least_percent.unwrap_or(defaults::SOAKED_LEAST.value);
    let most = spec.soaked_most_percent.unwrap_or(defaults::SOAKED_MOST.value);
    if least > most {
        let field = if spec.soaked_most_percent.is_some() { "soaked_most_percent" } else { "soaked_least_percent" };
        let message = format!("At least {least} and at most {most} in a hundred do not go together.");
        let accepted = "The most is not below the least.";
        check.refuse(Fault::new(Kind::Conflict, format!("{least} and {most}"), message, accepted), field);
    }
}

fn fastener(fastener: &OldFastener, section: &mut Section<'_>) {
    section.count("count", Some(fastener.count), 0, MOST_FASTENERS);
    section.three_point("minutes", fastener.minutes);
}

fn freed(parts: &Parts<'_>, outline: Option<&Outline>, freed: &Freed, section: &mut Section<'_>) {
    section.positive("depth", Some(freed.depth));
    section.positive("width", Some(freed.width));
    if let Some(outline) = outline {
        let sides = [
            ("x", freed.x, freed.x + freed.depth, outline.length()),
            ("y", freed.y, freed.y + freed.width, outline.beam()),
        ];
        for (field, from, to, most) in sides {
            if from.is_negative() || to > most {
                let [from, to, most] = [from, to, most].map(|length| section.notation.text(length));
                let message = format!("A slot from {from} to {to} is not on the deck.");
                let accepted = format!("It lies between 0 and {most}.");
                section.refuse(Fault::new(Kind::OpeningOutside, from, message, accepted), field);
            }
        }
    }
    if let Some(name) = &freed.becomes
        && !parts.openings.items.iter().any(|opening| opening.name == *name)
    {
        let message = format!("No opening is called \"{name}\".");
        let accepted = "It is the name of one of the job's openings.";
        section.refuse(Fault::new(Kind::Conflict, format!("\"{name}\""), message, accepted), "becomes");
    }
}

/// What a pit is held against.
struct Walls<'a> {
    frame: Option<&'a Frame>,
    wall: Length,
}

fn pit(walls: &Walls<'_>, pit: &Pit, section: &mut Section<'_>) {
    section.positive("depth", Some(pit.depth));
    section.positive("wall", pit.wall);
    if pit.years <= crate::money::Figure::ZERO || pit.years > crate::money::Figure::of(100) {
        let message = format!("{} years are no time in which a pit grows.", pit.years);
        let accepted = "A number above 0 and up to 100 is accepted.";
        section.refuse(Fault::new(Kind::OutOfRange, pit.years.to_string(), message, accepted), "years");
    }
    let Some(frame) = walls.frame else { return };
    let members = frame.members();
    let Some(member) = usize::try_from(pit.member).ok().and_then(|number| members.get(number.checked_sub(1)?)) else {
        let kind = if pit.member == 0 { Kind::OutOfRange } else { Kind::Conflict };
        let message = format!("The frame has no member {}.", pit.member);
        let accepted = format!("Members are numbered from the bow, 1 to {}.", members.len());
        section.refuse(Fault::new(kind, pit.member.to_string(), message, accepted), "member");
        return;
    };
    let wall = pit.wall.or(member.wall).unwrap_or(walls.wall);
    if pit.depth >= wall && wall > Length::ZERO {
        let (depth, wall) = (section.notation.text(pit.depth), section.notation.text(wall));
        let message = format!("A pit {depth} deep goes through a wall of {wall}.");
        let accepted = "A pit is shallower than the wall; a hole is no pit: give the member's condition.";
        section.refuse(Fault::new(Kind::PitTooDeep, depth, message, accepted), "depth");
    }
}
