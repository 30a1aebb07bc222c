//! The fewest sheets of one size that the parts can possibly take, from their shapes.
//!
//! # Method
//! A dual-feasible function f maps [0, 1] to [0, 1] so that numbers whose sum is at most 1 keep a sum of at most 1.
//! With one such function for the lengths and one for the widths, the sum of f(length) · g(width) over the parts of a
//! sheet is at most 1, so that its sum over all parts, rounded up, is a number of sheets that cannot be undercut:
//! Fekete and Schepers, "A general framework for bounds for higher-dimensional orthogonal packing problems",
//! Mathematical Methods of Operations Research 60 (2004). A part that may be turned counts with the way round that
//! asks for less. The functions are theirs, and the third one of Carlier, Clautiaux and Moukrim, "New reduction
//! procedures and lower bounds for the two-dimensional bin packing problem with fixed orientation", Computers and
//! Operations Research 34 (2007).

use super::super::problem::Size;

/// Copies of a part, the ways in which it may lie.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Item {
    pub(super) lies: [Option<Size>; 2],
    pub(super) count: u32,
}

/// Functions of each parametrised kind, in each direction. More find better bounds in proportion to their square in
/// time.
const PARAMETERS: usize = 6;
/// Rounding functions u(1) … u(k): the first counts parts longer than half a sheet, the next ones thirds and so on.
const ROUNDINGS: i64 = 4;

/// A dual-feasible function on whole numbers up to `whole`.
#[derive(Debug, Clone, Copy)]
enum Function {
    /// x.
    Plain,
    /// What is longer than the rest of a short one counts as the whole, what is shorter as nothing.
    Threshold(i64),
    /// x rounded down to a multiple of 1/k, unless (k + 1) x is whole.
    Rounded(i64),
    /// x in steps of a given size, rounded down below a half and up above it.
    Stepped(i64),
}

impl Function {
    fn scale(self, whole: i64) -> i128 {
        let whole_wide = i128::from(whole);
        match self {
            Function::Plain | Function::Threshold(_) => whole_wide,
            Function::Rounded(k) => whole_wide * i128::from(k),
            Function::Stepped(step) => 2 * i128::from(whole / step),
        }
    }

    fn value(self, x: i64, whole: i64) -> i128 {
        match self {
            Function::Plain => i128::from(x),
            Function::Threshold(short) if x > whole - short => i128::from(whole),
            Function::Threshold(short) => i128::from(if x < short { 0 } else { x }),
            Function::Rounded(k) => {
                let (k, x, whole) = (i128::from(k), i128::from(x), i128::from(whole));
                let grown = (k + 1) * x;
                if grown % whole == 0 { x * k } else { grown / whole * whole }
            }
            Function::Stepped(step) => match (2 * i128::from(x)).cmp(&i128::from(whole)) {
                std::cmp::Ordering::Less => 2 * i128::from(x / step),
                std::cmp::Ordering::Equal => i128::from(whole / step),
                std::cmp::Ordering::Greater => 2 * i128::from(whole / step - (whole - x) / step),
            },
        }
    }
}

/// A number of sheets of that size that cannot be undercut.
pub(super) fn fewest_sheets(items: &[Item], sheet: Size) -> i128 {
    let along = Table::new(items, sheet.0, |size| size.0);
    let across = Table::new(items, sheet.1, |size| size.1);
    let mut fewest = 0;
    for (scale, lengths) in &along.rows {
        for (other_scale, widths) in &across.rows {
            let sum: i128 = items.iter().zip(lengths).zip(widths).map(|((item, l), w)| weight(item, *l, *w)).sum();
            let one = scale * other_scale;
            if one > 0 {
                fewest = fewest.max((sum + one - 1) / one);
            }
        }
    }
    fewest
}

fn weight(item: &Item, lengths: [i128; 2], widths: [i128; 2]) -> i128 {
    let ways = item.lies.iter().zip(lengths.iter().zip(&widths)).filter(|(lies, _)| lies.is_some());
    // Values are below 2^44 and counts below 2^20: the sum over a million copies fits.
    ways.map(|(_, (length, width))| length * width).min().unwrap_or(0) * i128::from(item.count)
}

/// Every function's values for every item, both ways round, with the value that stands for a whole sheet.
struct Table {
    rows: Vec<(i128, Vec<[i128; 2]>)>,
}

impl Table {
    fn new(items: &[Item], whole: i64, extent: fn(Size) -> i64) -> Table {
        let row = |function: Function| {
            let value = |size: Option<Size>| size.map_or(0, |size| function.value(extent(size).min(whole), whole));
            (function.scale(whole), items.iter().map(|item| item.lies.map(value)).collect())
        };
        Table { rows: functions(items, whole, extent).into_iter().map(row).collect() }
    }
}

fn functions(items: &[Item], whole: i64, extent: fn(Size) -> i64) -> Vec<Function> {
    let mut short: Vec<i64> = items.iter().flat_map(|item| item.lies).flatten().map(extent).collect();
    short.retain(|&x| x > 0 && x <= whole / 2);
    short.sort_unstable();
    short.dedup();
    let every = short.len().div_ceil(PARAMETERS).max(1);
    let chosen: Vec<i64> = short.into_iter().step_by(every).collect();
    let mut functions = vec![Function::Plain];
    functions.extend((1..=ROUNDINGS).map(Function::Rounded));
    functions.extend(chosen.iter().flat_map(|&x| [Function::Threshold(x), Function::Stepped(x)]));
    functions
}

#[cfg(test)]
mod tests {
    use super::*;

    fn fixed(length: i64, width: i64, count: u32) -> Item {
        Item { lies: [Some((length, width)), None], count }
    }

    #[test]
    fn parts_over_half_a_sheet_take_one_each() {
        assert_eq!(fewest_sheets(&[fixed(6, 6, 5)], (10, 10)), 5);
        assert_eq!(fewest_sheets(&[fixed(5, 5, 5)], (10, 10)), 2);
        assert_eq!(fewest_sheets(&[fixed(4, 10, 5)], (10, 10)), 3);
        assert_eq!(fewest_sheets(&[], (10, 10)), 0);
    }

    #[test]
    fn a_turn_that_asks_for_less_is_believed() {
        let turning = Item { lies: [Some((6, 5)), Some((5, 6))], count: 2 };
        assert_eq!(fewest_sheets(&[turning], (10, 10)), 1);
        assert_eq!(fewest_sheets(&[fixed(6, 6, 2)], (10, 10)), 2);
    }

    const WHOLE: i64 = 12;

    /// The law that makes the bound valid, tried on every multiset of numbers that fill a small whole.
    #[test]
    fn no_sum_within_the_whole_grows_beyond_it() {
        let mut functions = vec![Function::Plain];
        functions.extend((1..=ROUNDINGS).map(Function::Rounded));
        functions.extend((1..=WHOLE / 2).flat_map(|x| [Function::Threshold(x), Function::Stepped(x)]));
        for function in functions {
            add_to(function, WHOLE, WHOLE, 0);
        }
    }

    fn add_to(function: Function, room: i64, largest: i64, sum: i128) {
        assert!(sum <= function.scale(WHOLE), "{function:?}");
        for x in 1..=room.min(largest) {
            add_to(function, room - x, x, sum + function.value(x, WHOLE));
        }
    }
}
