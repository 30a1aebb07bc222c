//! Where each member's flange lies.

use super::{Condition, Facing, FrameSpec, MeasuredTo, MemberSpec, Profile, Regular, Skew};
use crate::error::{Error, Fault, Faults, Kind};
use crate::length::Length;
use serde::{Deserialize, Serialize};

/// A cross member with its flange in place.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct CrossMember {
    /// Counted from the bow, from 1.
    pub number: usize,
    /// The tape reading, and what it is to.
    pub station: Length,
    /// What the reading is to.
    pub measured_to: MeasuredTo,
    /// Profile family, where given.
    pub profile: Option<Profile>,
    /// The way the flange lies from the web, where given.
    pub faces: Option<Facing>,
    /// Station of the flange's fore edge, at the centreline.
    pub fore: Length,
    /// Station of the flange's aft edge, at the centreline.
    pub aft: Length,
    /// Where its ends lie against its middle, where that was measured.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub skew: Option<Skew>,
    /// Wall thickness of the flange, where given.
    pub wall: Option<Length>,
    /// Distance of its port end from the port edge; none: it reaches the deck edge.
    pub port_end: Option<Length>,
    /// Distance of its starboard end from the port edge; none: it reaches the deck edge.
    pub starboard_end: Option<Length>,
    /// What the strip-out showed.
    pub condition: Condition,
}

impl CrossMember {
    /// Width of the flange.
    pub fn flange(&self) -> Length {
        self.aft - self.fore
    }

    /// Middle of the flange, rounded down to the nanometre.
    pub fn centre(&self) -> Length {
        self.fore.midpoint(self.aft)
    }
}

/// The cross members in order from the bow, their flanges apart from each other.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Frame {
    members: Vec<CrossMember>,
}

/// More members than this no boat has; beyond it a spacing was given in the wrong unit.
const MOST_MEMBERS: usize = 600;

impl Frame {
    /// Puts each flange in its place; pointers are relative to the frame.
    ///
    /// `positions` tells where each of the members stood in the input, when some could not be read and were left out.
    ///
    /// # Errors
    /// A flange width or a kind of reading that is not given, members out of order or overlapping, ends reversed, a
    /// spacing that cannot be.
    pub fn new(spec: &FrameSpec) -> Result<Frame, Error> {
        let positions: Vec<usize> = (0..spec.members.len()).collect();
        let mut faults = Faults::new();
        let members = Frame::readable(spec, &positions, &mut faults).into_iter().map(|(_, member)| member).collect();
        faults.finish()?;
        Ok(Frame { members })
    }

    /// A frame of members that [`Frame::readable`] found nothing wrong with.
    pub(crate) fn of(members: Vec<CrossMember>) -> Frame {
        Frame { members }
    }

    /// The members whose place is known, each with its place in the input, and every fault; pointers are relative to
    /// the frame. `positions` are the places of those that could be read at all.
    pub(crate) fn readable(spec: &FrameSpec, positions: &[usize], faults: &mut Faults) -> Vec<(usize, CrossMember)> {
        check_shared(spec, faults);
        let regular;
        let (specs, listed): (&[MemberSpec], bool) = match spec.regular {
            Some(spacing) => {
                regular = faults.take(stations(spacing)).unwrap_or_default();
                (&regular, false)
            }
            None => (&spec.members, true),
        };
        // A member is named by its place in the input, also where one before it could not be read.
        let place_of = |index: usize| positions.get(index).filter(|_| listed).copied().unwrap_or(index);
        let pointer = |index: usize| if listed { format!("/members/{}", place_of(index)) } else { String::new() };
        let mut gaps = Vec::new();
        let placed: Vec<Option<CrossMember>> = specs
            .iter()
            .enumerate()
            .map(|(index, member)| place(spec, member, place_of(index) + 1, &pointer(index), &mut gaps, faults))
            .collect();
        report_gaps(specs, &gaps, faults);
        if listed {
            check_order(specs, &placed, &place_of, faults);
        } else {
            check_regular(&placed, faults);
        }
        let known = |(index, member): (usize, Option<CrossMember>)| Some((place_of(index), member?));
        placed.into_iter().enumerate().filter_map(known).collect()
    }

