//! Beams and plates against a general-purpose finite element library. `pynite.py` tells how the table was made; the
//! cases below are the same.

use deck_core::span::{Beam, BeamLoad, BeamProblem, End, Plate, PlateLoad, PlateProblem, PlateSupport, Rigidity};

const TABLE: &str = include_str!("pynite.csv");

/// Beams agree to the digits that were written.
const BEAM_SLACK: f64 = 1e-7;
/// Plates agree to this part of the largest figure of their case: two element types, extrapolated and not.
const PLATE_SLACK: f64 = 3e-3;

/// The rows of a case: what, place or index, value.
fn rows(case: &str) -> Vec<(String, Vec<f64>, f64)> {
    let mine = TABLE.lines().filter_map(|line| line.strip_prefix(case)?.strip_prefix(','));
    let rows: Vec<_> = mine
        .map(|row| {
            let (quantity, value) = row.rsplit_once(',').unwrap();
            let mut words = quantity.split(' ');
            let what = words.next().unwrap().to_owned();
            (what, words.map(|word| word.parse().unwrap()).collect(), value.parse().unwrap())
        })
        .collect();
    assert!(rows.len() >= 3, "{case}");
    rows
}

fn index(number: f64) -> usize {
    format!("{number}").parse().unwrap()
}

fn compare_beam(case: &str, beam: &Beam) {
    let rows = rows(case);
    for what in ["reaction", "moment", "deflection"] {
        let mine = rows.iter().filter(|row| row.0 == what);
        let largest = mine.clone().map(|row| row.2.abs()).fold(0.0, f64::max);
        for (_, at, value) in mine {
            let ours = match what {
                "reaction" => beam.supports[index(at[0])].reaction,
                "moment" => beam.moment_at(at[0]).unwrap(),
                _ => beam.deflection_at(at[0]).unwrap(),
            };
            assert!((ours - value).abs() <= BEAM_SLACK * largest, "{case}, {what} {at:?}: {ours}, there {value}");
        }
    }
}

#[test]
fn beams() {
    let uneven = BeamProblem::new(&[14.0, 19.0, 16.5, 22.0]).overhangs([5.0, 7.0]).stiffness(1e5);
    let points = [(50.0, 40.0), (2.0, 15.0), (80.0, 5.0)].map(|(at, force)| BeamLoad::point(at, force));
    let loads = [&[BeamLoad::uniform(1.0), BeamLoad::between(20.0, 43.0, 2.0)][..], &points].concat();
    compare_beam("uneven", &uneven.solve(&loads).unwrap());

    let fixed = BeamProblem::new(&[12.0, 20.0, 9.0]).stiffness(1e5).ends([End::Fixed; 2]);
    let loads = [BeamLoad::uniform(0.5), BeamLoad::patch(5.0, 4.0, 16.0), BeamLoad::point(25.0, 30.0)];
    compare_beam("fixed", &fixed.solve(&loads).unwrap());

    let half = BeamProblem::new(&[18.0, 11.0]).overhangs([0.0, 6.0]).stiffness(1e5).ends([End::Fixed, End::Simple]);
    let loads = [BeamLoad::between(20.0, 35.0, 1.5), BeamLoad::point(6.0, 22.0), BeamLoad::point(34.0, 9.0)];
    compare_beam("half fixed", &half.solve(&loads).unwrap());
}

fn compare_plate(case: &str, supports: &[PlateSupport], loads: &[PlateLoad]) {
    // As in the script: dy = dx / 0.8⁴, H = √(dx dy), dx νy = 0.3 H.
    let (dx, dy) = (12_000.0, 12_000.0 / 0.8_f64.powi(4));
    let torsion = 12_000.0 / 0.8_f64.powi(2);
    let rigidity = Rigidity::new(dx, dy, torsion).poisson([0.3 * torsion / dy, 0.3 * torsion / dx]);
    let plate: Plate = PlateProblem::new(48.0, 24.0, rigidity, supports).solve(loads).unwrap();
    let rows = rows(case);
    for what in ["reaction", "deflection"] {
        let mine = rows.iter().filter(|row| row.0 == what);
        let largest = mine.clone().map(|row| row.2.abs()).fold(0.0, f64::max);
        for (_, at, value) in mine {
            let ours = if what == "reaction" {
                plate.reactions[index(at[0])]
            } else {
                plate.at(at[0], at[1]).unwrap().deflection
            };
            assert!((ours - value).abs() <= PLATE_SLACK * largest, "{case}, {what} {at:?}: {ours}, there {value}");
        }
    }
}

#[test]
fn plates() {
    let members = [0.0, 10.0, 24.0].map(PlateSupport::along);
    let heel = |x: f64| PlateLoad::patch([x, 17.0], [4.0, 4.0], 200.0);
    compare_plate("members uniform", &members, &[PlateLoad::uniform(0.7)]);
    compare_plate("members heel", &members, &[heel(22.0)]);
    compare_plate("members edge", &members, &[heel(46.0)]);
    let inset = [4.0, 18.0].map(PlateSupport::along);
    compare_plate("overhangs", &inset, &[PlateLoad::patch([24.0, 22.0], [4.0, 4.0], 100.0)]);
    let loads = [PlateLoad::uniform(0.05), PlateLoad::point([48.0, 24.0], 4.0)];
    compare_plate("cantilever", &[PlateSupport::across(0.0).clamped()], &loads);
    let screws = [[4.0, 4.0], [44.0, 4.0], [4.0, 20.0], [44.0, 20.0]].map(PlateSupport::point);
    compare_plate("four screws", &screws, &[PlateLoad::uniform(0.2)]);
}
