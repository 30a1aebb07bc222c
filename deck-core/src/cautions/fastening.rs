//! Cautions about fasteners.

use super::Caution;
use crate::fasteners::{Fastener, Fastening, least_length};
use crate::length::{Length, Notation};

/// What a fastener goes through.
#[derive(Debug, Clone, Copy)]
pub struct FastenerReach {
    /// Thickness of the boards.
    pub board: Length,
    /// Thickness of tape or barrier between board and metal.
    pub between: Length,
    /// Thickest wall of the flanges.
    pub wall: Length,
    /// Space under the deck for the fastener's end, where given.
    pub clearance: Option<Length>,
}

/// Cautions about the rows and about the fastener's length.
pub fn fastening(
    fastening: &Fastening,
    fastener: &Fastener,
    reach: &FastenerReach,
    notation: &Notation,
) -> Vec<Caution> {
    let say = |length: Length| notation.text(length);
    [
        gaps(fastening, &say),
        little_metal(fastening, &say),
        too_short(fastener, reach, &say),
        too_long(fastener, reach, &say),
    ]
    .into_iter()
    .flatten()
    .collect()
}

fn gaps(fastening: &Fastening, say: &impl Fn(Length) -> String) -> Option<Caution> {
    let over = fastening.rows.iter().filter(|row| row.over_limit);
    let about = over.map(|row| {
        let (gap, limit) = (say(row.greatest_gap), say(row.limit));
        match row.positions.len() {
            0 => format!("panel {} on member {}: no room for a fastener on {gap}", row.panel, row.member),
            _ => format!("panel {} on member {}: {gap} (limit {limit})", row.panel, row.member),
        }
    });
    Caution::triggered(
        "fastener-gap",
        about.collect(),
        "Fasteners are further apart here than the schedule allows, because of an opening or an edge. Frame the opening and fasten to the frame.",
        "A board lifts and squeaks where it is not held.",
        "the schedule of the job",
    )
}

/// Rows at seams are told with their seam; these are the others.
fn little_metal(fastening: &Fastening, say: &impl Fn(Length) -> String) -> Option<Caution> {
    let short = fastening.rows.iter().filter(|row| row.seam.is_none() && row.short_by > Length::ZERO);
    let about =
        short.map(|row| format!("panel {} on member {}: short by {}", row.panel, row.member, say(row.short_by)));
    Caution::triggered(
        "row-edge-distance",
        about.collect(),
        "These rows keep less than their edge distance in board or metal. Move the panel's edge, or sister an angle to the member.",
        "A fastener near an edge tears out.",
        "the fastener maker's edge distances; licensed practice",
    )
}

fn too_short(fastener: &Fastener, reach: &FastenerReach, say: &impl Fn(Length) -> String) -> Option<Caution> {
    let least = least_length(fastener, reach.board, reach.between, reach.wall);
    let short = fastener.length < least;
    let about = if short { vec![format!("{}: {}", fastener.kind, say(fastener.length))] } else { Vec::new() };
    let text = format!(
        "The fastener is shorter than the {} that board, tape, wall, three threads and drill point take.",
        say(least)
    );
    Caution::triggered(
        "fastener-short",
        about,
        text,
        "A drill point that stays in the metal does not hold.",
        "the fastener maker's data",
    )
}

fn too_long(fastener: &Fastener, reach: &FastenerReach, say: &impl Fn(Length) -> String) -> Option<Caution> {
    let through = fastener.length - reach.board - reach.between - reach.wall;
    let clearance = reach.clearance.filter(|clearance| through > *clearance)?;
    let about = vec![format!("{}: {} below the flange", fastener.kind, say(through))];
    let text = format!("The fastener's end reaches further than the {} that is clear under the deck.", say(clearance));
    Caution::triggered(
        "fastener-long",
        about,
        text,
        "A point can pierce wiring, a fuel line or a tube.",
        "the boat builder's drawings",
    )
}
