//! What errors of measuring, sawing and setting leave of the bearing at each seam.
//!
//! Boards are set one after the other from the bow edge. The aft edge of board k is off by the errors of k boards' widths
//! and of k settings; the board behind it by one setting more. A flange is off by the reading of its station, or, where
//! bays were measured one by one, by as many readings as there are members up to it.
//!
//! ```text
//!   bearing forward = its plan + Σ (width + setting), k boards                − reading
//!   bearing aft     = its plan − Σ (width + setting), k boards − one setting  + reading
//! ```

use super::errors::{ErrorSum, Spread};
use super::layout::{Board, Seam, SeamLayout};
use crate::length::Length;
use serde::{Deserialize, Serialize};

/// How far off things are that a seam rests on, each error independent and evenly spread.
#[derive(Debug, Clone, PartialEq, Eq)]
#[non_exhaustive]
pub struct Errors {
    /// Of a member's station as it was read: above means that the flange lies further aft.
    pub measuring: Spread,
    /// True where each bay was measured from the member before, so that the readings' errors add up.
    pub chained: bool,
    /// Of a sawn board's width.
    pub sawing: Spread,
    /// Of a board's place against the board forward of it, or against the bow edge.
    pub setting: Spread,
    /// Board widths that are not sawn but a sheet's own, each with that sheet's error.
    pub full: Vec<(Length, Spread)>,
}

impl Errors {
    /// Errors of sawing and setting, and no others.
    pub fn new(sawing: Spread, setting: Spread) -> Errors {
        Errors { measuring: Spread::default(), chained: false, sawing, setting, full: Vec::new() }
    }

    /// With an error of each reading, and whether readings are chained.
    #[must_use]
    pub fn measuring(mut self, reading: Spread, chained: bool) -> Errors {
        (self.measuring, self.chained) = (reading, chained);
        self
    }

    /// With sheets' widths that boards keep, each with its error.
    #[must_use]
    pub fn full(mut self, full: Vec<(Length, Spread)>) -> Errors {
        self.full = full;
        self
    }

    /// The error of a board's width.
    pub fn board(&self, width: Length) -> Spread {
        self.full.iter().find(|(full, _)| *full == width).map_or(self.sawing, |(_, spread)| *spread)
    }

    /// How many readings a member's station rests on.
    fn readings(&self, member: usize) -> usize {
        if self.chained { member } else { 1 }
    }

    /// What is added to the bearing of the board forward of a seam: of the boards up to it, and of its member.
    fn fore(&self, widths: &[Length], member: usize) -> ErrorSum {
        let boards = widths.iter().fold(ErrorSum::new(), |sum, &width| sum.add(self.board(width), 1));
        boards.add(self.setting, widths.len()).add(self.measuring.reversed(), self.readings(member))
    }

    /// What is added to the bearing of the board aft of it.
    fn aft(&self, widths: &[Length], member: usize) -> ErrorSum {
        let boards = widths.iter().fold(ErrorSum::new(), |sum, &width| sum.add(self.board(width).reversed(), 1));
        boards.add(self.setting.reversed(), widths.len() + 1).add(self.measuring, self.readings(member))
    }

    /// The most that errors can take off the bearing forward and aft of a seam.
    pub(super) fn losses(&self, widths: &[Length], member: usize) -> [Length; 2] {
        [self.fore(widths, member).worst().under, self.aft(widths, member).worst().under]
    }
}

/// What errors leave at a seam.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct SeamTolerance {
    /// Number of the seam, from the bow.
    pub seam: usize,
    /// Number of the member that it lies on.
    pub member: usize,
    /// The board forward of it.
    pub fore: BearingTolerance,
    /// The board aft of it.
    pub aft: BearingTolerance,
}

/// What errors leave of a bearing.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct BearingTolerance {
    /// As planned.
    pub planned: Length,
    /// When every error is at its limit the wrong way.
    pub worst: Length,
    /// By the root of the sum of squares.
    pub root_sum_square: Length,
    /// How far the worst lies above the least bearing; below zero: under it.
    pub margin: Length,
    /// The chance of bearing less than the least, from 0 to 1.
    pub chance_short: f64,
}

impl BearingTolerance {
    fn new(planned: Length, sum: &ErrorSum, least: Length) -> BearingTolerance {
        let worst = planned - sum.worst().under;
        BearingTolerance {
            planned,
            worst,
            root_sum_square: planned - sum.root_sum_square().under,
            margin: worst - least,
            chance_short: sum.chance_below(least - planned),
        }
    }
}

impl SeamTolerance {
    /// The smaller of both margins.
    pub fn margin(&self) -> Length {
        self.fore.margin.min(self.aft.margin)
    }
}

