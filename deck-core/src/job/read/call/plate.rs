//! Reads a call for an orthotropic plate.

use super::{ACCEPTED, moved, whole};
use crate::error::{Error, Fault};
use crate::job::PlateCall;
use crate::job::read::at::{At, Listed, Object};
use crate::job::read::{Notes, text};
use crate::span::{Place, PlateLoad, PlateLoadKind, PlateProblem, PlateSupport, Rigidity};
use serde::Deserialize;
use serde_json::Value;

pub(in crate::job) fn plate_call(text: &str) -> Result<PlateCall, Error> {
    let (value, twice) = text::parse(text, ACCEPTED)?;
    plate_call_value(&value, twice)
}

/// `faults` are those that were found in parsing.
pub(in crate::job) fn plate_call_value(root: &Value, faults: Vec<Fault>) -> Result<PlateCall, Error> {
    let check = |(problem, loads): &(PlateProblem, Listed<PlateLoad>)| {
        let checked = problem.check(&loads.items);
        checked.map_err(|error| error.map_pointers(|pointer| moved(pointer, "/loads/", &loads.positions)))
    };
    let (unit, (problem, loads)) = whole(root, faults, fields, check)?;
    Ok(PlateCall { unit, ..PlateCall::new(problem, loads.items) })
}

/// None where something of the plate itself is missing: loads cannot be held against it then.
fn fields(fields: &mut Object<'_>, notes: &mut Notes) -> Option<(PlateProblem, Listed<PlateLoad>)> {
    let before = notes.faults.len();
    let [length, width] = ["length", "width"].map(|name| fields.required(name, notes, At::measure));
    let [dx, dy, torsion] = ["dx", "dy", "torsion"].map(|name| fields.required(name, notes, At::number));
    let poisson = fields.optional("poisson", notes, |at, notes| at.two(notes, "numbers", At::number));
    let supports = fields.required("supports", notes, |at, notes| at.list(notes, support));
    let mesh = fields.optional("mesh", notes, At::measure);
    let sound = notes.faults.len() == before;
    let loads = fields.required("loads", notes, |at, notes| at.list(notes, load)).unwrap_or_default();
    let rigidity = Rigidity::new(dx?, dy?, torsion?).poisson(poisson.unwrap_or_default());
    let mut problem = PlateProblem::new(length?, width?, rigidity, &supports?.items);
    problem.mesh = mesh;
    sound.then_some((problem, loads))
}

/// The sorts of [`Place`].
#[derive(Deserialize)]
#[serde(rename_all = "kebab-case")]
enum Sort {
    Across,
    Along,
    Point,
}

fn support(at: &At<'_>, notes: &mut Notes) -> Option<PlateSupport> {
    let mut fields = at.object(notes)?;
    let sort = fields.required("kind", notes, At::word);
    let clamped = fields.defaulted("clamped", notes, At::flag);
    let place = match sort {
        Some(Sort::Across) => {
            let x = fields.required("x", notes, At::measure);
            let between = fields.optional("between", notes, lengths);
            x.map(|x| Place::Across { x, between })
        }
        Some(Sort::Along) => {
            let y = fields.required("y", notes, At::measure);
            let between = fields.optional("between", notes, lengths);
            y.map(|y| Place::Along { y, between })
        }
        Some(Sort::Point) => fields.required("at", notes, lengths).map(|at| Place::Point { at }),
        // Which fields it has hangs on the kind.
        None => return None,
    };
    fields.close(notes);
    Some(PlateSupport::at(place?, clamped))
}

fn lengths(at: &At<'_>, notes: &mut Notes) -> Option<[f64; 2]> {
    at.two(notes, "lengths", At::measure)
}

fn load(at: &At<'_>, notes: &mut Notes) -> Option<PlateLoad> {
    let before = notes.faults.len();
    let mut fields = at.object(notes)?;
    let kind: Option<PlateLoadKind> = fields.required("kind", notes, At::word);
    let at = fields.optional("at", notes, lengths);
    let size = fields.optional("size", notes, lengths);
    let value = fields.required("value", notes, At::number);
    fields.close(notes);
    let load = PlateLoad { kind: kind?, at, size, value: value? };
    (notes.faults.len() == before).then_some(load)
}
