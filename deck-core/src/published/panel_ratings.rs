//! Ratings, thicknesses and rated spans of structural panels.
//!
//! Thicknesses by rating: APA D510F (2020). Limits of thickness: Voluntary Product Standard PS 1-19, as read on the
//! panel association's European pages. Rated spans: APA PRP-108. D510F and PRP-108 were read in public transcriptions.
//! All verified second hand; inches.

/// The thicknesses that panels of a rating are made in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[non_exhaustive]
pub struct RatedThickness {
    /// The rating.
    pub rating: &'static str,
    /// The performance categories (nominal thicknesses in inches) that exist.
    pub categories: &'static [&'static str],
    /// The usual one.
    pub usual: &'static str,
}

const fn rated(rating: &'static str, categories: &'static [&'static str], usual: &'static str) -> RatedThickness {
    RatedThickness { rating, categories, usual }
}

/// Thicknesses by rating (APA D510F, 2020).
pub const RATED_THICKNESSES: &[RatedThickness] = &[
    rated("W24", &["3/8", "7/16", "15/32"], "3/8"),
    rated("24/0", &["3/8", "7/16", "15/32", "1/2"], "3/8"),
    rated("24/16", &["7/16", "15/32", "1/2"], "7/16"),
    rated("32/16", &["15/32", "1/2", "19/32", "5/8"], "15/32"),
    rated("40/20", &["19/32", "5/8", "23/32", "3/4"], "19/32"),
    rated("48/24", &["23/32", "3/4", "7/8"], "23/32"),
    rated("16oc", &["19/32", "5/8"], "19/32"),
    rated("20oc", &["19/32", "5/8"], "19/32"),
    rated("24oc", &["23/32", "3/4"], "23/32"),
    rated("32oc", &["7/8", "1"], "7/8"),
    rated("48oc", &["1-1/8"], "1-1/8"),
];

/// Limits of an unsanded, touch-sanded or overlaid panel's thickness.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct ThicknessRange {
    /// The performance category: the nominal thickness in inches.
    pub category: &'static str,
    /// The least thickness, inches.
    pub least: f64,
    /// The greatest thickness, inches.
    pub most: f64,
    /// What the panel association recommends to print on the label, inches.
    pub label: f64,
}

const fn thickness(category: &'static str, least: f64, most: f64, label: f64) -> ThicknessRange {
    ThicknessRange { category, least, most, label }
}

/// Limits of thickness by category (PS 1-19).
pub const THICKNESS_RANGES: &[ThicknessRange] = &[
    thickness("1/4", 0.219, 0.281, 0.225),
    thickness("11/32", 0.313, 0.375, 0.322),
    thickness("3/8", 0.344, 0.406, 0.354),
    thickness("7/16", 0.406, 0.469, 0.418),
    thickness("15/32", 0.438, 0.5, 0.451),
    thickness("1/2", 0.469, 0.531, 0.483),
    thickness("19/32", 0.563, 0.625, 0.578),
    thickness("5/8", 0.594, 0.656, 0.609),
    thickness("23/32", 0.688, 0.75, 0.703),
    thickness("3/4", 0.719, 0.781, 0.734),
    thickness("13/16", 0.781, 0.844, 0.788),
    thickness("7/8", 0.831, 0.919, 0.849),
    thickness("1", 0.95, 1.05, 0.97),
    thickness("1-1/8", 1.069, 1.181, 1.091),
    thickness("1-1/4", 1.188, 1.313, 1.213),
];

/// The spans that a rating stands for: strength axis across the supports, two spans or more. Inches.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct RatedSpans {
    /// The rating.
    pub rating: &'static str,
    /// Largest roof span with edges supported.
    pub roof: f64,
    /// Largest roof span with edges free.
    pub roof_free: f64,
    /// Largest floor span; none for a rating that is for roofs only.
    pub floor: Option<f64>,
}

const fn roof(rating: &'static str, roof: f64, roof_free: f64) -> RatedSpans {
    RatedSpans { rating, roof, roof_free, floor: None }
}

const fn floor(rating: &'static str, roof: f64, roof_free: f64, floor: f64) -> RatedSpans {
    RatedSpans { rating, roof, roof_free, floor: Some(floor) }
}

/// Rated spans (APA PRP-108). A floor span of 19.2 is printed as 20 or 19.
pub const RATED_SPANS: &[RatedSpans] = &[
    roof("12/0", 12.0, 12.0),
    roof("16/0", 16.0, 16.0),
    roof("20/0", 20.0, 20.0),
    roof("24/0", 24.0, 20.0),
    floor("24/16", 24.0, 24.0, 16.0),
    floor("32/16", 32.0, 28.0, 16.0),
    floor("40/20", 40.0, 32.0, 19.2),
    floor("48/24", 48.0, 36.0, 24.0),
    floor("54/32", 54.0, 40.0, 32.0),
    floor("60/32", 60.0, 48.0, 32.0),
    floor("16oc", 24.0, 24.0, 16.0),
    floor("20oc", 32.0, 32.0, 19.2),
    floor("24oc", 48.0, 36.0, 24.0),
    floor("32oc", 48.0, 40.0, 32.0),
    floor("48oc", 60.0, 48.0, 48.0),
];

/// The spans that a rating stands for, where it is one.
///
/// # Examples
/// ```
/// use deck_core::published::rated_spans;
/// assert_eq!(rated_spans("48/24").unwrap().floor, Some(24.0));
/// assert!(rated_spans("3/4").is_none()); // a thickness, no rating
/// ```
pub fn rated_spans(rating: &str) -> Option<&'static RatedSpans> {
    RATED_SPANS.iter().find(|row| row.rating == rating)
}
