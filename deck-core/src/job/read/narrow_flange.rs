//! Reads what narrow flanges are mended with.

use super::Notes;
use super::at::At;
use crate::job::NarrowFlangeSpec;

pub(super) fn narrow_flange(at: &At<'_>, notes: &mut Notes) -> Option<NarrowFlangeSpec> {
    let mut fields = at.object(notes)?;
    let spec = NarrowFlangeSpec {
        angle_leg: fields.optional("angle_leg", notes, At::length),
        spacing: fields.optional("spacing", notes, At::length),
    };
    fields.close(notes);
    Some(spec)
}
