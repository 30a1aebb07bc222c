//! Continuous beams of the handbook (`beam_cases.csv`, every row): rows of standing VERIFIED are from a table of
//! equal spans (Civil Engineering Formulas, table 2.1) and from beam formulas after AWC Design Aid 6; the others were
//! derived by the three-moment equation in exact fractions and checked with beam elements. Stiffness is 1.
//!
//! Fractions must be met to 1e-9, decimals to 1e-5 or to half of their last digit.

use deck_core::span::{Beam, BeamLoad, BeamProblem};

/// A line of loads, then its rows. Spans count from 1; places are told from the left end of the span.
const CASES: &str = include_str!("beam_cases.txt");

/// Reads `spans 16-24, w 0,1, 50 at 9.6 of 2, overhang 4`.
fn solved(line: &str) -> Beam {
    let numbers = |text: &str, mark: char| -> Vec<f64> { text.split(mark).map(|n| n.parse().unwrap()).collect() };
    let mut fields = line.split(", ");
    let spans = numbers(fields.next().unwrap().strip_prefix("spans ").unwrap(), '-');
    let uniform = numbers(fields.next().unwrap().strip_prefix("w ").unwrap(), ',');
    let mut loads = Vec::new();
    let mut overhang = 0.0;
    for field in fields {
        if let Some(length) = field.strip_prefix("overhang ") {
            overhang = length.parse().unwrap();
            loads.push(BeamLoad::between(0.0, overhang, 1.0));
        } else {
            let words: Vec<&str> = field.split(' ').collect();
            let span: usize = words[4].parse().unwrap();
            let start: f64 = spans[..span - 1].iter().sum();
            loads.push(BeamLoad::point(start + words[2].parse::<f64>().unwrap(), words[0].parse().unwrap()));
        }
    }
    let mut start = overhang;
    for (span, w) in spans.iter().zip(uniform) {
        if w != 0.0 {
            loads.push(BeamLoad::between(start, start + span, w));
        }
        start += span;
    }
    BeamProblem::new(&spans).overhangs([overhang, 0.0]).solve(&loads).unwrap()
}

fn answer(beam: &Beam, quantity: &str) -> f64 {
    let (what, index) = quantity.rsplit_once(' ').unwrap();
    let index = index.parse::<usize>().unwrap() - 1;
    match what {
        "reaction" => beam.supports[index].reaction,
        "moment" => beam.supports[index].moment,
        "sagging" => beam.spans[index].moment.most.value,
        "deflection" => beam.spans[index].deflection.largest().value,
        "place" => beam.spans[index].deflection.largest().at - beam.spans[index].from,
        other => panic!("{other}"),
    }
}

/// The value, and how far from it an answer may lie.
fn expected(text: &str) -> (f64, f64) {
    if let Some((a, b)) = text.split_once('/') {
        let value = a.parse::<f64>().unwrap() / b.parse::<f64>().unwrap();
        return (value, 1e-9 * value.abs());
    }
    let value: f64 = text.parse().unwrap();
    let digits = text.split_once('.').map_or(0, |(_, digits)| digits.len());
    let half = 0.500_001 * 0.1_f64.powi(i32::try_from(digits).unwrap());
    (value, if digits == 0 { 1e-9 } else { half.max(1e-5 * value.abs()) })
}

#[test]
fn every_row() {
    let mut beam = None;
    let mut rows = 0;
    for line in CASES.lines() {
        let Some(row) = line.strip_prefix("  ") else {
            beam = Some((line, solved(line)));
            continue;
        };
        let (case, beam) = beam.as_ref().unwrap();
        let (quantity, text) = row.split_once(" = ").unwrap();
        let (value, slack) = expected(text);
        let ours = answer(beam, quantity);
        assert!((ours - value).abs() <= slack, "{case}: {quantity} is {ours}, not {text}");
        rows += 1;
    }
    assert_eq!(rows, 177);
}
