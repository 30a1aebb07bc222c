//! Laws of continuous beams.

use deck_core::span::{Beam, BeamLoad, BeamProblem, End};
use proptest::prelude::*;
use proptest::test_runner::RngSeed;

/// Random beams in each run of a law.
const BEAMS: u32 = 400;
/// The same beams in every run.
const SEED: u64 = 1857;

fn laws() -> ProptestConfig {
    ProptestConfig { cases: BEAMS, rng_seed: RngSeed::Fixed(SEED), failure_persistence: None, ..Default::default() }
}

fn problems() -> impl Strategy<Value = BeamProblem> {
    let overhang = || prop_oneof![1 => Just(0.0), 2 => 0.5..10.0_f64];
    let ends = prop::array::uniform2(prop::bool::weighted(0.2));
    (prop::collection::vec(2.0..40.0_f64, 1..8), overhang(), overhang(), ends, 1.0..1e6_f64).prop_map(
        |(spans, left, right, fixed, stiffness)| {
            let end = |fixed: bool| if fixed { End::Fixed } else { End::Simple };
            let overhang = |fixed: bool, length: f64| if fixed { 0.0 } else { length };
            BeamProblem::new(&spans)
                .overhangs([overhang(fixed[0], left), overhang(fixed[1], right)])
                .ends(fixed.map(end))
                .stiffness(stiffness)
        },
    )
}

/// What, where in parts of the beam, how long in parts of what is left, and how much.
fn wishes() -> impl Strategy<Value = Vec<(u8, f64, f64, f64)>> {
    prop::collection::vec((0..4_u8, 0.0..1.0_f64, 0.01..1.0_f64, -50.0..100.0_f64), 1..6)
}

fn loads(problem: &BeamProblem, wishes: &[(u8, f64, f64, f64)]) -> Vec<BeamLoad> {
    let length = problem.length();
    let load = |&(kind, place, size, value): &(u8, f64, f64, f64)| {
        let from = place * length;
        let to = from + size * (length - from);
        match kind {
            0 => BeamLoad::uniform(value),
            1 => BeamLoad::between(from, to.max(from + 1e-3 * length).min(length), value),
            2 => BeamLoad::patch(from.midpoint(to), (to - from).max(1e-9 * length), value),
            _ => BeamLoad::point(from, value),
        }
    };
    // A stretch may have been pushed over the end.
    wishes.iter().map(load).filter(|load| problem.solve(&[*load]).is_ok()).collect()
}

/// Force, and moment about the left tip.
fn resultant(load: &BeamLoad, length: f64) -> (f64, f64) {
    let (at, force) = match (load.at, load.size) {
        (None, _) => (length / 2.0, load.value * length),
        (Some(at), Some(size)) if load.kind == deck_core::span::BeamLoadKind::Uniform => (at, load.value * size),
        (Some(at), _) => (at, load.value),
    };
    (force, force * at)
}

/// The largest figure of each sort, to measure rounding by.
fn scales(beam: &Beam) -> [f64; 2] {
    let all = || beam.spans.iter().chain(beam.overhangs.iter().flatten());
    let moment = all().map(|span| span.moment.largest().value.abs()).fold(1e-9, f64::max);
    let sag = all().map(|span| span.deflection.largest().value.abs()).fold(1e-30, f64::max);
    [moment, sag]
}

