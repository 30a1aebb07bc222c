//! Waste inside parts, looked at from outside: by the contract and the parts alone, with no code of the nest.

use deck_core::Length;
use deck_core::nest::{CutSheet, Effort, Grain, Nest, Part, Rectangle, nest};
use deck_core::stock::{Saw, Sheet, SheetGrain};
use proptest::prelude::*;

/// Where waste lies in a part, in eighths of its sides: from, extent, from, extent.
pub(crate) type Share = (i64, i64, i64, i64);

/// None for most parts; for some a piece of waste, or one in each half.
pub(crate) fn waste() -> impl Strategy<Value = Vec<Share>> {
    let share = |from: i64, to: i64| {
        (from..to, 1..8_i64, 0..8_i64, 1..9_i64)
            .prop_map(move |(x, length, y, width)| (x, length.min(to - x), y, width.min(8 - y)))
    };
    prop_oneof![
        3 => Just(Vec::new()),
        2 => share(0, 8).prop_map(|one| vec![one]),
        1 => (share(0, 4), share(4, 8)).prop_map(|(one, other)| vec![one, other]),
    ]
}

/// A part that is little more than a frame around its waste, at an edge or not.
pub(crate) fn frame() -> impl Strategy<Value = Vec<Share>> {
    let side = || (0..3_i64, 5..9_i64).prop_map(|(from, extent)| (from, extent.min(8 - from)));
    (side(), side()).prop_map(|((x, length), (y, width))| vec![(x, length, y, width)])
}

pub(crate) fn inside(part: &Part, shares: &[Share]) -> Vec<Rectangle> {
    let piece = |&(x, length, y, width): &Share| {
        let eighth = |side: Length, count: i64| Length::from_nanometres(side.nanometres() / 8 * count);
        Rectangle::new(
            eighth(part.length, x),
            eighth(part.width, y),
            eighth(part.length, length),
            eighth(part.width, width),
        )
    };
    let all: Vec<Rectangle> = shares.iter().map(piece).collect();
    let whole = |waste: &Rectangle| (waste.length, waste.width) == (part.length, part.width);
    if all.iter().any(whole) { Vec::new() } else { all }
}

/// The bare sheet that the saw gets, and the saw: waste inside a part is no larger than it, and is not trimmed.
pub(crate) fn sheet_of(nest: &Nest, sheet: &CutSheet, stock: &[Sheet], saw: &Saw) -> Result<(Sheet, Saw), String> {
    let Some(inside) = &sheet.inside else {
        let found = stock.iter().find(|candidate| candidate.label == sheet.stock);
        return Ok((found.ok_or(format!("no stock {}", sheet.stock))?.clone(), saw.clone()));
    };
    let host = nest.sheets.get(inside.sheet).ok_or("no sheet of the part")?;
    let (outer, _) = sheet_of(nest, host, stock, saw)?;
    let bare = Sheet::new(sheet.stock.clone(), inside.length, inside.width).grain(outer.grain).offcut(true);
    Ok((bare, saw.clone().trim(Length::ZERO)))
}

/// Each piece of waste is that of a part that is placed, lies in it a kerf off its wood, and is used once.
pub(crate) fn check_inside(nest: &Nest, parts: &[Part], stock: &[Sheet], saw: &Saw) -> Result<(), String> {
    let mut seen = Vec::new();
    for (index, sheet) in nest.sheets.iter().enumerate() {
        let Some(inside) = &sheet.inside else { continue };
        if inside.sheet >= index {
            return Err("waste before its part".to_owned());
        }
        let host = &nest.sheets[inside.sheet];
        let placement = host.placements.get(inside.copy).ok_or("no such copy")?;
        if *placement != inside.placement || placement.part != inside.part {
            return Err(format!("{:?} is not {placement:?}", inside.placement));
        }
        let part = |part: &&Part| {
            let lies = if placement.turned { (part.width, part.length) } else { (part.length, part.width) };
            (&part.label, &part.boat) == (&placement.part, &placement.boat)
                && lies == (placement.length, placement.width)
                && part.inside.iter().any(|waste| eaten(part, waste, saw.kerf) == inside.waste)
        };
        if !parts.iter().any(|candidate| part(&candidate)) {
            return Err(format!("no part {} has {:?}", inside.part, inside.waste));
        }
        let (outer, _) = sheet_of(nest, host, stock, saw)?;
        let (waste, sides) = (inside.waste, (inside.length, inside.width));
        let (as_is, across) = ((waste.length, waste.width), (waste.width, waste.length));
        let along_grain = if placement.turned { across } else { as_is };
        if sides != along_grain && (outer.grain == SheetGrain::Length || sides != as_is && sides != across) {
            return Err(format!("waste {waste:?} as a sheet of {sides:?}"));
        }
        let mark = (inside.sheet, inside.copy, waste);
        if seen.contains(&mark) {
            return Err(format!("{mark:?} is used twice"));
        }
        seen.push(mark);
    }
    Ok(())
}

/// The rectangle less one kerf of each side that has wood of the part, or its other waste, beyond it.
fn eaten(part: &Part, waste: &Rectangle, kerf: Length) -> Rectangle {
    let (mut left, mut top) = (waste.x, waste.y);
    let (mut right, mut bottom) = (waste.x + waste.length, waste.y + waste.width);
    if left > Length::ZERO {
        left += kerf;
    }
    if top > Length::ZERO {
        top += kerf;
    }
    if right < part.length {
        right -= kerf;
    }
    if bottom < part.width {
        bottom -= kerf;
    }
    Rectangle::new(left, top, right - left, bottom - top)
}

#[test]
fn a_frame_around_a_lid_costs_nothing_more_than_the_frame() {
    let inch = Length::inches;
    let frame =
        Part::new("frame", inch(40), inch(30)).inside(vec![Rectangle::new(inch(5), inch(5), inch(30), inch(20))]);
    let lid = Part::new("lid", inch(29), inch(19)).grain(Grain::Any);
    let stock = [Sheet::new("ply", inch(40), inch(30))];
    let saw = Saw::new().kerf(Length::inch_fraction(1, 8));
    let with = nest(&[frame.clone(), lid], &stock, &saw, Effort::Quick).unwrap();
    let without = nest(&[frame], &stock, &saw, Effort::Quick).unwrap();
    assert_eq!((with.cost, with.proven), (without.cost, true));
    assert_eq!((with.sheets.len(), without.sheets.len()), (2, 1));
}
