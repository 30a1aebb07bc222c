//! The cuts of a sheet as a list for the sawyer, and the sum that shows that nothing of the sheet is forgotten.

use crate::draw::desk::Desk;
use crate::draw::figure::{Align, Column, Table};
use crate::length::{Area, Length, Unit};
use crate::math::round_half_even;
use crate::nest::{Cut, Piece, Tree};
use crate::stock::SawLine;

/// A saw line with its number, and the piece that it goes through, where that lies on the sheet.
#[derive(Debug, Clone, Copy)]
pub(super) struct NumberedCut<'a> {
    pub number: usize,
    pub cut: &'a Cut,
    pub piece: Piece<'a>,
}

/// The saw lines of a sheet in sawing order, numbered from 1.
pub(super) fn numbered(cuts: &Tree, length: Length, width: Length) -> Vec<NumberedCut<'_>> {
    let lines = cuts.walk(length, width).filter_map(|piece| match piece.tree {
        Tree::Cut(cut) => Some((&**cut, piece)),
        _ => None,
    });
    lines.enumerate().map(|(index, (cut, piece))| NumberedCut { number: index + 1, cut, piece }).collect()
}

/// What is called what: labels of parts and names of offcuts, by where they lie on the sheet.
pub(super) struct Names<'a> {
    /// The words for the part at a place of the sheet.
    pub part: &'a dyn Fn(Length, Length) -> String,
    /// The words for the offcut at a place of the sheet.
    pub offcut: &'a dyn Fn(Length, Length) -> String,
}

/// The list of cuts: what lies on the saw, where the fence stands, what comes off on its two sides.
///
/// The fence is set to the piece that is kept: to the near edge, except where only waste lies on that side.
pub(super) fn table(desk: &Desk<'_>, cuts: &[NumberedCut<'_>], names: &Names<'_>) -> Table {
    let mut table = Table::new(vec![
        Column::new("No.", Align::Right),
        Column::new("Saw line", Align::Left),
        Column::words("Piece on the saw"),
        Column::new("Fence", Align::Right),
        Column::new("from", Align::Left),
        Column::words("At the fence"),
        Column::words("Beyond the blade"),
    ])
    .size(Desk::FIGURES);
    for numbered in cuts {
        table.row(row(desk, numbered, names));
    }
    table
}

fn row(desk: &Desk<'_>, numbered: &NumberedCut<'_>, names: &Names<'_>) -> [String; 7] {
    let NumberedCut { number, cut, piece } = numbered;
    let (first, second) = halves(cut, piece);
    let next = number + 1;
    let after = next + cuts_in(&cut.children.0);
    let say = |half: &Option<Piece<'_>>, cut_number: usize| {
        half.as_ref().map_or("nothing".to_owned(), |half| describe(half, cut_number, names))
    };
    let far_side_kept = is_waste(Some(&first)) && !is_waste(second.as_ref());
    let across = |half: &Piece<'_>| if cut.cut == SawLine::Length { half.width } else { half.length };
    let (line, near, far) = match cut.cut {
        SawLine::Length => ("rip", "top", "bottom"),
        SawLine::Width => ("crosscut", "left", "right"),
    };
    let whole = desk.ruler.size(piece.length, piece.width);
    let kept = if far_side_kept { second.as_ref().map_or(cut.at, across) } else { cut.at };
    let first = Some(first);
    let (at_fence, beyond) = if far_side_kept { (&second, &first) } else { (&first, &second) };
    let (fence_number, beyond_number) = if far_side_kept { (after, next) } else { (next, after) };
    [
        number.to_string(),
        line.to_owned(),
        whole,
        desk.ruler.both(kept),
        if far_side_kept { far } else { near }.to_owned(),
        say(at_fence, fence_number),
        say(beyond, beyond_number),
    ]
}

fn is_waste(half: Option<&Piece<'_>>) -> bool {
    half.is_none_or(|half| matches!(half.tree, Tree::Waste { .. }))
}

/// The two pieces that a cut leaves, where they lie on the sheet.
fn halves<'a>(cut: &'a Cut, piece: &Piece<'a>) -> (Piece<'a>, Option<Piece<'a>>) {
    let mut walk = piece.tree.walk(piece.length, piece.width).skip(1);
    let moved = |half: Piece<'a>| {
        let mut half = half;
        half.x += piece.x;
        half.y += piece.y;
        half
    };
    // A cut has a first child, which the walk meets next; the whole piece stands in for what cannot be missing.
    let first = walk.next().map_or(*piece, moved);
    let inside = cut.children.0.walk(first.length, first.width).count();
    let second = cut.children.1.as_ref().and_then(|_| walk.nth(inside - 1)).map(moved);
    (first, second)
}

fn cuts_in(tree: &Tree) -> usize {
    tree.walk(Length::ZERO, Length::ZERO).filter(|piece| matches!(piece.tree, Tree::Cut(_))).count()
}

fn describe(piece: &Piece<'_>, cut_number: usize, names: &Names<'_>) -> String {
    match piece.tree {
        Tree::Part { .. } => (names.part)(piece.x, piece.y),
        Tree::Offcut { .. } => (names.offcut)(piece.x, piece.y),
        Tree::Waste { .. } => "waste".to_owned(),
        Tree::Cut(_) => format!("to cut {cut_number}"),
    }
}

