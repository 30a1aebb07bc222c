//! Calls that need no boat: what they may hold, and every fault at once.

use crate::error::Kind;
use crate::job::NestCall;
use crate::length::{Length, Unit};
use crate::nest::{Effort, Grain, Nest, Part, Rectangle, nest};
use crate::stock::{Saw, SawLine, Sheet, SheetGrain};
use serde_json::{Value, json};

fn full() -> Value {
    json!({
        "parts": [
            { "label": "side", "length": "94 1/2", "width": 16, "count": 2, "grain": "length", "value": null, "boat": "hull 7",
              "inside": [{ "x": 0, "y": 0, "length": "1 ft", "width": 3 }] },
            { "label": "lid", "length": "600 mm", "width": 12.5 }
        ],
        "stock": [
            { "label": "ply", "length": 96, "width": 48, "count": null, "price": 62.5, "thickness": "3/4", "treatment": "copper",
              "measured": { "length": 96, "width": 47.875 } },
            { "label": "rest", "length": 40, "width": 30, "count": 1, "grain": "none", "offcut": true }
        ],
        "kerf": "1/8", "trim": 0.25, "stages": 3, "first": "length", "keep": [24, "1 ft"], "effort": 20000, "unit": "in"
    })
}

fn inch(text: &str) -> Length {
    Length::read(text, Unit::Inch).unwrap().length
}

#[test]
fn a_call_is_what_rust_is_asked() {
    let call = NestCall::from_json(&full().to_string()).unwrap();
    let side = Part::new("side", inch("94.5"), inch("16")).count(2).grain(Grain::Length).boat("hull 7");
    let side = side.inside(vec![Rectangle::new(inch("0"), inch("0"), inch("12"), inch("3"))]);
    let lid = Part::new("lid", inch("600 mm"), inch("12.5"));
    let ply = Sheet::new("ply", inch("96"), inch("48")).price("62.50".parse().unwrap()).thickness(inch("3/4"));
    let ply = ply.treatment(crate::stock::Treatment::Copper).measured(inch("96"), inch("47.875"));
    let rest = Sheet::new("rest", inch("40"), inch("30")).count(1).grain(SheetGrain::None).offcut(true);
    let saw =
        Saw::new().kerf(inch("1/8")).trim(inch("1/4")).stages(3).first(SawLine::Length).keep(inch("24"), inch("12"));
    assert_eq!((&call.parts, &call.stock, &call.saw), (&vec![side, lid], &vec![ply, rest], &saw));
    assert_eq!((call.effort, call.unit), (Effort::Steps(20_000), Unit::Inch));
    let answer = call.nest().unwrap();
    assert_eq!(answer, nest(&call.parts, &call.stock, &saw, call.effort).unwrap());
    let written = answer.to_json(Unit::Inch);
    assert_eq!(Nest::from_json(&written, Unit::Inch).unwrap(), answer);
    assert!(Nest::from_json("{}", Unit::Inch).unwrap_err().message().starts_with("This is not a nest: "));
    let read: Value = serde_json::from_str(&written).unwrap();
    let sheets = read["sheets"].as_array().unwrap().iter();
    let placements: Vec<&Value> = sheets.flat_map(|sheet| sheet["placements"].as_array().unwrap()).collect();
    let sides = placements.iter().filter(|placement| placement["part"] == "side" && placement["length"] == json!(94.5));
    assert_eq!((placements.len(), sides.count()), (3, 2));
    assert_eq!((&read["cost"], &read["cost_in"]), (&json!(62.5), &json!("money")));
}

