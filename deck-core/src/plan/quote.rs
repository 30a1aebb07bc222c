//! From the plan to what the room of the quote asks: tasks, scope, what changes the price.

use super::Plan;
use crate::frame::Condition;
use crate::job::{Checked, LabourSpec, QuoteSpec};
use crate::money::{Figure, ThreePoint};
use crate::published::LABOUR_STEPS;
use crate::quote::{Quote, QuoteInput, Task, Terms, quote as room};
use crate::strip_out::OldCovering;

/// Planning figures of labour, for the quote.
const PLANNING: &str = "planning figure of the trade, no source: replace it by the shop's own";
/// How much of the difficulty all tasks share where the shop does not say: half of it, this library's choice.
const SHARED: (i64, u32) = (5, 1);

pub(super) fn quote(plan: &Plan, checked: &Checked) -> Option<Quote> {
    let spec = checked.quote.as_ref()?;
    let unsaid = LabourSpec::new();
    let labour = spec.labour.as_ref().unwrap_or(&unsaid);
    let tasks = tasks(plan, labour);
    let terms = terms(plan, spec);
    Some(room(&QuoteInput {
        takeoff: plan.takeoff.as_ref(),
        prices: spec.prices.as_deref().unwrap_or_default(),
        materials: spec.materials.as_deref().unwrap_or_default(),
        tasks: &tasks,
        rate: labour.rate,
        correlation: labour.correlation.unwrap_or(Figure::scaled(SHARED.0, SHARED.1)),
        distribution: labour.distribution.unwrap_or_default(),
        charge: labour.charge.unwrap_or_default(),
        terms: &terms,
    }))
}

/// The steps of the trade in order, each with the hours that are known best: the shop's, those of the strip-out, the
/// planning figure. The shop's further tasks follow.
fn tasks(plan: &Plan, labour: &LabourSpec) -> Vec<Task> {
    let own = labour.tasks.as_deref().unwrap_or_default();
    let steps = LABOUR_STEPS.iter().map(|step| {
        let (hours, source) = match reckoned(plan, step.task) {
            Some(hours) => (hours, "reckoned for this boat, on the strip-out sheet"),
            None => (step.hours(), PLANNING),
        };
        Task::new(step.task, step.words, hours, source)
    });
    let mut tasks: Vec<Task> = steps.collect();
    for spec in own {
        let found = tasks.iter_mut().find(|task| task.task == spec.task);
        let words = found.as_ref().map_or_else(|| spec.task.clone(), |task| task.words.clone());
        let mut task = Task::new(spec.task.clone(), words, spec.hours, "the shop's own");
        task.rate = spec.rate;
        match found {
            Some(step) => *step = task,
            None => tasks.push(task),
        }
    }
    tasks.retain(|task| task.hours != ThreePoint::default());
    tasks
}

fn reckoned(plan: &Plan, step: &str) -> Option<ThreePoint> {
    let found = plan.strip_out.as_ref()?;
    let of = |covering: bool| {
        let lines = found.hours.iter().filter(|line| (line.task == "old covering") == covering);
        lines.map(|line| line.hours).sum::<ThreePoint>()
    };
    match step {
        "old-covering" => Some(of(true)),
        "boards" => Some(of(false)),
        _ => None,
    }
}

fn terms(plan: &Plan, spec: &QuoteSpec) -> Terms {
    let mut terms = Terms::default();
    (terms.kind, terms.tax_on) = (spec.kind.unwrap_or_default(), spec.tax_on.unwrap_or_default());
    terms.currency.clone_from(&spec.currency);
    terms.prepared_for.clone_from(&spec.prepared_for);
    terms.date.clone_from(&spec.date);
    (terms.overhead_percent, terms.contingency_percent) = (spec.overhead_percent, spec.contingency_percent);
    (terms.disposal, terms.freight, terms.tax_percent) = (spec.disposal, spec.freight, spec.tax_percent);
    terms.change_rate = spec.change_rate;
    (terms.scope, terms.changes) = (scope(plan), changes(plan));
    terms.exclusions = EXCLUSIONS.iter().map(|words| (*words).to_owned()).collect();
    terms.exclusions.extend(spec.exclusions.iter().flatten().cloned());
    terms.terms = spec.terms.clone().unwrap_or_default();
    terms
}

