//! Every fastener, measured again on random boats with a tape that knows only corners, centres and radii.

use deck_core::fasteners::{Row, RowKind};
use deck_core::panels::{Edge, Panel};
use deck_core::plan::Plan;
use deck_core::{Length, Unit};
use deck_tests::boat::{Boat, Notch, SIXTY_FOURTH};
use deck_tests::measure::{P, Piece, distance, inside, nm, pieces, polygon, stretches};
use deck_tests::random::boats;
use proptest::prelude::*;
use proptest::test_runner::RngSeed;

const BOATS: u32 = 400;
const SEED: u64 = 195;
/// What the tape may be off, in nanometres: positions beside arcs are rounded, and chords lie within 50 nm of theirs.
const TAPE: f64 = 100.0;
/// The tape is read at every 32nd of an inch to find where a row may start, and then closed in on.
const STEP: f64 = 25.4e6 / 32.0;

/// An opening: its sides, and the polygon that they enclose.
type Hole = (Vec<Piece>, Vec<P>);

/// A row, and what its fasteners must keep away from.
struct Line<'a> {
    boat: &'a Boat,
    row: &'a Row,
    panel: &'a Panel,
    sides: Vec<Piece>,
    holes: Vec<Hole>,
    station: f64,
    /// Port and starboard end of the board on this line, at the end distances in board and metal.
    ends: (f64, f64),
}

impl Line<'_> {
    fn in_ply(boat: &Boat) -> f64 {
        (boat.screw[3] * SIXTY_FOURTH) as f64
    }

    /// The distance that the row can keep from its panel's edges: less than asked for only where it is marked short.
    fn kept(&self) -> f64 {
        let (fore, aft) = (nm(self.panel.bounds.fore), nm(self.panel.bounds.aft));
        let asked = Line::in_ply(self.boat);
        if self.row.short_by.is_zero() { asked } else { asked.min(self.station - fore).min(aft - self.station) }
    }

    /// How much nearer than allowed a point of the row is to the nearest edge; below zero: it is free.
    fn lacks(&self, y: f64) -> f64 {
        let at = (self.station, y);
        let from_holes = self.holes.iter().map(|(sides, area)| {
            let off = distance(sides, at);
            Line::in_ply(self.boat) - if inside(area, at) { -off } else { off }
        });
        from_holes.fold(self.kept() - distance(&self.sides, at), f64::max)
    }

    /// The first free place from one end of the row towards the other.
    fn free_end(&self, from: f64, to: f64) -> Option<f64> {
        let sign = if to < from { -1.0 } else { 1.0 };
        if self.lacks(from) <= TAPE {
            return Some(from);
        }
        let steps = ((to - from).abs() / STEP).ceil();
        let mut k = 1.0;
        while k <= steps {
            let (mut blocked, mut free) = (from + sign * STEP * (k - 1.0), from + sign * STEP * k);
            if self.lacks(free) <= 0.0 {
                while (free - blocked).abs() > 0.1 {
                    let middle = blocked.midpoint(free);
                    if self.lacks(middle) <= 0.0 { free = middle } else { blocked = middle }
                }
                return Some(free).filter(|free| (to - free) * sign >= -TAPE);
            }
            k += 1.0;
        }
        None
    }

    fn check(&self) -> Result<(), TestCaseError> {
        let row = self.row;
        let (low, high) = (self.free_end(self.ends.0, self.ends.1), self.free_end(self.ends.1, self.ends.0));
        let (Some(low), Some(high)) = (low, high) else {
            // No room at all: the row is there, and told of.
            prop_assert!(row.positions.is_empty() && row.over_limit, "{row:?}: no room between {:?}", self.ends);
            return Ok(());
        };
        let mut at = Vec::new();
        for position in row.positions.iter().map(|position| nm(*position)) {
            prop_assert!(self.lacks(position) <= TAPE, "{row:?}\nlacks {} nm at {position}", self.lacks(position));
            prop_assert!(position >= low - TAPE && position <= high + TAPE, "{row:?}: past its ends {low} {high}");
            at.push(position);
        }
        let mut greatest = at.windows(2).map(|pair| pair[1] - pair[0]).fold(0.0, f64::max);
        greatest = match (at.first(), at.last()) {
            (Some(first), Some(last)) => greatest.max(first - low).max(high - last),
            _ => high - low,
        };
        prop_assert!((greatest - nm(row.greatest_gap)).abs() <= 2.0 * TAPE, "{row:?}: greatest gap {greatest}");
        prop_assert_eq!(row.over_limit, row.greatest_gap > row.limit);
        let spacing = if row.kind == RowKind::Edge { self.boat.screw[1] } else { self.boat.screw[2] };
        prop_assert_eq!(row.limit.nanometres(), spacing * SIXTY_FOURTH);
        if row.moved == 0 && row.dropped == 0 {
            self.check_division(&at, (low, high))?;
        }
        Ok(())
    }

    /// A row that nothing is in the way of: n = ⌈R / s⌉ + 1, evenly; staggered, one more, and on the half steps.
    fn check_division(&self, at: &[f64], (low, high): (f64, f64)) -> Result<(), TestCaseError> {
        let aft_of_seam =
            self.row.seam.is_some() && self.station - nm(self.panel.bounds.fore) < nm(self.panel.width) / 2.0;
        let count = ((high - low - TAPE).max(0.0) / nm(self.row.limit)).ceil();
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a whole number of steps in a row")]
        let steps = count as u32;
        let at_step = |k: f64| low + k * (high - low) / count;
        let expected: Vec<f64> = match (steps, self.boat.stagger && aft_of_seam) {
            (0, _) => vec![low],
            (_, false) => (0..=steps).map(|k| at_step(f64::from(k))).collect(),
            (_, true) => {
                let halves = (0..steps).map(|k| at_step(f64::from(k) + 0.5));
                std::iter::once(low).chain(halves).chain([high]).collect()
            }
        };
        prop_assert_eq!(at.len(), expected.len(), "{:?} from {} to {}", self.row, low, high);
        for (at, expected) in at.iter().zip(&expected) {
            prop_assert!((at - expected).abs() <= 2.0 * TAPE, "{:?}: {at} for {expected}", self.row);
        }
        Ok(())
    }
}

