//! Small plates, and what is refused.

use super::{PlateLoad, PlateProblem, PlateSupport, Rigidity};
use crate::error::Kind;

fn board() -> PlateProblem {
    let members = [0.0, 16.0, 48.0].map(PlateSupport::along);
    PlateProblem::new(102.0, 48.0, Rigidity::new(9_583.0, 29_583.0, 8_000.0), &members)
}

fn near(ours: f64, theirs: f64, part: f64) {
    assert!((ours - theirs).abs() <= part * theirs.abs(), "{ours} is not {theirs}");
}

/// A strip under an even load bends as a beam does, whatever its width and torsion: no twist, no bending along.
#[test]
fn a_board_under_an_even_load_is_a_beam() {
    let plate = board().solve(&[PlateLoad::uniform(0.7)]).unwrap();
    let beam = crate::span::beam(&[16.0, 32.0], &[crate::span::BeamLoad::uniform(0.7)], [0.0; 2], 29_583.0).unwrap();
    near(plate.at(40.0, 16.0).unwrap().moment_y, beam.supports[1].moment, 1e-9);
    near(plate.moment_y.least.value, beam.supports[1].moment, 1e-9);
    near(plate.moment_y.most.value, beam.spans[1].moment.most.value, 1e-6);
    near(plate.deflection.most.value, beam.spans[1].deflection.most.value, 1e-3);
    near(plate.at(7.0, 40.0).unwrap().shear[1], beam.shear_at(40.0).unwrap(), 1e-6);
    for (ours, support) in plate.reactions.iter().zip(&beam.supports) {
        near(*ours, support.reaction * 102.0, 1e-9);
    }
    assert!(plate.twist.most.value.abs() < 1e-9 && plate.moment_x.most.value.abs() < 1e-9);
}

#[test]
fn a_cantilever_and_a_line_load() {
    // Clamped along x = 0, a line load of 2 per length across its tip: P L³ / (3 D), no Poisson's effect.
    let rigidity = Rigidity::new(5000.0, 2000.0, 1500.0);
    let problem = PlateProblem::new(20.0, 8.0, rigidity, &[PlateSupport::across(0.0).clamped()]);
    let plate = problem.solve(&[PlateLoad::line([20.0, 4.0], [0.0, 8.0], 2.0)]).unwrap();
    near(plate.deflection.most.value, 2.0 * 8000.0 / 15_000.0, 1e-9);
    near(plate.moment_x.least.value, -40.0, 1e-9);
    near(plate.reactions[0], 16.0, 1e-9);
    assert!(plate.at(20.1, 1.0).is_none() && plate.at(f64::NAN, 1.0).is_none());
}

/// A plate hung at three corners and loaded in the fourth twists without bending: w = P a b / (4 Dxy).
#[test]
fn pure_twist() {
    let rigidity = Rigidity::new(5000.0, 2000.0, 1500.0);
    let screws = [[0.0, 0.0], [10.0, 0.0], [0.0, 6.0]].map(PlateSupport::point);
    let plate = PlateProblem::new(10.0, 6.0, rigidity, &screws).solve(&[PlateLoad::point([10.0, 6.0], 8.0)]).unwrap();
    // H = 2 Dxy without Poisson's effect.
    near(plate.at(10.0, 6.0).unwrap().deflection, 8.0 * 60.0 / (2.0 * 1500.0), 1e-9);
    near(plate.reactions[0], -8.0, 1e-9);
    near(plate.reactions[1], 8.0, 1e-9);
    near(plate.twist.most.value.max(-plate.twist.least.value), 4.0, 1e-9);
}

