//! Screws: diameters, heads, holes, and what they held when pulled out of aluminium in a laboratory.
//!
//! Tapping screw diameters: AISI S100-16. Wood screw diameters: NDS 2018, appendix L. Heads, holes and tests: a screw
//! maker's technical pages (2021), which compute pull-over and bearing by the Aluminum Design Manual 2015. Rows from
//! memory say so.

use super::Standing;

/// A screw by its designation.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct ScrewSize {
    /// Number or diameter, and threads to the inch.
    pub name: &'static str,
    /// Nominal diameter, inches.
    pub diameter: f64,
    /// Threads to the inch.
    pub threads: f64,
    /// Hex washer head's diameter, inches, as the pull-over table implies it (derived); none where it lists none.
    pub washer_head: Option<f64>,
    /// Clearance hole in the top sheet, inches; none where none is listed.
    pub clearance: Option<f64>,
}

const fn screw(
    name: &'static str,
    diameter: f64,
    threads: f64,
    washer_head: Option<f64>,
    clearance: Option<f64>,
) -> ScrewSize {
    ScrewSize { name, diameter, threads, washer_head, clearance }
}

/// Tapping screws. `1/4-20` has machine threads; the others are spaced.
pub const SCREWS: &[ScrewSize] = &[
    screw("#8-18", 0.164, 18.0, None, None),
    screw("#10-16", 0.190, 16.0, Some(0.4), Some(13.0 / 64.0)),
    screw("#12-14", 0.216, 14.0, Some(0.415), Some(15.0 / 64.0)),
    screw("1/4-14", 0.250, 14.0, Some(0.5), Some(17.0 / 64.0)),
    screw("1/4-20", 0.250, 20.0, Some(0.5), Some(17.0 / 64.0)),
];

/// A wood screw: nominal and root diameter, inches.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct WoodScrew {
    /// Its number.
    pub name: &'static str,
    /// Nominal diameter.
    pub diameter: f64,
    /// Root diameter.
    pub root: f64,
    /// How sure the figures are.
    pub standing: Standing,
}

const fn wood(name: &'static str, diameter: f64, root: f64, standing: Standing) -> WoodScrew {
    WoodScrew { name, diameter, root, standing }
}

/// Wood screws (NDS 2018, appendix L). A #14 wood screw is 0.242 in, a #14 tapping screw 0.250 in.
pub const WOOD_SCREWS: &[WoodScrew] = &[
    wood("#6", 0.138, 0.113, Standing::Memory),
    wood("#8", 0.164, 0.131, Standing::Memory),
    wood("#10", 0.190, 0.152, Standing::Verified),
    wood("#12", 0.216, 0.171, Standing::Memory),
    wood("#14", 0.242, 0.196, Standing::Memory),
];

/// Safety factor of screws in aluminium for allowable loads (Aluminum Design Manual 2015, verified).
pub const SCREW_SAFETY_FACTOR: f64 = 3.0;
/// Resistance factor of screws in aluminium (Aluminum Design Manual 2015, verified).
pub const SCREW_RESISTANCE_FACTOR: f64 = 0.5;

/// Least edge distance in the metal, in diameters. Aluminum Design Manual, from memory; boat trade sources agree.
pub const METAL_EDGE_LEAST: f64 = 1.5;
/// Edge distance in the metal from which bearing counts in full, in diameters. Aluminum Design Manual, from memory.
pub const METAL_EDGE_FULL: f64 = 2.0;
/// Least spacing in the metal, in diameters. Aluminum Design Manual, from memory.
pub const METAL_SPACING_LEAST: f64 = 2.5;
/// Least distance from a fastener to the panel's edge, inches. APA E30 (2011), verified.
pub const PANEL_EDGE_LEAST: f64 = 0.375;

/// Screws pulled out of a plate until they gave way: the mean of a laboratory's tests, not a design figure.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct PullOutTest {
    /// The screw.
    pub screw: &'static str,
    /// The alloy.
    pub alloy: &'static str,
    /// The plate's thickness, inches.
    pub thickness: f64,
    /// The mean ultimate load, pounds.
    pub pounds: f64,
    /// How sure the figure is.
    pub standing: Standing,
}

/// The source of [`PULL_OUT_TESTS`].
pub const PULL_OUT_SOURCE: &str = "screw maker's technical pages (2021), laboratory means";

const fn test(screw: &'static str, alloy: &'static str, thirty_seconds: f64, pounds: f64) -> PullOutTest {
    PullOutTest { screw, alloy, thickness: thirty_seconds / 32.0, pounds, standing: Standing::Verified }
}

/// The tests, thickness in 32nds of an inch as written here. The #10-16 in 1/16 in is known second hand only.
#[rustfmt::skip]
pub const PULL_OUT_TESTS: &[PullOutTest] = &[
    PullOutTest { screw: "#10-16", alloy: "6061-T6", thickness: 0.0625, pounds: 300.0, standing: Standing::Memory },
    test("#10-16", "6061-T6",  4.0, 1280.0),
    test("#12-14", "6061-T6",  2.0,  305.0),
    test("#12-14", "6061-T6",  3.0,  750.0),
    test("#12-14", "6061-T6",  6.0, 2065.0),
    test("1/4-14", "6061-T6",  3.0,  835.0),
    test("1/4-14", "6061-T6",  4.0, 1450.0),
    test("1/4-14", "6061-T6",  6.0, 2805.0),
    test("1/4-14", "6061-T6",  8.0, 2825.0),
    test("1/4-20", "6061-T6",  4.0, 1615.0),
    test("1/4-20", "6061-T6",  8.0, 2880.0),
    test("1/4-20", "6061-T6", 10.0, 2885.0),
    test("#10-16", "6063-T5",  4.0,  630.0),
    test("#12-14", "6063-T5",  4.0,  770.0),
    test("1/4-14", "6063-T5",  4.0,  825.0),
    test("1/4-14", "6063-T5",  8.0, 1990.0),
    test("1/4-20", "6063-T5",  8.0, 1705.0),
    test("1/4-20", "6063-T5", 12.0, 3045.0),
];
