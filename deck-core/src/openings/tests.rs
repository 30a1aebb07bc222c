//! Openings small enough to verify by hand.

use super::site::Site;
use super::*;
use crate::frame::{Frame, FrameSpec};
use crate::geometry::Bounds;
use crate::length::{Length, Unit};
use crate::outline::{BowCorner, Deck, Notch, Opening, OpeningShape, Outline, Parametric};
use crate::seams::{BoardStock, Lane, Rules, SeamLayout, SeamProblem, seams};

fn inches(text: &str) -> Length {
    Length::read(text, Unit::Inch).unwrap().length
}

fn rectangle(x: &str, y: &str, depth: &str, width: &str, radius: &str) -> Opening {
    let [x, y, depth, width, corner_radius] = [x, y, depth, width, radius].map(inches);
    Opening::new("hatch", OpeningShape::Rectangle { x, y, depth, width, corner_radius })
}

fn round(x: &str, y: &str, diameter: &str) -> Opening {
    let [x, y, diameter] = [x, y, diameter].map(inches);
    Opening::new("sender", OpeningShape::Round { x, y, diameter })
}

struct Boat {
    outline: Outline,
    frame: Frame,
    layout: SeamLayout,
}

/// 20 ft by 8 on members every 24, seams at 48, 96, …
fn boat(measures: Parametric) -> Boat {
    let outline = Deck::Parametric(measures).outline().unwrap();
    let frame = Frame::new(&FrameSpec::regular(Length::ZERO, inches("240"), inches("24"), inches("2"))).unwrap();
    let sheets = vec![BoardStock { label: "ply".into(), width: inches("48") }];
    let layout = seams(&SeamProblem::new(&frame, inches("240"), sheets, Rules::new(inches("1/2")))).layouts.remove(0);
    Boat { outline, frame, layout }
}

impl Boat {
    fn around(&self) -> Surroundings<'_> {
        Surroundings { outline: &self.outline, frame: &self.frame, layout: Some(&self.layout) }
    }

    fn moved(&self, opening: &Opening, others: &[Bounds]) -> Result<(Length, Length), Vec<Rule>> {
        let least = least_move(opening, others, &self.around(), &OpeningRules::default());
        least.map(|least| (least.aft, least.starboard))
    }
}

fn plain() -> Boat {
    boat(Parametric::new(inches("240"), inches("96")))
}

#[test]
fn each_rule_is_measured_from_the_nearest_that_breaks_it() {
    let boat = plain();
    let found = check(&[rectangle("26", "2", "10", "12", "1/2")], &boat.around(), &OpeningRules::default());
    let told: Vec<(Rule, Length, Length)> =
        found[0].clearances.iter().map(|found| (found.rule, found.distance, found.short_by)).collect();
    let expected =
        [(Rule::Flange, "1", "1"), (Rule::Seam, "12", "0"), (Rule::Edge, "2", "2"), (Rule::Corner, "1/2", "1/2")];
    assert_eq!(told, expected.map(|(rule, has, lacks)| (rule, inches(has), inches(lacks))));
    assert!(!found[0].holds() && found[0].is_misplaced());
    assert_eq!(found[0].clearances[0].against, Against::Member(2));
}

#[test]
fn the_least_move_goes_straight_off_what_is_too_near() {
    let boat = plain();
    let none = Length::ZERO;
    // Member 2's flange ends at 25: an inch aft. From the port edge: two to starboard. Both at once.
    assert_eq!(boat.moved(&rectangle("26", "30", "10", "12", "2"), &[]), Ok((inches("1"), none)));
    assert_eq!(boat.moved(&rectangle("30", "2", "10", "12", "2"), &[]), Ok((none, inches("2"))));
    assert_eq!(boat.moved(&rectangle("26", "2", "10", "12", "2"), &[]), Ok((inches("1"), inches("2"))));
    // Across member 2: out of it forward, to end 2 short of 23.
    assert_eq!(boat.moved(&rectangle("12", "30", "12", "12", "2"), &[]), Ok((inches("-3"), none)));
    // A framed one over a seam: 3 aft of 48.
    assert_eq!(boat.moved(&rectangle("47", "30", "30", "12", "2").framed(true), &[]), Ok((inches("4"), none)));
    // Where it keeps every rule it stays.
    assert_eq!(boat.moved(&rectangle("30", "30", "10", "12", "2"), &[]), Ok((none, none)));
}

