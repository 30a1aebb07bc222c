//! What a job says of prices and hours.

use super::specs::settings;
use crate::money::{Figure, Money, ThreePoint};
use crate::quote::{ChargeAt, Distribution, ExtraMaterial, ItemPrice, QuoteKind, TaxOn};
use serde::Serialize;

settings! {
    /// What a quote is made of. Prices are the shop's: none has a default.
    QuoteSpec {
        /// Whether it binds. Left out: it is an estimate.
        kind: QuoteKind,
        /// What amounts are in, such as USD.
        currency: String,
        /// Whom it is for.
        prepared_for: String,
        /// Its date, as the shop writes it.
        date: String,
        /// Prices of the take-off's items, each for one of what it is bought by. Sheets have theirs in the stock.
        prices: Vec<ItemPrice>,
        /// Materials beside those of the take-off.
        materials: Vec<ExtraMaterial>,
        /// Hours, and what they cost.
        labour: LabourSpec,
        /// Disposal of the old deck.
        disposal: Money,
        /// Freight.
        freight: Money,
        /// Overhead, in a hundred of all above it.
        #[cfg_attr(feature = "schema", schemars(extend("minimum" = 0, "maximum" = 1000)))]
        overhead_percent: Figure,
        /// Contingency, in a hundred of all above it.
        #[cfg_attr(feature = "schema", schemars(extend("minimum" = 0, "maximum" = 1000)))]
        contingency_percent: Figure,
        /// Tax, in a hundred of what `tax_on` says.
        #[cfg_attr(feature = "schema", schemars(extend("minimum" = 0, "maximum" = 1000)))]
        tax_percent: Figure,
        /// What tax is reckoned on; required with a tax, as places differ.
        tax_on: TaxOn,
        /// What an hour of changes costs.
        change_rate: Money,
        /// What is not in the quote, beside what never is.
        exclusions: Vec<String>,
        /// Terms of the shop.
        terms: Vec<String>,
    }
}

settings! {
    /// Hours, and what they cost.
    LabourSpec {
        /// What an hour costs.
        rate: Money,
        /// Tasks of the shop's own; one of the same name as a step of the trade takes its place.
        tasks: Vec<TaskSpec>,
        /// How much of the difficulty all tasks share, from 0 to 1. Left out: half of it.
        #[cfg_attr(feature = "schema", schemars(extend("minimum" = 0, "maximum" = 1)))]
        correlation: Figure,
        /// What the sum of the hours is taken to be. Left out: lognormal.
        distribution: Distribution,
        /// At which figure hours are charged. Left out: at the mean.
        charge: ChargeAt,
    }
}

/// Hours of a task.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
#[non_exhaustive]
pub struct TaskSpec {
    /// A step of the trade (`measure`, `make-safe`, `furniture`, `old-covering`, `boards`, `frame`, `square`, `saw`, `seal`,
    /// `lay`, `fill`, `cover`, `refit`, `test`, `disposal`), or a task of the shop's own.
    pub task: String,
    /// Its hours; all zero: it is not done.
    pub hours: ThreePoint,
    /// What an hour of it costs. Left out: the usual rate.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub rate: Option<Money>,
}

impl TaskSpec {
    /// A task at the usual rate.
    pub fn new(task: impl Into<String>, hours: ThreePoint) -> TaskSpec {
        TaskSpec { task: task.into(), hours, rate: None }
    }
}
