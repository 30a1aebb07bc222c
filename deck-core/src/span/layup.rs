//! A plywood from its plies: section properties about both axes by transformed sections.
//!
//! ```text
//!    face   ______________ grain across the supports  \
//!           ::::::::::::::  grain along them            | y
//!    neutral ____________                               |
//!           ::::::::::::::  rolling shear is here       v
//!    back   ______________
//! ```
//!
//! # Limits
//! Veneers of one species and thickness are an ideal, and an even lay-up is **not** on the safe side of published effective
//! sections. Five even plies against those of concrete-form plywood, class I: the moment of inertia is 0.83 to 2.05, the
//! section modulus 1.03 to 2.02 and Ib/Q 0.73 to 1.14 of the published one. Shear along the grain, within a ply that
//! runs with the span, is not counted: only rolling shear is. Three plies the weak way count it in the faces only, so
//! that their Ib/Q comes out high.

use super::axis::Axis;
use super::options::figure;
use super::section::{Section, Stresses};
use crate::error::{Error, Fault, Faults, Kind};
use crate::length::Length;
use serde::{Deserialize, Serialize};

/// Stiffness of a ply across its grain over that along it: assumed, from memory (1/35 in older plywood design practice).
pub const CROSS_STIFFNESS: f64 = 1.0 / 35.0;

/// Factor K on the section modulus of plywood, from memory (Wood Handbook): 0.85, but [`BENDING_FACTOR_THREE_PLY`] for
/// three plies with the face grain along the supports. Published KS across the supports imply 0.85 to 0.87.
pub const BENDING_FACTOR: f64 = 0.85;
/// See [`BENDING_FACTOR`].
pub const BENDING_FACTOR_THREE_PLY: f64 = 1.5;

/// More plies than any plywood has.
const MOST_PLIES: usize = 60;

/// Inches of width that section properties are for.
const FOOT: f64 = 12.0;

/// How a ply's grain lies to the panel's strength axis.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "lowercase")]
pub enum PlyGrain {
    /// With the strength axis, as the faces do.
    With,
    /// Square to it: a cross band.
    Square,
}

/// One veneer.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
#[non_exhaustive]
pub struct Ply {
    /// Its thickness.
    pub thickness: Length,
    /// How its grain lies.
    pub grain: PlyGrain,
    /// Stiffness along its grain over that of the reference ply (a face, as a rule).
    #[serde(default = "one")]
    #[cfg_attr(feature = "schema", schemars(range(min = 0.001, max = 10.0)))]
    pub stiffness: f64,
}

fn one() -> f64 {
    1.0
}

fn cross_stiffness() -> f64 {
    CROSS_STIFFNESS
}

impl Ply {
    /// A ply as stiff as the reference.
    pub fn new(thickness: Length, grain: PlyGrain) -> Ply {
        Ply { thickness, grain, stiffness: 1.0 }
    }

    /// With a stiffness of its own.
    #[must_use]
    pub fn stiffness(mut self, ratio: f64) -> Ply {
        self.stiffness = ratio;
        self
    }
}

/// Plies from face to back, with the stresses of the reference ply.
///
/// # Examples
/// Three even plies, the weak way, bend some fifteen times as much as the strong way:
/// ```
/// use deck_core::Length;
/// use deck_core::span::{Axis, Layup, Stresses};
/// let stresses = Stresses { e: 1_650_000.0, e_shear: 1_500_000.0, fb: 1_930.0, fs: 72.0 };
/// let three = Layup::even(3, "3/8 in".parse()?, stresses);
/// let ratio = three.section(Axis::Across)?.i / three.section(Axis::Along)?.i;
/// assert!((14.0..16.0).contains(&ratio));
/// # Ok::<(), deck_core::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
#[non_exhaustive]
pub struct Layup {
    /// The plies, from face to back.
    pub plies: Vec<Ply>,
    /// Stiffness and stresses of the reference ply.
    pub stresses: Stresses,
    /// Stiffness of a ply across its grain over that along it.
    #[serde(default = "cross_stiffness")]
    pub cross_stiffness: f64,
}

