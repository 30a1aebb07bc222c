//! Where are the points, and which reading is wrong?
//!
//! A tape gives sides, diagonals, ties, stations and offsets; there are more of them than the places need, and each is a
//! little off. [`survey()`] finds the places that disagree least with all of them, says how well each is known, and names a
//! reading that disagrees with the rest: it is left out, never averaged in. Traced edges become lines and arcs, a racked frame
//! is told how to be squared, and the old boards are held against the members.
//!
//! ```text
//!   readings ── network ── start ── adjust ─┬─ snoop ── words ─┐
//!                                           ├─ square          ├── Survey
//!   traces ──── trace (pieces, joins) ──────┘                  │
//!   old boards ─ boards ───────────────────────────────────────┘
//! ```
//!
//! # Limits
//! Everything lies in one plane. Errors are taken as independent of each other, and as normal. Eight wrong readings at most are
//! looked for, one at a time; two that hide each other are not found.

mod adjust;
mod boards;
mod cause;
mod chance;
mod equation;
mod network;
mod outline;
mod reading;
mod result;
mod settle;
mod snoop;
mod spec;
mod square;
mod start;
mod trace;
mod words;

pub use boards::{BoardEvidence, BoardFinding, BoardMark, FindingKind, MarkKind, OldBoards};
pub use reading::{Reading, Side};
pub use result::{Blunder, BlunderSuspect, GlobalTest, Survey, SurveyPoint, SurveyReading};
pub use spec::{Known, Lie, MemberStation, SurveyMember, SurveySpec};
pub use square::{Squaring, skew_of_diagonals};
pub use trace::{FittedTrace, JoinKind, PieceKind, ScaleMark, Trace, TraceJoin, TracePiece, TracePlace};

use crate::error::{Error, Fault, Faults, Kind};
use crate::length::{Length, Notation};
use adjust::Unfit;
use network::{Network, millimetres, size_kind};

/// Standard deviation of a tape reading where none is given: a sixteenth of an inch.
///
/// Common practice, no source: tapes are read within 1/32 to 1/16 in. The larger figure is the more careful.
pub const TAPE_ERROR: Length = Length::from_nanometres(1_587_500);

/// Where [`TAPE_ERROR`] comes from.
pub const TAPE_ERROR_SOURCE: &str = "common practice, no source: tapes are read within 1/32 to 1/16 in";

/// Adjusts a survey.
///
/// `notation` is how the sentences of the answer write lengths.
///
/// # Method
/// Least squares with data snooping; each step names its paper in its own file. A circle is fitted by geometric least squares,
/// a line by total least squares.
///
/// # Errors
/// Everything that is wrong with the readings, each with its pointer: points that they do not hold in place, names that are
/// slips of the pen, a datum that is none; traces that cannot be fitted.
///
/// # Examples
/// Sides and diagonals of a frame, and one long diagonal that was read an inch short:
/// ```
/// use deck_core::survey::{Reading, SurveySpec, survey};
/// use deck_core::{Length, Notation, Unit};
/// let inches = Length::inches;
/// let spec = SurveySpec::new(vec![
///     Reading::distance("BP", "SP", inches(240)),
///     Reading::distance("BS", "SS", inches(240)),
///     Reading::distance("BP", "BS", inches(100)),
///     Reading::distance("SP", "SS", inches(100)),
///     Reading::distance("BP", "SS", inches(260)),
///     Reading::distance("BS", "SP", inches(259)),
///     Reading::square("BP", ["SP", "BS"]),
/// ])
/// .corners(["BP", "SP", "SS", "BS"]);
/// let found = survey(&spec, &Notation::new(Unit::Inch))?;
/// assert_eq!(found.blunders[0].reading, "6");
/// assert_eq!(found.blunders[0].cause.as_deref().map(|cause| cause.contains("one inch")), Some(true));
/// assert!(found.agreement < Length::inch_fraction(1, 64));
/// # Ok::<(), deck_core::Error>(())
/// ```
pub fn survey(spec: &SurveySpec, notation: &Notation) -> Result<Survey, Error> {
    let tape = spec.error.unwrap_or(TAPE_ERROR);
    if tape <= Length::ZERO {
        let message = format!("{tape} is no error of a tape.");
        return Err(Fault::new(size_kind(tape), tape.to_string(), message, "More than zero is accepted.")
            .within("error")
            .into());
    }
    if let Some(boards) = &spec.old_boards {
        boards.check(notation).map_err(|error| error.within("old_boards"))?;
    }
    if spec.readings.is_empty() && spec.old_boards.is_some() && spec.outline.is_none() && spec.traces.is_empty() {
        let mut found = Survey::of_boards();
        spec.old_boards.iter().for_each(|boards| found.hold_boards(boards, notation));
        return Ok(found);
    }
    let network = Network::new(spec, tape)?;
    let likely = |suspect: &snoop::Suspect| words::cause(&network, suspect, notation).is_some();
    let snooped = snoop::snoop(&network, likely).map_err(|unfit| unfitted(&network, unfit))?;
    let mut found = words::told(&network, &snooped, spec, tape, notation);
    found.traces = traces(spec, &network, &snooped.fit, tape)?;
    found.squaring = squaring(spec, &network, &snooped.fit, notation);
    lay_outline(spec, &network, &snooped.fit, &mut found)?;
    found.summary = words::summary(&found, notation);
    spec.old_boards.iter().for_each(|boards| found.hold_boards(boards, notation));
    Ok(found)
}

