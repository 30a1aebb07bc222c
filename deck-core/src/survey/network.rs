//! From readings between names to equations between numbered points.

use super::adjust::Unknowns;
use super::equation::{Equation, Form, Place};
use super::reading::{Reading, Side};
use super::spec::SurveySpec;
use crate::error::{Error, Fault, Faults, Kind};
use crate::length::Length;
use std::collections::BTreeMap;

/// More readings or points than this no frame has; the equations are solved in full.
const MOST_READINGS: usize = 400;
const MOST_POINTS: usize = 150;
/// Names are read aloud and stand in drawings.
const LONGEST_NAME: usize = 40;

/// Points, what is known of their places, and the equations between them.
#[derive(Debug, Clone)]
pub(super) struct Network {
    pub(super) names: Vec<String>,
    pub(super) unknowns: Unknowns,
    pub(super) known: BTreeMap<usize, Place>,
    pub(super) datum: [usize; 2],
    pub(super) equations: Vec<Equation>,
    /// On which side of a line a tied point lies, where the reading says so.
    pub(super) sides: BTreeMap<usize, Side>,
}

/// Lengths as the millimetres that are reckoned in.
pub(super) fn millimetres(length: Length) -> f64 {
    length.nanometres() as f64 / 1e6
}

/// The length nearest to a figure of the reckoning.
pub(super) fn length(millimetres: f64) -> Length {
    Length::nearest(millimetres * 1e6)
}

impl Network {
    /// Checks the readings and numbers their points. `tape` is the error of readings that have none of their own.
    pub(super) fn new(spec: &SurveySpec, tape: Length) -> Result<Network, Error> {
        let mut builder = Builder { faults: Faults::new(), names: Names::default(), equations: Vec::new(), tape };
        let datum = builder.datum(spec);
        let known = builder.known(spec);
        if spec.readings.len() > MOST_READINGS {
            builder.faults.push(many(spec.readings.len(), "readings", MOST_READINGS).within("readings"));
            builder.faults.clone().finish()?;
        }
        let mut sides = BTreeMap::new();
        let baseline = spec.datum_points();
        for (index, reading) in spec.readings.iter().enumerate() {
            if let Err(error) = builder.reading(reading, index, baseline) {
                builder.faults.absorb(error.within(index).within("readings"));
            }
            if let Reading::Tie { of, side: Some(side), .. } = reading {
                sides.insert(builder.names.number(of), *side);
            }
        }
        builder.unique_names(&spec.readings);
        if builder.names.list.len() > MOST_POINTS {
            builder.faults.push(many(builder.names.list.len(), "points", MOST_POINTS).within("readings"));
        }
        builder.corners(spec);
        builder.faults.finish()?;
        let names = builder.names.list;
        // unreachable: without a datum there is a fault.
        let datum = datum.unwrap_or_default();
        let unknowns = unknowns(names.len(), datum, &known);
        Ok(Network { names, unknowns, known, datum, equations: builder.equations, sides })
    }

    /// The number of a point.
    pub(super) fn number(&self, name: &str) -> Option<usize> {
        self.names.iter().position(|known| known == name)
    }

    pub(super) fn name(&self, point: usize) -> &str {
        self.names.get(point).map_or("", String::as_str)
    }

    /// The point that an unknown belongs to.
    pub(super) fn point_of(&self, unknown: usize) -> usize {
        self.unknowns.of.iter().position(|of| of.contains(&Some(unknown))).unwrap_or(0)
    }
}

/// Two points that are known, or the origin and the way to the second point of the datum, hold everything in place.
fn unknowns(points: usize, [origin, towards]: [usize; 2], known: &BTreeMap<usize, Place>) -> Unknowns {
    let mut count = 0;
    let mut number = |is_free: bool| {
        is_free.then(|| {
            count += 1;
            count - 1
        })
    };
    let held = known.len() >= 2;
    let of = (0..points)
        .map(|point| {
            let is_known = known.contains_key(&point);
            let at_origin = !held && point == origin;
            let on_axis = !held && point == towards;
            [number(!is_known && !at_origin), number(!is_known && !at_origin && !on_axis)]
        })
        .collect();
    Unknowns { of, count }
}