    /// The members from the bow aft.
    pub fn members(&self) -> &[CrossMember] {
        &self.members
    }
}

fn check_shared(spec: &FrameSpec, faults: &mut Faults) {
    check_size("flange", spec.flange, "", faults);
    check_size("wall", spec.wall, "", faults);
    if spec.regular.is_some() && !spec.members.is_empty() {
        faults.push(
            Fault::new(
                Kind::Conflict,
                "members and regular",
                "The members are given both one by one and at a regular spacing.",
                "Give one of the two.",
            )
            .within("regular"),
        );
    }
    if spec.regular.is_none() && spec.members.is_empty() {
        faults.push(
            Fault::new(
                Kind::MissingField,
                "",
                "No cross members are given.",
                "Give \"members\", one by one, or \"regular\" with first, last and spacing.",
            )
            .within("members"),
        );
    }
    if spec.members.len() > MOST_MEMBERS {
        faults.push(too_many(spec.members.len()).within("members"));
    }
}

fn too_many(count: usize) -> Fault {
    Fault::new(
        Kind::TooMany,
        count.to_string(),
        format!("{count} cross members are more than a boat has."),
        format!("There are at most {MOST_MEMBERS}."),
    )
}

fn stations(regular: Regular) -> Result<Vec<MemberSpec>, Error> {
    let Regular { first, last, spacing } = regular;
    let refuse = |field: &str, value: Length, message: String, accepted: &str| -> Error {
        let fault = Fault::new(Kind::FrameSpacing, value.to_string(), message, accepted);
        fault.within(field).within("regular").into()
    };
    if spacing <= Length::ZERO {
        let message = format!("A spacing of {spacing} leads nowhere.");
        return Err(refuse("spacing", spacing, message, "A spacing is above zero, such as 16 in or 24 in."));
    }
    if last <= first {
        let message = format!("The last member, at {last}, is not aft of the first, at {first}.");
        return Err(refuse("last", last, message, "The last lies aft of the first."));
    }
    let bays = (last - first).steps_of(spacing);
    // `bays` counts whole steps and is above zero.
    let count = usize::try_from(bays).unwrap_or(usize::MAX).saturating_add(1);
    if count > MOST_MEMBERS {
        return Err(too_many(count).within("spacing").within("regular").into());
    }
    Ok((0..bays).map(|bay| MemberSpec::new(first + spacing * bay)).chain([MemberSpec::new(last)]).collect())
}

/// A measure that a member needs and that neither it nor the frame gives.
struct Gap {
    field: &'static str,
    what: &'static str,
    accepted: &'static str,
}

const NO_FLANGE: Gap =
    Gap { field: "flange", what: "flange width", accepted: "Measure the flat top; give it here or for the frame." };
const NO_READING: Gap = Gap {
    field: "measured_to",
    what: "word on what its station is measured to",
    accepted: "Say what the station is to: \"web\", \"fore-edge\", \"aft-edge\" or \"centre\".",
};
const NO_PROFILE: Gap = Gap {
    field: "profile",
    what: "profile family, and its station is to the web",
    accepted: "One of C, Z, S, I, hat, box.",
};
const NO_FACING: Gap = Gap {
    field: "faces",
    what: "facing, and its station is to the web",
    accepted: "Say which way the flange lies from the web: \"fore\" or \"aft\".",
};

/// Tells what members lack, member by member; once, at the frame, where it is said of no member at all.
fn report_gaps(specs: &[MemberSpec], gaps: &[(usize, String, Gap)], faults: &mut Faults) {
    let said = |field: &str| {
        specs.iter().any(|member| match field {
            "flange" => member.flange.is_some(),
            "measured_to" => member.measured_to.is_some(),
            "profile" => member.profile.is_some(),
            _ => member.faces.is_some(),
        })
    };
    let mut told: Vec<&str> = Vec::new();
    for (number, pointer, Gap { field, what, accepted }) in gaps {
        let (message, at) = if said(field) {
            (format!("Member {number} has no {what}."), pointer.clone())
        } else if told.contains(field) {
            continue;
        } else {
            told.push(field);
            (format!("A member has no {what}."), String::new())
        };
        faults.push(Fault::new(Kind::MissingField, "", message, *accepted).within(field).at(&at));
    }
}

