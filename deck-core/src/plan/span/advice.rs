//! What would mend a bay that is too long, and which panel would be enough.

use super::asked::Asked;
use super::figures::{pressure, significant};
use super::found::{Blocking, Enough, SpacingLimitOf, SpanBay};
use super::supports::Supports;
use super::uniform::options;
use crate::error::Error;
use crate::length::{Length, Unit};
use crate::span::{Axis, Carrier, Load, SpacingLimit, largest_spacing, panels_that_carry};

/// The largest spacing at which the panel carries the load, either way, on bearings as those of the board's longest bay;
/// nothing without a load.
pub(super) fn spacing(asked: &Asked<'_>, supports: &Supports, breadth: Length) -> Result<Vec<SpacingLimitOf>, Error> {
    let longest = supports.bays.iter().max_by_key(|bay| bay.spacing);
    let (Some(load), Some(bay)) = (&asked.load, longest) else { return Ok(Vec::new()) };
    let limit = |axis| -> Result<SpacingLimitOf, Error> {
        let found = largest(asked, supports, bay, axis, breadth, load)?;
        Ok(SpacingLimitOf { axis, spacing: found.spacing, why: found.why })
    };
    Axis::BOTH.into_iter().map(limit).collect()
}

fn largest(
    asked: &Asked<'_>,
    supports: &Supports,
    bay: &SpanBay,
    axis: Axis,
    breadth: Length,
    load: &Load,
) -> Result<SpacingLimit, Error> {
    let options = options(asked, bay.spacing - bay.clear, None, breadth);
    largest_spacing(asked.panel, axis, supports.count(), load, &options)
}

/// More blockings in a bay than this are no mending.
const MOST_BLOCKINGS: i64 = 4;

/// How many blockings bring each bay within the largest spacing on its own bearings; none where that is not known, or
/// where it would take more than four.
pub(super) fn blocking(
    asked: &Asked<'_>,
    supports: &Supports,
    axis: Axis,
    breadth: Length,
) -> Result<Vec<Blocking>, Error> {
    let Some(load) = &asked.load else { return Ok(Vec::new()) };
    let mut found = Vec::new();
    for bay in &supports.bays {
        if let Some(limit) = largest(asked, supports, bay, axis, breadth, load)?.spacing {
            found.extend(divided(asked, bay, limit));
        }
    }
    Ok(found)
}

fn divided(asked: &Asked<'_>, bay: &SpanBay, limit: Length) -> Option<Blocking> {
    let parts = (1..=MOST_BLOCKINGS + 1).find(|parts| bay.spacing <= limit * *parts).filter(|parts| *parts > 1)?;
    let (count, spacing) = (usize::try_from(parts - 1).ok()?, bay.spacing.part(1, parts));
    let say = |length: Length| asked.notation.text(length);
    let (plural, verb) = if count == 1 { ("", "leaves") } else { ("s", "leave") };
    let text = format!(
        "{count} blocking{plural} athwart in bay {}, bearing as the members do and held by the frame, {verb} bays of {}, \
         within {} by the table.",
        bay.name(),
        say(spacing),
        say(limit)
    );
    Some(Blocking { fore_member: bay.fore_member, aft_member: bay.aft_member, count, spacing, text })
}

/// The first rating of each series, and way to lay it, that carries the load on all of these supports.
///
/// Boards with as many spans are asked about as one, with the greatest spacing and the greatest clear span that any of
/// them has; what carries that carries each.
pub(super) fn enough(asked: &Asked<'_>, boards: &[(Supports, Length)]) -> Result<Vec<Enough>, Error> {
    let Some(load) = &asked.load else { return Ok(Vec::new()) };
    let mut all: Option<Vec<Carrier>> = None;
    for count in 1..=3 {
        let alike = || boards.iter().filter(|(supports, _)| !supports.bays.is_empty() && supports.count() == count);
        let spacing = alike().flat_map(|(supports, _)| &supports.bays).map(|bay| bay.spacing).max();
        let clear = alike().flat_map(|(supports, _)| &supports.bays).map(|bay| bay.clear).max();
        let breadth = alike().map(|(_, breadth)| *breadth).min();
        let (Some(spacing), Some(clear), Some(breadth)) = (spacing, clear, breadth) else { continue };
        let options = options(asked, spacing - clear, Some(clear), breadth);
        let carriers = panels_that_carry(spacing, count, load, &options)?;
        all = Some(match all {
            None => carriers,
            Some(before) => before.into_iter().filter_map(|carrier| in_both(carrier, &carriers)).collect(),
        });
    }
    Ok(firsts(all.unwrap_or_default(), asked.notation.unit))
}

/// With the lower of both loads.
fn in_both(mut carrier: Carrier, others: &[Carrier]) -> Option<Carrier> {
    let other = others
        .iter()
        .find(|other| (&other.series, &other.rating, other.axis) == (&carrier.series, &carrier.rating, carrier.axis))?;
    carrier.allowable = carrier.allowable.min(other.allowable);
    Some(carrier)
}

/// The first of each series either way; carriers come in the order of the tables.
fn firsts(carriers: Vec<Carrier>, unit: Unit) -> Vec<Enough> {
    let mut firsts: Vec<Enough> = Vec::new();
    for carrier in carriers {
        if firsts.iter().any(|first| first.series == carrier.series && first.axis == carrier.axis) {
            continue;
        }
        let Carrier { series, rating, axis, allowable, .. } = carrier;
        let allowable_text = pressure(unit, allowable);
        firsts.push(Enough { series, rating, axis, allowable_psf: significant(allowable), allowable_text });
    }
    firsts
}
