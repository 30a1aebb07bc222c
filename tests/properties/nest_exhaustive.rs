//! The nest against every guillotine layout of a few parts on one sheet.

use deck_core::nest::{Cost, Effort, Grain, Part, nest};
use deck_core::stock::{Saw, Sheet};
use deck_core::{Length, Unit};
use proptest::prelude::*;
use proptest::test_runner::RngSeed;
use std::cell::Cell;

const ORDERS: u32 = 2000;
/// The same orders in every run.
const SEED: u64 = 1960;
/// One order in so many may be missed by quick, which searches nothing.
const MISSES_ONE_IN: u32 = 50;

/// A part: length, width, may it be turned.
type Sides = (i64, i64, bool);

/// Every smallest size of a piece out of which those parts can be sawn, a kerf apart.
///
/// The first cut through the piece has some of the parts on one side and the rest on the other.
fn pieces(parts: &[Sides], kerf: i64) -> Vec<(i64, i64)> {
    if let [(length, width, turns)] = parts {
        return if *turns { vec![(*length, *width), (*width, *length)] } else { vec![(*length, *width)] };
    }
    let mut all = Vec::new();
    // The last part stays on the second side, or each division would be looked at twice.
    for choice in 1..1_u32 << (parts.len() - 1) {
        let side = |first: bool| -> Vec<Sides> {
            let chosen = parts.iter().enumerate().filter(|(index, _)| (choice >> index & 1 == 1) == first);
            chosen.map(|(_, part)| *part).collect()
        };
        for (length, width) in pieces(&side(true), kerf) {
            for (other_length, other_width) in pieces(&side(false), kerf) {
                all.push((length + kerf + other_length, width.max(other_width)));
                all.push((length.max(other_length), width + kerf + other_width));
            }
        }
    }
    all.sort_unstable();
    all.dedup();
    all
}

fn millimetres(count: i64) -> Length {
    Length::of(count, Unit::Millimetre)
}

fn order() -> impl Strategy<Value = (Vec<Sides>, (i64, i64), i64)> {
    let part = (1..12_i64, 1..12_i64, any::<bool>());
    (prop::collection::vec(part, 1..5), (8..20_i64, 8..20_i64), 0..3_i64)
}

#[test]
fn what_fits_one_sheet_is_found_and_what_does_not_is_not() {
    let (fitting, missed) = (Cell::new(0_u32), Cell::new(0_u32));
    let mut runner = proptest::test_runner::TestRunner::new(ProptestConfig {
        cases: ORDERS,
        failure_persistence: None,
        rng_seed: RngSeed::Fixed(SEED),
        ..ProptestConfig::default()
    });
    let law = runner.run(&order(), |(sides, sheet, kerf)| {
        let part = |&(length, width, turns): &Sides| {
            let grain = if turns { Grain::Any } else { Grain::Length };
            Part::new("p", millimetres(length), millimetres(width)).grain(grain)
        };
        let parts: Vec<Part> = sides.iter().map(part).collect();
        let stock = [Sheet::new("s", millimetres(sheet.0), millimetres(sheet.1))];
        let ours = nest(&parts, &stock, &Saw::new().kerf(millimetres(kerf)), Effort::Quick).unwrap();
        let fits = pieces(&sides, kerf).iter().any(|piece| piece.0 <= sheet.0 && piece.1 <= sheet.1);
        let found = ours.unplaced.is_empty() && ours.sheet_count == 1;
        prop_assert!(fits || !found, "sawn out of one sheet, which is too small");
        if fits {
            fitting.set(fitting.get() + 1);
            missed.set(missed.get() + u32::from(!found));
            let Cost::Area(bound) = ours.bound else { panic!("a price") };
            let one = i128::from(sheet.0 * sheet.1) * 1_000_000_000_000;
            prop_assert!(bound.square_nanometres() <= one);
        }
        Ok(())
    });
    assert_eq!(law, Ok(()));
    assert!(fitting.get() > ORDERS / 4, "only {} orders fit", fitting.get());
    assert!(missed.get() * MISSES_ONE_IN <= fitting.get(), "{} of {} missed", missed.get(), fitting.get());
}
