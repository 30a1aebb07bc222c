//! A panel about the axis asked about: capacities, how far its table goes, and where each figure comes from.

use super::axis::Axis;
use super::panel::{PublishedPanel, SANDED, StructuralPanel};
use super::section::{Section, Stresses};
use super::words::unknown;
use crate::error::{Error, Fault, Faults, Kind};
use crate::length::{Length, Unit};
use crate::published::{
    Capacity, PANEL_CAPACITY_EDITION, PANEL_CAPACITY_FITTED, PANEL_LEAST_SPACING_INCHES, PanelRow,
    SANDED_FACTORS_SOURCE, Series, Standing, panel_series, rated_spans, sanded_factors,
};

/// What a panel bears about one axis, before service factors.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Strength {
    pub(super) capacity: Capacity,
    /// Where shear deflection is reckoned apart.
    pub(super) shear: Option<ShearDeflection>,
    /// The spacings for which the table lists loads.
    pub(super) range: Option<(Length, Length)>,
    pub(super) source: String,
    pub(super) standing: Standing,
    pub(super) notes: Vec<String>,
}

/// Shear deflection of a panel whose E does not hold it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct ShearDeflection {
    /// C of the formula: 120 with the face grain across the supports, 60 along them.
    pub(super) c: f64,
    /// The panel's thickness, inches.
    pub(super) thickness: f64,
    /// `Ee I`, lbf·in² per foot of width.
    pub(super) ei: f64,
}

/// The strength of a panel, or why there is no figure.
pub(super) enum Found {
    Strength(Box<Strength>),
    None(String),
}

const STAMP: &str = "The span rating on the panel's stamp does not hold this way: it means the strength axis across the \
    supports and two spans or more.";

/// # Errors
/// Unknown words, a group or grade where there is none, figures that are not above zero; pointers relative to the panel.
pub(super) fn strength(panel: &StructuralPanel, axis: Axis) -> Result<Found, Error> {
    panel.check()?;
    match panel {
        StructuralPanel::Published(published) => of_published(published, axis),
        StructuralPanel::OneAxis(capacity) => Ok(own(*capacity)),
        StructuralPanel::Own(panel) => Ok(panel.capacity(axis).map_or_else(|| not_given(axis), own)),
        StructuralPanel::Sections(panel) => Ok(panel.section(axis).map_or_else(
            || not_given(axis),
            |section| sections(section, panel.stresses, panel.thickness, axis, "the user's own sections and stresses"),
        )),
        StructuralPanel::Layup(layup) => {
            let section = layup.section(axis)?;
            let source = "a lay-up by transformed sections, with the user's own stresses";
            Ok(sections(section, layup.stresses, layup.thickness(), axis, source))
        }
    }
}

fn not_given(axis: Axis) -> Found {
    Found::None(format!("no capacity is given for the strength axis {axis} the supports"))
}

fn own(capacity: Capacity) -> Found {
    let notes = vec!["The panel's figures are the user's own. No table bounds the spacing.".to_owned()];
    let (source, standing) = ("the user's own figures".to_owned(), Standing::Choice);
    Found::Strength(Box::new(Strength { capacity, shear: None, range: None, source, standing, notes }))
}

fn sections(section: Section, stresses: Stresses, thickness: Length, axis: Axis, source: &str) -> Found {
    let c = if axis == Axis::Across { 120.0 } else { 60.0 };
    let shear = ShearDeflection { c, thickness: thickness.as_inches(), ei: stresses.e_shear * section.i };
    let capacity =
        Capacity { ei: stresses.e * section.i, mr: stresses.fb * section.ks, fs: stresses.fs * section.ib_q };
    let notes = vec![format!("The panel's figures come from {source}. No table bounds the spacing.")];
    let (source, standing) = (source.to_owned(), Standing::Derived);
    Found::Strength(Box::new(Strength { capacity, shear: Some(shear), range: None, source, standing, notes }))
}

