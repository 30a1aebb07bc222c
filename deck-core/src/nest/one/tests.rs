//! Small cases that can be verified by hand.

use super::super::effort::Steps;
use super::super::problem::Problem;
use super::super::{FillPart, Grain};
use super::best::All;
use super::board::{Board, Kind, Limits};
use super::standing::Standing;
use super::*;
use crate::error::Kind as Fault;
use crate::length::{JsonForm, Length, Unit, with_json_form};
use crate::stock::SawLine;
use serde_json::json;

fn length(text: &str) -> Length {
    Length::read(text, Unit::Inch).unwrap().length
}

fn part(label: &str, along: &str, across: &str) -> FillPart {
    FillPart::new(label, length(along), length(across))
}

fn sheet(along: &str, across: &str) -> Sheet {
    Sheet::new("sheet", length(along), length(across))
}

fn kerf() -> Saw {
    Saw::new().kerf(length("1/8"))
}

fn standard(sheet: &Sheet, parts: &[FillPart], saw: &Saw) -> Fill {
    fill(sheet, parts, saw, Effort::Standard).unwrap()
}

#[test]
fn the_json_is_the_contracts() {
    let parts = [
        part("side", "60", "20").grain(Grain::Length).value("30".parse().unwrap()).boat("hull 7"),
        part("lid", "16", "24").count(9).value("10.5".parse().unwrap()),
    ];
    let fill = standard(&sheet("96", "20"), &parts, &kerf().keep(length("4"), length("4")));
    let inches = with_json_form(JsonForm::Number(Unit::Inch), || serde_json::to_value(&fill).unwrap());
    let expected = json!({
        "value": 40.5, "bound": 40.5, "proven": true, "value_in": "value",
        "placements": [
            {"part": "side", "x": 0, "y": 0, "length": 60, "width": 20, "turned": false, "boat": "hull 7"},
            {"part": "lid", "x": 60.125, "y": 0, "length": 24, "width": 16, "turned": true},
        ],
        "cuts": {"cut": "width", "at": 60, "kerf": 0.125, "children": [{"part": "side"},
            {"cut": "width", "at": 24, "kerf": 0.125, "children": [
                {"cut": "length", "at": 16, "kerf": 0.125, "children": [{"part": "lid"}, {"waste": true}]},
                {"offcut": true}]}]},
        "offcuts": [{"x": 84.25, "y": 0, "length": 11.75, "width": 20}],
    });
    assert_eq!(inches, expected);
}

#[test]
fn without_values_area_counts() {
    let parts = [part("a", "10", "10").unlimited(), part("b", "7", "20").count(1)];
    let fill = standard(&sheet("20", "20"), &parts, &Saw::new());
    assert_eq!((fill.value.to_string().as_str(), fill.value_in, fill.proven), ("400 in²", WorthIn::Area, true));
    let fill = standard(&sheet("20", "20"), &parts, &kerf());
    // With a kerf no two tens stand side by side.
    assert_eq!((fill.value.to_string().as_str(), fill.proven), ("240 in²", true));
}

#[test]
fn counts_are_kept_and_equal_sizes_may_have_two_values() {
    let dear = part("dear", "10", "10").value("9".parse().unwrap());
    let cheap = part("cheap", "10", "10").unlimited().value("2".parse().unwrap());
    let fill = standard(&sheet("20", "20"), &[cheap, dear], &Saw::new());
    let count = |label: &str| fill.placements.iter().filter(|placement| placement.part == label).count();
    assert_eq!((count("dear"), count("cheap"), fill.value.to_string().as_str()), (1, 3, "15.00"));
    assert!(fill.proven);
}

#[test]
fn grain_and_stages_are_kept() {
    let long = part("long", "40", "10").unlimited();
    let value =
        |part: &FillPart, saw: &Saw| standard(&sheet("20", "40"), std::slice::from_ref(part), saw).placements.len();
    assert_eq!(value(&long, &Saw::new()), 2);
    assert_eq!(value(&long.clone().grain(Grain::Length), &Saw::new()), 0);
    assert_eq!(value(&long.clone().grain(Grain::Width), &Saw::new()), 2);
    // Four quarters take two stages; with one, two strips hold one each.
    let quarter = part("quarter", "10", "20").unlimited().grain(Grain::Length);
    assert_eq!(value(&quarter, &Saw::new().stages(2)), 4);
    assert_eq!(value(&quarter, &Saw::new().stages(1)), 2);
    assert_eq!(value(&quarter, &Saw::new().stages(1).first(SawLine::Length)), 2);
}

#[test]
fn nothing_fits() {
    let fill = standard(&sheet("20", "20"), &[part("long", "40", "10")], &kerf());
    assert_eq!((fill.placements.len(), fill.proven, fill.cuts), (0, true, super::super::Tree::waste()));
    assert_eq!(standard(&sheet("20", "20"), &[], &kerf()).value.to_string(), "0 in²");
}

#[test]
fn sizes_that_share_no_measure_are_exact() {
    let odd = |nanometres: i64| Length::from_nanometres(nanometres);
    let parts = [
        FillPart::new("a", odd(812_345_679), odd(500_000_003)),
        FillPart::new("b", odd(412_345_671), odd(719_200_001)),
    ];
    let parts = parts.map(|part| part.grain(Grain::Length).unlimited());
    let sheet = Sheet::new("s", odd(2_440_000_000), odd(1_220_000_000));
    let fill = standard(&sheet, &parts, &Saw::new().kerf(odd(3_175_000)));
    let area: i128 = fill.placements.iter().map(|p| crate::Area::of(p.length, p.width).square_nanometres()).sum();
    assert_eq!((fill.value, fill.proven), (Worth::Area(crate::Area::from_square_nanometres(area)), true));
    assert!(fill.placements.len() >= 5);
}

