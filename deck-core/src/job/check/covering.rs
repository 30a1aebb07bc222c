//! What is said of the covering, against the deck.

use super::figures::Section;
use super::strip_out::each;
use super::{Parts, unique};
use crate::covering::{Drop, Roll, Traffic};
use crate::error::{Fault, Faults, Kind};
use crate::job::read::places::place;
use crate::job::{AdhesiveKind, AdhesiveSpec};
use crate::length::Length;
use crate::money::Figure;
use crate::outline::Outline;
use crate::published::defaults;

/// The most drops of another boat.
const MOST_DROPS: u32 = 100;

pub(super) fn covering(parts: &Parts<'_>, outline: Option<&Outline>, faults: &mut Faults) {
    let Some((spec, places)) = parts.covering else { return };
    let mut own = Faults::new();
    if spec.rolls.as_ref().is_none_or(Vec::is_empty) {
        let message = "No roll is given.";
        own.push(
            Fault::new(Kind::EmptyList, "", message, "Give the rolls that can be had, one at least.").within("rolls"),
        );
    }
    each(parts, places, "rolls", spec.rolls.as_deref(), &mut own, roll);
    each(parts, places, "traffic", spec.traffic.as_deref(), &mut own, |item, section| traffic(outline, item, section));
    each(parts, places, "other_boats", spec.other_boats.as_deref(), &mut own, other);
    let rolls = spec.rolls.iter().flatten().enumerate();
    unique(rolls.map(|(index, roll)| (place(places, "rolls", index), roll.label.as_str())), "rolls", "label", &mut own);
    let mut check = Section { notation: parts.notation(), faults: &mut own };
    check.not_negative("wrap", spec.wrap);
    check.positive("least_piece", spec.least_piece);
    check.between("psf", spec.psf, 0, 100);
    check.not_negative("off_ply_seams", spec.off_ply_seams);
    narrow_rolls(spec.rolls.as_deref().unwrap_or_default(), spec.least_piece, &mut check);
    if let Some(adhesive) = &spec.adhesive {
        let mut inner = Faults::new();
        glue(adhesive, &mut Section { notation: parts.notation(), faults: &mut inner });
        own.take(inner.finish().map_err(|error| error.within("adhesive")));
    }
    if let Err(error) = own.finish() {
        faults.absorb(error.within("covering"));
    }
}

fn roll(roll: &Roll, section: &mut Section<'_>) {
    section.positive("width", Some(roll.width));
    section.positive("length", Some(roll.length));
    section.positive("sold_by", roll.sold_by);
    section.amount("price", roll.price);
    if let Some(sold_by) = roll.sold_by.filter(|sold_by| *sold_by > roll.length && roll.length > Length::ZERO) {
        let text = section.notation.text(sold_by);
        let message = format!("Sold by {text}, more than the roll is long.");
        let accepted = "It is the roll's length at most.";
        section.refuse(Fault::new(Kind::Conflict, text, message, accepted), "sold_by");
    }
}

/// The narrowest piece is not wider than any roll.
fn narrow_rolls(rolls: &[Roll], least: Option<Length>, section: &mut Section<'_>) {
    let widest = rolls.iter().map(|roll| roll.width).max();
    if let (Some(least), Some(widest)) = (least, widest)
        && least > widest
        && widest > Length::ZERO
    {
        let text = section.notation.text(least);
        let message = format!("A narrowest piece of {text} is wider than any roll.");
        let accepted = format!("It is {} at most.", section.notation.text(widest));
        section.refuse(Fault::new(Kind::Conflict, text, message, accepted), "least_piece");
    }
}

fn traffic(outline: Option<&Outline>, zone: &Traffic, section: &mut Section<'_>) {
    section.positive("depth", Some(zone.depth));
    section.positive("width", Some(zone.width));
    let Some(outline) = outline else { return };
    let sides =
        [("x", zone.x, zone.x + zone.depth, outline.length()), ("y", zone.y, zone.y + zone.width, outline.beam())];
    for (field, from, to, most) in sides {
        if to <= Length::ZERO || from >= most {
            let [from, to, most] = [from, to, most].map(|length| section.notation.text(length));
            let message = format!("A zone from {from} to {to} does not touch the deck.");
            let accepted = format!("The deck goes from 0 to {most}.");
            section.refuse(Fault::new(Kind::ZoneOutside, from, message, accepted), field);
        }
    }
}

fn other(drop: &Drop, section: &mut Section<'_>) {
    section.positive("length", Some(drop.length));
    section.count("count", drop.count, 0, MOST_DROPS);
}

fn glue(spec: &AdhesiveSpec, section: &mut Section<'_>) {
    let above = |section: &mut Section<'_>, field: &str, figure: Option<Figure>, most: i64| {
        if let Some(figure) = figure.filter(|figure| *figure <= Figure::ZERO || *figure > Figure::of(most)) {
            let message = format!("{figure} is out of range.");
            let accepted = format!("A number above 0 and up to {most} is accepted.");
            section.refuse(Fault::new(Kind::OutOfRange, figure.to_string(), message, accepted), field);
        }
    };
    above(section, "coverage_least", spec.coverage_least, 10_000);
    above(section, "coverage_most", spec.coverage_most, 10_000);
    above(section, "can", spec.can, 100);
    above(section, "spread", spec.spread, 1000);
    section.between("wait_minutes", spec.wait_minutes, 0, 1440);
    section.between("set_minutes", spec.set_minutes, 0, 1440);
    let kind = spec.kind.unwrap_or_default();
    let usual =
        if kind == AdhesiveKind::Vinyl { defaults::VINYL_COVERAGE.value } else { defaults::CARPET_COVERAGE.value };
    let least = spec.coverage_least.unwrap_or(Figure::of(i64::from(usual.0)));
    let most = spec.coverage_most.unwrap_or(Figure::of(i64::from(usual.1)));
    if least > most {
        let field = if spec.coverage_most.is_some() { "coverage_most" } else { "coverage_least" };
        let message = format!("At least {least} and at most {most} square feet to the gallon do not go together.");
        let fault =
            Fault::new(Kind::Conflict, format!("{least} and {most}"), message, "The most is not below the least.");
        section.refuse(fault, field);
    }
    times(spec, kind, section);
}

fn times(spec: &AdhesiveSpec, kind: AdhesiveKind, section: &mut Section<'_>) {
    if kind == AdhesiveKind::Vinyl && (spec.wait_minutes.is_none() || spec.set_minutes.is_none()) {
        let message = "No times are known for this glue.";
        let accepted = "Give \"wait_minutes\" and \"set_minutes\" as the can says.";
        section.refuse(Fault::new(Kind::Conflict, "vinyl", message, accepted), "kind");
        return;
    }
    let (wait, set) = defaults::CARPET_MINUTES.value;
    let wait = spec.wait_minutes.unwrap_or(Figure::of(i64::from(wait)));
    let set = spec.set_minutes.unwrap_or(Figure::of(i64::from(set)));
    if wait >= set {
        let field = if spec.set_minutes.is_some() { "set_minutes" } else { "wait_minutes" };
        let message = format!("A glue that waits {wait} minutes and has set after {set} leaves no time to lay.");
        let fault = Fault::new(Kind::Conflict, format!("{wait} and {set}"), message, "It sets after the wait.");
        section.refuse(fault, field);
    }
}
