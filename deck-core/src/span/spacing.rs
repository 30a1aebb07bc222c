//! How far apart may the supports stand, and which panels carry a load?

use super::axis::Axis;
use super::limits::{CAUTION, NO_FIGURE, SpanAnswer, SpanLimits, span_limits};
use super::load::Load;
use super::options::SpanOptions;
use super::panel::StructuralPanel;
use super::strength::{Found, strength};
use crate::error::Error;
use crate::length::{Length, Unit};
use crate::published::panel_series;
use serde::{Deserialize, Serialize};

/// Spacings are looked at in steps of this: 1/64 in, as a tape has them.
const STEP: Length = Length::from_nanometres(Unit::Inch.nanometres() / 64);

/// Where no table bounds the spacing, the search ends here; no pontoon boat's members stand farther apart.
const FARTHEST: Length = Length::inches(96);

/// From this spacing the tables take wider supports, and a load may be greater again.
const SUPPORTS_CHANGE: Length = Length::inches(48);

/// The largest spacing at which a panel carries a load.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct SpacingLimit {
    /// The spacing, a whole number of 64ths of an inch; none where the closest one is too far already, or where there is
    /// no figure.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub spacing: Option<Length>,
    /// The figures at that spacing.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub limits: Option<Box<SpanLimits>>,
    /// What ends it, in words.
    pub why: String,
    /// The load.
    pub load: Load,
    /// [`CAUTION`].
    pub caution: String,
}

/// A panel, and a way to lay it, that carries a load.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct Carrier {
    /// The series.
    pub series: String,
    /// The rating or thickness.
    pub rating: String,
    /// How the strength axis lies to the supports.
    pub axis: Axis,
    /// The lowest of its three loads, psf.
    pub allowable: f64,
    /// Load over allowable load by the governing criterion.
    pub utilisation: f64,
    /// The figures.
    pub limits: SpanLimits,
}

/// The largest spacing of supports at which a panel carries a load, to 1/64 in.
///
/// # Method
/// Each of the three loads falls as the spacing grows, so halving finds the last 64th at which the lowest of them is not
/// below the load; that answer and the next 64th are asked of [`span_limits`] itself. With the tables' own supports the
/// loads jump up at 48 in, where wider supports are taken: spacings from there count only where all below carry the load
/// as well. A clear span in the options is left aside, as it belongs to one spacing. Derived here, no source.
///
/// # Errors
/// As [`span_limits`].
///
/// # Examples
/// ```
/// use deck_core::span::{Axis, Load, SpanOptions, StructuralPanel, largest_spacing};
/// let panel = StructuralPanel::published("sanded plywood Group 1 A-A/A-C", "3/4");
/// let wet = SpanOptions::new().wet(true);
/// let weak = largest_spacing(&panel, Axis::Along, 2, &Load::preset("assembly")?, &wet)?;
/// let strong = largest_spacing(&panel, Axis::Across, 2, &Load::preset("assembly")?, &wet)?;
/// assert!(weak.spacing.unwrap() < "20 in".parse()?);
/// assert!(strong.spacing.unwrap() > "24 in".parse()?);
/// # Ok::<(), deck_core::Error>(())
/// ```
pub fn largest_spacing(
    panel: &StructuralPanel,
    axis: Axis,
    spans: u32,
    load: &Load,
    options: &SpanOptions,
) -> Result<SpacingLimit, Error> {
    let options = SpanOptions { clear_span: None, ..options.clone() };
    options.check()?;
    let (range, bounded) = match strength(panel, axis).map_err(|error| error.within("panel"))? {
        Found::None(reason) => return Ok(limit(None, None, format!("{NO_FIGURE}. {reason}."), load)),
        Found::Strength(strength) => {
            (strength.range.unwrap_or((open_least(&options), FARTHEST)), strength.range.is_some())
        }
    };
    let figures = |spacing: Length| -> Result<Option<SpanLimits>, Error> {
        let answer = span_limits(panel, spacing, axis, spans, &options)?;
        Ok(match answer {
            SpanAnswer::Limits(limits) if limits.allowable() >= load.psf => Some(*limits),
            _ => None,
        })
    };
    let mut best: Option<SpanLimits> = None;
    for (least, most) in stretches(range, &options) {
        best = last_that_carries(least, most, &figures)?.or(best);
        if best.as_ref().is_none_or(|limits| limits.spacing < most) {
            break;
        }
    }
    let why = match &best {
        None => format!("At the closest spacing, {}, it does not carry {} psf.", range.0, load.psf),
        Some(limits) if limits.spacing < range.1 => {
            format!("{} governs: farther apart it does not carry {} psf.", limits.governing, load.psf)
        }
        Some(_) if bounded => format!("The table ends at {}. Beyond it {NO_FIGURE}.", range.1),
        Some(_) => format!("The search ends at {}.", range.1),
    };
    let spacing = best.as_ref().map(|limits| limits.spacing);
    Ok(limit(spacing, best.map(Box::new), why, load))
}

