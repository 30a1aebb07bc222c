//! Laws of whole plans, on random boats.

use deck_core::geometry::Path;
use deck_core::plan::Plan;
use deck_core::seams::Seam;
use deck_core::{Job, Length, Unit};
use deck_tests::boat::{Boat, SIXTY_FOURTH};
use deck_tests::measure::{area, area_of, nm, pieces, polygon, strip};
use deck_tests::random::boats;
use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::RngSeed;
use std::collections::BTreeSet;

/// Boats to each law.
const BOATS: u32 = 400;
/// The same boats in every run.
const SEED: u64 = 288;
/// Areas are compared to a millionth of a square inch: corners on arcs are rounded to the nanometre, and gaps are cut
/// out of a polygon.
const AREA: f64 = 1e-6 * 25.4e6 * 25.4e6;
/// A corner on a slanted side or on an arc is rounded the other way round where it lies half-way between nanometres.
const NANOMETRE: i64 = 1;
/// With both ends of a row rounded so, what is divided between them is off by one more.
const TWO: i64 = 2;

fn config() -> ProptestConfig {
    ProptestConfig {
        cases: BOATS,
        rng_seed: RngSeed::Fixed(SEED),
        failure_persistence: None,
        ..ProptestConfig::default()
    }
}

fn planned(boat: &Boat) -> Plan {
    boat.plan(Unit::Inch).unwrap_or_else(|error| panic!("{error}\n{}", boat.json(Unit::Inch)))
}

/// Seams bear on both sides as much as the rules ask, boards fit their sheets, and nothing overlaps.
fn check_layout(boat: &Boat, plan: &Plan) -> Result<(), TestCaseError> {
    let (_, sheet) = boat.sheets[0];
    let widest = (sheet - 2 * boat.trim) * SIXTY_FOURTH;
    for layout in &plan.layouts {
        let mut fore = 0;
        for (board, seam) in layout.boards.iter().zip(layout.seams.iter().map(Some).chain([None])) {
            prop_assert_eq!(board.fore.nanometres(), fore);
            prop_assert_eq!(board.width, board.aft - board.fore);
            let width = board.width.nanometres();
            prop_assert!(width <= widest && width >= boat.least_width * SIXTY_FOURTH, "{}", board.width);
            let Some(Seam { fore: start, aft: end, member, .. }) = seam else { break };
            prop_assert_eq!(*start, board.aft);
            prop_assert_eq!((*end - *start).nanometres(), boat.gap * SIXTY_FOURTH);
            let flange = boat.flange_of(&boat.members[member - 1]);
            let bears = (start.nanometres() - flange.0).min(flange.1 - end.nanometres());
            prop_assert!(bears >= boat.bearing * SIXTY_FOURTH, "seam on member {member} bears {bears} nm");
            fore = end.nanometres();
        }
        let short = boat.length * SIXTY_FOURTH - layout.finish.nanometres();
        prop_assert!((0..=boat.tolerance * SIXTY_FOURTH).contains(&short));
        prop_assert_eq!(layout.boards.len(), layout.seams.len() + 1);
    }
    let sets: BTreeSet<Vec<usize>> =
        plan.layouts.iter().map(|layout| layout.seams.iter().map(|seam| seam.member).collect()).collect();
    prop_assert_eq!(sets.len(), plan.layouts.len());
    Ok(())
}

