//! Reads what a structural panel is known by.
//!
//! A panel with a fault in it counts as absent: what follows from the fault is not told again.

use super::Notes;
use super::at::{At, Object};
use crate::error::Kind;
use crate::published::Capacity;
use crate::span::{Layup, OwnPanel, Ply, PublishedPanel, Section, SectionPanel, Stresses, StructuralPanel};

const ACCEPTED: &str = "A panel is {\"series\", \"rating\"}, {\"ei\", \"mr\", \"fs\"}, such a one under \"across\" and \
    \"along\", {\"thickness\", \"across\", \"along\", \"stresses\"}, or {\"plies\", \"stresses\"}.";

/// Which of the five it is, the fields tell.
pub(super) fn panel(at: &At<'_>, notes: &mut Notes) -> Option<StructuralPanel> {
    let has = |names: &[&str]| names.iter().any(|name| at.value.get(name).is_some());
    if has(&["plies"]) {
        sound(at, notes, layup).map(StructuralPanel::Layup)
    } else if has(&["stresses", "thickness"]) {
        sound(at, notes, sections).map(StructuralPanel::Sections)
    } else if has(&["series", "rating"]) {
        sound(at, notes, published).map(StructuralPanel::Published)
    } else if has(&["across", "along"]) {
        sound(at, notes, |fields, notes| Some(own(fields, notes))).map(StructuralPanel::Own)
    } else if has(&["ei", "mr", "fs"]) {
        sound(at, notes, capacity).map(StructuralPanel::OneAxis)
    } else {
        at.refuse(notes, Kind::WrongType, "no panel can be told here.", ACCEPTED);
        None
    }
}

/// A thing in which nothing is at fault.
pub(super) fn sound<'a, T>(
    at: &At<'a>,
    notes: &mut Notes,
    read: impl FnOnce(&mut Object<'a>, &mut Notes) -> Option<T>,
) -> Option<T> {
    let before = notes.faults.len();
    let mut fields = at.object(notes)?;
    let thing = read(&mut fields, notes);
    fields.close(notes);
    thing.filter(|_| notes.faults.len() <= before)
}

fn published(fields: &mut Object<'_>, notes: &mut Notes) -> Option<PublishedPanel> {
    let [series, rating] = ["series", "rating"].map(|name| fields.required(name, notes, At::text));
    let group = fields.optional("group", notes, At::word);
    let grade = fields.optional("grade", notes, At::word);
    Some(PublishedPanel { series: series?, rating: rating?, group, grade })
}

fn own(fields: &mut Object<'_>, notes: &mut Notes) -> OwnPanel {
    let [across, along] =
        ["across", "along"].map(|name| fields.optional(name, notes, |at, notes| sound(at, notes, capacity)));
    OwnPanel { across, along }
}

pub(super) fn capacity(fields: &mut Object<'_>, notes: &mut Notes) -> Option<Capacity> {
    let [ei, mr, fs] = ["ei", "mr", "fs"].map(|name| fields.required(name, notes, At::number));
    Some(Capacity { ei: ei?, mr: mr?, fs: fs? })
}

fn sections(fields: &mut Object<'_>, notes: &mut Notes) -> Option<SectionPanel> {
    let thickness = fields.required("thickness", notes, At::length);
    let [across, along] =
        ["across", "along"].map(|name| fields.optional(name, notes, |at, notes| sound(at, notes, section)));
    let stresses = fields.required("stresses", notes, |at, notes| sound(at, notes, stresses));
    let mut panel = SectionPanel::new(thickness?, stresses?);
    (panel.across, panel.along) = (across, along);
    Some(panel)
}

fn section(fields: &mut Object<'_>, notes: &mut Notes) -> Option<Section> {
    let [i, ks, ib_q] = ["i", "ks", "ib_q"].map(|name| fields.required(name, notes, At::number));
    Some(Section { i: i?, ks: ks?, ib_q: ib_q? })
}

fn layup(fields: &mut Object<'_>, notes: &mut Notes) -> Option<Layup> {
    let plies = fields.required("plies", notes, |at, notes| at.list(notes, |at, notes| sound(at, notes, ply)));
    let stresses = fields.required("stresses", notes, |at, notes| sound(at, notes, stresses));
    let cross_stiffness = fields.optional("cross_stiffness", notes, At::number);
    let layup = Layup::new(plies?.items, stresses?);
    Some(cross_stiffness.map_or(layup.clone(), |ratio| layup.cross_stiffness(ratio)))
}

pub(super) fn ply(fields: &mut Object<'_>, notes: &mut Notes) -> Option<Ply> {
    let thickness = fields.required("thickness", notes, At::length);
    let grain = fields.required("grain", notes, At::word);
    // As the schema has it, it may be left out and may not be null.
    let stiffness = fields.unless_given("stiffness", 1.0, notes, At::number);
    Some(Ply::new(thickness?, grain?).stiffness(stiffness?))
}

pub(super) fn stresses(fields: &mut Object<'_>, notes: &mut Notes) -> Option<Stresses> {
    let [e, e_shear, fb, fs] = ["e", "e_shear", "fb", "fs"].map(|name| fields.required(name, notes, At::number));
    Some(Stresses { e: e?, e_shear: e_shear?, fb: fb?, fs: fs? })
}
