//! What a beam and its loads must be; behind this door nothing is checked again.

use super::load::{BeamLoad, BeamLoadKind};
use super::{BeamProblem, End};
use crate::error::{Error, Fault, Faults, Kind};
use crate::span::solvable::{LARGEST, is_size, no_load, range, size};

/// More spans than this is not a deck.
const MOST_SPANS: usize = 1_000_000;
/// More loads than this is not a deck.
const MOST_LOADS: usize = 10_000;

/// How far outside the beam a load may reach by rounding alone, as a part of the beam's length.
pub(super) const SLACK: f64 = 1e-9;

pub(super) fn problem(problem: &BeamProblem) -> Result<(), Error> {
    let mut faults = Faults::new();
    if problem.spans.is_empty() {
        let accepted = "Give the length of each span between supports.";
        faults.push(Fault::new(Kind::EmptyList, "[]", "There is no span.", accepted).within("spans"));
    }
    if problem.spans.len() > MOST_SPANS {
        faults.push(too_many(problem.spans.len(), MOST_SPANS).within("spans"));
        return faults.finish();
    }
    for (index, &span) in problem.spans.iter().enumerate() {
        faults.take(size(span, "A span").map_err(|error| error.within(index).within("spans")));
    }
    for (index, (&overhang, end)) in problem.overhangs.iter().zip(problem.ends).enumerate() {
        let pointer = format!("/overhangs/{index}");
        if !(0.0..=LARGEST).contains(&overhang) {
            let message = format!("An overhang of {overhang} cannot be.");
            faults.push(range(overhang, message, "It is zero or a length above zero.").at(&pointer));
        } else if overhang > 0.0 && end == End::Fixed {
            let message = "An end that is kept from turning has an overhang.";
            let accepted = "Leave out the overhang or let the end be simple.";
            faults.push(Fault::new(Kind::Conflict, overhang.to_string(), message, accepted).at(&pointer));
        }
    }
    faults.take(size(problem.stiffness, "A stiffness").map_err(|error| error.within("stiffness")));
    faults.finish()
}

/// Checks the loads that stand under `field` of a sound problem.
pub(super) fn loads(problem: &BeamProblem, loads: &[BeamLoad], field: &str) -> Result<(), Error> {
    if loads.len() > MOST_LOADS {
        return Err(too_many(loads.len(), MOST_LOADS).within(field).into());
    }
    let mut faults = Faults::new();
    let length = problem.length();
    for (index, load) in loads.iter().enumerate() {
        let found = load_fault(load, length);
        if let Some(fault) = found {
            faults.push(fault.within(index).within(field));
        }
    }
    faults.finish()
}

fn load_fault(load: &BeamLoad, length: f64) -> Option<Fault> {
    no_load(load.value)
        .or_else(|| place_fault(load, length))
        .or_else(|| size_fault(load))
        .or_else(|| outside(load, length))
}

fn place_fault(load: &BeamLoad, length: f64) -> Option<Fault> {
    let accepted = || format!("Its middle lies between 0 and {length}, from the left tip.");
    match load.at {
        Some(at) if !(-length..=2.0 * length).contains(&at) => {
            let message = format!("A load at {at} lies outside the beam of {length}.");
            Some(range(at, message, &accepted()).within("at"))
        }
        None if load.kind != BeamLoadKind::Uniform || load.size.is_some() => {
            let message = "A load has no place.";
            Some(Fault::new(Kind::MissingField, "", message, accepted()).within("at"))
        }
        _ => None,
    }
}

fn size_fault(load: &BeamLoad) -> Option<Fault> {
    match (load.kind, load.size) {
        (BeamLoadKind::Point | BeamLoadKind::Uniform, None) if load.at.is_none() || is_point(load) => None,
        (BeamLoadKind::Point, Some(size)) => {
            let accepted = "Leave its size out, or let it be a patch.";
            let message = format!("A point load has a size of {size}.");
            Some(Fault::new(Kind::Conflict, size.to_string(), message, accepted).within("size"))
        }
        (_, None) => {
            let message = "A load that lies somewhere has no size.";
            Some(Fault::new(Kind::MissingField, "", message, "Give the length that it covers.").within("size"))
        }
        (_, Some(size)) if !is_size(size) => {
            let message = format!("A load over a length of {size} cannot be.");
            Some(range(size, message, "Give the length that it covers, above zero.").within("size"))
        }
        _ => None,
    }
}

fn is_point(load: &BeamLoad) -> bool {
    load.kind == BeamLoadKind::Point
}

fn outside(load: &BeamLoad, length: f64) -> Option<Fault> {
    let (from, to) = load.stretch(length);
    if from >= -SLACK * length && to <= length * (1.0 + SLACK) {
        return None;
    }
    let message = format!("A load covers {from} to {to}, which is not all on the beam of {length}.");
    let accepted = format!("It lies between 0 and {length}, from the left tip.");
    Some(range(load.at.unwrap_or(from), message, &accepted).within("at"))
}

fn too_many(count: usize, most: usize) -> Fault {
    Fault::new(Kind::TooMany, count.to_string(), format!("There are {count}."), format!("At most {most} are solved."))
}
