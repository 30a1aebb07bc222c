//! One sheet: the most valuable set of rectangles that can be cut from it edge to edge.
//!
//! Copies without limit are a matter of a table over all pieces that a cut can make (`table` over `raster`s).
//!
//! Sizes are grown by the kerf before they come here, so that cuts have no thickness.

mod best;
mod board;
mod check;
mod order;
mod part;
mod raster;
mod result;
mod table;
mod tree;
mod worth;

pub(in crate::nest) use board::{Board, Filled, Kind, Limits};

pub use part::FillPart;
pub use result::Fill;
pub use worth::{Worth, WorthIn};

use super::effort::Effort;
use crate::error::Error;
use crate::stock::{Saw, Sheet};
use order::Question;

/// Cuts the most valuable set of parts from one sheet.
///
/// Parts without a count may be cut as often as they fit. Values are given for all parts or for none; then a part is
/// worth its area. The sheet's count and price do not matter. The same input gives the same answer on every machine.
///
/// # Method
/// Dynamic programming over raster points (Cintra, Miyazawa, Wakabayashi and Xavier 2008) where copies are without limit.
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
    check::check(sheet, parts, saw)?;
    let question = Question::new(sheet, parts, saw);
    let filled = question.board().best(question.values(), &mut effort.one_sheet());
    Ok(question.answer(filled))
}
