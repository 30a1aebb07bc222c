//! Small decks to verify by hand.

use super::*;
use crate::Unit;
use crate::frame::{Frame, FrameSpec};
use crate::geometry::Path;
use crate::outline::{BowCorner, Deck, Notch, OpeningShape, Parametric};
use crate::seams::{Lane, Rules};

fn inches(text: &str) -> Length {
    format!("{text} in").parse().unwrap()
}

fn whole(count: i64) -> Length {
    Length::inches(count)
}

fn deck(length: i64, beam: i64) -> Outline {
    Deck::Parametric(Parametric::new(whole(length), whole(beam))).outline().unwrap()
}

fn frame(length: i64, spacing: i64) -> Frame {
    Frame::new(&FrameSpec::regular(whole(0), whole(length), whole(spacing), whole(2))).unwrap()
}

fn rules() -> ArrangeRules {
    let seams = Rules::new(inches("1/2")).widths(whole(12), whole(16)).rows(inches("3/8"), inches("3/8"));
    ArrangeRules::new(seams.gap(inches("1/8")), whole(8), whole(8)).kerf(inches("1/8"))
}

fn sheets() -> Vec<Ply> {
    vec![Ply::new("4 x 8", whole(96), whole(48))]
}

fn problem<'a>(frame: &'a Frame, outline: &'a Outline) -> ArrangeProblem<'a> {
    ArrangeProblem::new(frame, outline, sheets(), rules(), Notation::new(Unit::Inch))
}

#[test]
fn fillers_alternate_and_their_blocks_fill_the_bays() {
    let (outline, frame) = (deck(240, 102), frame(240, 24));
    let found = divisions(&problem(&frame, &outline), ArrangementKind::FillerStrips).unwrap();
    let division = &found[0];
    let ports: Vec<Length> = division.joints.iter().map(|joint| joint.port).collect();
    let (starboard, port) = (whole(96), inches("5-7/8"));
    assert_eq!(ports, [starboard, port, starboard, port, starboard]);
    assert_eq!(division.blocks.len(), 10, "two bays under each of five strips");
    assert!(division.blocks.iter().all(|block| block.length == whole(22) && block.label == "1K"));
    let labels: Vec<&str> = division.cells.iter().map(|cell| cell.label.as_str()).collect();
    assert_eq!(labels, ["1", "1F", "2F", "2", "3", "3F", "4F", "4", "5", "5F"]);
    // 22 less 3/8 at each end: 21-1/4 in three steps of at most 8, so four screws in each of two rows.
    assert_eq!(division.blocks[0].screws(), 8);
}

#[test]
fn a_butt_near_the_centre_swings_by_a_block() {
    let (outline, frame) = (deck(240, 120), frame(240, 24));
    let found = divisions(&problem(&frame, &outline), ArrangementKind::CentreButt).unwrap();
    let ports: Vec<Length> = found[0].joints.iter().map(|joint| joint.port).collect();
    let middle = inches("59-15/16");
    assert_eq!(ports[..2], [middle + whole(4), middle - whole(4)]);
    let straight = problem(&frame, &outline);
    let straight = ArrangeProblem { rules: rules().stagger(0), ..straight };
    let found = divisions(&straight, ArrangementKind::CentreButt).unwrap();
    assert!(found[0].joints.iter().all(|joint| joint.port == middle));
}

#[test]
fn rows_along_the_boat_butt_on_different_members() {
    let (outline, frame) = (deck(240, 96), frame(240, 24));
    let mut asked = problem(&frame, &outline);
    asked.rules.seams.gap = Length::ZERO;
    let found = divisions(&asked, ArrangementKind::ForeAndAft).unwrap();
    let division = found.iter().find(|division| division.rows.len() == 2).unwrap();
    assert!(division.proven);
    assert_eq!(division.rows.iter().map(Lane::width).collect::<Vec<_>>(), [whole(48), whole(48)]);
    // 240 of length takes three sheets of 96: two butts to a row, and none on the member of another's.
    assert_eq!((division.layout.boards.len(), division.layout.seams.len()), (6, 4));
    let members: Vec<usize> = division.layout.seams.iter().map(|seam| seam.member).collect();
    assert!(members[..2].iter().all(|member| !members[2..].contains(member)), "{members:?}");
    assert_eq!(division.joints.len(), 1);
    assert_eq!(division.blocks.len(), 10, "a block in every bay");
    let labels: Vec<&str> = division.cells.iter().map(|cell| cell.label.as_str()).collect();
    assert_eq!(labels, ["1A", "2A", "3A", "1B", "2B", "3B"]);
}

#[test]
fn a_joint_keeps_off_an_opening_or_the_answer_says_why() {
    let (outline, frame) = (deck(240, 102), frame(240, 24));
    let hatch = |y: i64, width: i64| {
        let shape = OpeningShape::Rectangle {
            x: whole(52),
            y: whole(y),
            depth: whole(16),
            width: whole(width),
            corner_radius: whole(1),
        };
        vec![Opening::new("hatch", shape)]
    };
    let near = hatch(2, 10);
    let asked = problem(&frame, &outline).openings(&near);
    let found = divisions(&asked, ArrangementKind::FillerStrips).unwrap();
    // The hatch lies where the second strip's filler would be: the fillers begin to port instead.
    assert_eq!([found[0].joints[0].port, found[0].joints[1].port], [inches("5-7/8"), whole(96)]);
    let across = hatch(4, 92);
    let asked = problem(&frame, &outline).openings(&across);
    let no = divisions(&asked, ArrangementKind::CentreButt).unwrap_err();
    assert!(no.reason.contains("strip 2") && no.mend == ["Moving \"hatch\" to another place."], "{no:?}");
    let no = divisions(&asked, ArrangementKind::ForeAndAft).unwrap_err();
    assert!(no.reason.contains("wood") && no.mend == ["Moving \"hatch\" to another place."], "{no:?}");
}

#[test]
fn a_deck_wider_than_two_sheets_says_by_how_much() {
    let (outline, frame) = (deck(240, 200), frame(240, 24));
    let no = divisions(&problem(&frame, &outline), ArrangementKind::FillerStrips).unwrap_err();
    assert_eq!(no.shortfall, Some(inches("3-15/16")));
    assert!(no.reason.ends_with("7-7/8\" short."), "{}", no.reason);
}

#[test]
fn lanes_tile_a_deck_with_round_bow_and_notch() {
    let deck = Parametric::new(whole(240), whole(96)).bow(BowCorner::Radius(whole(12)));
    let outline = Deck::Parametric(deck.notch(Notch::new(whole(30), whole(24)))).outline().unwrap();
    let path = outline.path();
    let mark = path.sides()[0].edge;
    let cuts = [None, Some((whole(40), mark)), Some((whole(56), mark)), None];
    let parts: Vec<Path<_>> = cuts.windows(2).flat_map(|pair| path.lane(pair[0], pair[1])).collect();
    assert_eq!(parts.len(), 3, "the lane over the notch is one piece, as it ends there");
    assert_eq!(parts.iter().map(Path::area).sum::<i128>(), path.area());
    assert_eq!(parts[1].bounds().aft, whole(216));
    assert!(parts.iter().all(|part| part.doubled_area() > 0));
    assert_eq!(path.stretches(whole(40), whole(40)), [(whole(0), whole(216))]);
    assert_eq!(path.stretches(whole(20), whole(20)), [(whole(0), whole(240))]);
    let near_side = path.stretches(whole(6), whole(6));
    assert!(near_side[0].0 > whole(1) && near_side[0].0 < whole(2), "{near_side:?}");
}
