//! Holes small enough to verify by hand.

use super::*;
use crate::frame::{Frame, FrameSpec};
use crate::geometry::Point;
use crate::length::{Length, Unit};
use crate::outline::{Deck, Opening, OpeningShape, Outline, Parametric};
use crate::panels::{Panel, panels};
use crate::seams::{BoardStock, Rules, Seam, SeamProblem, seams};

fn inches(text: &str) -> Length {
    Length::read(text, Unit::Inch).unwrap().length
}

fn at(x: &str, y: &str) -> Point {
    Point::new(inches(x), inches(y))
}

struct Boat {
    panels: Vec<Panel>,
    seams: Vec<Seam>,
    frame: Frame,
}

/// 20 ft by 8 on members every 24 with flanges of 2, seams of 1/8 at 48, 96, …, and a hatch.
fn boat() -> Boat {
    let outline: Outline = Deck::Parametric(Parametric::new(inches("240"), inches("96"))).outline().unwrap();
    let frame = Frame::new(&FrameSpec::regular(Length::ZERO, inches("240"), inches("24"), inches("2"))).unwrap();
    let sheets = vec![BoardStock { label: "ply".into(), width: inches("48") }];
    let layout = seams(&SeamProblem::new(&frame, inches("240"), sheets, Rules::new(inches("1/2")))).layouts.remove(0);
    let hatch = OpeningShape::Round { x: inches("60"), y: inches("50"), diameter: inches("8") };
    let panels = panels(&outline, &layout, &[Opening::new("hatch", hatch)], inches("3/4"));
    Boat { panels, seams: layout.seams, frame }
}

fn bolt() -> Bolt {
    let mut bolt = Bolt::new("hex bolt", inches("1/4"));
    (bolt.foot, bolt.washer, bolt.nut) = (inches("1/8"), inches("1/16"), inches("7/32"));
    bolt
}

fn placed(holes: Vec<Point>, bolt: Bolt, datum: &OldDatum) -> Vec<FittedHole> {
    let boat = boat();
    let sold = ["1", "1-1/4", "1-1/2", "2"].map(inches);
    let ground = Ground {
        panels: &boat.panels,
        seams: &boat.seams,
        frame: &boat.frame,
        wall: inches("1/8"),
        layers: Layers { board: inches("3/4"), tape: inches("1/32"), wall: None },
        fasteners: &[at("24", "9")],
        old_holes: &[(at("72", "20"), inches("1/4"))],
        from_seam: SeamDistance::Diameters(4),
        in_metal_halves: 3,
        sold: &sold,
    };
    place(&[Fitting::new("rail", bolt, holes)], datum, &ground)
}

fn rules(hole: &FittedHole) -> Vec<HoleRule> {
    hole.findings.iter().map(|found| found.rule).collect()
}

#[test]
fn a_hole_is_told_from_its_panels_edges_with_what_is_nearest() {
    let found = placed(vec![at("60", "6")], bolt(), &OldDatum::default());
    let hole = &found[0];
    assert_eq!(
        (hole.panel.as_deref(), hole.from_fore, hole.from_port),
        (Some("2"), Some(inches("12")), Some(inches("6")))
    );
    let (seam, member) = (hole.seam.unwrap(), hole.member.unwrap());
    assert_eq!((seam.number, seam.distance, seam.least), (1, inches("12"), inches("1")));
    // Members at 48 and 72: flanges end at 49 and start at 71.
    assert_eq!((member.number, member.through, member.distance), (3, false, inches("11")));
    assert_eq!(rules(hole), []);
}

