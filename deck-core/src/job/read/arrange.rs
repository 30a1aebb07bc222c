//! Reads in what manner the boards lie.

use super::Notes;
use super::at::At;
use crate::arrange::ArrangementKind;
use crate::error::Kind;
use crate::job::ArrangeSpec;

pub(super) fn arrange(at: &At<'_>, notes: &mut Notes) -> Option<ArrangeSpec> {
    let mut fields = at.object(notes)?;
    let spec = ArrangeSpec {
        compare: fields.optional("compare", notes, compare),
        build: fields.optional("build", notes, At::word),
        stagger: fields.optional("stagger", notes, At::count),
        block_width: fields.optional("block_width", notes, At::length),
        block_spacing: fields.optional("block_spacing", notes, At::length),
        seams_by_nest: fields.optional("seams_by_nest", notes, At::flag),
    };
    fields.close(notes);
    Some(spec)
}

fn compare(at: &At<'_>, notes: &mut Notes) -> Option<Vec<ArrangementKind>> {
    let before = notes.faults.len();
    let listed = at.list(notes, At::word)?;
    if listed.items.is_empty() && notes.faults.len() == before {
        at.refuse(
            notes,
            Kind::EmptyList,
            "Nothing is to be compared.",
            "Name one arrangement, or leave the field out.",
        );
        return None;
    }
    Some(listed.items)
}
