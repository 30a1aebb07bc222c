//! Reads a call for a continuous beam.

use super::{ACCEPTED, moved, whole};
use crate::error::{Error, Fault};
use crate::job::BeamCall;
use crate::job::read::at::{At, Listed, Object};
use crate::job::read::{Notes, text};
use crate::span::{BeamLoad, BeamLoadKind, BeamProblem};
use serde_json::Value;

pub(in crate::job) fn beam_call(text: &str) -> Result<BeamCall, Error> {
    let (value, twice) = text::parse(text, ACCEPTED)?;
    beam_call_value(&value, twice)
}

/// `faults` are those that were found in parsing.
pub(in crate::job) fn beam_call_value(root: &Value, faults: Vec<Fault>) -> Result<BeamCall, Error> {
    let check = |(problem, loads): &(BeamProblem, Listed<BeamLoad>)| {
        let checked = problem.check(&loads.items);
        checked.map_err(|error| error.map_pointers(|pointer| moved(pointer, "/loads/", &loads.positions)))
    };
    let (unit, (problem, loads)) = whole(root, faults, fields, check)?;
    Ok(BeamCall { unit, ..BeamCall::new(problem, loads.items) })
}

/// None where something of the beam itself is missing: loads cannot be held against it then.
fn fields(fields: &mut Object<'_>, notes: &mut Notes) -> Option<(BeamProblem, Listed<BeamLoad>)> {
    let before = notes.faults.len();
    let spans = fields.required("spans", notes, |at, notes| at.list(notes, At::measure));
    let overhangs = fields.optional("overhangs", notes, |at, notes| at.two(notes, "lengths", At::measure));
    let stiffness = fields.optional("stiffness", notes, At::number);
    let ends = fields.optional("ends", notes, |at, notes| at.two(notes, "words", At::word));
    let sound = notes.faults.len() == before;
    let loads = fields.required("loads", notes, |at, notes| at.list(notes, load)).unwrap_or_default();
    let problem = BeamProblem::new(&spans?.items)
        .overhangs(overhangs.unwrap_or_default())
        .stiffness(stiffness.unwrap_or(1.0))
        .ends(ends.unwrap_or_default());
    sound.then_some((problem, loads))
}

fn load(at: &At<'_>, notes: &mut Notes) -> Option<BeamLoad> {
    let before = notes.faults.len();
    let mut fields = at.object(notes)?;
    let kind: Option<BeamLoadKind> = fields.required("kind", notes, At::word);
    let at = fields.optional("at", notes, At::measure);
    let size = fields.optional("size", notes, At::measure);
    let value = fields.required("value", notes, At::number);
    fields.close(notes);
    let load = BeamLoad { kind: kind?, at, size, value: value? };
    (notes.faults.len() == before).then_some(load)
}
