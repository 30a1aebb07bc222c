//! Which manner of laying boards is the best, and which is built?
//!
//! The room [`arrange`](crate::arrange) lists divisions and has not heard of a price; the files here have each nested and
//! put the kinds in order.
//!
//! ```text
//!   job ── arrange::divisions ──► divisions of each kind ── price ──► the cheapest of the kind ──► ranked ──► built
//! ```

mod by_nest;
mod cover;
mod found;
mod priced;
mod told;

pub use found::{Arrangement, ArrangementFigures, PlanDivision, SeamPricing, SheetCost};

use super::parts;
use crate::arrange::{ArrangementKind, Division, divisions};
use crate::error::Error;
use crate::job::Checked;
use crate::nest::{Effort, Nest};
use crate::panels::{Panel, panels, panels_of};
use crate::seams::{NoLayout, Seams};
use priced::Priced;

/// What is to be built, and what it was compared with.
pub(super) struct Arranged {
    /// The seams: of what is built, or why nothing is.
    pub(super) seams: Seams,
    /// The division that is built; none where boards lie athwart in one piece.
    pub(super) division: Option<Division>,
    /// Its sheets, where they are known already.
    pub(super) nest: Option<Nest>,
    /// Every arrangement, the best first; those that cannot be come last.
    pub(super) table: Vec<Arrangement>,
    /// What the plan says of the division.
    pub(super) told: Option<PlanDivision>,
    /// What came of choosing seams by the nest.
    pub(super) pricing: Option<SeamPricing>,
}

impl Arranged {
    /// Seams with nothing that they were compared with.
    pub(super) fn plain(seams: Seams) -> Arranged {
        Arranged { seams, division: None, nest: None, table: Vec::new(), told: None, pricing: None }
    }
}

/// Seams without arrangements, or the arrangements that the job asks for or the deck needs.
pub(super) fn arrange(checked: &Checked, effort: Effort) -> Result<Arranged, Error> {
    if !checked.settings.arranging.compares() {
        return Ok(Arranged::plain(checked.layouts()));
    }
    let mut possible: Vec<Priced> = Vec::new();
    let mut refused: Vec<(ArrangementKind, NoLayout)> = Vec::new();
    for &kind in &checked.settings.arranging.compare {
        match of_kind(checked, kind, effort)? {
            Ok(priced) => possible.push(priced),
            Err(reason) => refused.push((kind, reason)),
        }
    }
    possible.sort_by(Priced::compare);
    let built = match checked.settings.arranging.build {
        Some(kind) => possible.iter().position(|priced| priced.kind == kind),
        None => (!possible.is_empty()).then_some(0),
    };
    let mut table: Vec<Arrangement> = possible
        .iter()
        .enumerate()
        .map(|(place, priced)| priced.row(checked, place + 1, built == Some(place)))
        .collect();
    table.extend(refused.iter().map(|(kind, reason)| Arrangement::refused(*kind, reason.clone())));
    let Some(place) = built else {
        return Ok(Arranged { table, ..Arranged::plain(none(checked, refused)) });
    };
    let priced = possible.swap_remove(place);
    let told = told::told(checked, &priced, &table);
    let Priced { seams, division, nest, pricing, .. } = priced;
    Ok(Arranged { seams, division, nest: Some(nest), table, told, pricing })
}

/// The reason of the arrangement that was to be built, or of the first that was compared.
fn none(checked: &Checked, refused: Vec<(ArrangementKind, NoLayout)>) -> Seams {
    let wanted = checked.settings.arranging.build;
    let place = wanted.and_then(|kind| refused.iter().position(|(other, _)| *other == kind)).unwrap_or(0);
    match refused.into_iter().nth(place) {
        Some((_, reason)) => Seams::none(reason),
        None => checked.layouts(),
    }
}

/// The cheapest of a kind, or why there is none.
fn of_kind(checked: &Checked, kind: ArrangementKind, effort: Effort) -> Result<Result<Priced, NoLayout>, Error> {
    if kind == ArrangementKind::Athwart {
        return athwart(checked, effort);
    }
    let found = match divisions(&checked.arrange_problem(), kind) {
        Ok(found) => found,
        Err(reason) => return Ok(Err(reason)),
    };
    let tried = found.len();
    let mut best: Option<Priced> = None;
    for division in found {
        let boards = panels_of(&checked.outline, &division, &checked.openings, Some(checked.thickness));
        let nest = parts::sheets(&boards, &division.blocks, checked, Effort::Quick)?;
        // Widths of rows come from a list: of those, nobody knows that none is better.
        let proven = division.proven && kind != ArrangementKind::ForeAndAft;
        let seams = Seams { layouts: vec![division.layout.clone()], no_layout: None, proven };
        let division = Some(division);
        let priced = Priced { kind, seams, division, boards, nest, tried, utilisation: None, pricing: None };
        if best.as_ref().is_none_or(|best| priced.compare(best).is_lt()) {
            best = Some(priced);
        }
    }
    let Some(mut best) = best else {
        // unreachable: a kind without a reason has a division.
        return Ok(Err(NoLayout::by_rule("No division was found.".into(), Vec::new())));
    };
    if effort != Effort::Quick {
        best.nest = sheets(checked, &best, effort)?;
    }
    best.utilisation = priced::utilisation(checked, &best.boards)?;
    Ok(Ok(best))
}

fn sheets(checked: &Checked, priced: &Priced, effort: Effort) -> Result<Nest, Error> {
    let blocks = priced.division.as_ref().map_or(&[][..], |division| &division.blocks);
    parts::sheets(&priced.boards, blocks, checked, effort)
}

/// Boards in one piece from side to side, by the seams alone.
fn athwart(checked: &Checked, effort: Effort) -> Result<Result<Priced, NoLayout>, Error> {
    let by_nest = if checked.settings.arranging.seams_by_nest { by_nest::choose(checked, effort)? } else { None };
    let (seams, pricing) = match by_nest {
        Some((seams, pricing)) => (seams, Some(pricing)),
        None => (checked.layouts(), None),
    };
    let Some(layout) = seams.layouts.first() else {
        let reason = seams.no_layout.clone();
        return Ok(Err(reason.unwrap_or_else(|| NoLayout::by_rule("No layout was found.".into(), Vec::new()))));
    };
    let boards: Vec<Panel> = panels(&checked.outline, layout, &checked.openings, checked.thickness);
    let nest = parts::sheets(&boards, &[], checked, effort)?;
    let utilisation = priced::utilisation(checked, &boards)?;
    let kind = ArrangementKind::Athwart;
    let tried = pricing.as_ref().map_or(1, |pricing| pricing.layouts);
    Ok(Ok(Priced { kind, seams, division: None, boards, nest, tried, utilisation, pricing }))
}