/// What no quote of a deck holds; common practice, no source.
const EXCLUSIONS: [&str; 4] = [
    "Repair of members, tubes, brackets and welds beyond the hours in the list",
    "Engine, fuel system, wiring and steering, but for taking off and putting back what is in the way",
    "Seats, rails, top and furniture that do not survive being taken off",
    "A rating of strength or capacity: none is given",
];

fn scope(plan: &Plan) -> Vec<String> {
    let notation = plan.basis.notation();
    let mut scope = Vec::new();
    if let Some(found) = &plan.strip_out {
        let covering = match found.covering.held {
            OldCovering::Glued => "the glued covering, ",
            OldCovering::Stapled => "the stapled covering, ",
            OldCovering::None => "",
        };
        let count = found.fastener_count.likely;
        let about = if found.fasteners_estimated { "about " } else { "" };
        scope.push(format!(
            "Take off {covering}{about}{count} fasteners and {} old boards, down to the cross members",
            found.boards.count
        ));
    }
    let size = format!("{} by {}", notation.text(plan.deck.length), notation.text(plan.deck.beam));
    if plan.panels.is_empty() {
        scope.push(format!("A deck {size}: no layout was found, so its boards are not priced"));
        return scope;
    }
    let fasteners = plan.fasteners.as_ref().map_or(0, |fastening| fastening.count);
    scope.push(format!(
        "New deck {size}: {} panels {} thick on {} cross members, {fasteners} fasteners, edges sealed, seams taped",
        plan.panels.len(),
        notation.text(plan.basis.thickness),
        plan.frame.len()
    ));
    if let Some(division) = plan.division.as_ref().filter(|division| !division.blocks.is_empty()) {
        scope.push(format!("{} blocks glued and screwed under joints along the boat", division.blocks.len()));
    }
    if !plan.openings.is_empty() {
        let names: Vec<&str> = plan.openings.iter().map(|opening| opening.name.as_str()).collect();
        scope.push(format!("Openings cut: {}", names.join(", ")));
    }
    scope
}

/// What changes the price when it is found: what this plan shows first, then what every strip-out may show.
fn changes(plan: &Plan) -> Vec<String> {
    let mut found = Vec::new();
    for (condition, words) in [(Condition::Corroded, "corroded"), (Condition::Cut, "cut"), (Condition::Bent, "bent")] {
        let members: Vec<String> = plan
            .frame
            .iter()
            .filter(|member| member.condition == condition)
            .map(|member| format!("M{}", member.number))
            .collect();
        if !members.is_empty() {
            found.push(format!("{} {words}: repair once it lies bare, or further members like it", members.join(", ")));
        }
    }
    if let Some(strip) = &plan.strip_out {
        let count = strip.fastener_count;
        found.push(if strip.fasteners_estimated {
            format!("More than {} fasteners, or any that are seized or spin: none was counted or tried", count.high)
        } else {
            format!("More than the {} fasteners that were counted, or worse ones", count.likely)
        });
        for pit in &strip.pits {
            let depth = plan.basis.notation().text(pit.depth);
            found.push(format!("M{}: pits deeper than the {depth} that was measured", pit.member));
        }
    }
    if let Some(square) = &plan.deck.checks.square {
        let difference = plan.basis.notation().text(square.difference);
        found.push(format!("A frame out of square: its diagonals differ by more than {difference}"));
    }
    found.extend(STANDING.iter().map(|words| (*words).to_owned()));
    found
}

const STANDING: [&str; 4] = [
    "Rot, corrosion or broken welds that nobody could see before the boards were up",
    "A member that was missed in the readings, or stands elsewhere",
    "Wet foam, a leaking tank or a fuel line in the way",
    "Sheets or covering that cannot be bought in the size or the colour planned",
];
