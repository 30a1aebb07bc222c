//! What is said of prices and hours.

use super::figures::Section;
use super::strip_out::each;
use super::{Parts, unique};
use crate::error::{Fault, Faults, Kind};
use crate::job::read::places::place;
use crate::job::{LabourSpec, TaskSpec};
use crate::quote::{ExtraMaterial, ItemPrice};
use crate::takeoff::Item;

pub(super) fn quote(parts: &Parts<'_>, faults: &mut Faults) {
    let Some((spec, places)) = parts.quote else { return };
    let mut own = Faults::new();
    each(parts, places, "prices", spec.prices.as_deref(), &mut own, price);
    each(parts, places, "materials", spec.materials.as_deref(), &mut own, material);
    if let Some(prices) = &spec.prices {
        let names = prices.iter().enumerate().map(|(index, price)| (place(places, "prices", index), price.item.word()));
        unique(names, "prices", "item", &mut own);
    }
    if let Some(labour) = &spec.labour {
        let mut inner = Faults::new();
        each(parts, places, "tasks", labour.tasks.as_deref(), &mut inner, task);
        if let Some(tasks) = &labour.tasks {
            let names =
                tasks.iter().enumerate().map(|(index, task)| (place(places, "tasks", index), task.task.as_str()));
            unique(names, "tasks", "task", &mut inner);
        }
        of_labour(labour, &mut Section { notation: parts.notation(), faults: &mut inner });
        own.take(inner.finish().map_err(|error| error.within("labour")));
    }
    let mut check = Section { notation: parts.notation(), faults: &mut own };
    check.amount("disposal", spec.disposal);
    check.amount("freight", spec.freight);
    check.between("overhead_percent", spec.overhead_percent, 0, 1000);
    check.between("contingency_percent", spec.contingency_percent, 0, 1000);
    check.between("tax_percent", spec.tax_percent, 0, 1000);
    check.amount("change_rate", spec.change_rate);
    if let (Some(percent), None) = (spec.tax_percent, spec.tax_on) {
        let message = format!("What the tax of {percent} in a hundred is reckoned on is not told.");
        let accepted = "Give \"tax_on\": \"materials\" or \"all\".";
        check.refuse(Fault::new(Kind::Conflict, percent.to_string(), message, accepted), "tax_percent");
    }
    if let Err(error) = own.finish() {
        faults.absorb(error.within("quote"));
    }
}

fn of_labour(labour: &LabourSpec, section: &mut Section<'_>) {
    section.amount("rate", labour.rate);
    section.between("correlation", labour.correlation, 0, 1);
}

fn task(task: &TaskSpec, section: &mut Section<'_>) {
    section.three_point("hours", Some(task.hours));
    section.amount("rate", task.rate);
}

fn price(price: &ItemPrice, section: &mut Section<'_>) {
    section.amount("price", Some(price.price));
    if matches!(price.item, Item::Sheet | Item::Offcut | Item::Covering) {
        let message = "Sheets, offcuts and rolls have their prices where they are listed.";
        let accepted = "Give \"price\" in the stock, or with the roll.";
        section.refuse(Fault::new(Kind::Conflict, price.item.word(), message, accepted), "item");
    }
}

fn material(material: &ExtraMaterial, section: &mut Section<'_>) {
    section.between("count", Some(material.count), 0, 1_000_000);
    section.amount("price", Some(material.price));
}
