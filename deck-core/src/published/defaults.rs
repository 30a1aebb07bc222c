//! The defaults of a job's settings, in the order in which a plan lists those that it assumed.
//!
//! A measurement has no default. A setting has one, and each row says how sure it is. The columns are: the value, the
//! field of the job, the setting in words, its standing, whether its sources agree, and the source.

use super::{Preset, Standing};
use crate::length::{Length, Unit};
use Standing::{Choice, CommonPractice, Memory, Verified};

const AGREED: bool = false;
const DIFFER: bool = true;

const NO_SOURCE: &str = "common practice, no source";
const TYPICAL: &str = "typical, unconfirmed";
// Read as the usual pontoon deck screw; which publication it was read in was not recorded.
const SCREW: &str = "usual deck screw, 1/4-20 x 2 self-drilling flat head; publication not recorded";
const OURS: &str = "this library's choice";

/// A fraction of an inch that is a whole number of nanometres: the denominator is a power of two up to 64.
const fn inch(numerator: i64, denominator: i64) -> Length {
    Length::from_nanometres(Unit::Inch.nanometres() * numerator / denominator)
}

const fn feet(count: i64) -> Length {
    Length::of(count, Unit::Foot)
}

macro_rules! presets {
    ($($(#[$meta:meta])* $name:ident: $type:ty = $value:expr, $pointer:literal, $setting:literal, $standing:ident, $differ:ident, $source:expr;)+) => {
        $(
            $(#[$meta])*
            #[doc = concat!("Default of `", $pointer, "`: ", $setting, ".")]
            pub const $name: Preset<$type> = Preset {
                pointer: $pointer,
                setting: $setting,
                value: $value,
                standing: $standing,
                differ: $differ,
                source: $source,
            };
        )+
        /// Every row without its value, in order.
        pub const ALL: &[Preset<()>] = &[$(Preset {
            pointer: $pointer,
            setting: $setting,
            value: (),
            standing: $standing,
            differ: $differ,
            source: $source,
        },)+];
    };
}

presets! {
    GAP: Length = inch(1, 8), "/gap", "gap between boards", Verified, DIFFER,
        "APA E30 (2011): 1/8 in at all edges, in buildings; on boats 0 to 1/8 in";
    END_TOLERANCE: Length = Length::ZERO, "/end_tolerance", "shortfall allowed at the stern", Choice, AGREED, OURS;
    WALL: Length = inch(1, 8), "/frame/wall", "wall thickness of the flanges", Memory, AGREED, TYPICAL;

    KIND: &'static str = "1/4-20 self-drilling flat head", "/fastening/kind", "fastener", Verified, AGREED,
        SCREW;
    DIAMETER: Length = inch(1, 4), "/fastening/diameter", "fastener's diameter", Verified, AGREED,
        SCREW;
    LENGTH: Length = inch(2, 1), "/fastening/length", "fastener's length", Verified, AGREED,
        SCREW;
    THREADS: u32 = 20, "/fastening/threads_per_inch", "fastener's threads to the inch", Verified, AGREED,
        SCREW;
    DRILL_POINT: Length = inch(5, 16), "/fastening/drill_point", "length of the drill point", Memory, AGREED, TYPICAL;
    EDGE_SPACING: Length = inch(8, 1), "/fastening/edge_spacing", "spacing along seams, bow and stern", Verified, DIFFER,
        "one boat maker: 8 in everywhere; APA E30 (2011) and IRC table R602.3(1): 6 in at edges, in buildings";
    FIELD_SPACING: Length = inch(8, 1), "/fastening/field_spacing", "spacing along the members between", Verified, DIFFER,
        "one boat maker: 8 in everywhere; APA E30 (2011) and IRC table R602.3(1): 12 in in the field, in buildings";
    EDGE_DISTANCE: Length = inch(3, 8), "/fastening/edge_distance", "least distance to an edge of the board", Verified,
        AGREED, "APA E30 (2011): 3/8 in";
    /// Halves of a diameter.
    EDGE_DISTANCE_METAL_HALVES: i64 = 3, "/fastening/edge_distance_metal", "least distance to an edge of the flange", Verified,
        AGREED, "1.5 diameters, the least for screws in aluminium (Aluminum Design Manual)";
    END_DISTANCE: Length = inch(1, 1), "/fastening/end_distance", "distance from a row's end to the board's", CommonPractice,
        AGREED, NO_SOURCE;
    STAGGER: bool = false, "/fastening/stagger", "rows staggered across a seam", Choice, AGREED, OURS;
    SPARES: u32 = 5, "/fastening/spares_percent", "spare fasteners in a hundred", CommonPractice, AGREED, NO_SOURCE;
    BOX: u32 = 100, "/fastening/box", "fasteners in a box", CommonPractice, AGREED, NO_SOURCE;

    KERF: Length = inch(1, 8), "/saw/kerf", "saw kerf", Verified, AGREED,
        "saw-blade guides: 1/8 in for a full-kerf table saw and the usual hand-held circular saw";
    TRIM: Length = Length::ZERO, "/saw/trim", "strip trimmed off each sheet edge", CommonPractice, DIFFER,
        "common practice, no source: none where work starts from a factory edge, otherwise 1/8 to 1/4 in";
    KEEP: (Length, Length) = (Length::inches(24), Length::inches(12)), "/saw/keep", "smallest offcut worth keeping",
        CommonPractice, AGREED, NO_SOURCE;

    FRACTIONS: u32 = 16, "/shop/fractions", "finest fraction of an inch on paper", Choice, AGREED, OURS;
    LEAST_BEARING: Length = inch(1, 2), "/shop/least_bearing", "least bearing of a board's edge", CommonPractice, AGREED,
        NO_SOURCE;
    PREFERRED_BEARING: Length = inch(3, 4), "/shop/preferred_bearing", "preferred bearing of a board's edge", CommonPractice,
        AGREED, NO_SOURCE;
    LEAST_WIDTH: Length = inch(12, 1), "/shop/least_panel_width", "narrowest board", CommonPractice, AGREED, NO_SOURCE;
    PREFERRED_WIDTH: Length = inch(16, 1), "/shop/preferred_panel_width", "preferred least width of a board", CommonPractice,
        AGREED, NO_SOURCE;
    PREFERRED_SUPPORTS: u32 = 3, "/shop/preferred_supports", "preferred members under a board", CommonPractice, AGREED,
        NO_SOURCE;
    OVERHANG: Length = inch(6, 1), "/shop/overhang", "greatest overhang at bow and stern", CommonPractice, AGREED, NO_SOURCE;
    SIDE_OVERHANG: Length = inch(3, 1), "/shop/side_overhang", "greatest overhang past a member's end", CommonPractice,
        AGREED, NO_SOURCE;
    LAYOUTS: u32 = 5, "/shop/layouts", "layouts shown", Choice, AGREED, OURS;
    SPARE_SHEETS: u32 = 0, "/shop/spare_sheets", "spare sheets ordered", Choice, AGREED, OURS;
    SEALER_COATS: u32 = 2, "/shop/sealer_coats", "coats on sawn edges", CommonPractice, DIFFER,
        "common practice, no source: 2 to 3 coats";
    SEALER_COVERAGE: Length = feet(100), "/shop/edge_sealer_coverage", "edge that a can of sealer coats once", Memory, AGREED,
        TYPICAL;
    TAPE_WIDTH: Length = inch(2, 1), "/shop/tape_width", "width of the tape on the members", Memory, AGREED, TYPICAL;
    TAPE_THICKNESS: Length = inch(1, 32), "/shop/tape_thickness", "thickness of the tape on the members", Memory, AGREED,
        TYPICAL;
    TAPE_ROLL: Length = feet(50), "/shop/tape_roll", "length of a roll of tape", Memory, AGREED, TYPICAL;
    BARRIER: bool = false, "/shop/barrier", "isolating barrier on the members", Choice, AGREED, OURS;

    STAGGER_MEMBERS: u32 = 1, "/arrange/stagger", "members between butts of neighbouring rows", CommonPractice, AGREED,
        NO_SOURCE;
    BLOCK_WIDTH: Length = inch(8, 1), "/arrange/block_width", "width of blocks under joints along the boat", CommonPractice, DIFFER,
        "common practice, no source: 8 to 12 in";

    WET: bool = true, "/span/wet", "boards wet in service", Choice, AGREED,
        "this library's choice: a deck over water is wet";
    DURATION: f64 = 1.0, "/span/duration", "load duration factor", Verified, AGREED,
        "normal load duration, as the published tables";
    DEFLECTION: f64 = 360.0, "/span/deflection", "largest sag, as a part of the bay", CommonPractice, AGREED,
        "l/360 as for floors of buildings; common practice, no source";

    MEASURING: Length = inch(1, 16), "/tolerance/measuring", "error of a tape reading, either way", CommonPractice, DIFFER,
        "common practice, no source: 1/32 to 1/16 in";
    SAWING: Length = inch(1, 16), "/tolerance/sawing", "error of a sawn width, either way", CommonPractice, AGREED,
        "planning figure of the trade, no source";
    SETTING: Length = inch(1, 32), "/tolerance/setting", "error of setting a board, either way", CommonPractice, AGREED,
        "planning figure of the trade, no source";
    SHEET_SCANT: Length = inch(1, 16), "/tolerance/sheet", "how much a sheet may be scant", Verified, AGREED,
        "PS 1-19: + 0, - 1/16 in";

    ANGLE_LEG: Length = inch(1, 1), "/narrow_flange/angle_leg", "flat leg of an angle beside a narrow flange", CommonPractice,
        AGREED, NO_SOURCE;
}