fn unfitted(network: &Network, unfit: Unfit) -> Error {
    match unfit {
        Unfit::Loose(unknown) => loose(network, network.point_of(unknown)).into(),
        Unfit::Restless => {
            let message = "No places of the points come near to these readings.";
            let accepted = "Look for a point that is named for another, or a baseline whose ends are one place.";
            Fault::new(Kind::SurveyNotSolved, "", message, accepted).within("readings").into()
        }
    }
}

/// That a point is not held, with what does hold it, and a name that it may be a slip of.
fn loose(network: &Network, point: usize) -> Fault {
    let name = network.name(point);
    let about: Vec<&str> = network
        .equations
        .iter()
        .filter(|equation| equation.form.points().contains(&point))
        .map(|equation| equation.name.as_str())
        .collect();
    let near = network::near(name, network.names.iter().map(String::as_str));
    let slip = near.filter(|_| about.len() <= 1).map(|near| format!(" Or was \"{near}\" meant?")).unwrap_or_default();
    let message = match about.as_slice() {
        [] => format!("No reading holds \"{name}\" in place."),
        [one] => format!("Only reading {one} is about \"{name}\": that does not hold it in place."),
        many => format!("Readings {} do not hold \"{name}\" in place.", many.join(", ")),
    };
    let accepted = format!("A point takes two readings at least, from points that are held themselves.{slip}");
    let index =
        network.equations.iter().find(|equation| equation.form.points().contains(&point)).map(|one| one.reading);
    let fault = Fault::new(Kind::SurveyPointLoose, format!("\"{name}\""), message, accepted);
    match index {
        Some(index) => fault.within(index).within("readings"),
        None => fault.within("readings"),
    }
}

fn traces(spec: &SurveySpec, network: &Network, fit: &adjust::Fit, tape: Length) -> Result<Vec<FittedTrace>, Error> {
    let (mut faults, mut fitted) = (Faults::new(), Vec::new());
    for (index, trace) in spec.traces.iter().enumerate() {
        let place_of = |name: &str| {
            let place = network.number(name).and_then(|number| fit.places.get(number).copied());
            place.ok_or_else(|| network::unknown_point(name, &network.names))
        };
        let taken = spec.traces.iter().take(index).any(|other| other.name == trace.name);
        if taken || network.number(&trace.name).is_some() {
            let message = format!("\"{}\" is the name of something else, too.", trace.name);
            let fault = Fault::new(Kind::DuplicateName, &trace.name, message, "Each has its own.");
            faults.push(fault.within("name").within(index).within("traces"));
        }
        let made = trace::fit(trace, place_of, tape).map_err(|error| error.within(index).within("traces"));
        fitted.extend(faults.take(made));
    }
    faults.finish()?;
    Ok(fitted)
}

