//! The fill against every way to cut a few parts from a small sheet.
//!
//! Every set of parts that can be cut from a piece is found by trying every whole place for the next cut, under the
//! contract's rules for kerf, stages and the first line. It shares no code with the fill.

use deck_core::nest::{Effort, FillPart, Grain, Worth};
use deck_core::stock::{Saw, SawLine, Sheet};
use deck_core::{Length, Money, Unit, fill};
use proptest::prelude::*;
use proptest::test_runner::{RngSeed, TestRunner};
use std::cell::Cell;
use std::collections::BTreeMap;

const SHEETS: u32 = 800;
/// The same sheets in every run.
const SEED: u64 = 1977;

/// Length, width, copies, may it be turned, value.
type Kind = (i64, i64, u8, bool, i64);

/// A piece: length, width, direction of the last line, turns of the line that are left.
type State = (i64, i64, Option<SawLine>, u8);

struct Every<'k> {
    kinds: &'k [Kind],
    kerf: i64,
    first: Option<SawLine>,
    known: BTreeMap<State, Vec<u32>>,
}

impl Every<'_> {
    /// A set of parts as one number: two bits for each kind. None where there are too many of a kind.
    fn join(&self, one: u32, other: u32) -> Option<u32> {
        let copies = |set: u32, kind: usize| set >> (2 * kind) & 3;
        let fits = |(kind, limits): (usize, &Kind)| copies(one, kind) + copies(other, kind) <= u32::from(limits.2);
        self.kinds.iter().enumerate().all(fits).then(|| one + other)
    }

    fn turns(&self, last: Option<SawLine>, turns: u8, line: SawLine) -> Option<u8> {
        match last {
            Some(last) if last == line => Some(turns),
            None if self.first.is_some_and(|first| first != line) => None,
            _ => turns.checked_sub(1),
        }
    }

    /// Every set of parts that can be cut from a piece.
    fn sets(&mut self, state: State) -> Vec<u32> {
        if let Some(known) = self.known.get(&state) {
            return known.clone();
        }
        let (length, width, last, turns) = state;
        let mut sets = vec![0];
        for (index, &(one, other, copies, may_turn, _)) in self.kinds.iter().enumerate() {
            let lies = [(one, other), if may_turn { (other, one) } else { (one, other) }];
            let alone = |size: (i64, i64)| {
                let fits = size.0 <= length && size.1 <= width;
                let whole_side = size.0 == length || size.1 == width;
                let counted =
                    [SawLine::Length, SawLine::Width].iter().any(|&line| self.turns(last, turns, line).is_some());
                copies > 0 && fits && (whole_side || counted)
            };
            if lies.into_iter().any(alone) {
                sets.push(1 << (2 * index));
            }
        }
        for line in [SawLine::Length, SawLine::Width] {
            let Some(left) = self.turns(last, turns, line) else { continue };
            let whole = if line == SawLine::Length { width } else { length };
            for at in 1..whole {
                let rest = (whole - at - self.kerf).max(0);
                let piece = |extent: i64| match line {
                    SawLine::Length => (length, extent, Some(line), left),
                    SawLine::Width => (extent, width, Some(line), left),
                };
                let (before, behind) = (self.sets(piece(at)), self.sets(piece(rest)));
                for one in &before {
                    sets.extend(behind.iter().filter_map(|other| self.join(*one, *other)));
                }
                sets.sort_unstable();
                sets.dedup();
            }
        }
        sets.sort_unstable();
        sets.dedup();
        self.known.insert(state, sets.clone());
        sets
    }

    fn best(&mut self, sheet: (i64, i64), stages: u8) -> i64 {
        let sets = self.sets((sheet.0, sheet.1, None, stages));
        let value = |set: &u32| -> i64 {
            self.kinds.iter().enumerate().map(|(index, kind)| i64::from(set >> (2 * index) & 3) * kind.4).sum()
        };
        sets.iter().map(value).max().unwrap()
    }
}

fn millimetres(count: i64) -> Length {
    Length::of(count, Unit::Millimetre)
}

/// Turns of the line that no pattern of six parts exceeds.
const MANY: u8 = 6;

#[test]
fn nothing_is_better_than_what_is_proven() {
    let kind = (1..7_i64, 1..7_i64, 1..3_u8, any::<bool>(), 0..50_i64);
    let line = prop_oneof![2 => Just(None), 1 => Just(Some(SawLine::Length)), 1 => Just(Some(SawLine::Width))];
    let stages = prop_oneof![2 => Just(None), 3 => (1..4_u8).prop_map(Some)];
    let sheets = (prop::collection::vec(kind, 1..4), (3..10_i64, 3..10_i64), 0..3_i64, any::<bool>(), stages, line);
    let proven = Cell::new(0_u32);
    let mut runner = TestRunner::new(ProptestConfig {
        cases: SHEETS,
        failure_persistence: None,
        rng_seed: RngSeed::Fixed(SEED),
        ..ProptestConfig::default()
    });
    let law = runner.run(&sheets, |(mut kinds, sheet, kerf, by_area, stages, first)| {
        if by_area {
            for kind in &mut kinds {
                kind.4 = kind.0 * kind.1;
            }
        }
        let part = |&(length, width, copies, turns, value): &Kind| {
            let grain = if turns { Grain::Any } else { Grain::Length };
            let part = FillPart::new("p", millimetres(length), millimetres(width)).count(u32::from(copies));
            part.grain(grain).value(Money::from_ten_thousandths(i128::from(value) * 10_000))
        };
        let parts: Vec<FillPart> = kinds.iter().map(part).collect();
        let mut saw = Saw::new().kerf(millimetres(kerf));
        (saw.stages, saw.first) = (stages, first);
        let ours =
            fill(&Sheet::new("s", millimetres(sheet.0), millimetres(sheet.1)), &parts, &saw, Effort::Standard).unwrap();
        let (Worth::Value(value), Worth::Value(bound)) = (ours.value, ours.bound) else { panic!("areas") };
        let mut every = Every { kinds: &kinds, kerf, first, known: BTreeMap::new() };
        let best = i128::from(every.best(sheet, stages.unwrap_or(MANY))) * 10_000;
        prop_assert!(
            value.ten_thousandths() <= best && best <= bound.ten_thousandths(),
            "{} {} {}",
            value,
            best,
            bound
        );
        prop_assert_eq!(value.ten_thousandths(), best);
        proven.set(proven.get() + u32::from(ours.proven));
        Ok(())
    });
    assert_eq!(law, Ok(()));
    assert!(proven.get() * 20 > SHEETS * 19, "only {} proven", proven.get());
}
