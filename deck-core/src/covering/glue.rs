//! Glue: how much, and how long there is.

use super::Adhesive;
use crate::length::{Area, Unit};
use crate::money::Figure;
use serde::{Deserialize, Serialize};

/// Glue for a covering.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Glue {
    /// The glue.
    pub adhesive: Adhesive,
    /// Area that is glued: the deck without its openings, and the wrap.
    pub area: Area,
    /// US gallons at the most coverage, rounded to hundredths.
    pub gallons_least: Figure,
    /// US gallons at the least coverage, rounded to hundredths.
    pub gallons_most: Figure,
    /// Cans to buy: the greater figure, rounded up once.
    pub cans: u32,
    /// How the time is spent.
    pub timing: Timing,
}

/// Half and half: one half of the deck is folded back, glued and laid, then the other.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Timing {
    /// Minutes to wait before the covering goes in.
    pub wait: Figure,
    /// Minutes after which the glue has set.
    pub set: Figure,
    /// Minutes in which a stretch is spread, so that its first glue has not set when its last may be covered: set less wait.
    pub window: Figure,
    /// Square feet that the crew spreads in a minute, where known.
    pub spread: Option<Figure>,
    /// Square feet that it spreads within the window.
    pub area_in_window: Option<Figure>,
    /// Stretches into which the deck is divided: two, or more where a half is too much.
    pub stretches: u32,
    /// Square feet to be spread in a minute to do it by halves, rounded to tenths.
    pub needed: Figure,
}

/// A tube of glue has a bottom: no deck takes more stretches than this.
const MOST_STRETCHES: i64 = 1000;

impl Glue {
    pub(super) fn new(adhesive: &Adhesive, area: Area) -> Glue {
        let feet = Figure::nearest(area.number(Unit::Foot), 4);
        let gallons_most = feet.over(adhesive.coverage.0, 6);
        let cans = gallons_most.over(adhesive.can, 6).number().ceil();
        // Whole, not negative, and within range: the cast is exact.
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
        let cans = cans.clamp(0.0, f64::from(u32::MAX)) as u32;
        Glue {
            adhesive: adhesive.clone(),
            area,
            gallons_least: feet.over(adhesive.coverage.1, 2),
            gallons_most: gallons_most.rounded(2),
            cans,
            timing: Timing::new(adhesive, feet),
        }
    }
}

impl Timing {
    /// # Method
    /// A stretch is spread within set − wait: then its last glue has waited when its first has not set. Derived here; the
    /// times are the can's.
    fn new(adhesive: &Adhesive, feet: Figure) -> Timing {
        let window = (adhesive.set - adhesive.wait).max(Figure::ZERO);
        let half = feet.over(Figure::of(2), 4);
        let area_in_window = adhesive.spread.map(|spread| (spread * window).rounded(1));
        let enough = |stretches: &i64| area_in_window.is_none_or(|area| area * Figure::of(*stretches) >= feet);
        let stretches = (2..MOST_STRETCHES).find(enough).unwrap_or(MOST_STRETCHES);
        Timing {
            wait: adhesive.wait,
            set: adhesive.set,
            window,
            spread: adhesive.spread,
            area_in_window,
            stretches: u32::try_from(stretches).unwrap_or(2),
            needed: half.over(window, 1),
        }
    }
}
