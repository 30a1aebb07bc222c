//! Laws of plates.

use deck_core::span::{BeamLoad, Plate, PlateLoad, PlateProblem, PlateSupport, Rigidity, beam};
use proptest::prelude::*;
use proptest::test_runner::RngSeed;

/// Random plates in each run of a law.
const PLATES: u32 = 60;
/// The same plates in every run.
const SEED: u64 = 1850;

fn laws() -> ProptestConfig {
    ProptestConfig { cases: PLATES, rng_seed: RngSeed::Fixed(SEED), failure_persistence: None, ..Default::default() }
}

prop_compose! {
    fn rigidities()(dx in 1e3..1e5_f64, ratio in 0.1..10.0_f64, nu in 0.0..0.35_f64, torsion in 0.2..2.0_f64) -> Rigidity {
        let dy = dx * ratio;
        let root = (dx * dy).sqrt();
        // Both ratios from one coupling, and a torsion above it.
        let coupling = nu * root;
        Rigidity::new(dx, dy, coupling + torsion * root / 2.0).poisson([coupling / dy, coupling / dx])
    }
}

/// Members along the plate, some not over its whole length, perhaps an edge that is held, perhaps screws.
fn supports(length: f64, width: f64) -> impl Strategy<Value = Vec<PlateSupport>> {
    let inner = prop::collection::vec((0.1..0.9_f64, prop::option::weighted(0.3, (0.0..0.4_f64, 0.6..1.0_f64))), 0..3);
    let screws = prop::collection::vec((0.0..1.0_f64, 0.0..1.0_f64), 0..3);
    (inner, prop::bool::weighted(0.3), prop::bool::weighted(0.3), screws).prop_map(
        move |(inner, across, clamped, screws)| {
            let first = if clamped { PlateSupport::along(0.0).clamped() } else { PlateSupport::along(0.0) };
            let mut supports = vec![first, PlateSupport::along(width)];
            for (at, part) in inner {
                let line = PlateSupport::along(at * width);
                supports.push(part.map_or(line, |(from, to)| line.between(from * length, to * length)));
            }
            if across {
                supports.push(PlateSupport::across(0.3 * length));
            }
            supports.extend(screws.iter().map(|&(x, y)| PlateSupport::point([x * length, y * width])));
            supports
        },
    )
}

prop_compose! {
    fn problems()(length in 20.0..110.0_f64, width in 12.0..50.0_f64)(
        supports in supports(length, width),
        rigidity in rigidities(),
        length in Just(length),
        width in Just(width),
    ) -> PlateProblem {
        PlateProblem::new(length, width, rigidity, &supports).mesh(width / 8.0)
    }
}

/// What, where and how large, in parts of the plate, and how much.
type Wish = (u8, [f64; 2], [f64; 2], f64);

fn wishes() -> impl Strategy<Value = Vec<Wish>> {
    let part = || prop::array::uniform2(0.0..1.0_f64);
    prop::collection::vec((0..4_u8, part(), part(), -100.0..300.0_f64), 1..4)
}

fn load(problem: &PlateProblem, &(kind, place, size, value): &Wish) -> PlateLoad {
    let sides = [problem.length, problem.width];
    let size = [0, 1].map(|axis| sides[axis] * (0.01 + 0.4 * size[axis]));
    let at = [0, 1].map(|axis| size[axis] / 2.0 + place[axis] * (sides[axis] - size[axis]));
    match kind {
        0 => PlateLoad::uniform(value / 100.0),
        1 => PlateLoad::point(at, value),
        2 => PlateLoad::line(at, [size[0], 0.0], value / 10.0),
        _ => PlateLoad::patch(at, size, value),
    }
}

fn force(problem: &PlateProblem, load: &PlateLoad) -> f64 {
    use deck_core::span::PlateLoadKind::{Line, Uniform};
    match (load.kind, load.size) {
        (Uniform, _) => load.value * problem.length * problem.width,
        (Line, Some(size)) => load.value * size[0].max(size[1]),
        _ => load.value,
    }
}

fn deflection(plate: &Plate, at: [f64; 2]) -> f64 {
    plate.at(at[0], at[1]).unwrap().deflection
}

