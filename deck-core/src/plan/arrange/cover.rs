//! The least that sheets can cost for a deck of so many boards, whatever seams it has.
//!
//! # Method
//! Where the deck is as wide as its beam, every board reaches from side to side, so of these boards each is as long as the
//! beam. Together they are as wide as that stretch less the gaps. On a sheet that is shorter than two of them they lie
//! side by side, so their widths, a kerf behind each, fit its width and one kerf; on a longer sheet their areas, a kerf at
//! two sides of each, fit its own with the same added. What sheets must hold is covered at least cost by branch and bound
//! over whole numbers of each, with the fractional knapsack as its bound (Dantzig 1957). Derived here.

use crate::geometry::Limit;
use crate::job::Checked;
use crate::length::Length;
use crate::stock::{Sheet, SheetGrain};

/// The least cost of a deck of `boards` boards, in the smallest units of a nest's cost; none where the stock does not
/// reach.
pub(super) fn least_cost(checked: &Checked, boards: usize) -> Option<i128> {
    let kinds = kinds(checked);
    let demand = demand(checked, boards);
    Cover { kinds: &kinds, best: None, steps: 0 }.answer(demand)
}

/// Choices that are looked at before the bound is left at the fractional one.
const MOST_STEPS: usize = 20_000;

/// A sheet as it covers: how much it holds, at what cost, and how many there are.
struct Kind {
    holds: i128,
    cost: i128,
    count: Option<i128>,
}

/// What all boards that reach from side to side take, in nanometres of width, a kerf behind each.
fn demand(checked: &Checked, boards: usize) -> i128 {
    let rules = &checked.settings.rules;
    let nm = |length: Length| i128::from(length.nanometres());
    let count = i128::try_from(boards).unwrap_or(i128::MAX);
    let (fore, aft) = full_stretch(checked);
    let width = nm(aft - fore) - (count - 1) * nm(rules.gap) - nm(rules.end_tolerance);
    let least = nm(rules.least_width).max(1);
    // Boards that lie where the deck is narrower need not reach.
    let outside = nm(fore) / least + nm(checked.outline.length() - aft) / least;
    let widest = widest(checked).max(1);
    let full = (count - outside).max((width + widest - 1).div_euclid(widest)).max(1);
    width.max(0) + full * nm(checked.settings.saw.kerf)
}

/// The longest stretch along which the deck is as wide as its beam.
fn full_stretch(checked: &Checked) -> (Length, Length) {
    let (path, beam) = (checked.outline.path(), checked.outline.beam());
    let mut stations: Vec<Length> = path.sides().iter().map(|side| side.from.x).collect();
    stations.sort_unstable();
    stations.dedup();
    let is_full = |fore: Length, aft: Length| {
        let spans = |station: Length, limit: Limit| {
            let stretches = path.breadths(station, limit);
            stretches.first().is_some_and(|first| first.0.is_zero())
                && stretches.last().is_some_and(|last| last.1 == beam)
        };
        spans(fore, Limit::Aft) && spans(aft, Limit::Fore) && spans(fore.midpoint(aft), Limit::Fore)
    };
    let mut best = (Length::ZERO, Length::ZERO);
    let mut start: Option<Length> = None;
    for pair in stations.windows(2) {
        let [fore, aft] = pair else { continue };
        if !is_full(*fore, *aft) {
            start = None;
            continue;
        }
        let from = *start.get_or_insert(*fore);
        if *aft - from > best.1 - best.0 {
            best = (from, *aft);
        }
    }
    best
}

/// Sides of a sheet less its trims, along the strength axis first.
fn usable(checked: &Checked, sheet: &Sheet) -> (i128, i128) {
    let (length, width) = sheet.size();
    let trim = checked.settings.saw.trim * 2;
    (i128::from((length - trim).nanometres()), i128::from((width - trim).nanometres()))
}

fn widest(checked: &Checked) -> i128 {
    let side = |sheet: &Sheet| {
        let (length, width) = usable(checked, sheet);
        if sheet.grain == SheetGrain::None { length.max(width) } else { width }
    };
    checked.stock.iter().map(side).max().unwrap_or(0)
}

