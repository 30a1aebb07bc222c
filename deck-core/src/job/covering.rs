//! What a job says of the covering.

use super::specs::settings;
use crate::covering::{Drop, Roll, RunChoice, Traffic};
use crate::length::Length;
use crate::money::Figure;
use serde::{Deserialize, Serialize};

settings! {
    /// Roll goods over the whole deck.
    CoveringSpec {
        /// The rolls that can be had; required, one at least.
        rolls: Vec<Roll>,
        /// The way it is to run. Left out: the way with fewer seams, then the cheaper.
        run: RunChoice,
        /// How far it goes round each edge. Left out: 2 in.
        wrap: Length,
        /// Narrowest piece. Left out: 12 in.
        least_piece: Length,
        /// Least distance from a seam of the boards, where both run alike. Left out: 6 in.
        off_ply_seams: Length,
        /// Where people walk: no seam lies there.
        traffic: Vec<Traffic>,
        /// What other boats take off the same rolls.
        other_boats: Vec<Drop>,
        /// Pounds to the square foot of the covering. Left out: the weight ledger does not hold it.
        #[cfg_attr(feature = "schema", schemars(extend("minimum" = 0, "maximum" = 100)))]
        psf: Figure,
        /// The glue. Left out: it is not glued all over.
        adhesive: AdhesiveSpec,
    }
}

settings! {
    /// How a covering is glued.
    AdhesiveSpec {
        /// What is glued. Left out: outdoor carpet.
        kind: AdhesiveKind,
        /// The trowel.
        trowel: String,
        /// Square feet to the US gallon, least. Left out: that of the kind.
        #[cfg_attr(feature = "schema", schemars(extend("exclusiveMinimum" = 0, "maximum" = 10_000)))]
        coverage_least: Figure,
        /// Square feet to the US gallon, most. Left out: that of the kind.
        #[cfg_attr(feature = "schema", schemars(extend("exclusiveMinimum" = 0, "maximum" = 10_000)))]
        coverage_most: Figure,
        /// US gallons in a can. Left out: 1.
        #[cfg_attr(feature = "schema", schemars(extend("exclusiveMinimum" = 0, "maximum" = 100)))]
        can: Figure,
        /// Minutes to wait before the covering goes into the glue. Left out: that of the kind.
        #[cfg_attr(feature = "schema", schemars(extend("minimum" = 0, "maximum" = 1440)))]
        wait_minutes: Figure,
        /// Minutes after which the glue has set. Left out: that of the kind.
        #[cfg_attr(feature = "schema", schemars(extend("minimum" = 0, "maximum" = 1440)))]
        set_minutes: Figure,
        /// Square feet that the crew spreads in a minute. Left out: halves are taken, and the rate that they need is told.
        #[cfg_attr(feature = "schema", schemars(extend("exclusiveMinimum" = 0, "maximum" = 1000)))]
        spread: Figure,
    }
}

/// What is glued.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum AdhesiveKind {
    /// Outdoor carpet, with a 1/8 in V notch: 110 to 150 ft² to the gallon, 15 minutes to wait, set by 30.
    #[default]
    OutdoorCarpet,
    /// Vinyl, with a notched trowel: 150 to 225 ft² to the gallon, from memory; its times are the can's.
    Vinyl,
}