proptest! {
    #![proptest_config(laws())]

    #[test]
    fn supports_carry_the_loads(problem in problems(), wishes in wishes()) {
        let loads: Vec<PlateLoad> = wishes.iter().map(|wish| load(&problem, wish)).collect();
        let plate = problem.solve(&loads).unwrap();
        let (sum, size) = loads.iter().map(|load| force(&problem, load)).fold((0.0, 0.0), |a, f| (a.0 + f, a.1 + f.abs()));
        let carried: f64 = plate.reactions.iter().sum();
        let largest = plate.reactions.iter().fold(size, |most, reaction| most.max(reaction.abs()));
        prop_assert!((carried - sum).abs() <= 1e-6 * largest, "{carried} {sum}");
        let ranges = [plate.deflection, plate.moment_x, plate.moment_y, plate.twist];
        prop_assert!(ranges.iter().all(|range| range.least.value.is_finite() && range.most.value.is_finite()));
        // A supported place does not move.
        prop_assert!(deflection(&plate, [problem.length * 0.37, problem.width]).abs() <= 1e-9 * plate.deflection.largest().value.abs());
    }

    #[test]
    fn reciprocity(problem in problems(), here in prop::array::uniform2(0.0..1.0_f64), there in prop::array::uniform2(0.0..1.0_f64)) {
        let model = problem.model().unwrap();
        let place = |part: [f64; 2]| [part[0] * problem.length, part[1] * problem.width];
        let (here, there) = (place(here), place(there));
        let under = |at: [f64; 2], look: [f64; 2]| deflection(&model.solve(&[PlateLoad::point(at, 1.0)]).unwrap(), look);
        let (a, b) = (under(here, there), under(there, here));
        let size = (under(here, here) * under(there, there)).abs().sqrt();
        prop_assert!((a - b).abs() <= 1e-7 * size.max(1e-12), "{a} {b}");
        // Work is never negative.
        prop_assert!(under(here, here) >= 0.0);
    }

    #[test]
    fn loads_add_up(problem in problems(), wishes in wishes(), look in prop::array::uniform2(0.0..1.0_f64)) {
        let model = problem.model().unwrap();
        let loads: Vec<PlateLoad> = wishes.iter().map(|wish| load(&problem, wish)).collect();
        let at = [look[0] * problem.length, look[1] * problem.width];
        let value = |loads: &[PlateLoad]| {
            let plate = model.solve(loads).unwrap();
            let state = plate.at(at[0], at[1]).unwrap();
            [state.deflection, state.moment_x, state.moment_y, plate.reactions[0]]
        };
        let parts: Vec<[f64; 4]> = loads.iter().map(|load| value(&[*load])).collect();
        for (index, whole) in value(&loads).into_iter().enumerate() {
            let (sum, size) = parts.iter().fold((0.0, 0.0), |sum, part| (sum.0 + part[index], sum.1 + part[index].abs()));
            prop_assert!((whole - sum).abs() <= 1e-6 * size.max(1e-9), "{index}: {whole} {sum}");
        }
    }

    /// Looked at from the other end, and from the side.
    #[test]
    fn turned_plates(problem in problems(), wish in wishes()) {
        use deck_core::span::Place;
        let load = load(&problem, &wish[0]);
        let plate = problem.solve(&[load]).unwrap();
        let mut mirrored = problem.clone();
        let length = problem.length;
        for support in &mut mirrored.supports {
            match &mut support.place {
                Place::Across { x, .. } => *x = length - *x,
                Place::Along { between, .. } => *between = between.map(|[from, to]| [length - to, length - from]),
                Place::Point { at } => at[0] = length - at[0],
            }
        }
        let turned = PlateLoad { at: load.at.map(|at| [length - at[0], at[1]]), ..load };
        let other = mirrored.solve(&[turned]).unwrap();
        // The climb to the largest goes along one side first, so that it ends a hair elsewhere.
        let (size, hair) = (plate.deflection.largest().value.abs(), 2e-3);
        prop_assert!((plate.deflection.most.value - other.deflection.most.value).abs() <= hair * size);
        let (x, y) = (0.37 * problem.length, 0.61 * problem.width);
        prop_assert!((deflection(&plate, [x, y]) - deflection(&other, [length - x, y])).abs() <= 1e-7 * size);

        let mut crossed = problem.clone();
        (crossed.length, crossed.width) = (problem.width, problem.length);
        (crossed.rigidity.dx, crossed.rigidity.dy) = (problem.rigidity.dy, problem.rigidity.dx);
        crossed.rigidity.poisson.reverse();
        for support in &mut crossed.supports {
            support.place = match support.place {
                Place::Across { x, between } => Place::Along { y: x, between },
                Place::Along { y, between } => Place::Across { x: y, between },
                Place::Point { at } => Place::Point { at: [at[1], at[0]] },
            };
        }
        let swap = |pair: [f64; 2]| [pair[1], pair[0]];
        let turned = PlateLoad { at: load.at.map(swap), size: load.size.map(swap), ..load };
        let other = crossed.solve(&[turned]).unwrap();
        prop_assert!((plate.deflection.most.value - other.deflection.most.value).abs() <= hair * size);
        // Not the largest moments: under a point load there is no finite one.
        let (a, b) = (plate.at(x, y).unwrap(), other.at(y, x).unwrap());
        let size = a.moment_x.abs() + a.moment_y.abs();
        prop_assert!((a.moment_x - b.moment_y).abs() + (a.moment_y - b.moment_x).abs() <= 1e-5 * size, "{a:?} {b:?}");
        let size = a.shear[0].abs() + a.shear[1].abs();
        prop_assert!((a.shear[0] - b.shear[1]).abs() + (a.shear[1] - b.shear[0]).abs() <= 1e-5 * size, "{a:?} {b:?}");
    }

    /// Lengths in other units, and stiffer plates.
    #[test]
    fn units_do_not_matter(problem in problems(), wish in wishes(), k in 0.05..30.0_f64, stiffer in 0.1..50.0_f64) {
        use deck_core::span::PlateLoadKind::{Line, Uniform};
        let load = load(&problem, &wish[0]);
        let rigidity = problem.rigidity;
        let mut other = problem.clone();
        other.length *= k;
        other.width *= k;
        other.mesh = problem.mesh.map(|size| size * k);
        other.rigidity = Rigidity::new(rigidity.dx * stiffer, rigidity.dy * stiffer, rigidity.torsion * stiffer).poisson(rigidity.poisson);
        for support in &mut other.supports {
            use deck_core::span::Place;
            match &mut support.place {
                Place::Across { x: at, between } | Place::Along { y: at, between } => {
                    *at *= k;
                    *between = between.map(|pair| pair.map(|x| x * k));
                }
                Place::Point { at } => *at = at.map(|x| x * k),
            }
        }
        let value = match load.kind { Uniform => load.value / k / k, Line => load.value / k, _ => load.value };
        let scaled = PlateLoad { at: load.at.map(|at| at.map(|x| x * k)), size: load.size.map(|size| size.map(|x| x * k)), value, ..load };
        let (a, b) = (problem.solve(&[load]).unwrap(), other.solve(&[scaled]).unwrap());
        let factor = k * k / stiffer;
        let slack = 1e-5 * a.deflection.largest().value.abs();
        prop_assert!((a.deflection.most.value - b.deflection.most.value / factor).abs() <= slack);
        let slack = 1e-4 * a.moment_y.largest().value.abs();
        prop_assert!((a.moment_y.least.value - b.moment_y.least.value).abs() <= slack);
    }

    /// Without stiffness the other way, or with a load that runs all along, a plate is a beam.
    #[test]
    fn a_strip_is_a_beam(spans in prop::collection::vec(6.0..30.0_f64, 1..4), overhang in 1.0..5.0_f64, at in 0.0..1.0_f64, rigidity in rigidities()) {
        let width = overhang + spans.iter().sum::<f64>();
        let mut y = 0.0;
        let mut lines = vec![PlateSupport::along(0.0)];
        for span in &spans {
            y += span;
            lines.push(PlateSupport::along(y));
        }
        // Poisson's effect would curl the free ends.
        let rigidity = rigidity.poisson([0.0; 2]);
        let y = at * width;
        let strip = PlateProblem::new(30.0, width, rigidity, &lines).mesh(width / 16.0);
        let plate = strip.solve(&[PlateLoad::line([15.0, y], [30.0, 0.0], 10.0)]).unwrap();
        let beam = beam(&spans, &[BeamLoad::point(y, 10.0)], [0.0, overhang], rigidity.dy).unwrap();
        let all = || beam.spans.iter().chain(beam.overhangs.iter().flatten());
        let most = all().map(|span| span.deflection.most.value).fold(0.0, f64::max);
        let size = all().map(|span| span.deflection.largest().value.abs()).fold(1e-15, f64::max);
        prop_assert!((plate.deflection.most.value - most).abs() <= 0.02 * size, "{} {most}", plate.deflection.most.value);
        for (ours, support) in plate.reactions.iter().zip(&beam.supports) {
            prop_assert!((ours - 30.0 * support.reaction).abs() <= 0.02 * 300.0 * (1.0 + size));
        }
    }

    /// A stiffer plate sinks less: under its own load no rigidity makes more work.
    #[test]
    fn stiffer_sinks_less(problem in problems(), at in prop::array::uniform2(0.0..1.0_f64), more in 1.0..3.0_f64) {
        let at = [at[0] * problem.length, at[1] * problem.width];
        let load = [PlateLoad::point(at, 100.0)];
        let mut stiffer = problem.clone();
        stiffer.rigidity.torsion *= more;
        let (soft, stiff) = (problem.solve(&load).unwrap(), stiffer.solve(&load).unwrap());
        prop_assert!(deflection(&stiff, at) <= deflection(&soft, at) * (1.0 + 1e-9) + 1e-12);
    }
}
