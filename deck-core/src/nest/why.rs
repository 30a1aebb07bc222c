//! Says why a part found no place.

use super::part::{Grain, Part};
use super::problem::{Class, Problem};
use super::report::Order;
use super::result::Unplaced;
use crate::length::Length;
use crate::stock::{Sheet, SheetGrain};

/// One line for each part with copies left, in the order of the parts.
pub(super) fn unplaced(order: Order<'_>, left: &[u32]) -> Vec<Unplaced> {
    let lines = order.parts.iter().enumerate().zip(left).filter(|(_, left)| **left > 0);
    lines
        .map(|((index, part), &count)| {
            let why = if in_waste(index, order) { WASTE.to_owned() } else { why(part, order) };
            Unplaced { part: part.label.clone(), count, why }
        })
        .collect()
}

const WASTE: &str = "only waste inside another part holds it, and none of that is left";

/// True where no stock holds the part and the waste inside some other does.
fn in_waste(part: usize, order: Order<'_>) -> bool {
    let (problem, stock) = (order.problem, order.stock.len());
    if problem.waste.is_empty() {
        return false;
    }
    let of = |class: &&Class| class.members.iter().any(|member| member.0 == part);
    let Some(class) = problem.classes.iter().find(of) else { return false };
    let holds =
        |from: usize, to: usize| problem.racks.iter().take(to).skip(from).any(|rack| Problem::fits(class, rack));
    !holds(0, stock) && holds(stock, problem.racks.len())
}

fn why(part: &Part, order: Order<'_>) -> String {
    let usable: Vec<Usable> = order.stock.iter().map(|sheet| Usable::new(sheet, order.saw.trim)).collect();
    if usable.is_empty() {
        return "no sheets in stock".to_owned();
    }
    if usable.iter().any(|sheet| sheet.holds(part)) {
        return "no sheets left".to_owned();
    }
    let inside = if order.saw.trim.is_zero() { "" } else { " inside the trim" };
    let most = |side: fn(&Usable) -> Length| usable.iter().map(side).max().unwrap_or(Length::ZERO);
    let (long, short) = (part.length.max(part.width), part.length.min(part.width));
    let longest = most(|sheet| sheet.length.max(sheet.width));
    if long > longest {
        return format!("{long} is longer than any sheet in stock ({longest}{inside})");
    }
    let widest = most(|sheet| sheet.length.min(sheet.width));
    if short > widest {
        return format!("{short} is wider than any sheet in stock ({widest}{inside})");
    }
    let grained = usable.iter().all(|sheet| sheet.grain);
    let along = most(|sheet| sheet.length);
    let across = most(|sheet| sheet.width);
    match part.grain {
        Grain::Length if grained && part.length > along => {
            format!("{} along the grain is more than any sheet in stock has ({along}{inside})", part.length)
        }
        Grain::Length if grained && part.width > across => {
            format!("{} across the grain is more than any sheet in stock has ({across}{inside})", part.width)
        }
        Grain::Width if grained && part.width > along => {
            format!("{} along the grain is more than any sheet in stock has ({along}{inside})", part.width)
        }
        Grain::Width if grained && part.length > across => {
            format!("{} across the grain is more than any sheet in stock has ({across}{inside})", part.length)
        }
        Grain::Any => format!("no sheet in stock is both long and wide enough for {long} by {short}"),
        _ => format!("no sheet in stock holds {} by {} the way the grain lies", part.length, part.width),
    }
}

/// What a sheet offers inside its trim.
struct Usable {
    length: Length,
    width: Length,
    grain: bool,
}

impl Usable {
    fn new(sheet: &Sheet, trim: Length) -> Usable {
        let (length, width) = sheet.size();
        Usable { length: length - trim * 2, width: width - trim * 2, grain: sheet.grain == SheetGrain::Length }
    }

    fn holds(&self, part: &Part) -> bool {
        let as_is = part.length <= self.length && part.width <= self.width;
        let turned = part.length <= self.width && part.width <= self.length;
        match part.grain {
            Grain::Length if self.grain => as_is,
            Grain::Width if self.grain => turned,
            _ => as_is || turned,
        }
    }
}
