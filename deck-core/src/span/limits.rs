//! What uniform load a panel takes on its supports.

use super::axis::{Axis, Criterion, Each};
use super::capacity::with_factors;
use super::load::{Load, Utilisation};
use super::method::{
    METHOD_SOURCE, SHEAR_SOURCE, Spans, bending_load, coefficients, deflection_load, shear_load, spans as spans_of,
};
use super::options::SpanOptions;
use super::panel::StructuralPanel;
use super::service::{UsedFactor, in_service, product};
use super::strength::{Found, ShearDeflection, Strength, strength};
use crate::error::{Error, Fault, Faults, Kind};
use crate::length::Length;
use crate::published::{Capacity, PASCALS_PER_PSF, Standing};
use serde::{Deserialize, Serialize};

/// What stands beside every figure of strength.
pub const CAUTION: &str = "A figure from published tables and formulas, for a person to judge. It is no statement that the \
    deck, as built and as used, will carry anybody. Ask a licensed engineer where it matters.";

/// What is said where there is no figure.
pub const NO_FIGURE: &str = "no figure: ask a licensed engineer";

/// Allowable uniform loads, unrounded, by each criterion.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct SpanLimits {
    /// `psf`: the loads are pounds to the square foot.
    pub unit: String,
    /// The load at which the panel sags by the limit.
    pub deflection: f64,
    /// The load by bending strength.
    pub bending: f64,
    /// The load by shear strength.
    pub shear: f64,
    /// The criterion with the lowest load.
    pub governing: Criterion,
    /// The clause and the figures that each load comes from.
    pub source: Each<String>,
    /// How sure the panel's capacities are.
    pub standing: Standing,
    /// How the strength axis lies to the supports.
    pub axis: Axis,
    /// How many equal spans; 3 stands for three or more.
    pub spans: u32,
    /// Spacing of the supports, centre to centre.
    pub spacing: Length,
    /// Bearing width of a support.
    pub support: Length,
    /// The clear span, which shear goes by.
    pub clear_span: Length,
    /// The span that deflection goes by.
    pub deflection_span: Length,
    /// Deflection limit: 360 stands for l/360, l being the spacing.
    pub deflection_limit: f64,
    /// The capacities that the loads were reckoned with, factors included: lbf·in², lbf·in and lbf to a foot of width.
    pub capacity: Capacity,
    /// The factors in them, beside a group's or grade's.
    pub factors: Vec<UsedFactor>,
    /// What else one should know.
    pub notes: Vec<String>,
    /// [`CAUTION`].
    pub caution: String,
}

/// Why there is no figure.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct NoFigure {
    /// [`NO_FIGURE`], with the reason.
    pub no_figure: String,
    /// Where the supports stand closer than the table's least spacing: the figure at that one. Each load only grows as
    /// supports draw together.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub at_least_spacing: Option<Box<SpanLimits>>,
    /// [`CAUTION`].
    pub caution: String,
}

/// Figures, or why there are none.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(untagged)]
pub enum SpanAnswer {
    /// Figures.
    Limits(Box<SpanLimits>),
    /// None, and why.
    NoFigure(NoFigure),
}

impl SpanAnswer {
    /// The figures, where there are some.
    pub fn limits(&self) -> Option<&SpanLimits> {
        match self {
            SpanAnswer::Limits(limits) => Some(limits),
            SpanAnswer::NoFigure(_) => None,
        }
    }

    /// Why there is no figure.
    pub fn no_figure(&self) -> Option<&str> {
        match self {
            SpanAnswer::Limits(_) => None,
            SpanAnswer::NoFigure(none) => Some(&none.no_figure),
        }
    }
}

impl SpanLimits {
    /// The load by one criterion, psf.
    pub fn load(&self, criterion: Criterion) -> f64 {
        match criterion {
            Criterion::Deflection => self.deflection,
            Criterion::Bending => self.bending,
            Criterion::Shear => self.shear,
        }
    }

    /// The lowest of the three, psf.
    pub fn allowable(&self) -> f64 {
        self.load(self.governing)
    }

    /// The load by one criterion in kilopascals.
    pub fn kilopascals(&self, criterion: Criterion) -> f64 {
        self.load(criterion) * PASCALS_PER_PSF / 1000.0
    }

