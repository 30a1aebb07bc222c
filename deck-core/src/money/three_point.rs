//! A time that nobody knows: at best, most likely, at worst.

use super::Figure;
use serde::{Deserialize, Serialize};

/// Three figures for a thing that is not known: the least, the likeliest and the greatest.
///
/// # Method
/// Mean (low + 4 likely + high)/6 and deviation (high − low)/6: Malcolm, Roseboom, Clark and Fazar, *Application of a
/// technique for research and development program evaluation*, Operations Research 7 (1959), 646–669; from memory.
///
/// # Examples
/// ```
/// use deck_core::money::{Figure, ThreePoint};
/// let task = ThreePoint::new(Figure::of(1), Figure::of(2), Figure::of(9));
/// assert_eq!(task.mean(2), Figure::of(3));
/// assert_eq!(task.deviation(2), Figure::scaled(133, 2));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
#[non_exhaustive]
pub struct ThreePoint {
    /// When all goes well.
    #[cfg_attr(feature = "schema", schemars(extend("minimum" = 0, "maximum" = 1_000_000)))]
    pub low: Figure,
    /// As it mostly goes.
    #[cfg_attr(feature = "schema", schemars(extend("minimum" = 0, "maximum" = 1_000_000)))]
    pub likely: Figure,
    /// When little goes well.
    #[cfg_attr(feature = "schema", schemars(extend("minimum" = 0, "maximum" = 1_000_000)))]
    pub high: Figure,
}

impl ThreePoint {
    /// Three figures, in order.
    pub fn new(low: Figure, likely: Figure, high: Figure) -> ThreePoint {
        ThreePoint { low, likely, high }
    }

    /// Three counts of tenths.
    pub fn tenths(low: i64, likely: i64, high: i64) -> ThreePoint {
        ThreePoint::new(Figure::scaled(low, 1), Figure::scaled(likely, 1), Figure::scaled(high, 1))
    }

    /// True where the figures are in order.
    pub fn is_in_order(&self) -> bool {
        self.low <= self.likely && self.likely <= self.high
    }

    /// (low + 4 likely + high)/6, rounded to so many places, half up.
    pub fn mean(&self, places: u32) -> Figure {
        self.six_means().over(Figure::of(6), places)
    }

    /// low + 4 likely + high: six times the mean, exactly.
    pub fn six_means(&self) -> Figure {
        self.low + self.likely * Figure::of(4) + self.high
    }

    /// (high − low)/6, rounded to so many places, half up.
    pub fn deviation(&self, places: u32) -> Figure {
        (self.high - self.low).over(Figure::of(6), places)
    }

    /// Each figure so many times.
    #[must_use]
    pub fn times(&self, count: Figure) -> ThreePoint {
        ThreePoint::new(self.low * count, self.likely * count, self.high * count)
    }

    /// Each figure over a divisor, rounded to so many places, half up.
    #[must_use]
    pub fn over(&self, by: Figure, places: u32) -> ThreePoint {
        let part = |figure: Figure| figure.over(by, places);
        ThreePoint::new(part(self.low), part(self.likely), part(self.high))
    }
}

impl std::ops::Add for ThreePoint {
    type Output = ThreePoint;
    fn add(self, other: ThreePoint) -> ThreePoint {
        ThreePoint::new(self.low + other.low, self.likely + other.likely, self.high + other.high)
    }
}

impl std::iter::Sum for ThreePoint {
    fn sum<I: Iterator<Item = ThreePoint>>(points: I) -> ThreePoint {
        points.fold(ThreePoint::default(), std::ops::Add::add)
    }
}