#[test]
fn a_butt_in_another_row_of_boards_is_no_seam_of_the_openings_board() {
    let mut boat = plain();
    // The seam at 48 is a butt in the row from port to the middle.
    boat.layout.seams[0].lane = Some(Lane::new(1, Length::ZERO, inches("48")));
    let hatch = |y: &str| rectangle("44", y, "6", "12", "2").framed(true);
    let seam = |y: &str| {
        let found = check(&[hatch(y)], &boat.around(), &OpeningRules::default());
        let of_seams = found[0].clearances.iter().filter(|found| found.rule == Rule::Seam);
        of_seams.map(|found| (found.against.clone(), found.distance)).collect::<Vec<_>>()
    };
    assert_eq!(seam("60"), [(Against::Seam(2), inches("46"))]);
    assert_eq!(seam("48"), [(Against::Seam(2), inches("46"))]);
    assert_eq!(seam("47"), [(Against::Seam(1), inches("-2"))]);
    assert_eq!(boat.moved(&hatch("60"), &[]), Ok((Length::ZERO, Length::ZERO)));
    // Out of its row by three, or off it forward by five, whichever is less.
    assert_eq!(boat.moved(&hatch("45"), &[]), Ok((Length::ZERO, inches("3"))));
    assert_eq!(boat.moved(&hatch("30"), &[]), Ok((inches("-5"), Length::ZERO)));
}

#[test]
fn a_round_hole_near_a_bow_corner_moves_along_the_ray_from_its_middle() {
    let boat = boat(Parametric::new(inches("240"), inches("96")).bow(BowCorner::Radius(inches("24"))));
    // 3-4-5: from the corner's middle at 24, 24 the hole's middle lies 6 forward and 8 to port, 10 away; 24 - 2 - 4 = 18 is
    // allowed, so it is fair. At 12 and 16 it is 20 away and comes back by a tenth.
    assert_eq!(boat.moved(&round("18", "16", "4"), &[]), Ok((Length::ZERO, Length::ZERO)));
    assert_eq!(boat.moved(&round("12", "8", "4"), &[]), Ok((inches("1.2"), inches("1.6"))));
}

#[test]
fn openings_keep_a_size_of_the_smaller_from_each_other() {
    let boat = plain();
    let other = rectangle("30", "30", "10", "12", "2").path().bounds();
    // The smaller is 6 in: from 42 to 48 athwart.
    assert_eq!(boat.moved(&rectangle("30", "44", "6", "12", "2"), &[other]), Ok((Length::ZERO, inches("4"))));
}

#[test]
fn what_fits_nowhere_says_which_rule_is_in_the_way() {
    let boat = plain();
    // 22 clear less 2 on both sides leaves 18; without the flanges' clearance 22.
    let wide = rectangle("27", "30", "20", "12", "2");
    assert_eq!(boat.moved(&wide, &[]), Err(vec![Rule::Member, Rule::Flange]));
    // Framed it may lie beside a flange, and goes two forward to keep three from the seam at 48.
    assert_eq!(boat.moved(&wide.framed(true), &[]), Ok((inches("-2"), Length::ZERO)));
    // Too wide for the deck less 4 on both sides.
    assert_eq!(boat.moved(&rectangle("30", "3", "10", "90", "2"), &[]), Err(vec![Rule::Edge]));
}

#[test]
fn a_notch_is_an_edge_like_any_other() {
    let notch = Notch::new(inches("30"), inches("12"));
    let boat = boat(Parametric::new(inches("240"), inches("96")).notch(notch));
    let hatch = rectangle("221", "40", "4", "12", "2");
    let found = check(std::slice::from_ref(&hatch), &boat.around(), &OpeningRules::default());
    let edge = found[0].clearances.iter().find(|found| found.rule == Rule::Edge).unwrap();
    assert_eq!((edge.distance, edge.short_by), (inches("3"), inches("1")));
    assert_eq!(boat.moved(&hatch, &[]), Ok((inches("-1"), Length::ZERO)));
}

#[test]
fn a_place_is_fair_to_the_nanometre() {
    let boat = plain();
    let hatch = rectangle("26", "2", "10", "12", "2");
    let site = Site::new(&hatch, &[], &boat.around(), &OpeningRules::default(), None);
    let small = Length::from_nanometres(1);
    assert!(site.fits(inches("1"), inches("2")));
    assert!(!site.fits(inches("1") - small, inches("2")));
    assert!(!site.fits(inches("1"), inches("2") - small));
}

#[test]
fn strips_lie_between_flanges() {
    let boat = plain();
    // From 30 to 40 in the bay from 25 to 47: four strips of 3; from 26: the fore strip keeps an inch, which is left out.
    let strips = |x: &str, depth: &str| framing(&rectangle(x, "30", depth, "12", "2"), &boat.frame, inches("3"));
    let sizes = |strips: Vec<Bounds>| {
        let sizes = strips.iter().map(|strip| (strip.depth(), strip.breadth()));
        sizes.collect::<Vec<(Length, Length)>>()
    };
    let [three, ten, eighteen] = ["3", "10", "18"].map(inches);
    assert_eq!(sizes(strips("30", "10")), [(three, eighteen), (three, eighteen), (ten, three), (ten, three)]);
    assert_eq!(strips("25-1/2", "10").len(), 3);
    // Across member 3, at 47 to 49.
    assert_eq!(strips("40", "20").len(), 6);
}