/// A ply where it lies: its upper and lower face from the panel's face, inches, its stiffness over the reference in the
/// direction looked at, and whether its grain is that way.
#[derive(Debug, Clone, Copy)]
struct Layer {
    top: f64,
    bottom: f64,
    stiffness: f64,
    with_span: bool,
}

impl Layup {
    /// A lay-up with the assumed [`CROSS_STIFFNESS`].
    pub fn new(plies: Vec<Ply>, stresses: Stresses) -> Layup {
        Layup { plies, stresses, cross_stiffness: CROSS_STIFFNESS }
    }

    /// So many plies of equal thickness, faces with the strength axis, turn and turn about.
    pub fn even(plies: u32, thickness: Length, stresses: Stresses) -> Layup {
        let count = i64::from(plies).max(1);
        // Running depths are rounded, not thicknesses: the plies add up to the panel.
        let depth = |index: i64| thickness.part(index, count);
        let grain = |index: i64| if index % 2 == 0 { PlyGrain::With } else { PlyGrain::Square };
        let ply = |index: i64| Ply::new(depth(index + 1) - depth(index), grain(index));
        Layup::new((0..count).map(ply).collect(), stresses)
    }

    /// With another stiffness across the grain.
    #[must_use]
    pub fn cross_stiffness(mut self, ratio: f64) -> Layup {
        self.cross_stiffness = ratio;
        self
    }

    /// The panel's thickness.
    pub fn thickness(&self) -> Length {
        self.plies.iter().map(|ply| ply.thickness).sum()
    }

    /// Checks plies and stresses; pointers are relative to the lay-up.
    ///
    /// # Errors
    /// No ply or more than 60, a thickness of zero or less, a stiffness ratio outside 0.001 to 10, a cross stiffness outside
    /// 0.001 to 1, a stress that is not above zero.
    pub fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::new();
        let accepted = "A lay-up has 1 to 60 plies, from face to back.";
        if self.plies.is_empty() {
            faults.push(Fault::new(Kind::EmptyList, "", "A lay-up without plies.", accepted).within("plies"));
        } else if self.plies.len() > MOST_PLIES {
            let count = self.plies.len().to_string();
            let message = format!("{count} plies are too many.");
            faults.push(Fault::new(Kind::TooMany, count, message, accepted).within("plies"));
        }
        for (index, ply) in self.plies.iter().take(MOST_PLIES).enumerate() {
            faults.take(check_ply(ply).map_err(|error| error.within(index).within("plies")));
        }
        faults.take(figure(self.cross_stiffness, 0.001, 1.0).map_err(|error| error.within("cross_stiffness")));
        faults.take(self.stresses.check().map_err(|error| error.within("stresses")));
        faults.finish()
    }

    /// The section of a foot of width.
    ///
    /// # Method
    /// Transformed sections: each ply counts with its stiffness in the direction of the span, plane sections stay plane,
    /// about the neutral axis of the transformed section. KS is `K I/c` with c to the far side of the outermost ply whose
    /// grain runs with the span, and K of [`BENDING_FACTOR`]. Q of Ib/Q is the greatest first moment at a cross ply, where
    /// the shear is rolling; a panel without one has the whole first moment at its neutral axis.
    ///
    /// # Errors
    /// As [`Layup::check`], and a lay-up in which no ply's grain runs with the span.
    pub fn section(&self, axis: Axis) -> Result<Section, Error> {
        self.check()?;
        let layers = self.layers(axis);
        let neutral = neutral_axis(&layers);
        let i = FOOT * layers.iter().map(|layer| inertia(layer, neutral)).sum::<f64>();
        let with_span = layers.iter().filter(|layer| layer.with_span);
        let far = with_span.map(|layer| (layer.top - neutral).abs().max((layer.bottom - neutral).abs()));
        let Some(c) = far.reduce(f64::max).filter(|c| *c > 0.0) else {
            let message =
                format!("No ply's grain runs with the span where the strength axis lies {axis} the supports.");
            let accepted = "A lay-up with plies both ways is accepted.";
            return Err(Fault::new(Kind::Conflict, axis.to_string(), message, accepted).within("plies").into());
        };
        let q = FOOT
            * rolling_levels(&layers, neutral)
                .into_iter()
                .map(|y| first_moment(&layers, neutral, y))
                .fold(0.0, f64::max);
        Ok(Section { i, ks: self.bending_factor(axis) * i / c, ib_q: i * FOOT / q })
    }

    /// A solid piece has none, K of plywood otherwise.
    fn bending_factor(&self, axis: Axis) -> f64 {
        match (self.plies.len(), axis) {
            (1, _) => 1.0,
            (3, Axis::Along) => BENDING_FACTOR_THREE_PLY,
            _ => BENDING_FACTOR,
        }
    }

    fn layers(&self, axis: Axis) -> Vec<Layer> {
        let mut depth = Length::ZERO;
        let mut layers = Vec::with_capacity(self.plies.len());
        for ply in &self.plies {
            let top = depth.as_inches();
            depth += ply.thickness;
            let with_span = (ply.grain == PlyGrain::With) == (axis == Axis::Across);
            let stiffness = if with_span { ply.stiffness } else { ply.stiffness * self.cross_stiffness };
            layers.push(Layer { top, bottom: depth.as_inches(), stiffness, with_span });
        }
        layers
    }
}

