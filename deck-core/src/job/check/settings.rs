//! The settings that are given, on their own and against each other. Defaults need no check.

use super::{Listing, Parts};
use crate::error::{Fault, Faults, Kind};
use crate::job::settings::asked::FRACTIONS;
use crate::job::{FasteningSpec, OpeningRulesSpec, SawSpec, ShopSpec};
use crate::length::{Length, Notation};
use crate::outline::Outline;
use crate::stock::{Saw, Sheet};

pub(super) fn settings(parts: &Parts<'_>, outline: Option<&Outline>, faults: &mut Faults) {
    let check = &mut Check { notation: parts.notation(), faults };
    check.not_negative("/gap", parts.gap);
    check.not_negative("/end_tolerance", parts.end_tolerance);
    if let Some(spec) = parts.narrow_flange {
        check.positive("/narrow_flange/angle_leg", spec.angle_leg);
        check.spacing("/narrow_flange/spacing", spec.spacing);
    }
    fastening(parts.fastening, outline, check);
    saw(parts.saw, parts.stock, check);
    shop(parts.shop, check);
    if let Some(rules) = parts.opening_rules {
        opening_rules(rules, check);
    }
}

fn opening_rules(spec: &OpeningRulesSpec, check: &mut Check<'_>) {
    check.not_negative("/opening_rules/from_seam", spec.from_seam);
    check.not_negative("/opening_rules/from_seam_preferred", spec.from_seam_preferred);
    check.ordered("/opening_rules/from_seam_preferred", "distance", spec.from_seam, spec.from_seam_preferred);
    check.not_negative("/opening_rules/from_edge", spec.from_edge);
    check.not_negative("/opening_rules/from_flange", spec.from_flange);
    check.not_negative("/opening_rules/corner_radius", spec.corner_radius);
    check.not_negative("/opening_rules/corner_radius_preferred", spec.corner_radius_preferred);
    check.ordered("/opening_rules/corner_radius_preferred", "radius", spec.corner_radius, spec.corner_radius_preferred);
    check.part("/opening_rules/apart", spec.apart, 20.0);
    check.positive("/opening_rules/frame_width", spec.frame_width);
}

/// The checks that return, each with the pointer of its field.
struct Check<'f> {
    notation: Notation,
    faults: &'f mut Faults,
}

impl Check<'_> {
    fn refuse(&mut self, kind: Kind, pointer: &str, value: impl Into<String>, message: String, accepted: &str) {
        self.faults.push(Fault::new(kind, value, message, accepted).at(pointer));
    }

    fn not_negative(&mut self, pointer: &str, length: Option<Length>) {
        if let Some(length) = length.filter(|length| length.is_negative()) {
            let text = self.notation.text(length);
            self.refuse(
                Kind::LengthNegative,
                pointer,
                &text,
                format!("{text} is below zero."),
                "Zero or more is accepted.",
            );
        }
    }

    fn positive(&mut self, pointer: &str, length: Option<Length>) {
        if length.is_some_and(Length::is_zero) {
            let text = self.notation.text(Length::ZERO);
            self.refuse(Kind::LengthZero, pointer, text, "It is zero.".into(), "More than zero is accepted.");
        }
        self.not_negative(pointer, length);
    }

    fn spacing(&mut self, pointer: &str, length: Option<Length>) {
        if let Some(length) = length.filter(|length| *length <= Length::ZERO) {
            let text = self.notation.text(length);
            let message = format!("Fasteners {text} apart cannot be laid out.");
            self.refuse(Kind::FastenerSpacing, pointer, text, message, "A spacing is above zero.");
        }
    }

    fn within(&mut self, pointer: &str, count: Option<u32>, least: u32, most: u32) {
        if let Some(count) = count.filter(|count| !(least..=most).contains(count)) {
            let message = format!("{count} is out of range.");
            let accepted = format!("It is a whole number from {least} to {most}.");
            self.refuse(Kind::OutOfRange, pointer, count.to_string(), message, &accepted);
        }
    }

    /// A number from zero to a greatest.
    fn part(&mut self, pointer: &str, number: Option<f64>, most: f64) {
        if let Some(number) = number.filter(|number| !(0.0..=most).contains(number)) {
            let accepted = format!("It is a number from 0 to {most}.");
            self.refuse(Kind::OutOfRange, pointer, number.to_string(), format!("{number} is out of range."), &accepted);
        }
    }

    /// Two settings of which the second is not below the first.
    fn ordered(&mut self, pointer: &str, what: &str, least: Option<Length>, preferred: Option<Length>) {
        if let (Some(least), Some(preferred)) = (least, preferred)
            && preferred < least
        {
            let (least, text) = (self.notation.text(least), self.notation.text(preferred));
            let message = format!("A preferred {what} of {text} is below the least, {least}.");
            self.refuse(Kind::Conflict, pointer, text, message, "What is preferred is not below the least.");
        }
    }
}

