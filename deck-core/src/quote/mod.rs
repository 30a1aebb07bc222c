//! What the job costs the customer: materials at the shop's prices, labour with its risk, and what is laid on top.
//!
//! ```text
//!   materials ┐
//!   labour    ├─ subtotal ── overhead ── contingency ── tax ── total
//!   risk      │
//!   disposal, freight ┘
//! ```
//!
//! Prices are the shop's; there is no default for any. Each line is rounded to the cent, half a cent up, and the total is
//! the sum of the lines as they are printed.

mod ask;
mod csv;
mod labour;
mod line;
mod spread;

pub use ask::{ExtraMaterial, ItemPrice, QuoteKind, TaxOn, Terms};
pub use csv::quote_csv;
pub use labour::{ChargeAt, LabourQuote, Task, TaskHours};
pub use line::{Group, QuoteLine, QuoteSum};
pub use spread::{Distribution, Percentiles, deviation, percentiles};

use crate::money::{Figure, Money};
use crate::takeoff::Takeoff;
use labour::labour;
use line::Lines;
use serde::{Deserialize, Serialize};

/// What is priced, and how.
#[derive(Debug, Clone)]
pub struct QuoteInput<'a> {
    /// What the deck takes; none without a layout.
    pub takeoff: Option<&'a Takeoff>,
    /// Prices by item.
    pub prices: &'a [ItemPrice],
    /// Materials beside those of the take-off.
    pub materials: &'a [ExtraMaterial],
    /// The tasks with their hours.
    pub tasks: &'a [Task],
    /// What an hour costs.
    pub rate: Option<Money>,
    /// How much of the difficulty all tasks share, from 0 to 1.
    pub correlation: Figure,
    /// What the sum of the hours is taken to be.
    pub distribution: Distribution,
    /// At which figure the hours are charged.
    pub charge: ChargeAt,
    /// What is laid on top, and what is said below.
    pub terms: &'a Terms,
}

/// A quote.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Quote {
    /// Whether it binds.
    pub kind: QuoteKind,
    /// What the amounts are in.
    pub currency: Option<String>,
    /// Whom it is for.
    pub prepared_for: Option<String>,
    /// Its date, as the shop writes it.
    pub date: Option<String>,
    /// What is done.
    pub scope: Vec<String>,
    /// The lines, in order.
    pub lines: Vec<QuoteLine>,
    /// Sums by group.
    pub sums: Vec<QuoteSum>,
    /// The sum of the lines.
    pub total: Money,
    /// Hours, and how sure they are.
    pub labour: LabourQuote,
    /// What has no price: the total does not hold it.
    pub unpriced: Vec<String>,
    /// How amounts are rounded.
    pub rounding: String,
    /// What changes the price when it is found.
    pub changes: Vec<String>,
    /// What an hour of changes costs.
    pub change_rate: Option<Money>,
    /// What is not in it.
    pub exclusions: Vec<String>,
    /// Terms of the shop.
    pub terms: Vec<String>,
}

/// How amounts are rounded, for a person.
const ROUNDING: &str = "Each line is rounded to the cent, half a cent up; hours are rounded to hundredths before they are priced. \
                        The total is the sum of the lines as they are printed.";

/// Prices a job.
///
/// # Method
/// Hours: see [`LabourQuote`]. Overhead is laid on materials, labour, disposal and freight; contingency on those and
/// overhead; tax on what the shop says. Common practice, no source.
pub fn quote(input: &QuoteInput<'_>) -> Quote {
    let terms = input.terms;
    let labour = labour(input);
    let mut lines = Lines::default();
    lines.materials(input);
    lines.labour(input, &labour);
    lines.fixed(Group::Disposal, "Disposal of the old deck", terms.disposal);
    lines.fixed(Group::Freight, "Freight", terms.freight);
    lines.percent(Group::Overhead, "Overhead", terms.overhead_percent, "of all above", &[]);
    lines.percent(Group::Contingency, "Contingency", terms.contingency_percent, "of all above", &[]);
    let (groups, words): (&[Group], &str) = match terms.tax_on {
        TaxOn::Materials => (&[Group::Materials], "of materials"),
        TaxOn::All => (&[], "of all above"),
    };
    lines.percent(Group::Tax, "Tax", terms.tax_percent, words, groups);
    Quote {
        kind: terms.kind,
        currency: terms.currency.clone(),
        prepared_for: terms.prepared_for.clone(),
        date: terms.date.clone(),
        scope: terms.scope.clone(),
        sums: lines.sums(),
        total: lines.total(),
        unpriced: lines.unpriced,
        lines: lines.lines,
        labour,
        rounding: ROUNDING.into(),
        changes: terms.changes.clone(),
        change_rate: terms.change_rate,
        exclusions: terms.exclusions.clone(),
        terms: terms.terms.clone(),
    }
}

#[cfg(test)]
mod tests;
