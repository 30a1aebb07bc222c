//! A fit in words and figures for people.

use super::cause;
use super::equation::Form;
use super::network::{Network, length};
use super::result::{Blunder, BlunderSuspect, GlobalTest, Survey, SurveyPoint, SurveyReading, rounded};
use super::settle::{Settling, settling};
use super::snoop::{Disagreement, FOUND, Snooped, Suspect};
use super::spec::SurveySpec;
use super::{TAPE_ERROR_SOURCE, adjust, chance};
use crate::length::{Length, Notation};

/// A sum of squares that arises less often than this by chance is too large; choice of this library.
const LIMIT: f64 = 0.05;

/// What slip a suspect looks like, where it was read off a tape.
pub(super) fn cause(network: &Network, suspect: &Suspect, notation: &Notation) -> Option<String> {
    let equation = network.equations.get(suspect.equation)?;
    let read = equation.is_read.then(|| length(equation.value))?;
    cause::cause(read, suspect.off, suspect.deviation, notation.unit)
}

pub(super) fn told(
    network: &Network,
    snooped: &Snooped,
    spec: &SurveySpec,
    tape: Length,
    notation: &Notation,
) -> Survey {
    let fit = &snooped.fit;
    let readings = readings(network, snooped);
    let used = readings.iter().filter(|reading| reading.used);
    let read = used.clone().filter(|reading| reading.reading.is_some());
    let agreement = read.map(|reading| reading.residual.abs()).max().unwrap_or_default();
    let unchecked = used
        .filter(|reading| reading.standardised.is_none() && reading.reading.is_some())
        .map(|reading| reading.name.clone())
        .collect();
    let freedom = snooped.used.iter().filter(|used| **used).count().saturating_sub(network.unknowns.count);
    let blunders = snooped
        .disagreements
        .iter()
        .map(|found| blunder(network, snooped, found, (freedom, agreement), notation))
        .collect();
    Survey {
        datum: network.datum.map(|point| network.name(point).to_owned()),
        error: tape,
        error_source: spec.error.is_none().then(|| TAPE_ERROR_SOURCE.to_owned()),
        points: points(network, fit),
        readings,
        freedom,
        iterations: snooped.first.iterations,
        test: (freedom > 0).then(|| test(fit.statistic, freedom)),
        blunders,
        agreement,
        unchecked,
        squaring: None,
        traces: Vec::new(),
        old_boards: None,
        outline: Vec::new(),
        outline_moved: None,
        members: Vec::new(),
        summary: Vec::new(),
    }
}

fn test(statistic: f64, freedom: usize) -> GlobalTest {
    let probability = chance::chance(statistic, freedom);
    GlobalTest {
        statistic: rounded(statistic),
        freedom,
        probability: rounded(probability),
        passes: probability >= LIMIT,
    }
}

fn points(network: &Network, fit: &adjust::Fit) -> Vec<SurveyPoint> {
    let cofactor =
        |a: Option<usize>, b: Option<usize>| a.zip(b).and_then(|at| fit.cofactor.get(at).copied()).unwrap_or(0.0);
    let places = network.names.iter().zip(&fit.places).zip(&network.unknowns.of);
    places
        .map(|((name, place), &[x, y])| {
            let (sx, sy) = (cofactor(x, x).max(0.0).sqrt(), cofactor(y, y).max(0.0).sqrt());
            let correlation = if sx > 0.0 && sy > 0.0 { cofactor(x, y) / (sx * sy) } else { 0.0 };
            SurveyPoint {
                name: name.clone(),
                x: length(place[0]),
                y: length(place[1]),
                x_deviation: length(sx),
                y_deviation: length(sy),
                correlation: rounded(correlation),
            }
        })
        .collect()
}

