//! The rows, laid out as the printed tables are: the rating; EI, MR and Fs with the strength axis across the supports and
//! the largest spacing in inches for which a load is listed; then the same with the axis along the supports.

use super::{AxisRow, Capacity, PanelRow, Series};

const fn axis(ei: f64, mr: f64, fs: f64, largest_inches: f64) -> AxisRow {
    AxisRow { capacity: Capacity { ei, mr, fs }, largest_inches }
}

const fn row(rating: &'static str, across: AxisRow, along: AxisRow) -> PanelRow {
    PanelRow { rating, across, along: Some(along) }
}

/// The tables list no load for these with the strength axis along the supports.
const fn strong_way(rating: &'static str, across: AxisRow) -> PanelRow {
    PanelRow { rating, across, along: None }
}

/// Tables 1a to 3, in their order.
#[rustfmt::skip]
pub(super) const SERIES: &[Series] = &[
    Series { table: "1a", name: "plywood rated sheathing", rows: &[
        row("24/0", axis(66_000.0, 250.0, 155.0, 36.0), axis(3_600.0, 54.0, 275.0, 12.0)),
        row("32/16", axis(125_000.0, 370.0, 200.0, 40.0), axis(8_100.0, 92.0, 165.0, 16.0)),
        row("40/20", axis(250_000.0, 625.0, 245.0, 48.0), axis(18_000.0, 150.0, 205.0, 24.0)),
        row("48/24", axis(440_000.0, 930.0, 300.0, 60.0), axis(65_000.0, 270.0, 250.0, 24.0)),
    ] },
    Series { table: "1b", name: "plywood Structural I sheathing", rows: &[
        row("24/0", axis(66_000.0, 250.0, 217.0, 36.0), axis(5_400.0, 70.2, 385.0, 12.0)),
        row("32/16", axis(125_000.0, 405.0, 280.0, 40.0), axis(27_000.0, 154.0, 165.0, 24.0)),
        row("40/20", axis(250_000.0, 750.0, 371.0, 48.0), axis(89_600.0, 405.0, 205.0, 24.0)),
        row("48/24", axis(440_000.0, 1_000.0, 455.0, 60.0), axis(146_400.0, 607.5, 250.0, 24.0)),
    ] },
    Series { table: "1c", name: "plywood single-floor", rows: &[
        row("20oc", axis(230_000.0, 530.0, 245.0, 48.0), axis(28_500.0, 170.0, 205.0, 24.0)),
        row("24oc", axis(330_000.0, 705.0, 300.0, 60.0), axis(57_000.0, 260.0, 250.0, 24.0)),
        row("32oc", axis(715_000.0, 1_050.0, 390.0, 60.0), axis(235_000.0, 685.0, 300.0, 24.0)),
        row("48oc", axis(1_265_000.0, 1_900.0, 500.0, 60.0), axis(495_000.0, 1_200.0, 385.0, 24.0)),
    ] },
    Series { table: "1d", name: "plywood Structural I single-floor", rows: &[
        row("20oc", axis(230_000.0, 575.0, 371.0, 48.0), axis(64_800.0, 375.0, 205.0, 24.0)),
        row("24oc", axis(330_000.0, 770.0, 455.0, 60.0), axis(128_800.0, 577.5, 250.0, 24.0)),
        row("32oc", axis(715_000.0, 1_050.0, 546.0, 60.0), axis(376_000.0, 1_027.5, 300.0, 24.0)),
        row("48oc", axis(1_265_000.0, 1_900.0, 700.0, 60.0), axis(792_000.0, 1_800.0, 385.0, 24.0)),
    ] },
    Series { table: "2a", name: "OSB rated sheathing", rows: &[
        row("W24", axis(52_000.0, 300.0, 130.0, 24.0), axis(11_000.0, 97.0, 130.0, 16.0)),
        row("24/0", axis(60_000.0, 300.0, 130.0, 32.0), axis(11_000.0, 97.0, 130.0, 16.0)),
        row("24/16", axis(78_000.0, 385.0, 150.0, 36.0), axis(16_000.0, 115.0, 150.0, 16.0)),
        row("32/16", axis(115_000.0, 445.0, 165.0, 40.0), axis(25_000.0, 165.0, 165.0, 24.0)),
        row("40/20", axis(200_000.0, 750.0, 205.0, 48.0), axis(56_000.0, 270.0, 205.0, 24.0)),
        row("48/24", axis(350_000.0, 1_000.0, 250.0, 60.0), axis(91_500.0, 405.0, 250.0, 24.0)),
    ] },
    Series { table: "2b", name: "OSB Structural I sheathing", rows: &[
        row("24/0", axis(60_000.0, 300.0, 130.0, 32.0), axis(17_600.0, 145.5, 130.0, 24.0)),
        row("24/16", axis(78_000.0, 385.0, 150.0, 36.0), axis(25_600.0, 172.5, 150.0, 24.0)),
        row("32/16", axis(115_000.0, 445.0, 165.0, 40.0), axis(40_000.0, 247.5, 165.0, 24.0)),
        row("40/20", axis(200_000.0, 750.0, 205.0, 48.0), axis(89_600.0, 405.0, 205.0, 24.0)),
        row("48/24", axis(350_000.0, 1_000.0, 250.0, 60.0), axis(146_400.0, 607.5, 250.0, 24.0)),
    ] },
    Series { table: "2c", name: "OSB single-floor", rows: &[
        row("20oc", axis(195_000.0, 575.0, 205.0, 48.0), axis(40_500.0, 250.0, 205.0, 24.0)),
        row("24oc", axis(300_000.0, 770.0, 250.0, 60.0), axis(80_500.0, 385.0, 250.0, 24.0)),
        row("32oc", axis(650_000.0, 1_050.0, 300.0, 60.0), axis(235_000.0, 685.0, 300.0, 24.0)),
        row("48oc", axis(1_150_000.0, 1_900.0, 385.0, 60.0), axis(495_000.0, 1_200.0, 385.0, 24.0)),
    ] },
    Series { table: "2d", name: "OSB Structural I single-floor", rows: &[
        row("20oc", axis(195_000.0, 575.0, 205.0, 48.0), axis(64_800.0, 375.0, 205.0, 24.0)),
        row("24oc", axis(300_000.0, 770.0, 250.0, 60.0), axis(128_800.0, 577.5, 250.0, 24.0)),
        row("32oc", axis(650_000.0, 1_050.0, 300.0, 60.0), axis(376_000.0, 1_027.5, 300.0, 24.0)),
        row("48oc", axis(1_150_000.0, 1_900.0, 385.0, 60.0), axis(792_000.0, 1_800.0, 385.0, 24.0)),
    ] },
    Series { table: "3", name: "sanded plywood Group 1 A-A/A-C", rows: &[
        strong_way("1/4", axis(15_000.0, 115.0, 105.0, 19.2)),
        strong_way("11/32", axis(34_000.0, 185.0, 145.0, 24.0)),
        row("3/8", axis(49_000.0, 245.0, 165.0, 30.0), axis(2_800.0, 44.9, 165.0, 12.0)),
        row("15/32", axis(120_000.0, 425.0, 220.0, 40.0), axis(11_000.0, 130.0, 220.0, 16.0)),
        row("1/2", axis(140_000.0, 470.0, 235.0, 48.0), axis(15_500.0, 175.0, 235.0, 16.0)),
        row("19/32", axis(205_000.0, 625.0, 290.0, 48.0), axis(37_500.0, 270.0, 290.0, 24.0)),
        row("5/8", axis(230_000.0, 670.0, 310.0, 48.0), axis(48_500.0, 325.0, 310.0, 24.0)),
        row("23/32", axis(320_000.0, 775.0, 350.0, 60.0), axis(90_500.0, 455.0, 350.0, 24.0)),
        row("3/4", axis(355_000.0, 815.0, 360.0, 60.0), axis(115_000.0, 565.0, 360.0, 24.0)),
        row("7/8", axis(500_000.0, 1_000.0, 425.0, 60.0), axis(185_000.0, 780.0, 425.0, 24.0)),
        row("1", axis(760_000.0, 1_300.0, 470.0, 60.0), axis(330_000.0, 1_150.0, 470.0, 24.0)),
        row("1-1/8", axis(985_000.0, 1_600.0, 525.0, 60.0), axis(490_000.0, 1_500.0, 525.0, 24.0)),
    ] },
];
