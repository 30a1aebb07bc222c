//! The settings of a job as a file gives them: each may be left out, and then takes its default.

use crate::length::Length;
use crate::nest::Grain;
use crate::stock::SawLine;
use serde::{Deserialize, Serialize};

/// Declares a group of settings: a structure of optional fields, with a `new` and a with-er for each.
macro_rules! settings {
    ($(#[$meta:meta])* $name:ident { $($(#[$field_meta:meta])* $field:ident: $type:ty,)+ }) => {
        $(#[$meta])*
        #[derive(Debug, Clone, PartialEq, Default, serde::Serialize)]
        #[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
        #[serde(deny_unknown_fields)]
        #[non_exhaustive]
        pub struct $name {
            $(
                $(#[$field_meta])*
                #[serde(default, skip_serializing_if = "Option::is_none")]
                pub $field: Option<$type>,
            )+
        }

        impl $name {
            /// Nothing given: every setting takes its default.
            pub fn new() -> $name {
                $name::default()
            }

            $(
                #[doc = concat!("With [`", stringify!($field), "`](", stringify!($name), "::", stringify!($field), ") given.")]
                #[must_use]
                pub fn $field(mut self, value: $type) -> $name {
                    self.$field = Some(value);
                    self
                }
            )+

            /// True where nothing is given.
            pub fn is_empty(&self) -> bool {
                *self == $name::default()
            }
        }
    };
}
pub(super) use settings;

settings! {
    /// The fastener, and the distances it keeps.
    FasteningSpec {
        /// What the shop calls the fastener.
        kind: String,
        /// Diameter of its thread.
        diameter: Length,
        /// Its length; of a flat head, over all.
        length: Length,
        /// Threads to the inch.
        #[cfg_attr(feature = "schema", schemars(range(min = 1, max = 100)))]
        threads_per_inch: u32,
        /// Length of its drill point.
        drill_point: Length,
        /// Greatest spacing along seams, bow and stern.
        edge_spacing: Length,
        /// Greatest spacing along the members between.
        field_spacing: Length,
        /// Least distance from a fastener's middle to an edge of the board.
        edge_distance: Length,
        /// Least distance from a fastener's middle to an edge of the flange.
        edge_distance_metal: Length,
        /// Distance from a row's first and last fastener to the board's end.
        end_distance: Length,
        /// Whether the row aft of a seam is staggered against the row forward of it.
        stagger: bool,
        /// Least distance from a fastener's middle to that of an old hole, in diameters of the larger.
        #[cfg_attr(feature = "schema", schemars(range(min = 0, max = 20)))]
        old_hole_clear: f64,
        /// Whether the fasteners are bolts that may go through old holes again.
        reuse_old_holes: bool,
        /// Spare fasteners ordered for each hundred.
        #[cfg_attr(feature = "schema", schemars(range(min = 0, max = 100)))]
        spares_percent: u32,
        /// Fasteners in a box.
        #[serde(rename = "box")]
        #[cfg_attr(feature = "schema", schemars(range(min = 1)))]
        per_box: u32,
    }
}

settings! {
    /// How sheets are sawn.
    SawSpec {
        /// Width that the blade turns to dust at each cut.
        kerf: Length,
        /// Strip taken off each edge of a sheet before anything else, the kerf of its own cut included.
        trim: Length,
        /// Cutting stages: 1 parallel strips only, 2 strips then crosscuts, 3 one more turn. Left out: as many as pay.
        #[cfg_attr(feature = "schema", schemars(range(min = 1, max = 3)))]
        stages: u8,
        /// Direction of the first saw line. Left out: either.
        first: SawLine,
        /// Smallest offcut worth keeping, length and width.
        keep: (Length, Length),
        /// The face that is up on the saw.
        face: Face,
    }
}

settings! {
    /// What the shop holds to, what it buys by, and how it writes.
    ShopSpec {
        /// Finest fraction of an inch on paper: 2, 4, 8, 16, 32 or 64.
        #[cfg_attr(feature = "schema", schemars(extend("enum" = [2, 4, 8, 16, 32, 64, null])))]
        fractions: u32,
        /// Whether 12 inches and more are written in feet and inches.
        feet: bool,
        /// Least bearing of a board's edge on a flange.
        least_bearing: Length,
        /// Bearing below which the plan cautions.
        preferred_bearing: Length,
        /// Narrowest board that is allowed.
        least_panel_width: Length,
        /// Boards narrower than this count against a layout.
        preferred_panel_width: Length,
        /// Members under a board below which the plan cautions.
        #[cfg_attr(feature = "schema", schemars(range(min = 2, max = 20)))]
        preferred_supports: u32,
        /// Greatest overhang past the first and the last member, at bow and stern.
        overhang: Length,
        /// Greatest overhang past a member's end, to port and starboard.
        side_overhang: Length,
        /// How many layouts to show.
        #[cfg_attr(feature = "schema", schemars(range(min = 1, max = 100)))]
        layouts: u32,
        /// Sheets ordered beyond those the plan uses.
        #[cfg_attr(feature = "schema", schemars(range(min = 0, max = 1000)))]
        spare_sheets: u32,
        /// Coats of sealer on sawn edges.
        #[cfg_attr(feature = "schema", schemars(range(min = 0, max = 10)))]
        sealer_coats: u32,
        /// Length of edge that one can of sealer coats once.
        edge_sealer_coverage: Length,
        /// Width of the tape on the members.
        tape_width: Length,
        /// Thickness of the tape on the members.
        tape_thickness: Length,
        /// Length of a roll of the tape.
        tape_roll: Length,
        /// Whether that tape, or something else, keeps the plywood off the aluminium.
        barrier: bool,
        /// Space under the deck for the points of screws. Left out: not checked.
        clearance: Length,
        /// Paper of the job packet.
        paper: Paper,
    }
}

/// The face that is up on the saw.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Face {
    /// The good face is up: the sheet is sawn as it will lie.
    #[default]
    Up,
    /// The good face is down: the sheet is sawn mirrored.
    Down,
}

/// Size of paper.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Paper {
    /// US Letter.
    Letter,
    /// ISO A4.
    A4,
}

/// Small parts of the same plywood that are wanted beside the boards: blocking, lids, backing plates.
///
/// They are laid on the sheets with the boards, and in the waste inside them where they fit.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
#[non_exhaustive]
pub struct ExtraPart {
    /// What is written on it; no panel's label, which begins with a figure.
    pub label: String,
    /// Its length.
    pub length: Length,
    /// Its width.
    pub width: Length,
    /// How many are wanted; none given: one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub count: Option<u32>,
    /// How it must lie to the grain of the sheet.
    #[serde(default, skip_serializing_if = "is_any")]
    pub grain: Grain,
    /// Layers that are glued up to one part; none given: one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", schemars(range(min = 1, max = 4)))]
    pub layers: Option<u32>,
}

fn is_any(grain: &Grain) -> bool {
    *grain == Grain::Any
}

impl ExtraPart {
    /// One part that may be turned.
    pub fn new(label: impl Into<String>, length: Length, width: Length) -> ExtraPart {
        ExtraPart { label: label.into(), length, width, count: None, grain: Grain::Any, layers: None }
    }

    /// With so many copies.
    #[must_use]
    pub fn count(mut self, count: u32) -> ExtraPart {
        self.count = Some(count);
        self
    }

    /// Glued up of so many layers.
    #[must_use]
    pub fn layers(mut self, layers: u32) -> ExtraPart {
        self.layers = Some(layers);
        self
    }

    /// With a direction of grain.
    #[must_use]
    pub fn grain(mut self, grain: Grain) -> ExtraPart {
        self.grain = grain;
        self
    }
}
