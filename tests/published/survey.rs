//! The survey against adjustments and fits that others have published, and against two old theorems.

use super::inches;
use deck_core::survey::{Known, PieceKind, Reading, SurveySpec, Trace, skew_of_diagonals, survey};
use deck_core::{Length, Notation, Unit};

fn feet(value: f64) -> Length {
    Length::nearest(value * 304.8e6)
}

fn notation() -> Notation {
    Notation::new(Unit::Inch)
}

fn near(found: f64, printed: f64, within: f64, what: &str) {
    assert!((found - printed).abs() <= within, "{what}: {found}, printed {printed}");
}

/// C. Ghilani, Adjustment Computations: Spatial Data Analysis, example 14.2 (trilateration of one station from three).
///
/// The control stations and distances were read in the worksheet of chapter 14 that goes with the book
/// (geolabsolutions.com, theory course resources); the printed place, 6861.32 and 3727.82 ft, is from memory, and agrees
/// with a solution of the normal equations by hand.
#[test]
fn a_station_from_three_distances() {
    let control = [("A", 865.40, 4527.15, 6049.00), ("B", 2432.55, 2047.25, 4736.83), ("C", 2865.22, 27.15, 5446.49)];
    let scale = 0.1; // a tenth of a foot for each: lengths beyond a kilometre are not read
    let known = control.iter().map(|&(name, x, y, _)| Known::new(name, feet(x * scale), feet(y * scale))).collect();
    let readings = control.iter().map(|&(name, .., read)| Reading::distance("U", name, feet(read * scale))).collect();
    let spec = SurveySpec::new(readings).known(known).datum("A", "B").error(feet(0.1 * scale));
    let found = survey(&spec, &notation()).unwrap();
    let station = found.point("U").unwrap();
    near(station.x.in_unit(Unit::Foot) / scale, 6861.32, 0.005, "x");
    near(station.y.in_unit(Unit::Foot) / scale, 3727.82, 0.005, "y");
    let residuals: Vec<f64> = found.readings.iter().map(|each| each.residual.in_unit(Unit::Foot) / scale).collect();
    for (residual, by_hand) in residuals.iter().zip([-0.037, 0.077, -0.047]) {
        near(*residual, by_hand, 0.001, "residual");
    }
    assert_eq!((found.freedom, found.blunders.len()), (1, 0));
    // Sum of squares 0.00954 over (0.1)²: S0 of about 0.10 in the book.
    near(found.test.unwrap().statistic, 0.954, 0.002, "sum of squares");
}

/// W. Gander, G. Golub and R. Strebel, Least-squares fitting of circles and ellipses (BIT 34, 1994), the example of their
/// section on circles; points and figures from memory.
#[test]
fn the_circle_of_gander_golub_and_strebel() {
    let points = [(1, 7), (2, 6), (5, 8), (7, 7), (9, 5), (3, 7)];
    let points = points.iter().map(|&(x, y)| (Length::inches(x), Length::inches(y))).collect();
    // The line through them is off by more than this, the circle by less.
    let trace = Trace::new("six points", points).tolerance(inches("1-1/4"));
    let readings = vec![Reading::distance("A", "B", Length::inches(10))];
    let spec = SurveySpec::new(readings).datum("A", "B").traces(vec![trace]);
    let found = survey(&spec, &notation()).unwrap().traces.remove(0);
    let arc = &found.pieces[0];
    assert_eq!((found.pieces.len(), arc.kind), (1, PieceKind::Arc), "{found:#?}");
    near(arc.centre_x.unwrap().as_inches(), 4.7398, 5e-5, "centre x");
    near(arc.centre_y.unwrap().as_inches(), 2.9835, 5e-5, "centre y");
    near(arc.radius.unwrap().as_inches(), 4.7142, 5e-5, "radius");
}