#[test]
fn mistakes_are_told_where_they_are() {
    let faults = |sheet: &Sheet, parts: &[FillPart], saw: &Saw| -> Vec<(String, Fault)> {
        let error = fill(sheet, parts, saw, Effort::Quick).unwrap_err();
        error.faults().map(|fault| (fault.pointer.clone(), fault.kind)).collect()
    };
    let at = |pointer: &str, kind: Fault| vec![(pointer.to_owned(), kind)];
    let (good, free) = (sheet("96", "48"), part("a", "10", "10"));
    let valued = part("b", "10", "10").value("3".parse().unwrap());
    assert_eq!(
        faults(&good, &[valued.clone(), free.clone(), free.clone()], &kerf()),
        at("/parts/1/value", Fault::NestValueMissing)
    );
    let owed = part("c", "10", "10").value("-3".parse().unwrap());
    assert_eq!(faults(&good, &[valued, owed], &kerf()), at("/parts/1/value", Fault::MoneyNegative));
    assert_eq!(faults(&good, &[part("d", "0", "10")], &kerf()), at("/parts/0/length", Fault::LengthZero));
    assert_eq!(
        faults(&sheet("96", "-1"), std::slice::from_ref(&free), &kerf()),
        at("/sheet/width", Fault::LengthNegative)
    );
    assert_eq!(faults(&good, std::slice::from_ref(&free), &kerf().stages(4)), at("/stages", Fault::NestStages));
    assert_eq!(faults(&good, &[free], &kerf().trim(length("24"))), at("/trim", Fault::SawTrimTooLarge));
    let dust = part("dust", "1/64", "1/64").unlimited();
    assert_eq!(faults(&good, &[dust], &kerf()), at("/parts", Fault::TooMany));
}

#[test]
fn a_part_is_read_with_its_count_and_without() {
    let read = |text: &str| serde_json::from_str::<FillPart>(text).unwrap().count;
    assert_eq!(read(r#"{"label": "a", "length": "1 in", "width": "1 in"}"#), Some(1));
    assert_eq!(read(r#"{"label": "a", "length": "1 in", "width": "1 in", "count": null}"#), None);
    assert_eq!(read(r#"{"label": "a", "length": "1 in", "width": "1 in", "count": 4}"#), Some(4));
}

fn kind(length: i64, width: i64, count: u32) -> Kind {
    Kind { size: (length, width), turns: false, count }
}

#[test]
fn any_values_can_be_asked_for() {
    let board = Board::new((20, 10), &[kind(10, 5, u32::MAX), kind(20, 5, 1)], Limits::NONE);
    let best = |values: [i64; 2]| {
        let filled = board.best(&values, &Standing::default(), &mut Steps::new(1_000_000, u64::MAX));
        (filled.value, filled.value == filled.bound, filled.parts)
    };
    assert_eq!(best([1, 1]), (4, true, vec![(0, 4)]));
    assert_eq!(best([1, 3]), (5, true, vec![(0, 2), (1, 1)]));
    assert_eq!(best([0, 1 << 50]), (1 << 50, true, vec![(1, 1)]));
    assert_eq!(best([0, 0]), (0, true, vec![]));
}

#[test]
fn all_fit_or_they_do_not() {
    let all =
        |kinds: &[Kind]| match Board::new((10, 10), kinds, Limits::NONE).all(&mut Steps::new(10_000_000, u64::MAX)) {
            All::Fit(filled) => Some(filled.parts.iter().map(|part| part.1).sum()),
            All::DoNotFit => None,
            All::Unknown => panic!("so few parts"),
        };
    assert_eq!(all(&[kind(5, 5, 3), kind(2, 5, 2)]), Some(5));
    assert_eq!(all(&[kind(5, 5, 3), kind(2, 5, 3)]), None);
    assert_eq!(all(&[kind(11, 1, 1)]), None);
    // Four around a hole fit, but no saw can cut them edge to edge.
    assert_eq!(all(&[kind(6, 4, 2), kind(4, 6, 2)]), None);
}

#[test]
fn parts_of_an_order_fit_a_sheet_or_do_not() {
    let plain = [("wide", 60, 30, 3), ("small", 30, 20, 4)].map(|(label, long, across, count)| {
        super::super::Part::new(label, Length::inches(long), Length::inches(across)).count(count)
    });
    let stock = [sheet("96", "48"), sheet("20", "48")];
    let problem = Problem::new(&plain, &stock, &kerf());
    let fits =
        |rack: usize, copies: &[u32]| super::fits::fits(&problem, rack, copies, &mut Steps::new(1_000_000, u64::MAX));
    let class =
        |length: i64| problem.classes.iter().position(|class| class.size.0 > Length::inches(length).nanometres());
    let copies = |wide: u32, small: u32| {
        let mut copies = vec![0; 2];
        copies[class(59).unwrap()] = wide;
        copies[1 - class(59).unwrap()] = small;
        copies
    };
    let Fits::Yes(pattern) = fits(0, &copies(1, 2)) else { panic!("they fit") };
    assert_eq!((pattern.rack, pattern.parts.iter().map(|part| part.1).sum::<u32>()), (0, 3));
    assert_eq!(pattern.area, i128::from(1800 + 1200) * i128::from(Length::inches(1).nanometres()).pow(2));
    assert_eq!(fits(0, &copies(2, 1)), Fits::No);
    assert_eq!(fits(1, &copies(1, 0)), Fits::No);
    assert!(matches!(fits(1, &copies(0, 1)), Fits::Yes(_)));
    assert!(matches!(fits(1, &copies(0, 0)), Fits::Yes(_)));
}
