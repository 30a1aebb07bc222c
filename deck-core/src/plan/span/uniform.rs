//! The uniform load of a board: by the published equations, and beside it by a continuous beam on its true supports.

use super::asked::Asked;
use super::figures::{pressure, significant};
use super::found::{Limit, SpanBay, UniformCheck};
use super::supports::Supports;
use crate::error::Error;
use crate::length::{Length, Unit};
use crate::span::{Axis, BeamLoad, BeamProblem, BeamWorst, Criterion, Each, SpanAnswer, SpanLimits, WorstRange};
use crate::span::{SpanOptions, capacity, span_limits};

/// An overhang may sag by this part of its length for each part of a bay; building codes count it twice, from memory.
const OVERHANG_COUNTS: f64 = 2.0;

/// The answer of the table: the bay with the lowest load, or why there is no figure.
pub(super) enum ByTable {
    Limits { limits: Box<SpanLimits>, bay: String, note: Option<String> },
    None(String),
}

/// The options for one bay of a board: its own bearings, and the board's breadth along the members.
pub(super) fn options(asked: &Asked<'_>, support: Length, clear: Option<Length>, breadth: Length) -> SpanOptions {
    let service = &asked.service;
    let mut options = SpanOptions::new()
        .wet(service.wet)
        .duration(service.duration)
        .deflection(service.deflection)
        .support(support)
        .width(breadth);
    options.clear_span = clear;
    options
}

/// The table's equations on each bay with its own bearings and clear span; the lowest load is the board's.
pub(super) fn by_table(asked: &Asked<'_>, supports: &Supports, axis: Axis, breadth: Length) -> Result<ByTable, Error> {
    let mut lowest: Option<(Box<SpanLimits>, String, Option<String>)> = None;
    for bay in &supports.bays {
        // Two bearings of the bay that differ: the mean of both is what the spacing leaves beside the clear span.
        let support = bay.spacing - bay.clear;
        let options = options(asked, support, Some(bay.clear), breadth);
        let (limits, note) = match span_limits(asked.panel, bay.spacing, axis, supports.count(), &options)? {
            SpanAnswer::Limits(limits) => (limits, None),
            SpanAnswer::NoFigure(none) => match closer(asked, supports, axis, bay, &options)? {
                Some(limits) => {
                    (limits, Some(format!("Bay {} is closer than the table goes: its closest counts.", bay.name())))
                }
                None => return Ok(ByTable::None(format!("{} Bay {}.", none.no_figure, bay.name()))),
            },
        };
        if lowest.as_ref().is_none_or(|(other, ..)| limits.allowable() < other.allowable()) {
            lowest = Some((limits, bay.name(), note));
        }
    }
    Ok(match lowest {
        Some((limits, bay, note)) => ByTable::Limits { limits, bay, note },
        None => ByTable::None("no figure: the board bears on fewer than two members".into()),
    })
}

/// A bay closer than the table's closest carries no less than that one, whose figures these are. The clear span is left
/// out, as it belongs to the bay.
fn closer(
    asked: &Asked<'_>,
    supports: &Supports,
    axis: Axis,
    bay: &SpanBay,
    options: &SpanOptions,
) -> Result<Option<Box<SpanLimits>>, Error> {
    let options = SpanOptions { clear_span: None, ..options.clone() };
    Ok(match span_limits(asked.panel, bay.spacing, axis, supports.count(), &options)? {
        SpanAnswer::NoFigure(none) => none.at_least_spacing,
        SpanAnswer::Limits(_) => None,
    })
}

/// The table's limits for the plan.
pub(super) fn table_check(asked: &Asked<'_>, limits: &SpanLimits, bay: &str) -> UniformCheck {
    let of = |criterion: Criterion| {
        limit(asked, limits.load(criterion), format!("bay {bay}"), limits.source.get(criterion).clone())
    };
    check(
        asked,
        Each { deflection: of(Criterion::Deflection), bending: of(Criterion::Bending), shear: of(Criterion::Shear) },
        limits.standing,
    )
}

