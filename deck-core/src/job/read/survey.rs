//! Reads a survey: a section of the job, or the arguments of a call.
//!
//! A thing with a fault in it counts as absent, and the survey as a whole with it: readings hold each other in place.

use super::Notes;
use super::at::{At, Object};
use super::panel::sound;
use crate::error::Kind;
use crate::length::Length;
use crate::survey::{Known, OldBoards, Reading, ScaleMark, Side, SurveyMember, SurveySpec, Trace, TracePlace};
use serde::Deserialize;
use serde_json::Value;

/// The words of a reading's kind.
#[derive(Debug, Clone, Copy, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum ReadingKind {
    Distance,
    Tie,
    Station,
    Offset,
    Straight,
    Square,
}

/// The section; none where something in it is at fault.
pub(super) fn survey(at: &At<'_>, notes: &mut Notes) -> Option<SurveySpec> {
    sound(at, notes, |fields, notes| Some(spec(fields, notes)))
}

/// The fields of a survey; those that could not be read are left out.
pub(super) fn spec(fields: &mut Object<'_>, notes: &mut Notes) -> SurveySpec {
    let mut spec = SurveySpec::default();
    let alone = fields.has("old_boards") && !fields.has("readings");
    if !alone && let Some(listed) = fields.required("readings", notes, |at, notes| at.list(notes, reading)) {
        spec.readings = listed.items;
    }
    spec.datum = fields.optional("datum", notes, |at, notes| names(at, notes));
    spec.corners = fields.optional("corners", notes, |at, notes| names(at, notes));
    spec.known = fields.defaulted("known", notes, |at, notes| at.list(notes, known)).items;
    spec.error = fields.optional("error", notes, At::length);
    spec.traces = fields.defaulted("traces", notes, |at, notes| at.list(notes, trace)).items;
    spec.old_boards = fields.optional("old_boards", notes, old_boards);
    spec.outline = fields.optional("outline", notes, |at, notes| Some(at.list(notes, At::text)?.items));
    spec.members = fields.defaulted("members", notes, |at, notes| at.list(notes, member)).items;
    spec.lie = fields.optional("lie", notes, At::word);
    spec
}

/// A list of so many names.
fn names<const N: usize>(at: &At<'_>, notes: &mut Notes) -> Option<[String; N]> {
    let count = at.value.as_array().map(Vec::len);
    if count != Some(N) {
        let accepted = format!("It is a list of {N} names of points.");
        at.refuse(notes, Kind::WrongType, format!("This is no list of {N} names."), &accepted);
        return None;
    }
    let before = notes.faults.len();
    let listed = at.list(notes, At::text)?;
    if notes.faults.len() > before { None } else { listed.items.try_into().ok() }
}

/// Every field that a reading may have; which of them belong to it, its kind says.
struct Fields {
    name: Option<String>,
    error: Option<Length>,
    of: Option<String>,
    at: Option<String>,
    between: Option<[String; 2]>,
    from: Option<[String; 2]>,
    along: Option<[String; 2]>,
    points: Option<Vec<String>>,
    reading: Option<Length>,
    readings: Option<[Length; 2]>,
    station: Option<Length>,
    side: Option<Side>,
}

impl ReadingKind {
    /// The fields that it must have, and those that it may have beside `name` and `error`.
    fn fields(self) -> (&'static [&'static str], &'static [&'static str]) {
        match self {
            ReadingKind::Distance => (&["between", "reading"], &[]),
            ReadingKind::Tie => (&["of", "from", "readings"], &["side"]),
            ReadingKind::Station => (&["of", "reading"], &["along"]),
            ReadingKind::Offset => (&["of", "reading"], &["along", "station"]),
            ReadingKind::Straight => (&["points"], &[]),
            ReadingKind::Square => (&["at", "between"], &[]),
        }
    }
}

const ALL: [&str; 10] = ["of", "at", "between", "from", "along", "points", "reading", "readings", "station", "side"];

fn reading(at: &At<'_>, notes: &mut Notes) -> Option<Reading> {
    let before = notes.faults.len();
    let mut fields = at.object(notes)?;
    let kind: Option<ReadingKind> = fields.required("kind", notes, At::word);
    if let Some(kind) = kind {
        let (required, allowed) = kind.fields();
        for name in ALL {
            let (is_there, is_required) = (fields.has(name), required.contains(&name));
            if is_required && !is_there {
                fields.missing(name, notes, format!("\"{name}\" is required."), "It has no default.");
            } else if is_there && !is_required && !allowed.contains(&name) {
                let message = format!("A reading of this kind has no \"{name}\".");
                fields.conflict(notes, ["kind", name], &message);
            }
        }
    }
    let given = given(&mut fields, notes);
    fields.close(notes);
    of_kind(kind?, given).filter(|_| notes.faults.len() == before)
}

