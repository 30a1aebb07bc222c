//! Each caution has a small case that triggers it, and one beside it that does not.

use super::*;
use crate::frame::{Condition, Frame, FrameSpec};
use crate::length::{Length, Notation, Unit};
use crate::openings::{OpeningRules, Surroundings, check};
use crate::outline::{Deck, Notch, Opening, OpeningShape, Outline, Parametric};
use crate::seams::{BoardStock, Rules, SeamLayout, SeamProblem, seams};
use crate::stock::{Sheet, Treatment};

const NONE: [&str; 0] = [];

fn inches(text: &str) -> Length {
    Length::read(text, Unit::Inch).unwrap().length
}

fn notation() -> Notation {
    Notation::new(Unit::Inch)
}

fn ids(cautions: &[Caution]) -> Vec<&str> {
    cautions.iter().map(|caution| caution.id.as_str()).collect()
}

fn wishes() -> BoardWishes {
    BoardWishes {
        bearing: inches("3/4"),
        width: inches("16"),
        supports: 3,
        overhang: inches("6"),
        side_overhang: inches("3"),
    }
}

fn deck(length: &str) -> Outline {
    Deck::Parametric(Parametric::new(inches(length), inches("96"))).outline().unwrap()
}

fn layout(frame: &Frame, length: &str, rules: Rules) -> SeamLayout {
    let sheets = vec![BoardStock { label: "ply".into(), width: inches("48") }];
    seams(&SeamProblem::new(frame, inches(length), sheets, rules)).layouts.remove(0)
}

fn regular(last: &str, spacing: &str, flange: &str) -> Frame {
    Frame::new(&FrameSpec::regular(Length::ZERO, inches(last), inches(spacing), inches(flange))).unwrap()
}

#[test]
fn a_plain_deck_triggers_nothing_about_its_boards() {
    let frame = regular("96", "24", "2");
    let layout = layout(&frame, "96", Rules::new(inches("1/2")).widths(inches("12"), inches("16")));
    assert!(boards(Some(&layout), &frame, &deck("96"), &wishes(), &notation()).is_empty());
}

#[test]
fn boards_and_members_trigger_theirs() {
    let mut spec = FrameSpec::regular(inches("8"), inches("88"), inches("20"), inches("1-1/4"));
    let outline =
        Deck::Parametric(Parametric::new(inches("96"), inches("96")).notch(Notch::new(inches("30"), inches("4"))));
    let outline = outline.outline().unwrap();
    let frame = Frame::new(&spec).unwrap();
    let rules = Rules::new(inches("1/2")).gap(inches("1/8")).rows(inches("3/8"), inches("3/8"));
    let found = layout(&frame, "96", rules.widths(inches("12"), inches("16")));
    let wishes = BoardWishes { supports: 4, ..wishes() };
    let cautions = boards(Some(&found), &frame, &outline, &wishes, &notation());
    assert_eq!(ids(&cautions), ["narrow-flange", "bearing", "supports", "overhang", "notch-to-edge"]);
    assert!(cautions[0].about[0].ends_with("short by 3/8\""), "{:?}", cautions[0].about);
    assert_eq!(cautions[3].about, ["bow: 7-3/8\"", "stern: 7-3/8\""]);
    spec = FrameSpec::centred([inches("0"), inches("48"), inches("96")], inches("2"));
    spec.members[1] = spec.members[1].clone().ends(inches("4"), inches("94")).condition(Condition::Bent);
    let frame = Frame::new(&spec).unwrap();
    let cautions = boards(None, &frame, &deck("96"), &wishes, &notation());
    assert_eq!(ids(&cautions), ["side-overhang", "member-condition"]);
}

#[test]
fn openings_trigger_theirs() {
    let frame = regular("96", "24", "2");
    let layout = layout(&frame, "96", Rules::new(inches("1/2")));
    let rectangle = |x: &str, y: &str, depth: &str, width: &str, radius: &str| OpeningShape::Rectangle {
        x: inches(x),
        y: inches(y),
        depth: inches(depth),
        width: inches(width),
        corner_radius: inches(radius),
    };
    let rules = OpeningRules::default();
    let found = |list: &[Opening]| {
        let outline = deck("96");
        let around = Surroundings { outline: &outline, frame: &frame, layout: Some(&layout) };
        openings(&check(list, &around, &rules), list, &rules, &notation())
            .into_iter()
            .map(|caution| caution.id)
            .collect::<Vec<_>>()
    };
    let fair = Opening::new("hatch", rectangle("4", "30", "16", "16", "2"));
    assert!(found(std::slice::from_ref(&fair)).is_empty());
    assert_eq!(found(&[Opening::new("a", rectangle("20", "30", "10", "10", "2"))]), ["opening-over-member"]);
    assert_eq!(found(&[Opening::new("a", rectangle("26", "30", "10", "10", "2"))]), ["opening-near-flange"]);
    let lid = Opening::new("a", rectangle("50", "30", "10", "10", "0")).framed(true);
    assert_eq!(found(&[lid]), ["opening-near-seam", "sharp-corner"]);
    assert_eq!(found(&[Opening::new("a", rectangle("4", "3", "16", "10", "2"))]), ["opening-near-edge"]);
    let beside = Opening::new("b", rectangle("4", "50", "16", "16", "2"));
    assert_eq!(found(&[fair, beside]), ["openings-near-each-other"]);
}

#[test]
fn stock_triggers_its_own() {
    let sheet = || Sheet::new("ply", inches("96"), inches("48"));
    let found = |sheet: Sheet, barrier| ids_of(stock(&[sheet], None, barrier, &notation()));
    assert_eq!(found(sheet(), false), NONE);
    assert_eq!(found(sheet().treatment(Treatment::Copper), false), ["copper-treated"]);
    assert_eq!(found(sheet().treatment(Treatment::Copper), true), NONE);
    assert_eq!(found(sheet().treatment(Treatment::Arsenate), true), ["arsenate-treated"]);
    assert_eq!(found(sheet().measured(inches("95-15/16"), inches("47-15/16")), false), NONE);
    assert_eq!(found(sheet().measured(inches("96"), inches("47-7/8")), false), ["sheet-size"]);
}

#[test]
fn a_fastener_has_to_reach_and_not_too_far() {
    use crate::fasteners::{Fastener, Fastening};
    let none = Fastening { rows: Vec::new(), count: 0, edge_count: 0, field_count: 0 };
    let reach = FastenerReach {
        board: inches("3/4"),
        between: Length::ZERO,
        wall: inches("1/8"),
        clearance: Some(inches("1")),
    };
    let found = |length: &str| {
        let screw = Fastener::new("screw", inches("1/4"), inches(length));
        ids_of(fastening(&none, &screw, &reach, &notation()))
    };
    assert_eq!(found("1"), ["fastener-short"]);
    assert_eq!(found("1-1/2"), NONE);
    assert_eq!(found("2"), ["fastener-long"]);
}

#[test]
fn every_standing_caution_says_why_and_what_it_defers_to() {
    let all = standing();
    assert!(all.len() >= 10);
    assert!(all.iter().all(|caution| !caution.reason.is_empty() && !caution.defers_to.is_empty()));
    assert!(all.iter().all(|caution| !caution.text.to_lowercase().contains("is safe")));
}

fn ids_of(cautions: Vec<Caution>) -> Vec<String> {
    cautions.into_iter().map(|caution| caution.id).collect()
}
