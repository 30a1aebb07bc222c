//! Laws of the nest.

use crate::saw_replay::{What, check_stages, replay};
use deck_core::length::{JsonForm, with_json_form};
use deck_core::nest::{Cost, CutSheet, Effort, Grain, Nest, Part, nest};
use deck_core::stock::{Saw, SawLine, Sheet, SheetGrain};
use deck_core::{Area, Length, Money, Unit};
use proptest::prelude::*;
use proptest::test_runner::RngSeed;

/// Random orders in each run of the laws.
const ORDERS: u32 = 3000;
/// The same orders in every run.
const SEED: u64 = 1987;

/// Eighths of an inch: coarse enough for parts to fit exactly now and then.
pub(crate) fn eighths(count: i64) -> Length {
    Length::inch_fraction(count, 8)
}

fn parts() -> impl Strategy<Value = Vec<Part>> {
    let grain = prop_oneof![2 => Just(Grain::Any), 1 => Just(Grain::Length), 1 => Just(Grain::Width)];
    let boat = prop_oneof![3 => Just(None), 1 => Just(Some("A")), 1 => Just(Some("B"))];
    let side = || prop_oneof![4 => 1..60_i64, 1 => Just(20_i64), 1 => Just(40_i64), 1 => 60..110_i64];
    let part = (side(), side(), 0..5_u32, grain, boat);
    prop::collection::vec(part, 0..9).prop_map(|parts| {
        let part = |(index, (length, width, count, grain, boat)): (usize, (i64, i64, u32, Grain, Option<&str>))| {
            // Labels repeat now and then.
            let part = Part::new(format!("p{}", index % 6), eighths(length), eighths(width)).count(count).grain(grain);
            boat.map_or(part.clone(), |boat| part.boat(boat))
        };
        parts.into_iter().enumerate().map(part).collect()
    })
}

fn stock() -> impl Strategy<Value = Vec<Sheet>> {
    let side = || prop_oneof![3 => 20..110_i64, 1 => Just(40_i64), 1 => Just(80_i64)];
    let count = prop_oneof![2 => Just(None), 3 => (0..5_u32).prop_map(Some)];
    let sheet = (side(), side(), count, 1..20_000_i128, prop::bool::weighted(0.25), prop::bool::weighted(0.2));
    (prop::collection::vec(sheet, 1..5), any::<bool>()).prop_map(|(sheets, priced)| {
        let sheet =
            |(index, (length, width, count, price, offcut, plain)): (usize, (i64, i64, Option<u32>, i128, _, _))| {
                let mut sheet = Sheet::new(format!("s{index}"), eighths(length), eighths(width)).offcut(offcut);
                sheet.count = count;
                sheet.price = (priced && !offcut).then(|| Money::from_ten_thousandths(price));
                if plain { sheet.grain(SheetGrain::None) } else { sheet }
            };
        sheets.into_iter().enumerate().map(sheet).collect()
    })
}

pub(crate) fn saw() -> impl Strategy<Value = Saw> {
    let kerf = prop_oneof![1 => Just(0_i64), 2 => Just(8_i64), 2 => 1..40_i64];
    let trim = prop_oneof![2 => Just(0_i64), 1 => 1..40_i64];
    let stages = prop_oneof![2 => Just(None), 3 => (1..4_u8).prop_map(Some)];
    let first = prop_oneof![2 => Just(None), 1 => Just(Some(SawLine::Length)), 1 => Just(Some(SawLine::Width))];
    let keep = prop_oneof![1 => Just(None), 1 => (1..60_i64, 1..60_i64).prop_map(Some)];
    (kerf, trim, stages, first, keep).prop_map(|(kerf, trim, stages, first, keep)| {
        let mut saw = Saw::new().kerf(Length::inch_fraction(kerf, 64)).trim(Length::inch_fraction(trim, 64));
        saw.stages = stages;
        saw.first = first;
        saw.keep = keep.map(|(length, width)| (eighths(length), eighths(width)));
        saw
    })
}

fn area(length: Length, width: Length) -> i128 {
    Area::of(length, width).square_nanometres()
}

fn units(cost: Cost) -> i128 {
    match cost {
        Cost::Money(money) => money.ten_thousandths(),
        Cost::Area(area) => area.square_nanometres(),
    }
}

/// The stock that a sheet was taken from; labels of random stock are unique.
fn stock_of<'s>(sheet: &CutSheet, stock: &'s [Sheet]) -> Result<&'s Sheet, String> {
    stock.iter().find(|candidate| candidate.label == sheet.stock).ok_or(format!("no stock {}", sheet.stock))
}

