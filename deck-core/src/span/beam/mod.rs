//! A board over several members as a beam: what do the members carry, and where is it bent most?
//!
//! ```text
//!      ##### q          | P                       downward loads, sagging moments
//!   ===================================>          and downward deflections are positive
//!   |  ^         ^             ^   |   x
//!   0  support 0 support 1     ... the far tip
//!   overhang  span 0   span 1   overhang
//! ```
//!
//! Every place is told as the distance from the left tip of the beam, overhang included. Any consistent set of units
//! will do: with inches, pounds and lbf·in² deflections come out in inches.
//!
//! # Method
//! Direct stiffness with Euler–Bernoulli beams: one rotation a support is unknown, each span brings its four stiffness
//! terms `4/L`, `2/L` and its fixed-end moments in closed form (Gere and Weaver, Analysis of Framed Structures, 1965,
//! from memory). Overhangs are statically determinate. The equations are tridiagonal and dominated by their
//! diagonal, so they are solved in one sweep without pivoting. Between breaks of the load moments are parabolas and
//! deflections quartics; their extremes are roots of the derivative, not samples.

mod check;
mod load;
mod pattern;
mod piece;
mod result;
mod segment;
mod solve;
#[cfg(test)]
mod tests;

pub use load::{BeamLoad, BeamLoadKind};
pub use pattern::{BeamWorst, WorstPeak, WorstRange, WorstSpan, WorstSupport};
pub use result::{Beam, BeamSpan, BeamSupport, Peak, Range};

use crate::error::Error;

/// How an end of the beam is held at its last support.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, serde::Serialize, serde::Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum End {
    /// Held down and free to turn, as a board on a member.
    #[default]
    Simple,
    /// Held down and kept from turning. There can be no overhang beyond it.
    Fixed,
}

/// A continuous beam without its loads.
///
/// # Examples
/// A board on three members, walked on at the middle of the first bay:
/// ```
/// use deck_core::span::{BeamLoad, BeamProblem};
/// let board = BeamProblem::new(&[16.0, 16.0]).stiffness(115_000.0);
/// let beam = board.solve(&[BeamLoad::point(8.0, 32.0)])?;
/// let reactions: Vec<f64> = beam.supports.iter().map(|support| support.reaction).collect();
/// assert_eq!(reactions.iter().map(|r| r.round()).collect::<Vec<_>>(), [13.0, 22.0, -3.0]);
/// # Ok::<(), deck_core::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct BeamProblem {
    /// Lengths of the spans between supports, from the left.
    pub spans: Vec<f64>,
    /// Lengths beyond the first and the last support.
    pub overhangs: [f64; 2],
    /// Bending stiffness EI, force × length².
    pub stiffness: f64,
    /// How the first and the last support hold the beam.
    pub ends: [End; 2],
}

impl BeamProblem {
    /// Spans without overhangs, of stiffness 1, on simple supports.
    pub fn new(spans: &[f64]) -> BeamProblem {
        BeamProblem { spans: spans.to_vec(), overhangs: [0.0; 2], stiffness: 1.0, ends: [End::Simple; 2] }
    }

    /// With overhangs beyond the first and the last support.
    #[must_use]
    pub fn overhangs(mut self, overhangs: [f64; 2]) -> BeamProblem {
        self.overhangs = overhangs;
        self
    }

    /// With a bending stiffness EI.
    #[must_use]
    pub fn stiffness(mut self, stiffness: f64) -> BeamProblem {
        self.stiffness = stiffness;
        self
    }

    /// With ends held in another way.
    #[must_use]
    pub fn ends(mut self, ends: [End; 2]) -> BeamProblem {
        self.ends = ends;
        self
    }

    /// Length from tip to tip.
    pub fn length(&self) -> f64 {
        self.overhangs[0] + self.spans.iter().sum::<f64>() + self.overhangs[1]
    }

    /// Refuses what cannot be solved, without solving it. The loads of an unsound beam are not looked at.
    ///
    /// # Errors
    /// No span, a span of zero or less, a negative overhang, a stiffness of zero or less, a number that is not finite,
    /// a load that lies outside the beam or lacks its place or size, more than a million spans or ten thousand loads.
    /// Pointers: `/spans/0`, `/overhangs/1`, `/stiffness`, `/loads/0/at`.
    pub fn check(&self, loads: &[BeamLoad]) -> Result<(), Error> {
        check::problem(self)?;
        check::loads(self, loads, "loads")
    }

    /// Reactions, moments, shears and deflections under loads that act at once.
    ///
    /// # Cost
    /// Grows with the number of spans plus the number of spans that each load covers.
    ///
    /// # Errors
    /// As [`BeamProblem::check`].
    pub fn solve(&self, loads: &[BeamLoad]) -> Result<Beam, Error> {
        self.check(loads)?;
        Ok(solve::solve(self, &segment::segments(self, loads)))
    }
}

/// A continuous beam over uneven spans: reactions, moments, shears and deflections.
///
/// `spans` are the lengths between supports, `overhangs` those beyond the first and the last one, `stiffness` is EI.
/// [`BeamProblem`] also knows fixed ends and the worst pattern of a live load.
///
/// # Method
/// Direct stiffness with exact fixed-end moments; see the source file's head. Shear deflection is not included.
///
/// # Errors
/// As [`BeamProblem::solve`].
///
/// # Examples
/// Two equal spans: the middle support carries 5/4 of a span's load.
/// ```
/// use deck_core::{beam, span::BeamLoad};
/// let beam = beam(&[24.0, 24.0], &[BeamLoad::uniform(2.0)], [0.0, 0.0], 1e5)?;
/// assert!((beam.supports[1].reaction - 1.25 * 48.0).abs() < 1e-9);
/// assert!((beam.supports[1].moment + 2.0 * 24.0 * 24.0 / 8.0).abs() < 1e-9);
/// # Ok::<(), deck_core::Error>(())
/// ```
pub fn beam(spans: &[f64], loads: &[BeamLoad], overhangs: [f64; 2], stiffness: f64) -> Result<Beam, Error> {
    BeamProblem::new(spans).overhangs(overhangs).stiffness(stiffness).solve(loads)
}
