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
//! parts (`build`), `search`, `roundup`, `repack`, `goal` and `polish` look for better answers, `choose` ranks them,
//! `bound` says what none can undercut, and `report` writes the best one down as sheets and cut trees.
//!
//! # Limits
//! The bounding rectangles of shaped parts are nested; rectangles of the waste inside them are offered again as stock
//! ([`Part::inside`]). Bounds are seldom met where many sizes of stock compete, or where two or three sheets hold
//! dozens of parts each. Where something that fits is left unplaced for want of sheets, nothing is proven.

mod bound;
mod build;
mod check;
mod choose;
mod cost;
mod effort;
mod goal;
mod inside;
mod json;
mod one;
mod part;
mod polish;
mod problem;
mod random;
mod repack;
mod report;
mod result;
mod roundup;
mod search;
mod sheets;
#[cfg(test)]
mod tests;
mod tree;
mod watch;
mod why;
mod writer;

pub use check::check;
pub use cost::{BoatCost, Cost, CostIn};
pub use effort::Effort;
pub use one::{Fill, FillPart, FillProgress, Worth, WorthIn, check_fill, fill, fill_watched};
pub use part::{Grain, Part};
pub use result::{CutSheet, Inside, Nest, Placement, Rectangle, Unplaced};
pub use tree::{Cut, Piece, Tree, Yes};
pub use watch::Progress;

use crate::error::Error;
use crate::stock::{Saw, Sheet};
use bound::Bound;
use problem::Problem;
use std::cell::RefCell;
use std::ops::ControlFlow;
use watch::{Standing, Watch};

/// Lays parts out on sheets.
///
/// A part that finds no place is no error: it is listed under [`Nest::unplaced`] with the reason. The same input gives
/// the same answer on every machine.
///
/// # Method
/// Greedy constructions by best fit under every combination of a few rules; then, within the effort, orders disturbed
/// at random and sheets taken apart and packed again, common practice; then ruin and recreate on slicing trees with one
/// sheet fewer (Schrimpf, Schneider, Stamm-Wilbrandt and Dueck 2000; Otten 1982). The bound: areas, whole sheets of
/// several sizes, dual-feasible functions (Fekete and Schepers 2004), and within the effort column generation (Gilmore and
/// Gomory 1965) over raster points (Beasley 1985), whose patterns are rounded into answers.
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
    nest_watched(parts, stock, saw, effort, &mut |_| ControlFlow::Continue(()))
}

/// Lays parts out on sheets while someone looks on, who may stop it.
///
/// `watch` is asked when the first answer stands, then each million steps (some hundredths of a second), and once more
/// at the end. It is never asked by a clock, so the answer is that of [`nest`] unless it breaks off; then the best
/// answer so far is handed back at once, with its bound.
///
/// # Errors
/// As [`nest`].
///
/// # Examples
/// ```
/// use deck_core::nest::{nest_watched, Effort, Part};
/// use deck_core::stock::{Saw, Sheet};
/// use std::ops::ControlFlow;
/// let parts = [Part::new("lid", "31 in".parse()?, "17 in".parse()?).count(40)];
/// let stock = [Sheet::new("4 x 8", "96 in".parse()?, "48 in".parse()?)];
/// let mut asked = 0;
/// let nest = nest_watched(&parts, &stock, &Saw::new(), Effort::Thorough, &mut |progress| {
///     asked += 1;
///     if progress.proven { ControlFlow::Break(()) } else { ControlFlow::Continue(()) }
/// })?;
/// assert!(nest.unplaced.is_empty() && asked > 0);
/// # Ok::<(), deck_core::Error>(())
/// ```
pub fn nest_watched(
    parts: &[Part],
    stock: &[Sheet],
    saw: &Saw,
    effort: Effort,
    watch: &mut dyn FnMut(&Progress) -> ControlFlow<()>,
) -> Result<Nest, Error> {
    check(parts, stock, saw)?;
    let problem = Problem::new(parts, stock, saw);
    let mut bound = Bound::new(&problem);
    let standing = Standing::new(&problem);
    let watcher = RefCell::new(watch);
    let ask = |done, of| match watcher.try_borrow_mut() {
        Ok(mut watcher) => watcher(&standing.progress(done, of)),
        // unreachable: the watcher is asked by this search only, and does not see it.
        Err(_) => ControlFlow::Continue(()),
    };
    let watch = Watch::new(effort.most(problem.copies()), &ask);
    let solution = search::search(&problem, effort, &mut bound, &watch, &standing);
    standing.bounded(bound.least());
    watch.ask();
    let layouts: Vec<_> = solution.runs.iter().map(|run| build::layout(&problem, &run.0)).collect();
    Ok(report::report(report::Order { parts, stock, saw, problem: &problem }, &solution, &layouts, &bound))
}