fn kinds(checked: &Checked) -> Vec<Kind> {
    let beam = i128::from(checked.outline.beam().nanometres());
    let kerf = i128::from(checked.settings.saw.kerf.nanometres());
    let priced = checked.stock.iter().any(|sheet| sheet.price.is_some());
    let kind = |sheet: &Sheet| {
        let (length, width) = usable(checked, sheet);
        let turned = sheet.grain == SheetGrain::None && width >= beam;
        let holds = match (length >= beam, turned) {
            (false, false) => 0,
            (true, false) if length < beam * 2 + kerf => width + kerf,
            (false, true) if width < beam * 2 + kerf => length + kerf,
            _ => (length + kerf) * (width + kerf) / (beam + kerf),
        };
        let area = i128::from(sheet.length.nanometres()) * i128::from(sheet.width.nanometres());
        let cost = match sheet.price {
            Some(price) => price.ten_thousandths(),
            None if sheet.offcut || priced => 0,
            None => area,
        };
        Kind { holds, cost, count: sheet.count.map(i128::from) }
    };
    let mut kinds: Vec<Kind> = checked.stock.iter().map(kind).filter(|kind| kind.holds > 0).collect();
    // What holds most for its cost comes first: cost / holds, without dividing.
    kinds.sort_by(|one, other| (one.cost * other.holds).cmp(&(other.cost * one.holds)));
    kinds
}

struct Cover<'a> {
    kinds: &'a [Kind],
    best: Option<i128>,
    steps: usize,
}

impl Cover<'_> {
    fn answer(mut self, demand: i128) -> Option<i128> {
        self.branch(0, demand, 0);
        if self.steps < MOST_STEPS {
            return self.best;
        }
        // Not gone through: every sheet taken to be as cheap for what it holds as the cheapest.
        self.kinds.first().map(|kind| demand.max(0) * kind.cost / kind.holds)
    }

    /// Takes each number of a kind of sheet, the most first.
    fn branch(&mut self, place: usize, demand: i128, cost: i128) {
        if demand <= 0 {
            self.best = Some(self.best.map_or(cost, |best| best.min(cost)));
            return;
        }
        let Some(kind) = self.kinds.get(place) else { return };
        self.steps += 1;
        if self.steps >= MOST_STEPS {
            return;
        }
        // As the kinds are in order, no rest is covered cheaper than at this one's rate; rounded down, it stays a bound.
        if self.best.is_some_and(|best| cost + demand * kind.cost / kind.holds >= best) {
            return;
        }
        let needed = (demand + kind.holds - 1) / kind.holds;
        let most = kind.count.map_or(needed, |count| count.min(needed));
        // What costs nothing is never left out.
        let least = if kind.cost == 0 { most } else { 0 };
        for taken in (least..=most).rev() {
            self.branch(place + 1, demand - taken * kind.holds, cost + taken * kind.cost);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_cover_is_the_least_of_every_choice() {
        for seed in 0..400_i128 {
            let number = |step: i128, most: i128| (seed * 7919 + step * 104_729) % most;
            let kinds: Vec<Kind> = (0..3)
                .map(|at| Kind {
                    holds: 3 + number(at, 9),
                    cost: number(at + 7, 12),
                    count: (number(at + 3, 2) == 0).then(|| number(at + 5, 4)),
                })
                .collect();
            let demand = 1 + number(11, 40);
            let mut least: Option<i128> = None;
            for a in 0..=20 {
                for b in 0..=20 {
                    for c in 0..=20 {
                        let taken = [a, b, c];
                        let fits = taken
                            .iter()
                            .zip(&kinds)
                            .all(|(taken, kind)| kind.count.is_none_or(|count| *taken <= count));
                        let sum = |pick: fn(&Kind) -> i128| {
                            taken.iter().zip(&kinds).map(|(taken, kind)| taken * pick(kind)).sum::<i128>()
                        };
                        if fits && sum(|kind| kind.holds) >= demand {
                            let cost = sum(|kind| kind.cost);
                            least = Some(least.map_or(cost, |least| least.min(cost)));
                        }
                    }
                }
            }
            let mut ordered = kinds;
            ordered.sort_by(|one, other| (one.cost * other.holds).cmp(&(other.cost * one.holds)));
            assert_eq!(Cover { kinds: &ordered, best: None, steps: 0 }.answer(demand), least, "seed {seed}");
        }
    }
}
