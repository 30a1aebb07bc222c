//! The messages, word for word: read them as the person who made the slip.

use super::{refused, with};
use crate::job::Job;
use serde_json::{Value, json};

fn message(changes: &[(&str, Value)]) -> String {
    refused(&with(changes)).to_string()
}

#[test]
fn messages_are_sentences_for_a_person_with_a_tape() {
    assert_eq!(
        message(&[("/shop/feet", json!(true)), ("/frame/members/2/station", json!("31' 2\""))]),
        "/frame/members/2/station: 31' 2\" lies 11' 2\" aft of the deck's end (20' 0\"). A station lies between 0 and 20' 0\"."
    );
    assert_eq!(
        message(&[("/stock/0/lenght", json!(96))]),
        "/stock/0/lenght: unknown field. The fields here are \"label\", \"length\", \"width\", \"measured\", \"thickness\", \
         \"grain\", \"count\", \"price\", \"offcut\" and \"treatment\"."
    );
    assert_eq!(
        message(&[("/stock/0", json!({ "label": "ply", "lenght": 96, "width": 48, "thickness": "3/4" }))]),
        "/stock/0/lenght: unknown field. Did you mean \"length\"?"
    );
    assert_eq!(
        message(&[("/frame/measured_to", json!("middle"))]),
        "/frame/measured_to: \"middle\" is not known here. It is \"web\", \"fore-edge\", \"aft-edge\" or \"centre\"."
    );
    assert_eq!(
        message(&[("/schema", json!(2))]),
        "/schema: Schema 2 is newer than this version can read. This version reads \"schema\": 1."
    );
    assert_eq!(
        message(&[("/gap", json!(true))]),
        "/gap: true is no length. A length is a number in the job's unit, or a text such as 94-1/2, 7' 10-1/2\" or 2400 mm."
    );
    assert_eq!(message(&[("/gap", json!(-0.125))]), "/gap: -1/8\" is below zero. Zero or more is accepted.");
    assert_eq!(
        message(&[("/deck/outline", json!([]))]),
        "/deck/outline: The deck is given both corner by corner and by its measures. Give one of the two."
    );
    assert_eq!(
        message(&[("/openings", json!([{ "name": "fuel", "round": { "x": 238, "y": 50, "diameter": 6 } }]))]),
        "/openings/0: \"fuel\", from 235\" to 241\" aft of the bow and from 47\" to 53\" off the port edge, does not lie within \
         the deck. The deck is 240\" by 96\", less its bow corners and its notch."
    );
    assert_eq!(
        message(&[(
            "/stock/1",
            json!({ "label": "rack", "length": 96, "width": 24, "thickness": "1/2", "offcut": true })
        )]),
        "/stock/1/thickness: \"rack\" is 1/2\" thick, and \"ply\" is 3/4\": the boards would not meet flush. All sheets of a deck \
         have one thickness."
    );
    assert_eq!(
        message(&[("/saw/trim", json!(24))]),
        "/saw/trim: A trim of 24\" off both edges of \"ply\", 48\" across, leaves nothing. Something is left of each sheet."
    );
    assert_eq!(
        message(&[("/keep_clear", json!([{ "name": "gate", "from": 90, "to": 60 }]))]),
        "/keep_clear/0/to: \"gate\" ends at 60\", forward of where it starts, 90\". \"from\" is the forward end."
    );
    assert_eq!(
        message(&[("/extra_parts", json!([{ "label": "6P", "length": 20, "width": 12 }]))]),
        "/extra_parts/0/label: \"6P\" could be taken for a panel's label. A label that does not begin with a figure, such as \
         \"lid 1\"."
    );
    assert_eq!(
        Job::from_json("{\n  \"schema\": 1,\n  \"name\" \"x\"\n}").unwrap_err().to_string(),
        "Line 3, column 10: expected `:`. A job is a JSON object that follows the schema."
    );
    let too_large = message(&[("/deck/length", json!(1e300))]);
    assert_eq!(too_large, "/deck/length: 1e300 is too large. A length lies below 1 km.");
}

#[test]
fn a_fault_repeats_the_value_as_it_was_given() {
    let error =
        refused(&with(&[("/frame/measured_to", json!("middle")), ("/stock/0/count", json!(-2)), ("/gap", json!("x"))]));
    let values: Vec<&str> = error.faults().map(|fault| fault.value.as_str()).collect();
    assert_eq!(values, ["\"middle\"", "-2", "x"]);
}
