//! How wide the rows along the boat are.
//!
//! # Method
//! A joint starts at a distance from the port edge; those that openings leave free are intervals of whole nanometres, and
//! which number of rows covers the beam follows from set arithmetic, exactly. Of the widths that do, those are listed
//! that a shop would think of: whole sheets, half sheets (two from one rip) and rows that share the rest evenly, sawn to
//! the fraction on the tape, in every order, with the fewest rows or one more; where an opening is in a joint's way, the
//! joint moves to its nearer free places. Which widths waste least only the nest can tell.

use super::{ArrangeProblem, reason};
use crate::length::Length;
use crate::math::IntervalSet;
use crate::seams::{Lane, NoLayout};

/// More rows than this no deck has.
const MOST_ROWS: usize = 12;
/// More divisions than this are not weighed: each is nested.
const MOST_WIDTHS: usize = 48;

/// The ways to divide the beam into rows that are worth a thought, the fewest and widest rows first.
///
/// # Errors
/// The openings or the narrowest board stand in the way, or nothing to saw from.
pub(super) fn lanes(problem: &ArrangeProblem<'_>) -> Result<Vec<Vec<Lane>>, NoLayout> {
    let beam = Beam::new(problem);
    let Some(fewest) = beam.fewest() else { return Err(reason::no_rows(problem, beam.stops())) };
    let mut found: Vec<Vec<i64>> = Vec::new();
    for rows in [fewest, fewest + 1] {
        for &width in &beam.widths {
            for pattern in beam.patterns(rows, width) {
                beam.keep(&pattern, &mut found);
            }
        }
        if rows == fewest {
            found.extend(beam.evenly(rows));
        }
    }
    found.sort_by_key(|joints| beam.order(joints));
    found.dedup();
    found.truncate(MOST_WIDTHS);
    Ok(found.iter().map(|joints| beam.lanes(joints)).collect())
}

/// The beam in nanometres.
struct Beam<'a> {
    problem: &'a ArrangeProblem<'a>,
    across: i64,
    gap: i64,
    kerf: i64,
    least: i64,
    /// Distinct widths of sheets, the widest first.
    widths: Vec<i64>,
    /// Where a joint's gap may start.
    open: IntervalSet,
}

/// A row is a whole sheet wide, or half of one, or takes an even share of what is left.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Share {
    Whole,
    Half,
    Rest,
}

