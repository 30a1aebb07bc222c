//! What the shop says: prices, what is laid on top, terms.

use crate::money::{Figure, Money};
use crate::takeoff::Item;
use serde::{Deserialize, Serialize};

/// The price of an item of the take-off, for one of what it is bought by: a box, a roll, a can.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
#[non_exhaustive]
pub struct ItemPrice {
    /// The item. Sheets have their prices in the stock, and rolls theirs in the covering.
    pub item: Item,
    /// Price of one.
    pub price: Money,
}

impl ItemPrice {
    /// A price.
    pub fn new(item: Item, price: Money) -> ItemPrice {
        ItemPrice { item, price }
    }
}

/// A material beside those of the take-off: seam filler, trim, an allowance for the frame.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
#[non_exhaustive]
pub struct ExtraMaterial {
    /// What it is.
    pub description: String,
    /// How much of it.
    #[cfg_attr(feature = "schema", schemars(extend("minimum" = 0, "maximum" = 1_000_000)))]
    pub count: Figure,
    /// What one of it is: can, foot, allowance.
    pub unit: String,
    /// Price of one.
    pub price: Money,
}

impl ExtraMaterial {
    /// So much of a material.
    pub fn new(description: impl Into<String>, count: Figure, unit: impl Into<String>, price: Money) -> ExtraMaterial {
        ExtraMaterial { description: description.into(), count, unit: unit.into(), price }
    }
}

/// Whether a quote binds.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum QuoteKind {
    /// The bill may differ.
    #[default]
    Estimate,
    /// The bill is the total, but for changes that were agreed.
    FixedPrice,
}

/// What tax is reckoned on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum TaxOn {
    /// On materials.
    Materials,
    /// On everything.
    #[default]
    All,
}

/// What is laid on top of materials and labour, and what is said below the total.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
#[non_exhaustive]
pub struct Terms {
    /// Whether the quote binds.
    pub kind: QuoteKind,
    /// What the amounts are in.
    pub currency: Option<String>,
    /// Whom it is for.
    pub prepared_for: Option<String>,
    /// Its date, as the shop writes it.
    pub date: Option<String>,
    /// What is done.
    pub scope: Vec<String>,
    /// Overhead, in hundredths.
    pub overhead_percent: Option<Figure>,
    /// What the dump costs.
    pub disposal: Option<Money>,
    /// What the carrier costs.
    pub freight: Option<Money>,
    /// Contingency, in hundredths.
    pub contingency_percent: Option<Figure>,
    /// Tax, in hundredths.
    pub tax_percent: Option<Figure>,
    /// What it is reckoned on.
    pub tax_on: TaxOn,
    /// What an hour of changes costs.
    pub change_rate: Option<Money>,
    /// What changes the price when it is found.
    pub changes: Vec<String>,
    /// What is not in it.
    pub exclusions: Vec<String>,
    /// Terms of the shop.
    pub terms: Vec<String>,
}
