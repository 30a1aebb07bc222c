//! From a job's stock to the question that the seams answer.

use crate::job::Checked;
use crate::length::Length;
use crate::outline::KeepClear;
use crate::seams::{BoardStock, NoLayout, SeamProblem, Seams, seams};
use crate::stock::{Saw, Sheet, SheetGrain};

/// The layouts of a checked job, or the reason why there is none.
pub(super) fn layouts(checked: &Checked) -> Seams {
    let settings = &checked.settings;
    let stock = board_stock(&checked.stock, &settings.saw, checked.outline.beam());
    if stock.is_empty() {
        return Seams::none(too_short(checked));
    }
    let problem = SeamProblem::new(&checked.frame, checked.outline.length(), stock, settings.rules.clone())
        .clear(kept_clear(checked))
        .outline(&checked.outline)
        .notation(settings.notation)
        .best(settings.shop.layouts);
    let mut found = seams(&problem);
    if let Some(reason) = &mut found.no_layout {
        reason.mend.extend(left_out(checked));
    }
    found
}

/// Sheets to buy that do not reach across, each with what it lacks.
fn left_out(checked: &Checked) -> Vec<String> {
    let (saw, beam) = (&checked.settings.saw, checked.outline.beam());
    let say = |length: Length| checked.settings.notation.text(length);
    let short = checked.stock.iter().filter(|sheet| !sheet.offcut && board_width(sheet, saw, beam).is_none());
    short
        .map(|sheet| {
            let length = usable(sheet, saw).0;
            let lacks = say(beam - length);
            format!(
                "Longer sheets of \"{}\": they give {} and the deck is {} across, {lacks} short.",
                sheet.label,
                say(length),
                say(beam)
            )
        })
        .collect()
}

/// The sheets that reach across the deck, each with the widest board it gives. Offcuts are counted on only where
/// nothing can be bought: there is one of each, and the seams would be planned on many.
fn board_stock(stock: &[Sheet], saw: &Saw, beam: Length) -> Vec<BoardStock> {
    let reaching = |offcut: bool| {
        let sheets = stock.iter().filter(move |sheet| sheet.offcut == offcut);
        sheets
            .filter_map(|sheet| Some(BoardStock { label: sheet.label.clone(), width: board_width(sheet, saw, beam)? }))
            .collect::<Vec<BoardStock>>()
    };
    let bought = reaching(false);
    if bought.is_empty() { reaching(true) } else { bought }
}

/// The widest board that reaches across the beam, strength axis athwart where the sheet has one.
fn board_width(sheet: &Sheet, saw: &Saw, beam: Length) -> Option<Length> {
    let (length, width) = usable(sheet, saw);
    let along = (length >= beam).then_some(width);
    let across = (sheet.grain == SheetGrain::None && width >= beam).then_some(length);
    along.max(across).filter(|width| *width > Length::ZERO)
}

fn usable(sheet: &Sheet, saw: &Saw) -> (Length, Length) {
    let (length, width) = sheet.size();
    (length - saw.trim * 2, width - saw.trim * 2)
}

/// Openings and keep-clear zones alike: no seam crosses either. Between a seam and an opening there is wood for a
/// fastener: its edge distance, at the least.
fn kept_clear(checked: &Checked) -> Vec<KeepClear> {
    let wood = checked.settings.schedule.edge_in_ply;
    let openings = checked.openings.iter().map(|opening| {
        let bounds = opening.path().bounds();
        KeepClear::new(opening.name.clone(), bounds.fore - wood, bounds.aft + wood)
    });
    openings.chain(checked.keep_clear.iter().cloned()).collect()
}

fn too_short(checked: &Checked) -> NoLayout {
    let say = |length: Length| checked.settings.notation.text(length);
    let saw = &checked.settings.saw;
    let longest = checked.stock.iter().max_by_key(|sheet| usable(sheet, saw).0);
    let length = longest.map_or(Length::ZERO, |sheet| usable(sheet, saw).0);
    let beam = checked.outline.beam();
    let label = longest.map(|sheet| sheet.label.clone());
    let reason = format!(
        "The deck is {} across, and the longest sheet in stock ({}) gives {}: {} short. Only boards that reach across in \
         one piece are laid out.",
        say(beam),
        label.as_deref().unwrap_or("none"),
        say(length),
        say(beam - length),
    );
    let mend = vec![format!("Sheets that give boards {} long.", say(beam))];
    NoLayout::by_sheet(reason, label, beam - length, mend)
}