#[test]
fn what_is_left_out_has_its_default() {
    let call =
        NestCall::from_json(r#"{"parts": [], "stock": [], "effort": null, "unit": null, "keep": null}"#).unwrap();
    assert_eq!(call, NestCall::new(Vec::new(), Vec::new()));
    let metric = json!({
        "unit": "mm", "effort": "thorough", "stock": [],
        "parts": [{ "label": "a", "length": 25.4, "width": "1 in" }]
    });
    let call = NestCall::from_value(&metric).unwrap();
    assert_eq!((call.parts[0].length, call.parts[0].width, call.parts[0].count), (inch("1"), inch("1"), 1));
    assert_eq!((call.effort, call.unit), (Effort::Thorough, Unit::Millimetre));
    // What a message says, it says in the call's unit.
    let unplaced = call.nest().unwrap().unplaced;
    assert_eq!((unplaced[0].count, unplaced[0].why.as_str()), (1, "no sheets in stock"));
}

fn faults(changes: &[(&str, Value)]) -> Vec<(String, Kind)> {
    let mut call = full();
    for (pointer, value) in changes {
        super::set(&mut call, pointer, value.clone());
    }
    let error = NestCall::from_json(&call.to_string()).unwrap_err();
    error.faults().map(|fault| (fault.pointer.clone(), fault.kind)).collect()
}

#[test]
fn every_fault_is_told_at_its_place() {
    let told = faults(&[
        ("/parts/0/lenght", json!(1)),
        ("/parts/0/length", json!("12 furlongs")),
        ("/parts/0/inside/0/y", json!("high")),
        ("/parts/1/width", json!(0)),
        ("/parts/2", json!({ "label": "c", "length": 1, "width": 1, "count": null })),
        ("/stock/0/price", json!("dear")),
        ("/stock/1/width", json!(-30)),
        ("/kerf", json!(-0.125)),
        ("/stages", json!(4)),
        ("/first", json!("diagonal")),
        ("/keep", json!([1])),
        ("/effort", json!("hard")),
        ("/speed", json!(1)),
    ]);
    let at = |pointer: &str, kind: Kind| (pointer.to_owned(), kind);
    assert_eq!(
        told,
        [
            at("/parts/0/length", Kind::LengthUnknownUnit),
            at("/parts/0/inside/0/y", Kind::LengthUnreadable),
            at("/parts/0/lenght", Kind::UnknownField),
            at("/parts/1/width", Kind::LengthZero),
            at("/parts/2/count", Kind::OutOfRange),
            at("/stock/0/price", Kind::MoneyUnreadable),
            at("/stock/1/width", Kind::LengthNegative),
            at("/kerf", Kind::LengthNegative),
            at("/stages", Kind::NestStages),
            at("/first", Kind::UnknownWord),
            at("/keep", Kind::WrongType),
            at("/effort", Kind::UnknownWord),
            at("/speed", Kind::UnknownField),
        ]
    );
}

/// The second sheet of those that could be read is the third of those that were given.
#[test]
fn places_are_those_of_the_document() {
    let unreadable = json!({ "label": "x", "length": "?", "width": 1 });
    let unpriced = json!({ "label": "y", "length": 96, "width": 48 });
    let told = faults(&[("/stock/1", unreadable), ("/stock/2", unpriced)]);
    let expected = [("/stock/1/length", Kind::LengthUnreadable), ("/stock/2/price", Kind::StockPriceMissing)];
    assert_eq!(told, expected.map(|(pointer, kind)| (pointer.to_owned(), kind)));
}

#[test]
fn messages_name_the_call() {
    let refused = |text: &str| NestCall::from_json(text).unwrap_err().to_string();
    assert_eq!(
        refused(r#"{"parts": [{"lable": "a", "length": true, "width": 2}], "stock": [], "effort": 1.5, "kerf": -1}"#),
        "/parts/0/lable: unknown field. Did you mean \"label\"?\n\
         /parts/0/length: true is no length. A length is a number in the call's unit, or a text such as 94-1/2, \
         7' 10-1/2\" or 2400 mm.\n\
         /effort: 1.5 is no number of steps. It is \"quick\", \"standard\" or \"thorough\", or a number of steps.\n\
         /kerf: -1 in is below zero. Zero or more is accepted."
    );
    assert_eq!(refused("[]"), "a list is no object. An object stands in braces.");
    assert_eq!(
        refused("{"),
        "Line 1, column 1: EOF while parsing an object. A call is a JSON object of the function's arguments."
    );
    assert_eq!(
        refused("{}"),
        "/parts: \"parts\" is required. It has no default.\n/stock: \"stock\" is required. It has no default."
    );
}