#[derive(Debug, Default)]
struct Names {
    list: Vec<String>,
    numbers: BTreeMap<String, usize>,
}

impl Names {
    fn number(&mut self, name: &str) -> usize {
        if let Some(&number) = self.numbers.get(name) {
            return number;
        }
        self.list.push(name.to_owned());
        self.numbers.insert(name.to_owned(), self.list.len() - 1);
        self.list.len() - 1
    }
}

struct Builder {
    faults: Faults,
    names: Names,
    equations: Vec<Equation>,
    tape: Length,
}

impl Builder {
    fn datum(&mut self, spec: &SurveySpec) -> Option<[usize; 2]> {
        let Some([origin, towards]) = spec.datum_points() else {
            let message = "The survey does not say from which point and towards which one it counts.";
            let accepted = "\"datum\" names two points, or \"corners\" the four of the frame.";
            self.faults.push(Fault::new(Kind::SurveyDatum, "", message, accepted).within("datum"));
            return None;
        };
        if origin == towards {
            let message = format!("\"{origin}\" is both ends of the datum.");
            let accepted = "It runs from one point towards another.";
            self.faults.push(Fault::new(Kind::SurveyDatum, origin, message, accepted).within("datum"));
            return None;
        }
        Some([self.names.number(origin), self.names.number(towards)])
    }

    fn known(&mut self, spec: &SurveySpec) -> BTreeMap<usize, Place> {
        let mut places = BTreeMap::new();
        for (index, known) in spec.known.iter().enumerate() {
            let number = self.names.number(&known.point);
            if places.insert(number, [millimetres(known.x), millimetres(known.y)]).is_some() {
                let fault = twice(&known.point, "known twice", "A point has one place.");
                self.faults.push(fault.within("point").within(index).within("known"));
            }
        }
        if let [one] = spec.known.as_slice() {
            let message = "One known point leaves the survey free to turn.";
            let fault = Fault::new(Kind::SurveyDatum, &one.point, message, "There are two known points, or none.");
            self.faults.push(fault.within("known"));
        }
        places
    }

    fn corners(&mut self, spec: &SurveySpec) {
        for (index, corner) in spec.corners.iter().flatten().enumerate() {
            let again = spec.corners.iter().flatten().take(index).any(|other| other == corner);
            if again {
                self.faults
                    .push(twice(corner, "two of the corners", "There are four.").within(index).within("corners"));
            } else if !self.names.numbers.contains_key(corner) {
                self.faults.push(self.unknown(corner).within(index).within("corners"));
            }
        }
    }

    fn unknown(&self, name: &str) -> Fault {
        unknown_point(name, &self.names.list)
    }

