//! A load that one fastener holds in one way.

use crate::error::{Fault, Faults, Kind};
use crate::length::Length;
use crate::published::Standing;
use serde::{Deserialize, Serialize};

/// How a fastener lets go.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Mode {
    /// Aluminium under the head tears over it.
    PullOver,
    /// The threads strip out of aluminium.
    PullOut,
    /// The head sinks through the board.
    HeadPullThrough,
    /// The shank draws out of wood.
    Withdrawal,
    /// The hole tears along the aluminium.
    Bearing,
}

/// What it holds in that way, pounds.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct Held {
    /// How it lets go.
    pub mode: Mode,
    /// The load by the formula or the test, pounds.
    pub nominal: f64,
    /// What that is divided by; one where the formula gives an allowable load.
    pub factor: f64,
    /// The allowable load, pounds.
    pub allowable: f64,
    /// The formula or test, and where it comes from.
    pub clause: String,
    /// How sure it is.
    pub standing: Standing,
}

impl Held {
    /// A figure that stands on memory says so in its clause.
    pub(super) fn new(mode: Mode, nominal: f64, factor: f64, clause: impl Into<String>, standing: Standing) -> Held {
        let clause = clause.into();
        let told = standing != Standing::Memory || clause.contains("from memory");
        let clause = if told { clause } else { format!("{clause}, from memory") };
        Held { mode, nominal, factor, allowable: nominal / factor, clause, standing }
    }
}

/// Faults of the sizes that are zero or less.
pub(super) fn sizes(faults: &mut Faults, sizes: &[(&str, Length)]) {
    for (field, length) in sizes.iter().filter(|(_, length)| *length <= Length::ZERO) {
        let message = format!("{length} is no size here.");
        let fault = Fault::new(Kind::FastenerSize, length.to_string(), message, "More than zero is accepted.");
        faults.push(fault.within(field));
    }
}
