//! What is said of strength, on its own and against the fastening.

use super::{Parts, too_many, unique};
use crate::error::{Error, Fault, Faults, Kind};
use crate::job::{ForceSpec, HoldSpec, LoadSpec, PanelSpec, PointPlace, PointSpec};
use crate::length::Length;
use crate::outline::Outline;
use crate::published::defaults;
use crate::span::hold::{Metal, Screw};
use crate::span::{Axis, Load, SpanOptions, capacity};

/// Greatest force, pounds and newtons; see the schema.
const MOST_POUNDS: f64 = 1e6;
const MOST_NEWTONS: f64 = 4e6;
const MOST_KILOPASCALS: f64 = 4000.0;
const MOST_PSF: f64 = 1e5;

pub(super) fn span(parts: &Parts<'_>, outline: Option<&Outline>, faults: &mut Faults) {
    let mut own = Faults::new();
    let spec = parts.span;
    if let Some(panel) = &spec.panel {
        own.take(check_panel(panel).map_err(|error| error.within("panel")));
    }
    own.take(service(parts));
    if let Some(load) = &spec.load {
        own.take(check_load(load).map_err(|error| error.within("load")));
    }
    if let Some(points) = &spec.points {
        check_points(parts, outline, points, &mut own);
    }
    if let Some(fasteners) = &spec.fasteners {
        own.take(check_fasteners(parts, fasteners).map_err(|error| error.within("fasteners")));
    }
    if let Err(error) = own.finish() {
        faults.absorb(error.within("span"));
    }
    if spec.fasteners.is_some() {
        threads(parts, faults);
    }
}

fn missing(field: &str, message: &str, accepted: &str) -> Fault {
    Fault::new(Kind::MissingField, "", message, accepted).within(field)
}

/// A number that lies above zero and not above a most; NaN does not.
fn positive(value: Option<f64>, most: f64, field: &str, faults: &mut Faults) {
    if let Some(value) = value.filter(|value| !(*value > 0.0 && *value <= most)) {
        let message = format!("{value} is out of range.");
        let accepted = format!("A number above 0 and up to {most} is accepted.");
        faults.push(Fault::new(Kind::OutOfRange, value.to_string(), message, accepted).within(field));
    }
}

/// Refuses all but one of these fields; points to the last that is there.
fn one_of(given: &[(&str, bool)], what: &str, faults: &mut Faults) {
    let names: Vec<&str> = given.iter().filter(|(_, given)| *given).map(|(name, _)| *name).collect();
    if let [first, .., last] = names[..] {
        let message = format!("{what} is given both by \"{first}\" and by \"{last}\".");
        let value = format!("{first} and {last}");
        faults.push(Fault::new(Kind::Conflict, value, message, "Give one of the two.").within(last));
    }
}

fn check_panel(panel: &PanelSpec) -> Result<(), Error> {
    let mut faults = Faults::new();
    let published = [panel.series.is_some(), panel.rating.is_some(), panel.group.is_some(), panel.grade.is_some()];
    let plies = [panel.plies.is_some(), panel.stresses.is_some(), panel.cross_stiffness.is_some()];
    let own = [("across", panel.across.is_some()), ("along", panel.along.is_some())];
    let kinds = [
        (if panel.series.is_some() { "series" } else { "rating" }, published.contains(&true)),
        own.into_iter().find(|(_, given)| *given).unwrap_or(own[0]),
        (if panel.plies.is_some() { "plies" } else { "stresses" }, plies.contains(&true)),
    ];
    one_of(&kinds, "The panel", &mut faults);
    faults.finish()?;
    let Some(structural) = panel.structural() else { return Err(incomplete(panel, published.contains(&true)).into()) };
    let options = SpanOptions::new();
    for axis in Axis::BOTH {
        // Both ways tell the same of the panel; what is wrong one way only comes out on the second.
        capacity(&structural, axis, &options)?;
    }
    Ok(())
}

