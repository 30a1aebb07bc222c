//! Small cases that can be verified by hand.

use super::*;
use crate::error::Kind;
use crate::length::{JsonForm, Length, Unit, with_json_form};
use crate::stock::SawLine;
use serde_json::{Value, json};

fn length(text: &str) -> Length {
    Length::read(text, Unit::Inch).unwrap().length
}

fn part(label: &str, along: &str, across: &str) -> Part {
    Part::new(label, length(along), length(across))
}

fn sheet(label: &str, along: &str, across: &str) -> Sheet {
    Sheet::new(label, length(along), length(across))
}

fn priced(label: &str, along: &str, across: &str, price: &str) -> Sheet {
    sheet(label, along, across).price(price.parse().unwrap())
}

fn kerf() -> Saw {
    Saw::new().kerf(length("1/8"))
}

fn quick(parts: &[Part], stock: &[Sheet], saw: &Saw) -> Nest {
    nest(parts, stock, saw, Effort::Quick).unwrap()
}

fn inches<T: serde::Serialize>(value: &T) -> Value {
    with_json_form(JsonForm::Number(Unit::Inch), || serde_json::to_value(value).unwrap())
}

#[test]
fn the_json_is_the_contracts() {
    let parts = [part("side", "60", "20").grain(Grain::Length).boat("hull 7"), part("lid", "16", "24")];
    let saw = kerf().keep(length("12"), length("12"));
    let nest = quick(&parts, &[priced("4x8", "96", "48", "62.50")], &saw);
    let expected = json!({
        "sheets": [{
            "stock": "4x8",
            "placements": [
                {"part": "side", "x": 0, "y": 0, "length": 60, "width": 20, "turned": false, "boat": "hull 7"},
                {"part": "lid", "x": 60.125, "y": 0, "length": 24, "width": 16, "turned": true},
            ],
            "cuts": {"cut": "length", "at": 20, "kerf": 0.125, "children": [
                {"cut": "width", "at": 60, "kerf": 0.125, "children": [
                    {"part": "side"},
                    {"cut": "width", "at": 24, "kerf": 0.125, "children": [
                        {"cut": "length", "at": 16, "kerf": 0.125, "children": [{"part": "lid"}, {"waste": true}]},
                        {"waste": true},
                    ]},
                ]},
                {"offcut": true},
            ]},
            "offcuts": [{"x": 0, "y": 20.125, "length": 96, "width": 27.875}],
        }],
        "unplaced": [],
        "sheet_count": 1,
        "cost": 62.5,
        "cost_by_boat": [{"boat": "hull 7", "cost": 47.35}, {"boat": null, "cost": 15.15}],
        "bound": 62.5,
        "proven": true,
        "cost_in": "money",
    });
    assert_eq!(inches(&nest), expected);
}

#[test]
fn full_boards_are_not_cut() {
    let nest = quick(&[part("board", "102", "48").count(6)], &[sheet("102", "102", "48")], &kerf());
    assert_eq!((nest.sheet_count, nest.proven), (6, true));
    assert!(nest.sheets.iter().all(|sheet| sheet.cuts == Tree::part("board")));
    assert_eq!(nest.cost.to_string(), "29376 in²");
    assert_eq!(inches(&nest.cost), json!(29376));
}

#[test]
fn the_last_strip_needs_no_kerf_and_a_scant_rest_is_dust() {
    // Three strips and two kerfs fill 48-1/4 exactly; 48-5/16 leaves a sixteenth, which the third kerf eats.
    let strips = [part("strip", "96", "16").count(3).grain(Grain::Length)];
    let exact = quick(&strips, &[sheet("a", "96", "48-1/4")], &kerf());
    let Tree::Cut(first) = &exact.sheets[0].cuts else { panic!("no cut") };
    assert_eq!((first.cut, first.at), (SawLine::Length, length("16")));
    assert_eq!(inches(&first.children.1)["children"], json!([{"part": "strip"}, {"part": "strip"}]));
    let scant = quick(&strips, &[sheet("a", "96", "48-5/16")], &kerf());
    let tree = inches(&scant.sheets[0].cuts);
    assert_eq!(
        tree["children"][1]["children"][1],
        json!({"cut": "length", "at": 16, "kerf": 0.0625,
        "children": [{"part": "strip"}, null]})
    );
    let short = quick(&strips, &[sheet("a", "96", "48-3/16")], &kerf());
    assert_eq!(short.sheet_count, 2);
}