#[test]
fn the_stack_is_longer_through_a_member_and_rounded_up_to_what_is_sold() {
    let plate = Plate::new(inches("4"), inches("2"), inches("1/8"), 2);
    let with = |plate: Option<Plate>| Bolt { plate, ..bolt() };
    let beside = &placed(vec![at("60", "6")], with(None), &OldDatum::default())[0].stack;
    // 1/8 + 3/4 + 1/16 + 7/32 = 1-5/32.
    assert_eq!((beside.needed, beside.bolt), (inches("1-5/32"), Some(inches("1-1/4"))));
    let through = &placed(vec![at("72", "6")], with(None), &OldDatum::default())[0];
    // 1/32 of tape and 1/8 of wall more: 1-5/16.
    assert!(through.member.unwrap().through);
    assert_eq!((through.stack.needed, through.stack.bolt), (inches("1-5/16"), Some(inches("1-1/2"))));
    let plated = placed(
        vec![at("60", "6"), at("60", "9"), at("60", "12"), at("72", "6")],
        with(Some(plate)),
        &OldDatum::default(),
    );
    assert_eq!(plated[0].stack.needed, inches("1-9/32"));
    let lines: Vec<(Option<Length>, usize)> = bolts(&plated).iter().map(|line| (line.length, line.count)).collect();
    assert_eq!(lines, [(Some(inches("1-1/2")), 4)]);
    assert_eq!(plates(&plated).iter().map(|line| line.count).collect::<Vec<_>>(), [2]);
    let thick = Plate { thickness: inches("1"), ..plate };
    let long = &placed(vec![at("60", "6")], with(Some(thick)), &OldDatum::default())[0];
    assert_eq!((rules(long), long.findings[0].short_by), (vec![HoleRule::NoBolt], inches("5/32")));
}

#[test]
fn each_rule_has_a_hole_that_breaks_it_and_says_how_far_to_go() {
    let one = |x: &str, y: &str| placed(vec![at(x, y)], bolt(), &OldDatum::default()).remove(0);
    let told = |hole: FittedHole| {
        let found = hole.findings[0];
        (rules(&hole), found.short_by, found.aft)
    };
    assert_eq!(rules(&one("60", "97")), [HoleRule::OffBoard]);
    assert_eq!(rules(&one("60", "50")), [HoleRule::InOpening]);
    // The seam has no gap: 3/4 aft of 48, in the flange that ends at 49.
    assert_eq!(
        told(one("48-3/4", "6")),
        (vec![HoleRule::NearSeam, HoleRule::FlangeEdge], inches("1/4"), Some(inches("1/4")))
    );
    assert_eq!(told(one("71-1/8", "6")), (vec![HoleRule::FlangeEdge], inches("1/4"), Some(inches("1/4"))));
    assert_eq!(told(one("72-7/8", "6")), (vec![HoleRule::FlangeEdge], inches("1/4"), Some(inches("-1/4"))));
    // Washers are taken as two diameters wide.
    assert_eq!(told(one("73-1/8", "6")), (vec![HoleRule::FoulsFlange], inches("1/8"), Some(inches("1/8"))));
    assert_eq!(told(one("24", "9-1/4")), (vec![HoleRule::NearFastener], inches("1/2"), None));
    assert_eq!(told(one("72", "20-1/4")), (vec![HoleRule::NearOldHole], inches("1/2"), None));
    let again = one("72", "20");
    assert!(again.reuses_old_hole && again.findings.is_empty());
}

#[test]
fn the_old_datum_may_lie_anywhere_and_be_read_from_any_corner() {
    let mut datum = OldDatum::new(at("239-1/2", "95-3/4"));
    (datum.forward, datum.to_port) = (true, true);
    let found = &placed(vec![at("12", "6")], bolt(), &datum)[0];
    assert_eq!((found.x, found.y), (inches("227-1/2"), inches("89-3/4")));
    // A quarter in 20 ft, 3-4-5 for the eye: over 4 to starboard 3.
    datum = OldDatum::new(at("1", "0"));
    datum.skew = Some((inches("4"), inches("3")));
    let found = &placed(vec![at("50", "0"), at("0", "10")], bolt(), &datum);
    assert_eq!((found[0].x, found[0].y), (inches("41"), inches("30")));
    assert_eq!((found[1].x, found[1].y), (inches("-5"), inches("8")));
    assert_eq!(found[1].panel, None);
}