/// The saw's pieces are the placements, the offcuts and waste; nothing is lost.
pub(crate) fn check_replay(sheet: &CutSheet, stock: &Sheet, saw: &Saw) -> Result<(), String> {
    let (fallen, dust) = replay(sheet, stock, saw)?;
    let spot = |x: Length, y: Length, length: Length, width: Length| {
        [x.nanometres(), y.nanometres(), length.nanometres(), width.nanometres()]
    };
    let placed: Vec<(String, [i64; 4])> =
        sheet.placements.iter().map(|p| (p.part.clone(), spot(p.x, p.y, p.length, p.width))).collect();
    let sawn: Vec<(String, [i64; 4])> = fallen
        .iter()
        .filter_map(|piece| match &piece.what {
            What::Part(label) => Some((label.clone(), [piece.x, piece.y, piece.length, piece.width])),
            _ => None,
        })
        .collect();
    if placed != sawn {
        return Err(format!("placed {placed:?}\nsawn {sawn:?}"));
    }
    let kept: Vec<[i64; 4]> = sheet.offcuts.iter().map(|o| spot(o.x, o.y, o.length, o.width)).collect();
    let found: Vec<[i64; 4]> = fallen
        .iter()
        .filter(|piece| piece.what == What::Offcut)
        .map(|piece| [piece.x, piece.y, piece.length, piece.width])
        .collect();
    if kept != found {
        return Err(format!("offcuts {kept:?}, sawn {found:?}"));
    }
    for piece in &fallen {
        check_keep(piece.what == What::Waste, piece.what == What::Offcut, piece.length, piece.width, stock, saw)?;
    }
    let pieces: i128 = fallen.iter().map(|piece| i128::from(piece.length) * i128::from(piece.width)).sum();
    let (length, width) = stock.size();
    if pieces + dust == area(length, width) { Ok(()) } else { Err("area is lost".to_owned()) }
}

fn check_keep(waste: bool, offcut: bool, length: i64, width: i64, stock: &Sheet, saw: &Saw) -> Result<(), String> {
    let worth = saw.keep.is_some_and(|(least_length, least_width)| {
        let (least_length, least_width) = (least_length.nanometres(), least_width.nanometres());
        let turned = stock.grain == SheetGrain::None && length >= least_width && width >= least_length;
        (length >= least_length && width >= least_width) || turned
    });
    if offcut && !worth {
        return Err(format!("{length} by {width} is kept"));
    }
    // Trim strips are waste by contract, however long: they are as wide as the trim at most.
    let trim = saw.trim.nanometres();
    if waste && worth && length > trim && width > trim {
        Err(format!("{length} by {width} is thrown away"))
    } else {
        Ok(())
    }
}

/// Each placement is a copy of a part of that label and boat, lies as its grain asks, inside the trim.
pub(crate) fn check_placements(sheet: &CutSheet, stock: &Sheet, parts: &[Part], saw: &Saw) -> Result<(), String> {
    let (length, width) = stock.size();
    for placement in &sheet.placements {
        let is_copy = |part: &&Part| {
            let (along, across) = if placement.turned { (part.width, part.length) } else { (part.length, part.width) };
            let allowed = match part.grain {
                _ if stock.grain == SheetGrain::None => true,
                Grain::Any => true,
                Grain::Length => !placement.turned,
                Grain::Width => placement.turned,
            };
            part.label == placement.part
                && part.boat == placement.boat
                && (along, across) == (placement.length, placement.width)
                && allowed
        };
        if !parts.iter().any(|part| is_copy(&part)) {
            return Err(format!("{placement:?} is no part"));
        }
        let inside = placement.x >= saw.trim
            && placement.y >= saw.trim
            && placement.x + placement.length <= length - saw.trim
            && placement.y + placement.width <= width - saw.trim;
        if !inside {
            return Err(format!("{placement:?} reaches into the trim"));
        }
    }
    Ok(())
}

/// What is placed and what is not add up to what was wanted, label by label and boat by boat.
fn check_counts(nest: &Nest, parts: &[Part], stock: &[Sheet]) -> Result<(), String> {
    for part in parts {
        let wanted: u32 = parts.iter().filter(|other| other.label == part.label).map(|part| part.count).sum();
        let placed = nest.sheets.iter().flat_map(|sheet| &sheet.placements).filter(|p| p.part == part.label).count();
        let left: u32 = nest.unplaced.iter().filter(|u| u.part == part.label).map(|u| u.count).sum();
        if u32::try_from(placed).unwrap() + left != wanted {
            return Err(format!("{}: {placed} placed, {left} left, {wanted} wanted", part.label));
        }
    }
    for sheet in stock {
        let used = nest.sheets.iter().filter(|used| used.stock == sheet.label).count();
        if sheet.count.is_some_and(|count| used > count as usize) {
            return Err(format!("{used} sheets of {}", sheet.label));
        }
    }
    if nest.unplaced.iter().any(|unplaced| unplaced.count == 0 || unplaced.why.is_empty()) {
        return Err("an empty line under unplaced".to_owned());
    }
    Ok(())
}

