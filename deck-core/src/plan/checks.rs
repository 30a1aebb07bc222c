//! Dimensions to check on the boat and on the boards.

use crate::geometry::Point;
use crate::length::Length;
use crate::outline::{Outline, Rim};
use crate::published::defaults;
use crate::seams::{Errors, SeamLayout, Stack, stack};
use serde::{Deserialize, Serialize};

/// What to measure before the first cut.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct CheckDimensions {
    /// Length over all.
    pub length: Length,
    /// Greatest beam.
    pub beam: Length,
    /// The greatest rectangle between the straight sides, where the outline has both.
    pub square: Option<SquareCheck>,
    /// How far the last seam may be off when boards are sawn and set within the usual errors.
    pub stack: Option<Stack>,
}

/// A rectangle on the deck whose diagonals tell whether the frame is square.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct SquareCheck {
    /// Station of its fore corners.
    pub fore: Length,
    /// Station of its aft corners.
    pub aft: Length,
    /// Both diagonals, when it is square.
    pub diagonal: Length,
    /// A difference of the diagonals …
    pub difference: Length,
    /// … means that one side is this far ahead of the other.
    pub skew: Length,
}

/// The difference of diagonals that the skew is told for.
const DIFFERENCE: (i64, i64) = (1, 8);

impl CheckDimensions {
    /// Where the job says no errors, the stack is told for the usual ones.
    pub(super) fn new(outline: &Outline, layout: Option<&SeamLayout>, errors: Option<&Errors>) -> CheckDimensions {
        let [saw, set] = errors.map_or([defaults::SAWING.value, defaults::SETTING.value], |errors| {
            [errors.sawing, errors.setting].map(|error| error.under.max(error.over))
        });
        let boards = layout.map(|layout| stack(in_a_row(layout), saw, set));
        CheckDimensions { length: outline.length(), beam: outline.beam(), square: square(outline), stack: boards }
    }
}

/// Boards one behind the other: of rows along the boat, in the row with the most.
fn in_a_row(layout: &SeamLayout) -> usize {
    let rows = layout.boards.chunk_by(|one, other| one.lane == other.lane);
    rows.map(<[_]>::len).max().unwrap_or(0)
}

fn square(outline: &Outline) -> Option<SquareCheck> {
    let stretch = |rim: Rim| {
        let sides = outline.path().walk().filter(|(side, _)| side.edge == rim && side.arc.is_none());
        sides.map(|(side, to)| (side.from.x.min(to.x), side.from.x.max(to.x))).max_by_key(|(fore, aft)| *aft - *fore)
    };
    let (port, starboard) = (stretch(Rim::Port)?, stretch(Rim::Starboard)?);
    let (fore, aft) = (port.0.max(starboard.0), port.1.min(starboard.1));
    (fore < aft).then(|| SquareCheck::new(fore, aft, outline.beam()))
}

impl SquareCheck {
    /// The check of a rectangle between two stations across a beam.
    ///
    /// # Method
    /// With one side a distance s ahead, the diagonals of a rectangle L by W differ by 2 s L / D to first order, D its
    /// diagonal. Derived here from d² = (L ± s)² + W².
    ///
    /// # Examples
    /// ```
    /// use deck_core::plan::SquareCheck;
    /// let check = SquareCheck::new("0 in".parse()?, "288 in".parse()?, "102 in".parse()?);
    /// assert_eq!((check.skew.as_inches() * 1000.0).round(), 66.0); // for a difference of 1/8 in
    /// # Ok::<(), deck_core::Error>(())
    /// ```
    pub fn new(fore: Length, aft: Length, beam: Length) -> SquareCheck {
        let diagonal = Point::new(fore, Length::ZERO).distance(Point::new(aft, beam));
        let difference = Length::inch_fraction(DIFFERENCE.0, DIFFERENCE.1);
        let skew = difference.part(diagonal.nanometres(), (aft - fore).nanometres().saturating_mul(2));
        SquareCheck { fore, aft, diagonal, difference, skew }
    }
}