fn readings(network: &Network, snooped: &Snooped) -> Vec<SurveyReading> {
    let fit = &snooped.fit;
    let rows = network.equations.iter().zip(&fit.rows).zip(&fit.residuals).zip(&snooped.used);
    rows.enumerate()
        .map(|(index, (((equation, row), &residual), &used))| {
            let redundancy = fit.redundancy.get(index).copied().flatten();
            let standardised = match (redundancy, super::snoop::misses(network, fit, index)) {
                (Some(_), _) => fit.standardised(index, equation.sigma),
                (None, Some((off, deviation))) => Some(-off / deviation),
                (None, None) => None,
            };
            let least =
                redundancy.filter(|part| *part > adjust::UNCHECKED).map(|part| FOUND * equation.sigma / part.sqrt());
            SurveyReading {
                name: equation.name.clone(),
                what: what(network, equation.form),
                points: equation.form.points().into_iter().map(|point| network.name(point).to_owned()).collect(),
                number: equation.reading + 1,
                reading: equation.is_read.then(|| length(equation.value)),
                error: length(equation.sigma),
                adjusted: length(row.value),
                residual: length(residual),
                standardised: standardised.map(rounded),
                redundancy: rounded(redundancy.unwrap_or(0.0)),
                least_blunder: least.map(length),
                moves: least.and_then(|least| moves(network, fit, index, least)).map(length),
                used,
            }
        })
        .collect()
}

/// How far an error of one reading moves the point that it moves farthest.
fn moves(network: &Network, fit: &adjust::Fit, index: usize, error: f64) -> Option<f64> {
    let (equation, row) = (network.equations.get(index)?, fit.rows.get(index)?);
    let terms = adjust::terms(&network.unknowns, &row.slopes);
    let weight = error / (equation.sigma * equation.sigma);
    let shift = |unknown: Option<usize>| -> f64 {
        let Some(unknown) = unknown else { return 0.0 };
        let part = |&(other, slope): &(usize, f64)| fit.cofactor.get((unknown, other)).copied().unwrap_or(0.0) * slope;
        terms.iter().map(part).sum::<f64>() * weight
    };
    let moved = network.unknowns.of.iter().map(|&[x, y]| super::equation::size([shift(x), shift(y)]));
    moved.max_by(f64::total_cmp)
}

fn what(network: &Network, form: Form) -> String {
    let name = |point: usize| network.name(point);
    match form {
        Form::Distance(a, b) => format!("{} to {}", name(a), name(b)),
        Form::Station { of, from, to } => format!("station of {} from {} towards {}", name(of), name(from), name(to)),
        Form::Offset { of, from, to } => format!("{} off the line {} to {}", name(of), name(from), name(to)),
        Form::Square { at, along, leg } => format!("{} square to {} at {}", name(leg), name(along), name(at)),
    }
}

fn blunder(
    network: &Network,
    snooped: &Snooped,
    found: &Disagreement,
    (freedom, agreement): (usize, Length),
    notation: &Notation,
) -> Blunder {
    let named = |suspect: &Suspect| {
        let equation = network.equations.get(suspect.equation);
        let (name, form) = equation.map_or(("", None), |equation| (equation.name.as_str(), Some(equation.form)));
        (name.to_owned(), form.map(|form| what(network, form)).unwrap_or_default())
    };
    let suspects: Vec<BlunderSuspect> = found
        .suspects
        .iter()
        .map(|suspect| BlunderSuspect {
            reading: named(suspect).0,
            off: length(suspect.off),
            cause: cause(network, suspect, notation),
        })
        .collect();
    // unreachable: a disagreement has a suspect.
    let nobody = Suspect { equation: 0, off: 0.0, deviation: 0.0, standardised: 0.0 };
    let first = found.suspects.first().copied().unwrap_or(nobody);
    let equation = network.equations.get(first.equation);
    let value = equation.map_or(0.0, |equation| equation.value);
    let told_apart = found.suspects.len() == 1;
    let settle = settling(network, snooped, found).map(|settling| match settling {
        Settling::Measure(a, b) => {
            format!("Measure from {} to {}: that settles it.", network.name(a), network.name(b))
        }
        Settling::Again(again) => {
            let name = network.equations.get(again).map_or("", |equation| equation.name.as_str());
            let form = network.equations.get(again).map(|equation| what(network, equation.form)).unwrap_or_default();
            format!("Read {name} ({form}) again: that settles whether it was this one.")
        }
    });
    let (name, what) = named(&first);
    let mut blunder = Blunder {
        reading: name,
        number: equation.map_or(0, |equation| equation.reading + 1),
        off: length(first.off),
        deviation: length(first.deviation),
        expected: length(value - first.off),
        told_apart,
        cause: suspects.first().and_then(|suspect| suspect.cause.clone()),
        suspects,
        settle,
        message: String::new(),
    };
    let is_read = equation.is_some_and(|equation| equation.is_read);
    blunder.message = message(&blunder, &what, is_read, (freedom, agreement), notation);
    blunder
}