    /// What is left for a live load beside a dead load in psf; below zero where the dead load alone is too much.
    pub fn live(&self, dead: f64) -> f64 {
        self.allowable() - dead
    }

    /// How far a load uses the panel up, by each criterion.
    pub fn under(&self, load: &Load) -> Utilisation {
        Utilisation::new(self, load)
    }
}

/// The allowable uniform loads of a panel on equal spans: by deflection, bending and shear.
///
/// `axis` says how the strength axis lies to the supports, `spans` is 1, 2 or 3 (three or more). Loads are in psf and not
/// rounded; the tables print them to the nearest whole number, halves up.
///
/// # Method
/// APA Technical Note Q225J (December 2024): bending on the spacing centre to centre (l1), shear on the clear span (l2),
/// deflection on the clear span and 1/4 in (5/8 in on supports 3-1/2 in wide; l3), its limit taken on the spacing. Wet
/// service and load duration by the same note. Sections and lay-ups add shear deflection as Peurifoy and Oberlender do.
/// Other bearing widths are our extension: l3 is the clear span and 1/4 in below 3-1/2 in of width and 5/8 in from
/// there, never over the spacing.
///
/// # Limits
/// Outside the spacings for which the table lists loads there is no figure, and [`NoFigure`] says so. Between the printed
/// columns the equations are used as they stand.
///
/// # Errors
/// A series or rating that is not published here, figures out of range, supports wider than the spacing; all of them at
/// once, each with its field.
///
/// # Examples
/// A sanded 3/4 in deck laid the usual way, strength axis along members 24 in apart, wet:
/// ```
/// use deck_core::span::{Axis, Criterion, SpanOptions, StructuralPanel, span_limits};
/// let panel = StructuralPanel::published("sanded plywood Group 1 A-A/A-C", "3/4");
/// let answer = span_limits(&panel, "24 in".parse()?, Axis::Along, 2, &SpanOptions::new().wet(true))?;
/// let limits = answer.limits().unwrap();
/// assert_eq!(limits.governing, Criterion::Deflection);
/// assert_eq!(limits.allowable().round(), 54.0);
/// let wide = span_limits(&panel, "26 in".parse()?, Axis::Along, 2, &SpanOptions::new())?;
/// assert!(wide.no_figure().unwrap().starts_with("no figure: ask a licensed engineer"));
/// # Ok::<(), deck_core::Error>(())
/// ```
pub fn span_limits(
    panel: &StructuralPanel,
    spacing: Length,
    axis: Axis,
    spans: u32,
    options: &SpanOptions,
) -> Result<SpanAnswer, Error> {
    let mut faults = Faults::new();
    let found = faults.take(strength(panel, axis).map_err(|error| error.within("panel")));
    faults.take(coefficients(spans));
    let options_sound = faults.take(options.check()).is_some();
    let spacing_sound = faults.take(check_spacing(spacing)).is_some();
    if options_sound && spacing_sound {
        faults.take(spans_of(spacing, options));
    }
    faults.finish()?;
    match found {
        Some(Found::Strength(strength)) => {
            answer(&Question { strength: &strength, axis, count: spans, options }, spacing)
        }
        Some(Found::None(reason)) => Ok(none(&reason)),
        // unreachable: without a strength there are faults.
        None => Ok(none("nothing is known of the panel")),
    }
}

fn check_spacing(spacing: Length) -> Result<(), Error> {
    if spacing > Length::ZERO {
        return Ok(());
    }
    let kind = if spacing.is_zero() { Kind::LengthZero } else { Kind::LengthNegative };
    let message = format!("{spacing} is no spacing.");
    Err(Fault::new(kind, spacing.to_string(), message, "More than zero is accepted.").within("spacing").into())
}

fn none(reason: &str) -> SpanAnswer {
    let no_figure = format!("{NO_FIGURE}. {reason}.");
    SpanAnswer::NoFigure(NoFigure { no_figure, at_least_spacing: None, caution: CAUTION.into() })
}

/// All but the spacing.
#[derive(Debug, Clone, Copy)]
struct Question<'a> {
    strength: &'a Strength,
    axis: Axis,
    count: u32,
    options: &'a SpanOptions,
}

