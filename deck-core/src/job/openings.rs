//! What a job says of openings: the clearances that they keep, and the lids that are sawn for them.

use super::specs::settings;
use crate::length::Length;

settings! {
    /// The clearances that openings keep. Where it is given, even empty, the plan measures each opening against them and
    /// says by what least move all would be kept.
    OpeningRulesSpec {
        /// Least distance from a seam.
        from_seam: Length,
        /// Preferred distance from a seam.
        from_seam_preferred: Length,
        /// Least distance from the deck's edge.
        from_edge: Length,
        /// Least distance from a flange, where the opening is not framed.
        from_flange: Length,
        /// Least radius of corners.
        corner_radius: Length,
        /// Preferred radius of corners.
        corner_radius_preferred: Length,
        /// Least distance from one opening to the next, in sizes of the smaller one's smaller side.
        #[cfg_attr(feature = "schema", schemars(range(min = 0, max = 20)))]
        apart: f64,
        /// Width of the strips under the edge of a framed opening. Left out: no strips are laid out.
        frame_width: Length,
    }
}