/// Panels, openings, gaps and what the tolerance leaves at the stern make up the outline.
fn check_tiling(boat: &Boat, plan: &Plan) -> Result<(), TestCaseError> {
    let outline = polygon(&pieces(&plan.deck.outline));
    let layout = &plan.layouts[0];
    let panels: i128 = plan.panels.iter().map(|panel| panel.area.square_nanometres()).sum();
    let openings: f64 = plan.openings.iter().map(|opening| area_of(&pieces(&opening.shape))).sum();
    let gaps: f64 = layout.seams.iter().map(|seam| area(&strip(&outline, nm(seam.fore), nm(seam.aft)))).sum();
    let stern = area(&strip(&outline, nm(layout.finish), nm(plan.deck.length)));
    let whole = area_of(&pieces(&plan.deck.outline));
    let sum = panels as f64 + openings + gaps + stern;
    prop_assert!((sum - whole).abs() < AREA, "{} sq in too much", (sum - whole) / 25.4e6 / 25.4e6);
    prop_assert!((plan.deck.area.square_nanometres() as f64 - whole).abs() < AREA);
    let placed: usize = plan.panels.iter().map(|panel| panel.openings.len()).sum();
    prop_assert_eq!(placed, boat.holes.len(), "each opening lies in one panel");
    let labels: BTreeSet<&str> = plan.panels.iter().map(|panel| panel.label.as_str()).collect();
    prop_assert_eq!(labels.len(), plan.panels.len(), "labels are unique");
    for panel in &plan.panels {
        let board = &layout.boards[panel.board - 1];
        prop_assert!(panel.bounds.fore >= board.fore && panel.bounds.aft <= board.aft);
        prop_assert!(panel.length.nanometres() <= (boat.sheets[0].0 - 2 * boat.trim) * SIXTY_FOURTH);
        let measured = area_of(&pieces(&panel.shape));
        let holes: f64 = panel.openings.iter().map(|opening| area_of(&pieces(&opening.shape))).sum();
        prop_assert!((panel.area.square_nanometres() as f64 - measured + holes).abs() < AREA, "panel {}", panel.label);
    }
    let sheets = plan.sheets.as_ref().unwrap();
    prop_assert!(sheets.unplaced.is_empty(), "{:?}", sheets.unplaced);
    let sawn: usize = sheets.sheets.iter().map(|sheet| sheet.placements.len()).sum();
    prop_assert_eq!(sawn, plan.panels.len());
    Ok(())
}

fn corners<T: Copy>(path: &Path<T>, y: impl Fn(Length) -> Length) -> Vec<(i64, i64)> {
    let mut corners: Vec<(i64, i64)> =
        path.sides().iter().map(|side| (side.from.x.nanometres(), y(side.from.y).nanometres())).collect();
    corners.sort_unstable();
    corners
}

/// How far two lists of points lie apart; without end where they are not of one length.
fn apart(one: &[(i64, i64)], other: &[(i64, i64)]) -> i64 {
    let apart = |(a, b): (&(i64, i64), &(i64, i64))| (a.0 - b.0).abs().max((a.1 - b.1).abs());
    if one.len() == other.len() { one.iter().zip(other).map(apart).max().unwrap_or(0) } else { i64::MAX }
}

/// The panel of the mirrored plan that a panel becomes: the same board's, counted from the other side.
fn partner(plan: &Plan, index: usize) -> usize {
    let board = plan.panels[index].board;
    let of_board: Vec<usize> = (0..plan.panels.len()).filter(|at| plan.panels[*at].board == board).collect();
    let place = of_board.iter().position(|at| *at == index).unwrap();
    of_board[of_board.len() - 1 - place]
}

fn check_mirror(one: &Plan, other: &Plan) -> Result<(), TestCaseError> {
    let beam = one.deck.beam;
    prop_assert_eq!(&one.layouts, &other.layouts);
    prop_assert_eq!(one.panels.len(), other.panels.len());
    for (index, panel) in one.panels.iter().enumerate() {
        let mirror = &other.panels[partner(one, index)];
        let off = apart(&corners(&panel.shape, |y| y), &corners(&mirror.shape, |y| beam - y));
        prop_assert!(off <= NANOMETRE, "panel {} and its mirror {}: {off} nm", panel.label, mirror.label);
        prop_assert!((panel.area.square_nanometres() - mirror.area.square_nanometres()).abs() as f64 <= AREA);
    }
    let (rows, others) = (one.fasteners.as_ref().unwrap(), other.fasteners.as_ref().unwrap());
    let positions = |row: &deck_core::fasteners::Row, y: &dyn Fn(Length) -> Length| {
        let mut at: Vec<(i64, i64)> =
            row.positions.iter().map(|at| (row.station.nanometres(), y(*at).nanometres())).collect();
        at.sort_unstable();
        at
    };
    prop_assert_eq!(rows.rows.len(), others.rows.len());
    for row in &rows.rows {
        let panel = one.panels.iter().position(|panel| panel.label == row.panel).unwrap();
        let label = &other.panels[partner(one, panel)].label;
        let mirrored = others.rows.iter().filter(|other| other.panel == *label && other.member == row.member);
        let ours = positions(row, &|y| y);
        let found = mirrored.map(|other| (apart(&positions(other, &|y| beam - y), &ours), other));
        let Some((off, twin)) = found.min_by_key(|(off, _)| *off) else {
            return Err(TestCaseError::fail(format!("no mirror of the row of panel {} on {}", row.panel, row.member)));
        };
        prop_assert!(off <= TWO, "{off} nm: panel {} on member {}: {row:?} and {twin:?}", row.panel, row.member);
        prop_assert_eq!((row.moved, row.dropped, row.over_limit), (twin.moved, twin.dropped, twin.over_limit));
    }
    prop_assert_eq!((rows.count, rows.edge_count), (others.count, others.edge_count));
    prop_assert_eq!(one.sheets.as_ref().unwrap().sheet_count, other.sheets.as_ref().unwrap().sheet_count);
    Ok(())
}

