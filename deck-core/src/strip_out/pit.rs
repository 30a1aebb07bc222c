//! Pits in the frame: how deep they are, and plain arithmetic on how they grew.

use super::StripOutInput;
use crate::length::Length;
use crate::money::Figure;
use serde::{Deserialize, Serialize};

/// What the boat lay in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Water {
    /// Fresh water.
    Fresh,
    /// Brackish water.
    Brackish,
    /// Salt water.
    Salt,
}

/// The deepest pit that was found on a member.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
#[non_exhaustive]
pub struct Pit {
    /// Number of the member, from the bow.
    #[cfg_attr(feature = "schema", schemars(range(min = 1)))]
    pub member: u32,
    /// Depth of the pit.
    pub depth: Length,
    /// Years in which it grew: since the boat was built, or since the member was last seen sound.
    #[cfg_attr(feature = "schema", schemars(extend("exclusiveMinimum" = 0, "maximum" = 100)))]
    pub years: Figure,
    /// What the boat lay in.
    pub water: Water,
    /// Wall thickness there. Left out: the member's.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub wall: Option<Length>,
}

impl Pit {
    /// A pit on a member.
    pub fn new(member: u32, depth: Length, years: Figure, water: Water) -> Pit {
        Pit { member, depth, years, water, wall: None }
    }
}

/// A pit with what its growth so far says.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct PitNote {
    /// Number of the member.
    pub member: u32,
    /// Wall thickness there.
    pub wall: Length,
    /// Depth of the pit.
    pub depth: Length,
    /// Wall that is left under it.
    pub left: Length,
    /// Years in which it grew.
    pub years: Figure,
    /// What it grew in a year, on average.
    pub rate: Length,
    /// Years until it is through the wall, if it goes on so: rounded to tenths.
    pub years_left: Figure,
    /// What the boat lay in.
    pub water: Water,
    /// What the figure leaves out.
    pub limits: String,
}

impl PitNote {
    /// # Method
    /// Plain arithmetic, derived here: rate = depth / years, years left = years (wall − depth) / depth.
    pub(super) fn new(pit: &Pit, input: &StripOutInput<'_>) -> PitNote {
        let member =
            usize::try_from(pit.member).ok().and_then(|number| input.frame.members().get(number.checked_sub(1)?));
        let wall = pit.wall.or(member.and_then(|member| member.wall)).unwrap_or(input.wall);
        let left = wall - pit.depth;
        let [depth_count, left_count] = [pit.depth, left].map(|length| Figure::of(length.nanometres()));
        let rate = Figure::of(pit.depth.nanometres()).over(pit.years, 0);
        PitNote {
            member: pit.member,
            wall,
            depth: pit.depth,
            left,
            years: pit.years,
            rate: Length::nearest(rate.number()),
            years_left: (pit.years * left_count).over(depth_count, 1),
            water: pit.water,
            limits: limits(pit.water).into(),
        }
    }
}

fn limits(water: Water) -> &'static str {
    match water {
        Water::Fresh => {
            "A straight line through two points and no forecast: pits start late and mostly slow down, and in salt water, under \
             stray current, or with copper at hand they go far faster. A wall is weak long before it is through."
        }
        Water::Brackish | Water::Salt => {
            "A straight line through two points and no forecast: in salt water a pit may run ahead of its average within one \
             season, and stray current or copper can eat a wall in months. A wall is weak long before it is through."
        }
    }
}