    fn reading(&mut self, reading: &Reading, index: usize, baseline: Option<[&str; 2]>) -> Result<(), Error> {
        let sigma = reading.error().unwrap_or(self.tape);
        if sigma <= Length::ZERO {
            let message = format!("{sigma} is no error of a reading.");
            return Err(Fault::new(size_kind(sigma), sigma.to_string(), message, POSITIVE).within("error").into());
        }
        let name = reading.name().map_or_else(|| (index + 1).to_string(), ToOwned::to_owned);
        let mut entry = Entry { builder: self, index, name, sigma: millimetres(sigma) };
        let along = |along: &Option<[String; 2]>| {
            let own = along.as_ref().map(|[from, to]| [from.clone(), to.clone()]);
            own.or(baseline.map(|ends| ends.map(ToOwned::to_owned)))
        };
        match reading {
            Reading::Distance { between: [a, b], reading, .. } => {
                Entry::distinct(&[a, b], "between")?;
                positive(*reading, "reading")?;
                entry.read("", *reading, |n| Form::Distance(n(a), n(b)));
            }
            Reading::Tie { of, from: [a, b], readings: [to_a, to_b], .. } => {
                Entry::distinct(&[a, b, of], "from")?;
                positive(*to_a, 0).and(positive(*to_b, 1)).map_err(|error| error.within("readings"))?;
                entry.read("a", *to_a, |n| Form::Distance(n(a), n(of)));
                entry.read("b", *to_b, |n| Form::Distance(n(b), n(of)));
            }
            Reading::Station { of, along: line, reading, .. } => {
                let Some([from, to]) = along(line) else { return Ok(()) };
                Entry::distinct(&[&from, &to], "along")?;
                entry.station("", of, [&from, &to], *reading)?;
            }
            Reading::Offset { of, along: line, station, reading, .. } => {
                let Some([from, to]) = along(line) else { return Ok(()) };
                Entry::distinct(&[&from, &to, of], "of")?;
                let (first, second) = if station.is_some() { ("a", "b") } else { ("", "") };
                if let Some(station) = station {
                    entry.station(first, of, [&from, &to], *station)?;
                }
                entry.read(second, *reading, |n| Form::Offset { of: n(of), from: n(&from), to: n(&to) });
            }
            Reading::Straight { points, .. } => entry.straight(points)?,
            Reading::Square { at, between: [along, leg], .. } => {
                Entry::distinct(&[at, along, leg], "between")?;
                entry.trusted("", |n| Form::Square { at: n(at), along: n(along), leg: n(leg) });
            }
        }
        Ok(())
    }

    fn unique_names(&mut self, readings: &[Reading]) {
        let mut seen = BTreeMap::new();
        for (index, reading) in readings.iter().enumerate() {
            let name = reading.name().map_or_else(|| (index + 1).to_string(), ToOwned::to_owned);
            if let Some(first) = seen.insert(name.clone(), index) {
                let message = format!("\"{name}\" is what reading {} is called, too.", first + 1);
                let fault = Fault::new(Kind::DuplicateName, format!("\"{name}\""), message, "Each has its own.");
                self.faults.push(fault.within("name").within(index).within("readings"));
            }
        }
    }
}

/// A reading on its way to equations.
struct Entry<'b> {
    builder: &'b mut Builder,
    index: usize,
    name: String,
    sigma: f64,
}

