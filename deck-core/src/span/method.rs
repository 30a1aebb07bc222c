//! The load-span equations, and the spans that go into them.
//!
//! Loads in psf, spans in inches, capacities to a foot of width.

use super::options::SpanOptions;
use super::strength::ShearDeflection;
use crate::error::{Error, Fault, Kind};
use crate::length::Length;

/// Where the equations and spans come from.
pub(super) const METHOD_SOURCE: &str = "APA Technical Note Q225J (December 2024)";
/// Where shear deflection comes from.
pub(super) const SHEAR_SOURCE: &str =
    "Peurifoy and Oberlender, Formwork for Concrete Structures (from APA Concrete Forming, 2004)";

/// From this spacing the tables take the wider support.
const WIDE_FROM: Length = Length::inches(48);

/// Coefficients of the equations for one, two, or three and more equal spans.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Coefficients {
    pub(super) deflection: f64,
    pub(super) bending: f64,
    pub(super) shear: f64,
}

/// # Errors
/// Another number of spans.
pub(super) fn coefficients(spans: u32) -> Result<Coefficients, Error> {
    let of = |deflection, bending, shear| Ok(Coefficients { deflection, bending, shear });
    match spans {
        1 => of(921.6, 96.0, 24.0),
        2 => of(2220.0, 96.0, 19.2),
        3 => of(1743.0, 120.0, 20.0),
        _ => {
            let message = format!("{spans} is no number of spans here.");
            let accepted = "1, 2 or 3 is accepted; 3 stands for three equal spans or more.";
            Err(Fault::new(Kind::OutOfRange, spans.to_string(), message, accepted).within("spans").into())
        }
    }
}

/// The spans between two supports.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Spans {
    /// l1: centre to centre.
    pub(super) spacing: Length,
    pub(super) support: Length,
    /// l2: from edge to edge.
    pub(super) clear: Length,
    /// l3: for deflection.
    pub(super) deflection: Length,
    /// True for the tables' own two supports.
    pub(super) as_tables: bool,
}

/// The supports that the tables take at a spacing.
fn table_support(spacing: Length) -> Length {
    if spacing < WIDE_FROM { narrow() } else { wide() }
}

fn narrow() -> Length {
    Length::inch_fraction(3, 2)
}

fn wide() -> Length {
    Length::inch_fraction(7, 2)
}

/// # Method
/// Q225J: l3 is the clear span and 1/4 in on supports 1-1/2 in wide, and 5/8 in on supports 3-1/2 in wide. For other
/// widths, our extension: 1/4 in below 3-1/2 in and 5/8 in from there, and never more than the spacing.
///
/// # Errors
/// Supports or a clear span that do not fit the spacing.
pub(super) fn spans(spacing: Length, options: &SpanOptions) -> Result<Spans, Error> {
    let (support, clear) = match (options.support, options.clear_span) {
        (None, None) => (table_support(spacing), spacing - table_support(spacing)),
        (Some(support), None) => (support, spacing - support),
        (Some(support), Some(clear)) => (support, clear),
        (None, Some(clear)) => (spacing - clear, clear),
    };
    if clear <= Length::ZERO {
        let field = if options.support.is_some() { "support" } else { "spacing" };
        let message = format!("Supports {support} wide leave no clear span where they stand {spacing} apart.");
        let accepted = "A bearing narrower than the spacing is accepted.";
        return Err(Fault::new(Kind::OutOfRange, support.to_string(), message, accepted).within(field).into());
    }
    if clear > spacing {
        let message = format!("A clear span of {clear} is longer than the spacing, {spacing}.");
        let accepted = "A clear span up to the spacing is accepted.";
        return Err(Fault::new(Kind::OutOfRange, clear.to_string(), message, accepted).within("clear_span").into());
    }
    let over = if support < wide() { Length::inch_fraction(1, 4) } else { Length::inch_fraction(5, 8) };
    let as_tables = support == table_support(spacing) && clear + support == spacing;
    Ok(Spans { spacing, support, clear, deflection: (clear + over).min(spacing), as_tables })
}

/// `w = (l1/limit) / (l3⁴/(c EI) + C t² l2²/(1270 Ee I))`; the second term only where shear deflection is reckoned apart.
pub(super) fn deflection_load(c: f64, ei: f64, shear: Option<ShearDeflection>, spans: &Spans, limit: f64) -> f64 {
    let (l1, l2, l3) = inches(spans);
    match shear {
        None => c * ei * (l1 / limit) / l3.powi(4),
        Some(shear) => {
            let bent = l3.powi(4) / (c * ei);
            let sheared = shear.c * shear.thickness.powi(2) * l2.powi(2) / (1270.0 * shear.ei);
            (l1 / limit) / (bent + sheared)
        }
    }
}

/// `w = c MR / l1²`.
pub(super) fn bending_load(c: f64, mr: f64, spans: &Spans) -> f64 {
    c * mr / spans.spacing.as_inches().powi(2)
}

/// `w = c Fs / l2`.
pub(super) fn shear_load(c: f64, fs: f64, spans: &Spans) -> f64 {
    c * fs / spans.clear.as_inches()
}

fn inches(spans: &Spans) -> (f64, f64, f64) {
    (spans.spacing.as_inches(), spans.clear.as_inches(), spans.deflection.as_inches())
}
