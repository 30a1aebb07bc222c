//! Cautions about openings: near a seam, an edge, a flange or each other. What is too near, the room of openings says.

use super::Caution;
use crate::length::{Length, Notation};
use crate::openings::{Against, Clearance, OpeningCheck, OpeningRules, Rule};
use crate::outline::Opening;

const PRACTICE: &str = "common practice, no source";

/// Cautions about the openings of a deck, each measured against its rules.
pub fn openings(
    checks: &[OpeningCheck],
    openings: &[Opening],
    rules: &OpeningRules,
    notation: &Notation,
) -> Vec<Caution> {
    let say = |length: Length| notation.text(length);
    [
        over_member(checks),
        near_flange(checks, rules, &say),
        near_seam(checks, rules, &say),
        near_edge(checks, rules, &say),
        near_each_other(checks, &say),
        sharp(checks, rules, &say),
        slots(openings),
    ]
    .into_iter()
    .flatten()
    .collect()
}

/// The clearances of a rule that are not kept, each with its opening.
fn broken(checks: &[OpeningCheck], rule: Rule) -> impl Iterator<Item = (&OpeningCheck, &Clearance)> {
    let of = move |check: &'_ OpeningCheck| check.clearances.iter().filter(move |found| found.rule == rule).count() > 0;
    checks.iter().filter(move |check| of(check)).flat_map(move |check| {
        let found = check.clearances.iter().filter(move |found| found.rule == rule && !found.holds());
        found.map(move |found| (check, found))
    })
}

fn over_member(checks: &[OpeningCheck]) -> Option<Caution> {
    let about = checks.iter().flat_map(|check| {
        check.clearances.iter().filter_map(|found| match (found.rule, &found.against) {
            (Rule::Member, Against::Member(number)) => {
                let framed = if check.framed { " (framed)" } else { "" };
                Some(format!("{} over member {number}{framed}", check.name))
            }
            _ => None,
        })
    });
    Caution::triggered(
        "opening-over-member",
        about.collect(),
        "Do not cut these members. A framed lid may cross a member that stays whole; otherwise move the opening.",
        "The cross members hold the tubes together.",
        "licensed practice; the boat builder's instructions",
    )
}

fn near_flange(checks: &[OpeningCheck], rules: &OpeningRules, say: &impl Fn(Length) -> String) -> Option<Caution> {
    let about = broken(checks, Rule::Flange).filter_map(|(check, found)| match &found.against {
        Against::Member(number) => Some(format!("{}: {} from member {number}", check.name, say(found.distance))),
        _ => None,
    });
    let text = format!("These openings are nearer than {} to a flange and not framed.", say(rules.from_flange));
    let reason = "The strip of board that is left breaks.";
    Caution::triggered("opening-near-flange", about.collect(), text, reason, PRACTICE)
}

fn near_seam(checks: &[OpeningCheck], rules: &OpeningRules, say: &impl Fn(Length) -> String) -> Option<Caution> {
    let about = broken(checks, Rule::Seam).filter_map(|(check, found)| match &found.against {
        Against::Seam(number) => Some(format!("{}: {} from seam {number}", check.name, say(found.distance))),
        _ => None,
    });
    let text = format!("These openings are nearer than {} to a seam.", say(rules.from_seam));
    Caution::triggered("opening-near-seam", about.collect(), text, "The strip of board that is left breaks.", PRACTICE)
}

fn near_edge(checks: &[OpeningCheck], rules: &OpeningRules, say: &impl Fn(Length) -> String) -> Option<Caution> {
    let about = broken(checks, Rule::Edge).map(|(check, _)| check.name.clone());
    let text = format!("These openings are nearer than {} to the deck's edge.", say(rules.from_edge));
    Caution::triggered("opening-near-edge", about.collect(), text, "The strip of board that is left breaks.", PRACTICE)
}

/// Each pair is told once, by the opening that stands first.
fn near_each_other(checks: &[OpeningCheck], say: &impl Fn(Length) -> String) -> Option<Caution> {
    let place = |name: &str| checks.iter().position(|check| check.name == name);
    let about = broken(checks, Rule::Apart).filter_map(|(check, found)| match &found.against {
        Against::Opening(other) if place(&check.name) < place(other) => {
            Some(format!("{} and {other}: {} apart", check.name, say(found.distance)))
        }
        _ => None,
    });
    Caution::triggered(
        "openings-near-each-other",
        about.collect(),
        "These openings are nearer to each other than the smaller of them is wide.",
        "The strip of board that is left breaks.",
        PRACTICE,
    )
}

fn sharp(checks: &[OpeningCheck], rules: &OpeningRules, say: &impl Fn(Length) -> String) -> Option<Caution> {
    let about = broken(checks, Rule::Corner).map(|(check, found)| format!("{}: {}", check.name, say(found.distance)));
    let text = format!("Round the corners of these openings to {} at least.", say(rules.corner_radius));
    Caution::triggered("sharp-corner", about.collect(), text, "Cracks start in sharp inside corners.", PRACTICE)
}

fn slots(openings: &[Opening]) -> Option<Caution> {
    let slots = openings.iter().filter_map(|opening| Some((opening, opening.slot?)));
    let about = slots.map(|(opening, edge)| format!("{} at the {} edge", opening.name, edge.name()));
    Caution::triggered(
        "slot-open-to-edge",
        about.collect(),
        "These slots are open to the edge: the board has two loose ends there. Rest or clamp both, and seal the slot's edges.",
        "A slot lets the board split and drink from its end, and nothing ties its two sides together.",
        PRACTICE,
    )
}
