//! The settings of openings, old holes and fittings.

use super::Resolver;
use crate::fittings::{Bolt, Fitting, OldDatum, Plate, SeamDistance};
use crate::geometry::Point;
use crate::job::check::Parts;
use crate::job::fittings::{BoltSpec, DeckEnd, DeckSide, OldDatumSpec};
use crate::length::Length;
use crate::openings::OpeningRules;
use crate::outline::Lid;
use crate::published::defaults;

/// What is bolted down again, and what its holes are held against.
#[derive(Debug, Clone, PartialEq, Eq)]
#[non_exhaustive]
pub struct FittingSettings {
    /// Where the old datum lies.
    pub datum: OldDatum,
    /// The fittings.
    pub items: Vec<Fitting>,
    /// How far holes keep off a seam.
    pub from_seam: SeamDistance,
    /// Lengths of bolts that are sold, the shortest first.
    pub sold: Vec<Length>,
}

impl Resolver {
    /// Without old holes there is nothing that its default could stand behind.
    pub(super) fn old_hole_clear(&mut self, parts: &Parts<'_>) -> i64 {
        let (given, preset) = (parts.fastening.old_hole_clear, defaults::OLD_HOLE_CLEAR);
        let diameters = if parts.old_holes.items.is_empty() {
            given.unwrap_or(preset.value)
        } else {
            self.take(given, &preset, |diameters| format!("{diameters} diameters"))
        };
        thousandths(diameters)
    }

    /// Told of where a lid does not say how it fits.
    pub(super) fn lid_clearance(&mut self, parts: &Parts<'_>) {
        let unsaid = |lid: Lid| lid.clearance.is_none() && lid.lap.is_none();
        if parts.openings.items.iter().any(|opening| opening.lid.is_some_and(unsaid)) {
            self.once(None, &defaults::LID_CLEARANCE);
        }
    }

    /// The clearances; those that are taken by default are told of only where the job asks for the check.
    pub(super) fn opening_rules(&mut self, parts: &Parts<'_>) -> OpeningRules {
        let Some(spec) = parts.opening_rules else { return OpeningRules::default() };
        let from_seam = self.length(spec.from_seam, &defaults::OPENING_FROM_SEAM);
        let radius = self.length(spec.corner_radius, &defaults::OPENING_RADIUS);
        let seam_preferred = defaults::OPENING_FROM_SEAM_PREFERRED.at_least(from_seam);
        let radius_preferred = defaults::OPENING_RADIUS_PREFERRED.at_least(radius);
        OpeningRules {
            from_seam,
            from_seam_preferred: self.length(spec.from_seam_preferred, &seam_preferred),
            from_edge: self.length(spec.from_edge, &defaults::OPENING_FROM_EDGE),
            from_flange: self.length(spec.from_flange, &defaults::OPENING_FROM_FLANGE),
            corner_radius: radius,
            corner_radius_preferred: self.length(spec.corner_radius_preferred, &radius_preferred),
            apart: thousandths(self.take(spec.apart, &defaults::OPENING_APART, |sizes| format!("{sizes} sizes"))),
        }
    }

    pub(super) fn fittings(&mut self, parts: &Parts<'_>) -> Option<FittingSettings> {
        let spec = parts.fittings?;
        let from_seam = spec.from_seam.map_or_else(
            || {
                SeamDistance::Diameters(
                    self.take(None, &defaults::BOLT_FROM_SEAM, |count| format!("{count} diameters")),
                )
            },
            SeamDistance::Given,
        );
        let mut sold = spec.bolt_lengths.clone().unwrap_or_else(|| {
            let notation = self.notation;
            let told = |sold: &[Length]| {
                let texts: Vec<String> = sold.iter().map(|length| notation.text(*length)).collect();
                texts.join(", ")
            };
            self.take(None, &defaults::BOLT_LENGTHS, told).to_vec()
        });
        sold.sort_unstable();
        let items = spec.items.iter().map(|item| {
            let bolt = self.bolt(&item.bolt);
            Fitting::new(item.name.clone(), bolt, item.holes.clone())
        });
        let items = items.collect();
        let datum = spec.old_datum.as_ref().map(datum).unwrap_or_default();
        Some(FittingSettings { datum, items, from_seam, sold })
    }

    fn bolt(&mut self, spec: &BoltSpec) -> Bolt {
        let mut bolt = Bolt::new(spec.kind.as_deref().unwrap_or("bolt"), spec.diameter);
        bolt.foot = spec.foot.unwrap_or_default();
        bolt.washer = self.once(spec.washer, &defaults::WASHER);
        bolt.nut = spec.nut.unwrap_or_else(|| {
            let eighths = self.take_once(&defaults::NUT_EIGHTHS, |eighths| format!("{eighths}/8 of the diameter"));
            spec.diameter.part(eighths, 8)
        });
        bolt.plate =
            spec.plate.map(|plate| Plate::new(plate.length, plate.width, plate.thickness, plate.bolts.unwrap_or(1)));
        bolt
    }
}

fn datum(spec: &OldDatumSpec) -> OldDatum {
    let mut datum = OldDatum::new(Point::new(spec.x, spec.y));
    datum.forward = spec.from == Some(DeckEnd::Stern);
    datum.to_port = spec.side == Some(DeckSide::Starboard);
    datum.skew = spec.skew.map(|skew| (skew.over, skew.to_starboard));
    datum
}

/// A number of the job, from 0 to 20, in thousandths.
#[allow(clippy::cast_possible_truncation)]
fn thousandths(number: f64) -> i64 {
    (number * 1000.0).round() as i64
}
