//! Design capacities of structural panels, by series, rating and axis.
//!
//! APA Technical Note Q225J, "Load-Span Tables for Wood Structural Panels" (December 2024), tables 1a to 3. The note
//! prints allowable loads, not capacities. EI, MR and Fs here were **fitted from those printed loads**: they are the
//! round figures that reproduce each printed load cell. That they do so is therefore no check of them; checks from
//! outside are the tables of a second agency, the factors of the design specification and printed examples, among the
//! tests. The loads were read in a public transcription of the note, and not in the publisher's own file.
//!
//! One figure differs from the round one. For sanded 3/8 in with its axis along the supports, MR of 45 would give
//! 37.5 psf at 12 in, where 37 is printed, and the tables round halves up elsewhere: MR lies in [43.8, 45.0), and 44.9 is
//! taken.

mod table;

use serde::{Deserialize, Serialize};

/// Title and edition of the tables.
pub const PANEL_CAPACITY_EDITION: &str = "APA Technical Note Q225J (December 2024)";

/// What is to be said beside each capacity of these tables.
pub const PANEL_CAPACITY_FITTED: &str = "EI, MR and Fs fitted from the printed loads that they reproduce";

/// What a foot of width of a panel bears, about one of its axes. Dry, and at normal load duration where it is published.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Capacity {
    /// Bending stiffness EI, lbf·in² per foot of width.
    #[cfg_attr(feature = "schema", schemars(extend("exclusiveMinimum" = 0, "maximum" = 1_000_000_000_000_u64)))]
    pub ei: f64,
    /// Bending strength MR (`Fb S`), lbf·in per foot of width.
    #[cfg_attr(feature = "schema", schemars(extend("exclusiveMinimum" = 0, "maximum" = 1_000_000_000_000_u64)))]
    pub mr: f64,
    /// Shear strength in the plane (`Fs Ib/Q`), lbf per foot of width.
    #[cfg_attr(feature = "schema", schemars(extend("exclusiveMinimum" = 0, "maximum" = 1_000_000_000_000_u64)))]
    pub fs: f64,
}

/// A capacity, and how far the table goes.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct AxisRow {
    /// The capacity.
    pub capacity: Capacity,
    /// The largest spacing of supports, in inches, for which a load is listed. The least is 12.
    pub largest_inches: f64,
}

/// A rating or a thickness, both ways.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct PanelRow {
    /// The span rating, or for sanded plywood the thickness in inches.
    pub rating: &'static str,
    /// Strength axis across the supports: the strong way.
    pub across: AxisRow,
    /// Strength axis along the supports: the weak way. None where the table lists no load.
    pub along: Option<AxisRow>,
}

/// One printed table.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct Series {
    /// The table's number.
    pub table: &'static str,
    /// The kind of panel.
    pub name: &'static str,
    /// Its rows, in the table's order.
    pub rows: &'static [PanelRow],
}

/// The least spacing of supports in the tables, in inches.
pub const PANEL_LEAST_SPACING_INCHES: f64 = 12.0;

/// All series, in the order of the tables.
///
/// # Examples
/// ```
/// use deck_core::published::panel_series;
/// let sanded = panel_series().iter().find(|series| series.table == "3").unwrap();
/// let row = sanded.rows.iter().find(|row| row.rating == "3/4").unwrap();
/// assert_eq!(row.across.capacity.ei, 355_000.0);
/// assert_eq!(row.along.unwrap().capacity.ei, 115_000.0); // the weak way
/// ```
pub fn panel_series() -> &'static [Series] {
    table::SERIES
}
