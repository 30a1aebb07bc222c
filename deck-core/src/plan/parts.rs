//! From panels to the parts that the nest lays out, and from a shop's settings to how it buys.

use super::inside;
use crate::error::Error;
use crate::job::{Checked, ExtraPart, Shop};
use crate::length::{JsonForm, with_json_form};
use crate::nest::{Effort, Grain, Nest, Part, Rectangle, nest};
use crate::panels::{Axis, Panel};
use crate::stock::SheetGrain;
use crate::takeoff::PurchaseRules;

/// Each panel's rectangle as a part, its strength axis along the sheet's, and the small parts beside them, for which the
/// waste inside the panels is offered.
pub(super) fn sheets(panels: &[Panel], checked: &Checked, effort: Effort) -> Result<Nest, Error> {
    let mut parts: Vec<Part> = panels.iter().map(|panel| shaped(panel, checked)).collect();
    parts.extend(checked.extra_parts.iter().map(extra));
    // What the nest says of parts that found no place is said in the shop's unit.
    let unit = checked.settings.notation.unit;
    with_json_form(JsonForm::Input(unit), || nest(&parts, &checked.stock, &checked.settings.saw, effort))
}

/// A panel with its waste, where some small part could come out of it.
fn shaped(panel: &Panel, checked: &Checked) -> Part {
    let part = part(panel);
    if checked.extra_parts.is_empty() {
        return part;
    }
    let grained = checked.stock.iter().any(|sheet| sheet.grain != SheetGrain::None);
    let holds = |fallen: &Rectangle| checked.extra_parts.iter().any(|extra| holds(fallen, extra, part.grain, grained));
    let waste = inside::waste(panel, &part, checked.settings.saw.kerf, holds);
    part.inside(waste)
}

/// True where a small part comes out of what falls out of a panel, the way the grain lies in it.
fn holds(fallen: &Rectangle, extra: &ExtraPart, panel: Grain, grained: bool) -> bool {
    let as_is = extra.length <= fallen.length && extra.width <= fallen.width;
    let turned = extra.length <= fallen.width && extra.width <= fallen.length;
    match extra.grain {
        grain if grained && grain == panel => as_is,
        Grain::Length | Grain::Width if grained => turned,
        _ => as_is || turned,
    }
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