/// # Errors
/// A series or rating that is not published here; relative to the panel.
pub(super) fn row(panel: &PublishedPanel) -> Result<(&'static Series, &'static PanelRow), Error> {
    let Some(series) = panel_series().iter().find(|series| series.name == panel.series) else {
        let names: Vec<&str> = panel_series().iter().map(|series| series.name).collect();
        return Err(unknown("series", &panel.series, &names).within("series").into());
    };
    let Some(row) = series.rows.iter().find(|row| row.rating == panel.rating) else {
        let ratings: Vec<&str> = series.rows.iter().map(|row| row.rating).collect();
        return Err(unknown("rating of this series", &panel.rating, &ratings).within("rating").into());
    };
    Ok((series, row))
}

fn of_published(panel: &PublishedPanel, axis: Axis) -> Result<Found, Error> {
    let (series, row) = row(panel)?;
    let grade = grade_factors(panel, series, axis)?;
    let listed = match axis {
        Axis::Across => Some(row.across),
        Axis::Along => row.along,
    };
    let Some(listed) = listed else {
        let table = series.table;
        return Ok(Found::None(format!(
            "table {table} lists no load for {} with its strength axis along the supports",
            row.rating
        )));
    };
    let Capacity { ei, mr, fs } = listed.capacity;
    let mut source = format!(
        "{PANEL_CAPACITY_EDITION}, table {}, {} {}; {PANEL_CAPACITY_FITTED}",
        series.table, series.name, row.rating
    );
    let mut capacity = Capacity { ei, mr, fs };
    if let Some([stiffness, bending, shear]) = grade {
        capacity = Capacity { ei: ei * stiffness, mr: mr * bending, fs: fs * shear };
        source = format!(
            "{source}; times {stiffness}, {bending} and {shear} for species group and grade, {SANDED_FACTORS_SOURCE}"
        );
    }
    Ok(Found::Strength(Box::new(Strength {
        capacity,
        shear: None,
        range: Some((inches(PANEL_LEAST_SPACING_INCHES), inches(listed.largest_inches))),
        source,
        standing: Standing::Derived,
        notes: rating_notes(row.rating, axis),
    })))
}

/// Spacings of the tables are whole tenths of an inch, so this is exact.
fn inches(figure: f64) -> Length {
    Length::nearest(figure * Unit::Inch.nanometres() as f64)
}

fn rating_notes(rating: &str, axis: Axis) -> Vec<String> {
    let Some(spans) = rated_spans(rating) else { return Vec::new() };
    if axis == Axis::Along {
        return vec![STAMP.to_owned()];
    }
    vec![match spans.floor {
        Some(floor) => {
            format!("Rated for floors on supports up to {floor} in apart, on two spans or more (APA PRP-108).")
        }
        None => "Rated for roofs, not for floors (APA PRP-108).".to_owned(),
    }]
}

/// The factors for EI, MR and Fs, where a group or a grade other than the table's is asked for.
fn grade_factors(panel: &PublishedPanel, series: &Series, axis: Axis) -> Result<Option<[f64; 3]>, Error> {
    if panel.group.is_none() && panel.grade.is_none() {
        return Ok(None);
    }
    if series.name != SANDED {
        let mut faults = Faults::new();
        for (field, given) in [("group", panel.group.is_some()), ("grade", panel.grade.is_some())] {
            if given {
                let message = format!("\"{}\" has no {field}.", series.name);
                let accepted = format!("Only \"{SANDED}\" has one.");
                faults.push(Fault::new(Kind::Conflict, series.name, message, accepted).within(field));
            }
        }
        faults.finish()?;
    }
    let (group, grade) = (panel.group.unwrap_or_default(), panel.grade.unwrap_or_default());
    let Some(factors) = sanded_factors(group, grade, axis == Axis::Along) else {
        let message = "Marine grade exists only with veneers of Group 1.";
        let accepted = "Marine grade goes with group \"1\" or \"Structural I\".";
        return Err(Fault::new(Kind::Conflict, "Marine", message, accepted).within("grade").into());
    };
    Ok(Some([factors.stiffness, factors.bending, factors.shear]))
}
