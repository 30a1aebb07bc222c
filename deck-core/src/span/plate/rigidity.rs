//! How a plate resists bending and twisting.

/// Rigidities of an orthotropic plate, force × length.
///
/// No published torsional stiffness of plywood was found: `torsion` is the caller's, or [`assumed_torsion`].
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize, serde::Deserialize)]
#[non_exhaustive]
pub struct Rigidity {
    /// Of bending along `x`.
    pub dx: f64,
    /// Of bending along `y`.
    pub dy: f64,
    /// `H = dx νy + 2 Dxy` of Timoshenko.
    pub torsion: f64,
    /// `νx` and `νy`: bending along `x` (along `y`) alone bends the plate the other way by so much along `y` (`x`).
    /// `dx νy` equals `dy νx`.
    pub poisson: [f64; 2],
}

impl Rigidity {
    /// Without Poisson's effect, as plywood is often taken.
    pub fn new(dx: f64, dy: f64, torsion: f64) -> Rigidity {
        Rigidity { dx, dy, torsion, poisson: [0.0; 2] }
    }

    /// The same in every direction: `H = D`.
    pub fn isotropic(d: f64, poisson: f64) -> Rigidity {
        Rigidity { dx: d, dy: d, torsion: d, poisson: [poisson; 2] }
    }

    /// With Poisson's ratios `νx` and `νy`.
    #[must_use]
    pub fn poisson(mut self, poisson: [f64; 2]) -> Rigidity {
        self.poisson = poisson;
        self
    }

    /// The coupling `dx νy` of both bendings.
    pub(super) fn coupling(&self) -> f64 {
        self.dx * self.poisson[1]
    }
}

/// Part of `√(dx dy)` that [`assumed_torsion`] takes.
const ASSUMED_PART: f64 = 0.5;

/// An **assumed** torsional rigidity for plywood, `0.5 √(dx dy)`.
///
/// Timoshenko (1959, article 86, from memory) has `H = √(dx dy)` for a plate whose shear stiffness follows from its
/// bending stiffnesses, as concrete with bars. Wood shears more easily than that, so half of it is taken here. It is an
/// assumption without a source: solve with half and double of it as well, and see what it does.
///
/// # Examples
/// What the assumption means for a heel of 200 lbf in the middle of a 24 in bay of a 102 in board:
/// ```
/// use deck_core::span::{PlateLoad, PlateProblem, PlateSupport, Rigidity, assumed_torsion};
/// let (dx, dy) = (29_583.0, 9_583.0);
/// let members = [0.0, 24.0, 48.0].map(PlateSupport::along);
/// let heel = PlateLoad::patch([51.0, 12.0], [3.0, 3.0], 200.0);
/// let sinks = |factor: f64| {
///     let rigidity = Rigidity::new(dx, dy, factor * assumed_torsion(dx, dy));
///     PlateProblem::new(102.0, 48.0, rigidity, &members).solve(&[heel]).map(|plate| plate.deflection.most.value)
/// };
/// let (half, assumed, double) = (sinks(0.5)?, sinks(1.0)?, sinks(2.0)?);
/// assert!(half > assumed && assumed > double);
/// # Ok::<(), deck_core::Error>(())
/// ```
pub fn assumed_torsion(dx: f64, dy: f64) -> f64 {
    ASSUMED_PART * (dx * dy).sqrt()
}
