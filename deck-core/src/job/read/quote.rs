//! Reads what is said of prices and hours.

use super::Notes;
use super::at::{At, Object};
use super::places::{Placed, list};
use super::strip_out::three_point;
use crate::job::{LabourSpec, QuoteSpec, TaskSpec};
use crate::quote::{ExtraMaterial, ItemPrice};

pub(super) fn quote(at: &At<'_>, notes: &mut Notes) -> Option<Placed<QuoteSpec>> {
    let mut fields = at.object(notes)?;
    let mut places = Vec::new();
    let spec = QuoteSpec {
        kind: fields.optional("kind", notes, At::word),
        currency: fields.optional("currency", notes, At::text),
        prepared_for: fields.optional("prepared_for", notes, At::text),
        date: fields.optional("date", notes, At::text),
        prices: list(&mut fields, "prices", notes, &mut places, price),
        materials: list(&mut fields, "materials", notes, &mut places, material),
        labour: fields.optional("labour", notes, |at, notes| labour(at, notes, &mut places)),
        disposal: fields.optional("disposal", notes, At::money),
        freight: fields.optional("freight", notes, At::money),
        overhead_percent: fields.optional("overhead_percent", notes, At::figure),
        contingency_percent: fields.optional("contingency_percent", notes, At::figure),
        tax_percent: fields.optional("tax_percent", notes, At::figure),
        tax_on: fields.optional("tax_on", notes, At::word),
        change_rate: fields.optional("change_rate", notes, At::money),
        exclusions: fields.optional("exclusions", notes, texts),
        terms: fields.optional("terms", notes, texts),
    };
    fields.close(notes);
    Some(Placed { spec, places })
}

fn texts(at: &At<'_>, notes: &mut Notes) -> Option<Vec<String>> {
    at.list(notes, At::text).map(|listed| listed.items)
}

fn labour(at: &At<'_>, notes: &mut Notes, places: &mut super::places::Places) -> Option<LabourSpec> {
    let mut fields = at.object(notes)?;
    let spec = LabourSpec {
        rate: fields.optional("rate", notes, At::money),
        tasks: list(&mut fields, "tasks", notes, places, task),
        correlation: fields.optional("correlation", notes, At::figure),
        distribution: fields.optional("distribution", notes, At::word),
        charge: fields.optional("charge", notes, At::word),
    };
    fields.close(notes);
    Some(spec)
}

fn task(fields: &mut Object<'_>, notes: &mut Notes) -> Option<TaskSpec> {
    let task = fields.required("task", notes, At::text);
    let hours = fields.required("hours", notes, three_point);
    let rate = fields.optional("rate", notes, At::money);
    let mut spec = TaskSpec::new(task?, hours?);
    spec.rate = rate;
    Some(spec)
}

fn price(fields: &mut Object<'_>, notes: &mut Notes) -> Option<ItemPrice> {
    let item = fields.required("item", notes, At::word);
    let price = fields.required("price", notes, At::money);
    Some(ItemPrice::new(item?, price?))
}

fn material(fields: &mut Object<'_>, notes: &mut Notes) -> Option<ExtraMaterial> {
    let description = fields.required("description", notes, At::text);
    let count = fields.required("count", notes, At::figure);
    let unit = fields.required("unit", notes, At::text);
    let price = fields.required("price", notes, At::money);
    Some(ExtraMaterial::new(description?, count?, unit?, price?))
}
