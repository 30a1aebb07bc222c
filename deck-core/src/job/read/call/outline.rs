//! Reads an outline: as a job file gives it, or as a plan does.

use crate::error::Kind;
use crate::geometry::{Path, Side, polygon};
use crate::job::check::calls;
use crate::job::read::at::At;
use crate::job::read::order::unsaid;
use crate::job::read::{Notes, deck};
use crate::length::{JsonForm, Length, with_json_form};
use crate::outline::{Outline, Rim};
use serde::Deserialize;
use serde_json::Value;

const ACCEPTED: &str = "An outline is a job's \"deck\", or a plan's.";

/// An arc's centre is whole nanometres, and so is what a document says of it: corners lie within this of its circle.
const NEAR: Length = Length::from_nanometres(1_000);

pub(super) fn outline(at: &At<'_>, notes: &mut Notes) -> Option<Outline> {
    // The sides of a plan's outline say what they are; a job's corners do not.
    match at.value.get("outline").filter(|sides| sides.pointer("/0/edge").is_some()) {
        Some(sides) => planned(at, sides, notes),
        None => asked(at, notes),
    }
}

fn asked(at: &At<'_>, notes: &mut Notes) -> Option<Outline> {
    let deck = deck::deck(at, notes)?;
    match with_json_form(JsonForm::Input(notes.unit), || calls::outline(&deck)) {
        Ok(outline) => Some(outline),
        Err(error) => {
            let placed = error.map_pointers(|pointer| Some(format!("{}{pointer}", at.pointer)));
            let news = unsaid(&placed, &notes.faults);
            notes.faults.extend(news);
            None
        }
    }
}

fn planned(at: &At<'_>, sides: &Value, notes: &mut Notes) -> Option<Outline> {
    let read = with_json_form(JsonForm::Number(notes.unit), || Path::<Rim>::deserialize(sides));
    let path = match read.as_ref().map(sound) {
        Ok(Some(path)) => path,
        Ok(None) => {
            at.refuse(notes, Kind::OutlineCrossesItself, "Its sides do not go once around a deck.", ACCEPTED);
            return None;
        }
        Err(error) => {
            at.refuse(notes, Kind::WrongType, format!("This is no outline: {error}."), ACCEPTED);
            return None;
        }
    };
    let made = with_json_form(JsonForm::Input(notes.unit), || Outline::new(path));
    made.map_err(|error| notes.faults.extend(error.faults().map(|fault| fault.clone().at(&at.pointer)))).ok()
}

/// A path that was read and not built, if it goes once around something: its arcs join their corners, and it does not
/// cross itself.
pub(super) fn sound<T: Copy>(path: &Path<T>) -> Option<Path<T>> {
    let joined = path.walk().all(|(side, to)| {
        let Side { from, arc, .. } = side;
        arc.is_none_or(|arc| {
            let off = |distance: Length| (distance - arc.radius).abs() <= NEAR;
            *from != to && arc.radius > Length::ZERO && off(arc.centre.distance(*from)) && off(arc.centre.distance(to))
        })
    });
    let path = (joined && path.sides().len() > 1).then(|| Path::new(path.sides().to_vec()))?;
    (path.doubled_area() > 0 && polygon::is_simple(&path)).then_some(path)
}
