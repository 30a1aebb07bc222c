//! What is cut from a sheet, counted in the given values or in area.

use crate::length::{Area, Unit};
use crate::money::Money;
use serde::{Deserialize, Serialize};
use std::fmt;

/// A sum of given values, or an area where no part has a value. In JSON a number either way; the fill says which.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(untagged)]
pub enum Worth {
    /// The sum of the values.
    Value(Money),
    /// The area of the parts.
    Area(Area),
}

/// In what a fill counts what it cuts.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum WorthIn {
    /// The values of the parts.
    Value,
    /// The area of the parts.
    #[default]
    Area,
}

impl WorthIn {
    /// The worth of a whole number of its smallest units: ten-thousandths of a value, square nanometres.
    pub(super) fn worth(self, units: i128) -> Worth {
        match self {
            WorthIn::Value => Worth::Value(Money::from_ten_thousandths(units)),
            WorthIn::Area => Worth::Area(Area::from_square_nanometres(units)),
        }
    }

    pub(super) fn read(self, value: serde_json::Value) -> Result<Worth, serde_json::Error> {
        match self {
            WorthIn::Value => serde_json::from_value(value).map(Worth::Value),
            WorthIn::Area => serde_json::from_value(value).map(Worth::Area),
        }
    }
}

impl Worth {
    /// The nearest number: of value, or of square units.
    pub fn number(self, unit: Unit) -> f64 {
        match self {
            Worth::Value(value) => value.number(),
            Worth::Area(area) => area.number(unit),
        }
    }
}

impl fmt::Display for Worth {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Worth::Value(value) => value.fmt(f),
            Worth::Area(area) => area.fmt(f),
        }
    }
}