impl Entry<'_> {
    fn add(&mut self, part: &str, value: f64, is_read: bool, form: impl FnOnce(&mut dyn FnMut(&str) -> usize) -> Form) {
        let names = &mut self.builder.names;
        let form = form(&mut |name| names.number(name));
        // A letter joins a number, and stands apart from a name.
        let space = if part.is_empty() || self.name.ends_with(|last: char| last.is_ascii_digit()) { "" } else { " " };
        let name = format!("{}{space}{part}", self.name);
        let equation = Equation { form, value, sigma: self.sigma, reading: self.index, name, is_read };
        self.builder.equations.push(equation);
    }

    fn read(&mut self, part: &str, read: Length, form: impl FnOnce(&mut dyn FnMut(&str) -> usize) -> Form) {
        self.add(part, millimetres(read), true, form);
    }

    fn trusted(&mut self, part: &str, form: impl FnOnce(&mut dyn FnMut(&str) -> usize) -> Form) {
        self.add(part, 0.0, false, form);
    }

    /// The far end of a baseline by its station is a distance along it.
    fn station(&mut self, part: &str, of: &str, [from, to]: [&str; 2], read: Length) -> Result<(), Error> {
        if of == from {
            let message = format!("\"{of}\" is where this baseline starts: its station is 0.");
            return Err(Fault::new(Kind::SurveyReading, of, message, "It is another point.").within("of").into());
        }
        if of == to {
            positive(read, "reading")?;
            self.read(part, read, |n| Form::Distance(n(from), n(to)));
        } else {
            self.read(part, read, |n| Form::Station { of: n(of), from: n(from), to: n(to) });
        }
        Ok(())
    }

    fn straight(&mut self, points: &[String]) -> Result<(), Error> {
        let named: Vec<&str> = points.iter().map(String::as_str).collect();
        let ([first, between @ .., last], true) = (named.as_slice(), named.len() >= 3) else {
            let message = format!("{} points always lie on a line.", named.len());
            let accepted = "There are three at least.";
            return Err(Fault::new(Kind::SurveyReading, named.len().to_string(), message, accepted)
                .within("points")
                .into());
        };
        Entry::distinct(&named, "points")?;
        for (index, of) in between.iter().enumerate() {
            let part = if between.len() == 1 { String::new() } else { letter(index) };
            self.trusted(&part, |n| Form::Offset { of: n(of), from: n(first), to: n(last) });
        }
        Ok(())
    }

    /// Points that a reading needs to be different ones, with names that can be read.
    fn distinct(names: &[&str], field: &str) -> Result<(), Error> {
        for (index, name) in names.iter().enumerate() {
            if name.trim().is_empty() || name.chars().count() > LONGEST_NAME {
                let shown: String = name.chars().take(LONGEST_NAME).collect();
                let message = format!("\"{shown}\" is no name of a point.");
                let accepted = format!("A name has 1 to {LONGEST_NAME} letters.");
                return Err(Fault::new(Kind::SurveyReading, shown, message, accepted).within(field).into());
            }
            if names.iter().take(index).any(|other| other == name) {
                let fault = Fault::new(
                    Kind::SurveyReading,
                    *name,
                    format!("\"{name}\" stands twice in one reading."),
                    "Its points are different ones.",
                );
                return Err(fault.within(field).into());
            }
        }
        Ok(())
    }
}

const POSITIVE: &str = "More than zero is accepted.";

fn positive(length: Length, field: impl std::fmt::Display) -> Result<(), Error> {
    if length > Length::ZERO {
        return Ok(());
    }
    let message = format!("{length} is no distance between two points.");
    Err(Fault::new(size_kind(length), length.to_string(), message, POSITIVE).within(field).into())
}

/// What is wrong with a length that is not above zero.
pub(super) fn size_kind(length: Length) -> Kind {
    if length.is_zero() { Kind::LengthZero } else { Kind::LengthNegative }
}

fn letter(index: usize) -> String {
    let letters = "abcdefghijklmnopqrstuvwxyz";
    letters.chars().nth(index).map_or_else(|| format!(".{}", index + 1), String::from)
}

fn many(count: usize, what: &str, most: usize) -> Fault {
    let message = format!("{count} {what} are more than a frame has.");
    Fault::new(Kind::TooMany, count.to_string(), message, format!("There are at most {most}."))
}

fn twice(name: &str, how: &str, accepted: &str) -> Fault {
    Fault::new(Kind::DuplicateName, format!("\"{name}\""), format!("\"{name}\" is {how}."), accepted)
}

/// That no reading names such a point.
pub(super) fn unknown_point(name: &str, names: &[String]) -> Fault {
    let shown: String = name.chars().take(LONGEST_NAME).collect();
    let near = near(&shown, names.iter().map(String::as_str)).map(|name| format!("Did you mean \"{name}\"?"));
    let message = format!("No reading names a point \"{shown}\".");
    Fault::new(Kind::SurveyPointUnknown, format!("\"{shown}\""), message, near.unwrap_or_default())
}

/// The known name that is fewest slips of the pen away; none where it is another word.
pub(super) fn near<'n>(name: &str, known: impl Iterator<Item = &'n str>) -> Option<&'n str> {
    let plain = name.to_lowercase();
    let slips = |known: &str| strsim::osa_distance(&plain, &known.to_lowercase());
    let most = (plain.chars().count() / 2).clamp(1, 2);
    known
        .filter(|known| *known != name)
        .map(|known| (slips(known), known))
        .filter(|near| near.0 <= most)
        .min()
        .map(|near| near.1)
}