fn corner_numbers(spec: &SurveySpec, network: &Network) -> Option<[usize; 4]> {
    let [a, b, c, d] = spec.corners.as_ref()?;
    Some([network.number(a)?, network.number(b)?, network.number(c)?, network.number(d)?])
}

fn squaring(spec: &SurveySpec, network: &Network, fit: &adjust::Fit, notation: &Notation) -> Option<Squaring> {
    let numbers = corner_numbers(spec, network)?;
    let places = numbers.map(|number| fit.places.get(number).copied().unwrap_or_default());
    let (_, slopes) = square::skew(&places);
    let slopes: Vec<_> = numbers.into_iter().zip(slopes).collect();
    let deviation = fit.variance(&network.unknowns, &slopes).max(0.0).sqrt();
    let names = numbers.map(|number| network.name(number));
    Some(square::squaring(&square::Corners { places, names }, deviation, notation))
}

/// The outline through points and traces, and the stations of members, where they are asked for.
fn lay_outline(spec: &SurveySpec, network: &Network, fit: &adjust::Fit, found: &mut Survey) -> Result<(), Error> {
    let slide = slide(spec, found)?;
    let place_of = |name: &str| {
        let number = network.number(name)?;
        fit.places.get(number).map(|place| slide.map_or(*place, |slide| slide.of(*place)))
    };
    let known =
        || network.names.iter().cloned().chain(found.traces.iter().map(|trace| trace.name.clone())).collect::<Vec<_>>();
    let mut faults = Faults::new();
    let traced: Vec<Vec<trace::Vertex>> = found
        .traces
        .iter()
        .map(|fitted| {
            let slid = |place| slide.map_or(place, |slide| slide.of(place));
            fitted.vertices.iter().map(|vertex| trace::Vertex { place: slid(vertex.place), arc: vertex.arc }).collect()
        })
        .collect();
    let mut parts = Vec::new();
    for (index, name) in spec.outline.iter().flatten().enumerate() {
        let trace = found.traces.iter().zip(&traced).find(|(trace, _)| trace.name == *name);
        match (place_of(name), trace) {
            (Some(place), _) => parts.push(outline::Part::Point(place)),
            (None, Some((_, vertices))) => parts.push(outline::Part::Trace(vertices)),
            (None, None) => {
                let fault = network::unknown_point(name, &known());
                faults.push(fault.within(index).within("outline"));
            }
        }
    }
    let (corners, moved) = outline::corners(&parts);
    let mut members = Vec::new();
    for (index, member) in spec.members.iter().enumerate() {
        let places = member.points().into_iter().enumerate().map(|(end, name)| {
            place_of(name).ok_or_else(|| {
                let fault = network::unknown_point(name, &network.names);
                if member.is_pair() { fault.within(end) } else { fault }
            })
        });
        match places.collect::<Result<Vec<_>, _>>() {
            Ok(places) => members.push(spec::MemberStation::of(member, &places, moved.0)),
            Err(fault) => faults.push(fault.within(index).within("members")),
        }
    }
    faults.finish()?;
    if spec.outline.is_some() {
        (found.outline, found.outline_moved) = (corners, Some([moved.0, moved.1]));
    }
    found.members = members;
    Ok(())
}

/// What squares the frame, where the outline is wanted as it will be then.
fn slide(spec: &SurveySpec, found: &Survey) -> Result<Option<outline::Squared>, Error> {
    if spec.lie != Some(Lie::Squared) {
        return Ok(None);
    }
    let Some(squaring) = &found.squaring else {
        let message = "Without corners it is not known what square is.";
        let accepted = "\"corners\" names the four of the frame.";
        return Err(Fault::new(Kind::SurveyDatum, "squared", message, accepted).within("lie").into());
    };
    let (width, skew) = (millimetres(squaring.width), millimetres(squaring.skew));
    let beam = (width * width - skew * skew).max(1.0).sqrt();
    Ok(Some(outline::Squared { shear: skew / beam, stretch: width / beam }))
}

#[cfg(test)]
mod tests;