#[test]
fn trim_comes_off_first_and_includes_its_kerf() {
    let saw = kerf().trim(length("1/4"));
    let nest = quick(&[part("all", "95-1/2", "47-1/2")], &[sheet("a", "96", "48")], &saw);
    let expected = json!({"cut": "length", "at": 0.125, "kerf": 0.125, "children": [{"waste": true},
        {"cut": "length", "at": 47.5, "kerf": 0.125, "children": [
            {"cut": "width", "at": 0.125, "kerf": 0.125, "children": [{"waste": true},
                {"cut": "width", "at": 95.5, "kerf": 0.125, "children": [{"part": "all"}, {"waste": true}]}]},
            {"waste": true}]}]});
    assert_eq!(inches(&nest.sheets[0].cuts), expected);
    // A blade wider than the trim runs partly beside the sheet.
    let nest = quick(&[part("all", "95-7/8", "47-7/8")], &[sheet("a", "96", "48")], &kerf().trim(length("1/16")));
    let tree = inches(&nest.sheets[0].cuts);
    assert_eq!((&tree["at"], &tree["kerf"]), (&json!(0), &json!(0.0625)));
    assert_eq!(tree["children"][1]["children"][1], Value::Null);
}

#[test]
fn grain_decides_which_way_a_part_lies() {
    let stock = [sheet("a", "96", "48")];
    let lies = |grain: Grain, stock: &[Sheet]| {
        let nest = quick(&[part("p", "60", "40").grain(grain)], stock, &kerf());
        nest.sheets.first().map(|sheet| (sheet.placements[0].length, sheet.placements[0].turned))
    };
    assert_eq!(lies(Grain::Length, &stock), Some((length("60"), false)));
    assert_eq!(lies(Grain::Width, &stock), None);
    assert_eq!(lies(Grain::Width, &[sheet("b", "48", "96")]), Some((length("40"), true)));
    assert_eq!(lies(Grain::Any, &[sheet("b", "48", "96")]), Some((length("40"), true)));
    let plain = [sheet("c", "96", "48").grain(crate::stock::SheetGrain::None)];
    assert_eq!(lies(Grain::Width, &plain), Some((length("60"), false)));
    let square = quick(&[part("p", "40", "40").grain(Grain::Width)], &stock, &kerf());
    assert!(square.sheets[0].placements[0].turned);
}

#[test]
fn stages_are_kept() {
    // Two strips side by side in one half, and the other half whole: that takes a crosscut and a rip.
    let parts = [part("half", "48", "48"), part("strip", "47", "23").count(2)].map(|part| part.grain(Grain::Length));
    let stock = [sheet("a", "96", "48")];
    assert_eq!(quick(&parts, &stock, &kerf().stages(2)).sheet_count, 1);
    assert_eq!(quick(&parts, &stock, &kerf().stages(1)).sheet_count, 2);
    assert_eq!(quick(&parts, &stock, &kerf().stages(2).first(SawLine::Length)).sheet_count, 2);
    assert_eq!(quick(&parts, &stock, &kerf().stages(2).first(SawLine::Width)).sheet_count, 1);
}

#[test]
fn a_full_width_board_is_cut_to_length_though_rips_come_first() {
    let nest = quick(&[part("board", "90", "48")], &[sheet("a", "96", "48")], &kerf().first(SawLine::Length).stages(1));
    assert_eq!(
        inches(&nest.sheets[0].cuts),
        json!({"cut": "width", "at": 90, "kerf": 0.125,
        "children": [{"part": "board"}, {"waste": true}]})
    );
}

