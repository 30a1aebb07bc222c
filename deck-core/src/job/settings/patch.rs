//! The settings of a job in which part of the old deck stays.

use super::Resolver;
use crate::job::check::Parts;
use crate::job::patch::BlockingPlaces;
use crate::length::Length;
use crate::published::defaults;

/// What a patch keeps to.
#[derive(Debug, Clone, PartialEq, Eq)]
#[non_exhaustive]
pub struct PatchSettings {
    /// Stations of the old seams.
    pub old_seams: Vec<Length>,
    /// Gap at the old seams.
    pub old_gap: Length,
    /// Thickness of the old boards; none: not measured.
    pub old_thickness: Option<Length>,
    /// How far past the damage a sawn edge lies.
    pub margin: Length,
    /// Width of the blocking.
    pub blocking_width: Length,
    /// Whether edges athwart may lie on blocking, too.
    pub anywhere: bool,
    /// Narrowest strip that may be left of an old board.
    pub least_strip: Length,
}

impl Resolver {
    pub(super) fn patch(&mut self, parts: &Parts<'_>) -> Option<PatchSettings> {
        let spec = parts.patch?;
        Some(PatchSettings {
            old_seams: spec.old_seams.clone(),
            old_gap: spec.old_gap.unwrap_or_default(),
            old_thickness: spec.old_thickness,
            margin: self.length(spec.margin, &defaults::PATCH_MARGIN),
            blocking_width: self.length(spec.blocking_width, &defaults::PATCH_BLOCKING),
            anywhere: spec.blocking == Some(BlockingPlaces::Anywhere),
            least_strip: self.length(spec.least_strip, &defaults::PATCH_STRIP),
        })
    }
}
