//! What a job says of the old deck.

use super::specs::settings;
use crate::length::Length;
use crate::money::{Figure, ThreePoint};
use crate::strip_out::{Freed, OldCovering, OldFastener, Pit};

settings! {
    /// The old deck, and how it comes off.
    StripOutSpec {
        /// How the old covering is held; required.
        covering: OldCovering,
        /// Width of the strips in which a glued one comes off. Left out: 14 in.
        strip_width: Length,
        /// Pounds to the square foot of the old covering. Left out: it is not weighed.
        #[cfg_attr(feature = "schema", schemars(extend("minimum" = 0, "maximum" = 100)))]
        covering_psf: Figure,
        /// Thickness of the old covering. Left out: its volume is not told.
        covering_thickness: Length,
        /// Hours to take it off. Left out: a planning figure of the trade.
        covering_hours: ThreePoint,
        /// Width of the old boards, fore and aft. Left out: 48 in.
        board_width: Length,
        /// Thickness of the old boards. Left out: that of the new ones.
        thickness: Length,
        /// Water in the old boards, least, in a hundred of their dry mass. Left out: 30.
        #[cfg_attr(feature = "schema", schemars(range(min = 0, max = 300)))]
        soaked_least_percent: u32,
        /// Water in the old boards, most, in a hundred of their dry mass. Left out: 60.
        #[cfg_attr(feature = "schema", schemars(range(min = 0, max = 300)))]
        soaked_most_percent: u32,
        /// Minutes to lift an old board. Left out: a planning figure.
        board_minutes: ThreePoint,
        /// Whether tape lies over the old seams. Left out: it does not.
        tape: bool,
        /// The fasteners, counted by kind and condition. Left out: they are estimated.
        fasteners: Vec<OldFastener>,
        /// Slots to open before boards are lifted, so that what runs through them drops free.
        freed: Vec<Freed>,
        /// Pits that were measured in the frame.
        pits: Vec<Pit>,
    }
}