#[test]
fn the_cheapest_mixture_is_bought() {
    let stock = [priced("102", "102", "48", "80"), priced("96", "96", "48", "62.50"), priced("half", "48", "48", "35")];
    let boards = [part("long", "100", "40"), part("short", "90", "40"), part("stub", "40", "40")];
    let nest = quick(&boards, &stock, &kerf());
    let mut bought: Vec<&str> = nest.sheets.iter().map(|sheet| sheet.stock.as_str()).collect();
    bought.sort_unstable();
    assert_eq!(bought, ["102", "96", "half"]);
    assert_eq!(nest.cost.to_string(), "177.50");
}

#[test]
fn offcuts_are_free_and_used_first() {
    let stock = [priced("4x8", "96", "48", "62.50"), sheet("rack", "30", "30").count(1).offcut(true)];
    let nest = quick(&[part("lid", "24", "24").count(2)], &stock, &kerf());
    assert_eq!(nest.cost.to_string(), "62.50");
    let nest = quick(&[part("lid", "24", "24")], &stock, &kerf());
    assert_eq!((nest.sheets[0].stock.as_str(), nest.cost.to_string().as_str(), nest.proven), ("rack", "0.00", true));
}

#[test]
fn few_large_sheets_are_kept_for_large_parts() {
    let stock = [sheet("large", "102", "48").count(1), sheet("small", "96", "48").count(1)];
    let nest = quick(&[part("short", "90", "45"), part("long", "100", "44")], &stock, &kerf());
    assert_eq!((nest.unplaced.len(), nest.sheet_count), (0, 2));
}

#[test]
fn what_is_not_placed_says_why() {
    let stock = [sheet("a", "96", "48").count(1)];
    let parts = [
        part("side L", "100", "20").count(3),
        part("deep", "50", "50"),
        part("board", "90", "40").count(3),
        part("across", "40", "60").grain(Grain::Length),
    ];
    let nest = quick(&parts, &stock, &kerf());
    let why: Vec<(&str, u32, &str)> =
        nest.unplaced.iter().map(|unplaced| (unplaced.part.as_str(), unplaced.count, unplaced.why.as_str())).collect();
    assert_eq!(
        why,
        [
            ("side L", 3, "100 in is longer than any sheet in stock (96 in)"),
            ("deep", 1, "50 in is wider than any sheet in stock (48 in)"),
            ("board", 2, "no sheets left"),
            ("across", 1, "60 in across the grain is more than any sheet in stock has (48 in)"),
        ]
    );
    assert!(!nest.proven);
    assert_eq!(quick(&parts[..1], &[], &kerf()).unplaced[0].why, "no sheets in stock");
    let hopeless = quick(&parts[..1], &stock, &kerf());
    assert_eq!((hopeless.sheet_count, hopeless.proven), (0, true));
}

#[test]
fn nothing_wanted_takes_nothing() {
    let nest = quick(&[part("none", "10", "10").count(0)], &[sheet("a", "96", "48")], &kerf());
    assert_eq!((nest.sheet_count, nest.unplaced.len(), nest.proven), (0, 0, true));
}

#[test]
fn shares_of_the_cost_add_up_to_the_cent() {
    let parts = ["A", "B", "C"].map(|boat| part(boat, "96", "16").boat(boat));
    let nest = quick(&parts, &[priced("a", "96", "48-1/4", "100.01")], &kerf());
    assert_eq!(
        inches(&nest.cost_by_boat),
        json!([{"boat": "A", "cost": 33.34}, {"boat": "B", "cost": 33.34},
        {"boat": "C", "cost": 33.33}])
    );
}

