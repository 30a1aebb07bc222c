//! Rows beside old holes: cases to verify by hand, and the chain against going through every place of a grid.

use crate::fasteners::chain::Chain;
use crate::fasteners::*;
use crate::frame::{Frame, FrameSpec};
use crate::length::{Length, Unit};
use crate::math::IntervalSet;
use crate::outline::{Deck, Outline, Parametric};
use crate::panels::{Panel, panels};
use crate::seams::{BoardStock, Rules, SeamProblem, seams};
use proptest::prelude::*;

fn inches(text: &str) -> Length {
    Length::read(text, Unit::Inch).unwrap().length
}

fn all(texts: &[&str]) -> Vec<Length> {
    texts.iter().map(|text| inches(text)).collect()
}

/// A deck of one board on three members.
fn small(beam: &str) -> (Vec<Panel>, Frame, Outline) {
    let outline = Deck::Parametric(Parametric::new(inches("48"), inches(beam))).outline().unwrap();
    let frame = Frame::new(&FrameSpec::regular(Length::ZERO, inches("48"), inches("24"), inches("2"))).unwrap();
    let sheets = vec![BoardStock { label: "ply".into(), width: inches("48") }];
    let rules = Rules::new(inches("1/2"));
    let layout = seams(&SeamProblem::new(&frame, outline.length(), sheets, rules)).layouts.remove(0);
    (panels(&outline, &layout, &[], inches("3/4")), frame, outline)
}

fn schedule(spacing: &str, holes: &[&str]) -> Schedule {
    let screw = Fastener::new("screw", inches("1/4"), inches("2"));
    let old = |y: &&str| OldHole::new(2, inches("24"), inches(y), inches("1/4"), inches("3/4"));
    Schedule::new(screw, inches(spacing), inches(spacing), inches("3/8"))
        .end_distance(inches("1"))
        .old_holes(holes.iter().map(old).collect())
}

/// The row in the middle of a deck of that beam.
fn row(beam: &str, schedule: &Schedule) -> Row {
    let (boards, frame, outline) = small(beam);
    fasteners(&boards, &frame, &outline, schedule).rows.remove(1)
}

#[test]
fn a_hole_that_is_in_nobodys_way_changes_nothing() {
    // Every 7-5/6 from 1: the hole at 5 is further than 3/4 from each.
    let found = row("96", &schedule("8", &["5"]));
    assert_eq!((found.positions.len(), found.around), (13, None));
}

#[test]
fn both_sides_move_as_little_as_the_hole_asks() {
    // 1, 9, 17, 25 with gaps of 8 and a limit of 9. The hole at 9-1/4 pushes 9 back to 8-1/2; its image follows.
    let found = row("26", &schedule("9", &["9-1/4"]));
    assert_eq!(found.positions, all(&["1", "8-1/2", "17-1/2", "25"]));
    let told = found.around.unwrap();
    assert_eq!((told.moved, told.added, told.mirrored), (2, 0, true));
    assert_eq!((told.shift, told.greatest_shift), (inches("1"), inches("1/2")));
    assert!(!found.over_limit);
}

#[test]
fn one_side_alone_moves_where_the_image_is_barred() {
    // As above, and holes that bar 17-1/2 and its neighbours: 16-3/4 to 18-1/4, and 7-3/4 to 9-1/4.
    let found = row("26", &schedule("9", &["9-1/4", "17-3/4", "8-1/4"]));
    let told = found.around.unwrap();
    assert!(!told.mirrored || found.positions.iter().rev().map(|at| inches("26") - *at).eq(found.positions.clone()));
    assert!(found.greatest_gap <= inches("9"));
}

#[test]
fn a_row_without_slack_takes_one_more() {
    // 1, 9, 17, 25 with gaps of 8 and a limit of 8: none can move. Five are 6 apart: 1, 7, 13, 19, 25.
    let found = row("26", &schedule("8", &["9"]));
    assert_eq!(found.positions, all(&["1", "7", "13", "19", "25"]));
    let told = found.around.unwrap();
    assert_eq!((told.added, told.moved, found.over_limit), (1, 0, false));
}

