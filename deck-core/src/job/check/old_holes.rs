//! Old holes against the members.

use super::{MOST, Parts, too_many};
use crate::error::{Fault, Faults, Kind};
use crate::fasteners::OldHole;
use crate::frame::{CrossMember, Frame};
use crate::job::settings::Settings;
use crate::length::Length;

pub(super) fn old_holes(parts: &Parts<'_>, frame: Option<&Frame>, beam: Option<Length>, faults: &mut Faults) {
    let listing = parts.old_holes;
    let total = listing.items.iter().map(|holes| holes.y.len()).sum::<usize>().max(listing.items.len());
    if too_many(total, "old holes", "old_holes", faults) {
        return;
    }
    debug_assert!(total <= MOST);
    let say = |length: Length| parts.notation().text(length);
    for (position, holes) in listing.iter() {
        let mut tell = |fault: Fault| faults.push(fault.within(position).within("old_holes"));
        if holes.diameter <= Length::ZERO {
            let kind = if holes.diameter.is_zero() { Kind::LengthZero } else { Kind::LengthNegative };
            let text = say(holes.diameter);
            let message = format!("{text} is no diameter of a hole.");
            tell(Fault::new(kind, text, message, "More than zero is accepted.").within("diameter"));
        }
        let outside = |y: &Length| y.is_negative() || beam.is_some_and(|beam| *y > beam);
        for (index, y) in holes.y.iter().enumerate().filter(|(_, y)| outside(y)) {
            let accepted = beam.map(|beam| format!("It lies between 0 and {}, the deck's beam.", say(beam)));
            let message = format!("A hole {} off the port edge is in no member.", say(*y));
            let fault = Fault::new(Kind::OldHoleOutside, say(*y), message, accepted.unwrap_or_default());
            tell(fault.within(index).within("y"));
        }
        let Some(frame) = frame else { continue };
        match numbered(frame, holes.member) {
            None => {
                let count = frame.members().len();
                let message = format!("There is no member {}.", holes.member);
                let accepted = format!("Members are counted from the bow, from 1 to {count}.");
                tell(Fault::new(Kind::OldHoleOutside, holes.member.to_string(), message, accepted).within("member"));
            }
            Some(member) => {
                if let Some(x) = holes.x.filter(|x| *x < member.fore || member.aft < *x) {
                    let (fore, aft) = (say(member.fore), say(member.aft));
                    let message = format!("A hole at {} is not in the flange of member {}.", say(x), member.number);
                    let accepted = format!("It lies between {fore} and {aft}.");
                    tell(Fault::new(Kind::OldHoleOutside, say(x), message, accepted).within("x"));
                }
            }
        }
    }
}

fn numbered(frame: &Frame, number: u32) -> Option<&CrossMember> {
    let number = usize::try_from(number).ok()?;
    frame.members().iter().find(|member| member.number == number)
}

/// The holes in place, each with the distance that fasteners keep from it.
pub(super) fn in_place(parts: &Parts<'_>, frame: &Frame, settings: &Settings) -> Vec<OldHole> {
    let screw = settings.schedule.fastener.diameter;
    let holes = parts.old_holes.items.iter().filter_map(|holes| Some((holes, numbered(frame, holes.member)?)));
    let each = holes.flat_map(|(holes, member)| {
        let x = holes.x.unwrap_or(member.centre());
        let clear = screw.max(holes.diameter).part(settings.shop.old_hole_clear, 1000);
        holes.y.iter().map(move |y| OldHole::new(member.number, x, *y, holes.diameter, clear))
    });
    each.collect()
}
