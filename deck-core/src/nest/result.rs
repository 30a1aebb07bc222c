//! What a nest hands back: sheets in sawing order, what found no place, and what it costs.

use super::cost::{BoatCost, Cost, CostIn};
use super::tree::Tree;
use crate::length::{Area, Length};
use crate::money::Money;
use serde::{Deserialize, Serialize, de};

/// Parts laid out on sheets.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(try_from = "Written")]
#[non_exhaustive]
pub struct Nest {
    /// Every sheet that is sawn, one by one.
    pub sheets: Vec<CutSheet>,
    /// Parts that found no place, and why.
    pub unplaced: Vec<Unplaced>,
    /// How many sheets are sawn, offcuts from the rack among them; the waste inside parts is not counted.
    pub sheet_count: u32,
    /// What the sheets cost.
    pub cost: Cost,
    /// The cost shared out by placed area, in the order in which the boats are first named. Empty where none is.
    pub cost_by_boat: Vec<BoatCost>,
    /// No answer that places as much can cost less than this.
    pub bound: Cost,
    /// True only where no better answer exists: nothing that could be placed is missing, and the cost meets the bound.
    pub proven: bool,
    /// Whether the costs are money or areas.
    pub cost_in: CostIn,
}

/// One sheet, its parts and how to saw it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct CutSheet {
    /// Label of the stock it is taken from; of waste inside a part, what it is.
    pub stock: String,
    /// Where it comes from, when it is the waste inside a part. Such sheets stand behind those of their parts.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub inside: Option<Inside>,
    /// The parts on it, in sawing order.
    pub placements: Vec<Placement>,
    /// The saw's work, from the bare sheet.
    pub cuts: Tree,
    /// Pieces worth keeping, in sawing order.
    pub offcuts: Vec<Rectangle>,
}

/// The part in which a sheet is waste.
///
/// The waste is a rectangle that the shape's own saw cuts leave: their kerf is off it already, and there is no edge trim.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Inside {
    /// The part's label.
    pub part: String,
    /// The sheet that the part is on: its place in [`Nest::sheets`], from 0.
    pub sheet: usize,
    /// Which of that sheet's placements it is, from 0.
    pub copy: usize,
    /// That placement.
    pub placement: Placement,
    /// The waste in the part's own coordinates, as in [`Part::inside`](super::Part::inside), less the kerf.
    pub waste: Rectangle,
    /// The waste as a sheet: its extent along `x`, which is along the grain where there is any.
    pub length: Length,
    /// Its extent along `y`.
    pub width: Length,
}

/// A part on a sheet.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Placement {
    /// The part's label.
    pub part: String,
    /// From the sheet's corner along its length.
    pub x: Length,
    /// From the sheet's corner along its width.
    pub y: Length,
    /// Extent along `x`, as placed.
    pub length: Length,
    /// Extent along `y`, as placed.
    pub width: Length,
    /// True where the part's own length lies across the sheet's.
    pub turned: bool,
    /// The boat that it is for.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub boat: Option<String>,
}

/// A rectangle on a sheet or in a part.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
#[non_exhaustive]
pub struct Rectangle {
    /// From the corner along the length.
    pub x: Length,
    /// From the corner along the width.
    pub y: Length,
    /// Extent along `x`.
    pub length: Length,
    /// Extent along `y`.
    pub width: Length,
}

impl Rectangle {
    /// A rectangle by its corner and its extents.
    pub fn new(x: Length, y: Length, length: Length, width: Length) -> Rectangle {
        Rectangle { x, y, length, width }
    }
}

/// Copies of a part that found no place.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Unplaced {
    /// The part's label.
    pub part: String,
    /// How many.
    pub count: u32,
    /// Why, for a person.
    pub why: String,
}

/// The JSON form, in which costs are numbers until `cost_in` is read.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Written {
    sheets: Vec<CutSheet>,
    unplaced: Vec<Unplaced>,
    sheet_count: u32,
    cost: serde_json::Value,
    cost_by_boat: Vec<WrittenBoatCost>,
    bound: serde_json::Value,
    proven: bool,
    #[serde(default)]
    cost_in: CostIn,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct WrittenBoatCost {
    boat: Option<String>,
    cost: serde_json::Value,
}

impl CostIn {
    fn read(self, value: serde_json::Value) -> Result<Cost, serde_json::Error> {
        match self {
            CostIn::Money => serde_json::from_value::<Money>(value).map(Cost::Money),
            CostIn::Area => serde_json::from_value::<Area>(value).map(Cost::Area),
        }
        .map_err(de::Error::custom)
    }
}

impl TryFrom<Written> for Nest {
    type Error = serde_json::Error;
    fn try_from(written: Written) -> Result<Nest, serde_json::Error> {
        let cost_in = written.cost_in;
        let share = |share: WrittenBoatCost| Ok(BoatCost { boat: share.boat, cost: cost_in.read(share.cost)? });
        Ok(Nest {
            sheets: written.sheets,
            unplaced: written.unplaced,
            sheet_count: written.sheet_count,
            cost: cost_in.read(written.cost)?,
            cost_by_boat: written.cost_by_boat.into_iter().map(share).collect::<Result<_, serde_json::Error>>()?,
            bound: cost_in.read(written.bound)?,
            proven: written.proven,
            cost_in,
        })
    }
}
