//! A board screwed to a flange: every way in which a screw lets go, for one and for a row.

use super::distance::{Distance, distances};
use super::held::{Held, sizes};
use super::metal::{Metal, bearing, pull_over};
use super::pull_out::{PullOut, pull_out};
use super::screw::Screw;
use super::wood::{Gravity, head_pull_through};
use crate::error::{Error, Fault, Faults, Kind};
use crate::length::Length;
use crate::published::WET_STRENGTH;
use crate::span::limits::CAUTION;
use crate::span::options::figure;
use serde::{Deserialize, Serialize};

/// A board screwed to an aluminium flange.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
#[non_exhaustive]
pub struct Joint {
    /// The screw.
    pub screw: Screw,
    /// The flange.
    pub flange: Metal,
    /// Thickness of the board under the head.
    pub board: Length,
    /// Specific gravity of the board.
    pub gravity: Gravity,
    /// From the screw's centre to the flange's edge.
    pub edge_metal: Length,
    /// From the screw's centre to the board's edge.
    pub edge_board: Length,
    /// From screw to screw along the row.
    pub spacing: Length,
    /// An aluminium strap or fitting between head and board.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub strap: Option<Metal>,
    /// True over water.
    #[serde(default)]
    pub wet: bool,
}

impl Joint {
    /// A dry joint without a strap, in plywood of an ordinary grade. Distances: edge in the metal, edge of the board, and
    /// spacing.
    pub fn new(screw: Screw, flange: Metal, board: Length, distances: [Length; 3]) -> Joint {
        let [edge_metal, edge_board, spacing] = distances;
        let gravity = Gravity::Plywood;
        Joint { screw, flange, board, gravity, edge_metal, edge_board, spacing, strap: None, wet: false }
    }

    /// In a board of that specific gravity.
    #[must_use]
    pub fn gravity(mut self, gravity: Gravity) -> Joint {
        self.gravity = gravity;
        self
    }

    /// With a strap under the head.
    #[must_use]
    pub fn strap(mut self, strap: Metal) -> Joint {
        self.strap = Some(strap);
        self
    }

    /// Wet or dry.
    #[must_use]
    pub fn wet(mut self, wet: bool) -> Joint {
        self.wet = wet;
        self
    }
}

/// What a screw of a joint holds.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct Hold {
    /// `lb`: loads are pounds.
    pub unit: String,
    /// Ways of lifting off, the weakest first.
    pub uplift: Vec<Held>,
    /// Ways of sliding, the weakest first. Empty where an edge is too close.
    pub sideways: Vec<Held>,
    /// Pull-out by formula and by test.
    pub pull_out: PullOut,
    /// Distances, kept or not.
    pub distances: Vec<Distance>,
    /// What else one should know.
    pub notes: Vec<String>,
    /// The caution that goes with every figure of strength.
    pub caution: String,
}

/// What a row of equal screws holds, pounds.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct RowHold {
    /// How many screws.
    pub count: u32,
    /// Against lifting off; none where a screw has no figure.
    pub uplift: Option<f64>,
    /// Against sliding; none where a screw has no figure.
    pub sideways: Option<f64>,
    /// That the load is taken as shared alike.
    pub note: String,
}

/// A load that a user wants a row to hold, over what it holds.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct RowLoad {
    /// The row.
    pub row: RowHold,
    /// Lift over what the row holds.
    pub uplift: Option<f64>,
    /// Side load over what the row holds.
    pub sideways: Option<f64>,
    /// The caution that goes with every figure of strength.
    pub caution: String,
}

impl Hold {
    /// The weakest way of lifting off.
    pub fn weakest_uplift(&self) -> Option<&Held> {
        self.uplift.first()
    }

    /// The weakest way of sliding.
    pub fn weakest_sideways(&self) -> Option<&Held> {
        self.sideways.first()
    }

    /// A row of so many such screws, the load shared alike.
    pub fn row(&self, count: u32) -> RowHold {
        let all = |held: Option<&Held>| held.map(|held| held.allowable * f64::from(count));
        RowHold {
            count,
            uplift: all(self.weakest_uplift()),
            sideways: all(self.weakest_sideways()),
            note: "The screws are taken to share the load alike, which the first to slip does not.".into(),
        }
    }

