//! A fastener in wood: its head sinks through the board, or its shank draws out of blocking.

use super::held::{Held, Mode, sizes};
use crate::error::{Error, Faults};
use crate::length::Length;
use crate::published::Standing;
use crate::span::options::figure;
use serde::{Deserialize, Serialize};
use std::f64::consts::PI;

/// Specific gravity of a wood or a plywood.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Gravity {
    /// Plywood Structural I or Marine: 0.50 (NDS 2018, table 12.3.3B, from memory).
    StructuralPlywood,
    /// Plywood of other grades: 0.42 (NDS 2018, table 12.3.3B, from memory).
    Plywood,
    /// Another, as given.
    Given(f64),
}

impl Gravity {
    /// The figure.
    pub fn value(self) -> f64 {
        match self {
            Gravity::StructuralPlywood => 0.50,
            Gravity::Plywood => 0.42,
            Gravity::Given(gravity) => gravity,
        }
    }

    pub(super) fn check(self) -> Result<(), Error> {
        figure(self.value(), 0.2, 1.2).map_err(|error| error.within("gravity"))
    }
}

/// Head pull-through of a round head, or of the washer under it, in a board.
///
/// `under_head` is the board's thickness below the head: less than the board where the head is countersunk.
///
/// # Method
/// NDS 2018, 12.2.5, from memory, an allowable load: `W = 690 π D G² t` up to t = 2.5 D, and `1725 π D² G²` beyond.
///
/// # Errors
/// A head or thickness of zero or less, a specific gravity outside 0.2 to 1.2.
pub fn head_pull_through(head: Length, under_head: Length, gravity: Gravity) -> Result<Held, Error> {
    let mut faults = Faults::new();
    sizes(&mut faults, &[("head", head), ("under_head", under_head)]);
    faults.take(gravity.check());
    faults.finish()?;
    let (d, t, g) = (head.as_inches(), under_head.as_inches(), gravity.value());
    let (load, equation) = if t <= 2.5 * d {
        (690.0 * PI * d * g.powi(2) * t, "W = 690 π D G² t")
    } else {
        (1725.0 * PI * d.powi(2) * g.powi(2), "W = 1725 π D² G²")
    };
    let clause = format!("{equation}, G = {g}, NDS 2018, 12.2.5, from memory");
    Ok(Held::new(Mode::HeadPullThrough, load, 1.0, clause, Standing::Memory))
}

/// What is driven into wood.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "lowercase")]
pub enum Shank {
    /// A wood screw: `W = 2850 G² D` for each inch of thread.
    Screw,
    /// A lag screw: `W = 1800 G^1.5 D^0.75` for each inch of thread, without its tip.
    Lag,
    /// A smooth nail: `W = 1380 G^2.5 D` for each inch.
    Nail,
}

/// Withdrawal of a shank from the side grain of wood, such as blocking.
///
/// # Method
/// NDS 2018, 12.2, an allowable load at normal duration, dry. The screw's equation is quoted in public code; those of lag
/// screw and nail are from memory and give the printed answers of AWC's solved examples E2.3 and E2.1a.
///
/// # Errors
/// A diameter or penetration of zero or less, a specific gravity outside 0.2 to 1.2.
///
/// # Examples
/// ```
/// use deck_core::span::hold::{Gravity, Shank, withdrawal};
/// let held = withdrawal(Shank::Screw, "0.19 in".parse()?, "1 in".parse()?, Gravity::Given(0.5))?;
/// assert!((held.allowable - 135.4).abs() < 0.05);
/// # Ok::<(), deck_core::Error>(())
/// ```
pub fn withdrawal(shank: Shank, diameter: Length, penetration: Length, gravity: Gravity) -> Result<Held, Error> {
    let mut faults = Faults::new();
    sizes(&mut faults, &[("diameter", diameter), ("penetration", penetration)]);
    faults.take(gravity.check());
    faults.finish()?;
    let (d, g) = (diameter.as_inches(), gravity.value());
    let (inch, equation, standing) = match shank {
        Shank::Screw => (2850.0 * g.powi(2) * d, "W = 2850 G² D", Standing::Verified),
        Shank::Lag => (1800.0 * g.powf(1.5) * d.powf(0.75), "W = 1800 G^1.5 D^0.75", Standing::Memory),
        Shank::Nail => (1380.0 * g.powf(2.5) * d, "W = 1380 G^2.5 D", Standing::Memory),
    };
    let clause = format!("{equation} to the inch, G = {g}, NDS 2018, 12.2");
    Ok(Held::new(Mode::Withdrawal, inch * penetration.as_inches(), 1.0, clause, standing))
}
