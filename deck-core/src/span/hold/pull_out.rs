//! Threads that strip out of an aluminium part: a formula beside what a laboratory measured, and the lower of them.

use super::held::{Held, Mode};
use super::metal::{KIP, Metal, sound};
use super::screw::{Screw, Thread};
use crate::error::Error;
use crate::published::{PULL_OUT_SOURCE, PULL_OUT_TESTS, SCREW_SAFETY_FACTOR, Standing};
use serde::{Deserialize, Serialize};

/// Pull-out by formula and by test.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct PullOut {
    /// By the formula, from memory; none outside the thicknesses that it is for.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub formula: Option<Held>,
    /// By a laboratory's tests of this screw in this alloy; none outside the thicknesses tested.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub test: Option<Held>,
    /// The lower of the two.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub carried: Option<Held>,
    /// Why that one.
    pub why: String,
}

/// Pull-out of a screw whose threads go through an aluminium part.
///
/// # Method
/// Formula: Aluminum Design Manual 2015, J.5.5.1, from memory, over 3.0; see the source for its ranges. Tests: means of a
/// screw maker's laboratory (2021), over the same 3.0; between two thicknesses tested on the straight line from one to
/// the other (derived here). A mean is what half of the screws do not reach, and the formula has been seen above it: in
/// 1/16 in of 6061-T6 a #10 held 300 lb where the formula gives 420. So the lower one is carried.
///
/// # Errors
/// Sizes or strengths that cannot be; pointers to `/screw` and `/metal`.
///
/// # Examples
/// ```
/// use deck_core::span::hold::{Metal, Screw, pull_out};
/// let found = pull_out(&Screw::published("#10-16")?, &Metal::published("6061-T6", "1/16 in".parse()?)?)?;
/// assert_eq!(found.formula.unwrap().nominal.round(), 420.0);
/// assert_eq!(found.carried.unwrap().nominal, 300.0);
/// # Ok::<(), deck_core::Error>(())
/// ```
pub fn pull_out(screw: &Screw, metal: &Metal) -> Result<PullOut, Error> {
    sound(screw, metal)?;
    let formula = by_formula(screw, metal).map(|(nominal, equation)| {
        let clause = format!("{equation}, Aluminum Design Manual 2015, J.5.5.1, from memory; {}", metal.named());
        Held::new(Mode::PullOut, nominal, SCREW_SAFETY_FACTOR, clause, Standing::Memory)
    });
    let test = by_test(screw, metal);
    let (carried, why) = match (&formula, &test) {
        (Some(formula), Some(test)) if test.nominal < formula.nominal => {
            (Some(test), "The tests lie below the formula: the lower is carried.")
        }
        (Some(formula), Some(_)) => (Some(formula), "The formula lies below the tests: the lower is carried."),
        (Some(formula), None) => (
            Some(formula),
            "No test of this screw in this alloy and thickness is known: the formula stands alone, from memory.",
        ),
        (None, Some(test)) => (Some(test), "The formula is not for this thickness: the tests stand alone."),
        (None, None) => (None, "No figure: the formula is not for this thickness, and no test of it is known."),
    };
    let carried = carried.cloned();
    Ok(PullOut { carried, why: why.into(), formula, test })
}

/// Threads do not count beyond this engagement, inches.
const MOST_ENGAGED: f64 = 0.375;
/// Area of a 1/4-20 thread that strips, square inches to an inch of engagement. From memory.
const STRIPPED_QUARTER_20: f64 = 0.539;

fn by_formula(screw: &Screw, metal: &Metal) -> Option<(f64, String)> {
    let engaged = metal.thickness.as_inches().min(MOST_ENGAGED);
    match screw.thread {
        Thread::Spaced => spaced(screw, metal, engaged),
        Thread::Machine => machine(screw, metal, engaged),
    }
}

fn spaced(screw: &Screw, metal: &Metal, engaged: f64) -> Option<(f64, String)> {
    const LEAST: f64 = 0.038;
    let (d, fty, ftu) = (screw.diameter.as_inches(), metal.yield_ksi * KIP, metal.ultimate_ksi * KIP);
    let (two, four) = (2.0 / screw.threads, 4.0 / screw.threads);
    if engaged < LEAST {
        None
    } else if engaged <= two {
        Some(sheared(d, engaged, fty))
    } else if engaged < four {
        let load = 1.2 * d * fty * (four - engaged) + 3.26 * d * ftu * (engaged - two);
        Some((load, "Rn = 1.2 D Fty (4/n - Le) + 3.26 D Ftu (Le - 2/n)".into()))
    } else {
        Some((1.63 * d * engaged * ftu, "Rn = 1.63 D Le Ftu".into()))
    }
}

fn machine(screw: &Screw, metal: &Metal, engaged: f64) -> Option<(f64, String)> {
    const LEAST: f64 = 0.060;
    let (d, fty, ftu) = (screw.diameter.as_inches(), metal.yield_ksi * KIP, metal.ultimate_ksi * KIP);
    let stripped = Some(STRIPPED_QUARTER_20).filter(|_| screw.name == "1/4-20");
    if engaged < LEAST {
        None
    } else if engaged <= 0.125 {
        Some(sheared(d, engaged, fty))
    } else if engaged < 0.25 {
        let load = 1.2 * d * fty * (0.25 - engaged) + 1.16 * stripped? * ftu * (engaged - 0.125);
        Some((load, "Rn = 1.2 D Fty (0.25 - Le) + 1.16 Asn Ftu (Le - 0.125)".into()))
    } else {
        Some((0.58 * stripped? * engaged * ftu, "Rn = 0.58 Asn Le Ftu".into()))
    }
}

fn sheared(d: f64, engaged: f64, fty: f64) -> (f64, String) {
    let k = if engaged < 0.080 { 1.01 } else { 1.20 };
    (k * d * engaged * fty, format!("Rn = {k:.2} D Le Fty"))
}

fn by_test(screw: &Screw, metal: &Metal) -> Option<Held> {
    let t = metal.thickness.as_inches();
    let tested = || PULL_OUT_TESTS.iter().filter(|test| test.screw == screw.name && test.alloy == metal.base());
    // Sheet thicknesses are whole 64ths; what is nearer than a thousandth is the same sheet.
    let same = tested().find(|test| (test.thickness - t).abs() < 1e-3);
    if let Some(test) = same {
        return Some(Held::new(Mode::PullOut, test.pounds, SCREW_SAFETY_FACTOR, PULL_OUT_SOURCE, test.standing));
    }
    let thinner = tested().filter(|test| test.thickness < t).max_by(|a, b| a.thickness.total_cmp(&b.thickness))?;
    let thicker = tested().filter(|test| test.thickness > t).min_by(|a, b| a.thickness.total_cmp(&b.thickness))?;
    let part = (t - thinner.thickness) / (thicker.thickness - thinner.thickness);
    let pounds = thinner.pounds + part * (thicker.pounds - thinner.pounds);
    let clause =
        format!("{PULL_OUT_SOURCE}, on the straight line between {} and {} in", thinner.thickness, thicker.thickness);
    let remembered = thinner.standing == Standing::Memory || thicker.standing == Standing::Memory;
    let standing = if remembered { Standing::Memory } else { Standing::Derived };
    Some(Held::new(Mode::PullOut, pounds, SCREW_SAFETY_FACTOR, clause, standing))
}
