//! Suggested moves of openings against a search over a grid, with a tape that knows only corners, centres and radii.

use deck_core::geometry::Bounds;
use deck_core::openings::{Move, OpeningRules, Surroundings, check, least_move};
use deck_core::outline::{Opening, OpeningShape};
use deck_core::plan::Plan;
use deck_core::{Length, Unit};
use deck_tests::measure::{P, Piece, distance, inside, nm, pieces, polygon};
use deck_tests::random::boats;
use proptest::prelude::*;
use proptest::test_runner::RngSeed;

const BOATS: u32 = 60;
const SEED: u64 = 328;
const INCH: f64 = 25.4e6;
/// The grid around an opening, and the grid over the whole deck where nothing is said to be free.
const STEP: f64 = INCH / 4.0;
const COARSE: f64 = INCH * 3.0;
/// Steps of the tape along an opening's edge.
const ALONG: f64 = INCH / 2.0;
/// What a tape that stops every half inch reads too much of a corner, at two inches and more.
const TAPE: f64 = INCH / 50.0;
/// A nanometre for each rounding.
const EXACT: f64 = 3.0;
/// Misplaced openings that are looked at of a boat.
const MOST: usize = 2;

/// What an opening is held against.
struct Ground<'a> {
    plan: &'a Plan,
    sides: Vec<Piece>,
    deck: Vec<P>,
    rules: OpeningRules,
}

/// An opening as edges, radius and neighbours.
struct Hole {
    fore: f64,
    aft: f64,
    port: f64,
    starboard: f64,
    radius: f64,
    others: Vec<[f64; 4]>,
}

fn edges(bounds: &Bounds) -> [f64; 4] {
    [nm(bounds.fore), nm(bounds.aft), nm(bounds.port), nm(bounds.starboard)]
}

impl Hole {
    fn new(opening: &Opening, others: &[Bounds]) -> Hole {
        let radius = match opening.shape {
            OpeningShape::Round { diameter, .. } => nm(diameter) / 2.0,
            OpeningShape::Rectangle { corner_radius, .. } => nm(corner_radius),
        };
        let [fore, aft, port, starboard] = edges(&opening.path().bounds());
        Hole { fore, aft, port, starboard, radius, others: others.iter().map(edges).collect() }
    }

    /// Points along the edge of the rectangle less its radius.
    fn core(&self, (dx, dy): P) -> Vec<P> {
        let r = self.radius;
        let (x0, x1, y0, y1) = (self.fore + r + dx, self.aft - r + dx, self.port + r + dy, self.starboard - r + dy);
        let walk = |from: f64, to: f64| {
            let steps = ((to - from) / ALONG).ceil().max(1.0);
            let mut at = Vec::new();
            let mut k = 0.0;
            while k <= steps {
                at.push(from + (to - from) * k / steps);
                k += 1.0;
            }
            at
        };
        let mut points: Vec<P> = walk(x0, x1).into_iter().flat_map(|x| [(x, y0), (x, y1)]).collect();
        points.extend(walk(y0, y1).into_iter().flat_map(|y| [(x0, y), (x1, y)]));
        points
    }
}

impl Ground<'_> {
    /// How much the worst rule lacks with an opening moved; below zero it is free.
    fn lacks(&self, hole: &Hole, by: P) -> f64 {
        let (fore, aft) = (hole.fore + by.0, hole.aft + by.0);
        let gap = |from: f64, to: f64| (from - aft).max(fore - to);
        let members =
            self.plan.frame.iter().map(|member| nm(self.rules.from_flange) - gap(nm(member.fore), nm(member.aft)));
        let seams = self.plan.layouts[0].seams.iter();
        let seams = seams.map(|seam| nm(self.rules.from_seam) - gap(nm(seam.fore), nm(seam.aft)));
        let mut worst = members.chain(seams).fold(f64::NEG_INFINITY, f64::max);
        let (port, starboard) = (hole.port + by.1, hole.starboard + by.1);
        for [x0, x1, y0, y1] in &hole.others {
            let (dx, dy) = ((x0 - aft).max(fore - x1).max(0.0), (y0 - starboard).max(port - y1).max(0.0));
            let size = (x1 - x0).min(y1 - y0).min(aft - fore).min(starboard - port);
            worst = worst.max(size - dx.hypot(dy));
        }
        if worst > TAPE {
            return worst;
        }
        let reach = hole.radius + nm(self.rules.from_edge);
        let near = hole.core(by).into_iter().map(|point| distance(&self.sides, point)).fold(f64::INFINITY, f64::min);
        worst = worst.max(reach - near);
        let middle = (f64::midpoint(fore, aft), f64::midpoint(port, starboard));
        if worst <= TAPE && !inside(&self.deck, middle) { INCH } else { worst }
    }

    /// A point of a grid around no move that is free, nearer than a distance.
    fn free(&self, hole: &Hole, within: f64, step: f64) -> Option<P> {
        let mut x = -(within / step).floor() * step;
        while x <= within {
            let mut y = -(within / step).floor() * step;
            while y <= within {
                if x.hypot(y) < within && self.lacks(hole, (x, y)) < -TAPE {
                    return Some((x, y));
                }
                y += step;
            }
            x += step;
        }
        None
    }
}

fn check_move(ground: &Ground<'_>, hole: &Hole, found: &Move) -> Result<(), TestCaseError> {
    let by = (nm(found.aft), nm(found.starboard));
    let lacks = ground.lacks(hole, by);
    prop_assert!(lacks <= EXACT, "{found:?} lacks {lacks} nm");
    prop_assert!((by.0.hypot(by.1) - nm(found.distance)).abs() <= 1.0);
    if let Some(nearer) = ground.free(hole, nm(found.distance) - EXACT, STEP.max(nm(found.distance) / 40.0)) {
        return Err(TestCaseError::fail(format!("{found:?}: {nearer:?} is nearer and free")));
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: BOATS, rng_seed: RngSeed::Fixed(SEED), failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn no_place_of_a_grid_is_nearer_than_the_suggested_one(boat in boats()) {
        let job = boat.job(Unit::Inch).unwrap();
        let (plan, checked) = (boat.plan(Unit::Inch).unwrap(), job.check().unwrap());
        prop_assume!(!plan.layouts.is_empty());
        let rules = OpeningRules::default();
        let sides = pieces(checked.outline.path());
        let ground = Ground { plan: &plan, deck: polygon(&sides), sides, rules };
        let around =
            Surroundings { outline: &checked.outline, frame: &checked.frame, layout: plan.layouts.first() };
        let measured = check(&checked.openings, &around, &rules);
        let misplaced = measured.iter().enumerate().filter(|(_, found)| found.is_misplaced());
        for (index, found) in misplaced.take(MOST) {
            let others: Vec<Bounds> = checked
                .openings
                .iter()
                .enumerate()
                .filter(|(other, _)| *other != index)
                .map(|(_, other)| other.path().bounds())
                .collect();
            let opening = &checked.openings[index];
            let hole = Hole::new(opening, &others);
            // Where it lies, something is short by what is told.
            let short = found.clearances.iter().map(|clearance| clearance.short_by).max().unwrap_or(Length::ZERO);
            prop_assert!(short > Length::ZERO);
            if let Ok(least) = least_move(opening, &others, &around, &rules) {
                check_move(&ground, &hole, &least)?;
            } else {
                let free = ground.free(&hole, nm(checked.outline.length()), COARSE);
                prop_assert!(free.is_none(), "{} is free at {free:?}", opening.name);
            }
        }
    }
}
