//! A fill as the searches see it, and the answer as people see it.

use super::super::build::{Pattern, Solution, Tally, layout};
use super::super::part::Part;
use super::super::problem::{Class, Problem};
use super::super::report::Order;
use super::super::sheets::sheets;
use super::super::tree::Tree;
use super::board::{Board, Filled};
use super::check::copies;
use super::fits::board;
use super::part::FillPart;
use super::result::Fill;
use super::standing::Standing;
use super::worth::WorthIn;
use crate::math::greatest_divisor;
use crate::money::Money;
use crate::stock::{Saw, Sheet};
use std::cmp::Reverse;

/// Everything that is asked, in whole numbers.
pub(super) struct Question<'a> {
    sheet: &'a Sheet,
    saw: &'a Saw,
    parts: Vec<Part>,
    problem: Problem,
    /// Worth of one copy of each class, in the smallest units.
    worth: Vec<i128>,
    /// Worth of the same in steps of `step`, rounded up.
    values: Vec<i64>,
    step: i128,
    worth_in: WorthIn,
}

impl<'a> Question<'a> {
    /// Input that has been checked.
    pub(super) fn new(sheet: &'a Sheet, parts: &[FillPart], saw: &'a Saw) -> Question<'a> {
        let most = |part: &FillPart| u32::try_from(copies(sheet, part)).unwrap_or(u32::MAX);
        let plain: Vec<Part> =
            parts.iter().map(|part| part.part(part.count.unwrap_or(u32::MAX).min(most(part)))).collect();
        let mut problem = Problem::new(&plain, std::slice::from_ref(sheet), saw);
        let worth_in = if parts.iter().any(|part| part.value.is_some()) { WorthIn::Value } else { WorthIn::Area };
        let value = |index: usize| parts.get(index).and_then(|part| part.value).map(Money::ten_thousandths);
        problem.classes = problem.classes.iter().flat_map(|class| split(class, value)).collect();
        let worth: Vec<i128> = problem
            .classes
            .iter()
            .map(|class| class.members.first().and_then(|member| value(member.0)).unwrap_or(class.area))
            .collect();
        let step = step(&problem, &worth);
        let values = worth.iter().map(|worth| i64::try_from((worth + step - 1) / step).unwrap_or(i64::MAX)).collect();
        Question { sheet, saw, parts: plain, problem, worth, values, step, worth_in }
    }

    pub(super) fn values(&self) -> &[i64] {
        &self.values
    }

    /// The sheet without its trim, and what may be cut from it.
    pub(super) fn board(&self) -> Board {
        board(&self.problem, 0, &self.problem.wanted())
    }

    /// Nothing found yet, for a watcher.
    pub(super) fn standing(&self) -> Standing {
        Standing::new(self.step, self.worth_in)
    }

    /// The answer with labels; the watcher is told of its value.
    pub(super) fn answer(&self, filled: Filled, standing: &Standing) -> Fill {
        let worth = |parts: &[(u32, u32)]| -> i128 {
            let one = |class: u32| self.worth.get(class as usize).copied().unwrap_or(0);
            parts.iter().map(|&(class, copies)| one(class) * i128::from(copies)).sum()
        };
        let value = worth(&filled.parts);
        let bound = (i128::from(filled.bound) * self.step).max(value);
        standing.settled(value, bound);
        let pattern = self.tidiest(filled);
        let piece = layout(&self.problem, &pattern);
        let order = Order {
            parts: &self.parts,
            stock: std::slice::from_ref(self.sheet),
            saw: self.saw,
            problem: &self.problem,
        };
        let solution = Solution { runs: vec![(pattern, 1)], left: Vec::new(), cost: 0 };
        let (sawn, _) = sheets(order, &solution, &[piece]);
        // There is one sheet and one rack: the sheet is always written.
        let (placements, cuts, offcuts) = sawn.into_iter().next().map_or_else(
            || (Vec::new(), Tree::waste(), Vec::new()),
            |sheet| (sheet.placements, sheet.cuts, sheet.offcuts),
        );
        Fill {
            value: self.worth_in.worth(value),
            bound: self.worth_in.worth(bound),
            proven: value == bound,
            placements,
            cuts,
            offcuts,
            value_in: self.worth_in,
        }
    }

    /// Of the orders in which the waste can be cut off, the one that leaves the largest offcut worth keeping, then asks
    /// for the fewest fence settings, then for the fewest cuts.
    fn tidiest(&self, filled: Filled) -> Pattern {
        let mut best = Pattern { rack: 0, nodes: filled.nodes, parts: filled.parts, area: 0 };
        let rank = |pattern: &Pattern| {
            let mut tally = Tally::default();
            tally.add(&self.problem, pattern, 1);
            (Reverse(tally.largest_offcut), tally.fences.len(), tally.cuts)
        };
        for nodes in filled.others {
            let other = Pattern { nodes, ..best.clone() };
            if rank(&other) < rank(&best) {
                best = other;
            }
        }
        best
    }
}

/// Parts of one class that are worth different amounts are different classes. The dearest come first.
fn split(class: &Class, value: impl Fn(usize) -> Option<i128>) -> Vec<Class> {
    let mut members = class.members.clone();
    members.sort_by_key(|member| std::cmp::Reverse(value(member.0)));
    members
        .chunk_by(|one, other| value(one.0) == value(other.0))
        .map(|members| Class {
            count: members.iter().fold(0_u32, |sum, member| sum.saturating_add(member.1)),
            members: members.to_vec(),
            ..class.clone()
        })
        .collect()
}

/// In which steps values are counted: what divides them all, or more where a sheet full of them would be too much for
/// the searches. They count with whole numbers below 2⁶².
fn step(problem: &Problem, worth: &[i128]) -> i128 {
    const MOST: i128 = 1 << 60;
    let sheet = problem.racks.first().map_or(0, |rack| i128::from(rack.size.0) * i128::from(rack.size.1));
    let full = |(class, worth): (&Class, &i128)| {
        let copies = sheet / (i128::from(class.size.0) * i128::from(class.size.1)).max(1) + 1;
        worth.saturating_mul(copies)
    };
    let most = problem.classes.iter().zip(worth).map(full).max().unwrap_or(0);
    let divisor = worth.iter().fold(0, |divisor, worth| greatest_divisor(divisor, *worth)).max(1);
    if most / divisor <= MOST { divisor } else { most / MOST + 1 }
}
