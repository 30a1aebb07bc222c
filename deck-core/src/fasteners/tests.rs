//! Rows small enough to verify by hand.

mod old_holes;

use super::divide::{clear, even, free_ends, greatest_gap};
use super::*;
use crate::frame::{Frame, FrameSpec};
use crate::length::{Length, Unit};
use crate::outline::{BowCorner, Deck, Notch, Opening, OpeningShape, Outline, Parametric};
use crate::panels::{Panel, panels};
use crate::seams::{BoardStock, Rules, SeamProblem, seams};

fn inches(text: &str) -> Length {
    Length::read(text, Unit::Inch).unwrap().length
}

fn all(texts: &[&str]) -> Vec<Length> {
    texts.iter().map(|text| inches(text)).collect()
}

fn schedule(edge: &str, field: &str) -> Schedule {
    let screw = Fastener::new("screw", inches("1/4"), inches("2"));
    Schedule::new(screw, inches(edge), inches(field), inches("3/8")).end_distance(inches("1"))
}

fn boarded(measures: Parametric, spacing: &str, openings: &[Opening]) -> (Vec<Panel>, Frame, Outline) {
    let outline = Deck::Parametric(measures).outline().unwrap();
    let spec = FrameSpec::regular(Length::ZERO, outline.length(), inches(spacing), inches("2"));
    let frame = Frame::new(&spec).unwrap();
    let sheets = vec![BoardStock { label: "ply".into(), width: inches("48") }];
    let layout =
        seams(&SeamProblem::new(&frame, outline.length(), sheets, Rules::new(inches("1/2")))).layouts.remove(0);
    (panels(&outline, &layout, openings, inches("3/4")), frame, outline)
}

#[test]
fn a_row_is_divided_evenly_and_staggered_on_the_half_steps() {
    assert_eq!(even(inches("1"), inches("25"), inches("8"), 0, false), all(&["1", "9", "17", "25"]));
    assert_eq!(even(inches("1"), inches("25"), inches("8"), 0, true), all(&["1", "5", "13", "21", "25"]));
    assert_eq!(even(inches("1"), inches("1"), inches("8"), 0, false), all(&["1"]));
    assert_eq!(even(inches("2"), inches("1"), inches("8"), 0, false), []);
}

#[test]
fn fasteners_move_to_the_sides_of_an_opening_or_are_dropped() {
    let row = all(&["0", "8", "16", "24", "32"]);
    let ends = (inches("0"), inches("32"));
    let at = |from: &str, to: &str| clear(&row, &[(inches(from), inches(to))], ends, inches("16"), inches("3/4"));
    let wide = at("6", "26");
    assert_eq!((wide.positions, wide.moved, wide.dropped), (all(&["0", "6", "26", "32"]), 2, 1));
    assert_eq!(at("7", "10").positions, all(&["0", "7", "16", "24", "32"]));
    // As near on both sides: outboard; on the centreline: both.
    assert_eq!(at("7", "9").positions, all(&["0", "7", "16", "24", "32"]));
    assert_eq!(at("23", "25").positions, all(&["0", "8", "16", "25", "32"]));
    assert_eq!(at("15", "17").positions, all(&["0", "8", "15", "17", "24", "32"]));
    // Two stretches that both want the strip between them: the outboard move wins, on either side of the boat.
    let both = [(inches("3"), inches("10-1/4")), (inches("10-3/4"), inches("18"))];
    let mirrored: Vec<(Length, Length)> =
        both.iter().rev().map(|(from, to)| (inches("32") - *to, inches("32") - *from)).collect();
    let one = clear(&row, &both, ends, inches("16"), inches("3/4")).positions;
    let other = clear(&row, &mirrored, ends, inches("16"), inches("3/4")).positions;
    assert_eq!(one, all(&["0", "10-1/4", "18", "24", "32"]));
    assert_eq!(other.iter().rev().map(|at| inches("32") - *at).collect::<Vec<_>>(), one);
    // Too near the one before: dropped.
    let crowded = at("1/2", "16");
    assert_eq!((crowded.positions, crowded.dropped), (all(&["0", "16", "24", "32"]), 1));
    assert_eq!(greatest_gap(&at("6", "26").positions, ends), inches("20"));
    assert_eq!(free_ends(inches("0"), inches("32"), &[(inches("-1"), inches("2"))]), (inches("2"), inches("32")));
}

