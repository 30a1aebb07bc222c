//! How a panel lies to its supports, and what can govern.

use serde::{Deserialize, Serialize};
use std::fmt;

/// How the strength axis (the face grain) lies to the supports.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "lowercase")]
pub enum Axis {
    /// Across the supports: the strong way, and the one that a span rating means.
    Across,
    /// Along the supports: the weak way, as athwart boards lie on cross members.
    Along,
}

impl Axis {
    /// Both ways, the strong one first.
    pub const BOTH: [Axis; 2] = [Axis::Across, Axis::Along];
}

impl fmt::Display for Axis {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Axis::Across => "across",
            Axis::Along => "along",
        })
    }
}

/// What a load is limited by.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "lowercase")]
pub enum Criterion {
    /// Sag between the supports.
    Deflection,
    /// Breaking in bending.
    Bending,
    /// Shear in the plane of the panel (rolling shear).
    Shear,
}

impl fmt::Display for Criterion {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Criterion::Deflection => "deflection",
            Criterion::Bending => "bending",
            Criterion::Shear => "shear",
        })
    }
}

/// A value for each of the three.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Each<T> {
    /// For deflection.
    pub deflection: T,
    /// For bending.
    pub bending: T,
    /// For shear.
    pub shear: T,
}

impl<T> Each<T> {
    /// The value for one of them.
    pub fn get(&self, criterion: Criterion) -> &T {
        match criterion {
            Criterion::Deflection => &self.deflection,
            Criterion::Bending => &self.bending,
            Criterion::Shear => &self.shear,
        }
    }
}
