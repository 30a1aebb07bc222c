//! Panels small enough to verify by hand.

use super::*;
use crate::frame::{Frame, FrameSpec};
use crate::length::{Area, Length, Unit};
use crate::outline::{BowCorner, Deck, Notch, Opening, OpeningShape, Outline, Parametric, Rim};
use crate::seams::{BoardStock, Rules, SeamLayout, SeamProblem, seams};

fn inches(text: &str) -> Length {
    Length::read(text, Unit::Inch).unwrap().length
}

fn layout(outline: &Outline, gap: &str) -> SeamLayout {
    let frame = FrameSpec::regular(Length::ZERO, outline.length(), inches("24"), inches("2"));
    let frame = Frame::new(&frame).unwrap();
    let sheets = vec![BoardStock { label: "ply".into(), width: inches("48") }];
    let rules = Rules::new(inches("1/2")).gap(inches(gap));
    let problem = SeamProblem::new(&frame, outline.length(), sheets, rules).outline(outline);
    seams(&problem).layouts.remove(0)
}

fn deck(measures: Parametric) -> Outline {
    Deck::Parametric(measures).outline().unwrap()
}

#[test]
fn panels_and_gaps_add_up_to_the_outline() {
    let notch = Notch::new(inches("30"), inches("24")).inside_radius(inches("3"));
    let measures = Parametric::new(inches("240"), inches("96")).bow(BowCorner::Radius(inches("12"))).notch(notch);
    let outline = deck(measures);
    let layout = layout(&outline, "1/8");
    let all = panels(&outline, &layout, &[], inches("3/4"));
    let gaps: i128 =
        layout.seams.iter().map(|seam| Area::of(seam.length.unwrap(), seam.aft - seam.fore).square_nanometres()).sum();
    let boards: i128 = all.iter().map(|panel| panel.area.square_nanometres()).sum();
    // Arc segments are rounded to the square nanometre, one for each arc.
    assert!((boards + gaps - outline.path().area()).abs() < 10);
}

#[test]
fn a_notch_that_reaches_a_seam_splits_the_last_board() {
    let outline = deck(Parametric::new(inches("240"), inches("96")).notch(Notch::new(inches("30"), inches("60"))));
    let all = panels(&outline, &layout(&outline, "0"), &[], inches("3/4"));
    let labels: Vec<&str> = all.iter().map(|panel| panel.label.as_str()).collect();
    assert_eq!(labels, ["1", "2", "3", "4", "5P", "5S"]);
    assert!(all[3].sides(|edge| edge == Edge::Notch).count() >= 3);
    assert_eq!(all[5].length, inches("33"));
    assert_eq!(all[4].sides(|edge| matches!(edge, Edge::Seam { seam: 4, .. })).count(), 1);
}

#[test]
fn an_opening_lies_in_its_panel_and_its_area_is_off() {
    let outline = deck(Parametric::new(inches("240"), inches("96")));
    let shape = OpeningShape::Rectangle {
        x: inches("60"),
        y: inches("30"),
        depth: inches("24"),
        width: inches("20"),
        corner_radius: Length::ZERO,
    };
    let all = panels(&outline, &layout(&outline, "0"), &[Opening::new("hatch", shape)], inches("3/4"));
    assert_eq!(all[1].openings.len(), 1);
    assert_eq!(all[1].area, Area::of(inches("48"), inches("86")));
    assert_eq!(all.iter().map(|panel| panel.openings.len()).sum::<usize>(), 1);
}

#[test]
fn bow_corners_stay_arcs_and_edges_are_told_apart() {
    let outline = deck(Parametric::new(inches("240"), inches("96")).bow(BowCorner::Radius(inches("12"))));
    let all = panels(&outline, &layout(&outline, "0"), &[], inches("3/4"));
    let arcs: Vec<_> = all[0].shape.sides().iter().filter_map(|side| side.arc).collect();
    assert_eq!(arcs.len(), 2);
    assert!(arcs.iter().all(|arc| arc.radius == inches("12")));
    assert_eq!(all[0].sides(|edge| edge == Edge::Perimeter { rim: Rim::BowCorner }).count(), 2);
    // 36-48-60 would be the half; the whole board is 48 by 96.
    assert_eq!(all[1].diagonal, inches("48").hypotenuse(inches("96")));
    assert_eq!(all[1].shape.sides().len(), 4);
}
