//! Cases to verify by hand.

use super::{Beam, BeamLoad, BeamProblem, End, beam};
use crate::error::Kind;

fn near(ours: f64, theirs: f64) {
    assert!((ours - theirs).abs() <= 1e-9 * theirs.abs().max(1.0), "{ours} is not {theirs}");
}

#[test]
fn a_cantilever_at_each_end() {
    // A span of 10 with overhangs of 3 and 4, each with 2 at its tip.
    let loads = [BeamLoad::point(0.0, 2.0), BeamLoad::point(17.0, 2.0)];
    let beam = beam(&[10.0], &loads, [3.0, 4.0], 5.0).unwrap();
    near(beam.supports[0].moment, -6.0);
    near(beam.supports[1].moment, -8.0);
    near(beam.supports[0].reaction, 2.0 - 0.2);
    near(beam.supports[1].reaction, 2.0 + 0.2);
    // Slope at the left support: M0 L/3 + M1 L/6 over EI, upward in the span; the tip adds P a³/3.
    let slope = (6.0 * 10.0 / 3.0 + 8.0 * 10.0 / 6.0) / 5.0;
    near(beam.slope_at(3.0).unwrap(), -slope);
    near(beam.deflection_at(0.0).unwrap(), slope * 3.0 + 2.0 * 27.0 / 3.0 / 5.0);
    near(beam.overhangs[0].unwrap().deflection.most.value, beam.deflection_at(0.0).unwrap());
    near(beam.deflection_at(17.0).unwrap(), (6.0 * 10.0 / 6.0 + 8.0 * 10.0 / 3.0) / 5.0 * 4.0 + 2.0 * 64.0 / 3.0 / 5.0);
}

#[test]
fn fixed_ends() {
    let fixed = BeamProblem::new(&[12.0]).ends([End::Fixed, End::Fixed]);
    let beam = fixed.solve(&[BeamLoad::uniform(1.0)]).unwrap();
    near(beam.supports[0].moment, -12.0);
    near(beam.supports[1].moment, -12.0);
    near(beam.spans[0].moment.most.value, 6.0);
    near(beam.spans[0].deflection.most.value, 12_f64.powi(4) / 384.0);
    let propped = BeamProblem::new(&[12.0]).ends([End::Fixed, End::Simple]);
    let beam = propped.solve(&[BeamLoad::patch(6.0, 12.0, 12.0)]).unwrap();
    near(beam.supports[0].moment, -18.0);
    near(beam.supports[0].reaction, 7.5);
    near(beam.spans[0].moment.most.at, 7.5);
}

#[test]
fn loads_on_supports_bend_nothing() {
    let loads = [0.0, 16.0, 40.0].map(|at| BeamLoad::point(at, 3.0));
    let beam = beam(&[16.0, 24.0], &loads, [0.0; 2], 1.0).unwrap();
    assert!(beam.supports.iter().all(|support| support.reaction == 3.0 && support.moment == 0.0));
    assert!(beam.spans.iter().all(|span| span.deflection.largest().value == 0.0));
}

#[test]
fn a_patch_part_way_in() {
    // Simple beam of 10, force 4 over 2..4: by hand R1 = 4 · 7/10, the vertex lies where the shear has run out.
    let beam = beam(&[10.0], &[BeamLoad::patch(3.0, 2.0, 4.0)], [0.0; 2], 1.0).unwrap();
    near(beam.supports[0].reaction, 2.8);
    near(beam.spans[0].moment.most.at, 2.0 + 1.4);
    near(beam.spans[0].moment.most.value, 2.8 * 3.4 - 2.0 * 1.4 * 1.4 / 2.0);
    near(beam.shear_at(1.0).unwrap(), 2.8);
    near(beam.shear_at(9.0).unwrap(), -1.2);
    assert!(beam.moment_at(10.1).is_none() && beam.moment_at(-0.1).is_none() && beam.moment_at(f64::NAN).is_none());
}

/// The worst of a pattern, by trying all.
fn tried(problem: &BeamProblem, dead: &[BeamLoad], live: &[BeamLoad], value: &dyn Fn(&Beam) -> f64) -> f64 {
    let tries = (0_u32..1 << live.len()).map(|mask| {
        let chosen = live.iter().enumerate().filter(|(index, _)| mask >> index & 1 == 1).map(|(_, load)| *load);
        let loads: Vec<BeamLoad> = dead.iter().copied().chain(chosen).collect();
        value(&problem.solve(&loads).unwrap())
    });
    tries.fold(f64::MIN, f64::max)
}

