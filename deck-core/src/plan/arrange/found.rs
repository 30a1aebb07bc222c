//! What the plan says of arrangements, as plain values.

use crate::arrange::{ArrangementKind, Block, Joint};
use crate::geometry::Bounds;
use crate::length::{Area, Length};
use crate::money::Money;
use crate::nest::Cost;
use crate::published::plywood_pounds;
use crate::seams::{Lane, NoLayout};
use crate::takeoff::Blocking;
use serde::{Deserialize, Serialize};

/// A manner of laying the boards, with what it takes or why it cannot be.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Arrangement {
    /// Which it is.
    pub kind: ArrangementKind,
    /// In words.
    pub name: String,
    /// Its place among those that can be, from 1; none where it cannot be.
    pub rank: Option<usize>,
    /// True for the one that the plan builds.
    pub built: bool,
    /// What it looks like, in a sentence.
    pub detail: Option<String>,
    /// What it takes; none where it cannot be.
    pub figures: Option<ArrangementFigures>,
    /// The rule that it does not keep, where it cannot be.
    pub no_layout: Option<NoLayout>,
    /// The rectangles around its boards, for a picture.
    pub bounds: Vec<Bounds>,
}

/// What an arrangement takes, in the order in which arrangements are ranked: the first figure that differs decides.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct ArrangementFigures {
    /// Parts that found no sheet.
    pub unplaced: u32,
    /// Seams on flanges that do not take two rows of fasteners.
    pub short_seams: usize,
    /// Zones kept clear of seams that joints along the boat cross all the same.
    pub zones_crossed: usize,
    /// What the sheets cost, where they have prices.
    pub cost: Option<Money>,
    /// Area of the sheets to buy: what they cost, where they have no prices.
    pub sheet_area: Area,
    /// Sheets that are sawn, offcuts from the rack among them.
    pub sheets: u32,
    /// Boards, fillers among them.
    pub boards: usize,
    /// Length of seams athwart and joints along the boat together.
    pub seam_length: Length,
    /// Of those, joints along the boat.
    pub joint_length: Length,
    /// Blocks.
    pub blocks: usize,
    /// Their length.
    pub blocking_length: Length,
    /// The most that a board's strength is used up, where the job gives a panel's rating and a load.
    pub utilisation: Option<f64>,
    /// Divisions of the kind that were nested to find this one.
    pub tried: usize,
    /// True where the seams are the best by their own costs for the widths of rows taken; widths come from a list.
    pub proven: bool,
}

/// What came of choosing seams by the nest.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct SeamPricing {
    /// Layouts of seams that were nested.
    pub layouts: usize,
    /// True where those are all that there are with as few seams on narrow flanges.
    pub every_layout: bool,
    /// Cost of the sheets had the seams been chosen first, by their own costs.
    pub seams_first: SheetCost,
    /// Cost of the sheets of the layout that was chosen.
    pub by_nest: SheetCost,
    /// No layout of boards athwart, wherever its seams lie on their flanges, costs less than this.
    pub bound: SheetCost,
    /// How far from that the chosen one is.
    pub gap: SheetCost,
    /// True where it meets the bound.
    pub proven: bool,
}

/// What sheets cost: money where they have prices, otherwise the area of those that are bought.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct SheetCost {
    /// In money.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub money: Option<Money>,
    /// In area.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub area: Option<Area>,
}

impl SheetCost {
    pub(super) fn of(cost: Cost) -> SheetCost {
        match cost {
            Cost::Money(money) => SheetCost { money: Some(money), area: None },
            Cost::Area(area) => SheetCost { money: None, area: Some(area) },
        }
    }
}

/// How the boards are divided along the boat, where they are.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct PlanDivision {
    /// In what manner the boards lie.
    pub kind: ArrangementKind,
    /// The rows, where boards lie along the boat.
    pub rows: Vec<Lane>,
    /// The seams along the boat.
    pub joints: Vec<Joint>,
    /// The blocks under them.
    pub blocks: Vec<Block>,
    /// Screws into blocks.
    pub screws: usize,
    /// What they are.
    pub screw: String,
    /// Greatest spacing of them.
    pub block_spacing: Length,
    /// Zones kept clear of seams that joints cross.
    pub zones: Vec<String>,
    /// The rules that it keeps, with where they come from.
    pub rules: Vec<String>,
    /// How it came to be built.
    pub chosen: String,
}

impl PlanDivision {
    /// What of it is bought.
    pub(in crate::plan) fn count(&self, thickness: Length) -> Blocking<'_> {
        let area = |block: &Block| Area::of(block.length, block.width).square_nanometres();
        let area = Area::from_square_nanometres(self.blocks.iter().map(area).sum());
        Blocking {
            joints: &self.joints,
            blocks: &self.blocks,
            screw: &self.screw,
            weight_lb: plywood_pounds(area, thickness),
        }
    }
}

impl Arrangement {
    pub(super) fn refused(kind: ArrangementKind, reason: NoLayout) -> Arrangement {
        Arrangement {
            kind,
            name: kind.to_string(),
            rank: None,
            built: false,
            detail: None,
            figures: None,
            no_layout: Some(reason),
            bounds: Vec::new(),
        }
    }
}
