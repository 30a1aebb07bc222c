//! Where the seams of a covering lie.

use crate::length::Length;
use crate::math::IntervalSet;

/// What a covering is laid across: the deck's extent across the run, and what the seams keep off.
#[derive(Debug, Clone, PartialEq, Eq)]
#[non_exhaustive]
pub struct Across {
    /// Extent of the deck across the run.
    pub extent: Length,
    /// How far the covering goes round each edge.
    pub wrap: Length,
    /// Width of the roll.
    pub roll: Length,
    /// Narrowest piece.
    pub least: Length,
    /// Stretches in which no seam may lie; their ends may carry one.
    pub keep_off: Vec<(Length, Length)>,
}

impl Across {
    /// A deck, and a roll for it.
    pub fn new(extent: Length, wrap: Length, roll: Length, least: Length) -> Across {
        Across { extent, wrap, roll, least, keep_off: Vec::new() }
    }

    /// With stretches that seams keep off.
    #[must_use]
    pub fn keep_off(mut self, stretches: Vec<(Length, Length)>) -> Across {
        self.keep_off = stretches;
        self
    }

    /// Where a seam may lie: on the deck, not in a stretch that is kept off.
    fn free(&self) -> IntervalSet {
        let mut free = IntervalSet::of(0, self.extent.nanometres());
        for (from, to) in &self.keep_off {
            free.remove_open(from.nanometres(), to.nanometres());
        }
        free
    }
}

/// More pieces than this no deck takes.
const MOST_PIECES: usize = 200;

/// The seams, from port or from the bow: as few as there can be; of those, each as far from the start as it can lie, so
/// that pieces are as wide as the roll and keep their factory edges. `None` where no seams keep to the rules.
///
/// # Method
/// The places that seam k can take are those within a piece's least and most width of the places of seam k − 1, less what
/// is kept off: sets of intervals, exact. The first k from which the far edge is within reach is the least; walking back
/// from it keeps to the places from which the rest can be done, and the greatest of those are taken forward. Derived here.
///
/// # Examples
/// ```
/// use deck_core::{Length, covering::{Across, seam_lines}};
/// let inches = Length::inches;
/// // 96 in and 2 in of wrap on both sides from a roll of 72 in: one seam, 70 in from port.
/// let across = Across::new(inches(96), inches(2), inches(72), inches(12));
/// assert_eq!(seam_lines(&across), Some(vec![inches(70)]));
/// // A walkway from 60 to 80 in pushes it to 60.
/// assert_eq!(seam_lines(&across.keep_off(vec![(inches(60), inches(80))])), Some(vec![inches(60)]));
/// ```
pub fn seam_lines(across: &Across) -> Option<Vec<Length>> {
    let (start, end) = (-across.wrap.nanometres(), (across.extent + across.wrap).nanometres());
    let (least, most) = (across.least.nanometres().max(1), across.roll.nanometres());
    if end - start <= most {
        return Some(Vec::new());
    }
    let free = across.free();
    let mut reach: Vec<IntervalSet> = Vec::new();
    let mut from = IntervalSet::of(start, start);
    while reach.len() < MOST_PIECES {
        from = moved(&from, least, most, &free);
        if from.is_empty() {
            return None;
        }
        reach.push(from.clone());
        // The last piece, from the last seam to the far edge.
        if !from.within(end - most, end - least).is_empty() {
            return chosen(&reach, (least, most), start, end);
        }
    }
    None
}

/// The places within a piece's width of those of a set, less what is kept off.
fn moved(from: &IntervalSet, least: i64, most: i64, free: &IntervalSet) -> IntervalSet {
    let mut to = IntervalSet::new();
    for (low, high) in from.intervals() {
        to.add_all(&free.within(low + least, high + most));
    }
    to
}

/// Of the places of each seam those from which the rest can be done; then the greatest, one after another.
fn chosen(reach: &[IntervalSet], (least, most): (i64, i64), start: i64, end: i64) -> Option<Vec<Length>> {
    let mut ahead = IntervalSet::of(end, end);
    let mut good: Vec<IntervalSet> = Vec::new();
    for places in reach.iter().rev() {
        let mut kept = IntervalSet::new();
        for (low, high) in ahead.intervals() {
            kept.add_all(&places.within(low - most, high - least));
        }
        good.push(kept.clone());
        ahead = kept;
    }
    let mut before = start;
    let mut seams = Vec::new();
    for places in good.iter().rev() {
        before = places.within(before + least, before + most).greatest()?;
        seams.push(Length::from_nanometres(before));
    }
    Some(seams)
}
