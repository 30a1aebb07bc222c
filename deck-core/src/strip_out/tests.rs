use super::*;
use crate::frame::FrameSpec;
use crate::length::Unit;
use crate::outline::{Deck, Parametric};

fn inches(text: &str) -> Length {
    Length::read(text, Unit::Inch).unwrap().length
}

fn outline(length: &str, beam: &str) -> Outline {
    Deck::Parametric(Parametric::new(inches(length), inches(beam))).outline().unwrap()
}

fn outline_of_102() -> Outline {
    outline("288", "102")
}

fn input<'a>(outline: &'a Outline, frame: &'a Frame) -> StripOutInput<'a> {
    StripOutInput {
        outline,
        frame,
        openings: &[],
        covering: OldCovering::Glued,
        strip_width: inches("14"),
        grid: inches("1"),
        board_width: inches("48"),
        thickness: inches("3/4"),
        soaked: (30, 60),
        covering_psf: None,
        covering_thickness: None,
        covering_hours: ThreePoint::tenths(5, 15, 30),
        board_minutes: ThreePoint::tenths(100, 200, 400),
        fasteners: &[],
        tape: true,
        freed: &[],
        pits: &[],
        wall: inches("1/8"),
    }
}

fn regular(last: &str, spacing: &str) -> Frame {
    Frame::new(&FrameSpec::regular(Length::ZERO, inches(last), inches(spacing), inches("2"))).unwrap()
}

/// Common practice, no source: a 24 ft by 8 ft deck holds about a hundred screws, and its covering takes half an hour or more.
#[test]
fn twenty_four_feet_by_eight_hold_about_a_hundred_screws() {
    let (outline, frame) = (outline("288", "96"), regular("288", "24"));
    let found = strip_out(&input(&outline, &frame));
    // Six boards on thirteen members: twelve rows of 6 at the edges, six of 4-1/2 between: 72 + 27.
    assert_eq!(found.fastener_count.likely, Figure::of(99));
    assert_eq!((found.fastener_count.low, found.fastener_count.high), (Figure::of(84), Figure::of(126)));
    assert!(found.fasteners_estimated);
    let covering = found.hours.first().unwrap();
    assert!(covering.hours.low >= Figure::scaled(5, 1));
    // 99 screws at 0.4 minutes are 39.6 minutes.
    assert_eq!(found.hours[1].hours.likely, Figure::scaled(66, 2));
    // Six boards at 20 minutes.
    assert_eq!(found.hours[2].hours.likely, Figure::of(2));
    assert_eq!(found.total_hours.likely, Figure::scaled(416, 2));
}

#[test]
fn strips_are_alike_and_no_wider_than_asked() {
    let (outline, frame) = (outline("288", "96"), regular("288", "24"));
    let mut input = input(&outline, &frame);
    let found = strip_out(&input).covering;
    // 96 in in strips of at most 14: six of 14 and one of 12.
    assert_eq!((found.count, found.width), (7, inches("14")));
    assert_eq!((found.cuts.len(), found.cuts[5]), (6, inches("84")));
    // 102 in: eight of 12.75 at most are seven of 13 and one of 11.
    let wide = outline_of_102();
    assert_eq!(strip_out(&StripOutInput { outline: &wide, ..input }).covering.width, inches("13"));
    assert_eq!(found.length, inches("288"));
    input.covering = OldCovering::Stapled;
    let found = strip_out(&input).covering;
    assert_eq!((found.count, found.width, found.cuts.len()), (1, inches("96"), 0));
    input.covering = OldCovering::None;
    let found = strip_out(&input);
    assert_eq!(found.covering.count, 0);
    assert!(found.hours.iter().all(|line| line.task != "old covering"));
}

#[test]
fn old_boards_are_weighed_and_measured_for_the_dump() {
    let (outline, frame) = (outline("288", "96"), regular("288", "24"));
    let mut input = input(&outline, &frame);
    (input.covering_psf, input.covering_thickness) = (Some(Figure::scaled(5, 1)), Some(inches("1/4")));
    let found = strip_out(&input);
    // 192 ft² at 2.3 lb/ft²; one board of 8 ft by 4 ft 73.6 lb dry.
    assert_eq!(found.boards.dry_lb, 441.6);
    assert_eq!((found.boards.soaked_least_lb, found.boards.soaked_most_lb), (574.1, 706.6));
    assert_eq!(found.boards.heaviest_lb, 117.8);
    assert_eq!(found.disposal.covering_lb, Some(96.0));
    assert_eq!((found.disposal.dry_lb, found.disposal.most_lb), (537.6, 802.6));
    assert_eq!(found.disposal.boards_cubic_feet, Figure::of(12));
    assert_eq!(found.disposal.covering_cubic_feet, Some(Figure::of(4)));
    assert_eq!(found.tape.unwrap().length, inches("480"));
}

#[test]
fn each_fastener_comes_out_its_own_way() {
    let (outline, frame) = (outline("288", "96"), regular("288", "24"));
    let mut own = OldFastener::new(OldKind::Screw, OldCondition::Seized, 6);
    own.method = Some(Method::GrindHead);
    let fasteners = [
        OldFastener::new(OldKind::Screw, OldCondition::Sound, 90),
        OldFastener::new(OldKind::Screw, OldCondition::Seized, 12),
        OldFastener::new(OldKind::Bolt, OldCondition::Sound, 8),
        OldFastener::new(OldKind::Bolt, OldCondition::Spinning, 4),
        own,
    ];
    let found = strip_out(&StripOutInput { fasteners: &fasteners, ..input(&outline, &frame) });
    let told: Vec<(Method, u32, String)> =
        found.fasteners.iter().map(|line| (line.method, line.people, line.hours.likely.to_string())).collect();
    // 90 × 0.4, 12 × 3, 8 × 1.5 × two people, 4 × 1.2, 6 × 3 minutes.
    let expected = [
        (Method::BackOut, 1, "0.6".to_owned()),
        (Method::RingCut, 1, "0.6".to_owned()),
        (Method::BackOut, 2, "0.4".to_owned()),
        (Method::GrindHead, 1, "0.08".to_owned()),
        (Method::GrindHead, 1, "0.3".to_owned()),
    ];
    assert_eq!(told, expected);
    assert_eq!(found.stub_height, inches("3/4"));
    assert_eq!(found.fastener_count.likely, Figure::of(120));
}

#[test]
fn a_pit_goes_on_as_it_grew() {
    let (outline, frame) = (outline("288", "96"), regular("288", "24"));
    let pits = [Pit::new(8, inches("0.05"), Figure::of(20), Water::Fresh)];
    let found = strip_out(&StripOutInput { pits: &pits, ..input(&outline, &frame) });
    let pit = &found.pits[0];
    // 0.05 in in 20 years are 0.0025 a year; 0.075 of an eighth is left, for 30 years.
    assert_eq!((pit.rate, pit.left), (inches("0.0025"), inches("0.075")));
    assert_eq!(pit.years_left, Figure::of(30));
}
