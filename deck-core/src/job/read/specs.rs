//! Reads the settings.

use super::Notes;
use super::at::At;
use crate::job::{ExtraPart, FasteningSpec, SawSpec, ShopSpec};

pub(super) fn fastening(at: &At<'_>, notes: &mut Notes) -> Option<FasteningSpec> {
    let mut fields = at.object(notes)?;
    let spec = FasteningSpec {
        kind: fields.optional("kind", notes, At::text),
        diameter: fields.optional("diameter", notes, At::length),
        length: fields.optional("length", notes, At::length),
        threads_per_inch: fields.optional("threads_per_inch", notes, At::count),
        drill_point: fields.optional("drill_point", notes, At::length),
        edge_spacing: fields.optional("edge_spacing", notes, At::length),
        field_spacing: fields.optional("field_spacing", notes, At::length),
        edge_distance: fields.optional("edge_distance", notes, At::length),
        edge_distance_metal: fields.optional("edge_distance_metal", notes, At::length),
        end_distance: fields.optional("end_distance", notes, At::length),
        stagger: fields.optional("stagger", notes, At::flag),
        old_hole_clear: fields.optional("old_hole_clear", notes, At::number),
        reuse_old_holes: fields.optional("reuse_old_holes", notes, At::flag),
        spares_percent: fields.optional("spares_percent", notes, At::count),
        per_box: fields.optional("box", notes, At::count),
    };
    fields.close(notes);
    Some(spec)
}

pub(super) fn saw(at: &At<'_>, notes: &mut Notes) -> Option<SawSpec> {
    let mut fields = at.object(notes)?;
    let spec = SawSpec {
        kerf: fields.optional("kerf", notes, At::length),
        trim: fields.optional("trim", notes, At::length),
        stages: fields.optional("stages", notes, At::small_count),
        first: fields.optional("first", notes, At::word),
        keep: fields.optional("keep", notes, At::pair),
        face: fields.optional("face", notes, At::word),
    };
    fields.close(notes);
    Some(spec)
}

pub(super) fn shop(at: &At<'_>, notes: &mut Notes) -> Option<ShopSpec> {
    let mut fields = at.object(notes)?;
    let spec = ShopSpec {
        fractions: fields.optional("fractions", notes, At::count),
        feet: fields.optional("feet", notes, At::flag),
        least_bearing: fields.optional("least_bearing", notes, At::length),
        preferred_bearing: fields.optional("preferred_bearing", notes, At::length),
        least_panel_width: fields.optional("least_panel_width", notes, At::length),
        preferred_panel_width: fields.optional("preferred_panel_width", notes, At::length),
        preferred_supports: fields.optional("preferred_supports", notes, At::count),
        overhang: fields.optional("overhang", notes, At::length),
        side_overhang: fields.optional("side_overhang", notes, At::length),
        layouts: fields.optional("layouts", notes, At::count),
        spare_sheets: fields.optional("spare_sheets", notes, At::count),
        sealer_coats: fields.optional("sealer_coats", notes, At::count),
        edge_sealer_coverage: fields.optional("edge_sealer_coverage", notes, At::length),
        tape_width: fields.optional("tape_width", notes, At::length),
        tape_thickness: fields.optional("tape_thickness", notes, At::length),
        tape_roll: fields.optional("tape_roll", notes, At::length),
        barrier: fields.optional("barrier", notes, At::flag),
        clearance: fields.optional("clearance", notes, At::length),
        paper: fields.optional("paper", notes, At::word),
    };
    fields.close(notes);
    Some(spec)
}

pub(super) fn extra_part(at: &At<'_>, notes: &mut Notes) -> Option<ExtraPart> {
    let mut fields = at.object(notes)?;
    let label = fields.required("label", notes, At::text);
    let length = fields.required("length", notes, At::length);
    let width = fields.required("width", notes, At::length);
    let count = fields.optional("count", notes, At::count);
    let grain = fields.defaulted("grain", notes, At::word);
    let layers = fields.optional("layers", notes, At::count);
    fields.sizes(notes, &[("length", length), ("width", width)]);
    fields.close(notes);
    let mut part = ExtraPart::new(label?, length?, width?).grain(grain);
    (part.count, part.layers) = (count, layers);
    Some(part)
}
