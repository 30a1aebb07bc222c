//! Calls for one sheet's best filling: what they may hold, and every fault at once.

use crate::error::Kind;
use crate::job::FillCall;
use crate::length::{Length, Unit};
use crate::nest::{Effort, Fill, FillPart, Grain, fill};
use crate::stock::{Saw, SawLine, Sheet};
use serde_json::{Value, json};

fn full() -> Value {
    json!({
        "sheet": { "label": "rest", "length": 60, "width": "3 ft", "offcut": true, "count": 4 },
        "parts": [
            { "label": "lid", "length": "24 1/2", "width": 16, "count": 2, "grain": "length", "value": 9.5, "boat": "hull 7" },
            { "label": "step", "length": "400 mm", "width": 10, "count": null, "value": "3" }
        ],
        "kerf": "1/8", "trim": 0.25, "stages": 3, "first": "width", "keep": [12, "6 in"], "effort": 200_000, "unit": "in"
    })
}

fn inch(text: &str) -> Length {
    Length::read(text, Unit::Inch).unwrap().length
}

#[test]
fn a_call_is_what_rust_is_asked() {
    let call = FillCall::from_json(&full().to_string()).unwrap();
    let lid = FillPart::new("lid", inch("24.5"), inch("16")).count(2).grain(Grain::Length).boat("hull 7");
    let step = FillPart::new("step", inch("400 mm"), inch("10")).unlimited().value("3".parse().unwrap());
    let parts = vec![lid.value("9.5".parse().unwrap()), step];
    let rest = Sheet::new("rest", inch("60"), inch("36")).count(4).offcut(true);
    let saw =
        Saw::new().kerf(inch("1/8")).trim(inch("1/4")).stages(3).first(SawLine::Width).keep(inch("12"), inch("6"));
    assert_eq!((&call.sheet, &call.parts, &call.saw), (&rest, &parts, &saw));
    assert_eq!((call.effort, call.unit), (Effort::Steps(200_000), Unit::Inch));
    let answer = call.fill().unwrap();
    assert_eq!(answer, fill(&rest, &parts, &saw, call.effort).unwrap());
    let written = answer.to_json(Unit::Inch);
    assert_eq!(Fill::from_json(&written, Unit::Inch).unwrap(), answer);
    assert!(Fill::from_json("{}", Unit::Inch).unwrap_err().message().starts_with("This is not a fill: "));
    let read: Value = serde_json::from_str(&written).unwrap();
    let keys: Vec<&str> = read.as_object().unwrap().keys().map(String::as_str).collect();
    for key in ["value", "bound", "proven", "placements", "cuts", "offcuts"] {
        assert!(keys.contains(&key), "{keys:?}");
    }
    assert_eq!(read["value"].as_f64(), Some(answer.value.number(Unit::Inch)));
    assert_eq!(read["value_in"], json!("value"));
}

#[test]
fn what_is_left_out_has_its_default() {
    let text =
        r#"{"parts": [{"label": "a", "length": 2, "width": 1}], "sheet": {"label": "s", "length": 4, "width": 3}}"#;
    let call = FillCall::from_json(text).unwrap();
    let part = FillPart::new("a", inch("2"), inch("1"));
    assert_eq!(call, FillCall::new(Sheet::new("s", inch("4"), inch("3")), vec![part]));
    assert_eq!(call.parts[0].count, Some(1));
    assert!(call.fill().unwrap().to_json(Unit::Inch).starts_with("{\n  \"value\": 2,\n  \"bound\": 2,"));
}

fn faults(changes: &[(&str, Value)]) -> Vec<(String, Kind)> {
    let mut call = full();
    for (pointer, value) in changes {
        super::set(&mut call, pointer, value.clone());
    }
    let error = FillCall::from_json(&call.to_string()).unwrap_err();
    error.faults().map(|fault| (fault.pointer.clone(), fault.kind)).collect()
}

#[test]
fn every_fault_is_told_at_its_place() {
    let told = faults(&[
        ("/sheet/width", json!(-30)),
        ("/parts/0/lenght", json!(1)),
        ("/parts/0/length", json!("12 furlongs")),
        ("/parts/1/value", Value::Null),
        ("/parts/2", json!({ "label": "c", "length": 1, "width": 1, "value": 1, "count": -1 })),
        ("/parts/3", json!({ "label": "d", "length": 1, "width": 1, "value": -1 })),
        ("/stages", json!(4)),
        ("/effort", json!("hard")),
        ("/speed", json!(1)),
    ]);
    let mut told: Vec<(&str, Kind)> = told.iter().map(|(pointer, kind)| (pointer.as_str(), *kind)).collect();
    told.sort_unstable_by_key(|fault| fault.0);
    assert_eq!(
        told,
        [
            ("/effort", Kind::UnknownWord),
            ("/parts/0/lenght", Kind::UnknownField),
            ("/parts/0/length", Kind::LengthUnknownUnit),
            ("/parts/1/value", Kind::NestValueMissing),
            ("/parts/2/count", Kind::OutOfRange),
            ("/parts/3/value", Kind::MoneyNegative),
            ("/sheet/width", Kind::LengthNegative),
            ("/speed", Kind::UnknownField),
            ("/stages", Kind::NestStages),
        ]
    );
}

#[test]
fn messages_say_what_would_do() {
    let refused = |text: &str| FillCall::from_json(text).unwrap_err().to_string();
    assert_eq!(
        refused("{}"),
        "/sheet: \"sheet\" is required. It has no default.\n/parts: \"parts\" is required. It has no default."
    );
    let sheet = r#""sheet": {"label": "s", "length": 4, "width": 3}"#;
    let lid = r#"{"label": "lid", "length": 2, "width": 1"#;
    assert_eq!(
        refused(&format!("{{{sheet}, \"parts\": [{lid}, \"value\": 3}}, {lid}}}, {lid}}}], \"stage\": 2}}")),
        "/parts/1/value: \"lid\" has no value, but other parts have. Values are given for all parts or for none.\n\
         /stage: unknown field. Did you mean \"stages\"?"
    );
}
