//! The panels of a division: what the outline leaves of each board's rectangle.

use super::panel::{panel, rim};
use super::{Axis, Edge, Panel};
use crate::arrange::{Cell, Cut, Division};
use crate::geometry::Path;
use crate::length::Length;
use crate::outline::{Opening, Outline, Rim};

/// The panels of a division, in the order of its boards and from port to starboard.
///
/// A board that the outline parts has a letter behind its label for each part. An opening that a seam or a joint crosses
/// is in no panel.
pub fn panels_of(
    outline: &Outline,
    division: &Division,
    openings: &[Opening],
    thickness: Option<Length>,
) -> Vec<Panel> {
    let rim = rim(outline);
    let mut all = Vec::new();
    for cell in &division.cells {
        let parts = parts(&rim, cell, outline.length());
        let count = parts.len();
        for (index, shape) in parts.into_iter().enumerate() {
            let mut panel = panel(label(cell, index, count), cell.board, shape, openings, thickness);
            if cell.along {
                panel.strength_axis = Axis::ForeAndAft;
            }
            all.push(panel);
        }
    }
    all
}

fn parts(rim: &Path<Edge>, cell: &Cell, deck_length: Length) -> Vec<Path<Edge>> {
    let seam = |cut: Cut| (cut.at, Edge::Seam { seam: cut.number, member: cut.member });
    let joint = |cut: Cut| (cut.at, Edge::Joint { joint: cut.number });
    let stern = (cell.finish < deck_length).then_some((cell.finish, Edge::Perimeter { rim: Rim::Stern }));
    let strip = rim.strip(cell.fore.map(seam), cell.aft.map(seam).or(stern));
    strip.iter().flat_map(|part| part.lane(cell.port.map(joint), cell.starboard.map(joint))).collect()
}

fn label(cell: &Cell, index: usize, count: usize) -> String {
    let letter = u8::try_from(index).ok().filter(|index| *index < 26).map(|index| char::from(b'a' + index));
    match (count, letter) {
        (1, _) => cell.label.clone(),
        (_, Some(letter)) => format!("{}{letter}", cell.label),
        (_, None) => format!("{}.{index}", cell.label),
    }
}