    /// Loads in pounds over what a row holds; 1 is the whole of it.
    ///
    /// # Errors
    /// A load below zero or above 1 000 000 lb, a row of no screws.
    pub fn under(&self, count: u32, lift: f64, side: f64) -> Result<RowLoad, Error> {
        let mut faults = Faults::new();
        if count == 0 {
            let message = "A row without screws holds nothing.";
            faults.push(Fault::new(Kind::OutOfRange, "0", message, "One screw or more is accepted.").within("count"));
        }
        faults.take(figure(lift, 0.0, 1e6).map_err(|error| error.within("lift")));
        faults.take(figure(side, 0.0, 1e6).map_err(|error| error.within("side")));
        faults.finish()?;
        let row = self.row(count);
        let uplift = row.uplift.map(|held| lift / held);
        let sideways = row.sideways.map(|held| side / held);
        Ok(RowLoad { row, uplift, sideways, caution: self.caution.clone() })
    }
}

/// What one screw of a joint holds, in each way and in the weakest.
///
/// # Method
/// [`head_pull_through`], [`pull_out`], [`bearing`] and, with a strap, [`pull_over`] instead of pull-through. Wet: the
/// board's strength factor of APA Q225J (0.75) on pull-through, our choice, as none was found for it.
///
/// # Errors
/// Sizes or strengths that cannot be, all at once, each with its field.
///
/// # Examples
/// A quarter-inch flat head through wet 3/4 in plywood into 1/8 in of 6061-T6: the board gives way before the threads.
/// ```
/// use deck_core::span::hold::{Joint, Metal, Mode, Screw, hold};
/// let screw = Screw::published("1/4-20")?.head("1/2 in".parse()?);
/// let flange = Metal::published("6061-T6", "1/8 in".parse()?)?;
/// let distances = ["1/2 in".parse()?, "1/2 in".parse()?, "8 in".parse()?];
/// let held = hold(&Joint::new(screw, flange, "3/4 in".parse()?, distances).wet(true))?;
/// assert_eq!(held.weakest_uplift().unwrap().mode, Mode::HeadPullThrough);
/// assert!(held.weakest_uplift().unwrap().clause.contains("from memory"));
/// assert!(held.row(12).uplift.unwrap() > 1000.0);
/// # Ok::<(), deck_core::Error>(())
/// ```
pub fn hold(joint: &Joint) -> Result<Hold, Error> {
    check(joint)?;
    let pull_out = pull_out(&joint.screw, &joint.flange)?;
    let mut uplift: Vec<Held> = pull_out.carried.iter().cloned().collect();
    uplift.push(match &joint.strap {
        Some(strap) => pull_over(&joint.screw, strap)?,
        None => through_board(joint)?,
    });
    let mut sideways: Vec<Held> = bearing(&joint.screw, &joint.flange, joint.edge_metal)?.into_iter().collect();
    for held in [&mut uplift, &mut sideways] {
        held.sort_by(|a, b| a.allowable.total_cmp(&b.allowable));
    }
    Ok(Hold {
        unit: "lb".into(),
        uplift,
        sideways,
        pull_out,
        distances: distances(joint.screw.diameter, joint.edge_metal, joint.edge_board, joint.spacing),
        notes: notes(),
        caution: CAUTION.into(),
    })
}

fn through_board(joint: &Joint) -> Result<Held, Error> {
    let mut held = head_pull_through(joint.screw.head, joint.board, joint.gravity)?;
    if joint.wet {
        held.allowable *= WET_STRENGTH.value;
        held.nominal *= WET_STRENGTH.value;
        held.clause = format!(
            "{}; × {} wet, the board's own strength factor ({}), as none was found for pull-through",
            held.clause, WET_STRENGTH.value, WET_STRENGTH.source
        );
    }
    Ok(held)
}

fn notes() -> Vec<String> {
    vec![
        "Not counted: the screw's own breaking, its bending in the board, tilting in thin metal, prying, shaking loose.".into(),
    ]
}

fn check(joint: &Joint) -> Result<(), Error> {
    let mut faults = Faults::new();
    faults.take(joint.screw.check().map_err(|error| error.within("screw")));
    faults.take(joint.flange.check().map_err(|error| error.within("flange")));
    if let Some(strap) = &joint.strap {
        faults.take(strap.check().map_err(|error| error.within("strap")));
    }
    faults.take(joint.gravity.check());
    let lengths = [
        ("board", joint.board),
        ("edge_metal", joint.edge_metal),
        ("edge_board", joint.edge_board),
        ("spacing", joint.spacing),
    ];
    sizes(&mut faults, &lengths);
    faults.finish()
}
