//! Load-span tables of APA Technical Note Q225J (December 2024): a sample of printed cells over all series, axes, spacings
//! and limits. `benches/handbook.rs` reads all of them where the data folder is at hand.

use deck_core::Length;
use deck_core::published::panel_series;
use deck_core::span::{Axis, Criterion, SpanLimits, SpanOptions, StructuralPanel, span_limits};

use Axis::{Across, Along};
use Limit::{Bending, L180, L240, L360, Shear};

/// What a cell is limited by: a part of the spacing, or a strength.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Limit {
    L360,
    L240,
    L180,
    Bending,
    Shear,
}

const SHEATHING: &str = "plywood rated sheathing";
const SHEATHING_I: &str = "plywood Structural I sheathing";
const FLOOR: &str = "plywood single-floor";
const FLOOR_I: &str = "plywood Structural I single-floor";
const OSB: &str = "OSB rated sheathing";
const OSB_I: &str = "OSB Structural I sheathing";
const OSB_FLOOR: &str = "OSB single-floor";
const OSB_FLOOR_I: &str = "OSB Structural I single-floor";
const SANDED: &str = "sanded plywood Group 1 A-A/A-C";

/// Series, rating, strength axis to the supports, spacing in inches, spans, limit, printed psf.
type Cell = (&'static str, &'static str, Axis, f64, u32, Limit, i64);

#[rustfmt::skip]
const CELLS: &[Cell] = &[
    // Table 1a.
    (SHEATHING, "48/24", Across, 24.0, 3, L240, 286),
    (SHEATHING, "24/0", Across, 19.2, 3, Shear, 175),
    (SHEATHING, "24/0", Across, 30.0, 3, Bending, 33),
    (SHEATHING, "48/24", Across, 40.0, 2, Shear, 150),
    (SHEATHING, "40/20", Across, 12.0, 3, L360, 1088),
    (SHEATHING, "32/16", Along, 16.0, 3, L240, 20),
    (SHEATHING, "48/24", Along, 24.0, 2, Bending, 45),
    (SHEATHING, "32/16", Along, 12.0, 3, L360, 35),
    // Table 1b.
    (SHEATHING_I, "48/24", Across, 16.0, 3, L180, 1440),
    (SHEATHING_I, "40/20", Across, 30.0, 3, Bending, 100),
    (SHEATHING_I, "24/0", Across, 12.0, 3, L360, 287),
    (SHEATHING_I, "48/24", Across, 24.0, 3, L240, 286),
    (SHEATHING_I, "40/20", Across, 36.0, 2, L180, 76),
    (SHEATHING_I, "32/16", Along, 16.0, 3, Bending, 72),
    (SHEATHING_I, "24/0", Along, 12.0, 3, Shear, 733),
    (SHEATHING_I, "48/24", Along, 24.0, 2, L360, 81),
    // Table 1c.
    (FLOOR, "32oc", Across, 48.0, 2, L240, 77),
    (FLOOR, "24oc", Across, 16.0, 3, L180, 1080),
    (FLOOR, "48oc", Across, 40.0, 2, Shear, 249),
    (FLOOR, "32oc", Across, 12.0, 3, L360, 3111),
    (FLOOR, "20oc", Across, 36.0, 2, L180, 70),
    (FLOOR, "48oc", Along, 12.0, 3, Bending, 1000),
    (FLOOR, "20oc", Along, 12.0, 3, L240, 186),
    (FLOOR, "48oc", Along, 24.0, 2, L180, 547),
    // Table 1d.
    (FLOOR_I, "24oc", Across, 40.0, 2, Shear, 227),
    (FLOOR_I, "20oc", Across, 12.0, 3, L360, 1001),
    (FLOOR_I, "24oc", Across, 60.0, 2, Bending, 21),
    (FLOOR_I, "20oc", Across, 19.2, 3, Shear, 419),
    (FLOOR_I, "48oc", Across, 32.0, 3, L360, 219),
    (FLOOR_I, "32oc", Along, 24.0, 2, L240, 312),
    (FLOOR_I, "48oc", Along, 24.0, 2, Shear, 329),
    (FLOOR_I, "24oc", Along, 12.0, 3, L240, 841),
    // Table 2a.
    (OSB, "40/20", Across, 36.0, 2, L180, 61),
    (OSB, "48/24", Across, 60.0, 2, Bending, 27),
    (OSB, "W24", Across, 19.2, 3, Shear, 147),
    (OSB, "24/0", Across, 32.0, 3, L360, 10),
    (OSB, "32/16", Across, 16.0, 3, L180, 376),
    (OSB, "40/20", Along, 24.0, 2, Bending, 45),
    (OSB, "W24", Along, 12.0, 3, L360, 48),
    (OSB, "32/16", Along, 12.0, 3, Bending, 138),
    // Table 2b.
    (OSB_I, "40/20", Across, 19.2, 3, Shear, 232),
    (OSB_I, "24/0", Across, 32.0, 3, L360, 10),
    (OSB_I, "48/24", Across, 16.0, 3, L180, 1146),
    (OSB_I, "24/16", Across, 30.0, 3, Bending, 51),
    (OSB_I, "40/20", Across, 40.0, 2, Shear, 102),
    (OSB_I, "32/16", Along, 16.0, 3, L240, 98),
    (OSB_I, "48/24", Along, 12.0, 3, L180, 1274),
    (OSB_I, "24/16", Along, 24.0, 2, Bending, 29),
    // Table 2c.
    (OSB_FLOOR, "32oc", Across, 19.2, 3, Shear, 339),
    (OSB_FLOOR, "24oc", Across, 32.0, 3, L360, 52),
    (OSB_FLOOR, "48oc", Across, 16.0, 3, L180, 3764),
    (OSB_FLOOR, "24oc", Across, 40.0, 2, Shear, 125),
    (OSB_FLOOR, "20oc", Across, 12.0, 3, L360, 848),
    (OSB_FLOOR, "48oc", Along, 12.0, 3, L240, 3230),
    (OSB_FLOOR, "24oc", Along, 16.0, 3, Bending, 180),
    (OSB_FLOOR, "48oc", Along, 24.0, 2, L360, 273),
    // Table 2d.
    (OSB_FLOOR_I, "32oc", Across, 48.0, 2, L240, 70),
    (OSB_FLOOR_I, "24oc", Across, 16.0, 3, L180, 982),
    (OSB_FLOOR_I, "20oc", Across, 30.0, 3, Bending, 77),
    (OSB_FLOOR_I, "48oc", Across, 40.0, 2, Shear, 192),
    (OSB_FLOOR_I, "32oc", Across, 12.0, 3, L360, 2828),
    (OSB_FLOOR_I, "20oc", Along, 16.0, 3, L180, 212),
    (OSB_FLOOR_I, "32oc", Along, 24.0, 2, Shear, 256),
    (OSB_FLOOR_I, "24oc", Along, 16.0, 3, L360, 211),
    // Table 3.
    (SANDED, "3/8", Across, 30.0, 3, Bending, 33),
    (SANDED, "7/8", Across, 40.0, 2, Shear, 212),
    (SANDED, "1/2", Across, 12.0, 3, L360, 609),
    (SANDED, "1-1/8", Across, 24.0, 3, L240, 641),
    (SANDED, "3/4", Across, 19.2, 3, Shear, 407),
    (SANDED, "1", Across, 48.0, 2, L240, 81),
    (SANDED, "19/32", Across, 16.0, 3, L180, 671),
    (SANDED, "3/8", Across, 12.0, 3, L360, 213),
    (SANDED, "7/8", Along, 12.0, 3, L240, 1207),
    (SANDED, "5/8", Along, 24.0, 2, L180, 54),
    (SANDED, "15/32", Along, 16.0, 3, Bending, 61),
    (SANDED, "1", Along, 12.0, 3, Shear, 895),
    (SANDED, "1/2", Along, 16.0, 3, L240, 38),
    (SANDED, "19/32", Along, 16.0, 3, Shear, 400),
    (SANDED, "3/8", Along, 12.0, 3, Bending, 37),
];

