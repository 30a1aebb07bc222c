//! The rules of thumb of a construction: which part next, into which free piece, sawn which way.

use super::super::problem::{Class, Size};
use crate::stock::SawLine;
use std::cmp::Reverse;

/// Which part is placed next: always the largest first, by one measure of size.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(in crate::nest) enum Order {
    Area,
    LongSide,
    ShortSide,
    Along,
    Across,
}

/// Which free piece a part goes into: the one in which it leaves the least, by one measure.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(in crate::nest) enum Fit {
    /// The smaller of the two strips left beside it; then the larger.
    ShortSide,
    /// The area left of the piece; then the smaller strip.
    Area,
}

/// Which of the two cuts that free a part from a piece comes first.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(in crate::nest) enum Split {
    /// The one that leaves the larger single rest.
    LargestRest,
    /// The other one.
    EvenRests,
    /// The one along the narrower strip of waste, which keeps the wider strip in one piece.
    NarrowStripShort,
    /// Always the rip.
    Rip,
    /// Always the crosscut.
    Crosscut,
}

/// One rule of each sort.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(in crate::nest) struct Rule {
    pub(in crate::nest) order: Order,
    pub(in crate::nest) fit: Fit,
    pub(in crate::nest) split: Split,
}

const ORDERS: [Order; 5] = [Order::Area, Order::LongSide, Order::ShortSide, Order::Along, Order::Across];
const FITS: [Fit; 2] = [Fit::ShortSide, Fit::Area];
const SPLITS: [Split; 5] = [Split::LargestRest, Split::Rip, Split::Crosscut, Split::NarrowStripShort, Split::EvenRests];

impl Rule {
    /// Every combination, the unlike ones early, because a small budget stops before the end.
    pub(in crate::nest) fn all() -> impl Iterator<Item = Rule> {
        FITS.into_iter().flat_map(|fit| {
            SPLITS.into_iter().flat_map(move |split| ORDERS.into_iter().map(move |order| Rule { order, fit, split }))
        })
    }
}

impl Order {
    /// Puts classes into this order. Classes of equal measure are told apart by their sizes, never by the input.
    pub(in crate::nest) fn sort(self, classes: &[Class], order: &mut [u32]) {
        order.sort_by_cached_key(|&index| Reverse(classes.get(index as usize).map(|class| self.key(class))));
    }

    fn key(self, class: &Class) -> (i128, i64, Size, bool) {
        let (long, short) = (class.size.0.max(class.size.1), class.size.0.min(class.size.1));
        let (first, second) = match self {
            Order::Area => (class.area, long),
            Order::LongSide => (i128::from(long), short),
            Order::ShortSide => (i128::from(short), long),
            Order::Along => (i128::from(class.size.0), class.size.1),
            Order::Across => (i128::from(class.size.1), class.size.0),
        };
        (first, second, class.size, class.locked)
    }
}

impl Fit {
    /// What is wasted by a part in a piece: the less, the better.
    pub(super) fn waste(self, piece: Size, part: Size) -> (i128, i64) {
        let (right, top) = (piece.0 - part.0, piece.1 - part.1);
        let (narrow, wide) = (right.min(top), right.max(top));
        match self {
            Fit::ShortSide => (i128::from(narrow), wide),
            Fit::Area => {
                let area = i128::from(piece.0) * i128::from(piece.1) - i128::from(part.0) * i128::from(part.1);
                (area, narrow)
            }
        }
    }
}

impl Split {
    /// The saw line that comes first.
    pub(super) fn first(self, piece: Size, part: Size) -> SawLine {
        let (right, top) = (piece.0 - part.0, piece.1 - part.1);
        // A crosscut first leaves the whole strip to the right; a rip first leaves the whole strip above.
        let beside = i128::from(right) * i128::from(piece.1);
        let above = i128::from(top) * i128::from(piece.0);
        let crosscut = match self {
            Split::LargestRest => beside >= above,
            Split::EvenRests => beside < above,
            Split::NarrowStripShort => right >= top,
            Split::Rip => false,
            Split::Crosscut => true,
        };
        if crosscut { SawLine::Width } else { SawLine::Length }
    }
}