fn limit(spacing: Option<Length>, limits: Option<Box<SpanLimits>>, why: String, load: &Load) -> SpacingLimit {
    SpacingLimit { spacing, limits, why, load: load.clone(), caution: CAUTION.into() }
}

/// The closest spacing where no table bounds it: one inch clear of the support.
fn open_least(options: &SpanOptions) -> Length {
    let support = options.support.unwrap_or(Length::inch_fraction(3, 2));
    let clear = support + Length::inches(1);
    STEP * clear.steps_of(STEP)
}

/// Stretches of spacings over which the loads only fall, each with its ends.
fn stretches(range: (Length, Length), options: &SpanOptions) -> Vec<(Length, Length)> {
    let (least, most) = range;
    if options.support.is_some() || least >= SUPPORTS_CHANGE || most < SUPPORTS_CHANGE {
        return vec![range];
    }
    vec![(least, SUPPORTS_CHANGE - STEP), (SUPPORTS_CHANGE, most)]
}

/// The figures at the last spacing, counted in 64ths from the first, that carries the load; none where the first does not.
fn last_that_carries(
    least: Length,
    most: Length,
    figures: &impl Fn(Length) -> Result<Option<SpanLimits>, Error>,
) -> Result<Option<SpanLimits>, Error> {
    let Some(mut best) = (if least > most { None } else { figures(least)? }) else { return Ok(None) };
    if let Some(all) = figures(most)? {
        return Ok(Some(all));
    }
    // Steps that carry, and steps that do not.
    let (mut yes, mut no) = (0_i64, (most - least).steps_of(STEP));
    while no - yes > 1 {
        let middle = i64::midpoint(yes, no);
        match figures(least + STEP * middle)? {
            Some(limits) => (yes, best) = (middle, limits),
            None => no = middle,
        }
    }
    Ok(Some(best))
}

