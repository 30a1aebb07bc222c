//! Panels of random boats against two libraries for polygons.

use deck_core::plan::Plan;
use deck_core::{Length, Unit};
use deck_tests::boat::Boat;
use deck_tests::measure::{P, Piece, pieces};
use deck_tests::random::boats;
use geo::{Area, BooleanOps, Coord, LineString, MultiPolygon, Polygon};
use geo_booleanop::boolean::BooleanOp;
use geo_types_old as old;
use proptest::strategy::{Strategy, ValueTree};
use proptest::test_runner::{Config, RngSeed, TestRunner};
use std::collections::BTreeMap;
use std::panic::{AssertUnwindSafe, catch_unwind};

const BOATS: usize = 300;
const SEED: u64 = 60_000;
/// Chords to an arc.
const CHORDS: u32 = 48;
/// Both engines are fed whole micrometres.
const GRID: f64 = 1_000.0;
/// Corners on the grid are off by half a micrometre; along the sides of a board of 8 m that is 4 mm².
const AREA: f64 = 4e6;

/// Questions that `geo-booleanop` is known to fail, by boat and board: it panics, or its area is wrong, where an arc
/// starts or ends near another edge (that was seen in 4 of 20 000 pairs with arcs off the grid). On whole micrometres
/// none of 1211 boards fails. One that is listed and is answered well fails the test, too.
const MISSES: &[(usize, usize, &str)] = &[];

/// No arc of an outline turns further here; those of openings turn twice as far at most.
const QUARTER: f64 = std::f64::consts::FRAC_PI_2;

/// A path with its arcs as chords, in whole micrometres.
fn ring(sides: &[Piece]) -> Vec<P> {
    let mut ring = Vec::new();
    for side in sides {
        match *side {
            Piece::Line(from, _) => ring.push(from),
            Piece::Arc(centre, radius, from, to, left) => {
                let angle = |p: P| (p.1 - centre.1).atan2(p.0 - centre.0);
                let sign = if left { 1.0 } else { -1.0 };
                let turn = (sign * (angle(to) - angle(from))).rem_euclid(std::f64::consts::TAU) * sign;
                ring.push(from);
                ring.extend((1..CHORDS).map(|k| {
                    let at = angle(from) + turn * f64::from(k) / f64::from(CHORDS);
                    (centre.0 + radius * at.cos(), centre.1 + radius * at.sin())
                }));
            }
        }
    }
    ring.iter().map(|p| ((p.0 / GRID).round(), (p.1 / GRID).round())).collect()
}

/// What both libraries are asked: outline ∩ strip − openings.
struct Question {
    outline: Vec<P>,
    strip: Vec<P>,
    holes: Vec<Vec<P>>,
}

fn polygon(ring: &[P]) -> Polygon<f64> {
    Polygon::new(LineString::new(ring.iter().map(|&(x, y)| Coord { x, y }).collect()), Vec::new())
}

fn old_polygon(ring: &[P]) -> old::Polygon<f64> {
    old::Polygon::new(old::LineString(ring.iter().map(|&(x, y)| old::Coordinate { x, y }).collect()), Vec::new())
}

impl Question {
    fn by_geo(&self) -> MultiPolygon<f64> {
        let board = polygon(&self.outline).intersection(&polygon(&self.strip));
        self.holes.iter().fold(board, |board, hole| board.difference(&polygon(hole)))
    }

    /// Parts and area; none where the library panics.
    fn by_booleanop(&self) -> Option<(usize, f64)> {
        let ask = || {
            let board = old_polygon(&self.outline).intersection(&old_polygon(&self.strip));
            self.holes.iter().fold(board, |board, hole| board.difference(&old_polygon(hole)))
        };
        let found = catch_unwind(AssertUnwindSafe(ask)).ok()?;
        let ring = |ring: &old::LineString<f64>| {
            let corners: Vec<P> = ring.0.iter().map(|corner| (corner.x, corner.y)).collect();
            deck_tests::measure::area(&corners)
        };
        let area = |part: &old::Polygon<f64>| ring(part.exterior()) - part.interiors().iter().map(ring).sum::<f64>();
        Some((found.0.len(), found.0.iter().map(area).sum()))
    }
}

fn question(plan: &Plan, board: usize) -> Question {
    let board = &plan.layouts[0].boards[board];
    let micrometres = |length: Length| (length.nanometres() as f64 / GRID).round();
    let (fore, aft) = (micrometres(board.fore), micrometres(board.aft));
    let beam = micrometres(plan.deck.beam);
    let within = |opening: &&deck_core::plan::PlacedOpening| {
        opening.bounds.fore >= board.fore && opening.bounds.aft <= board.aft
    };
    Question {
        outline: ring(&pieces(&plan.deck.outline)),
        strip: vec![(fore, -1e6), (aft, -1e6), (aft, beam + 1e6), (fore, beam + 1e6)],
        holes: plan.openings.iter().filter(within).map(|opening| ring(&pieces(&opening.shape))).collect(),
    }
}