/// The row's station keeps both distances, or the row says how much it lacks.
fn check_station(boat: &Boat, row: &Row, panel: &Panel) -> Result<(), TestCaseError> {
    let flange = boat.flange_of(&boat.members[row.member - 1]);
    let (ply, metal) = (boat.screw[3] * SIXTY_FOURTH, boat.in_metal());
    let (fore, aft) = (panel.bounds.fore.nanometres(), panel.bounds.aft.nanometres());
    let (low, high) = ((flange.0 + metal).max(fore + ply), (flange.1 - metal).min(aft - ply));
    let station = row.station.nanometres();
    prop_assert_eq!(row.short_by.nanometres(), (low - high).max(0));
    if low <= high {
        prop_assert!((low..=high).contains(&station), "{row:?}");
    } else {
        prop_assert!(station >= flange.0.max(fore) && station <= flange.1.min(aft), "{row:?}");
    }
    Ok(())
}

/// The stretches of a panel on a member's line where a row could lie, with the line.
fn lines<'a>(boat: &'a Boat, plan: &'a Plan, row: &'a Row) -> Vec<Line<'a>> {
    let panel = plan.panels.iter().find(|panel| panel.label == row.panel).unwrap();
    let station = nm(row.station);
    let outline = polygon(&pieces(&plan.deck.outline));
    let deck = stretches(&outline, station);
    let (end, metal) = ((boat.screw[4] * SIXTY_FOURTH) as f64, boat.in_metal() as f64);
    let member = &boat.members[row.member - 1];
    let edge = |end: Option<i64>, deck: f64| end.map_or(deck, |end| (end * SIXTY_FOURTH) as f64);
    let port = edge(member.ends.0, deck.first().unwrap().0) + metal;
    let starboard = edge(member.ends.1, deck.last().unwrap().1) - metal;
    let sides = pieces(&panel.shape);
    let hole = |path| (pieces(path), polygon(&pieces(path)));
    stretches(&polygon(&sides), station)
        .into_iter()
        .map(|(from, to)| Line {
            boat,
            row,
            panel,
            sides: sides.clone(),
            holes: panel.openings.iter().map(|opening| hole(&opening.shape)).collect(),
            station,
            ends: ((from + end).max(port), (to - end).min(starboard)),
        })
        .collect()
}

fn check_plan(boat: &Boat, plan: &Plan) -> Result<(), TestCaseError> {
    let fastening = plan.fasteners.as_ref().unwrap();
    for row in &fastening.rows {
        let panel = plan.panels.iter().find(|panel| panel.label == row.panel).unwrap();
        check_station(boat, row, panel)?;
        let lines = lines(boat, plan, row);
        let middle = |line: &&Line<'_>| {
            row.positions
                .first()
                .is_none_or(|first| nm(*first) >= line.ends.0 - TAPE && nm(*first) <= line.ends.1 + TAPE)
        };
        let Some(line) = lines.iter().find(middle) else {
            return Err(TestCaseError::fail(format!("{row:?} lies in no stretch of its panel")));
        };
        line.check()?;
    }
    check_kinds(boat, plan)?;
    let count: usize = fastening.rows.iter().map(|row| row.positions.len()).sum();
    prop_assert_eq!((fastening.count, fastening.edge_count + fastening.field_count), (count, count));
    Ok(())
}

