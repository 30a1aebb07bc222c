//! From panels to the parts that the nest lays out, and from a shop's settings to how it buys.

use super::inside;
use crate::arrange::Block;
use crate::error::Error;
use crate::job::{Checked, ExtraPart, Shop};
use crate::length::{JsonForm, Length, with_json_form};
use crate::nest::{Effort, Grain, Nest, Part, Rectangle, nest};
use crate::panels::{Axis, Panel};
use crate::stock::SheetGrain;
use crate::takeoff::PurchaseRules;

/// Each panel's rectangle as a part, its strength axis along the sheet's, and blocks and small parts beside them, for which
/// the waste inside the panels is offered.
pub(super) fn sheets(panels: &[Panel], blocks: &[Block], checked: &Checked, effort: Effort) -> Result<Nest, Error> {
    let small = small(blocks, checked);
    let mut parts: Vec<Part> = panels.iter().map(|panel| shaped(panel, checked, &small)).collect();
    parts.extend(blocks_of_a_size(blocks));
    parts.extend(checked.extra_parts.iter().map(extra));
    // What the nest says of parts that found no place is said in the shop's unit.
    let unit = checked.settings.notation.unit;
    with_json_form(JsonForm::Input(unit), || nest(&parts, &checked.stock, &checked.settings.saw, effort))
}

/// A panel with its waste, where some small part could come out of it.
fn shaped(panel: &Panel, checked: &Checked, small: &[Small]) -> Part {
    let part = part(panel);
    if small.is_empty() {
        return part;
    }
    let grained = checked.stock.iter().any(|sheet| sheet.grain != SheetGrain::None);
    let holds = |fallen: &Rectangle| small.iter().any(|small| holds(fallen, small, part.grain, grained));
    let waste = inside::waste(panel, &part, checked.settings.saw.kerf, holds);
    part.inside(waste)
}

/// True where a small part comes out of what falls out of a panel, the way the grain lies in it.
fn holds(fallen: &Rectangle, small: &Small, panel: Grain, grained: bool) -> bool {
    let as_is = small.length <= fallen.length && small.width <= fallen.width;
    let turned = small.length <= fallen.width && small.width <= fallen.length;
    match small.grain {
        grain if grained && grain == panel => as_is,
        Grain::Length | Grain::Width if grained => turned,
        _ => as_is || turned,
    }
}

/// Size and grain of what may come out of a panel's waste.
struct Small {
    length: Length,
    width: Length,
    grain: Grain,
}

fn small(blocks: &[Block], checked: &Checked) -> Vec<Small> {
    let extra = checked.extra_parts.iter();
    let extra = extra.map(|extra| Small { length: extra.length, width: extra.width, grain: extra.grain });
    let blocks = blocks.iter().map(|block| Small { length: block.length, width: block.width, grain: Grain::Any });
    extra.chain(blocks).collect()
}

/// Blocks of one size as one part. Their strength axis may lie either way: common practice, no source.
fn blocks_of_a_size(blocks: &[Block]) -> Vec<Part> {
    let mut parts: Vec<Part> = Vec::new();
    for block in blocks {
        match parts.iter_mut().find(|part| part.label == block.label) {
            Some(part) => part.count += 1,
            None => parts.push(Part::new(block.label.clone(), block.length, block.width)),
        }
    }
    parts
}

fn extra(extra: &ExtraPart) -> Part {
    let count = extra.count.unwrap_or(1).saturating_mul(extra.layers.unwrap_or(1));
    Part::new(extra.label.clone(), extra.length, extra.width).count(count).grain(extra.grain)
}

fn part(panel: &Panel) -> Part {
    let grain = match panel.strength_axis {
        Axis::Athwart => Grain::Length,
        Axis::ForeAndAft => Grain::Width,
    };
    Part::new(panel.label.clone(), panel.length, panel.width).grain(grain)
}

pub(super) fn purchase_rules(shop: &Shop) -> PurchaseRules {
    let mut rules = PurchaseRules::new(shop.per_box, shop.tape_roll, shop.edge_sealer_coverage);
    rules.spare_sheets = shop.spare_sheets;
    rules.spares_percent = shop.spares_percent;
    rules.member_tape = shop.barrier;
    rules.sealer_coats = shop.sealer_coats;
    rules
}
