//! What a span check may be told beyond the panel and its supports.

use crate::error::{Error, Fault, Faults, Kind};
use crate::length::Length;
use serde::{Deserialize, Serialize};

/// Supports, limits and service of a span check. Dry and at normal load duration unless said otherwise, as tables are.
///
/// # Examples
/// ```
/// use deck_core::span::SpanOptions;
/// let options = SpanOptions::new().wet(true).deflection(240.0).support("2 in".parse()?);
/// assert!(options.wet && options.duration == 1.0);
/// # Ok::<(), deck_core::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields, default)]
#[non_exhaustive]
pub struct SpanOptions {
    /// Bearing width of a support. None: the published tables' own, 1-1/2 in below 48 in of spacing, 3-1/2 in from there.
    pub support: Option<Length>,
    /// The clear span, where the bearings at its two ends differ. None: the spacing less one support.
    pub clear_span: Option<Length>,
    /// Largest sag, as this part of the spacing: 360 stands for l/360.
    pub deflection: f64,
    /// Moisture content of 16 percent or more. A deck over water is wet.
    pub wet: bool,
    /// Load duration factor `C_D`: 0.9 permanent, 1 normal, 1.15 two months, 1.25 seven days, 1.6 wind.
    pub duration: f64,
    /// Width of the board, where it is a narrow strip; see the panel size factor. None: 24 in or more.
    pub width: Option<Length>,
}

impl Default for SpanOptions {
    fn default() -> SpanOptions {
        SpanOptions { support: None, clear_span: None, deflection: 360.0, wet: false, duration: 1.0, width: None }
    }
}

impl SpanOptions {
    /// The tables' own supports, l/360, dry, normal load duration, a full panel.
    pub fn new() -> SpanOptions {
        SpanOptions::default()
    }

    /// On supports of that bearing width.
    #[must_use]
    pub fn support(mut self, width: Length) -> SpanOptions {
        self.support = Some(width);
        self
    }

    /// With that clear span.
    #[must_use]
    pub fn clear_span(mut self, clear: Length) -> SpanOptions {
        self.clear_span = Some(clear);
        self
    }

    /// With a sag of up to this part of the spacing.
    #[must_use]
    pub fn deflection(mut self, part: f64) -> SpanOptions {
        self.deflection = part;
        self
    }

    /// Wet or dry.
    #[must_use]
    pub fn wet(mut self, wet: bool) -> SpanOptions {
        self.wet = wet;
        self
    }

    /// With a load duration factor.
    #[must_use]
    pub fn duration(mut self, factor: f64) -> SpanOptions {
        self.duration = factor;
        self
    }

    /// For a strip of that width.
    #[must_use]
    pub fn width(mut self, width: Length) -> SpanOptions {
        self.width = Some(width);
        self
    }

    /// Checks the figures; pointers are relative to the options.
    ///
    /// # Errors
    /// A support below zero, a clear span or width of zero or less, a deflection limit outside 1 to 10 000, a load
    /// duration factor outside (0, 1.6].
    pub fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::new();
        if let Some(support) = self.support.filter(|support| support.is_negative()) {
            faults.push(no_size(support, "A bearing width of zero or more is accepted.").within("support"));
        }
        for (field, length) in [("clear_span", self.clear_span), ("width", self.width)] {
            if let Some(length) = length.filter(|length| *length <= Length::ZERO) {
                faults.push(no_size(length, "More than zero is accepted.").within(field));
            }
        }
        faults.take(figure(self.deflection, 1.0, 10_000.0).map_err(|error| error.within("deflection")));
        if !(self.duration > 0.0 && self.duration <= 1.6) {
            let message = format!("{} is no load duration factor.", self.duration);
            let accepted = "Above 0 and up to 1.6; the tables have 0.9, 1, 1.15, 1.25 and 1.6.";
            faults.push(Fault::new(Kind::OutOfRange, self.duration.to_string(), message, accepted).within("duration"));
        }
        faults.finish()
    }
}

fn no_size(length: Length, accepted: &str) -> Fault {
    let kind = if length.is_zero() { Kind::LengthZero } else { Kind::LengthNegative };
    Fault::new(kind, length.to_string(), format!("{length} is no size here."), accepted)
}

/// A figure within bounds; NaN lies within none.
pub(super) fn figure(value: f64, least: f64, most: f64) -> Result<(), Error> {
    if (least..=most).contains(&value) {
        return Ok(());
    }
    let accepted = format!("A number from {least} to {most} is accepted.");
    Err(Fault::new(Kind::OutOfRange, value.to_string(), format!("{value} is out of range."), accepted).into())
}

/// A figure above zero and below what no panel reaches.
pub(super) fn positive(value: f64) -> Result<(), Error> {
    const MOST: f64 = 1e12;
    if value > 0.0 && value <= MOST {
        return Ok(());
    }
    let message = format!("{value} is no strength.");
    Err(Fault::new(Kind::OutOfRange, value.to_string(), message, "A number above zero is accepted.").into())
}
