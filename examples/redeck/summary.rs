//! What a shop owner wants to know at a glance.

use deck_core::Plan;
use deck_core::cautions::Source;
use deck_core::takeoff::Amount;
use std::fmt::Write;

/// A page of text about the plan.
pub(crate) fn summary(plan: &Plan) -> String {
    let mut text = String::new();
    let notation = plan.basis.notation();
    let (length, beam) = (notation.text(plan.deck.length), notation.text(plan.deck.beam));
    // Writing to a string does not fail.
    let _ = writeln!(text, "{}: {length} by {beam}, {} cross members", plan.job.name, plan.frame.len());
    arrangements(plan, &mut text);
    if let Some(no) = &plan.no_layout {
        let _ = writeln!(text, "\nNo layout\n  {}", no.reason);
        for mend in &no.mend {
            let _ = writeln!(text, "  Would mend it: {mend}");
        }
    } else {
        seams(plan, &mut text);
        order(plan, &mut text);
    }
    cautions(plan, &mut text);
    text
}

fn arrangements(plan: &Plan, text: &mut String) {
    if plan.arrangements.is_empty() {
        return;
    }
    let _ = writeln!(text, "\nArrangements");
    for row in &plan.arrangements {
        let built = if row.built { " (built)" } else { "" };
        let words = match (&row.figures, &row.no_layout) {
            (Some(found), _) => {
                let cost = found.cost.map(|cost| format!(", {cost}")).unwrap_or_default();
                format!("{} sheets{cost}, {} boards, {} blocks", found.sheets, found.boards, found.blocks)
            }
            (None, Some(no)) => no.reason.clone(),
            (None, None) => String::new(),
        };
        let rank = row.rank.map_or_else(|| "-".to_owned(), |rank| rank.to_string());
        let _ = writeln!(text, "  {rank} {}{built}: {words}", row.name);
    }
}

fn seams(plan: &Plan, text: &mut String) {
    let notation = plan.basis.notation();
    let Some(layout) = plan.layouts.first() else { return };
    let _ = writeln!(text, "\n{} boards, {} seams", layout.boards.len(), layout.seams.len());
    for seam in &layout.seams {
        let bearing = notation.text(seam.bearing_fore.min(seam.bearing_aft));
        let short = if seam.short_by.is_zero() {
            String::new()
        } else {
            format!(", flange short by {}", notation.text(seam.short_by))
        };
        let _ = writeln!(
            text,
            "  seam {} at {} on member {}, bearing {bearing}{short}",
            seam.number,
            notation.text(seam.fore),
            seam.member,
        );
    }
}

fn order(plan: &Plan, text: &mut String) {
    let notation = plan.basis.notation();
    let Some(takeoff) = &plan.takeoff else { return };
    let _ = writeln!(text, "\nTo buy");
    for line in &takeoff.lines {
        let needed = match line.needed {
            Amount::Count(count) => count.to_string(),
            Amount::Length(length) => notation.text(length),
            Amount::Gallons(gallons) => format!("{gallons} gal"),
        };
        let cost = line.cost.map(|cost| format!(", {cost}")).unwrap_or_default();
        let _ = writeln!(
            text,
            "  {} {} {} (needed {needed}){cost}",
            line.buy,
            plural(&line.unit, line.buy),
            line.description
        );
    }
    let _ = writeln!(text, "  new boards weigh {}, dry", plan.basis.mass(takeoff.deck_weight_lb));
}

fn plural(unit: &str, count: u64) -> String {
    match (unit, count) {
        (unit, 1) => unit.into(),
        ("box", _) => "boxes".into(),
        (unit, _) => format!("{unit}s"),
    }
}

fn cautions(plan: &Plan, text: &mut String) {
    let triggered: Vec<_> = plan.cautions.iter().filter(|caution| caution.source == Source::Plan).collect();
    let standing = plan.cautions.len() - triggered.len();
    let _ = writeln!(text, "\nCautions from this plan ({standing} standing ones are in the packet)");
    for caution in triggered {
        let _ = writeln!(text, "  {}\n    {}", caution.about.join("; "), caution.text);
    }
    if !plan.assumed.is_empty() {
        let _ = writeln!(text, "\n{} settings are assumed; the packet lists them.", plan.assumed.len());
    }
}
