//! Six sizes of sheet, few of each (Hopper and Turton 2001): no best answers were read, so own bound against own cost.

use crate::Outcome;
use crate::args::Args;
use crate::data::{Instance, instances};
use crate::measure::{area, timed, way};
use crate::table::{Table, milliseconds, three_figures};
use deck_core::Area;

pub(crate) fn run(args: &Args) -> Outcome {
    let orders = instances(args, "multi_sheet_m.json")?;
    for turned in args.turns.iter().copied().filter(|_| !orders.is_empty()) {
        println!("Several sheet sizes, {}, {}; areas in unit squares:\n", way(turned), args.effort_text());
        let head = [
            "order",
            "parts",
            "left over",
            "sheets",
            "parts' area",
            "cost",
            "own bound",
            "above it, %",
            "proven",
            "ms",
        ];
        let table = Table::new(&head);
        for order in &orders {
            table.row(&cells(order, turned, args)?);
        }
        println!();
    }
    Ok(())
}

fn cells(order: &Instance, turned: bool, args: &Args) -> Result<Vec<String>, String> {
    let (nest, seconds) = timed(order, turned, args)?;
    let (cost, bound) = (units(area(nest.cost)?), units(area(nest.bound)?));
    if bound > cost {
        return Err(format!("{}: a bound of {bound} above the cost of {cost}", order.name));
    }
    let above = 100.0 * (cost - bound) as f64 / bound.max(1) as f64;
    Ok(vec![
        order.name.clone(),
        order.copies().to_string(),
        units(order.area_left(&nest)).to_string(),
        nest.sheet_count.to_string(),
        order.area().to_string(),
        cost.to_string(),
        bound.to_string(),
        three_figures(above),
        (if nest.proven { "yes" } else { "no" }).to_owned(),
        milliseconds(seconds),
    ])
}

/// Whole square units of an area: a unit is a millimetre here.
fn units(area: Area) -> i128 {
    area.square_nanometres() / 1_000_000_000_000
}