#[test]
fn the_error_that_is_told_covers_the_one_that_is_made() {
    let (coarse, fine) = (board(), board().mesh(1.0));
    for load in [PlateLoad::uniform(0.7), PlateLoad::patch([51.0, 33.0], [4.0, 4.0], 200.0)] {
        let (ours, better) = (coarse.solve(&[load]).unwrap(), fine.solve(&[load]).unwrap());
        let told = ours.error.unwrap();
        let made = (ours.deflection.most.value - better.deflection.most.value).abs();
        // A tenth of a percent of slack: the finer mesh has an error as well.
        assert!(made <= told.deflection + 1e-3 * better.deflection.most.value, "{made} {told:?}");
        assert!(told.deflection <= 0.02 * better.deflection.most.value, "{told:?}");
        let made = (ours.moment_y.most.value - better.moment_y.most.value).abs();
        assert!(made <= told.moment_y + 1e-3 * better.moment_y.most.value, "{made} {told:?}");
        assert!(better.error.is_none());
    }
}

/// A worst place is at least as bad as each place of a grid that is solved by itself.
#[test]
fn the_worst_place() {
    // Each place with mesh lines around the load: on a fixed mesh moments vary with how the load lies on its lines.
    let board = board();
    let worst = board.model().unwrap().worst_place([4.0, 4.0], 200.0, None).unwrap();
    assert!(worst.tried > 50 && worst.step[1] <= 6.0);
    for x in [2.0, 10.0, 30.0, 51.0, 100.0] {
        for y in [2.0, 8.0, 12.0, 20.0, 27.0, 32.0, 38.0, 46.0] {
            let plate = board.solve(&[PlateLoad::patch([x, y], [4.0, 4.0], 200.0)]).unwrap();
            assert!(plate.deflection.most.value <= 1.01 * worst.deflection.peak.value, "{x} {y}");
            assert!(plate.moment_y.most.value <= 1.03 * worst.sagging_y.peak.value, "{x} {y}");
            assert!(plate.moment_x.most.value <= 1.03 * worst.sagging_x.peak.value, "{x} {y}");
            assert!(plate.moment_y.least.value >= 1.06 * worst.hogging_y.peak.value, "{x} {y}");
        }
    }
    // The wide bay, at a free end.
    let [x, y] = worst.deflection.load_at;
    assert!((x - 2.0).abs() < 1e-9 && (30.0..38.0).contains(&y), "{x} {y}");
}

/// Against a mesh of one inch whose lines the load's edges lie on.
#[test]
fn a_mesh_that_grows_away_from_its_load_is_near_a_fine_one() {
    let (search, fine) = (board().search().unwrap(), board().mesh(1.0).model().unwrap());
    for at in [[2.0, 33.0], [6.0, 32.0], [51.0, 31.0], [51.0, 8.0]] {
        let worst = search.at(at, [4.0, 4.0], 200.0).unwrap();
        let better = fine.solve(&[PlateLoad::patch(at, [4.0, 4.0], 200.0)]).unwrap();
        near(worst.deflection.peak.value, better.deflection.most.value, 0.005);
        near(worst.sagging_y.peak.value, better.moment_y.most.value, 0.02);
        near(worst.sagging_x.peak.value, better.moment_x.most.value, 0.02);
        // Over a member that ends at a free edge hogging has no limit: meshes differ most in it.
        near(worst.hogging_y.peak.value, better.moment_y.least.value, 0.08);
    }
}

/// Away from free edges a heel sinks less; where all edges are held, both zones are one.
#[test]
fn zones() {
    let zones = board().search().unwrap().zones([4.0, 4.0], 200.0, Some([400.0, 200.0])).unwrap();
    let inner = zones.inner.unwrap();
    assert!((inner.deflection.load_at[0] - 6.0).abs() < 1e-9, "{:?}", inner.deflection);
    let every = board().search().unwrap().worst([4.0, 4.0], 200.0, None).unwrap();
    near(zones.whole.deflection.peak.value, every.deflection.peak.value, 1e-3);
    near(zones.whole.sagging_y.peak.value, every.sagging_y.peak.value, 1e-3);
    // The moment that matters less is told by the coarse mesh.
    near(zones.whole.sagging_x.peak.value, every.sagging_x.peak.value, 0.12);
    assert!(inner.deflection.peak.value < 0.9 * zones.whole.deflection.peak.value);
    let held =
        PlateProblem::new(40.0, 20.0, Rigidity::new(9_583.0, 29_583.0, 8_000.0), &PlateSupport::edges(40.0, 20.0));
    let zones = held.search().unwrap().zones([4.0, 4.0], 200.0, None).unwrap();
    near(zones.inner.unwrap().deflection.peak.value, zones.whole.deflection.peak.value, 1e-9);
    // Wider than a third of the board: there is no place away from both ends.
    let zones = board().search().unwrap().zones([40.0, 4.0], 200.0, None).unwrap();
    assert!(zones.inner.is_none());
}

