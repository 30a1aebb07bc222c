//! From panels to the parts that the nest lays out, and from a shop's settings to how it buys.

use crate::error::Error;
use crate::job::{Checked, Shop};
use crate::length::{JsonForm, with_json_form};
use crate::nest::{Effort, Grain, Nest, Part, nest};
use crate::panels::{Axis, Panel};
use crate::takeoff::PurchaseRules;

/// Each panel's rectangle as a part, its strength axis along the sheet's.
pub(super) fn sheets(panels: &[Panel], checked: &Checked, effort: Effort) -> Result<Nest, Error> {
    let parts: Vec<Part> = panels.iter().map(part).collect();
    // What the nest says of parts that found no place is said in the shop's unit.
    let unit = checked.settings.notation.unit;
    with_json_form(JsonForm::Input(unit), || nest(&parts, &checked.stock, &checked.settings.saw, effort))
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