fn given(fields: &mut Object<'_>, notes: &mut Notes) -> Fields {
    Fields {
        name: fields.optional("name", notes, At::text),
        error: fields.optional("error", notes, At::length),
        of: there(fields, "of", notes, At::text),
        at: there(fields, "at", notes, At::text),
        between: there(fields, "between", notes, |at, notes| names(at, notes)),
        from: there(fields, "from", notes, |at, notes| names(at, notes)),
        along: fields.optional("along", notes, |at, notes| names(at, notes)),
        points: there(fields, "points", notes, |at, notes| at.list(notes, At::text)).map(|listed| listed.items),
        reading: there(fields, "reading", notes, At::length),
        readings: there(fields, "readings", notes, |at, notes| at.two(notes, "lengths", At::length)),
        station: fields.optional("station", notes, At::length),
        side: fields.optional("side", notes, At::word),
    }
}

/// A field that is read where it is there, null being no value.
fn there<'a, T>(
    fields: &mut Object<'a>,
    name: &'static str,
    notes: &mut Notes,
    read: impl FnOnce(&At<'a>, &mut Notes) -> Option<T>,
) -> Option<T> {
    fields.unless_given(name, None, notes, |at, notes| read(at, notes).map(Some))?
}

fn of_kind(kind: ReadingKind, given: Fields) -> Option<Reading> {
    let (name, error) = (given.name, given.error);
    Some(match kind {
        ReadingKind::Distance => Reading::Distance { name, between: given.between?, reading: given.reading?, error },
        ReadingKind::Tie => {
            let side = given.side;
            Reading::Tie { name, of: given.of?, from: given.from?, readings: given.readings?, side, error }
        }
        ReadingKind::Station => {
            Reading::Station { name, of: given.of?, along: given.along, reading: given.reading?, error }
        }
        ReadingKind::Offset => {
            let (along, station) = (given.along, given.station);
            Reading::Offset { name, of: given.of?, along, station, reading: given.reading?, error }
        }
        ReadingKind::Straight => Reading::Straight { name, points: given.points?, error },
        ReadingKind::Square => Reading::Square { name, at: given.at?, between: given.between?, error },
    })
}

fn known(at: &At<'_>, notes: &mut Notes) -> Option<Known> {
    let mut fields = at.object(notes)?;
    let point = fields.required("point", notes, At::text);
    let x = fields.required("x", notes, At::length);
    let y = fields.required("y", notes, At::length);
    fields.close(notes);
    Some(Known::new(point?, x?, y?))
}

fn member(at: &At<'_>, notes: &mut Notes) -> Option<SurveyMember> {
    match at.value {
        Value::String(name) => Some(SurveyMember::Point(name.clone())),
        Value::Array(_) => names(at, notes).map(SurveyMember::Ends),
        _ => {
            let accepted = "It is the name of a point, or a list of the names of its port and its starboard end.";
            at.refuse(notes, Kind::WrongType, "This names no member.", accepted);
            None
        }
    }
}

fn trace(at: &At<'_>, notes: &mut Notes) -> Option<Trace> {
    let mut fields = at.object(notes)?;
    let name = fields.required("name", notes, At::text);
    let points = fields.required("points", notes, |at, notes| at.list(notes, At::pair));
    let scale = fields.defaulted("scale", notes, |at, notes| at.list(notes, mark)).items;
    let places = fields.defaulted("at", notes, |at, notes| at.list(notes, place)).items;
    let flipped = fields.defaulted("flipped", notes, At::flag);
    let tolerance = fields.optional("tolerance", notes, At::length);
    fields.close(notes);
    let mut trace = Trace::new(name?, points?.items).scale(scale).at(places).flipped(flipped);
    trace.tolerance = tolerance;
    Some(trace)
}

fn mark(at: &At<'_>, notes: &mut Notes) -> Option<ScaleMark> {
    let mut fields = at.object(notes)?;
    let from = fields.required("from", notes, At::pair);
    let to = fields.required("to", notes, At::pair);
    let is = fields.required("is", notes, At::length);
    fields.close(notes);
    Some(ScaleMark { from: from?, to: to?, is: is? })
}

fn place(at: &At<'_>, notes: &mut Notes) -> Option<TracePlace> {
    let mut fields = at.object(notes)?;
    let point = fields.required("point", notes, At::text);
    let trace = fields.required("trace", notes, At::pair);
    fields.close(notes);
    Some(TracePlace { point: point?, trace: trace? })
}

fn old_boards(at: &At<'_>, notes: &mut Notes) -> Option<OldBoards> {
    let mut fields = at.object(notes)?;
    let widths = fields.required("widths", notes, |at, notes| at.list(notes, At::length));
    let mut boards = OldBoards::new(widths.map(|listed| listed.items).unwrap_or_default());
    boards.start = fields.optional("start", notes, At::length);
    boards.gap = fields.optional("gap", notes, At::length);
    boards.rows = fields.defaulted("rows", notes, |at, notes| at.list(notes, At::length)).items;
    boards.members = fields.defaulted("members", notes, |at, notes| at.list(notes, At::length)).items;
    boards.tolerance = fields.optional("tolerance", notes, At::length);
    boards.flange = fields.optional("flange", notes, At::length);
    fields.close(notes);
    Some(boards)
}