impl<'a> Beam<'a> {
    fn new(problem: &'a ArrangeProblem<'a>) -> Beam<'a> {
        let nm = Length::nanometres;
        let (across, gap) = (nm(problem.outline.beam()), nm(problem.rules.seams.gap));
        let mut widths: Vec<i64> = problem.sheets.iter().map(|sheet| nm(sheet.width)).collect();
        widths.sort_unstable_by_key(|width| std::cmp::Reverse(*width));
        widths.dedup();
        let mut open = IntervalSet::of(1, across - gap - 1);
        for opening in problem.openings {
            let bounds = opening.path().bounds();
            open.remove_open(nm(bounds.port - problem.wood()) - gap, nm(bounds.starboard + problem.wood()));
        }
        let least = nm(problem.rules.seams.least_width).max(1);
        Beam { problem, across, gap, kerf: nm(problem.rules.kerf), least, widths, open }
    }

    fn widest(&self) -> i64 {
        self.widths.first().copied().unwrap_or(0)
    }

    /// Joints that one row more reaches.
    fn next(&self, from: &IntervalSet) -> IntervalSet {
        self.common(&from.stretched(self.gap + self.least, self.gap + self.widest()))
    }

    fn common(&self, set: &IntervalSet) -> IntervalSet {
        let mut common = IntervalSet::new();
        for &(low, high) in self.open.intervals() {
            common.add_all(&set.within(low, high));
        }
        common
    }

    /// Where the joint behind each row may lie, row after row from port, up to a number of rows before the last.
    fn reached(&self, joints: usize) -> Vec<IntervalSet> {
        let mut sets = vec![IntervalSet::of(-self.gap, -self.gap)];
        for _ in 0..joints {
            let next = sets.last().map(|set| self.next(set)).unwrap_or_default();
            sets.push(next);
        }
        sets
    }

    fn ends(&self, set: &IntervalSet) -> bool {
        let row = set.stretched(self.gap + self.least, self.gap + self.widest());
        self.widest() >= self.least && !row.within(self.across, self.across).is_empty()
    }

    fn fewest(&self) -> Option<usize> {
        let sets = self.reached(MOST_ROWS - 1);
        sets.iter().position(|set| self.ends(set)).map(|joints| joints + 1)
    }

    /// The furthest that rows from port come.
    fn stops(&self) -> Length {
        let furthest = self.reached(MOST_ROWS - 1).iter().filter_map(IntervalSet::greatest).max().unwrap_or(0);
        Length::from_nanometres(furthest.max(0))
    }

    /// Joints of every order of shares that fill the beam.
    fn patterns(&self, rows: usize, width: i64) -> Vec<Vec<i64>> {
        let half = (width - self.kerf).div_euclid(2);
        let mut patterns = Vec::new();
        for whole in 0..=rows {
            for halves in 0..=rows - whole {
                let shares =
                    [vec![Share::Whole; whole], vec![Share::Half; halves], vec![Share::Rest; rows - whole - halves]]
                        .concat();
                let taken = count(whole) * width + count(halves) * half + count(rows - 1) * self.gap;
                let rest = self.across - taken;
                for order in orders(&shares).into_iter().filter(|order| self.is_kept(order)) {
                    if let Some(widths) = self.shared(&order, [width, half], rest) {
                        patterns.push(self.joints(&widths));
                    }
                }
            }
        }
        patterns
    }

    /// Of an order and its mirror image one is enough, where no opening tells port from starboard.
    fn is_kept(&self, order: &[Share]) -> bool {
        !self.problem.openings.is_empty() || order.iter().le(order.iter().rev())
    }

    /// The widths of an order of shares; the share nearest to the middle takes what rounding leaves.
    fn shared(&self, order: &[Share], [whole, half]: [i64; 2], rest: i64) -> Option<Vec<i64>> {
        let places: Vec<usize> = (0..order.len()).filter(|&at| order.get(at) == Some(&Share::Rest)).collect();
        let shares = count(places.len());
        if shares == 0 {
            return (rest == 0)
                .then(|| order.iter().map(|share| if *share == Share::Whole { whole } else { half }).collect());
        }
        if rest <= 0 {
            return None;
        }
        let even = self.problem.notation.round(Length::from_nanometres(rest / shares)).nanometres();
        let middle = places.iter().copied().min_by_key(|at| (2 * at + 1).abs_diff(order.len()))?;
        let width = |(at, share): (usize, &Share)| match share {
            Share::Whole => whole,
            Share::Half => half,
            Share::Rest if at == middle => rest - even * (shares - 1),
            Share::Rest => even,
        };
        let widths: Vec<i64> = order.iter().enumerate().map(width).collect();
        widths.iter().all(|width| self.fits(*width)).then_some(widths)
    }

    fn fits(&self, width: i64) -> bool {
        (self.least..=self.widest()).contains(&width)
    }

    fn joints(&self, widths: &[i64]) -> Vec<i64> {
        let mut at = -self.gap;
        let ends = widths.iter().map(|width| {
            at += self.gap + width;
            at
        });
        let mut joints: Vec<i64> = ends.collect();
        joints.pop();
        joints
    }

    /// Keeps the joints, or what becomes of them when those in an opening's way move to the free places beside it.
    fn keep(&self, joints: &[i64], found: &mut Vec<Vec<i64>>) {
        let mut ways: Vec<Vec<i64>> = vec![Vec::new()];
        for &joint in joints {
            let free = [self.open.within(1, joint).greatest(), self.open.within(joint, self.across).least()];
            let mut free: Vec<i64> = free.into_iter().flatten().collect();
            free.dedup();
            if free.contains(&joint) {
                free = vec![joint];
            }
            ways = ways.iter().flat_map(|way| free.iter().map(|at| [way.as_slice(), &[*at]].concat())).collect();
        }
        found.extend(ways.into_iter().filter(|way| self.row_widths(way).iter().all(|width| self.fits(*width))));
    }

    /// Joints as even as openings allow: each as near to its even place as can still be finished.
    fn evenly(&self, rows: usize) -> Option<Vec<i64>> {
        let (least, most) = (self.gap + self.least, self.gap + self.widest());
        // From starboard: where a joint may lie so that so many rows behind it end the beam.
        let mut finish = vec![IntervalSet::of(self.across - most, self.across - least)];
        for _ in 2..rows {
            let last = finish.last().map(|set| self.common(set).stretched(-most, -least)).unwrap_or_default();
            finish.push(last);
        }
        let mut at = -self.gap;
        let mut joints = Vec::new();
        for row in 1..rows {
            let ending = finish.get(rows - 1 - row).map(|set| self.common(set)).unwrap_or_default();
            let here = ending.within(at + least, at + most);
            let even = (self.across + self.gap) * count(row) / count(rows) - self.gap;
            let nearest = [here.within(i64::MIN, even).greatest(), here.within(even, i64::MAX).least()];
            at = nearest.into_iter().flatten().min_by_key(|place| (place - even).abs())?;
            joints.push(at);
        }
        Some(joints)
    }

    fn row_widths(&self, joints: &[i64]) -> Vec<i64> {
        let fores = std::iter::once(0).chain(joints.iter().map(|joint| joint + self.gap));
        fores.zip(joints.iter().copied().chain([self.across])).map(|(port, starboard)| starboard - port).collect()
    }

    /// Fewest rows, then fewest narrow ones, then fewest ripped ones, then the most even; then from port.
    fn order(&self, joints: &[i64]) -> (usize, usize, usize, i64, Vec<i64>) {
        let widths = self.row_widths(joints);
        let preferred = self.problem.rules.seams.preferred_width.nanometres();
        let narrow = widths.iter().filter(|width| **width < preferred).count();
        let ripped = widths.iter().filter(|width| !self.widths.contains(width)).count();
        let uneven = widths.iter().zip(widths.iter().rev()).map(|(one, other)| (one - other).abs()).sum();
        (widths.len(), narrow, ripped, uneven, joints.to_vec())
    }

    fn lanes(&self, joints: &[i64]) -> Vec<Lane> {
        let nm = Length::from_nanometres;
        let fores = std::iter::once(0).chain(joints.iter().map(|joint| joint + self.gap));
        let rows = fores.zip(joints.iter().copied().chain([self.across])).enumerate();
        rows.map(|(index, (port, starboard))| Lane::new(index + 1, nm(port), nm(starboard))).collect()
    }
}

/// Row counts are small: [`MOST_ROWS`].
fn count(rows: usize) -> i64 {
    i64::try_from(rows).unwrap_or(i64::MAX)
}

/// Every different order of a list that comes sorted.
fn orders(shares: &[Share]) -> Vec<Vec<Share>> {
    if shares.is_empty() {
        return vec![Vec::new()];
    }
    let mut all = Vec::new();
    for kind in [Share::Whole, Share::Half, Share::Rest] {
        if let Some(at) = shares.iter().position(|share| *share == kind) {
            let mut others = shares.to_vec();
            others.remove(at);
            all.extend(orders(&others).into_iter().map(|rest| [&[kind], rest.as_slice()].concat()));
        }
    }
    all
}