/// The panels of a board as polygons, from their own corners, and their number.
fn panels(plan: &Plan, board: usize) -> MultiPolygon<f64> {
    let of_board = plan.panels.iter().filter(|panel| panel.board == board + 1);
    let shape = |panel: &deck_core::panels::Panel| {
        let holes = panel.openings.iter().map(|opening| polygon(&ring(&pieces(&opening.shape))).into_inner().0);
        Polygon::new(polygon(&ring(&pieces(&panel.shape))).into_inner().0, holes.collect())
    };
    MultiPolygon::new(of_board.map(shape).collect())
}

fn random_plans() -> Vec<Plan> {
    let config = Config { rng_seed: RngSeed::Fixed(SEED), failure_persistence: None, ..Config::default() };
    let mut runner = TestRunner::new(config);
    let boats: Vec<Boat> = (0..BOATS).map(|_| boats().new_tree(&mut runner).unwrap().current()).collect();
    boats.iter().map(|boat| boat.plan(Unit::Inch).unwrap()).filter(|plan| !plan.layouts.is_empty()).collect()
}

#[test]
fn geo_cuts_the_same_panels() {
    let mut compared = 0;
    let mut greatest: f64 = 0.0;
    for plan in random_plans() {
        for board in 0..plan.layouts[0].boards.len() {
            let theirs = question(&plan, board).by_geo();
            let ours = panels(&plan, board);
            // Chords of an arc that a seam cuts differ from those of its two parts: by what lies between both.
            let differs = ours.xor(&theirs).unsigned_area();
            let chords = chord_slack(&plan);
            assert!(differs < AREA + chords, "board {} of {}: {differs} µm²", board + 1, plan.to_json());
            assert_eq!(
                ours.0.len(),
                theirs.0.iter().filter(|part| part.unsigned_area() > AREA).count(),
                "{}",
                plan.to_json()
            );
            let told = plan.panels.iter().filter(|panel| panel.board == board + 1).map(|panel| panel.area);
            let told = told.map(|area| area.square_nanometres() as f64).sum::<f64>() / GRID / GRID;
            let off = (told - theirs.unsigned_area()).abs();
            assert!(off < AREA + chords, "board {}: {off} µm² off", board + 1);
            greatest = greatest.max(differs / (AREA + chords));
            compared += 1;
        }
    }
    assert!(compared > 3 * BOATS, "only {compared} boards compared");
    assert!(greatest > 0.0, "nothing differs at all: the engines are not two");
}

/// The areas between arcs and their chords, all of a deck and its openings together, in square micrometres: what two ways
/// of flattening can differ by.
fn chord_slack(plan: &Plan) -> f64 {
    let rims = pieces(&plan.deck.outline).into_iter().map(|side| (side, QUARTER));
    let holes = plan.openings.iter().flat_map(|opening| pieces(&opening.shape)).map(|side| (side, 2.0 * QUARTER));
    let part = |(side, turn): (Piece, f64)| match side {
        // r² θ³ / (12 n²), twice: for the whole arc, and for its parts.
        Piece::Arc(_, radius, ..) => 2.0 * (radius / GRID).powi(2) * turn.powi(3) / 12.0 / f64::from(CHORDS).powi(2),
        Piece::Line(..) => 0.0,
    };
    rims.chain(holes).map(part).sum()
}

#[test]
fn an_older_library_finds_the_same_areas() {
    let quiet = std::panic::take_hook();
    std::panic::set_hook(Box::new(|_| {}));
    let mut found: BTreeMap<(usize, usize), &str> = BTreeMap::new();
    let mut compared = 0;
    for (boat, plan) in random_plans().iter().enumerate() {
        for board in 0..plan.layouts[0].boards.len() {
            let ours = panels(plan, board);
            let wrong = match question(plan, board).by_booleanop() {
                None => Some("panics"),
                Some((_, area)) if (area - ours.unsigned_area()).abs() > AREA + chord_slack(plan) => Some("wrong area"),
                Some((parts, _)) if parts != ours.0.len() => Some("wrong parts"),
                Some(_) => None,
            };
            compared += 1;
            found.extend(wrong.map(|what| ((boat, board + 1), what)));
        }
    }
    std::panic::set_hook(quiet);
    let listed: BTreeMap<(usize, usize), &str> =
        MISSES.iter().map(|&(boat, board, what)| ((boat, board), what)).collect();
    assert!(compared > 3 * BOATS, "only {compared} boards compared");
    assert_eq!(found, listed, "{} of {compared}", found.len());
}