fn limit(asked: &Asked<'_>, psf: f64, place: String, clause: String) -> Limit {
    let utilisation = asked.load.as_ref().map(|load| significant(load.psf / psf));
    let value_text = pressure(asked.notation.unit, psf);
    Limit { value: significant(psf), value_text, utilisation, place, clause }
}

fn check(asked: &Asked<'_>, limits: Each<Limit>, standing: crate::published::Standing) -> UniformCheck {
    let governing = lowest(&limits);
    let Limit { value, value_text, utilisation, .. } = limits.get(governing).clone();
    let utilisation = asked.load.as_ref().and(utilisation);
    UniformCheck { allowable_psf: value, allowable_text: value_text, utilisation, limits, governing, standing }
}

/// The criterion with the lowest limit; deflection before bending before shear where they are alike.
pub(super) fn lowest(limits: &Each<Limit>) -> Criterion {
    [Criterion::Bending, Criterion::Shear].into_iter().fold(Criterion::Deflection, |least, other| {
        if limits.get(other).value < limits.get(least).value { other } else { least }
    })
}

/// The limits of a foot-wide strip as a continuous beam; none where the panel has no capacity about that axis, or where
/// there is no bay.
///
/// # Method
/// Bearings are points at their middles; the live load stands on the worst choice of bays and overhangs
/// ([`BeamProblem::worst`]). Bending by the greatest moment, shear by the greatest shear at the edge of a bearing,
/// deflection by the part of each bay, and of twice an overhang, that the service allows. Derived here; the capacities are
/// the table's. An overhang's length counts twice by the building codes, from memory.
pub(super) fn by_beam(
    asked: &Asked<'_>,
    supports: &Supports,
    axis: Axis,
    breadth: Length,
) -> Result<Option<UniformCheck>, Error> {
    if supports.bays.is_empty() || supports.bays.len() + 1 != supports.bearings.len() {
        return Ok(None);
    }
    let options = options(asked, supports.narrowest(), None, breadth);
    let Some(capacity) = capacity(asked.panel, axis, &options)? else { return Ok(None) };
    let spans: Vec<f64> = supports.bays.iter().map(|bay| bay.spacing.as_inches()).collect();
    let overhangs = supports.overhangs.map(Length::as_inches);
    let problem = BeamProblem::new(&spans).overhangs(overhangs).stiffness(capacity.ei);
    // One pound to the square foot on a foot of width, by the inch.
    let worst = problem.worst(&[], &[BeamLoad::uniform(PSF)])?;
    let stretches = Stretches { supports, worst: &worst, deflection: asked.service.deflection };
    let (sag, moment, shear) = (stretches.sag(), stretches.moment(), stretches.shear());
    let source = "continuous beam on the true bearings, live load on the worst bays, shear deflection not counted; derived \
         here, capacities as in the table's clause";
    let sag_clause =
        format!("w = (l/{})/sag under 1 psf, EI = {}; {source}", asked.service.deflection, significant(capacity.ei));
    let moment_clause = format!("w = MR/moment under 1 psf, MR = {}; {source}", significant(capacity.mr));
    let shear_clause =
        format!("w = Fs/shear under 1 psf at a bearing's edge, Fs = {}; {source}", significant(capacity.fs));
    let limits = Each {
        deflection: limit(asked, 1.0 / sag.value, sag.place, sag_clause),
        bending: limit(asked, capacity.mr / moment.value, moment.place, moment_clause),
        shear: limit(asked, capacity.fs / shear.value, shear.place, shear_clause),
    };
    Ok(Some(check(asked, limits, crate::published::Standing::Derived)))
}

const PSF: f64 = 1.0 / 12.0;

/// The greatest of something under one psf, and where.
struct Greatest {
    value: f64,
    place: String,
}

/// The worst of the beam beside the board's bays.
struct Stretches<'a> {
    supports: &'a Supports,
    worst: &'a BeamWorst,
    deflection: f64,
}

fn largest(range: &WorstRange) -> f64 {
    range.most.value.abs().max(range.least.value.abs())
}

