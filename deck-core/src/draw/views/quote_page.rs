//! The quote: a page for the customer, and a page for the shop on how sure the hours are.

use crate::draw::desk::Desk;
use crate::draw::figure::{Align, Column, Table, TextSize};
use crate::draw::flow::Flow;
use crate::draw::page::Page;
use crate::money::Money;
use crate::quote::{Distribution, Group, LabourQuote, Percentiles, Quote, QuoteKind, QuoteLine};

pub(super) fn pages(desk: &Desk<'_>) -> Vec<Page> {
    let Some(quote) = &desk.plan.quote else { return Vec::new() };
    let mut pages = customers(desk, quote);
    pages.extend(shops(desk, quote));
    pages
}

fn customers(desk: &Desk<'_>, quote: &Quote) -> Vec<Page> {
    let title = match quote.kind {
        QuoteKind::Estimate => "Quote: estimate",
        QuoteKind::FixedPrice => "Quote: fixed price",
    };
    let mut page = desk.page("quote", title);
    let said: Vec<String> = [quote.prepared_for.as_ref().map(|name| format!("for {name}")), quote.date.clone()]
        .into_iter()
        .flatten()
        .collect();
    page.frame = page.frame.note(said.join(", "));
    let mut flow = Flow::new(page, Page::body(desk.paper));
    bullets(&mut flow, "What is done", &quote.scope);
    flow.headed("Price", &lines(quote));
    if !quote.unpriced.is_empty() {
        let words = format!("Not in the total, because no price was given: {}.", quote.unpriced.join("; "));
        flow.paragraph(&words, TextSize::FIGURE, true);
    }
    flow.paragraph(&quote.rounding, TextSize::LEAST, false);
    let kind = match quote.kind {
        QuoteKind::Estimate => "This is an estimate: the bill goes by what was bought and the hours that it took.",
        QuoteKind::FixedPrice => "This is a fixed price: the bill is the total, but for changes that both agreed on.",
    };
    flow.paragraph(kind, TextSize::BODY, true);
    let rate = quote.change_rate.map(|rate| format!(", at {rate} an hour and materials")).unwrap_or_default();
    bullets(&mut flow, &format!("What changes the price when it is found{rate}"), &quote.changes);
    bullets(&mut flow, "Not in this quote", &quote.exclusions);
    if !quote.terms.is_empty() {
        bullets(&mut flow, "Terms", &quote.terms);
    }
    flow.finish()
}

fn bullets(flow: &mut Flow, title: &str, items: &[String]) {
    flow.heading(title);
    for item in items {
        flow.paragraph(&format!("• {item}"), TextSize::BODY, false);
    }
}

fn lines(quote: &Quote) -> Table {
    let right = |title: &str| Column::new(title, Align::Right);
    let mut table = Table::new(vec![
        Column::words(""),
        right("quantity"),
        Column::new("", Align::Left),
        right("each"),
        right("amount"),
    ]);
    for sum in &quote.sums {
        let lines: Vec<&QuoteLine> = quote.lines.iter().filter(|line| line.group == sum.group).collect();
        // A group of one line needs no sum of its own.
        if lines.len() > 1 {
            let empty = String::new;
            table.bold_row([sum.group.words().to_owned(), empty(), empty(), empty(), sum.amount.to_string()]);
        }
        for line in lines {
            table.row(row(line));
        }
    }
    let currency = quote.currency.as_ref().map(|currency| format!(", {currency}")).unwrap_or_default();
    let empty = String::new;
    table.bold_row([format!("Total{currency}"), empty(), empty(), empty(), quote.total.to_string()]);
    table
}

fn row(line: &QuoteLine) -> [String; 5] {
    let money = |money: Option<Money>| money.map(|money| money.to_string()).unwrap_or_default();
    let percent = matches!(line.group, Group::Overhead | Group::Contingency | Group::Tax);
    let rate = if percent { line.rate.map(|base| format!("of {base}")).unwrap_or_default() } else { money(line.rate) };
    [
        line.description.clone(),
        line.quantity.map(|quantity| quantity.to_string()).unwrap_or_default(),
        line.unit.clone(),
        rate,
        line.amount.map_or_else(|| "no price".to_owned(), |amount| amount.to_string()),
    ]
}

fn shops(desk: &Desk<'_>, quote: &Quote) -> Vec<Page> {
    let mut page = desk.page("quote-hours", "Hours behind the quote");
    page.frame = page.frame.note("for the shop; planning figures are to be replaced by its own");
    let mut flow = Flow::new(page, Page::body(desk.paper));
    let labour = &quote.labour;
    flow.heading("Hours by task");
    flow.table(&tasks(labour));
    flow.paragraph(
        "Mean (low + 4 likely + high)/6, deviation (high − low)/6: Malcolm, Roseboom, Clark and Fazar 1959.",
        TextSize::LEAST,
        false,
    );
    flow.headed("How sure the sum is", &spreads(labour));
    flow.paragraph(&labour.why, TextSize::BODY, false);
    flow.paragraph(
        "What makes one task slow, age and rust above all, makes the others slow too. With nothing shared the sum looks surer \
         than it is; with all shared every task goes badly at once. The truth lies between.",
        TextSize::BODY,
        false,
    );
    flow.paragraph(
        &format!(
            "Charged: the {} of the hours, {} h; of these {} h beyond the means of the tasks.",
            labour.charged.words(),
            labour.charged_hours,
            labour.risk_hours
        ),
        TextSize::BODY,
        true,
    );
    flow.finish()
}

fn tasks(labour: &LabourQuote) -> Table {
    let right = |title: &str| Column::new(title, Align::Right);
    let mut table = Table::new(vec![
        Column::words("Task"),
        right("low"),
        right("likely"),
        right("high"),
        right("mean"),
        right("deviation"),
        Column::words("from"),
    ]);
    for task in &labour.tasks {
        table.row([
            task.words.clone(),
            task.low.to_string(),
            task.likely.to_string(),
            task.high.to_string(),
            task.mean.to_string(),
            task.deviation.to_string(),
            task.source.clone(),
        ]);
    }
    let sums = labour.sums;
    table.bold_row([
        "in all".to_owned(),
        sums.low.to_string(),
        sums.likely.to_string(),
        sums.high.to_string(),
        labour.mean.to_string(),
        labour.deviation.to_string(),
        String::new(),
    ]);
    table
}

fn spreads(labour: &LabourQuote) -> Table {
    let right = |title: &str| Column::new(title, Align::Right);
    let name = match labour.distribution {
        Distribution::Lognormal => "Lognormal",
        Distribution::Normal => "Normal",
    };
    let mut table = Table::new(vec![
        Column::words(format!("{name} sum, mean {} h", labour.mean)),
        right("deviation"),
        right("enough in 50 of 100"),
        right("in 80"),
        right("in 90"),
    ]);
    let mut say = |words: String, deviation: String, found: &Percentiles, bold: bool| {
        let cells = [words, deviation, found.p50.to_string(), found.p80.to_string(), found.p90.to_string()];
        if bold { table.bold_row(cells) } else { table.row(cells) }
    };
    let (none, all) = (&labour.percentiles_independent, &labour.percentiles_shared);
    say("tasks share nothing".into(), labour.deviation_independent.to_string(), none, false);
    let own = format!("correlation {} between any two tasks", labour.correlation);
    say(own, labour.deviation.to_string(), &labour.percentiles, true);
    say("tasks share all".into(), labour.deviation_shared.to_string(), all, false);
    table
}