/// Euclid's law of the parallelogram: d1² + d2² = 2 (L² + W²); the frame's closure is what is left of it.
#[test]
fn a_racked_parallelogram_closes_and_its_skew_is_found() {
    for skew in ["1/8", "-1/2", "2", "0"] {
        let (length, width, skew) = (288.0, 102.0, inches(skew).as_inches());
        let beam = (width * width - skew * skew).sqrt();
        let diagonal = |by: f64| Length::nearest(((length + by) * (length + by) + beam * beam).sqrt() * 25.4e6);
        let of = |value: f64| Length::nearest(value * 25.4e6);
        let readings = vec![
            Reading::distance("BP", "SP", of(length)),
            Reading::distance("BS", "SS", of(length)),
            Reading::distance("BP", "BS", of(width)),
            Reading::distance("SP", "SS", of(width)),
            Reading::distance("BP", "SS", diagonal(skew)),
            Reading::distance("BS", "SP", diagonal(-skew)),
        ];
        let spec = SurveySpec::new(readings).corners(["BP", "SP", "SS", "BS"]);
        let found = survey(&spec, &notation()).unwrap();
        let squaring = found.squaring.unwrap();
        assert!(found.blunders.is_empty());
        near(squaring.skew.as_inches(), skew, 1e-6, "skew");
        near(squaring.closure.as_inches(), 0.0, 1e-6, "closure");
        near(squaring.diagonal_when_square.as_inches(), (length * length + width * width).sqrt(), 1e-6, "square");
        let (exact, rule) = skew_of_diagonals(of(length), of(width), diagonal(skew), diagonal(-skew));
        near(exact.as_inches(), skew, 1e-6, "exact");
        // The rule of the trade is the first order of it.
        near(rule.as_inches(), skew, 0.01 * skew.abs().powi(2) + 1e-6, "first order");
        assert_eq!(squaring.pull.is_some(), skew.abs() > 2.0 * squaring.skew_deviation.as_inches(), "{skew}");
    }
}

/// Four points in a plane have one relation between their six distances: the determinant of Cayley and Menger is zero.
#[test]
fn adjusted_distances_lie_in_a_plane() {
    let readings = vec![
        Reading::distance("BP", "SP", inches("240")),
        Reading::distance("BS", "SS", inches("239-7/8")),
        Reading::distance("BP", "BS", inches("96-1/16")),
        Reading::distance("SP", "SS", inches("95-15/16")),
        Reading::distance("BP", "SS", inches("258-1/2")),
        Reading::distance("BS", "SP", inches("258-3/8")),
    ];
    let menger = |d: &[f64]| {
        let square = |at: usize| d[at] * d[at];
        // Order of the six: 01, 32, 03, 12, 02, 31.
        let pair = [[0.0, square(0), square(4), square(2)], [square(0), 0.0, square(3), square(5)]];
        let more = [[square(4), square(3), 0.0, square(1)], [square(2), square(5), square(1), 0.0]];
        let mut matrix = vec![vec![0.0; 5]; 5];
        for (row, line) in pair.iter().chain(&more).enumerate() {
            matrix[0][row + 1] = 1.0;
            matrix[row + 1][0] = 1.0;
            matrix[row + 1][1..].copy_from_slice(line);
        }
        determinant(matrix)
    };
    let found = survey(&SurveySpec::new(readings).corners(["BP", "SP", "SS", "BS"]), &notation()).unwrap();
    let read: Vec<f64> = found.readings.iter().map(|each| each.reading.unwrap().as_inches()).collect();
    let adjusted: Vec<f64> = found.readings.iter().map(|each| each.adjusted.as_inches()).collect();
    let (before, after) = (menger(&read).abs(), menger(&adjusted).abs());
    assert!(before > 1e8 && after < before * 1e-6, "{before} {after}");
    // One redundancy: every reading carries its part of it.
    near(found.readings.iter().map(|each| each.redundancy).sum(), 1.0, 1e-5, "redundancy");
}

fn determinant(mut matrix: Vec<Vec<f64>>) -> f64 {
    let mut product = 1.0;
    for column in 0..matrix.len() {
        let pivot = (column..matrix.len())
            .max_by(|&a, &b| matrix[a][column].abs().total_cmp(&matrix[b][column].abs()))
            .unwrap();
        if pivot != column {
            matrix.swap(pivot, column);
            product = -product;
        }
        product *= matrix[column][column];
        let pivot_row = matrix[column].clone();
        for line in matrix.iter_mut().skip(column + 1) {
            let by = line[column] / pivot_row[column];
            line.iter_mut().zip(&pivot_row).for_each(|(entry, above)| *entry -= by * above);
        }
    }
    product
}

