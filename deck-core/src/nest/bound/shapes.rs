//! Every part's value under every pair of functions.
//!
//! # Method
//! A part that may be turned counts with the way round that asks for less. A part beside which nothing else can lie
//! counts as if it filled the sheet that way: Boschetti and Mingozzi, "The two-dimensional finite bin packing problem",
//! 4OR 1 (2003).

use super::super::problem::Size;
use super::function::{Chain, Function};

/// Copies of a part, the ways in which it may lie.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Item {
    pub(super) lies: [Option<Size>; 2],
    pub(super) count: u32,
}

/// Parts under pairs that are looked at in the time of a step.
const VALUES: u64 = 4;
/// Rounding functions u(1) … u(k): the first counts parts longer than half a sheet, the next ones thirds and so on.
const ROUNDINGS: i64 = 5;
/// Vanderbeck's functions for 2 … k.
const UNDERS: i64 = 7;
/// Pairs of functions are so many at least, however little work is allowed.
const LEAST_FUNCTIONS: usize = 9;
/// Every step is tried where sheets have no more positions than this; longer ones are tried in parts of the parts.
const FEW: i64 = 256;
/// Fractions of the parts' sides that are tried as steps.
const FRACTIONS: i64 = 4;

/// Items and sheets under a choice of functions for each direction.
#[derive(Debug)]
pub(super) struct Shapes {
    items: Vec<Item>,
    along: Vec<Row>,
    across: Vec<Row>,
}

/// One function's values for every item, both ways round, and for every sheet.
#[derive(Debug)]
struct Row {
    items: Vec<[i64; 2]>,
    sheets: Vec<i64>,
}

/// One function for each direction.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Pair(usize, usize);

impl Shapes {
    /// Tables of as many functions as the work allows, if all their pairs are looked at once; a unit of work is one part
    /// under one pair. `sheets` are the sizes of the stock in order, none for stock that is not asked.
    pub(super) fn new(items: &[Item], sheets: &[Option<Size>], work: u64) -> Shapes {
        let largest = |extent: fn(Size) -> i64| sheets.iter().flatten().map(|&size| extent(size)).max().unwrap_or(0);
        let whole = (largest(|size| size.0), largest(|size| size.1));
        if whole.0 <= 0 || whole.1 <= 0 || items.is_empty() {
            return Shapes { items: Vec::new(), along: Vec::new(), across: Vec::new() };
        }
        let items = widened(items, sheets, whole);
        let pairs = work / (items.len() as u64 + 1);
        let most = usize::try_from(pairs.isqrt()).unwrap_or(usize::MAX).max(LEAST_FUNCTIONS);
        let along = table(&items, sheets, whole.0, |size| size.0, most);
        let across = table(&items, sheets, whole.1, |size| size.1, most);
        Shapes { items, along, across }
    }

    pub(super) fn pairs(&self) -> impl Iterator<Item = Pair> + use<> {
        let (along, across) = (self.along.len(), self.across.len());
        (0..along).flat_map(move |first| (0..across).map(move |second| Pair(first, second)))
    }

    /// Steps that it takes to look at a pair.
    pub(super) fn work_of_one(&self) -> u64 {
        1 + self.items.len() as u64 / VALUES
    }

    /// Steps that it takes to look at every pair.
    pub(super) fn work(&self) -> u64 {
        (self.along.len() * self.across.len()) as u64 * self.work_of_one()
    }

    /// The values of one copy of each item, the least of the ways in which it may lie, with its count.
    pub(super) fn each(&self, pair: Pair) -> impl Iterator<Item = (i128, u32)> + '_ {
        let along = self.along.get(pair.0).map_or(&[][..], |row| &row.items);
        let across = self.across.get(pair.1).map_or(&[][..], |row| &row.items);
        self.items.iter().zip(along.iter().zip(across)).map(|(item, (along, across))| {
            let ways = item.lies.iter().zip(along.iter().zip(across)).filter(|(lies, _)| lies.is_some());
            let least = ways.map(|(_, (&length, &width))| i128::from(length) * i128::from(width)).min();
            (least.unwrap_or(0), item.count)
        })
    }

    /// What each sheet holds at most.
    pub(super) fn gives(&self, pair: Pair) -> impl Iterator<Item = i128> + '_ {
        let along = self.along.get(pair.0).map_or(&[][..], |row| &row.sheets);
        let across = self.across.get(pair.1).map_or(&[][..], |row| &row.sheets);
        along.iter().zip(across).map(|(&length, &width)| i128::from(length) * i128::from(width))
    }
}

/// The items, those beside which nothing lies made as wide as the narrowest sheet that holds them, and so along it.
fn widened(items: &[Item], sheets: &[Option<Size>], whole: Size) -> Vec<Item> {
    let along = least_two(items, |size| size.0);
    let across = least_two(items, |size| size.1);
    let widen = |item: &Item| {
        // The least of the others: the least of all, unless this item is the only one that has it.
        let beside = |least: (i64, i64), own: fn(Size) -> i64| {
            let smallest = item.lies.iter().flatten().map(|&size| own(size)).min();
            if item.count == 1 && smallest == Some(least.0) { least.1 } else { least.0 }
        };
        let others = (beside(along, |size| size.0), beside(across, |size| size.1));
        let lies = |size: Size| {
            let holding = sheets.iter().flatten().filter(|sheet| size.0 <= sheet.0 && size.1 <= sheet.1);
            let least = holding.copied().reduce(|one, other| (one.0.min(other.0), one.1.min(other.1)));
            let full = |own: i64, other: i64, whole: i64, least: i64| if own > whole - other { least } else { own };
            least.map_or(size, |least| {
                (full(size.0, others.0, whole.0, least.0), full(size.1, others.1, whole.1, least.1))
            })
        };
        Item { lies: item.lies.map(|size| size.map(lies)), count: item.count }
    };
    items.iter().map(widen).collect()
}