/// What errors leave of the bearing at each seam of a layout.
///
/// # Method
/// Worst case: the sum of all limits. Root-sum-square: of the half-widths, about the middle of errors that are not even.
/// The chance: [`ErrorSum::chance_below`]. Errors are taken as independent. Derived here, no source.
///
/// # Examples
/// One seam, both boards sawn and set within 1/16 and 1/32, planned to bear an inch each: in the worst case the fore board
/// loses 3/32, and the aft one, set after it, 1/8.
/// ```
/// use deck_core::frame::{Frame, FrameSpec};
/// use deck_core::seams::{BoardStock, Errors, Rules, SeamProblem, Spread, seams, tolerance};
/// use deck_core::Length;
/// let inches = Length::inches;
/// let frame = Frame::new(&FrameSpec::regular(inches(0), inches(96), inches(24), inches(2)))?;
/// let sheets = vec![BoardStock { label: "48 x 96".into(), width: inches(48) }];
/// let found = seams(&SeamProblem::new(&frame, inches(96), sheets, Rules::new("1/2 in".parse()?)));
/// let errors = Errors::new(Spread::even("1/16 in".parse()?), Spread::even("1/32 in".parse()?));
/// let at = &tolerance(&found.layouts[0], "1/2 in".parse()?, &errors)[0];
/// assert_eq!((at.fore.worst, at.aft.worst), ("29/32 in".parse()?, "7/8 in".parse()?));
/// assert_eq!(at.fore.chance_short, 0.0);
/// # Ok::<(), deck_core::Error>(())
/// ```
pub fn tolerance(layout: &SeamLayout, least_bearing: Length, errors: &Errors) -> Vec<SeamTolerance> {
    let widths: Vec<Length> = layout.boards.iter().map(|board| board.width).collect();
    let at = |(index, seam): (usize, &Seam)| {
        let up_to = widths.get(..=index).unwrap_or_default();
        SeamTolerance {
            seam: seam.number,
            member: seam.member,
            fore: BearingTolerance::new(seam.bearing_fore, &errors.fore(up_to, seam.member), least_bearing),
            aft: BearingTolerance::new(seam.bearing_aft, &errors.aft(up_to, seam.member), least_bearing),
        }
    };
    layout.seams.iter().enumerate().map(at).collect()
}

/// Whether the last board is better ripped on the boat, to what the boards before it have left.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct LastBoard {
    /// Number of the board.
    pub board: usize,
    /// How far it may finish short of (`under`) or past (`over`) its planned end at worst, sawn with the others.
    pub in_shop: Spread,
    /// The same by the root of the sum of squares.
    pub in_shop_root_sum_square: Spread,
    /// At worst when it is ripped on the boat: the error of sawing alone.
    pub on_boat: Spread,
    /// How much nearer to its place that is at worst.
    pub saves: Length,
    /// How wide it is left until then: its width, and what the boards before it can leave short.
    pub leave_wide: Length,
    /// How much wider that is than the widest board in stock; zero where it is not.
    pub lacks: Length,
    /// True where it pays: sawn in the shop it may finish past the outline or short of what the job allows, by more than
    /// when it is ripped on the boat.
    pub pays: bool,
    /// How far past those limits it may finish at worst, sawn in the shop.
    pub beyond: Length,
}

/// How wide a board is left that is ripped on the boat: its width, and what the boards before it, their places and its own
/// saw line can leave short at worst. Boards are counted from 1.
pub fn width_to_rip(layout: &SeamLayout, errors: &Errors, board: usize) -> Length {
    let before = layout.boards.iter().take(board.saturating_sub(1));
    let sum = before.fold(ErrorSum::new(), |sum, other| sum.add(errors.board(other.width), 1));
    let own = layout.boards.iter().find(|other| other.number == board).map_or(Length::ZERO, |own| own.width);
    own + sum.add(errors.setting, board).worst().under + errors.sawing.under
}

/// Whether to rip the last board on the boat. `short` and `long` are how far it may finish before and past its planned
/// end; `widest` is the widest board in stock. None where there is no board.
pub fn last_board(
    layout: &SeamLayout,
    errors: &Errors,
    [short, long]: [Length; 2],
    widest: Length,
) -> Option<LastBoard> {
    let last: &Board = layout.boards.last()?;
    let boards = layout.boards.iter();
    let sum = boards.fold(ErrorSum::new(), |sum, board| sum.add(errors.board(board.width), 1));
    let sum = sum.add(errors.setting, layout.boards.len());
    let (in_shop, on_boat) = (sum.worst(), errors.sawing);
    let past = |spread: Spread| (spread.under - short).max(spread.over - long).max(Length::ZERO);
    let leave_wide = width_to_rip(layout, errors, last.number);
    Some(LastBoard {
        board: last.number,
        in_shop,
        in_shop_root_sum_square: sum.root_sum_square(),
        on_boat,
        saves: (in_shop.under.max(in_shop.over) - on_boat.under.max(on_boat.over)).max(Length::ZERO),
        leave_wide,
        lacks: (leave_wide - widest).max(Length::ZERO),
        pays: past(in_shop) > past(on_boat),
        beyond: past(in_shop),
    })
}
