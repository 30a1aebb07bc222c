//! A take-off small enough to count by hand.

use super::*;
use crate::fasteners::{Fastener, Schedule, fasteners};
use crate::frame::{Frame, FrameSpec};
use crate::length::{Length, Unit};
use crate::nest::{Effort, Grain, Part, nest};
use crate::outline::{Deck, Parametric};
use crate::panels::panels;
use crate::seams::{BoardStock, Rules, SeamProblem, seams};
use crate::stock::{Saw, Sheet};

fn inches(text: &str) -> Length {
    Length::read(text, Unit::Inch).unwrap().length
}

#[test]
fn twenty_feet_by_eight_is_bought_in_whole_units() {
    let outline = Deck::Parametric(Parametric::new(inches("240"), inches("96"))).outline().unwrap();
    let frame = Frame::new(&FrameSpec::regular(Length::ZERO, inches("240"), inches("24"), inches("2"))).unwrap();
    let boards = vec![BoardStock { label: "ply".into(), width: inches("48") }];
    let problem = SeamProblem::new(&frame, inches("240"), boards, Rules::new(inches("1/2"))).outline(&outline);
    let layout = seams(&problem).layouts.remove(0);
    let panels = panels(&outline, &layout, &[], inches("3/4"));
    let fastener = Fastener::new("deck screw", inches("1/4"), inches("2"));
    let schedule = Schedule::new(fastener.clone(), inches("8"), inches("8"), inches("3/8")).end_distance(inches("1"));
    let fastening = fasteners(&panels, &frame, &outline, &schedule);
    let stock = vec![Sheet::new("ply", inches("96"), inches("48")).price("60.25".parse().unwrap())];
    let parts: Vec<Part> = panels
        .iter()
        .map(|panel| Part::new(panel.label.clone(), panel.length, panel.width).grain(Grain::Length))
        .collect();
    let nest = nest(&parts, &stock, &Saw::new(), Effort::Quick).unwrap();
    let input = TakeoffInput {
        nest: &nest,
        stock: &stock,
        panels: &panels,
        layout: &layout,
        fastening: &fastening,
        fastener: &fastener,
        frame: &frame,
        outline: &outline,
        blocking: None,
        covering: None,
    };
    let mut rules = PurchaseRules::new(100, inches("600"), inches("2400"));
    rules.spare_sheets = 1;
    rules.spares_percent = 5;
    rules.member_tape = true;
    rules.sealer_coats = 2;
    let found = takeoff(&input, &rules);
    let buys: Vec<(Item, u64)> = found.lines.iter().map(|line| (line.item, line.buy)).collect();
    // 195 screws and ten spares; four seams of 96; eleven members of 96; ten coats of 288 around five boards.
    assert_eq!(
        buys,
        [(Item::Sheet, 6), (Item::Fastener, 3), (Item::SeamTape, 1), (Item::MemberTape, 2), (Item::EdgeSealer, 2)]
    );
    assert_eq!(found.sheets_cost, Some("361.50".parse().unwrap()));
    assert_eq!(found.lines[3].needed, Amount::Length(inches("1056")));
    // 160 ft² at 2.3 lb/ft².
    assert_eq!(found.deck_weight_lb, 368.0);
}