/// The least extent of any item in any position, and the least of all others.
fn least_two(items: &[Item], extent: fn(Size) -> i64) -> (i64, i64) {
    let mut two = (i64::MAX, i64::MAX);
    for item in items {
        let Some(own) = item.lies.iter().flatten().map(|&size| extent(size)).min() else { continue };
        let copies = if item.count > 1 { 2 } else { 1 };
        for _ in 0..copies {
            if own < two.0 {
                two = (own, two.0);
            } else if own < two.1 {
                two.1 = own;
            }
        }
    }
    two
}

fn table(items: &[Item], sheets: &[Option<Size>], whole: i64, extent: fn(Size) -> i64, most: usize) -> Vec<Row> {
    let row = |chain: Chain| {
        let value = |size: Option<Size>| size.map_or(0, |size| chain.value(extent(size).clamp(0, whole), whole));
        Row {
            items: items.iter().map(|item| item.lies.map(value)).collect(),
            sheets: sheets.iter().map(|&size| value(size)).collect(),
        }
    };
    functions(items, whole, extent, most).into_iter().map(row).collect()
}

/// At most about so many functions: each kind with parameters gets its share, spread evenly over what could matter.
fn functions(items: &[Item], whole: i64, extent: fn(Size) -> i64, most: usize) -> Vec<Chain> {
    let mut sides: Vec<i64> = items.iter().flat_map(|item| item.lies).flatten().map(extent).collect();
    sides.sort_unstable();
    sides.dedup();
    let short: Vec<i64> = sides.iter().copied().filter(|&x| x > 0 && x <= whole / 2).collect();
    let steps = steps(&sides, whole);
    let mut plain = vec![Function::Plain];
    plain.extend((1..=ROUNDINGS).map(Function::Rounded));
    let share = most.saturating_sub(plain.len()) / 4;
    plain.extend(spread(&short, share).map(Function::Threshold));
    plain.extend(spread(&steps, share).map(Function::Stepped));
    if share > usize::try_from(UNDERS).unwrap_or(0) {
        plain.extend((2..=UNDERS).map(Function::Under));
        plain.extend(spread(&steps, share).map(Function::Slanted));
    }
    let mut chains: Vec<Chain> = plain.iter().map(|&function| Chain(Function::Plain, function)).collect();
    // What is left of the allowance goes to chains: small parts are first counted as nothing, the rest is then rounded.
    let left = most.saturating_sub(chains.len());
    let thresholds: Vec<i64> = spread(&short, left / 8).collect();
    for short in thresholds {
        let second = (1..=ROUNDINGS).map(Function::Rounded).chain((3..=5).map(Function::Under));
        chains.extend(second.map(|second| Chain(Function::Threshold(short), second)));
    }
    chains
}

/// Steps that can make a difference.
fn steps(sides: &[i64], whole: i64) -> Vec<i64> {
    if whole <= FEW {
        return (1..=whole / 2).collect();
    }
    let parts = |x: &i64| {
        let x = *x;
        (1..=FRACTIONS).flat_map(move |part| [x / part, (whole - x) / part])
    };
    let mut steps: Vec<i64> = sides.iter().flat_map(parts).filter(|&x| x > 0 && x <= whole / 2).collect();
    steps.sort_unstable();
    steps.dedup();
    steps
}

/// So many of them, evenly.
fn spread(values: &[i64], most: usize) -> impl Iterator<Item = i64> + '_ {
    let every = values.len().div_ceil(most.max(1)).max(1);
    values.iter().copied().step_by(every)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn fixed(length: i64, width: i64, count: u32) -> Item {
        Item { lies: [Some((length, width)), None], count }
    }

    #[test]
    fn parts_beside_which_nothing_lies_count_as_wide_as_the_sheet() {
        // Six wide, and the narrowest other is five: each takes a strip of the sheet for itself.
        let items = [fixed(6, 5, 2), fixed(5, 5, 2)];
        let wide = widened(&items, &[Some((10, 10))], (10, 10));
        assert_eq!(wide[0].lies[0], Some((10, 5)));
        assert_eq!(wide[1].lies[0], Some((5, 5)));
        // The only narrow one does not stand beside itself.
        let wide = widened(&[fixed(6, 10, 1), fixed(7, 10, 1)], &[Some((12, 10))], (12, 10));
        assert_eq!((wide[0].lies[0], wide[1].lies[0]), (Some((12, 10)), Some((12, 10))));
        // On the narrower sheet it is no wider than that.
        let wide = widened(&[fixed(6, 10, 2)], &[Some((11, 10)), Some((7, 10))], (11, 10));
        assert_eq!(wide[0].lies[0], Some((7, 10)));
    }
}