fn fault(problem: &PlateProblem, loads: &[PlateLoad]) -> (Kind, String) {
    let error = problem.solve(loads).unwrap_err();
    (error.first().kind, error.pointer().to_owned())
}

#[test]
fn faults_of_plates_name_their_field() {
    let with = |change: &dyn Fn(&mut PlateProblem)| {
        let mut problem = board();
        change(&mut problem);
        fault(&problem, &[])
    };
    assert_eq!(with(&|p| p.length = 0.0), (Kind::OutOfRange, "/length".into()));
    assert_eq!(with(&|p| p.width = f64::NAN), (Kind::OutOfRange, "/width".into()));
    assert_eq!(with(&|p| p.width = 1e-3), (Kind::OutOfRange, "/width".into()));
    assert_eq!(with(&|p| p.rigidity.dx = -1.0), (Kind::OutOfRange, "/dx".into()));
    assert_eq!(with(&|p| p.rigidity.dy = f64::INFINITY), (Kind::OutOfRange, "/dy".into()));
    assert_eq!(with(&|p| p.rigidity.torsion = -1.0), (Kind::OutOfRange, "/torsion".into()));
    assert_eq!(with(&|p| p.rigidity.torsion = f64::NAN), (Kind::OutOfRange, "/torsion".into()));
    assert_eq!(with(&|p| p.rigidity.poisson = [0.3, 0.3]), (Kind::Conflict, "/poisson".into()));
    assert_eq!(with(&|p| p.rigidity.poisson = [2.0, 2.0]), (Kind::OutOfRange, "/poisson".into()));
    assert_eq!(with(&|p| p.mesh = Some(0.0)), (Kind::OutOfRange, "/mesh".into()));
    assert_eq!(with(&|p| p.mesh = Some(0.01)), (Kind::TooMany, "/mesh".into()));
    assert_eq!(with(&|p| p.supports.clear()), (Kind::EmptyList, "/supports".into()));
    assert_eq!(with(&|p| p.supports[1] = PlateSupport::along(49.0)), (Kind::OutOfRange, "/supports/1/y".into()));
    assert_eq!(with(&|p| p.supports[2] = PlateSupport::across(f64::NAN)), (Kind::OutOfRange, "/supports/2/x".into()));
    let backward = PlateSupport::along(4.0).between(30.0, 20.0);
    assert_eq!(with(&|p| p.supports[0] = backward), (Kind::OutOfRange, "/supports/0/between".into()));
    let off = PlateSupport::point([103.0, 4.0]);
    assert_eq!(with(&|p| p.supports[0] = off), (Kind::OutOfRange, "/supports/0/at".into()));
}

#[test]
fn plates_that_can_move_are_refused() {
    let held = |supports: &[PlateSupport], torsion: f64| {
        let problem = PlateProblem::new(10.0, 6.0, Rigidity::new(5.0, 2.0, torsion), supports);
        match problem.solve(&[PlateLoad::uniform(1.0)]) {
            Ok(plate) => {
                near(plate.reactions.iter().sum(), 60.0, 1e-6);
                true
            }
            Err(error) => {
                assert_eq!((error.first().kind, error.pointer()), (Kind::Conflict, "/supports"));
                false
            }
        }
    };
    let point = PlateSupport::point;
    assert!(!held(&[PlateSupport::along(3.0)], 1.0));
    assert!(!held(&[point([0.0, 0.0]), point([10.0, 6.0]), point([5.0, 3.0])], 1.0));
    assert!(!held(&[point([0.0, 0.0]), PlateSupport::across(0.0)], 1.0));
    assert!(held(&[PlateSupport::along(3.0).clamped()], 1.0));
    assert!(held(&[PlateSupport::along(3.0), point([5.0, 0.0])], 1.0));
    assert!(held(&[PlateSupport::along(3.0), PlateSupport::across(1.0)], 1.0));
    // Without torsion two crossing lines leave the saddle x y free, and three points as well.
    assert!(!held(&[PlateSupport::along(3.0), PlateSupport::across(1.0)], 0.0));
    assert!(held(&[PlateSupport::along(3.0), PlateSupport::along(1.0)], 0.0));
}