#[test]
fn where_nothing_helps_the_gap_is_as_little_over_as_can_be() {
    // No place at all between 4-1/4 and 21-3/4: the gap there is 17-1/2 whatever is done.
    let holes: Vec<String> = (0..13).map(|step| format!("{}", 5.0 + 1.3 * f64::from(step))).collect();
    let holes: Vec<&str> = holes.iter().map(String::as_str).collect();
    let mut schedule = schedule("8", &holes);
    schedule.old_holes.push(OldHole::new(2, inches("24"), inches("21"), inches("1/4"), inches("3/4")));
    let found = row("26", &schedule);
    assert!(found.over_limit);
    assert_eq!(found.greatest_gap, inches("17-1/2"));
    assert_eq!(found.positions.len(), 4);
}

#[test]
fn a_bolt_goes_through_an_old_hole_again_and_a_screw_does_not() {
    let bolts = row("26", &schedule("9", &["9"]).reuse(true));
    assert_eq!(bolts.positions, all(&["1", "9", "17", "25"]));
    assert_eq!(bolts.around.unwrap().reused, 1);
    let near = row("26", &schedule("9", &["9-1/8"]).reuse(true));
    assert_eq!(near.positions, all(&["1", "9-1/8", "16-7/8", "25"]));
    let screws = row("26", &schedule("9", &["9"]));
    // Outboard by as much would leave 9-1/2 between them.
    assert_eq!(screws.positions, all(&["1", "9-3/4", "16-1/4", "25"]));
    // Off the row's line a bolt cannot use it, and stays clear by what is left of the distance.
    let mut off = schedule("9", &[]).reuse(true);
    off.old_holes.push(OldHole::new(2, inches("24.45"), inches("9"), inches("1/4"), inches("3/4")));
    let off = row("26", &off);
    assert_eq!(off.positions, all(&["1", "9.6", "16.4", "25"]));
}

/// The least sum of shifts over every choice of whole places, and whether there is one.
fn by_going_through_all(chain: &Chain<'_>) -> Option<i64> {
    fn from(chain: &Chain<'_>, index: usize, before: Option<i64>, most: i64) -> Option<i64> {
        if index == chain.wanted.len() {
            return Some(0);
        }
        let free = |place: &i64| {
            let after = before.is_none_or(|before| {
                let (least, most) = chain.steps[index - 1];
                (least..=most).contains(&(place - before))
            });
            let first = index > 0 || (chain.first.0..=chain.first.1).contains(place);
            let last = index + 1 < chain.wanted.len() || (chain.last.0..=chain.last.1).contains(place);
            after && first && last && !chain.free.within(*place, *place).is_empty()
        };
        let places = (0..=most).filter(free);
        places
            .filter_map(|place| Some((place - chain.wanted[index]).abs() + from(chain, index + 1, Some(place), most)?))
            .min()
    }
    from(chain, 0, None, 30)
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 3000, ..ProptestConfig::default() })]

    #[test]
    fn no_choice_of_places_shifts_less(
        mut wanted in proptest::collection::vec(0..30_i64, 1..5),
        blocked in proptest::collection::vec((0..30_i64, 2..9_i64), 0..5),
        steps in proptest::collection::vec((1..4_i64, 0..9_i64), 4),
        (first, last) in (0..8_i64, 0..8_i64),
    ) {
        wanted.sort_unstable();
        let mut free = IntervalSet::of(0, 30);
        for (from, depth) in &blocked {
            free.remove_open(*from, from + depth);
        }
        let steps: Vec<(i64, i64)> = steps.iter().map(|(least, more)| (*least, least + more)).collect();
        let chain = Chain {
            wanted: &wanted,
            free: &free,
            first: (0, first),
            last: (30 - last, 30),
            steps: &steps[..wanted.len() - 1],
        };
        let best = by_going_through_all(&chain);
        let found = chain.least_shift();
        let sum = found.as_ref().map(|places| places.iter().zip(&wanted).map(|(a, b)| (a - b).abs()).sum::<i64>());
        prop_assert_eq!(sum, best);
        prop_assert_eq!(chain.is_possible(), best.is_some());
        if let Some(places) = found {
            for (place, step) in places.windows(2).zip(chain.steps) {
                prop_assert!((step.0..=step.1).contains(&(place[1] - place[0])));
            }
            prop_assert!(places.iter().all(|place| !free.within(*place, *place).is_empty()));
        }
    }
}
