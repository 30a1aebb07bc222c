//! Reads seams as far as panels are cut by them: an answer, a layout, a list of seams, or stations.

use crate::error::Kind;
use crate::job::read::Notes;
use crate::job::read::at::{At, Listed, shown};
use crate::length::Length;
use crate::panels::SeamLine;
use serde_json::Value;

const ACCEPTED: &str = "Seams are a layout, a list of its seams, or a list of stations.";

/// The seams of one layout, and where in the document they stand.
#[derive(Default)]
pub(super) struct Lines {
    pub(super) listed: Listed<SeamLine>,
    pub(super) pointer: String,
    /// Where the last board ends, if that is told with the seams.
    pub(super) finish: Option<Length>,
    /// False where one of them cannot be read.
    pub(super) whole: bool,
}

/// A station is that of a gap's fore edge; seams that say where they end have a gap of their own.
pub(super) fn lines(at: &At<'_>, notes: &mut Notes, gap: Length) -> Option<Lines> {
    match at.value {
        Value::Object(fields) if fields.contains_key("layouts") => best(&field(at, "layouts"), at, notes, gap),
        Value::Object(_) => layout(at, notes, gap),
        Value::Array(items) if items.first().is_some_and(|first| first.get("seams").is_some()) => {
            best(at, at, notes, gap)
        }
        Value::Array(_) => list(at, notes, gap),
        _ => {
            at.refuse(notes, Kind::WrongType, format!("{} is no list of seams.", shown(at.value)), ACCEPTED);
            None
        }
    }
}

/// The value under a field; null where it is not there.
fn field<'a>(at: &At<'a>, name: &str) -> At<'a> {
    At { value: at.value.get(name).unwrap_or(&Value::Null), pointer: format!("{}/{name}", at.pointer) }
}

/// The first of several layouts.
fn best(layouts: &At<'_>, answer: &At<'_>, notes: &mut Notes, gap: Length) -> Option<Lines> {
    if let Some(first) = layouts.value.get(0) {
        return layout(&layouts.item(0, first), notes, gap);
    }
    let reason = answer.value.pointer("/no_layout/reason").and_then(Value::as_str);
    let message = format!("There is no layout. {}", reason.unwrap_or_default());
    layouts.refuse(notes, Kind::EmptyList, message.trim(), "Panels are cut by a layout, or by stations.");
    None
}

fn layout(at: &At<'_>, notes: &mut Notes, gap: Length) -> Option<Lines> {
    let mut fields = at.object(notes)?;
    let seams = fields.required("seams", notes, |at, notes| list(at, notes, gap));
    let finish = fields.optional("finish", notes, At::length);
    Some(Lines { finish, ..seams? })
}

fn list(at: &At<'_>, notes: &mut Notes, gap: Length) -> Option<Lines> {
    let before = notes.faults.len();
    let listed = at.list(notes, |at, notes| line(at, notes, gap))?;
    let whole = notes.faults.len() == before;
    Some(Lines { listed, pointer: at.pointer.clone(), finish: None, whole })
}

/// What else a seam says of itself does not matter here.
fn line(at: &At<'_>, notes: &mut Notes, gap: Length) -> Option<SeamLine> {
    if !at.value.is_object() {
        return at.length(notes).map(|station| SeamLine::new(station, station + gap));
    }
    let mut fields = at.object(notes)?;
    let fore = fields.required("fore", notes, At::length);
    let aft = fields.optional("aft", notes, At::length);
    let member = fields.optional("member", notes, At::count);
    let slant = fields.optional("ends", notes, |at, notes| {
        let mut ends = at.object(notes)?;
        ends.optional("slant", notes, At::length)
    });
    let (fore, member) = (fore?, member.and_then(|member| usize::try_from(member).ok()));
    let line = SeamLine::new(fore, aft.unwrap_or(fore + gap));
    Some(SeamLine { member, ..line }.slanted(slant.unwrap_or_default()))
}