fn check_cost(nest: &Nest, parts: &[Part], stock: &[Sheet]) -> Result<(), String> {
    let priced = stock.iter().any(|sheet| sheet.price.is_some());
    let mut sum = 0;
    for sheet in &nest.sheets {
        let stock = stock_of(sheet, stock)?;
        let (length, width) = stock.size();
        sum += match (priced, stock.offcut) {
            (true, _) => stock.price.map_or(0, Money::ten_thousandths),
            (false, true) => 0,
            (false, false) => area(length, width),
        };
    }
    let cost = units(nest.cost);
    let shares: i128 = nest.cost_by_boat.iter().map(|share| units(share.cost)).sum();
    let named = parts.iter().any(|part| part.boat.is_some());
    if cost != sum || nest.sheet_count as usize != nest.sheets.len() {
        return Err(format!("cost {cost}, sheets {sum}"));
    }
    if named && shares != cost || !named && !nest.cost_by_boat.is_empty() {
        return Err(format!("cost {cost}, shares {shares}"));
    }
    let bound = units(nest.bound);
    if bound > cost || bound < 0 || nest.proven && bound != cost {
        return Err(format!("cost {cost}, bound {bound}, proven {}", nest.proven));
    }
    Ok(())
}

fn check(nest: &Nest, parts: &[Part], stock: &[Sheet], saw: &Saw) -> Result<(), String> {
    for sheet in &nest.sheets {
        let stock = stock_of(sheet, stock)?;
        check_replay(sheet, stock, saw)?;
        check_placements(sheet, stock, parts, saw)?;
        check_stages(&sheet.cuts, saw)?;
        if sheet.placements.is_empty() {
            return Err("a sheet with nothing on it".to_owned());
        }
    }
    check_counts(nest, parts, stock)?;
    check_cost(nest, parts, stock)
}

fn json(nest: &Nest) -> String {
    with_json_form(JsonForm::Number(Unit::Inch), || serde_json::to_string(nest).unwrap())
}

/// Everything that does not depend on the order of equals: unplaced area and cost.
fn value(nest: &Nest, parts: &[Part]) -> (i128, i128) {
    let placed: i128 = nest
        .sheets
        .iter()
        .flat_map(|sheet| &sheet.placements)
        .map(|placement| area(placement.length, placement.width))
        .sum();
    let wanted: i128 = parts.iter().map(|part| area(part.length, part.width) * i128::from(part.count)).sum();
    (wanted - placed, units(nest.cost))
}

proptest! {
    #![proptest_config(ProptestConfig { cases: ORDERS, failure_persistence: None, rng_seed: RngSeed::Fixed(SEED), ..ProptestConfig::default() })]

    #[test]
    fn every_answer_can_be_sawn_and_adds_up((parts, stock, saw) in (parts(), stock(), saw())) {
        let effort = Effort::Quick;
        if let Ok(answer) = nest(&parts, &stock, &saw, effort) {
            if let Err(fault) = check(&answer, &parts, &stock, &saw) {
                prop_assert!(false, "{}\n{}", fault, json(&answer));
            }
            prop_assert_eq!(json(&answer), json(&nest(&parts, &stock, &saw, effort).unwrap()));
        } else {
            let gone = |sheet: &Sheet| sheet.length.min(sheet.width) <= saw.trim * 2;
            prop_assert!(stock.iter().all(gone) || stock.iter().all(|sheet| sheet.offcut), "refused");
        }
    }

    #[test]
    fn more_effort_is_never_worse((parts, stock, saw) in (parts(), stock(), saw())) {
        if let Ok(quick) = nest(&parts, &stock, &saw, Effort::Quick) {
            let longer = nest(&parts, &stock, &saw, Effort::Steps(200_000)).unwrap();
            prop_assert!(value(&longer, &parts) <= value(&quick, &parts));
            prop_assert_eq!(check(&longer, &parts, &stock, &saw), Ok(()));
            prop_assert!(units(quick.bound) <= units(longer.cost) || value(&longer, &parts).0 > 0);
        }
    }

    #[test]
    fn the_order_of_the_parts_does_not_matter((parts, stock, saw) in (parts(), stock(), saw())) {
        let mut turned = parts.clone();
        turned.reverse();
        let (one, other) = (nest(&parts, &stock, &saw, Effort::Quick), nest(&turned, &stock, &saw, Effort::Quick));
        if let (Ok(one), Ok(other)) = (one, other) {
            prop_assert_eq!(&one.sheets, &other.sheets);
        }
    }

    #[test]
    fn what_is_written_is_read_back((parts, stock, saw) in (parts(), stock(), saw())) {
        if let Ok(answer) = nest(&parts, &stock, &saw, Effort::Quick) {
            let text = serde_json::to_string(&answer).unwrap();
            prop_assert_eq!(&serde_json::from_str::<Nest>(&text).unwrap(), &answer);
            let numbers = json(&answer);
            let read: Nest = with_json_form(JsonForm::Number(Unit::Inch), || serde_json::from_str(&numbers).unwrap());
            prop_assert_eq!(json(&read), numbers);
        }
    }
}