#[test]
fn a_hatch_over_a_row_is_told_as_a_gap() {
    let shape = OpeningShape::Rectangle {
        x: inches("60"),
        y: inches("36"),
        depth: inches("24"),
        width: inches("24"),
        corner_radius: inches("2"),
    };
    let (boards, frame, outline) =
        boarded(Parametric::new(inches("240"), inches("96")), "24", &[Opening::new("hatch", shape)]);
    let fastening = fasteners(&boards, &frame, &outline, &schedule("8", "8"));
    let row = fastening.rows.iter().find(|row| row.panel == "2" && row.member == 4).unwrap();
    assert!(row.over_limit);
    assert_eq!(row.greatest_gap, inches("24-3/4"));
    assert!(row.positions.contains(&inches("35-5/8")) && row.positions.contains(&inches("60-3/8")));
    assert_eq!(fastening.rows.iter().filter(|row| row.over_limit).count(), 1);
}

#[test]
fn rows_keep_off_a_round_bow() {
    let measures = Parametric::new(inches("240"), inches("96")).bow(BowCorner::Radius(inches("12")));
    let (boards, frame, outline) = boarded(measures, "24", &[]);
    let fastening = fasteners(&boards, &frame, &outline, &schedule("8", "8"));
    let row = &fastening.rows[0];
    // The bow member's flange reaches 1 in aft of the bow edge: its middle between the two edge distances.
    assert_eq!(row.station, inches("1/2"));
    let reach = (inches("12") - row.station).hypotenuse(inches("12") - row.positions[0]);
    assert!(inches("12") - reach >= inches("3/8"));
    assert!(fastening.rows.iter().all(|row| !row.over_limit));
}

#[test]
fn the_metal_end_binds_where_a_member_stops_short() {
    let outline = Deck::Parametric(Parametric::new(inches("40"), inches("96"))).outline().unwrap();
    let mut spec = FrameSpec::centred([inches("0"), inches("20"), inches("40")], inches("2"));
    spec.members[1] = spec.members[1].clone().ends(inches("3"), inches("93"));
    let frame = Frame::new(&spec).unwrap();
    let sheets = vec![BoardStock { label: "ply".into(), width: inches("48") }];
    let layout = seams(&SeamProblem::new(&frame, inches("40"), sheets, Rules::new(inches("1/2")))).layouts.remove(0);
    let boards = panels(&outline, &layout, &[], inches("3/4"));
    let fastening = fasteners(&boards, &frame, &outline, &schedule("8", "8"));
    assert_eq!(fastening.rows[1].positions.first(), Some(&inches("3-3/8")));
    assert_eq!(fastening.rows[1].positions.last(), Some(&inches("92-5/8")));
    assert_eq!(fastening.rows[0].positions.first(), Some(&inches("1")));
}

#[test]
fn a_row_without_room_to_spare_and_a_short_one_are_laid_out_all_the_same() {
    let count = |flange: &str| {
        let outline = Deck::Parametric(Parametric::new(inches("240"), inches("96"))).outline().unwrap();
        let frame = Frame::new(&FrameSpec::regular(Length::ZERO, inches("240"), inches("24"), inches(flange))).unwrap();
        let sheets = vec![BoardStock { label: "ply".into(), width: inches("48") }];
        let rules = Rules::new(inches("1/2")).gap(inches("1/8")).rows(inches("3/8"), inches("3/8"));
        let layout = seams(&SeamProblem::new(&frame, inches("240"), sheets, rules)).layouts.remove(0);
        let fastening =
            fasteners(&panels(&outline, &layout, &[], inches("3/4")), &frame, &outline, &schedule("8", "8"));
        let short: Vec<Length> =
            fastening.rows.iter().map(|row| row.short_by).filter(|short| !short.is_zero()).collect();
        (fastening.count, short)
    };
    assert_eq!(count("1-5/8"), (195, vec![]));
    // The two rows at each of four seams lack 3/8 together, those at bow and stern 1/8 each.
    let (counted, short) = count("1-1/4");
    assert_eq!((counted, short.len()), (195, 10));
    assert_eq!(short.into_iter().sum::<Length>(), inches("1-3/4"));
}

#[test]
fn a_tongue_too_narrow_for_a_fastener_is_told() {
    let notch = Notch::new(inches("30"), inches("12")).from_port(inches("1-1/2"));
    let (boards, frame, outline) = boarded(Parametric::new(inches("96"), inches("96")).notch(notch), "24", &[]);
    let fastening = fasteners(&boards, &frame, &outline, &schedule("8", "8"));
    let row = fastening.rows.iter().find(|row| row.positions.is_empty()).unwrap();
    assert_eq!((row.member, row.greatest_gap, row.over_limit), (5, inches("1-1/2"), true));
    assert_eq!(fastening.rows.iter().filter(|row| row.over_limit).count(), 1);
}
