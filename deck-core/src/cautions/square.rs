//! Cautions about members that are out of square or bent.

use super::Caution;
use crate::frame::Frame;
use crate::length::{Length, Notation};
use crate::seams::SeamLayout;

const PRACTICE: &str = "common practice, no source";

/// Members that are out of square; and bent ones that leave a straight edge less of their flange than `needed`, what two
/// bearings and the gap take.
pub fn square(layout: Option<&SeamLayout>, frame: &Frame, needed: Length, notation: &Notation) -> Vec<Caution> {
    let say = |length: Length| notation.text(length);
    let found = [out_of_square(layout, frame, &say), bent(frame, needed, &say)];
    found.into_iter().flatten().collect()
}

fn out_of_square(layout: Option<&SeamLayout>, frame: &Frame, say: &impl Fn(Length) -> String) -> Option<Caution> {
    let seams = || layout.into_iter().flat_map(|layout| &layout.seams);
    let about = frame.members().iter().filter_map(|member| {
        let out = member.skew.map(|skew| skew.out).filter(|out| !out.is_zero())?;
        let end = if out.is_negative() { "port" } else { "starboard" };
        let seam = seams().find(|seam| seam.member == member.number).and_then(|seam| Some((seam, seam.ends.as_ref()?)));
        let seam = seam.map_or_else(String::new, |(seam, ends)| {
            let lies = if ends.along { "follows it" } else { "stays square" };
            let bearing = say(seam.bearing_fore.min(seam.bearing_aft));
            format!("; seam {} {lies} and bears {bearing} at the least", seam.number)
        });
        Some(format!("member {}: {end} end {} further aft{seam}", member.number, say(out.abs())))
    });
    Caution::triggered(
        "out-of-square",
        about.collect(),
        "Square and brace the frame before boards go down, and read these members again; boards are cut to what was read.",
        "A stripped frame can rack. A straight edge loses bearing at one end by what the member is out.",
        PRACTICE,
    )
}

fn bent(frame: &Frame, needed: Length, say: &impl Fn(Length) -> String) -> Option<Caution> {
    let about = frame.members().iter().filter_map(|member| {
        let skew = member.skew.filter(|skew| !skew.bend.is_zero())?;
        let room = |along: bool| {
            let (fore, aft) = member.under_edge(along);
            aft - fore
        };
        let left = room(true).max(room(false)).max(Length::ZERO);
        (left < needed).then(|| {
            format!(
                "member {}, {} off the line between its ends: {} of its {} flange lies under a straight edge, {} short",
                member.number,
                say(skew.bend.abs()),
                say(left),
                say(member.flange()),
                say(needed - left)
            )
        })
    });
    Caution::triggered(
        "bent-member",
        about.collect(),
        "No seam can lie on these members as they are. Straighten them, or sister an angle that widens the flange by what is short.",
        "A board's edge is straight; the flange is not.",
        PRACTICE,
    )
}