#[test]
fn the_worst_pattern_is_the_worst_of_all() {
    let problem = BeamProblem::new(&[16.0, 24.0, 13.0, 18.0]).overhangs([5.0, 7.0]).stiffness(3.0);
    let dead = [BeamLoad::uniform(0.3), BeamLoad::point(50.0, 2.0)];
    let edges = [0.0, 5.0, 21.0, 45.0, 58.0, 76.0, 83.0];
    let live: Vec<BeamLoad> = edges.windows(2).map(|pair| BeamLoad::between(pair[0], pair[1], 1.0)).collect();
    let worst = problem.worst(&dead, &live).unwrap();
    for (index, support) in worst.supports.iter().enumerate() {
        near(support.reaction.most.value, tried(&problem, &dead, &live, &|beam| beam.supports[index].reaction));
        near(-support.reaction.least.value, tried(&problem, &dead, &live, &|beam| -beam.supports[index].reaction));
        near(-support.moment.least.value, tried(&problem, &dead, &live, &|beam| -beam.supports[index].moment));
    }
    for (index, span) in worst.spans.iter().enumerate() {
        near(span.moment.most.value, tried(&problem, &dead, &live, &|beam| beam.spans[index].moment.most.value));
        near(-span.moment.least.value, tried(&problem, &dead, &live, &|beam| -beam.spans[index].moment.least.value));
        near(
            span.deflection.most.value,
            tried(&problem, &dead, &live, &|beam| beam.spans[index].deflection.most.value),
        );
        near(-span.deflection.least.value, tried(&problem, &dead, &live, &|b| -b.spans[index].deflection.least.value));
        near(span.shear.most.value, tried(&problem, &dead, &live, &|beam| beam.spans[index].shear.most.value));
    }
    for (index, overhang) in worst.overhangs.iter().enumerate() {
        let most = tried(&problem, &dead, &live, &|beam| beam.overhangs[index].unwrap().deflection.most.value);
        near(overhang.as_ref().unwrap().deflection.most.value, most);
    }
}

#[test]
fn faults_name_their_field() {
    let fault = |problem: &BeamProblem, loads: &[BeamLoad]| {
        let error = problem.solve(loads).unwrap_err();
        (error.first().kind, error.pointer().to_owned())
    };
    let sound = BeamProblem::new(&[16.0, 16.0]);
    assert_eq!(fault(&BeamProblem::new(&[]), &[]), (Kind::EmptyList, "/spans".into()));
    assert_eq!(fault(&BeamProblem::new(&[16.0, 0.0]), &[]), (Kind::OutOfRange, "/spans/1".into()));
    assert_eq!(fault(&BeamProblem::new(&[f64::NAN]), &[]), (Kind::OutOfRange, "/spans/0".into()));
    assert_eq!(fault(&sound.clone().overhangs([0.0, -1.0]), &[]), (Kind::OutOfRange, "/overhangs/1".into()));
    assert_eq!(fault(&sound.clone().stiffness(-2.0), &[]), (Kind::OutOfRange, "/stiffness".into()));
    let fixed = sound.clone().overhangs([3.0, 0.0]).ends([End::Fixed, End::Simple]);
    assert_eq!(fault(&fixed, &[]), (Kind::Conflict, "/overhangs/0".into()));
    let good = BeamLoad::uniform(1.0);
    assert_eq!(fault(&sound, &[good, BeamLoad::point(33.0, 1.0)]), (Kind::OutOfRange, "/loads/1/at".into()));
    assert_eq!(fault(&sound, &[BeamLoad::patch(1.0, 4.0, 1.0)]), (Kind::OutOfRange, "/loads/0/at".into()));
    assert_eq!(fault(&sound, &[BeamLoad::patch(8.0, -4.0, 1.0)]), (Kind::OutOfRange, "/loads/0/size".into()));
    assert_eq!(fault(&sound, &[BeamLoad::uniform(f64::INFINITY)]), (Kind::OutOfRange, "/loads/0/value".into()));
    let lost = BeamLoad { at: None, ..BeamLoad::point(1.0, 1.0) };
    assert_eq!(fault(&sound, &[lost]), (Kind::MissingField, "/loads/0/at".into()));
    let thin = BeamLoad { size: None, ..BeamLoad::patch(1.0, 1.0, 1.0) };
    assert_eq!(fault(&sound, &[thin]), (Kind::MissingField, "/loads/0/size".into()));
    let wide = BeamLoad { size: Some(2.0), ..BeamLoad::point(1.0, 1.0) };
    assert_eq!(fault(&sound, &[wide]), (Kind::Conflict, "/loads/0/size".into()));
    let error = sound.worst(&[], &[BeamLoad::point(99.0, 1.0)]).unwrap_err();
    assert_eq!(error.pointer(), "/live/0/at");
}

/// The shape that crosses the borders.
#[test]
fn loads_read_as_they_are_written() {
    let text = r#"[{"kind":"uniform","value":2.0},{"kind":"patch","at":8.0,"size":4.0,"value":50.0},{"kind":"point","at":3.0,"value":1.0}]"#;
    let loads: Vec<BeamLoad> = serde_json::from_str(text).unwrap();
    assert_eq!(loads, [BeamLoad::uniform(2.0), BeamLoad::patch(8.0, 4.0, 50.0), BeamLoad::point(3.0, 1.0)]);
    assert_eq!(serde_json::to_string(&loads).unwrap(), text);
}
