//! One sheet: the most valuable set of rectangles that can be cut from it edge to edge.
//!
//! ```text
//!   board     the sheet and what may be cut from it, in units that divide all extents
//!   raster    the places along each side at which a cut can matter
//!   table     the best value of every piece, copies without limit; row: how one row of it is cut
//!   stages    ... where the saw line turns only so often
//!   weights   ... and the same with scarce copies counting for less, which brings the bound down
//!   climb     a good answer in a millisecond
//!   rest      what the rest of the sheet is worth at most around a rectangle in its corner
//!   join      known rectangles side by side and end to end, until nothing can be better
//! ```
//!
//! Sizes are grown by the kerf before they come here, so that cuts have no thickness. One more question is answered by
//! the same means for other parts of the nest: `fits`, whether everything fits one sheet.
//!
//! # Limits
//! Where the saw limits stages or fixes the first line, the bound is that of a saw that does not; it is met by patience
//! or not at all. A table of all pieces holds 2²⁶ of them; sheets with more places for cuts get a good answer and a
//! bound by area.

mod best;
mod board;
mod check;
mod climb;
mod copies;
mod fits;
mod groups;
mod join;
mod json;
mod order;
mod part;
mod raster;
mod rest;
mod result;
mod row;
mod stages;
mod standing;
mod table;
#[cfg(test)]
mod tests;
mod tree;
mod weights;
mod worth;

#[allow(unused_imports, reason = "for the nest where the parts that are left may fit one sheet")]
pub(in crate::nest) use fits::{Fits, fits};

pub use check::check_fill;
pub use part::FillPart;
pub use result::Fill;
pub use standing::FillProgress;
pub use worth::{Worth, WorthIn};

use super::effort::Effort;
use super::watch::Watch;
use crate::error::Error;
use crate::stock::{Saw, Sheet};
use order::Question;
use std::cell::RefCell;
use std::ops::ControlFlow;

/// Cuts the most valuable set of parts from one sheet.
///
/// Parts without a count may be cut as often as they fit. Values are given for all parts or for none; then a part is
/// worth its area. The sheet's count and price do not matter. The same input gives the same answer on every machine.
///
/// # Method
/// Copies without limit: dynamic programming over raster points (Scheithauer 1997; Cintra, Miyazawa, Wakabayashi and
/// Xavier 2008). Limited copies: Lagrangean weights on copies for the bound, late acceptance hill climbing for a first
/// answer, then best-first joining of known rectangles (Viswanathan and Bagchi 1993; Cung, Hifi and Le Cun 2000). Where
/// the area of all parts is no more than the sheet's, it is asked first whether all of them fit.
///
/// # Errors
/// A side of zero or less, a negative value, kerf, trim or keep, values for some parts and not for all, more than three
/// stages, a trim that leaves nothing of the sheet, more than a million parts.
///
/// # Examples
/// ```
/// use deck_core::nest::{Effort, FillPart, fill};
/// use deck_core::stock::{Saw, Sheet};
/// let sheet = Sheet::new("offcut", "30 in".parse()?, "20 in".parse()?);
/// let parts = [
///     FillPart::new("lid", "14 in".parse()?, "9 in".parse()?).unlimited().value("4".parse()?),
///     FillPart::new("shelf", "30 in".parse()?, "10 in".parse()?).unlimited().value("7".parse()?),
/// ];
/// let fill = fill(&sheet, &parts, &Saw::new().kerf("1/8 in".parse()?), Effort::Standard)?;
/// assert_eq!((fill.value.to_string().as_str(), fill.placements.len(), fill.proven), ("16.00", 4, true));
/// # Ok::<(), deck_core::Error>(())
/// ```
pub fn fill(sheet: &Sheet, parts: &[FillPart], saw: &Saw, effort: Effort) -> Result<Fill, Error> {
    fill_watched(sheet, parts, saw, effort, &mut |_| ControlFlow::Continue(()))
}

/// Cuts the most valuable set of parts from one sheet while someone looks on, who may stop it.
///
/// `watch` is asked each million steps (some hundredths of a second), and once more at the end. It is never asked by a
/// clock, so the answer is that of [`fill`] unless it breaks off; then the best answer so far is handed back at once,
/// with its bound.
///
/// # Errors
/// As [`fill`].
///
/// # Examples
/// ```
/// use deck_core::nest::{Effort, FillPart, fill_watched};
/// use deck_core::stock::{Saw, Sheet};
/// use std::ops::ControlFlow;
/// let sheet = Sheet::new("offcut", "30 in".parse()?, "20 in".parse()?);
/// let parts = [FillPart::new("lid", "14 in".parse()?, "9 in".parse()?).unlimited()];
/// let mut last = None;
/// let fill = fill_watched(&sheet, &parts, &Saw::new(), Effort::Standard, &mut |progress| {
///     last = Some(*progress);
///     ControlFlow::Continue(())
/// })?;
/// assert_eq!(last.map(|last| (last.value, last.proven)), Some((fill.value, fill.proven)));
/// # Ok::<(), deck_core::Error>(())
/// ```
pub fn fill_watched(
    sheet: &Sheet,
    parts: &[FillPart],
    saw: &Saw,
    effort: Effort,
    watch: &mut dyn FnMut(&FillProgress) -> ControlFlow<()>,
) -> Result<Fill, Error> {
    check_fill(Some(sheet), parts, saw)?;
    let question = Question::new(sheet, parts, saw);
    let standing = question.standing();
    let watcher = RefCell::new(watch);
    let ask = |done, of| match watcher.try_borrow_mut() {
        Ok(mut watcher) => watcher(&standing.progress(done, of)),
        // unreachable: the watcher is asked by this search only, and does not see it.
        Err(_) => ControlFlow::Continue(()),
    };
    let steps = effort.one_sheet();
    let watch = Watch::new(steps.left(), &ask);
    let filled = question.board().best(question.values(), &standing, &mut steps.watched(&watch));
    let fill = question.answer(filled, &standing);
    watch.ask();
    Ok(fill)
}