fn incomplete(panel: &PanelSpec, published: bool) -> Fault {
    let kinds = "A panel is {\"series\", \"rating\"}, the user's own {\"ei\", \"mr\", \"fs\"} under \"across\" or \"along\", \
        or {\"plies\", \"stresses\"}.";
    let plies = panel.plies.is_some() || panel.stresses.is_some() || panel.cross_stiffness.is_some();
    let field = match (published, plies) {
        (true, _) if panel.series.is_none() => "series",
        (true, _) => "rating",
        (_, true) if panel.plies.is_none() => "plies",
        (_, true) => "stresses",
        _ => "series",
    };
    missing(field, "The panel is not told.", kinds)
}

fn service(parts: &Parts<'_>) -> Result<(), Error> {
    let (mut options, spec) = (SpanOptions::new(), parts.span);
    options.deflection = spec.deflection.unwrap_or(options.deflection);
    options.duration = spec.duration.unwrap_or(options.duration);
    options.check()
}

fn check_load(load: &LoadSpec) -> Result<(), Error> {
    let mut faults = Faults::new();
    let given = [("psf", load.psf.is_some()), ("kpa", load.kpa.is_some()), ("preset", load.preset.is_some())];
    one_of(&given, "The load", &mut faults);
    if given.iter().all(|(_, given)| !given) {
        let accepted = "Give \"psf\", \"kpa\" or \"preset\".";
        faults.push(missing("psf", "The load has no figure.", accepted));
    }
    positive(load.psf, MOST_PSF, "psf", &mut faults);
    positive(load.kpa, MOST_KILOPASCALS, "kpa", &mut faults);
    if let Some(preset) = &load.preset {
        faults.take(Load::preset(preset).map_err(|error| error.within("preset")));
    }
    faults.finish()
}

fn check_points(parts: &Parts<'_>, outline: Option<&Outline>, points: &[PointSpec], faults: &mut Faults) {
    if too_many(points.len(), "point loads", "points", faults) {
        return;
    }
    let places = || parts.point_places.iter().copied();
    unique(
        places().zip(points.iter().map(PointSpec::title)).filter(|(_, name)| !name.is_empty()),
        "points",
        "name",
        faults,
    );
    for (place, point) in places().zip(points) {
        faults.take(check_point(parts, outline, point).map_err(|error| error.within(place).within("points")));
    }
}

fn check_point(parts: &Parts<'_>, outline: Option<&Outline>, point: &PointSpec) -> Result<(), Error> {
    let mut faults = Faults::new();
    if point.preset.is_none() {
        let accepted = "Give it, or a \"preset\": \"heel\", \"pedestal\" or \"jack\".";
        let fields =
            [("name", point.name.is_some()), ("length", point.length.is_some()), ("width", point.width.is_some())];
        for (field, _) in fields.iter().filter(|(_, given)| !given) {
            faults.push(missing(field, &format!("The load has no {field}."), accepted));
        }
    }
    for (field, side) in [("length", point.length), ("width", point.width)] {
        size(parts, side, field, &mut faults);
    }
    if let Some(force) = &point.force {
        faults.take(check_force(force).map_err(|error| error.within("force")));
    }
    if let Some(place) = &point.at {
        faults.take(check_place(parts, outline, place).map_err(|error| error.within("at")));
    }
    faults.finish()
}

/// Both distances, within the deck's length and beam; whether a board lies there the plan tells.
fn check_place(parts: &Parts<'_>, outline: Option<&Outline>, place: &PointPlace) -> Result<(), Error> {
    let mut faults = Faults::new();
    let deck = outline.map(|outline| (outline.length(), outline.beam())).unzip();
    let sides = [("station", place.station, deck.0), ("from_port", place.from_port, deck.1)];
    for (field, at, most) in sides {
        let Some(at) = at else {
            let accepted = "Give \"station\" and \"from_port\": where its middle stands.";
            faults.push(missing(field, &format!("The place has no {field}."), accepted));
            continue;
        };
        if at < Length::ZERO || most.is_some_and(|most| at > most) {
            let text = parts.notation().text(at);
            let most = most.map_or_else(|| "the deck's end".into(), |most| parts.notation().text(most));
            let message = format!("{text} is not on the deck.");
            let accepted = format!("0 to {most} is accepted.");
            faults.push(Fault::new(Kind::Conflict, text, message, accepted).within(field));
        }
    }
    faults.finish()
}