fn limits(cell: &Cell) -> SpanLimits {
    let (series, rating, axis, spacing, spans, limit, _) = *cell;
    let part = match limit {
        L240 => 240.0,
        L180 => 180.0,
        L360 | Bending | Shear => 360.0,
    };
    let options = SpanOptions::new().deflection(part);
    let spacing = Length::nearest(spacing * 25_400_000.0);
    let answer = span_limits(&StructuralPanel::published(series, rating), spacing, axis, spans, &options).unwrap();
    answer.limits().unwrap_or_else(|| panic!("{cell:?}: {:?}", answer.no_figure())).clone()
}

/// The tables print whole numbers, halves up.
#[allow(clippy::cast_possible_truncation, reason = "whole, and far below 2^53")]
fn printed(psf: f64) -> i64 {
    (psf + 0.5).floor() as i64
}

#[test]
fn cells_of_the_tables() {
    let mut wrong = Vec::new();
    for cell in CELLS {
        let criterion = match cell.5 {
            L360 | L240 | L180 => Criterion::Deflection,
            Bending => Criterion::Bending,
            Shear => Criterion::Shear,
        };
        let psf = limits(cell).load(criterion);
        if printed(psf) != cell.6 {
            wrong.push((cell, psf));
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
    assert!(CELLS.len() > 60);
}

/// The sample leaves no series, axis or limit out, and none of the tables' spacings.
#[test]
fn the_sample_is_a_good_one() {
    for series in panel_series() {
        for axis in Axis::BOTH {
            assert!(CELLS.iter().any(|cell| cell.0 == series.name && cell.2 == axis), "{} {axis}", series.name);
        }
    }
    for limit in [L360, L240, L180, Bending, Shear] {
        assert!(CELLS.iter().filter(|cell| cell.5 == limit).count() > 5, "{limit:?}");
    }
    for spacing in [12.0, 16.0, 19.2, 24.0, 30.0, 32.0, 36.0, 40.0, 48.0, 60.0] {
        assert!(CELLS.iter().any(|cell| (cell.3 - spacing).abs() < 1e-9), "{spacing}");
    }
}

/// Clauses name edition, table and equation, and say that capacities were fitted.
#[test]
fn figures_carry_their_source() {
    let found = limits(&(SANDED, "3/4", Along, 24.0, 2, L360, 0));
    for text in [&found.source.deflection, &found.source.bending, &found.source.shear] {
        assert!(
            text.contains("Q225J (December 2024)") && text.contains("table 3") && text.contains("fitted"),
            "{text}"
        );
    }
    assert!(found.source.deflection.contains("2220 EI"), "{}", found.source.deflection);
    assert!(!found.caution.is_empty());
}