/// Areas by what became of them.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
struct Areas {
    parts: Area,
    offcuts: Area,
    waste: Area,
    kerfs: Area,
    trims: Area,
}

/// Edge trims are the first cuts of a sheet: one along each of its four edges.
const TRIM_CUTS: usize = 4;

impl Areas {
    fn of(cuts: &Tree, length: Length, width: Length, trimmed: bool) -> Areas {
        let mut areas = Areas::default();
        let mut number = 0;
        // Pieces that are waste of a trim cut: a trim takes off one strip, which the walk meets as waste.
        let trims = if trimmed { TRIM_CUTS } else { 0 };
        let mut strips: Vec<(Length, Length)> = Vec::new();
        for piece in cuts.walk(length, width) {
            let area = Area::of(piece.length, piece.width);
            match piece.tree {
                Tree::Cut(cut) => {
                    number += 1;
                    let along = if cut.cut == SawLine::Length { piece.length } else { piece.width };
                    let kerf = Area::of(cut.kerf, along);
                    if number <= trims {
                        areas.trims = areas.trims + kerf;
                        let (first, second) = halves(cut, &piece);
                        let waste = [Some(first), second].into_iter().flatten();
                        strips.extend(waste.filter(|half| is_waste(Some(half))).map(|half| (half.x, half.y)));
                    } else {
                        areas.kerfs = areas.kerfs + kerf;
                    }
                }
                Tree::Part { .. } => areas.parts = areas.parts + area,
                Tree::Offcut { .. } => areas.offcuts = areas.offcuts + area,
                Tree::Waste { .. } if strips.contains(&(piece.x, piece.y)) => areas.trims = areas.trims + area,
                Tree::Waste { .. } => areas.waste = areas.waste + area,
            }
        }
        areas
    }
}

/// The sum of areas. Each figure is the difference of rounded running sums, so that the printed ones add up exactly.
pub(super) fn sum_table(desk: &Desk<'_>, cuts: &Tree, (length, width): (Length, Length), trimmed: bool) -> Table {
    let areas = Areas::of(cuts, length, width, trimmed);
    let unit = if desk.imperial() { Unit::Inch } else { Unit::Centimetre };
    let mut table = Table::new(vec![
        Column::new("Check: the sheet is all accounted for", Align::Left),
        Column::new(if desk.imperial() { "in²" } else { "cm²" }, Align::Right),
    ]);
    let parts = [
        ("parts, by their rectangles", areas.parts),
        ("+ offcuts", areas.offcuts),
        ("+ waste", areas.waste),
        ("+ kerfs", areas.kerfs),
        ("+ edge trims", areas.trims),
    ];
    let mut sum = Area::ZERO;
    let mut printed = 0;
    for (words, area) in parts {
        sum = sum + area;
        let total = tenths(sum, unit);
        table.row([words.to_owned(), decimal(total - printed)]);
        printed = total;
    }
    let sheet = tenths(Area::of(length, width), unit);
    // The pieces of a cut tree tile the sheet; were they not to, the sheet would show it here.
    let sign = if printed == sheet { "=" } else { "≠" };
    table.bold_row([format!("{sign} sheet {}", desk.ruler.size(length, width)), decimal(sheet)]);
    table
}

/// An area in tenths of a squared unit.
fn tenths(area: Area, unit: Unit) -> i128 {
    let side = i128::from(unit.nanometres());
    round_half_even(area.square_nanometres() * 10, side * side)
}

fn decimal(tenths: i128) -> String {
    format!("{}.{}", tenths / 10, (tenths % 10).abs())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn sheet() -> Tree {
        serde_json::from_str(
            r#"{"cut": "length", "at": "30 in", "kerf": "0.125 in", "children": [
                {"cut": "width", "at": "40 in", "kerf": "0.125 in", "children": [{"part": "a"}, {"offcut": true}]},
                {"cut": "width", "at": "20 in", "kerf": "0.125 in", "children": [{"waste": true}, {"part": "b"}]}
            ]}"#,
        )
        .unwrap()
    }

    #[test]
    fn areas_tile_the_sheet() {
        let tree = sheet();
        let (length, width) = (Length::inches(96), Length::inches(48));
        let Areas { parts, offcuts, waste, kerfs, trims } = Areas::of(&tree, length, width, false);
        assert_eq!(parts + offcuts + waste + kerfs + trims, Area::of(length, width));
        assert_eq!(trims, Area::ZERO);
        assert_eq!(kerfs.decimal(Unit::Inch), "17.984375");
    }

    #[test]
    fn both_halves_of_a_cut_are_found_where_they_lie() {
        let tree = sheet();
        let cuts = numbered(&tree, Length::inches(96), Length::inches(48));
        assert_eq!(cuts.iter().map(|cut| cut.number).collect::<Vec<_>>(), [1, 2, 3]);
        let (first, second) = halves(cuts[2].cut, &cuts[2].piece);
        assert_eq!(first.y, "30.125 in".parse().unwrap());
        assert_eq!((second.unwrap().x, second.unwrap().y), ("20.125 in".parse().unwrap(), first.y));
        assert_eq!(cuts_in(&cuts[0].cut.children.0), 1);
    }
}
