//! Reads the frame.

use super::Notes;
use super::at::{At, Listed};
use crate::frame::{FrameSpec, MemberSpec, Regular};

/// The frame as far as it could be read.
pub(super) struct Read {
    pub(super) spec: FrameSpec,
    /// Where each of its members stands in the file.
    pub(super) positions: Vec<usize>,
    /// False where members are given but none of them could be read; then nothing more can be said of them.
    pub(super) usable: bool,
}

pub(super) fn frame(at: &At<'_>, notes: &mut Notes) -> Option<Read> {
    let mut fields = at.object(notes)?;
    let mut spec = FrameSpec {
        profile: fields.optional("profile", notes, At::word),
        flange: fields.optional("flange", notes, At::length),
        faces: fields.optional("faces", notes, At::word),
        measured_to: fields.optional("measured_to", notes, At::word),
        wall: fields.optional("wall", notes, At::length),
        from: fields.optional("from", notes, At::word),
        ..FrameSpec::default()
    };
    let given = [fields.has("members"), fields.has("regular")];
    let before = notes.faults.len();
    let members: Listed<MemberSpec> = fields.defaulted("members", notes, |at, notes| at.list(notes, member));
    spec.members = members.items;
    spec.regular = fields.optional("regular", notes, regular);
    let faulty = notes.faults.len() > before;
    fields.close(notes);
    let found = !spec.members.is_empty() || spec.regular.is_some();
    Some(Read { usable: found || !faulty || given == [false; 2], spec, positions: members.positions })
}

fn member(at: &At<'_>, notes: &mut Notes) -> Option<MemberSpec> {
    let mut fields = at.object(notes)?;
    let station = fields.required("station", notes, At::length);
    let mut member = MemberSpec::new(station.unwrap_or_default());
    member.station_port = fields.optional("station_port", notes, At::length);
    member.station_starboard = fields.optional("station_starboard", notes, At::length);
    member.measured_to = fields.optional("measured_to", notes, At::word);
    member.profile = fields.optional("profile", notes, At::word);
    member.flange = fields.optional("flange", notes, At::length);
    member.faces = fields.optional("faces", notes, At::word);
    member.wall = fields.optional("wall", notes, At::length);
    member.port_end = fields.optional("port_end", notes, At::length);
    member.starboard_end = fields.optional("starboard_end", notes, At::length);
    member.condition = fields.defaulted("condition", notes, At::word);
    fields.close(notes);
    station.map(|_| member)
}

fn regular(at: &At<'_>, notes: &mut Notes) -> Option<Regular> {
    let mut fields = at.object(notes)?;
    let first = fields.required("first", notes, At::length);
    let last = fields.required("last", notes, At::length);
    let spacing = fields.required("spacing", notes, At::length);
    fields.close(notes);
    Some(Regular { first: first?, last: last?, spacing: spacing? })
}