/// Stretches of a panel under which a member lies, on the line of its row.
fn stretches_over(boat: &Boat, plan: &Plan, panel: &Panel, number: usize) -> usize {
    let member = &boat.members[number - 1];
    let flange = boat.flange_of(member);
    let (ply, metal) = (boat.screw[3] * SIXTY_FOURTH, boat.in_metal());
    let (fore, aft) = (panel.bounds.fore.nanometres(), panel.bounds.aft.nanometres());
    let (low, high) = ((flange.0 + metal).max(fore + ply), (flange.1 - metal).min(aft - ply));
    let bearing = (flange.0.max(fore), flange.1.min(aft));
    let station = if low <= high { i64::midpoint(low, high) } else { i64::midpoint(bearing.0, bearing.1) } as f64;
    let end = |end: Option<i64>, deck: f64| end.map_or(deck, |end| (end * SIXTY_FOURTH) as f64);
    let beam = nm(plan.deck.beam);
    let (port, starboard) = (end(member.ends.0, 0.0), end(member.ends.1, beam));
    let of_panel = stretches(&polygon(&pieces(&panel.shape)), station);
    of_panel.iter().filter(|(from, to)| *to > port && *from < starboard).count()
}

/// Each member under a panel carries a row in it, the first and last an edge row; those beside a seam say so.
fn check_kinds(boat: &Boat, plan: &Plan) -> Result<(), TestCaseError> {
    for panel in &plan.panels {
        let (fore, aft) = (panel.bounds.fore.nanometres(), panel.bounds.aft.nanometres());
        let flanges = boat.members.iter().enumerate().map(|(index, member)| (index + 1, boat.flange_of(member)));
        let under: Vec<usize> =
            flanges.filter(|(_, flange)| flange.1 > fore && flange.0 < aft).map(|(number, _)| number).collect();
        let rows: Vec<&Row> =
            plan.fasteners.as_ref().unwrap().rows.iter().filter(|row| row.panel == panel.label).collect();
        prop_assert!(rows.iter().all(|row| under.contains(&row.member)));
        for number in &under {
            let wanted = stretches_over(boat, plan, panel, *number);
            let found = rows.iter().filter(|row| row.member == *number).count();
            prop_assert_eq!(found, wanted, "rows of panel {} on member {}", panel.label, number);
        }
        for row in &rows {
            let edge = under.first() == Some(&row.member) || under.last() == Some(&row.member);
            prop_assert_eq!(row.kind == RowKind::Edge, edge, "{:?} under {:?}", row, under);
            let beside = panel.shape.sides().iter().find_map(|side| match side.edge {
                Edge::Seam { seam, member } if member == Some(row.member) => Some(seam),
                _ => None,
            });
            prop_assert_eq!(row.seam, beside);
        }
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: BOATS, rng_seed: RngSeed::Fixed(SEED), failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn every_fastener_keeps_its_distances(boat in boats()) {
        let plan = boat.plan(Unit::Inch).unwrap();
        prop_assume!(!plan.layouts.is_empty());
        check_plan(&boat, &plan)?;
    }
}

/// A tongue too narrow for the end distances on both sides is not left out in silence.
#[test]
fn a_tongue_beside_the_notch_is_fastened_or_told_of() {
    let mut boat = Boat::plain(96, 96, 24);
    for (from_port, screws) in [(64, 0), (2 * 64, 1), (3 * 64, 2)] {
        boat.notch = Some(Notch { width: 30 * 64, depth: 12 * 64, from_port: Some(from_port), inside: 0, stern: 0 });
        let plan = boat.plan(Unit::Inch).unwrap();
        let rows: Vec<&Row> = plan.fasteners.as_ref().unwrap().rows.iter().filter(|row| row.member == 5).collect();
        assert_eq!((rows.len(), rows[0].positions.len()), (2, screws), "{from_port}");
        let told = plan.cautions.iter().any(|caution| caution.id == "fastener-gap");
        assert_eq!(told, screws == 0, "a tongue of {}", Length::inch_fraction(from_port, 64));
    }
}
