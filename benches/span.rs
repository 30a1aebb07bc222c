//! What do the engines of strength cost, and how does a plate grow with its mesh?
//!
//! `cargo bench -p deck-benches --bench span`. The board is 102 by 48 in on four members 16 in apart; the beam has
//! uneven spans under an even load and a heel.

#![allow(clippy::expect_used, reason = "a benchmark whose board does not hold has nothing to measure")]

use deck_core::Error;
use deck_core::span::{Beam, BeamLoad, BeamProblem, BeamWorst, Plate, PlateLoad, PlateProblem, PlateSupport};
use deck_core::span::{Rigidity, assumed_torsion};
use divan::Bencher;

fn main() {
    divan::main();
}

fn beam(spans: usize) -> (BeamProblem, [BeamLoad; 2]) {
    let lengths: Vec<f64> = (0..spans).map(|index| 14.0 + (index % 5) as f64).collect();
    (BeamProblem::new(&lengths).overhangs([3.0, 5.0]), [BeamLoad::uniform(1.0), BeamLoad::patch(20.0, 3.0, 200.0)])
}

fn board() -> PlateProblem {
    let (strong, weak) = (29_583.0, 9_583.0);
    let members = [0.0, 16.0, 32.0, 48.0].map(PlateSupport::along);
    PlateProblem::new(102.0, 48.0, Rigidity::new(weak, strong, assumed_torsion(weak, strong)), &members)
}

fn crowd() -> [PlateLoad; 1] {
    [PlateLoad::uniform(100.0 / 144.0)]
}

#[divan::bench(args = [4, 1_000, 100_000])]
fn beam_spans(bencher: Bencher<'_, '_>, spans: usize) {
    let (beam, loads) = beam(spans);
    bencher.bench_local(|| -> Result<Beam, Error> { beam.solve(&loads) });
}

#[divan::bench(args = [4, 20])]
fn beam_worst_pattern(bencher: Bencher<'_, '_>, spans: usize) {
    let (beam, loads) = beam(spans);
    bencher.bench_local(|| -> Result<BeamWorst, Error> { beam.worst(&loads[1..], &loads[..1]) });
}

/// Mesh, factoring and one load: everything.
#[divan::bench]
fn plate_default(bencher: Bencher<'_, '_>) {
    let (board, loads) = (board(), crowd());
    bencher.bench_local(|| -> Result<Plate, Error> { board.solve(&loads) });
}

/// One more load on factored equations.
#[divan::bench]
fn plate_next_load(bencher: Bencher<'_, '_>) {
    let model = board().model().expect("the board holds");
    let loads = crowd();
    bencher.bench_local(|| model.solve(&loads));
}

/// A heel of 3 by 3 in at its worst place, on factored equations.
#[divan::bench]
fn plate_worst_place(bencher: Bencher<'_, '_>) {
    let model = board().model().expect("the board holds");
    bencher.bench_local(|| model.worst_place([3.0, 3.0], 300.0, None));
}

/// Everything, with elements of 1/n of the width.
#[divan::bench(args = [6, 12, 24, 48])]
fn plate_mesh(bencher: Bencher<'_, '_>, across: usize) {
    let board = board().mesh(48.0 / across as f64);
    let loads = crowd();
    bencher.bench_local(|| board.solve(&loads));
}