#[test]
fn mistakes_are_told_where_they_are() {
    let good = [part("p", "10", "10")];
    let faults = |parts: &[Part], stock: &[Sheet], saw: &Saw| -> Vec<(String, Kind)> {
        let error = nest(parts, stock, saw, Effort::Quick).unwrap_err();
        error.faults().map(|fault| (fault.pointer.clone(), fault.kind)).collect()
    };
    let at = |pointer: &str, kind: Kind| vec![(pointer.to_owned(), kind)];
    let stock = [sheet("a", "96", "48")];
    assert_eq!(faults(&[part("p", "-1", "10")], &stock, &kerf()), at("/parts/0/length", Kind::LengthNegative));
    assert_eq!(
        faults(&[good[0].clone(), part("p", "1", "0")], &stock, &kerf()),
        at("/parts/1/width", Kind::LengthZero)
    );
    assert_eq!(faults(&good, &[sheet("a", "96", "0")], &kerf()), at("/stock/0/width", Kind::LengthZero));
    assert_eq!(faults(&good, &stock, &Saw::new().kerf(length("-1"))), at("/kerf", Kind::LengthNegative));
    assert_eq!(faults(&good, &stock, &kerf().stages(4)), at("/stages", Kind::NestStages));
    assert_eq!(faults(&good, &stock, &kerf().trim(length("24"))), at("/trim", Kind::SawTrimTooLarge));
    let mixed = [priced("a", "96", "48", "60"), sheet("b", "96", "48")];
    assert_eq!(faults(&good, &mixed, &kerf()), at("/stock/1/price", Kind::StockPriceMissing));
    let rack = [sheet("a", "96", "48"), priced("b", "96", "48", "1").offcut(true)];
    assert_eq!(faults(&good, &rack, &kerf()), at("/stock/0/price", Kind::StockPriceMissing));
    assert_eq!(faults(&[part("p", "1", "1").count(1_000_001)], &stock, &kerf()), at("/parts", Kind::TooMany));
    let rack: Vec<Sheet> = (0..1_001).map(|_| sheet("a", "96", "48")).collect();
    assert_eq!(faults(&good, &rack, &kerf()), at("/stock", Kind::TooMany));
    assert_eq!(faults(&good, &[priced("a", "96", "48", "-1")], &kerf()), at("/stock/0/price", Kind::MoneyNegative));
}

#[test]
fn efforts_are_words_or_a_number() {
    let read = |text: &str| serde_json::from_str::<Effort>(text).unwrap();
    assert_eq!(
        (read("\"quick\""), read("\"thorough\""), read("5000")),
        (Effort::Quick, Effort::Thorough, Effort::Steps(5000))
    );
    assert_eq!(serde_json::to_string(&Effort::Steps(7)).unwrap(), "7");
    assert_eq!(serde_json::to_string(&Effort::Standard).unwrap(), "\"standard\"");
}

#[test]
fn a_long_run_of_strips_stays_a_flat_tree() {
    let nest = quick(&[part("slat", "48", "1").count(80)], &[sheet("a", "96", "48")], &Saw::new());
    let text = serde_json::to_string(&nest).unwrap();
    assert_eq!(serde_json::from_str::<Nest>(&text).unwrap(), nest);
    assert_eq!((nest.sheet_count, nest.proven), (1, true));
}

#[test]
fn the_strip_that_needs_a_setting_of_its_own_comes_last() {
    // Three strips fill the sheet: with the odd one last the fence is set once.
    let strips =
        [("20", 1), ("16", 2)].map(|(width, count)| part("strip", "96", width).count(count).grain(Grain::Length));
    let nest = quick(&strips, &[sheet("a", "96", "52")], &Saw::new());
    let settings: Vec<Length> = nest.sheets[0]
        .cuts
        .walk(length("96"), length("52"))
        .filter_map(|piece| if let Tree::Cut(cut) = piece.tree { Some(cut.at) } else { None })
        .collect();
    assert_eq!(settings, [length("16"), length("16")]);
}

#[test]
fn of_equal_costs_the_one_with_the_larger_offcut_is_taken() {
    // A lid in the corner of a sheet: a crosscut first leaves 76 by 48, a rip first 96 by 32 and no more.
    let saw = Saw::new().keep(length("12"), length("12"));
    let nest = quick(&[part("lid", "20", "16").grain(Grain::Length)], &[sheet("a", "96", "48")], &saw);
    let largest = nest.sheets[0].offcuts.iter().map(|offcut| (offcut.length, offcut.width)).max();
    assert_eq!(largest, Some((length("76"), length("48"))));
}