/// Where a member's flange lies; what it lacks goes to `gaps`.
fn place(
    frame: &FrameSpec,
    member: &MemberSpec,
    number: usize,
    pointer: &str,
    gaps: &mut Vec<(usize, String, Gap)>,
    faults: &mut Faults,
) -> Option<CrossMember> {
    let flange = member.flange.or(frame.flange);
    let measured_to = member.measured_to.or(frame.measured_to);
    let profile = member.profile.or(frame.profile);
    let faces = member.faces.or(frame.faces);
    let mut lacks = |gap| gaps.push((number, pointer.to_string(), gap));
    if flange.is_none() {
        lacks(NO_FLANGE);
    }
    match measured_to {
        None => lacks(NO_READING),
        Some(MeasuredTo::Web) if profile.is_none() => lacks(NO_PROFILE),
        Some(MeasuredTo::Web) if faces.is_none() && profile.is_some_and(Profile::is_one_sided) => lacks(NO_FACING),
        Some(_) => {}
    }
    // Where the frame's own size is wrong, the frame has been told so.
    check_size("flange", member.flange, pointer, faults);
    check_size("wall", member.wall, pointer, faults);
    check_ends(member, number, pointer, faults);
    let skew = skew(member, number, pointer, faults);
    let (flange, measured_to) = (flange.filter(|width| *width > Length::ZERO)?, measured_to?);
    let fore = fore_edge(member.station, flange, measured_to, profile, faces)?;
    Some(CrossMember {
        number,
        station: member.station,
        measured_to,
        profile,
        faces,
        fore,
        aft: fore + flange,
        skew,
        wall: member.wall.or(frame.wall),
        port_end: member.port_end,
        starboard_end: member.starboard_end,
        condition: member.condition,
    })
}

/// A member whose end lies further from its middle than this is not out of square but read wrong: boards cannot follow it.
const MOST_SKEW: Length = Length::inches(1);

fn skew(member: &MemberSpec, number: usize, pointer: &str, faults: &mut Faults) -> Option<Skew> {
    let (port, starboard) = match (member.station_port, member.station_starboard) {
        (None, None) => return None,
        (Some(port), Some(starboard)) => (port, starboard),
        (port, _) => {
            let (given, field) =
                if port.is_some() { ("port", "station_starboard") } else { ("starboard", "station_port") };
            let message = format!("Member {number} has a reading at the {given} edge alone.");
            let accepted = "A member out of square has readings at both edges and at the centreline.";
            faults.push(Fault::new(Kind::FrameSkew, "", message, accepted).within(field).at(pointer));
            return None;
        }
    };
    for (field, reading) in [("station_port", port), ("station_starboard", starboard)] {
        let off = (reading - member.station).abs();
        if off > MOST_SKEW {
            let message = format!("Member {number} lies {off} from its reading at the centreline, {}.", member.station);
            let accepted = format!("It is at most {MOST_SKEW} from it; square the frame first, or read again.");
            let fault = Fault::new(Kind::FrameSkew, reading.to_string(), message, accepted);
            faults.push(fault.within(field).at(pointer));
        }
    }
    Some(Skew::new(member.station, port, starboard))
}

fn check_size(field: &str, size: Option<Length>, pointer: &str, faults: &mut Faults) {
    if let Some(size) = size.filter(|size| *size <= Length::ZERO) {
        let kind = if size.is_zero() { Kind::LengthZero } else { Kind::LengthNegative };
        let message = format!("A {field} of {size} bears nothing.");
        let fault = Fault::new(kind, size.to_string(), message, format!("A {field} is above zero."));
        faults.push(fault.within(field).at(pointer));
    }
}

fn fore_edge(
    station: Length,
    flange: Length,
    measured_to: MeasuredTo,
    profile: Option<Profile>,
    faces: Option<Facing>,
) -> Option<Length> {
    let reads_to = match measured_to {
        MeasuredTo::Web if !profile?.is_one_sided() => MeasuredTo::Centre,
        MeasuredTo::Web if faces? == Facing::Aft => MeasuredTo::ForeEdge,
        MeasuredTo::Web => MeasuredTo::AftEdge,
        edge => edge,
    };
    Some(match reads_to {
        MeasuredTo::ForeEdge => station,
        MeasuredTo::Centre => station - flange / 2,
        _ => station - flange,
    })
}

