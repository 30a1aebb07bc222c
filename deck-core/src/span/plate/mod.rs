//! A board as an orthotropic plate: how far does it sink under a heel, and where does it bend most?
//!
//! ```text
//!   0                                    length   x
//!   +------------------------------------+ 0
//!   |====================================|        a member along: a line support at a y
//!   |            +--+                    |
//!   |            |##| a heel             |        downward loads, sagging moments and
//!   |            +--+                    |        downward deflections are positive
//!   |====================================|
//!   +------------------------------------+ width
//!   y                                             an edge without a support is free
//! ```
//!
//! `dx` is the bending rigidity of the board as it spans along `x`, force × length (stiffness EI per width); `dy`
//! along `y`. The moment `x` is the one that bends the board along `x`, per length along `y`.
//!
//! # Method
//! Kirchhoff's thin plate after Timoshenko and Woinowsky-Krieger (Theory of Plates and Shells, 1959, chapter 11), solved
//! with the bicubic elements of Bogner, Fox and Schmit (1965): deflection and slopes run on smoothly from element to
//! element, free edges need nothing, supports lie on lines of the mesh. The equations are banded and factored once
//! (Cholesky) for any number of loads; loads are integrated over what they cover, not over whole elements.
//! Moments are read from curvatures at Gauss's points, where elements of this kind are most accurate (Barlow 1976).
//!
//! # Limits
//! Supports hold both ways, as a fastened board is held. Shear deflection is not included. Where a support ends
//! inside the plate, and under a point load, moments grow without limit as the mesh is refined; in the corner between
//! a member and a free end the hogging moment grows as well, by some two per cent each time the elements are halved.

mod band;
mod check;
mod field;
mod hermite;
mod load;
mod mesh;
mod model;
mod moving;
mod places;
mod result;
mod rigidity;
mod scan;
mod search;
mod stiffness;
mod support;
#[cfg(test)]
mod tests;

pub use load::{PlateLoad, PlateLoadKind};
pub use model::PlateModel;
pub use moving::{PlateWorst, PlateWorstPeak};
pub use result::{Plate, PlateError, PlatePeak, PlateRange, PlateState};
pub use rigidity::{Rigidity, assumed_torsion};
pub use search::{PlateSearch, PlateZones};
pub use support::{Place, PlateSupport};

use crate::error::Error;

/// A plate without its loads.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct PlateProblem {
    /// The side along `x`.
    pub length: f64,
    /// The side along `y`.
    pub width: f64,
    /// How it resists bending and twisting.
    pub rigidity: Rigidity,
    /// What holds it.
    pub supports: Vec<PlateSupport>,
    /// The largest side of an element. None: about two hundred elements, and the answer tells its own error.
    pub mesh: Option<f64>,
}

impl PlateProblem {
    /// A plate on supports, with the mesh left to the library.
    pub fn new(length: f64, width: f64, rigidity: Rigidity, supports: &[PlateSupport]) -> PlateProblem {
        PlateProblem { length, width, rigidity, supports: supports.to_vec(), mesh: None }
    }

    /// With elements no larger than `size`.
    #[must_use]
    pub fn mesh(mut self, size: f64) -> PlateProblem {
        self.mesh = Some(size);
        self
    }

    /// The plate with its equations factored, for any number of loads.
    ///
    /// # Cost
    /// With `m` by `n` elements, `m` the more: factoring grows with `m n³`, each load with `m n²`.
    ///
    /// # Errors
    /// A side, a rigidity or a mesh of zero or less, numbers that are not finite, Poisson's ratios that contradict the
    /// rigidities, a torsion below `dx · νy`, a support outside the plate, supports that let the plate move, a mesh
    /// with too many elements.
    pub fn model(&self) -> Result<PlateModel, Error> {
        check::problem(self)?;
        PlateModel::new(self, &[])
    }

    /// Refuses what cannot be solved, without solving it; only how fine the mesh comes out is not told. The loads of an
    /// unsound plate are not looked at.
    ///
    /// # Errors
    /// As [`PlateProblem::model`]; a load that lies outside the plate or lacks its place or size. Pointers: `/length`,
    /// `/dx`, `/torsion`, `/poisson`, `/supports/0/x`, `/loads/0/at`.
    pub fn check(&self, loads: &[PlateLoad]) -> Result<(), Error> {
        check::problem(self)?;
        check::loads(self, loads, "loads")
    }

    /// Deflections, moments and reactions under loads that act at once.
    ///
    /// Unlike a [`PlateModel`], which knows no loads when it is made, the mesh that the library chooses here has lines
    /// around up to four loads.
    ///
    /// # Errors
    /// As [`PlateProblem::check`]; a mesh with too many elements.
    pub fn solve(&self, loads: &[PlateLoad]) -> Result<Plate, Error> {
        self.check(loads)?;
        PlateModel::new(self, loads)?.solve(loads)
    }

    pub(super) fn sides(&self) -> [f64; 2] {
        [self.length, self.width]
    }
}

/// A rectangular orthotropic plate on line and point supports: deflections, moments, reactions.
///
/// # Method
/// Bogner, Fox and Schmit's bicubic elements (1965). Deflections and reactions converge with the fourth power of the
/// element's size under spread loads, with the second under a point load.
///
/// # Errors
/// As [`PlateProblem::solve`].
///
/// # Examples
/// A square plate on its four edges (Timoshenko, table 8): 0.00406 q a⁴/D.
/// ```
/// use deck_core::{plate, span::{PlateLoad, PlateSupport, Rigidity}};
/// let rigidity = Rigidity::isotropic(1.0, 0.3);
/// let plate = plate(1.0, 1.0, rigidity, &PlateSupport::edges(1.0, 1.0), &[PlateLoad::uniform(1.0)])?;
/// assert!((plate.deflection.most.value - 0.00406235).abs() < 1e-7);
/// # Ok::<(), deck_core::Error>(())
/// ```
pub fn plate(
    length: f64,
    width: f64,
    rigidity: Rigidity,
    supports: &[PlateSupport],
    loads: &[PlateLoad],
) -> Result<Plate, Error> {
    PlateProblem::new(length, width, rigidity, supports).solve(loads)
}