/// The demo boat was made by hand: 264 by 96 in, starboard 3/4 in ahead, its second diagonal read 1-3/8 in too long, bow
/// corners of 12 in, twelve members, and every other reading off by a tape's error.
#[test]
fn the_demo_boat_is_found_as_it_was_made() {
    let path = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../examples/jobs/surveyed-22.json");
    let job = deck_core::Job::from_json(&std::fs::read_to_string(path).unwrap()).unwrap();
    let plan = deck_core::plan(&job).unwrap();
    let found = plan.survey.as_ref().unwrap();
    assert_eq!(found.blunders.len(), 1, "{:#?}", found.summary);
    let blunder = &found.blunders[0];
    assert_eq!((blunder.reading.as_str(), blunder.told_apart), ("second diagonal", true), "{}", blunder.message);
    near(blunder.off.as_inches(), 1.375, 0.125, "the wrong diagonal");
    assert!(found.test.unwrap().passes && found.agreement < inches("1/8"), "{}", found.agreement);
    let squaring = found.squaring.as_ref().unwrap();
    near(squaring.skew.as_inches(), 0.75, 0.1, "skew");
    assert_eq!(squaring.pull.as_ref().unwrap(), &["BP".to_owned(), "SS".to_owned()]);
    let made = [1.0, 24.5, 48.0, 72.0, 96.0, 120.0, 144.0, 168.0, 192.0, 216.0, 240.0, 263.0];
    assert_eq!(plan.frame.len(), made.len());
    for (member, made) in plan.frame.iter().zip(made) {
        near(member.station.as_inches(), made, 0.1, "member");
    }
    for trace in &found.traces {
        let kinds: Vec<PieceKind> = trace.pieces.iter().map(|piece| piece.kind).collect();
        assert_eq!(kinds, [PieceKind::Line, PieceKind::Arc, PieceKind::Line], "{}", trace.name);
        // A corner of a racked frame is not quite round, and a quarter of a circle tells its radius badly.
        near(trace.pieces[1].radius.unwrap().as_inches(), 12.0, 0.6, "radius");
    }
    near(plan.deck.length.as_inches(), 264.0, 0.1, "length");
    near(plan.deck.beam.as_inches(), 96.0, 0.1, "beam");
    // Six boards of 48 in make 288; five and a half reach.
    assert_eq!(plan.panels.len(), 6);
    assert!(found.old_boards.as_ref().unwrap().findings.is_empty());
    let names: Vec<&str> = plan.cautions.iter().map(|caution| caution.id.as_str()).collect();
    assert!(names.contains(&"wrong-reading") && names.contains(&"racked-frame"), "{names:?}");
}

/// A member that was missed and one that was read twice show in the old boards, with their places.
#[test]
fn old_boards_show_a_missed_and_a_doubled_member() {
    let boards =
        deck_core::survey::OldBoards::new(["47-7/8", "48-1/8", "47-15/16", "48", "47-7/8"].map(inches).to_vec())
            .members([0, 24, 48, 72, 73, 96, 120, 168, 192, 216, 240].map(Length::inches).to_vec());
    let spec = SurveySpec::new(Vec::new()).old_boards(boards);
    let found = survey(&spec, &notation()).unwrap().old_boards.unwrap();
    let told: Vec<(i64, &str)> = found
        .findings
        .iter()
        .map(|finding| (finding.station.steps_of(Length::inches(1)), finding.message.as_str()))
        .collect();
    assert_eq!(told.len(), 2, "{told:?}");
    assert!(told[0].1.contains("Members 4 and 5") && told[0].1.contains("1\" apart"), "{told:?}");
    assert!(
        told[1].0 == 144 && told[1].1.contains("Old boards 3 and 4") && told[1].1.contains("no member"),
        "{told:?}"
    );
}
