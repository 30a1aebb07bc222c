//! What a job says of flanges too narrow for two rows of fasteners.

use super::specs::settings;
use crate::length::Length;

settings! {
    /// What narrow flanges are mended with. Left out altogether: what is short is told, and nothing is bought for it.
    NarrowFlangeSpec {
        /// Flat leg of the angle that is sistered to a member.
        angle_leg: Length,
        /// Greatest distance between the screws that hold an angle or a cleat to its member. Left out: as in edge rows.
        spacing: Length,
    }
}