/// Which published panels carry a load at a spacing, and which way they must lie; in the order of the tables, the strong
/// way before the weak.
///
/// Panels without a figure at that spacing are left out, as are those that do not carry the load.
///
/// # Errors
/// As [`span_limits`].
///
/// # Examples
/// ```
/// use deck_core::span::{Axis, Load, SpanOptions, panels_that_carry};
/// let wet = SpanOptions::new().wet(true);
/// let panels = panels_that_carry("24 in".parse()?, 2, &Load::user(60.0)?, &wet)?;
/// let sanded = |rating: &str, axis| {
///     panels.iter().any(|panel| panel.series.starts_with("sanded") && panel.rating == rating && panel.axis == axis)
/// };
/// assert!(sanded("3/4", Axis::Across) && !sanded("3/4", Axis::Along));
/// assert!(sanded("7/8", Axis::Along));
/// # Ok::<(), deck_core::Error>(())
/// ```
pub fn panels_that_carry(
    spacing: Length,
    spans: u32,
    load: &Load,
    options: &SpanOptions,
) -> Result<Vec<Carrier>, Error> {
    let mut carriers = Vec::new();
    for series in panel_series() {
        for row in series.rows {
            let panel = StructuralPanel::published(series.name, row.rating);
            for axis in Axis::BOTH {
                let answer = span_limits(&panel, spacing, axis, spans, options)?;
                let Some(limits) = answer.limits().filter(|limits| limits.allowable() >= load.psf) else { continue };
                carriers.push(Carrier {
                    series: series.name.into(),
                    rating: row.rating.into(),
                    axis,
                    allowable: limits.allowable(),
                    utilisation: limits.under(load).greatest(),
                    limits: limits.clone(),
                });
            }
        }
    }
    Ok(carriers)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::published::Capacity;

    const SANDED: &str = "sanded plywood Group 1 A-A/A-C";

    fn inches(text: &str) -> Length {
        format!("{text} in").parse().unwrap()
    }

    /// Every 64th of the table, one by one: the answer is the last before the first that does not carry the load.
    #[test]
    fn halving_finds_what_trying_each_64th_finds() {
        let mut ends = [0, 0, 0];
        for (rating, axis, most) in
            [("3/4", Axis::Along, "24"), ("3/4", Axis::Across, "60"), ("1/2", Axis::Along, "16")]
        {
            let panel = StructuralPanel::published(SANDED, rating);
            for psf in [5.0, 11.0, 20.0, 40.0, 100.0, 900.0, 5000.0] {
                let load = Load::user(psf).unwrap();
                let found = largest_spacing(&panel, axis, 2, &load, &SpanOptions::new()).unwrap();
                let carries = |spacing: &Length| {
                    let answer = span_limits(&panel, *spacing, axis, 2, &SpanOptions::new()).unwrap();
                    answer.limits().unwrap().allowable() >= psf
                };
                let (least, most) = (inches("12"), inches(most));
                let all = (0..).map(|step| least + STEP * step).take_while(|spacing| *spacing <= most);
                let last = all.take_while(carries).last();
                assert_eq!(found.spacing, last, "{rating} {axis} {psf}: {}", found.why);
                let end = if last.is_none() { 0 } else { 1 + usize::from(last == Some(most)) };
                ends[end] += 1;
            }
        }
        assert!(ends.iter().all(|count| *count > 0), "{ends:?}");
    }

    #[test]
    fn what_ends_a_spacing_is_told() {
        let sanded = StructuralPanel::published(SANDED, "3/4");
        let why = |panel: &StructuralPanel, axis, psf| {
            largest_spacing(panel, axis, 2, &Load::user(psf).unwrap(), &SpanOptions::new()).unwrap().why
        };
        assert!(why(&sanded, Axis::Along, 1.0).contains(NO_FIGURE));
        assert!(why(&sanded, Axis::Along, 100.0).starts_with("deflection governs"));
        assert!(why(&sanded, Axis::Along, 1e5).starts_with("At the closest spacing"));
        assert!(why(&StructuralPanel::published(SANDED, "1/4"), Axis::Along, 1.0).starts_with(NO_FIGURE));
        let own = StructuralPanel::OneAxis(Capacity { ei: 1e8, mr: 1e6, fs: 1e6 });
        assert!(why(&own, Axis::Across, 1.0).starts_with("The search ends"));
        let error =
            largest_spacing(&sanded, Axis::Along, 9, &Load::user(1.0).unwrap(), &SpanOptions::new()).unwrap_err();
        assert_eq!(error.pointer(), "/spans");
    }

    /// The weak way is enough only where the strong way is, for these panels; thicker is never less than thinner.
    #[test]
    fn panels_that_carry_are_in_order() {
        let found =
            panels_that_carry(inches("16"), 3, &Load::user(100.0).unwrap(), &SpanOptions::new().wet(true)).unwrap();
        assert!(found.iter().all(|panel| panel.allowable >= 100.0 && panel.utilisation <= 1.0));
        let sanded = |axis| {
            let of = found.iter().filter(|panel| panel.series == SANDED && panel.axis == axis);
            of.map(|panel| panel.rating.as_str()).collect::<Vec<&str>>()
        };
        let (strong, weak) = (sanded(Axis::Across), sanded(Axis::Along));
        assert!(weak.iter().all(|rating| strong.contains(rating)) && weak.len() < strong.len(), "{weak:?} {strong:?}");
        assert_eq!(weak.last(), Some(&"1-1/8"));
    }
}
