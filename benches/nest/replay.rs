//! Is the answer one that a saw can make? Checked from the order and the answer alone, with none of the nest's code.
//!
//! The cut tree is sawn again piece by piece; what falls off must be the placements, in that order. Then the
//! placements are looked at without the tree: inside the sheet, apart from each other, of the right size and number.

use deck_core::nest::{Effort, Fill, FillPart, Grain, Nest, Part, Placement, Tree, Worth, fill, nest};
use deck_core::stock::{Saw, SawLine, Sheet};
use deck_core::{Area, Error, Length, Money};
use std::collections::BTreeMap;

/// A rectangle on a sheet: x, y, length, width, in nanometres.
type Place = [i64; 4];

/// A fault to be seen: its name, and how it gets into a sound answer.
type Spoil<'s> = (&'s str, &'s dyn Fn(&mut Nest));

/// Refuses an answer that is not what was ordered, or that the saw cannot make.
pub(crate) fn check(parts: &[Part], stock: &[Sheet], saw: &Saw, nest: &Nest) -> Result<(), String> {
    let mut used: BTreeMap<&str, u32> = BTreeMap::new();
    let mut placed: BTreeMap<&str, u32> = BTreeMap::new();
    let by_label: BTreeMap<&str, &Part> = parts.iter().map(|part| (part.label.as_str(), part)).collect();
    for sheet in &nest.sheets {
        let kind = stock.iter().find(|kind| kind.label == sheet.stock).ok_or("a sheet that is not in stock")?;
        *used.entry(&sheet.stock).or_default() += 1;
        check_sheet(&sheet.placements, &sheet.cuts, kind, saw)?;
        for placement in &sheet.placements {
            let part = by_label.get(placement.part.as_str()).ok_or("a part that was not ordered")?;
            check_size(placement, (part.length, part.width), part.grain)?;
            *placed.entry(&placement.part).or_default() += 1;
        }
    }
    for kind in stock {
        if kind.count.is_some_and(|count| used.get(kind.label.as_str()).is_some_and(|used| *used > count)) {
            return Err(format!("more sheets \"{}\" than there are", kind.label));
        }
    }
    for part in parts {
        let left: u32 = nest.unplaced.iter().filter(|out| out.part == part.label).map(|out| out.count).sum();
        if placed.get(part.label.as_str()).copied().unwrap_or(0) + left != part.count {
            return Err(format!("part \"{}\": placed and unplaced are not the {} ordered", part.label, part.count));
        }
    }
    if nest.sheet_count as usize == nest.sheets.len() { Ok(()) } else { Err("sheet_count is not their number".into()) }
}

fn check_sheet(placements: &[Placement], cuts: &Tree, kind: &Sheet, saw: &Saw) -> Result<(), String> {
    let (length, width) = kind.size();
    let whole = [0, 0, length.nanometres(), width.nanometres()];
    let mut sawn = Vec::new();
    saw_through(cuts, whole, saw.kerf.nanometres(), &mut sawn)?;
    let places: Vec<Place> = placements.iter().map(place).collect();
    let told = placements.iter().map(|placement| placement.part.as_str()).zip(places.iter().copied());
    if !sawn.into_iter().eq(told) {
        return Err("the saw makes other parts than those placed".into());
    }
    let trim = saw.trim.nanometres();
    let inside = |[x, y, l, w]: &Place| {
        *x >= trim && *y >= trim && *l > 0 && *w > 0 && x + l <= whole[2] - trim && y + w <= whole[3] - trim
    };
    if !places.iter().all(inside) {
        return Err("a part reaches over the sheet's edge or into its trim".into());
    }
    let pairs = places.iter().enumerate().flat_map(|(at, one)| places[at + 1..].iter().map(move |other| (one, other)));
    if pairs.into_iter().any(|(one, other)| overlap(one, other)) {
        return Err("two parts lie on each other".into());
    }
    Ok(())
}

fn place(placement: &Placement) -> Place {
    [placement.x, placement.y, placement.length, placement.width].map(Length::nanometres)
}

fn overlap(one: &Place, other: &Place) -> bool {
    one[0] < other[0] + other[2]
        && other[0] < one[0] + one[2]
        && one[1] < other[1] + other[3]
        && other[1] < one[1] + one[3]
}

/// Saws a piece up and lists the parts that come off, in order.
fn saw_through<'t>(tree: &'t Tree, piece: Place, kerf: i64, parts: &mut Vec<(&'t str, Place)>) -> Result<(), String> {
    let cut = match tree {
        Tree::Cut(cut) => cut,
        Tree::Part { part } => {
            parts.push((part, piece));
            return Ok(());
        }
        _ => return Ok(()),
    };
    let axis = usize::from(cut.cut == SawLine::Length);
    let (at, blade, extent) = (cut.at.nanometres(), cut.kerf.nanometres(), piece[axis + 2]);
    let runs_off = at + blade == extent && blade <= kerf;
    if at <= 0 || blade < 0 || at + blade > extent || (blade != kerf && !runs_off) {
        return Err(format!("a cut at {at} nm with a blade of {blade} nm through a piece of {extent} nm"));
    }
    let (mut first, mut second) = (piece, piece);
    first[axis + 2] = at;
    second[axis] += at + blade;
    second[axis + 2] -= at + blade;
    saw_through(&cut.children.0, first, kerf, parts)?;
    match &cut.children.1 {
        Some(tree) if second[axis + 2] > 0 => saw_through(tree, second, kerf, parts),
        None if second[axis + 2] == 0 => Ok(()),
        _ => Err("what lies behind a cut is not what the tree says".into()),
    }
}