fn check_ply(ply: &Ply) -> Result<(), Error> {
    let mut faults = Faults::new();
    if ply.thickness <= Length::ZERO {
        let kind = if ply.thickness.is_zero() { Kind::LengthZero } else { Kind::LengthNegative };
        let message = format!("{} is no thickness.", ply.thickness);
        let fault = Fault::new(kind, ply.thickness.to_string(), message, "More than zero is accepted.");
        faults.push(fault.within("thickness"));
    }
    faults.take(figure(ply.stiffness, 0.001, 10.0).map_err(|error| error.within("stiffness")));
    faults.finish()
}

/// Depth of the transformed section's centroid.
fn neutral_axis(layers: &[Layer]) -> f64 {
    let area: f64 = layers.iter().map(|layer| layer.stiffness * (layer.bottom - layer.top)).sum();
    let moment: f64 =
        layers.iter().map(|layer| layer.stiffness * (layer.bottom.powi(2) - layer.top.powi(2)) / 2.0).sum();
    moment / area
}

/// Second moment of an inch of width about the neutral axis.
fn inertia(layer: &Layer, neutral: f64) -> f64 {
    layer.stiffness * ((layer.bottom - neutral).powi(3) - (layer.top - neutral).powi(3)) / 3.0
}

/// First moment, for an inch of width, of what lies above a level.
fn first_moment(layers: &[Layer], neutral: f64, level: f64) -> f64 {
    let above = layers.iter().filter(|layer| layer.top < level);
    let moment = |layer: &Layer| {
        let bottom = layer.bottom.min(level);
        layer.stiffness * (bottom - layer.top) * (neutral - f64::midpoint(bottom, layer.top))
    };
    above.map(moment).sum::<f64>().abs()
}

/// The levels at which shear can roll fibres: both faces of each cross ply, and the neutral axis within one.
fn rolling_levels(layers: &[Layer], neutral: f64) -> Vec<f64> {
    let mut levels = Vec::new();
    for layer in layers.iter().filter(|layer| !layer.with_span) {
        levels.extend([layer.top, layer.bottom]);
        levels.extend((layer.top..layer.bottom).contains(&neutral).then_some(neutral));
    }
    if levels.is_empty() {
        levels.push(neutral);
    }
    levels
}