fn fastening(spec: &FasteningSpec, outline: Option<&Outline>, check: &mut Check<'_>) {
    check.positive("/fastening/diameter", spec.diameter);
    check.positive("/fastening/length", spec.length);
    check.within("/fastening/threads_per_inch", spec.threads_per_inch, 1, 100);
    check.not_negative("/fastening/drill_point", spec.drill_point);
    check.spacing("/fastening/edge_spacing", spec.edge_spacing);
    check.spacing("/fastening/field_spacing", spec.field_spacing);
    check.not_negative("/fastening/edge_distance", spec.edge_distance);
    check.not_negative("/fastening/edge_distance_metal", spec.edge_distance_metal);
    check.not_negative("/fastening/end_distance", spec.end_distance);
    check.part("/fastening/old_hole_clear", spec.old_hole_clear, 20.0);
    check.within("/fastening/spares_percent", spec.spares_percent, 0, 100);
    check.within("/fastening/box", spec.per_box, 1, u32::MAX);
    let whole = spec.length.filter(|length| *length > Length::ZERO);
    for (pointer, what, part) in [
        ("/fastening/diameter", "diameter", spec.diameter),
        ("/fastening/drill_point", "drill point", spec.drill_point),
    ] {
        if let (Some(whole), Some(part)) = (whole, part)
            && part >= whole
        {
            let (whole, part) = (check.notation.text(whole), check.notation.text(part));
            let message = format!("A {what} of {part} does not go with a fastener {whole} long.");
            check.refuse(Kind::FastenerSize, pointer, part, message, "It is less than the fastener's length.");
        }
    }
    if let (Some(end), Some(outline)) = (spec.end_distance, outline)
        && end * 2 >= outline.beam()
    {
        let (end, beam) = (check.notation.text(end), check.notation.text(outline.beam()));
        let message = format!("Rows that start and end {end} from the board's ends do not fit a beam of {beam}.");
        check.refuse(Kind::FastenerSpacing, "/fastening/end_distance", end, message, "It is less than half the beam.");
    }
}

fn saw(spec: &SawSpec, stock: Option<Listing<'_, Sheet>>, check: &mut Check<'_>) {
    let saw = Saw {
        kerf: spec.kerf.unwrap_or_default(),
        trim: spec.trim.unwrap_or_default(),
        stages: spec.stages,
        first: spec.first,
        keep: spec.keep,
    };
    check.faults.take(saw.check().map_err(|error| error.within("saw")));
    let sides = |sheet: &Sheet| sheet.size().0.min(sheet.size().1);
    let smallest = stock.and_then(|stock| stock.items.iter().min_by_key(|sheet| sides(sheet)));
    let Some(sheet) = smallest.filter(|sheet| sides(sheet) > Length::ZERO) else { return };
    let both = [
        ("/saw/trim", "trim", "both edges of ", saw.trim, saw.trim * 2),
        ("/saw/kerf", "kerf", "", saw.kerf, saw.kerf),
    ];
    for (pointer, what, of, size, taken) in both {
        if taken >= sides(sheet) {
            let (size, side) = (check.notation.text(size), check.notation.text(sides(sheet)));
            let message = format!("A {what} of {size} off {of}\"{}\", {side} across, leaves nothing.", sheet.label);
            check.refuse(Kind::SawTrimTooLarge, pointer, size, message, "Something is left of each sheet.");
        }
    }
}

fn shop(spec: &ShopSpec, check: &mut Check<'_>) {
    if let Some(finest) = spec.fractions.filter(|finest| !FRACTIONS.contains(finest)) {
        let message = format!("{finest} is no fraction on a tape.");
        check.refuse(Kind::OutOfRange, "/shop/fractions", finest.to_string(), message, "It is 2, 4, 8, 16, 32 or 64.");
    }
    check.not_negative("/shop/least_bearing", spec.least_bearing);
    check.not_negative("/shop/preferred_bearing", spec.preferred_bearing);
    check.ordered("/shop/preferred_bearing", "bearing", spec.least_bearing, spec.preferred_bearing);
    check.not_negative("/shop/least_panel_width", spec.least_panel_width);
    check.not_negative("/shop/preferred_panel_width", spec.preferred_panel_width);
    let (least, preferred) = (spec.least_panel_width, spec.preferred_panel_width);
    check.ordered("/shop/preferred_panel_width", "width", least, preferred);
    check.within("/shop/preferred_supports", spec.preferred_supports, 2, 20);
    check.not_negative("/shop/overhang", spec.overhang);
    check.not_negative("/shop/side_overhang", spec.side_overhang);
    check.within("/shop/layouts", spec.layouts, 1, 100);
    check.within("/shop/spare_sheets", spec.spare_sheets, 0, 1000);
    check.within("/shop/sealer_coats", spec.sealer_coats, 0, 10);
    check.positive("/shop/edge_sealer_coverage", spec.edge_sealer_coverage);
    check.positive("/shop/tape_width", spec.tape_width);
    check.not_negative("/shop/tape_thickness", spec.tape_thickness);
    check.positive("/shop/tape_roll", spec.tape_roll);
    check.not_negative("/shop/clearance", spec.clearance);
}