#[test]
fn faults_of_loads_name_their_field() {
    let board = board();
    let good = PlateLoad::uniform(1.0);
    let point = PlateLoad::point([1.0, 1.0], 1.0);
    let patch = PlateLoad::patch([9.0, 9.0], [4.0, 4.0], 1.0);
    let off = PlateLoad::point([10.0, 48.5], 1.0);
    assert_eq!(fault(&board, &[good, off]), (Kind::OutOfRange, "/loads/1/at/1".into()));
    let over = PlateLoad::patch([1.0, 9.0], [4.0, 4.0], 1.0);
    assert_eq!(fault(&board, &[over]), (Kind::OutOfRange, "/loads/0/at/0".into()));
    assert_eq!(fault(&board, &[PlateLoad::uniform(f64::NAN)]), (Kind::OutOfRange, "/loads/0/value".into()));
    assert_eq!(fault(&board, &[PlateLoad { at: None, ..point }]), (Kind::MissingField, "/loads/0/at".into()));
    assert_eq!(fault(&board, &[PlateLoad { size: None, ..patch }]), (Kind::MissingField, "/loads/0/size".into()));
    let wide = PlateLoad { size: Some([1.0; 2]), ..point };
    assert_eq!(fault(&board, &[wide]), (Kind::Conflict, "/loads/0/size".into()));
    let flat = PlateLoad { size: Some([4.0, 0.0]), ..patch };
    assert_eq!(fault(&board, &[flat]), (Kind::OutOfRange, "/loads/0/size".into()));
    let thick = PlateLoad::line([9.0, 9.0], [4.0, 1.0], 1.0);
    assert_eq!(fault(&board, &[thick]), (Kind::OutOfRange, "/loads/0/size".into()));
    let model = board.model().unwrap();
    let worst = |size, value, step| model.worst_place(size, value, step).unwrap_err().pointer().to_owned();
    assert_eq!(worst([4.0, 49.0], 1.0, None), "/size");
    assert_eq!(worst([4.0, -1.0], 1.0, None), "/size");
    assert_eq!(worst([4.0, 4.0], f64::NAN, None), "/value");
    assert_eq!(worst([4.0, 4.0], -1.0, None), "/value");
    assert_eq!(worst([4.0, 4.0], 1.0, Some(0.0)), "/step");
    assert_eq!(worst([4.0, 4.0], 1.0, Some(0.001)), "/step");
}

/// The shapes that cross the borders.
#[test]
fn loads_and_supports_read_as_they_are_written() {
    let text = r#"[{"kind":"uniform","value":2.0},{"kind":"patch","at":[8.0,9.0],"size":[4.0,3.0],"value":50.0}]"#;
    let loads: Vec<PlateLoad> = serde_json::from_str(text).unwrap();
    assert_eq!(loads, [PlateLoad::uniform(2.0), PlateLoad::patch([8.0, 9.0], [4.0, 3.0], 50.0)]);
    assert_eq!(serde_json::to_string(&loads).unwrap(), text);
    let text = r#"[{"kind":"along","y":12.0},{"kind":"across","x":3.0,"between":[0.0,9.0],"clamped":true},{"kind":"point","at":[1.0,2.0]}]"#;
    let supports: Vec<PlateSupport> = serde_json::from_str(text).unwrap();
    let across = PlateSupport::across(3.0).between(0.0, 9.0).clamped();
    assert_eq!(supports, [PlateSupport::along(12.0), across, PlateSupport::point([1.0, 2.0])]);
}
