//! Which sheets are needed for these parts, and how are they sawn?
//!
//! Rectangles are cut out of sheets edge to edge: each saw line runs through the whole of the piece at hand. Of all
//! ways to do so, the nest looks for the one that leaves the least area of parts unplaced, then costs least, then
//! leaves the largest single offcut worth keeping, then asks for the fewest fence settings, then the fewest cuts.
//! Parts and sheets are rectangles with a grain; no boat is needed.
//!
//! ```text
//!   0        at      kerf                          length
//!   +--------+-+-----------------------------------+ 0        {"cut": "width", "at", "kerf", "children": [
//!   |        | |  second                           |              first,
//!   | first  | |                                   |              second
//!   |        | |                                   |          ]}
//!   +--------+-+-----------------------------------+ width
//!      the grain runs this way --->
//! ```
//!
//! The order is turned into whole numbers with the kerf folded into the sizes (`problem`), constructions place the
//! parts (`build`), `search` and `repack` look for better answers, `choose` ranks them, `bound` says what none can
//! undercut, and `report` writes the best one down as sheets and cut trees.
//!
//! # Limits
//! The bounding rectangles of shaped parts are nested; the waste inside them is not offered again. Bounds come from
//! areas and from dual-feasible functions and are seldom met where many sizes of stock compete. Where something that
//! fits is left unplaced for want of sheets, nothing is proven.

mod bound;
mod build;
mod check;
mod choose;
mod cost;
mod effort;
mod one;
mod part;
mod problem;
mod random;
mod repack;
mod report;
mod result;
mod search;
#[cfg(test)]
mod tests;
mod tree;
mod why;

pub use cost::{BoatCost, Cost, CostIn};
pub use effort::Effort;
pub use one::{Fill, FillPart, Worth, WorthIn, fill};
pub use part::{Grain, Part};
pub use result::{CutSheet, Nest, Placement, Rectangle, Unplaced};
pub use tree::{Cut, Piece, Tree, Yes};

use crate::error::Error;
use crate::stock::{Saw, Sheet};
use bound::Bound;
use problem::Problem;

/// Lays parts out on sheets.
///
/// A part that finds no place is no error: it is listed under [`Nest::unplaced`] with the reason. The same input gives
/// the same answer on every machine.
///
/// # Method
/// Greedy constructions by best fit under every combination of a few rules; then, within the effort, orders disturbed
/// at random and sheets taken apart and packed again; common practice. The bound: areas, whole sheets of several sizes,
/// and dual-feasible functions (Fekete and Schepers 2004).
///
/// # Errors
/// A side of zero or less, a negative kerf, trim, keep or price, more than three stages, prices for some bought sheets
/// and not for all, a trim that leaves nothing of any sheet, more than a million parts or a thousand kinds of sheets.
///
/// # Examples
/// ```
/// use deck_core::nest::{nest, Effort, Part};
/// use deck_core::stock::{Saw, Sheet};
/// let parts = [Part::new("board", "102 in".parse()?, "48 in".parse()?).count(6)];
/// let stock = [Sheet::new("102 ply", "102 in".parse()?, "48 in".parse()?).price("80".parse()?)];
/// let nest = nest(&parts, &stock, &Saw::new().kerf("1/8 in".parse()?), Effort::Quick)?;
/// assert_eq!((nest.sheet_count, nest.proven), (6, true));
/// assert_eq!(nest.cost.to_string(), "480.00");
/// # Ok::<(), deck_core::Error>(())
/// ```
pub fn nest(parts: &[Part], stock: &[Sheet], saw: &Saw, effort: Effort) -> Result<Nest, Error> {
    check::check(parts, stock, saw)?;
    let problem = Problem::new(parts, stock, saw);
    let mut bound = Bound::new(&problem);
    let solution = search::search(&problem, effort, &mut bound);
    Ok(report::report(report::Order { parts, stock, saw, problem: &problem }, &solution, &bound))
}
