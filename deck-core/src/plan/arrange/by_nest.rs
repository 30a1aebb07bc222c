//! Seams chosen by what their boards cost in the nest, and not by their count alone.
//!
//! # Method
//! Layouts come from the seam search in its own order, a batch at a time, and each is nested: stock, offcuts on the rack,
//! kerf and the small parts beside the boards. The least cost is kept; of those alike, the first in the search's order. No
//! layout with more boards than the last can cost less than their cover ([`cover`](super::cover)): once that is no less
//! than the best, or there are no more layouts, the search ends. It also ends after a number of layouts that goes with the
//! effort, and the bound that is left says how far from best the answer may be.
//!
//! # Limits
//! Each set of members is nested at its best positions by the search's own costs: a seam is not moved on its flange so that
//! a board fits an offcut. The bound holds for every position. Layouts with more seams on flanges that are too narrow for
//! two rows are not looked at.

use super::cover;
use super::found::{SeamPricing, SheetCost};
use super::parts;
use super::priced::units;
use crate::error::Error;
use crate::job::Checked;
use crate::nest::{Cost, Effort, Nest};
use crate::panels::{Panel, panels};
use crate::seams::{SeamLayout, Seams};

/// Layouts that are asked for at first; each further asking takes four times as many.
const FIRST: usize = 24;

/// Layouts that are nested at the most.
fn most(effort: Effort) -> usize {
    match effort {
        Effort::Quick => FIRST,
        Effort::Thorough => FIRST * 64,
        _ => FIRST * 16,
    }
}

/// A layout with its cost in the nest.
struct Entry {
    layout: SeamLayout,
    unplaced: u32,
    cost: i128,
}

/// The layouts with the cheapest first, and what was found on the way; none where there is no layout.
pub(super) fn choose(checked: &Checked, effort: Effort) -> Result<Option<(Seams, SeamPricing)>, Error> {
    let mut entries: Vec<Entry> = Vec::new();
    let mut wanted = FIRST;
    let all = loop {
        let found = checked.layouts_best(wanted);
        let listed = found.layouts.len();
        let least_short = found.layouts.first().map_or(0, |layout| layout.cost.short_seams);
        let kept = found.layouts.into_iter().filter(|layout| layout.cost.short_seams == least_short);
        let kept: Vec<SeamLayout> = kept.collect();
        let past_level = kept.len() < listed;
        for layout in kept.into_iter().skip(entries.len()) {
            let nest = nested(checked, &layout, Effort::Quick)?;
            entries.push(Entry { unplaced: unplaced(&nest), cost: units(nest.cost), layout });
        }
        if listed < wanted || past_level {
            break true;
        }
        if wanted >= most(effort) || is_settled(checked, &entries) {
            break false;
        }
        wanted *= 4;
    };
    let Some(first) = entries.first().map(|entry| entry.layout.clone()) else { return Ok(None) };
    let priced = entries.len();
    // A stable sort: the search's own order decides between layouts that cost the same.
    entries.sort_by_key(|entry| (entry.unplaced, entry.cost));
    let seams_first = nested(checked, &first, effort)?;
    let cheapest = match entries.first() {
        Some(entry) if entry.layout != first => nested(checked, &entry.layout, effort)?,
        _ => seams_first.clone(),
    };
    // What the quick nest promised is held against the nest that is built.
    let better = (unplaced(&cheapest), units(cheapest.cost)) < (unplaced(&seams_first), units(seams_first.cost));
    let chosen = if better { &cheapest } else { &seams_first };
    if !better && let Some(place) = entries.iter().position(|entry| entry.layout == first) {
        let entry = entries.remove(place);
        entries.insert(0, entry);
    }
    let bound = bound(checked, first.boards.len()).unwrap_or(0).min(units(chosen.cost));
    let pricing = SeamPricing {
        layouts: priced,
        every_layout: all,
        seams_first: SheetCost::of(seams_first.cost),
        by_nest: SheetCost::of(chosen.cost),
        bound: SheetCost::of(in_kind(chosen.cost, bound)),
        gap: SheetCost::of(in_kind(chosen.cost, units(chosen.cost) - bound)),
        proven: bound == units(chosen.cost) && unplaced(chosen) == 0,
    };
    entries.truncate(checked.settings.shop.layouts);
    let proven = pricing.proven;
    let layouts = entries.into_iter().map(|entry| entry.layout).collect();
    Ok(Some((Seams { layouts, no_layout: None, proven }, pricing)))
}

fn nested(checked: &Checked, layout: &SeamLayout, effort: Effort) -> Result<Nest, Error> {
    let boards: Vec<Panel> = panels(&checked.outline, layout, &checked.openings, checked.thickness);
    parts::sheets(&boards, &[], checked, effort)
}

fn unplaced(nest: &Nest) -> u32 {
    nest.unplaced.iter().map(|part| part.count).sum()
}

/// True where no layout that is still to come can cost less than the best so far.
fn is_settled(checked: &Checked, entries: &[Entry]) -> bool {
    let best = entries.iter().filter(|entry| entry.unplaced == 0).map(|entry| entry.cost).min();
    let last = entries.last().map_or(1, |entry| entry.layout.boards.len());
    best.zip(bound(checked, last)).is_some_and(|(best, bound)| bound >= best)
}

/// The least cost of any layout with so many boards or more.
fn bound(checked: &Checked, boards: usize) -> Option<i128> {
    let most = checked.frame.members().len() + 1;
    (boards..=most.max(boards)).filter_map(|boards| cover::least_cost(checked, boards)).min()
}

fn in_kind(like: Cost, units: i128) -> Cost {
    match like {
        Cost::Money(_) => Cost::Money(crate::money::Money::from_ten_thousandths(units)),
        Cost::Area(_) => Cost::Area(crate::length::Area::from_square_nanometres(units)),
    }
}
