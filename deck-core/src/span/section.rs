//! Section properties of a plywood, and the stresses that go with them.

use super::axis::Axis;
use super::options::positive;
use crate::error::{Error, Faults};
use crate::length::Length;
use serde::{Deserialize, Serialize};

/// The section of a foot of width about one axis, in the stiffness of the reference ply.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Section {
    /// Moment of inertia I, in⁴ per foot of width.
    pub i: f64,
    /// Section modulus with its factor, KS, in³ per foot of width.
    pub ks: f64,
    /// Rolling shear constant Ib/Q, in² per foot of width.
    pub ib_q: f64,
}

/// Stiffness and allowable stresses of the reference ply, pounds to the square inch.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Stresses {
    /// Modulus of elasticity for bending deflection, where shear deflection is reckoned apart.
    #[cfg_attr(feature = "schema", schemars(extend("exclusiveMinimum" = 0, "maximum" = 1_000_000_000_000_u64)))]
    pub e: f64,
    /// Modulus of elasticity in the shear deflection's formula.
    #[cfg_attr(feature = "schema", schemars(extend("exclusiveMinimum" = 0, "maximum" = 1_000_000_000_000_u64)))]
    pub e_shear: f64,
    /// Allowable bending stress.
    #[cfg_attr(feature = "schema", schemars(extend("exclusiveMinimum" = 0, "maximum" = 1_000_000_000_000_u64)))]
    pub fb: f64,
    /// Allowable rolling shear stress.
    #[cfg_attr(feature = "schema", schemars(extend("exclusiveMinimum" = 0, "maximum" = 1_000_000_000_000_u64)))]
    pub fs: f64,
}

impl Stresses {
    /// Checks that each is above zero; pointers are relative to the stresses.
    ///
    /// # Errors
    /// A figure that is not above zero.
    pub fn check(&self) -> Result<(), Error> {
        all_positive(&[("e", self.e), ("e_shear", self.e_shear), ("fb", self.fb), ("fs", self.fs)])
    }
}

pub(super) fn all_positive(figures: &[(&str, f64)]) -> Result<(), Error> {
    let mut faults = Faults::new();
    for (name, value) in figures {
        faults.take(positive(*value).map_err(|error| error.within(name)));
    }
    faults.finish()
}

/// Sections known from a table, with their stresses.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
#[non_exhaustive]
pub struct SectionPanel {
    /// Thickness of the panel.
    pub thickness: Length,
    /// Strength axis across the supports.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub across: Option<Section>,
    /// Strength axis along the supports.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub along: Option<Section>,
    /// Stiffness and stresses.
    pub stresses: Stresses,
}

impl SectionPanel {
    /// A panel of that thickness, with no section yet.
    pub fn new(thickness: Length, stresses: Stresses) -> SectionPanel {
        SectionPanel { thickness, across: None, along: None, stresses }
    }

    /// With its section for the strength axis across the supports.
    #[must_use]
    pub fn across(mut self, section: Section) -> SectionPanel {
        self.across = Some(section);
        self
    }

    /// With its section for the strength axis along the supports.
    #[must_use]
    pub fn along(mut self, section: Section) -> SectionPanel {
        self.along = Some(section);
        self
    }

    pub(super) fn section(&self, axis: Axis) -> Option<Section> {
        match axis {
            Axis::Across => self.across,
            Axis::Along => self.along,
        }
    }
}