proptest! {
    #![proptest_config(laws())]

    #[test]
    fn supports_carry_the_loads(problem in problems(), wishes in wishes()) {
        let loads = loads(&problem, &wishes);
        let beam = problem.solve(&loads).unwrap();
        let length = problem.length();
        let sum: f64 = loads.iter().map(|load| resultant(load, length).0).sum();
        let size: f64 = loads.iter().map(|load| resultant(load, length).0.abs()).sum();
        let carried: f64 = beam.supports.iter().map(|support| support.reaction).sum();
        let largest = beam.supports.iter().map(|support| support.reaction.abs()).fold(size, f64::max);
        prop_assert!((carried - sum).abs() <= 1e-9 * largest, "{carried} {sum}");
        if problem.ends == [End::Simple; 2] {
            let turning: f64 = loads.iter().map(|load| resultant(load, length).1).sum();
            let held: f64 = beam.supports.iter().map(|support| support.reaction * support.at).sum();
            prop_assert!((held - turning).abs() <= 1e-9 * largest * length, "{held} {turning}");
        }
    }

    /// A force here bends there as a force there bends here.
    #[test]
    fn reciprocity(problem in problems(), here in 0.0..1.0_f64, there in 0.0..1.0_f64) {
        let [here, there] = [here, there].map(|part| part * problem.length());
        let under = |at: f64, look: f64| problem.solve(&[BeamLoad::point(at, 1.0)]).unwrap().deflection_at(look).unwrap();
        let (a, b) = (under(here, there), under(there, here));
        let size = (under(here, here) * under(there, there)).abs().sqrt();
        prop_assert!((a - b).abs() <= 1e-9 * size.max(a.abs()) + 1e-12 / problem.stiffness, "{a} {b}");
    }

    #[test]
    fn loads_add_up(problem in problems(), wishes in wishes(), look in 0.0..1.0_f64) {
        let loads = loads(&problem, &wishes);
        let x = look * problem.length();
        let whole = problem.solve(&loads).unwrap();
        let parts: Vec<Beam> = loads.iter().map(|load| problem.solve(&[*load]).unwrap()).collect();
        let scale = parts.iter().map(scales).fold(scales(&whole), |a, b| [a[0].max(b[0]), a[1].max(b[1])]);
        let sum = |value: &dyn Fn(&Beam) -> f64| parts.iter().map(value).sum::<f64>();
        let moment = |beam: &Beam| beam.moment_at(x).unwrap();
        let sag = |beam: &Beam| beam.deflection_at(x).unwrap();
        prop_assert!((moment(&whole) - sum(&moment)).abs() <= 1e-8 * scale[0]);
        prop_assert!((sag(&whole) - sum(&sag)).abs() <= 1e-8 * scale[1]);
    }

    #[test]
    fn a_mirrored_beam_is_mirrored(problem in problems(), wishes in wishes(), look in 0.0..1.0_f64) {
        let loads = loads(&problem, &wishes);
        let length = problem.length();
        let mut mirrored = problem.clone();
        mirrored.spans.reverse();
        mirrored.overhangs.reverse();
        mirrored.ends.reverse();
        let turned: Vec<BeamLoad> =
            loads.iter().map(|load| BeamLoad { at: load.at.map(|at| (length - at).max(0.0)), ..*load }).collect();
        let (beam, other) = (problem.solve(&loads).unwrap(), mirrored.solve(&turned).unwrap());
        let scale = scales(&beam);
        let x = look * length;
        let sags = [beam.deflection_at(x).unwrap(), other.deflection_at(length - x).unwrap()];
        prop_assert!((sags[0] - sags[1]).abs() <= 1e-7 * scale[1], "{sags:?}");
        for (a, b) in beam.spans.iter().zip(other.spans.iter().rev()) {
            prop_assert!((a.moment.most.value - b.moment.most.value).abs() <= 1e-7 * scale[0]);
            prop_assert!((a.deflection.most.value - b.deflection.most.value).abs() <= 1e-7 * scale[1]);
        }
    }

    /// Lengths in other units: deflections by force times length cubed over stiffness.
    #[test]
    fn units_do_not_matter(problem in problems(), wishes in wishes(), k in 0.01..100.0_f64) {
        let loads = loads(&problem, &wishes);
        let scaled = |load: &BeamLoad| {
            let spread = load.kind == deck_core::span::BeamLoadKind::Uniform;
            let value = if spread { load.value / k } else { load.value };
            BeamLoad { at: load.at.map(|at| at * k), size: load.size.map(|size| size * k), value, ..*load }
        };
        let mut other = problem.clone();
        other.spans.iter_mut().chain(&mut other.overhangs).for_each(|length| *length *= k);
        let (a, b) = (problem.solve(&loads).unwrap(), other.solve(&loads.iter().map(scaled).collect::<Vec<_>>()).unwrap());
        let scale = scales(&a);
        for (a, b) in a.spans.iter().zip(&b.spans) {
            prop_assert!((a.moment.least.value - b.moment.least.value / k).abs() <= 1e-8 * scale[0]);
            prop_assert!((a.deflection.most.value - b.deflection.most.value / k.powi(3)).abs() <= 1e-8 * scale[1]);
        }
    }

    /// No sample is beyond the extremes that are told, and those are reached where they are told.
    #[test]
    fn extremes_are_extremes(problem in problems(), wishes in wishes()) {
        let beam = problem.solve(&loads(&problem, &wishes)).unwrap();
        let [moment, sag] = scales(&beam);
        for span in beam.spans.iter().chain(beam.overhangs.iter().flatten()) {
            for k in 0..=60 {
                let x = span.from + span.length * f64::from(k) / 60.0;
                let (m, w) = (beam.moment_at(x).unwrap(), beam.deflection_at(x).unwrap());
                prop_assert!(m <= span.moment.most.value + 1e-9 * moment && m >= span.moment.least.value - 1e-9 * moment);
                prop_assert!(w <= span.deflection.most.value + 1e-9 * sag && w >= span.deflection.least.value - 1e-9 * sag);
            }
            for peak in [span.deflection.most, span.deflection.least] {
                prop_assert!((beam.deflection_at(peak.at).unwrap() - peak.value).abs() <= 1e-9 * sag);
            }
        }
    }

    /// A worst pattern is no better than any pattern.
    #[test]
    fn no_pattern_is_worse(problem in problems(), dead in 0.0..3.0_f64, live in 0.1..9.0_f64, mask in 0..512_u32) {
        let dead = [BeamLoad::uniform(dead)];
        let worst = problem.worst(&dead, &[BeamLoad::uniform(live)]).unwrap();
        let mut loads = dead.to_vec();
        let mut start = 0.0;
        let lengths = [problem.overhangs[0]].into_iter().chain(problem.spans.clone()).chain([problem.overhangs[1]]);
        for (index, length) in lengths.enumerate() {
            if mask >> index & 1 == 1 && length > 0.0 {
                loads.push(BeamLoad::between(start, (start + length).min(problem.length()), live));
            }
            start += length;
        }
        let beam = problem.solve(&loads).unwrap();
        let [moment, sag] = scales(&beam);
        for (beam, worst) in beam.spans.iter().zip(&worst.spans) {
            prop_assert!(beam.moment.most.value <= worst.moment.most.value + 1e-9 * moment);
            prop_assert!(beam.moment.least.value >= worst.moment.least.value - 1e-9 * moment);
            prop_assert!(beam.deflection.most.value <= worst.deflection.most.value + 1e-9 * sag);
            prop_assert!(beam.deflection.least.value >= worst.deflection.least.value - 1e-9 * sag);
        }
        for (beam, worst) in beam.supports.iter().zip(&worst.supports) {
            prop_assert!(beam.reaction <= worst.reaction.most.value + 1e-9 * moment);
            prop_assert!(beam.moment >= worst.moment.least.value - 1e-9 * moment);
        }
    }
}

/// A hundred thousand spans are solved as fast as they are told, and the middle ones know nothing of the ends.
#[test]
fn very_many_spans() {
    let beam = BeamProblem::new(&vec![16.0; 100_000]).solve(&[BeamLoad::uniform(1.0)]).unwrap();
    let middle = &beam.spans[50_000];
    assert!((beam.supports[50_000].moment + 256.0 / 12.0).abs() < 1e-9);
    assert!((middle.moment.most.value - 256.0 / 24.0).abs() < 1e-9);
    assert!((middle.deflection.most.value - 16_f64.powi(4) / 384.0).abs() < 1e-8);
}
