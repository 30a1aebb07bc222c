//! The settings of the covering.

use super::Resolver;
use crate::covering::{Adhesive, RunChoice};
use crate::job::check::Parts;
use crate::job::{AdhesiveKind, AdhesiveSpec};
use crate::length::Length;
use crate::money::Figure;
use crate::published::defaults;

/// Settings of the covering, given or by default.
#[derive(Debug, Clone, PartialEq, Eq)]
#[non_exhaustive]
pub struct Cover {
    /// The way it is to run.
    pub run: RunChoice,
    /// How far it goes round each edge.
    pub wrap: Length,
    /// Narrowest piece.
    pub least_piece: Length,
    /// Least distance from a seam of the boards.
    pub off_ply_seams: Length,
    /// The glue; none: it is not glued all over.
    pub adhesive: Option<Adhesive>,
}

impl Resolver {
    /// Nothing where the job has no covering.
    pub(super) fn cover(&mut self, parts: &Parts<'_>) -> Option<Cover> {
        let (spec, _) = parts.covering?;
        Some(Cover {
            run: spec.run.unwrap_or_default(),
            wrap: self.length(spec.wrap, &defaults::WRAP),
            least_piece: self.length(spec.least_piece, &defaults::LEAST_PIECE),
            off_ply_seams: self.length(spec.off_ply_seams, &defaults::OFF_PLY_SEAMS),
            adhesive: spec.adhesive.as_ref().map(|adhesive| self.adhesive(adhesive)),
        })
    }

    fn adhesive(&mut self, spec: &AdhesiveSpec) -> Adhesive {
        let kind = spec.kind.unwrap_or_default();
        let (usual, name) = match kind {
            AdhesiveKind::OutdoorCarpet => (defaults::CARPET_COVERAGE, "glue for outdoor carpet"),
            AdhesiveKind::Vinyl => (defaults::VINYL_COVERAGE, "glue for vinyl"),
        };
        let given = spec.coverage_least.is_some() && spec.coverage_most.is_some();
        let coverage = self.take(given.then_some(usual.value), &usual, |(least, most)| {
            format!("{least} to {most} square feet to the US gallon")
        });
        let figure = |count: u32| Figure::of(i64::from(count));
        let can = spec.can.unwrap_or_else(|| figure(self.count(None, &defaults::GLUE_CAN)));
        let (wait, set) = defaults::CARPET_MINUTES.value;
        let trowel = (kind == AdhesiveKind::OutdoorCarpet).then(|| "1/8 in V notch".to_owned());
        Adhesive {
            kind: name.into(),
            trowel: spec.trowel.clone().or(trowel),
            coverage: (
                spec.coverage_least.unwrap_or(figure(coverage.0)),
                spec.coverage_most.unwrap_or(figure(coverage.1)),
            ),
            can,
            wait: spec.wait_minutes.unwrap_or(figure(wait)),
            set: spec.set_minutes.unwrap_or(figure(set)),
            spread: spec.spread,
            source: if given { "the shop's own".into() } else { usual.source.into() },
        }
    }
}
