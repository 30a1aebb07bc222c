//! The frame against the deck.

use super::Parts;
use crate::error::{Fault, Faults, Kind};
use crate::frame::{CrossMember, Frame};
use crate::length::{Length, Notation};
use crate::outline::Outline;

/// The deck as far as members are held against it.
#[derive(Clone, Copy)]
pub(super) struct Size {
    pub(super) length: Length,
    /// None: the members' ends are held against nothing.
    pub(super) beam: Option<Length>,
}

impl Size {
    pub(super) fn of(outline: &Outline) -> Size {
        Size { length: outline.length(), beam: Some(outline.beam()) }
    }
}

pub(super) fn frame(parts: &Parts<'_>, size: Option<Size>, faults: &mut Faults) -> Option<Frame> {
    let (spec, positions) = parts.frame?;
    let mut own = Faults::new();
    let placed = Frame::readable(spec, positions, &mut own);
    let sound = own.is_empty();
    if let Err(error) = own.finish() {
        faults.absorb(error.within("frame"));
    }
    if let Some(size) = size {
        against(size, &placed, spec.regular.is_some(), parts.notation(), faults);
    }
    sound.then(|| Frame::of(placed.into_iter().map(|(_, member)| member).collect()))
}

/// Every member whose place is known, held against the deck.
fn against(size: Size, placed: &[(usize, CrossMember)], is_regular: bool, notation: Notation, faults: &mut Faults) {
    if is_regular {
        return regular(placed, size.length, notation, faults);
    }
    for (position, member) in placed {
        let pointer = format!("/frame/members/{position}");
        if let Some(fault) = outside(member, size.length, notation) {
            faults.push(fault.within("station").at(&pointer));
        }
        if let Some(beam) = size.beam {
            ends(member, beam, notation, &pointer, faults);
        }
    }
}

/// Of members at a regular spacing only the first and the last are told of.
fn regular(placed: &[(usize, CrossMember)], length: Length, notation: Notation, faults: &mut Faults) {
    let ends = [("first", placed.first()), ("last", placed.last())];
    for (field, member) in ends {
        if let Some(fault) = member.and_then(|(_, member)| outside(member, length, notation)) {
            faults.push(fault.within(field).within("regular").within("frame"));
        }
    }
}

/// A flange bears on nothing where it lies past either end of the deck.
fn outside(member: &CrossMember, length: Length, notation: Notation) -> Option<Fault> {
    let text = |length| notation.text(length);
    let station = member.station;
    let message = if member.fore >= length {
        let aft = text((station - length).max(Length::ZERO));
        format!("{} lies {aft} aft of the deck's end ({}).", text(station), text(length))
    } else if member.aft <= Length::ZERO {
        format!("{} lies {} forward of the bow edge.", text(station), text((-station).max(Length::ZERO)))
    } else {
        return None;
    };
    let accepted = format!("A station lies between 0 and {}.", text(length));
    Some(Fault::new(Kind::FrameMemberOutside, text(station), message, accepted))
}

fn ends(member: &CrossMember, beam: Length, notation: Notation, pointer: &str, faults: &mut Faults) {
    let text = |length| notation.text(length);
    let accepted = || format!("An end lies between 0 and {}, the deck's beam.", text(beam));
    for (field, end) in [("port_end", member.port_end), ("starboard_end", member.starboard_end)] {
        let Some(end) = end else { continue };
        let message = if end.is_negative() {
            format!("The end lies {} to port of the deck's port edge.", text(-end))
        } else if end > beam {
            format!("The end lies {} to starboard of the deck's edge ({}).", text(end - beam), text(beam))
        } else {
            continue;
        };
        let fault = Fault::new(Kind::FrameMemberOutside, text(end), message, accepted());
        faults.push(fault.within(field).at(pointer));
    }
    let (port, starboard) = (member.port_end.unwrap_or_default(), member.starboard_end.unwrap_or(beam));
    // Where both are given the frame itself has looked at them.
    if (member.port_end.is_some() != member.starboard_end.is_some()) && port == starboard {
        let message = "The member has no length: its two ends are one.".to_owned();
        let field = if member.port_end.is_some() { "port_end" } else { "starboard_end" };
        let fault = Fault::new(Kind::FrameEndsReversed, text(port), message, accepted());
        faults.push(fault.within(field).at(pointer));
    }
}