fn message(
    blunder: &Blunder,
    what: &str,
    is_read: bool,
    (freedom, agreement): (usize, Length),
    notation: &Notation,
) -> String {
    let text = |length: Length| notation.figure(length);
    let (name, by) = (&blunder.reading, text(blunder.off.abs()));
    let way = if blunder.off.is_negative() { "short" } else { "long" };
    let rest = if freedom == 0 {
        "nothing is left over to check the others".into()
    } else {
        format!("without it all else agrees within {}", text(ceiling(agreement, notation)))
    };
    let mut message = if !is_read {
        format!("{name} ({what}) does not hold: it is off by {by}; {rest}.")
    } else if blunder.told_apart {
        format!("Reading {name} ({what}) is {by} too {way}; {rest}.")
    } else {
        format!("Reading {name} ({what}) disagrees by {by}, {way}; {rest}.")
    };
    if !blunder.told_apart {
        let others: Vec<String> = blunder
            .suspects
            .iter()
            .skip(1)
            .map(|suspect| {
                let way = if suspect.off.is_negative() { "short" } else { "long" };
                format!("{} ({} too {way})", suspect.reading, text(suspect.off.abs()))
            })
            .collect();
        message.push_str(" The readings cannot tell it from ");
        message.push_str(&others.join(" or "));
        message.push('.');
    }
    for more in blunder.cause.iter().chain(&blunder.settle) {
        message.push(' ');
        message.push_str(more);
    }
    message
}

/// The next figure that the shop writes at or above a length.
fn ceiling(length: Length, notation: &Notation) -> Length {
    let step = if notation.unit.is_imperial() {
        Length::inch_fraction(1, i64::from(notation.denominator.max(1)))
    } else {
        Length::from_nanometres(100_000)
    };
    step * length.steps_of(step)
}

pub(super) fn summary(found: &Survey, notation: &Notation) -> Vec<String> {
    let mut said: Vec<String> = found.blunders.iter().map(|blunder| blunder.message.clone()).collect();
    let agreement = notation.figure(ceiling(found.agreement, notation));
    said.push(match &found.test {
        None => "There are just as many readings as the places need: none of them is checked.".into(),
        Some(test) if test.passes && found.blunders.is_empty() => {
            format!("All readings agree within {agreement}, as their errors have it.")
        }
        Some(test) if test.passes => format!("The other readings agree within {agreement}, as their errors have it."),
        Some(test) => format!(
            "The readings agree within {agreement} only: that is worse than their errors say (by chance once in {:.0}). No single \
             one stands out.",
            1.0 / test.probability.max(1e-6)
        ),
    });
    if found.test.is_some() && !found.unchecked.is_empty() {
        let many = if found.unchecked.len() == 1 { "Reading" } else { "Readings" };
        said.push(format!("{many} {} no other reading checks.", found.unchecked.join(", ")));
    }
    said.extend(found.squaring.iter().map(|squaring| squaring.advice.clone()));
    said
}
