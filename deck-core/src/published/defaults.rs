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

const BOLTS_SOLD: &[Length] = &[
    inch(3, 4),
    inch(1, 1),
    inch(5, 4),
    inch(3, 2),
    inch(7, 4),
    inch(2, 1),
    inch(9, 4),
    inch(5, 2),
    inch(11, 4),
    inch(3, 1),
    inch(7, 2),
    inch(4, 1),
    inch(9, 2),
    inch(5, 1),
    inch(6, 1),
];

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

    OLD_HOLE_CLEAR: f64 = 3.0, "/fastening/old_hole_clear", "diameters from a fastener's middle to that of an old hole", Memory,
        AGREED, "2 to 3 diameters; typical, unconfirmed";
    REUSE: bool = false, "/fastening/reuse_old_holes", "bolts through old holes again", Choice, AGREED, OURS;

    LID_CLEARANCE: Length = inch(1, 8), "/openings/*/lid/clearance", "space around a lid in its opening", CommonPractice, AGREED,
        NO_SOURCE;
    OPENING_FROM_SEAM: Length = inch(3, 1), "/opening_rules/from_seam", "least distance of an opening from a seam",
        CommonPractice, AGREED, NO_SOURCE;
    OPENING_FROM_SEAM_PREFERRED: Length = inch(6, 1), "/opening_rules/from_seam_preferred",
        "preferred distance of an opening from a seam", CommonPractice, AGREED, NO_SOURCE;
    OPENING_FROM_EDGE: Length = inch(4, 1), "/opening_rules/from_edge", "least distance of an opening from the deck's edge",
        CommonPractice, AGREED, NO_SOURCE;
    OPENING_FROM_FLANGE: Length = inch(2, 1), "/opening_rules/from_flange",
        "least distance of an opening that is not framed from a flange", CommonPractice, AGREED, NO_SOURCE;
    OPENING_RADIUS: Length = inch(1, 1), "/opening_rules/corner_radius", "least corner radius of an opening", CommonPractice,
        AGREED, NO_SOURCE;
    OPENING_RADIUS_PREFERRED: Length = inch(2, 1), "/opening_rules/corner_radius_preferred",
        "preferred corner radius of an opening", CommonPractice, AGREED, NO_SOURCE;
    OPENING_APART: f64 = 1.0, "/opening_rules/apart", "openings apart, in sizes of the smaller", CommonPractice, AGREED,
        NO_SOURCE;

    BOLT_FROM_SEAM: i64 = 4, "/fittings/from_seam", "bolt diameters from a hole's middle to a seam", Memory, AGREED,
        "4 diameters at a loaded edge (National Design Specification), from memory";
    /// In inches.
    BOLT_LENGTHS: &'static [Length] = BOLTS_SOLD, "/fittings/bolt_lengths", "lengths of bolts that are sold", Memory, AGREED,
        TYPICAL;
    WASHER: Length = inch(1, 16), "/fittings/items/*/bolt/washer", "thickness of a washer", Memory, AGREED, TYPICAL;
    /// Eighths of a diameter.
    NUT_EIGHTHS: i64 = 7, "/fittings/items/*/bolt/nut", "height of a nut: 7/8 of the bolt's diameter", Memory, AGREED, TYPICAL;

    PATCH_MARGIN: Length = inch(6, 1), "/patch/margin", "margin of a patch into sound wood", CommonPractice, AGREED, NO_SOURCE;
    PATCH_BLOCKING: Length = inch(12, 1), "/patch/blocking_width", "width of blocking under a joint", Verified, DIFFER,
        "butt blocks 8 to 12 in wide; 12 in was read, the publication not recorded";
    PATCH_STRIP: Length = inch(12, 1), "/patch/least_strip", "narrowest strip left beside a patch", CommonPractice, AGREED,
        NO_SOURCE;

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

    STRIP_WIDTH: Length = inch(14, 1), "/strip_out/strip_width", "width of the strips of old covering", CommonPractice, AGREED,
        "common practice, no source: 12 to 16 in";
    OLD_BOARD_WIDTH: Length = inch(48, 1), "/strip_out/board_width", "width of the old boards, fore and aft", CommonPractice,
        AGREED, NO_SOURCE;
    SOAKED_LEAST: u32 = 30, "/strip_out/soaked_least_percent", "water in old boards, least, percent", Memory, AGREED, TYPICAL;
    SOAKED_MOST: u32 = 60, "/strip_out/soaked_most_percent", "water in old boards, most, percent", Memory, AGREED, TYPICAL;
    /// Minutes at best, most likely, at worst.
    BOARD_MINUTES: (i64, i64, i64) = (10, 20, 40), "/strip_out/board_minutes", "minutes to lift an old board", CommonPractice,
        AGREED, "planning figure, no source: hours of the step less a hundred sound screws, over six boards; at worst twice";

    WRAP: Length = inch(2, 1), "/covering/wrap", "covering that goes round each edge", CommonPractice, AGREED, NO_SOURCE;
    LEAST_PIECE: Length = inch(12, 1), "/covering/least_piece", "narrowest piece of covering", CommonPractice, AGREED,
        NO_SOURCE;
    OFF_PLY_SEAMS: Length = inch(6, 1), "/covering/off_ply_seams", "covering's seams off those of the boards",
        CommonPractice, AGREED, NO_SOURCE;
    /// Square feet to the US gallon, least and most.
    CARPET_COVERAGE: (u32, u32) = (110, 150), "/covering/adhesive/coverage_least", "coverage of the glue", Verified, AGREED,
        "glue maker's sheet for outdoor carpet with a 1/8 in V notch; publication not recorded";
    /// Square feet to the US gallon, least and most.
    VINYL_COVERAGE: (u32, u32) = (150, 225), "/covering/adhesive/coverage_most", "coverage of the glue", Memory, AGREED, TYPICAL;
    /// US gallons.
    GLUE_CAN: u32 = 1, "/covering/adhesive/can", "US gallons in a can of glue", CommonPractice, AGREED, NO_SOURCE;
    /// Minutes to wait, and minutes after which it has set.
    CARPET_MINUTES: (u32, u32) = (15, 30), "/covering/adhesive/wait_minutes", "minutes to wait, and to setting", Verified,
        AGREED, "glue maker's sheet for outdoor carpet; publication not recorded";

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
