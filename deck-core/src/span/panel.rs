//! What a structural panel is known by: a published row, its user's own figures, its sections or its plies.

use super::axis::Axis;
use super::layup::Layup;
use super::section::{SectionPanel, all_positive};
use crate::error::{Error, Fault, Faults, Kind};
use crate::length::Length;
use crate::published::{Capacity, FaceGrade, SpeciesGroup};
use serde::{Deserialize, Serialize};

/// A plywood or other structural panel, by whatever is known of its strength.
///
/// # Examples
/// ```
/// use deck_core::span::StructuralPanel;
/// let sanded = StructuralPanel::published("sanded plywood Group 1 A-A/A-C", "3/4");
/// let text = serde_json::to_string(&sanded).unwrap();
/// assert_eq!(text, r#"{"series":"sanded plywood Group 1 A-A/A-C","rating":"3/4"}"#);
/// assert_eq!(serde_json::from_str::<StructuralPanel>(&text).unwrap(), sanded);
/// ```
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(untagged)]
#[non_exhaustive]
pub enum StructuralPanel {
    /// A row of the published tables.
    Published(PublishedPanel),
    /// The user's own capacities about the axis that is asked about.
    OneAxis(Capacity),
    /// The user's own capacities about either axis.
    Own(OwnPanel),
    /// The user's own sections and stresses.
    Sections(SectionPanel),
    /// Plies.
    Layup(Layup),
}

/// A row of the published tables, in their own words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
#[non_exhaustive]
pub struct PublishedPanel {
    /// The kind of panel; see [`panel_series`](crate::published::panel_series).
    pub series: String,
    /// The span rating, or the thickness of sanded plywood.
    pub rating: String,
    /// Species group, for sanded plywood. None: that of the table.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub group: Option<SpeciesGroup>,
    /// Grade, for sanded plywood. None: that of the table.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub grade: Option<FaceGrade>,
}

/// A user's own capacities.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
#[non_exhaustive]
pub struct OwnPanel {
    /// Strength axis across the supports.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub across: Option<Capacity>,
    /// Strength axis along the supports.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub along: Option<Capacity>,
}

impl OwnPanel {
    pub(super) fn capacity(&self, axis: Axis) -> Option<Capacity> {
        match axis {
            Axis::Across => self.across,
            Axis::Along => self.along,
        }
    }
}

impl StructuralPanel {
    /// A published row; the words are looked up when it is used.
    pub fn published(series: impl Into<String>, rating: impl Into<String>) -> StructuralPanel {
        let (series, rating) = (series.into(), rating.into());
        StructuralPanel::Published(PublishedPanel { series, rating, group: None, grade: None })
    }

    /// A sanded plywood of table 3, of another species group or grade than the table's.
    pub fn sanded(thickness: impl Into<String>, group: SpeciesGroup, grade: FaceGrade) -> StructuralPanel {
        let (series, rating) = (SANDED.into(), thickness.into());
        StructuralPanel::Published(PublishedPanel { series, rating, group: Some(group), grade: Some(grade) })
    }

    /// The user's own capacities; dry, at normal load duration.
    pub fn own(across: Option<Capacity>, along: Option<Capacity>) -> StructuralPanel {
        StructuralPanel::Own(OwnPanel { across, along })
    }

    /// Checks the user's own figures; pointers are relative to the panel. Published words are looked up elsewhere.
    pub(super) fn check(&self) -> Result<(), Error> {
        match self {
            StructuralPanel::Published(_) => Ok(()),
            StructuralPanel::OneAxis(capacity) => check_capacity(capacity),
            StructuralPanel::Own(own) => {
                let mut faults = Faults::new();
                for (name, capacity) in [("across", own.across), ("along", own.along)] {
                    if let Some(capacity) = capacity {
                        faults.take(check_capacity(&capacity).map_err(|error| error.within(name)));
                    }
                }
                faults.finish()
            }
            StructuralPanel::Sections(panel) => check_sections(panel),
            StructuralPanel::Layup(layup) => layup.check(),
        }
    }
}

/// The one series with species groups and grades.
pub(super) const SANDED: &str = "sanded plywood Group 1 A-A/A-C";

fn check_capacity(capacity: &Capacity) -> Result<(), Error> {
    all_positive(&[("ei", capacity.ei), ("mr", capacity.mr), ("fs", capacity.fs)])
}

fn check_sections(panel: &SectionPanel) -> Result<(), Error> {
    let mut faults = Faults::new();
    faults.take(panel.stresses.check().map_err(|error| error.within("stresses")));
    for (name, section) in [("across", panel.across), ("along", panel.along)] {
        if let Some(section) = section {
            let figures = [("i", section.i), ("ks", section.ks), ("ib_q", section.ib_q)];
            faults.take(all_positive(&figures).map_err(|error| error.within(name)));
        }
    }
    if panel.thickness <= Length::ZERO {
        let message = format!("{} is no thickness.", panel.thickness);
        let fault = Fault::new(Kind::LengthZero, panel.thickness.to_string(), message, "More than zero is accepted.");
        faults.push(fault.within("thickness"));
    }
    faults.finish()
}