impl Stretches<'_> {
    fn greatest(values: impl Iterator<Item = (f64, String)>) -> Greatest {
        let mut greatest = Greatest { value: 0.0, place: String::new() };
        for (value, place) in values {
            if value > greatest.value {
                greatest = Greatest { value, place };
            }
        }
        greatest
    }

    /// Sag over what is allowed.
    fn sag(&self) -> Greatest {
        let bays = self.supports.bays.iter().zip(&self.worst.spans).map(|(bay, span)| {
            let allowed = bay.spacing.as_inches() / self.deflection;
            (largest(&span.deflection) / allowed, format!("bay {}", bay.name()))
        });
        let ends = ["fore overhang", "aft overhang"];
        let tips = self.worst.overhangs.iter().zip(ends).filter_map(|(span, end)| {
            let span = span.as_ref()?;
            let allowed = OVERHANG_COUNTS * span.length / self.deflection;
            Some((largest(&span.deflection) / allowed, end.to_owned()))
        });
        Stretches::greatest(bays.chain(tips))
    }

    fn moment(&self) -> Greatest {
        let bays = self.supports.bays.iter().zip(&self.worst.spans);
        let sagging = bays.map(|(bay, span)| (span.moment.most.value, format!("bay {}", bay.name())));
        let over = self.supports.bearings.iter().zip(&self.worst.supports);
        let hogging = over.map(|(bearing, at)| (-at.moment.least.value, format!("over M{}", bearing.member)));
        Stretches::greatest(sagging.chain(hogging))
    }

    /// At the edge of a bearing: what stands on half of it goes straight down. The load that makes the greatest shear of a
    /// stretch stands on that stretch.
    fn shear(&self) -> Greatest {
        let bearings = &self.supports.bearings;
        let half = |index: usize| bearings.get(index).map_or(0.0, |bearing| bearing.width.as_inches() / 2.0);
        let bays = self.supports.bays.iter().zip(&self.worst.spans).enumerate().flat_map(|(index, (bay, span))| {
            let at_fore = span.shear.most.value.abs() - PSF * half(index);
            let at_aft = span.shear.least.value.abs() - PSF * half(index + 1);
            [(at_fore, bay.fore_member), (at_aft, bay.aft_member)]
                .map(|(value, member)| (value, format!("beside M{member}")))
        });
        let last = bearings.len().saturating_sub(1);
        let tips = self.worst.overhangs.iter().zip([0, last]).filter_map(|(span, index)| {
            let value = largest(&span.as_ref()?.shear) - PSF * half(index);
            Some((value, format!("beside M{}", bearings.get(index)?.member)))
        });
        Stretches::greatest(bays.chain(tips))
    }
}

/// Why table and beam give different loads, where they do by more than half a hundredth.
pub(super) fn differ(
    asked: &Asked<'_>,
    supports: &Supports,
    table: &UniformCheck,
    beam: &UniformCheck,
) -> Option<String> {
    const ALIKE: f64 = 0.005;
    if (table.allowable_psf / beam.allowable_psf - 1.0).abs() <= ALIKE {
        return None;
    }
    let say = |length: Length| asked.notation.text(length);
    let mut why = Vec::new();
    let spacings = || supports.bays.iter().map(|bay| bay.spacing);
    if let (Some(least), Some(most)) = (spacings().min(), spacings().max())
        && most - least > Length::of(1, Unit::Millimetre)
    {
        why.push(format!("bays of {} to {}, which the table takes all as the worst of them", say(least), say(most)));
    }
    if supports.bays.len() > 1 {
        why.push("a live load on the worst choice of bays, which the table puts on all".into());
    }
    why.push("spans to the middles of bearings, where the table's sag goes by the clear span and its addition".into());
    if supports.overhangs.iter().any(|overhang| !overhang.is_zero()) {
        why.push("overhangs, which the table does not know".into());
    }
    Some(format!("table {}, beam {}: the beam has {}.", table.allowable_text, beam.allowable_text, why.join("; ")))
}
