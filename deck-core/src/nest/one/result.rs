//! What a fill hands back: one sheet, how it is sawn, and what it is worth.

use super::super::result::{Placement, Rectangle};
use super::super::tree::Tree;
use super::worth::{Worth, WorthIn};
use serde::{Deserialize, Serialize};

/// The most valuable set of parts that was found for one sheet.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(try_from = "Written")]
#[non_exhaustive]
pub struct Fill {
    /// What the parts on the sheet are worth together.
    pub value: Worth,
    /// No set of parts that can be cut from the sheet is worth more.
    pub bound: Worth,
    /// True only where no better answer exists: the value meets the bound.
    pub proven: bool,
    /// The parts on the sheet, in sawing order.
    pub placements: Vec<Placement>,
    /// The saw's work, from the bare sheet.
    pub cuts: Tree,
    /// Pieces worth keeping, in sawing order.
    pub offcuts: Vec<Rectangle>,
    /// Whether value and bound are sums of values or areas.
    pub value_in: WorthIn,
}

/// The JSON form, in which values are numbers until `value_in` is read.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Written {
    value: serde_json::Value,
    bound: serde_json::Value,
    proven: bool,
    placements: Vec<Placement>,
    cuts: Tree,
    offcuts: Vec<Rectangle>,
    #[serde(default)]
    value_in: WorthIn,
}

impl TryFrom<Written> for Fill {
    type Error = serde_json::Error;
    fn try_from(written: Written) -> Result<Fill, serde_json::Error> {
        let Written { value, bound, proven, placements, cuts, offcuts, value_in } = written;
        let (value, bound) = (value_in.read(value)?, value_in.read(bound)?);
        Ok(Fill { value, bound, proven, placements, cuts, offcuts, value_in })
    }
}