fn size(parts: &Parts<'_>, side: Option<Length>, field: &str, faults: &mut Faults) {
    if let Some(side) = side.filter(|side| *side <= Length::ZERO) {
        let kind = if side.is_zero() { Kind::LengthZero } else { Kind::LengthNegative };
        let text = parts.notation().text(side);
        let message = format!("{text} is no size.");
        faults.push(Fault::new(kind, text, message, "More than zero is accepted.").within(field));
    }
}

fn check_force(force: &ForceSpec) -> Result<(), Error> {
    let mut faults = Faults::new();
    let given = [("pounds", force.pounds.is_some()), ("newtons", force.newtons.is_some())];
    one_of(&given, "The force", &mut faults);
    if given.iter().all(|(_, given)| !given) {
        faults.push(missing("pounds", "The force has no figure.", "Give \"pounds\" or \"newtons\"."));
    }
    positive(force.pounds, MOST_POUNDS, "pounds", &mut faults);
    positive(force.newtons, MOST_NEWTONS, "newtons", &mut faults);
    faults.finish()
}

fn check_fasteners(parts: &Parts<'_>, spec: &HoldSpec) -> Result<(), Error> {
    let mut faults = Faults::new();
    match &spec.alloy {
        Some(alloy) => {
            faults.take(Metal::published(alloy, defaults::WALL.value));
        }
        None => {
            faults.push(missing("alloy", "The flanges have no alloy.", "Give alloy and temper, such as \"6061-T6\"."));
        }
    }
    size(parts, spec.head, "head", &mut faults);
    let diameter = parts.fastening.diameter.unwrap_or(defaults::DIAMETER.value);
    match spec.head {
        Some(head) if head > Length::ZERO && head < diameter => {
            let (head, shank) = (parts.notation().text(head), parts.notation().text(diameter));
            let message = format!("A head of {head} is narrower than the fastener, {shank}.");
            let accepted = "A head as wide as the fastener or wider is accepted.";
            faults.push(Fault::new(Kind::FastenerSize, head, message, accepted).within("head"));
        }
        Some(_) => {}
        None => faults.push(missing("head", "The screws have no head.", "Measure it; it has no default.")),
    }
    if let Some(gravity) = spec.gravity.filter(|gravity| !(0.2..=1.2).contains(gravity)) {
        let message = format!("{gravity} is no specific gravity of a board.");
        let accepted = "A number from 0.2 to 1.2 is accepted.";
        faults.push(Fault::new(Kind::OutOfRange, gravity.to_string(), message, accepted).within("gravity"));
    }
    for (field, force) in [("lift", &spec.lift), ("side", &spec.side)] {
        if let Some(force) = force {
            faults.take(check_force(force).map_err(|error| error.within(field)));
        }
    }
    faults.finish()
}

/// Screws that hold in metal have threads that the formulas know.
fn threads(parts: &Parts<'_>, faults: &mut Faults) {
    let threads = parts.fastening.threads_per_inch.unwrap_or(defaults::THREADS.value);
    let (diameter, head) = (defaults::DIAMETER.value, defaults::DIAMETER.value);
    if (1..=100).contains(&threads) && Screw::new("", diameter, f64::from(threads), head).check().is_err() {
        let message = format!("A screw of {threads} threads to the inch has no figure of what it holds.");
        let accepted = "4 to 100, or no \"fasteners\" under \"span\".";
        let fault = Fault::new(Kind::Conflict, threads.to_string(), message, accepted);
        faults.push(fault.at("/fastening/threads_per_inch"));
    }
}