fn answer(question: &Question<'_>, spacing: Length) -> Result<SpanAnswer, Error> {
    let Some((least, largest)) = question.strength.range else {
        return Ok(SpanAnswer::Limits(Box::new(figures(question, &spans_of(spacing, question.options)?)?)));
    };
    if (least..=largest).contains(&spacing) {
        return Ok(SpanAnswer::Limits(Box::new(figures(question, &spans_of(spacing, question.options)?)?)));
    }
    let table = if least == largest { format!("only {least}") } else { format!("{least} to {largest}") };
    let reason = format!("A spacing of {spacing} is outside the table ({table})");
    let mut answer = none(&reason);
    // A clear span that was given belongs to the spacing that was given, and to no other.
    if let SpanAnswer::NoFigure(none) = &mut answer
        && spacing < least
        && question.options.clear_span.is_none()
    {
        none.at_least_spacing = Some(Box::new(figures(question, &spans_of(least, question.options)?)?));
    }
    Ok(answer)
}

fn figures(question: &Question<'_>, spans: &Spans) -> Result<SpanLimits, Error> {
    let Question { strength, axis, count, options } = *question;
    let c = coefficients(count)?;
    let factors = in_service(options);
    let stiffness = product(&factors, Criterion::Deflection);
    let capacity = with_factors(&strength.capacity, &factors);
    let shear_term = strength.shear.map(|shear| ShearDeflection { ei: shear.ei * stiffness, ..shear });
    let deflection = deflection_load(c.deflection, capacity.ei, shear_term, spans, options.deflection);
    let bending = bending_load(c.bending, capacity.mr, spans);
    let shear = shear_load(c.shear, capacity.fs, spans);
    let lowest = [(deflection, Criterion::Deflection), (bending, Criterion::Bending), (shear, Criterion::Shear)]
        .into_iter()
        .reduce(|least, other| if other.0 < least.0 { other } else { least });
    Ok(SpanLimits {
        unit: "psf".into(),
        deflection,
        bending,
        shear,
        governing: lowest.map_or(Criterion::Bending, |(_, criterion)| criterion),
        source: clauses(question, &factors, spans)?,
        standing: strength.standing,
        axis,
        spans: count,
        spacing: spans.spacing,
        support: spans.support,
        clear_span: spans.clear,
        deflection_span: spans.deflection,
        deflection_limit: options.deflection,
        capacity,
        factors,
        notes: notes(question, spans),
        caution: CAUTION.into(),
    })
}

/// The equation of each load with its coefficient, and where the capacity and its factors come from.
fn clauses(question: &Question<'_>, factors: &[UsedFactor], spans: &Spans) -> Result<Each<String>, Error> {
    let c = coefficients(question.count)?;
    let strength = question.strength;
    let clause = |equation: String, capacity: &str, criterion: Criterion| {
        let used = factors.iter().filter(|factor| factor.applies(criterion));
        let used: Vec<String> =
            used.map(|factor| format!(" × {} {} ({})", factor.value, factor.name, factor.source)).collect();
        format!("{METHOD_SOURCE}: {equation}. {capacity}: {}{}.", strength.source, used.concat())
    };
    let limit = question.options.deflection;
    let l3 = format!("l3 = {}", spans.deflection);
    let sag = match strength.shear {
        None => format!("w = {} EI (l1/{limit})/l3⁴, {l3}", c.deflection),
        Some(shear) => format!(
            "w = (l1/{limit})/(l3⁴/({} EI) + {} t² l2²/(1270 Ee I)), {l3}; shear deflection after {SHEAR_SOURCE}",
            c.deflection, shear.c
        ),
    };
    Ok(Each {
        deflection: clause(sag, "EI", Criterion::Deflection),
        bending: clause(format!("w = {} MR/l1², l1 = {}", c.bending, spans.spacing), "MR", Criterion::Bending),
        shear: clause(format!("w = {} Fs/l2, l2 = {}", c.shear, spans.clear), "Fs", Criterion::Shear),
    })
}

fn notes(question: &Question<'_>, spans: &Spans) -> Vec<String> {
    let mut notes = question.strength.notes.clone();
    if !spans.as_tables {
        notes.push(
            "The supports are not the tables' own. Our extension: the deflection span is the clear span and 1/4 in below \
             3-1/2 in of bearing, 5/8 in from there, never over the spacing."
                .into(),
        );
    }
    if question.options.duration < 1.0 {
        notes.push(
            "A permanent load creeps: total over elastic deflection 2.0, dry (NDS 2018, equation 3.5-1). Not counted."
                .into(),
        );
    }
    notes
}
