//! The lines of a quote, and how they add up.

use super::{LabourQuote, QuoteInput};
use crate::money::{Figure, Money};
use crate::takeoff::{Item, TakeoffLine};
use serde::{Deserialize, Serialize};

/// What a line is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Group {
    /// Something bought.
    Materials,
    /// Hours.
    Labour,
    /// The dump.
    Disposal,
    /// The carrier.
    Freight,
    /// What the shop costs when nobody works.
    Overhead,
    /// What nobody knows yet.
    Contingency,
    /// Tax.
    Tax,
}

impl Group {
    /// All of them, in the order of the quote.
    pub const ALL: [Group; 7] = [
        Group::Materials,
        Group::Labour,
        Group::Disposal,
        Group::Freight,
        Group::Overhead,
        Group::Contingency,
        Group::Tax,
    ];

    /// Its name.
    pub fn words(self) -> &'static str {
        match self {
            Group::Materials => "Materials",
            Group::Labour => "Labour",
            Group::Disposal => "Disposal",
            Group::Freight => "Freight",
            Group::Overhead => "Overhead",
            Group::Contingency => "Contingency",
            Group::Tax => "Tax",
        }
    }
}

/// A line of a quote.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct QuoteLine {
    /// What it is for.
    pub group: Group,
    /// What it says.
    pub description: String,
    /// How much; none for an amount that the shop names.
    pub quantity: Option<Figure>,
    /// Of what.
    pub unit: String,
    /// Price of one, or the amount that a percentage is of.
    pub rate: Option<Money>,
    /// What it comes to; none where there is no price.
    pub amount: Option<Money>,
}

/// The sum of a group.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct QuoteSum {
    /// The group.
    pub group: Group,
    /// Its lines together.
    pub amount: Money,
}

/// Lines in the making.
#[derive(Debug, Default)]
pub(super) struct Lines {
    pub(super) lines: Vec<QuoteLine>,
    pub(super) unpriced: Vec<String>,
}

impl Lines {
    pub(super) fn materials(&mut self, input: &QuoteInput<'_>) {
        for line in input.takeoff.iter().flat_map(|takeoff| &takeoff.lines) {
            let price = line.price.or_else(|| listed(input, line.item));
            // What lies on the rack costs nothing unless the stock says so.
            let price = if line.item == Item::Offcut { price.or(Some(Money::ZERO)) } else { price };
            self.priced(Group::Materials, described(line), Figure::of(count(line.buy)), line.unit.clone(), price);
        }
        for extra in input.materials {
            let (count, unit) = (extra.count, extra.unit.clone());
            self.priced(Group::Materials, extra.description.clone(), count, unit, Some(extra.price));
        }
    }

    pub(super) fn labour(&mut self, input: &QuoteInput<'_>, labour: &LabourQuote) {
        for (task, hours) in input.tasks.iter().zip(&labour.tasks) {
            self.priced(Group::Labour, hours.words.clone(), hours.mean, "hour".into(), task.rate.or(input.rate));
        }
        if labour.risk_hours > Figure::ZERO {
            let words = format!("for risk, to the {} of the hours", labour.charged.words());
            self.priced(Group::Labour, words, labour.risk_hours, "hour".into(), input.rate);
        }
    }

    fn priced(&mut self, group: Group, description: String, quantity: Figure, unit: String, price: Option<Money>) {
        if price.is_none() {
            self.unpriced.push(description.clone());
        }
        let amount = price.map(|price| price.times(quantity));
        self.lines.push(QuoteLine { group, description, quantity: Some(quantity), unit, rate: price, amount });
    }

    /// An amount that the shop names.
    pub(super) fn fixed(&mut self, group: Group, description: &str, amount: Option<Money>) {
        let Some(amount) = amount.map(Money::to_the_cent) else { return };
        let description = description.into();
        let line =
            QuoteLine { group, description, quantity: None, unit: String::new(), rate: None, amount: Some(amount) };
        self.lines.push(line);
    }

    /// Hundredths of what stands above: of those groups, or of all.
    pub(super) fn percent(
        &mut self,
        group: Group,
        description: &str,
        percent: Option<Figure>,
        of: &str,
        groups: &[Group],
    ) {
        let Some(percent) = percent else { return };
        let base = self.sum(|line| groups.is_empty() || groups.contains(&line.group));
        self.lines.push(QuoteLine {
            group,
            description: description.into(),
            quantity: Some(percent),
            unit: format!("% {of}"),
            rate: Some(base),
            amount: Some(base.percent(percent)),
        });
    }

    fn sum(&self, keep: impl Fn(&QuoteLine) -> bool) -> Money {
        self.lines.iter().filter(|line| keep(line)).filter_map(|line| line.amount).sum()
    }

    pub(super) fn sums(&self) -> Vec<QuoteSum> {
        let has = |group: &Group| self.lines.iter().any(|line| line.group == *group);
        let sum = |group| QuoteSum { group, amount: self.sum(|line| line.group == group) };
        Group::ALL.into_iter().filter(has).map(sum).collect()
    }

    pub(super) fn total(&self) -> Money {
        self.sum(|_| true)
    }
}

fn listed(input: &QuoteInput<'_>, item: Item) -> Option<Money> {
    input.prices.iter().find(|price| price.item == item).map(|price| price.price)
}

/// The line's words, and what one of what is bought holds.
fn described(line: &TakeoffLine) -> String {
    line.description.clone()
}

fn count(count: u64) -> i64 {
    i64::try_from(count).unwrap_or(i64::MAX)
}
