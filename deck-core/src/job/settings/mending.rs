//! What narrow flanges are mended with, where the job asks for that.

use super::Resolver;
use crate::job::NarrowFlangeSpec;
use crate::length::Length;
use crate::published::defaults;

/// What narrow flanges are mended with, each with a value.
#[derive(Debug, Clone, PartialEq, Eq)]
#[non_exhaustive]
pub struct Mending {
    /// Flat leg of the angle that is sistered to a member.
    pub angle_leg: Length,
    /// Greatest distance between the screws that hold an angle or a cleat.
    pub spacing: Length,
}

impl Mending {
    pub(super) fn resolve(take: &mut Resolver, spec: &NarrowFlangeSpec, edge_spacing: Length) -> Mending {
        Mending {
            angle_leg: take.length(spec.angle_leg, &defaults::ANGLE_LEG),
            spacing: spec.spacing.unwrap_or(edge_spacing),
        }
    }
}