proptest! {
    #![proptest_config(config())]

    #[test]
    fn boards_bear_and_panels_tile_the_deck(boat in boats()) {
        let plan = planned(&boat);
        prop_assert_eq!(plan.layouts.is_empty(), plan.no_layout.is_some());
        prop_assume!(!plan.layouts.is_empty());
        check_layout(&boat, &plan)?;
        check_tiling(&boat, &plan)?;
    }

    #[test]
    fn a_mirrored_boat_has_the_mirrored_plan(boat in boats()) {
        let plan = planned(&boat);
        let mirrored = planned(&boat.mirrored());
        prop_assert_eq!(plan.layouts.is_empty(), mirrored.layouts.is_empty());
        prop_assume!(!plan.layouts.is_empty());
        check_mirror(&plan, &mirrored)?;
    }

    #[test]
    fn inches_and_millimetres_agree_to_the_tick(boat in boats()) {
        let inches = planned(&boat);
        let millimetres = boat.plan(Unit::Millimetre).unwrap();
        prop_assert!(inches.rounded.is_empty() && millimetres.rounded.is_empty());
        prop_assert_eq!(&inches.layouts, &millimetres.layouts);
        prop_assert_eq!(&inches.panels, &millimetres.panels);
        prop_assert_eq!(&inches.fasteners, &millimetres.fasteners);
        prop_assert_eq!(&inches.sheets, &millimetres.sheets);
        prop_assert_eq!(&inches.frame, &millimetres.frame);
        prop_assert_eq!(&inches.deck, &millimetres.deck);
        prop_assert_eq!(&inches.takeoff, &millimetres.takeoff);
        let ids = |plan: &Plan| plan.cautions.iter().map(|caution| (caution.id.clone(), caution.about.len())).collect::<Vec<_>>();
        prop_assert_eq!(ids(&inches), ids(&millimetres));
    }

    #[test]
    fn a_plan_is_read_back_and_computed_again(boat in boats(), metric in any::<bool>()) {
        let unit = if metric { Unit::Millimetre } else { Unit::Inch };
        let job = boat.job(unit).unwrap();
        prop_assert_eq!(&Job::from_json(&job.to_json()).unwrap(), &job);
        let plan = boat.plan(unit).unwrap();
        let text = plan.to_json();
        let read = Plan::from_json(&text).unwrap();
        prop_assert_eq!(&read.to_json(), &text);
        prop_assert_eq!(&read.layouts, &plan.layouts);
        prop_assert_eq!(&read.fasteners, &plan.fasteners);
        let again = deck_core::plan::Planner::new(&read.job).effort(deck_core::nest::Effort::Quick).plan().unwrap();
        prop_assert_eq!(again.to_json(), text);
    }
}

/// Each thread writes in the unit of its own document; none sees another's.
#[test]
fn the_bytes_are_the_same_in_every_run_and_on_every_thread() {
    const THREADS: usize = 4;
    let mut runner = proptest::test_runner::TestRunner::new(config());
    let boats: Vec<Boat> = (0..12).map(|_| boats().new_tree(&mut runner).unwrap().current()).collect();
    let texts = |boats: &[Boat]| -> Vec<String> {
        let written =
            boats.iter().flat_map(|boat| [Unit::Inch, Unit::Millimetre].map(|unit| boat.plan(unit).unwrap().to_json()));
        written.collect()
    };
    let once = texts(&boats);
    assert!(once.iter().any(|text| text.contains("\"no_layout\": null")));
    std::thread::scope(|scope| {
        let runs: Vec<_> = (0..THREADS).map(|_| scope.spawn(|| texts(&boats))).collect();
        for run in runs {
            assert!(run.join().unwrap() == once, "two threads, two plans");
        }
    });
}
