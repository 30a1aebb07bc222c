//! Seams of a covering against every choice on a grid, and drops off rolls against every way to share them out.

use deck_core::Length;
use deck_core::covering::{Across, RollPiece, cut_list, seam_lines};
use proptest::prelude::*;

fn inches(count: i64) -> Length {
    Length::inches(count)
}

/// A deck in whole inches: extent, wrap, roll, narrowest piece, stretches to keep off.
type Case = (i64, i64, i64, i64, Vec<(i64, i64)>);

fn cases() -> impl Strategy<Value = Case> {
    (20..80_i64, 0..3_i64, 14..50_i64, 1..14_i64).prop_flat_map(|(extent, wrap, roll, least)| {
        let zones = proptest::collection::vec((0..extent, 1..24_i64), 0..4);
        zones.prop_map(move |zones| {
            let zones = zones.into_iter().map(|(from, size)| (from, from + size)).collect();
            (extent, wrap, roll, least, zones)
        })
    })
}

/// Every choice of seams on whole inches, fewest first and then the greatest: what is kept off ends on whole inches, so the
/// best choice of all lies on the grid.
fn enumerated((extent, wrap, roll, least, zones): &Case) -> Option<Vec<i64>> {
    let free = |at: i64| zones.iter().all(|(from, to)| at <= *from || *to <= at);
    let places: Vec<i64> = (0..=*extent).filter(|at| free(*at)).collect();
    let mut layers: Vec<Vec<i64>> = vec![Vec::new()];
    if extent + 2 * wrap <= *roll {
        return Some(Vec::new());
    }
    for _ in 0..8 {
        let mut next = Vec::new();
        for seams in &layers {
            let before = seams.last().copied().unwrap_or(-wrap);
            for &at in places.iter().filter(|at| (*least..=*roll).contains(&(**at - before))) {
                let mut longer = seams.clone();
                longer.push(at);
                next.push(longer);
            }
        }
        let whole = |seams: &&Vec<i64>| {
            let rest = extent + wrap - seams.last().copied().unwrap_or(-wrap);
            (*least..=*roll).contains(&rest)
        };
        if let Some(best) = next.iter().filter(whole).max() {
            return Some(best.clone());
        }
        // Of those with the same last seam only the greatest can win.
        next.sort();
        next.reverse();
        let mut kept: Vec<Vec<i64>> = Vec::new();
        for seams in next {
            if !kept.iter().any(|other| other.last() == seams.last()) {
                kept.push(seams);
            }
        }
        layers = kept;
    }
    None
}

/// The least number of rolls over every way to share drops out.
fn least_rolls(drops: &[i64], roll: i64, rooms: &mut Vec<i64>) -> usize {
    let Some((first, rest)) = drops.split_first() else { return rooms.len() };
    let mut best = usize::MAX;
    for place in 0..=rooms.len() {
        if place == rooms.len() {
            rooms.push(roll);
        }
        if rooms[place] >= *first {
            rooms[place] -= first;
            best = best.min(least_rolls(rest, roll, rooms));
            rooms[place] += first;
        }
    }
    rooms.pop();
    best
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 400, ..ProptestConfig::default() })]

    #[test]
    fn no_choice_of_seams_is_better(case in cases()) {
        let (extent, wrap, roll, least, zones) = &case;
        let keep_off = zones.iter().map(|(from, to)| (inches(*from), inches(*to))).collect();
        let across = Across::new(inches(*extent), inches(*wrap), inches(*roll), inches(*least)).keep_off(keep_off);
        let found = seam_lines(&across);
        let expected = enumerated(&case).map(|seams| seams.into_iter().map(inches).collect::<Vec<Length>>());
        prop_assert_eq!(found, expected, "{:?}", case);
    }

    #[test]
    fn no_sharing_out_takes_fewer_rolls(drops in proptest::collection::vec(5..60_i64, 0..8), roll in 60..100_i64) {
        let pieces = drops.iter().map(|drop| RollPiece::new("boat", "drop", inches(*drop))).collect();
        let found = cut_list(pieces, inches(roll));
        prop_assert!(found.proven);
        prop_assert_eq!(found.rolls.len(), if drops.is_empty() { 0 } else { least_rolls(&drops, roll, &mut Vec::new()) });
        prop_assert!(usize::try_from(found.bound).unwrap() <= found.rolls.len());
        let mut cut: Vec<Length> = found.rolls.iter().flat_map(|roll| &roll.drops).map(|drop| drop.length).collect();
        let mut asked: Vec<Length> = drops.into_iter().map(inches).collect();
        cut.sort();
        asked.sort();
        prop_assert_eq!(cut, asked);
        for roll_cut in &found.rolls {
            prop_assert_eq!(roll_cut.used + roll_cut.left, inches(roll));
            prop_assert!(!roll_cut.left.is_negative());
        }
    }
}