fn check_ends(member: &MemberSpec, number: usize, pointer: &str, faults: &mut Faults) {
    if let Some(port) = member.port_end.filter(|port| member.starboard_end.is_some_and(|starboard| starboard <= *port))
    {
        let message = format!("Member {number}'s port end, {port}, is not to port of its starboard end.");
        let fault =
            Fault::new(Kind::FrameEndsReversed, port.to_string(), message, "Both are measured from the port edge.");
        faults.push(fault.within("port_end").at(pointer));
    }
}

/// Stations are in order whatever else is known of the members; flanges lie apart where both are known.
fn check_order(
    specs: &[MemberSpec],
    placed: &[Option<CrossMember>],
    place_of: &impl Fn(usize) -> usize,
    faults: &mut Faults,
) {
    for (index, (stations, pair)) in specs.windows(2).zip(placed.windows(2)).enumerate() {
        let names = [index, index + 1].map(|index| place_of(index) + 1);
        let found = match (stations, pair) {
            ([fore, aft], _) if aft.station <= fore.station => Some(reversed(fore.station, aft.station, names)),
            (_, [Some(fore), Some(aft)]) => overlapping(fore, aft),
            _ => None,
        };
        let at_side = || match pair {
            [Some(fore), Some(aft)] => overlapping_at_side(fore, aft),
            _ => None,
        };
        if let Some((field, fault)) = found.map(|fault| ("station", fault)).or_else(at_side) {
            faults.push(fault.within(field).within(place_of(index + 1)).within("members"));
        }
    }
}

/// Of members at a regular spacing the first two that overlap are told of: by the spacing, or by a short last bay.
fn check_regular(placed: &[Option<CrossMember>], faults: &mut Faults) {
    let found = placed.windows(2).enumerate().find_map(|(index, pair)| match pair {
        [Some(fore), Some(aft)] => Some((index, overlapping(fore, aft)?)),
        _ => None,
    });
    if let Some((index, fault)) = found {
        let field = if index + 2 == placed.len() { "last" } else { "spacing" };
        faults.push(fault.within(field).within("regular"));
    }
}

fn reversed(fore: Length, aft: Length, [before, behind]: [usize; 2]) -> Fault {
    let message = format!("Member {behind}, at {aft}, is not aft of member {before}, at {fore}.");
    Fault::new(Kind::FrameOutOfOrder, aft.to_string(), message, "Members are listed from the bow aft.")
}

/// Of members that lie apart at the centreline.
fn overlapping_at_side(fore: &CrossMember, aft: &CrossMember) -> Option<(&'static str, Fault)> {
    let [ahead, behind] = [fore, aft].map(|member| {
        let [port, _, starboard] = member.edges();
        [("station_port", "port", port), ("station_starboard", "starboard", starboard)]
    });
    let (ahead, behind) = ahead.into_iter().zip(behind).find(|(ahead, behind)| behind.2.0 < ahead.2.1)?;
    let message = format!(
        "At the {} edge member {}'s flange starts at {}, before member {}'s ends at {}.",
        behind.1, aft.number, behind.2.0, fore.number, ahead.2.1
    );
    // Where only the member forward was read at the sides, the fault is told at the station of the one behind.
    let field = if aft.skew.is_some() { behind.0 } else { "station" };
    Some((field, Fault::new(Kind::FrameOverlap, behind.2.0.to_string(), message, "Flanges lie apart from each other.")))
}

fn overlapping(fore: &CrossMember, aft: &CrossMember) -> Option<Fault> {
    let message = format!(
        "Member {}'s flange starts at {}, before member {}'s ends at {}.",
        aft.number, aft.fore, fore.number, fore.aft
    );
    let value = aft.station.to_string();
    (aft.fore < fore.aft).then(|| Fault::new(Kind::FrameOverlap, value, message, "Flanges lie apart from each other."))
}
