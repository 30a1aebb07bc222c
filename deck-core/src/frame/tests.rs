//! Frames small enough to verify by hand.

use super::*;
use crate::error::Kind;
use crate::length::{Length, Unit};

fn inches(text: &str) -> Length {
    Length::read(text, Unit::Inch).unwrap().length
}

fn edges(spec: &FrameSpec) -> Vec<(Length, Length)> {
    Frame::new(spec).unwrap().members().iter().map(|member| (member.fore, member.aft)).collect()
}

#[test]
fn a_flange_lies_where_the_reading_says() {
    let at = |measured_to, profile, faces| {
        let spec = FrameSpec::centred([inches("20")], inches("2")).measured_to(measured_to).profile(profile, faces);
        edges(&spec)[0].0
    };
    assert_eq!(at(MeasuredTo::Centre, Profile::C, None), inches("19"));
    assert_eq!(at(MeasuredTo::ForeEdge, Profile::C, None), inches("20"));
    assert_eq!(at(MeasuredTo::AftEdge, Profile::C, None), inches("18"));
    assert_eq!(at(MeasuredTo::Web, Profile::Z, Some(Facing::Aft)), inches("20"));
    assert_eq!(at(MeasuredTo::Web, Profile::C, Some(Facing::Fore)), inches("18"));
    assert_eq!(at(MeasuredTo::Web, Profile::Hat, None), inches("19"));
}

#[test]
fn a_regular_spacing_ends_with_an_odd_bay() {
    let spec = FrameSpec::regular(inches("0"), inches("250"), inches("24"), inches("2"));
    let frame = Frame::new(&spec).unwrap();
    assert_eq!(frame.members().len(), 12);
    assert_eq!(frame.members()[10].centre(), inches("240"));
    assert_eq!(frame.members()[11].centre(), inches("250"));
    // A 24 ft deck on 24s has 13 members (trade count).
    let full = FrameSpec::regular(inches("0"), inches("288"), inches("24"), inches("2"));
    assert_eq!(Frame::new(&full).unwrap().members().len(), 13);
}

#[test]
fn what_is_missing_or_out_of_order_is_named() {
    let kinds = |spec: &FrameSpec| {
        let error = Frame::new(spec).unwrap_err();
        error.faults().map(|fault| (fault.kind, fault.pointer.clone())).collect::<Vec<_>>()
    };
    let spec = FrameSpec { flange: None, ..FrameSpec::centred([inches("0")], inches("2")) };
    assert_eq!(kinds(&spec), [(Kind::MissingField, "/flange".into())]);
    // Said of one member and not of the other: then the other is named.
    let mut mixed = FrameSpec { flange: None, ..FrameSpec::centred([inches("0"), inches("24")], inches("2")) };
    mixed.members[0].flange = Some(inches("2"));
    assert_eq!(kinds(&mixed), [(Kind::MissingField, "/members/1/flange".into())]);
    // Said of none of three: told once.
    let bare = FrameSpec {
        members: [0, 24, 48].map(|at| MemberSpec::new(Length::inches(at))).to_vec(),
        ..FrameSpec::default()
    };
    assert_eq!(kinds(&bare), [(Kind::MissingField, "/flange".into()), (Kind::MissingField, "/measured_to".into())]);
    let flat = FrameSpec::centred([inches("0")], inches("0")).wall(inches("-1"));
    assert_eq!(kinds(&flat), [(Kind::LengthZero, "/flange".into()), (Kind::LengthNegative, "/wall".into())]);
    let spec = FrameSpec::centred([inches("0"), inches("24"), inches("20"), inches("21")], inches("2"));
    assert_eq!(
        kinds(&spec),
        [(Kind::FrameOutOfOrder, "/members/2/station".into()), (Kind::FrameOverlap, "/members/3/station".into())]
    );
    let web = FrameSpec::centred([inches("5")], inches("2")).measured_to(MeasuredTo::Web);
    assert_eq!(kinds(&web), [(Kind::MissingField, "/profile".into())]);
    let spec = FrameSpec::regular(inches("0"), inches("240"), inches("0"), inches("2"));
    assert_eq!(kinds(&spec), [(Kind::FrameSpacing, "/regular/spacing".into())]);
    let spec = FrameSpec::regular(inches("0"), inches("240"), inches("0.001"), inches("2"));
    assert_eq!(kinds(&spec), [(Kind::TooMany, "/regular/spacing".into())]);
    // Told once, at the field that makes them overlap.
    let spec = FrameSpec::regular(inches("0"), inches("240"), inches("1"), inches("2"));
    assert_eq!(kinds(&spec), [(Kind::FrameOverlap, "/regular/spacing".into())]);
    let spec = FrameSpec::regular(inches("0"), inches("241"), inches("24"), inches("2"));
    assert_eq!(kinds(&spec), [(Kind::FrameOverlap, "/regular/last".into())]);
    let mut ends = FrameSpec::centred([inches("0")], inches("2"));
    ends.members[0] = MemberSpec::new(inches("0")).ends(inches("90"), inches("6"));
    assert_eq!(kinds(&ends), [(Kind::FrameEndsReversed, "/members/0/port_end".into())]);
    assert_eq!(kinds(&FrameSpec::default())[0].0, Kind::MissingField);
}