fn check_size(placement: &Placement, size: (Length, Length), grain: Grain) -> Result<(), String> {
    let straight = (placement.length, placement.width) == size;
    let turned = (placement.width, placement.length) == size;
    let right = match grain {
        Grain::Length => straight,
        Grain::Width => turned,
        Grain::Any => straight || turned,
    };
    if right { Ok(()) } else { Err(format!("part \"{}\" lies with the wrong size or grain", placement.part)) }
}

/// Refuses a filled sheet that the saw cannot make, with more copies than allowed, or not worth what it says.
pub(crate) fn check_fill(parts: &[FillPart], sheet: &Sheet, saw: &Saw, fill: &Fill) -> Result<(), String> {
    check_sheet(&fill.placements, &fill.cuts, sheet, saw)?;
    let by_label: BTreeMap<&str, &FillPart> = parts.iter().map(|part| (part.label.as_str(), part)).collect();
    let mut placed: BTreeMap<&str, u32> = BTreeMap::new();
    let (mut area, mut value) = (0, 0);
    for placement in &fill.placements {
        let part = by_label.get(placement.part.as_str()).ok_or("a part that was not offered")?;
        check_size(placement, (part.length, part.width), part.grain)?;
        let copies = placed.entry(&placement.part).or_default();
        *copies += 1;
        if part.count.is_some_and(|count| *copies > count) {
            return Err(format!("more of part \"{}\" than are wanted", part.label));
        }
        area += Area::of(part.length, part.width).square_nanometres();
        value += part.value.map_or(0, Money::ten_thousandths);
    }
    let told = match fill.value {
        Worth::Value(told) => told.ten_thousandths() == value,
        Worth::Area(told) => told.square_nanometres() == area,
    };
    if told { Ok(()) } else { Err(format!("the parts on the sheet are not worth {} together", fill.value)) }
}

/// The check is worth nothing if it lets faults pass: sound answers are spoilt in several ways, and each must be seen.
pub(crate) fn sees_faults() -> Result<(), String> {
    sees_faults_of_nests()?;
    sees_faults_of_fills()
}

fn sees_faults_of_fills() -> Result<(), String> {
    let (parts, stock, saw) = small_order().map_err(|error| error.to_string())?;
    let parts: Vec<FillPart> = parts.into_iter().map(FillPart::from).collect();
    let sheet = stock.first().ok_or("no sheet")?;
    let sound = fill(sheet, &parts, &saw, Effort::Quick).map_err(|error| error.to_string())?;
    check_fill(&parts, sheet, &saw, &sound).map_err(|fault| format!("a sound fill is refused: {fault}"))?;
    let fewer: Vec<FillPart> = parts.iter().map(|part| part.clone().count(1)).collect();
    let mut dearer = sound.clone();
    dearer.value = Worth::Area(Area::ZERO);
    let mut moved = sound.clone();
    shift_first_cut(&mut moved.cuts, Length::inches(1));
    let seen = [
        ("more copies than are wanted", check_fill(&fewer, sheet, &saw, &sound)),
        ("a wrong value", check_fill(&parts, sheet, &saw, &dearer)),
        ("a cut moved in a fill", check_fill(&parts, sheet, &saw, &moved)),
    ];
    match seen.iter().find(|(_, checked)| checked.is_ok()) {
        Some((what, _)) => Err(format!("the replay does not see {what}")),
        None => Ok(()),
    }
}

fn sees_faults_of_nests() -> Result<(), String> {
    let (parts, stock, saw) = small_order().map_err(|error| error.to_string())?;
    let sound = nest(&parts, &stock, &saw, Effort::Quick).map_err(|error| error.to_string())?;
    check(&parts, &stock, &saw, &sound).map_err(|fault| format!("a sound answer is refused: {fault}"))?;
    let one = Length::inches(1);
    let spoils: [Spoil<'_>; 7] = [
        ("a placement shifted", &|nest| nest.sheets[0].placements[0].x += one),
        ("a placement left out", &|nest| drop(nest.sheets[0].placements.pop())),
        ("a part unplaced and placed", &|nest| nest.unplaced = unplaced(&sound)),
        ("a sheet lost", &|nest| drop(nest.sheets.pop())),
        ("an unknown sheet", &|nest| nest.sheets[0].stock.push('?')),
        ("a cut moved", &|nest| shift_first_cut(&mut nest.sheets[0].cuts, one)),
        ("a part turned against the grain", &|nest| turn_all(nest)),
    ];
    for (what, spoil) in spoils {
        let mut spoilt = sound.clone();
        spoil(&mut spoilt);
        if check(&parts, &stock, &saw, &spoilt).is_ok() {
            return Err(format!("the replay does not see {what}"));
        }
    }
    Ok(())
}

fn small_order() -> Result<(Vec<Part>, Vec<Sheet>, Saw), Error> {
    let part = |label: &str, length, width| Part::new(label, Length::inches(length), Length::inches(width));
    let parts = vec![part("a", 40, 30).count(3).grain(Grain::Length), part("b", 17, 11).count(5).grain(Grain::Length)];
    let stock = vec![Sheet::new("ply", Length::inches(96), Length::inches(48))];
    Ok((parts, stock, Saw::new().kerf("1/8 in".parse()?)))
}

fn unplaced(nest: &Nest) -> Vec<deck_core::nest::Unplaced> {
    let text = serde_json::json!([{ "part": nest.sheets[0].placements[0].part, "count": 1, "why": "spoilt" }]);
    serde_json::from_value(text).unwrap_or_default()
}

fn shift_first_cut(tree: &mut Tree, by: Length) {
    if let Tree::Cut(cut) = tree {
        cut.at += by;
    }
}

fn turn_all(nest: &mut Nest) {
    for placement in nest.sheets.iter_mut().flat_map(|sheet| &mut sheet.placements) {
        std::mem::swap(&mut placement.length, &mut placement.width);
    }
}
